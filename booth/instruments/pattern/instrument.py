"""The test pattern: what the paper shows, what to turn, and what film this overlap makes of it."""

from __future__ import annotations

from typing import ClassVar

from textual import events
from textual.app import ComposeResult
from textual.containers import Vertical, VerticalScroll
from textual.widgets import Static

from booth.bench.context import Context
from booth.bench.instrument import Instrument, Values, quantity, word
from booth.instruments.pattern.words import (
    film_readout,
    paper_of,
    paper_readout,
    pattern_in,
    pattern_words,
    section_of,
    turns_content,
    zones_fault,
)
from booth.job.measured import fan_mm, overlap_fraction
from booth.job.patterns import SHAPES, Pattern, best_overlap, pattern_of
from booth.log.events import Event, PatternRead
from booth.moment import Moment
from booth.trade.pattern.overlap import MOST_OVERLAP
from booth.units import Kind, Quantity
from booth.widgets.entry import Field, FieldRow, TypedText
from booth.widgets.figure_panel import FigurePanel
from booth.widgets.film_plot import FilmPlot
from booth.widgets.spray_paper import SprayPaper
from booth.widgets.text import content, reflow
from booth.words.readout import Readout
from booth.words.tone import Tone

NOT_READ = ""
CHOICES = ((NOT_READ, "choose what it shows"), *((each.key, each.words) for each in SHAPES))
#: What is left and right of the turns: padding, and the bar that scrolls them.
TURNS_BESIDE = 3
#: From this many rows on all the turns are shown; below, those that are still to be tried.
ROOM_FROM = 30
FILM_ROWS = ("overlap", "width")


class PaperPattern(Instrument):
    """Shape or zones, then overlap; the paper and the film are drawn."""

    KIND: ClassVar[str] = "pattern"
    NAME: ClassVar[str] = "Test pattern"
    ABOUT: ClassVar[tuple[str, ...]] = (
        "Arrows choose the shape that the wet paper shows; or type how heavy it is in equal zones "
        "from one end to the other, a digit each, 0 nothing, 9 the heaviest: 3567653. What to turn "
        "stands beneath, one thing at a time, a new paper after each. The mark moves on when the "
        "same shape is kept again. After US Army TM 43-0139, pages 5-9 and 5-11; the order is "
        "common practice, no source.",
        "On the row Overlap the plot is the film of several passes over a panel, each as on the "
        "paper, straight and at one pace: 1 is the mean film. It is superposition, exact for the "
        "profile; the named shapes are models, and zones by eye are rough, so the plot is no "
        "better than they are. A wandering hand comes on top; wet paint levels some of it out.",
        "The figure is the thickest film over the thinnest in the steady part; CV is its standard "
        "deviation over its mean. Most even means the least CV from 25 % to 75 % overlap (limits "
        "of a hand: common practice, no source). Half over half is usual (MIL-HDBK-1110 9.6.8); a "
        "profile like a parabola is not even there: 1.5 to 1.",
        "More overlap is more passes: the pace has to rise, or the film grows.",
        "Every test pattern is spraying: mask, eyes, air. Before cap, tip or needle are touched: "
        "air off, pressure out, no finger over the tip.",
    )
    KEEPS: ClassVar[tuple[type[Event], ...]] = (PatternRead,)
    GO: ClassVar[str] = "most even overlap"

    _turned: tuple[object, ...] = ()

    # -- the screen -------------------------------------------------------------------------

    def compose(self) -> ComposeResult:
        context = self.desk.context
        yield Static(content(context.step.name), classes="step-name", markup=False)
        yield Static(content(" ".join(reflow(context.step.how))), classes="how", markup=False)
        yield SprayPaper()
        yield FigurePanel()
        with VerticalScroll(classes="turns", can_focus=False):
            yield Static("", classes="turns-text", markup=False)
        yield FilmPlot()
        yield Static("", classes="record", markup=False)
        with Vertical(classes="fields"):
            self._fields = self.fields(context)
            for field in self._fields:
                yield FieldRow(field, lambda: self._system)

    def on_mount(self) -> None:
        place = self.row("zones").place
        if isinstance(place, TypedText):
            place.quantity = True  # no question mark in zones: it asks for help
        self.query_one(SprayPaper).gallery = tuple(
            (paper_of(Pattern(each.key)), each.short) for each in SHAPES
        )

    def on_spray_paper_picked(self, event: SprayPaper.Picked) -> None:
        event.stop()
        self.row("shape").fill(SHAPES[event.index].key)
        self.draw(self.desk.context)

    def fields(self, context: Context) -> tuple[Field, ...]:
        overlap, where = overlap_fraction(context.job)
        width = fan_mm(context.job)
        return (
            Field("shape", "The paper", choices=CHOICES, default=NOT_READ),
            Field("zones", "or zones", optional=True, hint="as 3567653"),
            Field(
                "overlap", "Overlap", Kind.PERCENT, optional=True,
                default=Quantity(overlap * 100, "%", ""), hint=where,
            ),
            Field(
                "width", "Fan", Kind.LENGTH, optional=True, hint=width[1] if width else "",
                default=Quantity(width[0], "mm", "") if width else None,
            ),
        )  # fmt: skip

    def focus_first(self) -> None:
        self._focus(self.rows[0].place)

    @property
    def film(self) -> bool:
        """Whether the film is looked at, not the paper."""
        # A widget learns that it has the focus only later; the screen knows it at once.
        return self.screen.focused in [self.row(key).place for key in FILM_ROWS]

    def on_descendant_focus(self, event: events.DescendantFocus) -> None:
        self.draw(self.desk.context)

    def draw(self, context: Context) -> None:
        if not self.is_mounted or not self.rows:
            return
        values = self.values()
        pattern = self._pattern(context, values)
        self.set_class(pattern is not None, "-read")
        self.set_class(pattern is not None and self.film, "-film")
        super().draw(context)
        self.query_one(SprayPaper).paper = paper_of(pattern)
        self.query_one(FilmPlot).section = section_of(context, values, pattern)
        room = self.size.height >= ROOM_FROM
        width = self.size.width - TURNS_BESIDE
        turned = (pattern, len(context.job.patterns), context.job.void, room, width)
        if turned != self._turned:
            self._turned = turned
            self.query_one(".turns-text", Static).update(
                turns_content(context, pattern, room, width)
            )

    def readout(self, context: Context, values: Values) -> Readout:
        if fault := zones_fault(values):
            return Readout("?", label="zones", tone=Tone.CAUTION, word="", lines=(fault,))
        pattern = self._pattern(context, values)
        if self.film and pattern is not None:
            return film_readout(context, values, pattern)
        return paper_readout(context, pattern)

    def record(self, context: Context) -> tuple[str, ...]:
        return tuple(
            f"{self.desk.local_time(each.at)}  {pattern_words(each)}"
            for each in context.job.patterns[-(4 if self.size.height >= ROOM_FROM else 1) :]
        )

    def keys(self, context: Context) -> tuple[tuple[str, str], ...]:
        values = self.values()
        pattern = self._pattern(context, values)
        if pattern is None:
            return (("←→", "choose the shape"), ("0-9", "zones"), ("Enter", self.leaving(context)))
        even = (("Space", self.GO),) if best_overlap(pattern) else ()
        down = () if self.film else (("↓", "overlap"),)
        if self._changed(context, values):
            return (("Enter", "keep"), ("←→", "shape"), *down, *even)
        return (("Enter", "next step"), ("←→", "next try"), *down, *even)

    # -- what the painter does --------------------------------------------------------------

    def _pattern(self, context: Context, values: Values) -> Pattern | None:
        """What the rows say; where they say nothing, what was kept last."""
        given = pattern_in(values)
        if given is None and not word(values, "zones") and context.job.patterns:
            return pattern_of(context.job.patterns[-1])
        return given

    def _changed(self, context: Context, values: Values) -> bool:
        """Whether the rows say something that was not kept yet: the same shape again counts."""
        if pattern_in(values) is not None:
            return True
        typed = not self.row("overlap").is_empty or not self.row("width").is_empty
        return typed and self._pattern(context, values) is not None

    def go(self, at: Moment) -> None:
        """Write the most even overlap into its row."""
        pattern = self._pattern(self.desk.context, self.values())
        best = best_overlap(pattern) if pattern else None
        if best is None:
            self.desk.say(
                "Choose what the paper shows first." if pattern is None else
                "This shape has no film to reckon with: put the gun right, or type zones.",
                fault=True,
            )  # fmt: skip
            return
        self.row("overlap").fill(f"{best.overlap_fraction * 100:.0f} %")
        self._focus(self.row("overlap").place)

    def enter(self, row: FieldRow | None = None) -> None:
        values = self.values()
        fault = zones_fault(values) or next((each.fault for each in self.rows if each.fault), "")
        if fault:
            self.desk.say(fault, fault=True)
        elif self._changed(self.desk.context, values):
            self.commit()
        else:
            self.desk.finish_step()

    def event(self, context: Context, values: Values) -> Event | None:
        pattern = self._pattern(context, values)
        overlap = quantity(values, "overlap")
        if pattern is None or overlap is None:
            return None
        if overlap.value > MOST_OVERLAP * 100:
            self.desk.say(
                f"An overlap is below {MOST_OVERLAP * 100:.0f} %: {overlap.value:g} % hardly "
                "moves on.",
                fault=True,
            )
            return None
        return PatternRead(
            n=0,
            at=context.now,
            shape=pattern.seen.value if pattern.zones else pattern.shape,
            zones=pattern.zones,
            overlap=overlap,
            width=quantity(values, "width"),
        )

    def clear(self) -> None:
        """After keeping: the shape stays in sight, since it is the last one kept."""
        place = self.row("shape").place
        for row in self.rows:
            row.clear()
        if isinstance(place, TypedText):
            return
        place.choose(NOT_READ)
        self.focus_first()
