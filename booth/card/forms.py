"""The forms in which a card can be had, and a card written into a file. Pure but for the writing."""

from __future__ import annotations

import codecs
import errno
from collections.abc import Sequence
from pathlib import Path
from typing import NamedTuple

from booth.card.build import Kept, When, card_of
from booth.files.atomic import write_over
from booth.files.slug import numbered
from booth.units import System

#: Each form with the ending of its files, the usual one first.
ENDINGS = {
    "text": (".txt", ".text"),
    "markdown": (".md", ".markdown"),
    "csv": (".csv",),
    "html": (".html", ".htm"),
}
FORMS = tuple(ENDINGS)
MOST_KEPT = 1000


class Written(NamedTuple):
    """path: of the card; before: where what stood there before is kept, None where nothing did."""

    path: Path
    before: Path | None = None


def form_of(path: Path) -> str:
    """The form that a file's ending asks for; text where it asks for none.

    >>> form_of(Path("a.HTML")), form_of(Path("a"))
    ('html', 'text')
    """
    ending = path.suffix.lower()
    return next((form for form, endings in ENDINGS.items() if ending in endings), "text")


def in_form(
    form: str,
    events: Sequence[Kept],
    system: System,
    time_of: When,
    date_of: When,
    said: Sequence[str] = (),
    name: str = "",
) -> str:
    """Give a job's card in one of FORMS. What is handed in: see ``card_of``."""
    if form == "csv":
        from booth.card.as_csv import as_csv

        return as_csv(events, system, time_of, date_of, name)
    card = card_of(events, system, time_of, date_of, said, name, pictures=form == "html")
    if form == "markdown":
        from booth.card.as_markdown import as_markdown

        return as_markdown(card)
    if form == "html":
        from booth.card.as_html import as_html

        return as_html(card)
    from booth.card.as_text import as_text

    return as_text(card)


def write_card(path: Path, text: str, form: str) -> Written:
    """Write a card whole, in the place of what is there, whose content is kept beside it: as
    'card.before.html', 'card.before-2.html' and so on. The same card again is left as it is.

    A table begins with the mark of UTF-8, without which spreadsheets take it for another encoding.
    Raises OSError; then what was there is there.
    """
    content = text.encode("utf-8", "backslashreplace")
    if form == "csv":
        content = codecs.BOM_UTF8 + content
    if path.exists() and not path.is_file():
        raise OSError(errno.EINVAL, "it is no file that a card can take the place of", str(path))
    if path.is_file() and path.read_bytes() == content:
        return Written(path)
    names = numbered(f"{path.stem}.before", path.suffix, MOST_KEPT)
    return Written(path, write_over(path, content, names))
