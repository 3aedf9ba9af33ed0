"""The clock was in doubt and the painter said how long ago something was: it is counted from there."""

from __future__ import annotations

import msgspec
import pytest

from booth.job.amiss import Cause, Grave
from booth.job.guard import amiss
from booth.job.wait import State, What
from booth.job.waits import standings
from booth.log import events as ev
from booth.log.codec import decode, encode
from booth.log.fold import Job, fold
from booth.moment import Basis, Moment, later
from booth.units import System
from booth.words.event_words import words
from booth.words.wait_words import state_word
from tests.job.make import START, at, mild, opened

#: The machine came back an hour before the coat ended, by its clock; it has run for 20 s.
BACK = Moment(START.wall - 3600, 20.0, "boot-b")


def coated(*more: ev.Event) -> Job:
    """A coat that ended at 0 s, with a note 120 s later."""
    events = [
        opened(("door",)),
        mild(),
        ev.CoatBegun(n=3, at=at(-60), part="door", coat=1),
        ev.CoatEnded(n=4, at=at(0), part="door", coat=1),
        ev.NoteMade(n=5, at=at(120), text="looked at it"),
    ]
    return fold([*events, *(msgspec.structs.replace(e, n=6 + n) for n, e in enumerate(more))])


def told(ago_s: float, when: Moment = BACK, target: int = 4) -> ev.AgeTold:
    return ev.AgeTold(n=0, at=when, target=target, ago_s=ago_s)


def test_what_is_told_makes_the_wait_known_again() -> None:
    (doubted,) = standings(coated(), BACK)
    assert doubted.doubtful and state_word(doubted) == "CHECK CLOCK"
    job = coated(told(300))
    (each,) = standings(job, BACK)
    assert (each.state, each.elapsed_s, each.basis) == (State.WAIT, 300, Basis.CONTINUOUS)
    (each,) = standings(job, later(BACK, 300))  # ten minutes of flash-off
    assert each.state is State.READY and not each.doubtful
    assert amiss(coated(), "door", BACK)[0].cause is Cause.CLOCK
    assert Cause.CLOCK not in [each.cause for each in amiss(job, "door", later(BACK, 300))]


def test_before_that_a_coat_takes_one_more_press() -> None:
    clock = next(each for each in amiss(coated(), "door", BACK) if each.cause is Cause.CLOCK)
    assert clock.grave is Grave.SPOILS and clock.asks


def test_the_last_word_counts_and_what_is_voided_does_not() -> None:
    for job, ago_s in (
        (coated(told(300), told(500)), 500),
        (coated(told(300), told(500), ev.Voided(n=0, at=BACK, target=7)), 300),
    ):
        assert standings(job, BACK)[0].elapsed_s == ago_s
    voided = coated(told(300), ev.Voided(n=0, at=BACK, target=6))
    assert standings(voided, BACK)[0].doubtful


def test_a_clock_that_is_set_afterwards_changes_nothing_of_it() -> None:
    stepped = Moment(BACK.wall + 9e6, BACK.continuous + 60, BACK.boot)
    assert standings(coated(told(300)), stepped)[0].elapsed_s == 360


def test_of_a_mix_on_an_older_one_the_older_ones_age_is_told() -> None:
    """What is asked is the age of what the wait runs from, not of the batch that it is of."""
    first, onto = (
        ev.BatchMixed(n=0, at=at(130), batch=1),
        ev.BatchMixed(n=0, at=at(900), batch=2, onto=1),
    )
    job = coated(first, onto)
    pots = [each for each in standings(job, BACK) if each.wait.what is What.POT_LIFE]
    assert {each.wait.since_n for each in pots} == {6} and all(each.doubtful for each in pots)
    job = coated(first, onto, told(2000, target=6))
    pots = [each for each in standings(job, BACK) if each.wait.what is What.POT_LIFE]
    assert {(each.elapsed_s, each.doubtful) for each in pots} == {(2000, False)}


@pytest.mark.parametrize("ago_s", [-5.0, 0.0])
def test_nothing_is_told_to_lie_ahead(ago_s: float) -> None:
    assert standings(coated(told(ago_s)), BACK)[0].elapsed_s == 0


def test_it_is_an_entry_with_words_of_its_own() -> None:
    event = msgspec.structs.replace(told(2700.0), n=6)
    assert decode(encode(event)) == event
    said = words(event, System.METRIC, coated(event))
    assert said == "number 4: 45 min before, as told while the clock was in doubt"
