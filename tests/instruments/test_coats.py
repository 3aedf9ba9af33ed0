"""Coats and the gauge: from one to the other and back while the film is wet, and on whose turn it is."""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from booth.clock import ManualClock
from booth.instruments.film.instrument import between_coats
from booth.log.events import BatchMixed, CoatBegun, CoatEnded, Event, FilmRead, StepDone
from booth.profile.model import Film, Profile
from tests.instruments.at_bench import at_bench, context_of
from tests.job.make import profile as trial
from tests.job.make import q

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


async def test_a_coat_from_a_batch_whose_pot_life_is_over_is_warned_of_and_logged() -> None:
    def before(clock: ManualClock) -> Sequence[Event]:
        return [BatchMixed(n=0, at=clock.now(), batch=1, total=q(500, "ml"))]

    async with at_bench("coats", before=before) as b:
        await b.pass_time(3.9 * 3600)
        await b.press("space")
        assert "pot life is over" not in b.text  # 4 h in the trial profile
        await b.press("backspace")
        await b.pass_time(0.2 * 3600)
        await b.press("space")
        assert "batch 1: its pot life is over. Do not spray it." in b.text
        assert isinstance(b.log[-1], CoatBegun)


async def test_a_coat_begun_before_its_wait_is_over_is_said_and_logged() -> None:
    async with at_bench("coats", before=lambda clock: _coat(clock, "door", 1)) as b:
        await b.press("up")
        await b.pass_time(60)
        await b.press("space")  # 10 min of flash-off in the trial profile
        (begun,) = [each for each in b.log if isinstance(each, CoatBegun) and each.coat == 2]
        assert begun.part == "door" and begun.early_s == 540
        assert "door: 9:00 before its wait was over" in b.text


async def test_the_key_line_says_that_leaving_a_measurement_is_skipping_it() -> None:
    for step in ("efflux", "catch", "pattern", "weather", "air"):
        async with at_bench(step, profile=TWO_COATS) as b:
            assert ("Enter", "skip, say why") in b.instrument.keys(b.bench.desk.context)
    async with at_bench("strain", profile=TWO_COATS) as b:
        assert ("Enter", "go on") in b.instrument.keys(b.bench.desk.context)
