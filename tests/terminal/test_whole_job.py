"""A whole two-part job in the real program, from an empty home to the closed job, time sped up."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from booth.log.events import (
    CatchMade,
    CautionAcknowledged,
    CoatBegun,
    CoatEnded,
    EffluxTimed,
    JobClosed,
    LineTicked,
    NoteMade,
    StepSkipped,
    WeatherRead,
)
from booth.moment import elapsed
from booth.profile.cautions import cautions_for
from tests.terminal.driver import Terminal
from tests.terminal.painter import (
    begin,
    current,
    fast,
    go_to,
    job,
    kept_of,
    next_step,
    on_step,
    pass_over,
    read_cautions,
    silence,
)

pytestmark = pytest.mark.terminal

PARTS = ("left door", "hood")
SPED_UP = 240


def test_a_whole_job_of_two_parts_from_an_empty_home(home: Path) -> None:
    with Terminal(home, rate=fast(SPED_UP)) as run:
        begin(run, "Two-pack clear, 2:1", ", ".join(PARTS))
        assert current(run.text) == "Cautions"
        read_cautions(run)
        next_step(run, lambda: run.press("enter"))
        go_to(run, "Weather")
        _weather(run)
        go_to(run, "Flow cup")
        _efflux(run)
        go_to(run, "Catch")
        _catch(run)
        go_to(run, "Coats and waits")
        _coats(run)
        run.press("f2")
        run.until("Note")
        run.settle()
        run.press("dust in the left corner", "enter")
        run.until("Noted")
        next_step(run, lambda: run.press("enter"))
        go_to(run, "Clean the gun")
        _clean(run)
        go_to(run, "Result")
        _result(run)
        run.until("Coating profiles")
        assert "Jobs not closed" not in run.text
        run.press("f10")
        assert run.wait() == 0
    _in_the_log(home)


def _weather(run: Terminal) -> None:
    run.press("72", "enter", "50", "enter", "71 F")
    run.until("WITHIN|LIMITS|flash-off")
    run.press("enter")
    run.until("air 72")
    next_step(run, lambda: run.press("enter"))


def _efflux(run: Terminal) -> None:
    for number in (1, 2):
        run.press("space")
        run.until("stop at the first break")
        run.linger(21.0 / SPED_UP)
        run.press("space")
        run.until(lambda text, number=number: _runs(text) == number)
    next_step(run, lambda: run.press("enter"))


def _runs(text: str) -> int:
    found = re.search(r"runs ([\d. ]+?) +mean", text)
    return len(found.group(1).split()) if found else 0


def _catch(run: Terminal) -> None:
    run.press("space")
    # 3 s of lead-in and 60 s of catch are half a second at this rate.
    run.until("TYPE WHAT WAS CAUGHT|caught in")
    run.settle()
    run.press("9 fl oz", "enter")
    run.until(r"\d\d:\d\d +9\.0 fl oz/min")
    next_step(run, lambda: run.press("enter"))


def _coats(run: Terminal) -> None:
    on_step(run, "Coats and waits")
    for coat in (1, 2):
        for part in PARTS:
            run.until(rf"begin coat {coat}: {part}")
            if coat > 1:
                run.until(rf"{part} +1/2 ► READY")
                if part == PARTS[0]:
                    run.until(rf"{part}: ready for coat 2 since \d\d:\d\d.*silences")
                silence(run)
            run.press("space")
            run.until(rf"end coat {coat}: {part}")
            run.press("space")
            run.until(rf"{part} +{coat}/2")


def _clean(run: Terminal) -> None:
    for _ in range(20):
        run.settle()
        if "tick this line" not in run.text:
            break
        run.press("space")
    run.until("next step")
    next_step(run, lambda: run.press("enter"))


def _result(run: Terminal) -> None:
    run.settle()
    run.press("right", "enter", "no runs", "enter", "a touch slower", "enter")


def _in_the_log(home: Path) -> None:
    done = job(home)
    acknowledged = kept_of(home, CautionAcknowledged)
    assert [each.caution for each in acknowledged] == [
        caution.key for caution in cautions_for(done.profile)
    ]
    (weather,) = kept_of(home, WeatherRead)
    assert weather.humidity.value == 50
    assert weather.air.value == pytest.approx((72 - 32) / 1.8)
    runs = kept_of(home, EffluxTimed)
    # At least what was waited for; how much more is the machine's affair.
    assert len(runs) == 2 and all(21.0 <= run.seconds < 21.0 + 5 * SPED_UP for run in runs)
    (catch,) = kept_of(home, CatchMade)
    assert catch.seconds == 60.0
    # NIST SP 811 appendix B.8: 1 fluid ounce (US) = 29.57353 ml.
    assert catch.delivery_ml_min == pytest.approx(9 * 29.57353, rel=1e-6)
    for part in PARTS:
        coats = done.coats_on(part)
        assert [coat.number for coat in coats] == [1, 2]
        assert all(coat.ended is not None for coat in coats)
        assert coats[0].ended is not None
        # The profile's recoat window opens after 10 min at 70 F; at 72 F nothing is shortened.
        assert elapsed(coats[0].ended.at, coats[1].begun.at).seconds >= 600
    begun, ended = kept_of(home, CoatBegun), kept_of(home, CoatEnded)
    assert len(begun) == len(ended) == 4
    assert all(each.early_s == 0 for each in begun)
    assert [each.text for each in kept_of(home, NoteMade)] == ["dust in the left corner"]
    ticked = [each.line for each in kept_of(home, LineTicked)]
    assert len(ticked) == len(set(ticked)) > 2
    must = {each.step for each in kept_of(home, StepSkipped) if each.why}
    assert "air" in must or done.airs
    (closed,) = kept_of(home, JobClosed)
    assert (closed.verdict, closed.words, closed.next_time) == ("good", "no runs", "a touch slower")
    assert [event.n for event in done.events] == list(range(1, len(done.events) + 1))


def test_a_skipped_measurement_asks_for_a_word_and_takes_no_for_an_answer(home: Path) -> None:
    with Terminal(home) as run:
        begin(run, "Two-pack clear, 2:1", "hood")
        run.press("f6")
        run.until("A word why")
        run.settle()
        run.press("enter")
        run.until("A word is needed")
        run.press("esc")
        run.until("Not skipped")
        assert current(run.text) == "Cautions"
        assert kept_of(home, StepSkipped) == []
        assert pass_over(run, "read them this morning") == "Weather"
        (skipped,) = kept_of(home, StepSkipped)
        assert (skipped.step, skipped.why) == ("cautions", "read them this morning")


def test_keys_that_came_in_one_burst_land_where_they_were_meant(home: Path) -> None:
    """As after a stall: three readings and their Enters are read by the program at once."""
    with Terminal(home) as run:
        begin(run, "Two-pack clear, 2:1", "hood")
        pass_over(run)
        on_step(run, "Weather")
        run.child.send("72\r50\r71\r")
        run.until("air 72 °F 50 % RH  part 71 °F")
        (weather,) = kept_of(home, WeatherRead)
        assert weather.humidity.value == 50
        run.child.send("\r\r")
        run.settle(0.3)
        assert len(kept_of(home, WeatherRead)) == 1
