"""The flow cup: against the profile, in another cup, outside a cup's range, and as keys are pressed."""

from __future__ import annotations

import pytest
from booth.widgets.entry import Choice

from booth.instruments.efflux import Efflux, efflux_readout
from booth.log.events import EffluxTimed
from booth.profile.model import Efflux as Wanted
from booth.profile.model import Range
from booth.trade.cups.cup_names import cup_named
from booth.words.tone import Tone
from tests.instruments.at_bench import at_bench, context_of
from tests.job.make import at, profile

FORD = profile(efflux=Wanted("Ford #4", Range(20, 24)))


@pytest.mark.parametrize(
    ("seconds", "tone", "said"),
    [
        (20.0, Tone.GOOD, "IN RANGE"),
        (24.0, Tone.GOOD, "IN RANGE"),
        (19.0, Tone.CAUTION, "TOO THIN"),
        (25.0, Tone.CAUTION, "TOO THICK"),
    ],
)
def test_the_profiles_own_cup(seconds: float, tone: Tone, said: str) -> None:
    shown = efflux_readout(context_of(profile=FORD), cup_named("ford 4"), seconds)
    assert (shown.tone, shown.word, shown.figure) == (tone, said, f"{seconds:.1f}")
    assert "profile: 20.0 s to 24.0 s in a Ford #4" in shown.lines


def test_another_cup_is_compared_in_equivalent_seconds() -> None:
    # one liquid of 100 mm2/s: 42.6 s in Zahn #2, 30.5 s in Ford #4 (ASTM D4212 10.1, D1200 11.2)
    shown = efflux_readout(context_of(profile=FORD), cup_named("zahn 2"), 42.6)
    assert shown.word == "TOO THICK"
    assert shown.lines[0] == "equals 30.5 s in a Ford #4 (equivalent seconds)"


def test_water_in_a_zahn_2_is_not_converted_and_that_is_the_state() -> None:
    # 17 to 19 s, below the cup's range of 20 to 80 s (ASTM D4212 10.1)
    shown = efflux_readout(context_of(profile=FORD), cup_named("zahn 2"), 18.0)
    assert (shown.tone, shown.word) == (Tone.CAUTION, "OUTSIDE THE CUP")
    text = " ".join(shown.lines)
    assert text.count("18 s is below the 20 s") == 1 and "mm²/s" not in text
    assert "Not comparable with the profile's Ford #4." in shown.lines


def test_a_cups_own_correction_is_said() -> None:
    run = EffluxTimed(n=0, at=at(0), cup="ford-4", seconds=30.0, correction=1.05)
    context = context_of(run, profile=FORD)
    shown = efflux_readout(context, cup_named("ford 4"), 31.5)
    assert "the runs times this cup's own correction, 1.05" in shown.lines
    plain = efflux_readout(context_of(profile=FORD), cup_named("ford 4"), 31.5)
    assert not any("correction" in line for line in plain.lines)


async def test_space_times_and_the_choice_of_cup_still_has_the_keys() -> None:
    async with at_bench("efflux", profile=FORD) as desk:
        await desk.press("up", "right")
        assert isinstance(desk.instrument, Efflux)
        chosen = desk.instrument.cup
        await desk.press("space")
        await desk.pass_time(60.0)
        await desk.press("space")
        await desk.pilot.pause()
        (run,) = desk.log
        assert isinstance(run, EffluxTimed) and run.cup == chosen.key
        assert isinstance(desk.app.focused, Choice)
        await desk.press("right")
        assert desk.instrument.cup.key != chosen.key
