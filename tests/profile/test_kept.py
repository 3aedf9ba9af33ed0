"""Profiles of earlier versions read to what they meant: each file beside what its program made of it.

The ``.toml`` are the bundled profiles as the first version had them, word for word; the ``.json`` are
what that version read from them, as it wrote it into a log.
"""

from __future__ import annotations

import json
from pathlib import Path

import msgspec
import pytest

from booth.log.earlier import as_of_today
from booth.profile.model import AtTemperature, Profile, Range, WaitRule
from booth.profile.read import faults_of, read_noted
from tests.profile.alike import differences

KEPT = sorted((Path(__file__).parent / "kept").glob("*.toml"))


def test_all_seven_are_there() -> None:
    assert len(KEPT) == 7


@pytest.mark.parametrize("path", KEPT, ids=lambda path: path.stem)
def test_an_old_file_reads_to_the_same_as_an_old_log(path: Path) -> None:
    profile, notes = read_noted(path)
    assert isinstance(profile, Profile) and notes == ()
    held = json.loads(path.with_suffix(".json").read_text(encoding="utf-8"))
    logged = msgspec.convert(as_of_today({"profile": held})["profile"], Profile)
    assert differences(profile, logged) == []
    assert faults_of(logged) == ()


def test_single_figures_became_ranges_of_one_and_times_became_waits() -> None:
    profile, _ = read_noted(KEPT[0])
    assert isinstance(profile, Profile) and profile.key == "epoxy-primer" and profile.mix
    assert profile.mix.induction == WaitRule((AtTemperature(None, 1800.0),))
    assert profile.mix.pot_life == WaitRule((AtTemperature(21.0, 21600.0),))
    assert profile.film.coats == Range(2, 2) and profile.gun.overlap_percent == Range(50, 50)
    assert profile.mix.thinner and profile.mix.thinner.usual_percent == Range(5, 5)
