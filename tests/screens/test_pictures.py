"""The pictures of the README, drawn from the program itself: when the program looks different, this fails.

Draw them anew with: BOOTH_PICTURES=draw python -m pytest tests/screens/test_pictures.py
then look at them before you commit them.
"""

from __future__ import annotations

import os
import re
import time
from pathlib import Path

import pytest

from booth.widgets.themes import OPEN_DOOR
from tests.screens.drawn import moving, screen_of, still
from tests.screens.readme import REELS, SCENES, Film

ROOT = Path(__file__).parents[2]
PICTURES = ROOT / "tests" / "pictures"
#: No more than this is fetched with the page for a picture that moves [bytes].
MOST_BYTES = 300_000


@pytest.fixture(autouse=True)
def utc(monkeypatch: pytest.MonkeyPatch) -> None:
    """Times of day on the pictures do not depend on where they are drawn."""
    monkeypatch.setenv("TZ", "UTC")
    time.tzset()


def held(name: str, drawn: str) -> None:
    """Hold the picture that is kept against the one just drawn, or draw it anew."""
    path = PICTURES / f"{name}.svg"
    if os.environ.get("BOOTH_PICTURES") == "draw":
        PICTURES.mkdir(exist_ok=True)
        path.write_text(drawn, "utf-8")
    assert path.read_text("utf-8") == drawn, (
        f"{path.name} no longer shows the program; see the top of this file"
    )


@pytest.mark.parametrize("name", SCENES)
async def test_the_readme_shows_the_program_as_it_looks(name: str) -> None:
    scene = SCENES[name]
    async with scene.opened() as at:
        if scene.bright:
            at.app.theme = OPEN_DOOR.name
            await at.settle()
        await scene.act(at)
        held(name, still(screen_of(at.app)))


@pytest.mark.parametrize("name", REELS)
async def test_what_moves_in_the_readme_moves_as_the_program_does(name: str) -> None:
    async with REELS[name].opened() as at:
        film = Film(at)
        await REELS[name].act(film)
    drawn = moving(film.frames, REELS[name].rests % len(film.frames))
    assert len(drawn.encode()) < MOST_BYTES
    held(name, drawn)


@pytest.mark.parametrize("name", [*SCENES, *REELS])
def test_a_picture_fetches_nothing(name: str) -> None:
    svg = (PICTURES / f"{name}.svg").read_text("utf-8")
    assert re.findall(r"\w+://[^\s\"']+", svg) == ["http://www.w3.org/2000/svg"]
    assert not re.search(r"@import|@font-face|url\(|href|<script|<image", svg)


def test_every_picture_of_the_readme_is_drawn_here() -> None:
    shown = set(re.findall(r"tests/pictures/(\w+)\.svg", (ROOT / "README.md").read_text("utf-8")))
    assert shown == {*SCENES, *REELS} == {each.stem for each in PICTURES.glob("*.svg")}
