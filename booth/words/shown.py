"""What the widgets are told: finished words and figures as plain data. Pure.

Nothing here knows of a job, a profile, a clock or a screen.
"""

from __future__ import annotations

import enum
from collections.abc import Iterable, Sequence

import msgspec


class Tone(enum.Enum):
    """What a figure asks of the painter, the most urgent first, with its word and its shape.

    A shape is one cell, from the characters that every terminal font has had since the 1980s; no
    word stands at a figure that only stands there.
    """

    LATE = "LATE", "■"  # the heaviest mark there is
    CLOSING = "CLOSING", "▼"  # running down to a point
    READY = "READY", "►"  # go on
    CAUTION = "OUT OF RANGE", "▲"  # the outline of a warning sign, as in ISO 7010
    RUNNING = "RUNNING", "»"  # moving
    WAIT = "WAIT", "▬"  # a bar across the way
    GOOD = "IN RANGE", "√"  # ticked off
    PLAIN = "", "·"

    def __init__(self, word: str, shape: str) -> None:
        self.word, self.shape = word, shape
        self.css = f"tone-{self.name.lower()}"
        self.urgency = len(type(self).__members__)


class Band(msgspec.Struct, frozen=True):
    """What is wanted, on the scale along the foot of a field, as shares of it from the left.

    low, high: its ends, None where it has none there; low_words, high_words: them in digits; note:
    whose band it is, and the unit.
    """

    low: float | None = None
    high: float | None = None
    low_words: str = ""
    high_words: str = ""
    note: str = ""


class Readout(msgspec.Struct, frozen=True):
    """The one figure that matters now, in a field that is its own gauge.

    figure: as it is to be read, "4:31", "" for none; unit: beside it, "ml/min"; label: what it is;
    word: instead of the tone's own, "" for none; lines: the explanation beneath;
    like: a figure as wide as this one will get, "00:00", so that its size stands still;
    whose: the part, cup or batch, large; edge: how far the field is filled from the left, 0 to 1,
    None where that is not known; band: what is wanted, on the scale beneath; marks: where to stop,
    as shares with their words; wanted: the figure is asked for, nothing is measured yet; in_words:
    the figure is words, as many as fit in rows of letters: all of it stands in a text besides.
    """

    figure: str
    unit: str = ""
    label: str = ""
    tone: Tone = Tone.PLAIN
    word: str | None = None
    lines: tuple[str, ...] = ()
    like: str = ""
    whose: str = ""
    edge: float | None = None
    band: Band | None = None
    marks: tuple[tuple[float, str], ...] = ()
    wanted: bool = False
    in_words: bool = False

    @property
    def shown_word(self) -> str:
        return self.tone.word if self.word is None else self.word


class ClockFace(msgspec.Struct, frozen=True):
    """One running clock.

    title: the part and coat, "doors coat 2"; what: "flash-off"; remaining: "4:31"; word: instead of
    the tone's own; edge: how far its row is filled, 0 to 1, None where that is not known; estimate:
    whether its length rests on an estimate; short: `what` in a word or two, where room is short.
    """

    title: str
    what: str
    remaining: str
    tone: Tone = Tone.WAIT
    word: str | None = None
    edge: float | None = None
    estimate: bool = False
    short: str = ""

    @property
    def shown_word(self) -> str:
        return self.tone.word if self.word is None else self.word


class AlarmFace(msgspec.Struct, frozen=True):
    """An alarm as it fills the field: whose it is, its state, what to do, each in a word or two.

    line: its sentence; place: which of several it is, "1 of 3"; whole: it fills the bench, not a
    strip of it; beat: the other way round, where it blinks, the other half where it takes turns.
    """

    whose: str
    word: str
    deed: str
    tone: Tone
    line: str
    place: str = ""
    whole: bool = False
    beat: bool = False


class PickLine(msgspec.Struct, frozen=True):
    """One line of a list.

    name: what it is called; behind: what stands quietly behind it; must: that is to be seen however
    narrow the list is; mark: one cell before the name; head: a heading, not to be picked.
    """

    name: str
    behind: str = ""
    must: bool = False
    mark: str = ""
    head: bool = False


class Page(msgspec.Struct, frozen=True):
    """Something to read. paragraphs: (style, text); a style is head, text, now, done, quiet, warning."""

    paragraphs: tuple[tuple[str, str], ...]


def reflow(lines: Iterable[str]) -> tuple[str, ...]:
    """Give lines that were broken for another width as whole sentences, to be broken anew.

    A line that begins small, or follows one that does not end a sentence, goes on the line before.
    """
    whole: list[str] = []
    for line in lines:
        goes_on = whole and line and (line[0].islower() or whole[-1][-1:] not in set(".:;!?"))
        if goes_on and whole[-1]:
            whole[-1] = f"{whole[-1]} {line}"
        else:
            whole.append(line)
    return tuple(whole)


class PourRow(msgspec.Struct, frozen=True):
    """One pour: its component, its amount alone, the mark at which it ends; tone: GOOD poured, READY
    to be poured now, PLAIN later; edge: the mark as a share of the whole batch."""

    name: str
    amount: str
    mark: str
    tone: Tone
    edge: float | None = None


class PartRow(msgspec.Struct, frozen=True):
    """One part, batch or window. coats: laid of how many, "1/3"; edge: how far it has come, 0 to 1,
    None where that is not known; short: `what` in a word or two, where room is short."""

    name: str
    coats: str
    tone: Tone
    word: str
    time: str
    what: str
    estimate: bool = False
    edge: float | None = None
    short: str = ""


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


class RunChart(msgspec.Struct, frozen=True):
    """Figures job after job, the oldest at the left. outside: the places, from 0, of those beyond a limit;
    mean, lower, upper: None where there is none; each with its words; ends: the first and the last day;
    picked: the place of the one that is told."""

    figures: tuple[float, ...]
    mean: float
    mean_words: str
    lower: float | None = None
    lower_words: str = ""
    upper: float | None = None
    upper_words: str = ""
    outside: frozenset[int] = frozenset()
    ends: tuple[str, str] = ("", "")
    picked: int = 0


class Lines(msgspec.Struct, frozen=True):
    lines: Sequence[PickLine]
    picked: int = 0


#: Whatever can stand beside a figure.
Picture = Pours | Parts | Section | Paper | Gallery | Timeline | Bar | Lines | Page
