"""Terminals and fonts that lack signs: what is written there instead, a cell for a cell."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from rich.cells import cell_len

from booth.widgets.cells import ASCII, FULL, WHOLE, Signs, kind_of, signs
from booth.widgets.lettering.bigfigure import QUARTERS
from booth.widgets.rows import ACROSS, UPWARD
from booth.words.shown import Tone

#: What an IBM PC's first set of characters has of blocks, and so every console since (code page 437).
BLOCKS_OF_437 = set(" ▀▄█▌▐")


@pytest.mark.parametrize(
    ("environment", "encoding", "kind"),
    [
        ({}, "utf-8", FULL),
        ({"LANG": "de_DE.UTF-8"}, "utf-8", FULL),
        ({"LANG": "C.UTF-8", "LC_CTYPE": "C.UTF-8"}, "utf-8", FULL),
        # The interpreter writes and says UTF-8 there; the terminal was said to have none.
        ({"LANG": "C"}, "utf-8", ASCII),
        ({"LANG": "C", "LC_CTYPE": "C.UTF-8"}, "utf-8", ASCII),
        ({"LANG": "POSIX"}, "utf-8", ASCII),
        ({"LANG": "de_DE.UTF-8", "LC_ALL": "C"}, "utf-8", ASCII),
        ({"LANG": "de_DE.UTF-8"}, "ascii", ASCII),
        ({"LANG": "de_DE.ISO-8859-1"}, "latin-1", ASCII),
        ({"TERM": "linux"}, "utf-8", WHOLE),
        ({"TERM": "linux", "BOOTH_CELLS": "full"}, "utf-8", FULL),
        ({"LANG": "C", "BOOTH_CELLS": "full"}, "utf-8", FULL),
        ({"BOOTH_CELLS": " Whole "}, "utf-8", WHOLE),
        ({"BOOTH_CELLS": "ascii"}, "utf-8", ASCII),
        ({"BOOTH_CELLS": "full"}, "ascii", ASCII),
        ({"BOOTH_CELLS": "what?"}, "utf-8", FULL),
    ],
)
def test_what_a_terminal_is_drawn_with(
    environment: dict[str, str], encoding: str, kind: str
) -> None:
    assert kind_of(environment, encoding) == kind
    assert (signs(environment, encoding) is None) == (kind == FULL)


@given(st.text())
def test_in_ascii_there_is_nothing_else_and_every_cell_stays_where_it_is(text: str) -> None:
    drawn = text.translate(Signs(ASCII))
    assert drawn.isascii()
    assert all(
        cell_len(each.translate(Signs(ASCII))) == cell_len(each) for each in text if each >= " "
    )


def test_whole_cells_need_only_the_blocks_that_every_font_has() -> None:
    drawn = "".join((QUARTERS, ACROSS, UPWARD)).translate(Signs(WHOLE))
    assert set(drawn) <= BLOCKS_OF_437
    assert "±é►√".translate(Signs(WHOLE)) == "±é►√"


def test_every_state_keeps_a_shape_of_its_own() -> None:
    shapes = [tone.shape.translate(Signs(ASCII)) for tone in Tone]
    # Go on and moving point the same way; their words differ.
    assert len(set(shapes)) >= len(shapes) - 1
    assert "Bogenspülung 21 °C, 60 µm".translate(Signs(ASCII)) == "Bogenspulung 21 oC, 60 um"


def test_escapes_are_written_as_they_are() -> None:
    assert "\x1b[38;2;1;2;3m█\x1b[0m\r\n".translate(Signs(ASCII)) == "\x1b[38;2;1;2;3m#\x1b[0m\r\n"
