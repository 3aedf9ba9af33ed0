"""Jobs side by side: every fact of their cards once, and whether they agree in it."""

from __future__ import annotations

from typing import Any

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.card.as_text import as_text
from booth.card.beside import (
    AGREE,
    LABEL,
    LEAST_JOB,
    beside_as_markdown,
    beside_as_text,
    jobs_that_fit,
    laid_out,
)
from booth.card.compare import Agree, Comparison, Row, compared
from booth.card.model import Card
from booth.log import events as ev
from booth.units import System
from booth.words.columns import cells
from tests.card.jobs import HOSTILE, card, coated, measured, numbered, poisoned, whole
from tests.card.test_markdown import parsed, rows, tags
from tests.job.make import at, opened, q
from tests.job.systems import OPENED

GOOD = card(whole(), name="one-1a2b")


def other(**changes: Any) -> Card:
    """The same job with another delivery, one part, another verdict."""
    events = [*whole(("door",))]
    events = [
        msgspec.structs.replace(each, delivery_ml_min=200.0)
        if isinstance(each, ev.CatchMade)
        else each
        for each in events
        if not isinstance(each, ev.JudgedAgain)
    ]
    return card(events, name="two-3c4d", **changes)


def row(told: Comparison, label: str, section: str = "") -> Row:
    return next(each for each in told.rows if (each.section, each.label) == (section, label))


def test_a_job_beside_itself_agrees_in_every_row() -> None:
    told = compared([GOOD, GOOD])
    assert told.rows and told.differing == ()


@pytest.mark.parametrize(
    ("label", "agree", "texts"),
    [
        ("Coating", Agree.SAME, ("Trial clear (demo: invented values)",) * 2),
        ("Verdict", Agree.DIFFERS, ("usable", "good")),
        ("Before", Agree.LACKING, ("good", "")),
        ("Parts", Agree.DIFFERS, ("door, hood", "door")),
        ("efflux time", Agree.SAME, ("21.5 s in Ford #4 (wanted 20.0 s to 24.0 s)",) * 2),
        (
            "delivery",
            Agree.DIFFERS,
            (
                "250 ml/min of paint (above the wanted 170 to 240 ml/min)",
                "200 ml/min of paint (wanted 170 to 240 ml/min)",
            ),
        ),
        ("cans", Agree.SAME, ("A12, B7",) * 2),
        ("Next time", Agree.SAME, ("slower at the edge",) * 2),
        ("Faults seen", Agree.DIFFERS, None),
        ("coat 1 sprayed in", Agree.SAME, ("2 min 30 s",) * 2),
        ("coat 1 wet film", Agree.SAME, ("50 to 60 of 40 to 60 µm",) * 2),
    ],
)
def test_each_fact_and_whether_they_agree(
    label: str, agree: Agree, texts: tuple[str, ...] | None
) -> None:
    found = row(compared([GOOD, other()]), label)
    assert found.agree is agree
    if texts is not None:
        assert tuple(each.text for each in found.cells) == texts


def test_a_wait_is_that_before_its_coat() -> None:
    found = row(compared([GOOD, other()]), "coat 2 waited")
    assert found.agree is Agree.DIFFERS
    assert "after coat 1" in found.cells[0].text and "after coat 1" in found.cells[1].text


def test_the_times_of_readings_and_batches_are_shown_and_not_compared() -> None:
    later = [
        msgspec.structs.replace(each, at=at(each.at.wall - at(0).wall + 60))
        if isinstance(each, ev.WeatherRead | ev.BatchMixed)
        else each
        for each in whole()
    ]
    told = compared([GOOD, card(later)])
    for label in ("weather 1", "batch 1"):
        found = row(told, label)
        assert found.agree is Agree.SAME
        assert found.cells[0].text != found.cells[1].text


def test_what_only_the_second_job_has_stands_where_it_has_it() -> None:
    bare = card([opened(("door",)), ev.JobClosed(n=0, at=at(99), verdict="good")])
    own = [each.label for each in compared([GOOD]).rows]
    for cards in ([bare, GOOD], [GOOD, bare]):
        labels = [each.label for each in compared(cards).rows]
        assert [each for each in labels if each in own] == own, "in the order of its card"
        assert len(set(labels)) == len(labels) and "not measured" in labels


def test_nothing_that_a_card_says_is_lost() -> None:
    """What the card of one job tells stands in its column, word by word."""
    told = " ".join(f"{each.label} {each.cells[0].text}" for each in compared([GOOD, other()]).rows)
    text = as_text(msgspec.structs.replace(GOOD, entries=()))
    for word in ("flat", "polished", "runs and sags", "dust", "1.90 bar", "180 mm", "60 %", "A12"):
        assert word in text and word in told


def test_products_of_a_system_keep_their_rows_apart() -> None:
    events = [OPENED, *measured(), ev.ProductBegun(n=0, at=at(3000), product=2)]
    one = card([*events, ev.JobClosed(n=0, at=at(4000), verdict="good")])
    told = compared([one, GOOD])
    sections = [each.section for each in told.rows]
    assert "" in sections and any(each.startswith("1/") for each in sections)


def test_what_is_wrong_with_a_log_is_told() -> None:
    told = compared([card(whole(), said=("Line 3 is no entry.",), name="x"), GOOD])
    assert told.said == ("x: Line 3 is no entry.",)
    assert beside_as_text(told, 80).startswith("! x: Line 3 is no entry.\n")


# -- laid out ------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("count", "width", "fit"), [(2, 77, 2), (5, 77, 2), (2, 197, 2), (9, 197, 7), (3, 40, 1)]
)
def test_as_many_jobs_as_can_be_read(count: int, width: int, fit: int) -> None:
    assert jobs_that_fit(count, width) == fit


@given(st.integers(1, 6), st.integers(LABEL + AGREE + LEAST_JOB + 2, 220), st.integers(0, 5))
def test_no_line_is_wider_than_its_room_and_no_word_is_lost(
    count: int, width: int, first: int
) -> None:
    told = compared([GOOD, other()] * 3)
    first = min(first, 5)
    laid = laid_out(told, told.rows, width, first, count)
    lines = [*laid.heads, *(line for _, lines in laid.rows for line in lines)]
    assert all(cells(line) <= width for line in lines)
    for each, (_, own) in zip(told.rows, laid.rows, strict=True):
        label = " ".join(line[:LABEL].strip() for line in own)
        assert label.split() == each.label.split()


def test_shape_and_word_say_whether_they_agree() -> None:
    told = compared([GOOD, other()])
    text = beside_as_text(told, 100)
    for agree in Agree:
        assert any(agree.in_words in line for line in text.splitlines())
    (line,) = [each for each in text.splitlines() if each.startswith("Verdict")]
    assert line.split() == ["Verdict", "<>", "differs", "usable", "good"]


def test_jobs_that_do_not_fit_stand_in_blocks_below() -> None:
    text = beside_as_text(compared([GOOD, other(), GOOD]), 80)
    heads = [line.split() for line in text.splitlines() if line.strip().startswith("#")]
    assert heads == [["#1", "#2"], ["#3"]]


@pytest.mark.parametrize("text", HOSTILE)
def test_no_text_of_anybody_steers_a_terminal_or_becomes_markup(text: str) -> None:
    told = compared([card(poisoned(numbered(whole()), text), name=text), GOOD])
    plain = beside_as_text(told, 120)
    assert not any(each in plain for each in "\x1b\x07\x9b\u202e\u2066")
    root = parsed(beside_as_markdown(told))
    assert tags(root) <= {"html", "head", "body", "table", "thead", "tbody", "tr", "th", "td"}
    assert all(len(each) == 4 for each in rows(root) if each)


def test_units() -> None:
    us = card(whole(), System.US)
    assert "28 psi" in beside_as_text(compared([us, us]), 100)


def test_coats_without_film_say_nothing_of_it() -> None:
    bare = card([opened(("door",)), *coated(("door",), read=False)])
    assert all("wet film" not in each.label for each in compared([bare, bare]).rows)


def test_an_amount_is_not_filled_in() -> None:
    one = card([opened(("door",)), ev.AirRead(n=0, at=at(9), inlet=q(190, "kPa"))])
    told = compared([one, GOOD])
    assert row(told, "delivery").cells[0].text == ""
