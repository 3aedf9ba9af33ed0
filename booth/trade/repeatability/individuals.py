"""Single figures in the order in which they were measured: their mean, and limits for the next one.

The chart of individuals and moving ranges: what lies outside its limits has a cause of its own, as a
rule; what lies inside scatters as it always did. Whether that is good enough, the data sheet says.
"""

from __future__ import annotations

import statistics
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from booth.trade.result import ROUNDING, BadInput, require

#: Expected range of two figures of one normal distribution, in standard deviations, as the tables of
#: the charts round it (exactly 2 over the root of pi, 1.12838).
D2_OF_TWO = 1.128
#: Limits lie so many standard deviations from the mean.
SIGMAS = 3.0
#: Below this there are no limits: Wheeler, Understanding Variation, p. 60, calls limits useful from
#: five or six figures on (as quoted in public guides to these charts).
LEAST_FIGURES = 5
#: Below this they are provisional: public guides to these charts ask for at least 20 figures, since
#: every one of them counts alone.
ENOUGH_FIGURES = 20


@dataclass(frozen=True, slots=True)
class ControlLimits:
    """What a row of single figures scatters by, in their own unit.

    count; mean; moving_range: mean difference between neighbours, None for a single figure; lower,
    upper: the control limits, None where there are too few figures; outside: the places of those
    beyond a limit, the first figure being 1; provisional: whether the limits rest on few figures;
    note: why there are none, or why they are provisional, else empty.
    """

    count: int
    mean: float
    moving_range: float | None
    lower: float | None
    upper: float | None
    outside: tuple[int, ...]
    provisional: bool
    note: str


def control_limits(figures: Sequence[float]) -> ControlLimits:
    """Give the mean of single figures, oldest first, and the limits that they usually stay within.

    Args:
        figures: one figure a job, in the order in which they were measured [one unit for all of
            them, whichever it is]; one or more.

    Returns: ControlLimits: ``mean +/- 3 * mean moving range / 1.128`` (that is 2.66 mean moving
        ranges), a moving range being the difference between two neighbours.
    Range: no limits for fewer than 5 figures; provisional limits for fewer than 20. The figures have
        to be of one kind (product, gun, cup, coat): limits over a mixture say nothing. A limit is no
        tolerance: what the data sheet asks for is another matter.
    Source: NIST/SEMATECH e-Handbook of Statistical Methods 6.3.2.2, individuals control charts;
        ISO 7870-2, charts for individual values and moving ranges (from memory).

    >>> flow = control_limits([49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1])
    >>> round(flow.mean, 2), round(flow.lower, 4), round(flow.upper, 4), flow.outside
    (50.81, 45.8159, 55.8041, ())
    >>> control_limits([20.1, 20.3, 19.8]).lower is None
    True
    """
    if not figures:
        raise BadInput("No figure was given; at least one is needed.")
    given = [require("A figure", each) for each in figures]
    count, mean = len(given), statistics.fmean(given)
    moving = [abs(after - before) for before, after in pairwise(given)]
    moving_range = statistics.fmean(moving) if moving else None
    if count < LEAST_FIGURES or moving_range is None:
        few = f"No limits: they take {LEAST_FIGURES} figures or more, and there {_are(count)}."
        return ControlLimits(count, mean, moving_range, None, None, (), False, few)
    reach = SIGMAS * moving_range / D2_OF_TWO
    lower, upper = mean - reach, mean + reach
    # Figures that are all the same have no reach: their mean may be off by its rounding.
    slack = ROUNDING * max(map(abs, given))
    outside = tuple(
        place for place, each in enumerate(given, 1) if not lower - slack <= each <= upper + slack
    )
    provisional = count < ENOUGH_FIGURES
    note = (
        f"Provisional limits: they rest on {count} figures, and every one counts alone; from "
        f"{ENOUGH_FIGURES} on they hold."
        if provisional
        else ""
    )
    return ControlLimits(count, mean, moving_range, lower, upper, outside, provisional, note)


def _are(count: int) -> str:
    return "is one" if count == 1 else f"are {count}"
