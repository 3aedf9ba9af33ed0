"""The middle of a shop's own observations, with a band that asks for no distribution.

A single wild observation moves neither far, and nothing is assumed of how they scatter. What is
asked is that they do not hang together: several readings of one day are one observation.
"""

from __future__ import annotations

import math
import statistics
from collections.abc import Sequence
from dataclasses import dataclass

from booth.trade.result import Outside, require

__all__ = [
    "LEAST_OBSERVATIONS",
    "MOST_OBSERVATIONS",
    "USUAL_CONFIDENCE",
    "MedianBand",
    "median_band",
]

#: Two observations have no middle and no scatter to speak of (common practice, no source).
LEAST_OBSERVATIONS = 3
#: What a band is wanted to hold, unless said otherwise (common practice).
USUAL_CONFIDENCE = 0.95
#: Between which a confidence makes sense.
CONFIDENCE = (0.5, 0.999)
#: Of more than this the latest ones do, and the arithmetic stays exact.
MOST_OBSERVATIONS = 1000

_RULE = "median and order statistics, by the binomial distribution; no distribution is assumed"


@dataclass(frozen=True, slots=True)
class MedianBand:
    """The middle of observations and between which of them the true middle lies.

    median, middle_low, middle_high: in the unit of the observations; covers_fraction: how often such
    a band holds the true middle [1]; count: of observations; rule.
    """

    median: float
    middle_low: float
    middle_high: float
    covers_fraction: float
    count: int
    rule: str = _RULE


def median_band(
    observations: Sequence[float], confidence_fraction: float = USUAL_CONFIDENCE
) -> MedianBand | Outside:
    """Give the middle of a shop's own observations, and the band in which the true middle lies.

    Args:
        observations: figures of one kind in one unit, three or more, each of another job.
        confidence_fraction: how often the band is to hold the true middle [1], 0.5 to 0.999.

    Returns: MedianBand: from the r-th smallest to the r-th greatest, r the largest with
        ``1 - 2 (C(n,0) + ... + C(n,r-1)) / 2^n >= confidence``; where so few cannot reach that (5
        for 95 %), from the least to the greatest, and covers_fraction says what that comes to.
        Outside with fewer than three.
    Range: 3 to 1000 observations that do not hang together. It is a band of the middle: single
        observations scatter further.
    Source: confidence interval of the median by order statistics: W. J. Conover, Practical
        Nonparametric Statistics, 3rd ed. (1999), chapter 3 (from memory).

    >>> band = median_band([1.2, 1.3, 1.1, 1.5, 1.4, 1.3])
    >>> band.middle_low, round(band.median, 3), band.middle_high, round(band.covers_fraction, 3)
    (1.1, 1.3, 1.5, 0.969)
    >>> round(median_band([1.0, 2.0, 3.0]).covers_fraction, 3)
    0.75
    """
    require("The confidence wanted", confidence_fraction, *CONFIDENCE)
    found = sorted(require("An observation", each) for each in observations)
    count = len(found)
    require("How many observations there are", count, 0, MOST_OBSERVATIONS)
    if count < LEAST_OBSERVATIONS:
        return Outside(
            f"There are {count} observations: too few to learn from.",
            f"{LEAST_OBSERVATIONS} are needed; each further job adds one.",
            _RULE,
        )
    wanted = (1.0 - confidence_fraction) / 2.0 * 2**count
    depth = tail = 1
    while depth < count // 2 and tail + math.comb(count, depth) <= wanted:
        tail += math.comb(count, depth)
        depth += 1
    covers = 1.0 - 2.0 * (tail / 2**count)
    middle = statistics.median(found)
    return MedianBand(middle, found[depth - 1], found[-depth], covers, count)
