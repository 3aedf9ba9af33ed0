"""What ``booth check`` prints and answers."""

from __future__ import annotations

import io
from pathlib import Path

import pytest

from booth.profile.check import check
from booth.profile.keys import ALSO_CALLED, KEYS, Shape, keys_text
from booth.profile.model import Profile
from booth.profile.read import read_text

GOOD = 'name = "A\\u001b[2J"\nsource = "s"\n[film]\ncoats = 1\n'


def run(*paths: Path | str) -> tuple[int, list[str]]:
    out = io.StringIO()
    return check(paths, out), out.getvalue().splitlines()


def test_a_good_file(tmp_path: Path) -> None:
    (tmp_path / "x.toml").write_text(GOOD, encoding="utf-8")
    expected = [f"{tmp_path / 'x.toml'}: a coating profile, A␛[2J"]
    assert run(tmp_path / "x.toml") == (0, expected)
    assert run(tmp_path) == (0, expected)


def test_faults_are_printed_by_file_and_line_and_counted(tmp_path: Path) -> None:
    path = tmp_path / "x.toml"
    path.write_text(GOOD + "wet = 3\ndry = 4\n", encoding="utf-8")
    (tmp_path / "y.toml").write_text(GOOD, encoding="utf-8")
    code, lines = run(path, tmp_path / "y.toml")
    assert code == 1
    assert lines[0].startswith(f"{path}:5: film.wet: found the bare number 3; expected a range")
    assert lines[1].startswith(f"{path}:6: film.dry: found an unknown key")
    assert "Did you mean dry_total?" in lines[1]
    assert lines[2] == f"{path}: 2 faults"
    assert "a coating profile" in lines[3]


def test_nothing_there_is_a_fault_of_the_command(tmp_path: Path) -> None:
    (tmp_path / "x.toml").write_text("x", encoding="utf-8")
    code, lines = run(tmp_path / "x.toml", tmp_path / "nowhere.toml", "a\0b")
    assert code == 2
    assert lines[-2:] == [
        f"{tmp_path / 'nowhere.toml'}: no such file or folder",
        "a␀b: no such file or folder",
    ]
    assert run() == (2, ["Name the profiles to check: booth check FILE ..."])
    (tmp_path / "empty").mkdir()
    assert run(tmp_path / "empty")[0] == 2


def test_a_terminal_of_few_letters_is_no_hindrance(tmp_path: Path) -> None:
    (tmp_path / "x.toml").write_text(GOOD.replace("A", "März"), encoding="utf-8")
    raw = io.BytesIO()
    out = io.TextIOWrapper(raw, encoding="ascii")
    assert check([tmp_path / "x.toml"], out) == 0
    out.flush()
    assert b"M?rz" in raw.getvalue()


@pytest.mark.parametrize("key", [key for key in KEYS if key.example], ids=lambda key: key.path)
def test_every_example_of_the_reference_is_read(key: object) -> None:
    """A file that holds this key's example and what must be there beside it is a profile."""
    assert hasattr(key, "path")
    tables: dict[str, list[str]] = {"": [], "film": []}
    wanted = [each for each in KEYS if each.required and each.shape is not Shape.TABLE]
    table = key.table
    for each in wanted:
        if each.table in ("", "film", table) and each.path != key.path:
            tables.setdefault(each.table, []).append(f"{each.name} = {each.example}")
    tables.setdefault(table, []).append(f"{key.name} = {key.example}")
    if key.name in ("pot_life", "induction"):
        tables["mix.parts[]"] = ['name = "A"\nparts = 1\n[[mix.parts]]\nname = "B"\nparts = 1']
    text = "\n".join(tables.pop(""))
    for name, lines in tables.items():
        header = f"[[{name[:-2]}]]" if name.endswith("[]") else f"[{name}]"
        text += f"\n{header}\n" + "\n".join(lines)
    answer = read_text(text + "\n", "x.toml")
    assert isinstance(answer, Profile), [str(each) for each in answer]


def test_the_reference_names_every_key() -> None:
    lines = keys_text().splitlines()
    for key in KEYS:
        if key.shape is Shape.TABLE:
            assert any(f"[{key.path}]" in line for line in lines), key.path
        elif key.shape is Shape.TABLES:
            assert any(f"[[{key.path[:-2]}]]" in line for line in lines), key.path
        else:
            assert any(line[2:].startswith(f"{key.name} = {key.example}") for line in lines)


def test_every_other_name_leads_to_a_key() -> None:
    known = {key.path.replace("[]", "") for key in KEYS}
    assert set(ALSO_CALLED.values()) <= known
