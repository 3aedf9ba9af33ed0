"""What ``booth check`` prints and answers."""

from __future__ import annotations

import copy
import io
import tomllib
from pathlib import Path
from typing import Any

import pytest
import tomli_w

from booth.profile.keys import ALSO_CALLED, PROFILE
from booth.profile.model import Profile, Step
from booth.profile.read import read_text
from booth.shop.check import check
from booth.toml.document import table_of

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


EXAMPLES = {path: key for path, key in PROFILE.keys.items() if key.example}
TWO_PARTS = {"mix": {"parts": [{"name": "A", "parts": 1}, {"name": "B", "parts": 1}]}}
#: What has to stand beside a key that means something only together with others.
BESIDE: dict[str, dict[str, Any]] = {
    "mix.pot_life": TWO_PARTS,
    "mix.induction": TWO_PARTS,
    "mix.hardeners[]": TWO_PARTS,
    "coats[].until_hidden": {"coats": [{"times": "2 to 4"}]},
}


def value_of(path: str) -> Any:
    return tomllib.loads(f"x = {EXAMPLES[path].example}")["x"]


@pytest.mark.parametrize("path", EXAMPLES)
def test_every_example_of_the_reference_is_read(path: str) -> None:
    """A file that holds this key's example and what must be there beside it is a profile."""
    file: dict[str, Any] = {"name": "A", "source": "s"}
    file |= {} if path.startswith("coats[]") else {"film": {"coats": 2}}
    for start, beside in BESIDE.items():
        file |= copy.deepcopy(beside) if path.startswith(start) else {}
    table, above = file, ""
    for step in path.split(".")[:-1]:
        name = step.removesuffix("[]")
        found = table.setdefault(name, [{}] if step.endswith("[]") else {})
        table = found[0] if isinstance(found, list) else found
        above += f"{step}."
        for needed in PROFILE.table_at(above.removesuffix(".")).needed:
            table.setdefault(needed, value_of(f"{above}{needed}"))
    table[path.rpartition(".")[2]] = value_of(path)
    text = tomli_w.dumps(file)
    answer = read_text(text, "x.toml")
    assert isinstance(answer, Profile), [text, *map(str, answer)]


def test_the_reference_names_every_key() -> None:
    lines = PROFILE.reference().splitlines()
    for path, key in PROFILE.keys.items():
        if path.endswith("[]"):
            assert any(f"[[{path[:-2]}]]" in line for line in lines), path
        elif table_of(key):
            assert any(f"[{path}]".replace("[]", "") in line for line in lines), path
        else:
            name = path.rpartition(".")[2]
            assert any(line[2:].startswith(f"{name} = {key.example}") for line in lines)


def test_what_must_be_there_is_marked_and_asked_for() -> None:
    """Held against the list as it was written by hand before it followed from the model."""
    marked = {
        line[2:].partition(" = ")[0] for line in PROFILE.reference().splitlines() if line[:1] == "*"
    }
    assert marked == {
        "name",
        "source",
        "parts",
        "cup",
        "target",
        "kind",
    }
    answer = read_text("[[mix.parts]]\n[mix.thinner]\n[efflux]\n[[steps]]\n", "x.toml")
    assert not isinstance(answer, Profile)
    assert {fault.key for fault in answer if fault.found == "nothing"} == {
        "name",
        "source",
        "film.coats",
        "mix.parts[1].name",
        "mix.parts[1].parts",
        "mix.thinner.name",
        "efflux.cup",
        "efflux.target",
        "steps[1].kind",
    }


def test_every_other_name_leads_to_a_key() -> None:
    known = {path.replace("[]", "") for path in PROFILE.keys}
    assert set(ALSO_CALLED) <= known
    words = [word for others in ALSO_CALLED.values() for word in others.split()]
    assert all(word == word.casefold() and "_" not in word and "-" not in word for word in words)
    # One word means two things in two tables at most where the tables tell which.
    tables = [
        (word, path.rpartition(".")[0])
        for path, others in ALSO_CALLED.items()
        for word in others.split()
    ]
    assert len(set(tables)) == len(tables)


def test_every_key_has_its_place_in_the_model() -> None:
    tables = [PROFILE.table, *filter(None, map(table_of, PROFILE.keys.values()))]
    assert len(tables) == 17
    for table in tables:
        model = Step if table.make is dict else table.make
        assert set(table.attributes.values()) <= set(model.__struct_fields__)
    # All that the model keeps is in the file, but for the keys by which files and steps are known.
    kept = {name for table in tables for name in getattr(table.make, "__struct_fields__", ())}
    assert kept - {name for table in tables for name in table.attributes.values()} == {"key"}
