"""Walks around the bench: the first screen, the end of a job, past jobs, the shop, what is refused."""

from __future__ import annotations

from booth.job.steps import steps_of
from booth.moment import later
from tests.manual_clock import ManualClock
from tests.screens.at_app import a_job
from tests.screens.gallery.kept import PARTS, coat, measured, past_jobs
from tests.screens.gallery.taking import Gallery
from tests.screens.test_fits import bundled
from tests.screens.test_not_kept import full_disk
from tests.shop.made import WHOLE


async def home(gallery: Gallery) -> None:
    """The first screen, new jobs, what can be asked for there."""
    clock = ManualClock()
    async with gallery.app(clock=clock) as at:
        await gallery.take(at, "empty")
        await at.press("question_mark")
        await gallery.take(at, "help")
        await at.press("escape")
        await gallery.palette(at)
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
        a_job(
            later(clock.now(), -3000),
            *measured(clock),
            parts=PARTS,
            profile=bundled("two-pack-clear"),
        )
        late = tuple(coat(later(clock.now(), -90000), "tank"))
        a_job(later(clock.now(), -95000), *late, parts=("tank",), profile=bundled("two-pack-clear"))
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
        a_job(
            later(clock.now(), -3000),
            *measured(clock),
            parts=PARTS,
            profile=bundled("two-pack-clear"),
        )
        await at.read_anew()
        await at.open("Past jobs")
        await gallery.take(at, "list")
        await at.press("question_mark")
        await gallery.take(at, "help")
        await at.press("escape", "enter")
        await gallery.take(at, "report")
        await at.press("pagedown")
        await gallery.take(at, "report-further")
        await at.press("escape", "down", "ctrl+e")
        await gallery.take(at, "card-written")
        await at.press("escape", "ctrl+y")
        await gallery.take(at, "again")
        await at.press("enter")
        await gallery.take(at, "judged-again")
        await at.press("escape", "ctrl+y", "down", "enter")
        await gallery.take(at, "fault-since")
        await at.press("escape")
        await at.type("good")
        await gallery.take(at, "find")
        await at.press("escape")
        await at.type("usable hood")
        await gallery.take(at, "found")
        await at.type(" nothing")
        await gallery.take(at, "nothing-found")
        await at.press("escape", "f4")
        await gallery.take(at, "of-a-product")
        await at.press("escape", "left")
        await gallery.take(at, "more")
        await at.press("escape", "home", "f6", "f6", "f11")
        await gallery.take(at, "side-by-side")
        await at.press("escape", "f12")
        await at.until(lambda: ": reading" not in at.lines[0])
        await gallery.take(at, "job-after-job")


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
        with full_disk():
            await at.press("enter")
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
