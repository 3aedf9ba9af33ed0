"""Coats and the gauge: from one to the other and back while the film is wet, and on whose turn it is."""

from __future__ import annotations

from collections.abc import Sequence

import msgspec
import pytest

from booth.bench.act import Menu
from booth.instruments.film import between_coats
from booth.log.events import (
    BatchMixed,
    CoatBegun,
    CoatEnded,
    Event,
    FilmRead,
    Restored,
    StepDone,
    TouchTried,
    Voided,
)
from booth.profile.model import Film, Profile, Range
from booth.words.shown import Parts
from tests.instruments.at_bench import AtBench, context_of, in_mild_weather
from tests.job.make import profile as trial
from tests.job.make import q
from tests.manual_clock import ManualClock

TWO_COATS: Profile = msgspec.structs.replace(trial(), film=Film(coats=Range(2, 2)))
GAUGE = "Read the wet-film gauge"


def _coat(clock: ManualClock, part: str, coat: int, *, ended: bool = True) -> list[Event]:
    begun = CoatBegun(n=0, at=clock.now(), part=part, coat=coat)
    return [begun, CoatEnded(n=0, at=clock.now(), part=part, coat=coat)] if ended else [begun]


def door_coated(clock: ManualClock) -> Sequence[Event]:
    return _coat(clock, "door", 1)


def offered(b: AtBench) -> list[str]:
    """What the right arrow offers."""
    b.press("right")
    (menu,) = (each for each in b.rest if isinstance(each, Menu))
    return [choice.words for choice in menu.choices]


def chosen(b: AtBench) -> str:
    """The part that is marked in the table."""
    (parts,) = b.bench.instrument.picture(b.now, b.rows.values)
    assert isinstance(parts, Parts)
    return parts.rows[parts.chosen].name


def test_the_gauge_is_offered_and_enter_comes_back_to_whose_turn_it_is() -> None:
    b = AtBench("coats", profile=TWO_COATS, before=door_coated)
    assert b.keys["Space"] == "begin coat 1: hood" and b.keys["→"] == "more"
    assert GAUGE in offered(b)
    b.choose(GAUGE)
    assert b.bench.step.kind == "film" and "door, coat 1" in b.text
    b.type("2mil")
    b.press("enter", "enter")
    assert isinstance(b.log[-1], FilmRead) and b.keys["Enter"] == "back to the coats"
    b.press("enter")
    assert b.bench.step.kind == "coats"
    # Not the door, which waits: the hood has no coat yet.
    assert b.keys["Space"] == "begin coat 1: hood"
    assert not any(isinstance(each, StepDone) for each in b.log)


def test_a_coat_that_is_being_sprayed_is_the_chosen_one_on_the_way_back() -> None:
    def before(clock: ManualClock) -> Sequence[Event]:
        return [*_coat(clock, "door", 1), *_coat(clock, "hood", 1, ended=False)]

    b = AtBench("coats", profile=TWO_COATS, before=before)
    assert b.keys["Space"] == "end coat 1: hood" and chosen(b) == "hood"


def test_before_the_first_coat_there_is_nothing_to_gauge_and_nothing_to_touch() -> None:
    b = AtBench("coats", profile=TWO_COATS)
    assert any("dges first" in line for line in b.bench.step.how)
    assert not any("gauge" in words or "touched" in words for words in offered(b))
    b.press("space")
    assert "SPRAYING" in b.text


def test_after_the_last_coat_the_gauge_leads_on() -> None:
    clock = ManualClock()
    first = [*_coat(clock, "door", 1), *_coat(clock, "hood", 1)]
    last = [*_coat(clock, "door", 2), *_coat(clock, "hood", 2)]
    assert not between_coats(context_of(profile=TWO_COATS, step="film").job)
    assert between_coats(context_of(*first, profile=TWO_COATS, step="film").job)
    assert not between_coats(context_of(*first, *last, profile=TWO_COATS, step="film").job)
    left = StepDone(n=0, at=clock.now(), step="coats")
    assert not between_coats(context_of(*first, left, profile=TWO_COATS, step="film").job)


def test_space_begins_and_ends_and_the_next_part_is_chosen() -> None:
    b = AtBench("coats", profile=TWO_COATS)
    for word in ("begin coat 1: door", "end coat 1: door", "begin coat 1: hood"):
        assert b.keys["Space"] == word
        b.press("space")
    b.press("space")
    assert [type(each) for each in b.log] == [CoatBegun, CoatEnded, CoatBegun, CoatEnded]
    assert chosen(b) == "door" and b.keys["Space"] == "begin coat 2: door"


@pytest.mark.parametrize("apart", [0.06, 0.3])
def test_a_press_that_bounced_does_not_end_the_coat_it_began(apart: float) -> None:
    b = AtBench("coats", profile=TWO_COATS)
    b.press("space")
    b.clock.advance(apart)
    b.press_now("space")
    assert [type(each) for each in b.log] == [CoatBegun]


def test_space_held_down_is_one_press() -> None:
    b = AtBench("coats", profile=TWO_COATS)
    b.press("space")
    for _ in range(50):
        b.clock.advance(0.03)
        b.press_now("space")
    assert [type(each) for each in b.log] == [CoatBegun]


def test_a_coat_that_is_being_sprayed_is_not_left_with_enter() -> None:
    b = AtBench("coats", profile=TWO_COATS)
    b.press("space", "enter")
    assert b.bench.step.key == "coats" and [type(each) for each in b.log] == [CoatBegun]
    assert b.said == "door: a coat is being sprayed. Space ends it there."
    b.press("space", "enter")
    assert isinstance(b.log[-1], StepDone) and b.bench.step.key != "coats"


def test_backspace_voids_the_last_entry_of_the_chosen_part_and_names_it() -> None:
    def before(clock: ManualClock) -> Sequence[Event]:
        return [*_coat(clock, "door", 1), *_coat(clock, "hood", 1)]

    b = AtBench("coats", profile=TWO_COATS, before=before)
    assert chosen(b) == "door" and b.keys["Bksp"] == "void: coat 1 on door ended"
    b.press("backspace")
    assert isinstance(b.log[-1], Voided)
    assert b.said == "Voided: coat 1 on door ended. Backspace brings it back."
    assert b.job.running_coat("door") is not None and b.job.running_coat("hood") is None
    assert b.keys["Bksp"] == "bring back: coat 1 on door ended"
    b.press("backspace")
    assert isinstance(b.log[-1], Restored) and b.job.running_coat("door") is None


def test_up_from_the_first_part_leads_to_the_steps_and_space_opens_one() -> None:
    b = AtBench("coats", profile=TWO_COATS)
    b.press("up")
    assert b.bench.picked == "coats" and b.keys["Space"] == "back"
    b.type("5")
    assert b.log == [] and b.bench.picked == "coats"
    b.press("up")
    assert b.keys["Space"] == "open this step"
    b.press("space")
    assert b.bench.picked == "" and b.bench.step.key != "coats"


def test_a_click_chooses_a_part() -> None:
    b = AtBench("coats", profile=TWO_COATS)
    act = b.bench.instrument.pick(b.now, b.rows, 1)
    assert act is not None
    b.bench.carry_out(act, b.clock.now())
    assert chosen(b) == "hood" and b.bench.instrument.pick(b.now, b.rows, 2) is None


@pytest.mark.parametrize(("key", "result"), [("d", "dry"), ("k", "tacky"), ("w", "wet")])
def test_a_touch_test_has_a_letter_and_a_line_for_gloves(key: str, result: str) -> None:
    b = AtBench("coats", profile=TWO_COATS, before=door_coated)
    b.press("up", key)
    last = b.log[-1]
    assert isinstance(last, TouchTried) and (last.part, last.result) == ("door", result)
    assert b.said == f"door: touched {result}."
    assert f"door: touched {result}" in offered(b)
    b.choose(f"door: touched {result}")
    assert len(b.job.of(TouchTried)) == 2
    b.press("down", key)  # nothing flashes off on the hood
    assert len(b.job.of(TouchTried)) == 2 and b.said == "hood: no coat is flashing off."


def test_a_coat_from_a_batch_whose_pot_life_is_over_is_warned_of_and_logged() -> None:
    def before(clock: ManualClock) -> Sequence[Event]:
        return [BatchMixed(n=0, at=clock.now(), batch=1, total=q(500, "ml"))]

    b = AtBench("coats", before=before)
    b.pass_time(3.9 * 3600)
    b.press("space")
    assert "pot life is over" not in b.text  # 4 h in the trial profile
    b.press("backspace")
    b.pass_time(0.2 * 3600)
    b.press("space")
    assert b.said == "batch 1: its pot life is over. Do not spray it."
    assert isinstance(b.log[-1], CoatBegun)


def test_a_coat_begun_before_its_wait_is_over_is_said_and_logged() -> None:
    def before(clock: ManualClock) -> Sequence[Event]:
        return [*in_mild_weather(clock), *door_coated(clock)]

    b = AtBench("coats", before=before)
    b.press("up")
    b.pass_time(59)
    b.press("space")  # 10 min of flash-off in the trial profile
    (begun,) = [each for each in b.log if isinstance(each, CoatBegun) and each.coat == 2]
    assert begun.part == "door" and begun.early_s == 540
    assert b.said.startswith("door: ") and " before its wait was over. It is in the log; " in b.said
    assert b.said.endswith("trapped solvent can blister or sag.")


def test_a_coat_that_cannot_be_kept_is_not_begun_and_nothing_is_said_of_it() -> None:
    b = AtBench("coats", before=door_coated)
    b.press("up")
    b.refuses = True
    b.press("space")
    assert b.job.running_coat("door") is None and b.said == ""
