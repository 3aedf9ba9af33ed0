"""What a pattern suggests, against the manual that lists causes; shapes against their moments."""

from __future__ import annotations

import itertools

import numpy as np
import pytest
from scipy import integrate

from booth.trade.pattern import pattern_reading as readings
from booth.trade.pattern.fan_profile import NAMES, profile_by_name
from booth.trade.pattern.pattern_reading import Seen
from booth.trade.result import BadInput
from tests.trade.outside import Kind, outside

#: Causes and remedies named in the manual, as the words that have to turn up in ours.
TM_43_0139 = {
    Seen.HEAVY_MIDDLE: ("fan closed too far", "atomising air", "too thick", "tip is too large"),
    Seen.HEAVY_BOTH_ENDS: ("fan air", "fluid", "Less air"),
    Seen.HEAVY_ONE_END: ("horn", "half a turn", "turned with the cap, it is the cap", "the tip"),
    Seen.CRESCENT: ("horn hole", "half a turn", "turned with the cap, it is the cap", "the tip"),
    Seen.SPITTING: ("cup", "vent", "tip", "steeply", "seat", "passage"),
}


@outside(
    readings.reading,
    kind=Kind.COPIED,
    source="US Army TM 43-0139, pages 5-9 (jerky spray) and 5-11 (defective spray patterns)",
)
@pytest.mark.parametrize("seen", TM_43_0139)
def test_a_reading_names_what_the_manual_names(seen: Seen) -> None:
    found = readings.reading(seen)
    text = " ".join((found.means, *found.turns))
    for words in TM_43_0139[seen]:
        assert words in text, (seen, words)
    assert "TM 43-0139" in found.source


def test_a_reading_can_be_asked_for_by_its_word_and_knows_its_profile() -> None:
    for seen in Seen:
        found = readings.reading(seen.value)
        assert found.seen is seen
        assert found.profile_name is None or found.profile_name in NAMES
        assert len(found.turns) >= 2
        assert all(turn.endswith(".") for turn in found.turns)
    assert readings.reading("crescent").profile_name is None
    with pytest.raises(ValueError, match="banana"):
        readings.reading("banana")


@pytest.mark.parametrize("seen", [Seen.HEAVY_ONE_END, Seen.CRESCENT, Seen.SPITTING])
def test_whoever_takes_cap_or_tip_off_is_told_to_let_the_pressure_out(seen: Seen) -> None:
    caution = readings.reading(seen).caution
    assert "let the pressure out" in caution
    assert "no ignition source" in caution


def test_no_reading_calls_anything_safe() -> None:
    for seen in Seen:
        found = readings.reading(seen)
        assert "safe" not in " ".join((found.means, *found.turns, found.caution)).lower()


def _zones(name: str, count: int) -> list[float]:
    """The mean of a profile in each of `count` zones, by scipy, on the scale of 0 to 9."""
    profile = np.vectorize(profile_by_name(name))
    edges = np.linspace(-0.5, 0.5, count + 1)
    heavy = [
        integrate.fixed_quad(profile, a, b, n=20)[0] / (b - a) for a, b in itertools.pairwise(edges)
    ]
    return [9 * each / max(heavy) for each in heavy]


@outside(
    readings.seen_in_zones,
    kind=Kind.DEFINITION,
    source="this program's own profiles in zones; where one shape begins is common practice, no "
    "source",
)
@pytest.mark.parametrize("count", [5, 6, 7, 9, 12])
@pytest.mark.parametrize(
    ("name", "seen"),
    [
        ("even", Seen.EVEN),
        ("triangle", Seen.EVEN),
        ("parabola", Seen.EVEN),
        ("cosine squared", Seen.EVEN),
        ("heavy middle", Seen.HEAVY_MIDDLE),
        ("heavy both ends", Seen.HEAVY_BOTH_ENDS),
        ("heavy one end", Seen.HEAVY_ONE_END),
    ],
)
def test_the_shape_of_a_model_is_recognised_in_its_zones(name: str, seen: Seen, count: int) -> None:
    assert readings.seen_in_zones(_zones(name, count)) is seen
    assert readings.seen_in_zones(_zones(name, count)[::-1]) is seen


def test_what_is_no_pattern_has_no_shape() -> None:
    with pytest.raises(BadInput, match="Every zone is 0"):
        readings.seen_in_zones([0, 0, 0])


@outside(
    readings.reading,
    kind=Kind.DEFINITION,
    source="common practice, no source: the flood test and a split fan",
)
def test_the_flood_test_parts_cap_from_tip_and_a_split_fan_names_mix_and_fluid() -> None:
    flood = readings.reading("flood heavy one end")
    told = " ".join((flood.means, *flood.turns))
    for words in ("longer on one side", "half a turn", "moved with the cap, it is the cap", "tip"):
        assert words in told
    assert "let the pressure out" in flood.caution and "no source" in flood.source
    split = readings.reading(Seen.HEAVY_BOTH_ENDS)
    assert "too thin" in split.means and "too much fluid" in split.means
    assert any("Time the flow cup" in turn for turn in split.turns)
