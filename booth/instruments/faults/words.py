"""Faults and their causes in words and figures, in the units shown now. Pure."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from booth.log.events import FaultSeen
from booth.trade.faults.evidence import Reading
from booth.trade.faults.fault_model import Fault
from booth.trade.faults.ranked_causes import FAULTS, RankedCause, Standing
from booth.units import Kind, System, show, shown_unit
from booth.words.lines import Page, PickLine
from booth.words.readout import Readout
from booth.words.tone import Tone
from booth.words.wait_words import duration

ANY_PART = "any part"
#: Style and text of a stretch of a page.
Paragraph = tuple[str, str]
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


def strongest(causes: tuple[RankedCause, ...], system: System) -> Readout | None:
    """The cause that a figure of this job speaks for most, its figure as the large one.

    None where no figure speaks for any: nothing is claimed without one.
    """
    first = causes[0] if causes else None
    if first is None or first.standing is not Standing.SHOWN:
        return None
    read = first.figures_for[0]
    label = f"{read.name}: {first.cause.words}"
    if read.measured is None or read.limit is None:
        return Readout("?", label=label, tone=Tone.CAUTION, word=read.name.upper())
    if read.unit == "s":
        unit = "" if read.name in BY_THE_CLOCK else "s"
    else:
        unit = shown_unit(KINDS[read.unit][0], system)
    if read.name in BY_THE_CLOCK:
        word = "TOO EARLY" if "early" in read.name else "TOO LATE"
    else:
        # A unit keeps its own letters: M is not m.
        word = f"{read.side.upper()} {_value(read, read.limit, system)}"
    figure = _value(read, read.measured, system, unit=False)
    return Readout(figure, unit, label=label, tone=Tone.CAUTION, word=word)


def fault_lines(seen: Sequence[FaultSeen]) -> tuple[PickLine, ...]:
    """The list: going on first, then every fault with how it looks, or where it was seen."""
    where: dict[str, list[str]] = {}
    for each in seen:
        where.setdefault(each.fault, []).append(each.part or ANY_PART)
    return (
        PickLine("no other fault: go on" if seen else "no fault seen: go on"),
        *(
            PickLine(fault.name, f"● seen: {', '.join(where[key])}", must=True)
            if key in where
            else PickLine(fault.name, fault.looks)
            for key, fault in FAULTS.items()
        ),
    )


def causes_page(fault: Fault, part: str, causes: tuple[RankedCause, ...], system: System) -> Page:
    """All causes to read and to scroll: shown ones by rank, the film itself, open ones, cleared ones."""
    by = {each: [c for c in causes if c.standing is each] for each in Standing}
    return Page(
        (
            ("head", f"{fault.name}, {part or ANY_PART}"),
            *_shown(by[Standing.SHOWN], system),
            ("head", "On the film"),
            ("text", fault.film),
            *_open(by[Standing.OPEN]),
            *_cleared(by[Standing.CLEARED], system),
        )
    )


def _shown(causes: list[RankedCause], system: System) -> Iterator[Paragraph]:
    if not causes:
        yield "head", "Nothing measured in this job points to a cause."
    for rank, each in enumerate(causes, 1):
        yield "head", f"{rank}  {each.cause.words}"
        for read in each.figures_for:
            yield "text", reading_words(read, system)
        yield "now", f"now: {each.cause.now}"
        yield "text", f"next time: {each.cause.next_time}"


def _open(causes: list[RankedCause]) -> Iterator[Paragraph]:
    if causes:
        yield "head", "Nothing measured for or against"
    for each in causes:
        yield "text", each.cause.words
        yield "quiet", f"now: {each.cause.now}"


def _cleared(causes: list[RankedCause], system: System) -> Iterator[Paragraph]:
    if causes:
        yield "head", "What was measured speaks against"
    for each in causes:
        yield "text", each.cause.words
        for read in each.figures_against:
            yield "quiet", reading_words(read, system)
