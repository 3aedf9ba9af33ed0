"""The pace: figures, the bar that sweeps, one's own pass timed."""

from __future__ import annotations

import pytest

from booth.bench.model import Bench
from booth.forms.key import Key
from booth.instruments.pace import pace_readout, timed_readout, wanted, wanted_film
from booth.log.events import (
    CatchMade,
    CoatBegun,
    CoatEnded,
    Event,
    FanSet,
    FilmRead,
    PassTimed,
    PatternRead,
    StepDone,
    StopwatchDropped,
    StopwatchStarted,
)
from booth.log.fold import fold
from booth.moment import later
from booth.profile.model import CoatPlan, Film, Gun, Profile, Range
from booth.units import System
from booth.words.shown import Bar, Tone
from tests.instruments.at_bench import AtBench, context_of
from tests.job.make import at, profile, q
from tests.manual_clock import ManualClock

HVLP = profile(gun=Gun(hvlp=True), film=Film(coats=Range(2, 2), wet_um=Range(40, 60)))
CATCH = CatchMade(n=0, at=at(0), seconds=60, amount=q(200, "ml"), delivery_ml_min=200.0)
FAN = FanSet(n=0, at=at(0), width=q(250, "mm"))
PASS = PassTimed(n=0, at=at(0), length=q(1.2, "m"), seconds=3.0)
METRE = {"mode": "sound", "length": q(1.0, "m"), "wet": q(50, "um")}


def test_the_speed_of_the_worked_balance() -> None:
    # Conservation of volume: 200 ml/min, 65 %, 0.40 m/s, 0.25 m, 50 % lay
    # 43.33 um; so 50 um asks for 0.40 x 43.33 / 50 = 0.3467 m/s, a metre in 2.885 s.
    context = context_of(CATCH, FAN, profile=HVLP)
    shown = pace_readout(context, METRE)
    assert (shown.figure, shown.unit, shown.word) == ("2.9", "s", "1.00 m")
    assert shown.label == "for a pass of 1.00 m, 50 µm wet, estimate"
    assert shown.lines[0] == "gun speed 0.35 m/s, estimate: 0.32 to 0.37 m/s"
    assert (
        "200 ml/min caught with paint, fan 250 mm measured, overlap 50 % common practice"
        in (shown.lines[1])
    )
    assert shown.lines[2] == "lands 60 to 70 %: HVLP on large flat parts"
    assert wanted(context, METRE).pass_s == pytest.approx(2.8846, abs=1e-3)


@pytest.mark.parametrize(
    ("wet_um", "tone", "word", "said"),
    [
        (50, Tone.READY, "1.00 m", "gun speed"),
        (100, Tone.CAUTION, "TOO SLOW", "Slower than a hand keeps steady: more delivery"),
        (20, Tone.CAUTION, "TOO FAST", "Faster than a hand keeps steady: less delivery"),
    ],
)
def test_a_speed_no_hand_holds_asks_for_another_delivery(
    wet_um: float, tone: Tone, word: str, said: str
) -> None:
    values = {**METRE, "wet": q(wet_um, "um")}
    shown = pace_readout(context_of(CATCH, FAN, profile=HVLP), values)
    assert (shown.tone, shown.word) == (tone, word) and shown.lines[0].startswith(said)


def test_what_is_missing_is_named() -> None:
    bare = profile(gun=Gun(), film=Film(coats=Range(1, 1)))
    shown = pace_readout(context_of(profile=bare), {})
    assert shown.figure == ""
    for each in ("delivery", "fan", "wet film", "length"):
        assert each in shown.lines[0]


def test_figures_that_make_no_sense_together_are_said_to() -> None:
    # The next pass over the same place again: there is no pitch, and no speed that lays a film.
    whole = PatternRead(n=0, at=at(0), shape="even", overlap=q(100, "%"))
    shown = pace_readout(context_of(CATCH, FAN, whole, profile=HVLP), METRE)
    assert shown.figure == "" and "that make sense together" in shown.lines[0]


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


def bench(*kept: Event, profile: Profile = HVLP, system: System = System.METRIC) -> AtBench:
    return AtBench("pace", profile=profile, before=lambda clock: kept, system=system)


def ready() -> AtBench:
    """A bench where everything is known that a pace rests on."""
    return bench(CATCH, FAN)


def bar_of(b: AtBench) -> Bar:
    (bar,) = b.bench.instrument.picture(b.now, b.rows.values)
    assert isinstance(bar, Bar)
    return bar


def frames(b: AtBench) -> int:
    return b.bench.instrument.frames(b.now)


def test_space_sweeps_the_bar_there_and_back_with_a_tick_at_each_end() -> None:
    b = ready()
    assert b.marked == "mode" and bar_of(b).place == 0 and frames(b) == 0
    assert b.keys["Space"] == "start the bar" and b.keys["←→"] == "bar or pass"
    b.press("space")
    started = b.log[-1]
    assert isinstance(started, StopwatchStarted)
    assert (started.stopwatch, started.what) == ("pace", "sound")
    assert started.window_s == pytest.approx(2.8846, abs=1e-3)
    assert frames(b) == 20 and b.rows.sight == ()
    b.pass_time(1.0)
    assert bar_of(b).place == pytest.approx(1.0 / 2.8846, abs=1e-3) and b.sounds == []
    assert (b.readout.figure, b.readout.word) == ("1", "")
    assert b.readout.label == "pass, 2.9 s each, 1.00 m at 0.35 m/s"
    b.pass_time(2.0)
    assert (b.readout.figure, b.readout.word) == ("2", "TURN") and b.sounds == ["tick"]
    b.pass_time(1.0)
    assert (b.readout.figure, b.readout.word) == ("2", "")
    b.press("enter")  # a running bar is stopped first
    assert "Space stops it" in b.said
    assert b.keys["Space"] == "stop the bar"
    b.press("space")
    assert isinstance(b.log[-1], StopwatchDropped) and not b.job.stopwatches
    assert b.marked == "mode" and b.rows.sight and bar_of(b).place == 0
    b.press("enter")
    assert isinstance(b.log[-1], StepDone)


def test_the_bar_is_silent_when_asked() -> None:
    b = ready()
    b.press("right", "space")
    b.pass_time(3.5)
    assert bar_of(b).place == pytest.approx(2 - 3.5 / 2.8846, abs=1e-3) and frames(b) == 20
    assert b.sounds == []


def test_space_starts_the_bar_whatever_row_is_marked_and_however_much_is_typed() -> None:
    b = ready()
    b.press("down")
    b.type("2m")
    b.press("space")
    b.pass_time(1.0)
    assert bar_of(b).pass_s == pytest.approx(2 * 2.8846, abs=1e-3)
    b.press("space")
    assert b.row("length").text == "2m"  # to be followed once more
    assert [type(each) for each in b.log[2:]] == [StopwatchStarted, StopwatchDropped]
    b.press("enter")  # nothing is lost: the rows only shape the pace
    assert isinstance(b.log[-1], StepDone)


def test_a_bar_that_was_left_running_is_found_again_and_forgotten_in_the_end() -> None:
    b = ready()
    b.press("down")
    b.type("2m")
    b.press("space")
    b.pass_time(3.0)
    b.bench = Bench(b, b.step_of("pace"))  # as after a kill: the log is all there is
    assert bar_of(b).pass_s == pytest.approx(2 * 2.8846, abs=1e-3)
    assert b.readout.label == "pass, 5.8 s each"  # not "1.00 m", which is not what was typed
    assert b.job == fold(b.events)
    b.pass_time(1800.0)
    assert frames(b) == 0 and bar_of(b).place == 0
    before = len(b.sounds)
    b.pass_time(60.0)
    assert len(b.sounds) == before
    b.press("space")
    assert frames(b) == 20


def test_a_pass_is_timed_between_two_presses_and_kept() -> None:
    b = ready()
    b.press("left")
    assert b.bench.instrument.picture(b.now, b.rows.values) == ()
    b.press("down")
    b.type("1.2m")
    assert b.keys["Space"] == "the pass begins"
    b.press("pagedown")
    assert frames(b) == 10 and b.readout.word == "SPACE AT ITS END"
    begun = b.clock.now()
    b.clock.advance(0.1)
    b.press_now("pagedown")  # a bounce
    assert frames(b) == 10 and b.keys["Space"] == "the pass ends"
    b.clock.advance(2.9)
    b.press_now("pagedown")
    kept = b.log[-1]
    assert isinstance(kept, PassTimed)
    assert (kept.length, kept.seconds) == (q(1.2, "m", "1.2m"), 3.0)
    assert kept.at == begun
    assert b.readout.word == "IN RANGE"
    assert "1.20 m in 3.0 s, 0.40 m/s" in b.text and b.marked == "mode"
    b.system = System.US
    assert "3.94 ft in 3.0 s, 79 ft/min" in b.text


def test_what_is_voided_is_named_comes_back_and_no_stopwatch_runs_again() -> None:
    b = ready()
    b.press("left", "space")
    b.clock.advance(2.0)
    b.press("space")
    assert b.keys["Bksp"] == "void: pass timed: 1.00 m in 3.0 s"
    b.press("backspace")
    assert b.job.passes == () and not b.job.stopwatches and frames(b) == 0
    assert b.said == "Voided: pass timed: 1.00 m in 3.0 s. Backspace brings it back."
    b.press("backspace")
    assert len(b.job.passes) == 1 and not b.job.stopwatches


def test_the_key_press_is_what_counts_not_when_it_was_handled() -> None:
    b = ready()
    b.press("left", "space")
    b.clock.advance(3.2)
    b.bench.press(Key("space", " "), later(b.clock.now(), -0.2))
    kept = b.log[-1]
    assert isinstance(kept, PassTimed) and kept.seconds == pytest.approx(3.0)


def test_a_pass_that_was_going_when_the_program_died_is_found_again() -> None:
    b = ready()
    b.press("left", "down")
    b.type("6ft")
    b.press("space")
    b.clock.advance(4.0)
    b.open("pace")  # the rows are blank, the log is all there is
    assert b.readout.label == "pass of 1.83 m"
    b.press_now("space")
    kept = b.log[-1]
    assert isinstance(kept, PassTimed) and kept.seconds == 4.0
    assert kept.length.value == pytest.approx(1.8288)  # 6 x 0.3048
    assert b.rows.values["mode"] == "time"


def test_a_pass_that_nobody_ended_is_forgotten() -> None:
    b = ready()
    b.press("left", "space")
    b.clock.advance(119.0)
    assert frames(b) == 10
    b.clock.advance(2.0)
    assert frames(b) == 0 and b.keys["Space"] == "the pass begins"
    b.press("space")
    b.clock.advance(3.0)
    b.press_now("space")
    (kept,) = b.job.passes
    assert kept.seconds == 3.0


def test_without_a_pace_the_bar_does_not_start_and_rows_ask_for_what_is_missing() -> None:
    b = bench(profile=profile(gun=Gun(hvlp=True), film=Film(coats=Range(1, 1))))
    b.press("space")
    assert "No pace yet" in b.said and frames(b) == 0 and b.log == []
    assert b.bench.instrument.picture(b.now, b.rows.values) == ()
    b.press("down", "down")
    for text in ("50", "200", "250"):
        b.type(text)
        b.press("enter")
    assert isinstance(b.log[-1], StepDone)


def test_the_rows_that_were_missing_make_a_pace() -> None:
    b = bench(profile=profile(gun=Gun(hvlp=True), film=Film(coats=Range(1, 1))))
    for key, text in (("wet", "50"), ("delivery", "200"), ("fan", "250")):
        b.fill(key, text)
    assert b.readout.figure == "2.9" and "0.35 m/s" in b.readout.lines[0]


def test_the_film_of_the_profile_stands_in_the_quiet_line() -> None:
    b = ready()
    assert [row.key for row in b.rows.sight] == ["mode", "length"]
    assert [row.key for row in b.rows.assumed] == ["wet"]
    b.fill("wet", "100")
    assert b.readout.word == "TOO SLOW"


def test_a_fault_in_a_row_is_said_and_nothing_is_started() -> None:
    b = ready()
    b.press("down")
    b.type("3psi")
    b.press("space")
    assert "pressure" in b.said and len(b.log) == 2
    b.press("enter")
    assert "pressure" in b.said and b.bench.step.key == "pace"


def test_a_pass_without_a_length_is_not_timed() -> None:
    b = ready()
    b.press("left", "down")
    b.type("0")
    b.press("space")
    assert b.said == "A pass has a length: type it first." and len(b.log) == 2


def test_the_pace_is_that_of_the_coat_to_come() -> None:
    """A tack coat is laid faster than the full coat after it."""
    thin, full = (CoatPlan(wet_um=Range(low, low + 10)) for low in (20.0, 50.0))
    job = profile(film=Film(), coats=(thin, full))

    def one_coat(clock: ManualClock) -> list[Event]:
        begun = CoatBegun(n=0, at=clock.now(), part="door", coat=1)
        return [begun, CoatEnded(n=0, at=clock.now(), part="door", coat=1)]

    first = AtBench("pace", profile=job, parts=("door",))
    second = AtBench("pace", profile=job, parts=("door",), before=one_coat)
    assert [wanted_film(each.now, each.rows.values) for each in (first, second)] == [
        Range(20.0, 30.0),
        Range(50.0, 60.0),
    ]
