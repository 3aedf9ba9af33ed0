"""A profile is saved whole under a new name, and nothing that is there is ever written over."""

from __future__ import annotations

import os
from pathlib import Path

import msgspec
import pytest

from booth.profile import save
from booth.profile.model import Film, Profile, Range
from booth.profile.read import read_profile
from booth.profile.save import NotSaved, save_new

LEAST = Profile(key="a", name="Clear, 2:1", source="job of Tuesday", film=Film(coats=Range(2, 2)))


def names(folder: Path) -> list[str]:
    return sorted(os.listdir(folder))


def test_it_is_saved_and_read_back(tmp_path: Path) -> None:
    path = save_new(LEAST, tmp_path / "new" / "profiles")
    assert path.name == "clear-2-1.toml"
    assert read_profile(path) == msgspec.structs.replace(LEAST, key="clear-2-1")
    assert names(path.parent) == ["clear-2-1.toml"]


def test_a_name_that_is_taken_is_left_alone(tmp_path: Path) -> None:
    (tmp_path / "clear-2-1.toml").write_text("mine", encoding="utf-8")
    first, second = save_new(LEAST, tmp_path), save_new(LEAST, tmp_path)
    assert (first.name, second.name) == ("clear-2-1-2.toml", "clear-2-1-3.toml")
    assert (tmp_path / "clear-2-1.toml").read_text(encoding="utf-8") == "mine"
    assert len(names(tmp_path)) == 3


def test_a_link_that_leads_nowhere_is_left_alone(tmp_path: Path) -> None:
    if not hasattr(os, "symlink") or os.name == "nt":
        pytest.skip("links need rights there")
    (tmp_path / "clear-2-1.toml").symlink_to(tmp_path / "elsewhere")
    assert save_new(LEAST, tmp_path).name == "clear-2-1-2.toml"
    assert not (tmp_path / "elsewhere").exists()


def test_a_disk_without_links_is_no_hindrance(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*_: object) -> None:
        raise OSError(95, "Operation not supported")

    monkeypatch.setattr(os, "link", refuse)
    (tmp_path / "clear-2-1.toml").write_text("mine", encoding="utf-8")
    path = save_new(LEAST, tmp_path)
    assert isinstance(read_profile(path), Profile)
    assert names(tmp_path) == ["clear-2-1-2.toml", "clear-2-1.toml"]
    assert (tmp_path / "clear-2-1.toml").read_text(encoding="utf-8") == "mine"


def test_content_is_on_disk_before_the_name_is_given(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    done: list[str] = []
    fsync, link = os.fsync, os.link

    def flushed(handle: int) -> None:
        done.append("flush")
        fsync(handle)

    def linked(source: str, target: Path) -> None:
        done.append("name")
        link(source, target)

    monkeypatch.setattr(os, "fsync", flushed)
    monkeypatch.setattr(os, "link", linked)
    save_new(LEAST, tmp_path)
    assert done[:2] == ["flush", "name"]
    if os.name != "nt":
        assert done == ["flush", "name", "flush"]


def test_a_full_disk_leaves_nothing_behind(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(NotSaved, match=r"not saved.*No space left on device"):
        save_new(LEAST, tmp_path)
    assert names(tmp_path) == []


def test_a_file_where_the_folder_should_be_is_told(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("", encoding="utf-8")
    with pytest.raises(NotSaved, match="not saved"):
        save_new(LEAST, tmp_path / "file")


def test_what_could_not_be_read_again_is_not_saved(tmp_path: Path) -> None:
    thick = msgspec.structs.replace(LEAST, film=Film(coats=Range(2, 2), wet_um=Range(1e6, 1e6)))
    with pytest.raises(NotSaved, match=r"film\.wet"):
        save_new(thick, tmp_path / "new")
    # A lone surrogate, as a file name may hold it, has no UTF-8.
    with pytest.raises(NotSaved):
        save_new(msgspec.structs.replace(LEAST, name="\ud800"), tmp_path)
    assert names(tmp_path) == []


@pytest.mark.parametrize(
    ("name", "file"),
    [
        ("../../etc/passwd", "etc-passwd.toml"),
        ("CON", "profile-con.toml"),
        ("…", "unnamed.toml"),
        ("\x1b[2J", "2j.toml"),
        ("x" * 300, "x" * 48 + ".toml"),
    ],
)
def test_any_name_gives_a_plain_file_name(tmp_path: Path, name: str, file: str) -> None:
    path = save_new(msgspec.structs.replace(LEAST, name=name), tmp_path)
    assert path == tmp_path / file


def test_when_every_name_is_taken_it_says_so(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(save, "MOST_TRIES", 2)
    save_new(LEAST, tmp_path)
    save_new(LEAST, tmp_path)
    with pytest.raises(NotSaved, match="2 profiles are called clear-2-1"):
        save_new(LEAST, tmp_path)
