"""A screen that is a list: lines to pick from, what is known of the picked one beside it, keys.

Home, past jobs, the shop and the log of the job are such screens; so are the menus of the bench.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import Generic, TypeVar

from textual.app import ComposeResult
from textual.containers import Horizontal

from booth.forms.key import Key
from booth.moment import Moment
from booth.screens.base import Deed, Framed
from booth.screens.dialog import Sheet
from booth.widgets.lists import PickList, step
from booth.widgets.page_view import PageView
from booth.words.shown import Lines, Page, PickLine

T = TypeVar("T")
I = TypeVar("I")  # noqa: E741 - an item
#: What one press of left or right scrolls, and how far Home and End go.
ABOUT_ROWS, FAR = 6, 1_000_000
MOVES = {"up": -1, "down": 1, "home": -FAR, "end": FAR}


class Listed(Generic[I]):
    """What a list holds, in its order: each section under its heading, an empty line between two.

    rows: of each item its heading (or none), what tells it again when all is listed anew, itself.
    """

    def __init__(self, rows: Iterable[tuple[str, object, I]] = ()) -> None:
        self.items: list[I] = []
        self._stacked: list[tuple[object, I | str]] = []
        section = ""
        for heading, id, item in rows:
            if heading != section:
                self._stacked += [
                    (None, each) for each in (["", heading] if section else [heading])
                ]
                section = heading
            self._stacked.append((id, item))
            self.items.append(item)

    def lines(self, line_of: Callable[[I], PickLine]) -> tuple[PickLine, ...]:
        """What is to be seen. line_of: gives the line of an item."""
        return tuple(
            PickLine(each, head=True) if isinstance(each, str) else line_of(each)
            for _, each in self._stacked
        )

    def item(self, line: int) -> I | None:
        """The item on a line; None where a heading stands there."""
        item = self._stacked[line][1] if 0 <= line < len(self._stacked) else None
        return None if isinstance(item, str) else item

    def line(self, id: object) -> int:
        """The line of an item; of the first one where it is not there."""
        ids = [each for each, _ in self._stacked]
        first = next((at for at, each in enumerate(ids) if each is not None), 0)
        return ids.index(id) if id is not None and id in ids else first


class ListScreen(Framed[T], Generic[T, I]):
    """Lines, one of them picked. A subclass gives ``listed``, ``line``, ``about`` and what Enter does."""

    #: whether what is known of a line stands beside the list
    BESIDE = True
    #: whether a click on a line takes it at once
    CLICK_TAKES = False
    HORIZONTAL_BREAKPOINTS = [(0, "-narrow"), (90, "-wide")]

    listed: Listed[I] = Listed()
    picked: int = 0

    def body(self) -> ComposeResult:
        with Horizontal(id="shelf"):
            yield PickList(id="rows")
            if self.BESIDE:
                yield PageView(id="about")

    def line(self, item: I, now: Moment) -> PickLine:
        """What is to be seen of an item; not asked where a screen makes all its lines at once."""
        return PickLine(str(item))

    def lines(self, now: Moment) -> Sequence[PickLine]:
        return self.listed.lines(lambda item: self.line(item, now))

    def about(self, now: Moment) -> tuple[str, ...]:
        """The lines about what is picked."""
        return ()

    def enter(self) -> Deed | None:
        return None

    def help(self) -> Sheet | None:
        """What there is to know about this list, if anything."""
        return None

    @property
    def chosen(self) -> I | None:
        """The picked item."""
        return self.listed.item(self.picked)

    def deed(self, key: Key) -> Deed | None:
        if key.name in MOVES:
            return Deed("choose", lambda: self.pick_by(MOVES[key.name]))
        if key.name in ("enter", "space", "pagedown"):
            taken = self.enter()
            return taken if taken is None or key.name == "enter" else Deed("", taken.do)
        if key.name in ("left", "right") and self.BESIDE and self._page.max_scroll_y > 0:
            by = ABOUT_ROWS if key.name == "right" else -ABOUT_ROWS
            return Deed("more of it", lambda: self._page.scroll_by(by))
        return super().deed(key)

    async def command(self, id: str) -> None:
        sheet = self.help() if id == "help" else None
        await (self.host.show(sheet) if sheet is not None else super().command(id))

    def pick_by(self, by: int) -> None:
        """Pick the line so many further on."""
        self.pick(step(self.lines(self.host.clock.now()), self.picked, by))

    def pick(self, index: int) -> None:
        """Pick a line."""
        if index != self.picked:
            self.picked = index
            self.say("")

    @property
    def _page(self) -> PageView:
        return self.query_one("#about", PageView)

    def on_drawn_picked(self, event: PickList.Picked) -> None:
        """A click picks; a click on the picked line takes it."""
        event.stop()
        self.pick(event.index)
        self.draw(self.host.clock.now())
        if event.again or self.CLICK_TAKES:
            self.press_soon("enter")

    def draw(self, now: Moment) -> None:
        """Draw list, words and keys, as far as they have changed."""
        self.query_one(PickList).shown = Lines(self.lines(now), self.picked)
        if self.BESIDE:
            about = Page(tuple(("text", line) for line in self.about(now)))
            if self._page.show(about):
                self.call_after_refresh(self.draw_keys)  # whether there is more is known then
        super().draw(now)
