"""A catch in words and figures: what runs, what it came to, what it teaches about the needle. Pure."""

from __future__ import annotations

import math

from booth.bench.context import Context
from booth.bench.instrument import local_time, number, quantity, word
from booth.forms.form import Values
from booth.job.measured import catches, compare
from booth.job.needle_advice import catch_pairs, paint_words, turns_words
from booth.job.past import CatchPair
from booth.job.stopwatches import CATCH, Catching, catching
from booth.log.events import CatchMade
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

#: From here on it is said how long ago a catch was [s].
LONG_AGO_S = 180.0
#: A gravity cup of 20 US fl oz, where the shop file names no other (common practice, no source).
USUAL_CUP_ML = 20 * 29.5735295625
WATER_C = 20.0
NO_TIME = "A catch needs a time above zero, such as 60 s or 1:30."
#: What a low window shows of the lines of what was kept.
RECORD_ROWS = 4


def caught_in_s(context: Context) -> float | None:
    """How long was caught, where the amount is still to be typed [s]; None where nothing waits."""
    watch = context.running(CATCH)
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
    watch = context.running(CATCH)
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
    opened, tip = context.job.opened, tip_of(context)
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


def tip_of(context: Context) -> Quantity | None:
    gun = context.shop.gun(context.job.opened.gun)
    if gun is not None and gun.tip_mm:
        return Quantity(gun.tip_mm, "mm", "")
    return None


def mean_readout(context: Context) -> Readout:
    """The mean of the catches of the last needle setting. Pure."""
    liquid = context.job.catches[-1].liquid
    same = catches(context.job, liquid)
    mean = catch_statistics([each.delivery_ml_min for each in same]).mean_ml_min
    label = "delivery" if len(same) == 1 else f"delivery, mean of {len(same)}"
    return delivery_readout(context, mean, liquid, label)


def record_lines(context: Context, last_good: tuple[str, ...]) -> tuple[str, ...]:
    """The latest catches, their mean, and what they teach about the needle. Pure."""
    job, system = context.job, context.system
    known = catch_pairs(job, past_pairs(context))
    learnt = [said for words in (paint_words, turns_words) if (said := words(job, known, system))]
    if not job.catches:
        return (*last_good, *learnt)
    same = catches(job, job.catches[-1].liquid)
    means = []
    if len(same) > 1:
        stats = catch_statistics([each.delivery_ml_min for each in same])
        spread = show(stats.spread_ml_min, Kind.DELIVERY, system)
        means.append(f"mean {show(stats.mean_ml_min, Kind.DELIVERY, system)}, spread {spread}")
    room = max(1, RECORD_ROWS - len(means) - len(learnt))
    return (*(_caught_words(each, system) for each in job.catches[-room:]), *means, *learnt)
