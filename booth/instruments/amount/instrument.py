"""The amount: areas of the parts by their form, and the material, cups and time they take."""

from __future__ import annotations

import math
from collections.abc import Collection
from typing import ClassVar

from booth.bench.act import Act, SetForm
from booth.bench.context import Context
from booth.bench.instrument import Instrument, quantity, word
from booth.bench.next_act import commit, finish
from booth.forms.field import Field
from booth.forms.form import Form, Rows, Values
from booth.instruments.amount.rows import AREAS, FILM, FILM_ROWS, WHOLE, fields, wanted_rows
from booth.instruments.amount.words import (
    area_readout,
    area_words,
    count_of,
    plan_in,
    plan_readout,
    this_area,
)
from booth.job.material import DIMENSIONS, total_area_m2
from booth.log.events import AmountPlanned, AreaAdded, Event
from booth.units import Kind, Quantity, show
from booth.words.readout import Readout


class Amount(Instrument):
    """Two pages of rows: the areas, then coats, film and losses; Space turns the page."""

    KIND: ClassVar[str] = "amount"
    NAME: ClassVar[str] = "Amount"
    ABOUT: ClassVar[tuple[str, ...]] = (
        "Material = area x wet film x coats / what lands / (1 - lost), and what stays in the gun: 1 "
        "um over 1 m2 is 1 ml (the spreading-rate formula of data sheets). It is ready-to-spray "
        "material, thinner in it. Smooth surfaces: rough or absorbing ones take more.",
        "What lands on the parts is an estimate between two ends; 'enough in any case' mixes for "
        "the lower share. The gauge (step Wet film) replaces the usual band by what you do.",
        "Areas by the forms of geometry; a sheet counts both faces and its four edges. Count backs "
        "and edges that are painted, and what hangs behind them.",
        "A dry film becomes a wet one through the volume solids and the thinner: WFT = DFT x (1 + "
        "thinner) / solids (Organic Finishing Guidebook 2012-13 p. 615).",
        "Lost (can, strainer) and left over (cup, gun, test paper) begin with common figures, no "
        "source: type your own. Cups are filled to what the shop file says, else 20 US fl oz.",
        "Pot life is held against the time at the gun and the waits between the coats, as they are "
        "today; masking a corner or a second part takes longer. The data sheet's pot life wins.",
    )
    KEEPS: ClassVar[tuple[type[Event], ...]] = (AreaAdded, AmountPlanned)
    UNIT_FIRST: ClassVar[bool] = True

    def fields(self, context: Context) -> tuple[Field, ...]:
        return fields(context)

    def wanted(self, context: Context, values: Values) -> Collection[str] | None:
        return wanted_rows(context, values)

    def first(self, context: Context, values: Values) -> str:
        """The form comes first on the page of areas; a digit begins its first size."""
        return "form"

    def readout(self, context: Context, values: Values) -> Readout:
        return (area_readout if _is_area(values) else plan_readout)(context, values)

    def record(self, context: Context) -> tuple[str, ...]:
        lines = [area_words(each, context.system) for each in context.job.areas[-3:]]
        if len(context.job.areas) > 1:
            total = show(total_area_m2(context.job), Kind.AREA, context.system)
            lines.append(f"in all {total} of {len(context.job.areas)} entries")
        return tuple(lines)

    def kept_any(self, context: Context) -> bool:
        return bool(context.job.amounts)

    def cleared(self, form: Form) -> Form:
        return form.emptied(but=(*FILM_ROWS, "wet", "dry"))

    def event(self, context: Context, values: Values) -> Event | str | None:
        """The area that is being typed; else the amount that all comes to."""
        if not _is_area(values):
            return planned(context, values)
        square_m, fault = this_area(values)
        if square_m is None or square_m <= 0:
            return fault or "An area is above 0."
        shape, part = word(values, "form"), word(values, "part")
        sizes = {key: given for key in DIMENSIONS[shape] if (given := quantity(values, key))}
        return AreaAdded(
            n=0,
            at=context.now,
            shape=shape,
            dimensions={} if shape == "area" else sizes,
            area=Quantity(square_m, "m2", f"{square_m:.4g} m2"),
            number=count_of(values),
            part="" if part == WHOLE and len(context.job.parts) > 1 else part,
        )

    def space(self, context: Context, rows: Rows) -> Act:
        """The other page."""
        page = FILM if word(rows.values, "page") == AREAS else AREAS
        says = "film and losses" if page == FILM else "areas"
        return Act(says, (SetForm(rows.form.choosing("page", page).marking("")),))

    def enter(self, context: Context, rows: Rows) -> Act | None:
        """The rows of the page in their order; behind them an area is added, or the amount kept."""
        marked, typed = rows.marked, any(row.text.strip() for row in rows.sight)
        last = marked is None or rows.after(marked) is None
        wrong = any(row.fault for row in rows.sight)
        if typed and word(rows.values, "page") == AREAS:
            on = wrong or not last or rows.waiting
            return None if on else commit(self, context, rows, "add this area")
        amount = planned(context, rows.values)
        if wrong or (typed and not last and amount is not None):
            return None
        if isinstance(amount, str) and not rows.holds:
            return finish(self, context)
        return commit(self, context, rows, "keep the amount")


def _is_area(values: Values) -> bool:
    """Whether the page of areas is open, and a size is typed there."""
    sizes = DIMENSIONS[word(values, "form")]
    return word(values, "page") == AREAS and any(quantity(values, key) for key in sizes)


def planned(context: Context, values: Values) -> AmountPlanned | str | None:
    """The plan as an event; a sentence what is still needed; None where it is kept as it is."""
    plan, missing = plan_in(context, values)
    if plan is None:
        return missing
    area = total_area_m2(context.job)
    if context.job.amounts:
        last = context.job.amounts[-1]
        same = math.isclose(last.amount.value, plan.mix_ml, rel_tol=1e-3)
        if same and math.isclose(last.area.value, area, rel_tol=1e-3):
            return None
    return AmountPlanned(
        n=0,
        at=context.now,
        area=Quantity(area, "m2", f"{area:.4g} m2"),
        amount=Quantity(plan.mix_ml, "ml", f"{plan.mix_ml:.0f} ml"),
    )
