"""What is taken from a coating profile and the shop file: only what they say, and it is told."""

from __future__ import annotations

import shlex
from pathlib import Path
from typing import Any

import pytest

from booth.figure.taken_table import FROM_GUN, FROM_PROFILE, FROM_SHOP
from tests.figure.ask import SUBJECTS, ask, at, run
from tests.shop.made import WHOLE

#: Invented values.
CLEAR = """\
name = "Trial clear"
source = "invented for a test"

[mix]
by = "volume"
parts = [
  { name = "clear", parts = 2, density = "1.00 g/ml" },
  { name = "hardener", parts = 1, density = "1.06 g/ml" },
]
pot_life = { time = "3 h", at = "21 C" }

[mix.thinner]
name = "medium"
usual = 10
limit = 15
solvent = "xylene"

[efflux]
cup = "Ford #4"
target = "20 to 23 s"
at = "25 C"

[gun]
fan = "250 mm"
overlap = 50
delivery = "180 to 220 ml/min"
hvlp = true

[film]
coats = 2
volume_solids = "40 to 50 %"
wet = "50 to 60 um"
solvent = "butyl acetate"

[waits]
flash_off = { time = "8 to 10 min", at = "21 C" }
recoat_opens = { table = [
  { at = "15 C", time = "40 min" },
  { at = "25 C", time = "20 min" },
] }

[limits]
air = "15 to 30 C"
humidity = "at most 80 %"
"""
BARE = 'name = "Bare"\nsource = "invented for a test"\n[film]\ncoats = 1\n'


@pytest.fixture(autouse=True)
def home(own_home: Path) -> Path:
    profiles = own_home / "booth" / "profiles"
    profiles.mkdir(parents=True)
    (profiles / "trial.toml").write_text(CLEAR, "utf-8")
    (profiles / "bare.toml").write_text(BARE, "utf-8")
    (profiles / "broken.toml").write_text("name = 5\n", "utf-8")
    (own_home / "booth" / "shop.toml").write_text(WHOLE, "utf-8")
    return own_home


def given(found: dict[str, Any]) -> dict[str, tuple[str, str]]:
    return {
        each["name"]: (each["text"], ", ".join(filter(None, (each["from"], each["how"]))))
        for each in found["given"]
    }


def test_a_mix_of_my_clear() -> None:
    found = ask("mix 600ml --profile trial")
    assert at(found["values"], "pours.0.amount") == pytest.approx(400.0)  # 2 of 3 parts
    assert given(found)["components"][1] == "profile trial"
    assert given(found)["amount"] == ("600 ml", "")
    found = ask("mix 200g --profile trial")
    # By weight 2 x 1.00 to 1 x 1.06, by definition of density.
    assert at(found["values"], "pours.0.amount") == pytest.approx(200 * 2 / 3.06)
    assert found["values"]["measure"] == "weight"
    out = run(["mix", "200g", "--profile", "trial"])[1]
    assert " | from the profile trial: components clear:2:" in out


def test_pace_takes_the_middle_and_says_so() -> None:
    found = ask("pace --profile trial efficiency=65%")
    # 55 um, 200 ml/min, 250 mm, 50 %: by conservation of volume.
    expected = 200 / 60 * 0.65 / (55e-3 * 125) * 1000
    assert at(found["values"], "gun_speed") == pytest.approx(expected, rel=1e-9)
    assert given(found)["delivery"][1] == "profile trial, the middle of its range"
    assert given(found)["fan"][1] == "profile trial"
    assert given(ask("pace --profile trial"))["efficiency"][0].startswith("hvlp (")
    # What was typed comes first.
    assert given(ask("pace 60um --profile trial"))["wet"] == ("60.0 µm", "")


def test_the_gun_and_the_shop_are_taken_from_where_they_are_asked_for() -> None:
    found = given(ask("pace --profile trial --gun 'primer gun'"))
    assert found["efficiency"][0].startswith("conventional")
    assert found["efficiency"][1] == "gun primer gun, not said to be HVLP"
    found = given(ask("pace --profile trial --gun 'clear gun'"))
    assert found["efficiency"][1] == "gun clear gun"
    found = ask("hold least=60psi --gun 'clear gun' --shop")
    assert given(found)["demand"] == ("10.0 cfm", "gun clear gun")
    assert given(found)["receiver"] == ("60.0 gal", "shop file")
    value = ask("time-to-empty 10oz/min --gun 'clear gun'")["values"]["time_to_empty"]["value"]
    assert value == pytest.approx(120.0)  # 20 oz
    found = ask("required-exhaust --shop")
    assert at(found["values"], "least") == pytest.approx(5600 * 0.3048**3 * 60, rel=1e-6)


def test_fresh_air_takes_the_careful_end() -> None:
    found = given(ask("fresh-air --profile trial --metric"))
    assert found["delivery"][0] == "220 ml/min"
    # 60 % of the coating is no solids at the low end, 15 % thinner on top: (0.60 + 0.15) / 1.15.
    assert found["volatile"][0] == "65.2 %"
    assert found["volatile"][1] == "profile trial, with the most thinner it allows"
    assert found["solvents"][0] == "n-butyl acetate:80 % xylene:20 %"
    own = ask("fresh-air 200ml/min 60% 'thinner A:100%:0.86g/ml:98g/mol:1.1%'")
    by_hand = 0.2 * 0.6 * 60 / 1000 * (1000 * 0.86 / 98 * 24.147) * (100 - 0.275) / 0.275
    assert at(own["values"], "least") == pytest.approx(by_hand, rel=1e-6)
    code, _, err = run(shlex.split("fresh-air 200ml/min 60% A:100%:0.86g/ml"))
    assert code == 2 and "all three" in err


def test_waits_take_the_end_that_is_careful() -> None:
    found = given(ask("pot-life 30C --profile trial"))
    assert found["time"] == ("3 h", "profile trial")
    assert found["today"] == ("30.0 °C", "")
    found = given(ask("flash-off 15C --profile trial"))
    assert found["time"] == ("10:00", "profile trial, the high end")  # it opens: the longer
    code, _, err = run(shlex.split("recoat-opens 20C --profile trial"))
    assert code == 2
    assert "booth figure wait-from-table TODAY 15C:40min 25C:20min" in err
    assert run(shlex.split("wait-from-table 20C 15C:40min 25C:20min"))[0] == 0


def test_weather_is_held_against_the_limits_of_the_profile() -> None:
    found = ask("weather 12C 60% 12C --profile trial")
    checks = {each["name"]: each for each in found["values"]["checks"]}
    assert checks["air"]["within"] is False
    assert checks["humidity"]["within"] is True
    assert "part" not in checks  # the profile gives no limit for it


def test_what_the_profile_does_not_say_is_missing_or_assumed() -> None:
    code, out, err = run(["mix", "600ml", "--profile", "bare"])
    assert (code, out) == (2, "")
    assert "The profile bare says nothing of components" in err
    code, _, err = run(["fresh-air", "--profile", "bare"])
    assert code == 2 and "says nothing of delivery" in err
    found = ask("wet-film 40um --profile trial")
    assert given(found)["solids"] == ("45 %", "profile trial, the middle of its range")
    thinned = next(each for each in found["given"] if each["name"] == "thinned")
    assert thinned["assumed"] and thinned["from"] == ""
    # What a sheet says does not stand for what was measured.
    assert "overlap" not in given(ask("fault runs wet=90um --profile trial"))
    code, _, err = run(shlex.split("efficiency 50um:60um 200ml/min 0.4m/s --profile trial"))
    assert code == 2


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ("mix 600ml --profile nope", 'No coating profile "nope". There are: '),
        ("mix 600ml --profile broken", "booth check"),
        ("pace --gun nope", 'No gun "nope" in the shop file. There are: clear gun, primer gun.'),
        ("dew-point 20C 50% --profile trial", "takes nothing that a coating profile says"),
        ("dew-point 20C 50% --shop", "nothing that it could take"),
    ],
)
def test_what_cannot_be_taken_is_a_sentence(words: str, says: str) -> None:
    code, out, err = run(shlex.split(words))
    assert (code, out) == (2, "")
    assert says in err


def test_a_shop_file_with_faults_is_not_used(home: Path) -> None:
    (home / "booth" / "shop.toml").write_text("gun = 5\n", "utf-8")
    code, _, err = run(shlex.split("pace --gun 'clear gun'"))
    assert code == 2 and "booth check" in err


def test_the_tables_name_arguments_that_there_are() -> None:
    everywhere = {each.name for subject in SUBJECTS.values() for each in subject.arguments}
    for subject, finds in FROM_PROFILE.items():
        if subject:
            known = {each.name for each in SUBJECTS[subject].arguments}
            waits = {"at", "reference-air", "reference-humidity"}
            assert set(finds) <= known | waits, subject
        else:
            assert set(finds) <= everywhere
    for name in (*FROM_GUN, *FROM_SHOP):
        subject, _, argument = name.rpartition(" ")
        assert SUBJECTS[subject].argument(argument) if subject else argument in everywhere, name
