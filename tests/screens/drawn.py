"""A screen of the program as a picture: SVG in a plain frame, which fetches nothing.

What is drawn in blocks is drawn as areas, so that it is whole whatever font there is.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from html import escape
from itertools import groupby
from typing import Any, NamedTuple

from rich.cells import cell_len
from rich.color import Color
from textual.app import App

#: A cell is so wide and high, and so wide is the frame; letters so high and their foot so low [px].
WIDE, HIGH, FRAME = 12, 24, 8
LETTERS, BASE = 20, 18
#: Columns and rows of a cell that its sixteen quarters and eighths fall on.
_HALF_X, _HALF_Y, _EIGHTH_X, _EIGHTH_Y = WIDE / 2, HIGH / 2, WIDE / 8, HIGH / 8


class Cell(NamedTuple):
    """One place on the screen: its sign (empty behind a wide one), ink and ground as '#rrggbb'."""

    sign: str
    ink: str
    ground: str
    bold: bool = False


Screen = tuple[tuple[Cell, ...], ...]
#: What a colour looks like: the ones a terminal has.
Palette = Callable[[Color], str]


def full(color: Color) -> str:
    """Give the colour itself."""
    return color.get_truecolor().hex


def screen_of(app: App[Any], palette: Palette = full) -> Screen:
    """What stands on the screen of `app`, with what lies over it."""
    update = app.screen._compositor.render_update(
        full=True, screen_stack=app._background_screens, simplify=True
    )
    rows = []
    for strips in update.strips:  # type: ignore[union-attr]
        cells: list[Cell] = []
        for text, style, _ in (segment for strip in strips for segment in strip):
            ground = palette(style.bgcolor)
            ink = palette(style.color) if style.color is not None else ground
            if style.reverse:
                ink, ground = ground, ink
            for sign in text:
                beside = [Cell("", ink, ground)] * (cell_len(sign) - 1)
                cells += [Cell(sign, ink, ground, bool(style.bold)), *beside]
        rows.append(tuple(cells))
    return tuple(rows)


# -- blocks --------------------------------------------------------------------------------------

Area = tuple[float, float, float, float]  # left, top, width, height within the cell
_QUARTERS = {
    0x2596: "c",
    0x2597: "d",
    0x2598: "a",
    0x2599: "acd",
    0x259A: "ad",
    0x259B: "abc",
    0x259C: "abd",
    0x259D: "b",
    0x259E: "bc",
    0x259F: "bcd",
}
_PLACE = {"a": (0, 0), "b": (1, 0), "c": (0, 1), "d": (1, 1)}


def _blocks(sign: str) -> tuple[Area, ...]:
    """The areas of a block element of Unicode (U+2580 to U+259F, less the shades)."""
    at = ord(sign) if len(sign) == 1 else 0
    if at == 0x2580:
        return ((0, 0, WIDE, _HALF_Y),)
    if 0x2581 <= at <= 0x2588:
        tall = (at - 0x2580) * _EIGHTH_Y
        return ((0, HIGH - tall, WIDE, tall),)
    if 0x2589 <= at <= 0x258F:
        return ((0, 0, (0x2590 - at) * _EIGHTH_X, HIGH),)
    if at == 0x2590:
        return ((_HALF_X, 0, _HALF_X, HIGH),)
    if at == 0x2594:
        return ((0, 0, WIDE, _EIGHTH_Y),)
    if at == 0x2595:
        return ((WIDE - _EIGHTH_X, 0, _EIGHTH_X, HIGH),)
    quarters = _QUARTERS.get(at, "")
    return tuple(
        (_PLACE[each][0] * _HALF_X, _PLACE[each][1] * _HALF_Y, _HALF_X, _HALF_Y)
        for each in quarters
    )


# -- parts of a picture --------------------------------------------------------------------------


class Stretch(NamedTuple):
    """Cells beside one another, and the row and column at which they begin."""

    y: int
    x: int
    cells: tuple[Cell, ...]


class Inks:
    """The colours in use, each with the short name of its class."""

    def __init__(self) -> None:
        self._names: dict[str, str] = {}

    def name(self, ink: str) -> str:
        return self._names.setdefault(ink, f"i{len(self._names)}")

    def css(self) -> str:
        return "".join(f".{name}{{fill:{ink}}}" for ink, name in self._names.items())


def _drawn(stretches: Sequence[Stretch], under: str, inks: Inks) -> str:
    """Grounds that differ from what lies under all of it, blocks upon them, then words."""
    grounds = [each for one in stretches for each in _grounds(one, under)]
    blocks = [each for one in stretches for each in _inked(one)]
    words = "".join(each for one in stretches for each in _words(one, inks))
    return _paths(grounds, inks) + _paths(blocks, inks) + words


def _paths(areas: Iterable[tuple[str, Area]], inks: Inks) -> str:
    """One path of each ink."""
    of: dict[str, str] = {}
    for ink, (x, y, wide, tall) in areas:
        of[ink] = of.get(ink, "") + f"M{x:g} {y:g}h{wide:g}v{tall:g}h{-wide:g}z"
    return "".join(f'<path class="{inks.name(ink)}" d="{d}"/>' for ink, d in of.items())


def _grounds(one: Stretch, under: str) -> Iterable[tuple[str, Area]]:
    at = one.x
    for ground, run in groupby(one.cells, key=lambda cell: cell.ground):
        count = len(tuple(run))
        if ground != under:
            yield ground, (at * WIDE, one.y * HIGH, count * WIDE, HIGH)
        at += count


def _inked(one: Stretch) -> Iterable[tuple[str, Area]]:
    at = one.x
    for (sign, ink), run in groupby(one.cells, key=lambda cell: (cell.sign, cell.ink)):
        count = len(tuple(run))
        for left, top, wide, tall in _blocks(sign):
            # What is as wide as its cell goes on into the next.
            many, long = (1, count * WIDE) if wide == WIDE else (count, wide)
            for place in range(many):
                yield ink, ((at + place) * WIDE + left, one.y * HIGH + top, long, tall)
        at += count


def _words(one: Stretch, inks: Inks) -> Iterable[str]:
    """Words of one ink, pinned to their cells; apart where two spaces or another ink come."""
    at, cells = 0, one.cells
    while at < len(cells):
        first, end = cells[at], at
        while end < len(cells) and first.sign.strip() and _goes_on(cells, end, first):
            end += 1
        if end > at:
            text = escape("".join(cell.sign for cell in cells[at:end]), quote=False)
            yield (
                f'<text class="{inks.name(first.ink)}{" b" if first.bold else ""}"'
                f' x="{(one.x + at) * WIDE}" y="{one.y * HIGH + BASE}"'
                f' textLength="{(end - at) * WIDE}">{text}</text>'
            )
        at = max(end, at + 1)


def _goes_on(cells: Sequence[Cell], at: int, first: Cell) -> bool:
    """Whether the cell belongs to the words that begin with `first`."""
    cell = cells[at]
    if cell.sign == " ":
        after = cells[at + 1 : at + 2]
        return bool(after and after[0].sign.strip()) and _goes_on(cells, at + 1, first)
    if not cell.sign:
        return True  # the second half of a wide sign
    same = (cell.ink, cell.bold) == (first.ink, first.bold)
    return same and cell.sign.isascii() == first.sign.isascii() and not _blocks(cell.sign)


# -- pictures ------------------------------------------------------------------------------------


def still(screen: Screen) -> str:
    """One picture."""
    return moving([(1.0, screen)])


def moving(frames: Sequence[tuple[float, Screen]], shown: int = -1) -> str:
    """Screens one after the other, each for so many seconds, and over again.

    What no frame changes is drawn once; each stretch of cells that changes, once for each thing that
    it shows. shown: the frame for whoever wants no motion.
    """
    screens = [screen for _, screen in frames]
    (under, _), *_ = Counter(cell.ground for row in screens[0] for cell in row).most_common(1)
    inks, still_cells, changing = Inks(), [], {}
    for y, rows in enumerate(zip(*screens, strict=True)):
        columns = list(zip(*rows, strict=True))
        x = 0
        for changes, run in groupby(columns, key=lambda seen: len(set(seen)) > 1):
            count = len(tuple(run))
            for cells in dict.fromkeys(row[x : x + count] for row in rows):
                when = tuple(row[x : x + count] == cells for row in rows)
                place = changing.setdefault(when, []) if changes else still_cells
                place.append(Stretch(y, x, cells))
            x += count
    drawn = _drawn(still_cells, under, inks)
    rules = []
    for number, (when, stretches) in enumerate(changing.items()):
        drawn += f'\n<g class="f{number}">{_drawn(stretches, under, inks)}</g>'
        rules.append(_rule(f"f{number}", [s for s, _ in frames], when, when[shown]))
    css = "".join(rules) + "@media(prefers-reduced-motion:reduce){g{animation:none!important}}"
    return _framed(drawn, inks, css if rules else "", under, screens[0])


def _rule(name: str, lasts_s: Sequence[float], when: Sequence[bool], shown: bool) -> str:
    """When a layer is seen. Each step holds until the next one."""
    total_s, at_s, steps, before = sum(lasts_s), 0.0, "", None
    for seconds, seen in zip(lasts_s, when, strict=True):
        if seen is not before:
            steps += f"{100 * at_s / total_s:.4g}%{{visibility:{SEEN[seen]}}}"
        at_s, before = at_s + seconds, seen
    return (
        f".{name}{{visibility:{SEEN[shown]};animation:{name} {total_s:g}s step-end infinite}}"
        f"@keyframes {name}{{{steps}}}\n"
    )


SEEN = {True: "visible", False: "hidden"}


def _framed(drawn: str, inks: Inks, rules: str, under: str, screen: Screen) -> str:
    """The whole file: a plain frame around it."""
    wide, high = len(screen[0]) * WIDE, len(screen) * HIGH
    edge = inks.name(screen[-1][-1].ground)
    around = f'x="{-FRAME}" y="{-FRAME}" width="{wide + 2 * FRAME}" height="{high + 2 * FRAME}"'
    box = f"{-FRAME} {-FRAME} {wide + 2 * FRAME} {high + 2 * FRAME}"
    ground = inks.name(under)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{box}">\n'
        f"<style>text{{font:{LETTERS}px monospace}}.b{{font-weight:bold}}"
        f"path,rect{{shape-rendering:crispEdges}}\n{inks.css()}\n{rules}</style>\n"
        f'<rect class="{edge}" {around}/>\n'
        f'<rect class="{ground}" width="{wide}" height="{high}"/>\n{drawn}\n</svg>\n'
    )
