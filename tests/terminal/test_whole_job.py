"""A whole job with gloves on: no letter is typed from the can to the closed job, time sped up."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from booth.bench.menus import NOTES, REASONS
from booth.log.events import (
    AirRead,
    AmountPlanned,
    BatchMixed,
    CatchMade,
    CautionAcknowledged,
    CoatBegun,
    CoatEnded,
    EffluxTimed,
    JobClosed,
    LineTicked,
    NoteMade,
    StepSkipped,
    TouchTried,
    WeatherRead,
)
from booth.profile.cautions import cautions_for
from tests.terminal.driver import KEYS, Terminal
from tests.terminal.painter import (
    begin,
    current,
    fast,
    job,
    job_on_disk,
    kept_of,
    next_step,
    on_step,
    pass_over,
    read_cautions,
    short_profile,
    take,
    take_up,
    tick_every_line,
)

pytestmark = pytest.mark.terminal

SPED_UP = 60
PART = "the part"
WEATHER = r"\d\d:\d\d  .*air 72 °F, .*50 %, part 71"
#: What a glove, a clicker or a foot switch can press.
GLOVES = {
    KEYS[name]
    for name in ("space", "enter", "up", "down", "left", "right", "backspace", "pageup", "pagedown")
}


class Gloved(Terminal):
    """A terminal whose painter has gloves on."""

    gloves = True

    def send(self, data: str) -> None:
        assert not self.gloves or data in GLOVES or data.isdigit(), f"{data!r} with gloves on"
        super().send(data)


def test_a_whole_job_with_gloves_on_from_an_empty_home(home: Path) -> None:
    with Gloved(home, rate=fast(SPED_UP)) as run:
        begin(run, "Two-pack clear, 2:1")
        _before_mixing(run)
        _mix_by_weight(run)
        _set_the_gun(run)
        _coats(run)
        _after(run)
        run.until("Coating profiles")
        assert "Jobs not closed" not in run.text
        print(f"{run.keys_pressed} keys with gloves on")
        run.gloves = False
        run.press("f10")
        assert run.wait() == 0
    _in_the_log(home)


def go_on(run: Terminal) -> str:
    return next_step(run, lambda: run.press("enter"))


def skip(run: Terminal, why: str) -> str:
    """Enter where nothing was done offers reasons; arrows choose."""

    def act() -> None:
        run.press("enter")
        take(run, why)

    return next_step(run, act)


def _before_mixing(run: Terminal) -> None:
    read_cautions(run, "pagedown")
    assert go_on(run) == "Prepare"
    assert go_on(run) == "Weather"
    # One Backspace too many voids nothing: right after erasing it does nothing.
    run.press(
        "7", "backspace", "backspace", "7", "2", "enter", "5", "0", "enter", "7", "1", "enter"
    )
    run.until("air 72 °F, humidity 50 %, part 71 °F")
    assert go_on(run) == "Fresh air"
    assert go_on(run) == "Amount"
    run.press("3", "enter", "4", "enter")
    run.until("keep the amount")
    run.press("enter")
    assert go_on(run) == "Plan"
    assert go_on(run) == "Mix"


def _mix_by_weight(run: Terminal) -> None:
    # The unit is turned to, not typed; then from marks on the cup to the scale.
    run.press("up", "3", "5", "0", "right")
    run.until(r"350 g +=")
    run.press("enter", "down", "down", "down", "right")
    run.until("◂ weight, on the scale ▸")
    run.press("space")
    run.until("► hardener")
    # What the scale really shows, typed: within a hundredth it is on its mark.
    hardener = re.search(r"► hardener +[\d.]+ g +([\d.]+) g", run.text)
    assert hardener is not None, run.text
    shown = str(round(float(hardener.group(1))))
    run.press(*shown)
    run.until(f"= {shown} g")
    run.press("enter")
    run.until("► medium thinner")
    run.press("space")
    run.until("to be sprayed before")
    assert go_on(run) == "Flow cup"
    for number in (1, 2):
        run.press("pagedown")
        run.until("stop at the first break")
        run.linger(21.0 / SPED_UP)
        run.press("pagedown")
        run.until(r"runs" + r" +\d+\.\d" * number + " +mean")
    assert go_on(run) == "Thin"
    # What has a key of its own stands in a menu as well.

    def skip_by_menu() -> None:
        run.press("right")
        take(run, "Skip this step")
        take(run, REASONS[0])

    assert next_step(run, skip_by_menu) == "Strain and fill"
    assert go_on(run) == "Air"


def _set_the_gun(run: Terminal) -> None:
    run.press("2", "8", "enter")
    run.until(r"\d\d:\d\d  .*inlet 28 psi")
    assert go_on(run) == "Catch"
    run.press("space")
    run.until("caught for")
    # The mix was weighed: a bare number is grams.
    run.press("6", "8")
    run.until(r"= 68")
    run.press("enter", "enter")
    run.until(r"\d\d:\d\d  .*9\.0 fl oz/min")
    assert go_on(run) == "Fan"
    assert go_on(run) == "Test pattern"
    assert skip(run, REASONS[2]) == "Pace"
    assert go_on(run) == "Coats and waits"


def _coats(run: Terminal) -> None:
    run.press("space")
    run.until(f"end coat 1: {PART}")
    run.press("space")
    run.until(f"{PART} +1/2 .*WAIT")
    # The finger ends the wait before its time.
    run.press("right")
    take(run, f"{PART}: touched dry")
    run.until("again to take it")
    run.press("right")
    take(run, f"{PART}: touched dry")
    run.until(f"{PART} +1/2 .*► READY")
    run.press("pageup")  # nothing rings: it does nothing
    run.press("pagedown")
    run.until(f"end coat 2: {PART}")
    run.press("pagedown")
    run.until(f"{PART} +2/2")
    run.press("right")
    take(run, "Write a note")
    take(run, NOTES[1])
    run.until("Noted")
    assert go_on(run) == "Wet film"
    assert go_on(run) == "Clean the gun"


def _after(run: Terminal) -> None:
    tick_every_line(run, "pagedown")
    assert go_on(run) == "After care"
    assert go_on(run) == "Faults seen"
    assert go_on(run) == "Result"
    run.press("right")
    run.until("◂ good: repeat it like this ▸")
    run.press("enter", "enter", "enter")


def _in_the_log(home: Path) -> None:
    done = job(home)
    acknowledged = kept_of(home, CautionAcknowledged)
    assert [each.caution for each in acknowledged] == [
        caution.key for caution in cautions_for(done.profile)
    ]
    (weather,) = kept_of(home, WeatherRead)
    assert weather.humidity.value == 50
    assert weather.air.value == pytest.approx((72 - 32) / 1.8)
    (amount,), (batch,) = kept_of(home, AmountPlanned), kept_of(home, BatchMixed)
    assert amount.area.value == pytest.approx(12 * 0.09290304)
    assert {pour.amount.unit for pour in batch.pours} == {"g"}
    # By weight, from the densities of the profile: 2 ml of clear, 1 ml of hardener, 10 % thinner.
    grams = [2 * 1.00, 1 * 1.06, 0.3 * 0.87]
    wanted = [350 * each / sum(grams) for each in grams]
    # What was read from the scale is taken to be the mark within a hundredth.
    assert [pour.amount.value for pour in batch.pours] == pytest.approx(wanted, rel=0.01)
    runs = kept_of(home, EffluxTimed)
    # At least what was waited for; how much more is the machine's affair.
    assert len(runs) == 2 and all(21.0 <= run.seconds < 21.0 + 5 * SPED_UP for run in runs)
    (air,), (catch,) = kept_of(home, AirRead), kept_of(home, CatchMade)
    # NIST SP 811 appendix B.8: 1 psi = 6.894757 kPa, 1 fluid ounce (US) = 29.57353 ml.
    assert air.inlet.value == pytest.approx(28 * 6.894757, rel=1e-6)
    assert (catch.seconds, catch.amount.value, catch.amount.unit) == (15.0, 68.0, "g")
    # The coating that the gun was filled with: 1.02 g/ml by its profile.
    assert catch.liquid == "paint"
    assert catch.delivery_ml_min == pytest.approx(4 * 68 / 1.02, rel=1e-4)
    begun, ended = kept_of(home, CoatBegun), kept_of(home, CoatEnded)
    assert [each.coat for each in begun] == [each.coat for each in ended] == [1, 2]
    # The touch test decided: the second coat was not early.
    assert [each.result for each in kept_of(home, TouchTried)] == ["dry"]
    assert all(each.early_s == 0 for each in begun)
    assert [each.text for each in kept_of(home, NoteMade)] == [NOTES[1]]
    ticked = [each.line for each in kept_of(home, LineTicked)]
    assert len(ticked) == len(set(ticked)) > 2
    skipped = {each.step: each.why for each in kept_of(home, StepSkipped)}
    assert skipped == {"thin": REASONS[0], "pattern": REASONS[2]}
    (closed,) = kept_of(home, JobClosed)
    assert (closed.verdict, closed.words, closed.next_time) == ("good", "", "")
    assert [event.n for event in done.events] == list(range(1, len(done.events) + 1))


def test_a_skipped_measurement_asks_why_and_takes_no_for_an_answer(home: Path) -> None:
    job_on_disk(home, short_profile(("cautions", "weather", "coats")))
    with Terminal(home) as run:
        take_up(run)
        run.press("f6", "x", "backspace", "enter")
        run.until("is needed")
        run.press("esc")
        run.until(lambda text: current(text) == "Cautions" and "is needed" not in text)
        assert kept_of(home, StepSkipped) == []
        assert pass_over(run, "read them this morning") == "Weather"
        (skipped,) = kept_of(home, StepSkipped)
        assert (skipped.step, skipped.why) == ("cautions", "read them this morning")
        # As after a stall: readings and their Enters are read by the program at once, and land
        # where they were meant; a quantity with its unit needs no space.
        run.send("72\r50%\r21.7C\r")
        run.until("air 72 °F, humidity 50 %, part 71 °F")
        (weather,) = kept_of(home, WeatherRead)
        assert weather.humidity.value == 50 and weather.part.value == 21.7
        run.send("\r\r")
        on_step(run, "Coats and waits")
        assert len(kept_of(home, WeatherRead)) == 1
