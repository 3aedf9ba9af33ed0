"""Letters with their marks in blocks: no name becomes another word."""

from __future__ import annotations

import unicodedata
from itertools import combinations

import pytest

from booth.widgets.lettering.bigfigure import can_draw, draw

#: Latin-1 Supplement and Latin Extended-A (Unicode, the blocks C1 and its next, U+00C0 to U+017F).
LETTERS = sorted(
    {each.upper() for each in map(chr, range(0xC0, 0x180)) if each.isalpha()} - {"SS", "ʼN"}
)
MARKED = [
    each for each in LETTERS if can_draw(each) and len(unicodedata.normalize("NFD", each)) > 1
]


def test_letters_of_the_languages_of_europe_are_drawn() -> None:
    words = "TÜR ÄÖ ÉÈÊËÇÀÂÎÏÔÛŒ ÅÆØ ÑÍÓÚÁ ĄĆĘŁŃÓŚŹŻ ČĎĚŇŘŠŤŮŽÝ ŐŰ ĂȘȚÞÐĐ ĞŞİ"
    assert all(map(can_draw, words)), [each for each in words if not can_draw(each)]
    left = {each for each in LETTERS if not can_draw(each)}
    assert left == {"Ħ", "Ĳ", "ĸ", "Ŀ", "Ŋ", "Ŧ"} & set(LETTERS)


@pytest.mark.parametrize("rows", [4, 5, 8, 12])
def test_a_marked_letter_is_not_its_letter_and_as_high_as_any(rows: int) -> None:
    for each in MARKED:
        drawn, base = (draw(e, 60, rows) for e in (each, unicodedata.normalize("NFD", each)[0]))
        assert len(drawn) == rows == len(base) and drawn != base, each


def test_where_letters_are_high_enough_no_mark_is_taken_for_another() -> None:
    """From eight rows on; in smaller ones the row of a mark is too low to tell a caron from dots."""
    drawn = {each: tuple(draw(each, 60, 8)) for each in MARKED}
    assert not [(a, b) for a, b in combinations(MARKED, 2) if drawn[a] == drawn[b]]


def test_a_letter_typed_in_two_characters_is_the_same() -> None:
    assert draw("TU\u0308R", 40, 4) == draw("Tür", 40, 4) != draw("Tur", 40, 4)


def test_what_cannot_be_drawn_stands_in_plain_text() -> None:
    assert draw("Ŋaŧ", 40, 4) == ["Ŋaŧ"] and draw("Дверь", 40, 4) == ["Дверь"]
