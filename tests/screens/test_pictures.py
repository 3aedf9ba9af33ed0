"""The pictures of the README, drawn from the program itself: when the program looks different, this fails.

Draw them anew with: BOOTH_PICTURES=draw python -m pytest tests/screens/test_pictures.py
then look at them before you commit them.
"""

from __future__ import annotations

import os
import re
import time
from collections.abc import Awaitable, Callable, Sequence
from pathlib import Path

import pytest

from booth.clock import ManualClock
from booth.log import events as ev
from booth.moment import later
from booth.profile.model import Profile
from booth.profile.read import read_profile
from booth.units import Quantity, System
from booth.widgets.themes import OPEN_DOOR
from tests.instruments.at_bench import AtBench, at_bench

ROOT = Path(__file__).parents[2]
PICTURES = ROOT / "tests" / "pictures"


@pytest.fixture(autouse=True)
def utc(monkeypatch: pytest.MonkeyPatch) -> None:
    """Times of day on the pictures do not depend on where they are drawn."""
    monkeypatch.setenv("TZ", "UTC")
    time.tzset()


def clear() -> Profile:
    """The bundled two-pack clear."""
    found = read_profile(ROOT / "profiles" / "two-pack-clear.toml")
    assert isinstance(found, Profile)
    return found


def so_far(clock: ManualClock) -> Sequence[ev.Event]:
    """A Saturday morning until the gun is set. Invented."""
    start = clock.now()

    def q(value: float, unit: str) -> Quantity:
        return Quantity(value, unit, f"{value:g} {unit}")

    def done(*steps: str) -> list[ev.Event]:
        return [ev.StepDone(n=0, at=start, step=step) for step in steps]

    return [
        *done("cautions"),
        ev.WeatherRead(n=0, at=start, air=q(22.0, "degC"), humidity=q(48, "%"), part=q(21, "degC")),
        *done("weather", "fresh-air", "amount", "plan"),
        ev.BatchMixed(n=0, at=start, batch=1, total=q(600, "ml")),
        *done("mix"),
    ]


def clocks(clock: ManualClock) -> Sequence[ev.Event]:
    """The same, and three parts at different coats."""
    now = clock.now()
    events: list[ev.Event] = list(so_far(clock))
    for number, (part, ago) in enumerate(
        (("hood", 400.0), ("left door", 200.0), ("right door", 60.0))
    ):
        events.append(ev.CoatBegun(n=0, at=later(now, -ago - 70), part=part, coat=1))
        if number < 2:
            events.append(ev.CoatEnded(n=0, at=later(now, -ago), part=part, coat=1))
    return events


async def coats(desk: AtBench) -> None:
    await desk.pass_time(7)


async def cup(desk: AtBench) -> None:
    for seconds in (21.4, 21.9, 21.6):
        await desk.press("space")
        await desk.pass_time(seconds)
        await desk.press("space")
    await desk.pilot.pause()


async def catch(desk: AtBench) -> None:
    await desk.press("space")
    await desk.pass_time(26)


async def pattern(desk: AtBench) -> None:
    await desk.pilot.pause()


async def film(desk: AtBench) -> None:
    while "BOTH ENDS" not in desk.text:
        await desk.press("right")
        await desk.pilot.pause()
    await desk.press("down", "down")
    await desk.pilot.pause()


SCENES: dict[str, tuple[str, Callable[[AtBench], Awaitable[None]], tuple[int, int]]] = {
    "coats": ("coats", coats, (80, 24)),
    "cup": ("efflux", cup, (80, 24)),
    "catch": ("catch", catch, (80, 24)),
    "pattern": ("pattern", pattern, (100, 30)),
    "film": ("pattern", film, (100, 30)),
    "bright": ("coats", coats, (100, 30)),
}


def alike(svg: str) -> str:
    """The picture without what differs from run to run and means nothing."""
    return re.sub(r"terminal-\d+-", "terminal-", svg)


@pytest.mark.parametrize("name", SCENES)
async def test_the_readme_shows_the_program_as_it_looks(name: str) -> None:
    step, act, size = SCENES[name]
    async with at_bench(
        step,
        profile=clear(),
        before=clocks if step == "coats" else so_far,
        parts=("left door", "right door", "hood"),
        system=System.US,
        size=size,
    ) as desk:
        if name == "bright":
            desk.app.theme = OPEN_DOOR.name
            await desk.pilot.pause()
        await act(desk)
        drawn = desk.app.export_screenshot(title="booth")
    path = PICTURES / f"{name}.svg"
    if os.environ.get("BOOTH_PICTURES") == "draw":
        PICTURES.mkdir(exist_ok=True)
        path.write_text(drawn, "utf-8")
    assert alike(path.read_text("utf-8")) == alike(drawn), (
        f"{path.name} no longer shows the program; see the top of this file"
    )


def test_every_picture_of_the_readme_is_drawn_here() -> None:
    shown = set(re.findall(r"tests/pictures/(\w+)\.svg", (ROOT / "README.md").read_text("utf-8")))
    assert shown == set(SCENES)
