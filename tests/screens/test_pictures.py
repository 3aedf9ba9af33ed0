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

from booth.log import events as ev
from booth.moment import later
from booth.profile.model import Profile
from booth.profile.read import read_profile
from booth.units import Quantity
from booth.widgets.themes import OPEN_DOOR
from tests.long_day import long_day
from tests.manual_clock import ManualClock
from tests.screens.at_app import AtApp, at_bench

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
    """The same; two parts flash off, the third is still to be coated."""
    now = clock.now()
    events: list[ev.Event] = list(so_far(clock))
    for part, ago in (("hood", 260.0), ("left door", 120.0)):
        events.append(ev.CoatBegun(n=0, at=later(now, -ago - 70), part=part, coat=1))
        events.append(ev.CoatEnded(n=0, at=later(now, -ago), part=part, coat=1))
    return events


async def coats(at: AtApp) -> None:
    await at.pass_time(7)


async def cup(at: AtApp) -> None:
    for seconds in (21.4, 21.9, 21.6):
        await at.press("space")
        await at.pass_time(seconds)
        await at.press("space")


async def catch(at: AtApp) -> None:
    await at.press("space")
    for seconds in (1, 1, 1, 23):
        await at.pass_time(seconds)


async def pattern(at: AtApp) -> None:
    await at.settle()


async def film(at: AtApp) -> None:
    for _ in range(20):
        if "BOTH ENDS" in at.text:
            break
        await at.press("right")
    await at.press("down", "down")


async def quiet(at: AtApp) -> None:
    """What rings is silenced."""
    for _ in range(12):
        if "silences" in at.text:
            await at.press("escape")
            await at.pass_time(1)


SCENES: dict[str, tuple[str, Callable[[AtApp], Awaitable[None]], tuple[int, int]]] = {
    "coats": ("coats", coats, (80, 24)),
    "cup": ("efflux", cup, (80, 24)),
    "catch": ("catch", catch, (80, 24)),
    "pattern": ("pattern", pattern, (100, 30)),
    "film": ("pattern", film, (100, 30)),
    "bright": ("coats", coats, (100, 30)),
    "large": ("catch", quiet, (160, 44)),
}


def bare(svg: str) -> str:
    """The picture by itself: it fetches no font, names no maker, and is the same from run to run."""
    svg = re.sub(r"<!--.*?-->", "", svg, flags=re.DOTALL)
    svg = re.sub(r"@font-face \{.*?\}\s*", "", svg, flags=re.DOTALL)
    svg = re.sub(r"terminal-\d+-", "terminal-", svg)
    svg = re.sub(r"font-family: [^;]*monospace;", "font-family: monospace;", svg)
    svg = re.sub(r"font-family: arial;", "font-family: sans-serif;", svg)
    return "\n".join(line.rstrip() for line in svg.splitlines() if line.strip()) + "\n"


@pytest.mark.parametrize("name", SCENES)
async def test_the_readme_shows_the_program_as_it_looks(name: str) -> None:
    step, act, size = SCENES[name]
    clock = ManualClock()
    before = clocks(clock) if step == "coats" else so_far(clock)
    if name == "large":
        before = long_day(clock)
    parts = ("left door", "right door", "hood")
    async with at_bench(step, *before, profile=clear(), parts=parts, clock=clock, size=size) as at:
        if name == "bright":
            at.app.theme = OPEN_DOOR.name
            await at.settle()
        await act(at)
        drawn = bare(at.app.export_screenshot(title="booth"))
    path = PICTURES / f"{name}.svg"
    if os.environ.get("BOOTH_PICTURES") == "draw":
        PICTURES.mkdir(exist_ok=True)
        path.write_text(drawn, "utf-8")
    assert path.read_text("utf-8") == drawn, (
        f"{path.name} no longer shows the program; see the top of this file"
    )


@pytest.mark.parametrize("name", SCENES)
def test_a_picture_fetches_nothing(name: str) -> None:
    svg = (PICTURES / f"{name}.svg").read_text("utf-8")
    assert re.findall(r"\w+://[^\s\"']+", svg) == ["http://www.w3.org/2000/svg"]
    assert "@font-face" not in svg and "url(http" not in svg


def test_every_picture_of_the_readme_is_drawn_here() -> None:
    shown = set(re.findall(r"tests/pictures/(\w+)\.svg", (ROOT / "README.md").read_text("utf-8")))
    assert shown == set(SCENES)
