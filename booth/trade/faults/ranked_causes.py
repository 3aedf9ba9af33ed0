"""Seen fault -> its causes, ranked by how usual each is and by what the job measured of it.

Odds, as Bayes has them: a cause starts with how usual it is, each figure and each answer multiplies.
What nobody measured keeps the weight it starts with, and stands in the same list.
"""

from __future__ import annotations

import difflib
import enum
from collections.abc import Mapping
from dataclasses import dataclass

from booth.trade.faults.evidence import Evidence, Reading, read_sign
from booth.trade.faults.fault_table import FAULTS, Cause, Fault
from booth.trade.faults.questions import QUESTIONS, Question
from booth.trade.result import BadInput

#: How much more often a usual cause is the one than a common one, and that than one now and then:
#: a cause now and then, shown all the way, comes just above a usual one that nobody measured, and
#: shown by less does not. Common practice, no source.
USUAL_STEP = 3.0
#: Weight of evidence in powers of ten, as Good and Jeffreys count it (Theory of Probability, app. B:
#: from 10^0.5 'substantial', from 10 'strong'; from memory,
#: not checked). A figure within its limit is substantial
#: evidence against; one far past it, and an answer, are strong.
WITHIN, ANSWERED = -0.5, 1.0
#: How alike a mistyped fault has to be to be offered, 0 to 1 (difflib).
ALIKE = 0.5


class Standing(enum.StrEnum):
    """How a cause stands after the figures were looked at."""

    SHOWN = "what is known speaks for it"
    OPEN = "nothing known for or against"
    CLEARED = "what is known speaks against it"


@dataclass(frozen=True, slots=True)
class RankedCause:
    """A cause with what this job says of it.

    evidence: what was measured and answered, in powers of ten, above 0 for the cause; weight: how
    usual it is times ten to the evidence. It orders causes: odds of one against another, no
    probability. answers: the questions answered that speak of it, each with whether for it.
    """

    cause: Cause
    standing: Standing
    weight: float
    evidence: float
    figures_for: tuple[Reading, ...]
    figures_against: tuple[Reading, ...]
    answers: tuple[tuple[Question, bool], ...] = ()

    @property
    def is_measured(self) -> bool:
        return bool(self.figures_for or self.figures_against)


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


def rank_causes(
    fault_key: str, evidence: Evidence, answers: Mapping[str, str] | None = None
) -> tuple[RankedCause, ...]:
    """Give the causes of a fault, the likeliest first: how usual it is times what was measured.

    Args:
        fault_key: key of the fault (see FAULTS).
        evidence: the figures of this job and their limits, each None where there is none.
        answers: yes, no or 'cannot tell' by the key of the question (see QUESTIONS).

    Returns: all causes of the fault by weight, the greatest first, of two alike the one that stands
        first in the table: ``weight = 3^(usual - 1) x 10^evidence``. Each carries its figures and
        answers, what to do now and next time, and its source.
    Range: figures point, they do not prove. A cause that nobody measured keeps the weight of how
        usual it is; only a figure or an answer raises or lowers one. Signs of one cause count once,
        by the strongest; one of two within its limit speaks half as much against. Answers and
        figures are taken as independent.
    Source: FAA-H-8083-31 ch. 8 (common paint troubles); TM 43-0139 p. 5-12; TO 1-1-8 table 4-1;
        Corrosion Engineering: Principles and Practice, table 14.1; else common practice, no source.
        Odds: Bayes' theorem; its grades Jeffreys, Theory of Probability, app. B (from memory, not
            checked); how
        usual a cause is and how fast its evidence grows are common practice, no source.

    >>> job = Evidence(wet_um=90.0, wet_high_um=60.0, efflux_s=20.0, efflux_low_s=18.0)
    >>> first, second, *rest = rank_causes("runs", job)
    >>> first.cause.words, first.weight
    ('Too much was laid in one coat.', 90.0)
    >>> second.cause.words, second.weight, second.standing.value
    ('More thinner went in than is allowed.', 9.0, 'nothing known for or against')
    >>> thin = next(each for each in rest if each.cause.key == "efflux-low")
    >>> round(thin.weight, 2), thin.standing.value
    (2.85, 'what is known speaks against it')
    """
    fault = FAULTS.get(fault_key) or fault_named(fault_key)
    ranked = [_weigh(cause, evidence, answers or {}) for cause in fault.causes]
    return tuple(sorted(ranked, key=lambda each: -each.weight))


def next_question(
    ranked: tuple[RankedCause, ...], answers: Mapping[str, str] | None = None
) -> Question | None:
    """Give the one question whose answer parts the first cause from the next one best.

    Args:
        ranked: the causes as they stand.
        answers: what was answered so far, by the key of the question.

    Returns: the question: one that speaks for the one cause and against the other, else one that
        speaks of one of them alone, of the first rather. Where those two have none left, one that
        parts the first from the third, and so on; None where nothing is left to ask.
    Range: what was measured is not asked again. What speaks clearly against is asked of no more.
    Source: common practice, no source.

    >>> ranked = rank_causes("fisheyes", Evidence())
    >>> question = next_question(ranked)
    >>> question.words
    'Did the next panel, wiped with cleaner, show it too?'
    >>> rank_causes("fisheyes", Evidence(), {question.key: "yes"})[0].cause.words
    'Oil or water in the air line.'
    """
    known, first = answers or {}, ranked[0]
    measured = {each.cause.key for each in ranked if each.is_measured}
    left = [each for key, each in QUESTIONS.items() if key not in known and key not in measured]
    for other in (each for each in ranked[1:] if each.standing is not Standing.CLEARED):
        keys = first.cause.key, other.cause.key

        def parts(question: Question, keys: tuple[str, str] = keys) -> tuple[int, bool]:
            of_first, of_other = (question.speaks(key, "yes") for key in keys)
            return abs(of_first - of_other), bool(of_first)

        best = max(left, key=parts, default=None)
        if best is not None and parts(best)[0]:
            return best
    return None


def _weigh(cause: Cause, evidence: Evidence, answers: Mapping[str, str]) -> RankedCause:
    read = [read_sign(sign, evidence, cause.fallback.get(sign)) for sign in cause.signs]
    told = [each for each in read if each is not None]
    figures_for = tuple(reading for reading, strength in told if strength > 0.0)
    against = tuple(reading for reading, strength in told if strength == 0.0)
    strongest = max((strength for _, strength in told), default=0.0)
    known = strongest or (WITHIN * len(against) / len(read) if against else 0.0)
    said = [
        (QUESTIONS[key], way > 0)
        for key, reply in answers.items()
        if key in QUESTIONS and (way := QUESTIONS[key].speaks(cause.key, reply))
    ]
    known += sum(ANSWERED if is_for else -ANSWERED for _, is_for in said)
    standing = Standing.OPEN
    if known:
        standing = Standing.SHOWN if known > 0.0 else Standing.CLEARED
    weight = USUAL_STEP ** (cause.usual - 1) * 10.0**known
    return RankedCause(cause, standing, weight, known, figures_for, against, tuple(said))
