"""What thinner does to one mix, by the painter's own measurements of it."""

from __future__ import annotations

import math
import statistics
from collections.abc import Sequence
from dataclasses import dataclass

from booth.trade.result import Outside, require
from booth.trade.thinning.thinner_share import _thinner_share

#: A fit is never believed closer than twice the coefficient of variation of a painter's own runs,
#: 3.7 % (ASTM D4212 13.1.1, within one laboratory).
LEAST_DOUBT = 2.0 * 0.037
#: Shares of thinner closer than this are one share [1].
SAME_SHARE = 1e-4

FIT_RULE = "straight line of ln viscosity over the thinner share, through your own measurements"


@dataclass(frozen=True, slots=True)
class ThinningPoint:
    """A measurement of this very mix: thinner per volume of coating [1], viscosity [mm2/s]."""

    thinner_fraction: float
    viscosity_mm2_s: float


@dataclass(frozen=True, slots=True)
class ThinningFit:
    """``ln nu = intercept - fall x``, x the thinner's share of the whole mix [1].

    residual_fraction: how far the measurements lie off the line, as a share of the viscosity; None
    with two, which always lie on it. least_share, most_share: between which it was measured.
    """

    intercept: float
    fall: float
    residual_fraction: float | None
    count: int
    least_share: float
    most_share: float

    def __post_init__(self) -> None:
        require("The fall of the line", self.fall, above=0.0)
        require("The line's start", self.intercept)
        require("What lies off the line", self.residual_fraction or 0.0, 0.0)
        require("The least share of thinner", self.least_share, 0.0, 1.0)
        require("The greatest share of thinner", self.most_share, self.least_share, 1.0)

    @property
    def doubt(self) -> float:
        """How far the line is trusted, in ln viscosity: twice the residual, at least 7.4 %."""
        return max(LEAST_DOUBT, 2.0 * (self.residual_fraction or 0.0))

    def viscosity_mm2_s(self, thinner_fraction: float) -> float:
        """The line at a thinner fraction."""
        return math.exp(self.intercept - self.fall * _thinner_share(thinner_fraction))


def fit_thinning(points: Sequence[ThinningPoint]) -> ThinningFit | Outside:
    """Fit what thinner does to this very mix.

    The least-squares straight line of ln viscosity over the thinner's share of the whole mix.

    Args:
        points: measurements of one mix at one temperature with this thinner, at two thinner
            fractions or more [1], viscosities above 0 [mm2/s].

    Returns: ThinningFit with its residual; Outside with fewer than two different fractions, or
        where more thinner did not make the mix thinner.
    Range: between the fractions measured; a little beyond with caution. Real mixes
        fall fast at first and slower later, so the line promises too much beyond its end.
    Source: least squares (Legendre 1805, Gauss 1809); ln viscosity over concentration is common
        practice, no source.

    >>> fit = fit_thinning([ThinningPoint(0.0, 200.0), ThinningPoint(0.25, 50.0)])
    >>> round(fit.viscosity_mm2_s(1 / 9))  # a tenth of the mix, half way
    100
    """
    places = [_thinner_share(point.thinner_fraction) for point in points]
    heights = [
        math.log(require("The viscosity", point.viscosity_mm2_s, above=0.0, unit="mm2/s"))
        for point in points
    ]
    if not places or max(places) - min(places) < SAME_SHARE:
        return Outside(
            "A fit needs this mix measured with two different amounts of thinner.",
            "Add the first step, stir, and time the cup again.",
            FIT_RULE,
        )
    slope, intercept = statistics.linear_regression(places, heights)
    if slope >= 0.0:
        return Outside(
            "More thinner did not make this mix thinner.",
            "Stir well, check the temperature and the cup, and time it again.",
            FIT_RULE,
        )
    residual, count = None, len(places)
    if count > 2:
        off = [y - intercept - slope * x for x, y in zip(places, heights, strict=True)]
        residual = math.expm1(math.hypot(*off) / math.sqrt(count - 2))
    return ThinningFit(intercept, -slope, residual, count, min(places), max(places))
