"""Wet-film gauge with notches: a reading is an interval, and a verdict may be 'cannot tell'."""

from __future__ import annotations

import enum
import math
from collections.abc import Sequence
from dataclasses import dataclass

from booth.trade.result import BadInput, require

#: Teeth of the example gauge of ASTM D4414-95(2020) 7.1.2 [mil]: by 0.5 to 6, by 1 to 10, by 2 to
#: 30, by 5 above (shown up to 60).
TEETH_MIL: tuple[float, ...] = (
    *(step / 2 for step in range(1, 13)),
    *(float(step) for step in range(7, 11)),
    *(float(step) for step in range(12, 31, 2)),
    *(float(step) for step in range(35, 61, 5)),
)


@dataclass(frozen=True, slots=True)
class FilmInterval:
    """The film is at least low_um and at most high_um [um]; high_um may be infinite."""

    low_um: float
    high_um: float

    def __post_init__(self) -> None:
        require("The lower end of the film", self.low_um, 0.0, unit="um")
        if self.high_um != math.inf:
            require("The upper end of the film", self.high_um, self.low_um, unit="um")


@dataclass(frozen=True, slots=True)
class FilmStatistics:
    """Several readings of one coat, none known better than its two teeth.

    count; mean: where the mean film lies; everywhere: from the lowest to the highest tooth of all
    readings; spread_least_um and spread_most_um: thickest less thinnest place, as the teeth allow
    [um].
    """

    count: int
    mean: FilmInterval
    everywhere: FilmInterval
    spread_least_um: float
    spread_most_um: float


class Verdict(enum.StrEnum):
    """What a film is against its target."""

    TOO_THIN = "too thin"
    IN_RANGE = "in range"
    TOO_THICK = "too thick"
    CANNOT_TELL = "cannot tell"


@dataclass(frozen=True, slots=True)
class Judgement:
    """verdict; possible: every verdict that the reading leaves open; sentence for the painter."""

    verdict: Verdict
    possible: tuple[Verdict, ...]
    sentence: str


def film_between_teeth(last_wetted_um: float | None, first_dry_um: float | None) -> FilmInterval:
    """Give the interval in which a notch gauge says the film lies.

    Args:
        last_wetted_um: the farthest tooth that came out wet [um]; None where none did.
        first_dry_um: the next tooth, which stayed dry [um]; None where every tooth was wetted.

    Returns: FilmInterval [um]: from 0 when no tooth was wetted; without an upper end when all were.
    Range: a wet film, read at once; on a curve along its length, not across. The interval is what
        the gauge knows: a film 'of 3 mil' is one between 3 and the next tooth.
    Source: ASTM D4414 (notch gauge); Organic Finishing Guidebook 2012-13: the wet film lies between
        the highest coated and the next uncoated notch.

    >>> film_between_teeth(75.0, 100.0)
    FilmInterval(low_um=75.0, high_um=100.0)
    >>> film_between_teeth(None, 25.0)
    FilmInterval(low_um=0.0, high_um=25.0)
    """
    if last_wetted_um is None and first_dry_um is None:
        raise BadInput("Give the last tooth that was wetted, the first that stayed dry, or both.")
    low, high = 0.0, math.inf
    if last_wetted_um is not None:
        low = require("The last wetted tooth", last_wetted_um, above=0.0, unit="um")
    if first_dry_um is not None:
        high = require("The first dry tooth", first_dry_um, above=low, unit="um")
    return FilmInterval(low, high)


def film_statistics(readings: Sequence[FilmInterval]) -> FilmStatistics:
    """Give the mean of several gauge readings of one coat, its two ends.

    Args:
        readings: one FilmInterval a place [um], one or more.

    Returns: FilmStatistics. The mean lies between the mean of the lower and that of the upper ends,
        whatever the film is within each interval.
    Range: one reading or more; take several, in different places, away from edges.
    Source: interval arithmetic: IEEE 1788-2015 (addition and division by a positive number).

    >>> stats = film_statistics([FilmInterval(75, 100), FilmInterval(100, 125)])
    >>> stats.mean
    FilmInterval(low_um=87.5, high_um=112.5)
    """
    if not readings:
        raise BadInput("No reading of the film was given; at least one is needed.")
    count = len(readings)
    lows = [reading.low_um for reading in readings]
    highs = [reading.high_um for reading in readings]
    # Every upper end infinite: inf / count stays inf, as it should.
    mean = FilmInterval(math.fsum(lows) / count, max(sum(highs) / count, math.fsum(lows) / count))
    return FilmStatistics(
        count,
        mean,
        FilmInterval(min(lows), max(highs)),
        max(0.0, max(lows) - min(highs)),
        max(highs) - min(lows),
    )


def _possible(film: FilmInterval, low: float, high: float) -> tuple[Verdict, ...]:
    point = film.low_um == film.high_um
    found = []
    if film.low_um < low:
        found.append(Verdict.TOO_THIN)
    # The first dry tooth was not reached: a film whose upper end is the target's lower end is thin.
    reaches = film.high_um >= low if point else film.high_um > low
    if reaches and film.low_um <= high:
        found.append(Verdict.IN_RANGE)
    if film.high_um > high:
        found.append(Verdict.TOO_THICK)
    return tuple(found)


_SENTENCES = {
    (Verdict.TOO_THIN,): "The film is too thin.",
    (Verdict.IN_RANGE,): "The film is within the range asked for.",
    (Verdict.TOO_THICK,): "The film is too thick.",
    (Verdict.TOO_THIN, Verdict.IN_RANGE): "The film is too thin or just in range: "
    "the teeth do not tell. Read it in more places, or with finer teeth.",
    (Verdict.IN_RANGE, Verdict.TOO_THICK): "The film is in range or too thick: "
    "the teeth do not tell. Read it in more places, or with finer teeth.",
    (Verdict.TOO_THIN, Verdict.IN_RANGE, Verdict.TOO_THICK): "The teeth are too coarse for this "
    "range: the film may be too thin, in range or too thick. Use finer teeth.",
}


def judge_film(
    film: FilmInterval, target_low_um: float | None, target_high_um: float | None
) -> Judgement:
    """Hold a film, known as an interval, against a target range.

    Args:
        film: a reading, or the mean of several [um].
        target_low_um: least film asked for [um], above 0, or None.
        target_high_um: greatest film asked for [um], not below the least, or None.

    Returns: Judgement: too thin, in range or too thick only when the whole interval says so;
        otherwise 'cannot tell', with the verdicts that are left.
    Range: the film lies from the lower end up to, but not at, the upper end of its interval; an
        interval of no width is a film known exactly.
    Source: ASTM D4414 (the film lies between two teeth), interval order.

    >>> judge_film(FilmInterval(75, 100), 80, 120).verdict.value
    'cannot tell'
    >>> judge_film(FilmInterval(100, 125), 80, 130).verdict.value
    'in range'
    """
    if target_low_um is None and target_high_um is None:
        raise BadInput("No wet film is asked for, so there is nothing to compare with.")
    low, high = 0.0, math.inf
    if target_low_um is not None:
        low = require("The least film asked for", target_low_um, 0.0, unit="um")
    if target_high_um is not None:
        high = require("The greatest film asked for", target_high_um, low, unit="um")
    possible = _possible(film, low, high)
    verdict = possible[0] if len(possible) == 1 else Verdict.CANNOT_TELL
    return Judgement(verdict, possible, _SENTENCES[possible])
