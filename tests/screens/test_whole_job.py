"""A whole two-part job at 80 x 24 by keys alone, the clock moved by hand: every figure is exact."""

from __future__ import annotations

from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path
from typing import TypeVar

import pytest
from textual import events
from textual.keys import _character_to_key
from textual.pilot import Pilot

from booth.app.app import BoothApp
from booth.clock import ManualClock
from booth.files.places import Places
from booth.log.events import (
    AlarmAcknowledged,
    CatchMade,
    CautionAcknowledged,
    ClockNoticed,
    CoatBegun,
    CoatEnded,
    EffluxTimed,
    Event,
    JobClosed,
    LineTicked,
    NoteMade,
    StepSkipped,
    Voided,
    WeatherRead,
)
from booth.log.store import log_files, read_log
from booth.screens.ask import Ask
from booth.screens.bench import Bench
from booth.screens.home import Home
from booth.screens.new_job import NewJob
from tests.screens.at_app import AtApp
from tests.terminal.painter import short_profile, write_profile

E = TypeVar("E", bound=Event)

PARTS = ("left door", "hood")
PROFILE = "Two-pack clear, 2:1"


class Heard:
    """A sound that remembers what was sounded, in order."""

    def __init__(self) -> None:
        self.sounds: list[str] = []

    def alarm(self) -> None:
        self.sounds.append("alarm")

    def signal(self) -> None:
        self.sounds.append("signal")

    def tick(self) -> None:
        self.sounds.append("tick")


class Painter(AtApp):
    """Presses keys, lets time pass, reads the screen and the log."""

    def __init__(self, pilot: Pilot[None], clock: ManualClock, heard: Heard) -> None:
        super().__init__(pilot, clock)
        self.heard = heard

    async def press(self, *keys: str) -> None:
        """Press keys as the terminal would send them; quicker than the pilot's own way."""
        for key in keys:
            character = key if len(key) == 1 else {"space": " "}.get(key)
            name = _character_to_key(key) if len(key) == 1 else key
            self.app.post_message(events.Key(name, character))
            await self.pilot.pause()
            await self.pilot.pause()

    async def type(self, text: str) -> None:
        await self.press(*("space" if each == " " else each for each in text))

    @property
    def bench(self) -> Bench:
        return next(each for each in self.app.screen_stack if isinstance(each, Bench))

    @property
    def kind(self) -> str:
        """Of which kind the open step is."""
        return self.bench.step.kind

    @property
    def key_line(self) -> str:
        return self.lines[-1]

    def kept(self, kind: type[E]) -> list[E]:
        """The entries of one kind on disk."""
        (path,) = log_files(self.places.jobs_dir)
        return [event for event in read_log(path).events if isinstance(event, kind)]

    async def pass_time(self, seconds: float) -> None:
        """Let time pass, and the heartbeat come."""
        self.clock.advance(seconds)
        await self.beat()

    async def beat(self) -> None:
        self.app.tick()
        await self.pilot.pause()

    async def begin(self, profile: str = PROFILE, parts: str = ", ".join(PARTS)) -> None:
        """From the first screen to the bench."""
        await self.until(lambda: profile[:16] in self.text)
        await self.until(lambda: self.screen == "Home")
        for _ in range(30):
            row = self.app.screen._row()  # type: ignore[attr-defined]
            if row is not None and row.title == profile:
                break
            await self.press("down")
        await self.press("enter")
        await self.until(lambda: isinstance(self.app.screen, NewJob))
        await self.type(parts)
        await self.press("enter")
        await self.until(lambda: isinstance(self.app.screen, Bench))
        await self.until(lambda: self.bench.instrument is not None)

    async def next_step(self) -> None:
        """Enter where a step is finished."""
        before = self.bench.step.key
        await self.press("enter")
        await self.until(lambda: self.bench.step.key != before)
        await self.until(lambda: self.bench.instrument is not None)

    async def go_to(self, kind: str) -> None:
        """Pass over steps, with a word why where one is asked for, until one of this kind is open."""
        for _ in range(30):
            if self.kind == kind:
                return
            before = self.bench.step.key
            await self.press("f6")
            if isinstance(self.app.screen, Ask):
                await self.type("not today")
                await self.press("enter")
            await self.until(lambda before=before: self.bench.step.key != before)
            await self.until(lambda: self.bench.instrument is not None)
        raise AssertionError(f"no step of the kind {kind}:\n{self.text}")


@asynccontextmanager
async def painter(size: tuple[int, int] = (80, 24)) -> AsyncIterator[Painter]:
    """The program at its first screen, from an empty home."""
    clock, heard = ManualClock(), Heard()
    app = BoothApp(clock, Places.standard(), sound=heard)  # type: ignore[arg-type]
    async with app.run_test(size=size) as pilot:
        await pilot.pause()
        yield Painter(pilot, clock, heard)


async def test_a_whole_job() -> None:
    async with painter() as p:
        await p.begin()
        await _cautions(p)
        await p.go_to("weather")
        await _weather(p)
        await p.go_to("efflux")
        await _efflux(p)
        await p.go_to("catch")
        await _catch(p)
        await p.go_to("coats")
        await _coats(p)
        await p.go_to("clean")
        await _clean(p)
        await p.go_to("result")
        await _result(p)
        await p.until(lambda: isinstance(p.app.screen, Home))
        await p.until(lambda: "Coating profiles" in p.text)
        assert "Jobs not closed" not in p.text
        assert p.app.session is None
        (path,) = log_files(p.places.jobs_dir)
        events = read_log(path).events
        assert [event.n for event in events] == list(range(1, len(events) + 1))


async def _cautions(p: Painter) -> None:
    assert p.kind == "cautions"
    count = 0
    while "read and understood" in p.key_line:
        await p.press("space")
        count += 1
        assert len(p.kept(CautionAcknowledged)) == count
    assert f"All {count} were read" in p.text
    await p.next_step()


async def _weather(p: Painter) -> None:
    await p.type("72")
    assert "= 72 °F = 22.2 °C" in p.text
    await p.press("enter")
    await p.type("50")
    await p.press("enter")
    await p.type("7x")
    await p.press("enter")
    assert p.kept(WeatherRead) == [], "nonsense stays for correction"
    await p.press("backspace")
    await p.type("1")
    # Dew point at 72 F and 50 %: 52 F, by the psychrometric chart of ASHRAE (recalled, to 1 F).
    assert "dew point 52 °F" in p.text
    await p.press("enter")
    (read,) = p.kept(WeatherRead)
    assert read.humidity.value == 50
    assert "air 72 °F 50 % RH" in p.lines[0]
    await p.next_step()


async def _efflux(p: Painter) -> None:
    for seconds in (21.4, 21.6, 22.0):
        await p.press("space")
        assert "stop at the first break" in p.key_line
        await p.pass_time(seconds)
        await p.press("space")
    assert [run.seconds for run in p.kept(EffluxTimed)] == [21.4, 21.6, 22.0]
    # (21.4 + 21.6 + 22.0) / 3 = 21.67; largest less smallest 0.6.
    # The words may be broken at the end of a line, so each figure by itself.
    assert "mean 21.7 s" in p.text and "0.6 s" in p.text
    await p.press("backspace")
    assert len(p.kept(Voided)) == 1
    assert "mean 21.5 s" in p.text and "0.2 s" in p.text and "22.0" not in p.text
    # A press that bounces neither stops a run nor begins one.
    await p.press("space")
    await p.pass_time(0.2)
    await p.press("space")
    assert len(p.kept(EffluxTimed)) == 3 and "stop at the first break" in p.key_line
    await p.press("enter")
    assert p.kind == "efflux" and "Space stops it" in p.text
    await p.press("f9")
    assert isinstance(p.app.screen, Bench) and "stop it with Space first" in p.text
    await p.pass_time(21.3)
    await p.press("space")
    assert [run.seconds for run in p.kept(EffluxTimed)][-1] == 21.5
    await p.next_step()


async def _catch(p: Painter) -> None:
    p.heard.sounds.clear()
    await p.press("space")
    for _ in range(3):
        assert "GET READY" in p.words or "get ready" in p.text
        await p.pass_time(1.0)
    await p.pass_time(30.0)
    assert "catching" in p.text
    await p.pass_time(30.0)
    # The whole window says STOP for a moment first.
    await p.until(lambda: "caught in" in p.text)
    assert p.heard.sounds[-1] == "signal" and p.heard.sounds.count("tick") >= 3
    await p.type("6")
    assert "6" in p.text and "fl oz" in p.text
    await p.press("enter")
    (catch,) = p.kept(CatchMade)
    assert catch.seconds == 60.0
    # NIST SP 811 appendix B.8: 1 fluid ounce (US) = 29.57353 ml.
    assert catch.delivery_ml_min == pytest.approx(6 * 29.57353, rel=1e-6)
    # A full cup of 20 US fl oz at 6 fl oz/min lasts 20 / 6 min = 3 min 20 s.
    assert "a full cup of 20.0 fl oz lasts 3:20" in p.text
    await p.press("f3")
    assert "a full cup of 591 ml lasts 3:20" in p.text
    await p.press("f3")
    await p.next_step()


async def _coats(p: Painter) -> None:
    p.heard.sounds.clear()
    for part in PARTS:
        assert f"begin coat 1: {part}" in p.key_line
        await p.press("space")
        await p.pass_time(90)
        assert "1:30" in p.text and "SPRAYING" in p.words
        await p.press("space")
    # The first part's window opens 10 min after its coat; 90 s of them are gone.
    await p.pass_time(10 * 60 - 91)
    assert "0:01" in p.text and p.heard.sounds == []
    await p.pass_time(1)
    assert p.heard.sounds == ["alarm"]
    assert p.lines[0].startswith(" left door: ready for coat 2 since")
    await p.pass_time(4)
    assert p.heard.sounds == ["alarm"]
    await p.pass_time(1)
    assert p.heard.sounds == ["alarm", "alarm"], "again every five seconds until acknowledged"
    # A note is being typed: the alarm is over it, and silencing it leaves the note.
    await p.press("f2")
    await p.type("dust")
    await p.beat()
    assert "left door: ready for coat 2" in p.lines[0]
    await p.press("escape")
    assert len(p.kept(AlarmAcknowledged)) == 1 and isinstance(p.app.screen, Ask)
    await p.press("enter")
    assert [note.text for note in p.kept(NoteMade)] == ["dust"]
    await p.pass_time(60)
    assert p.heard.sounds == ["alarm", "alarm"]
    assert "begin coat 2: left door" in p.key_line
    await p.press("space")
    await p.pass_time(90)
    await p.press("space")
    # The hood's coat ended 90 s after the door's and is ready by now.
    await p.press("pageup")
    assert "begin coat 2: hood" in p.key_line
    await p.press("space")
    await p.pass_time(90)
    await p.press("space")
    assert all(each.early_s == each.late_s == 0 for each in p.kept(CoatBegun))
    assert [(each.part, each.coat) for each in p.kept(CoatEnded)] == [
        ("left door", 1),
        ("hood", 1),
        ("left door", 2),
        ("hood", 2),
    ]
    assert p.text.count("2/2") == 2
    # From far away the glove hits the wrong key: nothing begins before Space.
    for key in ("x", "7", "tab", "delete", "home", "end"):
        await p.press(key)
    assert len(p.kept(CoatBegun)) == 4
    await p.next_step()


async def _clean(p: Painter) -> None:
    ticked = 0
    while "tick this line" in p.key_line:
        await p.press("space")
        ticked += 1
        assert len(p.kept(LineTicked)) == ticked
    assert ticked > 2
    await p.next_step()


async def _result(p: Painter) -> None:
    assert "4 coats on 2 parts" in p.text
    await p.press("right", "enter")
    await p.type("no runs")
    await p.press("enter")
    await p.type("slower")
    await p.press("enter")
    await p.until(lambda: bool(p.kept(JobClosed)))
    (closed,) = p.kept(JobClosed)
    assert (closed.verdict, closed.words, closed.next_time) == ("good", "no runs", "slower")
    assert all(each.why == "not today" for each in p.kept(StepSkipped) if each.why)


async def _first_coat(p: Painter) -> None:
    """A coat on the hood, ended now: ready after 10 min."""
    home = p.places.jobs_dir.parent.parent
    write_profile(home, "short", short_profile(("coats", "plain"), flash_off="10 min"))
    p.app.screen.read_again()  # type: ignore[attr-defined]
    await p.begin("Aaa short job", "hood")
    await p.go_to("coats")
    await p.press("space")
    await p.pass_time(60)
    await p.press("space")


async def test_the_lid_closed_for_an_hour_counts_and_is_noted() -> None:
    async with painter() as p:
        await _first_coat(p)
        await p.pass_time(60)
        p.clock.sleep(3600)
        await p.beat()
        (noticed,) = p.kept(ClockNoticed)
        assert (noticed.slept_s, noticed.stepped_s) == (3600, 0)
        # Ready 600 s after the coat; 60 + 3600 s have passed.
        assert "ready for coat 2" in p.lines[0] and "(51:00)" in p.lines[0]


@pytest.mark.parametrize("step_s", [3600.0, -3600.0, 86_400.0])
async def test_a_wall_clock_that_is_set_moves_no_wait_and_is_noted(step_s: float) -> None:
    async with painter() as p:
        await _first_coat(p)
        await p.pass_time(60)
        before = p.text
        assert "9:00" in before
        p.clock.step_wall(step_s)
        await p.beat()
        (noticed,) = p.kept(ClockNoticed)
        assert (noticed.slept_s, noticed.stepped_s) == (0, step_s)
        assert "9:00" in p.text and "ready for" not in p.text
        await p.pass_time(539)
        assert "0:01" in p.text and p.heard.sounds == []
        await p.pass_time(1)
        assert p.heard.sounds == ["alarm"]


async def test_after_a_restart_of_the_machine_the_wall_clock_decides() -> None:
    async with painter(size=(120, 30)) as p:
        await _first_coat(p)
        await p.press("f9")
        await p.until(lambda: "Jobs not closed" in p.text and isinstance(p.app.screen, Home))
        p.clock.reboot(off_s=200, up_s=40)
        await p.beat()
        # 600 s less the 240 s that the machine was off and starting.
        await p.until(lambda: "hood WAIT 6:00" in p.words)
        await p.press("enter")
        await p.until(lambda: isinstance(p.app.screen, Bench))
        await p.until(lambda: "6:00" in p.text)
        await p.pass_time(360)
        assert "hood: ready for coat 2" in p.lines[0]


async def test_the_clocks_of_the_first_screen_tick() -> None:
    async with painter(size=(120, 30)) as p:
        await _first_coat(p)
        await p.press("f9")
        await p.until(lambda: "hood WAIT 10:00" in p.words)
        await p.pass_time(61)
        assert "hood WAIT 8:59" in p.words


async def test_units_and_theme_change_anywhere_and_are_remembered(own_home: Path) -> None:
    async with painter() as p:
        await p.begin()
        await p.press("f3", "f7")
        await p.press("f2")
        await p.press("f3")
        await p.press("f3")
        assert isinstance(p.app.screen, Ask)
        await p.press("escape")
    text = (own_home / "booth" / "preferences.toml").read_text("utf-8")
    assert 'units = "metric"' in text
