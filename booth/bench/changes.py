"""The menu of what can change in a running job: coats, parts, the gun, its tip and cup.

Everything is a list to choose from; only names of parts have to be typed.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from booth.bench.act import Act, Ask, Choice, Context, Keep, Menu, Say, refused
from booth.bench.menus import OWN_WORDS
from booth.files.faults import counted
from booth.job.coat_plan import coats_wanted, sheet_most
from booth.job.part_names import HINT, BadParts, parts_from
from booth.job.racks import Row, rows_of
from booth.log.changes import Fitted
from booth.log.events import CoatsChanged, GunChanged, PartsChanged
from booth.units import EntryError, Kind, Quantity, read, show

#: Tips that guns are sold with [mm], and cups [ml] (common practice, no source).
TIPS_MM = (0.8, 1.0, 1.2, 1.3, 1.4, 1.5, 1.6, 1.8, 2.0, 2.2, 2.5)
CUPS_ML = (125.0, 250.0, 400.0, 600.0, 1000.0)
KINDS = {"tip": (Kind.TIP, TIPS_MM), "cup": (Kind.VOLUME, CUPS_ML)}


def change_menu(context: Context) -> Menu:
    """What may change now."""
    job, rows = context.job, rows_of(context.job)
    choices = list(_coat_choices(context, job.parts, "on every part" if len(rows) > 1 else ""))
    if len(rows) > 1:
        choices.append(_onto("Coats of one part…", partial(_parts_menu, _coats_menu, "Coats of")))
    choices.append(Choice("Add parts…", lambda _: Act("", (Ask("Parts to add", _add, HINT),))))
    if len(rows) > 1:
        choices.append(_onto("Drop a part…", partial(_parts_menu, _drop, "Drop")))
    return Menu(
        "What changes?",
        (
            *choices,
            _onto(f"Another gun…{_now(job.fitted.gun)}", _guns),
            _onto("Another tip…", partial(_sizes, "tip")),
            _onto("Another cup on the gun…", partial(_sizes, "cup")),
        ),
    )


def _now(name: str) -> str:
    return f" now: {name}" if name else ""


def _onto(words: str, menu: object) -> Choice:
    assert callable(menu)
    return Choice(words, lambda now: Act("", (menu(now),)))


# -- coats -------------------------------------------------------------------------------------


def _coat_choices(context: Context, parts: Sequence[str], where: str) -> tuple[Choice, ...]:
    """A coat more or fewer; never fewer than are on."""
    job = context.job
    wanted = {part: coats_wanted(job, part) for part in parts}
    spare = all(n > max(len(job.coats_on(part)), 1) for part, n in wanted.items())
    found = []
    for by, word in (
        ((1, "One coat more"), (-1, "One coat fewer")) if spare else ((1, "One coat more"),)
    ):
        told = f"{max(wanted.values()) + by} in all"
        words = f"{word} {where}: {told}" if where else f"{word}: {told}"
        found.append(Choice(words, partial(_change_coats, parts=tuple(parts), by=by)))
    return tuple(found)


def _change_coats(context: Context, parts: tuple[str, ...], by: int) -> Act:
    job = context.job
    wanted = {part: coats_wanted(job, part) + by for part in parts if part in job.parts}
    alike = len(set(wanted.values())) == 1 and set(wanted) == set(job.parts)
    told = {"": max(wanted.values())} if alike else wanted
    kept = [
        Keep(CoatsChanged(n=0, at=context.now, coats=coats, part=part))
        for part, coats in told.items()
    ]
    most, coats = sheet_most(job), max(wanted.values())
    over = f" The profile says {most} at most." if most is not None and coats > most else ""
    return Act("coats", (*kept, Say(f"{counted(coats, 'coat')} in all.{over}", fault=bool(over))))


def _coats_menu(context: Context, row: Row) -> Act:
    menu = Menu(f"Coats of {row.title}", _coat_choices(context, row.parts, ""))
    return Act("", (menu,))


# -- parts -------------------------------------------------------------------------------------


def _parts_menu(act: object, title: str, context: Context) -> Menu:
    """The rows of the job; act: what becomes of the one that is chosen."""
    assert callable(act)
    job, choices = context.job, []
    for row in rows_of(job):
        laid = sum(len(job.coats_on(part)) for part in row.parts)
        behind = f"{counted(laid, 'coat')} on" if laid else ""
        choices.append(Choice(row.title, partial(act, row=row), behind))
    return Menu(f"{title} which part?", tuple(choices))


def _drop(context: Context, row: Row) -> Act:
    job = context.job
    running = next((part for part in row.parts if job.running_coat(part) is not None), "")
    if running:
        return refused(f"{running}: a coat is being sprayed. End it first.")
    if not set(job.parts) - set(row.parts):
        return refused("A job has one part at least.")
    laid = any(job.coats_on(part) for part in row.parts)
    stays = " Its coats stay in the log; its waits end." if laid else ""
    changed = PartsChanged(n=0, at=context.now, drop=row.parts)
    return Act("drop", (Keep(changed), Say(f"{row.title} is dropped.{stays}")))


def _add(context: Context, typed: str) -> Act:
    if not typed.strip():
        return refused("No part was named.")
    try:
        new = parts_from(typed, context.job.parts)
    except BadParts as fault:
        return refused(str(fault))
    changed = PartsChanged(n=0, at=context.now, add=new.names, racks=new.racks)
    return Act("add", (Keep(changed), Say(f"Added: {', '.join(new.names)}.")))


# -- the gun -----------------------------------------------------------------------------------


def _guns(context: Context) -> Menu:
    names = [gun.name for gun in context.shop.guns if gun.name != context.job.fitted.gun]
    own = Choice(OWN_WORDS, lambda _: Act("", (Ask("Which gun?", _gun, needed=True),)))
    return Menu("Which gun?", (*(Choice(name, partial(_gun, name=name)) for name in names), own))


def _gun(context: Context, name: str) -> Act:
    return _keep(context, Fitted(" ".join(name.split())))


def _sizes(which: str, context: Context) -> Menu:
    kind, sizes = KINDS[which]
    unit = kind.base
    given = [Quantity(size, unit, f"{size:g} {unit}") for size in sizes]
    choices = [
        Choice(show(each.value, kind, context.system), partial(_fit, which=which, given=each))
        for each in given
    ]
    ask = Ask(f"Which {which}?", partial(_typed, which=which), needed=True)
    return Menu(f"Which {which}?", (*choices, Choice(OWN_WORDS, lambda _: Act("", (ask,)))))


def _typed(context: Context, text: str, which: str) -> Act:
    kind, _ = KINDS[which]
    try:
        given = read(text, kind, context.system)
    except EntryError as fault:
        return refused(str(fault))
    if given.value <= 0:
        return refused(f"A {which} is above 0.")
    return _fit(context, which, given)


def _fit(context: Context, which: str, given: Quantity) -> Act:
    fitted = context.job.fitted
    tip, cup = (given, fitted.cup) if which == "tip" else (fitted.tip, given)
    return _keep(context, Fitted(fitted.gun, tip, cup))


def _keep(context: Context, new: Fitted) -> Act:
    old = context.job.fitted
    changed = GunChanged(n=0, at=context.now, gun=new.gun, tip=new.tip, cup=new.cup)
    again = (new.gun, new.tip) != (old.gun, old.tip)
    said = "Set air and fan and catch anew: what was read belongs to the one before."
    return Act("gun", (Keep(changed), Say(said if again else "Noted.")))
