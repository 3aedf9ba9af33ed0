"""A screen that is a list: lines to pick from, what is known of the picked one beside it, keys.

Home, past jobs, the shop and the log of the job are such screens; so are the menus of the bench.
"""

from __future__ import annotations

from typing import Generic, TypeVar

from textual.app import ComposeResult
from textual.containers import Horizontal
from textual.widgets import Static

from booth.forms.key import Key
from booth.moment import Moment
from booth.screens.base import Deed, OwnScreen
from booth.widgets.lists import PickList, step
from booth.widgets.page_view import PageView
from booth.widgets.text import content
from booth.words.shown import Lines, Page, PickLine

T = TypeVar("T")
#: What one press of left or right scrolls, and how far Home and End go.
ABOUT_ROWS, FAR = 6, 1_000_000
MOVES = {"up": -1, "down": 1, "home": -FAR, "end": FAR}


class ListScreen(OwnScreen[T], Generic[T]):
    """Lines, one of them picked. A subclass gives ``lines``, ``about`` and what Enter does."""

    #: whether what is known of a line stands beside the list
    BESIDE = True
    HORIZONTAL_BREAKPOINTS = [(0, "-narrow"), (90, "-wide")]

    picked: int = 0

    def compose(self) -> ComposeResult:
        yield Static("", id="name", markup=False)
        with Horizontal(id="shelf"):
            yield PickList(id="rows")
            if self.BESIDE:
                yield PageView(id="about")
        yield Static("", id="say", markup=False)
        yield Static("", id="keys", markup=False)

    # -- what a list says -------------------------------------------------------------------

    def heading(self) -> str:
        return ""

    def lines(self, now: Moment) -> tuple[PickLine, ...]:
        return ()

    def about(self, now: Moment) -> Page:
        return Page(())

    def enter(self) -> Deed | None:
        return None

    # -- keys -------------------------------------------------------------------------------

    def deed(self, key: Key) -> Deed | None:
        if key.name in MOVES:
            return Deed("choose", lambda: self.pick_by(MOVES[key.name]))
        if key.name in ("enter", "space", "pagedown"):
            taken = self.enter()
            return taken if taken is None or key.name == "enter" else Deed("", taken.do)
        if key.name in ("left", "right") and self.BESIDE and self._page.max_scroll_y > 0:
            by = ABOUT_ROWS if key.name == "right" else -ABOUT_ROWS
            return Deed("more of it", lambda: self._page.scroll_by(by))
        return None

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
        if event.again:
            self.press_soon("enter")

    # -- drawing ----------------------------------------------------------------------------

    def on_mount(self) -> None:
        self.draw(self.host.clock.now())

    def draw(self, now: Moment) -> None:
        """Draw list, words and keys, as far as they have changed."""
        self.query_one(PickList).shown = Lines(self.lines(now), self.picked)
        self.put("#name", content(self.heading()))
        if self.BESIDE and self._page.show(self.about(now)):
            self.call_after_refresh(self.draw_keys)  # whether there is more of it is known then
        self.draw_keys()
