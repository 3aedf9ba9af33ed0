"""``booth check`` tells shop files from profiles, and the faults of either."""

from __future__ import annotations

import io
from pathlib import Path

import pytest

from booth.files.places import bundled_profiles_dir
from booth.shop.check import check, is_shop_file, is_shop_text, print_keys
from booth.shop.read import read_shop
from tests.shop.made import WHOLE


def checked(*paths: Path) -> tuple[int, str]:
    out = io.StringIO()
    return check(paths, out), out.getvalue()


@pytest.mark.parametrize(
    "text", ['[[gun]]\nname = "a"', "[[cup]]", "[compressor]\nflow = 3", "[room]"]
)
def test_a_shop_file_is_known_by_its_tables(text: str) -> None:
    assert is_shop_text(text)
    assert is_shop_text("\ufeff" + text + "\nthis is no toml [")


def test_no_bundled_profile_is_taken_for_a_shop_file() -> None:
    folder = bundled_profiles_dir()
    assert folder is not None
    files = sorted(folder.glob("*.toml"))
    assert files
    for file in files:
        assert not is_shop_text(file.read_text("utf-8")), file.name
        # Even with a table of the shop's in it by mistake.
        assert not is_shop_text(file.read_text("utf-8") + "\n[[gun]]\n"), file.name


def test_a_file_called_so_is_one_whatever_stands_in_it(tmp_path: Path) -> None:
    path = tmp_path / "shop.toml"
    path.write_text("x = 1\n")
    assert is_shop_file(path) and not is_shop_file(tmp_path) and not is_shop_file(tmp_path / "no")
    code, said = checked(path)
    assert code == 1 and "unknown key" in said and "1 fault" in said
    assert len(read_shop(path).faults) == 1


def test_a_good_one_by_any_name(tmp_path: Path) -> None:
    path = tmp_path / "ours.toml"
    path.write_text(WHOLE)
    code, said = checked(path)
    assert code == 0
    assert said == f"{path}: a shop file, 2 guns, 2 flow cups, the compressor, the room\n"


def test_profiles_and_shop_files_together(tmp_path: Path) -> None:
    folder = bundled_profiles_dir()
    assert folder is not None
    path = tmp_path / "shop.toml"
    path.write_text(WHOLE)
    code, said = checked(folder, path)
    assert code == 0 and "a coating profile" in said and "a shop file" in said
    code, said = checked(path, tmp_path / "missing.toml")
    assert code == 2 and "no such file" in said
    assert checked()[0] == 2


def test_the_keys_of_both_are_printed() -> None:
    out = io.StringIO()
    assert print_keys(out) == 0
    assert "[[gun]]" in out.getvalue() and "volume_solids" in out.getvalue()
