"""The page: well-formed for a strict parser, nothing foreign in it, one sheet of either paper."""

from __future__ import annotations

import re
import warnings
from collections.abc import Sequence
from xml.etree.ElementTree import Element

import html5lib
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from booth.card.as_html import as_html
from booth.card.model import Card
from booth.card.paper import sheet
from booth.files.safe_text import shortened
from booth.log import events as ev
from booth.units import System
from tests.card.jobs import HOSTILE, card, coated, measured, numbered, poisoned, whole
from tests.job.make import at, mild, opened, profile
from tests.log.logs import any_text, some_events

#: All elements that a card is made of.
ELEMENTS = {
    *(
        "html",
        "head",
        "meta",
        "title",
        "style",
        "body",
        "section",
        "h1",
        "h2",
        "div",
        "p",
        "strong",
    ),
    *("b", "dl", "dt", "dd", "table", "tbody", "tr", "th", "td", "span", "s"),
    *("svg", "path", "rect", "circle", "text"),
}
#: All attributes; none of them can lead anywhere or do anything.
ATTRIBUTES = {
    *("lang", "charset", "name", "content", "http-equiv", "class", "style", "role", "aria-label"),
    *("viewBox", "d", "fill", "stroke", "stroke-width", "stroke-dasharray", "x", "y", "width"),
    *("height", "cx", "cy", "r", "font-size", "text-anchor"),
}
#: A4 is the narrower of the two, US letter the lower: what fits on this fits on both.
BOTH = "210mm 279mm"


def page(made: Card) -> Element:
    """Read by the rules of HTML; anything that is not as it should be is a fault."""
    parser = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False)
    return parser.parse(as_html(made))


def bare(name: str) -> str:
    return name.rpartition("}")[2]


def is_sound(root: Element) -> None:
    for each in root.iter():
        assert isinstance(each.tag, str) and bare(each.tag) in ELEMENTS, each.tag
        assert {bare(name) for name in each.attrib} <= ATTRIBUTES, each.attrib
        if "style" in each.attrib:
            assert re.fullmatch(r"width:\d+%", each.attrib["style"])


def words(root: Element) -> str:
    return " ".join(" ".join(root.itertext()).split())


def pages_of(made: Card, paper: str) -> int:
    """How many sheets a printing engine makes of it."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # what it says of its own libraries
        try:
            import weasyprint
        except (ImportError, OSError):  # which may be missing on this machine
            pytest.skip("no printing engine here")
        size = weasyprint.CSS(string=f"@page {{ size: {paper} }}")
        return len(weasyprint.HTML(string=as_html(made)).render(stylesheets=[size]).pages)


def test_the_page_says_what_the_card_says() -> None:
    made = card(whole())
    root = page(made)
    is_sound(root)
    told = words(root)
    for each in ("▲ usable", "slower at the edge", "runs and sags (hood); dust, seen later"):
        assert each in told
    assert "1.90 bar (wanted 1.80 to 2.10 bar)" in told and "A12, B7" in told
    assert "50 to 60 of 40 to 60 µm" in told and "not read" in told
    assert len(list(root.iter("{http://www.w3.org/2000/svg}svg"))) == 3 + 4, (
        "three pictures, four films"
    )


def test_nothing_foreign_no_script_no_address() -> None:
    told = as_html(card(whole()))
    for each in (
        "<script",
        "http:",
        "https:",
        "//",
        "url(",
        "@import",
        "@font-face",
        "src=",
        "href",
    ):
        assert each not in told, each
    assert "default-src 'none'" in told and "@page" in told


def test_units_follow_the_system() -> None:
    assert "28 psi (wanted 26 to 30 psi)" in words(page(card(whole(), System.US)))


@pytest.mark.parametrize("text", HOSTILE, ids=range(len(HOSTILE)))
def test_hostile_text_in_every_field_stays_text(text: str) -> None:
    made = card(poisoned(whole(), text), said=(text,), name=text)
    root = page(made)
    is_sound(root)
    told = as_html(made)
    assert "\x1b" not in told and "\u202e" not in told
    wanted = " ".join(shortened(text, 240).split())
    assert words(root).count(wanted) >= 10


@settings(max_examples=60)
@given(st.lists(some_events, max_size=6), any_text)
def test_any_events_make_a_sound_page(events: list[ev.Event], text: str) -> None:
    is_sound(page(card([opened((text.strip() or "door",)), *events], name=text)))


def closed(**more: str) -> ev.JobClosed:
    return ev.JobClosed(n=0, at=at(90_000), verdict="good", **more)


def system_job(products: int, parts: Sequence[str]) -> list[ev.Event]:
    first = replace(
        opened(tuple(parts)),
        later=tuple(
            profile(key=f"p{n}", name=f"Trial product {n}") for n in range(2, products + 1)
        ),
        coating="Trial system",
    )
    events: list[ev.Event] = [first]
    for n in range(1, products + 1):
        start = n * 20_000.0
        events += [ev.ProductBegun(n=0, at=at(start), product=n)] if n > 1 else []
        events += [*measured(start), *coated(parts, 2, start + 900)]
    return [*events, closed(words="even", next_time="one coat less")]


def notes(count: int, text: str) -> list[ev.Event]:
    return [ev.NoteMade(n=0, at=at(20 + each), text=f"{text} {each}") for each in range(count)]


MANY = tuple(f"cabinet door number {n}" for n in range(60))
JOBS = {
    "nothing": [opened()],
    "usual": whole(),
    "one part": whole(("bonnet",)),
    "three products": system_job(3, ("door", "hood", "left wing")),
    "twenty products": system_job(20, ("door",)),
    "sixty parts": [opened(MANY), *measured(), *coated(MANY, 3), closed()],
    "two thousand notes": [opened(), *measured(), *notes(2000, "a note of usual length"), closed()],
    "long notes": [opened(), *notes(60, "words " * 120), closed(words="w " * 900)],
    "long words": [opened(("M" * 300,)), *notes(40, "W" * 500), closed(next_time="W" * 900)],
    "wide letters": [
        opened(("車体塗装" * 30,)),
        *notes(200, "車体" * 60),
        closed(words="塗" * 500),
    ],
    "forty days": [opened(), *(mild(seconds=86400.0 * n) for n in range(40)), closed()],
}


@pytest.mark.parametrize("name", JOBS)
def test_any_job_is_one_sheet(name: str) -> None:
    assert pages_of(card(JOBS[name], said=("A sentence about the log.",)), BOTH) == 1


@pytest.mark.parametrize("paper", ["A4", "letter"])
def test_a_usual_job_is_one_sheet_of_either_paper(paper: str) -> None:
    assert pages_of(card(JOBS["usual"]), paper) == 1


def test_hostile_text_is_one_sheet() -> None:
    assert pages_of(card(poisoned(whole(), "".join(HOSTILE))), BOTH) == 1


@pytest.mark.parametrize("name", JOBS)
def test_what_is_left_off_the_paper_is_told_and_is_on_the_screen(name: str) -> None:
    made = card(JOBS[name])
    laid, told = sheet(made), as_html(made)
    left = len(made.entries) - len(laid.entries)
    assert (re.search(rf"\b{left} more entr(y stands|ies stand) in the log", told) is not None) == (
        left > 0
    )
    coats = [len(block.coats) - fit for block, fit in zip(made.blocks, laid.coats, strict=False)]
    for each in coats:
        assert not each or re.search(rf"\b{each} more coats? stands? in the log", told)
    blocks = len(made.blocks) - laid.blocks
    assert (re.search(rf"\b{blocks} more products? stand", told) is not None) == (blocks > 0)
    root = page(made)
    assert sum(1 for each in root.iter("p") if "day" not in each.attrib.get("class", "")) >= len(
        made.entries
    )


def test_a_usual_job_has_all_of_its_log_on_the_sheet_in_a_readable_size() -> None:
    laid = sheet(card(whole()))
    assert len(laid.entries) == len(numbered(whole())) and laid.size >= 7 and laid.pictures
