"""The plan on the screen: the time of the last coat, what cannot be met, how it moves."""

from __future__ import annotations

import re
from collections.abc import Sequence

import pytest

from booth.clock import ManualClock, local_hhmm
from booth.instruments.plan.words import ticks
from booth.log import events as ev
from booth.moment import Moment, later
from booth.profile.model import AtTemperature, Mix, MixPart, Waits
from booth.widgets.figure_panel import FigurePanel
from booth.widgets.time_line import TimelineView
from tests.instruments.at_bench import AtBench, at_bench
from tests.job.make import one_time, profile


def figure(bench: AtBench) -> str:
    return bench.instrument.query_one(FigurePanel).readout.figure


def word(bench: AtBench) -> str:
    return bench.instrument.query_one(FigurePanel).readout.shown_word


async def test_the_last_coat_by_the_clock_and_it_moves_with_the_job() -> None:
    async with at_bench("plan") as bench:
        start = bench.clock.now()
        # Two parts, three coats of five minutes, 600 s of flash-off: 300 + 600 + 300 + 600 + 300
        # and 300 more for the second part: 40 minutes.
        assert figure(bench) == local_hhmm(later(start, 2400))
        assert word(bench) == "IT FITS"
        assert f"can be handled {local_hhmm(later(start, 2400 + 8 * 3600))}" in bench.text
        # Nothing is begun for ten minutes: everything is ten minutes later.
        await bench.pass_time(600)
        assert figure(bench) == local_hhmm(later(start, 3000))


async def test_minutes_for_a_coat_are_typed() -> None:
    async with at_bench("plan") as bench:
        start = bench.clock.now()
        await bench.type("10 min")
        # 600 a coat: door 0-600, hood 600-1200, door 1200-1800 and so on without a pause.
        assert figure(bench) == local_hhmm(later(start, 3600))
        await bench.press("enter")
        await bench.pilot.pause()
        assert [type(event) for event in bench.log] == [ev.StepDone]


async def test_what_has_been_is_on_the_line() -> None:
    def before(clock: ManualClock) -> Sequence[ev.Event]:
        begun = ev.CoatBegun(n=0, at=clock.now(), part="door", coat=1)
        clock.advance(200)
        return [begun, ev.CoatEnded(n=0, at=clock.now(), part="door", coat=1)]

    async with at_bench("plan", before=before) as bench:
        line = bench.instrument.query_one(TimelineView).line
        door, hood, pot = line.rows
        assert (door.name, hood.name, pot.name) == ("door", "hood", "pot life")
        first = door.blocks[0]
        assert (first.start_s, first.end_s, first.done, first.text) == (-200, 0, True, "1")
        assert [block.text for block in hood.blocks if block.text] == ["1", "2", "3"]
        # The hood was not sprayed yet: it is reckoned with what the door took.
        coat = next(block for block in hood.blocks if block.text == "1")
        assert coat.end_s - coat.start_s == 200


async def test_a_pot_life_too_short_is_said() -> None:
    short = Mix(
        parts=(MixPart("a", 2), MixPart("b", 1)), pot_life=AtTemperature(21.0, 1500.0)
    )  # fmt: skip
    async with at_bench("plan", profile=profile(mix=short)) as bench:
        assert word(bench) == "POT LIFE TOO SHORT"
        readout = bench.instrument.query_one(FigurePanel).readout
        # The whole takes 2400 s, 900 more than the pot life.
        assert "15 min too early" in readout.lines[0]


async def test_a_window_that_cannot_be_met_is_said() -> None:
    tight = Waits(flash_off=one_time(600), recoat_closes=one_time(660))

    def before(clock: ManualClock) -> Sequence[ev.Event]:
        found: list[ev.Event] = []
        for part in ("door", "hood"):
            found.append(ev.CoatBegun(n=0, at=clock.now(), part=part, coat=1))
            clock.advance(30)
            found.append(ev.CoatEnded(n=0, at=clock.now(), part=part, coat=1))
        clock.advance(640)
        found.append(ev.CoatBegun(n=0, at=clock.now(), part="door", coat=2))
        return found

    async with at_bench("plan", profile=profile(waits=tight), before=before) as bench:
        # The hood's window closes in 20 s; the door is being sprayed for 30 s more.
        assert word(bench) == "WINDOW MISSED"
        readout = bench.instrument.query_one(FigurePanel).readout
        assert readout.lines[0].startswith("hood: its recoat window closes")
        assert ", 0:10 before coat 2" in readout.lines[0]


async def test_all_coats_on() -> None:
    def before(clock: ManualClock) -> Sequence[ev.Event]:
        found: list[ev.Event] = []
        for coat in (1, 2, 3):
            found.append(ev.CoatBegun(n=0, at=clock.now(), part="door", coat=coat))
            clock.advance(60)
            found.append(ev.CoatEnded(n=0, at=clock.now(), part="door", coat=coat))
            clock.advance(700)
        return found

    async with at_bench("plan", parts=("door",), before=before) as bench:
        assert word(bench) == "ALL COATS ARE ON"
        assert figure(bench) == local_hhmm(later(bench.clock.now(), -700))


@pytest.mark.parametrize("size", [(80, 24), (100, 30), (200, 50)])
async def test_every_part_is_on_the_screen(size: tuple[int, int]) -> None:
    parts = ("door", "hood", "left fender", "right fender")
    async with at_bench("plan", parts=parts, size=size) as bench:
        text = bench.text
        # Four parts take longer than one flashes off: each stands ready before its next coat.
        assert all(part in text for part in parts)
        assert re.search(r"door +1 +░+─+ +2 +░+─+ +3", text)
        line = bench.instrument.query_one(TimelineView)
        assert line.region.bottom <= size[1] - 2
        assert bench.instrument.query_one(FigurePanel).size.height >= 5
        notes = "last coat" in "\n".join(row for row in text.splitlines() if "fender" in row)
        assert notes == (size[0] == 200)


def test_ticks_fall_on_round_times_of_day() -> None:
    now = Moment(wall=1_750_000_040.0, continuous=0.0, boot="a")

    def local(moment: Moment) -> str:
        minutes = int((moment.wall - 1_750_000_040.0 + 20) // 60) + 15 * 60 + 6
        return f"{minutes // 60 % 24:02d}:{minutes % 60:02d}"

    # It is 15:06:20, so a quarter past is 520 s away; an hour in 40 cells has room for four.
    assert ticks(now, local, 0.0, 3600.0, 40) == (
        (pytest.approx(520), "15:15"), (pytest.approx(1420), "15:30"),
        (pytest.approx(2320), "15:45"), (pytest.approx(3220), "16:00"),
    )  # fmt: skip
    assert ticks(now, lambda _: "--:--", 0.0, 3600.0, 40) == ()
