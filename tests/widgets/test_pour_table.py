"""The pour table and the time line as strings."""

from __future__ import annotations

from booth.widgets.rows import strings, width_of
from booth.widgets.tables import lay_out_pours as lay_out
from booth.words.shown import PourRow, Pours, Tone

ROWS = (
    PourRow("clear", "364 ml", "364 ml", Tone.GOOD),
    PourRow("hardener", "182 ml", "545 ml", Tone.READY),
    PourRow("thinner", "55 ml", "600 ml", Tone.PLAIN),
)


def test_each_pour_with_its_amount_and_its_mark() -> None:
    drawn = strings(lay_out(Pours(ROWS), 52, 4))
    assert drawn[0].split() == ["pour", "up", "to"]
    assert drawn[1].split() == ["√", "clear", "364", "ml", "364", "ml"]
    assert drawn[2].split() == ["►", "hardener", "182", "ml", "545", "ml"]
    assert drawn[3].split() == ["·", "thinner", "55", "ml", "600", "ml"]
    # The words stand over the end of their figures.
    assert drawn[0].rstrip().endswith("up to")
    assert len(drawn[0].rstrip()) == len(drawn[1].rstrip())


def test_large_figures_do_not_run_into_each_other() -> None:
    rows = (
        PourRow("base", "1,234.5 fl oz", "1,234.5 fl oz", Tone.GOOD),
        PourRow("hardener", "134.2 fl oz", "1,368.7 fl oz", Tone.READY),
    )
    for width in (52, 80, 160):
        drawn = strings(lay_out(Pours(rows), width, 3))
        assert "1,234.5 fl oz  1,234.5 fl oz" in drawn[1]
        assert "134.2 fl oz  1,368.7 fl oz" in drawn[2]
        assert drawn[0].rstrip().endswith("up to")


def test_any_size_is_filled_exactly() -> None:
    for width in (1, 10, 30, 53, 160):
        for height in (1, 2, 4, 9):
            rows = lay_out(Pours(ROWS), width, height)
            assert len(rows) == height
            assert all(width_of(row) == width for row in rows)


def test_the_pour_to_do_stays_in_sight() -> None:
    many = tuple(PourRow(f"part {n}", "", "", Tone.GOOD) for n in range(8)) + ROWS[1:2]
    assert "hardener" in "".join(strings(lay_out(Pours(many), 52, 4)))


def test_names_are_shown_as_they_are() -> None:
    odd = (PourRow("[bold]\x1b[2Jx", "1 ml", "1 ml", Tone.READY),)
    text = "".join(strings(lay_out(Pours(odd), 60, 2)))
    assert "[bold]␛[2Jx" in text and "\x1b" not in text
