"""What a painter does at the terminal, in the words of the screen: begin, step on, take up again."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any, TypeVar

from booth.clock import machine_sources
from booth.log.events import Event, UnknownEvent
from booth.log.fold import Job, fold
from booth.log.store import log_files, read_log
from tests.terminal.driver import Terminal

E = TypeVar("E", bound=Event)

#: The step that is open, in the list at the left of the bench.
_CURRENT = re.compile(r"^ *→ +(\d+) (\S.*?)(?: {2,}|$)", re.MULTILINE)


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


def begin(run: Terminal, profile: str, parts: str = "", shown: str = "") -> None:
    """From the home screen: choose the profile, name the parts, begin. shown: an end of `parts`."""
    run.until("Coating profiles")
    run.until(re.escape(profile[:30]))
    choose(run, profile)
    run.until("Parts")
    run.settle(0.05)
    if parts:
        run.press(parts)
        run.until(re.escape(shown or parts[-12:]))
    run.press("enter")
    run.until(lambda text: current(text) is not None)


def choose(run: Terminal, title: str) -> None:
    """Walk the list of the home screen to the row of this title, and press Enter."""
    run.settle(0.1)
    for _ in range(40):
        if any(title[:20] in words for words in highlighted(run)):
            run.press("enter")
            return
        run.press("down")
        run.settle(0.05)
    raise AssertionError(f"no row {title!r}\n{run.text}")


def highlighted(run: Terminal) -> list[str]:
    """The texts that stand on the reading colour of a highlighted row (the list's half)."""
    found = []
    for y in range(2, run.screen.lines - 1):
        line = run.screen.buffer[y]
        cell, ground = line[3], run.screen.buffer[1][0].bg
        if cell.bold and cell.bg != ground:
            found.append("".join(line[x].data for x in range(run.screen.columns // 2)))
    return found


def current(text: str) -> str | None:
    """The name of the step that is open; None off the bench."""
    found = _CURRENT.search(text)
    return found.group(2) if found else None


def standing(run: Terminal) -> str:
    """The step that is open, once the screen stands still: half a frame shows none, or the last."""
    while True:
        run.until(lambda text: current(text) is not None)
        before = current(run.text)
        run.settle(0.05)
        if before is not None and current(run.text) == before:
            return before


def on_step(run: Terminal, name: str) -> None:
    """Wait until this step is open."""
    run.until(lambda text: current(text) == name)
    run.settle(0.05)


def next_step(run: Terminal, act: Callable[[], Any]) -> str:
    """Do `act`, which leaves the open step, and give the name of the next one."""
    before = standing(run)
    act()
    run.until(lambda text: current(text) not in (before, None))
    return standing(run)


def pass_over(run: Terminal, why: str = "not today") -> str:
    """Skip the open step, with a word why where the screen asks for one."""

    def skip() -> None:
        run.until(lambda text: "A word why" not in text)
        before = standing(run)
        run.press("f6")
        run.until(lambda text: "A word why" in text or current(text) not in (before, None))
        if "A word why" in run.text:
            run.settle(0.05)
            run.press(why, "enter")

    return next_step(run, skip)


def go_to(run: Terminal, name: str, most: int = 30) -> None:
    """Pass over steps until the one of this name is open."""
    for _ in range(most):
        if standing(run) == name:
            return
        pass_over(run)
    raise AssertionError(f"no step {name!r}\n{run.text}")


def read_cautions(run: Terminal) -> None:
    """Read and acknowledge every caution."""
    run.until(lambda text: _reading(text) is not None)
    for _ in range(40):
        at = _reading(run.text)
        if at == "all":
            return
        run.press("space")
        run.until(lambda text, at=at: _reading(text) not in (None, at))
    raise AssertionError(f"the cautions do not end\n{run.text}")


def _reading(text: str) -> str | None:
    """Which caution is shown; 'all' where none is left."""
    if "were read" in text:
        return "all"
    found = re.search(r"\b(\d+) of \d+", text)
    return found.group(1) if found else None


def take_up(run: Terminal) -> None:
    """From the home screen: go on with the job that is offered first."""
    run.until("Jobs not closed")
    run.until("»")
    run.until("Coating profiles")
    run.press("enter")
    run.until(lambda text: "→" in text or "About this job" in text)


def silence(run: Terminal) -> None:
    """Page Up until nothing rings: another part may begin to ring meanwhile."""
    for _ in range(10):
        run.settle()
        if "silences" not in run.text:
            return
        run.press("pageup")
    raise AssertionError(f"it rings on\n{run.text}")
