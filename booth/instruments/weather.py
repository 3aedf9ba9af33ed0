"""Air, humidity and the part's own temperature: dew point, margin, and what today does to the waits."""

from __future__ import annotations

from typing import ClassVar

from booth.instruments.base import Instrument, Values, quantity
from booth.instruments.desk import Context
from booth.job.events import Event, WeatherRead
from booth.job.today import waits_in_words
from booth.trade.weather import dew_point_c, weather_verdict
from booth.units import Kind, Quantity, System, show, shown_unit, shown_value
from booth.widgets.entry import Field
from booth.widgets.readout import Readout
from booth.widgets.tone import Tone


class Weather(Instrument):
    """Three readings and one margin."""

    KIND: ClassVar[str] = "weather"
    NAME: ClassVar[str] = "Weather"
    ABOUT: ClassVar[tuple[str, ...]] = (
        "The large figure is the dew margin: how far the part's own temperature lies above the dew "
        "point of the air. Too small, and water condenses under or in the film.",
        "Dew point by the Magnus formula with the constants of Alduchov and Eskridge 1996. "
        "The margin asked for is the profile's; where it gives none, the stricter of 3 C (as "
        "practised with ISO 8502-4) and 5 F (MIL-HDBK-1110 9.6.6).",
        "Waits for today: a table in the profile wins. One time at one temperature is scaled by a "
        "rule of thumb and marked as an estimate; a touch test always decides.",
        "Measure the part itself, with a surface thermometer: metal from outside is colder than "
        "the air for hours.",
    )
    KEEPS: ClassVar[tuple[type[Event], ...]] = (WeatherRead,)

    def fields(self, context: Context) -> tuple[Field, ...]:
        return (
            Field("air", "Air", Kind.TEMPERATURE),
            Field("humidity", "Humidity", Kind.PERCENT),
            Field("part", "Part", Kind.TEMPERATURE),
        )

    def readout(self, context: Context, values: Values) -> Readout:
        air, humidity, part = (quantity(values, key) for key in ("air", "humidity", "part"))
        last = context.job.weather
        if self.all_empty and last is not None:
            air, humidity, part = last.air, last.humidity, last.part
        if air is None or humidity is None or part is None:
            return Readout("–", label="dew margin", lines=("Air, humidity, and the part itself.",))
        return weather_readout(air, humidity, part, context)

    def record(self, context: Context) -> tuple[str, ...]:
        return tuple(
            f"{self.desk.local_time(read.at)}  air {_temperature(read.air, context.system)}, "
            f"{read.humidity.value:.0f} %, part {_temperature(read.part, context.system)}"
            for read in context.job.weathers[-2:]
        )

    def event(self, context: Context, values: Values) -> Event | None:
        air, humidity, part = (quantity(values, key) for key in ("air", "humidity", "part"))
        if air is None or humidity is None or part is None:
            return None
        return WeatherRead(n=0, at=context.now, air=air, humidity=humidity, part=part)


def _temperature(given: Quantity, system: System) -> str:
    return show(given.value, Kind.TEMPERATURE, system)


def weather_readout(
    air: Quantity, humidity: Quantity, part: Quantity, context: Context
) -> Readout:
    """The margin as the figure, each limit and today's waits as lines. Pure."""
    raise LookupError
