"""A job's settings as a new profile, saved and read back. All values invented."""

from __future__ import annotations

from pathlib import Path

import msgspec
import pytest

from booth.job.settings import NotAProfile, profile_from, settings_lines
from booth.log.events import (
    AirRead,
    BatchMixed,
    CatchMade,
    EffluxTimed,
    Event,
    FanSet,
    JobClosed,
    PatternRead,
    Pour,
)
from booth.log.fold import Job, fold
from booth.profile.model import Gun, Mix, Profile, Range, Thinner
from booth.profile.read import read_profile
from booth.profile.save import save_new
from booth.units import System
from tests.job.make import at, opened, q
from tests.profile.alike import differences

RUNS = tuple(
    EffluxTimed(n=0, at=at(0), cup="ford-4", seconds=s, liquid_temperature=q(23.0, "degC"))
    for s in (21.4, 21.6)
)
AIR = AirRead(n=0, at=at(0), inlet=q(190.0, "kPa"))
PAINT = CatchMade(
    n=0, at=at(0), seconds=60, amount=q(200, "ml"), delivery_ml_min=200.0, tip=q(1.4, "mm")
)
FAN = FanSet(n=0, at=at(0), width=q(250, "mm"), distance=q(180, "mm"))
OVERLAP = PatternRead(n=0, at=at(0), shape="even", overlap=q(40, "%"))


def job_of(*kept: Event, system: str = "metric", **changes: object) -> Job:
    first = msgspec.structs.replace(opened(**changes), system=system)
    return fold([first, *(msgspec.structs.replace(e, n=n) for n, e in enumerate(kept, 2))])


def mixed(thinner_ml: float) -> BatchMixed:
    pours = (
        Pour("clear", q(200, "ml")),
        Pour("hardener", q(100, "ml")),
        Pour("thinner", q(thinner_ml, "ml")),
    )
    return BatchMixed(n=0, at=at(0), batch=1, pours=pours)


def test_what_was_measured_takes_the_place_of_what_was_asked() -> None:
    old = job_of().profile
    new = profile_from(job_of(mixed(24.0), *RUNS, AIR, PAINT, FAN, OVERLAP), "Clear, warm day")
    assert new.efflux is not None and new.efflux.target_s == Range(20.4, 22.6)
    assert (new.efflux.cup, new.efflux.at_c) == ("Ford #4", 23.0)
    assert new.gun.inlet_kpa == Range(180.0, 200.0)
    assert new.gun.delivery_ml_min == Range(190, 210)
    assert new.gun.fan_mm is not None and new.gun.fan_mm.holds(250)
    assert new.gun.distance_mm is not None and new.gun.distance_mm.holds(180)
    assert (new.gun.tip_mm, new.gun.overlap_percent) == (Range(1.4, 1.4), Range(40.0, 40.0))
    assert new.mix is not None and new.mix.thinner is not None
    assert new.mix.thinner.usual_percent == Range(8.0, 8.0)
    untouched = ("hazards", "cautions", "film", "waits", "limits", "steps", "demo", "waterborne")
    assert all(getattr(new, each) == getattr(old, each) for each in untouched)


def test_it_says_where_it_is_from() -> None:
    closed = JobClosed(n=0, at=at(9), verdict="good", next_time="a little slower on the edge")
    new = profile_from(job_of(AIR, closed), "Clear, warm day")
    assert new.source == "invented; settings from job trial of 2026-09-21"
    assert new.demo
    assert new.notes[0] == "Settings from job trial: inlet 1.90 bar."
    assert new.notes[-1] == "Next time: a little slower on the edge"


def test_spread_stays_inside_what_was_asked_for() -> None:
    edge = AirRead(n=0, at=at(0), inlet=q(208.0, "kPa"))
    new = profile_from(job_of(edge), "Clear, more air")
    assert new.gun.inlet_kpa is not None
    assert new.gun.inlet_kpa.high == pytest.approx(210.0)
    assert len(new.notes) == 1


def test_setting_outside_of_what_was_asked_for_is_told() -> None:
    high = AirRead(n=0, at=at(0), inlet=q(240.0, "kPa"))
    new = profile_from(job_of(high), "Clear, more air")
    assert new.gun.inlet_kpa is not None and new.gun.inlet_kpa.holds(240.0)
    assert "Outside of what the profile asked for" in new.notes[-1]
    assert "2.10 bar" in new.notes[-1] and "2.40 bar" in new.notes[-1]


def test_thinner_beyond_the_limit_is_not_taken_over() -> None:
    new = profile_from(job_of(mixed(60.0), AIR), "Clear, thin")
    assert new.mix is not None and new.mix.thinner is not None
    assert new.mix.thinner.usual_percent == Range(10, 10)
    assert "20 % thinner, beyond the limit of 15 %" in new.notes[-1]


def test_of_several_thinners_the_one_that_was_used_is_changed() -> None:
    usual, long = Thinner("usual", Range(10, 10), 15), Thinner("thinner", Range(5, 5), 20)
    parts = job_of().profile.mix.parts  # type: ignore[union-attr]
    batch = msgspec.structs.replace(mixed(54.0), thinned_with="thinner")
    job = job_of(batch, AIR, mix=Mix(parts=parts, thinner=usual, thinners=(long,)))
    new = profile_from(job, "Clear, hot day").mix
    # 54 ml on 300 ml is 18 %: beyond what the usual one may have, not beyond what this one may.
    assert new is not None and new.thinner == usual
    assert new.thinners == (msgspec.structs.replace(long, usual_percent=Range(18.0, 18.0)),)


def test_water_and_a_shut_inlet_are_no_settings() -> None:
    water = msgspec.structs.replace(PAINT, liquid="water", inlet=q(0.0, "kPa"), tip=None)
    with pytest.raises(NotAProfile, match="Nothing was measured"):
        profile_from(job_of(water), "Clear, water")


@pytest.mark.parametrize("name", ["Trial clear", "trial-clear", "", "  "])
def test_name_has_to_tell_it_from_the_old_one(name: str) -> None:
    with pytest.raises(NotAProfile):
        profile_from(job_of(AIR), name)


@pytest.mark.parametrize("system", list(System))
def test_saved_file_is_read_strictly_without_a_fault(tmp_path: Path, system: System) -> None:
    old = tmp_path / "trial-clear.toml"
    old.write_text("mine", encoding="utf-8")
    job = job_of(
        mixed(24.0),
        *RUNS,
        AIR,
        PAINT,
        FAN,
        OVERLAP,
        system=system.value,
        gun=Gun(inlet_kpa=Range(180, 210), delivery_ml_min=Range(170, 240), hvlp=True),
    )
    new = profile_from(job, "Clear [b]warm[/b], 2\u00bd\x1b")
    path = save_new(new, tmp_path, system)
    answer = read_profile(path)
    assert isinstance(answer, Profile), answer
    back = msgspec.structs.replace(answer, key=new.key)
    assert differences(back, new) == []
    assert old.read_text(encoding="utf-8") == "mine"


def test_lines_tell_what_would_be_taken_over() -> None:
    lines = settings_lines(job_of(mixed(24.0), *RUNS, AIR, PAINT, OVERLAP), System.US)
    assert lines == (
        "efflux 21.5 s in a Ford #4",
        "inlet 28 psi",
        "delivery 6.8 fl oz/min",
        "tip 1.4 mm",
        "overlap 40 %",
        "thinner 8 %",
    )
    assert settings_lines(job_of(), System.US) == ()
