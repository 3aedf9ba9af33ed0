"""A day plan as text and as JSON: what runs, what is done when, what speaks against it."""

from __future__ import annotations

from typing import Any

from booth.files.safe_text import visible
from booth.job.day_plan import DayPlan
from booth.job.day_waits import DayChoice, DayWait
from booth.job.lasting import Lasting
from booth.trade.waits.wait_time import Certainty
from booth.units import Kind, System
from booth.units.sentences import in_units
from booth.words.profile_words import range_words
from booth.words.wait_words import length

DAY_S = 86400
FITS = "FITS, by what is known now. The data sheet comes first, and a touch test decides."
FITS_BY_GUESS = "FITS IF THE GUESS HOLDS. The data sheet comes first, and a touch test decides."


def as_json(plan: DayPlan, system: System = System.METRIC) -> dict[str, Any]:
    """Give it as plain data: times [s], those of the line from the start of the day; null: not known.

    choices: hardener and thinner to take; suits: false where it is only the nearest; system: of the
    units in sentences; by_guess: what a coat takes was not given.
    """
    return {
        "fits": plan.fits,
        "by_guess": plan.guessed_s is not None,
        "why": [in_units(why, system) for why in plan.why],
        "choices": [
            {"product": e.product, "what": e.what, "take": e.name, "suits": e.suits}
            for e in plan.choices
        ],
        "waits": [_wait_json(each, system) for each in plan.waits],
        "line": [
            {"part": each.part, "what": each.what, "begins": each.begins_s, "ends": each.ends_s}
            for each in plan.line
        ],
    }


def _wait_json(each: DayWait, system: System) -> dict[str, Any]:
    first, second = _both(each)
    return {
        "product": each.product,
        "coat": each.coat,
        "what": each.what,
        "standing": str(first.certainty),
        "opens_s": each.opens.seconds if each.opens else None,
        "closes_s": each.closes.seconds if each.closes else None,
        "rule": in_units("; ".join(dict.fromkeys((first.rule, second.rule))), system),
        "why": in_units(_why(first, second), system),
    }


def _both(each: DayWait) -> tuple[Lasting, Lasting]:
    first = each.opens or each.closes
    assert first is not None  # a wait has one of the two
    return first, each.closes or first


def _why(first: Lasting, second: Lasting) -> str:
    return "; ".join(dict.fromkeys(why for why in (first.why, second.why) if why))


def as_text(
    plan: DayPlan, start_s: float, air_read: bool = True, system: System = System.METRIC
) -> str:
    """Give it as lines; start_s: the time of day at which it begins [s after midnight]; air_read:
    whether the weather was given; system: of the temperatures."""
    whys = (in_units(why, system) for why in plan.why)
    fits = FITS if plan.guessed_s is None else FITS_BY_GUESS
    lines = [fits] if plan.fits else ["DOES NOT FIT:", *(f"  {visible(why)}" for why in whys)]
    if plan.guessed_s is not None:
        minutes = plan.guessed_s / 60
        lines.append(f"A coat on a part is taken as {minutes:g} min, a guess: say --coat.")
    product = ""
    lines += ["", "WAITS"]
    for each in plan.waits:
        if each.product != product:
            product = each.product
            lines.append(f"  {visible(product)}")
            own = [choice for choice in plan.choices if choice.product == product]
            lines += [f"    {_choice_line(choice, air_read, system)}" for choice in own]
        lines.append(f"    {_wait_line(each, system)}")
    lines += ["", "DAY"]
    timed = [each for each in plan.line if each.begins_s is not None]
    for block in sorted(timed, key=lambda each: each.begins_s or 0.0):
        ends = "     " if block.ends_s is None else _time(start_s + block.ends_s)
        begins = _time(start_s + (block.begins_s or 0.0))
        lines.append(f"  {begins} - {ends}  {visible(block.part):16}  {visible(block.what)}")
    unknown = [each for each in plan.line if each.begins_s is None]
    lines += [f"  not known      {visible(each.part):16}  {visible(each.what)}" for each in unknown]
    return "\n".join(lines) + "\n"


def _choice_line(each: DayChoice, air_read: bool, system: System) -> str:
    """Which hardener or thinner to take in this air, or what has to be said for that."""
    air = range_words(each.for_c, Kind.TEMPERATURE, system)
    name = f"{visible(each.name)}{f', for {air}' if air else ''}"
    if each.suits:
        return f"{each.what}  take {name}"
    if each.suits is False:
        return f"{each.what}  {name}, is nearest, none is for this air: ask the data sheet"
    asked = "say --air, --humidity and --part-at" if not air_read else "the sheet names no air"
    if not each.several:
        return f"{each.what}  {name}: whether it suits is not known ({asked})"
    careful = "; the most careful wait of all counts" if each.what == "hardener" else ""
    return f"{each.what}  which one suits the air is not known ({asked}){careful}"


def _wait_line(each: DayWait, system: System) -> str:
    first, second = _both(each)
    said = [visible(each.what)]
    if each.opens is not None:
        opens = _lasts(each.opens)
        said.append(opens if each.opens.seconds is None else f"after {opens}")
    if each.closes is not None:
        closes = _lasts(each.closes)
        said.append(f"closes {closes}" if each.opens is not None else f"until {closes}")
    rule = first.rule if first.certainty is not Certainty.NOT_KNOWN else ""
    # In units first: what is made visible has plain spaces only.
    note = in_units(_why(first, second) or rule, system)
    return "  ".join((*said, *([f"({visible(note)})"] if note else [])))


def _lasts(each: Lasting) -> str:
    if each.seconds is None:
        return "not known"
    time = length(each.seconds)
    return time if each.certainty is Certainty.KNOWN else f"{each.certainty} {time}"


def _time(seconds: float) -> str:
    """A time of day, and how many days on."""
    days, rest = divmod(round(seconds / 60) * 60, DAY_S)
    time = f"{rest // 3600:02.0f}:{rest % 3600 // 60:02.0f}"
    return f"{time}+{days:.0f}d" if days else time
