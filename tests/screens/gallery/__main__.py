"""python -m tests.screens.gallery FOLDER [WALK ...]

In three windows, in both themes, the main ones in sixteen colours and without colour too. A file is
called WALK-SCREEN.COLUMNSxROWS.LOOK.svg.
"""

from __future__ import annotations

import asyncio
import os
import sys
import tempfile
import time
from collections.abc import Awaitable, Callable, Iterable, Sequence
from pathlib import Path
from unittest.mock import patch

from tests.screens.gallery import around, coats, steps
from tests.screens.gallery.taking import LOOKS, NO_COLOR, Gallery

SIZES = ((80, 24), (100, 30), (200, 50))
Walk = Callable[[Gallery], Awaitable[None]]
WALKS: dict[str, Walk] = {
    "home": around.home,
    "empty": steps.empty_steps,
    "done": steps.done_steps,
    "work": steps.working,
    "coats": coats.coats,
    "end": around.end,
    "past": around.past,
    "shop": around.shop,
    "system": around.system,
    "refused": around.refused,
}
#: Walks that are shown in every look.
MAIN = ("done", "work", "coats")


async def walk(name: str, size: tuple[int, int], folder: Path, looks: Iterable[str]) -> list[Path]:
    """Take the pictures of one walk in one window, in a home of its own; give the files."""
    plain = {"NO_COLOR": "1"} if set(looks) == set(NO_COLOR) else {}
    with tempfile.TemporaryDirectory() as own, patch.dict(os.environ, BOOTH_HOME=own, **plain):
        gallery = Gallery(folder, size, name, looks)
        await WALKS[name](gallery)
    return gallery.taken


def main(folder: Path, names: Sequence[str]) -> None:
    """All walks, or those that are named."""
    folder.mkdir(parents=True, exist_ok=True)
    os.environ["TZ"] = "UTC"
    time.tzset()
    for name in names or tuple(WALKS):
        looks = [tuple(LOOKS), tuple(NO_COLOR)] if name in MAIN else [("dark", "bright")]
        for size in SIZES:
            taken = [asyncio.run(walk(name, size, folder, each)) for each in looks]
            print(f"{name} {size[0]}x{size[1]}: {sum(map(len, taken))} pictures", flush=True)


if __name__ == "__main__":
    main(Path(sys.argv[1]), sys.argv[2:])
