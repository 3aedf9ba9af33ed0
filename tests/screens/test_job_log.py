"""The log of the open job on the screen: read it, void an entry, bring it back."""

from __future__ import annotations

from collections.abc import AsyncIterator, Sequence
from contextlib import asynccontextmanager

import pytest
from rich.cells import cell_len

from booth.clock import local_hhmmss
from booth.log import events as ev
from booth.log.errors import NotKept
from booth.log.fold import fold
from booth.log.session import Session
from booth.moment import later
from booth.screens.job_log import entry_lines, why_not_void
from booth.units import System
from booth.widgets.lists import lay_out_lines as lay_out
from booth.widgets.rows import strings
from booth.words.shown import Lines
from tests.job.make import at as moment
from tests.job.make import opened, q
from tests.manual_clock import ManualClock
from tests.screens.at_app import AtApp, at_bench, everything
from tests.screens.jobs import coated


@asynccontextmanager
async def at_log(*events: ev.Event, size: tuple[int, int] = (80, 24)) -> AsyncIterator[AtApp]:
    """The bench with the log of its job on top, opened by its key."""
    async with at_bench("coats", *events, size=size) as at:
        await at.press("f4")
        assert at.screen == "JobLog"
        yield at


def on_disk(at: AtApp) -> Sequence[ev.Event | ev.UnknownEvent]:
    (path,) = at.places.jobs_dir.glob("*.jsonl")
    return everything(path)


def session_of(at: AtApp) -> Session:
    assert at.app.jobs.current is not None
    return at.app.jobs.current


def notes(count: int = 3) -> list[ev.Event]:
    start = ManualClock().now()
    return [
        ev.NoteMade(n=0, at=later(start, 60.0 * number), text=f"note {number}")
        for number in range(1, count + 1)
    ]


async def test_every_entry_newest_first_with_its_local_time() -> None:
    async with at_log(*notes()) as at:
        rows = [line for line in at.lines if "note " in line]
        assert [row.split("note ")[-1] for row in rows] == ["3", "2", "1"]
        assert local_hhmmss(notes()[2].at) in rows[0]
        assert "job opened" in next(line for line in reversed(at.lines[1:-1]) if line)
        assert "4 entries" in at.lines[0]


async def test_backspace_voids_and_enter_brings_back() -> None:
    async with at_log(*notes()) as at:
        await at.press("down", "backspace")
        assert "× VOIDED" in next(line for line in at.lines if "note 2" in line)
        assert "Entry 3 is voided" in at.text
        assert "1 voided" in at.lines[0]
        assert isinstance(on_disk(at)[-1], ev.Voided)
        assert [note.text for note in fold(on_disk(at)).notes] == ["note 1", "note 3"]
        # The highlight is still on the entry, though a new one stands above.
        assert "bring back" in at.lines[-1]
        await at.press("enter")
        assert "VOIDED" not in next(line for line in at.lines if "note 2" in line)
        assert isinstance(on_disk(at)[-1], ev.Restored)
        assert len(fold(on_disk(at)).notes) == 3
        assert len(on_disk(at)) == 6, "nothing was erased"


async def test_r_brings_back_and_says_where_there_is_nothing_to() -> None:
    async with at_log(*notes()) as at:
        await at.press("r")
        assert "nothing to bring back" in at.text and len(on_disk(at)) == 4
        await at.press("backspace", "backspace")
        assert "voided already" in at.text and len(on_disk(at)) == 5
        await at.press("r")
        assert len(fold(on_disk(at)).notes) == 3


async def test_the_opening_cannot_be_voided() -> None:
    async with at_log(*notes(1)) as at:
        await at.press("end", "backspace")
        assert "cannot be voided" in at.text and len(on_disk(at)) == 2


async def test_a_void_is_no_entry_to_void() -> None:
    async with at_log(*notes(1)) as at:
        await at.press("backspace", "home", "backspace")
        assert "This voided number 2" in at.text and len(on_disk(at)) == 3


async def test_the_bench_below_has_the_job_as_it_now_is() -> None:
    start = ManualClock().now()
    coats = [
        ev.CoatBegun(n=0, at=start, part="door", coat=1),
        ev.CoatEnded(n=0, at=start, part="door", coat=1),
    ]
    async with at_log(*coats) as at:
        session = session_of(at)
        assert session.job.running_coat("door") is None
        await at.press("backspace")
        assert session.job.running_coat("door") is not None
        await at.press("escape")
        assert at.screen == "BenchScreen"


async def test_an_alarm_rings_over_the_log_and_escape_only_silences_it() -> None:
    async with at_log(*coated(ManualClock(), "door")) as at:
        await at.pass_time(700)  # the flash-off of the trial profile is 600 s
        assert "silences" in at.text and "door" in at.lines[0]
        await at.press("escape")
        assert at.screen == "JobLog" and "silences" not in at.text
        at.clock.advance(5)
        await at.press("escape")
        assert at.screen == "BenchScreen"


async def test_enter_shows_a_long_entry_in_full() -> None:
    long = "word " * 60 + "and the end of it"  # more than the two rows that it has
    async with at_log(ev.NoteMade(n=0, at=ManualClock().now(), text=long)) as at:
        assert "the end of it" not in at.text and "…" in at.text
        await at.press("enter")
        assert at.screen == "Sheet" and "and the end of it" in at.words
        await at.press("enter", "f4")
        assert at.screen == "BenchScreen"


async def test_figures_change_with_the_units() -> None:
    air = ev.AirRead(n=0, at=ManualClock().now(), inlet=q(200, "kPa"))
    async with at_log(air) as at:
        assert "29 psi" in at.text
        await at.press("u")
        assert "2.00 bar" in at.text and "29 psi" not in at.text


async def test_what_comes_while_it_is_open_appears() -> None:
    async with at_log(*notes()) as at:
        await at.press("down")
        session_of(at).record(ev.NoteMade(n=0, at=at.clock.now(), text="note 4"))
        await at.beat()
        assert "note 4" in at.lines[1]
        await at.press("backspace")
        assert "VOIDED" in next(line for line in at.lines if "note 2" in line)


async def test_an_entry_that_cannot_be_kept_changes_nothing(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    async with at_log(*notes()) as at:

        def refuse(self: Session, event: ev.Event) -> ev.Event:
            raise NotKept("This entry is NOT kept: the disk is full.")

        monkeypatch.setattr(Session, "record", refuse)
        await at.press("backspace")
        assert at.screen == "Sheet" and "the disk is full" in at.words
        await at.press("escape")
        assert at.screen == "JobLog" and "VOIDED" not in at.text and len(on_disk(at)) == 4


async def test_hostile_text_is_drawn_as_it_stands() -> None:
    hostile = ev.NoteMade(n=0, at=ManualClock().now(), text="[/ x [@click=app.quit]y \x1b[2J")
    async with at_log(hostile) as at:
        assert "[/ x [@click=app.quit]y ␛[2J" in at.text
        await at.press("backspace", "enter", "enter")
        assert at.screen == "Sheet" and "[@click=app.quit]" in at.words


async def test_a_long_log_is_walked_to_its_end() -> None:
    async with at_log(*notes(300)) as at:
        await at.press("end")
        assert "job opened" in at.text
        await at.press("home")
        assert "note 300" in at.text


def test_days_are_told_where_there_are_several() -> None:
    one = fold([opened(), ev.NoteMade(n=2, at=moment(60), text="a")])
    two = fold([opened(), ev.NoteMade(n=2, at=moment(3 * 86400), text="a")])
    assert entry_lines(one, System.US)[0].name.count("-") == 0
    assert entry_lines(two, System.US)[0].name.count("-") == 2


def test_what_a_later_version_kept_is_not_voided_here() -> None:
    strange = ev.UnknownEvent(2, moment(5), "dust counted", "{}")
    job = fold([opened(), strange])
    assert "later version" in why_not_void(job, strange)
    assert why_not_void(job, ev.NoteMade(n=3, at=moment(6), text="a")) == ""


@pytest.mark.parametrize("width", [40, 76, 196])
def test_a_line_is_never_wider_than_its_room(width: int) -> None:
    text = ev.NoteMade(n=2, at=moment(5), text="広い" * 200)
    for more in ([], [ev.Voided(n=3, at=moment(6), target=2)]):
        job = fold([opened(), text, *more])
        line = entry_lines(job, System.US)[-2]
        (row,) = strings(lay_out(Lines((line,)), width, 1))
        assert cell_len(row) == width and "…" in row
