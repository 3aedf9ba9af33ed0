"""The application that the screens stand in: what they may ask of it, and the one door for keys.

Keys go to the screen that is up, strictly one after the other: what a key opens stands there before
the next one is looked at.
"""

from __future__ import annotations

import contextlib
from abc import abstractmethod
from collections.abc import Awaitable, Callable
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any, Protocol

from textual import events

from booth.clock import Clock
from booth.forms.key import Key
from booth.screens.base import Deed, OwnScreen, carry_out
from booth.screens.keyline import CLICKED
from booth.screens.preferences import Preferences
from booth.units.kinds import System
from booth.widgets.sixteen import ColourApp

if TYPE_CHECKING:
    from booth.files.faults import Fault
    from booth.files.places import Places
    from booth.log.open_jobs import OpenJobs
    from booth.log.session import Session
    from booth.moment import Moment
    from booth.shop.model import Shop
    from booth.shop.room_readings import RoomReadings


class Alarms(Protocol):
    """What rings, in all open jobs."""

    def mind(self, now: Moment | None = None) -> None:
        """Show and sound what rings now."""


class Host(ColourApp):
    """The application, as the screens know it. shop: the painter's equipment, as read last."""

    clock: Clock
    places: Places
    system: System
    preferences: Preferences
    #: what a sensor reads, where the shop names its file
    room: RoomReadings
    #: the styles of all screens but the first
    STYLES: Path
    _all_read = False

    @abstractmethod
    async def command(self, id: str) -> None:
        """Do what a command asks for that is the same on every screen."""

    @abstractmethod
    async def take_up(self, session: Session) -> None:
        """Put a job on the bench."""

    @abstractmethod
    async def leave_job(self) -> None:
        """Back to the list of jobs."""

    @property
    @abstractmethod
    def alarms(self) -> Alarms:
        """What rings, in all open jobs."""

    @cached_property
    def jobs(self) -> OpenJobs:
        from booth.log.open_jobs import OpenJobs

        boot, kept = self.clock.now().boot, self.places.summaries_file
        return OpenJobs(self.places.jobs_dir, boot, kept)

    @cached_property
    def shop(self) -> Shop:
        from booth.shop.model import Shop

        return Shop()

    def read_shop(self) -> tuple[Fault, ...]:
        """Read the shop file anew; give what is wrong with it."""
        from booth.shop.read import read_shop

        result = read_shop(self.places.shop_file)
        self.shop = result.shop
        if not self.preferences.units and result.shop.system:
            self.system = System(result.shop.system)
        return result.faults

    def remember(self, key: str, value: str | bool) -> None:
        """Keep a preference for the next start; that it cannot be kept is no reason to stop."""
        self.preferences = self.preferences.changed(key, value)
        with contextlib.suppress(OSError):
            self.preferences.write(self.places.preferences_file)

    @abstractmethod
    def tick(self) -> None:
        """Draw now, and as often as is wanted from here on."""

    def front(self, key: Key, at: Moment) -> Deed | None:
        """What the application does with a key, pressed at `at`, before the screen that is up; None
        where that is the screen's."""
        return None

    async def on_event(self, event: events.Event) -> None:
        screen = self.screen if self.screen_stack else None
        if screen is not None and isinstance(event, events.Key):
            key, at = Key(event.key, event.character), self.clock.at(event.time)
            deed = self.front(key, at)
            if deed is not None:
                await carry_out(deed)
                self.own_screens[-1].draw(self.clock.now())
                return
            if isinstance(screen, OwnScreen):
                await screen.press(key, at)
                return
        if isinstance(screen, OwnScreen) and isinstance(event, events.Paste):
            await screen.paste(event.text)
        else:
            await super().on_event(event)

    def on_click(self, event: events.Click) -> None:
        """A word of the key line is the key it stands for."""
        key = event.style.meta.get(CLICKED)
        if isinstance(key, str):
            event.stop()
            self.simulate_key(key)

    async def show(
        self,
        screen: OwnScreen[Any],
        then: Callable[[Any], Awaitable[None] | None] | None = None,
    ) -> None:
        """Open a screen; returns when it stands there."""
        if not self._all_read:
            self._all_read = True
            self.stylesheet.read(self.STYLES)
            self.refresh_css(animate=False)
        screen.then = then
        await self.push_screen(screen)

    async def only_first(self) -> None:
        """Close every screen but the first."""
        while len(self.screen_stack) > 1 and self.screen is not self.own_screens[0]:
            await self.pop_screen()

    @property
    def own_screens(self) -> tuple[OwnScreen[Any], ...]:
        return tuple(screen for screen in self.screen_stack if isinstance(screen, OwnScreen))
