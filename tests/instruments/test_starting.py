"""The next job starts from the last good one: where each step says so, and until when."""

from __future__ import annotations

from pathlib import Path

import pytest

from booth.bench.instrument import starting_point
from booth.job.past import last_good
from booth.learnt.past_jobs import PastJobs
from booth.log.events import AirRead, CatchMade, EffluxTimed, FanSet, JobClosed, JobOpened
from booth.log.session import Session
from booth.moment import Moment
from booth.shop.model import Gun, Shop
from booth.units import System
from booth.words.last_good_words import good_lines
from tests.instruments.at_bench import AtBench
from tests.job.make import profile, q
from tests.manual_clock import ManualClock

SHOP = Shop(guns=(Gun("blue gun"), Gun("red gun")))
KEY = profile().key


def past_job(
    folder: Path, clock: ManualClock, gun: str, inlet_kpa: float, verdict: str = "good"
) -> None:
    """A closed job with this gun: cup, air, two catches, the fan."""
    now = clock.now()
    opened = JobOpened(
        n=1, at=now, job=f"past-{gun}-{inlet_kpa:g}", profile=profile(), parts=("door",), gun=gun
    )
    session = Session.begin(folder, opened)
    for event in (
        EffluxTimed(n=0, at=now, cup="ford-4", seconds=21.5),
        AirRead(n=0, at=now, inlet=q(inlet_kpa, "kPa")),
        caught(now, 155, 1.0),
        caught(now, 255, 2.0),
        FanSet(n=0, at=now, width=q(250, "mm")),
        JobClosed(n=0, at=now, verdict=verdict, next_time="[b]slower[/b] at the edge"),
    ):
        session.record(event)
    session.close()
    clock.advance(3600)


def caught(now: Moment, delivery: float, turns: float) -> CatchMade:
    return CatchMade(
        n=0,
        at=now,
        seconds=60,
        amount=q(delivery, "ml"),
        delivery_ml_min=delivery,
        turns=q(turns, "turns"),
    )


def at_step(step: str, folder: Path) -> AtBench:
    """At a step of a new job with the first gun, after the past jobs of a folder."""
    good, past = last_good(folder, KEY, SHOP.guns[0].name), PastJobs(folder)
    return AtBench(step, shop=SHOP, good=good, past=past)


def record(bench: AtBench) -> str:
    """What stands under the figure: what was kept, else where to start from."""
    return "\n".join(bench.record or starting_point(bench.bench.instrument, bench.now))


def test_the_last_good_job_is_that_of_the_gun(tmp_path: Path) -> None:
    clock = ManualClock()
    past_job(tmp_path, clock, "blue gun", 190)
    past_job(tmp_path, clock, "red gun", 200)
    past_job(tmp_path, clock, "blue gun", 150, verdict="redo")
    blue = "\n".join(good_lines(last_good(tmp_path, KEY, "blue gun"), System.METRIC))
    assert "Last good with this product and blue gun" in blue
    assert "inlet 1.90 bar" in blue
    assert "To change this time: [b]slower[/b] at the edge" in blue
    red = "\n".join(good_lines(last_good(tmp_path, KEY, "red gun"), System.METRIC))
    assert "and red gun" in red and "inlet 2.00 bar" in red


def test_a_first_job_has_no_last_one(tmp_path: Path) -> None:
    assert last_good(tmp_path, KEY, "blue gun") is None
    assert record(at_step("catch", tmp_path)) == record(at_step("fan", tmp_path)) == ""


@pytest.mark.parametrize(
    ("step", "words"),
    [
        ("efflux", "last good: 21.5 s in a Ford #4"),
        ("catch", "last good: 255 ml/min, needle 2 turns"),
        # 155 at 1 turn and 255 at 2: halfway lies 205, the middle of 170 to 240 ml/min.
        ("catch", "for 205 ml/min try ~1.5 turns (estimate 1-2)"),
        ("fan", "last good: fan 250 mm"),
        ("air", "last good: inlet 1.90 bar"),
    ],
)
def test_a_step_starts_from_the_last_good_setting(tmp_path: Path, step: str, words: str) -> None:
    past_job(tmp_path, ManualClock(), "blue gun", 190)
    assert words in record(at_step(step, tmp_path))


def test_until_it_has_its_own(tmp_path: Path) -> None:
    past_job(tmp_path, ManualClock(), "blue gun", 190)
    fan = at_step("fan", tmp_path)
    fan.type("240")
    fan.press("enter", "enter", "enter")
    assert "last good" not in record(fan) and "240 mm" in record(fan)
    cup = at_step("efflux", tmp_path)
    cup.press("space")
    cup.pass_time(19.0)
    cup.press("space")
    assert "last good" not in record(cup) and "20.0" in record(cup)
    catch = at_step("catch", tmp_path)
    catch.type("60")
    catch.press("enter", "enter")
    assert "last good" not in record(catch) and "60" in record(catch)
