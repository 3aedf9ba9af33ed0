"""A rehearsal with water: which steps it has, how they are said, which cautions hold."""

from __future__ import annotations

import msgspec
import pytest
from hypothesis import given, settings

from booth.instruments.registry import instruments
from booth.profile.cautions import ALWAYS, BY_HAZARD, OF_WATER, WIDEST, cautions_with_water
from booth.profile.model import Film, Hazard, Profile, Range, Step
from booth.profile.rehearsed import THINNER, WITH_WATER, steps_with_water
from booth.profile.step_kinds import NAMES
from booth.profile.step_words import WIDEST as WIDEST_STEP
from booth.profile.steps import listed_steps, steps_for
from booth.trade.cups.cup_table import CUPS
from tests.profile.generated import profiles
from tests.profile.test_cautions import ASSURES, words

PLAIN = Profile(key="a", name="A", source="sheet", film=Film(coats=Range(2, 2)))
#: What is about the coating alone, by the order of a job.
LEFT_OUT = {
    *("weather", "fresh-air", "amount", "plan", "mix", "efflux", "thin", "strain"),
    *("film", "after", "faults", "plain"),
}
#: Kinematic viscosity of water at 20 C [mm2/s]: 1.0034 (ISO/TR 3666, from memory).
WATER_MM2_S = 1.0034


def kinds(steps: tuple[Step, ...]) -> list[str]:
    return [step.kind for step in steps]


def test_every_kind_of_step_is_rehearsed_or_left_out() -> None:
    assert set(WITH_WATER) | LEFT_OUT == set(NAMES) and not set(WITH_WATER) & LEFT_OUT
    assert set(WITH_WATER) <= set(instruments())


def test_no_cup_is_rehearsed_since_water_is_too_thin_for_all_of_them() -> None:
    assert all(cup.low_mm2_s > WATER_MM2_S for cup in CUPS.values())
    assert "efflux" not in WITH_WATER


@given(profiles)
@settings(max_examples=60, deadline=None)
def test_the_steps_are_those_of_the_job_in_its_order(profile: Profile) -> None:
    real, found = steps_for(profile), steps_with_water(profile)
    assert {"cautions", "prepare", "clean", "result"} <= set(kinds(found)) <= set(WITH_WATER)
    assert len({step.key for step in found}) == len(found)
    own = [step.key for step in found if step.key in {each.key for each in real}]
    assert own == [step.key for step in real if step.kind in WITH_WATER]
    assert all(step.how for step in found)
    # What was not practised costs nothing: only the cautions are not passed over without a word.
    assert all(step.must == (step.kind == "cautions") for step in found)


def test_a_list_of_ones_own_gets_what_every_rehearsal_has() -> None:
    own = listed_steps([{"kind": "weather"}, {"kind": "catch", "name": "Flow"}, {"kind": "coats"}])
    found = steps_with_water(msgspec.structs.replace(PLAIN, steps=own))
    assert kinds(found) == ["cautions", "prepare", "catch", "coats", "clean", "result"]
    assert found[2].name == "Flow" and "water" in " ".join(found[2].how)


def test_the_words_fit_and_assure_nothing() -> None:
    for kind, lines in WITH_WATER.items():
        assert len(lines) <= 5, kind
        for line in lines:
            assert len(line) <= WIDEST_STEP and line.isascii(), line
            assert not ASSURES.search(line), line


def test_thinner_is_named_where_water_must_not_stay() -> None:
    def clean(profile: Profile) -> tuple[str, ...]:
        return next(step.how for step in steps_with_water(profile) if step.kind == "clean")

    waterborne = msgspec.structs.replace(PLAIN, waterborne=True)
    assert THINNER in clean(PLAIN) and THINNER not in clean(waterborne)


# -- cautions ------------------------------------------------------------------------------------

#: About the coating alone: its poison, its vapour, its fire.
OF_THE_COATING = {
    *("ignition", "this laptop", "static", "fresh air", "rags", "isocyanate", "flammable"),
    *("solvent vapour", "sensitiser", "corrosive", "dust", "self-heating rags"),
}
STAYS = {"data sheet", "pressure", "eyes and skin", "breathing"}


def test_each_caution_says_whether_it_holds_with_water() -> None:
    every = (*ALWAYS, *BY_HAZARD.values())
    assert {each.key for each in every if not each.with_water} == OF_THE_COATING
    assert {each.key for each in every if each.with_water} == STAYS
    assert not [each.key for each in every if "|" in each.key]


def test_before_a_rehearsal_its_own_cautions_come_and_those_that_stay() -> None:
    own = "Never spray this below freezing."
    profile = msgspec.structs.replace(PLAIN, hazards=tuple(Hazard), cautions=(own,))
    found = cautions_with_water(profile)
    assert found[: len(OF_WATER)] == OF_WATER
    rest = {each.key for each in found[len(OF_WATER) :]}
    assert rest == STAYS | {"of the profile 1"}, "what a sheet warns of itself stays"


@pytest.mark.parametrize("caution", OF_WATER, ids=lambda caution: caution.key)
def test_the_cautions_of_water_fit_and_assure_nothing(caution: object) -> None:
    said = next(each for each in OF_WATER if each is caution)
    assert not ASSURES.search(words(said)) and said.source
    assert 2 <= len(said.lines) <= 5
    assert all(line.isascii() and len(line) <= WIDEST for line in said.lines)


#: What is there with water as well, and what water itself does.
SAID = [
    ("sockets", "wet hands"),
    ("loud", "ears"),
    ("belt", "start by itself"),
    ("rusts", "isocyanate", "not waterborne", "pressure builds up"),
    ("those for the coating itself come before the real job",),
]


@pytest.mark.parametrize("phrases", SAID)
def test_what_has_to_be_said_of_water_is_said(phrases: tuple[str, ...]) -> None:
    said = [words(caution).lower() for caution in OF_WATER]
    assert any(all(phrase in each for phrase in phrases) for each in said), phrases
