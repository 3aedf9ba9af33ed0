"""A walk over the public face of the trade, for the tests that hold it to its rules."""

from __future__ import annotations

import dataclasses
import importlib
import inspect
import pkgutil
from pathlib import Path
from types import FunctionType, ModuleType

import booth.trade

PACKAGE = Path(booth.trade.__file__).parent

MODULES: dict[str, ModuleType] = {
    module.name.removeprefix("booth.trade."): importlib.import_module(module.name)
    for module in pkgutil.walk_packages(booth.trade.__path__, "booth.trade.")
    if not module.ispkg
}


def public() -> dict[str, object]:
    """Give what the modules publish, each once, by the module that defines it."""
    found: dict[str, object] = {}
    for name, module in MODULES.items():
        for each in getattr(module, "__all__", ()):
            one = getattr(module, each)
            home = getattr(one, "__module__", None) or f"booth.trade.{name}"
            found[f"{home}.{getattr(one, '__qualname__', each)}"] = one
    return found


FUNCTIONS: dict[str, FunctionType] = {
    name: each for name, each in public().items() if isinstance(each, FunctionType)
}
RESULTS: dict[str, type] = {
    name: each
    for name, each in public().items()
    if isinstance(each, type) and dataclasses.is_dataclass(each)
}


def parameters(function: FunctionType) -> list[inspect.Parameter]:
    """Give the parameters of a function."""
    return list(inspect.signature(function).parameters.values())
