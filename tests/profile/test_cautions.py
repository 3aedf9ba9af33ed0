"""The cautions: those that must be there are, they fit the screen, and none of them reassures."""

from __future__ import annotations

import re
from pathlib import Path

import msgspec
import pytest
from hypothesis import given, settings

from booth.profile.cautions import ALWAYS, BY_HAZARD, WIDEST, Caution, cautions_for
from booth.profile.keys import PROFILE
from booth.profile.model import Film, Hazard, Profile, Range
from booth.profile.step_kinds import NAMES
from booth.profile.step_words import FIRST_TIME, HOW
from tests.profile.generated import profiles

PLAIN = Profile(key="a", name="A", source="sheet", film=Film(coats=Range(1, 1)))
ALL = (*ALWAYS, *BY_HAZARD.values())

# 'Safety data sheet' is the name of a document; everything else built on 'safe' is an assurance.
ASSURES = re.compile(
    r"\bsafe(ly|r|st|ty(?! data sheet))?\b|harmless|no danger|no risk|not dangerous|no hazard"
    r"|nothing to fear|protects you|is enough to",
    re.IGNORECASE,
)


def words(caution: Caution) -> str:
    return " ".join((caution.title, *caution.lines))


def test_the_search_for_assurances_finds_one() -> None:
    assert ASSURES.search("It is safe to spray.")
    assert ASSURES.search("This can be sprayed safely.")
    assert not ASSURES.search("Read the safety data sheet.")


@pytest.mark.parametrize("caution", ALL, ids=lambda caution: caution.key)
def test_no_caution_reassures_and_each_fits(caution: Caution) -> None:
    assert not ASSURES.search(words(caution))
    assert caution.source
    assert 2 <= len(caution.lines) <= 5
    for line in caution.lines:
        assert line.isascii()
        assert len(line) <= WIDEST, line


def test_no_other_words_of_the_profile_package_reassure() -> None:
    texts = [*sum((*HOW.values(), *FIRST_TIME.values()), ()), *NAMES.values()]
    folder = Path(__file__).parents[2] / "profiles"
    texts += [path.read_text(encoding="utf-8") for path in folder.glob("*.toml")]
    texts.append(PROFILE.reference())
    assert len(texts) > 100
    for text in texts:
        assert not ASSURES.search(text), text


def test_every_hazard_brings_its_own_caution() -> None:
    assert set(BY_HAZARD) == set(Hazard)
    keys = [caution.key for caution in ALL]
    assert len(set(keys)) == len(keys)


# What has to be said in every job, and in words that cannot be missed.
SAID_ALWAYS = [
    ("floor", "pilot light"),
    ("laptop", "charger", "outside the spraying area", "partition", "20 ft (6 m)"),
    ("ground", "metal parts", "cans"),
    ("never", "skin"),
    ("goggles",),
    ("breathing", "dust mask", "supplied air", "intake", "carbon monoxide"),
    ("pressure", "hospital at once", "drain the receiver"),
    ("rags", "metal can with a lid", "every day"),
    ("data sheet", "local codes", "licensed"),
]


@pytest.mark.parametrize("phrases", SAID_ALWAYS)
def test_what_holds_always_is_said_for_a_profile_without_hazards(phrases: tuple[str, ...]) -> None:
    said = [words(caution).lower() for caution in cautions_for(PLAIN)]
    assert any(all(phrase in each for phrase in phrases) for each in said), phrases


def test_isocyanates_ask_for_supplied_air() -> None:
    profile = msgspec.structs.replace(PLAIN, hazards=(Hazard.ISOCYANATE,))
    first = cautions_for(profile)[0]
    assert first.key == "isocyanate"
    said = words(first).lower()
    assert "supplied air" in said
    assert "a cartridge mask is not enough" in said
    assert "nothing warns you" in said
    # NIOSH: REL 0.005 ppm, ceiling 0.020 ppm for HDI.
    assert "0.005 ppm" in first.source
    assert "0.020 ppm" in first.source


def test_what_burns_says_so_of_dry_nitrocellulose() -> None:
    said = words(BY_HAZARD[Hazard.FLAMMABLE]).lower()
    assert "dry nitrocellulose" in said and "friction" in said and "no spark" in said


# 29 CFR 1910.107(g) as the State of Washington prints it, WAC 296-24-37013: (2) cleaning with
# nonsparking tools, (3) residue and rags, (6) combinations of materials; (c)(6) electrical
# equipment.
PARAGRAPHS = {
    "this laptop": "(c)(6)",
    "rags": "(g)(3)",
    "flammable": "(g)(2)",
    "self-heating rags": "(g)(3), (g)(6)",
}


@pytest.mark.parametrize(("key", "paragraph"), PARAGRAPHS.items())
def test_each_paragraph_is_the_one_that_says_it(key: str, paragraph: str) -> None:
    (found,) = (caution for caution in ALL if caution.key == key)
    assert f"29 CFR 1910.107{paragraph}" in found.source
    assert not re.search(r"\(g\)\((1|5)\)|\(c\)\(5\)", found.source)


def test_what_was_not_read_again_says_so_in_plain_words() -> None:
    assert not [caution.key for caution in ALL if "recalled" in caution.source]


@given(profiles)
@settings(max_examples=60, deadline=None)
def test_every_hazard_and_every_own_warning_is_shown_once(profile: Profile) -> None:
    found = cautions_for(profile)
    assert len(found) == len(ALWAYS) + len(profile.hazards) + len(profile.cautions)
    assert found[-len(ALWAYS) :] == ALWAYS
    assert len({caution.key for caution in found}) == len(found)
    for caution in found:
        for line in (caution.title, *caution.lines):
            assert line.isprintable()


def test_a_warning_of_the_profile_is_shown_in_its_own_words() -> None:
    text = "Dust of this primer must not be breathed while sanding, even when it \x1b[2J looks dry."
    own = cautions_for(msgspec.structs.replace(PLAIN, cautions=(text,)))[0]
    assert " ".join(own.lines) == text.replace("\x1b", "␛")
    assert all(len(line) <= WIDEST for line in own.lines)
    assert own.source == "sheet"
