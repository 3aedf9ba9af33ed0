"""The air at the gun: inlet pressure with the trigger pulled, the cap of HVLP, and the compressor."""

from __future__ import annotations

import math

from booth.bench.act import Context
from booth.bench.instrument import Instrument, quantity
from booth.forms.form import Field, Values
from booth.instruments.figures import against, asked_for, figure
from booth.log.events import AirRead, Event
from booth.shop.model import Compressor
from booth.trade.air.hvlp import HVLP_MOST_KPA, hvlp_cap_pressure
from booth.trade.air.receiver import longest_trigger_s, recovery_s, trigger_duty
from booth.trade.result import BadInput, Estimate
from booth.units import Kind, Quantity, System, show
from booth.words.profile_words import range_words
from booth.words.shown import Readout
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
    KIND = "air"
    NAME = "Air"
    ABOUT = (
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
    KEEPS = (AirRead,)
    RECORDS = 3
    UNSAID = "air: "

    def fields(self, context: Context, values: Values) -> tuple[Field, ...]:
        by = "by a test cap" if is_hvlp(context) else "optional"
        return (
            Field("inlet", "Inlet", Kind.PRESSURE, hint="trigger pulled"),
            Field("cap", "At the cap", Kind.PRESSURE, hint=by, assumed=True),
            Field("fan", "Fan open", Kind.TURNS, hint="optional", assumed=True),
        )

    def readout(self, context: Context, values: Values) -> Readout:
        """The inlet as the figure, which way to turn, and how long the air lasts."""
        span = context.profile.gun.inlet_kpa
        last = context.job.airs[-1] if context.job.airs else None
        inlet, cap = quantity(values, "inlet"), quantity(values, "cap")
        if inlet is None and last is not None:
            inlet, cap = last.inlet, cap or last.cap
        below = (*_cap_lines(context, cap), *compressor_lines(context, inlet))
        if inlet is None:
            none = "The profile names no pressure: the gun's instructions do."
            label = "inlet asked for, trigger pulled"
            return asked_for(context, span, Kind.PRESSURE, label, none, below)
        tone, said = against(inlet.value, span, "LOW, TURN UP", "HIGH, TURN DOWN")
        lines = list(below)
        if span is not None:
            # How far it is to the nearer end of the range, and which way to turn the regulator.
            gap, way = (span.low or 0.0) - inlet.value, "up"
            if span.high is not None and inlet.value > span.high:
                gap, way = inlet.value - span.high, "down"
            by = show(gap, Kind.PRESSURE, context.system)
            asked = range_words(span, Kind.PRESSURE, context.system)
            lines.insert(0, f"profile: {asked}" + (f"; {way} by {by} or more" if gap > 0 else ""))
        label = "inlet, trigger pulled"
        return figure(context, inlet.value, Kind.PRESSURE, label, tone, said, lines)

    def event(self, context: Context, values: Values) -> Event | str:
        inlet, cap = quantity(values, "inlet"), quantity(values, "cap")
        if inlet is None or inlet.value <= 0:
            return NO_PRESSURE
        if cap is not None and cap.value > inlet.value:
            return CAP_ABOVE
        fan = quantity(values, "fan")
        return AirRead(n=0, at=context.now, inlet=inlet, cap=cap, fan_turns=fan)


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
    return context.profile.gun.hvlp or (context.gun is not None and context.gun.hvlp)


def compressor_lines(context: Context, inlet: Quantity | None) -> tuple[str, ...]:
    """How long the trigger can be held, how long the receiver then needs, what duty that leaves.

    What must not be lost is the least pressure that the profile asks for, else what is set.
    """
    gun, compressor, span = context.gun, context.shop.compressor, context.profile.gun.inlet_kpa
    if gun is None or not gun.air_l_min or compressor is None:
        return (NO_COMPRESSOR,)
    least = span.low if span is not None else None
    if least is None:
        least = inlet.value if inlet is not None else compressor.cut_in_kpa
    try:
        return _lasts(compressor, gun.air_l_min, least, context.system)
    except BadInput as fault:
        return (f"Compressor: {fault}",)


def _lasts(
    compressor: Compressor, demand_l_min: float, least: float, system: System
) -> tuple[str, ...]:
    supply, full = compressor.flow_l_min, compressor.cut_out_kpa
    gun_air = f"the gun uses {show(demand_l_min, Kind.AIR_FLOW, system)}"
    flows = f"{gun_air}, the compressor gives {show(supply, Kind.AIR_FLOW, system)}"
    if supply >= demand_l_min:
        return ("The compressor keeps up: the trigger can be held for ever.", flows)
    if least >= full:
        stops = show(full, Kind.PRESSURE, system)
        return (f"The compressor stops at {stops}, below what the gun needs.",)
    rest = recovery_s(compressor.receiver_l, least, full, supply)
    held = held_s(compressor, demand_l_min, least).low
    # Less rather than more, to the second where it is short.
    step = STEP_S if held >= 2 * STEP_S else 1
    spray = f"Spray {spelled(int(held / step) * step)} at most"
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
    likely, low, high = (sum(getattr(e, end) for e in known) for end in ("likely", "low", "high"))
    return Estimate(likely, low, high, "s", known[0].rule)
