"""Walks over coats and waits: what is amiss before one, every kind of alarm."""

from __future__ import annotations

from booth.moment import later
from tests.manual_clock import ManualClock
from tests.screens.gallery.kept import PARTS, coat, mixed, weather
from tests.screens.gallery.taking import Gallery


async def coats(gallery: Gallery) -> None:
    """Coats and waits, what is amiss before one, and every kind of alarm."""
    clock = ManualClock()
    now = clock.now()
    before = (weather(now), mixed(later(now, -1200)))
    three = tuple(
        each for n, part in enumerate(PARTS[:3]) for each in coat(later(now, -160 * n), part)
    )
    async with gallery.bench("coats", *before, clock=clock) as at:
        await gallery.take(at, "first")
        await at.press("space")
        await at.pass_time(47)
        await gallery.take(at, "spraying")
        await at.press("space")
        await gallery.take(at, "ended")
    clock = ManualClock()
    async with gallery.bench("coats", *before, *three, clock=clock) as at:
        await at.pass_time(31)
        await gallery.take(at, "three-waiting")
        await at.press("up", "up")
        await gallery.take(at, "another-part")
        await at.press("space")
        await gallery.take(at, "too-early-asked")
        await at.press("right")
        await gallery.take(at, "more")
        await at.press("escape", "f12")
        await gallery.take(at, "change")
        await at.press("escape", "f6")
        await gallery.take(at, "skip")
        await at.press("escape", "f2")
        await gallery.take(at, "note")
        await at.type("dust")
        await gallery.take(at, "note-own-words")
        await at.press("escape", "escape")
        await at.press("f4")
        await gallery.take(at, "log")
        await at.press("escape", "f1")
        await gallery.take(at, "help")
        await at.press("escape")
        await gallery.palette(at)
        for _ in range(7):
            await at.press("up")
        await gallery.take(at, "list-of-steps")
    await _amiss(gallery)
    await _alarms(gallery)


async def _amiss(gallery: Gallery) -> None:
    clock = ManualClock()
    now = clock.now()
    async with gallery.bench(
        "coats", weather(now, 12.0, 8.0), mixed(later(now, -14000)), clock=clock
    ) as at:
        await gallery.take(at, "cold-and-pot-over")
        await at.press("space")
        await gallery.take(at, "amiss-asked")
    clock = ManualClock()
    async with gallery.bench("coats", *coat(clock.now(), "hood"), clock=clock) as at:
        await at.pass_time(20)
        await gallery.take(at, "no-weather")


async def _alarms(gallery: Gallery) -> None:
    clock = ManualClock()
    now = clock.now()
    two = (*coat(now, "hood"), *coat(later(now, -45), "left door"))
    async with gallery.bench("weather", weather(now), *two, clock=clock) as at:
        await at.pass_time(600)
        await gallery.take(at, "alarm-ready")
        await at.press("f2")
        await gallery.take(at, "alarm-strip-over-menu")
    for number, name in enumerate(("go-on", "hurry", "too-late", "stop")):
        clock = ManualClock()
        async with gallery.bench("weather", clock=clock) as at:
            await at.press("f8")
            for _ in range(number):
                await at.pass_time(2)
                await at.press("escape")
            await gallery.take(at, f"alarm-rehearsed-{name}")
    clock = ManualClock()
    async with gallery.bench(
        "efflux", weather(clock.now()), *coat(clock.now(), "hood"), clock=clock
    ) as at:
        await at.pass_time(470)
        await at.press("space")
        await at.pass_time(12.4)
        await gallery.take(at, "alarm-strip-over-cup")
    for after_s, name in ((86400 * 0.97, "closing"), (90000, "closed")):
        clock = ManualClock()
        async with gallery.bench(
            "coats", weather(clock.now()), *coat(clock.now(), "hood"), clock=clock
        ) as at:
            await at.pass_time(600)
            await at.pass_time(2)
            await at.press("escape")
            await at.pass_time(after_s)
            await gallery.take(at, f"alarm-{name}")
            await at.pass_time(2)
            await at.press("escape")
            await gallery.take(at, f"after-alarm-{name}")
