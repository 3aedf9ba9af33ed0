"""Mix and amount at large: pours as bars to their marks, areas as their share of all."""

from __future__ import annotations

from itertools import accumulate

from booth.bench.act import Context
from booth.bench.instrument import Instrument
from booth.clock import local_day_hhmm
from booth.files.safe_text import visible
from booth.forms.form import Values
from booth.units import Kind, Quantity, show
from booth.words.event_words import quantity
from booth.words.shown import Pours, Tone
from booth.words.tried import AtLarge, Tries, Try


def pours_at_large(step: Instrument, context: Context, values: Values) -> AtLarge:
    """The batch that is being poured, each pour up to its mark; else the batches mixed."""
    told = (e for e in step.picture(context, values) if isinstance(e, Pours))
    tries = tuple(
        Try(f"{row.name}  {row.amount}", f"up to {row.mark}", row.tone, row.edge)
        for pours in told
        for row in pours.rows
    )
    if tries:
        return AtLarge((Tries("pour by pour, up to its mark", tries),))
    return _mixed(context)


def _mixed(context: Context) -> AtLarge:
    """What is in the batch mixed last: each component on top of those before it."""
    batches = context.job.batches
    pours = batches[-1].pours if batches else ()
    amounts = [pour.amount for pour in pours]
    if not pours or len({each.unit for each in amounts}) > 1:
        return AtLarge()
    marks = list(accumulate(each.value for each in amounts))
    kind = Kind.MASS if amounts[0].unit == Kind.MASS.base else Kind.VOLUME
    tries = tuple(
        Try(
            f"{visible(pour.name)}  {_said(pour.amount, context)}",
            f"up to {show(mark, kind, context.system)}",
            Tone.GOOD,
            mark / marks[-1] if marks[-1] > 0 else None,
        )
        for pour, mark in zip(pours, marks, strict=True)
    )
    last = batches[-1]
    title = f"batch {last.batch}, mixed {local_day_hhmm(last.at, context.now)}"
    return AtLarge((Tries(title, tries),), record=_others(context))


def _others(context: Context) -> tuple[str, ...]:
    """The batches before it, one line each."""
    return tuple(
        f"{local_day_hhmm(each.at, context.now)}  batch {each.batch}"
        f"{f', in all {_said(each.total, context)}' if each.total else ''}"
        for each in context.job.batches[:-1]
    )


def _said(amount: Quantity, context: Context) -> str:
    return quantity(amount, Kind.VOLUME, context.system)


def areas_at_large(step: Instrument, context: Context, values: Values) -> AtLarge:
    """Every area that was taken, and what they come to."""
    areas, system = context.job.areas, context.system
    whole = sum(each.area.value for each in areas)
    if not areas or whole <= 0:
        return AtLarge()
    tries = tuple(
        Try(
            visible(each.part or each.shape)
            + (f"  {each.number} alike" if each.number > 1 else ""),
            show(each.area.value, Kind.AREA, system),
            Tone.PLAIN,
            each.area.value / whole,
        )
        for each in areas
    )
    said = f"in all {show(whole, Kind.AREA, system)}"
    return AtLarge((Tries("areas, as shares of all", tries, notes=(said,)),))
