"""The amount: areas of the parts by their form, and the material, cups and time they take.

Two pages of rows, the areas, then coats, film and losses; Space turns the page.
"""

from __future__ import annotations

import math

from msgspec.structs import replace

from booth.bench.act import Act, Context, SetForm
from booth.bench.instrument import Instrument, number, quantity, word
from booth.bench.next_act import commit, finish
from booth.files.faults import counted
from booth.forms.form import Field, Rows, Values, only, same
from booth.instruments.area_words import area_readout, count_of, this_area
from booth.instruments.catch_words import cup_ml_of
from booth.instruments.figures import figure, interval
from booth.instruments.large.mix import areas_at_large
from booth.instruments.learnt_here import of_amount
from booth.job import material
from booth.job.coat_plan import coats_wanted
from booth.job.measured import parts_are_large
from booth.job.mixture import by_weight
from booth.job.pot import amount_words, pot_words
from booth.job.racks import alike
from booth.log.events import AmountPlanned, AreaAdded, Event
from booth.trade.result import BadInput
from booth.units import Kind, Quantity, show, shown_unit
from booth.units.sentences import in_units
from booth.words.about import of_the_day
from booth.words.coat_time_words import span_words, times_words
from booth.words.shown import Readout, Tone
from booth.words.wait_words import length, rough

AREAS, FILM = "areas", "film"
FORMS = (
    ("rectangle", "flat, square-edged"),
    ("sheet", "sheet or board, edges too"),
    ("circle", "disc"),
    ("cylinder", "round bar, pipe or drum"),
    ("box", "box, six faces"),
    ("area", "area is known"),
)
SIDES = (("1", "one side"), ("2", "both sides"))
ENDS = (("0", "no ends"), ("1", "one end"), ("2", "both ends"))
BASES = (("wet", "wet, each coat"), ("dry", "dry, all coats together"))
LANDS = (("large", "large flat parts"), ("small", "small or open parts"))
ENOUGH = (("ample", "enough in any case"), ("likely", "the likely figure"))
WHOLE = "all"
#: What stays in can and strainer, in cup and gun, and on the test paper (common practice, no
#: source): type your own.
LOST, LEFT_ML, LEFT_IN = 5.0, 30.0, "gun, test paper"
#: The rows of the page of the film, besides the film itself.
FILM_ROWS = ("coats", "basis", "lands", "lost", "left", "enough")
#: What was typed there holds for the next entry too.
STAY = (*FILM_ROWS, "wet", "dry")


class Amount(Instrument):
    KIND = "amount"
    NAME = "Amount"
    ABOUT = of_the_day.AMOUNT
    KEEPS = (AreaAdded, AmountPlanned)
    RECORDS = 3
    FIRST = ("form",)
    UNIT_FIRST = True
    at_large = areas_at_large

    def fields(self, context: Context, values: Values) -> tuple[Field, ...]:
        """Every row there may be; those of the page that is open are in sight."""
        film, parts = context.profile.film, context.job.parts
        pieces, faces = alike(context.job, word(values, "part"))
        whole = ((WHOLE, "all of it"),) if len(parts) > 1 else ()
        basis = "wet" if film.wet_um or not film.dry_total_um else "dry"
        wet, dry = (each.middle if each else None for each in (film.wet_um, film.dry_total_um))
        told = "large" if parts_are_large(context.job) else "small"
        long, short, percent = Kind.PART_LENGTH, Kind.LENGTH, Kind.PERCENT
        every = (
            Field("page", "Page", choices=((AREAS, "areas"), (FILM, "film and losses"))),
            Field("form", "Form", choices=FORMS),
            Field("length", "Length", long),
            Field("width", "Width", long),
            Field("height", "Height", long),
            Field("thickness", "Thickness", short),
            Field("diameter", "Diameter", short),
            Field("area", "Area", Kind.AREA),
            Field("sides", "Painted", choices=SIDES, default=str(min(faces, 2)), assumed=True),
            Field("ends", "Painted", choices=ENDS, assumed=True),
            Field("count", "How many", Kind.COUNT, default=pieces, assumed=True),
            Field("part", "Part", choices=(*whole, *same(parts)), assumed=True),
            Field("coats", "Coats", Kind.COUNT, default=coats_wanted(context.job)),
            Field("basis", "Film is", choices=BASES, default=basis, assumed=True),
            Field("wet", "Wet film", Kind.THICKNESS, optional=True, default=wet),
            Field("dry", "Dry film", Kind.THICKNESS, optional=True, default=dry),
            Field("lands", "Parts are", choices=LANDS, default=told),
            Field("lost", "Lost", percent, default=LOST, hint="can, strainer", assumed=True),
            Field("left", "Left over", Kind.VOLUME, default=LEFT_ML, hint=LEFT_IN, assumed=True),
            Field("enough", "Mix", choices=ENOUGH, assumed=True),
        )
        if word(values, "page") == FILM:
            return only((*FILM_ROWS, word(values, "basis")), every)
        form, part = word(values, "form"), "part" if len(parts) > 1 else ""
        sizes = material.DIMENSIONS.get(form, ())
        return only(("form", *sizes, material.WITH_FORM.get(form, ""), "count", part), every)

    def readout(self, context: Context, values: Values) -> Readout:
        return (area_readout if _is_area(values) else plan_readout)(context, values)

    def record(self, context: Context) -> tuple[str, ...]:
        areas = context.job.areas
        if len(areas) < 2:
            return super().record(context)
        total = show(material.total_area_m2(context.job), Kind.AREA, context.system)
        return (*super().record(context), f"in all {total} of {len(areas)} entries")

    def kept_any(self, context: Context) -> bool:
        return bool(context.job.amounts)

    def event(self, context: Context, values: Values) -> Event | str | None:
        """The area that is being typed; else the amount that all comes to."""
        if not _is_area(values):
            return planned(context, values)
        square_m = this_area(values)
        if isinstance(square_m, str) or square_m <= 0:
            return str(square_m or "An area has to be above 0.")
        shape, part = word(values, "form"), word(values, "part")
        sizes = {
            key: given for key in material.DIMENSIONS[shape] if (given := quantity(values, key))
        }
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
        page = FILM if word(rows.values, "page") == AREAS else AREAS
        says = "film and losses" if page == FILM else "areas"
        return Act(says, (SetForm(rows.form.choosing("page", page).marking("")),))

    def enter(self, context: Context, rows: Rows) -> Act | None:
        """The rows of the page in their order; behind them an area is added, or the amount kept."""
        marked, typed = rows.marked, any(row.text.strip() for row in rows.sight)
        last = marked is None or rows.after(marked) is None
        wrong, stay = any(row.fault for row in rows.sight), rows.emptied(but=STAY)
        if typed and word(rows.values, "page") == AREAS:
            on = wrong or not last or rows.waiting
            return None if on else commit(self, context, rows, "add this area", stay)
        if wrong or (typed and not last):
            return None
        if not rows.holds and isinstance(planned(context, rows.values), str):
            return finish(self, context)
        # What was kept stays in sight, and Enter once more goes on.
        return commit(self, context, rows, "keep the amount", stay.marking(rows.form.marked))


def _is_area(values: Values) -> bool:
    """Whether the page of areas is open, and a size is typed there."""
    sizes = material.DIMENSIONS[word(values, "form")]
    return word(values, "page") == AREAS and any(quantity(values, key) for key in sizes)


def planned(context: Context, values: Values) -> AmountPlanned | str | None:
    """The plan as an event; a sentence what is still needed; None where it is kept as it is."""
    plan, area = plan_in(context, values), material.total_area_m2(context.job)
    if isinstance(plan, str):
        return plan
    lands = word(values, "lands") or "large"
    for last in context.job.amounts[-1:]:
        pairs = ((last.amount.value, plan.mix_ml), (last.area.value, area))
        alike = all(math.isclose(*pair, rel_tol=1e-3) for pair in pairs)
        if alike and last.lands in ("", lands):
            return None
    amount = Quantity(plan.mix_ml, "ml", f"{plan.mix_ml:.0f} ml")
    whole = Quantity(area, "m2", f"{area:.4g} m2")
    return AmountPlanned(n=0, at=context.now, area=whole, amount=amount, lands=lands)


def plan_in(context: Context, values: Values) -> material.Plan | str:
    """The plan that areas and rows come to, or what is still needed."""
    area, basis = material.total_area_m2(context.job), word(values, "basis")
    if area <= 0:
        return "Give the area of the parts: choose the form, type its sizes."
    if not {"coats", basis, "lost", "left"} <= values.keys():
        return "A row of film and losses cannot be read: correct it first."
    coats, wet = round(number(values, "coats") or 0), number(values, basis)
    if coats < 1:
        return "There is at least one coat."
    ample = word(values, "enough") != "likely"
    if wet and basis == "dry":
        wet = material.wet_from_dry_um(context.job, wet, coats, ample)
        if wet is None:
            return "A dry film needs the volume solids, and this profile gives none."
    if not wet:
        there = "" if word(values, "page") == FILM else " Space shows its row."
        return f"Still needed: the film.{there}"
    try:
        return material.plan_of(
            context.job,
            area_m2=area,
            coats=coats,
            wet_um=wet,
            large=word(values, "lands") != "small",
            lost=(number(values, "lost") or 0.0) / 100,
            left_ml=number(values, "left") or 0.0,
            ample=word(values, "enough") != "likely",
            cup_ml=cup_ml_of(context),
            past=context.past.coat_times(context.job.opened.job),
        )
    except BadInput as fault:
        return in_units(fault, context.system)


def plan_readout(context: Context, values: Values) -> Readout:
    """The material to mix as the figure; cups, time at the gun, pot life as lines."""
    plan = plan_in(context, values)
    if isinstance(plan, str):
        unit = shown_unit(Kind.VOLUME, context.system)
        label = "material, ready to spray"
        return Readout("", unit, label, word="WHAT AREA?", lines=(plan,), whose="MIX")
    tone, said = Tone.READY, counted(plan.cups.cups, "cup").upper()
    if plan.covered is False:
        tone, said = Tone.CAUTION, "POT LIFE SHORT"
    coats = counted(round(number(values, "coats") or 0), "coat")
    lines: list[str] = []
    area = show(material.total_area_m2(context.job), Kind.AREA, context.system)
    label, system = f"to mix, ready to spray, estimate: {area}, {coats}", context.system
    cups = plan.cups
    # The most pressing first.
    lines += pot_words(context.job, system, plan.need.low)
    if by_weight(context.job):
        lines.append(f"on the scale {amount_words(context.job, plan.mix_ml, system)}")
    if plan.pot is not None and plan.pot.seconds is not None:
        life = f"pot life {'about ' if plan.pot.estimate else ''}{rough(plan.pot.seconds)}"
        lines.append(span_words(life, plan.span, plan.covered is not False))
    cup, last = (show(each, Kind.VOLUME, system) for each in (cup_ml_of(context), cups.last_ml))
    at_gun = ""
    if plan.gun_s is not None and plan.delivery is not None:
        delivery = show(plan.delivery[0], Kind.DELIVERY, system)
        at_gun = f"; {length(plan.gun_s)} at the trigger ({delivery} {plan.delivery[1]})"
    if cups.cups:
        several = f"cups of {cup}, the last one {last}"
        lines.append((several if cups.cups > 1 else f"a cup of {cup} holds it") + at_gun)
    need = interval(plan.need.low, plan.need.high, Kind.VOLUME, system)
    lands = f"{plan.lands.low * 100:.0f} to {plan.lands.high * 100:.0f} %"
    lines.append(f"{need}, as {lands} lands: {plan.lands.source.split(': ')[0]}")
    lines += of_amount(context, word(values, "lands") != "small")
    lines += [times_words(plan.times)] if plan.span is not None else []
    shown = figure(context, plan.mix_ml, Kind.VOLUME, label, tone, said, lines, whose="MIX")
    return replace(shown, edge=_pot_share(plan))


def _pot_share(plan: material.Plan) -> float | None:
    """How much of the pot life the job takes, from mixing to the last coat; full where all. Pure."""
    pot = plan.pot.seconds if plan.pot is not None else None
    return None if not pot or plan.span is None else min(plan.span[1] / pot, 1.0)
