"""What changes in a running job, on the screen: one command, and lists that gloves can choose from."""

from __future__ import annotations

from booth.log.events import CoatsChanged, GunChanged, PartsChanged
from tests.screens.at_app import at_bench


async def test_a_coat_more_without_a_letter() -> None:
    async with at_bench("coats") as at:
        await at.press("right")
        assert "Change coats, parts, gun, tip or cup" in at.text
        await at.press("escape", "f12")
        assert at.screen == "Menu" and "What changes?" in at.text
        await at.press("enter")
        assert at.screen == "BenchScreen" and len(at.kept(CoatsChanged)) == 1


async def test_a_tip_from_the_list_and_a_part_by_its_name() -> None:
    async with at_bench("coats") as at:
        await at.press("f12")
        await at.open("Another tip")
        await at.open("1.4 mm")
        (fitted,) = at.kept(GunChanged)
        assert fitted.tip is not None and fitted.tip.value == 1.4
        await at.press("f12")
        await at.open("Add parts")
        assert at.screen == "Ask" and "24 doors x 2 sides" in at.text
        await at.type("6 shelves x 2 sides")
        await at.press("enter")
        (added,) = at.kept(PartsChanged)
        assert added.racks[0].title == "6 shelves" and "6 shelves" in at.text
