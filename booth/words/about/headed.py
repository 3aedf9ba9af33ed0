"""Headed paragraphs: the same headings at each step, in one order; sources last, by their designation."""

from __future__ import annotations

import re

import msgspec

#: In their order. The first is what a first-time painter reads; it names nobody.
WHAT, DO, CARE, RULE, LIMITS, SOURCE = HEADS = (
    "What it is",
    "What to do",
    "Take care",
    "Rule",
    "Limits",
    "Source",
)


class About(msgspec.Struct, frozen=True):
    """sections: each heading that the step has, with its paragraphs."""

    sections: dict[str, tuple[str, ...]] = {}

    def of(self, head: str) -> tuple[str, ...]:
        """The paragraphs under a heading; none where the step has it not."""
        return self.sections.get(head, ())


def about(text: str) -> About:
    """Read paragraphs parted by empty lines; a line that is a heading begins its section.

    Raises ValueError where the headings are not in their order, or the first one is missing.
    """
    sections: dict[str, tuple[str, ...]] = {}
    here = ""
    for block in re.split(r"\n\s*\n", text.strip()):
        first, _, rest = block.partition("\n")
        if first in HEADS:
            here, block = first, rest
        if not here:
            raise ValueError(f"no heading above {block!r}")
        sections[here] = (*sections.get(here, ()), " ".join(block.split()))
    if list(sections) != [head for head in HEADS if head in sections] or WHAT not in sections:
        raise ValueError(f"headings {list(sections)}")
    return About(sections)
