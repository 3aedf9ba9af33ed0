"""Draws an open step: its figure, the pictures beneath it, what was kept, the form. It holds nothing."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace
from textual.app import ComposeResult
from textual.containers import Horizontal, Vertical
from textual.widgets import Static

from booth.forms.form import Rows
from booth.widgets.beside import BesideView, fitting, room_for_how
from booth.widgets.figure_panel import FigurePanel
from booth.widgets.film_plot import FilmPlot
from booth.widgets.form_view import FormView
from booth.widgets.lists import PickList
from booth.widgets.pace_bar import PaceBar
from booth.widgets.page_view import PageView
from booth.widgets.room import NONE, Room
from booth.widgets.row_widget import Drawn
from booth.widgets.said import Said
from booth.widgets.spray_paper import SprayPaper
from booth.widgets.tables import PartTable, PourTable
from booth.widgets.text import content, put
from booth.widgets.time_line import TimelineView
from booth.words import shown as data
from booth.words.shown import Page, Picture, Readout, reflow
from booth.words.tried import AtLarge

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

    DEFAULT_CSS = """
InstrumentView .below, InstrumentView .told { height: auto; }
InstrumentView .told { width: 1fr; }
InstrumentView .told > Said { display: none; }
"""

    def __init__(self) -> None:
        super().__init__(id="instrument", classes="instrument")
        self._kind = ""
        self._how: Sequence[str] | None = None
        self._shown: dict[type, Drawn | PageView] = {}
        self._room, self._large = NONE, AtLarge()

    def compose(self) -> ComposeResult:
        yield Static("", classes="how", markup=False)
        yield FigurePanel()
        with Horizontal(classes="below"):
            with Vertical(classes="told"):
                yield Said()
                yield Static("", classes="record", markup=False)
                yield FormView()
            yield BesideView()

    def title(self, kind: str, how: Sequence[str]) -> None:
        """Which kind of step stands here, and how it is done."""
        if kind != self._kind:
            self.remove_class(f"kind-{self._kind}").add_class(f"kind-{kind}")
            self._kind = kind
        if how is not self._how:
            self._how = how
            put(self.query_one(".how", Static), content(" ".join(reflow(how))))

    def room(self, room: Room, large: AtLarge, has_figure: bool) -> None:
        """What there is room for, and what the step has to say there."""
        beside, is_split = fitting(large.beside, room.below), room.always and has_figure
        if is_split and not large.page and self._how and room_for_how(beside, room.below):
            how = ("head", "how it is done"), ("quiet", " ".join(reflow(self._how)))
            beside = (*beside, Page(how))
        split = bool(room.beside and beside) or is_split
        self._room, self._large = (room, large) if split else (NONE, AtLarge())
        self.set_class(split, "-split")
        below, view = self.query_one(".below"), self.query_one(BesideView)
        below.styles.height = room.below if split else None
        view.styles.width = room.beside if split else None
        view.show(beside if split else ())

    def figure(self, readout: Readout | None) -> None:
        """The figure that matters; None where there is none. Its words stand in a column of their own
        where something stands beside them."""
        panel = self.query_one(FigurePanel)
        panel.display = readout is not None
        if readout is None:
            return
        if self._room.beside:
            said = (("head", readout.label), *(("text", line) for line in readout.lines))
            if not self._large.page:
                self.query_one(Said).shown = Page(tuple(each for each in said if each[1]))
            readout = replace(readout, label="", lines=())
        panel.shown = readout

    def record(self, lines: Sequence[str]) -> None:
        """What was kept here, the latest first: where rows are scarce, the oldest is out of sight.
        Where tries stand beside it, what those do not tell."""
        if self._room.beside and self._large.beside:
            lines = self._large.record
        shown = self.query_one(".record", Static)
        put(shown, content("\n".join(reversed(lines)), keep_lines=True))
        shown.set_class(bool(lines), "-any")

    def form(self, rows: Rows) -> None:
        """The rows."""
        self.query_one(FormView).shown = rows

    def pictures(self, told: Sequence[Picture]) -> None:
        """What stands beneath the figure."""
        if self._large.page:
            pages = [each for each in told if isinstance(each, Page)]
            self.query_one(Said).shown = pages[0] if pages else Page(())
            told = [each for each in told if not isinstance(each, Page)]
        if self._large.beside:  # there the pours stand as bars
            told = [each for each in told if not isinstance(each, data.Pours)]
        wanted = {DRAWN_BY[type(each)]: each for each in told}
        for kind, widget in self._shown.items():
            widget.display = kind in wanted
        self.set_class(any(isinstance(each, data.Gallery) for each in told), "-gallery")
        below = self.query_one(".below")
        for kind, picture in wanted.items():
            if kind not in self._shown:
                made = self._shown[kind] = kind()
                # The parts stand last, as the clocks do in other steps.
                place = "after" if kind is PartTable else "before"
                self.mount(made, **{place: below})
            self._shown[kind].shown = picture
        in_order = [self._shown[kind] for kind in wanted if kind is not PartTable]
        if [each for each in self.children if each in in_order] != in_order:
            for each in in_order:  # another step had made them in another order
                self.move_child(each, before=below)

    def scroll_page(self, by: int) -> None:
        """Move what is read."""
        for page in self.query(PageView):
            page.scroll_by(by)
