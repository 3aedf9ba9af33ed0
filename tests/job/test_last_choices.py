"""What was chosen once holds for the next job, and is said where it is offered. Invented values."""

from __future__ import annotations

from pathlib import Path

import pytest

from booth.job.last_choices import tip_last, weighed_last
from booth.learnt.past_jobs import PastJobs
from booth.log import events as ev
from booth.profile.model import Mix, MixPart, Profile
from tests.instruments.at_bench import AtBench
from tests.job.make import one_time, profile
from tests.log.logs import caught, moment, opened, quantity, voided, write


def poured(unit: str) -> ev.Poured:
    return ev.Poured(
        n=0,
        at=moment(60),
        batch=1,
        name="clear",
        amount=quantity(100, unit),
        wanted=quantity(150, unit),
    )


def tipped(gun: str, mm: float | None) -> ev.GunChanged:
    tip = None if mm is None else quantity(mm, "mm")
    return ev.GunChanged(n=0, at=moment(70), gun=gun, tip=tip)


def job(folder: Path, day: int, *events: ev.Event, gun: str = "A") -> None:
    name = f"202506{day:02d}-1200-demo-0001"
    write(folder, name, opened(gun=gun, job=name), *events)


def test_whether_the_scale_was_used_in_the_last_job_that_mixed(tmp_path: Path) -> None:
    assert weighed_last(None) is None and weighed_last(tmp_path) is None
    job(tmp_path, 1, poured("g"))
    assert weighed_last(tmp_path) is True
    # A job in which nothing was mixed says nothing; one that was voided neither.
    job(tmp_path, 2)
    job(tmp_path, 3, poured("ml"), voided(2))
    assert weighed_last(tmp_path) is True
    job(tmp_path, 4, poured("ml"))
    assert weighed_last(tmp_path) is False
    assert weighed_last(tmp_path, "20250604-1200-demo-0001") is True
    (tmp_path / "20250605-1200-demo-0001.jsonl").write_text('"poured" nothing\n')
    assert weighed_last(tmp_path) is False


def test_the_tip_of_the_last_job_with_that_gun(tmp_path: Path) -> None:
    assert tip_last(None, "A") is None and tip_last(tmp_path, "A") is None
    job(tmp_path, 1, tipped("A", 1.6))
    job(tmp_path, 2, tipped("B", 1.3))
    # The job of the second day was begun with A and went on with B.
    assert (tip_last(tmp_path, "A"), tip_last(tmp_path, "B")) == (1.6, 1.3)
    # What was typed at the catch came later.
    job(tmp_path, 3, tipped("A", 1.6), caught(180, tip=1.8))
    assert tip_last(tmp_path, "A") == 1.8
    # In the last one it was the shop file's own again: nothing was said of another.
    job(tmp_path, 4)
    assert tip_last(tmp_path, "A") is None


CLEAR = profile(
    mix=Mix(
        parts=(MixPart("clear", 2, 1.0), MixPart("hardener", 1, 1.05)),
        pot_life=one_time(4 * 3600),
    )
)
NO_DENSITY = profile(mix=Mix(parts=(MixPart("clear", 2), MixPart("hardener", 1))))


def at_mix(folder: Path, product: Profile = CLEAR) -> AtBench:
    return AtBench("mix", profile=product, past=PastJobs(folder))


@pytest.mark.parametrize(("unit", "by"), [("g", "weight"), ("ml", "volume")])
def test_the_mix_begins_as_the_last_job_did(tmp_path: Path, unit: str, by: str) -> None:
    job(tmp_path, 1, poured(unit))
    b = at_mix(tmp_path)
    assert ("By weight, as in the last job." in b.text) is (unit == "g")
    b.type("300 ml")
    assert b.rows.values["by"] == by
    assert ("By weight, as in the last job. The scale is at zero" in b.text) is (unit == "g")
    assert b.readout.shown_word == "POUR" and b.readout.label == "pour clear up to"
    b.press("space", "space")
    batch = b.log[-1]
    assert isinstance(batch, ev.BatchMixed) and batch.total is not None
    assert batch.total.unit == unit
    # From here on this job says it itself.
    b.type("300 ml")
    assert b.rows.values["by"] == by and "as in the last job" not in b.text


def test_another_way_can_be_chosen(tmp_path: Path) -> None:
    job(tmp_path, 1, poured("g"))
    b = at_mix(tmp_path)
    b.type("300 ml")
    b.go_to("by")
    b.press("right")
    assert b.rows.values["by"] == "volume"
    assert "as in the last job" not in b.text


def test_what_cannot_be_weighed_is_not(tmp_path: Path) -> None:
    job(tmp_path, 1, poured("g"))
    b = at_mix(tmp_path, NO_DENSITY)
    assert "as in the last job; without every density by volume." in b.text
    b.type("300 ml")
    assert b.rows.values.get("by") in (None, "volume")
    b.press("space")
    last = b.log[-1]
    assert isinstance(last, ev.Poured) and last.amount.unit == "ml"


def test_once_anything_was_weighed_in_this_job_the_scale_is_offered() -> None:
    weighed = ev.Poured(
        n=0,
        at=moment(0),
        batch=1,
        name="clear",
        amount=quantity(200, "g"),
        wanted=quantity(300, "ml"),
    )
    done = ev.BatchMixed(n=0, at=moment(1), batch=1, total=quantity(300, "g"))
    b = AtBench("mix", profile=CLEAR, before=lambda clock: (weighed, done))
    b.type("100 ml")
    assert b.rows.values["by"] == "weight"
