"""What the amount comes to, in figures and lines. Pure."""

from __future__ import annotations

from booth.bench.context import Context
from booth.bench.instrument import number, word
from booth.files.safe_text import visible
from booth.forms.form import Values
from booth.instruments.amount.rows import FILM
from booth.instruments.catch.words import cup_ml_of
from booth.job.material import (
    DIMENSIONS,
    Plan,
    Wanted,
    area_of,
    plan_of,
    total_area_m2,
    wet_from_dry_um,
)
from booth.log.events import AreaAdded
from booth.trade.result import BadInput
from booth.units import Kind, System, show, shown_unit
from booth.words.readout import Readout
from booth.words.tone import Tone
from booth.words.wait_words import duration, rough

MM_PER_M = 1000.0
IN_METRES = ("length", "width", "height")


def this_area(values: Values) -> tuple[float | None, str]:
    """The area that the rows hold [m2], all alike together; or what is wrong with it."""
    shape = word(values, "form")
    count = number(values, "count") or 1.0
    if shape == "area":
        known = number(values, "area")
        return (None, "") if known is None else (known * count, "")
    mm = {}
    for key in DIMENSIONS.get(shape, ()):
        given = number(values, key)
        if given is None:
            return None, ""
        mm[key] = given * MM_PER_M if key in IN_METRES else given
    sides, ends = int(word(values, "sides") or 1), int(word(values, "ends") or 0)
    try:
        return area_of(shape, mm, sides, ends) * count, ""
    except BadInput as fault:
        return None, str(fault)


def count_of(values: Values) -> int:
    """How many are alike."""
    given = number(values, "count")
    return max(1, round(given)) if given is not None else 1


def area_readout(context: Context, values: Values) -> Readout:
    """The area of the part being typed as the figure. Pure."""
    unit = shown_unit(Kind.AREA, context.system)
    square_m, fault = this_area(values)
    if square_m is None:
        return Readout("–", unit, label="area of this part", lines=(fault,) if fault else ())
    many = count_of(values)
    total = show(total_area_m2(context.job) + square_m, Kind.AREA, context.system)
    return Readout(
        show(square_m, Kind.AREA, context.system, unit=False),
        unit,
        label="area of this part" if many == 1 else f"area of these {many}",
        lines=(f"Once it is added: in all {total}.",),
    )


def plan_in(context: Context, values: Values) -> tuple[Plan | None, str]:
    """The plan that areas and rows come to, or what is still needed."""
    area = total_area_m2(context.job)
    if area <= 0:
        return None, "Give the area of the parts: choose the form, type its sizes."
    basis = word(values, "basis")
    if not {"coats", basis, "lost", "left"} <= values.keys():
        return None, "A row of film and losses cannot be read: mend it first."
    coats = round(number(values, "coats") or 0)
    if coats < 1:
        return None, "A coat is the least there is."
    film = number(values, basis)
    if film and basis == "dry":
        wet = wet_from_dry_um(context.job, film, coats)
        if wet is None:
            return None, "A dry film needs the volume solids, and this profile gives none."
    else:
        wet = film
    if not wet:
        there = "" if word(values, "page") == FILM else " Space shows its row."
        return None, f"Still needed: the film.{there}"
    wanted = Wanted(
        area_m2=area,
        coats=coats,
        wet_um=wet,
        large=word(values, "lands") != "small",
        lost=(number(values, "lost") or 0.0) / 100,
        left_ml=number(values, "left") or 0.0,
        ample=word(values, "enough") != "likely",
        cup_ml=cup_ml_of(context),
    )
    try:
        return plan_of(context.job, wanted), ""
    except BadInput as fault:
        return None, str(fault)


def plan_readout(context: Context, values: Values) -> Readout:
    """The material to mix as the figure; cups, time at the gun, pot life as lines."""
    system, unit = context.system, shown_unit(Kind.VOLUME, context.system)
    plan, missing = plan_in(context, values)
    if plan is None:
        return Readout("–", unit, label="material, ready to spray", lines=(missing,))
    cups = plan.cups.cups
    tone, said = Tone.READY, f"{cups} CUP{'S' if cups != 1 else ''}"
    if plan.covered is False:
        tone, said = Tone.CAUTION, "POT LIFE TOO SHORT"
    coats = round(number(values, "coats") or 0)
    many = f"{coats} coat{'s' if coats != 1 else ''}"
    area = show(total_area_m2(context.job), Kind.AREA, system)
    return Readout(
        show(plan.mix_ml, Kind.VOLUME, system, unit=False),
        unit,
        label=f"to mix, ready to spray, estimate: {area}, {many}",
        tone=tone,
        word=said,
        lines=plan_lines(context, plan),
    )


def plan_lines(context: Context, plan: Plan) -> tuple[str, ...]:
    """What stands under the figure: the most pressing first."""
    system = context.system
    low = show(plan.need.low, Kind.VOLUME, system, unit=False)
    high = show(plan.need.high, Kind.VOLUME, system)
    lands = f"{plan.lands.low * 100:.0f} to {plan.lands.high * 100:.0f} %"
    lines = [*_pot_lines(plan)]
    cup = show(cup_ml_of(context), Kind.VOLUME, system)
    last = show(plan.cups.last_ml, Kind.VOLUME, system)
    at_gun = ""
    if plan.gun_s is not None and plan.delivery is not None:
        delivery = show(plan.delivery[0], Kind.DELIVERY, system)
        at_gun = f"; {duration(plan.gun_s)} at the gun ({delivery} {plan.delivery[1]})"
    if plan.cups.cups > 1:
        lines.append(f"cups of {cup}, the last one {last}{at_gun}")
    elif plan.cups.cups == 1:
        lines.append(f"a cup of {cup} holds it{at_gun}")
    lines.append(f"{low} to {high}, as {lands} lands: {plan.lands.source.split(': ')[0]}")
    return tuple(lines)


def _pot_lines(plan: Plan) -> tuple[str, ...]:
    if plan.pot is None:
        return ()
    about = "about " if plan.pot.estimate else ""
    life = f"pot life {about}{rough(plan.pot.seconds)}"
    if plan.span_s is None:
        return (f"{life}; how long the job takes is not known yet",)
    span = f"mixing to last coat about {rough(plan.span_s)}"
    if plan.covered:
        return (f"{life}; {span}",)
    return (f"{life}; {span}: mix a batch for each coat.",)


def area_words(each: AreaAdded, system: System) -> str:
    """One area in a line."""
    sizes = " x ".join(
        show(size.value, Kind.PART_LENGTH if size.unit == "m" else Kind.LENGTH, system)
        for size in each.dimensions.values()
    )
    said = [visible(each.part), each.shape if each.shape != "area" else "", sizes]
    if each.number > 1:
        said.append(f"{each.number} of them")
    return "  ".join([*(one for one in said if one), show(each.area.value, Kind.AREA, system)])
