"""The guard on the screen: the line above the bench, the figure, the key line as time passes."""

from __future__ import annotations

from booth.log.events import CoatBegun
from booth.profile.model import Limits, Range
from booth.units import System
from tests.instruments.at_bench import in_mild_weather
from tests.job.make import profile as trial
from tests.manual_clock import ManualClock
from tests.screens.at_app import at_bench
from tests.screens.jobs import coated


async def test_the_key_line_follows_the_wait_and_the_header_the_age_of_the_reading() -> None:
    clock = ManualClock()
    async with at_bench(
        "coats",
        *coated(clock, "door"),
        clock=clock,
        parts=("door",),
        system=System.METRIC,
        size=(100, 30),
    ) as at:
        assert " coat 2: door? " in at.key_line and "dew margin 10.8" in at.lines[0]
        await at.pass_time(601)  # 10 min of flash-off in the trial profile
        assert " begin coat 2: door " in at.key_line and " old" not in at.text
        await at.pass_time(3000)
        await at.press("escape")
        assert "▲1 h old" in at.text


async def test_a_part_that_is_too_cold_is_marked_in_the_header_and_takes_two_presses() -> None:
    clock = ManualClock()
    sheet = trial(limits=Limits(part_c=Range(24, None)))
    read = in_mild_weather(clock)
    async with at_bench(
        "coats", *read, clock=clock, profile=sheet, system=System.METRIC, size=(80, 24)
    ) as at:
        assert "▲part 21.0 °C" in at.lines[0] and "▲air" not in at.lines[0]
        assert "STOP" in at.text and "The part is at 21.0 °C" in at.words
        await at.press("space")
        assert at.kept(CoatBegun) == [] and "Space again: all the same." in at.words
        await at.press("space")
        (begun,) = at.kept(CoatBegun)
        assert "part outside its limits" in begun.amiss
