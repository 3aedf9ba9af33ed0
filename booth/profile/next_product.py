"""The window that one product leaves for the next one on the same part. Pure."""

from __future__ import annotations

from booth.files.faults import quoted
from booth.files.slug import slug
from booth.profile.model import NextProduct, Profile


def next_window(profile: Profile, coming: Profile | None) -> NextProduct | None:
    """The window for the coming product: the one that names it, else the one for any, else that for
    a further coat; None where the profile says none, or has windows for others only: another
    coating may lift what is under it."""
    found = _for(profile, coming)
    if found is not None:
        return found
    waits, for_others = profile.waits, coming is not None and bool(profile.next_products)
    if for_others or (waits.recoat_opens is None and waits.recoat_closes is None):
        return None
    return NextProduct(opens=waits.recoat_opens, closes=waits.recoat_closes)


def says_nothing_of(profile: Profile, coming: Profile) -> str:
    """What a profile says instead of a window for the coming product; empty where it has one."""
    names = ", ".join(each.name for each in profile.next_products)
    if names:
        return "" if _for(profile, coming) is not None else f"windows for {names} only"
    return "" if next_window(profile, coming) is not None else "no window for a further product"


def named_others(profile: Profile, coming: Profile) -> tuple[int, ...]:
    """The places of the windows that name other products, where none names the coming one."""
    names = names_of(coming)
    named = {at: each.name for at, each in enumerate(profile.next_products) if each.name}
    if any(_plain(each) in {_plain(name) for name in names} for each in named.values()):
        return ()
    return tuple(named)


def names_of(profile: Profile) -> tuple[str, ...]:
    """The names by which a window may call a product: of its file, its own, what it is."""
    return tuple(dict.fromkeys(filter(None, (profile.key, profile.name, profile.product))))


def not_by_name(profile: Profile, coming: Profile) -> str:
    """What a painter has to know of the window for the coming product, where the data sheet names
    others and not this one; empty where there is nothing to say."""
    places = named_others(profile, coming)
    if not places:
        return ""
    lacks = f"the data sheet has no window for {quoted(coming.name)} by name"
    if next_window(profile, coming) is not None:
        return f"{lacks}: the one for any product is shown"
    names = ", ".join(quoted(profile.next_products[at].name) for at in places)
    return f"{lacks}, only for {names}: ask its maker"


def _for(profile: Profile, coming: Profile | None) -> NextProduct | None:
    names = {_plain(each) for each in names_of(coming)} if coming is not None else set()
    named = [each for each in profile.next_products if each.name and _plain(each.name) in names]
    unnamed = [each for each in profile.next_products if not each.name]
    return next(iter((*named, *unnamed)), None)


def _plain(name: str) -> str:
    """As it is compared: as a key where it can be one."""
    return slug(name) if name.isascii() else name.casefold()
