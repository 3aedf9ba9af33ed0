"""Words in a column of their own, and the log under the steps: whole words, the newest at the bottom."""

from __future__ import annotations

from booth.widgets.log_tail import LogLine
from booth.widgets.log_tail import lay_out as lay_out_log
from booth.widgets.room import MOST_TEXT
from booth.widgets.rows import strings
from booth.widgets.said import lay_out
from booth.words.shown import Page

SENTENCE = (
    "The fan is 252 mm wide; the product asks for 254 to 305 mm. Open the fan, shoot paper again."
)


def test_words_run_no_wider_than_they_are_read() -> None:
    text = strings(lay_out(Page((("text", SENTENCE * 3),)), 160, 8))
    assert max(len(row.rstrip()) for row in text) <= MOST_TEXT
    assert "".join("".join(text).split()) == "".join((SENTENCE * 3).split())


def test_what_goes_on_hangs_under_the_words() -> None:
    text = strings(lay_out(Page((("text", f"▲ {SENTENCE}"), ("text", "  later"))), 40, 8))
    assert text[0].startswith("▲ The fan") and text[1].startswith("  ") and text[1][2] != " "
    assert any(row.startswith("  later") for row in text)


def test_where_not_all_fits_what_is_done_goes_first_then_an_ellipsis_says_so() -> None:
    page = Page(
        (*(("done", f"√ line {n}") for n in range(4)), ("now", "→ mask"), ("text", "  tack"))
    )
    text = strings(lay_out(page, 30, 3))
    assert "mask" in text[1] and "tack" in text[2] and "line 3" in text[0]
    text = strings(lay_out(Page((("text", SENTENCE * 2),)), 30, 3))
    assert text[2].rstrip().endswith("…") and len(text) == 3


LOG = (
    LogLine("2025-06-14", "13:30", "batch 1 mixed: clear 364 ml + hardener 182 ml"),
    LogLine("2025-06-15", "13:50", "× VOIDED air: inlet 2.30 bar", True),
    LogLine("2025-06-15", "13:53", "air: inlet 1.98 bar"),
)


def test_the_log_has_whole_entries_the_newest_at_the_bottom() -> None:
    text = strings(lay_out_log(LOG, 32, 10))
    assert text[-1].startswith("13:53 air: inlet 1.98 bar")
    assert text[-3].startswith("13:50 × VOIDED") and text[-2].strip() == "bar"
    # The day stands where it turns, and with the head that of the first.
    assert text[-4].strip() == "2025-06-15"
    assert text[-6].startswith("13:30 batch 1") and text[-5].startswith("      ")
    assert text[-7].strip() == "log 2025-06-14"
    text = strings(lay_out_log(LOG, 32, 5))
    assert [row[:5].strip() for row in text] == ["", "log 2", "13:50", "", "13:53"], text
    assert strings(lay_out_log((), 32, 4)) == [" " * 32] * 4
