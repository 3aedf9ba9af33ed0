"""Draws the bench from its model and now. Nothing is changed by it."""

from __future__ import annotations

from typing import Any

from textual.content import Content

from booth.bench.context import Context
from booth.bench.instrument import starting_point
from booth.bench.model import Bench
from booth.bench.next_act import Situation, key_words
from booth.job.steps import Mark, mark, steps_of
from booth.log.events import WeatherRead
from booth.screens.base import OwnScreen
from booth.screens.keyline import key_line
from booth.trade.result import BadInput
from booth.trade.weather.humid_air import dew_margin_c
from booth.units import Kind, System, show
from booth.widgets.clock_strip import ClockStrip
from booth.widgets.instrument_view import InstrumentView
from booth.widgets.lists import StepList, StepRow, StepState
from booth.widgets.text import content, fit
from booth.words.wait_words import faces

LEAST_WIDTH, LEAST_HEIGHT = 58, 18
STATES = {Mark.DONE: StepState.DONE, Mark.SKIPPED: StepState.SKIPPED, Mark.OPEN: StepState.OPEN}


def draw_moving(screen: OwnScreen[Any], situation: Situation) -> None:
    """Draw what a second can change."""
    _draw_instrument(screen.query_one(InstrumentView), situation)
    context = situation.context
    screen.query_one(ClockStrip).shown = faces(context.job, context.now)


def draw_standing(screen: OwnScreen[Any], bench: Bench, situation: Situation) -> None:
    """Draw what only a key, an entry or the window can change."""
    screen.query_one(StepList).shown = _step_rows(situation)
    screen.put("#status", status_line(situation.context, screen.size.width))
    screen.put("#keys", key_line(key_words(situation), screen.size.width))
    screen.say(bench.said[0], fault=bench.said[1])
    _draw_small(screen)


def _draw_instrument(view: InstrumentView, situation: Situation) -> None:
    context, rows, instrument = situation.context, situation.rows, situation.instrument
    view.title(instrument.KIND, context.step.name, context.step.how)
    view.set_class(instrument.kept_any(context), "-kept")
    view.set_class(bool(instrument.frames(context)), "-running")
    view.figure(instrument.readout(context, rows.values))
    view.pictures(instrument.picture(context, rows.values))
    view.record(instrument.record(context) or starting_point(instrument, context))
    view.form(rows)


def _step_rows(situation: Situation) -> tuple[StepRow, ...]:
    job, here = situation.context.job, situation.picked or situation.context.step.key
    return tuple(
        StepRow(
            number,
            step.name,
            StepState.CURRENT if step.key == here else STATES[mark(job, step)],
        )
        for number, step in enumerate(steps_of(job), 1)
    )


def _draw_small(screen: OwnScreen[Any]) -> None:
    """Where nothing can be read, say what is needed."""
    size = screen.size
    small = size.width < LEAST_WIDTH or size.height < LEAST_HEIGHT
    screen.set_class(small, "-small")
    if small:
        said = (
            f"This window is {size.width} x {size.height}; the bench needs "
            f"{LEAST_WIDTH} x {LEAST_HEIGHT}. Make it larger; the clocks go on."
        )
        screen.put("#small", content(said))


# -- the line above the bench ------------------------------------------------------------------


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
