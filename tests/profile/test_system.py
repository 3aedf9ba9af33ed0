"""Coating systems: read strictly, checked against the profiles they name, found as profiles are."""

from __future__ import annotations

import io
from pathlib import Path

import pytest

from booth.files.faults import Fault
from booth.files.places import Places
from booth.profile.library import Library, load_folder
from booth.profile.system import SYSTEM, CoatingSystem, is_system_text, load_systems, read_system
from booth.shop.check import check
from booth.units import System
from booth.words.system_words import lines_of

BUNDLED = Path(__file__).parents[2] / "profiles"
WINDOW = '[waits]\nrecoat_opens = { time = "2 h", at = "70 F" }\n'
GOOD = """\
name = "Trial system"
source = "invented"
[[products]]
profile = "primer"
note = "Scuff it."
[[products]]
profile = "clear.toml"
"""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A folder of profiles: a primer, a clear, one with faults, one that knows a next product only."""
    clear_only = '[[next_product]]\nname = "clear"\nopens = { time = "1 h", at = "70 F" }\n'
    for key, text in {
        "primer": WINDOW,
        "clear": "",
        "broken": "[film]\ncoats = 0\n",
        "base": clear_only,
    }.items():
        film = "" if "[film]" in text else "[film]\ncoats = 1\n"
        text = f'name = "{key} of the trial"\nsource = "s"\n{film}{text}'
        (tmp_path / f"{key}.toml").write_text(text, encoding="utf-8")
    (tmp_path / "systems").mkdir()
    return tmp_path


def read(folder: Path, text: str) -> CoatingSystem | tuple[Fault, ...]:
    file = folder / "systems" / "trial.toml"
    file.write_text(text, encoding="utf-8")
    return read_system(file, load_folder([folder]))


def faults(folder: Path, text: str) -> list[str]:
    found = read(folder, text)
    assert not isinstance(found, CoatingSystem)
    return [str(each) for each in found]


def listing(*products: str) -> str:
    head = 'name = "Trial system"\nsource = "invented"\n'
    return head + "".join(f'[[products]]\nprofile = "{each}"\n' for each in products)


def test_a_system_has_its_profiles_in_order(folder: Path) -> None:
    found = read(folder, GOOD)
    assert isinstance(found, CoatingSystem)
    assert (found.key, found.name, found.demo) == ("trial", "Trial system", False)
    assert [each.key for each in found.profiles] == ["primer", "clear"]
    assert [each.note for each in found.products] == ["Scuff it.", ""]


def test_all_faults_at_once_each_with_its_line(folder: Path) -> None:
    text = 'name = "x"\nsorce = "y"\n' + "".join(
        f'[[products]]\nprofile = "{each}"\n' for each in ("primmer", "broken", "nothing at all")
    )
    found = faults(folder, text)
    assert [line.split(": ")[0].rpartition(":")[2] for line in found] == ["2", "4", "6", "8"]
    assert "Did you mean source?" in found[0]
    assert 'found no coating profile "primmer"' in found[1] and "Did you mean primer?" in found[1]
    assert "a profile with 1 fault" in found[2] and "broken.toml" in found[2]
    assert "base, clear, primer" in found[3]


@pytest.mark.parametrize("products", [(), ("primer",)])
def test_a_system_has_two_products_or_more(folder: Path, products: tuple[str, ...]) -> None:
    (found,) = faults(folder, listing(*products))
    assert "products" in found and ("[[products]]" in found)


def test_one_product_must_allow_the_next(folder: Path) -> None:
    """Another coating than the sheet names may lift what is under it: no window for it is no window."""
    assert isinstance(read(folder, listing("base", "clear")), CoatingSystem)
    (other,) = faults(folder, listing("base", "primer"))
    assert "windows for clear only" in other and ":6: products[2].profile" in other
    (silent,) = faults(folder, listing("clear", "primer"))
    assert "no window for a further product" in silent and "[[next_product]]" in silent


def test_the_first_file_of_a_name_has_it(folder: Path, tmp_path: Path) -> None:
    own = tmp_path / "own"
    (own / "systems").mkdir(parents=True)
    for place, text in ((folder, GOOD), (own, "name = 1")):
        (place / "systems" / "trial.toml").write_text(text, encoding="utf-8")
    (folder / "systems" / "two.toml").write_text(GOOD, encoding="utf-8")
    found = load_systems([own, folder], load_folder([own, folder]))
    kinds = {file.name: isinstance(each, CoatingSystem) for file, each in found.items()}
    assert kinds == {"trial.toml": False, "two.toml": True}
    assert load_systems([tmp_path / "nowhere"], Library((), {})) == {}


def test_a_system_is_told_from_a_profile_by_its_keys() -> None:
    assert is_system_text(GOOD) and is_system_text('[[products]]\nprofile = "x')
    for path in BUNDLED.glob("*.toml"):
        assert not is_system_text(path.read_text("utf-8"))
    assert not is_system_text(GOOD + "[film]\ncoats = 2\n")


def test_check_reads_it_and_finds_its_profiles(folder: Path, tmp_path: Path) -> None:
    file = folder / "systems" / "trial.toml"
    file.write_text(GOOD, encoding="utf-8")
    out = io.StringIO()
    assert check([file], out) == 0
    assert out.getvalue() == (
        f"{file}: a coating system, Trial system: primer of the trial, then clear of the trial\n"
    )
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    (elsewhere / "x.toml").write_text(GOOD, encoding="utf-8")
    out = io.StringIO()
    assert check([elsewhere / "x.toml"], out) == 1 and "2 faults" in out.getvalue()
    assert check([elsewhere / "x.toml"], io.StringIO(), lambda: (folder,)) == 0


def test_every_key_is_in_the_reference_and_its_examples_are_read() -> None:
    text = SYSTEM.reference()
    assert all(name in text for name in ("name", "source", "[[products]]", "profile", "note"))
    lines = [f"{n} = {k.example}" for n, k in SYSTEM.table.keys.items() if k.example]
    values, found = SYSTEM.read("\n".join(lines) + '\n[[products]]\nprofile = "x"\n', "x.toml")
    assert not found and values["demo"] is True


def test_the_bundled_systems_are_invented_and_without_fault() -> None:
    folders = Places.standard().profiles_dirs
    systems = load_systems([BUNDLED], load_folder([BUNDLED]))
    assert len(systems) >= 3 and BUNDLED in folders
    for file, system in systems.items():
        assert isinstance(system, CoatingSystem), system
        assert system.demo and "Invented" in system.source
        assert file.read_text("utf-8").startswith("# Invented")
        assert len(system.profiles) >= 2
        told = lines_of(system, System.METRIC)
        assert all(any(each.name in line for line in told) for each in system.profiles)


def test_it_is_told_with_the_window_between_two_products(folder: Path) -> None:
    found = read(folder, GOOD)
    assert isinstance(found, CoatingSystem)
    lines = lines_of(found, System.US)
    assert "clear of the trial over primer of the trial: opens 2 h at 70 °F" in lines
    assert "Scuff it." in lines and "2/2 clear of the trial" in lines
