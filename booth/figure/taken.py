"""What a question takes from a coating profile and from the shop file, and from which.

Only what they say is taken; what they do not say is missing, or assumed, as without them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import Any

from booth.figure.grammar import Misuse, Taken
from booth.figure.options import Options
from booth.figure.subject import Subject
from booth.figure.taken_table import FROM_GUN, FROM_PROFILE, FROM_SHOP, MEASURED, Found
from booth.files.faults import quoted
from booth.files.places import Places
from booth.profile.library import NoProfile, load_folder
from booth.profile.model import Profile, WaitRule
from booth.shop.model import Gun, Shop
from booth.shop.read import read_shop


def taken(subject: Subject, options: Options) -> Mapping[str, Taken]:
    """Give what is taken, by argument, the gun before the profile. Raises Misuse with a sentence."""
    found: dict[str, Taken] = {}
    if options.shop or options.gun:
        shop = _shop()
        if options.gun:
            gun = _gun(shop, options.gun)
            found |= _from(subject, FROM_GUN, gun, f"gun {gun.name}")
        if options.shop:
            found |= _from(subject, FROM_SHOP, shop, "shop file")
    if options.profile:
        profile = _profile(options.profile)
        general = {} if subject.name in MEASURED else FROM_PROFILE[""]
        own = {**general, **FROM_PROFILE.get(subject.name, {})}
        found = _from(subject, own, profile, f"profile {profile.key}") | found
        if not found:
            raise Misuse(_nothing(subject, profile, own))
    if not found:
        raise Misuse("There is nothing that it could take from there.")
    return found


def _from(
    subject: Subject, table: Mapping[str, Callable[[Any], Found]], said: Any, where: str
) -> dict[str, Taken]:
    found = {}
    for argument in subject.arguments:
        find = table.get(f"{subject.name} {argument.name}") or table.get(argument.name)
        value = find(said) if find else None
        if value is not None:
            found[argument.name] = Taken(value[0], where, value[1])
    return found


def _nothing(subject: Subject, profile: Profile, own: Mapping[str, Any]) -> str:
    wanted = [each.name for each in subject.arguments if each.name in own]
    if not wanted:
        return "It takes nothing that a coating profile says."
    table = _table_of(subject, profile)
    if table is not None:
        rows = " ".join(_rows(table))
        return f"The profile gives a table: booth figure wait-from-table TODAY {rows}."
    return f"The profile {profile.key} says nothing of {', '.join(wanted)}."


def _table_of(subject: Subject, profile: Profile) -> WaitRule | None:
    rules = {
        "pot-life": profile.mix.pot_life if profile.mix else None,
        "flash-off": profile.waits.flash_off,
        "recoat-opens": profile.waits.recoat_opens,
        "recoat-closes": profile.waits.recoat_closes,
    }
    rule = rules.get(subject.name)
    plain = rule is not None and rule.is_table and all(row.at_percent is None for row in rule.rows)
    return rule if plain else None


def _rows(rule: WaitRule) -> Iterator[str]:
    for row in rule.rows:
        if row.at_c is not None:
            yield f"{row.at_c:g}C:{row.time_s / 60:g}min"


def _profile(named: str) -> Profile:
    try:
        return load_folder(Places.standard().profiles_dirs).named(named)
    except NoProfile as fault:
        raise Misuse(str(fault)) from None


def _shop() -> Shop:
    file = Places.standard().shop_file
    read = read_shop(file)
    if read.faults:
        raise Misuse(f"The shop file has faults: booth check {file}")
    return read.shop


def _gun(shop: Shop, named: str) -> Gun:
    found = [gun for gun in shop.guns if gun.name.casefold() == named.casefold()]
    if not found:
        known = ", ".join(gun.name for gun in shop.guns) or "none"
        raise Misuse(f"No gun {quoted(named)} in the shop file. There are: {known}.")
    return found[0]
