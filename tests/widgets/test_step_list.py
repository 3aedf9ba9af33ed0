"""The list of steps."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from booth.widgets.lists import StepList, StepRow, StepState, window
from booth.widgets.lists import lay_out_steps as lay_out
from booth.widgets.rows import strings, width_of
from tests.widgets.bench_app import WidgetApp, screen_lines

NAMES = ("Cautions", "Weather", "Mix", "Viscosity", "Strain and fill", "Air", "Catch", "Fan")


def steps(current: int, skipped: int = -1) -> tuple[StepRow, ...]:
    def state(n: int) -> StepState:
        if n == current:
            return StepState.CURRENT
        if n == skipped:
            return StepState.SKIPPED
        return StepState.DONE if n < current else StepState.OPEN

    return tuple(StepRow(n + 1, name, state(n)) for n, name in enumerate(NAMES))


def test_all_fit() -> None:
    assert strings(lay_out(steps(4, skipped=3), 24, 9)) == [
        "√ 1 Cautions            ",
        "√ 2 Weather             ",
        "√ 3 Mix                 ",
        "– 4 Viscosity    skipped",
        "→ 5 Strain and fill     ",
        "  6 Air                 ",
        "  7 Catch               ",
        "  8 Fan                 ",
        " " * 24,
    ]


def test_the_current_step_is_kept_in_sight() -> None:
    assert strings(lay_out(steps(4), 20, 5)) == [
        "↑ 4 more            ",
        "→ 5 Strain and fill ",
        "  6 Air             ",
        "  7 Catch           ",
        "  8 Fan             ",
    ]


def test_narrow_keeps_the_name() -> None:
    assert strings(lay_out(steps(4, skipped=3), 13, 9))[3:5] == ["– 4 Viscosity", "→ 5 Strain … "]


def test_a_step_to_be_taken_again_has_a_shape_and_a_word() -> None:
    rows = (StepRow(1, "Weather", StepState.AGAIN), StepRow(2, "Mix", StepState.CURRENT))
    assert strings(lay_out(rows, 24, 2)) == ["▲ 1 Weather   take again", "→ 2 Mix                 "]
    assert strings(lay_out(rows, 12, 2))[0] == "▲ 1 Weather "


@given(st.integers(1, 40), st.data(), st.integers(1, 30))
def test_window_holds_the_current_step_and_counts_the_rest(
    count: int, data: st.DataObject, height: int
) -> None:
    current = data.draw(st.integers(0, count - 1))
    start, end = window(count, current, height)
    assert 0 <= start <= current < end <= count
    told = (start > 0) + (end < count) if height >= 3 else 0
    assert end - start + told <= height
    if count > height:
        assert end - start + told == height


@given(st.text(max_size=20), st.integers(0, 40), st.integers(0, 12))
def test_every_size_is_filled_exactly(name: str, width: int, height: int) -> None:
    rows = lay_out((*steps(4, 3), StepRow(9, name)), width, height)
    assert len(rows) == (height if width else 0)
    assert all(width_of(row) == width for row in rows)


async def test_a_click_asks_for_its_step() -> None:
    class Listening(WidgetApp):
        def on_step_list_picked(self, message: StepList.Picked) -> None:
            self.heard.append(message.index)

    listing = StepList()
    app = Listening(listing)
    async with app.run_test(size=(40, 5)) as pilot:
        listing.shown = steps(4)
        await pilot.pause()
        assert screen_lines(app)[0].startswith("↑ 4 more")
        for row in range(5):
            await pilot.click(StepList, offset=(3, row))
        # The row that counts the others is no step.
        assert app.heard == [4, 5, 6, 7]


async def test_it_moves_on_with_the_job() -> None:
    listing = StepList()
    async with WidgetApp(listing).run_test(size=(28, 8)) as pilot:
        listing.shown = steps(0)
        await pilot.pause()
        before = listing.painted_rows
        listing.shown = steps(1)
        # The step that was left and the one that was reached.
        assert listing.painted_rows == before + 2
        await pilot.pause()
        assert screen_lines(pilot.app)[1].startswith("→ 2 Weather")
