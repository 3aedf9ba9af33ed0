"""What makes the opening of a job one that cannot be worked with, however well it reads. Pure.

A log can be written by hand, damaged, or of another program: what the screens would stumble over is
told here once, when the log is read, instead of by each of them.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from functools import lru_cache
from typing import Any

import msgspec

from booth.files.faults import quoted
from booth.log.events import JobOpened
from booth.profile.model import Profile, Range, WaitRule
from booth.trade.cups.cup_names import cup_named
from booth.trade.result import BadInput
from booth.units import System

MOST_PARTS = 200
MOST_COATS = 50
MOST_ROWS = 60
MOST_STEPS = 200
SYSTEMS = tuple(system.value for system in System)
#: No figure of a data sheet is larger in its base unit; a year is 3.2e7 s.
HIGHEST = 1e8
#: Figures above this are not written out.
BEYOND = 1e15


def oddities(opened: JobOpened) -> tuple[str, ...]:
    """Give what is odd, each as ``key is …``; nothing where the job can be worked with."""
    return (*_of_job(opened), *_of_profile(opened.profile))


def _of_job(opened: JobOpened) -> Iterator[str]:
    if not 1 <= len(opened.parts) <= MOST_PARTS:
        yield f"parts has {len(opened.parts)} names; 1 to {MOST_PARTS} are possible"
    if not all(part.strip() for part in opened.parts):
        yield "parts has a blank name"
    if len(set(opened.parts)) < len(opened.parts):
        ((twice, _),) = Counter(opened.parts).most_common(1)
        yield f"parts has the name {quoted(twice)} more than once"
    if opened.system not in SYSTEMS:
        yield f"system is {quoted(opened.system)}; {' or '.join(SYSTEMS)} is possible"
    if not isinstance(opened.shop.get("guns", ()), list | tuple):
        yield "shop.guns is no list"


@lru_cache(maxsize=256)  # many jobs have the same profile
def _of_profile(profile: Profile) -> tuple[str, ...]:
    return (*_of_rules(profile), *_of_figures("profile", profile))


def _of_rules(profile: Profile) -> Iterator[str]:
    coats, mix = profile.film.coats, profile.mix
    if not 1 <= coats <= MOST_COATS:
        yield f"profile.film.coats is {_shown(coats)}; 1 to {MOST_COATS} is possible"
    if mix is not None and mix.by not in ("volume", "weight"):
        yield f"profile.mix.by is {quoted(mix.by)}; volume or weight is possible"
    if mix is not None and not all(part.parts > 0 for part in mix.parts):
        yield "profile.mix.parts has a component of no parts"
    if profile.efflux is not None and not _is_known_cup(profile.efflux.cup):
        yield f"profile.efflux.cup is {quoted(profile.efflux.cup)}, no cup that is known here"
    keys = [step.key for step in profile.steps]
    if len(keys) > MOST_STEPS or len(set(keys)) < len(keys) or not all(keys):
        yield f"profile.steps has steps without keys of their own, or more than {MOST_STEPS}"


def _is_known_cup(name: str) -> bool:
    try:
        cup_named(name)
    except BadInput:
        return False
    return True


def _shown(figure: float) -> str:
    # A whole number of a log may have thousands of digits, which no format takes.
    return f"{figure:.15g}" if abs(figure) < BEYOND else "beyond all reason"


def _of_figures(path: str, value: Any) -> Iterator[str]:
    """Walk through every figure, range and table below `path`."""
    if isinstance(value, bool | str) or value is None:
        return
    if isinstance(value, int | float):
        least = -HIGHEST if path.endswith("_c") else 0
        if not least <= value <= HIGHEST or (value == 0 and path.endswith("density_g_ml")):
            yield f"{path} is {_shown(value)}"
        return
    if isinstance(value, Range):
        low, high = value.low, value.high
        if low is None and high is None:
            yield f"{path} has neither low nor high"
        elif low is not None and high is not None and low > high:
            yield f"{path} is upside down, {low:.12g} to {high:.12g}"
    if isinstance(value, WaitRule):
        rows = [row.at_c for row in value.rows]
        if not 1 <= len(rows) <= MOST_ROWS:
            yield f"{path}.rows has {len(rows)} rows; 1 to {MOST_ROWS} are possible"
        elif rows != sorted(set(rows)):
            yield f"{path}.rows does not go from cold to warm"
    if isinstance(value, tuple):
        for number, each in enumerate(value):
            yield from _of_figures(f"{path}[{number}]", each)
    elif isinstance(value, msgspec.Struct):
        # A range of temperatures is named as one figure is.
        ending = "_c" if isinstance(value, Range) and path.endswith("_c") else ""
        for name in value.__struct_fields__:
            yield from _of_figures(f"{path}.{name}{ending}", getattr(value, name))
