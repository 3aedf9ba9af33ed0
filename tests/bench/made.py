"""Made-up logs for the benchmarks. All of it invented."""

from __future__ import annotations

import random
from pathlib import Path

from msgspec.structs import replace

from booth.clock import MachineClock
from booth.log import codec
from booth.log import events as ev
from booth.moment import Moment, later, utc_text
from booth.profile.steps import steps_for
from tests.job.make import mild, opened, q


def _write(path: Path, events: list[ev.Event]) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(b"".join(codec.encode(event) for event in events))


def open_step(folder: Path, kind: str) -> None:
    """One open job whose current step is the first of that kind; a catch and a fan are measured."""
    now = MachineClock().now()
    first = replace(opened(("part 1",)), at=now)
    caught = ev.CatchMade(
        n=2, at=now, seconds=30.0, amount=q(90, "ml"), delivery_ml_min=180.0, liquid="paint"
    )
    fan = ev.FanSet(n=3, at=now, width=q(250, "mm"), distance=q(200, "mm"))
    events: list[ev.Event] = [first, caught, fan]
    for step in steps_for(first.profile):
        if step.kind == kind:
            break
        events.append(ev.StepDone(n=len(events) + 1, at=now, step=step.key))
    _write(folder / "20260101-0000-step-0000.jsonl", events)


def eight_clocks(folder: Path) -> None:
    """One open job: eight parts in flash-off, its current step the coats."""
    now = MachineClock().now()
    parts = tuple(f"part {number}" for number in range(1, 9))
    first = replace(opened(parts), at=now)
    events: list[ev.Event] = [first]
    for step in steps_for(first.profile):
        if step.kind == "coats":
            break
        events.append(ev.StepDone(n=len(events) + 1, at=now, step=step.key))
    for number, part in enumerate(parts):
        begun = later(now, float(number))
        events.append(ev.CoatBegun(n=len(events) + 1, at=begun, part=part, coat=1))
        events.append(ev.CoatEnded(n=len(events) + 1, at=begun, part=part, coat=1))
    _write(folder / "20260101-0000-eight-0000.jsonl", events)


PRODUCTS = ("Trial clear", "Epoxy test primer", "Silver test base")
GUNS = ("Blue gun", "Small gun", "")
PARTS = ("left door", "right door", "hood", "tank", "fender", "24 cabinet doors")
FAULTS = ("runs", "dust", "orange-peel")
LESSONS = ("one turn less on the needle", "wet the floor", "hang the door higher", "")
NOTES = ("the compressor ran all the time", "cans: lot 4711 and 4712", "filter changed at noon")
#: So many entries has a job of these; what is over is filled up with runs of the cup.
ENTRIES = 100


def many_jobs(folder: Path, count: int) -> None:
    """So many closed jobs of a hundred entries, the newest of yesterday, six hours apart."""
    now = MachineClock().now()
    for number in range(count):
        chance = random.Random(number)
        begun = Moment(now.wall - 86400.0 - 21600.0 * number, 1000.0, "old")
        name = f"{utc_text(begun, '%Y%m%d-%H%M', '')}-trial-{number:04x}.jsonl"
        _write(folder / name, a_job(number, begun, chance))


def a_job(number: int, begun: Moment, chance: random.Random) -> list[ev.Event]:
    """One of them: measured, sprayed in two coats, read, judged."""
    product = PRODUCTS[number % 3]
    parts = tuple(chance.sample(PARTS, 1 + number % 2))
    key = product.lower().replace(" ", "-")
    first = opened(parts, key=key, name=product)
    gun = GUNS[chance.randrange(3)]
    events: list[ev.Event] = [
        replace(first, at=begun, job=f"trial-{number:04x}", gun=gun),
        replace(mild(air=18 + chance.randrange(9), humidity=40 + chance.randrange(30)), at=begun),
        ev.AirRead(n=0, at=begun, inlet=q(190 + chance.randrange(20), "kPa")),
        ev.NoteMade(n=0, at=begun, text=NOTES[chance.randrange(3)]),
    ]
    for _ in range(2):
        caught = chance.gauss(200, 8)
        made = {"amount": q(caught / 2, "ml"), "delivery_ml_min": caught, "turns": q(1.5, "turns")}
        events.append(ev.CatchMade(n=0, at=later(begun, 300.0), seconds=30, **made))  # type: ignore[arg-type]
    at_s = 900.0
    for coat in (1, 2):
        for part in parts:
            ended = later(begun, at_s + chance.gauss(180, 15))
            dry = 50 + 5 * chance.randrange(3)
            teeth = {"last_wetted": q(dry - 5, "um"), "first_dry": q(dry, "um")}
            events += [
                ev.CoatBegun(n=0, at=later(begun, at_s), part=part, coat=coat),
                ev.CoatEnded(n=0, at=ended, part=part, coat=coat),
                ev.FilmRead(n=0, at=ended, part=part, coat=coat, **teeth),  # type: ignore[arg-type]
            ]
            at_s += 300.0
        at_s += chance.gauss(600, 40)
    fault = [ev.FaultSeen(n=0, at=later(begun, at_s), fault=FAULTS[number % 3], part=parts[0])]
    end = later(begun, at_s + 600.0)
    verdict = ("good", "good", "usable", "redo")[chance.randrange(4)]
    close = ev.JobClosed(n=0, at=end, verdict=verdict, next_time=LESSONS[chance.randrange(4)])
    last = [*(fault if verdict != "good" else []), close]
    runs = ENTRIES - len(events) - len(last)
    cup = chance.gauss(21, 0.5)
    timed = [
        ev.EffluxTimed(n=0, at=later(begun, 60.0), cup="ford-4", seconds=chance.gauss(cup, 0.2))
        for _ in range(runs)
    ]
    every = [*events[:4], *timed, *events[4:], *last]
    return [replace(event, n=n) for n, event in enumerate(every, 1)]
