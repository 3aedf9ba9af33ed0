"""The test pattern: what the paper shows, what to turn, and what film this overlap makes of it."""

from __future__ import annotations

from collections.abc import Collection
from typing import ClassVar

from booth.bench.act import NOTHING, Act, Say, SetForm, refused
from booth.bench.context import Context
from booth.bench.instrument import Instrument, local_time, quantity, word
from booth.forms.field import Field
from booth.forms.form import BLANK, MARKED, Form, Rows, Values
from booth.instruments.pattern.words import (
    film_readout,
    gallery,
    paper_of,
    paper_readout,
    pattern_in,
    pattern_words,
    section_of,
    turns_page,
    zones_fault,
)
from booth.job.measured import fan_mm, overlap_fraction
from booth.job.patterns import SHAPES, Pattern, best_overlap, pattern_of
from booth.log.events import Event, PatternRead
from booth.trade.pattern.overlap import MOST_OVERLAP
from booth.units import Kind, Quantity
from booth.words.pictures import Picture
from booth.words.readout import Readout

NOT_READ = ""
CHOICES = ((NOT_READ, "choose what the paper shows"), *((each.key, each.words) for each in SHAPES))
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

    def fields(self, context: Context) -> tuple[Field, ...]:
        overlap, where = overlap_fraction(context.job)
        width = fan_mm(context.job)
        return (
            Field("shape", "Shape", choices=CHOICES, asks=True, optional=True),
            Field("zones", "or zones", optional=True, hint="as 3567653", digits=zones_fault),
            Field(
                "overlap",
                "Overlap",
                Kind.PERCENT,
                optional=True,
                default=Quantity(overlap * 100, "%", ""),
                hint=where,
                assumed=True,
            ),
            Field(
                "width",
                "Fan",
                Kind.LENGTH,
                optional=True,
                default=Quantity(width[0], "mm", "") if width else None,
                hint=width[1] if width else "",
                assumed=True,
            ),
        )

    def first(self, context: Context, values: Values) -> str:
        return "shape"

    def wanted(self, context: Context, values: Values) -> Collection[str] | None:
        """One of shape and zones, once it holds something. Zones with a fault give no value."""
        if values.get("zones", "a fault"):
            return ("zones", *FILM_ROWS)
        return ("shape", *FILM_ROWS) if word(values, "shape") else None

    def readout(self, context: Context, values: Values) -> Readout:
        pattern = read_now(context, values)
        if pattern is not None and looks_at_film(values):
            return film_readout(context, values, pattern)
        return paper_readout(context, pattern)

    def picture(self, context: Context, values: Values) -> tuple[Picture, ...]:
        pattern = read_now(context, values)
        if pattern is None:
            return (gallery(),)
        if looks_at_film(values):
            return (section_of(context, values, pattern),)
        return (paper_of(pattern), turns_page(context, pattern))

    def record(self, context: Context) -> tuple[str, ...]:
        return tuple(
            f"{local_time(each.at)}  {pattern_words(each)}" for each in context.job.patterns[-4:]
        )

    def space(self, context: Context, rows: Rows) -> Act:
        """Write the most even overlap into its row."""
        fault = rows.row("zones").fault
        pattern = read_now(context, rows.values)
        if fault or pattern is None:
            return refused(fault or "Choose what the paper shows first.")
        best = best_overlap(pattern)
        if best is None:
            return refused("This shape has no film to work out: put the gun right, or type zones.")
        percent = f"{best.overlap_fraction * 100:.0f} %"
        form = rows.form.typed("overlap", percent)
        if form == rows.form:
            return NOTHING
        return Act(f"most even overlap: {percent}", (SetForm(form), Say("")))

    def pick(self, context: Context, rows: Rows, index: int) -> Act | None:
        """A picture of the gallery that is clicked; it stands for zones that were no pattern."""
        if not 0 <= index < len(SHAPES):
            return None
        form = rows.form.typed("zones", "").choosing("shape", SHAPES[index].key).marking("shape")
        return Act("shape", (SetForm(form), Say("")))

    def event(self, context: Context, values: Values) -> Event | str:
        pattern, overlap = read_now(context, values), quantity(values, "overlap")
        if pattern is None or overlap is None:
            return "Choose what the paper shows first."
        if overlap.value > MOST_OVERLAP * 100:
            most = f"An overlap is below {MOST_OVERLAP * 100:.0f} %"
            return f"{most}: {overlap.value:g} % hardly moves on."
        return PatternRead(
            n=0,
            at=context.now,
            shape=pattern.seen.value if pattern.zones else pattern.shape,
            zones=pattern.zones,
            overlap=overlap,
            width=quantity(values, "width"),
        )

    def cleared(self, form: Form) -> Form:
        """After keeping the shape stays in sight, since it is the last one kept."""
        return BLANK


def read_now(context: Context, values: Values) -> Pattern | None:
    """What the rows say; where they say nothing, what was kept last. Pure."""
    given = pattern_in(values)
    if given is None and "zones" in values and context.job.patterns:
        return pattern_of(context.job.patterns[-1])
    return given


def looks_at_film(values: Values) -> bool:
    return values.get(MARKED) in FILM_ROWS
