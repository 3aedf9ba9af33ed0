"""What was typed in a step and not kept stands there on coming back to it."""

from __future__ import annotations

from booth.units import System
from tests.instruments.at_bench import AtBench


def test_what_was_typed_is_there_on_coming_back() -> None:
    desk = AtBench("weather")
    desk.type("21")
    desk.press("enter")
    desk.type("5")
    first, second = (row.key for row in desk.rows.sight[:2])
    desk.open("mix")
    assert not desk.rows.holds
    assert not desk.log, "nothing of it was kept"
    desk.open("weather")
    assert (desk.row(first).text, desk.row(second).text, desk.marked) == ("21", "5", second)


def test_what_was_left_typed_keeps_its_meaning_under_other_units() -> None:
    desk = AtBench("weather", system=System.METRIC)
    desk.type("20")  # °C
    (key,) = (row.key for row in desk.rows.every if row.text)
    desk.open("mix")
    desk.system = System.US
    desk.bench.units_changed(System.METRIC, System.US, desk.clock.now())
    desk.open("weather")
    assert (desk.row(key).text, desk.row(key).fault) == ("20 °C", "")


def test_what_was_kept_is_not_there_again() -> None:
    desk = AtBench("weather")
    for text in ("20", "50", "18"):
        desk.type(text)
        desk.press("enter")
    assert desk.log
    desk.open("mix")
    desk.open("weather")
    assert not desk.rows.holds
