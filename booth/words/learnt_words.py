"""What this shop has learnt, in words: bands, how many observations, a small plot of them. Pure.

It stands beside what the sheet says, never in its place, and always with the count.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence

from booth.files.faults import counted
from booth.files.safe_text import visible
from booth.learnt.observation import NO_END, Learnt, Observation, Told
from booth.learnt.subjects import BY_KEY
from booth.moment import Moment
from booth.trade.observations.median_band import LEAST_OBSERVATIONS, USUAL_CONFIDENCE
from booth.units import Kind, System, show

NOT_ENOUGH = f"too few to tell, {LEAST_OBSERVATIONS} jobs are needed"
#: Two digits of a multiple are all that touch tests and catches are good for.
DIGITS = 2
#: Up to here a stopwatch worked by hand is told to the tenth [s].
TENTHS_TO_S = 100.0


def multiple(value: float, up: bool | None = None) -> str:
    """A multiple in two digits, rounded to the nearest, or up or down to the careful side."""
    places = DIGITS - 1 - math.floor(math.log10(value)) if value > 0 else 1
    step = 10.0 ** -max(places, 0)
    exact = round(value / step, 6)
    whole = round(exact) if up is None else math.ceil(exact) if up else math.floor(exact)
    return f"{whole * step:.{max(places, 0)}f}"


def figure(
    value: float, kind: Kind | None, system: System, up: bool | None = None, unit: bool = True
) -> str:
    """A figure of a subject, with its unit; a multiple has none, and a time is told in seconds."""
    if kind is None:
        return multiple(value, up)
    places = None if kind is not Kind.TIME else 1 if value < TENTHS_TO_S else 0
    return show(value, kind, system, places=places, unit=unit)


def told(given: Iterable[Told], system: System) -> str:
    """Words and figures in a line."""
    return ", ".join(said for each in given if (said := _one(each, system)))


def _one(each: Told, system: System) -> str:
    if isinstance(each, str):
        return visible(each)
    return between(each[0], each[-2], each[-1], system)


def between(low: float | None, high: float | None, unit: Kind | None, system: System) -> str:
    """A band: '1.2 to 1.5', 'at least 1.2', 'at most 1.5'; nothing where nothing is known."""
    if low is None or high is None:
        if high is not None:
            return f"at most {figure(high, unit, system, up=True)}"
        return f"at least {figure(low, unit, system, up=False)}" if low is not None else ""
    ends = figure(low, unit, system, up=False), figure(high, unit, system, up=True)
    if ends[0] == ends[1]:
        return ends[0]
    return f"{figure(low, unit, system, up=False, unit=False)} to {ends[1]}"


def band(learnt: Learnt, system: System) -> str:
    """The band of its middle, in words."""
    return between(learnt.low, learnt.high, learnt.unit, system)


def observations(learnt: Learnt) -> str:
    """How many readings, and of how many jobs where that is another number."""
    jobs, of = len(learnt.observations), BY_KEY[learnt.subject].of
    of = f"{of}e" if of.endswith(("ch", "x", "ss")) and learnt.readings != 1 else of
    said = counted(learnt.readings, of)
    return said if learnt.readings == jobs else f"{said} of {counted(jobs, 'job')}"


def sure(learnt: Learnt) -> str:
    """How sure the band is, where so few observations make it less than usual."""
    if not learnt.has_band or learnt.covers_fraction >= USUAL_CONFIDENCE:
        return ""
    return f"{math.floor(100 * learnt.covers_fraction)} % sure"


def in_short(learnt: Learnt, system: System) -> str:
    """Band, how sure, how many: '1.2 to 1.5, 7 waits'; that they are too few."""
    count = observations(learnt)
    if not learnt.is_enough:
        return f"{count}: {NOT_ENOUGH}"
    return ", ".join(filter(None, (band(learnt, system) or "no end known", sure(learnt), count)))


# -- beside the figures of the sheet -------------------------------------------------------------


def wait_line(learnt: Learnt | None, system: System, alike: bool = False) -> tuple[str, ...]:
    """What this shop's waits came to against the one that is counted; it opens nothing earlier."""
    if learnt is None or not learnt.has_band:
        return ()
    where = "here in such air" if alike else "in this shop"
    longer = "longer" if alike else "it took longer"
    later = f"; {longer}: test later" if (learnt.low or 0.0) > 1.0 else ""
    return (f"{where} {_times(learnt, system)} this wait{_rest(learnt)}{later}",)


def water_line(learnt: Learnt | None, system: System) -> tuple[str, ...]:
    """What share of a delivery of water the coating had here."""
    if learnt is None or not learnt.has_band:
        return ()
    return (f"coating here: {_times(learnt, system)} the water{_rest(learnt)}",)


def _times(learnt: Learnt, system: System) -> str:
    return f"{band(learnt, system)} times"


def _rest(learnt: Learnt) -> str:
    """How sure and how many, behind a comma each."""
    return "".join(f", {each}" for each in (sure(learnt), observations(learnt)) if each)


def here_line(learnt: Learnt | None, what: str, system: System) -> tuple[str, ...]:
    """A line beside a figure of the sheet. what: begins it, with a place for the band."""
    if learnt is None or not learnt.has_band:
        return ()
    return (f"{what.format(band(learnt, system))}{_rest(learnt)}",)


# -- where it is looked at ------------------------------------------------------------------------


def title(learnt: Learnt, system: System) -> str:
    """What it is learnt for: product, gun, setting."""
    return told(learnt.about, system) or "all of this shop"


def summary(learnt: Learnt, system: System) -> tuple[str, ...]:
    """What it comes to, sentence by sentence."""
    subject = BY_KEY[learnt.subject]
    lines = [subject.title, title(learnt, system), ""]
    if not learnt.is_enough:
        lines.append(f"{observations(learnt)}: {NOT_ENOUGH}.")
    else:
        lines += _sentences(learnt, system)
    rehearsals = sum(each.rehearsal for each in learnt.observations)
    if rehearsals:
        lines.append(f"{rehearsals} of them from rehearsals.")
    for reason in dict.fromkeys(reason for _, reason in learnt.without):
        count = sum(each == reason for _, each in learnt.without)
        lines.append(f"Left out: {counted(count, 'job')}, {visible(reason)}.")
    return tuple(lines)


def _sentences(learnt: Learnt, system: System) -> list[str]:
    share = f"{math.floor(100 * learnt.covers_fraction)} %"
    said = band(learnt, system)
    lines = []
    if learnt.middle is not None:
        middle = figure(learnt.middle, learnt.unit, system)
        lines.append(f"The middle of them is {middle}: half came out below, half above.")
    if said:
        lines.append(
            f"The true middle is {said}: a band found like this is right {share} of the time."
        )
    else:
        lines.append("They do not say yet between what it lies: wet and dry touches bound it.")
    lines.append(f"{observations(learnt)}. A single job may lie further off.")
    return lines


def observation_words(each: Observation, unit: Kind | None, system: System) -> str:
    """What one job showed."""
    low = None if each.low <= 0 else each.low
    high = None if each.high >= NO_END else each.high
    if each.is_exact:
        return figure(each.low, unit, system)
    return between(low, high, unit, system) or "not bounded"


def observation_line(
    each: Observation, learnt: Learnt, system: System, when: Callable[[Moment], str]
) -> str:
    """A job of the list: when, what it showed, what has to be known with it."""
    more = [f"middle of {each.count}"] if each.count > 1 else []
    more += ["rehearsal"] if each.rehearsal else []
    words = observation_words(each, learnt.unit, system)
    return "  ".join(filter(None, (when(each.at), words, told(each.told, system), ", ".join(more))))


def plot(every: Sequence[Observation], learnt: Learnt, cells: int, system: System) -> list[str]:
    """A line a job, the latest first, on one scale: where it lies, and the band beneath them all."""
    ends = [each.low for each in every if each.low > 0]
    ends += [each.high for each in every if each.high < NO_END]
    ends += [each for each in (learnt.low, learnt.high) if each is not None]
    if len(ends) < 2 or max(ends) <= min(ends):
        return []
    least, most = min(ends), max(ends)

    def cell(value: float) -> int:
        return round((min(max(value, least), most) - least) / (most - least) * (cells - 1))

    lines = [_strip(cell(each.low), cell(each.high), cells) for each in every]
    if learnt.has_band:
        first = cell(learnt.low if learnt.low is not None else least)
        last = cell(learnt.high if learnt.high is not None else most)
        lines.append(" " * first + "▔" * (last - first + 1))
    low, high = (figure(each, learnt.unit, system) for each in (least, most))
    lines.append(f"{low}{high:>{max(cells - len(low), len(high) + 1)}}")
    return lines


def _strip(first: int, last: int, cells: int) -> str:
    mark = "●" if first == last else "├" + "─" * (last - first - 1) + "┤"
    return ("·" * first + mark).ljust(cells, "·")
