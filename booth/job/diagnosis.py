"""A fault that was seen, held against what the job measured and what was answered of it. Pure."""

from __future__ import annotations

from typing import Any

import msgspec

from booth.job.fault_evidence import evidence_of
from booth.log.events import FaultAnswered, FaultSeen
from booth.log.fold import Job
from booth.trade.faults.questions import Question
from booth.trade.faults.ranked_causes import RankedCause, next_question, rank_causes


class Diagnosis(msgspec.Struct, frozen=True):
    """The causes of a fault by rank, and the one question that parts the first of them."""

    causes: tuple[RankedCause, ...]
    question: Question | None


def answers_to(job: Job, fault: FaultSeen) -> tuple[FaultAnswered, ...]:
    """What was answered of this fault on this part, the latest last."""
    return _answers(job, fault.fault, fault.part)


def diagnosis(job: Job, fault: str, part: str) -> Diagnosis:
    """Rank the causes of a fault that was seen on `part`, "" for any part."""
    # It changes with an entry, and is asked for at every look: each Job keeps its own.
    known: dict[tuple[str, str], Diagnosis] = _kept(job)
    if (fault, part) not in known:
        answers = {each.question: each.answer for each in _answers(job, fault, part)}
        causes = rank_causes(fault, evidence_of(job, part), answers)
        known[fault, part] = Diagnosis(causes, next_question(causes, answers))
    return known[fault, part]


def _kept(job: Job) -> dict[tuple[str, str], Diagnosis]:
    own: dict[str, Any] = vars(job)
    found: dict[tuple[str, str], Diagnosis] = own.setdefault("diagnoses", {})
    return found


def _answers(job: Job, fault: str, part: str) -> tuple[FaultAnswered, ...]:
    return tuple(each for each in job.of(FaultAnswered) if (each.fault, each.part) == (fault, part))
