"""The last good settings in words. All values invented."""

from __future__ import annotations

from pathlib import Path

import pytest

from booth.job.past import GoodSettings
from booth.units import System
from booth.words.last_good_words import good_lines, starting_points
from tests.job.make import START

GOOD = GoodSettings(
    path=Path("x.jsonl"), job="x", opened=START, gun="blue gun", parts=("door",),
    efflux_s=21.5, efflux_cup="ford-4", thinner_percent=10.04, delivery_ml_min=200.0,
    delivery_liquid="paint", turns=2.25, tip_mm=1.4, inlet_kpa=190.0, fan_mm=250.0,
    distance_mm=180.0, overlap_percent=50.0, pass_mm_s=400.0, next_time="less on\x1b[2J the edge",
)  # fmt: skip
BARE = GoodSettings(path=Path("x"), job="x", opened=START, gun="", parts=("door",))


@pytest.mark.parametrize(
    ("kind", "us", "metric"),
    [
        ("efflux", "last good: 21.5 s in a Ford #4", "last good: 21.5 s in a Ford #4"),
        ("thin", "last good: 10 % thinner", "last good: 10 % thinner"),
        ("air", "last good: inlet 28 psi", "last good: inlet 1.90 bar"),
        (
            "catch",
            "last good: 6.8 fl oz/min, needle 2.25 turns, tip 1.4 mm",
            "last good: 200 ml/min, needle 2.25 turns, tip 1.4 mm",
        ),
        ("fan", "last good: fan 9.8 in, at 7.1 in", "last good: fan 250 mm, at 180 mm"),
        ("pattern", "last good: 50 % overlap", "last good: 50 % overlap"),
        ("pace", "last good: pace 79 ft/min", "last good: pace 0.40 m/s"),
    ],
)
def test_each_step_starts_from_what_came_out_good(kind: str, us: str, metric: str) -> None:
    assert starting_points(GOOD, System.US)[kind] == us
    assert starting_points(GOOD, System.METRIC)[kind] == metric


def test_what_was_not_measured_has_no_words() -> None:
    assert starting_points(BARE, System.US) == {}
    assert starting_points(None, System.US) == {}
    assert good_lines(None, System.US) == ()
    assert good_lines(BARE, System.US) == (
        "Last good with this product:", "nothing was measured in it",
    )  # fmt: skip


def test_unknown_cup_of_a_later_version_says_nothing() -> None:
    from dataclasses import replace

    assert "efflux" not in starting_points(replace(GOOD, efflux_cup="no-such"), System.US)


def test_water_is_called_water() -> None:
    from dataclasses import replace

    words = starting_points(replace(GOOD, delivery_liquid="water"), System.METRIC)["catch"]
    assert words.startswith("last good: 200 ml/min of water")


def test_lines_before_a_job_tell_gun_day_and_what_to_change() -> None:
    lines = good_lines(GOOD, System.METRIC, "2025-06-15")
    assert lines[0] == "Last good with this product and blue gun, 2025-06-15:"
    assert "; inlet 1.90 bar; " in lines[1]
    assert lines[-1].startswith("To change this time: less on")
    assert "\x1b" not in lines[-1]
