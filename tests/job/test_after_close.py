"""The clocks that outlive a job: what is told of them, until when, and what rings."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from booth.job.after_close import TOLD_S, alarms_after, over_s, running_on
from booth.job.wait import What
from booth.job.waits import standings
from booth.log import events as ev
from booth.log.fold import Job, fold
from booth.moment import Moment
from booth.profile.model import Film, NextProduct, Range, Waits
from booth.words.wait_words import still_words
from tests.job.make import at, mild, one_time, opened

HOUR, DAY = 3600.0, 86400.0
WAITS = Waits(
    flash_off=one_time(900),
    dust_free=one_time(1800),
    handle=one_time(8 * HOUR),
    cure=one_time(7 * DAY),
    recoat_opens=one_time(HOUR),
    recoat_closes=one_time(DAY),
)


def job(
    *, closed_s: float | None = 600, weather: bool = True, heard: str = "", **changes: object
) -> Job:
    """One coat that ended at 0, and a job that was closed ten minutes later."""
    given: dict[str, object] = {"waits": WAITS, "film": Film(coats=Range(1, 1)), **changes}
    events: list[ev.Event] = [mild(seconds=-100)] if weather else []
    events += [
        ev.CoatBegun(n=0, at=at(-60), part="door", coat=1),
        ev.CoatEnded(n=0, at=at(0), part="door", coat=1),
    ]
    if closed_s is not None:
        events.append(ev.JobClosed(n=0, at=at(closed_s), verdict="good"))
    if heard:
        events.append(ev.AlarmAcknowledged(n=0, at=at(DAY), alarm=heard))
    first = replace(opened(("door",), **given), at=at(-200))
    return fold([first, *(replace(event, n=n) for n, event in enumerate(events, 2))])


def whats(found: Job, seconds: float) -> list[str]:
    return [str(each.wait.what) for each in running_on(found, at(seconds))]


@pytest.mark.parametrize(
    ("seconds", "told"),
    [
        # What changes next, first; then what is over, the latest first.
        (HOUR / 4, ["dust-free", "next product", "can be handled", "cured"]),
        (2 * HOUR, ["can be handled", "next product", "cured", "dust-free"]),
        (9 * HOUR, ["next product", "cured", "can be handled", "dust-free"]),
        (DAY + 2 * HOUR, ["cured", "next product", "can be handled"]),
        (3 * DAY, ["cured"]),
        (7 * DAY + TOLD_S, ["cured"]),
        (7 * DAY + TOLD_S + 1, []),
    ],
)
def test_each_wait_is_told_until_a_day_after_it_is_over(seconds: float, told: list[str]) -> None:
    assert whats(job(), seconds) == told


def test_a_wait_that_is_not_known_is_told_for_a_day_and_counts_nothing_down() -> None:
    found = job(weather=False)
    assert "can be handled" in whats(found, 5 * HOUR)
    handle = next(e for e in running_on(found, at(5 * HOUR)) if e.wait.what is What.HANDLE)
    assert still_words(handle, at(5 * HOUR), lambda *_: "?") == "5 h since the coat"
    assert alarms_after(found, at(9 * HOUR)) == ()
    # The window closes at the latest when the sheet says; that is known without weather.
    assert whats(found, DAY + 1) == ["next product"]


def test_a_window_that_opens_again_is_not_over_while_it_is_shut() -> None:
    alkyd = NextProduct("itself", one_time(HOUR), one_time(6 * HOUR), one_time(72 * HOUR))
    found = job(waits=Waits(), next_products=(alkyd,))
    for seconds, over in ((7 * HOUR, None), (71 * HOUR, None), (80 * HOUR, 8 * HOUR)):
        (each,) = standings(found, at(seconds))
        assert over_s(each) == over
    assert whats(found, 71 * HOUR) == ["next product"] and whats(found, 97 * HOUR) == []


@pytest.mark.parametrize(
    ("seconds", "words"),
    [
        (2 * HOUR, "28800"),
        (9 * HOUR, "since 28800"),
        (8 * HOUR, "since 28800"),
    ],
)
def test_when_a_wait_is_over_is_said(seconds: float, words: str) -> None:
    each = next(e for e in running_on(job(), at(seconds)) if e.wait.what is What.HANDLE)
    assert (
        still_words(each, at(seconds), lambda moment, _: f"{moment.wall - at(0).wall:.0f}") == words
    )


def test_until_when_a_window_stands_open_and_since_when_it_is_shut() -> None:
    def told(seconds: float) -> str:
        found = running_on(job(), at(seconds))
        (each,) = (e for e in found if e.wait.what is What.NEXT_PRODUCT)
        return still_words(each, at(seconds), lambda moment, _: f"{moment.wall - at(0).wall:.0f}")

    assert told(HOUR / 2) == "3600"
    assert told(2 * HOUR) == "86400"
    assert told(DAY - 60) == "86400"
    assert told(DAY + 60) == "since 86400"


def rings(found: Job, seconds: float) -> list[str]:
    return [alarm.words for alarm in alarms_after(found, at(seconds))]


def test_what_comes_about_after_the_closing_rings_for_a_day() -> None:
    found = job(closed_s=2 * HOUR)
    assert rings(found, 3 * HOUR) == []  # dust-free and the open window were there to be seen
    assert rings(found, 9 * HOUR) == ["can be handled"]
    assert rings(found, 8 * HOUR + TOLD_S) == [
        "window for the next product has closed",
        "can be handled",
    ]
    assert rings(found, 8 * HOUR + TOLD_S + 1) == ["window for the next product has closed"]
    assert rings(job(closed_s=None), 9 * HOUR) == []  # an open one rings by itself


def test_what_was_heard_rings_no_more() -> None:
    assert rings(job(closed_s=2 * HOUR, heard="handle:4:ready"), 9 * HOUR) == []


def test_a_clock_in_doubt_rings_nothing_and_says_so() -> None:
    # Started anew, with a clock that shows a time before the coat: nothing is known of when.
    now = Moment(at(0).wall - 9999, 5.0, "boot-b")
    assert alarms_after(job(), now) == ()
    words = {still_words(each, now, lambda *_: "?") for each in running_on(job(), now)}
    assert words == {"clock?"}


def later(found: Job, work: str, part: str = "", seconds: float = DAY) -> Job:
    event = ev.FinishedLater(n=found.next_n, at=at(seconds), work=work, part=part)
    return fold((*found.events, event))


def test_what_was_done_to_the_film_since_is_told_no_more_and_does_not_ring() -> None:
    found = job()
    assert "cured" in whats(found, 7 * DAY + 60)
    assert [each.standing.wait.what for each in alarms_after(found, at(7 * DAY + 60))] == [
        What.CURE
    ]
    for part in ("", "door"):
        cured = later(found, "cured", part)
        assert "cured" not in whats(cured, 7 * DAY + 60)
        assert alarms_after(cured, at(7 * DAY + 60)) == ()
        assert "next product" in whats(cured, DAY + 60), (
            "its window is not the film's own hardening"
        )
    assert "cured" in whats(later(found, "cured", "another part"), 7 * DAY + 60)
    assert "cured" in whats(later(found, "polished"), 7 * DAY + 60)


def test_a_coat_laid_after_that_has_its_waits_again() -> None:
    found = later(job(closed_s=None), "cured")
    more: tuple[ev.Event, ...] = (
        ev.CoatBegun(n=found.next_n, at=at(DAY + 10), part="door", coat=2),
        ev.CoatEnded(n=found.next_n + 1, at=at(DAY + 70), part="door", coat=2),
        ev.JobClosed(n=found.next_n + 2, at=at(DAY + 80), verdict="good"),
    )
    assert "cured" in whats(fold((*found.events, *more)), DAY + 100)
