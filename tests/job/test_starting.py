"""The last good settings in words. All values invented."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from booth.job.past_settings import GoodSettings
from booth.units import System
from booth.words.last_good_words import good_lines, starting_points
from tests.job.make import START

GOOD = GoodSettings(
    START,
    "blue gun",
    {
        "efflux": 21.5,
        "thinner": 10.04,
        "delivery": 200.0,
        "needle": 2.25,
        "tip": 1.4,
        "inlet": 190.0,
        "fan": 250.0,
        "distance": 180.0,
        "overlap": 50.0,
        "pace": 0.4,
    },
    cup="ford-4",
    liquid="paint",
    next_time="less on\x1b[2J the edge",
)
BARE = GoodSettings(START)


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
        "Last good with this product:",
        "nothing was measured in it",
    )


def test_unknown_cup_of_a_later_version_says_nothing() -> None:
    assert "efflux" not in starting_points(replace(GOOD, cup="no-such"), System.US)


def test_water_is_called_water() -> None:
    words = starting_points(replace(GOOD, liquid="water"), System.METRIC)["catch"]
    assert words.startswith("last good: 200 ml/min of water")


def test_lines_before_a_job_tell_gun_day_and_what_to_change() -> None:
    lines = good_lines(GOOD, System.METRIC, "2025-06-15")
    assert lines[0] == "Last good with this product and blue gun, 2025-06-15:"
    assert "; inlet 1.90 bar; " in lines[1]
    assert lines[-1].startswith("To change this time: less on")
    assert "\x1b" not in lines[-1]
