"""Thinning by the seconds of one cup, where no conversion to viscosity carries: limit, warmth, a little thinner.

Refinish coatings run out of a cup faster than its standard covers; seconds in the same cup need no
conversion.
"""

from __future__ import annotations

import enum
from dataclasses import dataclass

from booth.trade.result import BadInput, Said, require

__all__ = ["NextStep", "SameCupStep", "next_thinning_step"]

#: Thinner to add before timing again [1 of the coating, by volume]: common practice, no source.
STEP_FRACTION = 0.025
#: Less than this is not worth measuring out [1]: common practice, no source.
LEAST_FRACTION = 0.002
#: Colder than the target is meant for by more than this, it is warmed first [K]: 5 % a degree F
#: (ASTM D4212 8.1) makes 2 K about 18 %.
SAME_TEMPERATURE_K = 2.0
#: No liquid in a cup is colder or hotter [degC]; no mix has more thinner [1].
LIQUID_C = (-40.0, 100.0)
MOST_FRACTION = 3.0


class NextStep(enum.StrEnum):
    """What to do next."""

    SPRAY = "spray"
    AT_LIMIT = "at the limit"
    WARM = "warm it"
    COOL = "let it cool"
    ADD = "add a little"
    THICKEN = "add unthinned coating"


@dataclass(frozen=True, slots=True)
class SameCupStep:
    """What to do next; add_fraction: thinner to add, by volume of the coating [1]; 0 where none."""

    step: NextStep
    add_fraction: float = 0.0


def next_thinning_step(
    mean_s: float,
    low_s: float,
    high_s: float,
    fraction_before: float,
    limit_fraction: float | None = None,
    liquid_c: float | None = None,
    at_c: float | None = None,
) -> SameCupStep:
    """Give the next step to a wanted efflux time, from seconds in the cup that the target names.

    Args:
        mean_s: efflux time of the mix as it is [s], above 0.
        low_s, high_s: the wanted efflux time in the same cup [s], low above 0, high not below.
        fraction_before: thinner that is in it, by volume of the coating [1], 0 to 3.
        limit_fraction: most thinner that the data sheet allows [1], 0 to 3; None: not said.
        liquid_c, at_c: the liquid as timed, and as the target means it [degC]; None: not known.

    Returns: SameCupStep: too slow: the limit first, then the temperature, then 2.5 % of thinner, or
        what is left to the limit, and the cup again.
    Range: one cup, the same for target and mix; no figure for all that it will take.
    Source: common practice, no source; temperature, ASTM D4212 8.1.

    >>> next_thinning_step(22.0, 17.0, 19.0, 0.05, 0.10)
    SameCupStep(step=<NextStep.ADD: 'add a little'>, add_fraction=0.025)
    >>> next_thinning_step(22.0, 17.0, 19.0, 0.10, 0.10).step
    <NextStep.AT_LIMIT: 'at the limit'>
    """
    require("The efflux time", mean_s, above=0.0, unit="s")
    require("The shortest wanted efflux time", low_s, above=0.0, unit="s")
    require("The longest wanted efflux time", high_s, above=0.0, unit="s")
    require("The thinner in the mix", fraction_before, 0.0, MOST_FRACTION)
    if high_s < low_s:
        ends = f"{Said(low_s, 's')} to {Said(high_s, 's')}"
        raise BadInput(f"The target is upside down: {ends}.")
    off_k = 0.0
    if liquid_c is not None and at_c is not None:
        require("The temperature of the liquid", liquid_c, *LIQUID_C, unit="C")
        require("The temperature of the target", at_c, *LIQUID_C, unit="C")
        off_k = liquid_c - at_c
    if mean_s > high_s:
        room = MOST_FRACTION
        if limit_fraction is not None:
            room = (
                require("The limit on thinner", limit_fraction, 0.0, MOST_FRACTION)
                - fraction_before
            )
        if room < LEAST_FRACTION:
            return SameCupStep(NextStep.AT_LIMIT)
        if off_k < -SAME_TEMPERATURE_K:
            return SameCupStep(NextStep.WARM)
        return SameCupStep(NextStep.ADD, min(STEP_FRACTION, room))
    if mean_s < low_s:
        warm = off_k > SAME_TEMPERATURE_K
        return SameCupStep(NextStep.COOL if warm else NextStep.THICKEN)
    return SameCupStep(NextStep.SPRAY)
