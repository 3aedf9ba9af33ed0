"""The one door for keys, which go to the screen that is up, strictly one after the other: what a key
opens stands there before the next one is looked at."""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from pathlib import Path
from typing import Any

from textual import events

from booth.clock import Clock
from booth.forms.key import Key
from booth.screens.base import OwnScreen
from booth.screens.keyline import CLICKED
from booth.widgets import themes
from booth.widgets.textual_internals import FaultApp


class KeyedApp(FaultApp):
    """An app whose keys go through ``press`` of its screens."""

    clock: Clock
    _all_read = False

    async def takes(self, key: str) -> bool:
        """Whether the application takes this key itself, whatever screen is up."""
        return False

    async def on_event(self, event: events.Event) -> None:
        screen = self.screen if self.screen_stack else None
        if screen is not None and isinstance(event, events.Key) and await self.takes(event.key):
            return
        if isinstance(screen, OwnScreen) and isinstance(event, events.Key):
            await screen.press(Key(event.key, event.character), self.clock.at(event.time))
        elif isinstance(screen, OwnScreen) and isinstance(event, events.Paste):
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
        self._read_styles()
        screen.then = then
        await self.push_screen(screen)

    async def only_first(self) -> None:
        """Close every screen but the first."""
        while len(self.screen_stack) > 1 and self.screen is not self.own_screens[0]:
            await self.pop_screen()

    def flash(self, word: str) -> None:
        """Fill the window with one word for a moment."""
        from booth.widgets.flash import Flash

        self.screen.mount(Flash(word))

    def get_theme_variable_defaults(self) -> dict[str, str]:
        return themes.variable_defaults()

    def _read_styles(self) -> None:
        """The styles of all screens but the first, once."""
        if not self._all_read:
            self._all_read = True
            self.stylesheet.read(Path(__file__).with_name("booth.tcss"))
            self.refresh_css(animate=False)

    @property
    def own_screens(self) -> tuple[OwnScreen[Any], ...]:
        return tuple(screen for screen in self.screen_stack if isinstance(screen, OwnScreen))
