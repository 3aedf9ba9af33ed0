"""Walking the list of steps changes nothing until one is opened."""

from __future__ import annotations

import pytest
from textual import events

from booth.log.events import AreaAdded, CoatBegun, StepDone, StepSkipped, Voided
from booth.widgets.step_list import StepList, StepState
from tests.screens.test_whole_job import Painter, painter


def _marked(p: Painter) -> str:
    rows = p.bench.query_one(StepList).steps
    return next(row.name for row in rows if row.state is StepState.CURRENT)


@pytest.mark.parametrize("leave", ["left", "escape"])
async def test_walked_along_and_left_the_open_step_is_still_the_open_one(leave: str) -> None:
    async with painter() as p:
        await p.begin()
        await p.go_to("fresh-air")
        await p.press("up", "up", "up", "up")
        await p.press("down", "down", "down", "down", "down", "down")
        assert p.bench.picking and _marked(p) != "Fresh air"
        await p.press(leave)
        assert not p.bench.picking
        assert p.kind == "fresh-air" and _marked(p) == "Fresh air"
        skipped = len(p.kept(StepSkipped))
        await p.press("f6")
        await p.until(lambda: p.kind == "amount")
        assert p.kept(StepSkipped)[skipped].step == "fresh-air"


async def test_a_step_picked_from_the_list_is_opened() -> None:
    async with painter() as p:
        await p.begin()
        await p.go_to("plan")
        await p.press("escape", "up", "up")
        assert _marked(p) == "Fresh air"
        await p.press("enter")
        await p.until(lambda: p.kind == "fresh-air" and p.bench.instrument is not None)
        assert p.kept(StepDone) == []


@pytest.mark.parametrize(("key", "opens"), [("f2", "Ask"), ("f4", "JobLog"), ("f9", "Home")])
async def test_the_keys_of_the_bench_work_while_a_step_is_picked(key: str, opens: str) -> None:
    async with painter() as p:
        await p.begin()
        await p.go_to("coats")
        await p.press("escape")
        assert p.bench.picking
        await p.press(key)
        await p.until(lambda: p.screen == opens)


async def test_backspace_while_a_step_is_picked_voids_nothing() -> None:
    async with painter() as p:
        await p.begin()
        await p.go_to("coats")
        await p.press("space")
        await p.until(lambda: bool(p.kept(CoatBegun)))
        await p.press("escape", "backspace")
        assert not p.bench.picking and p.kept(Voided) == []


async def test_a_key_of_the_step_itself_stands_once_in_the_key_line() -> None:
    async with painter(size=(200, 24)) as p:
        await p.begin()
        await p.go_to("mix")
        await p.type("500 ml")
        assert "back one pour" in p.key_line
        assert p.key_line.count("Bksp") == 1


async def test_two_digits_at_once_are_one_number() -> None:
    """The first begins the entry and moves the focus; the second comes before that is done."""
    async with painter() as p:
        await p.begin()
        await p.go_to("amount")
        for digit in "12":
            p.app.post_message(events.Key(digit, digit))
        await p.until(lambda: "= 12 ft" in p.text)
        await p.press("enter")
        await p.type("2")
        await p.press("enter")
        await p.until(lambda: bool(p.kept(AreaAdded)))
        (added,) = p.kept(AreaAdded)
        assert {name: each.typed for name, each in added.dimensions.items()} == {
            "length": "12",
            "width": "2",
        }


async def test_what_is_typed_while_a_step_is_opened_is_for_that_step() -> None:
    async with painter() as p:
        await p.begin()
        await p.go_to("amount")
        await p.press("escape", "up", "up")  # at Weather
        for key in ("enter", "7", "1"):
            p.app.post_message(events.Key(key, key if key.isdigit() else None))
        await p.until(lambda: p.kind == "weather" and "= 71 °F" in p.text)
