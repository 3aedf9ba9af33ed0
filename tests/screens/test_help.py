"""The help of a step: what a low window cuts of the lines under the figure stands there in full."""

from __future__ import annotations

from booth.units import System
from tests.instruments.test_advice_said import CLEAR, CLOCK, FILLED, FOUR_TURNS, ev, timed
from tests.job.make import at, q
from tests.manual_clock import ManualClock
from tests.screens.at_app import at_bench


async def test_what_a_low_window_cuts_of_the_advice_stands_in_the_help() -> None:
    caught = ev.CatchMade(
        n=0,
        at=at(1),
        seconds=30,
        amount=q(60, "ml"),
        delivery_ml_min=120,
        turns=q(4, "turns"),
        inlet=q(400, "kPa"),
        tip=q(1.4, "mm"),
    )
    kept = (*FILLED, timed(CLOCK, 22), caught)
    async with at_bench(
        "catch",
        *kept,
        clock=ManualClock(),
        system=System.METRIC,
        profile=CLEAR,
        shop=FOUR_TURNS,
        gun="clear gun",
    ) as bench:
        assert "Thin it by 2 to 3 %" in bench.text
        assert "Clear the vent" not in bench.text
        await bench.press("f1")
        for words in ("Thin it by 2 to 3 %", "Clear the vent", "The tip is 1.4 mm"):
            assert words in bench.text
