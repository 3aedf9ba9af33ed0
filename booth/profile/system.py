"""A coating system: several products, one after the other on the same parts, as a file lists them.

Its keys stand in one table; it names profiles, which are looked up as those of a job are. A file is
read strictly: a CoatingSystem, or all its faults. Nothing here raises.
"""

from __future__ import annotations

import os
from collections.abc import Iterable
from itertools import pairwise
from pathlib import Path

import msgspec

from booth.files.faults import Fault, Faults, counted, nearest, quoted
from booth.files.file_text import text_of
from booth.profile.library import Library, how_to_see, toml_files
from booth.profile.model import Profile
from booth.profile.next_product import says_nothing_of
from booth.toml.document import Document
from booth.toml.key import Flag, Key, Text
from booth.toml.lines import where
from booth.toml.table import Many, Table, Tables

#: The folder of systems inside each folder of profiles.
FOLDER = "systems"
LEAST_PRODUCTS = 2
#: A text with one of these lists products; a profile has some of the others.
MARKS = (("products",), ("products", 0))
MARKS_OF_PROFILES = (("film",), ("waits",), ("mix",), ("efflux",), ("gun",), ("coats", 0))


class Listed(msgspec.Struct, frozen=True):
    """One product of the list: the key of its profile."""

    profile: str
    note: str = ""


class CoatingSystem(msgspec.Struct, frozen=True, kw_only=True):
    """A coating system as read from its file. profiles: those of `products`, in the same order."""

    key: str
    name: str
    source: str
    demo: bool = False
    notes: tuple[str, ...] = ()
    products: tuple[Listed, ...]
    profiles: tuple[Profile, ...] = ()


PRODUCT: dict[str, Key] = {
    "profile": Text("its coating profile, by the name of the file", '"epoxy-primer"'),
    "note": Text("what matters with this product in this system", '"scuff it first"'),
}
TOP: dict[str, Key] = {
    "name": Text("what the painter calls it", '"Primer, base, clear"'),
    "source": Text("who says that they go together", '"system sheet, issue 2"'),
    "demo": Flag("invented, for trying the program", "true"),
    "notes": Many("what else the sheet says", '["One colour of primer to a job."]'),
    "products": Tables("the products in their order", one=Table(keys=PRODUCT, make=Listed)),
}
ALSO_CALLED: dict[str, str] = {
    "name": "title",
    "source": "origin",
    "products": "product coats layers steps",
    "products.profile": "name file coating",
}
INTRO = """\
Keys of a coating system (a TOML file in a folder 'systems' beside your profiles): products for the
same parts, two or more, each by its profile. * must be there."""

SYSTEM = Document("a coating system", Table(keys=TOP, make=CoatingSystem), ALSO_CALLED, INTRO)


def read_system(
    path: str | os.PathLike[str], library: Library
) -> CoatingSystem | tuple[Fault, ...]:
    """Read the system at `path`; its profiles are those of `library`."""
    text = text_of(path, SYSTEM.what)
    if isinstance(text, Fault):
        return (text,)
    values, faults = SYSTEM.read(text, os.fspath(path))
    listed: tuple[Listed, ...] = values.get("products", ())
    found = [_profile(number, each, library, faults) for number, each in enumerate(listed)]
    if "products" in values and len(listed) < LEAST_PRODUCTS:
        count = counted(len(listed), "product")
        faults.add(("products",), count, "two or more: [[products]] and its keys once for each")
    for number, (below, above) in enumerate(pairwise(found), 1):
        if below is not None and above is not None:
            _follow(number, below, above, faults)
    if faults:
        return faults.sorted()
    profiles = tuple(each for each in found if each is not None)
    return CoatingSystem(key=Path(path).stem, profiles=profiles, **values)


def load_systems(
    folders: Iterable[Path], library: Library
) -> dict[Path, CoatingSystem | tuple[Fault, ...]]:
    """Read the systems of the folders of profiles; the first file of a name has it, faults or not."""
    broken: dict[Path, tuple[Fault, ...]] = {}
    files: dict[str, Path] = {}
    for folder in folders:
        for file in toml_files(folder / FOLDER, broken):
            files.setdefault(file.stem, file)
    return {**broken, **{file: read_system(file, library) for file in files.values()}}


def is_system_text(text: str) -> bool:
    """Whether a text is meant as a coating system, damaged or not: it lists products."""
    lines = where(text.removeprefix("\ufeff")).lines
    is_profile = any(mark in lines for mark in MARKS_OF_PROFILES)
    return not is_profile and any(mark in lines for mark in MARKS)


def _profile(number: int, listed: Listed, library: Library, faults: Faults) -> Profile | None:
    """The profile that a product names."""
    key = listed.profile.strip().removesuffix(".toml")
    found, file = library.get(key), library.faulty(key)
    if found is not None:
        return found
    at = ("products", number, "profile")
    if file is not None:
        told = f"a profile with {counted(len(library.broken[file]), 'fault')}"
        faults.add(at, told, "one that can be read", f"Mend it: {how_to_see(file)}")
        return None
    known = [each.key for each in library.profiles]
    near = nearest(key, known)
    advice = f"Did you mean {near}?" if near else ""
    expected = "the name of a profile's file" + ("" if near else f": {', '.join(known) or 'none'}")
    faults.add(at, f"no coating profile {quoted(key)}", expected, advice)
    return None


def _follow(number: int, below: Profile, above: Profile, faults: Faults) -> None:
    """Tell where no data sheet says when the one product may go onto the other."""
    told = says_nothing_of(below, above)
    if told:
        faults.add(
            ("products", number, "profile"),
            f"{quoted(above.key)} over {quoted(below.key)}, whose profile has {told}",
            "a window that names it, or one for any product",
            f'Where its data sheet has one: [[next_product]] name = "{above.key}" in {below.key}.toml.',
        )
