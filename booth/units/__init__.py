"""Quantities at the door: what a painter types is understood here, what is shown is written here.

Inside the program numbers are plain and in base units. Each name is loaded when it is first asked
for: the list of jobs needs none of it, and the unit registry is loaded by the first entry that needs it.
"""

from __future__ import annotations

import importlib
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from booth.units.display import show, shown_unit, shown_value  # noqa: F401
    from booth.units.kinds import EntryError, Kind, Quantity, System  # noqa: F401
    from booth.units.reading import amount_kind, echo, read, read_amount, understand  # noqa: F401
    from booth.units.systems import system_of  # noqa: F401

_NAMES = {
    "display": ("show", "shown_unit", "shown_value"),
    "kinds": ("EntryError", "Kind", "Quantity", "System"),
    "reading": ("amount_kind", "echo", "read", "read_amount", "understand"),
    "systems": ("system_of",),
}


def __getattr__(name: str) -> Any:
    for module, names in _NAMES.items():
        if name in names:
            found = getattr(importlib.import_module(f"booth.units.{module}"), name)
            globals()[name] = found
            return found
    raise AttributeError(f"booth.units has no {name!r}")
