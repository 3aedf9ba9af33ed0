"""The test pattern: what the paper shows, what to turn, and what film this overlap makes of it."""

from __future__ import annotations

import math
from typing import ClassVar

from textual import events
from textual.app import ComposeResult
from textual.containers import Vertical, VerticalScroll
from textual.content import Content
from textual.widgets import Static

from booth.instruments.base import Instrument, Values, number, quantity, word
from booth.instruments.desk import Context
from booth.job.events import Event, PatternRead
from booth.job.figures import fan_mm, overlap_fraction
from booth.job.patterns import (
    SHAPES,
    BadZones,
    Pattern,
    best_overlap,
    even_at,
    pattern_of,
    section_at,
    tries_alike,
    zones_from,
)
from booth.moment import Moment
from booth.trade.overlap import MOST_OVERLAP
from booth.trade.reading import Seen
from booth.units import Kind, Quantity, shown_unit, shown_value
from booth.widgets.entry import Field, FieldRow, TypedText
from booth.widgets.figure_panel import FigurePanel
from booth.widgets.film_plot import FilmPlot, Section
from booth.widgets.readout import Readout
from booth.widgets.spray_paper import Paper, SprayPaper
from booth.widgets.text import content, reflow
from booth.widgets.tone import Tone

NOT_READ = ""
CHOICES = ((NOT_READ, "choose what it shows"), *((each.key, each.words) for each in SHAPES))
#: The film counts as even while it stays this near to its mean: the band of the plot. Where even
#: ends is this project's: common practice gives no figure.
BAND = (0.9, 1.1)
#: Two overlaps closer than this are the same to a hand (common practice, no source).
SAME_OVERLAP = 0.03
#: Passes drawn: the fans that pile up at one place, so many times over.
LEAST_PASSES, FANS_DEEP = 5, 3
SAMPLES, PICTURE = 200, 48
#: From this many rows on all the turns are shown; below, those that are still to be tried.
ROOM_FROM = 30
FILM_ROWS = ("overlap", "width")
#: Shapes whose cure takes cap or tip off.
OPENS_GUN = {Seen.HEAVY_ONE_END, Seen.CRESCENT, Seen.SPITTING}
BENDS = {Seen.CRESCENT: 0.6}


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
        "On the row Overlap the plot is the film of five passes over a panel, each as on the "
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
        return any(self.row(key).place.has_focus for key in FILM_ROWS)

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
        turned = (pattern, len(context.job.patterns), context.job.void, room)
        if turned != self._turned:
            self._turned = turned
            self.query_one(".turns-text", Static).update(turns_content(context, pattern, room))

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
            return (("←→", "choose the shape"), ("0-9", "zones"), ("Enter", "go on"))
        even = (("Space", self.GO),) if best_overlap(pattern) else ()
        if self._changed(context, values):
            return (("Enter", "keep"), ("←→", "shape"), ("↓", "overlap"), *even)
        return (("Enter", "next step"), ("←→", "next try"), ("↓", "overlap"), *even)

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


def pattern_in(values: Values) -> Pattern | None:
    """The pattern that the rows hold: zones before a shape; None where neither is given. Pure."""
    typed = word(values, "zones")
    if typed:
        try:
            return Pattern("", zones_from(typed))
        except BadZones:
            return None
    shape = word(values, "shape")
    return Pattern(shape) if shape else None


def zones_fault(values: Values) -> str:
    """What is wrong with the zones as typed; empty where nothing is. Pure."""
    typed = word(values, "zones")
    if not typed:
        return ""
    try:
        zones_from(typed)
    except BadZones as fault:
        return str(fault)
    return ""


def paper_of(pattern: Pattern | None) -> Paper:
    """The picture of a pattern. Pure."""
    if pattern is None:
        return Paper()
    if pattern.zones:
        profile = pattern.profile
        assert profile is not None
        words = tuple(f"{zone:g}" for zone in pattern.zones)
        return Paper(_samples(profile), words=words)
    profile = pattern.profile
    films = _samples(profile) if profile is not None else (1.0,)
    return Paper(films, BENDS.get(pattern.seen, 0.0), pattern.seen is Seen.SPITTING)


def _samples(profile: object) -> tuple[float, ...]:
    assert callable(profile)
    return tuple(profile((index + 0.5) / PICTURE - 0.5) for index in range(PICTURE))


def overlap_in(context: Context, values: Values) -> float:
    """The overlap to draw [1]: typed, else the one to reckon with."""
    percent = number(values, "overlap")
    return overlap_fraction(context.job)[0] if percent is None else percent / 100


def section_of(context: Context, values: Values, pattern: Pattern | None) -> Section:
    """The film of some passes over a panel. Pure."""
    overlap = overlap_in(context, values)
    if pattern is None or not 0 <= overlap <= MOST_OVERLAP:
        return Section()
    passes = max(LEAST_PASSES, round(FANS_DEEP / (1 - overlap)))
    samples = section_at(pattern, overlap, passes, SAMPLES)
    if not samples:
        return Section()
    fans = (passes - 1) * (1 - overlap) + 1
    width = number(values, "width")
    scale, unit = fans, "fans"
    if width:
        scale = shown_value(fans * width, Kind.LENGTH, context.system)
        unit = shown_unit(Kind.LENGTH, context.system)
    placed = [(share * scale, film) for share, film in samples]
    # The plot writes both ends: whole figures there.
    placed[0], placed[-1] = (0.0, samples[0][1]), (float(f"{scale:.3g}"), samples[-1][1])
    across = f"{passes} passes, {_percent(overlap)} overlap"
    return Section(tuple(placed), *BAND, across=across, unit=unit)


def paper_readout(context: Context, pattern: Pattern | None) -> Readout:
    """What the paper shows, as a word. Pure."""
    if pattern is None:
        return Readout(
            "–", label="what does the wet paper show?",
            lines=("Left and right choose a shape; digits enter zones, as 3567653.",),
        )  # fmt: skip
    good = pattern.seen is Seen.EVEN
    return Readout(
        pattern.words.upper(),
        label="",
        tone=Tone.GOOD if good else Tone.CAUTION,
        word="LEAVE IT" if good else "TURN",
        lines=(pattern.reading.means,),
    )


def film_readout(context: Context, values: Values, pattern: Pattern) -> Readout:
    """How even the film comes out at the overlap of the row, and what would be most even. Pure."""
    overlap = overlap_in(context, values)
    even, best = even_at(pattern, overlap), best_overlap(pattern)
    if even is None or best is None:
        why = (
            f"An overlap goes from 0 to {MOST_OVERLAP * 100:.0f} %."
            if best is not None
            else "This shape has no profile: put the gun right first, or enter zones."
        )
        return Readout("–", label="film", tone=Tone.CAUTION, word="", lines=(why,))
    flat = even.lowest >= BAND[0] and even.highest <= BAND[1]
    half = even_at(pattern, 0.5)
    assert half is not None
    cv = f"CV {even.cv * 100:.1f} %"
    fifty = f"50 % would give {_ratio(half.max_over_min)}"
    if abs(overlap - best.overlap_fraction) <= SAME_OVERLAP or best.evenness.cv >= even.cv:
        lines = [f"{cv}, as even as it gets. {fifty}."]
    else:
        most = f"{_percent(best.overlap_fraction)}, {_ratio(best.evenness.max_over_min)}"
        lines = [f"Most even: {most} (Space takes it). {cv} here."]
        if abs(overlap - 0.5) > SAME_OVERLAP:
            lines.append(f"{fifty}, CV {half.cv * 100:.1f} %.")
    bare = not math.isfinite(even.max_over_min)
    return Readout(
        "bare" if bare else f"{even.max_over_min:.2f}",
        "" if bare else "to 1",
        label=f"thickest to thinnest film at {_percent(overlap)} overlap",
        tone=Tone.GOOD if flat else Tone.CAUTION,
        word="EVEN" if flat else "STRIPES",
        lines=tuple(lines),
    )


def _percent(share: float) -> str:
    return f"{share * 100:.0f} %"


def _ratio(number_: float) -> str:
    return f"{number_:.2f} to 1" if math.isfinite(number_) else "a bare strip"


def turns_content(context: Context, pattern: Pattern | None, room: bool = True) -> Content:
    """What to turn, in order, the one to do now marked; before the gun is opened, its caution. Pure.

    Without `room` what was tried is left out, and of the caution all but its first sentence.
    """
    if pattern is None:
        return content("")
    said = pattern.reading
    tries = tries_alike(context.job.patterns, pattern.seen)
    now = min(max(tries - 1, 0), len(said.turns) - 1)
    lines: list[Content] = []
    for index, turn in enumerate(said.turns):
        if index < now and not room:
            continue
        mark = "→ " if index == now else "  "
        line = content(f"{mark}{index + 1} {turn}")
        lines.append(line.stylize("bold") if index == now else line)
    if pattern.seen in OPENS_GUN:
        caution = said.caution if room else said.caution.split(". ")[0] + "."
        lines.insert(0, content(f"▲ {caution}").stylize("bold"))
    elif room:
        lines.append(content(f"▲ {said.caution}"))
    return Content("\n").join(lines)


def pattern_words(each: PatternRead) -> str:
    """One try in a line. Pure."""
    zones = "".join(f"{zone:g}" for zone in each.zones)
    overlap = f"  overlap {each.overlap.value:.0f} %" if each.overlap else ""
    return f"{each.shape}{' ' + zones if zones else ''}{overlap}"
