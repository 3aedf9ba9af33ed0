"""What a painter does at the terminal, in the words of the screen: begin, step on, take up again."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from contextlib import suppress
from pathlib import Path
from typing import Any, TypeVar

from booth.bench.menus import REASONS
from booth.clock import MachineClock, machine_sources
from booth.log.events import (
    CoatBegun,
    CoatEnded,
    Event,
    JobOpened,
    StepSkipped,
    UnknownEvent,
    WeatherRead,
)
from booth.log.fold import Job, fold
from booth.log.session import Session
from booth.log.store import log_files, read_log
from booth.moment import Moment, later
from booth.profile.model import Profile
from booth.profile.read import read_profile
from booth.units import Kind, System
from booth.units import read as read_quantity
from tests.terminal.driver import NotShown, Terminal

E = TypeVar("E", bound=Event)

#: The step that is open, in the line above the bench; the line that a list stands on;
#: the line of a list that is to be ticked next.
_CURRENT = re.compile(r"^ *(\d+)/\d+ (\S.*?)(?: {2,}|$)", re.MULTILINE)
_PICKED = re.compile(r"(?:^|▌) *→ (?!\d+ )(\S.*?)(?: {2,}|▐|$)", re.MULTILINE)
_TO_TICK = re.compile(r"→ ([A-Z].*)$", re.MULTILINE)


def fast(factor: int) -> str:
    """The setting for a clock `factor` times as fast, which a second start agrees with."""
    return f"{factor}@{machine_sources().continuous():.3f}"


def write_profile(home: Path, name: str, text: str) -> Path:
    """Write a coating profile into the painter's own folder."""
    folder = home / "booth" / "profiles"
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / f"{name}.toml"
    path.write_text(text, "utf-8")
    return path


def short_profile(
    steps: Sequence[str] = ("cautions", "efflux", "coats", "clean", "result"),
    *,
    name: str = "Aaa short job",
    flash_off: str = "10 min",
    closes: str = "4 h",
    coats: int = 3,
    top: str = "",
) -> str:
    """A profile whose job has few steps; its name comes first in the list."""
    listed = "\n".join(f'[[steps]]\nkind = "{kind}"' for kind in steps)
    return f"""
name = "{name}"
source = "invented for a test"
demo = true
hazards = ["flammable"]
{top}
[efflux]
cup = "Ford #4"
target = "20 to 23 s"
[film]
coats = {coats}
volume_solids = 40
[waits]
flash_off = {{ time = "{flash_off}", at = "70 F" }}
recoat_closes = {{ time = "{closes}", at = "70 F" }}
{listed}
"""


def log_path(home: Path) -> Path:
    """The one session log."""
    (path,) = log_files(home / "booth" / "jobs")
    return path


def kept(home: Path) -> list[Event | UnknownEvent]:
    """Every entry of the one session log."""
    return read_log(log_path(home)).events


def kept_of(home: Path, kind: type[E]) -> list[E]:
    """The entries of one kind."""
    return [event for event in kept(home) if isinstance(event, kind)]


def job(home: Path) -> Job:
    """What the log adds up to."""
    return fold(kept(home))


def now(rate: str = "") -> Moment:
    """Now, by the clock of a program that is started with this rate."""
    return MachineClock(environment={"BOOTH_CLOCK_RATE": rate}).now()


def job_on_disk(
    home: Path,
    text: str,
    *events: Event,
    parts: tuple[str, ...] = ("hood",),
    at: Moment | None = None,
) -> Path:
    """Write a profile and the log of a job with it that was begun at `at`; give the log's path."""
    profile = read_profile(write_profile(home, "short", text))
    assert isinstance(profile, Profile), profile
    opened = JobOpened(n=1, at=at or now(), job="", profile=profile, parts=parts, system="us")
    session = Session.begin(home / "booth" / "jobs", opened)
    for event in events:
        session.record(event)
    session.close()
    return session.log.path


def skipped(step: str, at: Moment) -> StepSkipped:
    """A step that was passed over."""
    return StepSkipped(n=0, at=at, step=step, why=REASONS[0])


def weather(at: Moment) -> WeatherRead:
    """A mild day, at which the waits of these profiles are as they are given: 70 F and 50 %."""
    warm = read_quantity("70 F", Kind.TEMPERATURE, System.US)
    humidity = read_quantity("50 %", Kind.PERCENT, System.US)
    return WeatherRead(n=0, at=at, air=warm, humidity=humidity, part=warm)


def coated(part: str, coat: int, at: Moment, seconds: float = 60.0) -> tuple[CoatBegun, CoatEnded]:
    """A coat that was laid and ended at `at`."""
    begun = CoatBegun(n=0, at=later(at, -seconds), part=part, coat=coat)
    return begun, CoatEnded(n=0, at=at, part=part, coat=coat)


def begin(run: Terminal, profile: str, parts: str = "", shown: str = "") -> None:
    """From the home screen: choose the profile, name the parts, begin. shown: an end of `parts`."""
    run.until("Coating profiles")
    choose(run, profile)
    run.until("begin the job")
    if parts:
        run.press(parts)
        run.until(re.escape(shown or parts[-12:]))
    run.press("enter")
    run.until(lambda text: current(text) is not None)


def choose(run: Terminal, title: str) -> None:
    """Walk a list to the line of this title, and press Enter."""
    title = title[:20]
    for _ in range(40):
        text = run.until(lambda text: picked(text) != "")
        at = picked(text)
        if at.startswith(title):
            run.press("enter")
            return
        wanted = re.search(rf"^ [ »!] {re.escape(title)}", text, re.MULTILINE)
        is_above = wanted is not None and wanted.start() < text.index(f"→ {at}")
        run.press("up" if is_above else "down")
        with suppress(NotShown):  # a list that was just read anew stood elsewhere
            run.until(lambda text, at=at: picked(text) not in ("", at), patience_s=0.4)
    raise AssertionError(f"no line {title!r}\n{run.text}")


def take(run: Terminal, line: str) -> None:
    """Walk a menu to a line with the arrows, and take it."""
    run.until(lambda text: picked(text) != "" and line[:30] in text)
    while not (at := picked(run.text)).startswith(line[:30]):
        run.press("down")
        run.until(lambda text, at=at: picked(text) not in ("", at))
    run.press("enter")


def picked(text: str) -> str:
    """The line that a list stands on; empty where there is no list."""
    found = _PICKED.search(text)
    return found.group(1) if found else ""


def current(text: str) -> str | None:
    """The name of the step that is open; None off the bench."""
    found = _CURRENT.search(text)
    return found.group(2) if found else None


def on_step(run: Terminal, name: str) -> None:
    """Wait until this step is open."""
    run.until(lambda text: current(text) == name)


def done(run: Terminal, act: Callable[[], Any], shown: Callable[[str], bool]) -> str:
    """Do it and wait for what it shows; once more where an alarm that came up just then had the key."""
    act()
    if run.silences:
        with suppress(NotShown):
            return run.until(shown, patience_s=3.0)
        act()
        run.alarm_keys += 1
    return run.until(shown)


def next_step(run: Terminal, act: Callable[[], Any]) -> str:
    """Do `act`, which leaves the open step, and give the name of the next one."""
    run.until(lambda text: current(text) is not None)
    before = current(run.text)
    found = current(done(run, act, lambda text: current(text) not in (before, None)))
    assert found is not None
    return found


def pass_over(run: Terminal, why: str = "") -> str:
    """Skip the open step: for the first reason of the menu, or in one's own words."""
    return next_step(run, lambda: run.press("f6", *([why] if why else []), "enter"))


def to_the_coats(run: Terminal) -> None:
    """From the first step past the cautions and a mild day's weather to the coats."""
    assert pass_over(run) == "Weather"
    for reading in ("70", "50", "70"):
        run.press(*reading, "enter")
    run.until("humidity 50 %|50 % RH")
    assert next_step(run, lambda: run.press("enter")) == "Coats and waits"


def note(run: Terminal, text: str) -> None:
    """Note something in one's own words."""
    run.press("f2", text, "enter")


def read_cautions(run: Terminal, key: str = "space") -> None:
    """Read and acknowledge every caution."""
    run.until(lambda text: caution_shown(text) is not None)
    for _ in range(40):
        if caution_shown(run.text) == "all":
            return
        read_a_caution(run, key)
    raise AssertionError(f"the cautions do not end\n{run.text}")


def read_a_caution(run: Terminal, key: str = "space") -> str | None:
    """Read and acknowledge the caution that is shown; give the one that is shown then."""
    at = caution_shown(run.until(lambda text: caution_shown(text) is not None))
    return caution_shown(
        done(run, lambda: run.press(key), lambda text: caution_shown(text) not in (None, at))
    )


def tick_every_line(run: Terminal, key: str = "space") -> None:
    """Tick the lines of a list to the last."""
    run.until(lambda text: _line(text) != "")
    while (at := _line(run.until("Enter  (tick|next|go)"))) != "":
        ticked = lambda text, at=at: "silences" not in text and _line(text) != at  # noqa: E731
        done(run, lambda: run.press(key), ticked)


def _line(text: str) -> str:
    """The line of a list that is to be ticked next."""
    found = _TO_TICK.search(text)
    return found.group(1) if found else ""


def caution_shown(text: str) -> str | None:
    """Which caution is shown; 'all' where none is left."""
    if "were read" in text:
        return "all"
    found = re.search(
        r"^ *▲ (\S.*)$", text, re.MULTILINE
    )  # its title: which of how many is in blocks
    return found.group(1) if found else None


def take_up(run: Terminal) -> None:
    """From the home screen: go on with the job that is offered first."""
    run.until("Jobs not closed")
    run.press("enter")
    run.until(lambda text: current(text) is not None or "About this job" in text)


def silence(run: Terminal) -> None:
    """Page Up until nothing rings: another part may begin to ring meanwhile."""
    for _ in range(10):
        if "silences" not in run.text:
            return
        run.press("pageup")
        run.alarm_keys += 1
        with suppress(NotShown):
            run.until(lambda text: "silences" not in text, patience_s=1.0)
    raise AssertionError(f"it rings on\n{run.text}")
