"""What was tried in a step, as plain data: tries on the wanted band, and a chart of them. Pure.

A larger window shows it beside the figure; a small one has no room for it. Places are shares of the
scale they stand on, 0 to 1, as everywhere on the screen.
"""

from __future__ import annotations

import msgspec

from booth.words.shown import Band, Page, Section, Timeline, Tone


class Try(msgspec.Struct, frozen=True):
    """One try. text: when, and what was set; figure: what came of it; tone: against what is wanted;
    edge: where it lies on the scale, None where that is not known; upto: the far end of what is only
    known to lie between two."""

    text: str
    figure: str = ""
    tone: Tone = Tone.PLAIN
    edge: float | None = None
    upto: float | None = None


class Spot(msgspec.Struct, frozen=True):
    """A try on a chart. mark: its one cell, so that kinds are told by shape; said: beside it."""

    x: float
    y: float
    mark: str
    tone: Tone = Tone.PLAIN
    said: str = ""


class Curve(msgspec.Struct, frozen=True):
    """A line through a chart, straight between its points, x rising; name: at its end."""

    points: tuple[tuple[float, float], ...]
    name: str = ""
    tone: Tone = Tone.PLAIN


class Chart(msgspec.Struct, frozen=True):
    """What came of it over what was set. low, high: the wanted band, None where it has no such end;
    x_ticks, y_ticks: (share, words), those that matter most first; x_name: what was set, its unit; title: what is
    drawn."""

    title: str
    spots: tuple[Spot, ...]
    curves: tuple[Curve, ...] = ()
    x_ticks: tuple[tuple[float, str], ...] = ()
    y_ticks: tuple[tuple[float, str], ...] = ()
    x_name: str = ""
    low: float | None = None
    high: float | None = None


class Tries(msgspec.Struct, frozen=True):
    """The tries of a step, the latest last. title: what they are; band: the scale under them; notes:
    what they come to; chart: the same, where there is room for it."""

    title: str
    tries: tuple[Try, ...]
    band: Band | None = None
    notes: tuple[str, ...] = ()
    chart: Chart | None = None


#: Whatever can stand beside words and rows.
Beside = Tries | Timeline | Section | Page


class AtLarge(msgspec.Struct, frozen=True):
    """What a step has to say where the window has room.

    beside: beside words and rows, one above the other; record: lines of the record that `beside`
    does not tell; page: the page that is its picture stands there, in the column of the words.
    """

    beside: tuple[Beside, ...] = ()
    record: tuple[str, ...] = ()
    page: bool = False
