"""``booth new``: a profile begun from another one or from nothing, never over a file."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from booth.cli.dispatch import run
from booth.profile.begin import empty_text
from booth.profile.model import Profile
from booth.profile.read import read_profile, read_text


@pytest.fixture(autouse=True)
def own(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("BOOTH_HOME", str(tmp_path))
    return tmp_path / "profiles"


def test_a_new_profile_reads_well_and_says_where_it_is(
    own: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(["new", "Deck oil"]) == 0
    path = own / "deck-oil.toml"
    found = read_profile(path)
    assert isinstance(found, Profile) and found.name == "Deck oil" and not found.demo
    assert str(path) in capsys.readouterr().out


def test_every_line_of_it_is_right_once_its_mark_is_taken_off() -> None:
    text = empty_text('Half "inch"')
    bare = re.sub(r"^# (?=[a-z_]+ = |\[)", "", text, flags=re.MULTILINE)
    found = read_text(bare, "all")
    # Examples that contradict one another are told as such; no line is unknown or misread.
    faults = () if isinstance(found, Profile) else found
    assert not [each.text for each in faults if "unknown" in each.text or "a quantity" in each.text]
    assert len(bare.splitlines()) == len(text.splitlines()) > 80


def test_a_copy_keeps_the_comments_and_is_no_demo(own: Path) -> None:
    assert run(["new", "My clear", "--from", "two-pack-clear"]) == 0
    text = (own / "my-clear.toml").read_text("utf-8")
    found = read_profile(own / "my-clear.toml")
    assert isinstance(found, Profile) and not found.demo
    assert found.name == "My clear" and found.source.startswith("copied from two-pack-clear")
    assert "# Copy this file" in text


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["new", ""], "a name is wanted"),
        (["new", "a\nb\x07"], "a name is wanted"),
        (["new", "Oil", "--from", "nix"], 'No coating profile "nix"'),
        (["new", "Two-pack clear"], "there is a profile called"),
    ],
)
def test_what_cannot_be_is_told(
    words: list[str], says: str, own: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(words) == 2
    assert says in capsys.readouterr().err
    assert not list(own.glob("*.toml"))


def test_a_file_that_is_there_is_never_written_over(own: Path) -> None:
    own.mkdir(parents=True)
    (own / "deck-oil.toml").write_text("not a profile", "utf-8")
    with pytest.raises(OSError, match=r"."):
        run(["new", "Deck oil"])
    assert (own / "deck-oil.toml").read_text("utf-8") == "not a profile"
