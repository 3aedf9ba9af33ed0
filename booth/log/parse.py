"""The bytes of a session log read into events, whatever was done to them. Pure: no file is touched.

What cannot be read is never dropped in silence and never stops what can be: a broken line stays
where it is, is told and passed over; what follows the last line end was cut off by a crash or a
power cut.
"""

from __future__ import annotations

import msgspec

from booth.log.codec import VERSION, BrokenLine, decode
from booth.log.events import Event, JobOpened, UnknownEvent
from booth.log.judge import oddities

MARK = b"\xef\xbb\xbf"  # a byte-order mark, put first by some editors
BLANK = b" \t\r"
NUL = b"\0"  # some file systems leave these where a power cut took what was being written
MOST_TOLD = 3
#: A number is at most so much higher than its line's: the next one always has room.
MOST_AHEAD = 1_000_000

AGAIN = "The same entry stands twice and counts once: {}."
TWICE = "An entry has the number of an earlier one: {}."
DISORDERED = "Entries are not in the order of their numbers: {}."
REOPENED = "The job is opened more than once; the first counts: {}."
LATER = "Entries of a later version of this program are kept and shown, but not understood: {}."
ODDITIES = (AGAIN, TWICE, DISORDERED, REOPENED, LATER)


class OddOpening(BrokenLine):
    """A line opens a job that cannot be worked with; the message says why."""


class LogContent(msgspec.Struct, frozen=True):
    """What a log holds.

    broken: line number and what is wrong with it, passed over; torn: what followed the last line
    end, None where nothing did; odd: sentences on what is tolerated, numbers out of order or used
    twice, entries of a later version; end: bytes up to the end of the last event or line; unended:
    the last event lacks its line end, and nothing else; fault: why there is no job in it, as a
    sentence, empty where there is one.
    """

    events: list[Event | UnknownEvent] = []
    broken: list[tuple[int, str]] = []
    torn: bytes | None = None
    odd: list[str] = []
    end: int = 0
    unended: bool = False
    fault: str = ""

    @property
    def said(self) -> list[str]:
        """Sentences on all that is wrong with the log; empty where nothing is."""
        told = [
            f"Line {number} of the log is no entry and is passed over: {why}."
            for number, why in self.broken[:MOST_TOLD]
        ]
        more = len(self.broken) - MOST_TOLD
        if more > 0:
            told.append(f"{more} more {'lines are' if more > 1 else 'line is'} no entry either.")
        if self.torn is not None:
            told.append(
                f"The log ends in {len(self.torn)} bytes of an entry that was cut off, by a crash "
                "or a power cut: that entry was not kept. Enter it again if it is missing."
            )
        return told + self.odd


def parse(data: bytes) -> LogContent:
    """Read the bytes of a log. Never raises for anything that they hold."""
    end = data.rfind(b"\n") + 1
    content = _Reader()
    start = len(MARK) if data.startswith(MARK) else 0
    lines = data[start:end].split(b"\n")[:-1] if end > start else []
    for number, line in enumerate(lines, 1):
        content.line(number, line)
    tail = data[max(end, start) :]
    unended = bool(tail) and content.last(len(lines) + 1, tail)
    if unended:
        end += data[end:].rindex(b"}") + 1
    return LogContent(
        events=content.events,
        broken=content.broken,
        torn=tail if tail and not unended else None,
        odd=content.oddities(),
        end=end,
        unended=unended,
        fault=content.fault(holds_nothing(data)),
    )


class _Reader:
    """Takes lines in turn and remembers which numbers were seen."""

    def __init__(self) -> None:
        self.events: list[Event | UnknownEvent] = []
        self.broken: list[tuple[int, str]] = []
        self._by_n: dict[int, Event | UnknownEvent] = {}
        self._highest = 0
        self._odd: dict[str, list[int]] = {sentence: [] for sentence in ODDITIES}
        self._opened: JobOpened | None = None
        self._odd_opening = ""

    def line(self, number: int, line: bytes) -> None:
        bare = line.strip(NUL + BLANK)
        if not bare:
            if NUL in line:
                self.broken.append((number, "only NUL bytes, as a power cut leaves them"))
            return
        try:
            self._take(number, self._entry(number, bare))
        except BrokenLine as fault:
            why = str(fault).rstrip(".")
            self.broken.append((number, why))
            if isinstance(fault, OddOpening):
                self._odd_opening = self._odd_opening or f"line {number}: {why}"

    def last(self, number: int, tail: bytes) -> bool:
        """Whether what follows the last line end is a whole event that lacks its line end only."""
        try:
            event = self._entry(number, tail.strip(NUL + BLANK))
        except BrokenLine:
            return False
        self._take(-1, event)
        return True

    def _entry(self, number: int, line: bytes) -> Event | UnknownEvent:
        event = read_line(line)
        if event.n > number + MOST_AHEAD:
            raise BrokenLine(f"its number, {event.n}, is none that an entry here can have")
        if isinstance(event, JobOpened) and self._opened is None and event.n != 1:
            raise OddOpening(f"its number is {event.n}; the opening of a job is number 1")
        return event

    def _take(self, number: int, event: Event | UnknownEvent) -> None:
        before = self._by_n.get(event.n)
        if before == event:
            self._odd[AGAIN].append(number)
            return
        if before is not None:
            self._odd[TWICE].append(number)
        elif event.n < self._highest:
            self._odd[DISORDERED].append(number)
        if isinstance(event, UnknownEvent):
            self._odd[LATER].append(number)
        elif isinstance(event, JobOpened):
            if self.events:
                self._odd[REOPENED].append(number)
            self._opened = self._opened or event
        self._by_n.setdefault(event.n, event)
        self._highest = max(self._highest, event.n)
        self.events.append(event)

    def oddities(self) -> list[str]:
        """Give a sentence for each kind of oddity, naming the first line of it."""
        told = [
            sentence.format(_where(numbers)) for sentence, numbers in self._odd.items() if numbers
        ]
        if self._opened is not None and self._opened.version > VERSION:
            told.append(
                f"This job was begun with a later version of this program (its log is of version "
                f"{self._opened.version}, this one knows {VERSION}): what is new in it is not used."
            )
        return told

    def fault(self, is_empty: bool) -> str:
        """Give the sentence why no job can be opened, empty where one can."""
        if self._opened is not None:
            return ""
        if self._odd_opening:
            return (
                f"The job in it cannot be opened: {self._odd_opening}. The file is left as it is: "
                "mend that line in a text editor, or begin the job anew."
            )
        if is_empty:
            return (
                "There is nothing in the file: its first entry never reached the disk. Nothing is "
                "lost when it is deleted."
            )
        return "No line of it opens a job."


def holds_nothing(data: bytes) -> bool:
    """Whether there is nothing in a log but what a power cut leaves."""
    return not data.strip(NUL + BLANK + b"\n")


def read_line(line: bytes) -> Event | UnknownEvent:
    """Read a line. Raises BrokenLine where it is no entry, or opens a job that cannot be worked with."""
    event = decode(line)
    odd = oddities(event) if isinstance(event, JobOpened) else ()
    if odd:
        more = f", and {len(odd) - 1} more" if len(odd) > 1 else ""
        raise OddOpening(f"{odd[0]}{more}")
    return event


def _where(numbers: list[int]) -> str:
    first = f"line {numbers[0]}" if numbers[0] > 0 else "the last line"
    more = len(numbers) - 1
    return f"{first} and {more} more" if more else first
