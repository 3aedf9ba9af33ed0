"""Pictures of every screen, to be looked at: python -m tests.screens.gallery FOLDER [WALK ...]

In three windows, in both themes, the main ones in sixteen colours and without colour too. The jobs are
invented. A file is called WALK-SCREEN.COLUMNSxROWS.LOOK.svg.
"""

from __future__ import annotations

import asyncio
import os
import sys
import tempfile
import time
from collections.abc import Awaitable, Callable, Iterable, Sequence
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any
from unittest.mock import patch

from rich.color import Color, ColorSystem

from booth.job.steps import steps_of
from booth.log import events as ev
from booth.log.errors import NotKept
from booth.log.session import Session
from booth.moment import Moment, later
from booth.profile.library import load_folder
from booth.profile.model import Profile
from booth.profile.system import CoatingSystem, load_systems
from booth.shop.model import Shop
from booth.shop.read import read_shop_text
from booth.widgets.themes import DARK_BOOTH, OPEN_DOOR
from tests.job.make import q
from tests.manual_clock import ManualClock
from tests.screens.at_app import AtApp, a_job, at_app, at_bench
from tests.screens.drawn import Palette, full, screen_of, still
from tests.screens.test_fits import PROFILES, bundled
from tests.shop.made import WHOLE

SIZES = ((80, 24), (100, 30), (200, 50))
PARTS = ("left door", "right door", "hood", "fuel flap", "mirror shells")
#: The colours of a terminal that has sixteen: those of the first colour terminals for IBM PCs.
SIXTEEN = (
    *("#000000", "#aa0000", "#00aa00", "#aa5500", "#0000aa", "#aa00aa", "#00aaaa", "#aaaaaa"),
    *("#555555", "#ff5555", "#55ff55", "#ffff55", "#5555ff", "#ff55ff", "#55ffff", "#ffffff"),
)


def sixteen(color: Color) -> str:
    """What a terminal of sixteen colours makes of it."""
    near = color.downgrade(ColorSystem.STANDARD)
    return SIXTEEN[near.number or 0]


LOOKS: dict[str, tuple[str, Palette]] = {
    "dark": (DARK_BOOTH.name, full),
    "bright": (OPEN_DOOR.name, full),
    "dark16": (DARK_BOOTH.name, sixteen),
    "bright16": (OPEN_DOOR.name, sixteen),
}
#: Without colour the program is another one from its start.
NO_COLOR = {"none": LOOKS["dark"]}


class Gallery:
    """One window's pictures: what a walk needs to take them."""

    def __init__(
        self, folder: Path, size: tuple[int, int], walk: str, looks: Iterable[str]
    ) -> None:
        self.folder, self.size, self.walk = folder, size, walk
        self.home = os.environ["BOOTH_HOME"]
        every = LOOKS | NO_COLOR
        self.looks = {look: every[look] for look in looks}
        self.taken: list[Path] = []

    async def take(self, at: AtApp, name: str) -> None:
        """Take what is on the screen, in every look."""
        for look, (theme, palette) in self.looks.items():
            if at.app.theme != theme:
                at.app.theme = theme
                await at.settle()
            wide, high = self.size
            path = self.folder / f"{self.walk}-{name}.{wide}x{high}.{look}.svg"
            path.write_text(still(screen_of(at.app, palette)), "utf-8")
            self.taken.append(path)
        at.app.theme = next(iter(self.looks.values()))[0]
        await at.settle()

    def app(self, **given: Any) -> AbstractAsyncContextManager[AtApp]:
        """The program at its first screen, with the profiles that come with it."""
        return at_app(size=self.size, bundled=True, **given)

    def bench(
        self, step: str, *before: ev.Event, parts: tuple[str, ...] = PARTS, **given: Any
    ) -> AbstractAsyncContextManager[AtApp]:
        """A job with the bundled two-pack clear and a whole shop, alone on the disk."""
        os.environ["BOOTH_HOME"] = tempfile.mkdtemp(dir=self.home)
        usual = {"profile": bundled("two-pack-clear"), "shop": whole_shop(), "gun": "clear gun"}
        return at_bench(step, *before, parts=parts, size=self.size, **(usual | given))


def whole_shop() -> Shop:
    return read_shop_text(WHOLE, "shop.toml").shop


# -- what was kept before a walk begins; invented --------------------------------------------------


def weather(at: Moment, air: float = 22.0, part: float = 21.0) -> ev.WeatherRead:
    return ev.WeatherRead(n=0, at=at, air=q(air, "degC"), humidity=q(48, "%"), part=q(part, "degC"))


def coat(at: Moment, part: str, number: int = 1, took_s: float = 70.0) -> tuple[ev.Event, ev.Event]:
    """A coat that ended then."""
    return (
        ev.CoatBegun(n=0, at=later(at, -took_s), part=part, coat=number),
        ev.CoatEnded(n=0, at=at, part=part, coat=number),
    )


def mixed(at: Moment) -> ev.BatchMixed:
    pours = tuple(
        ev.Pour(name, q(amount, "ml"))
        for name, amount in (("clear", 364), ("hardener", 182), ("medium thinner", 55))
    )
    return ev.BatchMixed(n=0, at=at, batch=1, pours=pours, total=q(600, "ml"))


def measured(clock: ManualClock) -> Sequence[ev.Event]:
    """A morning in which everything was measured once."""
    now = clock.now()
    start = later(now, -2400)
    caught = {"amount": q(136, "ml"), "delivery_ml_min": 272.0, "liquid": "paint"}
    return (
        *(ev.StepDone(n=0, at=start, step=step) for step in ("cautions", "prepare", "fresh-air")),
        weather(later(now, -600)),
        ev.AreaAdded(n=0, at=start, shape="area", area=q(2.4, "m2")),
        ev.AmountPlanned(n=0, at=start, area=q(2.4, "m2"), amount=q(600, "ml")),
        mixed(later(start, 300)),
        *(
            ev.EffluxTimed(n=0, at=later(start, 400 + n), cup="ford-4", seconds=seconds)
            for n, seconds in enumerate((26.4, 26.1))
        ),
        ev.ThinnerAdded(n=0, at=later(start, 500), amount=q(20, "ml"), remaining=q(590, "ml")),
        *(
            ev.EffluxTimed(n=0, at=later(start, 600 + n), cup="ford-4", seconds=seconds)
            for n, seconds in enumerate((21.4, 21.9, 21.6))
        ),
        ev.AirRead(n=0, at=later(start, 700), inlet=q(195, "kPa")),
        ev.CatchMade(n=0, at=later(start, 800), seconds=30.0, **caught),  # type: ignore[arg-type]
        ev.FanSet(n=0, at=later(start, 900), width=q(270, "mm"), distance=q(180, "mm")),
        ev.PatternRead(n=0, at=later(start, 1000), shape="even", overlap=q(50, "%")),
        ev.PassTimed(n=0, at=later(start, 1100), length=q(1, "m"), seconds=2.5),
        *coat(later(now, -300), "hood"),
        *coat(later(now, -160), "left door"),
        ev.FilmRead(
            n=0, at=now, part="hood", last_wetted=q(50, "um"), first_dry=q(60, "um"), coat=1
        ),
        ev.NoteMade(n=0, at=now, text="wind from the door"),
    )


def past_jobs(clock: ManualClock) -> None:
    """Jobs of the last weeks, on the disk."""
    profiles = [bundled(name) for name in ("two-pack-clear", "epoxy-primer", "two-pack-gloss")]
    verdicts = (("good", ""), ("usable", "less in the corners"), ("redo", "slower, 20 cm away"))
    for number in range(14):
        begun = later(clock.now(), -86400.0 * (2 * number + 1))
        verdict, next_time = verdicts[number % 3]
        a_job(
            begun,
            weather(begun, air=18 + number % 5),
            *coat(later(begun, 2400), "hood"),
            ev.FaultSeen(n=0, at=later(begun, 5000), fault="dust", part="hood"),
            ev.JobClosed(
                n=0,
                at=later(begun, 9000),
                verdict=verdict,
                words="even along the edge",
                next_time=next_time,
            ),
            parts=("hood", "left door") if number % 2 else ("24 doors",),
            profile=profiles[number % len(profiles)],
            gun="clear gun",
        )


# -- the walks -------------------------------------------------------------------------------------


async def home(gallery: Gallery) -> None:
    """The first screen, new jobs, what can be asked for there."""
    clock = ManualClock()
    async with gallery.app(clock=clock) as at:
        await gallery.take(at, "empty")
        await at.press("question_mark")
        await gallery.take(at, "help")
        await at.press("escape")
        await _palette(gallery, at)
        await at.open("Two-pack clear")
        await gallery.take(at, "new-job")
        await at.type("left door, hood, 24 doors x 2 sides")
        await gallery.take(at, "new-job-typed")
        await at.press("escape")
        await at.open("Silver over epoxy primer")
        await gallery.take(at, "new-system")
    clock = ManualClock()
    async with gallery.app(clock=clock) as at:
        past_jobs(clock)
        a_job(later(clock.now(), -3000), *measured(clock), parts=PARTS, profile=clear())
        late = tuple(coat(later(clock.now(), -90000), "tank"))
        a_job(later(clock.now(), -95000), *late, parts=("tank",), profile=clear())
        broken = at.places.own_profiles_dir
        broken.mkdir(parents=True, exist_ok=True)
        (broken / "my-clear.toml").write_text('name = "My clear"\nfilm = { coats = "two" }\n')
        at.places.shop_file.write_text(WHOLE, "utf-8")
        await at.read_anew()
        await gallery.take(at, "jobs")
        await at.open("my-clear.toml")
        await gallery.take(at, "faults-of-a-profile")
        await at.press("enter", "home")
        await at.open("Two-pack clear")
        await gallery.take(at, "new-job-taught")


async def _palette(gallery: Gallery, at: AtApp) -> None:
    below = at.screen
    await at.press("ctrl+p")
    await at.until(lambda: "help (" in at.text)
    await gallery.take(at, "palette")
    await at.press("escape")
    if at.screen != below:
        await at.press("escape")
    await at.until(lambda: at.screen == below)


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
            if "BOTH ENDS" in at.text:
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
        await _palette(gallery, at)
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


async def end(gallery: Gallery) -> None:
    """Clean-up, after care, faults, the result, the card, what is told afterwards."""
    clock = ManualClock()
    now = clock.now()
    laid = [each for n in (1, 2) for part in ("hood", "left door") for each in coat(now, part, n)]
    parts = ("hood", "left door")
    async with gallery.bench("clean", *measured(clock), *laid, clock=clock, parts=parts) as at:
        await at.press("space", "space")
        await gallery.take(at, "clean-half")
        for step in ("after", "faults", "result"):
            await at.open_step(step)
            await gallery.take(at, step)
        await at.press("right", "enter")
        await at.type("no runs, one speck of dust")
        await at.press("enter")
        await at.type("slower at the edges")
        await gallery.take(at, "result-typed")
        await at.press("ctrl+e")
        await gallery.take(at, "card-written")
        await at.press("escape", "f11")
        await gallery.take(at, "save-profile")
        await at.press("escape")
        await at.open_step("result")
        await at.press_until("enter", lambda: at.screen == "Home")
        await gallery.take(at, "closed-home")


async def past(gallery: Gallery) -> None:
    """Past jobs: the list, one of them, looked at again."""
    clock = ManualClock()
    async with gallery.app(clock=clock) as at:
        await at.open("Past jobs")
        await gallery.take(at, "none")
        await at.press("escape")
        past_jobs(clock)
        a_job(later(clock.now(), -3000), *measured(clock), parts=PARTS, profile=clear())
        await at.read_anew()
        await at.open("Past jobs")
        await gallery.take(at, "list")
        await at.press("question_mark")
        await gallery.take(at, "help")
        await at.press("escape", "enter")
        await gallery.take(at, "report")
        await at.press("pagedown")
        await gallery.take(at, "report-further")
        await at.press("escape", "down", "e")
        await gallery.take(at, "card-written")
        await at.press("escape", "v")
        await gallery.take(at, "again")
        await at.press("enter")
        await gallery.take(at, "judged-again")
        await at.press("escape", "v", "down", "enter")
        await gallery.take(at, "fault-since")
        await at.press("escape", "f")
        await gallery.take(at, "find")
        await at.type("usable hood")
        await at.press("enter")
        await gallery.take(at, "found")


async def shop(gallery: Gallery) -> None:
    """The shop's screen and its forms, empty and filled."""
    async with gallery.app() as at:
        await at.open("Shop")
        await gallery.take(at, "empty")
        await at.press("enter")
        await gallery.take(at, "new-gun")
        await at.type("spot")
        await at.press("enter")
        await at.type("28 psi")
        await at.press("enter")
        await gallery.take(at, "new-gun-refused")
        await at.press("escape", "escape")
        at.places.shop_file.write_text(WHOLE, "utf-8")
        await at.read_anew()
        await at.open("Shop")
        await gallery.take(at, "whole")
        await at.press("enter")
        await gallery.take(at, "gun")
        await at.press("escape")
        for title in ("Zahn", "compressor", "room"):
            await at.pick(title)
            await at.press("enter")
            await gallery.take(at, title.lower())
            await at.press("escape")
        at.places.shop_file.write_text('[[gun]]\nname = "x"\ntip = "3 psi"\n', "utf-8")
        await at.press("escape")
        await at.read_anew()
        await at.open("Shop")
        await gallery.take(at, "faults")
        await at.press("enter")
        await gallery.take(at, "faults-told")


def clear() -> Profile:
    return bundled("two-pack-clear")


def silver() -> CoatingSystem:
    found = load_systems((PROFILES,), load_folder((PROFILES,)))
    (one,) = (each for each in found.systems if each.key.endswith("car-silver"))
    return one


async def system(gallery: Gallery) -> None:
    """A coating system: its products one after the other."""
    clock = ManualClock()
    async with gallery.app(clock=clock) as at:
        await at.open("Silver over epoxy primer")
        await at.type("hood, left door")
        await at.press("enter")
        await gallery.take(at, "begun")
        for step in steps_of(at.bench.desk.job):
            if step.kind in ("plan", "mix", "coats", "next-product"):
                await at.open_step(step.key)
                await gallery.take(at, step.key)
        await at.press("enter")
        await gallery.take(at, "second-product")
        await at.open_step("plan")
        await gallery.take(at, "second-plan")
        await at.press("f9")
        await gallery.take(at, "home")


async def refused(gallery: Gallery) -> None:
    """What cannot be done, and a window that is too small."""
    async with gallery.bench("coats") as at:
        await at.press("f2")
        record, Session.record = Session.record, _refuse  # type: ignore[method-assign]
        try:
            await at.press("enter")
        finally:
            Session.record = record  # type: ignore[method-assign]
        await gallery.take(at, "not-kept")
        await at.press("enter", "escape")
        await at.pilot.resize_terminal(50, 14)
        await at.settle()
        await gallery.take(at, "too-small")
        await at.pilot.resize_terminal(58, 18)
        await at.settle()
        await gallery.take(at, "smallest")
    async with gallery.app(profile="no-such-profile") as at:
        await gallery.take(at, "no-such-profile")
        at.places.jobs_dir.mkdir(parents=True, exist_ok=True)
        (at.places.jobs_dir / "x.jsonl").write_bytes(b"nothing\n")
        await at.read_anew()
        await at.open("x.jsonl")
        await gallery.take(at, "unreadable-job")


def _refuse(self: Session, event: ev.Event) -> ev.Event:
    raise NotKept("The disk is full. This entry is NOT kept.")


Walk = Callable[[Gallery], Awaitable[None]]
WALKS: dict[str, Walk] = {
    "home": home,
    "empty": empty_steps,
    "done": done_steps,
    "work": working,
    "coats": coats,
    "end": end,
    "past": past,
    "shop": shop,
    "system": system,
    "refused": refused,
}
#: Walks that are shown in every look.
MAIN = ("done", "work", "coats")


async def walk(name: str, size: tuple[int, int], folder: Path, looks: Iterable[str]) -> list[Path]:
    """Take the pictures of one walk in one window, in a home of its own; give the files."""
    plain = {"NO_COLOR": "1"} if set(looks) == set(NO_COLOR) else {}
    with tempfile.TemporaryDirectory() as own, patch.dict(os.environ, BOOTH_HOME=own, **plain):
        gallery = Gallery(folder, size, name, looks)
        await WALKS[name](gallery)
    return gallery.taken


def main(folder: Path, names: Sequence[str]) -> None:
    """All walks, or those that are named."""
    folder.mkdir(parents=True, exist_ok=True)
    os.environ["TZ"] = "UTC"
    time.tzset()
    for name in names or tuple(WALKS):
        looks = [tuple(LOOKS), tuple(NO_COLOR)] if name in MAIN else [("dark", "bright")]
        for size in SIZES:
            taken = [asyncio.run(walk(name, size, folder, each)) for each in looks]
            print(f"{name} {size[0]}x{size[1]}: {sum(map(len, taken))} pictures", flush=True)


if __name__ == "__main__":
    main(Path(sys.argv[1]), sys.argv[2:])
