"""What the joined subjects answer with: plain fields, named as those of the trade are.

Made once and told once: without the comparing that nobody does, which every start would pay for.
"""

from __future__ import annotations

from dataclasses import dataclass

from booth.trade.faults.ranked_causes import RankedCause
from booth.trade.film.wet_gauge import FilmStatistics, Judgement
from booth.trade.mixing.components import Measure
from booth.trade.mixing.pours import Pour
from booth.trade.result import Estimate, Value
from booth.trade.thinning.thin_to_viscosity import ThinnerStep


@dataclass(eq=False, repr=False)
class BlendRules:
    logarithmic_rule_mm2_s: float
    blending_index_mm2_s: float


@dataclass(eq=False, repr=False)
class Coverage:
    nothing_lost_m2_l: float
    with_losses: Value | Estimate


@dataclass(eq=False, repr=False)
class DryingPower:
    drying_power_pa: float
    of_the_reference_air_fraction: float


@dataclass(eq=False, repr=False)
class FittedStep:
    """step: what to add; note: how well the line fits, residual_fraction where that can be told."""

    step: ThinnerStep
    residual_fraction: float | None
    note: str


@dataclass(eq=False, repr=False)
class Gauged:
    film: FilmStatistics
    judgement: Judgement | None
    rule: str


@dataclass(eq=False, repr=False)
class SectionPoint:
    """place: in the painted width [1]; film: over the mean film [1]."""

    place_fraction: float
    film: float


@dataclass(eq=False, repr=False)
class PotLife:
    """One of the two: what is left, or how long it has been over."""

    pot_life_left_s: float | None
    over_since_s: float | None
    note: str


@dataclass(eq=False, repr=False)
class Batch:
    """The pours of a batch, in `measure`; makes_ml: the volume of what is weighed, where known."""

    measure: Measure
    pours: tuple[Pour, ...]
    makes_ml: float | None
    rule: str


@dataclass(eq=False, repr=False)
class MixShare:
    """The share of one component [1]; None where a density is not known."""

    name: str
    by_volume_fraction: float | None
    by_weight_fraction: float | None


@dataclass(eq=False, repr=False)
class RankedFault:
    causes: tuple[RankedCause, ...]
    question: str | None
    film: str
    rule: str
