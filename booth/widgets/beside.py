"""What stands beside words and rows where the window has room: one thing above the other."""

from __future__ import annotations

from collections.abc import Sequence

from textual.containers import Vertical

from booth.widgets.film_plot import FilmPlot
from booth.widgets.row_widget import Drawn
from booth.widgets.said import Said
from booth.widgets.time_line import TimelineView
from booth.widgets.tries import TriesView, rows_of
from booth.words.shown import Page, Section, Timeline
from booth.words.tried import Beside as Told
from booth.words.tried import Tries

DRAWN_BY: dict[type, type[Drawn]] = {
    Tries: TriesView,
    Timeline: TimelineView,
    Section: FilmPlot,
    Page: Said,
}


#: How a step is done takes so many rows.
HOW_ROWS = 5


def fitting(told: Sequence[Told], rows: int) -> tuple[Told, ...]:
    """Those of which all can be seen in so many rows: of a day's line no part may be missing."""
    return tuple(e for e in told if not isinstance(e, Timeline) or len(e.rows) <= rows)


def room_for_how(told: Sequence[Told], rows: int) -> bool:
    """Whether there is room under these for how the step is done."""
    if any(not isinstance(each, Tries) or each.chart is not None for each in told):
        return False
    return sum(rows_of(each) + 1 for each in told if isinstance(each, Tries)) + HOW_ROWS <= rows


class BesideView(Vertical):
    """Draws what it is told, in one order whatever came first."""

    DEFAULT_CSS = "BesideView { display: none; padding: 0 2 0 1; }"

    def __init__(self) -> None:
        super().__init__()
        self._shown: dict[type, Drawn] = {}

    def show(self, told: Sequence[Told]) -> None:
        """Show these, one of a kind at most; a widget is made when it is first needed."""
        wanted = {type(each): each for each in told}
        for kind, widget in self._shown.items():
            widget.display = kind in wanted
        for kind in (kind for kind in DRAWN_BY if kind in wanted):
            each = wanted[kind]
            if kind not in self._shown:
                self._mount(kind)
            widget = self._shown[kind]
            widget.styles.height = "1fr"
            if isinstance(each, Tries) and len(wanted) > 1:
                widget.styles.height = rows_of(each) + 1
            widget.shown = each

    def _mount(self, kind: type) -> None:
        made, order = DRAWN_BY[kind](), list(DRAWN_BY)
        after = (self._shown[each] for each in order[order.index(kind) :] if each in self._shown)
        self.mount(made, before=next(after, None))
        self._shown[kind] = made
