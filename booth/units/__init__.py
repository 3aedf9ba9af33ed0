"""Quantities at the door: what a painter types is understood here, what is shown is written here.

Inside the program numbers are plain and in base units. Importing this package does not load the
unit registry; ``warm()`` does, in a thread once the first frame is on the screen.
"""

from __future__ import annotations

from booth.units.display import show, shown_unit, shown_value
from booth.units.entry import EntryError, Quantity
from booth.units.kinds import Kind, System
from booth.units.reading import amount_kind, echo, read, read_amount
from booth.units.registry import warm

__all__ = [
    "EntryError",
    "Kind",
    "Quantity",
    "System",
    "amount_kind",
    "echo",
    "read",
    "read_amount",
    "show",
    "shown_unit",
    "shown_value",
    "warm",
]
