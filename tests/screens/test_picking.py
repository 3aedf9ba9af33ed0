"""Walking the list of steps changes nothing until one is opened."""

from __future__ import annotations

import pytest

from booth.log.events import AreaAdded, CoatBegun, StepDone, StepSkipped, Voided
from booth.widgets.lists import StepList, StepState
from tests.screens.at_app import AtApp, at_bench


def _marked(at: AtApp) -> str:
    rows = at.bench.query_one(StepList).shown
    return next(row.name for row in rows if row.state is StepState.CURRENT)


def _picking(at: AtApp) -> bool:
    return bool(at.bench.bench.picked)


@pytest.mark.parametrize("leave", ["left", "escape", "backspace"])
async def test_walked_along_and_left_the_open_step_is_still_the_open_one(leave: str) -> None:
    async with at_bench("fresh-air") as at:
        await at.press("up", "up", "up", "up")
        await at.press("down", "down", "down", "down", "down", "down")
        assert _picking(at) and _marked(at) != "Fresh air"
        await at.press(leave)
        assert not _picking(at)
        assert at.step == "fresh-air" and _marked(at) == "Fresh air"
        await at.press("f6", "enter")
        assert at.step == "amount"
        (skipped,) = at.kept(StepSkipped)
        assert (skipped.step, skipped.why) == ("fresh-air", "not needed this time")


async def test_a_step_picked_from_the_list_is_opened() -> None:
    async with at_bench("plan") as at:
        await at.press("escape", "up", "up")
        assert _marked(at) == "Fresh air"
        await at.press("enter")
        assert at.step == "fresh-air" and not _picking(at)
        assert at.kept(StepDone) == []


@pytest.mark.parametrize(("key", "opens"), [("f2", "Menu"), ("f4", "JobLog"), ("f9", "Home")])
async def test_the_keys_of_the_bench_work_while_a_step_is_picked(key: str, opens: str) -> None:
    async with at_bench("coats") as at:
        await at.press("escape")
        assert _picking(at)
        await at.press(key)
        assert at.screen == opens


async def test_backspace_while_a_step_is_picked_voids_nothing() -> None:
    async with at_bench("coats") as at:
        await at.press("space")
        assert at.kept(CoatBegun)
        await at.press("escape", "backspace")
        assert not _picking(at) and at.kept(Voided) == []


async def test_space_opens_the_picked_step_and_begins_no_coat() -> None:
    async with at_bench("plan") as at:
        await at.press("escape")
        while _marked(at) != "Coats and waits":
            await at.press("down")
        await at.press("space")
        assert at.step == "coats" and at.kept(CoatBegun) == []


async def test_two_digits_at_once_are_one_number() -> None:
    """The second comes before what the first does is drawn."""
    async with at_bench("amount") as at:
        at.post("1", "2")
        await at.settle()
        assert "= 12 ft" in at.text
        await at.press("enter")
        await at.type("2")
        await at.press("enter", "enter")
        (added,) = at.kept(AreaAdded)
        assert {name: each.typed for name, each in added.dimensions.items()} == {
            "length": "12",
            "width": "2",
        }


async def test_what_is_typed_while_a_step_is_opened_is_for_that_step() -> None:
    async with at_bench("amount") as at:
        await at.press("escape", "up", "up")  # at Weather
        at.post("enter", "7", "1")
        await at.settle()
        assert at.step == "weather" and "= 71 °F" in at.text
