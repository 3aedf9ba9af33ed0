"""The steps a profile's own file lists: their keys, and what it leaves to the vocabulary."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Any

from booth.files.slug import slug
from booth.profile.model import Step
from booth.profile.step_kinds import MUST, NAMES

__all__ = ["step_key", "step_list"]


def step_list(values: Iterable[Mapping[str, Any]]) -> tuple[Step, ...]:
    """Build steps from kind, name, how and must; the key follows from kind and name."""
    steps: list[Step] = []
    taken: set[str] = set()
    for each in values:
        kind = each["kind"]
        name = each.get("name", NAMES[kind])
        key = step_key(kind, name, taken)
        taken.add(key)
        steps.append(
            Step(
                key=key,
                kind=kind,
                name=name,
                how=each.get("how", ()),
                must=each.get("must", kind in MUST),
            )
        )
    return tuple(steps)


def step_key(kind: str, name: str, taken: Iterable[str]) -> str:
    """Give the key of a step: its kind, or its name for a plain one; numbered where it repeats."""
    base = kind
    if kind == "plain":
        base = slug(name)
        # The keys of the other kinds are theirs, whether or not they are in the list.
        base = f"plain-{base}" if base in NAMES else base
    key, number = base, 1
    while key in taken:
        number += 1
        key = f"{base}-{number}"
    return key
