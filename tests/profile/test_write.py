"""What is written is read back the same, in units that a painter would type."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings

from booth.profile.model import Profile, Range
from booth.profile.ranges import typed_range
from booth.profile.read import read_profile, read_text
from booth.profile.save import write
from booth.toml.typed import typed
from booth.units import Kind, System, read
from tests.profile.alike import differences
from tests.profile.generated import profiles

DEMOS = sorted((Path(__file__).parents[2] / "profiles").glob("*.toml"))


def again(profile: Profile, system: System) -> Profile:
    answer = read_text(write(profile, system), f"{profile.key}.toml")
    assert isinstance(answer, Profile), [str(fault) for fault in answer]
    return answer


@given(profiles)
@settings(max_examples=120, deadline=None)
def test_any_profile_comes_back_the_same(profile: Profile) -> None:
    for system in System:
        assert differences(profile, again(profile, system)) == []


@given(profiles)
@settings(max_examples=40, deadline=None)
def test_writing_what_was_read_changes_nothing_more(profile: Profile) -> None:
    once = again(profile, System.US)
    assert write(again(once, System.US), System.US) == write(once, System.US)


@pytest.mark.parametrize("path", DEMOS, ids=lambda path: path.stem)
@pytest.mark.parametrize("system", System)
def test_a_demo_profile_comes_back_exactly(path: Path, system: System) -> None:
    profile = read_profile(path)
    assert isinstance(profile, Profile)
    assert again(profile, system) == profile


# What a painter types is what the file then says, though base units are kept between the two.
AS_TYPED = [
    ("6.5 fl oz/min", Kind.DELIVERY),
    ("180 ml/min", Kind.DELIVERY),
    ("28 psi", Kind.PRESSURE),
    ("2.5 bar", Kind.PRESSURE),
    ("2.5 mil", Kind.THICKNESS),
    ("60 um", Kind.THICKNESS),
    ("8 in", Kind.LENGTH),
    ("150 mm", Kind.LENGTH),
    ("10 min", Kind.TIME),
    ("90 min", Kind.TIME),
    ("24 h", Kind.TIME),
    ("7 d", Kind.TIME),
    ("45 s", Kind.TIME),
    ("1.05 g/ml", Kind.DENSITY),
    ("8.3 lb/gal", Kind.DENSITY),
    ("0.85 mm2/s", Kind.VISCOSITY),
    ("1.4 mm", Kind.TIP),
]


@pytest.mark.parametrize(("text", "kind"), AS_TYPED)
@pytest.mark.parametrize("system", System)
def test_a_typed_quantity_is_written_as_it_was_typed(text: str, kind: Kind, system: System) -> None:
    assert typed(read(text, kind, System.US).value, kind, system) == text


@pytest.mark.parametrize(
    ("text", "system"), [("70 F", System.US), ("-10 C", System.METRIC), ("21 C", System.METRIC)]
)
def test_a_temperature_is_written_in_the_painters_scale(text: str, system: System) -> None:
    assert typed(read(text, Kind.TEMPERATURE, System.US).value, Kind.TEMPERATURE, system) == text


def test_a_measured_value_is_rounded_and_written_in_the_painters_units() -> None:
    assert typed(187.333333, Kind.DELIVERY, System.METRIC) == "187.33 ml/min"
    # 187.333333 / 29.5735295625 = 6.33449 (US fluid ounce of 29.5735295625 ml, NIST HB 44 App. C)
    assert typed(187.333333, Kind.DELIVERY, System.US) == "6.3345 fl oz/min"


def test_ranges_are_written_in_the_forms_the_reader_takes() -> None:
    def text(ends: Range, **more: bool) -> str | None:
        return typed_range(ends, Kind.TIP, System.US, **more)

    assert text(Range(1.3, 1.4)) == "1.3 to 1.4 mm"
    assert text(Range(low=1.3)) == "at least 1.3 mm"
    assert text(Range(high=1.4)) == "at most 1.4 mm"
    assert text(Range(1.4, 1.4)) == "1.4 mm"
    assert text(Range(1.4, 1.4), single=False) == "1.4 to 1.4 mm"
