"""A profile out of a log is judged by the rules for files: whatever a log holds, nothing is taken on trust."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import msgspec
import pytest
from hypothesis import given, settings

from booth.log.codec import VERSION, decode
from booth.log.events import JobOpened
from booth.profile.model import (
    AtTemperature,
    Film,
    Mix,
    MixPart,
    Profile,
    Range,
    Step,
    Thinner,
    WaitRule,
    Waits,
)
from booth.profile.read import faults_of, read_profile, read_text
from booth.profile.save import write
from tests.log.logs import PROFILE
from tests.profile.generated import profiles

DEMOS = sorted((Path(__file__).parents[2] / "profiles").glob("*.toml"))


def demo(stem: str = "two-pack-clear") -> Profile:
    answer = read_profile(Path(__file__).parents[2] / "profiles" / f"{stem}.toml")
    assert isinstance(answer, Profile)
    return answer


def in_a_log(profile: Profile) -> dict[str, Any]:
    """The profile as it stands in the line of a log."""
    held = json.loads(msgspec.json.encode(profile))
    assert isinstance(held, dict)
    return held


def out_of_a_log(held: dict[str, Any]) -> Profile:
    """What comes of it where a log is opened: only its types were looked at."""
    at = {"wall": 1.0, "continuous": 1.0, "boot": "b"}
    line = {"event": "job opened", "n": 1, "at": at, "job": "j", "profile": held}
    line |= {"parts": ["door"], "version": VERSION}
    opened = decode(json.dumps(line).encode())
    assert isinstance(opened, JobOpened)
    return opened.profile


@pytest.mark.parametrize("path", DEMOS, ids=lambda path: path.stem)
def test_a_profile_that_came_from_a_file_has_none(path: Path) -> None:
    assert faults_of(out_of_a_log(in_a_log(demo(path.stem)))) == ()


def test_the_least_profile_of_an_old_log_has_none() -> None:
    assert faults_of(PROFILE) == ()


@given(profiles)
@settings(max_examples=80, deadline=None)
def test_any_profile_that_can_be_read_has_none(profile: Profile) -> None:
    assert faults_of(profile) == ()


def put(path: str, value: Any) -> Callable[[dict[str, Any]], None]:
    def change(held: dict[str, Any]) -> None:
        *above, last = (int(part) if part.isdigit() else part for part in path.split("."))
        for part in above:
            held = held[part]
        held[last] = value

    return change


ODD = [
    (put("waits.recoat_opens.rows", []), "waits.recoat_opens.table: found an empty list"),
    (put("waits.flash_off.rows.0.time_s", -5), "waits.flash_off.time: found -"),
    (put("waits.flash_off.rows.0.at_c", 4000), "waits.flash_off.at: found"),
    (put("mix.by", "handful"), 'mix.by: found handful; expected one of "volume", "weight"'),
    (put("mix.parts.0.parts", 0), "mix.parts[1].parts: found the bare number 0"),
    (put("mix.parts.0.density_g_ml", 80), "mix.parts[1].density: found"),
    (put("mix.parts.1.name", "clear"), "mix.parts[2].name: found the same component as number 1"),
    (put("mix.thinner.usual_percent", {"low": 1, "high": 1e300}), "mix.thinner.usual: found"),
    (put("mix.pot_life.rows.0.time_s", 0), "mix.pot_life.time: found"),
    (
        put("film.coats", {"low": 2, "high": 10**12}),
        "film.coats: found 2 to 1e+12; expected number of coats",
    ),
    (put("film.coats", {"low": 0, "high": 0}), "film.coats: found the bare number 0"),
    (put("film.wet_um", {"low": None, "high": None}), "film.wet: found neither low nor high"),
    (put("film.wet_um", {"low": 90, "high": 60}), "film.wet: found 90 to 60 um, upside down"),
    (put("film.volume_solids_percent", {"low": -1, "high": 40}), "film.volume_solids: found"),
    (
        put("gun.overlap_percent", {"low": 100, "high": 100}),
        "gun.overlap: found the bare number 100; expected overlap",
    ),
    (put("gun.tip_mm", {"low": 1e9, "high": 1e9}), "gun.tip: found"),
    (put("efflux.cup", "kettle"), "efflux.cup: found kettle; expected the name of a flow cup"),
    (put("efflux.target_s", {"low": 0, "high": 0}), "efflux.target: found"),
    (put("limits.dew_margin_c", -1e6), "limits.dew_margin: found"),
    (put("name", ""), "name: found an empty text"),
    (put("name", "x" * 9000), "name: found xxx"),
    (put("notes", ["x"] * 9000), "notes: found a list of 9000"),
    (put("hazards", ["dust", "dust"]), 'hazards[2]: found "dust" a second time'),
    (
        put("waits.recoat_closes.rows.0.time_s", 30),
        "waits.recoat_closes: found a recoat window that closes before it opens",
    ),
    (
        put("steps", [{"key": "a", "kind": "levitate", "name": "A"}]),
        "steps[1].kind: found levitate; expected one of",
    ),
    (
        put("steps", [{"key": "a", "kind": "plain", "name": "A"}] * 2),
        "steps[2].key: found the key of another step",
    ),
]


@pytest.mark.parametrize(("change", "sentence"), ODD, ids=[sentence for _, sentence in ODD])
def test_an_odd_profile_is_told_in_a_painters_words(
    change: Callable[[dict[str, Any]], None], sentence: str
) -> None:
    held = in_a_log(demo())
    change(held)
    faults = faults_of(out_of_a_log(held))
    assert any(fault.startswith(sentence) for fault in faults), faults
    assert all(fault.isprintable() and fault.endswith((".", "?")) for fault in faults)


def test_rows_out_of_order_and_by_the_thousand() -> None:
    rows = tuple(AtTemperature(20.0 - n, 60.0) for n in range(3))
    waits = Waits(flash_off=WaitRule(rows), dust_free=WaitRule(rows * 5000))
    faults = faults_of(msgspec.structs.replace(PROFILE, waits=waits))
    assert len(faults) < 50
    assert faults[0].startswith(
        "waits.flash_off.table[2].at: found a colder row after a warmer one"
    )
    assert any("a list of 15000" in fault for fault in faults)


@given(profiles)
@settings(max_examples=40, deadline=None)
def test_what_is_judged_well_can_be_saved_and_read_again(profile: Profile) -> None:
    """The two ways to the same rules: what faults_of passes, the reader takes."""
    assert faults_of(profile) == ()
    assert isinstance(read_text(write(profile), "x.toml"), Profile)


TWO = Range(2, 2)
BEYOND = [
    Film(coats=Range(1, 51)),
    Film(coats=TWO, wet_um=Range(0.5, 60.0)),
    Film(coats=TWO, dry_total_um=Range(10.0, 10001.0)),
    Film(coats=TWO, density_g_ml=5.1),
    Film(coats=TWO, solvent_percent=100.5),
]


@pytest.mark.parametrize("film", BEYOND, ids=str)
def test_what_the_reader_refuses_is_a_fault_of_the_model_too(film: Film) -> None:
    profile = msgspec.structs.replace(PROFILE, film=film)
    answer = read_text(write(profile), "x.toml")
    assert not isinstance(answer, Profile)
    assert [fault.key for fault in answer] == [
        text.partition(":")[0] for text in faults_of(profile)
    ]


def test_a_thinner_beyond_its_limit_is_a_fault_in_a_log_as_in_a_file() -> None:
    mix = Mix((MixPart("a", 1.0), MixPart("b", 1.0)), thinner=Thinner("t", Range(5.0, 20.0), 10.0))
    faults = faults_of(msgspec.structs.replace(PROFILE, mix=mix, steps=(Step("a", "plain", "A"),)))
    assert faults == (
        "mix.thinner.usual: found usually 20 % with a limit of 10 %; expected no more than the limit.",
    )
