"""The drawing of pictures: blocks where Unicode has them, and a moving picture is its frames in turn."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable
from xml.etree import ElementTree

import pytest

from tests.screens.drawn import BASE, HIGH, WIDE, Cell, Screen, blocks_of, moving, still

SVG = "{http://www.w3.org/2000/svg}"
INK, GROUND, FIELD = "#ffffff", "#000000", "#0000ff"
#: A frame so long [s]: their shares of the whole can be written.
FRAMES_S = (1.0, 0.5, 2.5)


def screen(*rows: str, grounds: str = "") -> Screen:
    """Words upon the usual ground; a row's first cells upon another, as many as its digit says."""
    upon = [int(each) for each in grounds or "0" * len(rows)]
    return tuple(
        tuple(Cell(sign, INK, FIELD if x < count else GROUND) for x, sign in enumerate(row))
        for row, count in zip(rows, upon, strict=True)
    )


#: Where the words of Unicode's names of block elements are in a cell: left, top, right, foot in eighths.
PLACES = {
    "LEFT": (0, 0, 4, 8),
    "RIGHT": (4, 0, 8, 8),
    "UPPER": (0, 0, 8, 4),
    "LOWER": (0, 4, 8, 8),
}
EIGHTHS = ("ONE EIGHTH", "ONE QUARTER", "THREE EIGHTHS", "HALF", "FIVE EIGHTHS", "THREE QUARTERS")


def named_points(sign: str) -> set[tuple[int, int]]:
    """The eighths of a cell that the name of a block element in Unicode's own table says."""
    name = unicodedata.name(sign)
    if name == "FULL BLOCK":
        return {(x, y) for x in range(8) for y in range(8)}
    if name.startswith("QUADRANT"):
        corners = [each.split() for each in name.removeprefix("QUADRANT ").split(" AND ")]
        return {point for each in corners for point in _within(*(PLACES[word] for word in each))}
    side, _, share = name.removesuffix(" BLOCK").partition(" ")
    count = 7 if share == "SEVEN EIGHTHS" else EIGHTHS.index(share) + 1
    sides = {
        "LEFT": (0, 0, count, 8),
        "RIGHT": (8 - count, 0, 8, 8),
        "UPPER": (0, 0, 8, count),
        "LOWER": (0, 8 - count, 8, 8),
    }
    return _within(sides[side])


def _within(*areas: tuple[int, int, int, int]) -> set[tuple[int, int]]:
    return {
        (x, y)
        for x in range(8)
        for y in range(8)
        if all(left <= x < right and top <= y < foot for left, top, right, foot in areas)
    }


@pytest.mark.parametrize(
    "sign", [chr(code) for code in range(0x2580, 0x25A0) if not 0x2591 <= code <= 0x2593]
)
def test_a_block_is_where_its_name_says(sign: str) -> None:
    drawn = {
        (x, y)
        for left, top, wide, high in blocks_of(sign)
        for x in range(8)
        for y in range(8)
        if left <= (x + 0.5) * WIDE / 8 < left + wide and top <= (y + 0.5) * HIGH / 8 < top + high
    }
    assert drawn == named_points(sign)


@pytest.mark.parametrize(
    ("sign", "name", "percent"),
    [("░", "LIGHT SHADE", 25), ("▒", "MEDIUM SHADE", 50), ("▓", "DARK SHADE", 75)],
)
def test_a_shade_is_its_share_of_ink_all_over_the_cell(sign: str, name: str, percent: int) -> None:
    # The shares are those of the code chart 'Block Elements' of the Unicode standard.
    assert unicodedata.name(sign) == name and blocks_of(sign) == ((0, 0, WIDE, HIGH),)
    (grey,) = set(alone(screen(sign)).values())
    assert grey == f"#{percent * 255 // 100:02x}" + f"{percent * 255 // 100:02x}" * 2


@pytest.mark.parametrize("sign", ["a", " ", "─", ""])
def test_what_is_no_block_is_none(sign: str) -> None:
    assert blocks_of(sign) == ()


# -- what a picture shows --------------------------------------------------------------------------


def points(elements: Iterable[ElementTree.Element], css: str) -> dict[tuple[float, float], str]:
    """The colour of every half of an eighth, and every sign at its place."""
    inks = dict(re.findall(r"\.(i\d+)\{fill:(#\w+)\}", css))
    found: dict[tuple[float, float], str] = {}
    for each in (one for one in elements if one.tag in (f"{SVG}path", f"{SVG}text")):
        ink = inks[each.get("class", "").split()[0]]
        if each.tag == f"{SVG}path":
            for x, y, wide, high in re.findall(
                r"M([\d.]+) ([\d.]+)h([\d.]+)v([\d.]+)h-[\d.]+z", each.get("d", "")
            ):
                for column in range(int(float(x) * 2), int((float(x) + float(wide)) * 2), 3):
                    for row in range(int(y), int(float(y) + float(high)), 3):
                        found[column / 2, row] = ink
        else:
            text, x = each.text or "", float(each.get("x", "0"))
            assert float(each.get("textLength", "0")) == len(text) * WIDE
            for at, sign in enumerate(text):
                found[x + at * WIDE + 0.25, float(each.get("y", "0")) - BASE] = f"{sign} {ink}"
    return {place: seen for place, seen in found.items() if not seen.startswith(" ")}


def shown_at(svg: str, second: float) -> dict[tuple[float, float], str]:
    """What a moving picture shows then, by the rules of its style sheet; at -1 without motion."""
    root = ElementTree.fromstring(svg)
    css = root.findtext(f"{SVG}style") or ""
    elements = list(root)
    for layer in root.iter(f"{SVG}g"):
        name = layer.get("class")
        rule = re.search(
            rf"\.{name}\{{visibility:(\w+);animation:{name} ([\d.]+)s step-end infinite\}}"
            rf"@keyframes {name}\{{(.*)\}}\n",
            css,
        )
        assert rule is not None
        steps = re.findall(r"([\d.]+)%\{visibility:(\w+)\}", rule[3])
        share = 100 * second / float(rule[2])
        seen = rule[1] if second < 0 else [how for at, how in steps if float(at) <= share][-1]
        elements += list(layer) if seen == "visible" else []
    return points(elements, css)


def alone(one: Screen) -> dict[tuple[float, float], str]:
    return shown_at(still(one), 0.0)


#: Words that change at both ends, a ground that grows, a block that moves, a row that stays.
FRAMES = (
    screen("1:09  go ", "██▌      ", "the same ", grounds="100"),
    screen("1:10  go ", "██▌  on  ", "the same ", grounds="200"),
    screen("1:11  no ", "  ██▌    ", "the same ", grounds="100"),
)


def test_it_shows_each_frame_in_its_time_and_nothing_else() -> None:
    svg = moving(list(zip(FRAMES_S, FRAMES, strict=True)))
    seconds = [0.0, 0.99, 1.0, 1.49, 1.5, 3.99]
    for second, frame in zip(seconds, (0, 0, 1, 1, 2, 2), strict=True):
        assert shown_at(svg, second) == alone(FRAMES[frame]), second
    assert len({str(alone(each)) for each in FRAMES}) == 3


@pytest.mark.parametrize("rests", range(3))
def test_whoever_wants_no_motion_sees_one_frame(rests: int) -> None:
    svg = moving(list(zip(FRAMES_S, FRAMES, strict=True)), rests)
    assert shown_at(svg, -1) == alone(FRAMES[rests])
    assert "@media(prefers-reduced-motion:reduce){g{animation:none!important}}" in svg


def test_what_stays_is_drawn_once() -> None:
    svg = moving(list(zip(FRAMES_S, FRAMES, strict=True)))
    assert svg.count(">the same<") == 1


def test_what_would_be_markup_is_none() -> None:
    svg = still(screen("<b>&amp;"))
    (text,) = ElementTree.fromstring(svg).iter(f"{SVG}text")
    assert text.text == "<b>&amp;"
