"""Every step in every window: nothing is cut off at its foot, and the figure has its room."""

from __future__ import annotations

from pathlib import Path

import pytest

from booth.job.steps import steps_of
from booth.log.events import EffluxTimed, Event, WeatherRead
from booth.profile.model import Profile
from booth.profile.read import read_profile
from booth.units import System
from booth.widgets.figure_panel import FigurePanel
from booth.widgets.form_view import FormView
from booth.widgets.instrument_view import InstrumentView
from booth.widgets.page_view import PageView
from booth.widgets.spray_paper import SprayPaper
from booth.widgets.tables import PourTable
from booth.widgets.tries import TriesView
from tests.job.make import q
from tests.manual_clock import ManualClock
from tests.screens.at_app import AtApp, at_bench
from tests.screens.jobs import coated

PROFILES = Path(__file__).parents[2] / "profiles"
SIZES = [(80, 24), (100, 30), (200, 50)]


def bundled(name: str) -> Profile:
    found = read_profile(PROFILES / f"{name}.toml")
    assert isinstance(found, Profile)
    return found


def _all_in_sight(at: AtApp, least: int) -> None:
    view = at.app.screen.query_one(InstrumentView)
    shown = [each for each in view.children if each.display and each.region.height]
    foot = view.region.bottom
    for each in shown:
        assert each.region.bottom <= foot, (at.step, type(each).__name__, at.text)
    form = view.query_one(FormView)
    if form.display:
        rows = form.shown.sight if form.shown is not None else ()
        assert form.size.height >= len(rows), (at.step, at.text)
        assert all(row.field.label in at.text for row in rows), (at.step, at.text)
    panel = view.query_one(FigurePanel)
    if panel.display:
        assert panel.size.height >= least, (at.step, at.text)


@pytest.mark.parametrize(
    ("size", "system"), [(SIZES[0], System.METRIC), *((size, System.US) for size in SIZES)]
)
async def test_every_step_of_a_job_that_has_begun_fits(
    size: tuple[int, int], system: System
) -> None:
    clock = ManualClock()
    now = clock.now()
    weather = WeatherRead(n=0, at=now, air=q(21, "degC"), humidity=q(50, "%"), part=q(20, "degC"))
    before = (weather, *coated(clock, "left door"))
    async with at_bench(
        "cautions",
        *before,
        clock=clock,
        size=size,
        system=system,
        profile=bundled("two-pack-clear"),
        parts=("left door", "right door", "hood"),
    ) as at:
        for step in steps_of(at.bench.desk.job):
            await at.open_step(step.key)
            # The pattern's panel is a line of its own beneath the paper.
            _all_in_sight(at, 1 if step.kind in ("pattern", "faults") else 4)


@pytest.mark.parametrize("size", SIZES)
async def test_while_it_is_poured_the_mark_is_large(size: tuple[int, int]) -> None:
    async with at_bench("mix", size=size, system=System.METRIC) as at:
        await at.type("660 ml")
        await at.press("enter", "space")
        await at.type("640")
        await at.press("enter")
        _all_in_sight(at, 6)
        # In a large window the pours stand as bars.
        drawn = at.app.screen.query_one(PourTable if size == SIZES[0] else TriesView)
        assert 0 < drawn.region.bottom <= size[1] - 1


@pytest.mark.parametrize("size", SIZES)
async def test_while_it_is_thinned_the_figure_is_large(size: tuple[int, int]) -> None:
    clock = ManualClock()
    runs: list[Event] = [
        EffluxTimed(n=0, at=clock.now(), cup="ford-4", seconds=seconds) for seconds in (38.5, 38.0)
    ]
    async with at_bench("thin", *runs, clock=clock, size=size, system=System.METRIC) as at:
        _all_in_sight(at, 6)


@pytest.mark.parametrize("before", ["cautions", "pattern"])
async def test_pictures_stand_in_the_order_they_are_told_whatever_step_came_before(
    before: str,
) -> None:
    async with at_bench(before, profile=bundled("two-pack-clear")) as at:
        await at.open_step("pattern")
        await at.press("right")
        paper, advice = at.app.screen.query_one(SprayPaper), at.app.screen.query_one(PageView)
        assert 0 < paper.region.y < advice.region.y


async def test_too_small_a_window_says_what_is_needed_and_the_clocks_go_on() -> None:
    clock = ManualClock()
    async with at_bench("coats", *coated(clock, "door"), clock=clock, size=(50, 14)) as at:
        assert "the bench needs 58 x 18" in at.words
        assert "9:59" not in at.text
        await at.pass_time(1)
        assert "9:59" in at.text
        await at.pilot.resize_terminal(80, 24)
        await at.settle()
        assert "the bench needs" not in at.words and "Coats and waits" in at.text
