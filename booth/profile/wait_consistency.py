"""Waits that cannot be together, and tables that run the wrong way."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from itertools import pairwise
from typing import Any

import msgspec

from booth.files.faults import Faults, Path
from booth.profile.model import AtTemperature, Profile, WaitRule
from booth.profile.sheet_time import sheet_time
from booth.toml.typed import in_unit
from booth.units import Kind

ROUNDED = 0.001

#: (the shorter wait, the longer wait): what is wrong, where a product has them the other way round.
WAITS: dict[tuple[str, str], str] = {
    ("recoat_opens", "recoat_closes"): "a recoat window that closes before it opens",
    ("flash_off", "recoat_closes"): "a recoat window that closes before the flash-off is over",
    ("dust_free", "handle"): "a film that can be handled before it is dust-free",
    ("dust_free", "tape"): "a film that can be taped before it is dust-free",
    ("handle", "cure"): "a film that has cured before it can be handled",
}
NEXT: dict[tuple[str, str], str] = {
    ("opens", "closes"): "a window that closes before it opens",
    ("closes", "or_after"): "a window that opens again before it closes",
    ("opens", "abrade_after"): "a film to be abraded before the window opens",
}
#: How keys are called whose attribute has another name.
KEYS = {"next_products": "next_product"}


def judge_waits(profile: Profile, faults: Faults) -> None:
    """Tell windows that close before they open, and waits that get longer when it gets warmer."""
    _pairs(profile.waits, profile.waits, WAITS, ("waits",), faults)
    for number, each in enumerate(profile.next_products):
        _pairs(each, each, NEXT, ("next_product", number), faults)
    for number, hardener in enumerate(profile.mix.hardeners if profile.mix else ()):
        if hardener.waits is not None:
            path: Path = ("mix", "hardeners", number, "waits")
            _pairs(hardener.waits, profile.waits, WAITS, path, faults)
    for place, rule in _rules(profile, ()):
        _warmer(rule, place, faults)


def _pairs(
    own: Any, usual: Any, order: dict[tuple[str, str], str], path: Path, faults: Faults
) -> None:
    """Compare each pair of waits. own: those at `path`; usual: what holds where one is not there."""
    for (shorter, longer), wrong in order.items():
        if not (getattr(own, shorter) or getattr(own, longer)):
            continue
        first = getattr(own, shorter) or getattr(usual, shorter)
        second = getattr(own, longer) or getattr(usual, longer)
        found = _crossing(first, second, faults) if first and second else ""
        if found:
            key = longer if getattr(own, longer) else shorter
            faults.add((*path, key), f"{wrong}, {found}", f"{longer} later than {shorter}")


def _crossing(first: WaitRule, second: WaitRule, faults: Faults) -> str:
    """Where the first wait is longer than the second one; '' where it nowhere is."""
    places = {(row.at_c, row.at_percent) for rule in (first, second) for row in rule.rows}
    for at_c, percent in sorted(places, key=lambda place: (place[0] or 0.0, place[1] or 0.0)):
        one, other = _at(first, at_c, percent), _at(second, at_c, percent)
        # A range against a range: the least of what opens, the most of what closes.
        if one is None or other is None or one[0] <= other[1] * (1 + ROUNDED):
            continue
        unit = faults.units.get(Kind.TEMPERATURE, "")
        where = in_unit(at_c or 0.0, Kind.TEMPERATURE, unit)
        where += f" and {percent:g} %" if percent is not None else ""
        return f"at {where}: {sheet_time(one[0])} and {sheet_time(other[1])}"
    return ""


def _series(rule: WaitRule) -> dict[float | None, list[AtTemperature]]:
    """The rows of a rule by their humidity."""
    found: dict[float | None, list[AtTemperature]] = defaultdict(list)
    for row in rule.rows:
        if row.at_c is not None:
            found[row.at_percent].append(row)
    return found


def _at(rule: WaitRule, at_c: float | None, percent: float | None) -> tuple[float, float] | None:
    """Least and most [s] at a temperature: of a row, or on the line between two; None outside."""
    series = _series(rule)
    rows = series.get(percent, next(iter(series.values())) if len(series) == 1 else [])
    if at_c is None:
        return None
    for row in rows:
        if row.at_c is not None and abs(row.at_c - at_c) < 0.05:
            return row.time_s, row.most_s
    for low, high in pairwise(rows):
        if low.at_c is not None and high.at_c is not None and low.at_c < at_c < high.at_c:
            share = (at_c - low.at_c) / (high.at_c - low.at_c)
            return (
                low.time_s + share * (high.time_s - low.time_s),
                low.most_s + share * (high.most_s - low.most_s),
            )
    return None


def _warmer(rule: WaitRule, path: Path, faults: Faults) -> None:
    """No wait is longer in the warm: what dries and what reacts is faster then."""
    for rows in _series(rule).values():
        for cold, warm in pairwise(rows):
            longer = 1 + ROUNDED
            if warm.time_s <= cold.time_s * longer and warm.most_s <= cold.most_s * longer:
                continue
            unit = faults.units.get(Kind.TEMPERATURE, "")
            ends = (in_unit(row.at_c or 0.0, Kind.TEMPERATURE, unit) for row in (warm, cold))
            found = f"{sheet_time(warm.most_s)} at {next(ends)} after {sheet_time(cold.most_s)} at {next(ends)}"
            place = (*path, "table", rule.rows.index(warm), "time")
            expected = "no longer time where it is warmer"
            faults.add(place, found, expected, "Check temperatures and times.")


def _rules(value: Any, path: Path) -> Iterator[tuple[Path, WaitRule]]:
    """Every wait of a profile, with its place in the file."""
    if isinstance(value, WaitRule):
        yield path, value
    elif isinstance(value, tuple):
        for number, each in enumerate(value):
            yield from _rules(each, (*path, number))
    elif isinstance(value, msgspec.Struct):
        for name in value.__struct_fields__:
            yield from _rules(getattr(value, name), (*path, KEYS.get(name, name)))
