"""The list to pick from: the picked line stays in sight, and what must be seen is."""

from __future__ import annotations

from booth.widgets.pick_list import lay_out
from booth.widgets.rows import strings
from booth.words.lines import PickLine
from booth.words.pictures import Lines


def test_list_keeps_the_picked_line_in_sight() -> None:
    lines = tuple(PickLine(f"line {n}", "behind", n == 3) for n in range(12))
    for picked in range(12):
        drawn = strings(lay_out(Lines(lines, picked), 30, 5))
        assert len(drawn) == 5
        assert all(len(row) == 30 for row in drawn)
        assert sum(row.startswith("→ ") for row in drawn) == 1
        assert any(row.startswith(f"→ line {picked} ") for row in drawn)
    assert strings(lay_out(Lines(lines, 0), 30, 5))[-1].endswith("↓")
    assert strings(lay_out(Lines(lines, 11), 30, 5))[0].endswith("↑")
    assert lay_out(Lines(lines, 0), 0, 5) == []


def test_list_is_spread_where_there_is_room() -> None:
    lines = tuple(PickLine(f"line {n}") for n in range(4))
    assert [bool(row.strip()) for row in strings(lay_out(Lines(lines, 0), 30, 8))] == [
        True,
        False,
    ] * 4
    assert [bool(row.strip()) for row in strings(lay_out(Lines(lines, 0), 30, 7))] == [True] * 4 + [
        False
    ] * 3


def test_what_stands_behind_gives_way_unless_it_must_be_seen() -> None:
    lines = (PickLine("dust", "specks"), PickLine("blush", "seen: door", True))
    narrow, wide = (
        strings(lay_out(Lines(lines, 0), 24, 2)),
        strings(lay_out(Lines(lines, 0), 60, 2)),
    )
    assert ("specks" in narrow[0], "specks" in wide[0]) == (False, True)
    assert "seen: door" in narrow[1] and "seen: door" in wide[1]
