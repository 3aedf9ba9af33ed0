"""What is left in the pot once some of it was caught and shot on paper. All values are invented."""

from __future__ import annotations

import pytest

from booth.job.pot import catch_s, gun_is_filled, left_in_pot
from booth.log import events as ev
from booth.profile.model import Step
from tests.job.make import at, q
from tests.job.test_thin import added, batch, job

CAUGHT = ev.CatchMade(n=0, at=at(3), seconds=30, amount=q(90, "ml"), delivery_ml_min=180)
WATER = ev.CatchMade(
    n=0, at=at(3), seconds=30, amount=q(90, "ml"), delivery_ml_min=180, liquid="water"
)
PAPER = ev.PatternRead(n=0, at=at(4), shape="even")
FAN = ev.FanSet(n=0, at=at(4), width=q(250, "mm"))
BEGUN = ev.CoatBegun(n=0, at=at(5), part="door", coat=1)


@pytest.mark.parametrize(
    ("events", "left"),
    [
        ((), None),
        ((batch(400, 200),), 600),
        ((batch(400, 200), WATER), 600),
        ((batch(400, 200), CAUGHT), 510),
        # Two papers of two seconds at 180 ml/min are 12 ml.
        ((batch(400, 200), CAUGHT, PAPER, FAN), 498),
        # What was said with the thinner counts from there on.
        ((batch(400, 200), CAUGHT, added(20, 480)), 500),
        ((batch(400, 200), added(20, 480), CAUGHT), 410),
        # Not known, rather than too much: nobody measures what a coat took.
        ((batch(400, 200), BEGUN), None),
    ],
)
def test_what_is_left(events: tuple[ev.Event, ...], left: float | None) -> None:
    assert left_in_pot(job(*events)).left_ml == pytest.approx(left)


def test_a_weighed_catch_counts_by_the_density_of_the_mix() -> None:
    # 400 g of 1.0 and 210 g of 1.05 g/ml are 600 ml and 610 g.
    weighed = ev.CatchMade(n=0, at=at(3), seconds=30, amount=q(61, "g"), delivery_ml_min=120)
    assert left_in_pot(job(batch(400, 210, unit="g"), weighed)).left_ml == pytest.approx(540)


def test_the_gun_is_filled_once_a_batch_in_use_was_strained() -> None:
    strained = ev.StepDone(n=0, at=at(2), step="strain")
    finished = ev.BatchFinished(n=0, at=at(9), batch=1)
    assert not gun_is_filled(job())
    assert not gun_is_filled(job(batch(400, 200)))
    assert gun_is_filled(job(batch(400, 200), strained))
    assert not gun_is_filled(job(batch(400, 200), strained, finished))
    # A job without that step has it in the gun as it is mixed.
    assert gun_is_filled(job(batch(400, 200), steps=(Step("mix", "mix", "Mix"),)))


def test_a_catch_does_not_eat_the_batch() -> None:
    # About 205 ml/min are asked for: 30 s are some 100 ml, a sixth of 600 and most of 120.
    assert catch_s(job()) == catch_s(job(batch(400, 200))) == 30
    assert catch_s(job(batch(80, 40))) == 15
