"""Water as a stand-in for paint: its density, and what a catch of water says about the paint.

No published rule turns a delivery of water into one of paint: only the painter's own pairs do.
"""

from __future__ import annotations

import statistics
from collections.abc import Sequence
from dataclasses import dataclass

from booth.trade.result import Estimate, Outside, require

#: Coefficients a1 to a5 of the CIPM formula for air-free water at 101.325 kPa: Tanaka, Girard,
#: Davis, Peuto and Bignell, Metrologia 38 (2001) 301-309; 0 to 40 C. a5 [kg/m3] is the greatest
#: density (VSMOW).
TANAKA_2001 = (-3.983035, 301.797, 522528.9, 69.34881, 999.974950)
TANAKA_2001_RANGE_C = (0.0, 40.0)

#: A ratio learnt from few pairs is shown at least this wide, each way. Common practice, no source:
#: careful catches of one setting repeat within some 5 to 10 %.
LEAST_RATIO_DOUBT = 0.10
#: Pairs are trusted for a water delivery up to this factor beyond those they were made at. Common
#: practice, no source: the ratio moves with the setting of the needle.
PAIR_REACH = 1.5

_RATIO_RULE = (
    "median ratio of paint to water in your own pairs, at least 10 % each way; "
    "no published rule exists"
)


@dataclass(frozen=True, slots=True)
class WaterPaintPair:
    """Water and paint caught at the same setting of the same gun [ml/min]."""

    water_ml_min: float
    paint_ml_min: float


def water_density_kg_m3(water_c: float) -> float:
    """Give the density of clean water at atmospheric pressure.

    Args:
        water_c: temperature of the water [degC], 0 to 40.

    Returns: density [kg/m3]: ``rho = a5 (1 - (t + a1)^2 (t + a2) / (a3 (t + a4)))``.
    Range: 0 to 40 C. Tap water differs by less than 0.1 %.
    Source: Tanaka et al., Recommended table for the density of water between 0 C and 40 C,
        Metrologia 38 (2001) 301-309 (CIPM).

    >>> round(water_density_kg_m3(20.0), 3)
    998.207
    """
    require("The temperature of the water", water_c, *TANAKA_2001_RANGE_C, unit="C")
    a1, a2, a3, a4, a5 = TANAKA_2001
    return a5 * (1.0 - (water_c + a1) ** 2 * (water_c + a2) / (a3 * (water_c + a4)))


def paint_from_water(water_ml_min: float, pairs: Sequence[WaterPaintPair]) -> Estimate | Outside:
    """Estimate the delivery of paint from one of water, by the painter's own pairs alone.

    Args:
        water_ml_min: delivery of water now [ml/min], above 0.
        pairs: water and paint caught at the same setting, with this gun, tip and product at about
            this viscosity; each above 0.

    Returns: Estimate [ml/min]: median ratio times the water, from the least to the greatest ratio
        seen (at least 10 % each way); Outside without pairs, or where the water lies more than 1.5
        times beyond what the pairs were made at.
    Range: between 1/1.5 of the smallest and 1.5 times the greatest water delivery of the pairs. Of
        n like pairs, one more falls between least and greatest ratio with chance (n - 1)/(n + 1),
        which is why a single pair is shown with a margin of its own.
    Source: common practice, no source: that water runs faster than paint is known, by how much is
        not published.

    >>> paint_from_water(220.0, [WaterPaintPair(200.0, 150.0)]).likely
    165.0
    >>> type(paint_from_water(220.0, [])).__name__
    'Outside'
    """
    require("The delivery of water", water_ml_min, above=0.0, unit="ml/min")
    if not pairs:
        return Outside(
            "There is no pair of water and paint to learn from.",
            "Catch water and then paint at the same setting once; the pair is kept.",
            _RATIO_RULE,
        )
    for pair in pairs:
        require("The delivery of water in a pair", pair.water_ml_min, above=0.0, unit="ml/min")
        require("The delivery of paint in a pair", pair.paint_ml_min, above=0.0, unit="ml/min")
    least = min(pair.water_ml_min for pair in pairs) / PAIR_REACH
    most = max(pair.water_ml_min for pair in pairs) * PAIR_REACH
    if not least <= water_ml_min <= most:
        side = "below" if water_ml_min < least else "above"
        return Outside(
            f"This delivery of water lies far {side} those of your pairs.",
            "Catch paint at this setting: it adds a pair here.",
            _RATIO_RULE,
        )
    ratios = [pair.paint_ml_min / pair.water_ml_min for pair in pairs]
    likely = statistics.median(ratios)
    low = min(*ratios, likely * (1.0 - LEAST_RATIO_DOUBT))
    high = max(*ratios, likely * (1.0 + LEAST_RATIO_DOUBT))
    return Estimate(
        likely * water_ml_min,
        low * water_ml_min,
        high * water_ml_min,
        "ml/min",
        f"{_RATIO_RULE} (pairs: {len(pairs)})",
    )
