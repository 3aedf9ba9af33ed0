"""The running job changes at the bench: coats, parts, the gun; racks and sides; laid until it hides."""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from msgspec.structs import replace

from booth.bench.act import Menu
from booth.bench.changes import change_menu
from booth.job.amiss import Cause
from booth.job.coat_plan import coat_named, coats_wanted, hides_yet, planned
from booth.job.guard_gun import of_gun
from booth.job.job_schedule import planned as whole_plan
from booth.job.job_schedule import spray_times
from booth.job.part_names import parts_from
from booth.job.wait import State, What
from booth.job.waits import alarms, waits
from booth.log.events import (
    CatchMade,
    CoatBegun,
    CoatEnded,
    CoatsChanged,
    Event,
    GunChanged,
    PartsChanged,
    TouchTried,
)
from booth.profile.model import CoatPlan, Film, Profile, Range
from booth.profile.model import Gun as Asked
from booth.shop.model import Gun, Shop
from booth.words.shown import Parts
from tests.instruments.at_bench import AtBench, in_mild_weather
from tests.job.make import mild, q
from tests.job.make import profile as trial
from tests.manual_clock import ManualClock

TWO_COATS: Profile = replace(trial(), film=Film(coats=Range(2, 2)), mix=None)
HIDES = replace(
    TWO_COATS,
    film=Film(),
    coats=(
        CoatPlan("base", times=Range(2, 4), until_hidden=True),
        CoatPlan("drop coat", inlet_kpa=Range(100, 120)),
    ),
)
SHOP = Shop(guns=(Gun("grey gun", tip_mm=1.4, cup_ml=600), Gun("red gun", tip_mm=1.2)))
DOORS = parts_from("24 doors x 2 sides")


def change(b: AtBench, *words: str) -> None:
    """Ask for what can change, as the command does, and choose."""
    b.press("f12")
    assert b.commands == ["change"]
    b.rest = (change_menu(b.now),)
    for each in words:
        b.choose(each)


def offered(b: AtBench) -> list[str]:
    b.press("right")
    (menu,) = (each for each in b.rest if isinstance(each, Menu))
    return [choice.words for choice in menu.choices]


def table(b: AtBench) -> Parts:
    (parts,) = b.bench.instrument.picture(b.now, b.rows.values)
    assert isinstance(parts, Parts)
    # Behind the parts stand the windows after their last coat.
    return replace(parts, rows=tuple(row for row in parts.rows if row.coats))


def coat(b: AtBench, seconds: float = 60.0) -> None:
    """One coat: a press begins, a press ends it."""
    b.press("space")
    assert b.job.running_coat(b.log[-1].part) is not None, b.said  # type: ignore[attr-defined]
    b.pass_time(seconds)
    b.press("space")


def racked(**more: object) -> AtBench:
    return AtBench(
        "coats",
        profile=TWO_COATS,
        before=in_mild_weather,
        parts=DOORS.names,
        racks=DOORS.racks,
        **more,  # type: ignore[arg-type]
    )


# -- racks and sides -----------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("typed", "names", "title", "pieces"),
    [
        ("24 doors x 2 sides", ("doors: side 1", "doors: side 2"), "24 doors", 24),
        ("24 doors 2 sides", ("doors: side 1", "doors: side 2"), "24 doors", 24),
        ("rack of 24, 2 sides", ("pieces: side 1", "pieces: side 2"), "24 pieces", 24),
        ("Rack of 12 fronts x 1 side", ("fronts",), "12 fronts", 12),
        ("rack of 8 rails", ("rails",), "8 rails", 8),
        ("table top x 2 sides", ("table top: side 1", "table top: side 2"), "table top", 1),
    ],
)
def test_a_rack_as_it_is_typed(typed: str, names: tuple[str, ...], title: str, pieces: int) -> None:
    found = parts_from(typed)
    (rack,) = found.racks
    assert (found.names, rack.title, rack.pieces) == (names, title, pieces)


@pytest.mark.parametrize("typed", ["24 doors", "left door, 2 sides", "left side", "box 2"])
def test_what_names_no_rack_is_a_part_as_before(typed: str) -> None:
    found = parts_from(typed)
    assert found.racks == ()
    assert found.names == tuple(each.strip() for each in typed.split(","))


def test_24_doors_with_two_sides_and_two_coats_take_eight_presses_in_one_row() -> None:
    b = racked()
    for _ in range(2):
        for side in (1, 2):
            assert f"side {side}" in b.keys["Space"] and len(table(b).rows) == 1
            coat(b)
        b.pass_time(3600)
    begun = [each for each in b.log if isinstance(each, CoatBegun)]
    ended = [each for each in b.log if isinstance(each, CoatEnded)]
    # Each of the four side's coats was begun by one press and ended by one.
    assert len(begun) == len(ended) == 4 and len(b.log) == 8 + 1
    assert [each.part for each in begun] == [*DOORS.names, *DOORS.names]
    (row,) = table(b).rows
    assert (row.name, row.coats) == ("24 doors", "4/4")


def test_the_row_follows_the_side_painted_last_and_the_rack_rings_once() -> None:
    b = racked()
    coat(b)
    b.pass_time(300)
    coat(b)
    (row,) = table(b).rows
    assert row.coats == "2/4" and row.what.startswith("side 2: for coat 2")
    # Side 1 is over after 10 min, side 2 five minutes later: nothing rings before that.
    b.pass_time(400)
    assert alarms(b.job, b.clock.now()) == ()
    b.pass_time(300)
    (alarm,) = alarms(b.job, b.clock.now())
    assert alarm.standing.wait.part == "doors: side 2"
    assert table(b).rows[0].word == "READY"


def test_turning_a_side_that_may_be_wet_is_told_and_takes_no_further_press() -> None:
    b = racked()
    coat(b)
    assert "side 1 was sprayed" in b.text and "Turn it only" in b.text
    coat(b)
    begun = [each for each in b.log if isinstance(each, CoatBegun)]
    assert "other side not dry yet" in begun[-1].amiss


def test_the_window_of_a_rack_closes_on_the_piece_that_was_sprayed_first() -> None:
    lone = AtBench("coats", profile=TWO_COATS, before=in_mild_weather, parts=("door",))
    rack = racked()
    for b in (lone, rack):
        coat(b, 1800)
    (door,), (doors,) = waits(lone.job), waits(rack.job)
    assert door.closes_s is not None and doors.closes_s is not None
    assert doors.opens_s == door.opens_s
    # The coat lasted half an hour and the second of the press.
    assert door.closes_s - doors.closes_s == pytest.approx(1801, abs=0.01)


def test_a_touch_is_of_the_side_whose_wait_is_told() -> None:
    b = racked()
    coat(b)
    b.pass_time(400)
    assert b.keys["Space"].endswith("side 2")
    b.press("d")
    touched = b.log[-1]
    assert isinstance(touched, TouchTried) and touched.part == "doors: side 1"
    assert "doors: side 1: touched dry" in offered(b)


def test_a_rack_is_not_ready_before_its_slower_side_is() -> None:
    """A side sprayed in the cold takes longer than the other one, sprayed after it in the warm."""
    b = racked()
    b.keep(replace(mild(part=12.0, air=12.0), at=b.clock.now()))
    coat(b)
    b.keep(replace(mild(), at=b.clock.now()))
    coat(b)
    first, second = waits(b.job)
    assert first.opens_s is not None and second.opens_s is not None
    assert first.opens_s > second.opens_s + 61
    b.pass_time(second.opens_s + 1)
    (row,) = table(b).rows
    assert row.what.startswith("side 1") and row.word == "WAIT"
    assert alarms(b.job, b.clock.now()) == ()
    b.pass_time(first.opens_s - second.opens_s)
    assert len(alarms(b.job, b.clock.now())) == 1


def test_each_window_of_a_rack_that_closes_is_told() -> None:
    b = racked()
    coat(b)
    b.pass_time(3 * 3600)
    coat(b)
    b.pass_time(24 * 3600 - 3 * 3600)
    rings = [
        (each.standing.wait.part, each.standing.state) for each in alarms(b.job, b.clock.now())
    ]
    # That side 2 is ready was never silenced either.
    assert rings == [("doors: side 1", State.LATE), ("doors: side 2", State.READY)]
    assert table(b).rows[0].word == "LATE"


def test_the_other_side_can_be_taken_first_and_arrows_walk_the_rows() -> None:
    b = AtBench(
        "coats",
        profile=TWO_COATS,
        before=in_mild_weather,
        parts=(*DOORS.names, "hood"),
        racks=DOORS.racks,
    )
    assert [row.name for row in table(b).rows] == ["24 doors", "hood"]
    b.press("down")
    assert table(b).chosen == 1 and b.keys["Space"] == "begin coat 1: hood"
    b.press("up")
    assert "Turn to doors: side 2" in offered(b)
    b.choose("Turn to doors: side 2")
    assert b.keys["Space"] == "begin coat 1: doors: side 2"


def test_two_coats_at_once_end_the_first() -> None:
    b = racked()
    b.press("space")
    b.bench.form = b.bench.form.choosing("part", "doors: side 2")
    assert b.keys["Space"] == "end coat 1 on doors: side 1 first"


def test_time_and_area_count_the_pieces() -> None:
    b = racked()
    single = AtBench("coats", profile=TWO_COATS, parts=("door",))
    guess_s = spray_times(single.job)["door"].seconds
    assert spray_times(b.job)["doors: side 1"].seconds == 24 * guess_s
    b.open("amount")
    b.go_to("form")
    while b.rows.values["form"] != "sheet":
        b.press("right")
    assert b.rows.values["sides"] == "2"
    count = b.rows.values["count"]
    assert getattr(count, "value", count) == 24


# -- coats ---------------------------------------------------------------------------------------


def test_a_coat_more_is_planned_with_its_wait_and_a_coat_fewer_is_not() -> None:
    b = AtBench("coats", profile=TWO_COATS, before=in_mild_weather, parts=("door",))
    coat(b)
    b.pass_time(700)
    coat(b)
    assert What.NEXT_COAT not in {wait.what for wait in waits(b.job)}
    change(b, "One coat more")
    assert b.log[-1] == CoatsChanged(n=b.log[-1].n, at=b.log[-1].at, coats=3)
    assert "3 coats in all" in b.said and "2 at most" in b.said
    assert {wait.what for wait in waits(b.job)} == {What.NEXT_COAT}
    assert whole_plan(b.job, b.clock.now()).schedule.remaining == 1
    b.pass_time(700)
    assert b.keys["Space"] == "begin coat 3: door"
    change(b, "One coat fewer")
    assert coats_wanted(b.job) == 2
    assert not any(each.words.startswith("One coat fewer") for each in change_menu(b.now).choices)


def test_coats_of_one_part_leave_the_others_as_they_are() -> None:
    b = AtBench("coats", profile=TWO_COATS, before=in_mild_weather)
    change(b, "Coats of one part", "hood", "One coat more")
    assert (coats_wanted(b.job, "door"), coats_wanted(b.job, "hood")) == (2, 3)
    assert whole_plan(b.job, b.clock.now()).schedule.remaining == 5
    change(b, "One coat more")
    assert (coats_wanted(b.job, "door"), coats_wanted(b.job, "hood")) == (3, 4)
    assert [row.coats for row in table(b).rows] == ["0/3", "0/4"]


def test_what_comes_or_goes_are_the_coats_that_hide() -> None:
    b = AtBench("coats", profile=HIDES)

    def names() -> list[str]:
        return [each.name for each in planned(b.job)]

    assert names() == ["base", "base", "drop coat"]
    change(b, "One coat more")
    assert names() == ["base", "base", "coat 3", "drop coat"]
    change(b, "One coat fewer")
    change(b, "One coat fewer")
    assert names() == ["base", "drop coat"]
    change(b, "One coat fewer")
    assert names() == ["base"]


def test_after_each_coat_that_hides_it_is_asked_up_to_the_most() -> None:
    b = AtBench("coats", profile=HIDES, before=in_mild_weather, parts=("door",))
    coat(b)
    assert not hides_yet(b.job, "door")
    for laid in (2, 3):
        b.pass_time(700)
        coat(b)
        assert len(b.job.coats_on("door")) == laid and "door: hidden? →" in b.text
        assert offered(b)[:2] == ["door: hidden", "door: not hidden yet, one more coat"]
        b.choose("door: not hidden yet")
        assert coat_named(b.job, laid + 1, "door").plan.until_hidden
        assert "hidden?" not in b.text
    b.pass_time(700)
    coat(b)
    # Four are the most: what follows is the drop coat.
    assert not hides_yet(b.job, "door") and coat_named(b.job, 5, "door").name == "drop coat"


def test_hidden_is_kept_and_not_asked_again() -> None:
    b = AtBench("coats", profile=HIDES, before=in_mild_weather, parts=("door",))
    coat(b)
    b.pass_time(700)
    coat(b)
    offered(b)
    b.choose("door: hidden")
    assert isinstance(b.log[-1], CoatsChanged) and "hidden?" not in b.text
    assert coats_wanted(b.job, "door") == 3 and coat_named(b.job, 3, "door").name == "drop coat"


def test_a_coat_laid_without_an_answer_was_one_more() -> None:
    only = replace(HIDES, coats=HIDES.coats[:1])
    b = AtBench("coats", profile=only, before=in_mild_weather, parts=("door",))
    for _ in range(3):
        coat(b)
        b.pass_time(700)
    assert hides_yet(b.job, "door")
    offered(b)
    b.choose("door: not hidden yet")
    assert coats_wanted(b.job, "door") == 4


# -- parts ---------------------------------------------------------------------------------------


def test_parts_are_added_and_a_dropped_one_stops_its_wait() -> None:
    b = AtBench("coats", profile=TWO_COATS, before=in_mild_weather)
    coat(b)
    b.press("up")
    change(b, "Add parts")
    b.answer("sill, 6 shelves x 2 sides")
    added = b.log[-1]
    assert isinstance(added, PartsChanged)
    assert [row.name for row in table(b).rows] == ["door", "hood", "sill", "6 shelves"]
    b.bench.form = b.bench.form.choosing("part", "door")
    change(b, "Drop a part", "door")
    assert "stay in the log" in b.said and waits(b.job) == ()
    assert [row.name for row in table(b).rows] == ["hood", "sill", "6 shelves"]
    assert b.keys["Space"].startswith("begin coat 1: ")
    change(b, "Drop a part", "6 shelves")
    assert b.job.parts == ("hood", "sill")


@pytest.mark.parametrize(
    ("typed", "said"), [("hood", "there already"), ("", "No part"), ("a, a", "twice")]
)
def test_what_cannot_be_added_is_said(typed: str, said: str) -> None:
    b = AtBench("coats", profile=TWO_COATS)
    change(b, "Add parts")
    kept = len(b.log)
    b.answer(typed)
    assert said in b.said and len(b.log) == kept


def test_a_part_that_is_being_sprayed_is_not_dropped() -> None:
    b = AtBench("coats", profile=TWO_COATS, before=in_mild_weather)
    b.press("space")
    change(b, "Drop a part", "door")
    assert "End it first" in b.said and b.job.parts == ("door", "hood")


# -- the gun -------------------------------------------------------------------------------------


def caught(clock: ManualClock) -> Sequence[Event]:
    given = {"seconds": 60.0, "amount": q(400, "ml"), "delivery_ml_min": 400.0}
    return (CatchMade(n=0, at=clock.now(), **given),)  # type: ignore[arg-type]


def test_another_gun_is_judged_by_its_own_tip_and_its_own_catch() -> None:
    asks = Asked(delivery_ml_min=Range(170, 240), tip_mm=Range(1.3, 1.5))
    sheet = replace(TWO_COATS, gun=asks)
    b = AtBench("coats", profile=sheet, before=caught, shop=SHOP)
    assert {each.cause for each in of_gun(b.job, 1)} == {Cause.DELIVERY}
    change(b, "Another gun… now: grey gun", "red gun")
    assert isinstance(b.log[-1], GunChanged) and "catch anew" in b.said
    assert {each.cause for each in of_gun(b.job, 1)} == {Cause.TIP}
    assert b.now.gun is not None and (b.now.gun.name, b.now.gun.tip_mm) == ("red gun", 1.2)
    change(b, "Another tip", "1.4 mm")
    assert {each.cause for each in of_gun(b.job, 1)} == set()
    change(b, "Another cup", "400 ml")
    assert (b.now.gun.tip_mm, b.now.gun.cup_ml) == (1.4, 400)


@pytest.mark.parametrize(("typed", "said"), [("1.7", ""), ("wide", "tip"), ("0 mm", "above 0")])
def test_a_tip_in_words_of_ones_own(typed: str, said: str) -> None:
    b = AtBench("coats", profile=TWO_COATS, shop=SHOP)
    change(b, "Another tip", "own words")
    b.answer(typed)
    assert said in b.said
    fitted = b.job.fitted.tip
    assert (fitted is not None and fitted.value == pytest.approx(1.7)) is (said == "")
