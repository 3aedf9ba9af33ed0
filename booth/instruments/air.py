"""The air at the gun: inlet pressure with the trigger pulled, the cap of HVLP, and the compressor, with a
stopwatch for how long it takes to fill its receiver."""

from __future__ import annotations

from booth.bench.act import Act, Context
from booth.bench.instrument import Instrument, quantity
from booth.forms.form import Field, Rows, Values
from booth.instruments.air_recovery import RECOVERY, fill_lines, filling, time_the_fill
from booth.instruments.figures import against, asked_for, figure, given
from booth.instruments.large.gun import air_at_large
from booth.instruments.learnt_here import of_air
from booth.job.advice import on_inlet
from booth.job.air_supply import air_supply, verdict
from booth.log.events import AirRead, Event, RecoveryTimed
from booth.trade.air.hvlp import HVLP_MOST_KPA, hvlp_cap_pressure
from booth.units import Kind, Quantity, System, show
from booth.units.sentences import in_units
from booth.words.about import of_the_gun
from booth.words.profile_words import range_words
from booth.words.shown import Readout

WHOSE = "INLET"
NO_PRESSURE = "No pressure at the inlet: open the air, pull the trigger, read again."
CAP_ABOVE = "More pressure at the cap than at the inlet cannot be: read both again, trigger pulled."


class Air(Instrument):
    KIND = "air"
    NAME = "Air"
    ABOUT = of_the_gun.AIR
    KEEPS = (AirRead, RecoveryTimed)
    RECORDS = 3
    UNSAID = "air: "
    UNIT_FIRST = True
    at_large = air_at_large

    def fields(self, context: Context, values: Values) -> tuple[Field, ...]:
        by = "by a test cap" if is_hvlp(context) else "optional"
        return (
            Field("inlet", "Inlet", Kind.PRESSURE, hint="trigger pulled"),
            Field("cap", "At the cap", Kind.PRESSURE, hint=by, assumed=True),
            Field("fan", "Fan open", Kind.TURNS, hint="optional", assumed=True),
        )

    def space(self, context: Context, rows: Rows) -> Act | None:
        """Time a fill of the receiver, where the shop file has a compressor."""
        return time_the_fill(context, rows)

    def busy(self, context: Context) -> str:
        return "The fill is being timed: Space stops it." if context.running(RECOVERY) else ""

    def record(self, context: Context) -> tuple[str, ...]:
        return (*super().record(context), *fill_lines(context))

    def readout(self, context: Context, values: Values) -> Readout:
        """The inlet as the figure, which way to turn, and how long the air lasts."""
        fills = filling(context)
        if fills is not None:
            return fills
        span = context.profile.gun.inlet_kpa
        last = context.job.airs[-1] if context.job.airs else None
        inlet, cap = quantity(values, "inlet"), quantity(values, "cap")
        if inlet is None and last is not None:
            inlet, cap = last.inlet, cap or last.cap
        below = (*compressor_lines(context, inlet), *of_air(context), *_cap_lines(context, cap))
        if inlet is None:
            none = "The profile names no pressure: the gun's instructions do."
            label = "inlet asked for, trigger pulled"
            return asked_for(context, span, Kind.PRESSURE, label, none, below, WHOSE)
        tone, said = against(inlet.value, span, "LOW, TURN UP", "HIGH, TURN DOWN")
        lines = list(below)
        if span is not None:
            asked = range_words(span, Kind.PRESSURE, context.system)
            # The scale has the band too: its line gives way first.
            lines = [*on_inlet(given(context), inlet.value), *below, f"profile: {asked}"]
        label = "inlet, trigger pulled"
        return figure(
            context,
            inlet.value,
            Kind.PRESSURE,
            label,
            tone,
            said,
            lines,
            whose=WHOSE,
            span=span,
        )

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
        other = "The profile asks for an HVLP gun, and by the shop file this one is none."
        return (other,) if context.profile.gun.hvlp else ()
    if cap is None:
        places = 0 if context.system is System.US else None
        most = show(HVLP_MOST_KPA, Kind.PRESSURE, context.system, places=places)
        return (f"HVLP: at most {most} at the air cap; the inlet shows more.",)
    read = hvlp_cap_pressure(cap.value)
    return (f"cap {show(cap.value, Kind.PRESSURE, context.system)}: {read.words}",)


def is_hvlp(context: Context) -> bool:
    """Whether the gun of this job is an HVLP one; where it is not known, whether one is asked for."""
    return context.profile.gun.hvlp if context.gun is None else context.gun.hvlp


def compressor_lines(context: Context, inlet: Quantity | None) -> tuple[str, ...]:
    """How long the trigger can be held, how long the receiver then needs."""
    compressor, gun = context.shop.compressor, context.gun
    read = None if inlet is None else inlet.value
    supply = air_supply(compressor, gun, context.profile.gun.inlet_kpa, read)
    if isinstance(supply, str):
        return (in_units(supply, context.system),)
    demand, flow = (
        show(each, Kind.AIR_FLOW, context.system)
        for each in (supply.demand_l_min, supply.compressor.flow_l_min)
    )
    flows = f"the gun uses {demand}, the compressor gives {flow} while it runs"
    return (*verdict(supply, context.system), flows)
