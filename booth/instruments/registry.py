"""Finds the instruments: every module of this package that defines a subclass of Instrument."""

from __future__ import annotations

import importlib
import pkgutil
from functools import cache

import booth.instruments
from booth.instruments.base import Instrument

_NOT_INSTRUMENTS = {"base", "desk", "registry"}


@cache
def instruments() -> dict[str, type[Instrument]]:
    """Give kind of step -> instrument. A kind that two instruments claim is a fault of the program."""
    found: dict[str, type[Instrument]] = {}
    for module in pkgutil.iter_modules(booth.instruments.__path__):
        if module.name in _NOT_INSTRUMENTS:
            continue
        loaded = importlib.import_module(f"booth.instruments.{module.name}")
        for thing in vars(loaded).values():
            if isinstance(thing, type) and issubclass(thing, Instrument) and thing.KIND:
                if thing.__module__ != loaded.__name__:
                    continue
                if thing.KIND in found:
                    raise LookupError(f"two instruments for {thing.KIND!r}")
                found[thing.KIND] = thing
    return found


def instrument_for(kind: str) -> type[Instrument]:
    """Give the instrument that serves `kind`; a plain step where none does."""
    known = instruments()
    return known.get(kind, known["plain"])
