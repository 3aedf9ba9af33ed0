"""The names of the parts of a job, as they are typed: told apart, and short enough for a row."""

from __future__ import annotations

THE_PART = "the part"
MOST_PARTS = 24
LONGEST_NAME = 40


class BadParts(ValueError):
    """The parts cannot be told apart; the message is a sentence."""


def parts_from(typed: str) -> tuple[str, ...]:
    """Read part names parted by commas. Raises BadParts with a sentence."""
    names = tuple(name for name in (" ".join(each.split()) for each in typed.split(",")) if name)
    if not names:
        return (THE_PART,)
    if len(names) > MOST_PARTS:
        raise BadParts(f"{len(names)} parts: a job holds up to {MOST_PARTS}. Group some of them.")
    for name in names:
        if len(name) > LONGEST_NAME:
            raise BadParts(f"'{name[:20]}…' is long: up to {LONGEST_NAME} characters a part.")
        if names.count(name) > 1:
            raise BadParts(f"'{name}' is there twice: every part needs a name of its own.")
    return names
