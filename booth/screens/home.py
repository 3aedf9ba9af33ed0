"""The first screen: jobs that are not closed, with their waits; coating profiles; what could not be read."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from rich.cells import cell_len
from textual import events, work
from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Horizontal, VerticalScroll
from textual.content import Content
from textual.widgets import OptionList, Static
from textual.widgets.option_list import Option

from booth.clock import local_date, local_hhmm
from booth.moment import Moment
from booth.screens.base import OwnScreen
from booth.screens.keyline import key_line
from booth.widgets.text import content, fit

if TYPE_CHECKING:
    from booth.profile.library import Library
    from booth.profile.model import Profile
    from booth.screens.home_rows import HomeRow

KEYS = (
    ("Enter", "take up"),
    ("↑↓", "choose"),
    ("?", "keys"),
    ("u", "units"),
    ("t", "bright/dark"),
    ("a", "test alarm"),
    ("q", "quit"),
)

#: In a row: the mark before the title, what parts title and remark, and the least of a title.
MARK_CELLS, BETWEEN, LEAST_TITLE = 2, "  ", 12
#: What one press of left or right scrolls.
ABOUT_ROWS = 6

#: What Enter does on a row, by its kind.
ENTERS = {"job": "take up", "profile": "begin a job", "broken": "its faults"}


class Home(OwnScreen[None]):
    """What to take up."""

    AUTO_FOCUS = "OptionList"
    BINDINGS = [Binding("q", "quit", "quit", show=False)]
    HORIZONTAL_BREAKPOINTS = [(0, "-narrow"), (90, "-wide")]

    def __init__(self) -> None:
        super().__init__()
        self.rows: dict[str, HomeRow] = {}
        self.profiles: dict[str, Profile] = {}

    def compose(self) -> ComposeResult:
        yield Static("booth", id="name", markup=False)
        with Horizontal(id="shelf"):
            yield OptionList(id="rows")
            with VerticalScroll(id="about", can_focus=False):
                yield Static("", id="about-text", markup=False)
        yield Static("", id="say", markup=False)
        yield Static("", id="keys", markup=False)

    def on_mount(self) -> None:
        self._draw_keys()
        self.call_after_refresh(self.read_again)

    def _when(self, moment: Moment) -> str:
        return f"{local_date(moment)} {local_hhmm(moment)}"

    @work(thread=True, exclusive=True, group="library")
    def read_again(self) -> None:
        """Read jobs, profiles and shop file anew, off the event loop; jobs are shown first."""
        from booth.profile.library import load_folder
        from booth.screens.home_rows import job_rows, profile_rows, shelf_rows

        places = self.app.places
        jobs = job_rows(places.jobs_dir, self.app.clock.now(), self._when)
        if jobs and not self.rows:
            self.app.call_from_thread(self._put, jobs)
        library = load_folder(places.profiles_dirs)
        shop = self.app.read_shop()
        shelf = shelf_rows(places.jobs_dir, places.own_profiles_dir)
        rows = (*jobs, *profile_rows(library), *shop, *shelf)
        self.app.call_from_thread(self._show, rows, library)

    def come_back(self) -> None:
        """From the bench: what is left open is offered first, as at the start."""
        self.query_one(OptionList).highlighted = None
        self.read_again()

    def _show(self, rows: tuple[HomeRow, ...], library: Library) -> None:
        if not self.is_mounted:
            return
        self.profiles = {profile.key: profile for profile in library.profiles}
        self._put(rows)
        self.app.working.adopt(
            (row.path, row.job) for row in rows if row.path is not None and row.job is not None
        )
        wanted, self.app.wanted_profile = self.app.wanted_profile, None
        if wanted is None:
            return
        if wanted in self.profiles:
            self._begin(self.profiles[wanted])
        else:
            self.say(f"No coating profile '{wanted}'. There are: {', '.join(self.profiles)}.")

    def _put(self, rows: tuple[HomeRow, ...]) -> None:
        shown = self.query_one(OptionList)
        at = shown.highlighted
        was = shown.get_option_at_index(at).id if at is not None and shown.option_count else None
        self.rows = {row.id: row for row in rows}
        options: list[Option | None] = []
        section = ""
        for row in rows:
            if row.section != section:
                if section:
                    options.append(None)
                section = row.section
                options.append(Option(Content.assemble((row.section, "bold dim")), disabled=True))
            options.append(Option(self._words(row, self.app.clock.now()), id=row.id))
        shown.clear_options()
        shown.add_options(options)
        ids = [option.id for option in shown.options]
        first = next((i for i, each in enumerate(ids) if each is not None), None)
        shown.highlighted = ids.index(was) if was is not None and was in ids else first
        self.draw(self.app.clock.now())

    def _words(self, row: HomeRow, now: Moment) -> Content:
        """The row in one line: a long title gives way, its clock or its remark does not."""
        from booth.screens.home_rows import extra_at

        room = self.query_one(OptionList).scrollable_content_region.width or self.app.size.width
        extra = fit(extra_at(row, now), room - MARK_CELLS - LEAST_TITLE - len(BETWEEN))
        left = room - cell_len(extra) - (MARK_CELLS + len(BETWEEN) if extra else MARK_CELLS)
        title = fit(row.title, left)
        words = Content.assemble((row.mark + " ", "bold"), content(title))
        return words + Content.assemble((BETWEEN, ""), (extra, "dim")) if extra else words

    def on_resize(self) -> None:
        """Titles are cut to the new width."""
        self.call_after_refresh(self._refit)

    def _refit(self) -> None:
        now, shown = self.app.clock.now(), self.query_one(OptionList)
        for row in self.rows.values():
            shown.replace_option_prompt(row.id, self._words(row, now))
        self._draw_keys()

    def draw(self, now: Moment) -> None:
        """Draw the keys, and the clocks of every job at `now`; nothing under another screen."""
        if self.app.screen is not self and not self.app.screen.is_modal:
            return
        self._draw_keys()
        shown = self.query_one(OptionList)
        for row in self.rows.values():
            if row.job is not None:
                words = self._words(row, now)
                if shown.get_option(row.id).prompt != words:
                    shown.replace_option_prompt(row.id, words)
        chosen = self._row()
        if chosen is not None:
            from booth.screens.home_rows import describe

            lines = describe(chosen, self.profiles, now, self.app.system)
            self.query_one("#about-text", Static).update(content("\n".join(lines), keep_lines=True))

    def on_key(self, event: events.Key) -> None:
        """Left and right scroll what is said about the row; the list has up and down."""
        if event.key in ("left", "right"):
            event.stop()
            by = ABOUT_ROWS if event.key == "right" else -ABOUT_ROWS
            self.query_one("#about", VerticalScroll).scroll_relative(y=by, animate=False)

    def _draw_keys(self) -> None:
        more = self.query_one("#about", VerticalScroll).max_scroll_y > 0
        row = self._row()
        first = ("Enter", ENTERS.get(row.kind, "open") if row is not None else "take up")
        keys = (first, KEYS[1], *((("←→", "more of it"),) if more else ()), *KEYS[2:])
        line = key_line(keys, self.size.width or self.app.size.width)
        self.query_one("#keys", Static).update(line)

    def _row(self) -> HomeRow | None:
        shown = self.query_one(OptionList)
        at = shown.highlighted
        if at is None or not shown.option_count:
            return None
        return self.rows.get(shown.get_option_at_index(at).id or "")

    def on_option_list_option_highlighted(self) -> None:
        self.query_one("#about", VerticalScroll).scroll_home(animate=False)
        self.draw(self.app.clock.now())
        self.call_after_refresh(self._draw_keys)

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        if self.app.screen is not self:
            return  # a second press of the key that opened what is up now
        row = self.rows.get(event.option_id or "")
        if row is None:
            return
        if row.path is not None and row.kind == "job":
            self._resume(row.path)
        elif row.kind == "profile" and row.key in self.profiles:
            self._begin(self.profiles[row.key])
        elif row.kind in ("broken", "told"):
            from booth.screens.sheet import Sheet

            self.app.push_screen(Sheet(row.title, row.about))
        elif row.kind == "screen":
            self.app.open_shelf(row.key)

    def _resume(self, path: Path) -> None:
        from booth.log.session import Session
        from booth.log.store import LogBusy, NotKept
        from booth.screens.sheet import Sheet

        try:
            session = self.app.working.aside(path) or Session.resume(path)
        except (LogBusy, NotKept, OSError, ValueError) as fault:
            self.app.push_screen(Sheet("This job cannot be opened", (str(fault),), grave=True))
            return
        self.app.take_up(session)

    def _begin(self, profile: Profile) -> None:
        from booth.screens.new_job import NewJob

        self.app.push_screen(NewJob(profile), self._opened)

    def _opened(self, session: object) -> None:
        from booth.log.session import Session

        if isinstance(session, Session):
            self.app.take_up(session)

    def say(self, sentence: str) -> None:
        """Say something above the keys."""
        shown = self.query_one("#say", Static)
        shown.update(content(sentence))
        shown.display = bool(sentence)

    def action_quit(self) -> None:
        """Leave."""
        self.app.exit()
