"""Writing the shop file: what was typed comes out as typed, and nothing is lost on the way."""

from __future__ import annotations

import os
import sys
from pathlib import Path

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.shop import save
from booth.shop.model import Compressor, Gun, OwnCup, Room, Shop
from booth.shop.read import read_shop, read_shop_text
from booth.shop.save import ShopNotSaved, save_shop
from booth.shop.write import write_shop
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
            name=st.text(min_size=1, max_size=30).map(lambda text: " ".join(text.split()))
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
    | st.builds(
        Room, volume_m3=some(2, 9e4), exhaust_m3_min=some(1, 4000), face_m2=some(0.2, 400)
    ),
    system=st.sampled_from(["", "us", "metric"]),
)  # fmt: skip


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
    for line in ('cup = "20 fl oz"', 'at = "29 psi"', 'receiver = "60 gal"', 'exhaust = "1200 cfm"',
                 'open_face = "56 sq ft"', 'volume = "3500 ft3"', 'cup = "Zahn #2"'):  # fmt: skip
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
        "shop.toml", "shop.toml.before-20250615-150640", "shop.toml.before-20250615-150640-2",
    ]  # fmt: skip
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
    with pytest.raises(ShopNotSaved, match=r"has a fault and is left as it is.*gun"):
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
