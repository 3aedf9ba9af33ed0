"""Taking pictures of what is on the screen, in every look."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Iterable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

from rich.color import Color, ColorSystem

from booth.log.events import Event
from booth.widgets.themes import DARK_BOOTH, OPEN_DOOR
from tests.screens.at_app import AtApp, at_app, at_bench
from tests.screens.drawn import Palette, full, screen_of, still
from tests.screens.gallery.kept import PARTS, whole_shop
from tests.screens.test_fits import bundled

#: The sixteen colours as many terminals show them.
SIXTEEN = (
    *("#000000", "#aa0000", "#00aa00", "#aa5500", "#0000aa", "#aa00aa", "#00aaaa", "#aaaaaa"),
    *("#555555", "#ff5555", "#55ff55", "#ffff55", "#5555ff", "#ff55ff", "#55ffff", "#ffffff"),
)


def sixteen(color: Color) -> str:
    """What a terminal of sixteen colours makes of it."""
    near = color.downgrade(ColorSystem.STANDARD)
    return SIXTEEN[near.number or 0]


LOOKS: dict[str, tuple[str, Palette]] = {
    "dark": (DARK_BOOTH.name, full),
    "bright": (OPEN_DOOR.name, full),
    "dark16": (DARK_BOOTH.name, sixteen),
    "bright16": (OPEN_DOOR.name, sixteen),
}
#: Without colour the program is another one from its start.
NO_COLOR = {"none": LOOKS["dark"]}


class Gallery:
    """One window's pictures: what a walk needs to take them."""

    def __init__(
        self, folder: Path, size: tuple[int, int], walk: str, looks: Iterable[str]
    ) -> None:
        self.folder, self.size, self.walk = folder, size, walk
        self.home = os.environ["BOOTH_HOME"]
        every = LOOKS | NO_COLOR
        self.looks = {look: every[look] for look in looks}
        self.taken: list[Path] = []

    async def take(self, at: AtApp, name: str) -> None:
        """Take what is on the screen, in every look."""
        for look, (theme, palette) in self.looks.items():
            if at.app.theme != theme:
                at.app.theme = theme
                await at.settle()
            wide, high = self.size
            path = self.folder / f"{self.walk}-{name}.{wide}x{high}.{look}.svg"
            path.write_text(still(screen_of(at.app, palette)), "utf-8")
            self.taken.append(path)
        at.app.theme = next(iter(self.looks.values()))[0]
        await at.settle()

    def app(self, **given: Any) -> AbstractAsyncContextManager[AtApp]:
        """The program at its first screen, with the profiles that come with it."""
        return at_app(size=self.size, bundled=True, **given)

    def bench(
        self, step: str, *before: Event, parts: tuple[str, ...] = PARTS, **given: Any
    ) -> AbstractAsyncContextManager[AtApp]:
        """A job with the bundled two-pack clear and a whole shop, alone on the disk."""
        os.environ["BOOTH_HOME"] = tempfile.mkdtemp(dir=self.home)
        usual = {"profile": bundled("two-pack-clear"), "shop": whole_shop(), "gun": "clear gun"}
        return at_bench(step, *before, parts=parts, size=self.size, **(usual | given))

    async def palette(self, at: AtApp) -> None:
        """Take the list of everything by name, opened over what is up."""
        below = at.screen
        await at.press("ctrl+p")
        await at.until(lambda: at.screen == "Palette")
        await self.take(at, "palette")
        await at.press("escape")
        if at.screen != below:
            await at.press("escape")
        await at.until(lambda: at.screen == below)
