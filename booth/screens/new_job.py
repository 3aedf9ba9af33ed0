"""Opens a job: which parts, which gun. Nothing is kept before Enter."""

from __future__ import annotations

import secrets

from textual import events
from textual.app import ComposeResult
from textual.binding import Binding
from textual.containers import Vertical, VerticalScroll
from textual.widgets import Static

from booth.clock import local_date
from booth.job.past import GoodSettings, last_good
from booth.log.events import JobOpened
from booth.log.session import Session
from booth.log.store import NotKept
from booth.profile.model import Profile
from booth.screens.base import OwnScreen
from booth.screens.keyline import key_line
from booth.screens.sheet import Sheet
from booth.units import System
from booth.widgets.entry import Field, FieldRow
from booth.widgets.text import content
from booth.words.last_good_words import good_lines
from booth.words.profile_words import profile_lines

MOST_PARTS = 24
LONGEST_NAME = 40


class BadParts(ValueError):
    """The parts cannot be told apart; the message is a sentence."""


def parts_from(typed: str) -> tuple[str, ...]:
    """Read part names parted by commas. Raises BadParts with a sentence."""
    names = tuple(name for name in (" ".join(each.split()) for each in typed.split(",")) if name)
    if not names:
        return ("the part",)
    if len(names) > MOST_PARTS:
        raise BadParts(f"{len(names)} parts: a job holds up to {MOST_PARTS}. Group some of them.")
    for name in names:
        if len(name) > LONGEST_NAME:
            raise BadParts(f"'{name[:20]}…' is long: up to {LONGEST_NAME} characters a part.")
        if names.count(name) > 1:
            raise BadParts(f"'{name}' is there twice: every part needs a name of its own.")
    return names


class NewJob(OwnScreen[Session | None]):
    """Parts and gun; gives the opened session."""

    BINDINGS = [Binding("f9", "escape", "back", show=False)]
    AUTO_FOCUS = "TypedText"

    def __init__(self, profile: Profile) -> None:
        super().__init__()
        self.profile = profile
        self._good: dict[str, GoodSettings | None] = {}
        self._begun = False

    def compose(self) -> ComposeResult:
        yield Static(content(self.profile.name), id="name", markup=False)
        with VerticalScroll(id="about-profile", can_focus=False):
            yield Static("", id="about-text", markup=False)
        yield Static("", id="good-text", markup=False)
        with Vertical(classes="fields"):
            yield FieldRow(
                Field(
                    "parts",
                    "Parts",
                    optional=True,
                    default="the part",
                    hint="parted by commas, as: left door, hood",
                ),
                lambda: self.app.system,
            )
            guns = self.app.shop.guns
            if guns:
                choices = tuple((gun.name, gun.name) for gun in guns)
                yield FieldRow(Field("gun", "Gun", choices=choices), lambda: self.app.system)
        yield Static("", id="say", markup=False)
        yield Static("", id="keys", markup=False)

    def on_mount(self) -> None:
        self.draw(self.app.clock.now())

    def draw(self, now: object) -> None:
        """Draw what the profile says, in the units shown now."""
        lines = profile_lines(self.profile, self.app.system)
        self.query_one("#about-text", Static).update(content("\n".join(lines), keep_lines=True))
        good = self.good
        date = local_date(good.opened) if good is not None else ""
        words = "\n".join(good_lines(good, self.app.system, date))
        shown = self.query_one("#good-text", Static)
        shown.update(content(words, keep_lines=True))
        shown.display = bool(words)
        keys = (("Enter", "begin the job"), ("Esc", "back"), ("F3", "units"))
        self.query_one("#keys", Static).update(key_line(keys, self.size.width))

    @property
    def gun(self) -> str:
        """The chosen gun; empty where the shop file names none."""
        return next((row.typed for row in self.query(FieldRow) if row.field.key == "gun"), "")

    @property
    def good(self) -> GoodSettings | None:
        """The last good settings with this product and the chosen gun, read once for each gun."""
        gun = self.gun
        if gun not in self._good:
            self._good[gun] = last_good(self.app.places.jobs_dir, self.profile.key, gun)
        return self._good[gun]

    def on_field_row_edited(self, event: FieldRow.Edited) -> None:
        event.stop()
        self.draw(self.app.clock.now())

    def on_field_row_entered(self, event: FieldRow.Entered) -> None:
        event.stop()
        self.begin()

    def on_key(self, event: events.Key) -> None:
        key = event.key
        rows = list(self.query(FieldRow))
        places = [row.place for row in rows]
        if key in ("up", "down") and self.focused in places:
            by = 1 if key == "down" else -1
            at = places.index(self.focused) + by  # type: ignore[arg-type]
            if 0 <= at < len(places):
                self.set_focus(places[at])
            else:  # no row that way: what the profile says moves on
                about = self.query_one("#about-profile", VerticalScroll)
                about.scroll_relative(y=3 * by, animate=False)
        elif key == "enter":
            event.stop()  # else it would go on to the screen that this one opens
            self.begin()

    def begin(self) -> None:
        """Open the log: from here on everything is kept. A second Enter of a glove opens no second."""
        if self._begun:
            return
        rows = {row.field.key: row for row in self.query(FieldRow)}
        shown = self.query_one("#say", Static)
        try:
            parts = parts_from(rows["parts"].typed)
        except BadParts as fault:
            shown.add_class("-fault")
            shown.display = True
            shown.update(content(str(fault)))
            return
        now = self.app.clock.now()
        opened = JobOpened(
            n=1,
            at=now,
            job=f"{local_date(now)}-{secrets.token_hex(2)}",
            profile=self.profile,
            parts=parts,
            system=System(self.app.system).value,
            gun=self.gun,
            shop=self.app.shop_as_it_is(),
        )
        try:
            session = Session.begin(self.app.places.jobs_dir, opened)
        except (NotKept, OSError) as fault:
            self.app.push_screen(
                Sheet("NOT KEPT: the job was not opened", (str(fault),), grave=True)
            )
            return
        self._begun = True
        self.dismiss(session)

    def action_escape(self) -> None:
        """Back without opening anything."""
        self.dismiss(None)
