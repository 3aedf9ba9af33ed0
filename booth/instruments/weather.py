"""Air, humidity and the part's own temperature: dew point, margin, and what today does to the waits."""

from __future__ import annotations

from msgspec.structs import replace

from booth.bench.act import Context
from booth.bench.instrument import Instrument, quantity
from booth.files.safe_text import visible
from booth.forms.form import Field, Values
from booth.instruments.figures import asked_for, gauge
from booth.instruments.large.climate import weather_at_large
from booth.job import lasting
from booth.job.coat_plan import coats_of
from booth.job.lasting import Lasting
from booth.job.mix_choice import todays
from booth.job.readings import is_stale, weather_age_s
from booth.job.together import after_coat, closes_first, mixes_in_use, opens_last
from booth.log.events import Event, WeatherRead
from booth.profile.model import Range
from booth.shop.room_readings import RoomReading
from booth.trade.result import BadInput
from booth.trade.weather.weather_limits import (
    MARGIN_ISO_8502_4_C,
    MARGIN_MIL_HDBK_1110_C,
    LimitCheck,
    weather_verdict,
)
from booth.units import Kind, Quantity, System, show, shown_unit, shown_value
from booth.units.sentences import in_units
from booth.words.about import of_the_day
from booth.words.shown import Readout, Tone
from booth.words.tried import AtLarge
from booth.words.wait_words import length

THREE = ("air", "humidity", "part")
NOT_USED = "Sensor file not used"
WHOSE = "DEW"
MARGIN = Kind.TEMPERATURE_DIFFERENCE, "at least"
BELOW_DEW_POINT = "The part is not above the dew point: water condenses on it."


class Weather(Instrument):
    KIND = "weather"
    NAME = "Weather"
    ABOUT = of_the_day.WEATHER
    KEEPS = (WeatherRead,)
    RECORDS = 2
    UNSAID = "weather: "

    def fields(self, context: Context, values: Values) -> tuple[Field, ...]:
        read, said = sensor(context)
        air, humidity = (read.air_c, read.humidity_percent) if read else (None, None)
        return (
            _asked("air", "Air", Kind.TEMPERATURE, air, said),
            _asked("humidity", "Humidity", Kind.PERCENT, humidity, said),
            Field("part", "Part", Kind.TEMPERATURE),
            Field(
                "speed",
                "Air speed",
                Kind.SPEED,
                optional=True,
                hidden=not context.profile.waterborne,
                hint="over the film",
            ),
        )

    def readout(self, context: Context, values: Values) -> Readout:
        last = context.job.weather
        air, humidity, part = (quantity(values, key) for key in THREE)
        read, said = sensor(context)
        said = "" if context.room is None else f"Air and humidity: {said}." if read else said
        is_kept = not (_typed(air) or _typed(humidity) or part) and last is not None
        if last is not None and is_kept:
            air, humidity, part = last.air, last.humidity, last.part
            said = "" if read else said
        if air is None or humidity is None or part is None:
            lines = filter(
                None,
                (
                    said,
                    "Type the temperature of the air, its humidity, and the temperature of the part itself.",
                ),
            )
            return _nothing_read(context, tuple(lines))
        found = weather_readout(air, humidity, part, context, quantity(values, "speed"))
        if is_kept and is_stale(context.job, context.now):
            age = length(weather_age_s(context.job, context.now) or 0.0)
            old = f"Read {age} ago: take it again."
            word = "TAKE AGAIN" if found.tone is Tone.GOOD else found.word
            found = replace(found, tone=Tone.CAUTION, word=word, lines=(old, *found.lines))
        return replace(found, lines=(*found.lines, said)) if said else found

    def at_large(self, context: Context, values: Values) -> AtLarge:
        wanted = _asked_margin(context)
        return weather_at_large(context, wanted, gauge(context.system, None, wanted, *MARGIN)[1])

    def kept_any(self, context: Context) -> bool:
        """One that is old counts no more than none."""
        return context.job.weather is not None and not is_stale(context.job, context.now)

    def event(self, context: Context, values: Values) -> Event | str:
        air, humidity, part = (quantity(values, key) for key in THREE)
        if air is None or humidity is None or part is None:
            return "All three are needed: air, humidity and the part itself."
        if not 0 < humidity.value <= 100:
            return "Relative humidity lies between 0 and 100 %."
        weather_verdict(air.value, humidity.value, part.value)  # refuses what cannot be
        speed = quantity(values, "speed")
        sensed = {"air": air, "humidity": humidity}
        by = " and ".join(name for name, each in sensed.items() if not _typed(each))
        return WeatherRead(
            n=0,
            at=context.now,
            air=air,
            humidity=humidity,
            part=part,
            air_speed=speed,
            source=f"sensor: {by}" if by else "",
        )


def sensor(context: Context) -> tuple[RoomReading | None, str]:
    """What the sensor says and how old that is; else nothing, and a sentence why it is not used. Pure."""
    read = context.room
    if read is None:
        return None, ""
    if read.fault:
        return None, f"{NOT_USED}: {read.fault}"
    age_s = read.age_s(context.now)
    if read.is_fresh(context.now):
        return read, f"sensor, {length(max(age_s, 0.0))} ago"
    if age_s < 0:
        ahead = f"dated {length(-age_s)} ahead of this machine's clock"
        return None, f"{NOT_USED}: it is {ahead}. Set the clocks right."
    return None, f"{NOT_USED}: it is {length(age_s)} old. Look at the sensor."


def _asked(key: str, label: str, kind: Kind, value: float | None, said: str) -> Field:
    """A row that is asked for until the sensor tells it."""
    if value is None:
        return Field(key, label, kind, hint=NOT_USED if said and key == "air" else "")
    return Field(key, label, kind, default=value, hint=said, assumed=True)


def _typed(given: Quantity | None) -> bool:
    return given is not None and given.typed != ""


def weather_readout(
    air: Quantity,
    humidity: Quantity,
    part: Quantity,
    context: Context,
    speed: Quantity | None = None,
) -> Readout:
    """The margin as the figure, each limit missed and today's waits as lines. Pure."""
    system = context.system
    reading = WeatherRead(
        n=0, at=context.now, air=air, humidity=humidity, part=part, air_speed=speed
    )
    try:
        verdict = lasting.verdict(context.profile, reading)
    except BadInput as fault:
        said = in_units(fault, system)
        return Readout("", tone=Tone.CAUTION, word="CHECK", lines=(said,), whose=WHOSE)
    # The panel drops lines from the end where rows are scarce: what is missed comes first.
    lines = [BELOW_DEW_POINT] if verdict.margin_c <= 0 else []
    for each in verdict.failed:
        measured = _amount(each.measured, each, system)
        lines.append(f"{each.name} {measured}, limit {_limit_words(each, system)}")
    lines += waits_in_words(context, reading)
    lines.append(f"dew point {show(verdict.dew_point_c, Kind.TEMPERATURE, system)}")
    met = (each for each in verdict.checks if each.ok)
    lines += [f"{each.name}: {_limit_words(each, system)}" for each in met]
    tone, said = Tone.CAUTION, "OUTSIDE LIMITS"
    if verdict.within:
        tone, said = Tone.GOOD, "WITHIN LIMITS"
    margin = f"{shown_value(verdict.margin_c, Kind.TEMPERATURE_DIFFERENCE, system):.1f}"
    unit = shown_unit(Kind.TEMPERATURE_DIFFERENCE, system)
    edge, band = gauge(system, verdict.margin_c, _asked_margin(context), *MARGIN)
    return Readout(
        margin,
        unit,
        "dew margin",
        tone,
        said,
        tuple(lines),
        whose=WHOSE,
        edge=edge,
        band=band,
    )


def _asked_margin(context: Context) -> Range:
    """The least dew margin: the product's own, else the stricter of the usual ones."""
    own = context.profile.limits.dew_margin_c
    return Range(max(MARGIN_ISO_8502_4_C, MARGIN_MIL_HDBK_1110_C) if own is None else own)


def _nothing_read(context: Context, lines: tuple[str, ...]) -> Readout:
    """The margin that is asked for, and what to do."""
    label = "dew margin: the part has to be at least so much warmer than the dew point"
    return asked_for(context, _asked_margin(context), MARGIN[0], label, "", lines, WHOSE)


def waits_in_words(context: Context, weather: WeatherRead) -> list[str]:
    """What this weather makes of the waits of the mix in use; what is not known, and why. Pure."""
    job = context.job
    mixes = mixes_in_use(job) if job.batches or job.pours else (todays(job.profile, weather),)
    made = (each.mix for each in mixes if each.mix is not None)
    names = [mix.parts[-1].name for mix in made if mix.hardeners and mix.parts]
    hardener = f" with {visible(' and '.join(names))}" if names else ""
    first, *others = coats_of(job.profile)

    def opens(of: str) -> Lasting | None:
        return opens_last(mixes, lambda mix: lasting.opens(getattr(mix.waits, of), mix, weather))

    closes = closes_first(mixes, lambda mix: lasting.recoat_closes(mix, weather))
    rules = (
        ("between coats", after_coat(mixes, first.plan, weather) if others else None),
        ("next product", opens("recoat_opens")),
        ("its window closes", closes),
        ("handling", opens("handle")),
        ("pot life", closes_first(mixes, lambda mix: lasting.pot_life(mix, weather))),
    )
    given = [(name, lasts) for name, lasts in rules if lasts is not None]
    said = ", ".join(
        f"{name} {'~' if lasts.estimate else ''}{length(lasts.seconds)}"
        for name, lasts in given
        if lasts.seconds is not None
    )
    mark = "   (~ estimate or bound)" if "~" in said else ""
    unknown = [(name, lasts.why) for name, lasts in given if lasts.seconds is None]
    lines = [f"not known today: {', '.join(name for name, _ in unknown)}"] if unknown else []
    lines += dict.fromkeys(f"since {in_units(why, context.system)}" for _, why in unknown)
    touched = [name for name, lasts in given if lasts.seconds is None and lasts.by_touch]
    lines += [f"a touch test decides: {', '.join(touched)}"] if touched else []
    return [*lines, f"today{hardener}: {said}{mark}"] if said else lines


def _amount(number: float, check: LimitCheck, system: System) -> str:
    if check.unit == "%":
        return f"{number:.0f} %"
    kind = Kind.TEMPERATURE_DIFFERENCE if check.name == "dew margin" else Kind.TEMPERATURE
    return show(number, kind, system)


def _limit_words(check: LimitCheck, system: System) -> str:
    low = "" if check.low is None else f"at least {_amount(check.low, check, system)}"
    high = "" if check.high is None else f"at most {_amount(check.high, check, system)}"
    return ", ".join(each for each in (low, high) if each)
