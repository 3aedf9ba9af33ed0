"""The shop file: what it says, and every fault of it at once. All values are invented."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.shop.keys import ALSO_CALLED, SHOP
from booth.shop.model import Compressor, Gun, OwnCup, Shop
from booth.shop.read import read_shop, read_shop_text
from tests.shop.made import WHOLE


def faults_of(text: str) -> list[str]:
    """The faults of a text; no shop comes of it."""
    answer = read_shop_text(text, "shop.toml")
    assert answer.faults and answer.shop == Shop()
    return [str(fault) for fault in answer.faults]


def test_a_whole_file_in_base_units() -> None:
    """Factors: NIST SP 811 (2008), appendix B.8: gallon, cubic foot, psi, fluid ounce, exact or to
    its seven digits."""
    answer = read_shop_text(WHOLE, "shop.toml")
    assert answer.faults == ()
    shop = answer.shop
    assert shop.system == "us"
    gun = shop.guns[0]
    assert (gun.name, gun.hvlp, gun.tip_mm) == ("clear gun", True, 1.4)
    assert gun.needle_turns == 3.5 and gun.fan_turns == 3.0
    assert gun.cup_ml == pytest.approx(20 * 29.57353, rel=1e-6)
    assert gun.air_l_min == pytest.approx(10 * 28.31685, rel=1e-6)
    assert gun.inlet_kpa == pytest.approx(29 * 6.894757, rel=1e-6)
    assert shop.guns[1] == Gun("primer gun", tip_mm=1.8)
    assert shop.cups == (OwnCup("zahn-2", 1.02, "checked in spring"), OwnCup("ford-4"))
    assert shop.compressor is not None and shop.room is not None
    assert shop.compressor.receiver_l == pytest.approx(60 * 3.785412, rel=1e-6)
    assert shop.compressor.cut_out_kpa == pytest.approx(145 * 6.894757, rel=1e-6)
    assert shop.room.volume_m3 == pytest.approx(3500 * 0.02831685, rel=1e-6)
    assert shop.room.exhaust_m3_min == pytest.approx(1200 * 0.02831685, rel=1e-6)
    assert shop.room.face_m2 == pytest.approx(56 * 0.09290304, rel=1e-9)


def test_metric_units_are_understood_too() -> None:
    text = (
        '[compressor]\nreceiver = "100 l"\nflow = "300 l/min"\ncut_in = "8 bar"\ncut_out = "10 bar"'
    )
    assert read_shop_text(text, "x").shop.compressor == Compressor(100.0, 300.0, 800.0, 1000.0)


def test_no_file_is_an_empty_shop(tmp_path: Path) -> None:
    for path in (tmp_path / "shop.toml", tmp_path / "none" / "shop.toml"):
        answer = read_shop(path)
        assert answer.shop == Shop() and answer.faults == ()


def test_an_empty_file_is_an_empty_shop() -> None:
    answer = read_shop_text("# nothing yet\n", "shop.toml")
    assert answer.shop == Shop() and answer.faults == ()


def test_a_byte_order_mark_is_no_fault(tmp_path: Path) -> None:
    path = tmp_path / "shop.toml"
    path.write_bytes(b"\xef\xbb\xbf" + WHOLE.encode())
    assert read_shop(path).shop == read_shop_text(WHOLE, "x").shop


def test_all_faults_of_a_file_at_once_each_with_its_line() -> None:
    text = (
        'units = "imperial"\n'  # 1
        "[[gun]]\n"
        'name = "a"\n'
        'tpi = "1.4 mm"\n'  # 4
        "at = 29\n"  # 5
        'air = "40 psi"\n'  # 6
        "hvlp = 1\n"  # 7
        "[compressor]\n"
        'receiver = "60 gal"\n'
        'flow = "11 cfm"\n'
        'cut_in = "145 psi"\n'
        'cut_out = "115 psi"\n'  # 12
        "[room]\n"
        'volume = "3500"\n'  # 14
    )
    found = read_shop_text(text, "shop.toml").faults
    assert [fault.line for fault in found] == [1, 4, 5, 6, 7, 12, 14]
    assert [fault.key for fault in found] == [
        "units",
        "gun[1].tpi",
        "gun[1].at",
        "gun[1].air",
        "gun[1].hvlp",
        "compressor.cut_out",
        "room.volume",
    ]
    assert "Did you mean tip?" in found[1].advice
    assert "without a unit" in found[6].found


@pytest.mark.parametrize(
    ("text", "key", "said"),
    [
        ('[gun]\nname = "a"', "gun", "[[gun]]"),
        ("gun = 3", "gun", "[[gun]]"),
        ('[[gun]]\ntip = "1.4 mm"', "gun[1].name", "its name in the shop, by which jobs keep it"),
        ('[[gun]]\nname = "a"\n[[gun]]\nname = " a "', "gun[2].name", "a second time"),
        ('[[cup]]\ncup = "zahn 2"\n[[cup]]\ncup = "Zahn #2"', "cup[2].cup", "Delete one"),
        ('[[cup]]\ncup = "kettle"', "cup[1].cup", "kettle"),
        ('[[cup]]\ncup = "zahn 2"\ncorrection = 12', "cup[1].correction", "from 0.5 to 2"),
        ('[[cup]]\ncup = "zahn 2"\ncorrection = nan', "cup[1].correction", "from 0.5 to 2"),
        ('[[cup]]\ncup = "zahn 2"\ncorrection = true', "cup[1].correction", "found true"),
        ('[compressor]\nreceiver = "60 gal"', "compressor.cut_in", "found nothing"),
        ('[[gun]]\nname = "a"\nneedle_turns = -1', "gun[1].needle_turns", "from 0.1 to 30"),
        ('[[gun]]\nname = "a"\nneedle_turns = inf', "gun[1].needle_turns", "from 0.1 to 30"),
        ('[compressor]\nreceiver = "60 ml"', "compressor.receiver", "Check number and unit"),
        ('[rom]\nvolume = "100 m3"', "rom", "Did you mean room?"),
        ('[[gun]]\nname = "a"\nnozzle = "1.4 mm"', "gun[1].nozzle", "Did you mean tip?"),
        ("guns = []", "guns", "Did you mean gun?"),
    ],
)
def test_a_fault_says_where_and_what_to_do(text: str, key: str, said: str) -> None:
    whole = "\n".join(line for line in faults_of(text) if f" {key}: " in line)
    assert said in whole, faults_of(text)


def test_a_line_that_is_no_toml_does_not_hide_the_other_faults() -> None:
    found = faults_of("[[gun]]\nname = clear gun\ntip = 1.4\n")
    assert len(found) == 2
    assert found[0].startswith("shop.toml:2") and "shop.toml:3: gun[1].tip" in found[1]


def test_what_is_no_text_file_is_told_as_a_shop_file(tmp_path: Path) -> None:
    path = tmp_path / "shop.toml"
    path.mkdir()
    (fault,) = read_shop(path).faults
    assert "a folder" in fault.found and "a shop file" in fault.expected
    other = tmp_path / "other.toml"
    other.write_bytes(b"\0\1\2")
    (fault,) = read_shop(other).faults
    assert "profile" not in str(fault)


def test_hostile_text_is_shown_not_obeyed() -> None:
    (found,) = faults_of('"\\u001b[2J" = 1')
    assert "\x1b" not in found and "␛[2J" in found
    shop = read_shop_text('[[gun]]\nname = "[/ x [bold]"', "x").shop
    assert shop.guns[0].name == "[/ x [bold]"


def test_every_example_is_read_by_its_own_key() -> None:
    """The list of keys that is printed cannot say what the reader refuses."""
    heads: list[str] = []
    for path, key in SHOP.keys.items():
        if key.example:
            heads.append(f"{path.rpartition('.')[2]} = {key.example}")
        else:
            heads.append(f"[[{path[:-2]}]]" if path.endswith("[]") else f"[{path}]")
    answer = read_shop_text("\n".join(heads), "x")
    assert answer.faults == ()
    assert answer.shop.guns[0].fan_turns == 3.0 and answer.shop.room is not None
    printed = SHOP.reference()
    assert all(line in printed for line in heads)


def test_other_names_lead_to_keys_that_exist() -> None:
    paths = {path.replace("[]", "") for path in SHOP.keys}
    for path, words in ALSO_CALLED.items():
        assert path in paths and words.split(), path
    assert set(SHOP.table_at("room").keys) == {"volume", "exhaust", "open_face", "readings"}


@given(st.data())
def test_a_damaged_file_gives_a_shop_or_faults_and_never_an_exception(data: st.DataObject) -> None:
    at = data.draw(st.integers(0, len(WHOLE)))
    cut = data.draw(st.integers(0, 12))
    put = data.draw(
        st.text(max_size=6) | st.sampled_from(["[[", "]", '"', "= ", "\n", "nan", "-1"])
    )
    answer = read_shop_text(WHOLE[:at] + put + WHOLE[at + cut :], "shop.toml")
    if answer.faults:
        assert answer.shop == Shop()
        assert all(fault.found and fault.expected for fault in answer.faults)
    else:
        assert isinstance(answer.shop, Shop)
