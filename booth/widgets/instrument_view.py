"""Draws an open step: its figure, the pictures beneath it, what was kept, the form. It holds nothing."""

from __future__ import annotations

from collections.abc import Sequence

from textual.app import ComposeResult
from textual.containers import Vertical
from textual.widgets import Static

from booth.forms.form import Rows
from booth.widgets.figure_panel import FigurePanel
from booth.widgets.film_plot import FilmPlot
from booth.widgets.form_view import FormView
from booth.widgets.lists import PickList
from booth.widgets.pace_bar import PaceBar
from booth.widgets.page_view import PageView
from booth.widgets.row_widget import Drawn
from booth.widgets.spray_paper import SprayPaper
from booth.widgets.tables import PartTable, PourTable
from booth.widgets.text import content, put
from booth.widgets.time_line import TimelineView
from booth.words import shown as data
from booth.words.shown import Page, Picture, Readout, reflow

#: Which widget draws which picture.
DRAWN_BY: dict[type, type[Drawn] | type[PageView]] = {
    data.Pours: PourTable,
    data.Parts: PartTable,
    data.Section: FilmPlot,
    data.Paper: SprayPaper,
    data.Gallery: SprayPaper,
    data.Timeline: TimelineView,
    data.Bar: PaceBar,
    data.Lines: PickList,
    Page: PageView,
}


class InstrumentView(Vertical):
    """One for the whole bench: another step is other things to draw."""

    def __init__(self) -> None:
        super().__init__(id="instrument", classes="instrument")
        self._kind = ""
        self._how: Sequence[str] | None = None
        self._shown: dict[type, Drawn | PageView] = {}

    def compose(self) -> ComposeResult:
        yield Static("", classes="how", markup=False)
        yield FigurePanel()
        yield Static("", classes="record", markup=False)
        yield FormView()

    def title(self, kind: str, how: Sequence[str]) -> None:
        """Which kind of step stands here, and how it is done."""
        if kind != self._kind:
            self.remove_class(f"kind-{self._kind}").add_class(f"kind-{kind}")
            self._kind = kind
        if how is not self._how:
            self._how = how
            put(self.query_one(".how", Static), content(" ".join(reflow(how))))

    def figure(self, readout: Readout | None) -> None:
        """The figure that matters; None where there is none."""
        panel = self.query_one(FigurePanel)
        panel.display = readout is not None
        if readout is not None:
            panel.shown = readout

    def record(self, lines: Sequence[str]) -> None:
        """What was kept here, the latest first: where rows are scarce, the oldest is out of sight."""
        shown = self.query_one(".record", Static)
        put(shown, content("\n".join(reversed(lines)), keep_lines=True))
        shown.set_class(bool(lines), "-any")

    def form(self, rows: Rows) -> None:
        """The rows."""
        self.query_one(FormView).shown = rows

    def pictures(self, told: Sequence[Picture]) -> None:
        """What stands beneath the figure."""
        wanted = {DRAWN_BY[type(each)]: each for each in told}
        for kind, widget in self._shown.items():
            widget.display = kind in wanted
        self.set_class(any(isinstance(each, data.Gallery) for each in told), "-gallery")
        record = self.query_one(".record")
        for kind, picture in wanted.items():
            if kind not in self._shown:
                made = self._shown[kind] = kind()
                self.mount(made, before=record)
            self._shown[kind].shown = picture
        in_order = [self._shown[kind] for kind in wanted]
        if [each for each in self.children if each in in_order] != in_order:
            for each in in_order:  # another step had made them in another order
                self.move_child(each, before=record)

    def scroll_page(self, by: int) -> None:
        """Move what is read."""
        for page in self.query(PageView):
            page.scroll_by(by)
