"""Transfer efficiency: the share of what leaves the gun that ends on the part.

It varies with gun, part and painter by a factor of three. So it starts as a band, and every figure
computed from a band is an Estimate; a wet-film reading replaces the band by what this painter does.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from booth.trade.film.wet_gauge import FilmInterval
from booth.trade.result import BadInput, Estimate, Outside, Value, require


@dataclass(frozen=True, slots=True)
class EfficiencyBand:
    """Transfer efficiency as a band of shares [1], ``0 < low <= likely <= high <= 1``."""

    low: float
    likely: float
    high: float
    source: str

    def __post_init__(self) -> None:
        for share in (self.low, self.likely, self.high):
            require("A band of transfer efficiency", share, above=0.0, high=1.0)
        if not self.low <= self.likely <= self.high:
            raise BadInput(
                "A band of transfer efficiency needs 0 < low <= likely <= high <= 1; "
                f"{self.low:g}, {self.likely:g}, {self.high:g} was given."
            )


Efficiency = float | EfficiencyBand

#: HVLP on large flat parts: the ends are common practice, no source; 65 % is what South Coast AQMD
#: asks of equipment that wants to count as equal to HVLP.
HVLP_LARGE_PARTS = EfficiencyBand(
    0.60,
    0.65,
    0.70,
    "HVLP on large flat parts: 60 to 70 % (common practice, no source); 65 % is the figure "
    "South Coast AQMD asks spray equipment to reach",
)
#: HVLP on small or open parts: 20 to 50 % (common practice, no source).
HVLP_SMALL_PARTS = EfficiencyBand(
    0.20, 0.35, 0.50, "HVLP on small or open parts: 20 to 50 % (common practice, no source)"
)
#: Conventional air atomisation: 0.25 is EPA's default (40 CFR 60.313, air atomized spray); a modern
#: painter on a flat panel does better, the upper end is common practice, no source.
CONVENTIONAL = EfficiencyBand(
    0.20,
    0.30,
    0.50,
    "conventional air atomisation: 0.25 in 40 CFR 60.313; the band 20 to 50 % is "
    "common practice, no source",
)

_FILM_RULE = "wet film x gun speed x pitch / delivery (conservation of volume)"
#: A millilitre makes a film of 1 um over 1 m2.
UM_MM2_PER_ML = 1e6


def _figure_for(
    efficiency: Efficiency, compute: Callable[[float], float], unit: str, rule: str
) -> Value | Estimate:
    """Compute with one efficiency, or with a band: a band makes the answer an estimate.

    `compute` must rise or fall throughout: then the ends of the band give the answer's ends.
    """
    if isinstance(efficiency, EfficiencyBand):
        ends = sorted((compute(efficiency.low), compute(efficiency.high)))
        band_rule = f"{rule}; transfer efficiency: {efficiency.source}"
        return Estimate(compute(efficiency.likely), ends[0], ends[1], unit, band_rule)
    require("Transfer efficiency", efficiency, above=0.0, high=1.0)
    return Value(compute(efficiency), unit, rule)


def default_band(hvlp: bool, large_flat_part: bool = True) -> EfficiencyBand:
    """Give the band of transfer efficiency to begin with, before any reading.

    Args:
        hvlp: a high volume, low pressure gun (10 psig or less at the air cap).
        large_flat_part: the part is large and flat against the fan.

    Returns: EfficiencyBand of shares [1], with its source.
    Range: hand spraying with compressed air; not electrostatic, not airless.
    Source: South Coast AQMD (65 % for HVLP or equal); 40 CFR 60.313 (0.25 for air atomized spray);
        the ends of the bands are common practice, no source.

    >>> default_band(hvlp=True).likely
    0.65
    """
    if not hvlp:
        return CONVENTIONAL
    return HVLP_LARGE_PARTS if large_flat_part else HVLP_SMALL_PARTS


def efficiency_from_weights(
    gained_g: float, sprayed_g: float, weight_solids_fraction: float
) -> Value | Outside:
    """Give the transfer efficiency from what a part gained and what was sprayed, both weighed.

    Args:
        gained_g: weight that the part, or foil on it, gained once the film was dry [g], 0 or more.
        sprayed_g: weight of paint that left the gun: cup before less cup after [g], above 0.
        weight_solids_fraction: solids by weight of the paint as sprayed [1], above 0 to 1.

    Returns: Value [1]: ``gained / (sprayed x weight solids)``; Outside where more solids are on the
        part than left the gun.
    Range: a dry film, no solvent left in it. The solids as weighed and dried, not the data sheet's:
        a few per cent in them are as many in the answer.
    Source: ASTM D5286 3.1.3, transfer efficiency (weight).

    >>> efficiency_from_weights(26.0, 100.0, 0.40).value
    0.65
    """
    require("The weight gained", gained_g, 0.0, unit="g")
    require("The weight sprayed", sprayed_g, above=0.0, unit="g")
    require("The solids by weight", weight_solids_fraction, above=0.0, high=1.0)
    share = gained_g / (sprayed_g * weight_solids_fraction)
    rule = "solids on the part over solids sprayed, by weight (ASTM D5286)"
    if share > 1.0:
        return Outside(
            "More solids are on the part than left the gun.",
            "Weigh again when the film is dry, and look at the solids by weight: those of the "
            "thinned "
            "paint count.",
            rule,
        )
    return Value(share, "1", rule)


def transfer_efficiency_from_film(
    film: FilmInterval,
    delivery_ml_min: float,
    fan_mm: float,
    overlap_fraction: float,
    speed_mm_s: float,
) -> Estimate | Outside:
    """Give the transfer efficiency that wet-film readings of one coat imply.

    Solvent that flashed off on the way counts as lost: it reads lower than by weight of solids, and
    is the right figure for the next wet film.

    Args:
        film: wet film of one coat, read at once, away from the edges (see film_between_teeth) [um].
        delivery_ml_min: delivery of paint, not of water [ml/min], above 0.
        fan_mm: width of the fan at the panel [mm], above 0.
        overlap_fraction: overlap of the passes [1], 0 up to but not 1.
        speed_mm_s: speed of the gun [mm/s], above 0.

    Returns: Estimate [1] from the interval; Outside where even its lower end is above 1.
    Range: a panel large against the fan, several passes. A share above 1 cannot be: the upper end
        stops at 1, and a lower end above 1 means that one of the figures is wrong.
    Source: conservation of volume, film x speed x pitch = delivery x efficiency.

    >>> te = transfer_efficiency_from_film(FilmInterval(40.0, 50.0), 200.0, 250.0, 0.5, 400.0)
    >>> te.low, te.likely, te.high
    (0.6, 0.675, 0.75)
    """
    require("The delivery", delivery_ml_min, above=0.0, unit="ml/min")
    require("The width of the fan", fan_mm, above=0.0, unit="mm")
    require("The overlap", overlap_fraction, 0.0, below=1.0)
    require("The speed of the gun", speed_mm_s, above=0.0, unit="mm/s")
    swept_mm2_min = speed_mm_s * 60.0 * fan_mm * (1.0 - overlap_fraction)
    low, high = (
        end_um * swept_mm2_min / UM_MM2_PER_ML / delivery_ml_min
        for end_um in (film.low_um, film.high_um)
    )
    if low > 1.0:
        return Outside(
            "More paint is on the panel than left the gun.",
            "Check the delivery (paint, not water), the width of the fan, the overlap and the "
            "timed pass, and that the reading is of one coat.",
            _FILM_RULE,
        )
    if high == 0.0:
        return Outside(
            "There is no wet film, so nothing can be said of the transfer efficiency.",
            "Read the film at once after the coat.",
            _FILM_RULE,
        )
    high = min(high, 1.0)
    return Estimate((low + high) / 2.0, low, high, "1", _FILM_RULE)
