"""A card as a page to print: one sheet, A4 or US letter; no script, no network, no font of its own. Pure.

A rule runs down the page; what each thing is stands at its left, what it was at its right. The verdict is
the one dark field.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from html import escape

from booth.card import drawing
from booth.card.model import Block, Card, CoatLine, Entry, Fact
from booth.card.outcome import DEMO, outcome
from booth.card.paper import MOST_FILMS, Sheet, sheet
from booth.files.safe_text import shortened
from booth.words.shown import Tone

#: No more of a text stands on the card; the log has all of it.
MOST = 240
SHAPES = {"good": Tone.GOOD.shape, "usable": Tone.CAUTION.shape, "redo": Tone.LATE.shape}
#: Said of what is left off the paper.
OFF = ' class="off"'
ON_SCREEN = "on the page as a screen shows it"
OPEN = f"{Tone.RUNNING.shape} not closed"

STYLE = """\
@page { margin: 10mm; }
* { box-sizing: border-box; }
body { font-family: sans-serif; font-size: 10pt; line-height: 1.28; color: #111; background: #fff;
  margin: 0 auto; max-width: 200mm; padding: 4mm; }
h1, h2, p, dl, dd, table { margin: 0; padding: 0; font-size: 1em; font-weight: normal; }
body, td, dd { overflow-wrap: anywhere; }
.row { position: relative; padding-left: 24mm; border-bottom: 0.2mm solid #bbb; }
.row > h2 { position: absolute; left: 0; top: 0; width: 23mm; text-align: right; padding: 0.6mm 2mm 0.6mm 0;
  font-weight: bold; }
.row > div { border-left: 0.7mm solid #111; padding: 0.6mm 0 0.6mm 2mm; min-height: 1.9em; }
.top h1 { font-size: 1.5em; font-weight: bold; line-height: 1.1; }
.top > h2 { background: #111; color: #fff; font-size: 1.15em; text-align: center; padding: 1.2mm 1mm;
  bottom: 0; width: 24mm; }
.next dd:first-of-type, .next dt:first-of-type { font-weight: bold; }
dl { display: grid; grid-template-columns: max-content 1fr; column-gap: 2mm; }
dt { color: #555; }
.two { columns: 2; column-gap: 5mm; }
.two p { break-inside: avoid; padding-left: 22mm; text-indent: -22mm; }
.two b { display: inline-block; width: 22mm; text-indent: 0; color: #555; font-weight: normal; }
.out { font-weight: bold; }
table { border-collapse: collapse; width: 100%; table-layout: fixed; }
td, th { text-align: left; vertical-align: top; padding: 0 1mm 0.2mm 0; font-weight: normal; }
th { color: #555; border-bottom: 0.2mm solid #111; }
svg { display: block; width: 100%; height: auto; }
td svg { width: 92%; margin-top: 0.4mm; }
.pictures > * { display: inline-block; vertical-align: top; width: 58mm; margin-right: 4mm; }
.pictures > .wide { width: 92mm; margin: 0; }
.log { columns: 3; column-gap: 4mm; }
.log p { padding-left: 8mm; text-indent: -8mm; }
.log p.day { padding: 0; text-indent: 0; font-weight: bold; break-after: avoid; }
.log s { color: #555; }
.paper { display: none; }
@media print {
  body { max-width: none; padding: 0; }
  .off { display: none !important; }
  .paper { display: block; }
}
"""


def as_html(card: Card) -> str:
    """Give the page."""
    laid = sheet(card)
    sizes = (
        f"@media print {{ body {{ font-size: {laid.size:g}pt; }} "
        f".log {{ font-size: {laid.log_size:g}pt; }} }}\n"
    )
    return "".join(
        (
            '<!DOCTYPE html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n',
            '<meta http-equiv="Content-Security-Policy" ',
            "content=\"default-src 'none'; style-src 'unsafe-inline'\">\n",
            '<meta name="viewport" content="width=device-width, initial-scale=1">\n',
            f"<title>{_cut(card.title)}, {_cut(card.name)}</title>\n",
            f"<style>\n{STYLE}{sizes}</style>\n</head>\n<body>\n",
            *_body(card, laid),
            "</body>\n</html>\n",
        )
    )


def _cut(text: str) -> str:
    return escape(shortened(text, MOST))


def _row(label: str, inner: str, kind: str = "") -> str:
    classes = f"row {kind}".strip()
    return f'<section class="{classes}"><h2>{label}</h2><div>{inner}</div></section>\n'


def _body(card: Card, laid: Sheet) -> Iterator[str]:
    yield _top(card)
    if card.said:
        yield _row("This log", "".join(f"<p>{_cut(each)}</p>" for each in card.said))
    facts = [each for each in outcome(card) if each.text]
    if facts:
        yield _row("Result", _list(facts), "next")
    for at, block in enumerate(card.blocks):
        yield from _block(block, laid, at, len(card.blocks) > 1)
    if laid.blocks < len(card.blocks):
        yield _row(
            "", f"<p>{_more(len(card.blocks) - laid.blocks, 'product', ON_SCREEN)}</p>", "paper"
        )
    if card.line is not None:
        yield from _time(card, laid)
    if card.entries:
        yield _log(card.entries, laid)


def _top(card: Card) -> str:
    word = f"{SHAPES.get(card.verdict, '')} {card.verdict}" if card.verdict else ""
    verdict = OPEN if card.is_open and card.blocks else word or "no verdict"
    demo = DEMO if card.demo else ""
    facts = [*card.head, *([Fact("Job", card.name)] if card.name else [])]
    about = " &nbsp; ".join(f"{escape(each.label)} <b>{_cut(each.text)}</b>" for each in facts)
    return _row(
        escape(shortened(verdict, 40)), f"<h1>{_cut(card.title)}{demo}</h1><p>{about}</p>", "top"
    )


def _list(facts: Iterable[Fact]) -> str:
    told = (f"<dt>{_cut(each.label)}</dt><dd>{_cut(each.in_words)}</dd>" for each in facts)
    return f"<dl>{''.join(told)}</dl>"


def _block(block: Block, laid: Sheet, at: int, several: bool) -> Iterator[str]:
    off = " off" if at >= laid.blocks else ""
    title = (
        f"<p><strong>{_cut(block.title)}</strong>{DEMO if block.demo else ''}</p>"
        if several
        else ""
    )
    about = [f"{_cut(each.label)}: {_cut(each.text)}".removesuffix(": ") for each in block.about]
    inner = title + (f"<p>{' &nbsp; '.join(about)}</p>" if about else "")
    if block.facts:
        inner += f'<div class="two">{"".join(map(_fact, block.facts))}</div>'
    if block.missing:
        inner += f"<p>Not measured: {_cut(', '.join(block.missing))}</p>"
    yield _row("Settings, mix", inner, f"block{off}")
    if block.paper is not None:
        drawn = off or ("" if laid.pictures else " off")
        yield _row("Pattern, film", _pictures(block), f"block{drawn}")
    if block.coats:
        fit = laid.coats[at] if at < laid.blocks else 0
        yield _row("Coats, waits", _coats(block, fit), f"block{off}")


def _fact(fact: Fact) -> str:
    wanted = f" ({_cut(fact.in_words.removeprefix(fact.text).strip(' ()'))})" if fact.wanted else ""
    out = f'<span class="out">{_cut(fact.text)}</span>' if fact.side else _cut(fact.text)
    return f"<p><b>{_cut(fact.label)}</b>{out}{wanted}</p>"


def _pictures(block: Block) -> str:
    assert block.paper is not None
    shown = f"<div>{drawing.fan(block.paper, block.pattern)}<p>{_cut(block.pattern)}</p></div>"
    if block.section is not None:
        across = block.section.across
        shown += f'<div class="wide">{drawing.section(block.section, across)}</div>'
    return f'<div class="pictures">{shown}</div>'


#: The columns of the coats, each with its share of the width [%].
COLUMNS = (
    *(("Part", 22), ("Coat", 13), ("Begun", 11), ("Waited", 10)),
    *(("Wet film of wanted", 23), ("", 9), ("Sprayed in", 12)),
)


def _coats(block: Block, fit: int) -> str:
    heads = "".join(f'<th style="width:{wide}%">{head}</th>' for head, wide in COLUMNS)
    days = ["", *(each.day for each in block.coats)]
    rows = "".join(
        _coat(each, days[at] != each.day, at >= fit) for at, each in enumerate(block.coats)
    )
    left, films = len(block.coats) - fit, len(block.film) - MOST_FILMS
    more = f'<p class="paper">{_more(left, "coat", "in the log of the job")}</p>' if left else ""
    film = "".join(
        f"<p{OFF if at >= MOST_FILMS else ''}>{_cut(each.label)}: film in all {_cut(each.text)}</p>"
        for at, each in enumerate(block.film)
    )
    film += f'<p class="paper">{_more(films, "line", ON_SCREEN)}</p>' if films > 0 else ""
    return f"<table><tr>{heads}</tr>{rows}</table>{more}{film}"


def _coat(coat: CoatLine, other_day: bool, off: bool) -> str:
    begun = f"{coat.day[-5:]} {coat.begun}" if other_day else coat.begun
    wet = coat.wet_of_wanted if coat.wet else ("not read" if coat.begun else "")
    drawn = drawing.gauge(coat) if coat.wet else ""
    last = ", ".join(filter(None, (coat.sprayed, coat.remark)))
    cells = [_cut(each) for each in (coat.part, coat.coat, begun, coat.waited, wet)]
    tds = "".join(f"<td>{each}</td>" for each in (*cells, drawn, _cut(last)))
    return f"<tr{OFF if off else ''}>{tds}</tr>"


def _time(card: Card, laid: Sheet) -> Iterator[str]:
    assert card.line is not None
    every = len(card.line.rows)
    yield _row(
        "Time line",
        drawing.time_line(card.line, every),
        "off" if laid.rows < every else "",
    )
    if 0 < laid.rows < every:
        more = f"<p>{_more(every - laid.rows, 'part', ON_SCREEN)}</p>"
        yield _row("Time line", drawing.time_line(card.line, laid.rows) + more, "paper")


def _days_end(entries: Sequence[Entry], at: int) -> int:
    """The place behind the last entry of a day that begins at `at`."""
    end = at
    while end < len(entries) and entries[end].day == entries[at].day:
        end += 1
    return end


def _more(count: int, what: str, where: str) -> str:
    """What is left off the paper: '3 more coats stand in the log of the job.'"""
    many = f"{what[:-1]}ies" if what.endswith("y") else f"{what}s"
    return f"{count} more {what if count == 1 else many} {'stands' if count == 1 else 'stand'} {where}."


def _log(entries: Sequence[Entry], laid: Sheet) -> str:
    told, day, left = [], "", 0
    for at, each in enumerate(entries):
        off = at not in laid.entries
        left += off
        if each.day != day:
            day = each.day
            bare = all(here not in laid.entries for here in range(at, _days_end(entries, at)))
            told.append(f'<p class="day{" off" if bare else ""}">{escape(day)}</p>')
        words = escape(each.text)
        told.append(
            f"<p{OFF if off else ''}>{escape(each.time)} "
            f"{f'<s>{words}</s> voided' if each.void else words}</p>"
        )
    where = f"in the log and {ON_SCREEN}"
    more = f'<p class="paper">{_more(left, "entry", where)}</p>' if left else ""
    return _row("Log", f'<div class="log">{"".join(told)}</div>{more}')
