"""What a coat takes of its time at the trigger, learnt from past jobs. All values are invented."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from statistics import median

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from booth.job.coat_times import JobTimes, Learnt, areas_of, learnt, times_of, trigger_s
from booth.job.job_schedule import planned, spray_times
from booth.job.material import plan_of
from booth.job.schedule import Span
from booth.learnt import past_jobs
from booth.learnt.past_jobs import PastJobs, coat_times
from booth.log import events as ev
from booth.log.fold import Job, fold
from booth.profile.model import Film, Gun, Profile, Range
from booth.words.coat_time_words import times_words
from tests.instruments.at_bench import AtBench, in_mild_weather
from tests.job.make import at, mild, opened, profile, q
from tests.log.logs import write
from tests.manual_clock import ManualClock

#: 2 m2 x 50 um = 100 ml on the part; of an HVLP gun on large flat parts 0.65 land; at 200 ml/min that is
#: 100 / 0.65 / 200 min at the trigger: 46 s.
AT_TRIGGER_S = 100 / 0.65 / 200 * 60
FILM, GUN = (
    Film(coats=Range(2, 2), wet_um=Range(50, 50)),
    Gun(delivery_ml_min=Range(200, 200), hvlp=True),
)
AREA = ev.AreaAdded(n=2, at=at(0), shape="area", area=q(2, "m2"), part="door")
CLEAR = profile(film=FILM, gun=GUN)


def coats(*times: float) -> list[ev.Event]:
    """Coats on the door that took so many times their time at the trigger, one after the other."""
    found: list[ev.Event] = []
    for number, time in enumerate(times, 1):
        begun = at(1000.0 * number)
        found.append(ev.CoatBegun(n=0, at=begun, part="door", coat=number))
        end = at(1000.0 * number + time * AT_TRIGGER_S)
        found.append(ev.CoatEnded(n=0, at=end, part="door", coat=number))
    return found


def events(*times: float, name: str = "past", area: bool = True) -> list[ev.Event]:
    begin = replace(opened(("door",)), profile=CLEAR, job=name)
    every = [begin, *([AREA] if area else []), *coats(*times)]
    return [replace(each, n=n) for n, each in enumerate(every, 1)]


def job(*times: float, area: bool = True) -> Job:
    return fold(events(*times, name="now", area=area))


def test_the_time_at_the_trigger_and_what_a_coat_took_of_it() -> None:
    assert trigger_s(job(), 2.0, 1) == pytest.approx(AT_TRIGGER_S)
    assert times_of(job(1.5, 3.0)) == pytest.approx((1.5, 3.0))
    # Without an area there is no time at the trigger; a coat that runs has not ended.
    assert times_of(job(1.5, area=False)) == ()
    assert times_of(fold(events(1.5)[:-1])) == ()
    # Less than its time at the trigger no coat takes: something in it was another.
    assert times_of(job(0.5, 2.0)) == pytest.approx((2.0,))


@pytest.mark.parametrize(
    ("times", "expected"),
    [
        ((), Learnt()),
        ((3.0, 4.0), Learnt(coats=2, jobs=1)),
        # By hand: of 2, 3, 6 the middle is 3, halfway to it 2.5 and 4.5.
        ((3.0, 2.0, 6.0), Learnt(3.0, 2.5, 4.5, 3, 1)),
        # Of 1, 2, 3, 4, 100 (a coat that nobody ended): 3, 2 and 4.
        ((1.0, 2.0, 3.0, 4.0, 100.0), Learnt(3.0, 2.0, 4.0, 5, 1)),
    ],
)
def test_the_median_and_the_middle_half(times: tuple[float, ...], expected: Learnt) -> None:
    found = learnt(job(), [JobTimes("a", times)])
    assert (found.coats, found.jobs) == (expected.coats, expected.jobs)
    assert (found.times, found.low, found.high) == (expected.times, expected.low, expected.high)


@given(st.lists(st.floats(1, 50), min_size=3, max_size=30))
def test_a_band_holds_its_median_and_one_wild_coat_moves_neither(times: list[float]) -> None:
    found = learnt(job(), [JobTimes("a", tuple(times))])
    assert found.low <= found.times <= found.high
    assert found.times == median(times)
    # The quarter on either side, and the coat that the end falls behind.
    most = (len(times) - 1) // 4 + 1
    assert sum(each < found.low for each in times) <= most
    assert sum(each > found.high for each in times) <= most
    # The longest coat never ended in time: neither the middle nor the low end moves.
    wild = learnt(job(), [JobTimes("a", (*sorted(times)[:-1], 1e6))])
    assert (wild.low, wild.times) == (found.low, found.times)


def test_own_coats_and_past_ones_count_alike() -> None:
    found = learnt(job(2.5), [JobTimes("a", (3.0, 3.5)), JobTimes("b", ()), JobTimes("c", (4.0,))])
    assert (found.coats, found.jobs, found.times) == (4, 3, pytest.approx(3.25))


PAST = (JobTimes("a", (2.5, 3.0)), JobTimes("b", (4.0,)))


def test_the_plan_takes_the_median_and_says_where_from() -> None:
    bare = spray_times(job())["door"]
    assert (bare.seconds, bare.source) == (
        pytest.approx(2 * AT_TRIGGER_S),
        "twice the trigger time",
    )
    known = spray_times(job(), past=PAST)["door"]
    assert known.seconds == pytest.approx(3.0 * AT_TRIGGER_S)
    assert known.source == "3.0 times the trigger"
    # This part's own coats say it better.
    own = spray_times(job(5.0), past=PAST)["door"]
    assert (own.seconds, own.source) == (pytest.approx(5 * AT_TRIGGER_S), "as its coats took")
    plan = planned(fold([*events(), mild(9)]), at(0), past=PAST)
    first = next(each for each in plan.schedule.blocks if each.span is Span.SPRAY)
    assert first.end_s - first.start_s == pytest.approx(3.0 * AT_TRIGGER_S)


def test_the_amount_holds_pot_life_against_the_long_end() -> None:
    sized = {"area_m2": 2.0, "wet_um": 50.0, "lost": 0.0, "left_ml": 0.0, "cup_ml": 600.0}
    one = {"coats": 1, "large": True, "ample": False, **sized}
    begun = fold([*events(), mild(9)])
    bare, known = plan_of(begun, **one), plan_of(begun, **one, past=PAST)  # type: ignore[arg-type]
    assert bare.span == pytest.approx((2 * AT_TRIGGER_S,) * 2)
    # Of 2.5, 3, 4: 2.75 and 3.5.
    assert known.span == pytest.approx((2.75 * AT_TRIGGER_S, 3.5 * AT_TRIGGER_S))
    assert known.covered is True


def test_it_is_said_how_many_coats_of_how_many_jobs() -> None:
    assert times_words(learnt(job(), PAST)) == (
        "a coat takes 2.8 to 3.5 times its trigger time: 3 coats of 2 jobs"
    )
    assert times_words(learnt(job())) == (
        "a coat takes at least twice its trigger time: 3 coats are needed to learn it"
    )
    assert times_words(learnt(job(3.0))).endswith("to learn it, 1 coat of 1 job so far")


def test_past_jobs_are_read_and_the_one_at_hand_is_left_out(tmp_path: Path) -> None:
    write(tmp_path, "20250601-1200-demo-0001", *events(2.0, 3.0, name="first"))
    write(tmp_path, "20250602-1200-demo-0002", *events(4.0, name="second"))
    write(tmp_path, "20250603-1200-demo-0003", *events(9.0, name="now"))
    write(tmp_path, "20250604-1200-demo-0004", *events(9.0, name="bare", area=False))
    (tmp_path / "20250605-1200-demo-0005.jsonl").write_text("coat ended area added\n")
    found = coat_times(tmp_path, "now")
    assert [(each.job, [round(t, 6) for t in each.times]) for each in found] == [
        ("second", [4.0]),
        ("first", [2.0, 3.0]),
    ]
    assert coat_times(None) == () and coat_times(tmp_path / "none") == ()


def test_no_more_jobs_are_read_than_are_needed(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    for day in range(1, 10):
        name = f"2025060{day}-1200-demo-0001"
        write(tmp_path, name, *events(2.0, 3.0, name=name))
    monkeypatch.setattr(past_jobs, "ENOUGH_COATS", 4)
    found = coat_times(tmp_path)
    assert [each.job[:8] for each in found] == ["20250609", "20250608"]


def test_the_steps_say_it(tmp_path: Path) -> None:
    write(tmp_path, "20250601-1200-demo-0001", *events(2.0, 3.0, 4.0, name="first"))

    def before(clock: ManualClock) -> Sequence[ev.Event]:
        return (*in_mild_weather(clock), replace(AREA, at=clock.now()))

    def at_step(step: str, product: Profile = CLEAR) -> AtBench:
        past = PastJobs(tmp_path)
        return AtBench(step, profile=product, before=before, parts=("door",), past=past)

    said = "a coat takes 2.5 to 3.5 times its trigger time: 3 coats of 1 job"
    b = at_step("plan")
    assert said in b.text and b.row("coat").field.hint == "3.0 times the trigger"
    assert said in at_step("amount").text
    # Typed minutes rest on nothing else.
    bare = AtBench("plan", profile=CLEAR, before=before, parts=("door",))
    assert "3 coats are needed to learn it" in bare.text


def test_areas_of_parts_as_before() -> None:
    whole = replace(AREA, part="", area=q(3, "m2"))
    two = fold([replace(opened(("door", "hood")), profile=CLEAR), whole, replace(AREA, n=3)])
    assert areas_of(two) == {"door": 2.0, "hood": 3.0}
