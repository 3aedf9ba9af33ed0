"""Turns to try and paint from water, by a painter's own catches. All values invented."""

from __future__ import annotations

from pathlib import Path

import msgspec
import pytest

from booth.job.needle_advice import (
    CatchPair,
    catch_pairs,
    paint_words,
    turns_words,
    water_paint_pairs,
)
from booth.learnt.past_jobs import PastJobs
from booth.log.events import CatchMade, Event
from booth.log.fold import Job, fold
from booth.log.session import Session
from booth.profile.model import Gun
from booth.trade.delivery.water import WaterPaintPair
from booth.units import System
from tests.job.make import at, opened, q


def caught(delivery: float, turns: float | None = None, liquid: str = "paint") -> CatchMade:
    return CatchMade(
        n=0,
        at=at(0),
        seconds=60,
        amount=q(delivery, "ml"),
        delivery_ml_min=delivery,
        liquid=liquid,
        turns=None if turns is None else q(turns, "turns"),
    )


def job_of(*kept: Event, **changes: object) -> Job:
    return fold(
        [opened(**changes), *(msgspec.structs.replace(e, n=n) for n, e in enumerate(kept, 2))]
    )


def turns(job: Job, past: tuple[CatchPair, ...] = ()) -> str:
    return turns_words(job, catch_pairs(job, past), System.METRIC)


def test_turns_lie_on_the_line_between_two_catches() -> None:
    # 170 to 240 ml/min are asked for, 205 in the middle; the last catch is out of range. From 160
    # at 2 turns to 250 at 2.5, halfway between is 205.
    job = job_of(caught(160, 2.0), caught(250, 2.5))
    assert turns(job) == "for 205 ml/min try ~2.25 turns (estimate 2-2.5)"


def test_past_catches_tell_before_the_first_one() -> None:
    past = (
        CatchPair(1.0, 155, "paint"),
        CatchPair(2.0, 255, "paint"),
        CatchPair(1.5, 900, "water"),
    )
    assert turns(job_of(), past) == "for 205 ml/min try ~1.5 turns (estimate 1-2)"


def test_beyond_what_was_caught_only_the_way_to_turn_is_told() -> None:
    said = turns(job_of(caught(120, 1.0)))
    assert said.startswith("for 205 ml/min: Open the needle beyond 1 turns")


@pytest.mark.parametrize(
    "job",
    [
        job_of(),
        job_of(caught(205, 2.0)),  # in range: nothing to turn
        job_of(caught(120)),  # its turns are not known
        job_of(caught(300, 2.0, "water")),  # water is no paint
        job_of(caught(120, 1.0), gun=Gun()),
    ],
)
def test_nothing_is_said_where_nothing_is_known_or_needed(job: Job) -> None:
    assert turns(job) == ""


def test_water_and_paint_pair_up_at_one_setting() -> None:
    found = water_paint_pairs(
        [
            CatchPair(2.0, 250, "water"),
            CatchPair(2.0, 210, "paint"),
            CatchPair(2.02, 190, "paint"),
            CatchPair(1.0, 120, "water"),
            CatchPair(3.0, 300, "paint"),
            CatchPair(2.0, 0, "water"),
        ]
    )
    assert found == [WaterPaintPair(250.0, 200.0)]


def test_catch_of_water_stands_for_paint_by_own_pairs() -> None:
    past = (CatchPair(2.0, 250, "water"), CatchPair(2.0, 200, "paint"))
    job = job_of(caught(300, 2.5, "water"))
    said = paint_words(job, catch_pairs(job, past), System.METRIC)
    # 200 of 250 is 0.8; of one pair at least a tenth each way: 0.72 to 0.88 of 300.
    assert said == "as coating ~240 ml/min (estimate 216-264)"


def test_water_without_a_pair_and_paint_say_nothing() -> None:
    water, paint = job_of(caught(300, 2.5, "water")), job_of(caught(200, 2.0))
    assert paint_words(water, catch_pairs(water), System.METRIC) == ""
    assert paint_words(paint, catch_pairs(paint), System.METRIC) == ""
    assert paint_words(job_of(), [], System.METRIC) == ""


def test_job_at_hand_is_left_out_of_the_past(tmp_path: Path) -> None:
    for name, ml in (("one", 150.0), ("two", 170.0)):
        first = msgspec.structs.replace(opened(), job=name)
        session = Session.begin(tmp_path, first)
        session.record(caught(ml, 1.5))
        session.close()
    assert sorted(each.delivery_ml_min for each in PastJobs(tmp_path).pairs()) == [150.0, 170.0]
    assert [each.delivery_ml_min for each in PastJobs(tmp_path).pairs(without="two")] == [150.0]
