"""The first screen: jobs that are not closed, with their waits; coating profiles; what could not be read."""

from __future__ import annotations

from collections.abc import Callable

from booth.clock import local_date, local_hhmm
from booth.files.faults import Fault
from booth.forms.edit import Key
from booth.log.errors import LogBusy, NotKept
from booth.log.fold import NoJob
from booth.log.session import Session
from booth.moment import Moment
from booth.profile.library import load_folder
from booth.profile.model import Profile
from booth.screens.base import Deed
from booth.screens.home_rows import (
    HomeRow,
    describe,
    history_row,
    job_rows,
    lines,
    profile_rows,
    shop_rows,
)
from booth.screens.list_screen import ListScreen
from booth.words.pictures import Page, PickLine

#: What Enter does on a row, by its kind.
ENTERS = {
    "job": "take up",
    "profile": "begin a job",
    "faults": "its faults",
    "shop": "open",
    "history": "open",
}


def when(moment: Moment) -> str:
    """A moment of any day."""
    return f"{local_date(moment)} {local_hhmm(moment)}"


class Home(ListScreen[None]):
    """What to take up. It is read when it is opened and when one comes back to it."""

    SHOWS = ("help", "units", "theme", "alarm", "quit")

    def __init__(self, wanted: str | None = None) -> None:
        super().__init__()
        self.rows: tuple[HomeRow, ...] = ()
        self.shop_faults: tuple[Fault, ...] = ()
        self.wanted = wanted
        self._said = ""

    # -- reading ----------------------------------------------------------------------------

    def read_again(self) -> None:
        """Read jobs, profiles and shop file anew."""
        host = self.host
        host.jobs.look()
        self.shop_faults = tuple(host.read_shop())
        library = load_folder(host.places.profiles_dirs)
        self.rows = (
            *job_rows(host.jobs.jobs(), host.jobs.found.unread, when),
            *profile_rows(library),
            *shop_rows(host.places.shop_file, self.shop_faults),
            history_row(host.places.jobs_dir, host.places.own_profiles_dir),
        )

    def on_mount(self) -> None:
        self.read_again()
        self.picked = self._begins_at()
        super().on_mount()
        self.say(self._said, fault=True)

    def come_back(self) -> None:
        """From the bench: what is left open is offered first, as at the start."""
        self.read_again()
        self.picked = self._begins_at()
        self.say("")
        self.draw(self.host.clock.now())

    def _begins_at(self) -> int:
        """The first line; of a profile that was asked for, its open job, else itself."""
        _, at = lines(self.rows, self.host.clock.now())
        wanted, self.wanted = self.wanted, None
        if wanted is None:
            return at[0] if at else 0
        for kind in ("job", "profile"):
            for number, row in enumerate(self.rows):
                profile = row.job.profile if row.job is not None else row.profile
                if row.kind == kind and profile is not None and profile.key == wanted:
                    return at[number]
        known = ", ".join(row.profile.key for row in self.rows if row.profile is not None)
        self._said = f"No coating profile '{wanted}'. There are: {known}."
        return at[0] if at else 0

    # -- the list ---------------------------------------------------------------------------

    def heading(self) -> str:
        return "booth"

    def lines(self, now: Moment) -> tuple[PickLine, ...]:
        return lines(self.rows, now)[0]

    def about(self, now: Moment) -> Page:
        row = self.row
        return describe(row, now, self.host.system) if row is not None else Page(())

    @property
    def row(self) -> HomeRow | None:
        """The picked row."""
        _, at = lines(self.rows, self.host.clock.now())
        return self.rows[at.index(self.picked)] if self.picked in at else None

    # -- keys -------------------------------------------------------------------------------

    def deed(self, key: Key) -> Deed | None:
        if key.name == "q":
            return Deed("", lambda: self.command("quit"))
        return super().deed(key)

    def enter(self) -> Deed | None:
        row = self.row
        return Deed(ENTERS[row.kind], lambda: self._take(row)) if row is not None else None

    async def _take(self, row: HomeRow) -> None:
        if row.job is not None and row.path is not None:
            path = row.path
            await self._take_up(lambda: self.host.jobs.take_up(path))
        elif row.profile is not None:
            await self._begin(row.profile)
        elif row.kind == "shop":
            from booth.screens.shop import ShopScreen

            await self.host.show(ShopScreen(), self._came_back)
        elif row.kind == "history":
            from booth.screens.history import History

            await self.host.show(History(), self._came_back)
        else:
            from booth.screens.sheet import Sheet

            await self.host.show(Sheet(row.title, row.about))

    async def _take_up(self, open_job: Callable[[], Session]) -> None:
        from booth.screens.sheet import Sheet

        try:
            session = open_job()
        except (LogBusy, NotKept, NoJob, OSError) as fault:
            await self.host.show(Sheet("This job cannot be opened", (str(fault),), grave=True))
            return
        await self.host.take_up(session)

    async def _begin(self, profile: Profile) -> None:
        from booth.screens.new_job import NewJob

        async def begun(session: Session | None) -> None:
            if session is not None:
                await self.host.take_up(session)

        await self.host.show(NewJob(profile), begun)

    def _came_back(self, _: object) -> None:
        self.read_again()
        self.draw(self.host.clock.now())
