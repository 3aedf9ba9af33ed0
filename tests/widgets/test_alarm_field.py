"""The alarm as drawn: what carries six metres, and that nothing of it is cut in mid-word."""

from __future__ import annotations

import math

import pytest

from booth.widgets.alarm_field import carries, field, ground, strip, strip_rows
from booth.widgets.lettering.bigfigure import draw
from booth.widgets.rows import strings
from booth.words.alarm_words import DEEDS, STATES
from booth.words.shown import AlarmFace, Tone

SIZES = ((80, 24), (100, 30), (200, 50))
#: A 14-inch screen of 16:9 is 174.3 mm high (the diagonal by Pythagoras).
SCREEN_MM = 14 * 25.4 * 9 / math.hypot(16, 9)
#: Everything that an alarm can ask for.
EVERY_DEED = sorted({*DEEDS.values(), "COAT 2", "COAT 11", "ABRADE", "ABRADE FIRST", "DO NOT COAT"})


def face(
    whose: str = "hood", deed: str = "COAT 2", word: str = "READY", **more: object
) -> AlarmFace:
    line = f"{whose}: ready for coat 2 since 10:12 (3:10)"
    return AlarmFace(whose, word, deed, Tone.READY, line, "1 of 3", **more)  # type: ignore[arg-type]


def letterings(rows: list[str]) -> list[list[str]]:
    """What is drawn in blocks: runs of rows with something in them, under the sentence."""
    found: list[list[str]] = [[]]
    for row in rows[1:]:
        if row.strip():
            found[-1].append(row)
        elif found[-1]:
            found.append([])
    return [each for each in found if each]


@pytest.mark.parametrize("rows", range(18, 61))
def test_a_letter_is_16_minutes_of_arc_high_from_six_metres(rows: int) -> None:
    # 16 minutes of arc are the least for reading (ISO 9241-303, from memory, not checked); a tenth
    # of a minute is a sixth of a millimetre on the screen, less than its frame hides.
    high_mm = SCREEN_MM / rows * carries(rows)
    assert math.degrees(math.atan(high_mm / 6000)) * 60 >= 15.9


@pytest.mark.parametrize(("width", "height"), SIZES)
@pytest.mark.parametrize("deed", EVERY_DEED)
@pytest.mark.parametrize("word", [word for word, _ in STATES.values()])
def test_whose_deed_and_state_carry(width: int, height: int, deed: str, word: str) -> None:
    drawn = letterings(strings(field(face("left door", deed, word), width, height - 1)))
    assert len(drawn) == 3, "whose, what to do, the state, with room between"
    assert all(len(each) >= carries(height) for each in drawn)
    # The state is drawn whole, as it is drawn alone in the same rows.
    assert [row.strip() for row in drawn[2]] == [
        row.strip() for row in draw(word, width - 4, len(drawn[2]))
    ]


@pytest.mark.parametrize(("width", "height"), SIZES)
def test_a_long_name_loses_whole_words_from_its_end(width: int, height: int) -> None:
    name = "rear bumper cover with all its many small trim pieces"
    shown = letterings(strings(field(face(name), width, height - 1)))[0]
    starts = [" ".join(name.split()[:count]) for count in range(1, 11)]
    tall = len(shown)
    assert tall >= carries(height)
    assert [r.strip() for r in shown] in [
        [row.strip() for row in draw(each, width - 4, tall)] for each in starts
    ]


@pytest.mark.parametrize(("width", "height"), SIZES)
@pytest.mark.parametrize("deed", EVERY_DEED)
def test_the_strip_says_whose_and_what_in_one_row_or_by_turns(
    width: int, height: int, deed: str
) -> None:
    tall = strip_rows(height)
    seen = set()
    for beat in (False, True):
        rows = strings(strip(face("left door", deed, beat=beat), width, tall))
        (lettering,) = letterings(rows)
        assert len(lettering) == carries(height)
        seen.add("\n".join(lettering))
    assert len(seen) == (
        1 if len(draw(f"left door {deed}", width - 2, tall - 1)) == tall - 1 else 2
    )


def test_the_sentence_its_place_and_the_key_stand_above() -> None:
    for rows in (field(face(), 80, 22), strip(face(), 80, 5)):
        head = strings(rows)[0]
        assert "hood: ready for coat 2 since 10:12 (3:10)" in head
        assert head.rstrip().endswith("1 of 3   Esc/PgUp silences")


@pytest.mark.parametrize(("width", "height"), SIZES)
def test_the_whole_of_it_is_filled(width: int, height: int) -> None:
    shown = face()
    for rows in (field(shown, width, height - 1), strip(shown, width, strip_rows(height))):
        assert {style for row in rows for _, style in row} == {ground(shown)}


def test_every_call_has_a_colour_of_its_own_and_only_the_gravest_blinks() -> None:
    grounds, blinking = set(), []
    for word, tone in STATES.values():
        steady, beaten = (
            field(AlarmFace("hood", word, "COAT 2", tone, "hood", beat=beat), 80, 22)
            for beat in (False, True)
        )
        grounds.add(steady[0][0][1])
        if steady != beaten:
            blinking.append(word)
    assert len(grounds) == len(STATES) and blinking == ["STOP"]
