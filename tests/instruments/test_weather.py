"""Weather: the margin, what misses its limit, and readings that are refused."""

from __future__ import annotations

import pytest

from booth.instruments.weather import weather_readout
from booth.log.events import WeatherRead
from booth.units import System
from booth.words.tone import Tone
from tests.instruments.at_bench import at_bench, context_of
from tests.job.make import q


def test_the_margin_is_from_the_parts_own_temperature() -> None:
    # psychrolib: dew point 9.27 C at 20 C and 50 %; its agreement with Magnus is 0.05 C
    shown = weather_readout(q(20, "degC"), q(50, "%"), q(15, "degC"), context_of())
    assert (shown.word, shown.tone) == ("WITHIN LIMITS", Tone.GOOD)
    assert float(shown.figure) == pytest.approx(15 - 9.27, abs=0.1)
    us = weather_readout(q(20, "degC"), q(50, "%"), q(15, "degC"), context_of(system=System.US))
    assert us.unit == "°F"  # a difference: 9/5, and no 32
    assert float(us.figure) == pytest.approx((15 - 9.27) * 9 / 5, abs=0.15)


@pytest.mark.parametrize(("part", "wet"), [(10.0, False), (9.0, True), (5.0, True)])
def test_a_part_below_the_dew_point_is_said_to_be_wet(part: float, wet: bool) -> None:
    shown = weather_readout(q(20, "degC"), q(50, "%"), q(part, "degC"), context_of())
    assert (shown.word, shown.tone) == ("OUTSIDE LIMITS", Tone.CAUTION)
    assert ("water condenses on it" in shown.lines[0]) is wet
    assert any(line.startswith("dew margin") and "at least 3.0 °C" in line for line in shown.lines)


@pytest.mark.parametrize(("typed", "said"), [("60 C", "50 C or less"), ("160 F", "50 C or less")])
async def test_a_reading_out_of_reason_is_not_kept(typed: str, said: str) -> None:
    async with at_bench("weather") as desk:
        for text in (typed, "50", "20"):
            await desk.type(text)
            await desk.press("enter")
        assert desk.log == [] and said in desk.text
        assert desk.instrument.row("air").typed == typed  # it stays, to be corrected
        await desk.press("up", "up", *["backspace"] * len(typed))
        await desk.type("20")
        await desk.press("enter")
        (kept,) = desk.log
        assert isinstance(kept, WeatherRead) and kept.air.typed == "20"
