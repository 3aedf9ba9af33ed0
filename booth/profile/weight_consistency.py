"""Parts by weight beside parts by volume: with the densities they have to be one and the same mix.

Parts by volume are what the sheet prescribes, and exact. Weights and densities are rounded: each may
be off by half a unit of the last digit that is written (the range of rounding, ISO 80000-1 Annex B,
edition from memory). What that explains is no difference; nothing else is allowed for.
"""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import suppress

import msgspec

from booth.files.faults import Faults, Path
from booth.profile.model import Hardener, Mix, MixPart
from booth.toml.typed import number_in, unit_for
from booth.trade.mixing.components import Component, Measure, pour_shares
from booth.trade.result import BadInput
from booth.units import Kind, System

#: A number forgets the zeros at its end: a density of 1 may have been written 1.0, hardly 1.
LEAST_DECIMALS = 1


class _Ends(msgspec.Struct, frozen=True):
    """What a rounded number may have been."""

    low: float
    high: float


def judge_weights(mix: Mix, faults: Faults) -> None:
    """Note where weights differ from volumes times densities by more than rounding explains."""
    if mix.by != "volume" or len(mix.parts) < 2:
        return
    with suppress(BadInput):  # what no mix can be is told as a fault
        _judge(mix, faults)


def _judge(mix: Mix, faults: Faults) -> None:
    first, *others = mix.parts
    for number, part in enumerate(others, 1):
        _compare(first, part, ("mix", "parts", number, "parts_by_weight"), faults)
    for number, hardener in enumerate(mix.hardeners):
        if hardener.parts_by_weight is not None:
            own = _as_part(hardener, mix.parts[-1])
            _compare(first, own, ("mix", "hardeners", number, "parts_by_weight"), faults)


def _as_part(hardener: Hardener, usual: MixPart) -> MixPart:
    return MixPart(
        hardener.name,
        hardener.parts or usual.parts,
        hardener.density_g_ml or usual.density_g_ml,
        hardener.parts_by_weight,
    )


def _compare(first: MixPart, part: MixPart, at: Path, faults: Faults) -> None:
    both = (first, part)
    weights = [each.parts_by_weight for each in both if each.parts_by_weight is not None]
    densities = [each.density_g_ml for each in both if each.density_g_ml is not None]
    if len(weights) < 2 or len(densities) < 2:
        return
    told = [_rounded(each, f"{each:g}", 0) for each in weights]
    dense = [_density(each) for each in densities]
    # The parts of this one to 100 of the first.
    low, high = (
        _by_weight(both, ends)
        for ends in ((dense[0].high, dense[1].low), (dense[0].low, dense[1].high))
    )
    least, most = 100 * told[1].low / told[0].high, 100 * told[1].high / told[0].low
    if least <= high and low <= most:
        return
    per_100 = _by_weight(both, densities)
    faults.note(
        at,
        f"{weights[0]:g} : {weights[1]:g} by weight",
        f"about {weights[0]:g} : {weights[0] * per_100 / 100:.3g}, which {first.parts:g} : "
        f"{part.parts:g} by volume come to with these densities",
        "More than rounding explains: look at parts and densities again.",
    )


def _by_weight(both: Sequence[MixPart], densities: Sequence[float]) -> float:
    """Parts by weight of the second to 100 of the first, from their parts by volume."""
    parts = [Component(e.name, e.parts, d) for e, d in zip(both, densities, strict=True)]
    first, second = pour_shares(parts, Measure.VOLUME, Measure.WEIGHT)
    return 100 * second / first


def _density(value: float) -> _Ends:
    """In the unit in which it was typed, as far as that can be told: 12.1 lb/gal has one decimal."""
    unit = unit_for((value,), Kind.DENSITY, System.METRIC)
    number = number_in(unit, value, Kind.DENSITY)
    ends = _rounded(float(number), number, LEAST_DECIMALS)
    scale = value / float(number)
    return _Ends(ends.low * scale, ends.high * scale)


def _rounded(value: float, written: str, least: int) -> _Ends:
    decimals = len(written.partition(".")[2]) if "e" not in written else 0
    half = 0.5 * 10 ** -max(decimals, least)
    return _Ends(max(value - half, value * 1e-3), value + half)
