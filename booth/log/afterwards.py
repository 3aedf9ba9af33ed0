"""What is kept of a job after it was closed: how it looks later, what was done to it since. Pure.

None of it reopens the job: it stands behind the closing. See ``events``, which has all kinds.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import ClassVar

from booth.log.opening import Event


class JudgedAgain(Event, frozen=True, tag="judged again"):
    """The job was looked at again, the next morning say: verdict 'good', 'usable' or 'redo', or
    empty where it stays as it was; words; what to change next time."""

    verdict: str
    words: str = ""
    next_time: str = ""


class FinishedLater(Event, frozen=True, tag="finished later"):
    """What was done to the film, or came about in it, since: work is one of WORKS; part: on which
    part, blank: on all."""

    WORKS: ClassVar[tuple[str, ...]] = ("sanded", "polished", "cured", "baked")

    work: str
    part: str = ""


class LeftOut(Event, frozen=True, tag="left out"):
    """Nothing is learnt from the job from here on, and its settings are no last good ones: reason is
    one of REASONS, or the painter's own words."""

    REASONS: ClassVar[tuple[str, ...]] = (
        "a trial, not a real job",
        "a figure in it was typed wrongly",
        "something was broken or dirty",
        "a bad can of the product",
        "gun, hose or compressor were others",
    )

    reason: str = ""


class TakenIn(Event, frozen=True, tag="taken in"):
    """The job counts again in what is learnt."""


def left_out(live: Iterable[object]) -> str | None:
    """Why nothing is learnt from the job; None where it counts."""
    reason = None
    for each in live:
        if isinstance(each, LeftOut):
            reason = each.reason
        elif isinstance(each, TakenIn):
            reason = None
    return reason


def later_verdicts(live: Iterable[object], closed: Event | None) -> tuple[JudgedAgain, ...]:
    """The verdicts behind the closing that counts, in their order: of a job that is open, none."""
    if closed is None:
        return ()
    return tuple(each for each in live if isinstance(each, JudgedAgain) and each.n > closed.n)


def verdict_now(live: Iterable[object], closed: Event | None, first: str) -> str:
    """The verdict that counts: the latest that says one, else the `first`, of the closing."""
    said = [each.verdict for each in later_verdicts(live, closed) if each.verdict]
    return said[-1] if said else first
