"""Everything that can be asked: each public function of the trade, found where it stands.

Nothing is entered here: a function that a module of ``booth.trade`` publishes is a subject.
"""

from __future__ import annotations

import functools
import importlib
import inspect
import pkgutil
from collections.abc import Iterator, Mapping

import booth.trade
from booth.figure.docs import Function
from booth.figure.exceptions import NOT_ASKED, USES
from booth.figure.joined import JOINED
from booth.figure.subject import Subject


def subjects() -> Mapping[str, Subject]:
    return {subject.name: subject for group in groups().values() for subject in group}


def groups() -> Mapping[str, tuple[Subject, ...]]:
    """Give the subjects by the title of their group, in the order of the alphabet."""
    return _groups(tuple(booth.trade.__path__))


@functools.cache
def _groups(path: tuple[str, ...]) -> Mapping[str, tuple[Subject, ...]]:
    titles = {function: title for title, function in _public(path)}
    covered = {each for subject in JOINED for each in subject.functions}
    covered.update(*USES.values())
    made = [
        Subject(function, (function, *USES.get(function.__name__, ())))
        for function in titles
        if function not in covered and function.__name__ not in NOT_ASKED
    ]
    found: dict[str, list[Subject]] = {}
    for subject in sorted((*JOINED, *made), key=lambda each: each.name):
        found.setdefault(titles[subject.functions[0]], []).append(subject)
    return {title: tuple(found[title]) for title in sorted(found)}


def _public(path: tuple[str, ...]) -> Iterator[tuple[str, Function]]:
    """Give the public functions of the trade, each with the title of the folder it stands in."""
    title = ""
    for found in pkgutil.walk_packages(path, "booth.trade."):
        module = importlib.import_module(found.name)
        if found.ispkg or found.name.count(".") == 2:
            title = (module.__doc__ or found.name).partition(":")[0].strip().rstrip(".")
        for name in getattr(module, "__all__", vars(module)):
            function = getattr(module, name)
            own = inspect.isfunction(function) and function.__module__ == module.__name__
            if own and not name.startswith("_"):
                yield title, function
