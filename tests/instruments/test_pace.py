"""The pace: figures, the bar that sweeps, one's own pass timed."""

from __future__ import annotations

import pytest

from booth.instruments.pace.instrument import Pace
from booth.instruments.pace.words import pace_readout, pass_s_of, timed_readout, wanted_film
from booth.log.events import CatchMade, CoatBegun, FanSet, FilmRead, PassTimed, StepDone
from booth.profile.model import Film, Gun, Range
from booth.units import System
from booth.widgets.figure_panel import FigurePanel
from booth.widgets.pace_bar import PaceBar
from booth.words.tone import Tone
from tests.instruments.at_bench import at_bench, context_of
from tests.job.make import at, profile, q

HVLP = profile(gun=Gun(hvlp=True), film=Film(coats=2, wet_um=Range(40, 60)))
CATCH = CatchMade(n=0, at=at(0), seconds=60, amount=q(200, "ml"), delivery_ml_min=200.0)
FAN = FanSet(n=0, at=at(0), width=q(250, "mm"))
PASS = PassTimed(n=0, at=at(0), length=q(1.2, "m"), seconds=3.0)
METRE = {"mode": "sweep", "length": q(1.0, "m"), "wet": q(50, "um")}


def test_the_speed_of_the_worked_balance() -> None:
    # trade.md section 4 (conservation of volume): 200 ml/min, 65 %, 0.40 m/s, 0.25 m, 50 % lay
    # 43.33 um; so 50 um asks for 0.40 x 43.33 / 50 = 0.3467 m/s, a metre in 2.885 s.
    context = context_of(CATCH, FAN, profile=HVLP)
    shown = pace_readout(context, METRE)
    assert (shown.figure, shown.unit, shown.word) == ("0.35", "m/s", "1.00 m in 2.9 s")
    assert "estimate" in shown.label and shown.lines[0] == "estimate: 0.32 to 0.37 m/s"
    assert (
        "200 ml/min caught with paint, fan 250 mm measured, overlap 50 % common practice"
        in (shown.lines[1])
    )
    assert shown.lines[2] == "lands 60 to 70 %: HVLP on large flat parts"
    assert pass_s_of(context, METRE) == pytest.approx(2.8846, abs=1e-3)


@pytest.mark.parametrize(
    ("wet_um", "tone", "said"),
    [(50, Tone.READY, ""), (100, Tone.CAUTION, "Slower than a hand"), (20, Tone.CAUTION, "Faster")],
)
def test_a_speed_no_hand_holds_asks_for_another_delivery(
    wet_um: float, tone: Tone, said: str
) -> None:
    values = {**METRE, "wet": q(wet_um, "um")}
    shown = pace_readout(context_of(CATCH, FAN, profile=HVLP), values)
    assert shown.tone is tone and shown.lines[0].startswith(said)


def test_what_is_missing_is_named() -> None:
    bare = profile(gun=Gun(), film=Film(coats=1))
    shown = pace_readout(context_of(profile=bare), {})
    assert shown.figure == "–"
    for each in ("delivery", "fan", "wet film", "length"):
        assert each in shown.lines[0]


@pytest.mark.parametrize(
    ("seconds", "said", "figure"),
    [(3.0, "IN RANGE", "43"), (2.0, "TOO FAST", "29"), (6.0, "TOO SLOW", "87")],
)
def test_the_film_of_a_timed_pass(seconds: float, said: str, figure: str) -> None:
    # 1.2 m in 3 s is 0.40 m/s: 43.33 um; half the speed lays twice the film.
    timed = PassTimed(n=0, at=at(0), length=q(1.2, "m"), seconds=seconds)
    shown = timed_readout(context_of(CATCH, FAN, timed, profile=HVLP), METRE)
    assert (shown.word, shown.figure, shown.unit) == (said, figure, "µm")


def test_the_gauge_narrows_the_pace_of_the_next_coat() -> None:
    begun = CoatBegun(n=0, at=at(0), part="door", coat=1)
    read = FilmRead(
        n=0, at=at(0), part="door", coat=1, last_wetted=q(43, "um"), first_dry=q(44, "um")
    )
    context = context_of(CATCH, FAN, PASS, begun, read, profile=HVLP)
    shown = pace_readout(context, METRE)
    assert shown.lines[2] == "lands 64 to 66 %: from the gauge, coat 1 on door"


def test_the_film_wanted_is_the_profiles_or_what_was_typed() -> None:
    assert wanted_film(context_of(profile=HVLP), METRE) == Range(40, 60)
    typed = wanted_film(context_of(profile=HVLP), {"wet": q(80, "um")})
    assert typed is not None and typed.holds(80) and not typed.holds(60)


async def test_space_sweeps_the_bar_there_and_back_with_a_tick_at_each_end() -> None:
    async with at_bench("pace", profile=HVLP, before=lambda clock: [CATCH, FAN]) as b:
        bar = b.bench.query_one(PaceBar)
        assert b.focused_row == "mode" and bar.elapsed_s == 0
        await b.press("space")
        assert b.instrument.busy
        assert not b.bench.query_one(".fields").display
        await b.pass_time(1.0)
        assert bar.elapsed_s == pytest.approx(1.0) and b.sound.ticks == 0
        assert "→ pass 1" in b.text
        await b.pass_time(2.0)
        assert "← pass 2" in b.text and b.sound.ticks == 1
        await b.press("enter")  # a running bar is stopped first
        assert "stop it with Space first" in b.text
        await b.press("space")
        assert not b.instrument.busy and len(b.log) == 2
        assert b.bench.query_one(".fields").display and b.focused_row == "mode"


async def test_the_bar_moves_by_its_own_frames_and_is_silent_when_asked() -> None:
    async with at_bench("pace", profile=HVLP, before=lambda clock: [CATCH, FAN]) as b:
        await b.press("right", "space")
        instrument = b.instrument
        assert isinstance(instrument, Pace)
        b.clock.advance(3.5)
        instrument._frame()  # what the interval calls twenty times a second
        assert b.bench.query_one(PaceBar).elapsed_s == pytest.approx(3.5)
        assert b.sound.ticks == 0


async def test_a_pass_is_timed_between_two_presses_and_kept() -> None:
    async with at_bench("pace", profile=HVLP, before=lambda clock: [CATCH, FAN]) as b:
        await b.press("left")
        assert not b.bench.query_one(PaceBar).display
        await b.press("down")
        await b.type("1.2 m")
        await b.press("pagedown")
        assert b.instrument.fast
        await b.pass_time(0.1)
        await b.press("pagedown")  # a bounce
        assert b.instrument.busy
        await b.pass_time(2.9)
        await b.press("pagedown")
        kept = b.log[-1]
        assert isinstance(kept, PassTimed)
        assert (kept.length, kept.seconds) == (q(1.2, "m", "1.2 m"), 3.0)
        assert kept.at.continuous == pytest.approx(1000.0)
        assert b.bench.query_one(FigurePanel).readout.word == "IN RANGE"
        assert "1.20 m in 3.0 s  0.40 m/s" in b.text and b.focused_row == "mode"
        b.app.action_units()
        await b.pilot.pause()
        assert "3.94 ft in 3.0 s  79 ft/min" in b.text
        await b.press("backspace")
        assert type(b.log[-1]).__name__ == "Voided"


async def test_the_key_press_is_what_counts_not_when_it_was_handled() -> None:
    async with at_bench("pace", profile=HVLP, before=lambda clock: [CATCH, FAN]) as b:
        await b.press("left", "space")
        await b.pass_time(3.2)
        b.clock.key_age_s = 0.2
        await b.press("space")
        kept = b.log[-1]
        assert isinstance(kept, PassTimed) and kept.seconds == pytest.approx(3.0)


async def test_without_a_pace_the_bar_does_not_start_and_rows_ask_for_what_is_missing() -> None:
    bare = profile(gun=Gun(hvlp=True), film=Film(coats=1))
    async with at_bench("pace", profile=bare, size=(80, 24), system=System.METRIC) as b:
        await b.press("space")
        assert "No pace yet" in b.text and not b.instrument.busy
        await b.press("down", "down")
        await b.type("50")
        await b.press("down")
        await b.type("200")
        await b.press("down")
        await b.type("250")
        assert "0.35" in b.text or "1.00 m in 2.9 s" in b.text
        await b.press("enter")
        assert isinstance(b.log[-1], StepDone)
