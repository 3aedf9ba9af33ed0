"""What came of a job, in the order in which a card tells it, whatever it is written as. Pure."""

from __future__ import annotations

from collections.abc import Iterator

from booth.card.model import Card, Fact

#: What stands between what is said of one thing.
BETWEEN = "; "
DEMO = " (demo: invented values)"
REHEARSED = "with water and cardboard; no setting of it is one for the coating"
NOT_CLOSED = "none yet: this job is not closed"
#: How the verdict that counts is labelled, and those before it.
VERDICT, BEFORE = "Verdict", "Before"


def outcome(card: Card) -> Iterator[Fact]:
    """The verdict that counts first, then the earlier ones; what to change, faults, what was done since."""
    if card.is_open and card.blocks and not card.rehearsal:
        yield Fact(VERDICT, NOT_CLOSED)
    label = VERDICT
    for each in card.judged:
        again = ", looked at again" if each.again else ""
        if each.verdict:
            yield Fact(label, f"{each.verdict}, {each.when}{again}")
            label = BEFORE
        if each.words:
            yield Fact("In words", each.words)
    if card.rehearsal:
        yield Fact("Rehearsal", REHEARSED)
    elif not card.is_open and label == VERDICT:
        yield Fact(VERDICT, "none given")
    yield from (Fact("To change", change) for change in card.to_change)
    if card.next_time:
        yield Fact("Next time", card.next_time)
    if card.faults or card.later:
        yield Fact("Faults seen", BETWEEN.join((*card.faults, *card.later)))
    if card.since:
        yield Fact("Since", BETWEEN.join(card.since))
