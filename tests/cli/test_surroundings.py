"""Where the screen can be drawn, and what is said where it cannot."""

from __future__ import annotations

import pytest

from booth.cli.surroundings import unfit


@pytest.mark.parametrize("term", ["xterm-256color", "linux", "screen", "tmux-256color", ""])
def test_a_terminal_that_can_place_text_will_do(term: str) -> None:
    assert unfit({"TERM": term}) == ""


@pytest.mark.parametrize("term", ["dumb", "unknown"])
def test_a_terminal_that_cannot_place_text_is_told_by_its_name(term: str) -> None:
    said = unfit({"TERM": term})
    assert repr(term) in said and "export TERM=" in said
