"""Several runs of one flow cup: mean, spread, and whether the standard calls them suspect."""

from __future__ import annotations

import statistics
from collections.abc import Sequence
from dataclasses import dataclass

from booth.trade.cups.cup_table import Cup
from booth.trade.result import BadInput, require

#: ASTM D4212 12.1: report to the nearest 0.2 s.
REPORT_STEP_S = 0.2
#: ASTM D4212 13.1.1 compares two results, each the mean of two runs.
LEAST_RUNS = 4


@dataclass(frozen=True, slots=True)
class RunStatistics:
    """Runs of one cup.

    mean_s [s]; reported_s: the mean to the nearest 0.2 s, as a standard reports it; spread_s:
    longest less shortest [s]; spread_fraction: spread over mean [1]; suspect: by the standard's
    own criterion, None where it cannot be applied; criterion: which one, or why there is none.
    """

    count: int
    mean_s: float
    reported_s: float
    spread_s: float
    spread_fraction: float
    suspect: bool | None
    criterion: str


def run_statistics(efflux_s: Sequence[float], cup: Cup | None = None) -> RunStatistics:
    """Give the mean and the spread of runs, and judge them where the standard does.

    Args:
        efflux_s: efflux times in the order in which they were timed [s], each above 0; one or more.
        cup: the cup, whose standard may have a criterion.

    Returns: RunStatistics: ``mean = sum / n; spread = longest - shortest``; `suspect` is True or
        False only for four runs or more in a cup whose standard has a criterion.
    Range: the criterion (11 % of the mean) was found for Zahn cups and compares two results, each
        the mean of two runs: runs 1 and 2 against runs 3 and 4, and so on; an odd last run is left
        out of it. Single runs scatter more than means of two, so it is not applied to them. Times
        that rise or fall in a row mean that the liquid changes: solvent leaves or it warms.
    Source: ASTM D4212 12.1 and 13.1.1.

    >>> four = run_statistics([30.0, 31.0, 30.4, 30.8])
    >>> four.mean_s, four.reported_s, round(four.spread_s, 1), four.suspect
    (30.55, 30.6, 1.0, None)
    """
    if not efflux_s:
        raise BadInput("No run was given; at least one efflux time is needed.")
    runs = [require("An efflux time", run, above=0.0, unit="s") for run in efflux_s]
    mean_s = statistics.fmean(runs)
    spread_s = max(runs) - min(runs)
    suspect, criterion = _judge(runs, cup)
    return RunStatistics(
        count=len(runs),
        mean_s=mean_s,
        reported_s=round(round(mean_s / REPORT_STEP_S) * REPORT_STEP_S, 1),
        spread_s=spread_s,
        spread_fraction=spread_s / mean_s,
        suspect=suspect,
        criterion=criterion,
    )


def _judge(runs: list[float], cup: Cup | None) -> tuple[bool | None, str]:
    if cup is None:
        return None, "No cup is named, so no criterion applies."
    limit = cup.repeat_limit_fraction
    if limit is None:
        return None, f"{cup.name}: {cup.repeat_source}"
    if len(runs) < LEAST_RUNS:
        return None, (
            f"{cup.repeat_source} compares two results, each the mean of two runs: "
            f"time {LEAST_RUNS - len(runs)} more to judge by it."
        )
    results = [statistics.fmean(pair) for pair in zip(runs[::2], runs[1::2], strict=False)]
    apart = (max(results) - min(results)) / statistics.fmean(results)
    return apart > limit, (
        f"{cup.repeat_source}: results, each the mean of two runs, are suspect when they differ by "
        f"more than {limit:.0%} of their mean; these differ by {apart:.1%}."
    )
