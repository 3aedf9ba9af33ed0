"""A kind of file: its keys, read strictly from a text, judged in a model, explained to a painter."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any

from booth.files.faults import Fault, Faults, folded, nearest
from booth.toml.key import At, Key
from booth.toml.syntax import parse
from booth.toml.table import Many, Table, Tables

AT_THE_TOP = "at the top of the file, before the first [table]"


@dataclass(frozen=True)
class Document:
    """A kind of file.

    what: as 'a coating profile'; also_called: by path, other words for a key, with blanks between
    them; intro: the lines above its list of keys.
    """

    what: str
    table: Table
    also_called: Mapping[str, str]
    intro: str

    def read(self, text: str, name: str) -> tuple[dict[str, Any], Faults]:
        """Read a text: values by attribute, and all faults; `name` stands for the file."""
        faults = Faults(name, self.what, elsewhere=self._elsewhere)
        return self.table.parse(parse(text, faults), At(faults)) or {}, faults

    def judge(self, model: Any) -> Faults:
        """Judge a model as if it came from a file."""
        faults = Faults("", self.what)
        self.table.judge(model, At(faults))
        return faults

    @cached_property
    def keys(self) -> dict[str, Key]:
        """Every key by its path, dotted and with ``[]`` after a list of tables."""
        return dict(_below(self.table, ""))

    def in_words_of_a_form(self, fault: Fault) -> str:
        """A fault with the label of its row in place of its key."""
        path = re.sub(r"\[\d+\]", "[]", fault.key)
        key = self.keys.get(path)
        label = key.label_for(path.rpartition(".")[2]) if key else fault.key
        return replace(fault, key=label).text

    def reference(self) -> str:
        """Every key as plain text: what it is, what it takes."""
        lines = [self.intro]
        for path, key in self.keys.items():
            above, _, name = path.rpartition(".")
            star = "*" if name.removesuffix("[]") in self.table_at(above).needed else " "
            if table_of(key):
                header = f"[{path}]".replace("[]", "")
                header = f"[{header}]" if path.endswith("[]") else header
                lines += ["", f"{star} {header}  {key.says}"]
            else:
                words = key.one if isinstance(key, Many) else key
                choices = ", ".join(getattr(words, "choices", ()))
                says = f"{key.says}: {choices}" if choices else key.says
                lines += [f"{star} {name} = {key.example}", f"      {says}"]
        return "\n".join(lines) + "\n"

    def table_at(self, path: str) -> Table:
        """Give the table at a path, as ``mix.parts[]``; the whole file where that is empty."""
        table = table_of(self.keys[path]) if path else self.table
        assert table is not None, path
        return table

    def _elsewhere(self, name: str, table: str) -> str:
        """Where a key stands that goes by this name, or by another name of the trade."""
        paths = self._words.get(folded(name))
        if paths:
            here = [path for path in paths if path.startswith(f"{table}.")]
            return here[0].removeprefix(f"{table}.") if here else paths[0]
        for path in self._nearest_the_top:
            above, _, last = path.replace("[]", "").rpartition(".")
            if folded(last) == folded(name):
                return f"{last} under [{above}]" if above else f"{last} {AT_THE_TOP}"
        near = nearest(name, self._words)
        return self._words[near][0] if near else ""

    @cached_property
    def _nearest_the_top(self) -> list[str]:
        """Every key: of tables that stand in several places the one at the top is meant."""
        return sorted(self.keys, key=lambda path: path.count("."))

    @cached_property
    def _words(self) -> dict[str, list[str]]:
        words: dict[str, list[str]] = {}
        for path, others in self.also_called.items():
            for other in others.split():
                words.setdefault(other, []).append(path)
        return words


def table_of(key: Key) -> Table | None:
    """The table that stands under a header of its own, or a list of such; None for what is no table."""
    if isinstance(key, Tables):
        return key.one
    return key if isinstance(key, Table) and not key.example else None


def _below(table: Table, above: str) -> Iterator[tuple[str, Key]]:
    for name, key in table.keys.items():
        path = f"{above}{name}" + "[]" * isinstance(key, Tables)
        yield path, key
        inner = table_of(key)
        if inner:
            yield from _below(inner, f"{path}.")
