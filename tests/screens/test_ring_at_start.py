"""A job that was open when the program was killed rings on the first screen of the next start."""

from __future__ import annotations

from msgspec.structs import replace

from booth.log.events import AlarmAcknowledged, CoatBegun, CoatEnded, Event, JobClosed
from booth.moment import Moment, later
from tests.job.make import mild
from tests.manual_clock import ManualClock
from tests.screens.at_app import a_job, at_app, kept


def _coated(boot: str = "", closed: bool = False) -> tuple[Moment, list[Event]]:
    """A coat on the door that ended an hour before the next start; flash-off is ten minutes."""
    start = later(ManualClock().now(), -3700)
    if boot:
        start = replace(start, boot=boot)
    events: list[Event] = [
        replace(mild(), at=start),
        CoatBegun(n=0, at=start, part="door", coat=1),
        CoatEnded(n=0, at=later(start, 100), part="door", coat=1),
    ]
    if closed:
        events.append(JobClosed(n=0, at=later(start, 200), verdict="usable"))
    return start, events


async def test_it_rings_until_silenced_and_the_silencing_is_in_its_log() -> None:
    start, events = _coated()
    path = a_job(start, *events)
    async with at_app() as at:
        await at.beat()
        assert "door: ready for coat 2" in at.text
        await at.press("escape")
        assert "silences" not in at.text
        (heard,) = kept(path, AlarmAcknowledged)
        assert heard.alarm.endswith(":ready")
        # Taken up from the list, it goes on in the same log.
        await at.press("enter")
        assert at.screen == "BenchScreen"


async def test_it_rings_by_itself_soon_after_the_first_frame() -> None:
    start, events = _coated()
    a_job(start, *events)
    async with at_app() as at:
        await at.until(lambda: "door: ready for coat 2" in at.text)


async def test_what_was_set_aside_is_still_told_when_it_is_taken_up() -> None:
    start, events = _coated()
    path = a_job(start, *events)
    with path.open("ab") as file:
        file.write(b'{"n":4,"torn')
    async with at_app() as at:
        await at.beat()
        assert "door: ready for coat 2" in at.text
        await at.press("escape", "enter")
        assert at.screen == "Sheet" and "set aside" in at.words


async def test_another_machines_job_and_a_closed_one_are_left_alone() -> None:
    start, events = _coated(boot="another machine")
    elsewhere = a_job(start, *events)
    start, events = _coated(closed=True)
    a_job(start, *events)
    before = elsewhere.read_bytes()
    async with at_app(bundled=True) as at:
        await at.beat()
        assert "Coating profiles" in at.text and "Coating systems" in at.text
        assert "silences" not in at.text
        assert at.app.alarms.ringing() == ()
        assert elsewhere.read_bytes() == before
