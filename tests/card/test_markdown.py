"""The card as Markdown, read by a parser of GitHub's own dialect; no text of anybody becomes markup."""

from __future__ import annotations

from collections.abc import Iterator
from xml.etree.ElementTree import Element

import cmarkgfm
import html5lib
import pytest
from cmarkgfm.cmark import Options
from hypothesis import given
from hypothesis import strategies as st

from booth.card.as_markdown import as_markdown, escaped
from booth.files.safe_text import visible
from booth.units import System
from tests.card.jobs import HOSTILE, card, poisoned, whole
from tests.log.logs import any_text

#: All that this program writes.
TAGS = {"h1", "h2", "h3", "p", "ul", "li", "strong", "table", "thead", "tbody", "tr", "th", "td"}
#: What a parser puts around it, and what a struck entry and a line of a quotation are.
AROUND = {"html", "head", "body", "del", "blockquote", "br"}


def parsed(text: str) -> Element:
    made = cmarkgfm.github_flavored_markdown_to_html(text, Options.CMARK_OPT_UNSAFE)
    return html5lib.parse(made, namespaceHTMLElements=False)


def tags(root: Element) -> set[str]:
    """What is there; the tag of a comment is no text."""
    return {each.tag for each in root.iter() if isinstance(each.tag, str)}


def told(element: Element) -> str:
    return " ".join("".join(element.itertext()).split())


def rows(root: Element) -> Iterator[list[str]]:
    for each in root.iter("tr"):
        yield [told(cell) for cell in each if cell.tag == "td"]


def test_headings_lists_and_tables_are_read_as_such() -> None:
    root = parsed(as_markdown(card(whole())))
    assert tags(root) - TAGS - AROUND == set()
    assert [told(each) for each in root.iter("h1")] == ["Trial clear (demo: invented values)"]
    assert [told(each) for each in root.iter("h2")] == ["Log"]
    first = [told(each) for each in root.iter("li")][:4]
    assert first[0] == "Verdict: usable, 2026-09-22 09:00, looked at again"
    assert ["inlet pressure", "1.90 bar", "1.80 to 2.10 bar"] in list(rows(root))
    assert any(row[:2] == ["hood", "coat 2"] for row in rows(root) if row)
    assert [
        "2",
        "2026-09-21",
        "08:01",
        "weather: air 21.0 °C, humidity 50 %, part 21.0 °C",
    ] in list(rows(root))


@pytest.mark.parametrize("text", HOSTILE, ids=range(len(HOSTILE)))
def test_hostile_text_in_every_field_stays_text(text: str) -> None:
    shown = as_markdown(card(poisoned(whole(), text), System.US, said=(text,), name=text))
    assert "\x1b" not in shown and "\u202e" not in shown
    root = parsed(shown)
    assert tags(root) - TAGS - AROUND == set(), shown
    assert "del" not in tags(root), "nothing of it was voided"
    wanted = " ".join(visible(text).split())
    assert told(root).count(wanted) >= 10
    widths = {len(row) for row in rows(root) if row}
    assert widths <= {3, 4, 8}, "no text opens another cell"


@given(any_text)
def test_any_text_is_shown_as_it_stands(text: str) -> None:
    is_shown_as_it_stands(text)


def is_shown_as_it_stands(text: str) -> None:
    shown = visible(text)
    wanted = " ".join(shown.split())
    for line, tag in (
        (f"| a |\n| --- |\n| {escaped(shown)} |", "td"),
        (f"- {escaped(shown)}", "li"),
    ):
        root = parsed(line)
        assert tags(root) <= {
            tag,
            "table",
            "thead",
            "tbody",
            "tr",
            "th",
            "ul",
            "html",
            "head",
            "body",
        }
        assert [told(each) for each in root.iter(tag)] == [wanted]


@given(st.text("\\`*_{}[]()<>#+-.!|~&:/@=^$w0123456789 ahtps\n", max_size=40))
def test_signs_in_any_order_are_shown_as_they_stand(text: str) -> None:
    is_shown_as_it_stands(text)


#: What parsers look for, to be met in any order.
PIECES = (
    *("http://", "https://", "www.", "ftp://", "mailto:", "xmpp:", "a@b.c", "@", ".", "a", "/"),
    *(
        "<",
        ">",
        "&",
        "amp;",
        "#35;",
        "\\",
        "*",
        "_",
        "~~",
        "`",
        "|",
        "-",
        "1.",
        "  ",
        "(",
        ")",
        "![",
    ),
)


@given(st.lists(st.sampled_from(PIECES), max_size=10).map("".join))
def test_pieces_of_markup_in_any_order_are_shown_as_they_stand(text: str) -> None:
    is_shown_as_it_stands(text)
