"""Finds the instruments: every module of this package that defines one. Nothing else lists them."""

from __future__ import annotations

import importlib
import pkgutil
from functools import cache

import booth.instruments
from booth.bench.instrument import Instrument

#: The instrument of a step that no other one serves.
PLAIN = "plain"


@cache
def instruments() -> dict[str, Instrument]:
    """Give kind of step -> instrument. A kind that two instruments claim is a fault of the program."""
    found: dict[str, Instrument] = {}
    for module in pkgutil.walk_packages(booth.instruments.__path__, "booth.instruments."):
        own = vars(importlib.import_module(module.name)).values()
        for thing in (each for each in own if getattr(each, "__module__", "") == module.name):
            if isinstance(thing, type) and issubclass(thing, Instrument) and thing.KIND:
                if thing.KIND in found:
                    raise LookupError(f"two instruments for {thing.KIND!r}")
                found[thing.KIND] = thing()
    return found


def instrument_for(kind: str) -> Instrument:
    """Give the instrument that serves `kind`; a plain step where none does."""
    known = instruments()
    return known.get(kind, known[PLAIN])
