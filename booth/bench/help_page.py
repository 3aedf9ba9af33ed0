"""What stands behind '?' on the bench: headed paragraphs, the same headings at each step. Pure.

An instrument says what it knows about itself (``ABOUT``); how the step is done, the lines under the
figure, the words of the trade that stand in all of it and the keys are added here.
"""

from __future__ import annotations

from collections.abc import Iterable

from booth.bench.act import Context
from booth.bench.commands import key_lines
from booth.bench.instrument import Instrument
from booth.forms.form import Rows
from booth.words.about.headed import DO, HEADS, WHAT
from booth.words.glossary import terms_in
from booth.words.shown import Page, reflow

NOW, WORDS = "As it stands", "Words of the trade"
KEYS = "Keys; where letters are typed the function keys do"


def help_page(instrument: Instrument, context: Context, rows: Rows) -> Page:
    """All there is to know of the open step; where a low window cuts the lines under its figure, they
    stand here in full."""
    about, readout = instrument.ABOUT, instrument.readout(context, rows.values)
    sections = {head: about.of(head) for head in HEADS}
    how = " ".join(reflow(context.step.how))
    sections[DO] = (*filter(None, (how,)), *sections[DO])
    now = readout.lines if readout is not None else ()
    sections = {WHAT: sections.pop(WHAT), NOW: now, **sections}
    labels = (each.field.label for each in rows.every)
    told = [line for lines in sections.values() for line in lines]
    sections[WORDS] = tuple(each.line for each in terms_in((*told, *labels)))
    sections[KEYS] = key_lines()
    return Page(tuple(_stacked(sections)))


def _stacked(sections: dict[str, tuple[str, ...]]) -> Iterable[tuple[str, str]]:
    """Each heading over its paragraphs, an empty line before the next one."""
    gap = False
    for head, paragraphs in sections.items():
        if not paragraphs:
            continue
        if gap:
            yield "text", ""
        gap = True
        yield "head", head
        yield from (("text", each) for each in paragraphs)
