"""Patterns as painters read them: shapes, zones, what follows."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.job.patterns import (
    SHAPES,
    Pattern,
    best_overlap,
    even_at,
    pattern_of,
    section_at,
    tries_alike,
    zones_from,
)
from booth.log.events import PatternRead
from booth.trade.pattern.pattern_reading import Seen
from booth.trade.result import BadInput
from tests.job.make import at


def read(shape: str, *zones: float) -> PatternRead:
    return PatternRead(n=0, at=at(0), shape=shape, zones=zones)


@pytest.mark.parametrize(
    ("typed", "zones"),
    [("3567653", (3, 5, 6, 7, 6, 5, 3)), (" 3 5,3 ", (3, 5, 3)), ("090", (0, 9, 0))],
)
def test_zones_as_typed(typed: str, zones: tuple[float, ...]) -> None:
    assert zones_from(typed) == zones


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("12", "2 zones: it takes 3 to 15"),
        ("1", "1 zone: it takes"),
        ("1234567890123456", "16 zones"),
        ("000", "Every zone is 0"),
        ("3a5", "Zones are digits"),
        ("3.5", "Zones are digits"),
        ("-35", "Zones are digits"),
        ("\u0663\u0665\u0663", "Zones are digits"),
    ],
)
def test_zones_that_are_none_say_why(typed: str, said: str) -> None:
    with pytest.raises(BadInput, match=said):
        zones_from(typed)


@given(st.text(max_size=20))
def test_whatever_is_typed_is_zones_or_a_sentence(typed: str) -> None:
    try:
        zones = zones_from(typed)
    except BadInput as fault:
        assert str(fault)[-1] == "."
    else:
        assert 3 <= len(zones) <= 15 and any(zones)


def test_the_first_choice_of_shapes_has_every_kind_of_pattern() -> None:
    assert {shape.seen for shape in SHAPES} == set(Seen)
    for shape in SHAPES:
        pattern = Pattern(shape.key)
        assert pattern.reading.turns
        assert (pattern.profile is None) == (best_overlap(pattern) is None)


def test_a_triangle_by_zones_and_a_parabola_by_shape_give_known_evenness() -> None:
    # Exact facts (see trade.overlap): a parabola at 50 % is 1.5 to 1, CV 11.18 %.
    even = even_at(Pattern("even, tapering"), 0.5)
    assert even is not None
    assert even.max_over_min == pytest.approx(1.5, rel=1e-6)
    assert even.cv == pytest.approx(0.1118, abs=5e-5)
    # A top hat half over half is flat, and so is the best of it.
    best = best_overlap(Pattern("even"))
    assert best is not None and best.overlap_fraction == pytest.approx(0.5)
    assert best.evenness.max_over_min == pytest.approx(1.0)


def test_a_crescent_has_no_film_and_neither_has_an_impossible_overlap() -> None:
    assert even_at(Pattern("crescent"), 0.5) is None
    assert section_at(Pattern("spitting"), 0.5, 5, 50) == ()
    assert even_at(Pattern("even"), 0.99) is None
    assert section_at(Pattern("even"), 0.99, 5, 50) == ()
    assert len(section_at(Pattern("even"), 0.5, 5, 50)) == 50


def test_a_kept_pattern_is_read_back() -> None:
    assert pattern_of(read("heavy middle")) == Pattern("heavy middle")
    assert pattern_of(read("even", 3, 6, 8, 6, 3)) == Pattern("even", (3, 6, 8, 6, 3))
    assert pattern_of(read("shaped like a fish")) is None
    assert pattern_of(read("even", 300, 1, 2)) is None


def test_tries_alike_are_counted_from_the_last_back() -> None:
    middle, even = read("heavy middle"), read("even")
    by_zones = read("heavy middle", 0, 1, 3, 9, 3, 1, 0)
    assert tries_alike((), Seen.EVEN) == 0
    assert tries_alike((even, middle, middle), Seen.HEAVY_MIDDLE) == 2
    assert tries_alike((middle, by_zones), Seen.HEAVY_MIDDLE) == 2
    assert tries_alike((middle, even), Seen.HEAVY_MIDDLE) == 0
