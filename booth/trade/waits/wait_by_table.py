"""Waits from a data sheet's own table by temperature: it wins over any rule of thumb."""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence

from booth.trade.result import BadInput, Outside, require
from booth.trade.waits.wait_by_rule import RECOAT_HALVES_PER_K, scaled_s
from booth.trade.waits.wait_time import SCALING_RANGE_C, WaitTime

__all__ = ["wait_from_table"]

#: How far beyond its last row a table is carried, by estimate. Common practice, no source.
BEYOND_K = 5.0

TABLE_RULE = "the data sheet's table"


def _rows(rows: Sequence[tuple[float, float]]) -> list[tuple[float, float]]:
    if len(rows) < 2:
        raise BadInput("A table needs two rows or more: a temperature and a time in each.")
    for at_c, time_s in rows:
        require("A temperature of the table", at_c, unit="C")
        require("A time of the table", time_s, above=0.0, unit="s")
    for (colder, _), (warmer, _) in itertools.pairwise(rows):
        if not colder < warmer:
            raise BadInput(
                f"The table's temperatures must rise from row to row; {warmer:g} C follows "
                f"{colder:g} C."
            )
    return [(float(at_c), float(time_s)) for at_c, time_s in rows]


def _beyond(
    edge: tuple[float, float], part_c: float, closes: bool, rows: list[tuple[float, float]]
) -> WaitTime | Outside:
    edge_c, edge_s = edge
    low, high = SCALING_RANGE_C
    if abs(part_c - edge_c) > BEYOND_K or not low <= part_c <= high:
        return Outside(
            f"Today's {part_c:g} C lies outside the data sheet's table, which goes from "
            f"{rows[0][0]:g} to {rows[-1][0]:g} C.",
            "Ask the product's supplier for this temperature; let a touch test decide.",
            TABLE_RULE,
        )
    likely = scaled_s(edge_s, edge_c, part_c, RECOAT_HALVES_PER_K)
    ends = (likely, edge_s)
    return WaitTime(
        seconds=min(ends) if closes else max(ends),
        estimate=True,
        likely_s=likely,
        low_s=min(ends),
        high_s=max(ends),
        rule=f"{TABLE_RULE}, beyond its row for {edge_c:g} C: halves for each 17.5 F up",
    )


def wait_from_table(
    rows: Sequence[tuple[float, float]], part_c: float, *, closes: bool = False
) -> WaitTime | Outside:
    """Give a wait at today's temperature from a data sheet's table.

    Args:
        rows: temperature [degC] and time [s] of each row, temperatures rising, two or more.
        part_c: temperature of the part (of the mix, for pot life) [degC].
        closes: True for a window that closes, False for a wait that opens.

    Returns: WaitTime; no estimate within the table (between rows the band is the two rows). Up to 5
        C beyond the table an estimate: a wait that opens is never shorter than the last row, a
        window that closes never longer. Outside farther beyond.
    Range: the table's own, and 5 C beyond it as long as that is 5 to 40 C.
    Source: the product's data sheet; between rows log-linear, as the halving of UFGS 09971 3.7.1.3
        is; beyond, the halving fitted to its recoat minima.

    >>> sheet = ((10.0, 4800.0), (20.0, 2400.0), (30.0, 1200.0))
    >>> wait_from_table(sheet, 20.0).seconds
    2400.0
    >>> round(wait_from_table(sheet, 25.0).seconds)
    1697
    >>> wait_from_table(sheet, 33.0).seconds  # warmer than the table: no shorter
    1200.0
    """
    checked = _rows(rows)
    require("The temperature today", part_c, unit="C")
    if part_c < checked[0][0]:
        return _beyond(checked[0], part_c, closes, checked)
    if part_c > checked[-1][0]:
        return _beyond(checked[-1], part_c, closes, checked)
    for at_c, time_s in checked:
        if part_c == at_c:
            return WaitTime(time_s, False, time_s, time_s, time_s, f"{TABLE_RULE}, {at_c:g} C")
    (colder, slow), (warmer, quick) = next(
        pair for pair in itertools.pairwise(checked) if pair[0][0] < part_c < pair[1][0]
    )
    share = (part_c - colder) / (warmer - colder)
    low, high = sorted((slow, quick))
    between = slow * math.exp(share * math.log(quick / slow))
    between = min(max(between, low), high)
    return WaitTime(
        seconds=between,
        estimate=False,
        likely_s=between,
        low_s=low,
        high_s=high,
        rule=f"{TABLE_RULE}, between {colder:g} and {warmer:g} C",
    )
