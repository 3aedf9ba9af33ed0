"""Each event in a line of words, for reports and for telling what is voided. Pure.

Whatever people typed passes through ``visible``; figures are shown in the units asked for.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache
from typing import Any

import msgspec

from booth.files.safe_text import visible
from booth.job.products import product_of, products_of
from booth.job.steps import steps_of
from booth.log import events as ev
from booth.log.fold import Job
from booth.trade.cups.cup_table import CUPS
from booth.trade.faults.questions import QUESTIONS
from booth.units import Kind, Quantity, System, show
from booth.units.durations import length

LONGEST_NUMBER = 16
#: From here on a time is told in minutes, shorter ones to the tenth of a second [s].
MINUTE_S = 60.0
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
    return show(seconds, Kind.TIME, system) if abs(seconds) < MINUTE_S else length(seconds)


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
    steps: dict[tuple[int, str], str] = {}

    def told(event: ev.Event | ev.UnknownEvent) -> str:
        if isinstance(event, ev.UnknownEvent):
            return f"{visible(event.event)} (an entry of a later version of this program)"
        if isinstance(event, ev.StepDone | ev.StepSkipped) and job is not None:
            if not steps:
                every = products_of(job)
                steps.update(((own.product, s.key), s.name) for own in every for s in steps_of(own))
            step = steps.get((product_of(job, event.n).product, event.step), event.step)
            event = msgspec.structs.replace(event, step=step)
        elif isinstance(event, ev.ProductBegun) and job is not None:
            return f"product begun: {_product(event.product, job)}"
        elif isinstance(event, ev.AlarmAcknowledged) and job is not None:
            event = msgspec.structs.replace(event, alarm=_alarm(event.alarm, job))
        words = WORDS.get(type(event), _plainly)
        told = filled(words, event, system) if isinstance(words, str) else words(event, system)
        return told.strip()

    return told


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


def _product(number: int, job: Job) -> str:
    """Give a product as '2/3 Silver base'; its number where the job has no such one."""
    known = 1 <= number <= len(job.opened.products)
    return visible(job.opened.present(number)) if known else str(number)


def _clock(event: ev.ClockNoticed, system: System) -> str:
    said = []
    if event.slept_s:
        said.append(f"the machine slept {duration(event.slept_s, system)}")
    if event.stepped_s:
        way = "forward" if event.stepped_s > 0 else "back"
        said.append(f"its clock was set {way} by {duration(abs(event.stepped_s), system)}")
    return "clock: " + (", ".join(said) or "no change")


def _question(key: str) -> str:
    """Give a question as it was asked; of an unforeseen key, the key."""
    asked = QUESTIONS.get(key)
    return asked.words if asked is not None else f"{visible(key)}:"


#: How a coat lay in its window.
TIMELINESS = (
    "[, {early_s:time} too early][, {late_s:time} past the window]"
    "[, the clock in doubt{doubtful:unsaid}][, amiss: {amiss:list}]"
)
#: How each kind of event is told. ``{field:kind}`` is the field as a quantity of that kind, or as
#: SPECIAL has it; ``[…]`` is left out where a field in it is blank or as it is when nothing is said.
WORDS: dict[type[ev.Event], str | Callable[[Any, System], str]] = {
    ev.JobOpened: "job opened: {title}, {parts:list}",
    ev.CoatsChanged: "coats to be laid[ on {part}]: {coats} in all",
    ev.PartsChanged: "parts changed[, added: {add:list}][, dropped: {drop:list}]",
    ev.GunChanged: "gun changed[: {gun}][, tip {tip:tip}][, cup {cup:volume}]",
    ev.ProductBegun: "product {product} begun",
    ev.StepDone: "step done: {step}",
    ev.LineTicked: "done: {line}",
    ev.StepSkipped: "step skipped: {step}[, {why}]",
    ev.CautionAcknowledged: lambda e, _: f"caution acknowledged: {visible(e.words or e.caution)}",
    ev.WeatherRead: (
        "weather: air {air:temperature}, humidity {humidity:percent}, part {part:temperature}"
        "[, {source}]"
    ),
    ev.Poured: "poured into batch {batch}: {name} {amount:volume}",
    ev.BatchMixed: (
        "batch {batch} mixed[: {pours:pours}][, in all {total:volume}][, onto batch {onto}]"
        "[, whose rest holds {others:list}]"
    ),
    ev.BatchFinished: "batch {batch} finished",
    ev.ThinnerAdded: "thinner added: {amount:volume}[, to {remaining:volume}]",
    ev.StopwatchStarted: "stopwatch of the {stopwatch} started[, {what:cup}][, for {window_s:time}]",
    ev.StopwatchStopped: "stopwatch of the {stopwatch} stopped after {seconds:seconds}",
    ev.StopwatchDropped: "stopwatch of the {stopwatch} dropped",
    ev.EffluxTimed: (
        "efflux time {cup:cup}: {seconds:seconds}[, liquid at {liquid_temperature:temperature}]"
        "[, cup's correction {correction}]"
    ),
    ev.AirRead: "air: inlet {inlet:pressure}[, cap {cap:pressure}][, fan open {fan_turns:turns}]",
    ev.RecoveryTimed: (
        "receiver filled from {cut_in:pressure} to {cut_out:pressure} in {seconds:seconds}"
        "[, {receiver:receiver}][, rated {rated:air flow}]"
    ),
    ev.CatchMade: (
        "catch of {liquid}: {amount:volume} in {seconds:time}, delivery {delivery_ml_min:delivery}"
        "[, needle {turns:turns}][, inlet {inlet:pressure}][, tip {tip:tip}]"
    ),
    ev.FanSet: "fan set[, width {width:length}][, open {turns:turns}][, distance {distance:length}]",
    ev.PatternRead: (
        "pattern: {shape}[, zones {zones}][, overlap {overlap:percent}][, width {width:length}]"
    ),
    ev.PassTimed: "pass timed: {length:part length} in {seconds:seconds}",
    ev.CoatBegun: "coat {coat}[ on {part}] begun" + TIMELINESS,
    ev.CoatEnded: "coat {coat}[ on {part}] ended",
    ev.FilmRead: (
        "wet film[ on {part}][, coat {coat}]: over {last_wetted:thickness}, under "
        "{first_dry:thickness}"
    ),
    ev.TouchTried: "touched[ on {part}]: {result}",
    ev.AreaAdded: (
        "area[ on {part}]: {area:area}[, {number} of them][, {shape} {dimensions:part length}]"
    ),
    ev.AmountPlanned: "amount planned: {amount:volume} for {area:area}[, {lands} parts]",
    ev.FreshAirChecked: (
        "fresh air: at least {needed_m3_min:m3/min} against fire[, the room moves "
        "{moved_m3_min:m3/min}][, open front {face_m2:area}]"
    ),
    ev.FaultSeen: "fault seen[ on {part}]: {fault}",
    ev.FaultAnswered: lambda e, _: (
        f"{visible(e.fault)}: {_question(e.question)} {visible(e.answer)}"
    ),
    ev.NoteMade: "note[ on {part}]: {text}",
    ev.AlarmAcknowledged: "alarm silenced: {alarm}",
    ev.ClockNoticed: _clock,
    ev.AgeTold: "number {target}: {ago_s:time} before, as told while the clock was in doubt",
    ev.Voided: "number {target} voided",
    ev.Restored: "number {target} restored",
    ev.JudgedAgain: "looked at again[: {verdict}][, {words}][, next time: {next_time}]",
    ev.FinishedLater: "{work}[: {part}]",
    ev.LeftOut: "left out of what is learnt[: {reason}]",
    ev.TakenIn: "taken into what is learnt again",
    ev.JobClosed: (
        "job closed[: {verdict}][, {words}][, before the real can: {to_change:sentences}]"
        "[, next time: {next_time}]"
    ),
}

#: What is told in a way of its own.
SPECIAL: dict[str, Callable[[Any, System], str]] = {
    "": lambda value, system: _value(value, None, system),
    "cup": lambda key, _: cup_name(key),
    "list": lambda names, _: visible(", ".join(names)),
    "m3/min": lambda flow, system: show(flow * 60, Kind.EXHAUST, system),
    "pours": lambda pours, system: " + ".join(
        f"{visible(pour.name)} {quantity(pour.amount, Kind.VOLUME, system)}" for pour in pours
    ),
    "sentences": lambda said, _: visible(" ".join(said)),
    "seconds": lambda seconds, system: show(seconds, Kind.TIME, system, places=1),
    "time": duration,
    "unsaid": lambda *_: "",
}
#: A part in brackets, or a field.
_PIECE = re.compile(r"\[(?P<part>[^]]+)]|{(?P<field>\w+):?(?P<kind>[^}]*)}")


def filled(template: str, event: ev.Event, system: System) -> str:
    """The words of an event by its template; what a field holds is never read as one."""

    def piece(found: re.Match[str]) -> str:
        if found["part"] is not None:
            fields = [each["field"] for each in _PIECE.finditer(found["part"])]
            is_told = all(_is_said(event, field) for field in fields)
            return _PIECE.sub(piece, found["part"]) if is_told else ""
        value, kind = getattr(event, found["field"]), found["kind"]
        return (
            SPECIAL[kind](value, system) if kind in SPECIAL else _value(value, Kind(kind), system)
        )

    return _PIECE.sub(piece, template)


def _is_said(event: ev.Event, field: str) -> bool:
    value = getattr(event, field)
    return value not in (None, "", (), {}, _defaults(type(event))[field])


@cache
def _defaults(kind: type[ev.Event]) -> dict[str, Any]:
    return {each.name: each.default for each in msgspec.structs.fields(kind)}


def _value(value: object, kind: Kind | None, system: System) -> str:
    if isinstance(value, Quantity):
        return quantity(value, kind or Kind.RATIO, system)
    if isinstance(value, dict):
        sizes = ((visible(name), _value(each, kind, system)) for name, each in value.items())
        return ", ".join(f"{name} {size}" for name, size in sizes)
    if isinstance(value, tuple):
        return " ".join(_value(each, kind, system) for each in value)
    if kind is not None and isinstance(value, int | float):
        return show(value, kind, system)
    return f"{value:g}" if isinstance(value, float) else visible(str(value))


def _plainly(event: ev.Event, system: System) -> str:
    """Give an event without words of its own by the names of its fields."""
    names = [name for name in event.__struct_fields__ if name not in ("n", "at")]
    said = [
        f", {name.replace('_', ' ')} {_value(getattr(event, name), None, system)}"
        for name in names
        if _is_said(event, name)
    ]
    return f"{type(event).__struct_config__.tag}{''.join(said)}"
