"""A running job that changes: its parts, racks, gun and coats, by example and by property."""

from __future__ import annotations

from pathlib import Path

import msgspec
from hypothesis import given
from hypothesis import strategies as st

from booth.job.coat_plan import coats_wanted
from booth.job.waits import waits
from booth.log import codec
from booth.log import events as ev
from booth.log.fold import Job, fold
from booth.log.history import history
from booth.log.parse import parse
from booth.units import Quantity
from tests.job.make import at, mild, opened, q
from tests.job.make import profile as trial
from tests.log.logs import write

RACK = ev.Rack("doors", 24, 2)
COATED = (
    ev.CoatBegun(n=0, at=at(10), part="door", coat=1),
    ev.CoatEnded(n=0, at=at(70), part="door", coat=1),
)
READ = (
    ev.AirRead(n=0, at=at(100), inlet=q(190, "kPa")),
    ev.CatchMade(n=0, at=at(200), seconds=60, amount=q(180, "ml"), delivery_ml_min=180),
    ev.FanSet(n=0, at=at(300), width=q(250, "mm")),
    ev.PatternRead(n=0, at=at(400), shape="good"),
)
TIMED = ev.EffluxTimed(n=0, at=at(50), cup="ford-4", seconds=21)


def numbered(*kept: ev.Event) -> list[ev.Event]:
    return [opened(), *(msgspec.structs.replace(each, n=n) for n, each in enumerate(kept, 2))]


def job_of(*kept: ev.Event) -> Job:
    return fold(numbered(*kept))


def changed(**changes: tuple[str, ...]) -> ev.PartsChanged:
    return ev.PartsChanged(n=0, at=at(500), **changes)  # type: ignore[arg-type]


def gun(name: str = "", tip: Quantity | None = None, cup: Quantity | None = None) -> ev.GunChanged:
    return ev.GunChanged(n=0, at=at(500), gun=name, tip=tip, cup=cup)


def test_parts_come_and_go_and_a_dropped_one_keeps_its_coats_without_a_wait() -> None:
    before = job_of(mild(), *COATED)
    assert [wait.part for wait in waits(before)] == ["door"]
    job = job_of(mild(), *COATED, changed(add=("sill",), drop=("door",)))
    assert job.parts == ("hood", "sill") and waits(job) == ()
    assert len(job.coats_on("door")) == 1
    back = job_of(mild(), *COATED, changed(drop=("door",)), changed(add=("door",)))
    assert back.parts == ("hood", "door")
    assert [wait.part for wait in waits(back)] == ["door"]


def test_a_job_is_never_without_a_part() -> None:
    assert job_of(changed(drop=("door", "hood"))).parts == ("door", "hood")
    assert job_of(changed(add=(" ", "door"))).parts == ("door", "hood")


def test_a_rack_that_comes_has_its_sides_as_parts_and_goes_with_the_last_of_them() -> None:
    comes = ev.PartsChanged(n=0, at=at(1), add=RACK.parts, racks=(RACK,))
    job = job_of(comes)
    assert job.parts == ("door", "hood", "doors: side 1", "doors: side 2")
    assert job.present.racks == (RACK,)
    assert job_of(comes, changed(drop=RACK.parts[:1])).present.racks == (RACK,)
    assert job_of(comes, changed(drop=RACK.parts)).present.racks == ()


def test_a_rack_that_nobody_can_have_is_none() -> None:
    for absurd in (ev.Rack("x", 1, 10**9), ev.Rack("x", -1, 2), ev.Rack("x", 1, 0)):
        event = ev.PartsChanged(n=0, at=at(1), add=("x: side 1",), racks=(absurd,))
        assert job_of(event).present.racks == ()
    many = ev.PartsChanged(n=0, at=at(1), add=tuple(map(str, range(5000))))
    assert len(job_of(many).parts) == 200


def test_another_gun_or_tip_makes_what_was_read_of_the_old_one_say_nothing() -> None:
    for other in (gun("grey gun"), gun(tip=q(1.3, "mm"))):
        job = job_of(*READ, TIMED, other)
        assert (job.airs, job.catches, job.fans, job.patterns) == ((), (), (), ())
        assert len(job.runs) == 1, "the cup was timed of the mix, whatever gun"
        voided = job_of(*READ, TIMED, other, ev.Voided(n=0, at=at(600), target=7))
        assert len(voided.catches) == 1 and voided.fitted == job_of(*READ, TIMED).fitted


def test_another_cup_changes_nothing_that_was_read() -> None:
    job = job_of(*READ, gun(cup=q(600, "ml")))
    assert len(job.catches) == len(job.airs) == 1
    assert job.fitted.cup == q(600, "ml")


def test_a_product_that_is_done_with_keeps_what_was_read_of_its_gun() -> None:
    opening = msgspec.structs.replace(opened(), later=(trial(key="second"),))
    begun = ev.ProductBegun(n=0, at=at(450), product=2)
    _, *rest = numbered(*READ, begun, gun("grey gun"))
    job = fold([opening, *rest])
    assert len(job.before[0].catches) == 1 and job.before[0].fitted.gun == ""
    assert job.fitted.gun == "grey gun" and job.parts == job.before[0].parts


def test_coats_changed_belong_to_the_product_they_were_said_of() -> None:
    opening = msgspec.structs.replace(opened(), later=(trial(key="second"),))
    more = ev.CoatsChanged(n=0, at=at(1), coats=5)
    _, *rest = numbered(more, ev.ProductBegun(n=0, at=at(450), product=2))
    job = fold([opening, *rest])
    assert coats_wanted(job) == 3 and coats_wanted(job.before[0]) == 5


def test_the_log_keeps_every_change_and_the_list_of_jobs_shows_it(tmp_path: Path) -> None:
    kept = (
        ev.PartsChanged(n=0, at=at(1), add=RACK.parts, drop=("hood",), racks=(RACK,)),
        gun("grey gun", q(1.3, "mm"), q(400, "ml")),
        ev.CoatsChanged(n=0, at=at(2), coats=4, part="door"),
    )
    events = [msgspec.structs.replace(opened(), racks=(RACK,)), *numbered(*kept)[1:]]
    path = write(tmp_path, "20250615-1506-trial-1111", *events)
    content = parse(path.read_bytes())
    assert (content.said, content.fault) == ([], "")
    job, same = fold(content.events), fold(events)
    assert (job.parts, job.present, job.fitted) == (same.parts, same.present, same.fitted)
    assert coats_wanted(job, "door") == 4 and coats_wanted(job, "doors: side 1") == 3
    (summary,) = history(tmp_path)
    assert summary.parts == job.parts and summary.gun == "grey gun"


names = st.sampled_from(["door", "hood", "sill", "doors: side 1", "doors: side 2"])
changes = st.one_of(
    st.builds(
        ev.PartsChanged,
        n=st.just(0),
        at=st.just(at(1)),
        add=st.lists(names, max_size=3).map(tuple),
        drop=st.lists(names, max_size=3).map(tuple),
        racks=st.sampled_from([(), (RACK,)]),
    ),
    st.builds(
        ev.CoatsChanged,
        n=st.just(0),
        at=st.just(at(1)),
        coats=st.integers(-2, 9),
        part=st.one_of(st.just(""), names),
    ),
    st.builds(
        ev.GunChanged, n=st.just(0), at=st.just(at(1)), gun=st.sampled_from(["", "grey", "red"])
    ),
    st.builds(ev.CoatBegun, n=st.just(0), at=st.just(at(1)), part=names, coat=st.just(1)),
    st.builds(ev.CoatEnded, n=st.just(0), at=st.just(at(2)), part=names, coat=st.just(1)),
    st.sampled_from([*READ, TIMED, mild()]),
)


@given(st.lists(changes, max_size=12), st.data())
def test_whatever_changes_a_void_takes_it_back_and_a_restore_brings_it(
    kept: list[ev.Event], data: st.DataObject
) -> None:
    events = numbered(*kept)
    whole = fold(events)
    assert whole.parts and len(set(whole.parts)) == len(whole.parts)
    assert all(coats_wanted(whole, part) >= 1 for part in whole.parts)
    assert {wait.part for wait in waits(whole)} <= set(whole.parts)
    assert [codec.decode(codec.encode(each)) for each in events] == events
    if not kept:
        return
    target = data.draw(st.integers(2, len(events)))
    void = [*events, ev.Voided(n=len(events) + 1, at=at(3), target=target)]
    without, left = fold(void), fold([each for each in events if each.n != target])
    assert (without.present, without.fitted, without.coats) == (
        left.present,
        left.fitted,
        left.coats,
    )
    back = fold([*void, ev.Restored(n=len(events) + 2, at=at(4), target=target)])
    assert (back.present, back.fitted, back.coats) == (whole.present, whole.fitted, whole.coats)
    assert back.catches == whole.catches and len(waits(back)) == len(waits(whole))
