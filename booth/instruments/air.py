"""The air at the gun: inlet pressure with the trigger pulled, the cap of HVLP, and the compressor."""

from __future__ import annotations

import math
from typing import ClassVar

from booth.bench.context import Context
from booth.bench.instrument import Instrument, local_time, quantity
from booth.forms.field import Field
from booth.forms.form import Values
from booth.instruments.fan import figure_of
from booth.job.measured import compare
from booth.log.events import AirRead, Event
from booth.profile.model import Range
from booth.shop.model import Compressor
from booth.trade.air.hvlp import HVLP_MOST_KPA, hvlp_cap_pressure
from booth.trade.air.receiver import longest_trigger_s, recovery_s, trigger_duty
from booth.trade.result import BadInput, Estimate
from booth.units import Kind, Quantity, System, show, shown_unit
from booth.words.profile_words import range_words
from booth.words.readout import Readout
from booth.words.tone import Tone
from booth.words.wait_words import spelled

#: How long it lasts is said in steps of so many seconds, the careful way round.
STEP_S = 5
NO_PRESSURE = "No pressure at the inlet: open the air, pull the trigger, read again."
CAP_ABOVE = "More pressure at the cap than at the inlet cannot be: read both again, trigger pulled."
NO_COMPRESSOR = (
    "How long the air lasts: add compressor and gun to the shop file; a job takes the gun when it "
    "begins."
)


class Air(Instrument):
    """Inlet, cap, fan; whether the compressor keeps up."""

    KIND: ClassVar[str] = "air"
    NAME: ClassVar[str] = "Air"
    ABOUT: ClassVar[tuple[str, ...]] = (
        "The large figure is the pressure at the gun's inlet, read with the trigger pulled: with the "
        "trigger released the gauge shows what stands in the hose, not what reaches the cap. Held "
        "against the profile's range. The data sheet and the gun's instructions win.",
        "HVLP: 0.1 to 10 psi at the air cap (40 CFR 63.11180, from memory, not checked); above 10 psi there a gun "
        "works as a conventional one (40 CFR 63.801). Which inlet pressure gives which cap pressure "
        "belongs to the gun: a test cap with a gauge tells, no formula does.",
        "How long the trigger can be held: Boyle's law, receiver volume x pressure lost / pressure "
        "of the room, over demand less supply (as in the US DOE / ORNL tools for compressed air). "
        "From cut-out the receiver alone carries the gun; below cut-in the compressor helps. An "
        "estimate: a fast draw cools the air and shortens it up to 1.4 times. Hose, filters and "
        "regulator lose pressure that is not counted here.",
        "The gun's air demand, receiver, delivered flow, cut-in and cut-out are those of the shop "
        "file, in free air. A compressor's displacement is not what it delivers.",
        "Never point the gun at anybody, never put a hand before the cap: air and fluid under "
        "pressure go through skin. Relieve the pressure before you take the gun apart.",
    )
    KEEPS: ClassVar[tuple[type[Event], ...]] = (AirRead,)

    def fields(self, context: Context) -> tuple[Field, ...]:
        hvlp = is_hvlp(context)
        return (
            Field("inlet", "Inlet", Kind.PRESSURE, hint="trigger pulled"),
            Field(
                "cap",
                "At the cap",
                Kind.PRESSURE,
                optional=True,
                hint="by a test cap" if hvlp else "optional",
                assumed=True,
            ),
            Field("fan", "Fan open", Kind.TURNS, optional=True, hint="optional", assumed=True),
        )

    def readout(self, context: Context, values: Values) -> Readout:
        return air_readout(context, values)

    def record(self, context: Context) -> tuple[str, ...]:
        return tuple(
            f"{local_time(each.at)}  {air_words(each, context.system)}"
            for each in context.job.airs[-3:]
        )

    def event(self, context: Context, values: Values) -> Event | str:
        inlet, cap = quantity(values, "inlet"), quantity(values, "cap")
        if inlet is None or inlet.value <= 0:
            return NO_PRESSURE
        if cap is not None and cap.value > inlet.value:
            return CAP_ABOVE
        fan = quantity(values, "fan")
        return AirRead(n=0, at=context.now, inlet=inlet, cap=cap, fan_turns=fan)


def air_words(each: AirRead, system: System) -> str:
    """One reading in a line. Pure."""
    said = [f"inlet {show(each.inlet.value, Kind.PRESSURE, system)}"]
    if each.cap:
        said.append(f"cap {show(each.cap.value, Kind.PRESSURE, system)}")
    if each.fan_turns:
        said.append(f"fan {show(each.fan_turns.value, Kind.TURNS, system)} open")
    return "  ".join(said)


def air_readout(context: Context, values: Values) -> Readout:
    """The inlet as the figure, which way to turn, and how long the air lasts. Pure."""
    system, span = context.system, context.profile.gun.inlet_kpa
    last = context.job.airs[-1] if context.job.airs else None
    inlet, cap = quantity(values, "inlet"), quantity(values, "cap")
    if inlet is None and last is not None:
        inlet, cap = last.inlet, cap or last.cap
    unit = shown_unit(Kind.PRESSURE, system)
    below = (*_cap_lines(context, cap), *compressor_lines(context, inlet))
    if inlet is None:
        if span is None:
            lines = ("The profile names no pressure: the gun's instructions do.", *below)
            return Readout("–", label="inlet, trigger pulled", lines=lines)
        figure = figure_of(span, Kind.PRESSURE, system)
        return Readout(figure, unit, label="inlet asked for, trigger pulled", lines=below)
    where = compare(inlet.value, span)
    tone, said = {
        "in": (Tone.GOOD, "IN RANGE"),
        "below": (Tone.CAUTION, "LOW, TURN UP"),
        "above": (Tone.CAUTION, "HIGH, TURN DOWN"),
        "": (Tone.PLAIN, ""),
    }[where]
    asked = range_words(span, Kind.PRESSURE, system)
    held = (f"profile: {asked}{_by(inlet, span, system)}",) if span is not None else ()
    return Readout(
        show(inlet.value, Kind.PRESSURE, system, unit=False),
        unit,
        label="inlet, trigger pulled",
        tone=tone,
        word=said,
        lines=(*held, *below),
    )


def _by(inlet: Quantity, span: Range, system: System) -> str:
    """How far it is to the nearer end of the range, which way to turn the regulator."""
    if span.low is not None and inlet.value < span.low:
        by = show(span.low - inlet.value, Kind.PRESSURE, system)
        return f"; up by {by} or more"
    if span.high is not None and inlet.value > span.high:
        by = show(inlet.value - span.high, Kind.PRESSURE, system)
        return f"; down by {by} or more"
    return ""


def _cap_lines(context: Context, cap: Quantity | None) -> tuple[str, ...]:
    """What a cap pressure means; what HVLP means where none was read."""
    if not is_hvlp(context):
        return ()
    if cap is None:
        places = 0 if context.system is System.US else None
        most = show(HVLP_MOST_KPA, Kind.PRESSURE, context.system, places=places)
        return (f"HVLP: the cap has {most} at most, the inlet more.",)
    read = hvlp_cap_pressure(cap.value)
    return (f"cap {show(cap.value, Kind.PRESSURE, context.system)}: {read.words}",)


def is_hvlp(context: Context) -> bool:
    """Whether the product asks for an HVLP gun, or the gun of this job is one."""
    gun = context.shop.gun(context.job.opened.gun)
    return context.profile.gun.hvlp or (gun is not None and gun.hvlp)


def compressor_lines(context: Context, inlet: Quantity | None) -> tuple[str, ...]:
    """How long the trigger can be held, how long the receiver then needs, what duty that leaves. Pure."""
    shop, system = context.shop, context.system
    gun, compressor = shop.gun(context.job.opened.gun), shop.compressor
    if gun is None or not gun.air_l_min or compressor is None:
        return (NO_COMPRESSOR,)
    try:
        return _lasts(compressor, gun.air_l_min, _least_kpa(context, inlet), system)
    except BadInput as fault:
        return (f"Compressor: {fault}",)


def _least_kpa(context: Context, inlet: Quantity | None) -> float | None:
    """The pressure that must not be lost: the least the profile asks for, else what is set."""
    span = context.profile.gun.inlet_kpa
    if span is not None and span.low is not None:
        return span.low
    return inlet.value if inlet is not None else None


def _lasts(
    compressor: Compressor, demand_l_min: float, least_kpa: float | None, system: System
) -> tuple[str, ...]:
    supply, full, cut_in = compressor.flow_l_min, compressor.cut_out_kpa, compressor.cut_in_kpa
    gun_air = f"the gun uses {show(demand_l_min, Kind.AIR_FLOW, system)}"
    flows = f"{gun_air}, the compressor gives {show(supply, Kind.AIR_FLOW, system)}"
    if supply >= demand_l_min:
        return ("The compressor keeps up: the trigger can be held for ever.", flows)
    least = cut_in if least_kpa is None else least_kpa
    if least >= full:
        stops = show(full, Kind.PRESSURE, system)
        return (f"The compressor stops at {stops}, below what the gun needs.",)
    rest = recovery_s(compressor.receiver_l, least, full, supply)
    held = _careful(held_s(compressor, demand_l_min, least).low)
    spray = f"Spray {held} at most"
    until = f"(estimate, down to {show(least, Kind.PRESSURE, system)})"
    if not isinstance(rest, Estimate):
        return (f"{spray} {until}", f"{rest.reason} {rest.advice}", flows)
    wait = spelled(math.ceil(rest.high / STEP_S) * STEP_S)
    duty_s = int(trigger_duty(demand_l_min, supply) * 60)
    return (
        f"{spray}, then wait {wait} for the compressor {until}",
        f"You can spray about {duty_s} s of each minute (estimate)",
        flows,
    )


def held_s(compressor: Compressor, demand_l_min: float, least_kpa: float) -> Estimate:
    """How long a full receiver carries the gun down to `least_kpa`; the demand above the supply.

    From cut-out to cut-in the compressor stands still; below cut-in it helps.
    """
    alone_to = max(compressor.cut_in_kpa, least_kpa)
    spans = ((compressor.cut_out_kpa, alone_to, 0.0), (alone_to, least_kpa, compressor.flow_l_min))
    parts = [
        longest_trigger_s(compressor.receiver_l, high, low, demand_l_min, supply)
        for high, low, supply in spans
    ]
    known = [part for part in parts if part is not None]
    return Estimate(
        sum(part.likely for part in known),
        sum(part.low for part in known),
        sum(part.high for part in known),
        "s",
        known[0].rule,
    )


def _careful(seconds: float) -> str:
    """How long the trigger can be held: less rather than more, to the second where it is short."""
    step = STEP_S if seconds >= 2 * STEP_S else 1
    return spelled(int(seconds / step) * step)
