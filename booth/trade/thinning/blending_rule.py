"""Two published rules for the viscosity of a blend, which disagree about thinned paint.

Neither was made for paint. The truth of a paint mostly lies between them, which is why ``thin_to_viscosity``
shows the band and adds little at a time.
"""

from __future__ import annotations

import math

from booth.trade.result import require

#: Refutas (Maples 2000): VBN = 14.534 ln ln(nu + 0.8) + 10.975. The blend's index is the mean of
#: the indices, so the two outer constants cancel.
REFUTAS_SHIFT = 0.8
#: Below this the double logarithm has no meaning [mm2/s].
LEAST_MM2_S = 0.3


def _checked(viscosity_mm2_s: float, thinner_mm2_s: float, share: float) -> None:
    require("The viscosity", viscosity_mm2_s, LEAST_MM2_S, unit="mm2/s")
    require("The viscosity of the thinner", thinner_mm2_s, LEAST_MM2_S, unit="mm2/s")
    require("The share of thinner in the blend", share, 0.0, 1.0)


def _index(viscosity_mm2_s: float) -> float:
    """The blending index without its outer constants."""
    return math.log(math.log(viscosity_mm2_s + REFUTAS_SHIFT))


def blend_logarithmic_mm2_s(viscosity_mm2_s: float, thinner_mm2_s: float, share: float) -> float:
    """Give the viscosity of a blend by the logarithmic rule, by which thinner does little.

    Args:
        viscosity_mm2_s: kinematic viscosity of the mix [mm2/s], 0.3 or more.
        thinner_mm2_s: kinematic viscosity of the thinner [mm2/s], 0.3 or more.
        share: thinner added, by volume of the whole blend [1], 0 to 1.

    Returns: kinematic viscosity [mm2/s]: ``ln nu = (1 - x) ln nu1 + x ln nu2``.
    Range: like liquids; thinner cuts a paint by more than this says.
    Source: the logarithmic (Arrhenius) mixing rule, as in general-purpose reference libraries.

    >>> round(blend_logarithmic_mm2_s(200.0, 0.8, 0.2), 1)
    66.3
    """
    _checked(viscosity_mm2_s, thinner_mm2_s, share)
    return math.pow(viscosity_mm2_s, 1.0 - share) * math.pow(thinner_mm2_s, share)


def blend_index_mm2_s(viscosity_mm2_s: float, thinner_mm2_s: float, share: float) -> float:
    """Give the viscosity of a blend by its blending index, by which thinner does much.

    Args:
        viscosity_mm2_s: kinematic viscosity of the mix [mm2/s], 0.3 or more.
        thinner_mm2_s: kinematic viscosity of the thinner [mm2/s], 0.3 or more.
        share: thinner added, by volume of the whole blend [1], 0 to 1 (ASTM D7152 allows volume or
            mass, and prefers mass where densities differ much).

    Returns: kinematic viscosity [mm2/s], by
        ``ln ln(nu + 0.8) = (1 - x) ln ln(nu1 + 0.8) + x ln ln(nu2 + 0.8)``.
    Range: made for petroleum products; ASTM D7152 1.3 says that it may not hold for liquids with
        particulates, which paints are. It is one end of a band here, never a prediction.
    Source: Refutas blending index (R. E. Maples, Petroleum Refinery Process Economics, 2nd ed.,
        2000); ASTM D7152 has the same form with 0.7 for 0.8, and a term for liquids below 2 mm2/s,
        left out here.

    >>> round(blend_index_mm2_s(200.0, 0.8, 0.2), 1)
    25.4
    """
    _checked(viscosity_mm2_s, thinner_mm2_s, share)
    mean = (1.0 - share) * _index(viscosity_mm2_s) + share * _index(thinner_mm2_s)
    return math.exp(math.exp(mean)) - REFUTAS_SHIFT
