"""The weather at large: the readings of the day, over its hours against the product's limits."""

from __future__ import annotations

from booth.bench.act import Context
from booth.clock import local_day_hhmm
from booth.instruments.figures import gauge
from booth.instruments.large.tries import band_on, ends, in_unit, scale_over, wanted_ticks
from booth.job import lasting
from booth.job.measured import known
from booth.log.events import WeatherRead
from booth.moment import elapsed
from booth.profile.model import Range
from booth.trade.weather.weather_limits import WeatherVerdict
from booth.units import Kind, show, shown_value
from booth.words.shown import Band, Tone
from booth.words.tried import AtLarge, Chart, Curve, Spot, Tries, Try

MARGIN, DEGREES = Kind.TEMPERATURE_DIFFERENCE, Kind.TEMPERATURE
#: Each line has its own mark and its name at its end.
AIR, PART, DEW = ("air", "○"), ("part", "■"), ("dew point", "▬")
#: A limit farther than this from all that was read would only press the lines together [K].
NEAR_K = 8.0
#: What of the width is left free at either end: for marks, and for the names of the lines.
LEFT, RIGHT = 0.03, 0.24
Read = tuple[WeatherRead, WeatherVerdict]


def weather_at_large(context: Context, margin_c: Range, band: Band | None) -> AtLarge:
    """Every reading of this job. margin_c: the dew margin asked for [K]; band: it, on its scale."""
    every = [(e, known(lasting.verdict, context.profile, e)) for e in context.job.of(WeatherRead)]
    reads = [(each, found) for each, found in every if found is not None]
    if not reads:
        return AtLarge()
    tries = tuple(_try(context, each, found, margin_c) for each, found in reads)
    limits = context.profile.limits
    chart = _over_the_day(context, reads, limits.part_c)
    return AtLarge((Tries("how far the part was over the dew point", tries, band, chart=chart),))


def _try(context: Context, each: WeatherRead, found: WeatherVerdict, margin_c: Range) -> Try:
    system = context.system
    air, part = (show(e.value, DEGREES, system) for e in (each.air, each.part))
    said = f"{local_day_hhmm(each.at, context.now)}  {air} {each.humidity.value:.0f} %, part {part}"
    edge, _ = gauge(system, found.margin_c, margin_c, MARGIN)
    return Try(said, show(found.margin_c, MARGIN, system, unit=False), _tone(found), edge)


def _tone(found: WeatherVerdict) -> Tone:
    return Tone.GOOD if found.within else Tone.CAUTION


def _over_the_day(context: Context, reads: list[Read], span: Range | None) -> Chart | None:
    first, last = reads[0][0].at, reads[-1][0].at
    whole_s = elapsed(first, last).seconds
    if len(reads) < 2 or whole_s <= 0:
        return None
    system = context.system
    told = {
        AIR: [each.air.value for each, _ in reads],
        PART: [each.part.value for each, _ in reads],
        DEW: [found.dew_point_c for _, found in reads],
    }
    values = [each for found in told.values() for each in found]
    near = [end for end in ends(span) if min(values) - NEAR_K <= end <= max(values) + NEAR_K]
    up = scale_over([*values, *near], DEGREES, system)
    places = [LEFT + (1 - LEFT - RIGHT) * elapsed(first, e.at).seconds / whole_s for e, _ in reads]

    def line(found: list[float]) -> tuple[tuple[float, float], ...]:
        heights = (up.share(shown_value(each, DEGREES, system)) for each in found)
        return tuple(zip(places, heights, strict=True))

    curves = tuple(
        Curve(line(found), f"{name} {show(found[-1], DEGREES, system, unit=False)}")
        for (name, _), found in told.items()
    )
    spots = tuple(
        Spot(x, y, which[1], _tone(verdict) if which == PART else Tone.PLAIN)
        for which, found in told.items()
        for (x, y), (_, verdict) in zip(line(found), reads, strict=True)
    )
    low, high = band_on(span, up, DEGREES, system)
    times = tuple(
        (x, local_day_hhmm(each.at, context.now))
        for x, (each, _) in zip(places, reads, strict=True)
    )
    ticks = [t for t in wanted_ticks(span, up, DEGREES, system) if 0 <= t[0] <= 1]
    title = in_unit("air, part and dew point", DEGREES, system)
    title += "; limits of the part" if span is not None else ""
    return Chart(
        title, spots, curves, (times[-1], *times[:-1]), (*ticks, *up.ticks()), "", low, high
    )
