"""Tables of keys, and lists: read strictly, judged, written."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any

import msgspec

from booth.files.faults import Path, dotted, in_words, nearest, quoted
from booth.toml.key import At, Key, Text
from booth.toml.syntax import SET_ASIDE
from booth.units import System

MOST_ITEMS = 60
#: So many unknown keys of one table are told; more is another kind of file.
MOST_UNKNOWN = 20
#: So many characters of known keys are told beside a 'did you mean'.
MOST_KNOWN = 90


@dataclass(frozen=True)
class Table(Key):
    """A table of keys, by their names.

    make: the model's own kind of thing, which holds their values; a key that this cannot be made
    without is needed, and so are those of `needs`.
    """

    keys: Mapping[str, Key] = field(default_factory=dict, kw_only=True)
    make: Callable[..., Any] = field(default=dict, kw_only=True)
    needs: tuple[str, ...] = field(default=(), kw_only=True)
    called = "a table"

    @cached_property
    def needed(self) -> frozenset[str]:
        """The names of the keys that must be there."""
        made: Any = self.make
        fields = msgspec.structs.fields(made) if issubclass(made, msgspec.Struct) else ()
        required = {attribute.name for attribute in fields if attribute.required}
        names = [name for name, kept_as in self.attributes.items() if kept_as in required]
        return frozenset((*names, *self.needs))

    @cached_property
    def attributes(self) -> dict[str, str]:
        """Where the model keeps each key, by the key's name."""
        return {name: key.kept_as(name) for name, key in self.keys.items()}

    def read(self, value: Any, at: At) -> Any:
        """Read a table; None where it, or a key that it must have, could not be read.

        What could be read is given although something else was a fault: it is judged further.
        """
        values = self.parse(value, at)
        if values is None or any(self.attributes[name] not in values for name in self.needed):
            return None
        return self.make(**values)

    def parse(self, value: Any, at: At) -> dict[str, Any] | None:
        """Read its keys: their values by attribute, those with a fault left out."""
        if not isinstance(value, dict):
            at.add(in_words(value), f"a table: [{_header(at.path)}] and its keys below")
            return None
        parsed = {
            self.attributes[name]: key.read(value[name], at[name])
            for name, key in self.keys.items()
            if name in value
        }
        meant = self._unknown((name for name in value if name not in self.keys), at)
        for name in self.keys:
            # What is there under another name was told; what stood in a line set aside may be there.
            if name in self.needed and at.faults.whole and name not in value and name not in meant:
                self.missing(name, at)
        return {attribute: kept for attribute, kept in parsed.items() if kept is not None}

    def missing(self, name: str, at: At) -> None:
        """Tell that a key is not there."""
        key = self.keys[name]
        header = f"[{_header((*at.path, name))}]"
        header = f"[{header}]" if isinstance(key, Tables) else header
        line = f"{name} = {key.example}" if key.example else header
        at[name].add("nothing", f"{name}: {key.says}", f"Write {line}.")

    def _unknown(self, names: Iterable[str], at: At) -> set[str]:
        """Tell unknown keys; give the known ones that they are taken for."""
        meant: set[str] = set()
        table = _header(at.path)
        where = f"in [{table}]" if table else "at the top of the file"
        if not at.faults.whole:
            names = (name for name in names if not name.startswith(SET_ASIDE))
        for name in list(names)[:MOST_UNKNOWN]:
            near = nearest(name, self.keys)
            meant |= {near} if near else set()
            near = near or at.faults.elsewhere(name, table)
            known = ", ".join(self.keys)
            if near and len(known) > MOST_KNOWN:
                known = "one of the keys known there"
            advice = f"Did you mean {near}?" if near else ""
            at[name].add(f"an unknown key {quoted(name)} {where}", known, advice)
        return meant

    def judge(self, value: Any, at: At, found: str = "") -> None:
        for name, key in self.keys.items():
            item = getattr(value, self.attributes[name])
            if item is not None and (name in self.needed or item != key.unsaid):
                key.judge(item, at[name])

    def write(self, value: Any, system: System) -> dict[str, Any]:
        table = {}
        for name, key in self.keys.items():
            item = getattr(value, self.attributes[name])
            if item is not None and item != key.unsaid:
                table[name] = key.write(item, system)
        return table


def _header(path: Path) -> str:
    """The name of a table as it stands in its header."""
    return dotted(tuple(part for part in path if isinstance(part, str)))


@dataclass(frozen=True)
class Many(Key):
    """A list of what `one` takes. make: what the model keeps of it; once: nothing stands in it twice."""

    unsaid: Any = field(default=(), kw_only=True)
    one: Key = field(default=Text(example='"a line"'), kw_only=True)
    make: Callable[[list[Any]], tuple[Any, ...]] = field(default=tuple, kw_only=True)
    once: bool = field(default=False, kw_only=True)
    called = "a list"

    def parse(self, value: Any, at: At) -> Any:
        if not isinstance(value, list):
            return self.no_list(value, at)
        if self._too_many(value, at):
            return None
        items = [self.one.read(item, at[number]) for number, item in enumerate(value)]
        return None if any(item is None for item in items) else self.make(items)

    def no_list(self, value: Any, at: At) -> None:
        """Tell that a value is no list."""
        text = isinstance(value, str)
        advice = f"Put it in square brackets: {at.path[-1]} = [{quoted(value)}]." if text else ""
        self.refuse(value, at, advice)

    def judge(self, value: Any, at: At, found: str = "") -> None:
        if self._too_many(value, at):
            return
        for number, item in enumerate(value):
            self.one.judge(item, at[number])
            if self.once and item in value[:number]:
                at[number].add(f'"{item}" a second time', "each once", "Delete one.")

    @staticmethod
    def _too_many(value: Any, at: At) -> bool:
        if len(value) > MOST_ITEMS:
            at.add(f"a list of {len(value)}", f"at most {MOST_ITEMS}")
        return len(value) > MOST_ITEMS

    def write(self, value: Any, system: System) -> list[Any]:
        return [self.one.write(item, system) for item in value]


@dataclass(frozen=True)
class Tables(Many):
    """A list of tables, ``[[name]]`` once for each."""

    one: Table = field(default=Table(), kw_only=True)

    def read(self, value: Any, at: At) -> Any:
        """Read them as ``Table.read`` does: the fault of one does not hide what the others say."""
        return self.parse(value, at)

    def no_list(self, value: Any, at: At) -> None:
        expected = f"a list of tables: [[{_header(at.path)}]] and its keys below, once for each"
        advice = "Double the square brackets." if isinstance(value, dict) else ""
        at.add(in_words(value), expected, advice)
