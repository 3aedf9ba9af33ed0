"""A walk over the public face of the trade, for the tests that hold it to its rules."""

from __future__ import annotations

import ast
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


def published(module: ModuleType) -> set[str]:
    """Give the names a module publishes: what it defines and does not begin with an underscore."""
    imported = {
        alias.asname or alias.name
        for node in ast.walk(ast.parse(Path(module.__file__ or "").read_text("utf-8")))
        if isinstance(node, ast.Import | ast.ImportFrom)
        for alias in node.names
    }
    names = set(getattr(module, "__all__", vars(module))) - imported
    return {name for name in names if not name.startswith("_")}


def public() -> dict[str, object]:
    """Give the functions and classes that the modules publish, by the module that defines them."""
    return {
        f"{module.__name__}.{name}": getattr(module, name)
        for module in MODULES.values()
        for name in published(module)
    }


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
