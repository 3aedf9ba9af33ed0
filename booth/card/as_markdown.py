"""A card as Markdown: headings, lists and tables that any reader of it shows alike. Pure.

Every text is escaped so that none of it becomes markup, by the rules of CommonMark and of the common
extensions (tables, addresses that are taken for links).
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence

from booth.card.model import Block, Card, CoatLine, Entry, Fact
from booth.card.outcome import DEMO, outcome

#: Signs that mean something inside a line; all of ASCII punctuation may be escaped (CommonMark 0.31,
#: section 2.4).
SIGNS = re.compile(r"[\\`*_{}\[\]<>()#!|~&$^]")
#: What is taken for an address without any sign around it (GFM 0.29, section 6.9).
ADDRESS = re.compile(r"(?i):(?=/)|(?<=www)\.|(?<=mailto):|(?<=xmpp):")
#: What is taken for an address of mail, whatever is escaped in it: only a comment keeps its two halves
#: apart, which no reader shows.
MAIL = re.compile(r"(?<=\S)@")
#: What begins a list, a rule, a heading or a quotation where it begins a line.
OPENING = re.compile(r"^(\s*|\s*\d+(?=[.)]))([-+=>#:.)])")
HEADINGS = ("Part", "Coat", "Begun", "Waited", "Sprayed in", "Wet film", "Wanted", "")


def escaped(text: str) -> str:
    """Give a text so that Markdown shows it as it stands.

    >>> escaped("2 * [x](y)")
    '2 \\\\* \\\\[x\\\\]\\\\(y\\\\)'
    """
    text = SIGNS.sub(lambda found: f"\\{found[0]}", text.strip())
    text = MAIL.sub("<!---->@", ADDRESS.sub(r"\\\g<0>", text))
    return OPENING.sub(r"\1\\\2", text)


def as_markdown(card: Card) -> str:
    """Give all of it, the card and the log behind it."""
    lines = [f"# {escaped(card.title)}{DEMO if card.demo else ''}", ""]
    lines += [f"> {escaped(each)}" + "  " for each in card.said]
    lines += [""] if card.said else []
    name = (Fact("Job", card.name),) if card.name else ()
    lines += _facts((*outcome(card), *name, *card.head))
    for block in card.blocks:
        lines += ["", *_block(block, len(card.blocks) > 1)]
    if card.entries:
        lines += ["", "## Log", ""]
        lines += table(("No.", "Date", "Time", "Entry"), (_entry(each) for each in card.entries))
    return "\n".join(lines) + "\n"


def _entry(each: Entry) -> Sequence[str]:
    struck = f"~~{escaped(each.text)}~~ voided" if each.void else escaped(each.text)
    return str(each.n), escaped(each.day), escaped(each.time), struck


def _block(block: Block, several: bool) -> Iterator[str]:
    if several:
        yield f"## {escaped(block.title)}{DEMO if block.demo else ''}"
        yield ""
    yield from _facts(block.about)
    if block.facts:
        yield from ("", "### Settings, weather, mix", "")
        yield from table(
            ("What", "Measured", "Wanted"),
            ((escaped(each.label), escaped(each.text), _wanted(each)) for each in block.facts),
        )
    if block.missing:
        yield from ("", f"Not measured: {escaped(', '.join(block.missing))}")
    if block.coats:
        yield from ("", "### Coats and waits", "")
        yield from table(HEADINGS, (_coat(each) for each in block.coats))
    if block.film:
        yield from ("", "### Film in all", "", *_facts(block.film))


def _wanted(each: Fact) -> str:
    return escaped(f"{each.wanted}, this is {each.side}" if each.side else each.wanted)


def _coat(each: CoatLine) -> Sequence[str]:
    cells = (
        each.part,
        each.coat,
        f"{each.day} {each.begun}".strip(),
        _waited(each),
        each.sprayed,
        each.wet,
        each.wanted,
    )
    return tuple(escaped(cell) for cell in (*cells, each.remark))


def _waited(each: CoatLine) -> str:
    return f"{each.waited} after {each.after}" if each.waited else ""


def _facts(facts: Iterable[Fact]) -> Iterator[str]:
    for each in facts:
        told = f": {escaped(each.in_words)}" if each.text else ""
        yield f"- **{escaped(each.label)}**{told}"


def table(heads: Sequence[str], rows: Iterable[Sequence[str]]) -> Iterator[str]:
    """A table of cells that are escaped already."""
    yield _row(heads)
    yield _row(["---"] * len(heads))
    yield from map(_row, rows)


def _row(cells: Sequence[str]) -> str:
    return f"| {' | '.join(cells)} |"
