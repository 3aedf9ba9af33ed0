"""The first screen: jobs that are not closed, with their waits; coating profiles; what could not be read."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from booth.clock import local_date, local_hhmm
from booth.forms.key import Key
from booth.moment import Moment
from booth.screens.base import Deed
from booth.screens.home_list import HomeRow, glance, lines
from booth.screens.list_screen import ListScreen
from booth.words.lines import Page, PickLine

if TYPE_CHECKING:
    from booth.log.session import Session
    from booth.profile.model import Profile

#: By then the first frame is on the screen: the library paints sixty times a second [s].
PAINTED_S = 0.04
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
    """What to take up. At first a glance by name; all else is read when that stands on the screen."""

    SHOWS = ("help", "units", "theme", "alarm", "quit")

    def __init__(self, wanted: str | None = None) -> None:
        super().__init__()
        self.rows: tuple[HomeRow, ...] = ()
        self.wanted = wanted
        self.has_read = False

    # -- reading ----------------------------------------------------------------------------

    def on_mount(self) -> None:
        places = self.host.places
        self.rows = glance(places.jobs_dir, places.profiles_dirs)
        self.picked = self._row_of(self.wanted)
        super().on_mount()
        self.set_timer(PAINTED_S, lambda: self.app.call_next(self._read_first))

    async def _read_first(self) -> None:
        """Read everything for the first time; go straight to what was asked for by name."""
        if self.has_read:
            return
        self.read_again()
        wanted, self.wanted = self.wanted, None
        row = self.row
        if wanted is not None and (row is None or row.key != wanted):
            known = ", ".join(each.key for each in self.rows if each.kind == "profile")
            self.say(f"No coating profile '{wanted}'. There are: {known}.", fault=True)
        elif wanted is not None and row is not None and row.profile is not None:
            await self._begin(row.profile)

    def read_again(self) -> None:
        """Read jobs, profiles and shop file anew; the picked row stays picked."""
        from booth.profile.library import load_folder
        from booth.screens import home_rows

        host, row = self.host, self.row
        host.jobs.look()
        faults = host.read_shop()
        library = load_folder(host.places.profiles_dirs)
        self.rows = (
            *home_rows.job_rows(host.jobs.jobs(), host.jobs.found.unread, when),
            *home_rows.profile_rows(library),
            *home_rows.shop_rows(host.places.shop_file, faults),
            home_rows.history_row(host.places.jobs_dir, host.places.own_profiles_dir),
        )
        self.has_read = True
        ids = [each.id for each in self.rows]
        at = lines(self.rows, self._behind)[1]
        if self.wanted is not None:
            self.picked = self._row_of(self.wanted)
        elif row is not None and row.id in ids:
            self.picked = at[ids.index(row.id)]
        else:
            self.picked = at[0]
        self.draw(host.clock.now())

    def come_back(self) -> None:
        """From the bench: what is left open is offered first, as at the start."""
        self.read_again()
        self.picked = self._row_of(None)
        self.say("")
        self.draw(self.host.clock.now())

    def _row_of(self, wanted: str | None) -> int:
        """The first line; of a profile that was asked for, its open job, else itself."""
        at = lines(self.rows, self._behind)[1]
        for kind in ("job", "profile") if wanted is not None else ():
            for number, row in enumerate(self.rows):
                if (row.kind, row.key) == (kind, wanted):
                    return at[number]
        return at[0] if at else 0

    # -- the list ---------------------------------------------------------------------------

    def heading(self) -> str:
        return "booth"

    def _behind(self, row: HomeRow) -> str:
        """What stands behind a row: of a job its most urgent clock."""
        if row.job is None:
            return row.behind
        from booth.screens.home_rows import clock_of

        return clock_of(row.job, self.host.clock.now()) or row.behind

    def lines(self, now: Moment) -> tuple[PickLine, ...]:
        return lines(self.rows, self._behind)[0]

    def about(self, now: Moment) -> Page:
        row = self.row
        if row is None or not self.has_read:
            return Page(())
        from booth.screens.home_rows import describe

        return describe(row, now, self.host.system)

    @property
    def row(self) -> HomeRow | None:
        """The picked row."""
        at = lines(self.rows, lambda row: "")[1]
        return self.rows[at.index(self.picked)] if self.picked in at else None

    async def press(self, key: Key, at: Moment) -> None:
        await self._read_first()
        await super().press(key, at)

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
        from booth.log.errors import LogBusy, NotKept
        from booth.log.fold import NoJob
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
