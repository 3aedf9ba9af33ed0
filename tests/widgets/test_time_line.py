"""The time line as strings: columns are reckoned by hand."""

from __future__ import annotations

import pytest

from booth.widgets.rows import strings, width_of
from booth.widgets.time_line import TimelineView, lay_out
from booth.words.shown import LineBlock, LineRow, Timeline, Tone
from tests.widgets.bench_app import WidgetApp, screen_lines

#: 40 columns of a minute each, from ten minutes ago on.
LINE = Timeline(
    rows=(
        LineRow(
            "door",
            (
                LineBlock(-600, -300, Tone.RUNNING, "1", done=True),
                LineBlock(-300, 300, Tone.WAIT),
                LineBlock(300, 600, Tone.READY),
                LineBlock(600, 900, Tone.RUNNING, "2"),
            ),
            "last coat 15:25",
        ),
        LineRow("batch 1", (LineBlock(-600, 900, Tone.GOOD), LineBlock(900, 1500, Tone.LATE))),
    ),
    start_s=-600,
    end_s=1800,
    ticks=((-300, "15:05"), (600, "15:20")),
)


def test_blocks_stand_at_their_time() -> None:
    head, rule, door, pot = strings(lay_out(LINE, 48, 4))
    assert door == "door    " + "  1  " + "░" * 10 + "─" * 5 + "  2  " + " " * 15
    assert pot == "batch 1 " + "═" * 25 + "▓" * 10 + " " * 5
    assert rule[8 + 10] == "▼" and rule[8 + 5] == "┴" and rule[8 + 20] == "┴"
    assert head[8:].index("15:05") == 5 - 2
    assert head[8:].index("15:20") == 20 - 2


def test_now_runs_through_what_is_empty() -> None:
    empty = Timeline((LineRow("hood", ()),), -600, 1800)
    assert strings(lay_out(empty, 45, 3))[-1] == "hood " + " " * 10 + "┊" + " " * 29


def test_a_short_coat_on_a_long_line_is_still_seen() -> None:
    long = Timeline((LineRow("door", (LineBlock(0, 30, Tone.RUNNING, "1"),)),), 0, 86400)
    assert strings(lay_out(long, 60, 3))[-1][5] == "1"


def test_width_brings_words_and_height_brings_thickness() -> None:
    wide = strings(lay_out(LINE, 120, 4))
    assert wide[2].endswith("last coat 15:25")
    thick = strings(lay_out(LINE, 48, 8))
    assert len(thick) == 8
    assert sum("░░░" in row for row in thick) == 2


@pytest.mark.parametrize("width", [1, 12, 31, 48, 90, 200])
@pytest.mark.parametrize("height", [1, 2, 3, 4, 7, 20])
def test_any_size_is_filled_exactly(width: int, height: int) -> None:
    rows = lay_out(LINE, width, height)
    assert len(rows) == height
    assert all(width_of(row) == width for row in rows)


async def test_the_widget_is_as_high_as_its_rows() -> None:
    app = WidgetApp(TimelineView())
    async with app.run_test(size=(80, 24)) as pilot:
        app.query_one(TimelineView).shown = LINE
        await pilot.pause()
        assert app.query_one(TimelineView).size.height == 4
        text = "\n".join(screen_lines(app))
        assert "door" in text and "15:20" in text
