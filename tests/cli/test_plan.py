"""``booth plan``: a day as text and as JSON, and what cannot be taken."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import pytest

from booth.cli.dispatch import run

MILD = ["--air", "21C", "--humidity", "50%", "--part-at", "21C"]
STANDINGS = {"known", "estimated", "at least", "at most", "not known"}


@pytest.fixture(autouse=True)
def own(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("BOOTH_HOME", str(tmp_path))


def planned(capsys: pytest.CaptureFixture[str], *words: str) -> dict[str, Any]:
    assert run(["plan", *words, "--json"]) == 0
    found: dict[str, Any] = json.loads(capsys.readouterr().out)
    return found


@pytest.mark.parametrize("profile", ["two-pack-clear", "epoxy-primer", "single-stage-enamel"])
def test_the_shape_of_the_answer(profile: str, capsys: pytest.CaptureFixture[str]) -> None:
    found = planned(capsys, profile, *MILD, "--parts", "left door, hood", "--coat", "4min")
    assert set(found) == {"fits", "by_guess", "why", "choices", "waits", "line"}
    assert (found["fits"], found["why"]) == (True, [])
    for each in found["waits"]:
        keys = {"product", "coat", "what", "standing", "opens_s", "closes_s", "rule", "why"}
        assert set(each) == keys and each["standing"] in STANDINGS
        for time in (each["opens_s"], each["closes_s"]):
            assert time is None or time > 0
    assert found["line"]
    for each in found["line"]:
        assert set(each) == {"part", "what", "begins", "ends"}
    sprayed = [each for each in found["line"] if each["part"] and each["ends"] is not None]
    assert {each["part"] for each in sprayed} == {"left door", "hood"}
    assert {each["ends"] - each["begins"] for each in sprayed} == {240.0}


def test_a_coat_on_a_rack_takes_so_long_for_each_piece(capsys: pytest.CaptureFixture[str]) -> None:
    parts = ["--parts", "6 doors x 2 sides", "--coat", "30s"]
    found = planned(capsys, "two-pack-clear", *MILD, *parts)
    sprayed = [each for each in found["line"] if each["part"] and each["ends"] is not None]
    assert {each["part"] for each in sprayed} == {"doors: side 1", "doors: side 2"}
    assert {each["ends"] - each["begins"] for each in sprayed} == {180.0}


def test_a_cold_day_is_told_as_not_known(capsys: pytest.CaptureFixture[str]) -> None:
    cold = ["--air", "8C", "--humidity", "60%", "--part-at", "8C"]
    found = planned(capsys, "two-pack-clear", *cold)
    assert not found["fits"]
    assert any("below the product's limit" in why for why in found["why"])
    opening = [each for each in found["waits"] if each["what"] == "coat 2"]
    assert [(each["standing"], each["opens_s"]) for each in opening] == [("not known", None)]
    assert any(each["begins"] is None for each in found["line"]) or found["why"]


def test_without_weather_it_does_not_fit(capsys: pytest.CaptureFixture[str]) -> None:
    assert not planned(capsys, "two-pack-clear")["fits"]


def test_as_text_with_times_of_day(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["plan", "two-pack-clear", *MILD, "--start", "09:00", "--parts", "hood"]) == 0
    text = capsys.readouterr().out
    assert text.startswith("FITS IF THE GUESS HOLDS") and "a guess: say --coat" in text
    assert "09:00 - 09:05  hood" in text
    assert "safe" not in text
    assert run(["plan", "two-pack-clear", *MILD, "--parts", "hood", "--coat", "4min"]) == 0
    assert capsys.readouterr().out.startswith("FITS, by what is known now")


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["nix", *MILD], 'No coating profile "nix", nor a coating system. Coating profiles: '),
        (["nix", *MILD], "Coating systems: car-silver, "),
        (["two-pack-claer", *MILD], "Did you mean two-pack-clear?"),
        (["Epoxy Primer", *MILD], "Did you mean epoxy-primer?"),
        (["car_silver", *MILD], "Did you mean car-silver?"),
        (["two-pack-clear", "--air", "21C"], "--humidity is missing"),
        (["two-pack-clear", "--air", "warm", *MILD[2:]], "--air 'warm'"),
        (["two-pack-clear", *MILD, "--start", "25:00"], "a time of day is wanted"),
        (["two-pack-clear", *MILD, "--parts", "a, a"], "there twice"),
        (["two-pack-clear", *MILD[:2], "--humidity", "0%", *MILD[4:]], "between 0 and 100"),
    ],
)
def test_what_cannot_be_taken_is_told(
    words: list[str], says: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(["plan", *words]) == 2
    assert says in capsys.readouterr().err


def test_no_wait_reads_like_a_time_of_day(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["plan", "car-silver", *MILD, "--start", "09:00"]) == 0
    waits, _, day = capsys.readouterr().out.partition("DAY")
    assert "09:00" in day and "after 4 h" in waits
    assert not re.search(r"\d:\d\d", waits.partition("WAITS")[2])


def test_what_is_not_known_has_no_after(capsys: pytest.CaptureFixture[str]) -> None:
    cold = ["--air", "8C", "--humidity", "60%", "--part-at", "8C"]
    assert run(["plan", "two-pack-clear", *cold]) == 0
    text = capsys.readouterr().out
    assert "coat 2  not known" in text and "after not known" not in text


def test_which_hardener_and_thinner_are_for_this_air_and_their_waits(
    capsys: pytest.CaptureFixture[str],
) -> None:
    # The ranges and pot lives stand in the demo profile: fast for 10 to 17 C, slow from 25 C on.
    pots = {}
    for air, name in (("14C", "fast"), ("20C", "medium"), ("28C", "slow")):
        day = ["--air", air, "--humidity", "45%", "--part-at", air]
        found = planned(capsys, "high-solids-clear", *day)
        told = {each["what"]: (each["take"], each["suits"]) for each in found["choices"]}
        assert told["hardener"] == (f"{name} hardener", True)
        mixing = next(each["what"] for each in found["line"] if not each["part"])
        assert f"with {name} hardener, {told['thinner'][0]}" in mixing
        pot = next(each for each in found["waits"] if each["what"] == "pot life")
        pots[name] = pot["closes_s"]
    # 45 min at 20 C and no longer in the cold; of the slow one 2 h at 20 C and 1 h at 30 C.
    assert pots["fast"] == 45 * 60 and 3600 < pots["slow"] < 7200


def test_without_the_air_it_is_said_and_the_most_careful_counts(
    capsys: pytest.CaptureFixture[str],
) -> None:
    found = planned(capsys, "high-solids-clear")
    assert {(each["what"], each["suits"]) for each in found["choices"]} == {
        ("hardener", None),
        ("thinner", None),
    }
    pot = next(each for each in found["waits"] if each["what"] == "pot life")
    assert pot["closes_s"] == 45 * 60, "of the fast hardener, the shortest of the three"
    assert run(["plan", "high-solids-clear"]) == 0
    text = capsys.readouterr().out
    assert "hardener  which one suits the air is not known (say --air, --humidity" in text


def test_air_for_which_there_is_none_does_not_fit_and_is_told_in_the_units_typed(
    capsys: pytest.CaptureFixture[str],
) -> None:
    hot = ["--air", "97F", "--humidity", "45%", "--part-at", "90F"]
    found = planned(capsys, "high-solids-clear", *hot)
    assert any("no hardener of the sheet is for this air" in why for why in found["why"])
    assert run(["plan", "high-solids-clear", *hot]) == 0
    assert "slow hardener, for 77 to 95 °F, is nearest" in capsys.readouterr().out


def test_a_profile_without_a_choice_says_nothing_of_one(capsys: pytest.CaptureFixture[str]) -> None:
    assert planned(capsys, "single-stage-enamel", *MILD)["choices"] == []


@pytest.mark.parametrize(
    ("air", "table", "halves"),
    # The bundled primer's table stands at 50 and 60 F (10 and 15.56 C by definition); the rule's 17.5 F
    # are 17.5 / 1.8 = 9.72 K.
    [
        ("14C", "between 10 °C and 15.56 °C", "9.72 °C"),
        ("57F", "between 50 °F and 60 °F", "17.5 °F"),
    ],
)
def test_why_a_wait_is_as_it_is_stands_in_the_units_typed(
    air: str, table: str, halves: str, capsys: pytest.CaptureFixture[str]
) -> None:
    weather = ["--air", air, "--humidity", "70%", "--part-at", air]
    assert run(["plan", "car-silver", *weather, "--start", "09:00"]) == 0
    said = capsys.readouterr().out
    assert table in said and f"halves for each {halves} up" in said
    assert not re.search(r"\.\d{3}|\d K\b", said)
