"""The states are told apart without colour."""

from __future__ import annotations

import pytest
from rich.cells import cell_len

from booth.widgets.lettering.bigfigure import can_draw
from booth.words.shown import Tone


def test_words_shapes_and_classes_are_distinct() -> None:
    for given in ("shape", "css", "word", "urgency"):
        assert len({getattr(tone, given) for tone in Tone}) == len(Tone), given


@pytest.mark.parametrize("tone", Tone)
def test_each_shape_is_one_cell_and_can_be_drawn_large(tone: Tone) -> None:
    assert cell_len(tone.shape) == 1
    assert can_draw(f"{tone.shape} {tone.word}")


def test_late_is_the_most_urgent_and_plain_the_least() -> None:
    ordered = sorted(Tone, key=lambda tone: tone.urgency)
    assert ordered[:3] == [Tone.LATE, Tone.CLOSING, Tone.READY]
    assert ordered[-1] is Tone.PLAIN
