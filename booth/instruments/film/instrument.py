"""The wet film: notch gauge readings by part and coat, kept where the film is still wet."""

from __future__ import annotations

import math
from collections.abc import Collection
from itertools import pairwise
from typing import ClassVar

from booth.bench.act import Act, OpenStep, SetForm
from booth.bench.context import Context
from booth.bench.instrument import Instrument, local_time, number, quantity, word
from booth.forms.field import Field
from booth.forms.form import Form, Rows, Values, rows_of
from booth.instruments.film.words import WHICH_TOOTH, film_readout, reading_words
from booth.job.gauge_readings import coat_on, film_of
from booth.job.steps import steps_of
from booth.log.events import Event, FilmRead
from booth.log.fold import Job
from booth.trade.film.wet_gauge import TEETH_MIL
from booth.trade.result import BadInput
from booth.units import Kind, Quantity
from booth.words.readout import Readout

UM_PER_MIL = 25.4
#: A tooth is recognised when what was typed is this near to it.
SAME_TOOTH = 0.01


class Film(Instrument):
    """Last wetted tooth, first dry tooth."""

    KIND: ClassVar[str] = "film"
    NAME: ClassVar[str] = "Wet film"
    ABOUT: ClassVar[tuple[str, ...]] = (
        "A notch gauge does not give a figure but two: the film lies between the last tooth that "
        "came out wet and the first that stayed dry (ASTM D4414). So does the mean of several "
        "readings. Too thin, in range, too thick are said only where the whole interval says so; "
        "else it cannot tell, and more places or finer teeth help. 0 as last wetted: no tooth was.",
        "Where only the wetted tooth is typed, the dry one offered is the next of your own earlier "
        "readings, or of the example gauge of ASTM D4414 in mil: look at your own gauge.",
        "Read it at once: solvent leaves and the film shrinks. Gauge square to the surface, on a "
        "curve along its length, away from edges. Several places tell more than one.",
        "Dry film = wet film x volume solids / (1 + thinner) (MIL-HDBK-1110 2.1.5). What flashed "
        "off before the reading makes the dry film thicker than this.",
        "What lands (transfer efficiency) = film x gun speed x pitch / delivery, conservation of "
        "volume. It takes the coating caught, the fan measured and a pass timed; pace and amount "
        "then work with it instead of a usual band.",
    )
    KEEPS: ClassVar[tuple[type[Event], ...]] = (FilmRead,)

    def fields(self, context: Context) -> tuple[Field, ...]:
        parts = tuple((part, part) for part in context.job.parts)
        return (
            Field("part", "Part", choices=parts, default=usual_part(context)),
            Field("wetted", "Last wetted", Kind.THICKNESS, hint="farthest in"),
            _first_dry(None),
        )

    def wanted(self, context: Context, values: Values) -> Collection[str] | None:
        return None if len(context.job.parts) > 1 else ("wetted", "dry")

    def rows(self, context: Context, form: Form) -> Rows:
        """The tooth after the wetted one is offered as the first dry one."""
        fields = self.fields(context)
        values = rows_of(form, fields, context.system).values
        dry = _first_dry(next_tooth(context, number(values, "wetted")))
        wanted = self.wanted(context, values)
        return rows_of(form, (*fields[:-1], dry), context.system, wanted)

    def readout(self, context: Context, values: Values) -> Readout:
        return film_readout(context, values)

    def record(self, context: Context) -> tuple[str, ...]:
        return tuple(
            f"{local_time(each.at)}  {reading_words(each, context.system)}"
            for each in context.job.films[-3:]
        )

    def event(self, context: Context, values: Values) -> Event | str:
        wetted, dry = quantity(values, "wetted"), quantity(values, "dry")
        if wetted is None or dry is None:
            return WHICH_TOOTH
        part = word(values, "part")
        read = FilmRead(
            n=0,
            at=context.now,
            part=part,
            last_wetted=wetted,
            first_dry=dry,
            coat=coat_on(context.job, part),
        )
        try:
            film_of(read)
        except BadInput as fault:
            return str(fault)
        return read

    def last_kept(self, context: Context, values: Values) -> tuple[Event, ...]:
        """The last reading of the chosen part."""
        part = word(values, "part")
        return tuple(each for each in context.job.films if each.part == part)[-1:]

    def space(self, context: Context, rows: Rows) -> Act | None:
        """On to the next part; not with a reading half typed, which is of this one."""
        parts = context.job.parts
        if len(parts) < 2 or rows.holds:
            return None
        part = parts[(parts.index(word(rows.values, "part")) + 1) % len(parts)]
        return Act(f"next part: {part}", (SetForm(rows.form.choosing("part", part)),))

    def enter(self, context: Context, rows: Rows) -> Act | None:
        """Between two coats back to them; after the last one on to the next step."""
        key = between_coats(context.job)
        return Act("back to the coats", (OpenStep(key),)) if key and not rows.holds else None


def _first_dry(offered: Quantity | None) -> Field:
    return Field("dry", "First dry", Kind.THICKNESS, default=offered, hint="the next tooth")


def between_coats(job: Job) -> str:
    """The key of the coats' step, where one was begun and one is to come on some part; else "". Pure."""
    step = next((each for each in steps_of(job) if each.kind == "coats"), None)
    if step is None or step.key in job.done or step.key in job.skipped:
        return ""
    coats = [len(job.coats_on(part)) for part in job.parts]
    return step.key if any(coats) and min(coats) < job.profile.film.coats else ""


def usual_part(context: Context) -> str:
    """The part whose coat began last, for it is the wet one; else the first. Pure."""
    begun = [
        (coats[-1].begun.n, part)
        for part in context.job.parts
        if (coats := context.job.coats_on(part))
    ]
    return max(begun)[1] if begun else context.job.parts[0]


def next_tooth(context: Context, wetted_um: float | None) -> Quantity | None:
    """The tooth after the one typed: of readings in this job, else of the standard's gauge. Pure."""
    if wetted_um is None:
        return None
    for read in reversed(context.job.films):
        if math.isclose(read.last_wetted.value, wetted_um, rel_tol=SAME_TOOTH):
            return read.first_dry
    teeth = [0.0, *TEETH_MIL]
    for tooth, after in pairwise(teeth):
        if math.isclose(wetted_um, tooth * UM_PER_MIL, rel_tol=SAME_TOOTH, abs_tol=1e-9):
            return Quantity(after * UM_PER_MIL, "um", f"{after:g} mil")
    return None
