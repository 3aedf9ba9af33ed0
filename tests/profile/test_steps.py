"""The steps cover the whole job in order, fit the screen, and suit the product."""

from __future__ import annotations

import msgspec
import pytest
from hypothesis import given, settings

from booth.profile.model import (
    AtTemperature,
    Efflux,
    Film,
    Gun,
    Hazard,
    Mix,
    MixPart,
    Profile,
    Range,
    Step,
    Thinner,
    WaitRule,
)
from booth.profile.step_kinds import MUST, NAMES
from booth.profile.step_words import FIRST_TIME, HOW, WIDEST
from booth.profile.steps import DEFAULT_STEPS, OTHERWISE, listed_steps, steps_for
from tests.profile.generated import profiles

PLAIN = Profile(key="a", name="A", source="sheet", film=Film(coats=Range(1, 1)))
WAIT = WaitRule((AtTemperature(20.0, 900.0),))
TWO_PACK = Mix(parts=(MixPart("a", 2), MixPart("b", 1)), thinner=Thinner("t"))


def how(kind: str, **changes: object) -> str:
    profile = msgspec.structs.replace(PLAIN, **changes)
    return " ".join(next(step for step in steps_for(profile) if step.kind == kind).how)


def test_every_kind_has_its_name_and_words() -> None:
    assert set(NAMES) - {"plain"} == set(HOW)
    assert set(NAMES) > MUST
    assert {*OTHERWISE, "stir"} == set(FIRST_TIME)
    assert {words.partition(",")[0] for words in OTHERWISE} <= set(NAMES)


@pytest.mark.parametrize("key", [*HOW, *FIRST_TIME])
def test_two_to_five_short_lines(key: str) -> None:
    lines = {**HOW, **FIRST_TIME}[key]
    assert 2 <= len(lines) <= 5
    for line in lines:
        assert line.isascii()
        assert len(line) <= WIDEST == 56, line


def test_the_job_in_its_order() -> None:
    kinds = [step.kind for step in DEFAULT_STEPS]
    assert kinds == list(HOW)
    for earlier, later in [
        ("cautions", "prepare"),
        ("prepare", "weather"),
        ("mix", "efflux"),
        ("efflux", "thin"),
        ("strain", "air"),
        ("air", "catch"),
        ("catch", "fan"),
        ("fan", "pattern"),
        ("pattern", "coats"),
        ("coats", "clean"),
        ("clean", "after"),
        ("after", "result"),
    ]:
        assert kinds.index(earlier) < kinds.index(later)


def test_cautions_and_measurements_ask_for_a_word_why() -> None:
    asking = {step.kind for step in DEFAULT_STEPS if step.must}
    assert asking == {"cautions", "weather", "efflux", "air", "catch", "pattern"}


def test_settings_are_said_as_they_are_made() -> None:
    assert "trigger still pulled" in how("air")
    assert "Open the fan fully" in how("fan")
    assert "just begins to narrow" in how("fan")
    assert "Strain beforehand" not in how("strain")


def test_a_coarse_metallic_is_strained_beforehand() -> None:
    words = how("strain", gun=Gun(coarse_metallic=True))
    assert "Strain beforehand" in words
    assert "Leave the cup's own filter out" in words


def test_one_can_is_stirred_and_two_are_mixed() -> None:
    keys = [step.key for step in steps_for(PLAIN)]
    assert "stir" in keys
    assert "mix" not in keys
    mixed = steps_for(msgspec.structs.replace(PLAIN, mix=TWO_PACK))
    assert [step.key for step in mixed] == list(HOW)
    assert "pot life runs" in how("mix", mix=TWO_PACK)
    weighed = msgspec.structs.replace(TWO_PACK, by="weight")
    assert "on the scale" in how("mix", mix=weighed)
    standing = msgspec.structs.replace(TWO_PACK, induction=WAIT, pot_life=WAIT)
    assert "induction" in how("mix", mix=standing)


def test_words_that_suit_the_product() -> None:
    assert "names no thinner" in how("thin")
    assert "names no efflux time" in how("efflux")
    assert "first break" in how("efflux", efflux=Efflux("Ford #4", Range(20.0, 24.0)))
    assert "Rinse with water" in how("clean", waterborne=True)
    assert "hardens in the gun" in how("clean", mix=TWO_PACK)
    assert "10 psi" in how("air", gun=Gun(hvlp=True))
    assert "Supplied air" in how("fresh-air", hazards=(Hazard.ISOCYANATE,))
    assert "minimum against fire" in how("fresh-air")


def test_a_profiles_own_list_is_kept_and_cautions_come_first() -> None:
    own = (
        Step(key="efflux", kind="efflux", name="Cup", how=("As I do it.",), must=False),
        Step(key="coats", kind="coats", name="Coats"),
        Step(key="wait", kind="plain", name="Wait"),
    )
    found = steps_for(msgspec.structs.replace(PLAIN, steps=own))
    assert [step.key for step in found] == ["cautions", "efflux", "coats", "wait"]
    assert found[0].must
    assert found[1] == own[0]
    assert found[2].how == HOW["coats"]
    assert found[3] == own[2]


def test_a_plain_step_never_takes_the_key_of_a_kind() -> None:
    named = listed_steps([{"kind": "plain", "name": "Cautions"}, {"kind": "plain", "name": "Wait"}])
    assert [step.key for step in named] == ["plain-cautions", "wait"]
    found = steps_for(msgspec.structs.replace(PLAIN, steps=named))
    assert [step.key for step in found] == ["cautions", "plain-cautions", "wait"]


@given(profiles)
@settings(max_examples=80, deadline=None)
def test_any_profile_has_steps_with_keys_of_their_own(profile: Profile) -> None:
    steps = steps_for(profile)
    keys = [step.key for step in steps]
    assert len(set(keys)) == len(keys)
    assert all(step.kind in NAMES for step in steps)
    first = next(step for step in steps if step.kind == "cautions")
    assert first.must
    assert first.how
