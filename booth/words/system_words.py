"""A coating system in plain lines: its products in order, each with the window for the next; then each."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from booth.profile.model import NextProduct, Profile
from booth.profile.next_product import next_window, not_by_name
from booth.profile.system import CoatingSystem
from booth.units import System
from booth.words.profile_words import NEXT, profile_lines, wait_words


def lines_of(what: Profile | CoatingSystem, system: System) -> tuple[str, ...]:
    """What a job would be begun with."""
    if isinstance(what, Profile):
        return profile_lines(what, system)
    lines = [f"Demo: {what.source}" if what.demo else f"From: {what.source}", *what.notes, ""]
    names = ", then ".join(each.name for each in what.profiles)
    lines += [f"{names}.", *_windows(what, system)]
    for number, (listed, profile) in enumerate(zip(what.products, what.profiles, strict=True), 1):
        lines += ["", f"{number}/{len(what.products)} {profile.name}"]
        lines += [listed.note] if listed.note else []
        lines += profile_lines(profile, system)
    return tuple(lines)


def _windows(what: CoatingSystem, system: System) -> Iterator[str]:
    for below, above in pairwise(what.profiles):
        window = next_window(below, above) or NextProduct()
        said = {word: wait_words(getattr(window, name), system) for name, word in NEXT.items()}
        told = ", ".join(f"{word} {wait}" for word, wait in said.items() if wait)
        lacks = not_by_name(below, above)
        said_of = f" ({lacks})" if lacks else ""
        yield f"{above.name} over {below.name}: {told or 'the profile gives no time'}{said_of}"
