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
from rich.color import Color, blend_rgb, parse_rgb_hex
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
#: How much of a cell is inked by the light, the medium and the dark shade.
_SHADES = {"\u2591": 0.25, "\u2592": 0.5, "\u2593": 0.75}
_PLACE = {"a": (0, 0), "b": (1, 0), "c": (0, 1), "d": (1, 1)}


def blocks_of(sign: str) -> tuple[Area, ...]:
    """The areas of a block element of Unicode (U+2580 to U+259F); a shade has its whole cell."""
    at = ord(sign) if len(sign) == 1 else 0
    if sign in _SHADES:
        return ((0, 0, WIDE, HIGH),)
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
    """One path of each ink; what goes on in the row beneath is one area."""
    tall: dict[tuple[str, float, float, float], float] = {}  # by ink, left, width and foot
    for ink, (x, y, wide, high) in areas:
        above = tall.pop((ink, x, wide, y), 0.0)
        tall[ink, x, wide, y + high] = above + high
    of: dict[str, str] = {}
    for (ink, x, wide, foot), high in tall.items():
        of[ink] = of.get(ink, "") + f"M{x:g} {foot - high:g}h{wide:g}v{high:g}h{-wide:g}z"
    return "".join(f'<path class="{inks.name(ink)}" d="{d}"/>' for ink, d in of.items())


def _grounds(one: Stretch, under: str) -> Iterable[tuple[str, Area]]:
    at = one.x
    for ground, run in groupby(one.cells, key=lambda cell: cell.ground):
        count = len(tuple(run))
        if ground != under:
            yield ground, (at * WIDE, one.y * HIGH, count * WIDE, HIGH)
        at += count


def _shade(cell: Cell) -> str:
    """The ink of a cell; of a shade, so much of it upon its ground."""
    share = _SHADES.get(cell.sign)
    if share is None:
        return cell.ink
    ground, ink = (parse_rgb_hex(each[1:]) for each in (cell.ground, cell.ink))
    return blend_rgb(ground, ink, share).hex


def _inked(one: Stretch) -> Iterable[tuple[str, Area]]:
    at = one.x
    for (sign, ink), run in groupby(one.cells, key=lambda cell: (cell.sign, _shade(cell))):
        count = len(tuple(run))
        for left, top, wide, tall in blocks_of(sign):
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
    return same and cell.sign.isascii() == first.sign.isascii() and not blocks_of(cell.sign)


# -- pictures ------------------------------------------------------------------------------------


def still(screen: Screen) -> str:
    """One picture."""
    return moving([(1.0, screen)])


def moving(frames: Sequence[tuple[float, Screen]], rests: int = 0) -> str:
    """Screens one after the other, each for so many seconds, and over again.

    Whatever stays for some frames is drawn once for them. rests: the frame for whoever wants no motion.
    """
    lasts_s, screens = zip(*frames, strict=True)
    (under, _), *_ = Counter(cell.ground for row in screens[0] for cell in row).most_common(1)
    layers: dict[tuple[int, int], list[Stretch]] = {}
    for y, rows in enumerate(zip(*screens, strict=True)):
        x = 0
        for stays, run in groupby(map(_stays, zip(*rows, strict=True))):
            end = x + len(tuple(run))
            for span in stays:
                layers.setdefault(span, []).append(Stretch(y, x, rows[span[0]][x:end]))
            x = end
    inks, always = Inks(), (0, len(frames))
    drawn = _drawn(layers.pop(always, []), under, inks)
    rules = ""
    for number, (span, stretches) in enumerate(sorted(layers.items())):
        drawn += f'\n<g class="f{number}">{_drawn(stretches, under, inks)}</g>'
        rules += _rule(f"f{number}", lasts_s, span, rests)
    if rules:
        rules += "@media(prefers-reduced-motion:reduce){g{animation:none!important}}"
    return _framed(drawn, inks, rules, under, screens[0])


def _stays(seen: Sequence[Cell]) -> tuple[tuple[int, int], ...]:
    """From which frame on and before which one a cell stays as it is."""
    ends = [n for n in range(1, len(seen)) if seen[n] != seen[n - 1]]
    return tuple(zip([0, *ends], [*ends, len(seen)], strict=True))


def _rule(name: str, lasts_s: Sequence[float], span: tuple[int, int], rests: int) -> str:
    """When a layer is seen: a step holds until the next; outside motion, as in the frame `rests`."""
    whole_s = sum(lasts_s)
    begins, ends = (100 * sum(lasts_s[:at]) / whole_s for at in span)
    steps = [(0.0, "hidden"), (begins, "visible"), (ends, "hidden")]
    told = "".join(
        f"{at:.4g}%{{visibility:{seen}}}"
        for at, seen in steps[1 if begins == 0 else 0 : 2 if ends == 100 else 3]
    )
    at_rest = "visible" if span[0] <= rests < span[1] else "hidden"
    return (
        f".{name}{{visibility:{at_rest};animation:{name} {whole_s:g}s step-end infinite}}"
        f"@keyframes {name}{{{told}}}\n"
    )


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
