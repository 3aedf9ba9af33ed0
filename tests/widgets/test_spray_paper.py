"""The drawn test pattern, as strings."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from booth.widgets.rows import strings, width_of
from booth.widgets.spray_paper import SHADES, SprayPaper, draw_gallery, draw_paper
from booth.words.shown import Gallery, Paper
from tests.widgets.bench_app import WidgetApp, screen_lines

EVEN = Paper((1.0,))
MIDDLE = Paper((0, 1, 3, 9, 3, 1, 0))
ENDS = Paper((9, 5, 2, 1, 2, 5, 9))
ONE_END = Paper((0, 1, 2, 4, 6, 8, 9))


def weight(lines: list[str], first: float, last: float) -> int:
    """How dark the columns from `first` to `last`, shares of the width, are together."""
    width = len(lines[0])
    cut = [line[int(first * width) : int(last * width)] for line in lines]
    return sum(SHADES.index(char) for line in cut for char in line)


def test_the_weight_lies_where_the_film_is() -> None:
    middle = strings(draw_paper(MIDDLE, 48, 7))
    assert weight(middle, 1 / 3, 2 / 3) > 2 * (weight(middle, 0, 1 / 3) + weight(middle, 2 / 3, 1))
    ends = strings(draw_paper(ENDS, 48, 7))
    assert weight(ends, 1 / 3, 2 / 3) < weight(ends, 0, 1 / 3)
    one = strings(draw_paper(ONE_END, 48, 7))
    assert weight(one, 0.5, 1) > 2 * weight(one, 0, 0.5)


def test_a_straight_even_pattern_is_symmetric_and_a_bent_one_is_not() -> None:
    even = strings(draw_paper(EVEN, 40, 6))
    assert even == even[::-1] == [line[::-1] for line in even]
    bent = strings(draw_paper(Paper((1.0,), bend=0.6), 40, 6))
    assert bent != bent[::-1]
    assert bent[0].strip() and not bent[-1].strip()  # the bow: the ends hang down, the middle up


def test_a_pattern_in_spurts_has_gaps_and_is_always_the_same() -> None:
    broken = Paper((1.0,), broken=True)
    assert draw_paper(broken, 40, 6) == draw_paper(broken, 40, 6)
    middle = strings(draw_paper(broken, 40, 6))[3]
    assert "█" in middle and {"░", " "} & set(middle)


def test_zones_stand_beneath_their_place() -> None:
    paper = Paper((3, 6, 9, 6, 3), words=("3", "6", "9", "6", "3"))
    *_, last = strings(draw_paper(paper, 40, 6))
    assert last.split() == ["3", "6", "9", "6", "3"]
    assert "9" not in "".join(strings(draw_paper(paper, 40, 3)))


def test_a_gallery_names_every_pattern() -> None:
    papers = ((EVEN, "even"), (MIDDLE, "heavy middle"), (ENDS, "both ends"), (ONE_END, "one end"))
    gallery = Gallery(papers)
    text = "\n".join(strings(draw_gallery(gallery, 52, 12)))
    for _, name in papers:
        assert name in text
    assert strings(draw_gallery(gallery, 20, 1)) == [" " * 20]


@given(
    st.lists(st.floats(0, 9), min_size=1, max_size=9),
    st.integers(0, 90),
    st.integers(0, 30),
    st.floats(-1, 1),
    st.booleans(),
)
def test_every_size_is_filled_exactly(
    films: list[float], width: int, height: int, bend: float, broken: bool
) -> None:
    paper = Paper(tuple(films), bend, broken, ("1", "2", "3"))
    drawings = (
        draw_paper(paper, width, height),
        draw_gallery(Gallery(((paper, "x"),) * 7), width, height),
    )
    for rows in drawings:
        assert len(rows) == (height if width else 0)
        assert all(width_of(row) == width for row in rows)


class Listening(WidgetApp):
    """Hears what was picked."""

    def on_drawn_picked(self, event: SprayPaper.Picked) -> None:
        self.heard.append(event.index)


async def test_a_click_picks_from_the_gallery_and_a_pattern_takes_its_place() -> None:
    paper = SprayPaper()
    app = Listening(paper)
    async with app.run_test(size=(52, 14)) as pilot:
        paper.shown = Gallery(((EVEN, "even"), (MIDDLE, "heavy middle"), (ENDS, "both ends")))
        await pilot.pause()
        assert "heavy middle" in "\n".join(screen_lines(app))
        await pilot.click(SprayPaper, offset=(20, 1))
        paper.shown = MIDDLE
        await pilot.pause()
        assert "even" not in "\n".join(screen_lines(app))
        await pilot.click(SprayPaper, offset=(20, 1))
    assert app.heard == [1]
