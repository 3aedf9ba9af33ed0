"""The gun at large: catches over turns of the needle, inlet, fan and passes on the wanted band."""

from __future__ import annotations

from booth.bench.act import Context
from booth.bench.instrument import Instrument
from booth.forms.form import Values
from booth.instruments.air_recovery import fill_lines
from booth.instruments.large.tries import (
    band_of,
    band_on,
    ends,
    in_unit,
    one_try,
    scale_over,
    spread_note,
    wanted_ticks,
)
from booth.job.measured import catches, known
from booth.job.needle_advice import catch_pairs
from booth.job.the_gun import tip_mm_of
from booth.log.events import AirRead, CatchMade, FanSet
from booth.profile.model import Range
from booth.trade.delivery.needle import NeedleCatch, needle_curve
from booth.trade.film.gun_speed import pass_time_s
from booth.units import Kind, show, shown_value
from booth.words.shown import Tone
from booth.words.tried import AtLarge, Chart, Curve, Spot, Tries

#: The coating, water, and what was caught with this gun and tip in past jobs.
MARKS = {"paint": "■", "water": "○"}
PAST_MARK = "·"
DELIVERY = Kind.DELIVERY
MM_PER_M = 1000.0


def catches_at_large(context: Context, learnt: tuple[str, ...]) -> AtLarge:
    """Every catch; over the turns of the needle where those were told. learnt: what they teach."""
    job, system = context.job, context.system
    if not job.catches:
        return AtLarge()
    span = context.profile.gun.delivery_ml_min
    # What is wanted is wanted of the coating: water is not held against it.
    tries = tuple(
        one_try(
            context,
            e.at,
            _set(e, context),
            e.delivery_ml_min,
            DELIVERY,
            span if e.liquid == "paint" else None,
        )
        for e in job.catches
    )
    same = [each.delivery_ml_min for each in catches(job, job.catches[-1].liquid)]
    notes = tuple(filter(None, (spread_note(same, DELIVERY, system, " at this setting"),)))
    chart = _over_turns(context, span)
    tried = Tries("catches", tries, band_of(context, span, DELIVERY), notes, chart)
    return AtLarge((tried,), record=learnt)


def _set(each: CatchMade, context: Context) -> str:
    turns = "" if each.turns is None else f"  {show(each.turns.value, Kind.TURNS, context.system)}"
    return f"{'coating' if each.liquid == 'paint' else each.liquid}{turns}"


def _over_turns(context: Context, span: Range | None) -> Chart | None:
    """The catches over turns, with the rising curve through those of the coating."""
    job, system = context.job, context.system
    told = [(e, e.turns.value) for e in job.catches if e.turns is not None]
    if len({turns for _, turns in told}) < 2:
        return None
    tip_mm = tip_mm_of(job, context.gun)
    found = context.past.caught(job.fitted.gun, tip_mm, job.profile.key, without=job.opened.job)
    past = [each.pair for each in found]
    tried = [
        NeedleCatch(each.turns, each.delivery_ml_min)
        for each in catch_pairs(job, past)
        if each.liquid == "paint"
    ]
    curve = (known(needle_curve, tried) or ()) if tried else ()
    across = scale_over([*(t for _, t in told), *(p.turns for p in past)], None, system)
    caught = [e.delivery_ml_min for e, _ in told]
    up = scale_over([*caught, *(p.delivery_ml_min for p in past), *ends(span)], DELIVERY, system)

    def place(turns: float, ml_min: float) -> tuple[float, float]:
        return across.share(turns), up.share(shown_value(ml_min, DELIVERY, system))

    older = [Spot(*place(each.turns, each.delivery_ml_min), PAST_MARK) for each in past]
    spots = [
        Spot(
            *place(turns, each.delivery_ml_min),
            MARKS.get(each.liquid, "■"),
            one_try(context, each.at, "", each.delivery_ml_min, DELIVERY, span).tone
            if each.liquid == "paint"
            else Tone.PLAIN,
            show(each.delivery_ml_min, DELIVERY, system, unit=False),
        )
        for each, turns in told
    ]
    low, high = band_on(span, up, DELIVERY, system)
    line = Curve(tuple(place(each.turns, each.delivery_ml_min) for each in curve))
    return Chart(
        f"{in_unit('delivery', DELIVERY, system)}   ■ coating  ○ water  · past jobs",
        (*older, *spots),
        (line,) if len(curve) > 1 else (),
        across.ticks(),
        (*wanted_ticks(span, up, DELIVERY, system), *up.ticks()),
        "turns open",
        low,
        high,
    )


def air_at_large(step: Instrument, context: Context, values: Values) -> AtLarge:
    span, airs = context.profile.gun.inlet_kpa, context.job.airs
    tries = tuple(
        one_try(context, e.at, _cap(e, context), e.inlet.value, Kind.PRESSURE, span) for e in airs
    )
    found = Tries("inlet, trigger pulled", tries, band_of(context, span, Kind.PRESSURE))
    return AtLarge((found,), record=fill_lines(context)) if tries else AtLarge()


def _cap(each: AirRead, context: Context) -> str:
    cap = "" if each.cap is None else f"cap {show(each.cap.value, Kind.PRESSURE, context.system)}"
    turns = each.fan_turns
    fan = "" if turns is None else f"fan {show(turns.value, Kind.TURNS, context.system)}"
    return "  ".join(filter(None, (cap, fan)))


def fan_at_large(step: Instrument, context: Context, values: Values) -> AtLarge:
    span, fans = context.profile.gun.fan_mm, context.job.fans
    tries = tuple(
        one_try(context, e.at, _fan(e, context), e.width.value, Kind.LENGTH, span)
        for e in fans
        if e.width is not None
    )
    found = Tries("fan on the paper", tries, band_of(context, span, Kind.LENGTH))
    return AtLarge((found,)) if tries else AtLarge()


def _fan(each: FanSet, context: Context) -> str:
    system, turns, away = context.system, each.turns, each.distance
    opened = "" if turns is None else show(turns.value, Kind.TURNS, system)
    at = "" if away is None else f"at {show(away.value, Kind.LENGTH, system)}"
    return "  ".join(filter(None, (opened, at)))


def passes_at_large(context: Context, speed_mm_s: float | None, film_um: Range | None) -> AtLarge:
    """Each pass against the time wanted of its length.

    speed_mm_s: wanted of the gun [mm/s]; film_um: the wet film wanted [um]. At one delivery, fan and
    overlap the film grows as the time of the pass does, so its band is that of the film.
    """
    system = context.system
    tries, span = [], None
    for each in context.job.passes:
        span = _pass_span(each.length.value * MM_PER_M, speed_mm_s, film_um)
        said = show(each.length.value, Kind.PART_LENGTH, system)
        tries.append(one_try(context, each.at, said, each.seconds, Kind.TIME, span))
    found = Tries("passes timed", tuple(tries), band_of(context, span, Kind.TIME))
    return AtLarge((found,)) if tries else AtLarge()


def _pass_span(length_mm: float, speed_mm_s: float | None, film_um: Range | None) -> Range | None:
    if not speed_mm_s or length_mm <= 0:
        return None
    wanted_s = pass_time_s(length_mm, speed_mm_s)
    if film_um is None or not film_um.middle:
        return Range(wanted_s, wanted_s)
    low, high = (
        None if end is None else wanted_s * end / film_um.middle
        for end in (film_um.low, film_um.high)
    )
    return Range(low, high)
