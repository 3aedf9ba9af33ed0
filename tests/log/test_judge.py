"""An opening that reads well and cannot be worked with is told, listed, and opened nowhere."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from booth.card.report import report
from booth.job.fault_evidence import evidence_of
from booth.job.job_schedule import planned
from booth.job.past import last_good
from booth.job.past_settings import settings_of
from booth.job.settings import profile_from, settings_lines
from booth.job.steps import next_open
from booth.job.thin_advice import advise
from booth.job.vapour import vapour_of
from booth.job.waits import alarms
from booth.learnt.past_jobs import PastJobs
from booth.log import codec
from booth.log import events as ev
from booth.log.errors import NotKept
from booth.log.fold import NoJob, fold
from booth.log.history import history
from booth.log.judge import oddities
from booth.log.open_jobs import OpenJobs
from booth.log.parse import MOST_AHEAD, parse
from booth.log.session import Session
from booth.log.store import create_log
from booth.log.summary import summary_of
from booth.profile.library import load_folder
from booth.profile.model import Profile
from booth.units import System
from booth.words.profile_words import profile_lines
from tests.log.logs import closed, moment, note, opened, quantity, unfinished, write

BUNDLED = load_folder([Path(__file__).parents[2] / "profiles"]).profiles
WHOLE = {profile.key: profile for profile in BUNDLED}


def plain_of(profile: Profile) -> Any:
    """The opening of a job as plain data, nothing of it left at its default."""
    return msgspec.json.decode(
        codec.encode(opened(profile=profile, system="metric", gun="A", shop={"guns": [{}]}))
    )


PLAIN = plain_of(WHOLE["two-pack-clear"])

#: Where in the opening, what stands there, and what the sentence says.
ODD: list[tuple[str, Any, str]] = [
    (
        "profile.waits.recoat_opens",
        {"rows": []},
        "profile.waits.recoat_opens.table: found an empty",
    ),
    (
        "profile.waits.flash_off",
        {"rows": [{"at_c": 20, "time_s": 60}, {"at_c": 10, "time_s": 90}]},
        "profile.waits.flash_off.table[2].at: found a colder row after a warmer one",
    ),
    ("profile.waits.flash_off.rows.0.time_s", -60, "profile.waits.flash_off.time: found -1 min"),
    (
        "profile.waits.flash_off.rows.0.time_s",
        1e300,
        "flash_off.time: found 10000000000000000525047602552044202487044685811…; expected a time, "
        "from 1 s to 366 d",
    ),
    ("parts", [], "parts has 0 names"),
    ("parts", ["door", "door"], 'parts has the name "door" more than once'),
    ("parts", ["door", " "], "parts has a blank name"),
    ("parts", [f"part {n}" for n in range(1000)], "parts has 1000 names"),
    ("system", "cgs", 'system is "cgs"; us or metric is possible'),
    ("shop", {"guns": 5}, "shop.guns is no list"),
    ("n", 50, "its number is 50"),
    ("profile.mix.by", "moles", 'profile.mix.by: found moles; expected one of "volume", "weight"'),
    ("profile.mix.parts.0.parts", 0, "profile.mix.parts[1].parts: found the bare number 0"),
    ("profile.mix.parts.0.density_g_ml", 0, "profile.mix.parts[1].density: found 0 g/ml"),
    (
        "profile.film.coats",
        10**12,
        "profile.film.coats: found the bare number 1e+12; expected number of coats, from 1 to 50",
    ),
    ("profile.film.coats", 0, "profile.film.coats: found the bare number 0"),
    (
        "profile.film.coats",
        2**63,
        "profile.film.coats: found a whole number of more than fifteen digits",
    ),
    ("profile.film.wet_um", {}, "profile.film.wet: found neither low nor high"),
    (
        "profile.film.wet_um",
        {"low": 9, "high": 5},
        "profile.film.wet: found 9 to 5 um, upside down",
    ),
    ("profile.efflux.cup", "thimble", "profile.efflux.cup: found thimble"),
    (
        "profile.steps",
        [{"key": "a", "kind": "mix", "name": "A"}, {"key": "a", "kind": "air", "name": "B"}],
        "profile.steps[2].key: found the key of another step",
    ),
]


def put(value: Any, path: list[str], new: Any) -> Any:
    """Give a copy of plain data with `new` at `path`."""
    if not path:
        return new
    if isinstance(value, list):
        at = int(path[0])
        return [put(each, path[1:], new) if n == at else each for n, each in enumerate(value)]
    return {**value, path[0]: put(value[path[0]], path[1:], new)}


def line(where: str, new: Any) -> bytes:
    return bytes(msgspec.json.encode(put(PLAIN, where.split("."), new))) + b"\n"


@pytest.mark.parametrize(("where", "new", "says"), ODD, ids=[f"{w}={n!r}"[:40] for w, n, _ in ODD])
def test_an_odd_job_is_listed_with_its_fault_and_opened_nowhere(
    tmp_path: Path, where: str, new: Any, says: str
) -> None:
    path = tmp_path / "20250615-1506-two-pack-clear-3fa2.jsonl"
    data = line(where, new) + codec.encode(msgspec.structs.replace(note(2), n=2))
    path.write_bytes(data)
    good = write(tmp_path, "20250615-1507-demo-0001", opened())
    (summary,) = [each for each in history(tmp_path) if each.path == path]
    assert says in summary.fault and "cannot be opened: line 1: " in summary.fault
    assert "The file is left as it is: mend that line" in summary.fault
    assert summary.name == "two-pack-clear-3fa2" and not summary.is_open
    assert {each.path for each in unfinished(tmp_path)} == {path, good}
    jobs = OpenJobs(tmp_path, "boot 1")
    jobs.look()
    assert [each.path for each in jobs.jobs()] == [good]
    assert [each.fault for each in jobs.found.unread] == [summary.fault]
    for take in (jobs.take_up, Session.resume):
        with pytest.raises(NoJob) as refused:
            take(path)
        assert str(refused.value) == f"{path.name}: {summary.fault}"
    assert jobs.acknowledge(path, note(0)) is False
    assert path.read_bytes() == data
    # What past jobs teach passes it over, the report shows what there is.
    assert last_good(tmp_path, "two-pack-clear") is None and [*PastJobs(tmp_path).pairs()] == []
    content = parse(data)
    assert [number for number, _ in content.broken] == [1]
    assert says in content.said[0]
    told = report(content.events, System.US, str, str, content.said)
    assert "This log holds no job" in told and "note: a note" in told


def test_no_such_job_is_begun(tmp_path: Path) -> None:
    for where, new, says in ODD:
        if where == "n":
            continue
        first = codec.decode(line(where, new))
        assert isinstance(first, ev.JobOpened)
        with pytest.raises(NotKept, match="The job cannot be begun: ") as refused:
            create_log(tmp_path, first)
        assert says in str(refused.value)
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("key", sorted(WHOLE))
def test_no_bundled_profile_is_odd(key: str) -> None:
    assert oddities(opened(profile=WHOLE[key])) == ()


def test_a_profile_without_a_list_of_steps_has_the_usual_ones() -> None:
    plain = opened(profile=msgspec.structs.replace(WHOLE["shellac-sealer"], steps=()))
    assert oddities(plain) == () and next_open(fold([plain])).kind == "cautions"


@pytest.mark.parametrize("digits", [20, 400, 4000, 9000])
def test_a_number_of_any_length_stops_nothing(digits: int) -> None:
    data = line("profile.film.coats", 7).replace(b'"coats":7', b'"coats":' + b"9" * digits)
    assert parse(data).fault and summary_of(Path("a-0001.jsonl"), data).fault


def test_several_oddities_are_counted() -> None:
    data = line("profile.film.coats", 0).replace(b'"system":"metric"', b'"system":"cgs"')
    data = data.replace(b'"parts":["hood","door"]', b'"parts":[]')
    assert ", and 2 more" in parse(data).fault


@pytest.mark.parametrize("high", [2**53 - 1, MOST_AHEAD + 3, 10**15])
def test_a_number_out_of_all_reason_is_a_broken_line_and_the_next_is_kept(
    tmp_path: Path, high: int
) -> None:
    path = write(tmp_path, "a-0001", opened())
    with path.open("ab") as file:
        file.write(codec.encode(note(high)))
    session = Session.resume(path)
    assert any(f"its number, {high}, is none" in each for each in session.log.said)
    assert session.record(note(0)).n == 2
    assert history(tmp_path)[0].broken == 1 and history(tmp_path)[0].is_open


def test_the_highest_number_that_is_taken_still_leaves_room(tmp_path: Path) -> None:
    path = write(tmp_path, "a-0001", opened())
    with path.open("ab") as file:
        file.write(codec.encode(note(MOST_AHEAD + 2)))
    session = Session.resume(path)
    for n in (3, 4, 5):
        assert session.record(note(0)).n == MOST_AHEAD + n
    assert parse(path.read_bytes()).broken == []


# -- what is not told as odd can be worked with -----------------------------------------------------

NOW = [moment(seconds) for seconds in (0, 90, 2500, 1e6)]


def some_work() -> list[ev.Event]:
    """A coat and a half with what is measured for it."""
    return [
        ev.WeatherRead(
            n=2,
            at=moment(1),
            air=quantity(20, "degC"),
            humidity=quantity(50, "%"),
            part=quantity(19, "degC"),
        ),
        ev.BatchMixed(n=3, at=moment(2), batch=1, total=quantity(500, "ml")),
        ev.ThinnerAdded(
            n=4, at=moment(3), amount=quantity(20, "ml"), remaining=quantity(500, "ml")
        ),
        ev.EffluxTimed(n=5, at=moment(4), cup="ford-4", seconds=21),
        ev.CatchMade(
            n=6,
            at=moment(5),
            seconds=30,
            amount=quantity(90, "ml"),
            delivery_ml_min=180,
            turns=quantity(1.5, "turns"),
        ),
        ev.CoatBegun(n=7, at=moment(20), part="door", coat=1),
        ev.CoatEnded(n=8, at=moment(80), part="door", coat=1),
        ev.CoatBegun(n=9, at=moment(2000), part="door", coat=2),
    ]


def leaves(value: Any, path: tuple[str, ...] = ()) -> list[list[str]]:
    if isinstance(value, dict):
        return [leaf for key in value for leaf in leaves(value[key], (*path, key))]
    if isinstance(value, list) and value:
        return [leaf for n, each in enumerate(value) for leaf in leaves(each, (*path, str(n)))]
    return [list(path)]


STRANGE = st.one_of(
    st.sampled_from([0, -1, 1, 50, 100, 10**12, 2**63, 1e-12, 0.5, 1e12, -40.0, "", "x", None]),
    st.sampled_from([[], {}, True, "volume", "weight", "ford-4", "\u202e"]),
    st.integers(),
    st.floats(allow_nan=False, allow_infinity=False),
    st.text(max_size=9),
)


@settings(max_examples=400, deadline=2000)
@given(st.sampled_from(BUNDLED), st.data())
def test_an_opening_is_told_as_odd_or_everything_can_work_with_it(
    profile: Profile, data: st.DataObject
) -> None:
    plain = plain_of(profile)
    for _ in range(data.draw(st.integers(1, 2))):
        places = [leaf for leaf in leaves(plain) if leaf != ["event"]]
        plain = put(plain, data.draw(st.sampled_from(places)), data.draw(STRANGE))
    tail = b"".join(map(codec.encode, some_work()))
    log = msgspec.json.encode(plain) + b"\n" + tail
    content = parse(log)
    summary = summary_of(Path("a-0001.jsonl"), log)
    assert bool(summary.fault) == bool(content.fault)
    if content.fault:
        return
    job = fold([*content.events])
    for system in System:
        report(job.events, system, lambda at: "", lambda at: "")
        profile_lines(job.profile, system)
        settings_lines(job, system)
    for now in NOW:
        alarms(job, now)
        planned(job, now)
    evidence_of(job)
    settings_of(job)
    profile_from(job, "name")
    vapour_of(job)
    advise(job)
    next_open(job)


def test_a_closed_job_that_is_odd_is_no_good_job(tmp_path: Path) -> None:
    path = tmp_path / "20250615-1506-two-pack-clear-3fa2.jsonl"
    end = codec.encode(msgspec.structs.replace(closed(), n=2))
    path.write_bytes(line("profile.film.coats", 0) + end)
    assert last_good(tmp_path, "two-pack-clear") is None
    path.write_bytes(line("profile.film.coats", 2) + end)
    assert last_good(tmp_path, "two-pack-clear") is not None
