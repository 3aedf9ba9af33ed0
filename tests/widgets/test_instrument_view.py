"""An open step as drawn: what it is told stands there, each picture by the widget of its kind."""

from __future__ import annotations

from typing import Any, get_args

import pytest
from textual.widget import Widget

from booth.forms.form import BLANK, Field, rows_of
from booth.units import Kind, System
from booth.widgets.instrument_view import DRAWN_BY, InstrumentView
from booth.widgets.lists import PickList
from booth.widgets.row_widget import Drawn
from booth.widgets.tables import PartTable
from booth.words.shown import (
    Bar,
    Gallery,
    LineBlock,
    LineRow,
    Lines,
    Page,
    Paper,
    PartRow,
    Parts,
    PickLine,
    Picture,
    PourRow,
    Pours,
    Readout,
    Section,
    Timeline,
    Tone,
)
from tests.widgets.bench_app import WidgetApp, screen_lines

HOSTILE = "[/ x [@click=app.quit]y \x1b[2J"
FORM = rows_of(BLANK, (Field("air", "Air", Kind.TEMPERATURE),), System.METRIC)
#: One of every kind of picture, and words that stand on the screen when it is drawn.
PICTURES: tuple[tuple[Any, str], ...] = (
    (Pours((PourRow("clear", "364 ml", "364 ml", Tone.READY),)), "364 ml"),
    (Parts((PartRow("left door", "1/2", Tone.WAIT, "WAIT", "4:31", "coat 2"),), 0), "left door"),
    (Section(((0, 0.9), (10, 1.1), (20, 0.9)), across="across the panel"), "across the panel"),
    (Paper((1, 2, 3, 2, 1), words=("thin", "heavy", "thin")), "heavy"),
    (Gallery(((Paper((1, 1, 1)), "even"), (Paper((3, 1, 3)), "both ends"))), "both ends"),
    (Timeline((LineRow("hood", (LineBlock(0, 60, Tone.RUNNING, "coat 1"),)),)), "hood"),
    (Bar(3.0, 1.0), ""),
    (Lines((PickLine("dust"), PickLine("runs")), 1), "→ runs"),
    (Page((("text", "read this"),)), "read this"),
)


class Listening(WidgetApp):
    def on_drawn_picked(self, message: Drawn.Picked) -> None:
        self.heard.append((message.index, message.again))


async def _text(pilot: Any) -> str:
    await pilot.pause()
    return "\n".join(screen_lines(pilot.app))


def test_every_kind_of_picture_has_its_widget_and_its_case_here() -> None:
    assert set(DRAWN_BY) == set(get_args(Picture)) == {type(each) for each, _ in PICTURES}


async def test_name_how_figure_record_and_rows_stand_there() -> None:
    view = InstrumentView()
    async with Listening(view).run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        view.title("weather", ("Hang the probe", "by the part."))
        view.figure(Readout("4:31", "", "until coat 2", Tone.WAIT))
        view.record(("12:00 read", "12:10 read"))
        view.form(FORM)
        text = await _text(pilot)
        for words in (
            "Hang the probe by the part.",
            "until coat 2",
            "12:10 read",
            "Air",
        ):
            assert words in text
        assert view.has_class("kind-weather")
        view.title("coats", ())
        view.figure(None)
        view.record(())
        text = await _text(pilot)
        assert "until coat 2" not in text and "12:10 read" not in text
        assert view.has_class("kind-coats") and not view.has_class("kind-weather")


@pytest.mark.parametrize(("picture", "words"), PICTURES)
async def test_each_picture_is_drawn_and_goes_with_the_next_step(picture: Any, words: str) -> None:
    view = InstrumentView()
    async with Listening(view).run_test(size=(100, 40)) as pilot:
        await pilot.pause()
        view.form(FORM)
        view.pictures((picture,))
        assert words in await _text(pilot)
        shown = view.query_one(DRAWN_BY[type(picture)])
        assert shown.display and shown.region.height > 0
        view.pictures(())
        await pilot.pause()
        assert not shown.display
        view.pictures((picture,))
        assert words in await _text(pilot)
        assert len(view.query(DRAWN_BY[type(picture)])) == 1, "made once"


async def test_all_pictures_one_after_the_other_keep_their_order() -> None:
    view = InstrumentView()
    async with Listening(view).run_test(size=(100, 60)) as pilot:
        await pilot.pause()
        for picture, _ in PICTURES:
            view.pictures((picture,))
            await pilot.pause()
        view.pictures((PICTURES[1][0], PICTURES[8][0]))
        text = await _text(pilot)
        # The parts stand last, as the clocks do in other steps.
        assert text.index("read this") < text.index("left door")
        seen = [each for each in view.children if isinstance(each, Widget) and each.display]
        assert not any(isinstance(each, PickList) for each in seen)


async def test_a_page_in_a_picture_scrolls() -> None:
    view = InstrumentView()
    async with Listening(view).run_test(size=(60, 16)) as pilot:
        await pilot.pause()
        view.figure(None)
        view.pictures((Page(tuple(("text", f"line {n}") for n in range(60))),))
        assert "line 0" in await _text(pilot)
        view.scroll_page(20)
        text = await _text(pilot)
        assert "line 20" in text and "line 0\n" not in text


async def test_a_click_on_a_line_a_part_or_a_paper_tells_which() -> None:
    view = InstrumentView()
    app = Listening(view)
    async with app.run_test(size=(80, 30)) as pilot:
        await pilot.pause()
        view.figure(None)
        lines = Lines((PickLine("dust"), PickLine("runs")), 1)
        view.pictures((lines,))
        await pilot.pause()
        top = view.query_one(PickList).region
        await pilot.click(offset=(top.x + 3, top.y))
        assert app.heard == [(0, False)]
        rows = tuple(PartRow(name, "1/2", Tone.WAIT, "WAIT", "4:31", "coat 2") for name in "ab")
        view.pictures((Parts(rows, 0),))
        await pilot.pause()
        top = view.query_one(PartTable).region
        await pilot.click(offset=(top.x + 3, top.y + 1))
        assert app.heard[-1] == (1, False)


async def test_hostile_text_is_drawn_as_it_stands() -> None:
    view = InstrumentView()
    async with Listening(view).run_test(size=(80, 30)) as pilot:
        await pilot.pause()
        view.title("plain", (HOSTILE,))
        view.record((HOSTILE,))
        view.figure(Readout("1", label=HOSTILE))
        view.pictures((Page((("text", HOSTILE),)),))
        text = await _text(pilot)
        assert text.count("[/ x [@click=app.quit]y ␛[2J") >= 4 and "\x1b" not in text
