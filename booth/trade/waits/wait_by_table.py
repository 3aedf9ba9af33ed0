"""Waits from a data sheet's own table by temperature: it wins over any rule of thumb."""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from booth.trade.result import BadInput, Outside, Said, require
from booth.trade.waits.wait_by_rule import RECOAT_HALVES_PER_K, recoat_closes_at, scaled_s
from booth.trade.waits.wait_time import (
    SCALING_RANGE_C,
    THERMOMETER_C,
    Certainty,
    WaitTime,
    as_given,
)

__all__ = ["HumidRow", "wait_from_humid_table", "wait_from_table"]

#: How far beyond its last row a table is carried, by estimate. Common practice, no source.
BEYOND_K = 5.0

TABLE_RULE = "the data sheet's table"


def _rows(rows: Sequence[tuple[float, float]], closes: bool) -> list[tuple[float, float]]:
    if len(rows) < 2:
        raise BadInput("A table needs two rows or more: a temperature and a time in each.")
    for at_c, time_s in rows:
        require("A temperature of the table", at_c, unit="C")
        require("A time of the table", time_s, above=0.0, unit="s")
    for (colder, _), (warmer, _) in itertools.pairwise(rows):
        if not colder < warmer:
            raise BadInput(
                f"The table's temperatures must rise from row to row; {Said(warmer, 'C')} follows "
                f"{Said(colder, 'C')}."
            )
    times = [float(time_s) for _, time_s in rows]
    # Where a table runs the wrong way: colder never opens earlier, warmer never closes later.
    if closes:
        times = list(itertools.accumulate(times, min))
    else:
        times = list(itertools.accumulate(reversed(times), max))[::-1]
    return [(float(at_c), time_s) for (at_c, _), time_s in zip(rows, times, strict=True)]


def _closes_beyond(edge: tuple[float, float], part_c: float) -> WaitTime:
    """Hotter than the table shorter still, colder no longer than its first row."""
    edge_c, edge_s = edge
    seconds = min(recoat_closes_at(edge_s, edge_c, part_c).seconds, edge_s)
    rule = f"{TABLE_RULE}, beyond its row for {Said(edge_c, 'C')}"
    return as_given(seconds, rule, Certainty.AT_MOST)


def _opens_beyond(
    edge: tuple[float, float], part_c: float, rows: list[tuple[float, float]]
) -> WaitTime | Outside:
    edge_c, edge_s = edge
    low, high = SCALING_RANGE_C
    if abs(part_c - edge_c) > BEYOND_K or not low <= part_c <= high:
        return Outside(
            f"Today's {Said(part_c, 'C')} lies outside the data sheet's table, which goes from "
            f"{Said(rows[0][0], 'C')} to {Said(rows[-1][0], 'C')}.",
            "Ask the product's supplier for this temperature.",
            TABLE_RULE,
        )
    likely = scaled_s(edge_s, edge_c, part_c, RECOAT_HALVES_PER_K)
    ends = (likely, edge_s)
    halves = f"halves for each {Said(RECOAT_HALVES_PER_K, 'K')} up"
    rule = f"{TABLE_RULE}, beyond its row for {Said(edge_c, 'C')}: {halves}"
    return WaitTime(max(ends), Certainty.ESTIMATED, likely, min(ends), max(ends), rule)


def wait_from_table(
    rows: Sequence[tuple[float, float]], part_c: float, *, closes: bool = False
) -> WaitTime | Outside:
    """Give a wait at today's temperature from a data sheet's table.

    Args:
        rows: temperature [degC] and time [s] of each row, temperatures rising, two or more.
        part_c: temperature of the part (of the mix, for pot life) [degC].
        closes: True for a window that closes, False for a wait that opens. A row that is longer
            than a colder one counts for the colder one too (shorter and warmer, for a closing).

    Returns: WaitTime; known within the table (between rows the band is the two rows). Beyond it a
        wait that opens is an estimate for 5 C more, never shorter than the last row, and then
        Outside; a window that closes is 'at most': its first row, or less than its last.
    Range: the table's own, and 5 C beyond it as long as that is 5 to 40 C.
    Source: the product's data sheet; between rows log-linear, as the halving of UFGS 09971 (old
        edition) 3.7.1.3 is; beyond, the halving fitted to its recoat minima.

    >>> sheet = ((10.0, 4800.0), (20.0, 2400.0), (30.0, 1200.0))
    >>> wait_from_table(sheet, 20.0).seconds
    2400.0
    >>> round(wait_from_table(sheet, 25.0).seconds)
    1697
    >>> wait_from_table(sheet, 33.0).seconds  # warmer than the table: no shorter
    1200.0
    """
    checked = _rows(rows, closes)
    require("The temperature today", part_c, *THERMOMETER_C, unit="C")
    if not checked[0][0] <= part_c <= checked[-1][0]:
        edge = checked[0] if part_c < checked[0][0] else checked[-1]
        return _closes_beyond(edge, part_c) if closes else _opens_beyond(edge, part_c, checked)
    for at_c, time_s in checked:
        if part_c == at_c:
            return as_given(time_s, f"{TABLE_RULE}, {Said(at_c, 'C')}")
    (colder, slow), (warmer, quick) = next(
        pair for pair in itertools.pairwise(checked) if pair[0][0] < part_c < pair[1][0]
    )
    share = (part_c - colder) / (warmer - colder)
    low, high = sorted((slow, quick))
    between = slow * math.exp(share * math.log(quick / slow))
    between = min(max(between, low), high)
    return WaitTime(
        seconds=between,
        certainty=Certainty.KNOWN,
        likely_s=between,
        low_s=low,
        high_s=high,
        rule=f"{TABLE_RULE}, between {Said(colder, 'C')} and {Said(warmer, 'C')}",
    )


@dataclass(frozen=True, slots=True)
class HumidRow:
    """One row of a table by temperature [degC] and relative humidity [%]: how long [s]."""

    at_c: float
    humidity_percent: float
    time_s: float


def wait_from_humid_table(
    rows: Sequence[HumidRow],
    part_c: float,
    humidity_percent: float,
    *,
    closes: bool = False,
) -> WaitTime | Outside:
    """Give a wait in today's air from a data sheet's table by temperature and humidity.

    Args:
        rows: temperature [degC], relative humidity [%] and time [s] of each row, two or more for a
            humidity.
        part_c: temperature of the part [degC].
        humidity_percent: today's relative humidity [%], 0 to 100.
        closes: True for a window that closes, False for a wait that opens.

    Returns: WaitTime of the column for the next damper air (for a window that closes, the next
        drier). Outside where the air is damper than every column.
    Range: the table's own humidities; temperatures as for wait_from_table.
    Source: the product's data sheet; that the damper column is taken is the careful reading.

    >>> dry = (HumidRow(15.0, 50.0, 3600.0), HumidRow(25.0, 50.0, 1800.0))
    >>> damp = (HumidRow(15.0, 80.0, 9000.0), HumidRow(25.0, 80.0, 5400.0))
    >>> wait_from_humid_table((*dry, *damp), 25.0, 60.0).seconds
    5400.0
    """
    require("The humidity today", humidity_percent, 0.0, 100.0, unit="%")
    columns = sorted({row.humidity_percent for row in rows})
    if not columns:
        raise BadInput("The table has no rows.")
    if humidity_percent > columns[-1] and not closes:
        return Outside(
            f"Today's {humidity_percent:g} % lies above the data sheet's table, which goes to "
            f"{columns[-1]:g} %.",
            "Dry the air or wait for a better day.",
            TABLE_RULE,
        )
    # The next damper column, and no drier one that is longer; for a closing the other way round.
    if closes:
        column = max((each for each in columns if each <= humidity_percent), default=columns[0])
        counted = [each for each in columns if each >= column]
    else:
        column = min(each for each in columns if each >= humidity_percent)
        counted = [each for each in columns if each <= column]
    found = [
        wait_from_table(
            sorted((row.at_c, row.time_s) for row in rows if row.humidity_percent == each),
            part_c,
            closes=closes,
        )
        for each in counted
    ]
    times = [each for each in found if isinstance(each, WaitTime)]
    if len(times) < len(found):
        return next(each for each in found if isinstance(each, Outside))
    answer = (min if closes else max)(times, key=lambda each: each.seconds)
    return replace(answer, rule=f"{answer.rule}, column for {column:g} %")
