"""The rows of a form as drawn: which is marked, where the cursor stands, what is wrong, what is assumed."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.forms.edit import edit
from booth.forms.form import BLANK, Field, Form, Rows, rows_of
from booth.forms.key import Key
from booth.units import Kind, Quantity, System
from booth.widgets.form_view import BOX, CURSOR, DIM, FormView, placed_rows
from booth.widgets.rows import MARKED, QUIET, Row, strings, toned, width_of
from booth.words.shown import Tone
from tests.widgets.bench_app import WidgetApp, screen_lines

FAULT = toned(Tone.CAUTION)
FIELDS = (
    Field("air", "Air", Kind.TEMPERATURE),
    Field("cup", "Cup", choices=(("ford-4", "Ford #4"), ("zahn-2", "Zahn #2"))),
    Field("note", "Note", optional=True, hint="whatever helps"),
    Field("seconds", "Catch for", Kind.TIME, default=Quantity(60, "s", ""), assumed=True),
    Field("tip", "Tip", Kind.TIP, optional=True, assumed=True),
)


def rows(form: Form = BLANK, fields: tuple[Field, ...] = FIELDS) -> Rows:
    return rows_of(form, fields, System.METRIC)


def pieces(row: Row, style: str) -> str:
    """What stands in a row in one style."""
    return "".join(text for text, each in row if each == style)


def drawn(form: Form = BLANK, width: int = 60) -> list[Row]:
    return [row for row, _ in placed_rows(rows(form), width)]


def test_a_row_each_and_one_of_them_is_marked() -> None:
    lines = drawn()
    assert len(lines) == 4
    assert [bool(pieces(row, MARKED) or pieces(row, CURSOR)) for row in lines] == [
        *(True, False, False, False),
    ]
    marked = drawn(BLANK.marking("cup"))
    assert pieces(marked[1], MARKED).strip() == "◂ Ford #4 ▸" and not pieces(marked[0], MARKED)
    assert pieces(lines[1], BOX).strip() == "◂ Ford #4 ▸"


def test_what_was_understood_stands_beside_what_was_typed() -> None:
    (first, *_) = drawn(BLANK.typed("air", "22"))
    assert "22" in pieces(first, MARKED) and pieces(first, QUIET).endswith("= 22 °C = 72 °F")


@pytest.mark.parametrize(
    ("cursor", "before", "under"), [(0, "71.5", " "), (1, "71.", "5"), (4, "", "7")]
)
def test_the_cursor_stands_where_the_next_character_goes(
    cursor: int, before: str, under: str
) -> None:
    (first, *_) = drawn(BLANK.typed("air", "71.5", cursor))
    assert pieces(first, CURSOR) == under
    assert strings([first])[0][15:].startswith(before + under)
    typed = edit(rows(BLANK.typed("air", "71.5", cursor)), Key("9", "9"))
    assert typed is not None
    assert typed.form.texts["air"] == before + "9" + "71.5"[len(before) :]


def test_boxes_of_a_kind_are_alike_and_leave_every_hint_its_room() -> None:
    fields = (
        Field("came", "What came out", optional=True),
        Field("next", "Next time", optional=True, hint="Enter here closes the job"),
        Field("tip", "Tip", Kind.TIP, hint="its fluid tip"),
        Field("fan", "Fan", Kind.LENGTH),
    )
    _, *lines = (row for row, _ in placed_rows(rows(BLANK.marking("came"), fields), 76))
    first, *_ = (row for row, _ in placed_rows(rows(BLANK.marking("tip"), fields), 76))
    boxes = [len(pieces(row, BOX) + pieces(row, DIM)) for row in (first, *lines)]
    assert boxes[0] == boxes[1] > boxes[2] == boxes[3]
    assert "Enter here closes the job" in strings(lines)[0]
    assert pieces(lines[1], DIM).strip() == "mm", "what may be typed stands in its box"


def test_a_row_without_a_label_begins_at_the_edge_where_none_has_one() -> None:
    ((row, _),) = placed_rows(rows(BLANK.typed("words", "dust"), (Field("words", ""),)), 40)
    assert strings([row])[0].startswith(" dust")
    labelled = (Field("words", ""), Field("tip", "Tip", Kind.TIP))
    row, _ = placed_rows(rows(BLANK.typed("words", "dust"), labelled), 40)[0]
    assert strings([row])[0].startswith(" " * 15 + "dust")


@pytest.mark.parametrize("cursor", [0, 20, 60])
def test_of_a_long_text_the_place_of_the_cursor_is_in_sight(cursor: int) -> None:
    text = "".join(f"{number:02} " for number in range(20))
    lines = drawn(BLANK.typed("note", text, cursor), width=40)
    note = lines[2]
    assert width_of(note) == 40
    assert pieces(note, CURSOR) == (text + " ")[len(text) - cursor]


def test_a_fault_stands_under_its_row_and_nothing_beside_it() -> None:
    form = BLANK.typed("air", "7x")
    placed = placed_rows(rows(form), 60)
    said = [pieces(row, FAULT) for row, _ in placed]
    assert said[0] == "" and said[1] and [key for _, key in placed[:2]] == ["air", "air"]
    assert pieces(placed[0][0], QUIET).split() == ["Air"]
    assert rows(form).row("air").fault.startswith(said[1].removesuffix("…").rstrip()[:20])


def test_what_is_assumed_is_told_in_one_line_until_it_is_opened() -> None:
    last = strings(drawn())[-1]
    assert "taken as catch for 1 min; also tip" in last
    assert last.rstrip().endswith("↓")
    opened = edit(rows(BLANK.marking("note")), Key("down"))
    assert opened is not None
    lines = strings(drawn(opened.form))
    assert len(lines) == 5 and not any("taken as" in line for line in lines)


def test_how_a_row_for_words_is_filled_is_read_before_anything_is_typed() -> None:
    long = (Field("parts", "Parts", optional=True, hint="separate parts with commas: left, right"),)
    for width in (76, 100):
        ((line, _),) = placed_rows(rows(BLANK, long), width)
        assert "separate parts with commas: left, right" in strings([line])[0], width
    ((line, _),) = placed_rows(rows(BLANK.typed("parts", "door"), long), 60)
    assert "door" in strings([line])[0] and "separate" not in strings([line])[0]


HOSTILE = ("[/ x [bold] [@click=app.quit]y", "\x1b[2J\x07\u202e", "塗装" * 30, "a\nb\tc")


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_text_is_shown_and_takes_no_more_than_its_room(text: str) -> None:
    fields = (
        Field("words", text, hint=text),
        Field("choice", "Part", choices=((text, text),)),
        Field("given", "Given", default=text, optional=True),
        Field("assumed", text, default=text, optional=True, assumed=True),
    )
    for form in (BLANK, BLANK.typed("words", text), BLANK.marking("choice")):
        for width in (20, 41, 80):
            lines = [row for row, _ in placed_rows(rows(form, fields), width)]
            assert all(width_of(row) == width for row in lines)
            assert not set("\x1b\x07\u202e\n\t") & set("".join(strings(lines)))


@given(
    st.text(max_size=80),
    st.integers(0, 90),
    st.sampled_from(["air", "note", "seconds", "tip"]),
    st.integers(1, 120),
)
def test_every_width_is_filled_exactly(text: str, cursor: int, key: str, width: int) -> None:
    placed = placed_rows(rows(BLANK.typed(key, text, cursor)), width)
    assert all(width_of(row) == width for row, _ in placed)


class Listening(WidgetApp):
    CSS = "FormView { padding: 1 2; }"

    def on_form_view_clicked(self, message: FormView.Clicked) -> None:
        self.heard.append((message.key, message.by))


async def test_a_click_tells_its_row_and_which_way_a_choice_is_turned() -> None:
    view = FormView()
    app = Listening(view)
    async with app.run_test(size=(64, 12)) as pilot:
        view.shown = rows(BLANK.typed("air", "7x"))
        await pilot.pause()
        cup = next(y for y, line in enumerate(screen_lines(app)) if "Ford #4" in line)
        assert cup >= 3, "a fault stands between"
        for x, y in ((20, 1), (20, 2), (16, cup), (30, cup), (20, cup + 1)):
            await pilot.click(offset=(x, y))
        assert app.heard == [("air", 0), ("air", 0), ("cup", -1), ("cup", 1), ("note", 0)]


async def test_it_is_as_high_as_its_rows_and_only_what_changed_is_painted_where_it_stands() -> None:
    view = FormView()
    async with Listening(view).run_test(size=(64, 12)) as pilot:
        view.shown = rows()
        await pilot.pause()
        assert view.size.height == 4
        before = view.painted_rows
        view.shown = rows(BLANK.typed("air", "22"))
        assert view.painted_rows == before + 1
        await pilot.pause()
        # One row beneath the top: the widget has a padding.
        assert "= 22 °C" in screen_lines(pilot.app)[1]
        view.shown = rows(BLANK.typed("air", "7x"))
        await pilot.pause()
        assert view.size.height >= 5
        view.shown = rows(BLANK, ())
        await pilot.pause()
        assert not view.display


async def test_where_not_all_rows_fit_the_marked_one_is_in_sight_and_is_what_is_clicked() -> None:
    many = tuple(Field(f"row{n}", f"Row {n}", Kind.COUNT) for n in range(12))

    class Low(Listening):
        CSS = "FormView { max-height: 5; }"

    view = FormView()
    app = Low(view)
    async with app.run_test(size=(64, 12)) as pilot:
        for at in (0, 3, 7, 11):
            view.shown = rows(BLANK.marking(f"row{at}"), many)
            await pilot.pause()
            lines = screen_lines(app)[:5]
            y = next(y for y, line in enumerate(lines) if f"Row {at} " in line)
            await pilot.click(offset=(20, y))
            assert app.heard[-1] == (f"row{at}", 0)
