"""Faults and their causes in words and figures, in the units shown now. Pure."""

from __future__ import annotations

from collections.abc import Iterator

from textual.content import Content

from booth.screens.faces import duration
from booth.trade.faults import Fault, RankedCause, Reading, Standing
from booth.units import Kind, System, show, shown_unit
from booth.widgets.readout import Readout
from booth.widgets.text import content
from booth.widgets.tone import Tone

__all__ = ["causes_text", "reading_words", "strongest"]

#: Unit of a figure of the evidence -> kind of quantity, and what makes it that kind's base unit.
KINDS = {
    "kPa": (Kind.PRESSURE, 1.0),
    "ml/min": (Kind.DELIVERY, 1.0),
    "um": (Kind.THICKNESS, 1.0),
    "K": (Kind.TEMPERATURE_DIFFERENCE, 1.0),
    "C": (Kind.TEMPERATURE, 1.0),
    "%": (Kind.PERCENT, 1.0),
    "m/s": (Kind.SPEED, 1.0),
    "mm": (Kind.LENGTH, 1.0),
    "1": (Kind.PERCENT, 100.0),
}
#: Where a limit is from that is neither the profile's nor named with the cause.
OTHER_LIMITS = {
    "unevenness": "a parabola half over half",
    "gun speed": "for the wet film asked for",
    "pot life used": "all of it",
}
#: A coat laid at its time, and a wait that was kept, have no limit to name.
BY_THE_CLOCK = {"coat laid early by", "coat laid late by"}


def reading_words(read: Reading, system: System) -> str:
    """A figure against its limit: 'wet film 100 µm, above 60 µm (profile)'."""
    if read.measured is None or read.limit is None:
        return read.name
    measured = _value(read, read.measured, system)
    if read.name in BY_THE_CLOCK:
        return f"{read.name} {measured}" if read.side == "above" else "coats laid in their time"
    where = OTHER_LIMITS.get(read.name, read.limit_source)
    return f"{read.name} {measured}, {read.side} {_value(read, read.limit, system)} ({where})"


def _value(read: Reading, value: float, system: System, unit: bool = True) -> str:
    if read.unit == "s":
        if read.name in BY_THE_CLOCK:
            return duration(value)
        return show(value, Kind.TIME, system, places=1, unit=unit)
    kind, factor = KINDS[read.unit]
    places = 0 if read.unit == "1" else None
    return show(value * factor, kind, system, places=places, unit=unit)


def strongest(fault: Fault, causes: tuple[RankedCause, ...], system: System) -> Readout | None:
    """The cause that a figure of this job speaks for most, its figure as large as may be.

    None where no figure speaks for any: nothing is claimed without one.
    """
    first = causes[0] if causes else None
    if first is None or first.standing is not Standing.SHOWN:
        return None
    read = first.figures_for[0]
    label = f"{fault.name}: {first.cause.words}"
    lines = (f"now: {first.cause.now}", f"next time: {first.cause.next_time}")
    if read.measured is None or read.limit is None:
        return Readout("?", label=label, tone=Tone.CAUTION, word=read.name.upper(), lines=lines)
    if read.unit == "s":
        unit = "" if read.name in BY_THE_CLOCK else "s"
    else:
        unit = shown_unit(KINDS[read.unit][0], system)
    word = f"{read.side} {_value(read, read.limit, system)}".upper()
    if read.name in BY_THE_CLOCK:
        word = "TOO EARLY" if "early" in read.name else "TOO LATE"
    else:
        # A unit keeps its own letters: M is not m.
        word = f"{read.side.upper()} {_value(read, read.limit, system)}"
    lines = (reading_words(read, system), *lines)
    figure = _value(read, read.measured, system, unit=False)
    return Readout(figure, unit, label=label, tone=Tone.CAUTION, word=word, lines=lines)


def causes_text(fault: Fault, causes: tuple[RankedCause, ...], system: System) -> Content:
    """All causes to read and to scroll: shown ones by rank, open ones, cleared ones."""
    return Content("\n").join(_causes(fault, causes, system))


def _causes(fault: Fault, causes: tuple[RankedCause, ...], system: System) -> Iterator[Content]:
    by = {each: [c for c in causes if c.standing is each] for each in Standing}
    shown, still_open, cleared = by[Standing.SHOWN], by[Standing.OPEN], by[Standing.CLEARED]
    if not shown:
        yield content("No figure of this job speaks for a cause.").stylize("bold")
        yield Content("")
    yield from _said("", f"On the film: {fault.film}")
    for rank, each in enumerate(shown, 1):
        yield Content("")
        yield content(f"{rank}  {each.cause.words}").stylize("bold")
        for read in each.figures_for:
            yield from _said("   ", reading_words(read, system))
        if rank > 1:  # the first one's stand under the large figure
            yield from _said("   now: ", each.cause.now)
            yield from _said("   next time: ", each.cause.next_time)
    if still_open:
        yield Content("")
        yield content("No figure for or against:").stylize("bold")
        for each in still_open:
            yield from _said("·  ", each.cause.words)
            yield from _said("   now: ", each.cause.now)
    if cleared:
        yield Content("")
        yield content("The figures speak against:").stylize("bold")
        for each in cleared:
            yield from _said("·  ", each.cause.words)
            for read in each.figures_against:
                yield from _said("   ", reading_words(read, system))


def _said(before: str, words: str) -> Iterator[Content]:
    yield content(f"{before}{words}")
