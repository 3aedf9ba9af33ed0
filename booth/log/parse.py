"""The bytes of a session log read into events, whatever was done to them. Pure: no file is touched.

What cannot be read is never dropped in silence and never stops what can be: a broken line stays
where it is, is told and passed over; what follows the last line end was cut off by a crash or a
power cut.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

from booth.log.events import BrokenLine, Event, JobOpened, UnknownEvent, decode

__all__ = ["LogContent", "parse", "read_line"]

MARK = b"\xef\xbb\xbf"  # a byte-order mark, put first by some editors
BLANK = b" \t\r"
NUL = b"\0"  # some file systems leave these where a power cut took what was being written
MOST_TOLD = 3
#: Whole numbers beyond this are not safe in JSON (RFC 8259, section 6).
HIGHEST_NUMBER = 2**53 - 1


@dataclass(frozen=True, slots=True)
class LogContent:
    """What a log holds.

    broken: line number and what is wrong with it, passed over; torn: what followed the last line
    end, None where nothing did; odd: sentences on numbers that are out of order or used twice,
    which are tolerated; end: bytes up to the end of the last event or line; unended: the last
    event lacks its line end, and nothing else.
    """

    events: list[Event | UnknownEvent] = field(default_factory=list)
    broken: list[tuple[int, str]] = field(default_factory=list)
    torn: bytes | None = None
    odd: list[str] = field(default_factory=list)
    end: int = 0
    unended: bool = False

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
    for number, line in enumerate(data[start:end].split(b"\n")[:-1] if end > start else [], 1):
        content.line(number, line)
    tail = data[max(end, start) :]
    unended = bool(tail) and content.last(tail)
    if unended:
        end += data[end:].rindex(b"}") + 1
    return LogContent(
        events=content.events,
        broken=content.broken,
        torn=tail if tail and not unended else None,
        odd=content.oddities(),
        end=end,
        unended=unended,
    )


class _Reader:
    """Takes lines in turn and remembers which numbers were seen."""

    def __init__(self) -> None:
        self.events: list[Event | UnknownEvent] = []
        self.broken: list[tuple[int, str]] = []
        self._by_n: dict[int, tuple[int, bytes]] = {}
        self._highest = 0
        self._again: list[int] = []
        self._twice: list[int] = []
        self._disordered: list[int] = []
        self._reopened: list[int] = []

    def line(self, number: int, line: bytes) -> None:
        """Read one line, its end taken off."""
        bare = line.strip(NUL + BLANK)
        if not bare:
            if NUL in line:
                self.broken.append((number, "only NUL bytes, as a power cut leaves them"))
            return
        try:
            self._take(number, bare, read_line(bare))
        except BrokenLine as fault:
            self.broken.append((number, str(fault).rstrip(".")))

    def last(self, tail: bytes) -> bool:
        """Whether what follows the last line end is a whole event that lacks its line end only."""
        bare = tail.strip(NUL + BLANK)
        try:
            event = read_line(bare)
        except BrokenLine:
            return False
        self._take(-1, bare, event)
        return True

    def _take(self, number: int, line: bytes, event: Event | UnknownEvent) -> None:
        before = self._by_n.get(event.n)
        if before is not None and before[1] == line:
            self._again.append(number)
            return
        if before is not None:
            self._twice.append(number)
        elif event.n < self._highest:
            self._disordered.append(number)
        if isinstance(event, JobOpened) and self.events:
            self._reopened.append(number)
        self._by_n.setdefault(event.n, (number, line))
        self._highest = max(self._highest, event.n)
        self.events.append(event)

    def oddities(self) -> list[str]:
        """Give a sentence for each kind of oddity, naming the first line of it."""
        kinds: list[tuple[list[int], Callable[[str], str]]] = [
            (self._again, lambda at: f"The same entry stands twice and counts once: {at}."),
            (self._twice, lambda at: f"An entry has the number of an earlier one: {at}."),
            (self._disordered, lambda at: f"Entries are not in the order of their numbers: {at}."),
            (
                self._reopened,
                lambda at: f"The job is opened more than once; the first counts: {at}.",
            ),
        ]
        return [sentence(_where(numbers)) for numbers, sentence in kinds if numbers]


def read_line(line: bytes) -> Event | UnknownEvent:
    """Read a line, whatever it holds: brackets by the thousand, numbers by the yard.

    Raises:
        BrokenLine: it is no entry; the message says why.
    """
    try:
        event = decode(line)
    except (ValueError, ArithmeticError, RecursionError) as fault:
        raise BrokenLine(str(fault)) from None
    if not 0 < event.n <= HIGHEST_NUMBER:
        raise BrokenLine("its number is none that an entry can have")
    return event


def _where(numbers: list[int]) -> str:
    first = f"line {numbers[0]}" if numbers[0] > 0 else "the last line"
    more = len(numbers) - 1
    return f"{first} and {more} more" if more else first
