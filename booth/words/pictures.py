"""What an instrument shows beside its figure, as plain data: a widget draws each kind.

They are finished words and numbers; nothing here knows of a job, a clock or a screen.
"""

from __future__ import annotations

from dataclasses import dataclass

from booth.words.tone import Tone


@dataclass(frozen=True, slots=True)
class PourRow:
    """One pour: its component, its amount alone, the mark at which it ends.

    tone: GOOD poured, READY to be poured now, PLAIN later.
    """

    name: str
    amount: str
    mark: str
    tone: Tone


@dataclass(frozen=True, slots=True)
class PartRow:
    """One part as it is to be shown."""

    name: str
    coats: str
    tone: Tone
    word: str
    time: str
    what: str
    estimate: bool = False


@dataclass(frozen=True)
class Section:
    """What to draw.

    samples: (place, film as a share of the target), places rising; low, high: the band as shares
    of the target; across: what the place is measured along; unit: of the place, "mm".
    """

    samples: tuple[tuple[float, float], ...] = ()
    low: float = 0.8
    high: float = 1.2
    across: str = "across the panel"
    unit: str = ""


@dataclass(frozen=True)
class Paper:
    """What to draw.

    films: how heavy it is from one end to the other, any scale; bend: how far it bows, 0 straight;
    broken: blown in spurts, with drops beside it; words: one for each equal zone, beneath it.
    """

    films: tuple[float, ...] = ()
    bend: float = 0.0
    broken: bool = False
    words: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class LineBlock:
    """A stretch of a row. tone: what it is; text: on a block of spraying, the coat; done: it is past."""

    start_s: float
    end_s: float
    tone: Tone
    text: str = ""
    done: bool = False


@dataclass(frozen=True, slots=True)
class LineRow:
    """One row: a part, or a batch."""

    name: str
    blocks: tuple[LineBlock, ...]
    note: str = ""


@dataclass(frozen=True, slots=True)
class Timeline:
    """All of it, in seconds from now; ticks: (seconds, words) along the top."""

    rows: tuple[LineRow, ...] = ()
    start_s: float = 0.0
    end_s: float = 3600.0
    ticks: tuple[tuple[float, str], ...] = ()


@dataclass(frozen=True, slots=True)
class Pours:
    """The pours of a batch."""

    rows: tuple[PourRow, ...]


@dataclass(frozen=True, slots=True)
class Parts:
    """The parts of a job; chosen: the position of the one that keys are about."""

    rows: tuple[PartRow, ...]
    chosen: int


@dataclass(frozen=True, slots=True)
class Gallery:
    """Papers to choose from, each with its short name."""

    papers: tuple[tuple[Paper, str], ...]


@dataclass(frozen=True, slots=True)
class Bar:
    """A bar that sweeps in the time of a pass; elapsed_s: since it was started, 0 while it stands."""

    pass_s: float
    elapsed_s: float = 0.0


@dataclass(frozen=True, slots=True)
class PickLine:
    """One line of a list.

    name: what it is called; behind: what stands quietly behind it; must: that is to be seen however
    narrow the list is; mark: one cell before the name; head: a heading, not to be picked.
    """

    name: str
    behind: str = ""
    must: bool = False
    mark: str = ""
    head: bool = False


@dataclass(frozen=True, slots=True)
class Lines:
    """A list to pick from."""

    lines: tuple[PickLine, ...]
    picked: int = 0


@dataclass(frozen=True, slots=True)
class Page:
    """Something to read. paragraphs: (style, text); a style is head, text, now, done, quiet, warning."""

    paragraphs: tuple[tuple[str, str], ...]


#: Whatever can stand beside a figure.
Picture = Pours | Parts | Section | Paper | Gallery | Timeline | Bar | Lines | Page
