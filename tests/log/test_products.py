"""A job of several products: what counts for which of them, and that no order of entries fails."""

from __future__ import annotations

from pathlib import Path

from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from booth.log import codec
from booth.log import events as ev
from booth.log.fold import fold
from booth.log.history import find_job, history
from booth.log.judge import MOST_PRODUCTS, oddities
from booth.log.parse import parse
from booth.log.session import Session
from booth.profile.model import Film, Range
from tests.job.make import at, q
from tests.job.systems import BASE, CLEAR, OPENED, PRIMER, begun, coat, job_of, mild_at

RUN = ev.EffluxTimed(n=0, at=at(5), cup="ford-4", seconds=22.0)
CATCH = ev.CatchMade(n=0, at=at(6), seconds=30, amount=q(90, "ml"), delivery_ml_min=180.0)
MIXED = ev.BatchMixed(n=0, at=at(4), batch=1)
NOTE = ev.NoteMade(n=0, at=at(7), text="wind")
AREA = ev.AreaAdded(n=0, at=at(1), shape="area", area=q(2, "m2"))
DONE = ev.StepDone(n=0, at=at(8), step="mix")
SKIPPED = ev.StepSkipped(n=0, at=at(8), step="thin", why="later")
FIRST = (mild_at(), AREA, MIXED, RUN, CATCH, *coat("door", 100), DONE, SKIPPED, NOTE)


def test_the_first_product_begins_with_the_job() -> None:
    job = job_of(*FIRST)
    assert (job.profile, job.product, job.begun, job.before) == (PRIMER, 1, None, ())
    assert job.live == job.events


def test_what_is_measured_and_laid_counts_for_the_product_it_is_done_with() -> None:
    job = job_of(*FIRST, begun(2), RUN, RUN)
    assert (job.profile, job.product) == (BASE, 2)
    assert len(job.runs) == 2 and not (job.catches or job.batches or job.done or job.skipped)
    assert job.coats_on("door") == () and job.last_of(ev.CatchMade) is None
    (first,) = job.before
    assert (first.profile, first.product, first.next_n) == (PRIMER, 1, job.next_n)
    assert (len(first.runs), len(first.catches), len(first.batches)) == (1, 1, 1)
    assert list(first.done) == ["mix"] and list(first.skipped) == ["thin"]
    assert len(first.coats_on("door")) == 1 and first.last_of(ev.CatchMade) is not None


def test_weather_areas_and_notes_stay_for_the_whole_job() -> None:
    job = job_of(*FIRST, begun(2), mild_at(9), ev.JobClosed(n=0, at=at(10), verdict="good"))
    for each in (job, *job.before):
        assert (len(each.of(ev.WeatherRead)), len(each.areas), len(each.notes)) == (2, 1, 1)
        assert each.closed is not None


def test_the_coat_number_begins_anew_and_the_weather_goes_on() -> None:
    job = job_of(*FIRST, begun(2), *coat("door", 9000))
    (second,) = job.coats_on("door")
    assert second.number == 1 and second.weather is not None


def test_a_coat_is_ended_and_touched_after_the_next_product_began() -> None:
    door, ended = coat("door", 100)
    touched = ev.TouchTried(n=0, at=at(200), part="door", result="dry")
    (first,) = job_of(mild_at(), door, begun(2), ended, touched).before
    (laid,) = first.coats_on("door")
    assert laid.ended is not None and [each.result for each in laid.touches] == ["dry"]


def test_only_the_next_product_can_begin() -> None:
    for odd in (0, 1, 3, 4, -1):
        job = job_of(*FIRST, begun(odd), RUN)
        assert (job.product, len(job.runs), job.before) == (1, 2, ())
    job = job_of(begun(2), begun(2), begun(3), begun(4))
    assert (job.product, job.profile, [each.product for each in job.before]) == (3, CLEAR, [1, 2])
    assert [each.profile for each in job.before[1].before] == [PRIMER]


def test_voided_it_goes_back_and_restored_it_comes_again() -> None:
    entries = (*FIRST, begun(2), RUN, *coat("door", 9000))
    n = len(FIRST) + 2
    whole = job_of(*entries)
    back = job_of(*entries, ev.Voided(n=0, at=at(9001), target=n))
    assert (back.product, len(back.runs), len(back.coats_on("door"))) == (1, 2, 2)
    again = job_of(
        *entries,
        ev.Voided(n=0, at=at(9001), target=n),
        ev.Restored(n=0, at=at(9002), target=n),
    )
    assert (again.product, again.coats, again.runs) == (2, whole.coats, whole.runs)


PARTS = st.sampled_from(["door", "hood", "elsewhere"])
ANY = st.one_of(
    st.builds(begun, st.integers(-1, 5)),
    st.builds(lambda part: ev.CoatBegun(n=0, at=at(10), part=part, coat=1), PARTS),
    st.builds(lambda part: ev.CoatEnded(n=0, at=at(20), part=part, coat=1), PARTS),
    st.builds(lambda part: ev.TouchTried(n=0, at=at(30), part=part, result="dry"), PARTS),
    st.builds(lambda n: ev.Voided(n=0, at=at(40), target=n), st.integers(1, 14)),
    st.builds(lambda n: ev.Restored(n=0, at=at(40), target=n), st.integers(1, 14)),
    st.sampled_from([RUN, CATCH, MIXED, DONE, SKIPPED, NOTE]),
)


@given(st.lists(ANY, max_size=14))
def test_no_order_of_entries_fails_and_nothing_counts_twice(entries: list[ev.Event]) -> None:
    job = job_of(*entries)
    every = (*job.before, job)
    assert [each.product for each in every] == list(range(1, job.product + 1))
    live = [event for event in job.events if job.is_live(event.n)]
    for kind in (ev.EffluxTimed, ev.BatchMixed, ev.StepDone, ev.CoatBegun):
        counted = [event.n for each in every for event in each.of(kind)]
        assert counted == [event.n for event in live if isinstance(event, kind)]
    for each in every:
        assert each.of(ev.NoteMade) == job.of(ev.NoteMade)
    ends = [coat.ended.n for each in every for c in each.coats.values() for coat in c if coat.ended]
    assert len(ends) == len(set(ends))


@given(st.lists(ANY, max_size=10))
def test_a_job_of_one_product_is_as_it_always_was(entries: list[ev.Event]) -> None:
    alone = [event for event in entries if not isinstance(event, ev.ProductBegun)]
    one = replace(OPENED, later=())
    with_it, without = job_of(*entries, opened=one), job_of(*alone, opened=one)
    assert with_it.product == without.product == 1 and with_it.before == ()
    assert with_it.live == tuple(each for each in with_it.events if with_it.is_live(each.n))
    assert len(with_it.runs) == len(without.runs) or any(
        isinstance(each, ev.Voided | ev.Restored) for each in entries
    )


def test_it_reads_back_as_it_was_kept() -> None:
    for event in (OPENED, replace(begun(2), n=2)):
        assert codec.decode(codec.encode(event)) == event


def test_a_kept_log_has_one_product() -> None:
    for path in Path(__file__).with_name("kept").iterdir():
        job = fold(parse(path.read_bytes()).events)
        assert (job.product, job.before, job.opened.later) == (1, (), ())
        assert job.opened.title == job.opened.profile.name


def test_history_names_the_product_that_a_job_has_come_to(tmp_path: Path) -> None:
    session = Session.begin(tmp_path, OPENED)
    (summary,) = history(tmp_path)
    assert (summary.profile_name, summary.product) == ("Trial system", "1/3 Trial primer")
    session.record(begun(2))
    (summary,) = history(tmp_path)
    assert summary.product == "2/3 Trial base"
    session.record(ev.Voided(n=0, at=at(9), target=2))
    (summary,) = find_job(tmp_path, "trial-system")
    assert summary.product == "1/3 Trial primer"
    session.close()


def test_a_later_product_that_cannot_be_worked_with_is_told() -> None:
    bad = replace(CLEAR, film=Film(coats=Range(0, 0)))
    (told,) = oddities(replace(OPENED, later=(BASE, bad)))
    assert told.startswith("later[1].film.coats: found the bare number 0")
    many = oddities(replace(OPENED, later=(BASE,) * MOST_PRODUCTS))
    assert many == (f"later has {MOST_PRODUCTS} products; up to {MOST_PRODUCTS - 1} are possible",)
