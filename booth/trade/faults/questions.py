"""Questions that a look, a touch or one more panel answers, and what a yes or a no speaks for."""

from __future__ import annotations

import enum
from collections.abc import Mapping
from dataclasses import dataclass

from booth.trade.faults.remedies import REMEDIES
from booth.trade.text_table import rows


class Reply(enum.StrEnum):
    """What the painter says to a question."""

    YES = "yes"
    NO = "no"
    CANNOT_TELL = "cannot tell"


@dataclass(frozen=True, slots=True)
class Question:
    """A question with yes or no for an answer. yes, no: the causes that this answer speaks for, by
    key; it speaks against those of the other."""

    key: str
    words: str
    yes: frozenset[str]
    no: frozenset[str] = frozenset()

    def speaks(self, cause: str, reply: str) -> int:
        """What an answer says of a cause: 1 for it, -1 against it, 0 nothing."""
        way = (cause in self.yes) - (cause in self.no)
        return {Reply.YES.value: way, Reply.NO.value: -way}.get(reply, 0)


#: Those that part two kinds of causes (common practice, no source): key | question | a yes speaks
#: for | a no speaks for.
_PARTING = """
wiped | Did the next panel, wiped with cleaner, show it too? | line-dirt | greasy nearby old-finish
where | Did it run only where the gun turned, stopped or came near?
    | tilted speed-slow gun-near | efflux-low thinner-over thinner-unmeasured
drops | Does a pattern on paper, shot square and without moving, show coarse drops?
    | efflux-high inlet-low delivery-high pot-life-over
    | gun-far gun-near speed-fast wet-low air-hot draught
more-air | Does a little more air, on paper, break it up finely? | inlet-low | efflux-high pot-life-over
on-top | Do the specks lie on the top alone, so that fine paper takes them off?
    | dusty inflow inlet-high gun-far dry-air | unstrained pot-life-over
edges | Does it show on thick edges and where passes meet, and not on the flat?
    | wet-high gun-near speed-slow | fast-thinner heated air-hot line-dirt
warm-panel | Does a panel from the same cup stay soft in a warm room as well?
    | bad-ratio damp-can pot-life-over slow-thinner | air-cold humid stale-air
next-day | Was it glossy when it was laid, and dull only the next day?
    | wet-high too-early thirsty wrong-thinner | humid dew-near overspray
stick | Does the colour change when the can is stirred to the bottom?
    | unstirred | coats-few no-panel wet-low
own-panel | Does it show on a test panel, laid by hand as slowly as can be, as well?
    | uneven unstirred | overlap-low tilted speed-fast
"""

#: Every question by its key: one for each cause, which has its key, and those that part causes.
QUESTIONS: Mapping[str, Question] = {
    **{key: Question(key, remedy.asks, frozenset({key})) for key, remedy in REMEDIES.items()},
    **{
        key: Question(key, words, frozenset(yes.split()), frozenset(no.split()))
        for key, words, yes, no in rows(_PARTING)
    },
}
