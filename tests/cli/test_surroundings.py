"""Where the screen can be drawn, and what is said where it cannot."""

from __future__ import annotations

import re

import pytest

from booth.cli.surroundings import unfit


@pytest.mark.parametrize("encoding", ["utf-8", "UTF-8", "utf8", "U8", "cp65001"])
@pytest.mark.parametrize("term", ["xterm-256color", "linux", "screen", "tmux-256color", ""])
def test_a_terminal_in_utf8_will_do(encoding: str, term: str) -> None:
    assert unfit(encoding, {"TERM": term}, "linux") == ""


@pytest.mark.parametrize("term", ["dumb", "unknown"])
def test_a_terminal_that_cannot_place_text_is_told_by_its_name(term: str) -> None:
    said = unfit("utf-8", {"TERM": term}, "linux")
    assert repr(term) in said and "export TERM=" in said


@pytest.mark.parametrize(
    "encoding", ["ascii", "latin-1", "iso8859-15", "cp437", "gb18030", "utf-16"]
)
@pytest.mark.parametrize(
    ("environment", "platform", "say"),
    [
        ({}, "linux", "export LANG=C.UTF-8"),
        ({"LANG": "de_DE.ISO-8859-1"}, "linux", "export LANG=C.UTF-8"),
        ({"LANG": "C", "LC_CTYPE": "C"}, "linux", "export LC_CTYPE=C.UTF-8"),
        ({"LANG": "C", "LC_ALL": "C"}, "linux", "export LC_ALL=C.UTF-8"),
        ({"LC_ALL": "C"}, "darwin", "export LC_ALL=en_US.UTF-8"),
        ({"LC_ALL": "C", "PYTHONIOENCODING": "ascii"}, "linux", "unset PYTHONIOENCODING"),
        ({"PYTHONIOENCODING": "cp437"}, "win32", "set PYTHONIOENCODING="),
        ({}, "win32", "set PYTHONUTF8=1"),
    ],
)
def test_another_encoding_is_told_with_the_one_thing_to_say(
    encoding: str, environment: dict[str, str], platform: str, say: str
) -> None:
    said = unfit(encoding, environment, platform)
    assert encoding in said
    assert re.search(r"Say: (.*)\Z", said).group(1) == say  # type: ignore[union-attr]
