"""What was tried, read from the rows: each with its own edge on one scale, the latest always in sight."""

from __future__ import annotations

from msgspec.structs import replace

from booth.widgets.chart import LINE, WANTED
from booth.widgets.rows import Row, strings
from booth.widgets.tries import BETWEEN, CHART_FROM, END, lay_out
from booth.words.shown import Band, Tone
from booth.words.tried import Chart, Curve, Spot, Tries, Try

BAND = Band(0.4, 0.6, "20.0", "23.0", "s")
RUNS = Tries(
    "runs",
    (
        Try("13:33  0.0 % thinner", "27.8", Tone.CAUTION, 0.98),
        Try("13:45  5.6 % thinner", "21.4", Tone.GOOD, 0.5),
        Try("13:46", "15.0", Tone.CAUTION, 0.02),
    ),
    BAND,
    ("mean 21.4 s",),
)


def reversed_cells(row: Row) -> int:
    """How many cells of a row its edge has passed."""
    return sum(len(text) for text, style in row if style.endswith("reverse"))


def test_each_try_has_its_words_its_figure_its_sign_and_its_edge() -> None:
    rows = lay_out(RUNS, 60, 10)
    text = strings(rows)
    assert text[0].strip() == "runs" and len(rows) == 10
    for at, (words, figure, sign) in enumerate(
        (("13:33  0.0 % thinner", "27.8", "▲"), ("13:45", "21.4", "√"), ("13:46", "15.0", "▲")), 1
    ):
        assert words in text[at] and text[at].rstrip().endswith(f"{figure} {sign}")
    assert [reversed_cells(rows[at]) for at in (1, 2, 3)] == [58, 30, 1]


def test_the_wanted_band_stands_under_the_tries_and_its_ends_go_through_them() -> None:
    rows = lay_out(RUNS, 60, 10)
    text = strings(rows)
    bar = text[4]
    assert bar.index("▀") == 24 and bar.rindex("▀") == 35
    assert "20.0" in text[5] and "23.0" in text[5] and "s" in text[5]
    assert text[3][24] == END and text[3][36] == END
    assert "mean 21.4 s" in text[6]


def test_where_not_all_fit_the_oldest_go_and_no_figure_is_cut() -> None:
    many = replace(RUNS, tries=tuple(replace(RUNS.tries[1], figure=f"{n}.5") for n in range(30)))
    for height in (3, 6, 9, 14):
        text = strings(lay_out(many, 40, height))
        assert len(text) == height and any("29.5 √" in row for row in text)
    text = strings(lay_out(RUNS, 16, 8))
    for figure in ("27.8 ▲", "21.4 √", "15.0 ▲"):
        assert any(figure in row for row in text)


def test_what_lies_between_two_teeth_is_drawn_between_them() -> None:
    read = Try("hood", "50-63", Tone.PLAIN, 0.25, 0.5)
    row = lay_out(Tries("film", (read,)), 80, 4)[1]
    text = strings([row])[0]
    assert text.index(BETWEEN) == 20 and text.rindex(BETWEEN) == 39
    assert reversed_cells(row) == 20
    assert all("$tone" not in style for text, style in row if style.endswith("reverse"))


def test_a_try_that_is_words_only_has_all_of_them() -> None:
    said = "13:10  at least 192 m³/h against fire, the room moves 1800 m³/h, open front 1.20 m²"
    text = strings(lay_out(Tries("air", (Try(said),)), 40, 6))
    assert " ".join(" ".join(text[1:]).split()) == " ".join(said.split())
    assert text[2].startswith("       ")


def test_text_that_people_wrote_steers_nothing() -> None:
    text = "\n".join(strings(lay_out(Tries("[/ x", (Try("\x1b[2J door", "1"),)), 40, 4)))
    assert "\x1b" not in text and "␛[2J door" in text and "[/ x" in text


CHART = Chart(
    "delivery",
    (
        Spot(0.0, 0.25, "■", Tone.CAUTION, "172"),
        Spot(0.5, 0.55, "○", Tone.PLAIN, "205"),
        Spot(1.0, 0.75, "■", Tone.GOOD, "228"),
    ),
    (Curve(((0.0, 0.25), (1.0, 0.75)), "needle"),),
    ((0.0, "1.0"), (1.0, "2.0")),
    ((0.5, "251"), (0.9, "296"), (0.52, "250")),
    "turns",
    0.5,
    0.9,
)


def drawn(width: int = 60, height: int = 14) -> list[str]:
    return strings(lay_out(Tries("catches", (Try("a", "1"),), chart=CHART), width, height))


def test_where_there_is_room_the_chart_stands_for_the_rows_else_the_rows_do() -> None:
    assert drawn()[0].startswith("delivery")
    assert drawn(CHART_FROM[0] - 1)[0].startswith("catches")
    assert drawn(height=CHART_FROM[1])[0].startswith("catches")
    assert len(drawn()) == 14


def test_marks_stand_where_their_shares_say_by_their_own_shapes() -> None:
    rows = drawn()[1:-2]  # without title and foot
    left = 5  # three figures, a blank, the scale
    wide = 60 - left
    tall = len(rows)
    for share_x, share_y, mark in ((0.0, 0.25, "■"), (0.5, 0.55, "○"), (1.0, 0.75, "■")):
        y, x = tall - 1 - int(share_y * tall), left + round(share_x * (wide - 1))
        assert rows[y][x] == mark, (y, x, rows)
    for said in ("172", "205", "228"):
        assert any(said in row for row in rows)


def test_the_curve_goes_from_its_first_to_its_last_point() -> None:
    rows = drawn()[1:-2]
    cells = [(x, y) for y, row in enumerate(rows) for x, cell in enumerate(row) if cell in LINE]
    assert {x for x, _ in cells} >= set(range(12, 28))
    down = [y for _, y in sorted(cells)]
    assert down == sorted(down, reverse=True), "it rises from left to right"


def test_the_scale_is_thick_where_it_is_wanted_and_names_the_ends_first() -> None:
    rows = drawn()[1:-2]
    thick = [y for y, row in enumerate(rows) if row[4] == WANTED]
    tall = len(rows)
    assert thick == list(range(tall - 1 - int(0.9 * tall), tall - int(0.5 * tall)))
    beside = [row[:3].strip() for row in rows]
    assert "251" in beside and "296" in beside and "250" not in beside
    foot = drawn()[-1]
    assert foot.index("1.0") < foot.index("turns")
