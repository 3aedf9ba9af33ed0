"""Notes on windows whose name meets no product of a system: then the one for any product counts."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import pairwise
from pathlib import Path

from booth.files.faults import Fault, Faults, nearest, quoted
from booth.files.file_text import text_of
from booth.profile.keys import PROFILE
from booth.profile.library import Library
from booth.profile.model import Profile
from booth.profile.next_product import named_others, names_of, next_window
from booth.profile.system import CoatingSystem


def notes_of_system(system: CoatingSystem, library: Library) -> tuple[Fault, ...]:
    """A note for each product of the system whose windows do not name the one that follows.

    It is a note of the profile's own file, at the line where the name is to be mended.
    """
    found = (
        note
        for below, above in pairwise(system.profiles)
        if below.key in library.files
        for note in _notes(library.files[below.key], below, above, system.name)
    )
    return tuple(found)


def notes_of_profile(
    file: Path, profile: Profile, systems: Iterable[CoatingSystem]
) -> tuple[Fault, ...]:
    """The same for one profile, in all the systems in which another product follows it."""
    found = (
        note
        for system in systems
        for below, above in pairwise(system.profiles)
        if below.key == profile.key
        for note in _notes(file, profile, above, system.name)
    )
    return tuple(found)


def _notes(file: Path, below: Profile, above: Profile, system: str) -> Iterator[Fault]:
    others = named_others(below, above)
    if not others or next_window(below, above) is None:
        return  # that there is none at all is a fault of the system
    names, windows = names_of(above), below.next_products
    meant = {at: nearest(windows[at].name, names) for at in others}
    place = next((at for at in others if meant[at]), others[0])
    found = ", ".join(quoted(windows[at].name) for at in others)
    expected = (
        f"the product that follows in the system {quoted(system)}, by one of its names: "
        + ", ".join(quoted(name) for name in names)
    )
    used = "Until a window names it, the one for any product counts."
    near = meant[place]
    advice = f"Did you mean {quoted(near)}? {used}" if near else used
    text = text_of(file)
    faults = PROFILE.read(text, str(file))[1] if isinstance(text, str) else Faults(str(file), "")
    faults.notes.clear()
    faults.note(("next_product", place, "name"), found, expected, advice)
    yield from faults.notes
