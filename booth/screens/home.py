"""The first screen: jobs that are not closed, with their waits; what runs on in closed ones; coating
profiles; what could not be read."""

from __future__ import annotations

import threading
from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING

from booth.clock import local_date, local_hhmm
from booth.files.slug import REHEARSAL
from booth.forms.key import Key
from booth.moment import Moment
from booth.screens.base import Deed
from booth.screens.dialog import Sheet
from booth.screens.home_list import (
    REHEARSE,
    HomeRow,
    asked_for,
    glance,
    not_there,
    plain_name,
)
from booth.screens.list_screen import Listed, ListScreen
from booth.words.shown import PickLine

if TYPE_CHECKING:
    from pathlib import Path

    from booth.log.session import Session
    from booth.profile.model import Profile
    from booth.profile.system import CoatingSystem
    from booth.screens.host import Host

#: By then the first frame is on the screen, of a busy machine too [s].
PAINTED_S = 0.12
#: So many logs are read before the list is used; what are more is read beside it.
FIRST_LOGS = 400
#: What Enter does on a row, by its kind.
ENTERS = {
    "job": "open",
    "still": "read",
    "rehearse": "choose the coating",
    "profile": "begin a job",
    "faults": "its faults",
    "shop": "open",
    "history": "open",
    "learnt": "open",
}


def when(moment: Moment) -> str:
    return f"{local_date(moment)} {local_hhmm(moment)}"


def load_what_comes_next() -> None:
    """Load the modules of the bench while the list is being read; nothing but modules is touched."""
    import booth.screens.bench
    import booth.screens.new_job  # noqa: F401
    from booth.instruments.registry import instruments

    instruments()


def read_logs(host: Host, then: Callable[[], None]) -> None:
    """Read the latest logs now; what are more in a thread, and go on with `then` after that."""

    def read() -> None:
        host.jobs.look()
        host.call_later(then)

    host.jobs.look(FIRST_LOGS)
    if host.jobs.found.unseen and not host.jobs.found.is_looking:
        threading.Thread(target=read, name="reading", daemon=True).start()


async def take_up(host: Host, path: Path, reopened_at: Moment | None = None) -> None:
    """Put the job at `path` on the bench. reopened_at: where given, a closed job is reopened."""
    from booth.log.errors import LogBusy, NotKept
    from booth.log.fold import NoJob

    try:
        session = host.jobs.take_up(path, reopened_at)
    except (LogBusy, NotKept, NoJob, OSError) as fault:
        await host.show(Sheet("This job cannot be opened", (str(fault),), grave=True))
        return
    await host.take_up(session)


async def begin(host: Host, what: Profile | CoatingSystem, rehearsal: bool = False) -> None:
    """Open a job, or its rehearsal, and put it on the bench."""
    from booth.screens.new_job import NewJob

    async def begun(session: Session | None) -> None:
        if session is not None:
            await host.take_up(session)

    await host.show(NewJob(what, rehearsal), begun)


async def choose_rehearsal(host: Host, rows: Iterable[HomeRow]) -> None:
    """Choose of what, and begin it."""
    from booth.screens.rehearse import Rehearse

    async def chosen(what: Profile | CoatingSystem | None) -> None:
        if what is not None:
            await begin(host, what, rehearsal=True)

    await host.show(Rehearse([row for row in rows if row.profile is not None]), chosen)


class Home(ListScreen[None, HomeRow]):
    """What to take up. At first a glance by name; all else is read when that stands on the screen."""

    SHOWS = ("help", "units", "theme", "alarm", "quit")
    LEAVES = ()
    NAME = "booth"

    def __init__(self, wanted: str | None = None) -> None:
        """wanted: the key of what to go to, or of its rehearsal; that alone: to choose of what."""
        super().__init__()
        self.wanted = wanted
        self.has_read = False

    def on_mount(self) -> None:
        places = self.host.places
        self._put(glance(places.jobs_dir, places.profiles_dirs))
        row = asked_for(self.listed.items, self.wanted or "")
        self._pick(row.id if row is not None else None)
        self.set_timer(PAINTED_S, lambda: self.app.call_next(self._read_first))

    def _put(self, rows: Iterable[HomeRow]) -> None:
        self.listed = Listed((row.section, row.id, row) for row in rows)

    def _pick(self, id: str | None) -> None:
        """Pick a row by its id; the first one where there is none, but not the rehearsal."""
        ids = (row.id for row in self.listed.items if row is not REHEARSE)
        self.picked = self.listed.line(next(ids, None) if id is None else id)

    async def _read_first(self) -> None:
        """Read everything for the first time; go straight to what was asked for by name."""
        if self.has_read:
            return
        self.read_again()
        threading.Thread(target=load_what_comes_next, name="loading", daemon=True).start()
        if self.wanted is not None:
            await self._go_to(self.wanted)

    async def _go_to(self, wanted: str) -> None:
        """To the open job of a profile or system that was written to last, else to a new job of it."""
        if wanted == REHEARSAL:
            await self._take(REHEARSE)
            return
        row, rehearsal = asked_for(self.listed.items, wanted), wanted.startswith(REHEARSAL)
        is_begun = row is not None and (row.kind == "job" or not rehearsal)
        jobs = self.host.jobs.open_jobs_with(row.key) if row is not None and is_begun else ()
        id = f"job:{jobs[0].path.name}" if jobs else row.id if row is not None else None
        self._pick(id)
        row = self.chosen if id else None
        if row is None:
            self.say(not_there(self.listed.items, wanted), fault=True)
        elif row.kind == "faults":
            told = f"{row.section[:-1]} '{plain_name(wanted)}' has faults: Enter shows them."
            self.say(told, fault=True)
        self.draw(self.host.clock.now())
        if row is not None and row.profile is not None:
            await begin(self.host, row.profile, rehearsal)

    def read_again(self, _: object = None) -> None:
        """Read jobs, profiles and shop file anew; the picked row stays picked."""
        from booth.profile.library import load_folder
        from booth.profile.system import load_systems
        from booth.screens import home_rows

        host, row, folders = self.host, self.chosen, self.host.places.profiles_dirs
        library = load_folder(folders)
        read_logs(host, self.read_again)
        faults = host.read_shop()
        self._put(
            (
                *home_rows.job_rows(host.jobs.jobs(), host.jobs.found.unread, when),
                *home_rows.still_rows(host.jobs, host.clock.now()),
                REHEARSE,
                *home_rows.profile_rows(library),
                *home_rows.system_rows(load_systems(folders, library)),
                *home_rows.shop_rows(host.places.shop_file, faults),
                *home_rows.past_rows(host.places.jobs_dir, host.places.own_profiles_dir),
            )
        )
        self.has_read = True
        self._pick(row.id if row is not None else None)
        self.draw(host.clock.now())

    def come_back(self) -> None:
        """From the bench: what is left open is offered first, as at the start."""
        self.read_again()
        self._pick(None)
        self.say("")
        self.draw(self.host.clock.now())

    def line(self, item: HomeRow, now: Moment) -> PickLine:
        """Behind a job stands its most urgent clock."""
        behind = item.behind
        if item.kind == "still":
            from booth.screens.home_rows import still_line

            return still_line(item, now)
        if item.job is not None:
            from booth.screens.home_rows import clock_of

            behind = clock_of(item.job, now) or behind
        return PickLine(item.title, behind, must=True, mark=item.mark)

    def about(self, now: Moment) -> tuple[str, ...]:
        row = self.chosen
        if row is None or not self.has_read:
            return ()
        from booth.screens.home_rows import describe

        return describe(row, now, self.host.system)

    async def press(self, key: Key, at: Moment) -> None:
        await self._read_first()
        if self.is_active:  # else what was asked for by name stands there now: the key opened it
            await super().press(key, at)

    def deed(self, key: Key) -> Deed | None:
        if key.name == "q":
            return Deed("", lambda: self.command("quit"))
        return super().deed(key)

    def enter(self) -> Deed | None:
        row = self.chosen
        return Deed(ENTERS[row.kind], lambda: self._take(row)) if row is not None else None

    async def _take(self, row: HomeRow) -> None:
        if row.kind == "job" and row.path is not None:
            await take_up(self.host, row.path)
        elif row.kind == "still" and row.path is not None:
            from booth.log.summary import summarise
            from booth.screens.job_report import read_one

            await read_one(self.host, summarise(row.path))
        elif row.profile is not None:
            await begin(self.host, row.profile)
        elif row is REHEARSE:
            await choose_rehearsal(self.host, self.listed.items)
        elif row.kind == "shop":
            from booth.screens.shop import ShopScreen

            await self.host.show(ShopScreen(), self.read_again)
        elif row.kind == "history":
            from booth.screens.history import History

            await self.host.show(History(), self.read_again)
        elif row.kind == "learnt":
            await self.command("learnt")
        else:
            await self.host.show(Sheet(row.title, row.about))
