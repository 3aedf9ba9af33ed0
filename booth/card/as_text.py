"""A card as plain text for a terminal, a printer or a letter: how it came out first, the log last. Pure."""

from __future__ import annotations

from collections.abc import Iterator

from booth.card.model import Block, Card, CoatLine, Fact
from booth.card.outcome import BETWEEN, DEMO, outcome


def as_text(card: Card) -> str:
    """Give all of it, the card and the log behind it."""
    lines = [f"! {sentence}" for sentence in card.said]
    if lines:
        lines.append("")
    lines += _result(card)
    for block in card.blocks:
        lines += ["", *_block(block, len(card.blocks) > 1)]
    if card.entries:
        lines += ["", "Log", *_log(card)]
    return "\n".join(lines) + "\n"


def _result(card: Card) -> Iterator[str]:
    if not card.blocks:  # no job
        yield card.title
        return
    facts = [Fact("Job", card.name), Fact("Coating", card.title + (DEMO if card.demo else ""))]
    yield from told([*facts, *outcome(card), *card.head])


def _block(block: Block, several: bool) -> Iterator[str]:
    if several:
        yield block.title + (DEMO if block.demo else "")
    yield from told(block.about, 2)
    if block.facts:
        yield "  Last settings, weather, mix"
        yield from told(block.facts, 4, in_words=True)
    if block.missing:
        yield f"  Not measured: {', '.join(block.missing)}"
    if block.coats:
        yield "  Coats and waits"
        yield from (f"    {coat_words(each)}" for each in block.coats)
    yield from (f"    {each.label}: film in all {each.text}" for each in block.film)


def coat_words(coat: CoatLine) -> str:
    """A coat in a line: 'hood: coat 2 begun 15:20, 10:00 after coat 1 ended; sprayed in 5:00; wet …'."""
    if not coat.begun:
        return f"{coat.part}: {coat.coat}"
    said = [
        f"{coat.part}: {coat.coat} begun {coat.day} {coat.begun}"
        + (f", {coat.waited} after {coat.after} ended" if coat.waited else "")
    ]
    said[0] += f", {coat.remark}" if coat.remark else ""
    if coat.sprayed:
        said.append(f"sprayed in {coat.sprayed}")
    if coat.wet:
        said.append(f"wet {coat.wet_of_wanted}")
    return BETWEEN.join(said)


def told(
    facts: list[Fact] | tuple[Fact, ...], indent: int = 0, in_words: bool = False
) -> Iterator[str]:
    """Facts as lines, their labels one under the other."""
    width = max((len(each.label) for each in facts), default=0)
    for each in facts:
        yield f"{' ' * indent}{each.label:<{width}}  {each.in_words}".rstrip()


def _log(card: Card) -> Iterator[str]:
    width = max(len(str(each.n)) for each in card.entries)
    day = ""
    for each in card.entries:
        if each.day != day:
            day = each.day
            yield f"  {day}"
        struck = "voided: " if each.void else ""
        yield f"  {each.n:>{width}}  {each.time}  {struck}{each.text}"
