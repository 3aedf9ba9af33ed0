"""The pictures of a card as SVG that stands inside a page: no script, no address, no font of its own. Pure.

Ink is black and grey, so that any printer draws it; what matters is told by a shape and a word as well.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from html import escape

from booth.card.model import CoatLine, TimeLine
from booth.card.pictures import without_gaps
from booth.words.shown import Paper, Section

INK, WASH, EDGE = "#111", "#bbb", "#666"
#: Sizes in the units of a drawing, which is a tenth of a millimetre on paper.
FAN = (600, 190)
SECTION = (900, 190)
GAUGE = (300, 44)
LINE_WIDTH, ROW, NAMES = 1640, 46, 300
TEXT = 22
#: How wide a gap is drawn, as a share of all that was sprayed and waited.
GAP_SHARE = 0.06
#: The spot of a pattern is at least so tall where nothing lies, so that its ends can be seen.
LEAST_TALL = 0.06


def _svg(width: float, height: float, what: str, inner: Iterator[str]) -> str:
    return (
        f'<svg viewBox="0 0 {width:g} {height:g}" role="img" aria-label="{escape(what)}">'
        f"{''.join(inner)}</svg>"
    )


def _text(x: float, y: float, words: str, anchor: str = "start", fill: str = INK) -> str:
    return (
        f'<text x="{x:.1f}" y="{y:.1f}" font-size="{TEXT}" text-anchor="{anchor}" fill="{fill}">'
        f"{escape(words)}</text>"
    )


def _path(points: Sequence[tuple[float, float]], closed: bool = False) -> str:
    told = " ".join(f"{x:.1f} {y:.1f}" for x, y in points)
    return f"M{told}{'Z' if closed else ''}"


def fan(paper: Paper, words: str) -> str:
    """The spot of a test pattern, wider where more lies; bent, or broken with drops beside it."""
    return _svg(*FAN, f"test pattern: {words}", _spot(paper))


def _spot(paper: Paper) -> Iterator[str]:
    width, height = FAN
    films = paper.films or (0.0,)
    most = max(films) or 1.0
    middle, tall = height / 2 - 12, height * 0.4
    places = [(at + 0.5) / len(films) for at in range(len(films))] if len(films) > 1 else [0.0, 1.0]
    heights = [film / most for film in films] if len(films) > 1 else [films[0] / most] * 2
    upper, lower = [], []
    for place, film in zip(places, heights, strict=True):
        u = place * 2 - 1
        blunt = math.sqrt(max(0.0, 1 - abs(u) ** 8))
        half = max(film, LEAST_TALL) * tall * (1 - 0.5 * abs(paper.bend)) * blunt
        at = middle + paper.bend * (u * u - 0.5) * height * 0.4
        upper.append((20 + place * (width - 40), at - half))
        lower.append((20 + place * (width - 40), at + half))
    broken = ' stroke-dasharray="14 9"' if paper.broken else ""
    yield f'<path d="{_path([*upper, *reversed(lower)], True)}" fill="{WASH}" stroke="{INK}" stroke-width="3"{broken}/>'
    for at, word in enumerate(paper.words):
        yield _text(20 + (at + 0.5) / len(paper.words) * (width - 40), height - 6, word, "middle")
    if paper.broken:
        for at in range(9):
            x, y = 40 + (at * 137) % (width - 80), 16 + (at * 61) % (height - 50)
            yield f'<circle cx="{x}" cy="{y}" r="{3 + at % 3}" fill="{INK}"/>'


def section(film: Section, words: str) -> str:
    """The film across the painted width, with the band in which it should lie; past it, black."""
    return _svg(*SECTION, f"film section: {words}", _layer(film))


def _layer(film: Section) -> Iterator[str]:
    (width, height), foot = SECTION, 30
    left, top = 118.0, max(1.0, film.high, *(share for _, share in film.samples)) * 1.08
    start, end = film.samples[0][0], film.samples[-1][0]
    span = (end - start) or 1.0

    def x(place: float) -> float:
        return left + (place - start) / span * (width - left - 4)

    def y(share: float) -> float:
        return (height - foot - 14) * (1 - share / top) + 16

    curve = [(x(place), y(share)) for place, share in film.samples]
    base = y(0.0)
    area = _path([(curve[0][0], base), *curve, (curve[-1][0], base)], True)
    yield f'<path d="{area}" fill="{WASH}"/>'
    over = [(x(p), y(max(share, film.high))) for p, share in film.samples]
    limit = y(film.high)
    heavy = _path([(over[0][0], limit), *over, (over[-1][0], limit)], True)
    yield f'<path d="{heavy}" fill="{INK}"/>'
    yield f'<path d="{_path(curve)}" fill="none" stroke="{INK}" stroke-width="3"/>'
    for share, word in ((film.high, "high"), (film.low, "low")):
        yield (
            f'<path d="M{left:g} {y(share):.1f}H{width}" stroke="{EDGE}" stroke-width="2" '
            'stroke-dasharray="10 6" fill="none"/>'
        )
        drop = 4 if word == "high" else TEXT * 0.8
        yield _text(left - 6, y(share) + drop, f"{word} {share:.1f}", "end", EDGE)
    yield f'<path d="M{left:g} {base:.1f}H{width}" stroke="{INK}" stroke-width="3"/>'
    yield _text(left, height - 4, f"0 to {end - start:.3g} {film.unit}: {film.across}")


def gauge(coat: CoatLine) -> str:
    """The wet film of a coat as an edge on a scale; under it the range that was asked for."""
    return _svg(*GAUGE, f"wet film {coat.wet}", _edge(coat))


def _edge(coat: CoatLine) -> Iterator[str]:
    (width, height), low, high = GAUGE, coat.low_um or 0.0, coat.high_um or 0.0
    asked = [end for end in coat.asked_um if end is not None]
    finite = [end for end in (low, high, *asked) if math.isfinite(end)]
    top = max(finite, default=1.0) * 1.2 or 1.0
    high = min(high, top)
    yield f'<rect x="0" y="2" width="{low / top * width:.1f}" height="{height - 16}" fill="{INK}"/>'
    yield (
        f'<rect x="{low / top * width:.1f}" y="2" width="{max(high - low, 0) / top * width:.1f}" '
        f'height="{height - 16}" fill="{WASH}" stroke="{INK}" stroke-width="2"/>'
    )
    if asked:
        start = coat.asked_um[0] or 0.0
        stop = coat.asked_um[1] if coat.asked_um[1] is not None else top
        yield (
            f'<rect x="{start / top * width:.1f}" y="{height - 10}" '
            f'width="{max(stop - start, 0) / top * width:.1f}" height="8" fill="{EDGE}"/>'
        )


def line_height(rows: int) -> float:
    """How high a time line of so many rows is drawn."""
    return rows * ROW + 70


def time_line(line: TimeLine, most: int) -> str:
    """When each coat was laid, a row a part; long stretches in which nothing was are drawn short."""
    rows = min(len(line.rows), most)
    height = line_height(rows)
    return _svg(LINE_WIDTH, height, "time line of the coats", _rows(line, rows, height))


def _rows(line: TimeLine, most: int, height: float) -> Iterator[str]:
    busy_s = line.end_s - sum(end - start for start, end, _ in line.gaps)
    gap_s = max(busy_s, 60.0) * GAP_SHARE
    whole = max(without_gaps(line.end_s, line.gaps, gap_s), 1.0)

    def x(second: float) -> float:
        at = without_gaps(second, line.gaps, gap_s) / whole
        return NAMES + at * (LINE_WIDTH - NAMES - 10)

    bottom = most * ROW + 4
    for start, end, words in line.gaps:
        middle = (x(start) + x(end)) / 2
        yield (
            f'<rect x="{x(start):.1f}" y="0" width="{x(end) - x(start):.1f}" height="{bottom}" '
            f'fill="#eee"/>'
        )
        yield _text(middle, bottom + 24, words, "middle", EDGE)
    for at, row in enumerate(line.rows[:most]):
        top = at * ROW + 6
        yield _text(NAMES - 12, top + 26, _short(row.name), "end")
        yield f'<path d="M{NAMES} {top + 17}H{LINE_WIDTH - 10}" stroke="{WASH}" stroke-width="2"/>'
        for span in row.spans:
            wide = max(x(span.end_s) - x(span.start_s), 20.0)
            fill = INK if span.product % 2 else EDGE
            yield (
                f'<rect x="{x(span.start_s):.1f}" y="{top}" width="{wide:.1f}" height="34" '
                f'fill="{fill}" stroke="#fff" stroke-width="2"/>'
            )
            yield _text(x(span.start_s) + wide / 2, top + 25, span.label, "middle", "#fff")
    yield f'<path d="M{NAMES} {bottom}H{LINE_WIDTH - 10}" stroke="{INK}" stroke-width="3"/>'
    yield _text(NAMES, height - 14, line.begun)
    yield _text(LINE_WIDTH - 10, height - 14, line.ended, "end")


def _short(name: str, most: int = 24) -> str:
    return name if len(name) <= most else f"{name[: most - 1]}…"
