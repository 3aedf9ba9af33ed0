"""Walks through the steps of a job: empty, measured, while they are worked."""

from __future__ import annotations

from booth.job.steps import steps_of
from booth.log import events as ev
from tests.manual_clock import ManualClock
from tests.screens.at_app import AtApp
from tests.screens.gallery.kept import measured, mixed, weather
from tests.screens.gallery.taking import Gallery


def _has_kept(at: AtApp, kind: type[ev.Event]) -> bool:
    return any(isinstance(event, kind) for event in at.bench.desk.job.live)


async def empty_steps(gallery: Gallery) -> None:
    """Every step of a job in which nothing was done."""
    async with gallery.bench("cautions") as at:
        for step in steps_of(at.bench.desk.job):
            await at.open_step(step.key)
            await gallery.take(at, step.key)


async def done_steps(gallery: Gallery) -> None:
    """Every step of a job in which everything was measured."""
    clock = ManualClock()
    async with gallery.bench("cautions", *measured(clock), clock=clock) as at:
        for step in steps_of(at.bench.desk.job):
            await at.open_step(step.key)
            await gallery.take(at, step.key)


async def working(gallery: Gallery) -> None:
    """Steps while they are worked: typed, running, poured, refused."""
    clock = ManualClock()
    async with gallery.bench("cautions", clock=clock) as at:
        await at.press("space", "space")
        await gallery.take(at, "cautions-half-read")
        await at.open_step("weather")
        await at.type("72")
        await at.press("enter")
        await at.type("50")
        await gallery.take(at, "weather-typed")
        await at.press("enter")
        await at.type("7x")
        await at.press("enter")
        await gallery.take(at, "weather-not-understood")
        await at.press("backspace", "1", "enter")
        await gallery.take(at, "weather-kept")
        await at.press("backspace")
        await gallery.take(at, "weather-voided")
        await at.press("backspace")
        await at.open_step("amount")
        for typed in ("3", "4"):
            await at.type(typed)
            await at.press("enter")
        await gallery.take(at, "amount-added")
        await at.press("down", "down", "down", "down")
        await gallery.take(at, "amount-assumed")
        await at.open_step("mix")
        await at.type("600 ml")
        await at.press("enter")
        await gallery.take(at, "mix-first-pour")
        await at.press("space")
        await at.type("560")
        await gallery.take(at, "mix-over-poured")
        await at.press("enter")
        await gallery.take(at, "mix-rescue")
        await at.press("space", "space", "space")
        await gallery.take(at, "mix-mixed")
    clock = ManualClock()
    async with gallery.bench("efflux", weather(clock.now()), mixed(clock.now()), clock=clock) as at:
        await at.press("space")
        await at.pass_time(12.3)
        await gallery.take(at, "cup-running")
        await at.pass_time(15.1)
        await at.press("space")
        await gallery.take(at, "cup-too-thick")
        await at.press("space")
        await at.pass_time(26.9)
        await at.press("space")
        await at.open_step("thin")
        await gallery.take(at, "thin-advised")
        await at.open_step("catch")
        await at.press("space")
        await at.pass_time(1)
        await gallery.take(at, "catch-get-ready")
        for seconds in (1, 1, 20):
            await at.pass_time(seconds)
        await gallery.take(at, "catch-running")
        await at.pass_time(40)
        await gallery.take(at, "catch-stop")
        await at.until(lambda: "caught for" in at.text)
        await at.type("6.2")
        await gallery.take(at, "catch-typed")
        await at.press_until("enter", lambda: _has_kept(at, ev.CatchMade))
        await gallery.take(at, "catch-low")
        await at.open_step("pattern")
        for _ in range(12):
            if "heavy at both ends ▸" in at.text:
                break
            await at.press("right")
        await gallery.take(at, "pattern-both-ends")
        await at.press("down", "down")
        await gallery.take(at, "pattern-film")
        await at.open_step("pace")
        await gallery.take(at, "pace")
        await at.press("space")
        await at.pass_time(0.7)
        await gallery.take(at, "pace-running")
        await at.press("space")
        await at.open_step("faults")
        await gallery.take(at, "faults-list")
        await at.press("space")
        await gallery.take(at, "faults-causes")
