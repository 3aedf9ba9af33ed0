"""A window whose name meets no product of a system: noted by `booth check`, said with the window."""

from __future__ import annotations

import io
from pathlib import Path

import pytest

from booth.profile.library import load_folder
from booth.profile.system import CoatingSystem, read_system
from booth.shop.check import check
from booth.units import System
from booth.words.system_words import lines_of

HEAD = 'name = "{name}"\nsource = "s"\n[film]\ncoats = 1\n'
NAMED = '[[next_product]]\nname = "{name}"\nopens = {{ time = "1 h", at = "70 F" }}\n'
ANY = '[[next_product]]\nopens = { time = "3 h", at = "70 F" }\n'
SYSTEM = 'name = "Trial"\nsource = "s"\n' + "".join(
    f'[[products]]\nprofile = "{each}"\n' for each in ("base", "clear")
)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A base with windows for wax, for a misspelled clear and for any product; the clear; a system."""
    windows = NAMED.format(name="wax") + NAMED.format(name="Trial claer") + ANY
    (tmp_path / "base.toml").write_text(HEAD.format(name="Trial base") + windows, "utf-8")
    (tmp_path / "clear.toml").write_text(HEAD.format(name="Trial clear"), "utf-8")
    (tmp_path / "systems").mkdir()
    (tmp_path / "systems" / "trial.toml").write_text(SYSTEM, "utf-8")
    return tmp_path


def told(file: Path) -> list[str]:
    out = io.StringIO()
    assert check([file], out) == 0  # odd, and no fault
    return out.getvalue().splitlines()


@pytest.mark.parametrize("name", ["systems/trial.toml", "base.toml"])
def test_it_is_noted_at_the_line_where_it_is_to_be_mended(folder: Path, name: str) -> None:
    note, _ = told(folder / name)
    assert note == (
        f"{folder / 'base.toml'}:9: note: next_product[2].name: found "
        '"wax", "Trial claer"; expected the product that follows in the system "Trial", by one of '
        'its names: "clear", "Trial clear". Did you mean "Trial clear"? Until a window names it, '
        "the one for any product counts."
    )


def test_where_no_name_is_like_it_nothing_is_guessed(folder: Path) -> None:
    text = HEAD.format(name="Trial base") + NAMED.format(name="wax") + ANY
    (folder / "base.toml").write_text(text, "utf-8")
    note, _ = told(folder / "systems" / "trial.toml")
    assert "Did you mean" not in note and ':6: note: next_product[1].name: found "wax"' in note


@pytest.mark.parametrize("name", ["clear", "CLEAR", "Trial clear", "trial-clear"])
def test_one_of_its_names_is_enough(folder: Path, name: str) -> None:
    text = HEAD.format(name="Trial base") + NAMED.format(name=name) + ANY
    (folder / "base.toml").write_text(text, "utf-8")
    for file in (folder / "systems" / "trial.toml", folder / "base.toml"):
        assert len(told(file)) == 1


def test_the_system_is_told_with_the_window_that_counts(folder: Path) -> None:
    found = read_system(folder / "systems" / "trial.toml", load_folder([folder]))
    assert isinstance(found, CoatingSystem)
    line = next(each for each in lines_of(found, System.US) if " over " in each)
    assert line == (
        "Trial clear over Trial base: opens 3 h at 70 °F (the data sheet has no window for "
        '"Trial clear" by name: the one for any product is shown)'
    )
