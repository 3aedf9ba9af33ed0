"""Reads a coating profile strictly: a Profile, or every fault of the file. Never raises.

Shape first (``values``), then meaning (``sense``); the keys are those of ``keys``.
"""

from __future__ import annotations

import os
from typing import Any

from booth.files.faults import Fault, Faults, Path, nearest, quoted, said
from booth.files.file_text import file_name, text_of, text_of_bytes
from booth.files.toml_syntax import parse
from booth.profile.build import build
from booth.profile.consistency import judge
from booth.profile.keys import ALSO_CALLED, KEYS, Key, Shape, children
from booth.profile.model import Profile
from booth.profile.values import MOST_ITEMS, read_value

__all__ = ["read_bytes", "read_profile", "read_text"]

#: So many unknown keys of one table are told; more is another kind of file.
MOST_UNKNOWN = 20


def read_profile(path: str | os.PathLike[str]) -> Profile | tuple[Fault, ...]:
    """Read the profile at `path`; its key is the file's name without the ending."""
    text = text_of(path)
    return (text,) if isinstance(text, Fault) else read_text(text, os.fspath(path))


def read_bytes(content: bytes, name: str) -> Profile | tuple[Fault, ...]:
    """Read a profile from what a file holds; `name` stands for the file in faults."""
    text = text_of_bytes(content, name)
    return (text,) if isinstance(text, Fault) else read_text(text, name)


def read_text(text: str, name: str) -> Profile | tuple[Fault, ...]:
    """Read a profile from its text; `name` stands for the file in faults."""
    faults = Faults(name)
    parsed = parse(text.removeprefix("\ufeff"), faults)
    faults.lines = parsed.lines
    # What stood in a line that was set aside must not be called missing.
    values = _table(parsed.tables, "", (), faults, complete=parsed.whole)
    if faults:
        return faults.sorted()
    profile = build(file_name(name), values)
    judge(profile, faults)
    return faults.sorted() if faults else profile


def _table(
    data: dict[str, Any], table: str, path: Path, faults: Faults, complete: bool
) -> dict[str, Any]:
    """Read one table: its values by name, those with a fault left out."""
    known = children(table)
    values: dict[str, Any] = {}
    unknown = 0
    for name, value in data.items():
        key = known.get(name)
        if key is not None:
            read_one = _value(value, key, (*path, name), faults, complete)
            if read_one is not None:
                values[name] = read_one
            continue
        unknown += 1
        aside = not complete and name.startswith("set-aside-")
        if unknown <= MOST_UNKNOWN and not aside:
            _unknown(name, table, (*path, name), faults)
    for name, key in known.items():
        if complete and key.required and name not in data:
            _missing(key, (*path, name), faults)
    return values


def _value(value: Any, key: Key, path: Path, faults: Faults, complete: bool) -> Any:
    if key.shape is Shape.TABLE:
        if isinstance(value, dict):
            return _table(value, key.path, path, faults, complete)
        faults.add(path, said(value), f"a table: [{key.path}] and its keys below")
        return None
    if key.shape is not Shape.TABLES:
        return read_value(value, key, path, faults)
    header = f"[[{key.path.removesuffix('[]')}]]"
    if not isinstance(value, list) or not all(isinstance(each, dict) for each in value):
        faults.add(
            path, said(value), f"a list of tables: {header} and its keys below, once for each"
        )
        return None
    if len(value) > MOST_ITEMS:
        faults.add(path, f"a list of {len(value)}", f"at most {MOST_ITEMS}")
        return None
    return [
        _table(each, key.path, (*path, number), faults, complete)
        for number, each in enumerate(value)
    ]


def _missing(key: Key, path: Path, faults: Faults) -> None:
    header = f"[{key.path}]" if key.shape is Shape.TABLE else f"{key.name} = {key.example}"
    faults.add(path, "nothing", f"{key.name}: {key.says}", f"Write {header}.")


def _unknown(name: str, table: str, path: Path, faults: Faults) -> None:
    here = children(table)
    advice = ""
    near = nearest(name, here)
    if near:
        advice = f"Did you mean {near}?"
    else:
        elsewhere = _elsewhere(name, table)
        if elsewhere:
            advice = f"Did you mean {elsewhere}?"
    known = ", ".join(here)
    where = f"in [{table.removesuffix('[]')}]" if table else "at the top of the file"
    if len(known) > 90 and advice:
        known = "one of the keys known there"
    faults.add(path, f"an unknown key {quoted(name)} {where}", known, advice)


def _elsewhere(name: str, table: str) -> str:
    """Where a key stands that goes by this name, or by another name of the trade."""
    folded = name.casefold().replace(" ", "").replace("-", "").replace("_", "")
    called = ALSO_CALLED.get(folded)
    if called:
        return called.removeprefix(f"{table}.") if table else called
    for key in KEYS:
        if key.name.replace("_", "") == folded:
            return (
                f"{key.name} under [{key.table.removesuffix('[]')}]"
                if key.table
                else (f"{key.name} at the top of the file, before the first [table]")
            )
    close = nearest(name, ALSO_CALLED)
    return ALSO_CALLED[close] if close else ""
