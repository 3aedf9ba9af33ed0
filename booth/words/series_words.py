"""Figures job after job in words: what one scatters by, which job lies outside. Pure."""

from __future__ import annotations

from collections.abc import Callable

from booth.files.safe_text import visible
from booth.job.series import Figure, Measure, Series
from booth.moment import Moment
from booth.units import Kind, System, show
from booth.units.durations import length
from booth.words.event_words import cup_name
from booth.words.shown import PickLine, RunChart, Tone

When = Callable[[Moment], str]
#: From this width on a line has its mean as well.
ROOMY = 90
RULE = (
    "The limits are the mean, and 2.66 times the mean difference between one job and the next above and "
    "below it (individuals and moving ranges: NIST/SEMATECH e-Handbook of Statistical Methods 6.3.2.2). "
    "What lies outside has a cause of its own, as a rule: read that job. What lies inside scatters as it "
    "always did; whether that is good enough, the data sheet says."
)


def measure_words(measure: Measure) -> str:
    """'efflux time, Ford #4'; 'delivery, clear gun'."""
    same = (cup_name(measure.cup) if measure.cup else "", measure.gun, *measure.parts)
    return ", ".join(visible(each) for each in (measure.label, *same) if each)


def figure_words(value: float, measure: Measure, system: System) -> str:
    """A figure of the series as it is shown."""
    if measure.kind is Kind.TIME and measure.places is None:
        return length(value)
    return show(value, measure.kind, system, places=measure.places)


def lower_of(series: Series) -> float | None:
    """The lower limit, where there can be figures below it: nothing that is measured here is less than
    nothing."""
    lower = series.limits.lower
    return None if lower is None or lower < 0 else lower


def series_line(series: Series, system: System, width: int = 200) -> PickLine:
    """A line of the list, in a window so wide: what it is, of how many jobs, its mean and its limits;
    whether all lie inside. Where there is little room the picture says the mean."""
    limits, measure = series.limits, series.measure

    def told(value: float) -> str:
        return figure_words(value, measure, system)

    name, mean = measure_words(measure), f"mean {told(limits.mean)}"
    if limits.upper is None:
        return PickLine(
            name, f"{mean}  {Tone.PLAIN.shape} {jobs(limits.count)}, no limits yet", must=True
        )
    lower = lower_of(series)
    band = (
        f"{told(lower)} to {told(limits.upper)}"
        if lower is not None
        else f"up to {told(limits.upper)}"
    )
    count = len(limits.outside)
    state = f"{Tone.LATE.shape} {count} outside" if count else f"{Tone.PLAIN.shape} all inside"
    return PickLine(name, f"{f'{mean}, ' if width >= ROOMY else ''}{band}  {state}", must=True)


def jobs(count: int) -> str:
    return f"{count} job{'' if count == 1 else 's'}"


def chart_of(series: Series, picked: int, system: System, day: When) -> RunChart:
    """The picture of a series. day: writes a moment as a date."""
    limits, figures = series.limits, series.figures

    def told(what: str, value: float | None) -> str:
        return "" if value is None else f"{what} {figure_words(value, series.measure, system)}"

    lower = lower_of(series)
    return RunChart(
        tuple(each.value for each in figures),
        limits.mean,
        told("mean", limits.mean),
        lower,
        told("low", lower),
        limits.upper,
        told("high", limits.upper),
        frozenset(place - 1 for place in limits.outside),
        (day(figures[0].opened), day(figures[-1].opened)),
        picked,
    )


def figure_line(series: Series, figure: Figure, system: System, name: str, day: When) -> str:
    """One job of the series: '2026-11-20, blue doors: 27.1 s, above the limits'."""
    side = series.side(figure)
    told = figure_words(figure.value, series.measure, system)
    return f"{day(figure.opened)}, {name}: {told}{f', {side} the limits' if side else ''}"


def outside_lines(
    series: Series, system: System, name_of: Callable[[Figure], str], day: When
) -> tuple[str, ...]:
    """Every job that lies outside, the latest first, named with its date."""
    return tuple(
        f"{Tone.LATE.shape} {figure_line(series, each, system, name_of(each), day)}"
        for each in reversed(series.outside)
    )
