"""Seen fault -> its causes, ranked by what the job measured.

A cause is claimed only where a figure speaks for it. The rest is listed with 'no figure for or
against', or with the figures that speak against it.
"""

from __future__ import annotations

import difflib
import enum
from dataclasses import dataclass

from booth.trade.faults.evidence import Evidence, Reading, read_sign
from booth.trade.faults.fault_table import FAULTS, Cause, Fault
from booth.trade.result import BadInput

MOST_WEIGHT = 3
#: How alike a mistyped fault has to be to be offered, 0 to 1 (difflib).
ALIKE = 0.5


class Standing(enum.StrEnum):
    """How a cause stands after the figures were looked at."""

    SHOWN = "a figure speaks for it"
    OPEN = "no figure for or against"
    CLEARED = "the figures speak against it"


@dataclass(frozen=True, slots=True)
class RankedCause:
    """A cause with what this job says of it.

    strength: 0 to 1, how usual the cause is times how far its figure is past the limit; 0 unless
    SHOWN. It orders causes and is no probability.
    """

    cause: Cause
    standing: Standing
    strength: float
    figures_for: tuple[Reading, ...]
    figures_against: tuple[Reading, ...]


def fault_named(text: str) -> Fault:
    """Find the fault that a painter means.

    Args:
        text: a key or a name: ``orange peel``, ``runs``, ``fisheye``.

    Returns: the Fault.
    Range: the faults in FAULTS.
    Source: common practice, no source (the trade's names of the faults).

    >>> fault_named("Orange peel").key
    'orange-peel'
    """
    wanted = "-".join(text.lower().replace("-", " ").split())
    for fault in FAULTS.values():
        names = (fault.key, fault.name.replace(" ", "-"), *fault.also)
        if {wanted, f"{wanted}s", wanted.removesuffix("s")}.intersection(names):
            return fault
    starts = [key for key in FAULTS if wanted and (key.startswith(wanted) or wanted in key)]
    if len(starts) == 1:
        return FAULTS[starts[0]]
    close = starts or difflib.get_close_matches(wanted, FAULTS, n=3, cutoff=ALIKE) or list(FAULTS)
    offered = ", ".join(FAULTS[key].name for key in close)
    raise BadInput(f"There is no fault {text!r} here. Did you mean one of: {offered}?")


def rank_causes(fault_key: str, evidence: Evidence) -> tuple[RankedCause, ...]:
    """Give the causes of a fault, those first for which this job's figures speak.

    Args:
        fault_key: key of the fault (see FAULTS).
        evidence: the figures of this job and their limits, each None where there is none.

    Returns: all causes of the fault: first those a figure speaks for, the strongest first; then
        those without a figure, the most usual first; then those the figures speak against. Each
        carries its figures, what to do now and next time, and its source.
    Range: figures point, they do not prove: a cause no figure can speak for (dirt, oil, a wrong
        thinner) is always among the rest, and may be the one.
    Source: FAA-H-8083-31 ch. 8 (common paint troubles); TM 43-0139 p. 5-12; TO 1-1-8 table 4-1;
        Corrosion Engineering: Principles and Practice, table 14.1; else common practice, no source.
        The weights and the strength are common practice, no source.

    >>> job = Evidence(wet_um=90.0, wet_high_um=60.0, efflux_s=20.0, efflux_low_s=18.0)
    >>> first, *rest = rank_causes("runs", job)
    >>> first.cause.words, first.strength
    ('Too much was laid in one coat.', 1.0)
    >>> rest[-1].cause.words, rest[-1].standing.value
    ('The mix is too thin to hold on.', 'the figures speak against it')
    """
    fault = FAULTS.get(fault_key) or fault_named(fault_key)
    ranked = [_weigh(cause, evidence) for cause in fault.causes]
    order = list(Standing)
    return tuple(
        sorted(ranked, key=lambda r: (order.index(r.standing), -r.strength, -r.cause.weight))
    )


def _weigh(cause: Cause, evidence: Evidence) -> RankedCause:
    figures_for: list[Reading] = []
    figures_against: list[Reading] = []
    strongest = 0.0
    for sign in cause.signs:
        read = read_sign(sign, evidence, cause.fallback.get(sign))
        if read is None:
            continue
        reading, strength = read
        (figures_for if strength > 0.0 else figures_against).append(reading)
        strongest = max(strongest, strength)
    if figures_for:
        standing = Standing.SHOWN
    elif figures_against:
        standing = Standing.CLEARED
    else:
        standing = Standing.OPEN
    strength = strongest * cause.weight / MOST_WEIGHT
    return RankedCause(cause, standing, strength, tuple(figures_for), tuple(figures_against))
