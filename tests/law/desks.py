"""Benches to press keys on: every instrument, on jobs that have come differently far."""

from __future__ import annotations

import copy
from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import cache
from typing import NamedTuple

from booth.bench.model import Bench
from booth.forms.form import Field, Form, Row
from booth.instruments.registry import instruments
from booth.job.steps import NEXT_PRODUCT, steps_of
from booth.log import events as ev
from booth.profile.model import Step
from booth.profile.rehearsed import WITH_WATER
from booth.profile.steps import DEFAULT_STEPS
from booth.shop.model import Compressor, Gun, Room, Shop
from booth.units import Kind, System
from tests.instruments.at_bench import AtBench
from tests.job.make import profile as trial
from tests.job.make import q
from tests.manual_clock import ManualClock

SHOP = Shop(
    guns=(Gun("grey gravity gun", tip_mm=1.4, cup_ml=600, air_l_min=200, fan_turns=2.5),),
    compressor=Compressor(receiver_l=50, flow_l_min=150, cut_in_kpa=550, cut_out_kpa=800),
    room=Room(volume_m3=60, exhaust_m3_min=40),
)


def nothing(clock: ManualClock) -> Sequence[ev.Event]:
    """A job of which nothing is done."""
    return ()


def everything(clock: ManualClock) -> Sequence[ev.Event]:
    """A job in which every instrument has kept something."""
    at = clock.now()
    pours = (ev.Pour("clear", q(200, "ml")), ev.Pour("hardener", q(100, "ml")))
    return (
        ev.CautionAcknowledged(n=0, at=at, caution="data sheet", words="Read it. It rules."),
        ev.WeatherRead(n=0, at=at, air=q(20, "degC"), humidity=q(50, "%"), part=q(18, "degC")),
        ev.FreshAirChecked(n=0, at=at, needed_m3_min=30.0, moved_m3_min=40.0),
        ev.AreaAdded(n=0, at=at, shape="area", area=q(2, "m2"), part="door"),
        ev.AmountPlanned(n=0, at=at, area=q(2, "m2"), amount=q(600, "ml")),
        ev.BatchMixed(n=0, at=at, batch=1, pours=pours, total=q(300, "ml")),
        ev.EffluxTimed(n=0, at=at, cup="ford-4", seconds=26.0),
        ev.ThinnerAdded(n=0, at=at, amount=q(20, "ml"), remaining=q(300, "ml")),
        ev.EffluxTimed(n=0, at=at, cup="ford-4", seconds=22.0),
        ev.AirRead(n=0, at=at, inlet=q(195, "kPa")),
        ev.CatchMade(n=0, at=at, seconds=30.0, amount=q(90, "ml"), delivery_ml_min=180.0),
        ev.FanSet(n=0, at=at, width=q(250, "mm"), distance=q(180, "mm")),
        ev.PatternRead(n=0, at=at, shape="heavy middle", overlap=q(50, "%")),
        ev.PassTimed(n=0, at=at, length=q(1, "m"), seconds=2.0),
        ev.CoatBegun(n=0, at=at, part="door", coat=1),
        ev.CoatEnded(n=0, at=at, part="door", coat=1),
        ev.FilmRead(
            n=0, at=at, part="door", last_wetted=q(50, "um"), first_dry=q(60, "um"), coat=1
        ),
        ev.LineTicked(n=0, at=at, step="clean", line=step_of_kind("clean").how[0]),
        ev.FaultSeen(n=0, at=at, fault="runs", part="door"),
        ev.NoteMade(n=0, at=at, text="wind from the door"),
    )


def changed(clock: ManualClock) -> Sequence[ev.Event]:
    """A job to which a rack came, one side of it sprayed, and in which gun and coats changed."""
    at, rack = clock.now(), ev.Rack("doors", 24, 2)
    return (
        *everything(clock),
        ev.PartsChanged(n=0, at=at, add=rack.parts, drop=("hood",), racks=(rack,)),
        ev.CoatsChanged(n=0, at=at, coats=4, part="door"),
        ev.GunChanged(n=0, at=at, gun="red gun", tip=q(1.2, "mm")),
        ev.CoatBegun(n=0, at=at, part=rack.parts[0], coat=1),
        ev.CoatEnded(n=0, at=at, part=rack.parts[0], coat=1),
    )


def with_water(clock: ManualClock) -> Sequence[ev.Event]:
    """A rehearsal in which every step was done."""
    at = clock.now()
    return (
        ev.AirRead(n=0, at=at, inlet=q(150, "kPa")),
        ev.CatchMade(
            n=0, at=at, seconds=60.0, amount=q(90, "ml"), delivery_ml_min=90.0, liquid="water"
        ),
        ev.FanSet(n=0, at=at, width=q(150, "mm"), distance=q(180, "mm")),
        ev.PatternRead(n=0, at=at, shape="crescent", overlap=q(50, "%")),
        *(ev.PassTimed(n=0, at=at, length=q(1, "m"), seconds=s) for s in (1.0, 4.0, 2.0)),
        ev.CoatBegun(n=0, at=at, part="door", coat=1),
        ev.CoatEnded(n=0, at=at, part="door", coat=1),
    )


#: The kinds that ask for parts, coats or the gun.
OF_CHANGES = ("amount", "catch", "coats", "fan", "faults", "film", "next-product", "plan")
#: Of which kinds something is seen that the other jobs do not show.
KINDS_OF: dict[str, Iterable[str]] = {"changed": OF_CHANGES, "with water": WITH_WATER}
BEFORE: dict[str, Callable[[ManualClock], Sequence[ev.Event]]] = {
    "nothing": nothing,
    "everything": everything,
    "changed": changed,
    "with water": with_water,
}
#: How often Space was pressed, and how long ago [s].
STARTED = {"at rest": (), "started": (4.0,), "stopped": (20.0, 4.0), "forgotten": (8000.0,)}


def step_of_kind(kind: str) -> Step:
    """The usual step of a kind; one of its own where no job has it by default."""
    found = next((step for step in DEFAULT_STEPS if step.kind == kind), None)
    return found or Step(key=kind, kind=kind, name="Sweep", how=("Sweep the floor.",))


def desk_for(kind: str, before: str = "nothing", started: str = "at rest") -> AtBench:
    """A bench whose open step is of this kind, to do with as one likes."""
    return twin(_desk_for(kind, before, started))


@cache
def _desk_for(kind: str, before: str, started: str) -> AtBench:
    system = System.US if before == "everything" else System.METRIC
    later = (trial(key="second", name="Second product"),) if kind == NEXT_PRODUCT else ()
    desk = AtBench(
        "coats",
        before=BEFORE[before],
        shop=SHOP,
        system=system,
        later=later,
        rehearsal=before == "with water",
    )
    desk.bench.step = next(
        (step for step in steps_of(desk.job) if step.kind == kind), step_of_kind(kind)
    )
    for since in STARTED[started]:
        desk.press("space")
        desk.pass_time(since)
    return desk


def every_kind() -> list[str]:
    return sorted(instruments())


def states() -> Iterator[tuple[str, str, str]]:
    """Kind, what was done before, what Space started: those that differ from one another."""
    for kind in every_kind():
        for before in BEFORE:
            if kind not in KINDS_OF.get(before, (kind,)):
                continue
            known: list[object] = []
            for started in STARTED:
                desk = desk_for(kind, before, started)
                running = desk.job.stopwatches or any(map(desk.job.running_coat, desk.job.parts))
                state = (len(desk.log), desk.bench.form, started == "forgotten" and bool(running))
                if state not in known:
                    known.append(state)
                    yield kind, before, started


def twin(desk: AtBench) -> AtBench:
    """The same bench once more: what is done to it leaves the first as it is."""
    other = copy.copy(desk)
    other.clock, other.events = copy.copy(desk.clock), list(desk.events)
    other.sounds, other.rest = [], ()
    other.bench = Bench(other, desk.bench.step)
    for name in ("form", "picked", "offer", "said"):
        setattr(other.bench, name, getattr(desk.bench, name))
    return other


class Case(NamedTuple):
    """A bench in one state of its form. what: which row, and what was put into it."""

    what: str
    desk: AtBench
    touched: bool = True


GOOD = {
    Kind.TEMPERATURE: "20",
    Kind.PERCENT: "50",
    Kind.TIME: "30",
    Kind.THICKNESS: "50",
    Kind.PRESSURE: "200",
    Kind.LENGTH: "250",
    Kind.TURNS: "2",
    Kind.TIP: "1.4",
}


def good_entry(field: Field) -> str:
    """What can be understood in a row that is typed in."""
    if field.digits is not None:
        return "3567653"
    if field.is_words:
        return "dust 2"
    return GOOD.get(field.kind, "3") if field.kind is not None and not field.amount else "90"


def bad_entry(field: Field) -> str:
    """What cannot; a row for words takes everything."""
    if field.digits is not None:
        return "35"
    return "" if field.is_words else "3zz"


def cases(desk: AtBench) -> Iterator[Case]:
    """Every row of the form, those that are assumed too: untouched, turned, well and badly filled."""
    yield Case("as it was left", desk, touched=desk.bench.form.texts != {})
    opened = twin(desk)
    opened.bench.form = Form(chosen=desk.bench.form.chosen, opened=True)
    for row in opened.rows.sight:
        yield Case(f"{row.key}: marked", _marked(opened, row), touched=False)
        if row.field.choices:
            turned = _marked(opened, row)
            turned.press("right")
            yield Case(f"{row.key}: turned", turned)
            continue
        for typed in (good_entry(row.field), bad_entry(row.field)):
            if typed:
                filled = _marked(opened, row)
                filled.type(typed)
                assert filled.row(row.key).text == typed, f"{row.key} does not take {typed!r}"
                yield Case(f"{row.key}: {typed!r}", filled)
                yield from _elsewhere(f"{row.key}: {typed!r}", filled, row.key)


def _elsewhere(what: str, filled: AtBench, key: str) -> Iterator[Case]:
    """The same with another row marked, if there is one in sight: the first."""
    other = next((row for row in filled.rows.sight if row.key != key), None)
    if other is not None:
        yield Case(f"{what}, then {other.key} marked", _marked(filled, other))


def _marked(desk: AtBench, row: Row) -> AtBench:
    other = twin(desk)
    other.bench.mark(row.key)
    return other
