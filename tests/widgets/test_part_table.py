"""The table of parts, as strings."""

from __future__ import annotations

import pytest
from rich.cells import cell_len

from booth.widgets.tables import lay_out_parts as lay_out
from booth.words.shown import PartRow, Parts, Tone

ROWS = tuple(
    PartRow(name, "1/3", Tone.WAIT, "WAIT", "21:02:03", "coat 2 flash-off", estimate=True)
    for name in ("left door", "left fender", "車のドア 左", "x" * 40)
)


def lines(width: int, chosen: int = 0, height: int = 4) -> list[str]:
    return ["".join(text for text, _ in row) for row in lay_out(Parts(ROWS, chosen), width, height)]


@pytest.mark.parametrize("width", range(1, 140))
def test_every_row_has_the_width(width: int) -> None:
    assert [cell_len(line) for line in lines(width)] == [width] * 4


def test_parts_can_be_told_apart_beside_the_step_list_of_a_window_of_80() -> None:
    first, second, *_ = lines(52)
    assert "left door " in first and "left fender " in second
    assert "WAIT" in first and "~21:02:03" in first and "coat 2" in first


def test_with_room_nothing_is_cut() -> None:
    wide = lines(100)
    assert "x" * 40 in wide[3] and all("coat 2 flash-off" in line for line in wide)


def test_the_chosen_row_stays_in_sight() -> None:
    shown = lines(60, chosen=3, height=2)
    assert shown[1].startswith("→ xxx") and shown[0].startswith("  車のドア")


def test_a_long_word_of_a_state_does_not_run_into_its_time() -> None:
    rows = (
        PartRow("frame 1", "1/1", Tone.CAUTION, "NOT KNOWN", "31:11", "dust-free"),
        PartRow("frame 2", "0/1", Tone.PLAIN, "", "", "coat 1 to do"),
        PartRow("frame 3", "1/1", Tone.CAUTION, "CHECK CLOCK", "clock?", "dust-free"),
    )
    for shown, words in ((rows[:2], "NOT KNOWN 31:11"), (rows, "CHECK CLOCK    clock?")):
        drawn = ["".join(text for text, _ in row) for row in lay_out(Parts(shown, 0), 52, 4)]
        assert any(words in line for line in drawn), drawn
