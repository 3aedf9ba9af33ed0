"""A whole two-part job at 80 x 24 by keys alone, the clock moved by hand: every figure is exact."""

from __future__ import annotations

import pytest

from booth.log.events import (
    AirRead,
    AlarmAcknowledged,
    AreaAdded,
    BatchMixed,
    CatchMade,
    CautionAcknowledged,
    CoatBegun,
    CoatEnded,
    EffluxTimed,
    JobClosed,
    LineTicked,
    NoteMade,
    Poured,
    StepDone,
    StepSkipped,
    Voided,
    WeatherRead,
)
from booth.log.store import log_files
from tests.screens.at_app import AtApp, at_app, everything

PARTS = ("left door", "hood")


async def test_a_whole_job() -> None:
    async with at_app(bundled=True) as at:
        await at.open("Two-pack clear, 2:1")
        await at.type(", ".join(PARTS))
        await at.press("enter")
        await _cautions(at)
        await _go_to(at, "weather")
        await _weather(at)
        await _go_to(at, "amount")
        await _amount(at)
        await _go_to(at, "mix")
        await _mix(at)
        await _efflux(at)
        await _go_to(at, "air")
        await _air(at)
        await _catch(at)
        await _go_to(at, "coats")
        await _coats(at)
        await _go_to(at, "clean")
        await _clean(at)
        await _go_to(at, "result")
        await _result(at)
        assert at.stack == ["Home"] and "Jobs not closed" not in at.text
        assert at.app.jobs.current is None
        (path,) = log_files(at.places.jobs_dir)
        assert [event.n for event in everything(path)] == list(range(1, len(everything(path)) + 1))


async def _next_step(at: AtApp) -> None:
    """Enter where a step is finished."""
    before = at.step
    await at.press("enter")
    assert at.step != before and before in {done.step for done in at.kept(StepDone)}


async def _go_to(at: AtApp, step: str) -> None:
    """Pass over steps until this one is open."""
    for _ in range(20):
        if at.step == step:
            return
        before = at.step
        await at.press("f6", "enter")
        assert at.step != before
    raise AssertionError(f"no step {step}:\n{at.text}")


async def _cautions(at: AtApp) -> None:
    assert at.step == "cautions"
    count = 0
    while "read and understood" in at.key_line:
        await at.press("space")
        count += 1
    assert len(at.kept(CautionAcknowledged)) == count == 13
    assert f"All {count} were read" in at.text
    await _next_step(at)


async def _weather(at: AtApp) -> None:
    await at.type("72")
    assert "= 72 °F = 22.2 °C" in at.text
    await at.press("enter")
    await at.type("50")
    await at.press("enter")
    await at.type("7x")
    await at.press("enter")
    assert at.kept(WeatherRead) == [], "nonsense stays for correction"
    await at.press("backspace")
    await at.type("1")
    # Dew point at 72 F and 50 %: 52 F, by the psychrometric chart of ASHRAE (from memory, to 1 F).
    assert "dew point 52 °F" in at.text
    await at.press("enter")
    (read,) = at.kept(WeatherRead)
    assert read.humidity.value == 50
    assert "dew margin 18.7 °F" in at.lines[0]
    await _next_step(at)


async def _amount(at: AtApp) -> None:
    await at.type("3")
    await at.press("enter")
    await at.type("2")
    await at.press_until("enter", lambda: at.kept(AreaAdded))
    (added,) = at.kept(AreaAdded)
    # 3 ft by 2 ft are 6 ft2 = 0.5574 m2 (NIST SP 811, B.8: 1 ft2 = 9.290304 E-02 m2).
    assert added.area.value == pytest.approx(6 * 9.290304e-2, rel=1e-6)


async def _mix(at: AtApp) -> None:
    await at.type("300 ml")
    await at.press("enter")
    while not at.kept(BatchMixed):
        poured = len(at.kept(Poured))
        await at.press("space")
        assert len(at.kept(Poured)) == poured + 1
    # 300 ml in all: two parts, one part, and a tenth of both together of thinner.
    coating_ml = 300 / 1.1
    poured_ml = [each.amount.value for each in at.kept(Poured)]
    assert poured_ml == pytest.approx([coating_ml * 2 / 3, coating_ml / 3, coating_ml / 10])
    await _next_step(at)


async def _efflux(at: AtApp) -> None:
    for seconds in (21.4, 21.6, 22.0):
        await at.press("space")
        assert "stop at the first break" in at.key_line
        await at.pass_time(seconds)
        await at.press("space")
    assert [run.seconds for run in at.kept(EffluxTimed)] == [21.4, 21.6, 22.0]
    # (21.4 + 21.6 + 22.0) / 3 = 21.67; largest less smallest 0.6.
    # The words may be broken at the end of a line, so each figure by itself.
    assert "mean 21.7 s" in at.text and "0.6 s" in at.text
    await at.press("backspace")
    assert len(at.kept(Voided)) == 1
    assert "mean 21.5 s" in at.text and "0.2 s" in at.text and "  22.0" not in at.text
    # A press that bounces neither stops a run nor begins one.
    await at.press("space")
    await at.pass_time(0.2)
    await at.press_now("space")
    assert len(at.kept(EffluxTimed)) == 3 and "stop at the first break" in at.key_line
    await at.press("enter")
    assert at.step == "efflux" and "Space stops it" in at.text
    # The run is in the log: leaving the bench and coming back loses nothing of it.
    await at.press("f9")
    assert at.screen == "Home"
    await at.press("enter")
    await at.open_step("efflux")
    assert "stop at the first break" in at.key_line
    await at.pass_time(21.3)
    await at.press("space")
    assert at.kept(EffluxTimed)[-1].seconds == 21.5
    await _next_step(at)


async def _air(at: AtApp) -> None:
    await at.type("28")
    await at.press_until("enter", lambda: at.kept(AirRead))
    # NIST SP 811 B.8: 1 psi = 6.894757 kPa.
    assert at.kept(AirRead)[0].inlet.value == pytest.approx(28 * 6.894757, rel=1e-6)
    await _next_step(at)


async def _catch(at: AtApp) -> None:
    at.heard.sounds.clear()
    await at.press("space")
    for _ in range(3):
        assert "GET READY" in at.words or "get ready" in at.text
        await at.pass_time(1.0)
    await at.pass_time(30.0)
    assert "catching" in at.text
    await at.pass_time(30.0)
    # The whole window says STOP for a moment first.
    await at.until(lambda: "caught for" in at.text)
    assert at.heard.sounds[-1] == "signal" and at.heard.sounds.count("tick") >= 3
    assert "catch again" in at.key_line and "stop early" not in at.key_line
    await at.type("6")
    assert "6" in at.text and "fl oz" in at.text
    await at.press_until("enter", lambda: at.kept(CatchMade))
    (catch,) = at.kept(CatchMade)
    assert catch.seconds == 60.0
    # NIST SP 811 appendix B.8: 1 fluid ounce (US) = 29.57353 ml.
    assert catch.delivery_ml_min == pytest.approx(6 * 29.57353, rel=1e-6)
    # A full cup of 20 US fl oz at 6 fl oz/min lasts 20 / 6 min = 3 min 20 s.
    assert "a full cup of 20.0 fl oz lasts 3 min 20 s" in at.words
    await at.press("f3")
    assert "a full cup of 591 ml lasts 3 min 20 s" in at.words
    await at.press("f3")
    await _next_step(at)


async def _coats(at: AtApp) -> None:
    at.heard.sounds.clear()
    for part in PARTS:
        assert f"begin coat 1: {part}" in at.key_line
        await at.press("space")
        await at.pass_time(90)
        assert "1:30" in at.text and "SPRAYING" in at.words
        await at.press("space")
        await at.pass_time(1)
    # The first part has flashed off 8 min after its coat; 92 s of them are gone.
    await at.pass_time(8 * 60 - 93)
    assert "0:01" in at.text and at.heard.sounds == []
    await at.pass_time(1)
    assert at.heard.sounds == ["go_on"]
    assert at.lines[0].startswith(" left door: ready for coat 2 since")
    await at.pass_time(4)
    assert at.heard.sounds == ["go_on"]
    await at.pass_time(1)
    assert at.heard.sounds == ["go_on", "go_on"], "again every five seconds until acknowledged"
    # A note is being typed: the alarm is over it, and silencing it leaves the note.
    await at.press("f2")
    await at.type("dust")
    await at.beat()
    assert "left door: ready for coat 2" in at.lines[0]
    await at.press("escape")
    assert len(at.kept(AlarmAcknowledged)) == 1 and at.screen == "Ask"
    await at.press("enter")
    assert [note.text for note in at.kept(NoteMade)] == ["dust"]
    await at.pass_time(60)
    assert at.heard.sounds == ["go_on", "go_on"]
    assert "begin coat 2: left door" in at.key_line
    await at.press("space")
    await at.pass_time(90)
    await at.press("space")
    # The hood's coat ended 91 s after the door's and is ready by now.
    await at.press("pageup")
    assert "begin coat 2: hood" in at.key_line
    await at.press("space")
    await at.pass_time(90)
    await at.press("space")
    assert all(each.early_s == each.late_s == 0 for each in at.kept(CoatBegun))
    assert [(each.part, each.coat) for each in at.kept(CoatEnded)] == [
        ("left door", 1),
        ("hood", 1),
        ("left door", 2),
        ("hood", 2),
    ]
    assert at.text.count("2/2") == 2
    # From far away the glove hits the wrong key: nothing begins before Space.
    for key in ("x", "7", "tab", "delete", "home", "end"):
        await at.press(key)
    assert len(at.kept(CoatBegun)) == 4
    await _next_step(at)


async def _clean(at: AtApp) -> None:
    ticked = 0
    while "tick this line" in at.key_line:
        await at.press("space")
        ticked += 1
    assert len(at.kept(LineTicked)) == ticked > 2
    await _next_step(at)


async def _result(at: AtApp) -> None:
    assert "4 coats on 2 parts" in at.words or "laid on 2 parts" in at.words
    await at.press("right", "enter")
    await at.type("no runs")
    await at.press("enter")
    await at.type("slower")
    assert {each.why for each in at.kept(StepSkipped)} == {"not needed this time"}
    await at.press("enter")
    (closed,) = at.kept(JobClosed)
    assert (closed.verdict, closed.words, closed.next_time) == ("good", "no runs", "slower")
