"""Everything by name: the steps of the job in their order, the commands with their keys, the words of
the trade. What is typed narrows the list; a word of the trade leads to the steps that speak of it.
"""

from __future__ import annotations

from collections.abc import Awaitable, Callable, Iterable, Sequence
from typing import NamedTuple

from textual.app import ComposeResult

from booth.forms.key import Key
from booth.moment import Moment
from booth.screens.base import Deed
from booth.screens.dialog import Dialog
from booth.screens.list_screen import Listed, ListScreen
from booth.widgets.lists import PickList
from booth.words.shown import PickLine

ASK = "By name: type a few letters, or a word of the trade"
NOTHING = "Nothing here speaks of that. Bksp erases, Esc leaves."
CURSOR = "▏"
WORDS, SPEAKS = "Words of the trade", "These speak of it"
MOST_TYPED = 40


class Entry(NamedTuple):
    """What can be asked for. heading: above it and its like; name; behind: stands quietly behind it;
    do: does it; also: what else finds it; mark: one cell before the name."""

    heading: str
    name: str
    behind: str
    do: Callable[[], Awaitable[object] | None]
    also: str = ""
    mark: str = ""

    def rank(self, words: list[str]) -> int:
        """How near it is to what was typed: 0 by its name, 1 by what else finds it, 2 not at all."""
        name, every = self.name.lower(), f"{self.name} {self.behind} {self.also}".lower()
        if all(word in name for word in words):
            return 0
        return 1 if all(word in every for word in words) else 2


def narrowed(entries: Iterable[Entry], typed: str) -> list[Entry]:
    """Those that what was typed may mean: what is called so, then what speaks of it, then the words
    of the trade; each kind together."""
    words = typed.lower().split()
    ranks = [(each.rank(words), each) for each in entries]
    kinds = list(dict.fromkeys(each.heading for _, each in ranks))

    def place(one: tuple[int, Entry]) -> tuple[bool, int, int]:
        rank, each = one
        return each.heading == WORDS, rank, kinds.index(each.heading)

    found = sorted((one for one in ranks if one[0] < 2), key=place)
    return [
        each._replace(heading=SPEAKS) if rank and each.heading != WORDS else each
        for rank, each in found
    ]


class Palette(Dialog[Entry | None], ListScreen[Entry | None, Entry]):
    """Letters narrow the list, arrows choose, Enter takes, Esc leaves with nothing done."""

    LEAVES = ("escape", "f9")
    BESIDE = False
    CLICK_TAKES = True

    def __init__(self, entries: tuple[Entry, ...]) -> None:
        super().__init__("")
        self.entries = entries
        self.typed = ""
        self._narrow("")

    def heading(self) -> str:
        return f"By name: {self.typed}{CURSOR}" if self.typed else ASK

    def body(self) -> ComposeResult:
        yield PickList(id="rows")

    def lines(self, now: Moment) -> Sequence[PickLine]:
        return tuple(super().lines(now)) or (PickLine(NOTHING, head=True),)

    def line(self, item: Entry, now: Moment) -> PickLine:
        return PickLine(item.name, item.behind, mark=item.mark)

    def enter(self) -> Deed | None:
        chosen = self.chosen
        return Deed("take it", lambda: self.close(chosen)) if chosen is not None else None

    def deed(self, key: Key) -> Deed | None:
        if key.name == "backspace" and self.typed:
            return Deed("erase", lambda: self._narrow(self.typed[:-1]))
        letter = key.character or ""
        if (letter.isprintable() and letter.strip()) or (letter == " " and self.typed):
            return Deed("", lambda: self._narrow(self.typed + letter))
        return super().deed(key)

    async def paste(self, text: str) -> None:
        self._narrow(self.typed + " ".join(text.split()))
        self.draw(self.host.clock.now())

    def _narrow(self, typed: str) -> None:
        """What is typed is this now."""
        self.typed = typed[:MOST_TYPED]
        found = narrowed(self.entries, self.typed)
        self.listed = Listed((each.heading, each, each) for each in found)
        self.picked = self.listed.line(None)

    def draw(self, now: Moment) -> None:
        self.query_one(PickList).styles.height = self.room
        super().draw(now)
