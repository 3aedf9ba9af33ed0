"""What a job measured, read as signs: each a figure against its limit, for or against a cause."""

from __future__ import annotations

import enum
from collections.abc import Mapping
from dataclasses import dataclass, fields
from typing import NamedTuple

from booth.trade.result import BadInput, require
from booth.trade.text_table import rows


@dataclass(frozen=True, slots=True, kw_only=True)
class Evidence:
    """Figures of one job, each with the limits of its profile; None where there is none.

    A figure without a limit, and a limit without a figure, say nothing. early_s: seconds a coat was
    laid before its flash-off was over, 0 where none was; late_s: seconds past the recoat window,
    0 where none; flash_off_s: the flash-off early_s belongs to; dew_margin_c: part over dew
    point [K]; overlap and unevenness (coefficient of variation of the film across the passes) as
    fractions; pot_life_used: 1 is all of it; thinner_unmeasured: thinner went in that nobody
    measured; induction_left_s: induction still missing when it was sprayed, 0 where none was.
    """

    efflux_s: float | None = None
    efflux_low_s: float | None = None
    efflux_high_s: float | None = None
    inlet_kpa: float | None = None
    inlet_low_kpa: float | None = None
    inlet_high_kpa: float | None = None
    delivery_ml_min: float | None = None
    delivery_low_ml_min: float | None = None
    delivery_high_ml_min: float | None = None
    wet_um: float | None = None
    wet_low_um: float | None = None
    wet_high_um: float | None = None
    early_s: float | None = None
    flash_off_s: float | None = None
    late_s: float | None = None
    dew_margin_c: float | None = None
    dew_margin_low_c: float | None = None
    air_c: float | None = None
    air_low_c: float | None = None
    air_high_c: float | None = None
    humidity_percent: float | None = None
    humidity_low_percent: float | None = None
    humidity_high_percent: float | None = None
    part_c: float | None = None
    part_low_c: float | None = None
    part_high_c: float | None = None
    speed_m_s: float | None = None
    speed_wanted_m_s: float | None = None
    distance_mm: float | None = None
    distance_low_mm: float | None = None
    distance_high_mm: float | None = None
    overlap_fraction: float | None = None
    overlap_wanted_fraction: float | None = None
    unevenness_fraction: float | None = None
    unevenness_high_fraction: float | None = None
    thinner_percent: float | None = None
    thinner_high_percent: float | None = None
    thinner_unmeasured: bool | None = None
    pot_life_used: float | None = None
    induction_left_s: float | None = None
    coats_laid: float | None = None
    coats_wanted: float | None = None

    def __post_init__(self) -> None:
        for field in fields(self):
            number = getattr(self, field.name)
            if number is not None and field.name != "thinner_unmeasured":
                require(f"The figure {field.name}", number)
        if self.thinner_unmeasured not in (None, True, False):
            raise BadInput("thinner_unmeasured is yes, no or not known.")


class Sign(enum.StrEnum):
    """Something that can be read off the figures; its value is a cause's key where it is one."""

    EFFLUX_HIGH = "efflux time above its target"
    EFFLUX_LOW = "efflux time below its target"
    INLET_HIGH = "inlet pressure above its range"
    INLET_LOW = "inlet pressure below its range"
    DELIVERY_HIGH = "delivery above its target"
    DELIVERY_LOW = "delivery below its target"
    WET_HIGH = "wet film above its target"
    WET_LOW = "wet film below its target"
    TOO_EARLY = "coat laid before the flash-off was over"
    TOO_LATE = "coat laid after the recoat window closed"
    DEW_NEAR = "part too near the dew point"
    AIR_HOT = "air warmer than its limit"
    AIR_COLD = "air colder than its limit"
    HUMID = "humidity above its limit"
    DRY_AIR = "humidity below its limit"
    PART_HOT = "part warmer than its limit"
    PART_COLD = "part colder than its limit"
    SPEED_SLOW = "gun slower than wanted"
    SPEED_FAST = "gun faster than wanted"
    GUN_NEAR = "gun nearer than its range"
    GUN_FAR = "gun further than its range"
    OVERLAP_LOW = "overlap below what is wanted"
    OVERLAP_HIGH = "overlap above what is wanted"
    UNEVEN = "film across the passes uneven"
    THINNER_OVER = "thinner past its limit"
    THINNER_UNMEASURED = "thinner went in unmeasured"
    POT_LIFE_OVER = "pot life used up"
    INDUCTION_SHORT = "sprayed before the induction time was over"
    COATS_FEW = "fewer coats than wanted"


@dataclass(frozen=True, slots=True)
class Reading:
    """A figure ready for a sentence: name, measured, limit, unit.

    side: 'above' or 'below' the limit; kept to it, 'at most', 'at least', or 'about' a wanted value;
    or 'noted' (then there are no numbers).
    limit_source: where the limit is from; 'profile' unless the profile had none.
    """

    name: str
    measured: float | None
    limit: float | None
    unit: str
    side: str
    limit_source: str = "profile"


class _Gauge(NamedTuple):
    """How a sign is read. full: the excess of a full sign, relative to the limit or absolute."""

    name: str
    measured: str
    above: bool
    limit: str | float
    unit: str
    full: float
    relative: bool
    slack: float


def _gauge(name: str, compared: str, unit: str, full: str, slack: str = "0") -> _Gauge:
    measured, side, limit = compared.split()
    fixed = float(limit) if limit.isdigit() else limit
    number, _, relative = full.partition(" ")
    above = side == "above"
    return _Gauge(name, measured, above, fixed, unit, float(number), bool(relative), float(slack))


#: Common practice, no source: how far past its limit a figure has to be to be a full sign, and the
#: slack about a wanted value within which nothing is said, both of the limit where 'of it' stands.
_GAUGES: Mapping[Sign, _Gauge] = {
    Sign[sign]: _gauge(*cells)
    for sign, *cells in rows("""
EFFLUX_HIGH   | efflux time | efflux_s above efflux_high_s | s | 0.3 of it
EFFLUX_LOW    | efflux time | efflux_s below efflux_low_s | s | 0.2 of it
INLET_HIGH    | inlet pressure | inlet_kpa above inlet_high_kpa | kPa | 0.3 of it
INLET_LOW     | inlet pressure | inlet_kpa below inlet_low_kpa | kPa | 0.3 of it
DELIVERY_HIGH | delivery | delivery_ml_min above delivery_high_ml_min | ml/min | 0.3 of it
DELIVERY_LOW  | delivery | delivery_ml_min below delivery_low_ml_min | ml/min | 0.3 of it
WET_HIGH      | wet film | wet_um above wet_high_um | um | 0.5 of it
WET_LOW       | wet film | wet_um below wet_low_um | um | 0.4 of it
TOO_EARLY     | coat laid early by | early_s above 0 | s | 300
TOO_LATE      | coat laid late by | late_s above 0 | s | 7200
DEW_NEAR      | part over the dew point | dew_margin_c below dew_margin_low_c | K | 3
AIR_HOT       | air | air_c above air_high_c | C | 8
AIR_COLD      | air | air_c below air_low_c | C | 8
HUMID         | humidity | humidity_percent above humidity_high_percent | % | 15
DRY_AIR       | humidity | humidity_percent below humidity_low_percent | % | 15
PART_HOT      | part | part_c above part_high_c | C | 8
PART_COLD     | part | part_c below part_low_c | C | 8
SPEED_SLOW    | gun speed | speed_m_s below speed_wanted_m_s | m/s | 0.4 of it | 0.1
SPEED_FAST    | gun speed | speed_m_s above speed_wanted_m_s | m/s | 0.4 of it | 0.1
GUN_NEAR      | distance | distance_mm below distance_low_mm | mm | 0.3 of it
GUN_FAR       | distance | distance_mm above distance_high_mm | mm | 0.4 of it
OVERLAP_LOW   | overlap | overlap_fraction below overlap_wanted_fraction | 1 | 0.25 | 0.05
OVERLAP_HIGH  | overlap | overlap_fraction above overlap_wanted_fraction | 1 | 0.25 | 0.05
UNEVEN        | unevenness | unevenness_fraction above unevenness_high_fraction | 1 | 0.2
THINNER_OVER  | thinner | thinner_percent above thinner_high_percent | % | 0.5 of it
POT_LIFE_OVER | pot life used | pot_life_used above 1 | 1 | 0.5
INDUCTION_SHORT | induction missed by | induction_left_s above 0 | s | 600
COATS_FEW     | coats laid | coats_laid below coats_wanted | coats | 1
""")
}
#: A sign that is there but only just counts half, and so does one that is noted without a figure.
JUST_THERE = 0.5
#: A coat laid when this share of its flash-off was still missing is a full sign.
FULL_EARLY_SHARE = 0.5


def read_sign(
    sign: Sign, evidence: Evidence, fallback: tuple[float, str] | None = None
) -> tuple[Reading, float] | None:
    """Give how a figure of a job stands against its limit, and how strongly it speaks for a fault.

    Args:
        sign: the sign.
        evidence: the figures and their limits.
        fallback: a published limit [unit of the figure] and its source, where a profile has none.

    Returns: the Reading and how strongly it speaks [1]: above 0 up to 1 for the sign, 0 against it
        (the figure is within its limit). None where there is no figure, or no limit to hold it
        against.
    Range: a wanted value (speed, overlap) has a slack of 10 % and 0.05 about it.
    Source: the profile's limits; how the strength grows is common practice, no source.

    >>> evidence = Evidence(efflux_s=30.0, efflux_low_s=18.0, efflux_high_s=22.0)
    >>> reading, strength = read_sign(Sign.EFFLUX_HIGH, evidence)
    >>> reading.name, reading.measured, reading.limit, reading.unit, strength
    ('efflux time', 30.0, 22.0, 's', 1.0)
    >>> read_sign(Sign.HUMID, evidence) is None
    True
    """
    if sign is Sign.THINNER_UNMEASURED:
        if not evidence.thinner_unmeasured:
            return None  # that all of it was measured clears nothing
        return Reading(sign.value, None, None, "", "noted", "the log"), JUST_THERE
    gauge = _GAUGES[sign]
    measured = getattr(evidence, gauge.measured)
    limit = getattr(evidence, gauge.limit) if isinstance(gauge.limit, str) else gauge.limit
    limit_source = "profile"
    if limit is None and fallback is not None:
        limit, limit_source = fallback
    if measured is None or limit is None:
        return None
    require(f"The limit of {gauge.name}", limit)
    slack = gauge.slack * (abs(limit) if gauge.relative else 1.0)
    past = (measured - limit if gauge.above else limit - measured) - slack
    if past <= 0.0:
        kept = "about" if gauge.slack else "at most" if gauge.above else "at least"
        return Reading(gauge.name, measured, limit, gauge.unit, kept, limit_source), 0.0
    full = gauge.full * abs(limit) if gauge.relative else gauge.full
    if sign is Sign.TOO_EARLY and evidence.flash_off_s:
        full = FULL_EARLY_SHARE * evidence.flash_off_s
    grown = min(1.0, past / full) if full > 0.0 else 1.0
    side = "above" if gauge.above else "below"
    reading = Reading(gauge.name, measured, limit, gauge.unit, side, limit_source)
    return reading, JUST_THERE + (1.0 - JUST_THERE) * grown
