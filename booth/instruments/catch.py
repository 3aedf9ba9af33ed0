"""The catch: what the gun delivers in a timed window, caught in a cup and measured."""

from __future__ import annotations

from booth.bench.act import Act, Context, Keep, Say, SetForm, refused
from booth.bench.instrument import Instrument, number, quantity, starting_point, word
from booth.clock import local_day_hhmm
from booth.forms.form import Field, Rows, Values
from booth.instruments.catch_words import (
    caught_readout,
    delivery_readout,
    empty_readout,
    going_readout,
    name_of,
)
from booth.instruments.large.gun import catches_at_large
from booth.instruments.learnt_here import of_catch, of_turns
from booth.job.measured import catches, last_told
from booth.job.mixture import by_weight
from booth.job.needle_advice import catch_pairs, paint_words, turns_words
from booth.job.pot import catch_s, gun_is_filled
from booth.job.stopwatches import CATCH, catching
from booth.job.the_gun import tip_mm_of
from booth.log import events as ev
from booth.log.fold import Job
from booth.trade.delivery.catches import (
    catch_statistics,
    delivery_from_volume,
    delivery_from_weight,
)
from booth.trade.delivery.water import water_density_kg_m3
from booth.units import Kind, show
from booth.words.about import of_the_gun
from booth.words.shown import Readout
from booth.words.tried import AtLarge

LEAD_IN_S = 3.0
USUAL_S = 60.0
LIQUIDS = (("water", "water"), ("paint", "the coating"))
WATER_C = 20.0
NO_TIME = "A catch needs a time above zero, such as 60 s or 1:30."
NOTHING_CAUGHT = "Nothing caught gives no delivery: type how much was caught, or catch again."
NO_DENSITY = (
    "A weight needs the density of the coating, and this profile gives none: measure the volume "
    "instead."
)
#: What was typed of these goes with the catch that begins.
SETTINGS = ("turns", "inlet", "tip")
KEEP_FIRST = "Enter keeps this catch; erase what is typed, and Space catches again."
#: What a low window shows of the lines of what was kept.
RECORD_ROWS = 4


class Catch(Instrument):
    KIND = "catch"
    NAME = "Catch"
    ABOUT = of_the_gun.CATCH
    KEEPS = (ev.CatchMade,)

    def fields(self, context: Context, values: Values) -> tuple[Field, ...]:
        job = context.job
        last = job.catches[-1] if job.catches else None
        turns = last.turns if last else None
        read = job.airs[-1].inlet if job.airs else None
        inlet = last.inlet if last and last.inlet else read
        liquid, seconds = _usual(job)
        hint, kind = "" if last else "optional", None
        rehearsed = job.opened.rehearsal
        liquids = LIQUIDS[:1] if rehearsed else LIQUIDS
        if by_weight(job) and density_of(context, word(values, "liquid") or liquid) is not None:
            kind = Kind.MASS
        return (
            Field("amount", "Caught", kind, amount=True),
            Field(
                "liquid", "Liquid", choices=liquids, default=liquid, assumed=True, hidden=rehearsed
            ),
            Field(
                "seconds",
                "Catch for",
                Kind.TIME,
                default=caught_in_s(context) or seconds,
                assumed=True,
            ),
            Field("turns", "Needle open", Kind.TURNS, optional=True, default=turns, hint=hint),
            Field("inlet", "Inlet", Kind.PRESSURE, default=inlet, assumed=True),
            Field("tip", "Tip", Kind.TIP, default=_tip_mm(context), assumed=True),
        )

    def frames(self, context: Context) -> int:
        return 10 if catching(context.job.stopwatches, context.now) is not None else 0

    def busy(self, context: Context) -> str:
        caught_s = caught_in_s(context)
        if caught_s is None:
            return super().busy(context)
        return f"{caught_s:g} s were caught: type how much, or Space catches again."

    def last_kept(self, context: Context, values: Values) -> tuple[ev.Event, ...]:
        """A catch that was timed and not measured goes first."""
        watch = context.running(CATCH)
        if watch is None or self.frames(context):
            return super().last_kept(context, values)
        return (watch.started,)

    def space(self, context: Context, rows: Rows) -> Act:
        """Start with a lead-in; again stops early; before the trigger nothing was caught."""
        now = catching(context.job.stopwatches, context.now)
        if now is not None and now.lead_in_s > 0:
            dropped = Keep(ev.StopwatchDropped(n=0, at=context.now, stopwatch=CATCH))
            return Act("stop", (dropped, Say("Stopped before the trigger.")))
        if now is not None:
            caught_s = round(now.caught_s, 2)
            stopped = ev.StopwatchStopped(n=0, at=context.now, stopwatch=CATCH, seconds=caught_s)
            return Act("stop early", (Keep(stopped),))
        anew = rows.row("amount").text or context.running(CATCH) is not None
        go = "catch again" if anew else "start"
        if caught_in_s(context) is not None and rows.row("amount").text:
            return refused(KEEP_FIRST)
        window_s = number(rows.values, "seconds")
        if not window_s:
            return refused(rows.row("seconds").fault or NO_TIME, go)
        started = ev.StopwatchStarted(
            n=0, at=context.now, stopwatch=CATCH, lead_in_s=LEAD_IN_S, window_s=window_s
        )
        return Act(go, (Keep(started), SetForm(rows.emptied(but=SETTINGS))))

    def readout(self, context: Context, values: Values) -> Readout:
        now = catching(context.job.stopwatches, context.now)
        whose = name_of(word(values, "liquid"))
        if now is not None:
            return going_readout(now, whose)
        delivery, caught_s = delivery_of(context, values), caught_in_s(context)
        if delivery is not None:
            asked = {key: number(values, key) for key in SETTINGS}
            return delivery_readout(
                context, delivery, word(values, "liquid"), "this catch", **asked
            )
        if caught_s is not None:
            return caught_readout(context, caught_s, whose)
        if context.job.catches:
            liquid = context.job.catches[-1].liquid
            stats = catch_statistics([e.delivery_ml_min for e in catches(context.job, liquid)])
            label = "delivery" if stats.count == 1 else f"delivery, mean of {stats.count}"
            noted = {key: last_told(context.job.catches[-1:], key) for key in SETTINGS}
            return delivery_readout(context, stats.mean_ml_min, liquid, label, **noted)
        return empty_readout(number(values, "seconds") or USUAL_S, whose)

    def record(self, context: Context) -> tuple[str, ...]:
        job, system = context.job, context.system
        learnt = learnt_lines(context)
        if not job.catches:
            return (*starting_point(self, context), *learnt)
        same = catches(job, job.catches[-1].liquid)
        if len(same) > 1:
            stats = catch_statistics([each.delivery_ml_min for each in same])
            kept = stats.mean_ml_min, stats.spread_ml_min
            mean, spread = (show(each, Kind.DELIVERY, system) for each in kept)
            learnt.insert(0, f"mean {mean}, spread {spread}")
        room = max(1, RECORD_ROWS - len(learnt))
        return (*(_line(context, each) for each in job.catches[-room:]), *learnt)

    def at_large(self, context: Context, values: Values) -> AtLarge:
        return catches_at_large(context, tuple(learnt_lines(context)))

    def event(self, context: Context, values: Values) -> ev.Event | str:
        delivery, liquid = delivery_of(context, values), word(values, "liquid")
        amount, seconds = quantity(values, "amount"), number(values, "seconds")
        if not seconds:
            return NO_TIME
        if amount is None or not amount.value:
            return NOTHING_CAUGHT
        if delivery is None:
            return NO_DENSITY
        return ev.CatchMade(
            n=0,
            at=context.now,
            seconds=seconds,
            amount=amount,
            delivery_ml_min=delivery,
            liquid=liquid,
            density_g_ml=density_of(context, liquid) if amount.unit == "g" else None,
            **{key: quantity(values, key) for key in SETTINGS},
        )


def learnt_lines(context: Context) -> list[str]:
    """What the catches teach, with those of past jobs."""
    job, system = context.job, context.system
    opened, tip_mm = job.opened, _tip_mm(context)
    past = context.past.caught(job.fitted.gun, tip_mm, job.profile.key, without=opened.job)
    known = catch_pairs(job, [each.pair for each in past])
    turns, rests = turns_words(job, known, system, context.gun), of_turns(context, past)
    turns = f"{turns.rstrip('.')}; by {rests}" if turns and rests else turns
    told = (paint_words(job, known, system), *of_catch(context), turns)
    return [*filter(None, told)]


def _usual(job: Job) -> tuple[str, float]:
    """What is caught next, and for how long [s]: as the last time, unless the gun was filled since."""
    last, filled = (job.catches[-1] if job.catches else None), gun_is_filled(job)
    if job.opened.rehearsal:
        return "water", last.seconds if last is not None else USUAL_S
    since = max((each.n for each in job.batches), default=0) if filled else 0
    if last is not None and last.n > since:
        return last.liquid, last.seconds
    return ("paint", catch_s(job)) if filled else ("water", USUAL_S)


def _line(context: Context, each: ev.CatchMade) -> str:
    """A catch in few words: beside it means and what was learnt have to find room."""
    turns = f"  {each.turns.value:g} turns" if each.turns else ""
    delivery = show(each.delivery_ml_min, Kind.DELIVERY, context.system)
    return f"{local_day_hhmm(each.at, context.now)}  {delivery}  {each.liquid}{turns}"


def caught_in_s(context: Context) -> float | None:
    """How long was caught, where the amount is still to be typed [s]; None where nothing waits."""
    watch = context.running(CATCH)
    if watch is None or catching(context.job.stopwatches, context.now) is not None:
        return None
    return watch.stopped.seconds if watch.stopped else watch.started.window_s


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


def _tip_mm(context: Context) -> float | None:
    return tip_mm_of(context.job, context.gun)
