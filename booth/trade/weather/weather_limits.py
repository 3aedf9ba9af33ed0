"""Each limit of the day judged on its own: the product's own, and the dew margin.

A verdict says which limits were met; it never says that a job will go well.
"""

from __future__ import annotations

from dataclasses import dataclass

from booth.trade.result import BadInput, Said, require
from booth.trade.weather.humid_air import dew_margin_c, dew_point_c

#: The part at least this far above the dew point [K]: practised with ISO 8502-4:2017, which gives
#: guidance and no rule of its own (common practice, no source).
MARGIN_ISO_8502_4_C = 3.0
#: The same in the United States: 5 F and rising, MIL-HDBK-1110 9.6.6. It is 2.78 K, not 3.
MARGIN_MIL_HDBK_1110_C = 5.0 * 5.0 / 9.0
#: How the check of the margin is called.
MARGIN = "dew margin"


@dataclass(frozen=True, slots=True)
class Bounds:
    """A limit of the product; either end may be missing (None). Ends are allowed values."""

    low: float | None = None
    high: float | None = None


@dataclass(frozen=True, slots=True)
class LimitCheck:
    """One limit and what was measured against it.

    name: what was measured, as in ``part``; measured, low, high in `unit` (None: no such end);
    ok: whether the measured value lies within; rule: whose limit it is.
    """

    name: str
    measured: float
    low: float | None
    high: float | None
    unit: str
    ok: bool
    rule: str


@dataclass(frozen=True, slots=True)
class WeatherVerdict:
    """Every limit judged. dew_point_c [degC]; margin_c: part less dew point [K].

    Within limits is not the same as good to spray: the data sheet and the painter decide.
    """

    dew_point_c: float
    margin_c: float
    checks: tuple[LimitCheck, ...]

    @property
    def within(self) -> bool:
        """Whether every limit that is known is met."""
        return all(check.ok for check in self.checks)

    @property
    def failed(self) -> tuple[LimitCheck, ...]:
        """The limits that are not met."""
        return tuple(check for check in self.checks if not check.ok)


def _checked(name: str, measured: float, bounds: Bounds, unit: str, rule: str) -> LimitCheck:
    low, high = bounds.low, bounds.high
    said = "K" if name == MARGIN else unit
    for end in (low, high):
        if end is not None:
            require(f"The limit for {name}", end, unit=said)
    if low is not None and high is not None and low > high:
        raise BadInput(
            f"The limits for {name} are upside down: from {Said(low, said)} to {Said(high, said)}. "
            "Put the lower one first."
        )
    ok = (low is None or measured >= low) and (high is None or measured <= high)
    return LimitCheck(name, measured, low, high, unit, ok, rule)


def weather_verdict(
    air_c: float,
    humidity_percent: float,
    part_c: float,
    *,
    air: Bounds | None = None,
    humidity: Bounds | None = None,
    part: Bounds | None = None,
    least_margin_c: float | None = None,
) -> WeatherVerdict:
    """Hold today's air and part against the product's limits and against the dew point.

    Args:
        air_c: air temperature [degC], -40 to 50.
        humidity_percent: relative humidity [%], above 0 to 100.
        part_c: temperature of the part itself [degC].
        air, part, humidity: limits of the product [degC, %]; None where it gives none.
        least_margin_c: least dew margin the product asks for [K], 0 or more; None: the stricter of
            3 K and 5 F.

    Returns: WeatherVerdict, ``dew point by the Magnus form``, with one LimitCheck for the margin
        and one for every limit given.
    Range: as for dew_point_c. Whether the part is warming, as the handbook asks, two readings tell.
        A limit nobody gave is not checked, and not listed.
    Source: 3 K as practised with ISO 8502-4; 5 F (and rising), MIL-HDBK-1110 (now UFC 3-190-06)
        9.6.6; a data sheet's own limit wins over both.

    >>> verdict = weather_verdict(20.0, 83.5, 20.0)
    >>> round(verdict.margin_c, 2), verdict.within  # passes 5 F (2.78 K), not 3 K
    (2.88, False)
    >>> weather_verdict(20.0, 83.5, 20.0, least_margin_c=2.5).within
    True
    """
    dew_c = dew_point_c(air_c, humidity_percent)
    margin = dew_margin_c(air_c, humidity_percent, part_c)
    given = (
        ("air", air_c, air, "C"),
        ("humidity", humidity_percent, humidity, "%"),
        ("part", part_c, part, "C"),
    )
    checks = [
        _checked(name, measured, bounds, unit, "the product's own limit")
        for name, measured, bounds, unit in given
        if bounds is not None and bounds != Bounds()
    ]
    if least_margin_c is None:
        least = max(MARGIN_ISO_8502_4_C, MARGIN_MIL_HDBK_1110_C)
        rule = (
            f"the stricter of {Said(MARGIN_ISO_8502_4_C, 'K')} (as practised with ISO 8502-4) and "
            f"{Said(MARGIN_MIL_HDBK_1110_C, 'K')} (MIL-HDBK-1110 9.6.6)"
        )
    else:
        least = require("The least dew margin", least_margin_c, 0.0, unit="K")
        rule = "the product's own limit"
    checks.append(_checked(MARGIN, margin, Bounds(low=least), "C", rule))
    return WeatherVerdict(dew_c, margin, tuple(checks))
