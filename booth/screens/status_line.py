"""The line above the bench: the job and its weather."""

from __future__ import annotations

from textual.content import Content

from booth.bench.context import Context
from booth.log.events import WeatherRead
from booth.trade.result import BadInput
from booth.trade.weather.humid_air import dew_margin_c
from booth.units import Kind, System, show
from booth.widgets.text import content, fit


def weather_words(weather: WeatherRead, system: System) -> str:
    """Air, humidity, part and the margin of the part over the dew point."""
    try:
        margin_c = dew_margin_c(weather.air.value, weather.humidity.value, weather.part.value)
        margin = show(margin_c, Kind.TEMPERATURE_DIFFERENCE, system)
    except BadInput:
        margin = "?"
    return (
        f"air {show(weather.air.value, Kind.TEMPERATURE, system)} "
        f"{weather.humidity.value:.0f} % RH  part "
        f"{show(weather.part.value, Kind.TEMPERATURE, system)}  dew margin {margin}"
    )


def status_line(context: Context, width: int) -> Content:
    """Profile and parts at the left, the weather at the right where there is room."""
    job = context.job
    weather = weather_words(job.weather, context.system) if job.weather else "weather not read yet"
    left = f"{job.profile.name}: {', '.join(job.parts)}"
    room = width - 2
    if len(weather) + 14 > room:
        return content(fit(left, room))
    left = fit(left, room - len(weather) - 2)
    gap = " " * max(2, room - Content(left).cell_length - len(weather))
    return Content.assemble((left, "bold"), gap, weather)
