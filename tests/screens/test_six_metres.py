"""From six metres: whose the figure is, how it stands and the figure itself, measured on drawn screens.

28 mm on a 14-inch screen: 4 rows of a window of 24, 5 of 30, 8 of 50.
"""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from booth.job.steps import steps_of
from booth.log import events as ev
from booth.moment import later
from booth.units import System
from booth.widgets.figure_panel import FigurePanel, lettered
from booth.words.afar import short_state
from tests.job.make import q
from tests.manual_clock import ManualClock
from tests.screens.at_app import AtApp, at_bench
from tests.screens.jobs import coated
from tests.screens.test_fits import bundled
from tests.widgets.ink import height_of, ink_of

WINDOWS = {(80, 24): 4, (100, 30): 5, (200, 50): 8}
PARTS = ("left door", "right door", "hood")


def measured(clock: ManualClock) -> Sequence[ev.Event]:
    """A job in which everything was measured once. Invented."""
    now = clock.now()
    return (
        *coated(clock, "left door", ago_s=300.0),
        ev.AreaAdded(
            n=0, at=now, shape="area", dimensions={}, area=q(2.0, "m2"), number=1, part=""
        ),
        ev.BatchMixed(n=0, at=later(now, -2400), batch=1, total=q(600, "ml")),
        ev.EffluxTimed(n=0, at=now, cup="ford-4", seconds=21.6),
        ev.AirRead(n=0, at=now, inlet=q(200, "kPa")),
        ev.CatchMade(
            n=0, at=now, seconds=30.0, amount=q(90, "ml"), delivery_ml_min=180.0, liquid="paint"
        ),
        ev.FanSet(n=0, at=now, width=q(250, "mm"), distance=q(200, "mm")),
        ev.FilmRead(
            n=0,
            at=now,
            part="left door",
            last_wetted=q(50, "um"),
            first_dry=q(60, "um"),
            coat=1,
        ),
        ev.PassTimed(n=0, at=now, length=q(1, "m"), seconds=2.5),
    )


def _read(at: AtApp, least: int) -> None:
    panel = at.app.screen.query_one(FigurePanel)
    shown = panel.shown
    ink = ink_of(panel._rows, shown.edge)
    assert shown.whose, (at.step, "nobody knows whose it is")
    whose, word = _seen_of(shown.whose, ink, least), shown.shown_word
    if word and not height_of(word, ink, least):
        # Said in short: all of it stands in the text.
        assert any(word in line for line in at.lines), (at.step, word, at.text)
        word = short_state(word)
    figure = _seen_of(shown.figure, ink, least, 0) if shown.in_words else lettered(shown)
    for text in filter(None, (whose, word, figure)):
        like = shown.like if text == lettered(shown) else ""
        assert height_of(text, ink, least, like=like), (at.step, text, shown, at.text)


def _seen_of(text: str, ink: Sequence[str], least: int, most: int | None = None) -> str:
    """The text, or what of it is left when it is shortened by whole words."""
    words = text.split()
    shorter = (" ".join(words[:n]) for n in range(len(words), 0, -1))
    most = least if most is None else most
    return next((each for each in shorter if height_of(each, ink, least, most)), text)


@pytest.mark.parametrize("system", [System.METRIC, System.US])
@pytest.mark.parametrize("size", WINDOWS)
@pytest.mark.parametrize("empty", [True, False], ids=["empty", "measured"])
async def test_every_instrument_is_read_from_six_metres(
    size: tuple[int, int], empty: bool, system: System
) -> None:
    clock = ManualClock()
    kept = () if empty else measured(clock)
    async with at_bench(
        "cautions",
        *kept,
        clock=clock,
        size=size,
        system=system,
        profile=bundled("two-pack-clear"),
        parts=PARTS,
    ) as at:
        for step in steps_of(at.bench.desk.job):
            await at.open_step(step.key)
            _read(at, WINDOWS[size])
