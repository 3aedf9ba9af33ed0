"""Whatever stands at a path: its text, or one fault that says why not."""

from __future__ import annotations

import os
import sys
from pathlib import Path

import pytest

from booth.files.faults import Fault
from booth.files.file_text import MOST_BYTES, text_of
from booth.profile.model import Profile
from booth.profile.read import read_profile
from tests.profile.alike import read_bytes

LEAST = 'name = "A"\nsource = "sheet"\n[film]\ncoats = 2\n'


def fault_of(path: str | Path) -> Fault:
    answer = read_profile(path)
    assert not isinstance(answer, Profile)
    assert len(answer) == 1
    assert answer[0].file == os.fspath(path)
    return answer[0]


@pytest.mark.parametrize("bom", [b"", b"\xef\xbb\xbf"])
@pytest.mark.parametrize("ending", [b"\n", b"\r\n"])
def test_a_file_of_any_editor_is_read(tmp_path: Path, bom: bytes, ending: bytes) -> None:
    path = tmp_path / "my clear.toml"
    path.write_bytes(bom + LEAST.encode().replace(b"\n", ending))
    answer = read_profile(path)
    assert isinstance(answer, Profile)
    assert (answer.key, answer.name) == ("my clear", "A")


BYTES = [
    (LEAST.encode("utf-16"), None, "UTF-16", "Save it again as UTF-8"),
    (b"\x00\x01\x02" * 10, None, "bytes that are no text", "another kind of file"),
    (b'name = "A"\nsource = "M\xe4rz"\n', 2, "not UTF-8 (0xE4)", "as UTF-8"),
    (b"#" * (MOST_BYTES + 1), None, "more than 64 kB", "another kind of file"),
]


@pytest.mark.parametrize(("content", "line", "found", "advice"), BYTES)
def test_what_is_no_text_is_told(
    tmp_path: Path, content: bytes, line: int | None, found: str, advice: str
) -> None:
    path = tmp_path / "x.toml"
    path.write_bytes(content)
    fault = fault_of(path)
    assert fault.line == line
    assert found in fault.found
    assert advice in fault.advice


def test_what_is_no_file_is_told(tmp_path: Path) -> None:
    assert "a folder" in fault_of(tmp_path).found
    assert "no such file" in fault_of(tmp_path / "nowhere.toml").found
    assert "cannot be read" in fault_of("a\0b").found
    assert "cannot be read" in fault_of(tmp_path / ("x" * 5000)).found


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no pipes with names")
def test_a_pipe_is_refused_and_not_waited_for(tmp_path: Path) -> None:
    path = tmp_path / "x.toml"
    os.mkfifo(path)
    assert "pipe" in fault_of(path).found


@pytest.mark.skipif(sys.platform == "win32", reason="links need rights there")
def test_a_link_to_itself_is_told(tmp_path: Path) -> None:
    path = tmp_path / "x.toml"
    path.symlink_to(path)
    assert "cannot be read" in fault_of(path).found


def test_a_file_that_may_not_be_read_is_told(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "x.toml"
    path.write_text(LEAST, encoding="utf-8")

    def refuse(*_: object) -> None:
        raise PermissionError(13, "Permission denied")

    # Whoever runs the tests as root may read anything: the refusal is made here.
    monkeypatch.setattr("builtins.open", refuse)
    found = text_of(path)
    assert isinstance(found, Fault)
    assert "may not read" in found.found


HOSTILE = [
    b"a = " + b"[" * 30000,
    b"a = " + b"{a=" * 10000,
    b"a." * 30000 + b"b = 1\n",
    b"[" + b"a." * 30000 + b"b]\n",
    b"a = " + b"9" * 60000,
    b"a = 1e" + b"9" * 60000,
    b'"' + b"\\" * 60000,
    b"[a]\n" * 16000,
    b"[[a]]\n" * 10000,
    b"a=1\n" * 16000,
    b"x y z\n" * 10000,
    b"film.coats = " + b" " * 60000 + b"2",
    b'film.wet = "1' + b" " * 60000 + b'to"',
    b"".join(b"k%d=1\n" % n for n in range(7000)),
]


@pytest.mark.parametrize("content", HOSTILE, ids=range(len(HOSTILE)))
def test_a_hostile_file_is_refused_in_few_words(content: bytes) -> None:
    answer = read_bytes(content, "x.toml")
    assert not isinstance(answer, Profile)
    assert answer
    assert len("\n".join(map(str, answer))) < 20_000
