"""The window that one product leaves for the next one on the same part. Pure."""

from __future__ import annotations

from booth.files.slug import slug
from booth.profile.model import NextProduct, Profile


def next_window(profile: Profile, coming: Profile | None) -> NextProduct | None:
    """The window for the coming product: the one that names it, else the one for any, else that for
    a further coat; None where the profile says none."""
    found = _for(profile, coming)
    if found is not None:
        return found
    waits = profile.waits
    if waits.recoat_opens is None and waits.recoat_closes is None:
        return None
    return NextProduct(opens=waits.recoat_opens, closes=waits.recoat_closes)


def says_nothing_of(profile: Profile, coming: Profile) -> str:
    """What a profile says instead of a window for the coming product; empty where it has one.

    One that names others only does not allow this one: another coating may lift what is under it.
    """
    names = ", ".join(each.name for each in profile.next_products)
    if names:
        return "" if _for(profile, coming) is not None else f"windows for {names} only"
    return "" if next_window(profile, coming) is not None else "no window for a further product"


def _for(profile: Profile, coming: Profile | None) -> NextProduct | None:
    known = (coming.key, coming.name, coming.product) if coming is not None else ()
    names = {_plain(each) for each in known if each}
    named = [each for each in profile.next_products if each.name and _plain(each.name) in names]
    unnamed = [each for each in profile.next_products if not each.name]
    return next(iter((*named, *unnamed)), None)


def _plain(name: str) -> str:
    """As it is compared: as a key where it can be one."""
    return slug(name) if name.isascii() else name.casefold()
