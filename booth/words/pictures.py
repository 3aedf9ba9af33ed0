"""What an instrument shows beside its figure, as plain data: a widget draws each kind.

They are finished words and numbers; nothing here knows of a job, a clock or a screen.
"""

from __future__ import annotations

import msgspec

from booth.words.lines import Page, PickLine
from booth.words.tone import Tone


class PourRow(msgspec.Struct, frozen=True):
    """One pour: its component, its amount alone, the mark at which it ends; tone: GOOD poured, READY
    to be poured now, PLAIN later."""

    name: str
    amount: str
    mark: str
    tone: Tone


class PartRow(msgspec.Struct, frozen=True):
    name: str
    coats: str
    tone: Tone
    word: str
    time: str
    what: str
    estimate: bool = False


class Section(msgspec.Struct, frozen=True):
    """samples: (place, film as a share of the target), places rising; low, high: the band as shares
    of the target; across: what the place is measured along; unit: of the place, "mm"."""

    samples: tuple[tuple[float, float], ...] = ()
    low: float = 0.8
    high: float = 1.2
    across: str = "across the panel"
    unit: str = ""


class Paper(msgspec.Struct, frozen=True):
    """films: how heavy it is from one end to the other, any scale; bend: how far it bows, 0 straight;
    broken: blown in spurts, with drops beside it; words: one for each equal zone, beneath it."""

    films: tuple[float, ...] = ()
    bend: float = 0.0
    broken: bool = False
    words: tuple[str, ...] = ()


class LineBlock(msgspec.Struct, frozen=True):
    """A stretch of a row. tone: what it is; text: on a block of spraying, the coat; done: it is past."""

    start_s: float
    end_s: float
    tone: Tone
    text: str = ""
    done: bool = False


class LineRow(msgspec.Struct, frozen=True):
    name: str
    blocks: tuple[LineBlock, ...]
    note: str = ""


class Timeline(msgspec.Struct, frozen=True):
    """All of it, in seconds from now; ticks: (seconds, words) along the top."""

    rows: tuple[LineRow, ...] = ()
    start_s: float = 0.0
    end_s: float = 3600.0
    ticks: tuple[tuple[float, str], ...] = ()


class Pours(msgspec.Struct, frozen=True):
    rows: tuple[PourRow, ...]


class Parts(msgspec.Struct, frozen=True):
    """The parts of a job; chosen: the position of the one that keys are about."""

    rows: tuple[PartRow, ...]
    chosen: int


class Gallery(msgspec.Struct, frozen=True):
    """Papers to choose from, each with its short name."""

    papers: tuple[tuple[Paper, str], ...]


class Bar(msgspec.Struct, frozen=True):
    """A bar that sweeps in the time of a pass. place: where it is, 0 left to 1 right; number: of the
    pass, odd ones go right; turned: it has just done so."""

    pass_s: float
    place: float = 0.0
    number: int = 1
    turned: bool = False


class Lines(msgspec.Struct, frozen=True):
    lines: tuple[PickLine, ...]
    picked: int = 0


#: Whatever can stand beside a figure.
Picture = Pours | Parts | Section | Paper | Gallery | Timeline | Bar | Lines | Page
