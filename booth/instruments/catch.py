"""The catch: what the gun delivers in a timed window, caught in a cup and measured."""

from __future__ import annotations

import math
from collections.abc import Collection
from typing import ClassVar

from booth.bench.act import Act, Keep, Say, SetForm, refused
from booth.bench.context import Context
from booth.bench.instrument import Instrument, local_time, number, quantity, word
from booth.forms.field import Field
from booth.forms.form import Rows, Values
from booth.job.measured import catches, compare
from booth.job.needle_advice import catch_pairs, paint_words, turns_words
from booth.job.past import CatchPair
from booth.job.stopwatches import Catching, catching
from booth.log.events import (
    CatchMade,
    Event,
    StopwatchDropped,
    StopwatchStarted,
    StopwatchStopped,
)
from booth.trade.delivery.catches import (
    catch_statistics,
    delivery_from_volume,
    delivery_from_weight,
    time_to_empty_s,
)
from booth.trade.delivery.water import water_density_kg_m3
from booth.units import Kind, Quantity, System, show, shown_unit
from booth.words.profile_words import range_words
from booth.words.readout import Readout
from booth.words.tone import Tone
from booth.words.wait_words import duration, rough

LEAD_IN_S = 3.0
#: From here on it is said how long ago a catch was [s].
LONG_AGO_S = 180.0
USUAL_S = 60.0
#: A gravity cup of 20 US fl oz, where the shop file names no other (common practice, no source).
USUAL_CUP_ML = 20 * 29.5735295625
WATER_C = 20.0
NO_TIME = "A catch needs a time above zero, such as 60 s or 1:30."
#: What was typed of these goes with the catch that begins.
SETTINGS = ("turns", "inlet", "tip")
KEEP_FIRST = "Enter keeps this catch; erase what is typed, and Space catches again."
#: What a low window shows of the lines of what was kept.
RECORD_ROWS = 4


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
    STOPWATCH: ClassVar[str] = "catch"

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
            Field("tip", "Tip", Kind.TIP, optional=True, default=_tip(context), assumed=True),
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
            liquid = context.job.catches[-1].liquid
            same = catches(context.job, liquid)
            mean = catch_statistics([each.delivery_ml_min for each in same]).mean_ml_min
            label = "delivery" if len(same) == 1 else f"delivery, mean of {len(same)}"
            return delivery_readout(context, mean, liquid, label)
        return Readout(
            duration(number(values, "seconds") or USUAL_S),
            label="catch for",
            like="00:00",
            lines=("Space: 3, 2, 1, then hold the trigger until the window flashes.",),
        )

    def record(self, context: Context) -> tuple[str, ...]:
        job, system = context.job, context.system
        known = catch_pairs(job, past_pairs(context))
        learnt = [
            said for words in (paint_words, turns_words) if (said := words(job, known, system))
        ]
        if not job.catches:
            return (*self.last_good(context), *learnt)
        same = catches(job, job.catches[-1].liquid)
        means = []
        if len(same) > 1:
            stats = catch_statistics([each.delivery_ml_min for each in same])
            spread = show(stats.spread_ml_min, Kind.DELIVERY, system)
            means.append(f"mean {show(stats.mean_ml_min, Kind.DELIVERY, system)}, spread {spread}")
        room = max(1, RECORD_ROWS - len(means) - len(learnt))
        return (*(_caught_words(each, system) for each in job.catches[-room:]), *means, *learnt)

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


def caught_in_s(context: Context) -> float | None:
    """How long was caught, where the amount is still to be typed [s]; None where nothing waits."""
    watch = context.running(Catch.STOPWATCH)
    if watch is None or catching(context.job.stopwatches, context.now) is not None:
        return None
    return watch.stopped.seconds if watch.stopped else watch.started.window_s


def catching_readout(now: Catching) -> Readout:
    """The lead-in, or what is left of the time. Pure."""
    if now.lead_in_s > 0:
        beat = math.ceil(now.lead_in_s)
        return Readout(f"{beat}", label="get ready", tone=Tone.CLOSING, word="GET READY")
    figure = f"{now.left_s:.1f}" if now.left_s < 10 else f"{math.ceil(now.left_s)}"
    return Readout(figure, "s", label="catching", tone=Tone.RUNNING, word="TRIGGER", like="00.0")


def caught_readout(context: Context, caught_s: float) -> Readout:
    """The time is over: what was caught is still to be typed. Pure."""
    watch = context.running(Catch.STOPWATCH)
    over_s = context.since(watch.started.at) if watch else 0.0
    ago = f"{rough(over_s)} ago" if over_s > LONG_AGO_S else ""
    return Readout(
        f"{caught_s:.0f}" if caught_s >= 10 else f"{caught_s:.1f}",
        "s",
        label=f"caught {ago} for" if ago else "caught for",
        word="TYPE WHAT WAS CAUGHT",
        lines=("Or Space: catch again.",) if ago else (),
    )


def _caught_words(each: CatchMade, system: System) -> str:
    turns = f"  {each.turns.value:g} turns" if each.turns else ""
    shown = show(each.delivery_ml_min, Kind.DELIVERY, system)
    return f"{local_time(each.at)}  {shown}  {each.liquid}{turns}"


def past_pairs(context: Context) -> tuple[CatchPair, ...]:
    """Catches of past jobs with this gun and tip."""
    opened, tip = context.job.opened, _tip(context)
    return context.past.pairs(
        opened.gun, tip.value if tip else None, opened.profile.key, without=opened.job
    )


def why_not(amount: Quantity | None, seconds: float | None) -> str:
    """The sentence for rows that come to no delivery. Pure."""
    if not seconds:
        return NO_TIME
    if amount is None or not amount.value:
        return "Nothing caught gives no delivery: type how much was caught, or catch again."
    return (
        "A weight needs the density of the coating, and this profile gives none: measure the "
        "volume instead."
    )


def density_of(context: Context, liquid: str) -> float | None:
    """Density of what is caught [g/ml]: water's, or the profile's; None where it gives none."""
    if liquid == "water":
        return water_density_kg_m3(WATER_C) / 1000
    return context.profile.film.density_g_ml


def delivery_of(context: Context, values: Values) -> float | None:
    """The delivery [ml/min] that the rows come to, if they do."""
    amount, seconds = quantity(values, "amount"), number(values, "seconds")
    if amount is None or not seconds:
        return None
    if amount.unit == "ml":
        return delivery_from_volume(amount.value, seconds)
    density = density_of(context, word(values, "liquid"))
    return None if density is None else delivery_from_weight(amount.value, density, seconds)


def delivery_readout(context: Context, delivery_ml_min: float, liquid: str, label: str) -> Readout:
    """The delivery as the figure, against the profile; how long a full cup lasts. Pure."""
    span = context.profile.gun.delivery_ml_min
    where = compare(delivery_ml_min, span)
    tone, said = {
        "in": (Tone.GOOD, "IN RANGE"),
        "below": (Tone.CAUTION, "TOO LITTLE"),
        "above": (Tone.CAUTION, "TOO MUCH"),
        "": (Tone.PLAIN, ""),
    }[where]
    lines = []
    if span is not None:
        lines.append(f"profile: {range_words(span, Kind.DELIVERY, context.system)}")
    if liquid == "water":
        tone, said = Tone.PLAIN, "WITH WATER"
        lines.append("Water runs faster than paint: near the target, not on it.")
    cup_ml = cup_ml_of(context)
    if delivery_ml_min > 0:
        lasts = duration(round(time_to_empty_s(cup_ml, delivery_ml_min)))
        lines.append(f"a full cup of {show(cup_ml, Kind.VOLUME, context.system)} lasts {lasts}")
    unit = shown_unit(Kind.DELIVERY, context.system)
    return Readout(
        show(delivery_ml_min, Kind.DELIVERY, context.system, unit=False),
        unit,
        label=label,
        tone=tone,
        word=said,
        lines=tuple(lines),
    )


def cup_ml_of(context: Context) -> float:
    """What the gun's cup holds [ml]: from the shop file, else the usual gravity cup."""
    gun = context.shop.gun(context.job.opened.gun)
    return gun.cup_ml if gun is not None and gun.cup_ml else USUAL_CUP_ML


def _tip(context: Context) -> Quantity | None:
    gun = context.shop.gun(context.job.opened.gun)
    if gun is not None and gun.tip_mm:
        return Quantity(gun.tip_mm, "mm", "")
    return None
