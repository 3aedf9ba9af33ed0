"""A job as plain text: its card, then its log. Pure."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from booth.card.as_text import as_text
from booth.card.build import Kept, When, card_of
from booth.units import System


def report(
    events: Iterable[Kept],
    system: System,
    time_of: When,
    date_of: When,
    said: Sequence[str] = (),
    name: str = "",
) -> str:
    """Give a job as plain text. What is handed in: see ``card_of``."""
    return as_text(card_of(events, system, time_of, date_of, said, name))
