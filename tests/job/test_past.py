"""What past jobs teach the next one."""

from __future__ import annotations

from pathlib import Path

import msgspec
import pytest

from booth.job.past import last_good
from booth.learnt import past_jobs
from booth.learnt.past_jobs import PastJobs
from booth.log import events as ev
from booth.units import Quantity
from tests.log.logs import PROFILE, caught, closed, moment, opened, quantity, timed, voided, write


def test_last_good_takes_the_latest_good_one_of_profile_and_gun(tmp_path: Path) -> None:
    other = msgspec.structs.replace(PROFILE, key="other")
    write(tmp_path, "20250601-1200-demo-0001", opened(seconds=-9e5, gun="A"), timed(20), closed())
    write(tmp_path, "20250602-1200-demo-0002", opened(seconds=-8e5, gun="B"), timed(25), closed())
    write(tmp_path, "20250603-1200-demo-0003", opened(seconds=-7e5, gun="A"), closed("usable"))
    write(tmp_path, "20250604-1200-demo-0004", opened(seconds=-6e5, gun="A"), closed(), voided(2))
    write(tmp_path, "20250605-1200-demo-0005", opened(profile=other, gun="A"), timed(9), closed())
    assert last_good(tmp_path, PROFILE.key).figures["efflux"] == 25  # type: ignore[union-attr]
    assert last_good(tmp_path, PROFILE.key, "A").figures["efflux"] == 20  # type: ignore[union-attr]
    assert last_good(tmp_path, PROFILE.key, "C") is None
    assert last_good(tmp_path, "none") is None


def test_of_two_in_one_minute_the_later_is_last(tmp_path: Path) -> None:
    write(tmp_path, "20250615-1506-demo-ffff", opened(), timed(20), closed())
    write(tmp_path, "20250615-1506-demo-0000", opened(seconds=9), timed(21), closed())
    found = last_good(tmp_path, PROFILE.key)
    assert found is not None and found.figures["efflux"] == 21


def test_good_settings_are_the_last_ones_that_count(tmp_path: Path) -> None:
    write(
        tmp_path,
        "20250615-1506-demo-0001",
        opened(gun="A", job="the job"),
        timed(30, "Zahn #2"),
        timed(99),  # 3: before the thinner
        ev.ThinnerAdded(n=0, at=moment(60), amount=quantity(50, "ml")),
        timed(21),
        timed(23),
        timed(80),
        voided(7),  # 5, 6 count; 7 does not
        caught(150, 1.0),
        caught(176, 1.5),
        caught(180, 1.5),
        caught(400, 9.0),
        voided(12),
        ev.AirRead(n=0, at=moment(70), inlet=quantity(200, "kPa"), fan_turns=quantity(2, "turns")),
        ev.FanSet(
            n=0,
            at=moment(80),
            width=quantity(250, "mm"),
            turns=quantity(2.5, "turns"),
            distance=quantity(180, "mm"),
        ),
        ev.PatternRead(n=0, at=moment(90), shape="even", overlap=quantity(60, "%")),
        ev.PassTimed(n=0, at=moment(95), length=quantity(1.0, "m"), seconds=2.5),
        closed(next_time="a little faster"),
    )
    found = last_good(tmp_path, PROFILE.key)
    assert found is not None
    assert (found.gun, found.cup, found.liquid) == ("A", "Ford #4", "paint")
    assert found.next_time == "a little faster"
    assert found.figures == {
        "efflux": 22,
        "inlet": 200,
        "delivery": 178,
        "needle": 1.5,
        "tip": 1.4,
        "fan": 250,
        "distance": 180,
        "fan open": 2.5,
        "overlap": 60,
        "pace": 0.4,
    }


def test_what_was_not_measured_is_not_there(tmp_path: Path) -> None:
    write(tmp_path, "20250615-1506-demo-0001", opened(), closed())
    found = last_good(tmp_path, PROFILE.key)
    assert found is not None and found.figures == {}


def test_pairs_of_turns_and_delivery(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    other = msgspec.structs.replace(PROFILE, key="other")
    write(
        tmp_path,
        "20250601-1200-demo-0001",
        opened(gun="A"),
        caught(150, 1.0),
        caught(999, 5.0),
        voided(3),
        caught(170, None),
        caught(180, 1.5, tip=None),
    )
    write(tmp_path, "20250602-1200-demo-0002", opened(gun="B"), caught(300, 2.0, tip=1.8))
    write(
        tmp_path,
        "20250603-1200-demo-0003",
        opened(profile=other, gun="A"),
        caught(200, 1.2, "water"),
        caught(130, 1.2),
    )
    assert [*PastJobs(tmp_path).pairs("A")] == [
        (1.2, 200, "water"),
        (1.2, 130, "paint"),
        (1.0, 150, "paint"),
        (1.5, 180, "paint"),
    ]
    assert [*PastJobs(tmp_path).pairs("A", 1.4, PROFILE.key)] == [
        (1.2, 200, "water"),
        (1.0, 150, "paint"),
    ]
    assert [*PastJobs(tmp_path).pairs(tip_mm=1.8)] == [(2.0, 300, "paint")]
    monkeypatch.setattr(past_jobs, "MOST_PAIRS", 1)
    assert [*PastJobs(tmp_path).pairs("A")] == [(1.2, 200, "water")]


def test_a_quantity_of_another_unit_is_no_pace(tmp_path: Path) -> None:
    write(
        tmp_path,
        "20250615-1506-demo-0001",
        opened(),
        closed(),
        ev.PassTimed(n=0, at=moment(), length=Quantity(1, "furlong", "1 furlong"), seconds=2),
        ev.PassTimed(n=0, at=moment(), length=quantity(900, "mm"), seconds=0),
    )
    found = last_good(tmp_path, PROFILE.key)
    assert found is not None and "pace" not in found.figures


def test_a_job_teaches_of_the_gun_it_came_to(tmp_path: Path) -> None:
    other = ev.GunChanged(n=0, at=moment(120), gun="B")
    first, then = caught(150, 1.0), caught(300, 2.0)
    write(
        tmp_path,
        "20250601-1200-demo-0001",
        opened(gun="A"),
        timed(20),
        first,
        other,
        then,
        closed(),
    )
    assert PastJobs(tmp_path).pairs("A") == () and last_good(tmp_path, PROFILE.key, "A") is None
    assert [each.delivery_ml_min for each in PastJobs(tmp_path).pairs("B")] == [300]
    found = last_good(tmp_path, PROFILE.key, "B")
    assert found is not None and (found.gun, found.figures["delivery"]) == ("B", 300)
