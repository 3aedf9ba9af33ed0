"""Opens a job: which parts, which gun. Nothing is kept before Enter."""

from __future__ import annotations

import msgspec
from textual.app import ComposeResult
from textual.widgets import Static

from booth.bench.instrument import around_in
from booth.clock import local_date
from booth.forms.form import Field, Rows
from booth.forms.key import Key
from booth.job.last_choices import tip_last
from booth.job.part_names import HINT, THE_PART, BadParts, parts_from
from booth.job.past import last_lesson, last_rehearsal, last_settings
from booth.job.past_settings import GoodSettings, Lesson
from booth.log.codec import VERSION
from booth.log.errors import NotKept
from booth.log.events import GunChanged, JobOpened
from booth.log.fold import Job
from booth.log.session import Session
from booth.moment import Moment
from booth.profile.model import Profile
from booth.profile.system import CoatingSystem
from booth.screens.base import Deed
from booth.screens.dialog import Sheet
from booth.screens.form_screen import FormScreen
from booth.units import Kind, Quantity
from booth.widgets.form_view import FormView
from booth.widgets.page_view import PageView
from booth.widgets.text import content
from booth.words.last_good_words import good_lines, lesson_line, rehearsed_line
from booth.words.shown import Page
from booth.words.system_words import lines_of

#: What one press of an arrow scrolls.
ABOUT_ROWS = 3
CARDBOARD = "cardboard"
LAST_TIP = "as in the last job with this gun"


class NewJob(FormScreen[Session | None]):
    """Parts and gun; gives the session that was begun."""

    KEEP = "begin the job"

    def __init__(self, what: Profile | CoatingSystem, rehearsal: bool = False) -> None:
        """rehearsal: with water, on cardboard."""
        super().__init__()
        self.what = what
        self.rehearsal = rehearsal
        self.KEEP = "begin the rehearsal" if rehearsal else self.KEEP
        self.products = what.profiles if isinstance(what, CoatingSystem) else (what,)
        self.profile = self.products[0]
        self._good: dict[str, GoodSettings | None] = {}
        self._tips: dict[str, float | None] = {}
        self._lessons: dict[str, tuple[Lesson, ...]] = {}
        self._rehearsed: dict[str, Job | None] = {}

    def heading(self) -> str:
        return f"REHEARSAL with water: {self.what.name}" if self.rehearsal else self.what.name

    def body(self) -> ComposeResult:
        yield PageView(id="about-profile")
        yield Static("", id="good-text", markup=False)
        yield FormView()

    def fields(self) -> tuple[Field, ...]:
        part = CARDBOARD if self.rehearsal else THE_PART
        parts = Field("parts", "Parts", optional=True, default=part, hint=HINT)
        guns = tuple((gun.name, gun.name) for gun in self.host.shop.guns)
        found = (parts, Field("gun", "Gun", choices=guns)) if guns else (parts,)
        # Which gun it is stands in the rows: the tip is asked for that one.
        chosen = self.form.chosen.get("gun") if guns else ""
        tip = self.tip_of(chosen if isinstance(chosen, str) else guns[0][0])
        if tip is None:
            return found
        return (*found, Field("tip", "Tip", Kind.TIP, optional=True, default=tip, hint=LAST_TIP))

    def tip_of(self, gun: str) -> float | None:
        """The tip told in the last job with a gun [mm], where it is not the one of the shop file."""
        if gun not in self._tips:
            self._tips[gun] = tip_last(self.host.places.jobs_dir, gun)
        tip, known = self._tips[gun], self.host.shop.gun(gun)
        return None if tip is None or (known is not None and known.tip_mm == tip) else tip

    def _shop_tip_mm(self) -> float | None:
        known = self.host.shop.gun(self.gun)
        return known.tip_mm if known is not None else None

    @property
    def gun(self) -> str:
        """The chosen gun; empty where the shop file names none."""
        found = self.rows.values.get("gun")
        return found if isinstance(found, str) else ""

    @property
    def good(self) -> GoodSettings | None:
        """The last good settings with this product and the chosen gun, else with another one; read
        once for each gun."""
        gun, folder = self.gun, self.host.places.jobs_dir
        if gun not in self._good:
            self._good[gun] = last_settings(folder, self.profile.key, gun)
            found = (last_lesson(folder, each.key, gun) for each in self.products)
            self._lessons[gun] = tuple(dict.fromkeys(each for each in found if each is not None))
            rehearsed = (last_rehearsal(folder, each.key, gun) for each in self.products)
            self._rehearsed[gun] = next(filter(None, rehearsed), None)
        return self._good[gun]

    def _taught(self, now: Moment) -> str:
        """What past jobs say before this one: the last lesson, whatever came of that job; the last good
        settings, and what is otherwise today."""
        good, host = self.good, self.host
        gun = host.shop.gun(self.gun)
        tip_mm = gun.tip_mm if gun is not None else None
        today = around_in(host.room.reading, now, self.gun, tip_mm)
        date = local_date(good.opened) if good is not None else ""
        lessons = [
            lesson_line(each, local_date(each.opened))
            for each in self._lessons[self.gun]
            if good is None or each.opened != good.opened
        ]
        rehearsed = self._rehearsed[self.gun]
        if rehearsed is not None and not self.rehearsal:
            lessons.insert(0, rehearsed_line(rehearsed, local_date(rehearsed.opened.at)))
        return "\n".join((*lessons, *good_lines(good, host.system, date, today)))

    def deed(self, key: Key) -> Deed | None:
        found = super().deed(key)
        if found is None and key.name in ("up", "down"):  # no row that way: the profile moves on
            by = ABOUT_ROWS if key.name == "down" else -ABOUT_ROWS
            return Deed("", lambda: self.query_one(PageView).scroll_by(by))
        return found

    def draw(self, now: Moment) -> None:
        system = self.host.system
        about = lines_of(self.what, system)
        self.query_one(PageView).show(Page(tuple(("text", line) for line in about)))
        words = self._taught(now)
        self.put("#good-text", content(words, keep_lines=True))
        self.query_one("#good-text").display = bool(words)
        super().draw(now)

    async def keep(self, rows: Rows) -> str:
        """Open the log: from here on everything is kept."""
        host = self.host
        try:
            parts = parts_from(rows.row("parts").text or (CARDBOARD if self.rehearsal else ""))
        except BadParts as fault:
            return str(fault)
        now, what = host.clock.now(), self.what
        named = isinstance(what, CoatingSystem)
        opened = JobOpened(
            n=1,
            at=now,
            job="",
            profile=self.profile,
            parts=parts.names,
            racks=parts.racks,
            system=host.system.value,
            gun=self.gun,
            shop=msgspec.to_builtins(host.shop),
            version=VERSION,
            later=self.products[1:],
            coating=what.name if named else "",
            coating_key=what.key if named else "",
            rehearsal=self.rehearsal,
        )
        try:
            session = host.jobs.begin(opened)
            tip = rows.values.get("tip")
            if isinstance(tip, Quantity) and tip.value != self._shop_tip_mm():
                session.record(GunChanged(n=0, at=now, gun=self.gun, tip=tip))
        except (NotKept, OSError) as fault:
            told = Sheet("NOT KEPT: the job was not opened", (str(fault),), grave=True)
            await host.show(told)
            return ""
        await self.close(session)
        return ""
