"""What events add up to, by example and by property."""

from __future__ import annotations

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from booth.job.coating import NotPossible, begin_coat, end_coat
from booth.job.waits import standings
from booth.log import codec
from booth.log import events as ev
from booth.log.fold import Job, NoJob, Stopwatch, fold
from booth.units import System
from booth.words.event_words import words
from tests.job.make import at, opened, q


def test_without_an_opening_there_is_no_job() -> None:
    with pytest.raises(NoJob):
        fold([ev.NoteMade(n=1, at=at(0), text="hello")])


def test_a_voided_run_no_longer_counts_and_can_be_brought_back() -> None:
    run = ev.EffluxTimed(n=2, at=at(30), cup="ford-4", seconds=21.4)
    void = ev.Voided(n=3, at=at(40), target=2)
    back = ev.Restored(n=4, at=at(50), target=2)
    assert fold([opened(), run]).runs == (run,)
    assert fold([opened(), run, void]).runs == ()
    assert fold([opened(), run, void, back]).runs == (run,)


def test_a_voided_run_does_not_set_its_stopwatch_going_again() -> None:
    started = ev.StopwatchStarted(n=2, at=at(0), stopwatch="cup", what="ford-4")
    run = ev.EffluxTimed(n=3, at=at(22), cup="ford-4", seconds=22.0)
    void = ev.Voided(n=4, at=at(40), target=3)
    assert "cup" in fold([opened(), started]).stopwatches
    assert fold([opened(), started, run, void]).stopwatches == {}


def test_a_voided_catch_leaves_the_time_that_was_caught_to_be_entered_anew() -> None:
    started = ev.StopwatchStarted(n=2, at=at(0), stopwatch="catch", window_s=30.0)
    stopped = ev.StopwatchStopped(n=3, at=at(20), stopwatch="catch", seconds=20.0)
    caught = ev.CatchMade(n=4, at=at(60), seconds=20.0, amount=q(600, "ml"), delivery_ml_min=1800.0)
    void = ev.Voided(n=5, at=at(70), target=4)
    for before in ([started], [started, stopped]):
        waiting = fold([opened(), *before, caught, void]).stopwatches["catch"]
        assert waiting == fold([opened(), *before]).stopwatches["catch"]
        assert fold([opened(), *before, caught]).stopwatches == {}


def test_the_opening_itself_cannot_be_voided() -> None:
    job = fold([opened(), ev.Voided(n=2, at=at(1), target=1)])
    assert job.parts == ("door", "hood")
    assert job.is_live(1)


def test_a_coat_voided_gives_its_number_to_the_next() -> None:
    events: list[ev.Event] = [
        opened(),
        ev.CoatBegun(n=2, at=at(0), part="door", coat=1),
        ev.CoatEnded(n=3, at=at(60), part="door", coat=1),
        ev.CoatBegun(n=4, at=at(700), part="door", coat=2),
        ev.CoatEnded(n=5, at=at(760), part="door", coat=2),
    ]
    assert [coat.number for coat in fold(events).coats_on("door")] == [1, 2]
    without = fold([*events, ev.Voided(n=6, at=at(800), target=2)])
    # The end of the first coat has no beginning now; what is left is one coat.
    assert [(c.number, c.begun.n) for c in without.coats_on("door")] == [(1, 4)]


def test_reopening_is_the_void_of_the_close() -> None:
    closed = ev.JobClosed(n=2, at=at(5), verdict="good")
    assert fold([opened(), closed]).closed == closed
    assert fold([opened(), closed, ev.Voided(n=3, at=at(6), target=2)]).closed is None


def test_events_of_a_later_version_are_carried_through() -> None:
    line = codec.encode(ev.NoteMade(n=2, at=at(1), text="x")).replace(b'"note"', b'"tint matched"')
    later = codec.decode(line)
    assert isinstance(later, ev.UnknownEvent)
    job = fold([opened(), later])
    assert job.events[1:] == (later,)
    assert job.next_n == 3


@pytest.mark.parametrize(
    "line",
    [
        b"",
        b"{",
        b"null",
        b"[]",
        b'{"n":1}',
        b"\xff\xfe",
        b"\x00" * 40,
        b'{"event":"note","n":2,"at":{"wall":1,"continuous":1,"boot":"a"}}',
        b'{"event":"note","n":"two","at":{"wall":1,"continuous":1,"boot":"a"},"text":"x"}',
    ],
)
def test_a_line_that_is_no_event_says_so(line: bytes) -> None:
    with pytest.raises(codec.BrokenLine):
        codec.decode(line)


def test_a_kind_of_event_is_known_by_being_defined() -> None:
    """The log reads it, the job finds it, the report tells it; nothing else had to be changed."""

    class GlossRead(ev.Event, frozen=True, tag="gloss read"):
        gloss: float
        where: str = ""

    read = GlossRead(n=2, at=at(5), gloss=85.0, where="door")
    assert codec.decode(codec.encode(read)) == read
    assert fold([opened(), read]).of(GlossRead) == (read,)
    assert fold([opened(), read, ev.Voided(n=3, at=at(6), target=2)]).of(GlossRead) == ()
    assert words(read, System.METRIC) == "gloss read, gloss 85, where door"


def started(n: int, seconds: float = 0) -> ev.StopwatchStarted:
    return ev.StopwatchStarted(n=n, at=at(seconds), stopwatch="catch", window_s=60.0, lead_in_s=3.0)


CATCH = ev.CatchMade(n=4, at=at(90), seconds=60.0, amount=q(180, "ml"), delivery_ml_min=180.0)


def test_a_stopwatch_runs_until_it_is_stopped_dropped_or_what_it_timed_is_kept() -> None:
    stopped = ev.StopwatchStopped(n=3, at=at(40), stopwatch="catch", seconds=37.0)
    dropped = ev.StopwatchDropped(n=3, at=at(40), stopwatch="catch")
    assert fold([opened(), started(2)]).stopwatches["catch"] == Stopwatch(started(2))
    assert fold([opened(), started(2), stopped]).stopwatches["catch"].stopped == stopped
    assert not fold([opened(), started(2), dropped]).stopwatches
    assert not fold([opened(), started(2), CATCH]).stopwatches
    again = fold([opened(), started(2), stopped, started(5, 100)]).stopwatches["catch"]
    assert again == Stopwatch(started(5, 100)), "a new start is a new stopwatch"
    void = fold([opened(), started(2), ev.Voided(n=3, at=at(9), target=2)])
    assert not void.stopwatches


def test_a_run_of_the_cup_does_not_end_the_catch() -> None:
    run = ev.EffluxTimed(n=3, at=at(30), cup="ford-4", seconds=21.4)
    assert "catch" in fold([opened(), started(2), run]).stopwatches


# -- by property ---------------------------------------------------------------------------------

parts = st.sampled_from(["door", "hood"])
requests = st.lists(
    st.one_of(
        st.tuples(st.just("go"), parts, st.floats(0.1, 4000)),
        st.tuples(st.just("void"), st.integers(1, 40), st.floats(0.1, 50)),
        st.tuples(st.just("restore"), st.integers(1, 40), st.floats(0.1, 50)),
        st.tuples(st.just("run"), st.floats(5, 90), st.floats(0.1, 50)),
        st.tuples(st.just("batch"), st.integers(1, 4), st.floats(0.1, 50)),
        st.tuples(st.just("touch"), st.sampled_from(["wet", "tacky", "dry"]), st.floats(0.1, 50)),
        st.tuples(st.just("step"), st.sampled_from(["mix", "catch"]), st.floats(0.1, 50)),
    ),
    max_size=40,
)


def carry_out(asked: list[tuple[str, object, float]]) -> tuple[list[ev.Event], Job]:
    """Do what the painter asks, as the bench would: each event numbered, then folded."""
    events: list[ev.Event] = [opened()]
    job = fold(events)
    clock = 0.0
    for what, about, after in asked:
        clock += after
        now = at(clock)
        event: ev.Event
        try:
            if what == "go":
                part = str(about)
                ends = job.running_coat(part) is not None
                event = (end_coat if ends else begin_coat)(job, part, now)
            elif what == "void":
                event = ev.Voided(n=0, at=now, target=int(about))  # type: ignore[call-overload]
            elif what == "restore":
                event = ev.Restored(n=0, at=now, target=int(about))  # type: ignore[call-overload]
            elif what == "run":
                event = ev.EffluxTimed(n=0, at=now, cup="ford-4", seconds=float(about))  # type: ignore[arg-type]
            elif what == "batch":
                event = ev.BatchMixed(n=0, at=now, batch=int(about), total=q(500, "ml"))  # type: ignore[call-overload]
            elif what == "touch":
                event = ev.TouchTried(n=0, at=now, part="door", result=str(about))
            else:
                event = ev.StepDone(n=0, at=now, step=str(about))
        except NotPossible:
            continue
        event = msgspec.structs.replace(event, n=job.next_n)
        events.append(event)
        job = fold(events)
    return events, job


@settings(max_examples=300, deadline=None)
@given(requests)
def test_any_sequence_of_requests_keeps_the_invariants(
    asked: list[tuple[str, object, float]],
) -> None:
    events, job = carry_out(asked)
    assert [event.n for event in events] == list(range(1, len(events) + 1))
    for part in job.parts:
        coats = job.coats_on(part)
        assert [coat.number for coat in coats] == list(range(1, len(coats) + 1))
        # Only the last coat of a part can still be running, and no coat ends before it began.
        assert all(coat.ended is not None for coat in coats[:-1])
        for coat in coats:
            assert coat.ended is None or coat.ended.at.continuous >= coat.begun.at.continuous
    live = [event for event in events if job.is_live(event.n)]
    assert list(job.runs) == [event for event in live if isinstance(event, ev.EffluxTimed)]
    # At most one wait a part for the next coat, and none for a part that is being sprayed.
    waiting = [each.wait.part for each in standings(job, events[-1].at) if each.wait.part]
    for part in job.parts:
        if job.running_coat(part) is not None:
            assert part not in waiting


@settings(max_examples=200, deadline=None)
@given(requests)
def test_what_is_read_back_from_the_lines_is_the_live_state(
    asked: list[tuple[str, object, float]],
) -> None:
    events, job = carry_out(asked)
    again = fold([codec.decode(codec.encode(event).rstrip(b"\n")) for event in events])
    assert again == job


@settings(max_examples=200, deadline=None)
@given(requests, st.data())
def test_a_void_and_its_restore_leave_the_job_as_it_was(
    asked: list[tuple[str, object, float]], data: st.DataObject
) -> None:
    events, job = carry_out(asked)
    live = [event.n for event in events[1:] if job.is_live(event.n)]
    if not live:
        return
    target = data.draw(st.sampled_from(live))
    end = events[-1].at
    void = ev.Voided(n=job.next_n, at=end, target=target)
    back = ev.Restored(n=job.next_n + 1, at=end, target=target)
    again = fold([*events, void, back])
    assert (again.coats, again.runs, again.batches, again.done) == (
        job.coats,
        job.runs,
        job.batches,
        job.done,
    )


def test_areas_add_up_in_the_order_of_the_log_and_one_can_be_voided() -> None:
    door = ev.AreaAdded(
        n=2,
        at=at(1),
        shape="rectangle",
        area=q(2.0, "m2"),
        number=2,
        part="door",
        dimensions={"length": q(1.0, "m"), "width": q(1.0, "m")},
    )
    hood = ev.AreaAdded(n=3, at=at(2), shape="area", area=q(1.5, "m2"))
    again = fold(
        [codec.decode(codec.encode(event).rstrip(b"\n")) for event in (opened(), door, hood)]
    )
    assert again.areas == (door, hood)
    assert fold([opened(), door, hood, ev.Voided(n=4, at=at(3), target=2)]).areas == (hood,)
