"""The table of parts, as strings."""

from __future__ import annotations

import pytest
from msgspec.structs import replace
from rich.cells import cell_len

from booth.widgets.rows import strings
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
    assert all("coat 2 flash-off" in line and "WAIT   ~21:02:03" in line for line in wide)


def test_the_chosen_row_stays_in_sight() -> None:
    shown = lines(60, chosen=3, height=2)
    assert shown[0].startswith("→ xxx") and shown[1].strip() == "+3 more"


def test_where_not_all_fit_the_most_urgent_are_seen_and_the_others_counted() -> None:
    late = replace(ROWS[2], name="sills", tone=Tone.LATE, word="LATE")
    rows = (*ROWS[:2], late, replace(ROWS[3], name="hood"))
    drawn = strings(lay_out(Parts(rows, 3), 60, 3))
    assert [line.split()[0] for line in drawn] == ["sills", "→", "+2"]


def test_each_row_has_its_own_edge_behind_it() -> None:
    rows = (replace(ROWS[0], edge=0.5), replace(ROWS[1], edge=None), replace(ROWS[2], edge=1.0))
    drawn = lay_out(Parts(rows, 0), 60, 3)
    passed = [sum(cell_len(t) for t, style in row if "reverse" in style) for row in drawn]
    assert passed == [30, 0, 60]


def test_a_long_word_of_a_state_does_not_run_into_its_time() -> None:
    rows = (
        PartRow("frame 1", "1/1", Tone.CAUTION, "NOT KNOWN", "31:11", "dust-free"),
        PartRow("frame 2", "0/1", Tone.PLAIN, "", "", "coat 1 to do"),
        PartRow("frame 3", "1/1", Tone.CAUTION, "CHECK CLOCK", "clock?", "dust-free"),
    )
    drawn = strings(lay_out(Parts(rows, 0), 52, 4))
    assert drawn[0].rstrip().endswith("▲ NOT KNOWN   31:11")
    assert drawn[2].rstrip().endswith("▲ CHECK CLOCK  clock?")
