"""The fan: fully open, pulled in until the pattern just begins to narrow; its width on paper."""

from __future__ import annotations

from typing import ClassVar

from booth.bench.context import Context
from booth.bench.instrument import Instrument, local_time, quantity
from booth.forms.field import Field
from booth.forms.form import Values
from booth.job.measured import compare, overlap_fraction
from booth.log.events import Event, FanSet
from booth.profile.model import Range
from booth.trade.film.gun_speed import pitch_mm
from booth.trade.result import BadInput
from booth.units import Kind, Quantity, System, show, shown_unit
from booth.words.profile_words import range_words
from booth.words.readout import Readout
from booth.words.tone import Tone


class Fan(Instrument):
    """Width on the paper, turns open, distance."""

    KIND: ClassVar[str] = "fan"
    NAME: ClassVar[str] = "Fan"
    ABOUT: ClassVar[tuple[str, ...]] = (
        "The width of the fan is what the paper shows from edge to edge of the wet pattern, gun "
        "square to it, at the distance at which you spray. Every later figure that needs the fan "
        "(pitch of the passes, pace, wet film, transfer efficiency) takes it from here.",
        "Fluid first, fan second: fully open, then pulled in with the trigger pulled until the "
        "pattern just begins to narrow. Further in the pattern gets heavy in the middle. Common "
        "practice, no source; the gun's instructions and the data sheet win.",
        "The fan grows with the distance: measure at the distance you will keep. Too close makes "
        "runs, too far makes dry spray.",
        "Pitch, how far to move over for the next pass: fan x (1 - overlap), by definition; half "
        "over half is usual (MIL-HDBK-1110 9.6.8).",
        "Shooting paper is spraying: mask, eyes and air movement as for the job.",
    )
    KEEPS: ClassVar[tuple[type[Event], ...]] = (FanSet,)

    def fields(self, context: Context) -> tuple[Field, ...]:
        last = context.job.fans[-1] if context.job.fans else None
        return (
            Field("width", "On the paper", Kind.LENGTH),
            Field(
                "distance",
                "Distance",
                Kind.LENGTH,
                optional=True,
                default=last.distance if last else None,
                hint="gun to paper",
            ),
            Field("turns", "Fan open", Kind.TURNS, optional=True, hint="turns, optional"),
        )

    def readout(self, context: Context, values: Values) -> Readout:
        return fan_readout(context, values)

    def record(self, context: Context) -> tuple[str, ...]:
        return tuple(
            f"{local_time(each.at)}  {fan_words(each, context.system)}"
            for each in context.job.fans[-3:]
        )

    def event(self, context: Context, values: Values) -> Event | str:
        width = quantity(values, "width")
        if width is None or width.value <= 0:
            return "A fan has a width above 0: measure it on the paper."
        return FanSet(
            n=0,
            at=context.now,
            width=width,
            turns=quantity(values, "turns"),
            distance=quantity(values, "distance"),
        )


def fan_words(each: FanSet, system: System) -> str:
    """One setting of the fan in a line. Pure."""
    said = [show(each.width.value, Kind.LENGTH, system)] if each.width else []
    if each.distance:
        said.append(f"at {show(each.distance.value, Kind.LENGTH, system)}")
    if each.turns:
        said.append(f"{show(each.turns.value, Kind.TURNS, system)} open")
    return "  ".join(said)


def figure_of(span: Range, kind: Kind, system: System) -> str:
    """A range as one figure, '8.0-10.0', or its one end."""
    ends = [end for end in (span.low, span.high) if end is not None]
    return "-".join(dict.fromkeys(show(end, kind, system, unit=False) for end in ends))


def fan_readout(context: Context, values: Values) -> Readout:
    """The width as the figure, held against the profile; what to aim for before it is known. Pure."""
    gun, system = context.profile.gun, context.system
    last = context.job.fans[-1] if context.job.fans else None
    width = quantity(values, "width") or (last.width if last else None)
    distance = quantity(values, "distance")
    if distance is None and last is not None and quantity(values, "width") is None:
        distance = last.distance
    unit = shown_unit(Kind.LENGTH, system)
    asked = _asked(context)
    if width is None or width.value <= 0:
        if gun.fan_mm is None:
            lines = ("The profile names no width: as wide as the pattern stays full.", *asked)
            return Readout("–", label="width of the fan on the paper", lines=lines)
        figure = figure_of(gun.fan_mm, Kind.LENGTH, system)
        return Readout(figure, unit, label="fan asked for, on the paper", lines=asked)
    tone, said = {
        "below": (Tone.CAUTION, "TOO NARROW"),
        "above": (Tone.CAUTION, "TOO WIDE"),
        "in": (Tone.GOOD, "IN RANGE"),
        "": (Tone.PLAIN, ""),
    }[compare(width.value, gun.fan_mm)]
    away = compare(distance.value, gun.distance_mm) if distance else ""
    if away in ("below", "above") and tone is not Tone.CAUTION:
        tone, said = Tone.CAUTION, "TOO CLOSE" if away == "below" else "TOO FAR"
    return Readout(
        show(width.value, Kind.LENGTH, system, unit=False),
        unit,
        label="fan on the paper" + _at(distance, system),
        tone=tone,
        word=said,
        lines=(*asked, *_pitch_lines(context, width.value)),
    )


def _at(distance: Quantity | None, system: System) -> str:
    return f" at {show(distance.value, Kind.LENGTH, system)}" if distance else ""


def _asked(context: Context) -> tuple[str, ...]:
    """What the profile and the shop file say of the fan."""
    gun, system = context.profile.gun, context.system
    said = []
    if gun.fan_mm is not None:
        said.append(range_words(gun.fan_mm, Kind.LENGTH, system))
    if gun.distance_mm is not None:
        said.append(f"at {range_words(gun.distance_mm, Kind.LENGTH, system)}")
    lines = [f"profile: {' '.join(said)}"] if said else []
    own = context.shop.gun(context.job.opened.gun)
    if own is not None and own.fan_turns:
        lines.append(f"fully open: {show(own.fan_turns, Kind.TURNS, system)} (shop file)")
    return tuple(lines)


def _pitch_lines(context: Context, width_mm: float) -> tuple[str, ...]:
    """How far to move over for the next pass."""
    overlap, where = overlap_fraction(context.job)
    try:
        pitch = show(pitch_mm(width_mm, overlap), Kind.LENGTH, context.system)
    except BadInput as fault:
        return (str(fault),)
    return (f"{overlap * 100:.0f} % overlap ({where}): move over {pitch} each pass",)
