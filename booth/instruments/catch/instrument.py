"""The catch: what the gun delivers in a timed window, caught in a cup and measured."""

from __future__ import annotations

from collections.abc import Collection
from typing import ClassVar

from booth.bench.act import Act, Keep, Say, SetForm, refused
from booth.bench.context import Context
from booth.bench.instrument import Instrument, number, quantity, word
from booth.forms.field import Field
from booth.forms.form import Rows, Values
from booth.instruments.catch.words import (
    NO_TIME,
    catching_readout,
    caught_in_s,
    caught_readout,
    delivery_of,
    delivery_readout,
    density_of,
    mean_readout,
    record_lines,
    tip_of,
    why_not,
)
from booth.job.stopwatches import CATCH, catching
from booth.log.events import (
    CatchMade,
    Event,
    StopwatchDropped,
    StopwatchStarted,
    StopwatchStopped,
)
from booth.units import Kind, Quantity
from booth.words.readout import Readout
from booth.words.wait_words import duration

LEAD_IN_S = 3.0
USUAL_S = 60.0
#: What was typed of these goes with the catch that begins.
SETTINGS = ("turns", "inlet", "tip")
KEEP_FIRST = "Enter keeps this catch; erase what is typed, and Space catches again."


class Catch(Instrument):
    """Times a catch and works out the delivery."""

    KIND: ClassVar[str] = "catch"
    NAME: ClassVar[str] = "Catch"
    ABOUT: ClassVar[tuple[str, ...]] = (
        "Delivery: the volume caught, divided by the time the trigger was held. A weight becomes a "
        "volume through the density of what was caught: the profile's, or water's.",
        "Air off or turned right down so that nothing is atomised into the measuring cup, unless "
        "your gun's instructions say otherwise; trigger fully pulled all the while. Space again "
        "ends the catch early: the time that really passed is used.",
        "Water runs faster than paint and atomises with less air: a water catch puts the needle in "
        "the right neighbourhood, it is not the paint's delivery. No published rule turns one into "
        "the other (common practice, no source).",
        "Turns to try: the line between the nearest of your own catches of the coating with this gun "
        "and tip, past jobs included (isotonic regression, Ayer et al. 1955); beyond what was caught "
        "only the way to turn is told. Water as coating: the median ratio of your own pairs, caught "
        "with both at one setting. Both are estimates.",
        "Pressure never on skin: the cup is held by something else than a hand.",
    )
    KEEPS: ClassVar[tuple[type[Event], ...]] = (CatchMade,)
    STOPWATCH: ClassVar[str] = CATCH

    def fields(self, context: Context) -> tuple[Field, ...]:
        job = context.job
        last = job.catches[-1] if job.catches else None
        inlet = job.airs[-1].inlet if job.airs else None
        caught_s = caught_in_s(context)
        seconds = caught_s or (last.seconds if last else USUAL_S)
        return (
            Field("amount", "Caught", amount=True),
            Field(
                "liquid",
                "Liquid",
                choices=(("water", "water"), ("paint", "the coating")),
                default=last.liquid if last else "water",
                assumed=True,
            ),
            Field(
                "seconds", "Catch for", Kind.TIME, default=Quantity(seconds, "s", ""), assumed=True
            ),
            Field(
                "turns",
                "Needle open",
                Kind.TURNS,
                optional=True,
                default=last.turns if last else None,
                hint="" if last else "optional",
            ),
            Field(
                "inlet",
                "Inlet",
                Kind.PRESSURE,
                optional=True,
                default=last.inlet if last and last.inlet else inlet,
                assumed=True,
            ),
            Field("tip", "Tip", Kind.TIP, optional=True, default=tip_of(context), assumed=True),
        )

    def wanted(self, context: Context, values: Values) -> Collection[str] | None:
        return () if self.fast(context) else None

    def fast(self, context: Context) -> bool:
        return catching(context.job.stopwatches, context.now) is not None

    def busy(self, context: Context) -> str:
        caught_s = caught_in_s(context)
        if caught_s is None:
            return super().busy(context)
        return f"{caught_s:g} s were caught: type how much, or Space catches again."

    def last_kept(self, context: Context, values: Values) -> tuple[Event, ...]:
        """A catch that was timed and not measured goes first."""
        watch = context.running(self.STOPWATCH)
        if watch is None or self.fast(context):
            return super().last_kept(context, values)
        return (watch.started,)

    def space(self, context: Context, rows: Rows) -> Act:
        """Start with a lead-in; again stops early; before the trigger nothing was caught."""
        now = catching(context.job.stopwatches, context.now)
        if now is not None and now.lead_in_s > 0:
            dropped = StopwatchDropped(n=0, at=context.now, stopwatch=self.STOPWATCH)
            return Act("stop", (Keep(dropped), Say("Stopped before the trigger.")))
        if now is not None:
            seconds = round(now.caught_s, 2)
            stopped = StopwatchStopped(
                n=0, at=context.now, stopwatch=self.STOPWATCH, seconds=seconds
            )
            return Act("stop early", (Keep(stopped),))
        anew = rows.row("amount").text or context.running(self.STOPWATCH) is not None
        go = "catch again" if anew else "start"
        if caught_in_s(context) is not None and rows.row("amount").text:
            return refused(KEEP_FIRST)
        fault = rows.row("seconds").fault
        window_s = number(rows.values, "seconds")
        if fault or not window_s:
            return refused(fault or NO_TIME, go)
        started = StopwatchStarted(
            n=0, at=context.now, stopwatch=self.STOPWATCH, lead_in_s=LEAD_IN_S, window_s=window_s
        )
        return Act(go, (Keep(started), SetForm(rows.form.emptied(but=SETTINGS))))

    def readout(self, context: Context, values: Values) -> Readout:
        now = catching(context.job.stopwatches, context.now)
        if now is not None:
            return catching_readout(now)
        delivery = delivery_of(context, values)
        if delivery is not None:
            return delivery_readout(context, delivery, word(values, "liquid"), "this catch")
        caught_s = caught_in_s(context)
        if caught_s is not None:
            return caught_readout(context, caught_s)
        if context.job.catches:
            return mean_readout(context)
        return Readout(
            duration(number(values, "seconds") or USUAL_S),
            label="catch for",
            like="00:00",
            lines=("Space: 3, 2, 1, then hold the trigger until the window flashes.",),
        )

    def record(self, context: Context) -> tuple[str, ...]:
        return record_lines(context, self.last_good(context))

    def event(self, context: Context, values: Values) -> Event | str:
        delivery = delivery_of(context, values)
        amount, seconds = quantity(values, "amount"), number(values, "seconds")
        if amount is None or not amount.value or not seconds or delivery is None:
            return why_not(amount, seconds)
        liquid = word(values, "liquid")
        return CatchMade(
            n=0,
            at=context.now,
            seconds=seconds,
            amount=amount,
            delivery_ml_min=delivery,
            liquid=liquid,
            density_g_ml=density_of(context, liquid) if amount.unit == "g" else None,
            turns=quantity(values, "turns"),
            inlet=quantity(values, "inlet"),
            tip=quantity(values, "tip"),
        )
