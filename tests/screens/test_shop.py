"""The shop's screen, worked by keys: what is asked, what is said, what is on the disk."""

from __future__ import annotations

import os
from dataclasses import replace

import pytest
from msgspec import defstruct

from booth.screens import shop_forms
from booth.screens.shop import ShopForm
from booth.screens.shop_forms import Item, fields, items, lines, with_item, without_item
from booth.shop.keys import SHOP
from booth.shop.model import Compressor, Gun, OwnCup, Room, Shop
from booth.shop.read import read_shop, read_shop_text
from booth.toml.document import table_of
from booth.toml.quantity import Quantity
from booth.toml.table import Tables
from booth.trade.cups.cup_table import CUPS
from booth.units import Kind, System
from booth.units import Quantity as Given
from tests.screens.at_app import AtApp, at_app
from tests.shop.made import WHOLE


def put_file(at: AtApp, text: str = WHOLE) -> None:
    at.places.shop_file.parent.mkdir(parents=True, exist_ok=True)
    at.places.shop_file.write_text(text, "utf-8")


def on_disk(at: AtApp) -> Shop:
    answer = read_shop(at.places.shop_file)
    assert answer.faults == ()
    return answer.shop


async def test_the_first_gun_of_an_empty_shop_row_by_row() -> None:
    async with at_app() as at:
        await at.open("Shop")
        assert "→ add a gun" in at.text and "+ add the compressor" in at.text
        await at.press("enter")
        assert at.screen == "ShopForm"
        await at.type("spot")
        assert "on: Tip" in at.key_line
        await at.press("enter")
        await at.type("1.2")
        await at.press("enter")
        await at.type("4.2 fl")
        await at.press("backspace", "backspace", "backspace")
        await at.press("enter")
        await at.type("9.5")
        await at.press("enter")
        await at.type("2 bar")
        await at.press("enter", "enter", "enter", "right")
        assert "keep" in at.key_line
        await at.press("enter")
        assert at.screen == "ShopScreen"
        gun = on_disk(at).guns[0]
        assert (gun.name, gun.tip_mm, gun.hvlp) == ("spot", 1.2, True)
        assert gun.cup_ml == pytest.approx(4.2 * 29.57353, rel=1e-5)
        assert gun.air_l_min == pytest.approx(9.5 * 28.31685, rel=1e-5)
        assert gun.inlet_kpa == pytest.approx(200.0)
        assert gun.needle_turns is None
        assert f"Kept in {at.places.shop_file}" in at.text.replace("\n", "")
        assert at.app.shop == on_disk(at), "a new job has the gun at once"
        assert os.listdir(at.places.shop_file.parent).count("shop.toml") == 1


async def test_a_name_is_needed_and_nothing_is_kept_on_escape() -> None:
    async with at_app() as at:
        await at.open("Shop")
        await at.press("enter", "up", "enter")
        assert at.screen == "ShopForm" and not at.places.shop_file.exists()
        assert at.marked == "name"
        await at.type("spot")
        await at.press("escape")
        assert at.screen == "ShopScreen" and not at.places.shop_file.exists()
        await at.press("escape")
        assert at.screen == "Home"


async def test_a_double_press_opens_one_form_and_skips_no_row() -> None:
    async with at_app() as at:
        await at.open("Shop")
        at.post("enter", "enter")  # both before the first has been dealt with
        await at.settle()
        assert at.stack == ["Home", "ShopScreen", "ShopForm"]
        assert at.marked == "name"
        assert "Name is needed" in at.text
        await at.press("enter")
        assert at.marked == "name" and not at.places.shop_file.exists()


async def test_one_value_is_changed_and_the_old_file_is_kept() -> None:
    async with at_app() as at:
        put_file(at, "# by hand\n" + WHOLE)
        await at.open("Shop")
        await at.press("enter", "down")
        await at.type("1.3")
        assert "= 1.3 mm" in at.text
        await at.press("enter")
        gun = on_disk(at).guns[0]
        before = read_shop_text(WHOLE, "x").shop.guns[0]
        assert gun.tip_mm == 1.3
        assert gun.inlet_kpa == before.inlet_kpa, "what was not touched is exactly as it was"
        (old,) = at.places.shop_file.parent.glob("shop.toml.before-*")
        assert old.read_text("utf-8") == "# by hand\n" + WHOLE
        assert old.name in at.text.replace("\n", "").replace(" ", "") or old.name in at.text
        # What the program wrote itself a moment ago is not kept again and again.
        await at.press("enter", "down")
        await at.type("1.5")
        await at.press("enter")
        assert on_disk(at).guns[0].tip_mm == 1.5
        assert len(list(at.places.shop_file.parent.glob("shop.toml.before-*"))) == 1


async def test_backspace_in_an_empty_row_forgets_its_value() -> None:
    async with at_app() as at:
        put_file(at)
        await at.open("Shop")
        await at.press("enter", "down", "down")
        assert "forget this value" in at.key_line
        await at.press("backspace")
        assert "20.0 fl oz" not in at.text
        await at.press("enter")
        assert on_disk(at).guns[0].cup_ml is None


async def test_an_entry_that_is_not_understood_stays_for_correction() -> None:
    async with at_app() as at:
        put_file(at)
        await at.open("Shop")
        await at.press("enter", "down")
        await at.type("28 psi")
        await at.press("enter")
        assert at.screen == "ShopForm" and "measures a pressure" in at.text
        assert on_disk(at) == read_shop_text(WHOLE, "x").shop
        assert "28 psi" in at.text


async def test_a_slip_of_the_unit_is_told_with_the_bounds() -> None:
    async with at_app() as at:
        put_file(at)
        await at.open("Shop")
        await at.pick("compressor")
        await at.press("enter")
        await at.type("60 ml")
        await at.press("enter")
        said = " ".join(at.text.split())
        assert at.screen == "ShopForm" and "volume of the receiver, from" in said
        assert on_disk(at).compressor == read_shop_text(WHOLE, "x").shop.compressor


async def test_the_compressor_needs_all_four_and_the_room_none() -> None:
    async with at_app() as at:
        await at.open("Shop")
        await at.pick("add the compressor")
        await at.press("enter")
        await at.type("80")
        # A receiver is told in gallons: a bare number means what the nameplate says.
        assert "80.0 gal" in at.text or "80 gal" in at.text
        await at.press("enter")
        for typed in ("12", "120", "150"):
            await at.type(typed)
            await at.press("enter")
        # The rated duty may be left out.
        await at.press("enter")
        compressor = on_disk(at).compressor
        assert compressor is not None
        assert compressor.receiver_l == pytest.approx(80 * 3.785412, rel=1e-5)
        assert compressor.cut_in_kpa == pytest.approx(120 * 6.894757, rel=1e-5)
        await at.pick("add the room")
        await at.press("enter", "down")
        await at.type("30 m3/min")
        # The open face and the file of a sensor may be left out, as all else.
        await at.press("enter", "enter", "enter")
        assert on_disk(at).room == Room(exhaust_m3_min=30.0)


async def test_a_cup_is_chosen_with_the_arrows_and_only_once() -> None:
    async with at_app() as at:
        await at.open("Shop")
        await at.pick("add a flow cup")
        await at.press("enter", "right", "enter")
        await at.type("1.05")
        await at.press("enter", "enter")
        second = list(CUPS)[1]
        assert on_disk(at).cups == (OwnCup(second, 1.05),)
        assert CUPS[second].name in at.text
        taken = fields(Item("cup"), on_disk(at))[0].choices
        assert second not in dict(taken) and len(taken) == len(CUPS) - 1


async def test_backspace_twice_removes_and_an_arrow_between_does_not() -> None:
    async with at_app() as at:
        put_file(at)
        await at.open("Shop")
        await at.press("backspace")
        assert "Backspace again removes clear gun." in at.text
        await at.press("down", "up", "backspace")
        assert len(on_disk(at).guns) == 2
        await at.press("backspace")
        assert [gun.name for gun in on_disk(at).guns] == ["primer gun"]
        await at.pick("room")
        await at.press("backspace", "backspace")
        assert on_disk(at).room is None and "add the room" in at.text


async def test_units_switch_on_the_list_and_in_the_form() -> None:
    async with at_app() as at:
        put_file(at)
        await at.open("Shop")
        assert "29 psi" in at.text
        await at.press("u")
        assert "2.00 bar" in at.text and "591 ml" in at.text and "29 psi" not in at.text
        await at.press("enter", "down", "down")
        await at.type("500")
        assert "= 500 ml" in at.text
        await at.press("f3")
        assert "16.9 fl oz" in at.text and "29 psi" in at.text
        await at.press("enter")
        assert on_disk(at).guns[0].cup_ml == pytest.approx(500.0, rel=1e-4)


async def test_a_file_with_faults_is_shown_and_left_alone() -> None:
    async with at_app() as at:
        put_file(at, '[[gun]]\nname = "a"\ntpi = "[/ x"\n')
        await at.open("Shop")
        assert "1 fault" in at.text and "add a gun" not in at.text
        await at.press("backspace", "enter")
        assert at.screen == "Sheet" and "tpi" in at.words
        await at.press("escape")
        assert at.screen == "ShopScreen"
        assert "tpi" in at.places.shop_file.read_text("utf-8")


async def test_a_file_damaged_meanwhile_is_not_written_over() -> None:
    async with at_app() as at:
        put_file(at)
        await at.open("Shop")
        put_file(at, "[[gun]\n")
        await at.press("enter", "down")
        await at.type("1.3")
        await at.press("enter")
        assert at.screen == "ShopForm" and "NOT kept" in at.text
        assert at.places.shop_file.read_text("utf-8") == "[[gun]\n"


async def test_a_folder_that_cannot_be_written_is_said() -> None:
    async with at_app() as at:
        at.places.shop_file.parent.parent.mkdir(parents=True, exist_ok=True)
        await at.open("Shop")
        await at.press("enter")
        at.places.shop_file.mkdir(parents=True)
        await at.type("spot")
        await at.press(*["enter"] * 8)
        assert at.screen == "ShopForm" and "NOT kept" in at.text and "spot" in at.text


async def test_hostile_text_is_drawn_as_it_stands() -> None:
    async with at_app() as at:
        put_file(at, '[[gun]]\nname = "[/ x [bold] \\u001b[2J"\n')
        await at.open("Shop")
        assert "[/ x [bold] ␛[2J" in at.text
        await at.press("enter")
        assert "[/ x [bold] ␛[2J" in at.lines[0]


async def test_the_first_screen_leads_here_and_tells_faults() -> None:
    async with at_app() as at:
        put_file(at, "x = 1\n")
        await at.read_anew()
        assert "shop.toml" in at.text and "1 fault" in at.text
        await at.open("Shop")
        assert at.screen == "ShopScreen"


async def test_help_says_what_it_is_for() -> None:
    async with at_app() as at:
        await at.open("Shop")
        await at.press("question_mark")
        # The path is as long as the home of this test: it may be broken over two rows.
        whole = "".join(each for each in at.text if each.isalnum() or each == ".")
        assert at.screen == "Sheet" and "shop.toml" in whole


@pytest.mark.parametrize("size", [(80, 24), (100, 30), (200, 50), (58, 18)])
async def test_every_row_of_the_longest_form_is_reached(size: tuple[int, int]) -> None:
    async with at_app(size=size) as at:
        put_file(at)
        await at.open("Shop")
        await at.press("enter")
        form = at.app.screen
        assert isinstance(form, ShopForm) and len(form.rows.sight) == 8
        for row in form.rows.sight:
            assert at.marked == row.key and row.field.label in at.text
            await at.press("down")


def test_what_a_form_shows_it_also_keeps() -> None:
    """Every item of a whole shop, taken through its form untouched, is what it was."""
    shop = read_shop_text(WHOLE, "x").shop
    for item in items(shop):
        if item.at is None and item.what in ("gun", "cup"):
            continue
        given = {field.key: field.default for field in fields(item, shop)}
        assert with_item(shop, item, given) == shop, item


#: A person sets the units with a key that works on every screen, and a folder in the file: no form.
NOT_IN_A_FORM = {"units", "cards"}


def test_every_key_has_its_row_and_no_row_is_without_a_key() -> None:
    keys = {path.replace("[]", "") for path, key in SHOP.keys.items() if table_of(key) is None}
    new = [item for item in items(Shop()) if item.at is None]
    rows = {f"{item.what}.{row.key}" for item in new for row in fields(item, Shop())}
    assert rows == keys - NOT_IN_A_FORM and keys > NOT_IN_A_FORM


def test_a_row_is_what_its_key_says_it_is() -> None:
    name, tip, *_, at, _, _, hvlp = fields(Item("gun"), Shop())
    assert (name.label, name.is_words, name.optional) == ("Name", True, False)
    assert (tip.label, tip.kind, tip.optional) == ("Tip", Kind.TIP, True)
    assert (at.label, at.hint) == ("at inlet", "the pressure it needs that air at")
    assert dict(hvlp.choices) == {"no": "no", "yes": "yes"} and hvlp.label == "HVLP"
    *needed, duty = fields(Item("compressor"), Shop())
    assert all(row.is_needed for row in needed)
    assert (duty.label, duty.kind, duty.is_needed) == ("Rated duty", Kind.PERCENT, False)
    assert not any(row.is_needed for row in fields(Item("room"), Shop()))


def test_a_key_that_is_added_is_asked_for_shown_and_kept(monkeypatch: pytest.MonkeyPatch) -> None:
    """One line in the table, and the attribute that holds it: the screen needs no line of its own."""
    hose = {"hose": Quantity("its bore, inside", '"3/8 in"', Kind.LENGTH, 3, 50)}
    gun = defstruct("Gun", [("hose_mm", float | None, None)], bases=(Gun,), frozen=True)
    guns = SHOP.table.keys["gun"]
    assert isinstance(guns, Tables)
    wider = replace(guns, one=replace(guns.one, keys=guns.one.keys | hose, make=gun))
    table = replace(SHOP.table, keys={**SHOP.table.keys, "gun": wider})
    monkeypatch.setattr(shop_forms, "SHOP", replace(SHOP, table=table))
    row = fields(Item("gun"), Shop())[-1]
    assert (row.key, row.label, row.hint) == ("hose", "Hose", "its bore, inside")
    assert (row.kind, row.optional) == (Kind.LENGTH, True)
    given = {"name": "spot", "hose": Given(9.0, "mm", "9 mm")}
    shop = with_item(Shop(), Item("gun"), given)
    assert shop.guns[0].hose_mm == 9.0  # type: ignore[attr-defined]
    assert "Hose          9.0 mm" in lines(Item("gun", 0), shop, System.METRIC)


def test_items_come_and_go() -> None:
    shop = Shop(guns=(Gun("a"), Gun("b")), compressor=Compressor(100, 300, 800, 1000))
    assert without_item(shop, Item("gun", 0)).guns == (Gun("b"),)
    assert without_item(shop, Item("compressor")).compressor is None
    more = with_item(shop, Item("gun"), {"name": "  c  d ", "tip": Given(1.3, "mm", "1.3")})
    assert more.guns[-1] == Gun("c d", tip_mm=1.3)
    assert with_item(shop, Item("room"), {}).room is None
    every = Shop(cups=tuple(OwnCup(key) for key in CUPS))
    assert Item("cup") not in items(every), "nothing is left to add"


def test_what_is_known_is_told_in_the_units_asked_for() -> None:
    shop = read_shop_text(WHOLE, "x").shop
    assert "Receiver      60.0 gal" in lines(Item("compressor"), shop, System.US)
    metric = lines(Item("compressor"), shop, System.METRIC)
    # 145 psi are 10.00 bar, 11 ft3/min are 311.5 l/min (NIST SP 811, B.8).
    assert any(line.startswith("Stops at") and "10.0 bar" in line for line in metric)
    assert any(line.startswith("Delivers") and "311 l/min" in line for line in metric)
