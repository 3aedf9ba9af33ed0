"""Folders of profiles: good ones load, bad ones are told, the painter's copy comes first."""

from __future__ import annotations

from pathlib import Path

from booth.profile.library import load_folder


def write(path: Path, name: str) -> Path:
    path.parent.mkdir(exist_ok=True)
    path.write_text(f'name = "{name}"\nsource = "s"\n[film]\ncoats = 1\n', encoding="utf-8")
    return path


def test_a_bad_file_does_not_keep_the_others_out(tmp_path: Path) -> None:
    write(tmp_path / "b.toml", "beta")
    write(tmp_path / "c.TOML", "Alpha")
    bad = tmp_path / "a.toml"
    bad.write_bytes(b"\xff")
    folder = tmp_path / "folder.toml"
    folder.mkdir()
    write(tmp_path / ".hidden.toml", "no")
    (tmp_path / "notes.txt").write_text("no", encoding="utf-8")
    library = load_folder([tmp_path])
    assert [each.name for each in library.profiles] == ["Alpha", "beta"]
    assert set(library.broken) == {bad, folder}
    assert library.broken[bad][0].line == 1
    assert [each.key for each in library.profiles] == ["c", "b"]


def test_the_first_folder_has_the_key(tmp_path: Path) -> None:
    bundled = tmp_path / "bundled"
    write(tmp_path / "mine" / "x.toml", "mine")
    write(bundled / "x.toml", "bundled")
    write(bundled / "y.toml", "other")
    library = load_folder([tmp_path / "mine", bundled, tmp_path / "nowhere"])
    assert [each.name for each in library.profiles] == ["mine", "other"]
    assert library.broken == {}


def test_a_file_may_be_named_itself_and_a_bad_folder_is_told(tmp_path: Path) -> None:
    library = load_folder([write(tmp_path / "x.toml", "one"), "a\0b"])
    assert [each.name for each in library.profiles] == ["one"]
    assert [fault.expected for each in library.broken.values() for fault in each] == [
        "a folder of profiles"
    ]


def test_a_faulty_copy_is_not_passed_over_for_the_bundled_profile_of_its_name(
    tmp_path: Path,
) -> None:
    mine, bundled = tmp_path / "mine" / "x.toml", tmp_path / "bundled" / "x.toml"
    write(mine, "Mine")
    write(bundled, "Bundled")
    folders = [mine.parent, bundled.parent]
    mine.write_text("name = 5\n", encoding="utf-8")
    library = load_folder(folders)
    assert library.profiles == () and list(library.broken) == [mine]
    write(mine, "Mine")
    bundled.write_text("name = 5\n", encoding="utf-8")
    library = load_folder(folders)
    assert [each.name for each in library.profiles] == ["Mine"]
    assert list(library.broken) == [bundled]
