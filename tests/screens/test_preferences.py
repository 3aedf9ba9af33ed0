"""Preferences: remembered, whole, and never in the way of a start."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest
from textual.theme import Theme

from booth.app.app import BoothApp
from booth.files.places import Places
from booth.screens.preferences import Preferences
from booth.units import System
from booth.widgets.themes import DARK_BOOTH, OPEN_DOOR, THEMES
from tests.manual_clock import ManualClock
from tests.screens.at_app import at_app
from tests.screens.drawn import screen_of

CHOSEN = Preferences(units="metric", theme=OPEN_DOOR.name, hints=False)


def test_what_was_chosen_is_read_back(tmp_path: Path) -> None:
    path = tmp_path / "new" / "preferences.toml"
    CHOSEN.write(path)
    assert Preferences.read(path) == CHOSEN
    CHOSEN.changed("hints", True).write(path)
    assert Preferences.read(path) == Preferences("metric", OPEN_DOOR.name, True)
    assert os.listdir(path.parent) == ["preferences.toml"]


def test_no_file_is_the_defaults(tmp_path: Path) -> None:
    assert Preferences.read(tmp_path / "preferences.toml") == Preferences("", "", True)
    assert Preferences.read(tmp_path) == Preferences(), "a folder"
    assert Preferences.read(tmp_path / ("x" * 300)) == Preferences(), "a name no file can have"


ODD = {
    "a table for units": b"units = {a = 1}",
    "a list for the theme": b'theme = ["x"]',
    "a number for units": b"units = 1",
    "units of another day": b'units = "imperial"',
    "a word for hints": b'hints = "no"',
    "a number for hints": b"hints = 0",
    "nested lists": b"theme = " + b"[" * 5000 + b"]" * 5000,
    "nested tables": b"units = " + b"{a=" * 5000 + b"1" + b"}" * 5000,
    "not UTF-8": b'units = "\xff"',
    "UTF-16": 'units = "metric"'.encode("utf-16"),
    "no TOML": b"units = metric",
    "nothing": b"",
    "NUL": b"\0" * 4096,
    "a gap in the middle of a character": b'units = "metric"\n# \xe2\x82',
    "far too long": b"#" * 5_000_000,
}


@pytest.mark.parametrize("content", ODD.values(), ids=ODD)
def test_whatever_is_in_the_file_the_defaults_are_used(tmp_path: Path, content: bytes) -> None:
    path = tmp_path / "preferences.toml"
    path.write_bytes(content)
    assert Preferences.read(path) == Preferences()


def test_what_makes_sense_beside_nonsense_is_used(tmp_path: Path) -> None:
    path = tmp_path / "preferences.toml"
    path.write_bytes(b'\xef\xbb\xbftheme = ["x"]\nunits = "metric"\r\nhints = false\nmore = {}\n')
    assert Preferences.read(path) == Preferences("metric", "", False)


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no pipes with names")
def test_a_pipe_is_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "preferences.toml")
    assert Preferences.read(tmp_path / "preferences.toml") == Preferences()


def started(content: bytes) -> BoothApp:
    """The program as it is made with this file, before it runs."""
    places = Places.standard()
    places.preferences_file.parent.mkdir(parents=True)
    places.preferences_file.write_bytes(content)
    return BoothApp(ManualClock(), places)


@pytest.mark.parametrize("theme", ["", "dark", "x" * 4000, "[/ x", "\\u001b[2J"])
async def test_a_theme_that_is_none_starts_the_dark_one(theme: str) -> None:
    app = started(f'theme = "{theme}"\nunits = "metric"\n'.encode())
    assert (app.theme, app.system) == (DARK_BOOTH.name, System.METRIC)


async def test_the_theme_and_units_of_the_file_are_those_of_the_start() -> None:
    app = started(f'theme = "{OPEN_DOOR.name}"\nunits = "metric"\n'.encode())
    assert (app.theme, app.system) == (OPEN_DOOR.name, System.METRIC)


@pytest.mark.parametrize("content", ODD.values(), ids=ODD)
async def test_the_program_starts_whatever_is_in_the_file(content: bytes) -> None:
    assert started(content).system == System.US


def test_they_load_no_screen() -> None:
    code = (
        "import sys; from pathlib import Path; from booth.screens.preferences import Preferences;"
        "Preferences.read(Path('nowhere'));"
        "print([m for m in ('textual', 'rich', 'pint', 'difflib') if m in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


@pytest.mark.parametrize("theme", THEMES, ids=lambda theme: theme.name)
async def test_the_first_screen_has_the_colours_of_the_theme(theme: Theme) -> None:
    Preferences(theme=theme.name).write(Places.standard().preferences_file)
    async with at_app() as at:
        drawn = {(each.ink, each.ground) for row in screen_of(at.app) for each in row}
    grounds = (theme.background, theme.panel)
    assert all((theme.foreground, ground) in drawn for ground in grounds)
