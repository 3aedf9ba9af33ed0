"""Takes a past job up again: a closed one by voiding its closing, an open one as it is."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from booth.log.events import Voided
from booth.log.fold import NoJob
from booth.log.session import Session
from booth.log.store import LogBusy, NotKept
from booth.moment import Moment
from booth.screens.home import Home
from booth.screens.sheet import Sheet

if TYPE_CHECKING:
    from booth.app.app import BoothApp


def reopened(path: Path, now: Moment) -> Session:
    """Open the job's log and void its closing, if it has one.

    Raises LogBusy, NotKept, NoJob or OSError; the log is let go.
    """
    session = Session.resume(path)
    try:
        # Two booths may each have closed it: every closing has to go.
        while session.job.closed is not None:
            session.record(Voided(n=0, at=now, target=session.job.closed.n))
    except BaseException:
        session.close()
        raise
    return session


def take_up_again(app: BoothApp, path: Path) -> None:
    """Put the job on the bench, above the list of jobs; say so where that cannot be done."""
    try:
        session = app.working.aside(path) or reopened(path, app.clock.now())
    except (LogBusy, NotKept, NoJob, OSError) as fault:
        app.push_screen(Sheet("This job cannot be opened", (str(fault),), grave=True))
        return
    while len(app.screen_stack) > 1 and not isinstance(app.screen, Home):
        app.pop_screen()
    app.take_up(session)
