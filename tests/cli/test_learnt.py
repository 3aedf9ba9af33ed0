"""``booth learnt``: as text and as JSON, of one subject, of one coating, and what cannot be taken."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from booth.cli.dispatch import run
from tests.invented_year import write_year


@pytest.fixture(autouse=True)
def own(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("BOOTH_HOME", str(tmp_path))
    write_year(tmp_path / "jobs", jobs=12)


def test_as_text_each_subject_with_band_and_count(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["learnt"]) == 0
    said = capsys.readouterr().out
    assert "Waits: times the wait that was counted (waits)" in said
    assert "Invented clear: 1." in said and "11 waits" in said
    assert "grey gun, 1.4 mm, 2 turns, Invented clear" in said and "too few" in said
    assert "bar" in said
    assert run(["learnt", "recovery", "--units", "us"]) == 0
    said = capsys.readouterr().out
    assert "87 to 116 psi" in said and "waits" not in said


def test_as_json_what_is_not_known_is_null(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["learnt", "water", "--as", "json"]) == 0
    found = json.loads(capsys.readouterr().out)
    assert {each["subject"] for each in found} == {"water"}
    for each in found:
        assert each["unit"] is None
        shown = [one["low"] for one in each["observations"]]
        assert min(shown) <= each["low"] <= each["middle"] <= each["high"] <= max(shown)
    assert run(["learnt", "delivery", "--as", "json"]) == 0
    few = [each for each in json.loads(capsys.readouterr().out) if len(each["observations"]) < 3]
    assert few and all(each["low"] is None and each["covers"] is None for each in few)


def test_of_one_coating_alone(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["learnt", "--profile", "invented-clear"]) == 0
    assert "receiver" not in capsys.readouterr().out
    assert run(["learnt", "--profile", "other"]) == 0
    assert "Nothing learnt yet" in capsys.readouterr().out


def test_a_subject_that_there_is_not(capsys: pytest.CaptureFixture[str]) -> None:
    assert run(["learnt", "wait"]) == 2
    said = capsys.readouterr().err
    assert 'no subject "wait". Did you mean waits?' in said and "recovery" in said
