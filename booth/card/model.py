"""A card as plain data: finished words, ready for a terminal, a letter, a table or a page. Pure.

Every text is one line that hides nothing; whoever writes it out still escapes it for where it goes.
What was not measured is not here, or stands among `missing`.
"""

from __future__ import annotations

import msgspec

from booth.words.shown import Paper, Section


class Fact(msgspec.Struct, frozen=True):
    """One line. wanted: what the profile asks for; side: 'below' or 'above' that, where it is; group: what
    its label begins with where the rest of it is a time or a number of this job alone."""

    label: str
    text: str
    wanted: str = ""
    side: str = ""
    group: str = ""

    @property
    def in_words(self) -> str:
        """As '1.90 bar, below 2.00 to 2.20 bar'."""
        if not self.wanted:
            return self.text
        return f"{self.text} ({f'{self.side} the ' if self.side else ''}wanted {self.wanted})"


class CoatLine(msgspec.Struct, frozen=True):
    """One coat on one part or side. day, begun, waited, sprayed: when, how long since the coat before
    (`after`) ended, how long it took; wet: as the gauge told it; remark: early, late, amiss, not ended; low_um, high_um: of
    the film read, wet_um: the range asked for, for its drawing."""

    part: str
    coat: str
    day: str = ""
    begun: str = ""
    waited: str = ""
    after: str = ""
    sprayed: str = ""
    wet: str = ""
    wanted: str = ""
    remark: str = ""
    low_um: float | None = None
    high_um: float | None = None
    asked_um: tuple[float | None, float | None] = (None, None)

    @property
    def wet_of_wanted(self) -> str:
        """As '50 to 60 of 40 to 60 µm'."""
        if not (self.wet and self.wanted):
            return self.wet
        unit = f" {self.wet.rpartition(' ')[2]}"
        return f"{self.wet.removesuffix(unit) if self.wanted.endswith(unit) else self.wet} of {self.wanted}"


class Block(msgspec.Struct, frozen=True):
    """One product. facts: settings, weather, mix, cup; missing: what was not measured; film: what lies
    there in all; paper, section: the pattern that was read last, and the film that it lays."""

    title: str
    demo: bool = False
    about: tuple[Fact, ...] = ()
    facts: tuple[Fact, ...] = ()
    missing: tuple[str, ...] = ()
    coats: tuple[CoatLine, ...] = ()
    film: tuple[Fact, ...] = ()
    pattern: str = ""
    paper: Paper | None = None
    section: Section | None = None


class Judged(msgspec.Struct, frozen=True):
    """One verdict; again: whether it was given behind the closing."""

    verdict: str
    when: str
    words: str = ""
    again: bool = False


class Span(msgspec.Struct, frozen=True):
    """A coat on the time line [s from its beginning]. label: its number."""

    start_s: float
    end_s: float
    label: str
    product: int


class Line(msgspec.Struct, frozen=True):
    """A row of the time line: of a part, of a batch."""

    name: str
    spans: tuple[Span, ...]


class TimeLine(msgspec.Struct, frozen=True):
    """When each coat was laid. gaps: stretches of hours in which nothing was sprayed [s]; begun, ended:
    when the first coat began and the last one ended, in words; length: how long that took."""

    rows: tuple[Line, ...]
    end_s: float
    gaps: tuple[tuple[float, float, str], ...] = ()
    begun: str = ""
    ended: str = ""


class Entry(msgspec.Struct, frozen=True):
    """One line of the log. minor: what is left off the paper first."""

    n: int
    day: str
    time: str
    text: str
    void: bool = False
    minor: bool = False


class Card(msgspec.Struct, frozen=True):
    """All of it.

    said: what is wrong with the log; judged: the verdicts, the one that counts first, none where the job
    is open; next_time: what to change; to_change: what a rehearsal said to change, rehearsal: whether
    it is one; faults, later: seen while it ran, and since; since: sanded,
    polished, cured.
    """

    title: str
    name: str = ""
    demo: bool = False
    said: tuple[str, ...] = ()
    judged: tuple[Judged, ...] = ()
    is_open: bool = True
    next_time: str = ""
    rehearsal: bool = False
    to_change: tuple[str, ...] = ()
    faults: tuple[str, ...] = ()
    later: tuple[str, ...] = ()
    since: tuple[str, ...] = ()
    head: tuple[Fact, ...] = ()
    blocks: tuple[Block, ...] = ()
    line: TimeLine | None = None
    entries: tuple[Entry, ...] = ()

    @property
    def verdict(self) -> str:
        """The one that counts; empty where nobody gave one, or the job is open."""
        return next((each.verdict for each in self.judged if each.verdict), "")
