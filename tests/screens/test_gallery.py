"""The gallery of screens can be taken: one walk in one window, in every look."""

from __future__ import annotations

import re
from pathlib import Path
from xml.etree import ElementTree

from tests.screens.drawn import FRAME, HIGH, WIDE
from tests.screens.gallery.__main__ import walk
from tests.screens.gallery.taking import LOOKS, NO_COLOR, SIXTEEN

SIZE = (80, 24)


def fills(svg: str) -> set[str]:
    """The colours it is drawn in."""
    return set(re.findall(r"\{fill:(#\w{6})\}", svg))


async def test_a_walk_takes_every_screen_in_every_look(tmp_path: Path) -> None:
    taken = await walk("refused", SIZE, tmp_path, tuple(LOOKS))
    assert len(set(taken)) == len(taken) >= 5 * len(LOOKS)
    drawn = {path.name: path.read_text("utf-8") for path in taken}
    box = f"{-FRAME} {-FRAME} {SIZE[0] * WIDE + 2 * FRAME} {SIZE[1] * HIGH + 2 * FRAME}"
    for file, svg in drawn.items():
        assert list(ElementTree.fromstring(svg).iter("{http://www.w3.org/2000/svg}text")), file
        assert f'viewBox="{box}"' in svg or file.split(".")[0].endswith(("too-small", "smallest"))
        look = file.split(".")[2]
        assert not look.endswith("16") or fills(svg) <= set(SIXTEEN), file
        other = file.replace(".dark.", ".bright.")
        assert other == file or fills(drawn[other]) != fills(svg), file


async def test_without_colour_all_is_grey(tmp_path: Path) -> None:
    for path in await walk("refused", SIZE, tmp_path, tuple(NO_COLOR)):
        for red, green, blue in (
            (each[1:3], each[3:5], each[5:]) for each in fills(path.read_text("utf-8"))
        ):
            assert red == green == blue, path.name
