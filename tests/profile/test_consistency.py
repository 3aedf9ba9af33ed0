"""What a profile says taken together: every cross-check, at once, in the units of the file."""

from __future__ import annotations

import io
from pathlib import Path

import pytest

from booth.files.faults import Fault
from booth.profile.model import Profile
from booth.profile.read import read_noted
from booth.shop.check import check
from tests.profile.test_read import FILM, TOP, faults, one, profile

TWO = '[[mix.parts]]\nname = "clear"\nparts = 2\n[[mix.parts]]\nname = "hardener"\nparts = 1\n'
H = "[[mix.hardeners]]\nname = "
COLD = '{ at = "10 C", time = "1 h" }, { at = "20 C", time = '

#: Lines, the key that is told, what is said of it.
FAULTS = [
    # Sheets print 17-19 s in a DIN 4, whose range begins at 25 s; 8 s is a slip of cup or unit.
    ('[efflux]\ncup = "DIN 4"\ntarget = "8 to 10 s"', "efflux.target", "8 to 10 s in a DIN 4 mm"),
    ('[efflux]\ncup = "Ford 4"\ntarget = "300 s"', "efflux.target", "20 to 100 s, the range of"),
    # Windows, at the temperature at which they cross.
    (
        '[[next_product]]\nopens = { time = "2 to 3 h", at = "68 F" }\n'
        'closes = { time = "1 to 1.5 h", at = "68 F" }',
        "next_product[1].closes",
        "a window that closes before it opens, at 68 F: 2 h and 1.5 h",
    ),
    (
        '[[next_product]]\ncloses = { time = "6 h", at = "70 F" }\n'
        'or_after = { time = "4 h", at = "70 F" }',
        "next_product[1].or_after",
        "opens again before it closes, at 70 F: 6 h and 4 h",
    ),
    (
        '[[next_product]]\nopens = { time = "6 h", at = "20 C" }\n'
        'abrade_after = { time = "4 h", at = "20 C" }',
        "next_product[1].abrade_after",
        "before the window opens, at 20 C",
    ),
    (
        '[waits]\nhandle = { time = "2 d", at = "20 C" }\ncure = { time = "1 d", at = "20 C" }',
        "waits.cure",
        "cured before it can be handled, at 20 C: 48 h and 24 h",
    ),
    (
        # At 20 C and 75 % the row of that humidity counts: 2 h.
        '[waits]\nrecoat_opens = { table = [ { at = "20 C", humidity = 50, time = "1 h" }, '
        '{ at = "20 C", humidity = 75, time = "2 h" } ] }\n'
        'recoat_closes = { time = "90 min", at = "20 C", humidity = 75 }',
        "waits.recoat_closes",
        "at 20 C and 75 %: 2 h and 1.5 h",
    ),
    (
        # The hardener's own closing against the product's opening.
        f'{TWO}{H}"fast"\n[mix.hardeners.waits]\nrecoat_closes = {{ time = "5 min", at = "20 C" }}\n'
        '[waits]\nrecoat_opens = { time = "10 min", at = "20 C" }',
        "mix.hardeners[1].waits.recoat_closes",
        "closes before it opens",
    ),
    # Tables that run the wrong way.
    (
        f'[waits]\nflash_off = {{ table = [ {COLD}"70 min" }} ] }}',
        "waits.flash_off.table[2].time",
        "70 min at 20 C after 1 h at 10 C".replace("70 min", "1.17 h"),
    ),
    (
        f'{TWO}[mix.pot_life]\ntable = [ {COLD}"2 h" }} ]',
        "mix.pot_life.table[2].time",
        "2 h at 20 C after 1 h at 10 C",
    ),
    (
        f'{TWO}[mix]\ninduction = {{ table = [ {COLD}"30 to 65 min" }} ] }}'.replace(
            f"{TWO}[mix]\n", "[mix]\n"
        )
        + f"\n{TWO}",
        "mix.induction.table[2].time",
        "after 1 h at 10 C",
    ),
    (
        '[waits]\nhandle = { table = [ { at = "10 C", humidity = 40, time = "1 h" }, '
        '{ at = "10 C", humidity = 80, time = "3 h" }, { at = "20 C", humidity = 40, time = "2 h" } ] }',
        "waits.handle.table[3].time",
        "2 h at 20 C after 1 h at 10 C",
    ),
    # Mix.
    (
        '[mix.thinner]\nname = "t"\nusual = "5 to 20 %"\nlimit = 15',
        "mix.thinner.usual",
        "usually 20 %",
    ),
    (
        '[[mix.thinners]]\nname = "t"\nusual = "at most 20 %"\nlimit = 15',
        "mix.thinners[1].usual",
        "with a limit of 15 %",
    ),
    (H + '"fast"', "mix.hardeners", "hardeners for a mix of no parts"),
    (f'{TWO}{H}"Clear"', "mix.hardeners[1].name", "a name that is taken"),
    (f'{TWO}{H}"a"\n{H}"a"', "mix.hardeners[2].name", "a name that is taken"),
    (
        TWO.replace("parts = 2", "parts = 2\nparts_by_weight = 2"),
        "mix.parts[2]",
        "no parts by weight, which other components have",
    ),
    (
        '[mix]\nby = "weight"\n' + TWO.replace("parts = 2", "parts = 2\nparts_by_weight = 2"),
        "mix.parts[1].parts_by_weight",
        "parts by weight beside parts that are by weight",
    ),
]


@pytest.mark.parametrize(("lines", "key", "found"), FAULTS)
def test_what_no_product_can_mean_is_a_fault(lines: str, key: str, found: str) -> None:
    fault = one(f"{TOP}{FILM}{lines}\n")
    assert fault.key == key and fault.line is not None
    assert found in f"{fault.found}; {fault.expected}"


C = "[[coats]]\n"
#: The lines of coats and film, the key, what is said. 25.4 um to the mil, by definition.
COATS = [
    ('wet = "80 um"', "film.coats", "nothing; film.coats, or [[coats]] once for each coat"),
    (f"coats = 3\n{C}times = 2", "film.coats", "3 coats beside a list of 2 coats"),
    (
        f'coats = "2 to 3"\n{C}{C}times = "1 to 3"',
        "film.coats",
        "2 to 3 coats beside a list of 2 to 4",
    ),
    (f"{C}until_hidden = true", "coats[1].times", "until it hides, without a most"),
    # 2 coats of 4 mil at 50 % are 4 mil.
    (
        'coats = "1 to 2"\nvolume_solids = 50\nwet = "3 to 4 mil"\ndry_total = "5 to 6 mil"',
        "film.dry_total",
        "more dry film than 1 to 2 coats can leave, 4 mil (dry_total is 5 to 6 mil)",
    ),
    # 30 + 3 x 60 um at 55 % are 115.5 um.
    (
        'volume_solids = "50 to 55 %"\nwet = "50 to 60 um"\ndry_total = "130 to 140 um"\n'
        f'{C}wet = "20 to 30 um"\n{C}times = "2 to 3"',
        "film.dry_total",
        "more dry film than 3 to 4 coats can leave, 116 um",
    ),
    # (20 + 2 x 50) um at 50 % over 1.2 are 50 um: the thinnest there can be.
    (
        'volume_solids = "50 to 55 %"\nwet = "50 to 60 um"\ndry_total = "30 to 40 um"\n'
        f'{C}wet = "20 to 30 um"\n{C}times = "2 to 3"\n'
        '[mix.thinner]\nname = "t"\nusual = "5 to 20 %"',
        "film.dry_total",
        "less dry film than 3 to 4 coats will leave, 50 um",
    ),
    (
        'coats = 1\nvolume_solids = "60 to 70 %"\nsolvent_percent = 45',
        "film.solvent_percent",
        "60 % solids",
    ),
]


@pytest.mark.parametrize(("lines", "key", "found"), COATS)
def test_coats_that_do_not_agree_are_a_fault(lines: str, key: str, found: str) -> None:
    fault = one(f"{TOP}[film]\n{lines}\n")
    assert fault.key == key and found in f"{fault.found}; {fault.expected}"


AGREE = [
    f"coats = 3\n{C}times = 2\n{C}",
    # 2 x 60 um at 42 % leave 50 um, 1 x 50 um at 40 % leave 20.
    'coats = "1 to 2"\nvolume_solids = "40 to 42 %"\nwet = "50 to 60 um"\ndry_total = "20 to 50 um"',
    # Nothing is known of a coat without a wet film.
    f'volume_solids = 50\ndry_total = "500 um"\n{C}wet = "50 um"\n{C}',
    'coats = 1\n[waits]\nflash_off = { until = "matt" }\nrecoat_closes = { time = "1 min", at = "20 C" }',
    # At another humidity nothing is compared; damper may be longer.
    'coats = 1\n[waits]\nflash_off = { table = [ { at = "20 C", humidity = 50, time = "1 h" }, '
    '{ at = "20 C", humidity = 75, time = "2 h" } ] }',
    # The range of what opens reaches into that of what closes: it can be kept.
    'coats = 1\n[waits]\nrecoat_opens = { time = "1 to 3 h", at = "20 C" }\n'
    'recoat_closes = { time = "2 to 4 h", at = "20 C" }',
]


@pytest.mark.parametrize("lines", AGREE)
def test_what_a_product_can_mean_is_read(lines: str) -> None:
    profile(f"{TOP}[film]\n{lines}\n")


def test_all_of_them_come_at_once() -> None:
    found = faults(
        TOP
        + 'hazards = ["flamable"]\n[film]\ncoats = 2\nvolume_solids = 50\nwet = "2 mil"\n'
        + 'dry_total = "3 mil"\n[gun]\noverlap = 0.5\n[efflux]\ncup = "Ford 4"\ntarget = "5 s"\n'
        + '[waits]\nrecoat_opens = { time = "2 h", at = "70 F" }\n'
        + 'recoat_closes = { time = "1 h", at = "70 F" }\n[[coats]]\ntimes = 3\n'
    )
    assert [fault.key for fault in found] == [
        "hazards[1]",
        "film.coats",
        "gun.overlap",
        "efflux.target",
        "waits.recoat_closes",
    ]
    assert found[-1].found.endswith("at 70 F: 2 h and 1 h")


def test_bounds_are_told_in_the_unit_of_the_file() -> None:
    # 1 um is 0.03937 mil, 5000 um are 196.85 mil (25.4 um to the mil, by definition).
    fault = one(f'{TOP}{FILM}wet = "300 mil"\n')
    assert fault.expected == "wet film of one coat, from 0.0394 mil to 197 mil"
    # -40 F is -40 C, 100 C are 212 F.
    fault = one(f'{TOP}{FILM}[limits]\nair = "60 to 300 F"\n')
    assert fault.expected == "air temperature, from -40 F to 212 F"


def notes(tmp_path: Path, lines: str) -> tuple[Fault, ...]:
    path = tmp_path / "x.toml"
    path.write_text(f"{TOP}{FILM}{lines}\n", encoding="utf-8")
    answer, found = read_noted(path)
    assert isinstance(answer, Profile), [str(each) for each in answer]
    return found


#: What is odd and may be meant: the profile is read, `booth check` tells it.
NOTES = [
    (
        '[efflux]\ncup = "DIN 4"\ntarget = "17 to 19 s"',
        ["efflux.target: found 17 to 19 s in a DIN 4"],
    ),
    ('[efflux]\ncup = "DIN 4"\ntarget = "25 to 30 s"', []),
    # A gap between two, and one above: nothing is for 18 to 22 C, nor for 30 to 35 C.
    (
        f'{TWO}{H}"slow"\nfor = "22 to 30 C"\n{H}"fast"\nfor = "10 to 18 C"\n'
        '[limits]\nair = "10 to 35 C"',
        [
            "mix.hardeners: found none of 2 for air of 18 C to 22 C",
            "mix.hardeners: found none of 2 for air of 30 C",
        ],
    ),
    # Whole degrees, and neighbours that overlap, are as sheets print them.
    (
        f'{TWO}{H}"slow"\nfor = "at least 71 F"\n{H}"fast"\nfor = "60 to 70 F"\n'
        '[limits]\nair = "60 to 90 F"',
        [],
    ),
    (f'{TWO}{H}"slow"\nfor = "15 to 30 C"\n{H}"fast"\nfor = "10 to 20 C"', []),
    (
        '[mix.thinner]\nname = "a"\nfor = "10 to 20 C"\n[[mix.thinners]]\nname = "b"\nfor = "10 to 20 C"',
        ["mix.thinners: found 2 for the same air"],
    ),
    (f'{TWO}{H}"only"\nfor = "10 to 18 C"\n[limits]\nair = "10 to 35 C"', []),
    # Nothing stands, so that nothing is before or after it.
    (
        '[mix.thinner]\nname = "a"\nwhen = "after induction"',
        ['mix.thinner.when: found "after induction" where the mix has no induction'],
    ),
]


@pytest.mark.parametrize(("lines", "said"), NOTES)
def test_what_is_odd_is_a_note(tmp_path: Path, lines: str, said: list[str]) -> None:
    found = notes(tmp_path, lines)
    assert len(found) == len(said), [str(each) for each in found]
    assert all(each.text.startswith(words) for each, words in zip(found, said, strict=True))


def test_a_note_is_printed_and_is_no_fault(tmp_path: Path) -> None:
    notes(tmp_path, '[efflux]\ncup = "DIN 4"\ntarget = "17 to 19 s"')
    out = io.StringIO()
    assert check([tmp_path / "x.toml"], out) == 0
    first, last = out.getvalue().splitlines()
    assert ":7: note: efflux.target: found 17 to 19 s" in first
    assert last.endswith("x.toml: a coating profile, A")
