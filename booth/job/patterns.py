"""A test pattern as the painter reads it: a shape or zones, and the fan profile behind it. Pure."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from itertools import takewhile

import msgspec

from booth.job.measured import known
from booth.log.events import PatternRead
from booth.trade.pattern.fan_profile import ZONES, FanProfile, profile_by_name, profile_from_zones
from booth.trade.pattern.overlap import (
    Evenness,
    OverlapChoice,
    evenness,
    film_section,
    most_even_overlap,
)
from booth.trade.pattern.pattern_reading import Reading, Seen, reading, seen_in_zones
from booth.trade.result import BadInput


class Shape(msgspec.Struct, frozen=True):
    """A shape to choose. key: in the log, with what is seen first; words: on the screen; short:
    beneath its picture; profile: the model across the fan, if any."""

    key: str
    words: str
    short: str
    profile: str = ""

    @property
    def seen(self) -> Seen:
        return Seen(self.key.partition(",")[0])


#: From good to bad. A real fan is seldom sharp at its edges: hence the second.
SHAPES: tuple[Shape, ...] = (
    Shape("even", "even, sharp edges", "even", "even"),
    Shape("even, tapering", "even, thinner at the edges", "even, tapering", "parabola"),
    Shape("heavy middle", "heavy in the middle", "heavy middle", "heavy middle"),
    Shape("heavy both ends", "heavy at both ends", "both ends", "heavy both ends"),
    Shape("heavy one end", "heavy at one end", "one end", "heavy one end"),
    Shape("crescent", "crescent", "crescent"),
    Shape("spitting", "spitting", "spitting"),
    Shape("flood heavy one end", "flood test: long drips at one end", "flood, one end"),
)
_BY_KEY = {shape.key: shape for shape in SHAPES}


class Pattern(msgspec.Struct, frozen=True):
    """One reading of the paper. shape: a key of SHAPES, or of Seen where zones were entered."""

    shape: str
    zones: tuple[float, ...] = ()

    @property
    def seen(self) -> Seen:
        return seen_in_zones(self.zones) if self.zones else _BY_KEY[self.shape].seen

    @property
    def words(self) -> str:
        return f"{self.seen.value}, by zones" if self.zones else _BY_KEY[self.shape].words

    @property
    def short(self) -> str:
        """The shape in a word or two."""
        found = (each for each in SHAPES if each.seen is self.seen)
        return next(found).short if self.zones else _BY_KEY[self.shape].short

    @property
    def reading(self) -> Reading:
        return reading(self.seen)

    @property
    def profile(self) -> FanProfile | None:
        """The profile across the fan; None where a shape has none."""
        if self.zones:
            return profile_from_zones(self.zones)
        name = _BY_KEY[self.shape].profile
        return profile_by_name(name) if name else None


def zones_from(text: str) -> tuple[float, ...]:
    """Read zones typed as digits from one end to the other, '3567653'; blanks between are allowed.

    Raises BadInput with a sentence.
    """
    digits = "".join(text.replace(",", " ").split())
    if not digits.isascii() or not digits.isdigit():
        raise BadInput(
            "Zones are digits from one end to the other, 0 for nothing to 9 for the heaviest, "
            "as in 3567653."
        )
    if not ZONES[0] <= len(digits) <= ZONES[1]:
        raise BadInput(
            f"{len(digits)} zone{'' if len(digits) == 1 else 's'}: it takes {ZONES[0]} to "
            f"{ZONES[1]} digits, one for each, as in 3567653."
        )
    if not digits.strip("0"):
        raise BadInput("Every zone is 0: there is no pattern. 9 is the heaviest, as in 3567653.")
    return tuple(float(digit) for digit in digits)


def pattern_of(event: PatternRead) -> Pattern | None:
    """The pattern of an entry; None where a later version named a shape unknown here."""
    makes_sense = known(profile_from_zones, event.zones) if event.zones else event.shape in _BY_KEY
    return Pattern(event.shape, event.zones) if makes_sense else None


def tries_alike(patterns: Sequence[PatternRead], seen: Seen) -> int:
    """How many of the latest tries in a row showed the same."""
    found = (pattern_of(event) for event in reversed(patterns))
    return sum(1 for _ in takewhile(lambda each: each is not None and each.seen is seen, found))


@lru_cache(maxsize=64)
def best_overlap(pattern: Pattern) -> OverlapChoice | None:
    """The most even overlap within practical limits; None where the shape has no profile."""
    profile = pattern.profile
    return None if profile is None else most_even_overlap(profile)


@lru_cache(maxsize=256)
def even_at(pattern: Pattern, overlap_fraction: float) -> Evenness | None:
    """How even the film is at this overlap; None where there is no profile, or no such overlap."""
    profile = pattern.profile
    return known(evenness, profile, overlap_fraction) if profile is not None else None


@lru_cache(maxsize=64)
def section_at(
    pattern: Pattern, overlap_fraction: float, passes: int, samples: int
) -> tuple[tuple[float, float], ...]:
    """Place as a share of the painted width, and film over the mean film; empty without profile."""
    profile = pattern.profile
    if profile is None:
        return ()
    return tuple(known(film_section, profile, overlap_fraction, passes, samples) or ())
