"""``booth words``: what a word of the trade means."""

from __future__ import annotations

import io

import pytest

from booth.cli.endings import BAD_INPUT
from booth.cli.words_command import words
from booth.words.glossary import TERMS


def said(term: str) -> tuple[int, str, str]:
    out, err = io.StringIO(), io.StringIO()
    return words(term, out, err), out.getvalue(), err.getvalue()


def test_all_of_them_in_the_order_of_the_alphabet() -> None:
    code, out, err = said("")
    heads = [line.split(":")[0] for line in out.splitlines() if line[0] != " "]
    assert code == 0 and not err and heads == [each.word for each in TERMS]
    assert max(map(len, out.splitlines())) <= 90


@pytest.mark.parametrize(
    ("term", "named"), [("flow rate", "delivery: "), ("Dew point", "dew point: ")]
)
def test_one_by_its_own_or_another_name(term: str, named: str) -> None:
    code, out, err = said(term)
    assert code == 0 and out.startswith(named) and not err


def test_what_others_call_it_is_said_and_another_spelling_is_not() -> None:
    assert "Some call it reducer or diluent." in said("thinner")[1]
    assert "Some call it" not in said("flash-off")[1]


def test_no_such_word() -> None:
    code, out, err = said("zz\x1b")
    assert code == BAD_INPUT and not out and "no word here" in err and "\x1b" not in err
