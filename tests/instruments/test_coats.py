"""Coats and the gauge: from one to the other and back while the film is wet, and on whose turn it is."""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from booth.clock import ManualClock
from booth.instruments.film import between_coats
from booth.job.events import CoatBegun, CoatEnded, Event, FilmRead, StepDone
from booth.profile.model import Film, Profile
from tests.instruments.at_bench import at_bench, context_of
from tests.job.make import profile as trial

TWO_COATS: Profile = msgspec.structs.replace(trial(), film=Film(coats=2))


def _coat(clock: ManualClock, part: str, coat: int, *, ended: bool = True) -> list[Event]:
    begun = CoatBegun(n=0, at=clock.now(), part=part, coat=coat)
    return [begun, CoatEnded(n=0, at=clock.now(), part=part, coat=coat)] if ended else [begun]


async def test_the_gauge_is_one_key_away_and_enter_comes_back_to_whose_turn_it_is() -> None:
    def before(clock: ManualClock) -> Sequence[Event]:
        return _coat(clock, "door", 1)

    async with at_bench("coats", profile=TWO_COATS, before=before, size=(80, 24)) as b:
        assert "begin coat 1: hood" in b.text and "→  gauge" in b.text
        await b.press("right")
        await b.pilot.pause()
        assert b.bench.step.kind == "film" and "door, coat 1" in b.text
        await b.type("2 mil")
        await b.press("enter")
        await b.type("")
        assert isinstance(b.log[-1], FilmRead) and "back to the coats" in b.text
        await b.press("enter")
        await b.pilot.pause()
        assert b.bench.step.kind == "coats"
        # Not the door, which waits: the hood has no coat yet.
        assert "begin coat 1: hood" in b.text
        assert not any(isinstance(each, StepDone) for each in b.log)


async def test_a_coat_that_is_being_sprayed_is_the_chosen_one_on_the_way_back() -> None:
    def before(clock: ManualClock) -> Sequence[Event]:
        return [*_coat(clock, "door", 1), *_coat(clock, "hood", 1, ended=False)]

    async with at_bench("coats", profile=TWO_COATS, before=before) as b:
        assert "end coat 1: hood" in b.text


async def test_before_the_first_coat_it_says_how_and_there_is_nothing_to_gauge() -> None:
    async with at_bench("coats", profile=TWO_COATS, size=(80, 24)) as b:
        assert "edges first" in b.text and "gauge" not in b.text
        await b.press("right")
        await b.pilot.pause()
        assert b.bench.step.kind == "coats"
        await b.press("space")
        assert "SPRAYING" in b.text and "edges first" not in b.text


def test_after_the_last_coat_the_gauge_leads_on() -> None:
    clock = ManualClock()
    first = [*_coat(clock, "door", 1), *_coat(clock, "hood", 1)]
    last = [*_coat(clock, "door", 2), *_coat(clock, "hood", 2)]
    assert not between_coats(context_of(profile=TWO_COATS, step="film").job)
    assert between_coats(context_of(*first, profile=TWO_COATS, step="film").job)
    assert not between_coats(context_of(*first, *last, profile=TWO_COATS, step="film").job)
    left = StepDone(n=0, at=clock.now(), step="coats")
    assert not between_coats(context_of(*first, left, profile=TWO_COATS, step="film").job)
