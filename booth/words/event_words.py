"""Each event in a line of words, for reports and for telling what is voided. Pure.

Whatever people typed passes through ``visible``; figures are shown in the units asked for.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import msgspec

from booth.files.safe_text import visible
from booth.job.steps import steps_of
from booth.log import events as ev
from booth.log.fold import Job
from booth.trade.cups.cup_table import CUPS
from booth.units import Kind, Quantity, System, show

LONGEST_NUMBER = 16
KIND_OF_UNIT = {kind.base: kind for kind in reversed(Kind)}


def quantity(given: Quantity | None, kind: Kind, system: System) -> str:
    """Give a quantity as read; of an unforeseen unit, as it was typed."""
    if given is None:
        return ""
    if given.unit != kind.base:
        found = KIND_OF_UNIT.get(given.unit)
        if found is None:
            return visible(given.typed)
        kind = found
    return show(given.value, kind, system)


def duration(seconds: float, system: System = System.METRIC) -> str:
    return show(seconds, Kind.TIME, system)


def cup_name(key: str | None) -> str:
    """Give a cup as it is called, Ford #4; of an unforeseen key, the key."""
    cup = CUPS.get(key or "")
    return cup.name if cup is not None else visible(key or "")


def words(event: ev.Event | ev.UnknownEvent, system: System, job: Job | None = None) -> str:
    """Give `event` in one line of words, without its time and number.

    job: whose event it is; then steps and alarms are told by name, not by key.
    """
    return teller(system, job)(event)


def teller(system: System, job: Job | None = None) -> Callable[[ev.Event | ev.UnknownEvent], str]:
    """Give what tells one event after another as ``words`` does, without looking up names anew."""
    steps: dict[str, str] = {}

    def told(event: ev.Event | ev.UnknownEvent) -> str:
        if isinstance(event, ev.UnknownEvent):
            return f"{visible(event.event)} (an entry of a later version of this program)"
        if isinstance(event, ev.StepDone | ev.StepSkipped) and job is not None:
            if not steps:
                steps.update((step.key, step.name) for step in steps_of(job))
            event = msgspec.structs.replace(event, step=steps.get(event.step, event.step))
        elif isinstance(event, ev.AlarmAcknowledged) and job is not None:
            event = msgspec.structs.replace(event, alarm=_alarm(event.alarm, job))
        return WORDS.get(type(event), _plainly)(event, system).strip()

    return told


def _plainly(event: ev.Event, system: System) -> str:
    """Give an event without words of its own by the names of its fields."""
    said = [
        (name.replace("_", " "), _value(value, system))
        for name in event.__struct_fields__
        if name not in ("n", "at") and (value := getattr(event, name)) not in (None, "", ())
    ]
    return _with(str(type(event).__struct_config__.tag), *said)


def _value(value: object, system: System) -> str:
    if isinstance(value, Quantity):
        return quantity(value, Kind.RATIO, system)
    return f"{value:g}" if isinstance(value, float) else visible(str(value))


def _alarm(key: str, job: Job) -> str:
    """Give the alarm 'coat:50:ready' as 'hood, coat 2 ready'; its key where that cannot be told."""
    what, _, rest = key.partition(":")
    number, _, state = rest.partition(":")
    plain = number.isascii() and number.isdecimal() and len(number) <= LONGEST_NUMBER
    source = job.numbered.get(int(number)) if plain else None
    if isinstance(source, ev.CoatEnded):
        due = f"coat {source.coat + 1}" if what == "coat" else what.replace("_", "-")
        return f"{source.part}, {due} {state}"
    if isinstance(source, ev.BatchMixed):
        return f"batch {source.batch}, {what.replace('_', ' ')} {state}"
    return key


def _with(first: str, *more: tuple[str, str]) -> str:
    """Give `first`, then each name and its words where there are any."""
    rest = [f"{name} {value}".strip() for name, value in more if value]
    return ", ".join([first, *rest])


def _on(part: str) -> str:
    return f" on {visible(part)}" if part else ""


def _weather(event: ev.WeatherRead, system: System) -> str:
    return (
        f"weather: air {quantity(event.air, Kind.TEMPERATURE, system)}, "
        f"humidity {quantity(event.humidity, Kind.PERCENT, system)}, "
        f"part {quantity(event.part, Kind.TEMPERATURE, system)}"
    )


def _batch(event: ev.BatchMixed, system: System) -> str:
    pours = " + ".join(
        f"{visible(pour.name)} {quantity(pour.amount, Kind.VOLUME, system)}" for pour in event.pours
    )
    return _with(
        f"batch {event.batch} mixed" + (f": {pours}" if pours else ""),
        ("in all", quantity(event.total, Kind.VOLUME, system)),
        ("onto batch", str(event.onto) if event.onto is not None else ""),
    )


def _thinner(event: ev.ThinnerAdded, system: System) -> str:
    return _with(
        f"thinner added: {quantity(event.amount, Kind.VOLUME, system)}",
        ("to", quantity(event.remaining, Kind.VOLUME, system)),
    )


def _efflux(event: ev.EffluxTimed, system: System) -> str:
    return _with(
        f"efflux time {cup_name(event.cup)}: {show(event.seconds, Kind.TIME, system, places=1)}",
        ("liquid at", quantity(event.liquid_temperature, Kind.TEMPERATURE, system)),
        ("cup's correction", f"{event.correction:g}" if event.correction != 1 else ""),
    )


def _air(event: ev.AirRead, system: System) -> str:
    return _with(
        f"air: inlet {quantity(event.inlet, Kind.PRESSURE, system)}",
        ("cap", quantity(event.cap, Kind.PRESSURE, system)),
        ("fan open", quantity(event.fan_turns, Kind.TURNS, system)),
    )


def _catch(event: ev.CatchMade, system: System) -> str:
    return _with(
        f"catch of {visible(event.liquid)}: {quantity(event.amount, Kind.VOLUME, system)} "
        f"in {duration(event.seconds, system)}, "
        f"delivery {show(event.delivery_ml_min, Kind.DELIVERY, system)}",
        ("needle", quantity(event.turns, Kind.TURNS, system)),
        ("inlet", quantity(event.inlet, Kind.PRESSURE, system)),
        ("tip", quantity(event.tip, Kind.TIP, system)),
    )


def _fan(event: ev.FanSet, system: System) -> str:
    return _with(
        "fan set",
        ("width", quantity(event.width, Kind.LENGTH, system)),
        ("open", quantity(event.turns, Kind.TURNS, system)),
        ("distance", quantity(event.distance, Kind.LENGTH, system)),
    )


def _pattern(event: ev.PatternRead, system: System) -> str:
    return _with(
        f"pattern: {visible(event.shape)}",
        ("zones", " ".join(f"{zone:g}" for zone in event.zones)),
        ("overlap", quantity(event.overlap, Kind.PERCENT, system)),
        ("width", quantity(event.width, Kind.LENGTH, system)),
    )


def _pass(event: ev.PassTimed, system: System) -> str:
    length = quantity(event.length, Kind.PART_LENGTH, system)
    return f"pass timed: {length} in {show(event.seconds, Kind.TIME, system, places=1)}"


def _coat_begun(event: ev.CoatBegun, system: System) -> str:
    return _with(
        f"coat {event.coat}{_on(event.part)} begun",
        ("", f"{duration(event.early_s, system)} too early" if event.early_s else ""),
        ("", f"{duration(event.late_s, system)} past the window" if event.late_s else ""),
        ("", "the clock in doubt" if event.doubtful else ""),
    )


def _stopwatch(event: ev.StopwatchStarted, system: System) -> str:
    return _with(
        f"stopwatch of the {visible(event.stopwatch)} started",
        ("", cup_name(event.what)),
        ("for", "" if event.window_s is None else duration(event.window_s, system)),
    )


def _stopped(event: ev.StopwatchStopped, system: System) -> str:
    seconds = show(event.seconds, Kind.TIME, system, places=1)
    return f"stopwatch of the {visible(event.stopwatch)} stopped after {seconds}"


def _film(event: ev.FilmRead, system: System) -> str:
    coat = f", coat {event.coat}" if event.coat is not None else ""
    return (
        f"wet film{_on(event.part)}{coat}: "
        f"over {quantity(event.last_wetted, Kind.THICKNESS, system)}, "
        f"under {quantity(event.first_dry, Kind.THICKNESS, system)}"
    )


def _area(event: ev.AreaAdded, system: System) -> str:
    sizes = ", ".join(
        f"{visible(name)} {quantity(size, Kind.PART_LENGTH, system)}"
        for name, size in event.dimensions.items()
    )
    return _with(
        f"area{_on(event.part)}: {quantity(event.area, Kind.AREA, system)}",
        ("", f"{event.number} of them" if event.number > 1 else ""),
        (visible(event.shape), sizes),
    )


def _fresh_air(event: ev.FreshAirChecked, system: System) -> str:
    def flow(m3_min: float) -> str:
        return show(m3_min * 1000, Kind.AIR_FLOW, system)

    moved = "" if event.moved_m3_min is None else flow(event.moved_m3_min)
    return _with(
        f"fresh air: at least {flow(event.needed_m3_min)} against fire", ("the room moves", moved)
    )


def _clock(event: ev.ClockNoticed, system: System) -> str:
    said = []
    if event.slept_s:
        said.append(f"the machine slept {duration(event.slept_s, system)}")
    if event.stepped_s:
        way = "forward" if event.stepped_s > 0 else "back"
        said.append(f"its clock was set {way} by {duration(abs(event.stepped_s), system)}")
    return "clock: " + (", ".join(said) or "no change")


def _closed(event: ev.JobClosed, system: System) -> str:
    return _with(
        f"job closed: {visible(event.verdict)}",
        ("", visible(event.words)),
        ("next time:", visible(event.next_time)),
    )


def _opened(event: ev.JobOpened, system: System) -> str:
    return f"job opened: {visible(event.profile.name)}, {visible(', '.join(event.parts))}"


#: How each kind of event is told.
WORDS: dict[type[ev.Event], Callable[[Any, System], str]] = {
    ev.JobOpened: _opened,
    ev.StepDone: lambda e, _: f"step done: {visible(e.step)}",
    ev.LineTicked: lambda e, _: f"done: {visible(e.line)}",
    ev.StepSkipped: lambda e, _: _with(f"step skipped: {visible(e.step)}", ("", visible(e.why))),
    ev.CautionAcknowledged: lambda e, _: f"caution acknowledged: {visible(e.words or e.caution)}",
    ev.WeatherRead: _weather,
    ev.Poured: lambda e, system: (
        f"poured into batch {e.batch}: {visible(e.name)} {quantity(e.amount, Kind.VOLUME, system)}"
    ),
    ev.BatchMixed: _batch,
    ev.BatchFinished: lambda e, _: f"batch {e.batch} finished",
    ev.ThinnerAdded: _thinner,
    ev.StopwatchStarted: _stopwatch,
    ev.StopwatchStopped: _stopped,
    ev.StopwatchDropped: lambda e, _: f"stopwatch of the {visible(e.stopwatch)} dropped",
    ev.EffluxTimed: _efflux,
    ev.AirRead: _air,
    ev.CatchMade: _catch,
    ev.FanSet: _fan,
    ev.PatternRead: _pattern,
    ev.PassTimed: _pass,
    ev.CoatBegun: _coat_begun,
    ev.CoatEnded: lambda e, _: f"coat {e.coat}{_on(e.part)} ended",
    ev.FilmRead: _film,
    ev.TouchTried: lambda e, _: f"touched{_on(e.part)}: {visible(e.result)}",
    ev.AreaAdded: _area,
    ev.AmountPlanned: lambda e, system: (
        f"amount planned: {quantity(e.amount, Kind.VOLUME, system)} "
        f"for {quantity(e.area, Kind.AREA, system)}"
    ),
    ev.FreshAirChecked: _fresh_air,
    ev.FaultSeen: lambda e, _: f"fault seen{_on(e.part)}: {visible(e.fault)}",
    ev.NoteMade: lambda e, _: f"note{_on(e.part)}: {visible(e.text)}",
    ev.AlarmAcknowledged: lambda e, _: f"alarm silenced: {visible(e.alarm)}",
    ev.ClockNoticed: _clock,
    ev.Voided: lambda e, _: f"number {e.target} voided",
    ev.Restored: lambda e, _: f"number {e.target} restored",
    ev.JobClosed: _closed,
}
