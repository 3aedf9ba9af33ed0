"""Writing the shop file: what was typed comes out as typed, and nothing is lost on the way."""

from __future__ import annotations

import os
import subprocess
import sys
from difflib import unified_diff
from pathlib import Path

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from booth.shop import save
from booth.shop.model import Compressor, Gun, OwnCup, Room, Shop
from booth.shop.read import read_shop, read_shop_text
from booth.shop.save import ShopNotSaved, save_shop, write_shop
from booth.trade.cups.cup_table import CUPS
from booth.units import System
from tests.shop.made import WHOLE

#: 2025-06-15 15:06:40 UTC
WALL_S = 1_750_000_000.0
SHOP = Shop(guns=(Gun("spot gun", tip_mm=1.2),))


def some(low: float, high: float) -> st.SearchStrategy[float | None]:
    return st.none() | st.floats(low, high)


shops = st.builds(
    Shop,
    guns=st.lists(
        st.builds(
            Gun,
            name=st.text(min_size=1, max_size=30)
            .map(lambda text: " ".join(text.split()))
            .filter(bool),
            tip_mm=some(0.2, 5),
            cup_ml=some(10, 15000),
            air_l_min=some(2, 9000),
            inlet_kpa=some(10, 1000),
            needle_turns=some(0.2, 20),
            fan_turns=some(0.2, 20),
            hvlp=st.booleans(),
        ),
        max_size=4,
        unique_by=lambda gun: gun.name,
    ).map(tuple),
    cups=st.lists(
        st.builds(OwnCup, cup=st.sampled_from(sorted(CUPS)), correction=st.floats(0.51, 1.99)),
        max_size=3,
        unique_by=lambda cup: cup.cup,
    ).map(tuple),
    compressor=st.none()
    | st.builds(
        Compressor,
        receiver_l=st.floats(2.1, 1900),
        flow_l_min=st.floats(2, 40000),
        cut_in_kpa=st.floats(100, 900),
        cut_out_kpa=st.floats(1000, 3000),
    ),
    room=st.none()
    | st.builds(Room, volume_m3=some(2, 9e4), exhaust_m3_min=some(1, 4000), face_m2=some(0.2, 400)),
    system=st.sampled_from(["", "us", "metric"]),
)


def alike(one: object, other: object) -> bool:
    """The same to four digits: five are written."""
    if isinstance(one, float) and isinstance(other, float):
        return one == pytest.approx(other, rel=1e-4)
    if isinstance(one, dict) and isinstance(other, dict):
        return one.keys() == other.keys() and all(alike(one[key], other[key]) for key in one)
    if isinstance(one, (list, tuple)) and isinstance(other, (list, tuple)):
        return len(one) == len(other) and all(map(alike, one, other))
    return one == other


@given(shops, st.sampled_from(System))
def test_any_shop_is_read_back_as_it_was_written(shop: Shop, system: System) -> None:
    answer = read_shop_text(write_shop(shop, system), "x")
    assert answer.faults == ()
    assert alike(msgspec.to_builtins(shop), msgspec.to_builtins(answer.shop))


def test_what_was_typed_in_us_units_comes_out_as_typed() -> None:
    text = write_shop(read_shop_text(WHOLE, "x").shop, System.METRIC)
    for line in (
        'cup = "20 fl oz"',
        'at = "29 psi"',
        'receiver = "60 gal"',
        'exhaust = "1200 cfm"',
        'open_face = "56 sq ft"',
        'volume = "3500 ft3"',
        'cup = "Zahn #2"',
    ):
        assert line in text.splitlines()


def test_written_again_nothing_moves() -> None:
    once = write_shop(read_shop_text(WHOLE, "x").shop)
    assert write_shop(read_shop_text(once, "x").shop) == once


def test_the_first_save_makes_the_folder(tmp_path: Path) -> None:
    path = tmp_path / "new" / "shop.toml"
    saved = save_shop(SHOP, path, WALL_S)
    assert saved.before is None and saved.path == path
    assert read_shop(path).shop == SHOP
    assert os.listdir(path.parent) == ["shop.toml"]
    assert str(path) in saved.words


def test_what_stood_there_is_kept_beside(tmp_path: Path) -> None:
    path = tmp_path / "shop.toml"
    path.write_text("# my own words\n" + WHOLE, "utf-8")
    saved = save_shop(SHOP, path, WALL_S)
    assert saved.before == tmp_path / "shop.toml.before-20250615-150640"
    assert saved.before.read_text("utf-8") == "# my own words\n" + WHOLE
    assert saved.before.name in saved.words
    assert read_shop(path).shop == SHOP


def test_two_saves_in_one_second_keep_both(tmp_path: Path) -> None:
    path = tmp_path / "shop.toml"
    for number in range(3):
        save_shop(Shop(guns=(Gun(f"gun {number}"),)), path, WALL_S)
    kept = sorted(each.name for each in tmp_path.iterdir())
    assert kept == [
        "shop.toml",
        "shop.toml.before-20250615-150640",
        "shop.toml.before-20250615-150640-2",
    ]
    assert (
        "gun 0" in (tmp_path / kept[1]).read_text() and "gun 1" in (tmp_path / kept[2]).read_text()
    )


def test_only_what_the_program_wrote_itself_is_not_kept_beside(tmp_path: Path) -> None:
    path = tmp_path / "shop.toml"
    first = save_shop(SHOP, path, WALL_S)
    second = save_shop(Shop(guns=(Gun("b"),)), path, WALL_S, own=first.text)
    assert second.before is None
    path.write_text(second.text + "# by hand\n")
    third = save_shop(SHOP, path, WALL_S, own=second.text)
    assert third.before is not None and "# by hand" in third.before.read_text()


def test_the_same_again_changes_nothing(tmp_path: Path) -> None:
    path = tmp_path / "shop.toml"
    save_shop(SHOP, path, WALL_S)
    assert save_shop(SHOP, path, WALL_S + 5).before is None
    assert os.listdir(tmp_path) == ["shop.toml"]


def test_a_file_with_faults_is_never_written_over(tmp_path: Path) -> None:
    path = tmp_path / "shop.toml"
    path.write_text('[[gun]]\nname = "a"\ntpi = "1.4 mm"\n')
    with pytest.raises(ShopNotSaved, match=r"has 1 fault and is left as it is.*gun"):
        save_shop(SHOP, path, WALL_S)
    assert "tpi" in path.read_text() and os.listdir(tmp_path) == ["shop.toml"]


def test_a_shop_that_would_not_be_read_again_is_refused(tmp_path: Path) -> None:
    with pytest.raises(ShopNotSaved, match="stops above"):
        save_shop(Shop(compressor=Compressor(100, 300, 900, 800)), tmp_path / "shop.toml", WALL_S)
    assert not list(tmp_path.iterdir())


def test_a_write_that_fails_leaves_the_old_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "shop.toml"
    path.write_text(WHOLE)

    def full(fd: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(save.os, "fsync", full)
    with pytest.raises(ShopNotSaved, match="No space left"):
        save_shop(SHOP, path, WALL_S)
    assert path.read_text() == WHOLE and os.listdir(tmp_path) == ["shop.toml"]


def test_a_disk_without_hard_links_keeps_a_copy(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "shop.toml"
    path.write_text(WHOLE)

    def none(one: object, other: object) -> None:
        raise OSError(1, "Operation not permitted")

    monkeypatch.setattr(save.os, "link", none)
    saved = save_shop(SHOP, path, WALL_S)
    assert saved.before is not None and saved.before.read_text() == WHOLE
    assert read_shop(path).shop == SHOP


@pytest.mark.skipif(sys.platform == "win32", reason="links need a privilege there")
def test_a_link_stays_a_link(tmp_path: Path) -> None:
    real = tmp_path / "kept" / "shop.toml"
    real.parent.mkdir()
    real.write_text(WHOLE)
    path = tmp_path / "shop.toml"
    path.symlink_to(real)
    saved = save_shop(SHOP, path, WALL_S)
    assert path.is_symlink() and read_shop(real).shop == SHOP
    assert saved.before is not None and saved.before.parent == real.parent


def by_hand() -> str:
    """A shop file with comments, blank lines and an order of its own."""
    return (
        "# Our shop. Ask before changing anything.\n\n"
        "[room]   # the garage\n"
        'exhaust = "1200 cfm"   # with the new filter\n\n\n'
        "# --- guns ---\n"
        "[[gun]]\n"
        "  needle_turns = 3.5\n"
        "  name = 'clear gun'\n"
        '  tip="1.4 mm"  # measured: 1.38\n'
        "  hvlp = false\n\n"
        "# lent to nobody\n"
        "[[gun]]\n"
        'name = "primer gun"\n\n'
        '[[cup]]\ncup = "zahn 2"\n'
    )


def diff(old: str, new: str) -> list[str]:
    lines = unified_diff(old.splitlines(), new.splitlines(), n=0, lineterm="")
    return [line for line in lines if line[:2] not in ("--", "++", "@@")]


def test_one_value_changed_is_one_line_of_a_file_written_by_hand(tmp_path: Path) -> None:
    path = tmp_path / "shop.toml"
    path.write_text(by_hand(), "utf-8")
    shop = read_shop(path).shop
    first = msgspec.structs.replace(shop.guns[0], tip_mm=1.3)
    changed = msgspec.structs.replace(shop, guns=(first, *shop.guns[1:]))
    saved = save_shop(changed, path, WALL_S)
    assert diff(by_hand(), path.read_text("utf-8")) == [
        '-  tip="1.4 mm"  # measured: 1.38',
        '+  tip="1.3 mm"  # measured: 1.38',
    ]
    assert saved.before is not None and saved.before.read_text("utf-8") == by_hand()
    assert read_shop(path).shop == changed


def test_what_is_added_and_removed_leaves_the_rest_of_the_file_alone(tmp_path: Path) -> None:
    path = tmp_path / "shop.toml"
    path.write_text(by_hand(), "utf-8")
    shop = read_shop(path).shop
    hvlp = msgspec.structs.replace(shop.guns[0], hvlp=True)
    more = msgspec.structs.replace(
        shop, guns=(hvlp, shop.guns[1], Gun("new")), compressor=Compressor(100, 300, 800, 1000)
    )
    save_shop(more, path, WALL_S, System.METRIC)
    lines = diff(by_hand(), path.read_text("utf-8"))
    assert [line for line in lines if line[0] == "-"] == ["-  hvlp = false"]
    assert "+  hvlp = true" in lines and '+name = "new"' in lines and '+flow = "300 l/min"' in lines
    assert read_shop(path).shop == more
    # The second gun is removed again, and the room: no comment goes but those of their own lines.
    less = msgspec.structs.replace(more, guns=(hvlp, Gun("new")), room=None)
    save_shop(less, path, WALL_S, System.METRIC)
    text = path.read_text("utf-8")
    assert read_shop(path).shop == less
    for line in ("# Our shop. Ask before changing anything.", "# --- guns ---", "# lent to nobody"):
        assert line in text.splitlines()


@given(shops, shops)
@settings(deadline=None, max_examples=60)
def test_any_file_of_any_shop_is_changed_to_any_other(before: Shop, after: Shop) -> None:
    text = write_shop(after, System.US, write_shop(before, System.METRIC))
    answer = read_shop_text(text, "x")
    assert answer.faults == ()
    assert alike(msgspec.to_builtins(after), msgspec.to_builtins(answer.shop))


def test_a_file_whose_tables_stand_in_several_places_is_saved_too(tmp_path: Path) -> None:
    text = '[[gun]]\nname = "a" # one\n[[cup]]\ncup = "zahn 2" # two\n[[gun]]\nname = "b" # three\n'
    path = tmp_path / "shop.toml"
    path.write_text(text, "utf-8")
    shop = read_shop(path).shop
    changed = msgspec.structs.replace(shop, guns=(Gun("c"), *shop.guns[1:]))
    save_shop(changed, path, WALL_S)
    assert read_shop(path).shop == changed
    assert all(word in path.read_text("utf-8") for word in ("# one", "# two", "# three"))


def test_a_form_is_told_its_own_labels(tmp_path: Path) -> None:
    bad = Shop(compressor=Compressor(100, 300, 900, 800), guns=(Gun("a", inlet_kpa=9e9),))
    with pytest.raises(ShopNotSaved, match="NOT kept: at inlet: found") as fault:
        save_shop(bad, tmp_path / "shop.toml", WALL_S)
    assert "gun[1]" not in str(fault.value) and "inlet_kpa" not in str(fault.value)


def test_the_editor_of_files_is_loaded_only_to_save() -> None:
    code = (
        "import sys; import booth.shop.save, booth.shop.check; from booth.shop.read import *;"
        "read_shop_text('[room]', 'x'); print([m for m in ('tomlkit',) if m in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
