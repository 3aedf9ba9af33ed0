"""Keys that came in faster than they were dealt with: each acts on what the one before has left.

A screen hands a key to the widget that has the focus now, while an Enter before it may still be on
its way to move that focus: what is typed ahead during a stall (a slow disk, a busy machine) would
land in the wrong entry. So after a key that may move the focus the next one waits a moment.
"""

from __future__ import annotations

import asyncio
import contextlib
from typing import Protocol, runtime_checkable

from textual import events
from textual.message_pump import MessagePump
from textual.widget import Widget
from textual.widgets import Input

#: The keys after which the next key may be meant for another widget.
MOVING = frozenset({"enter", "tab", "shift+tab", "up", "down", "escape"})
#: Whatever happens, keys wait no longer than this [s]; for a step to open, no longer than that.
PATIENCE_S, OPENING_S = 0.25, 2.0


def may_move(event: events.Event, focused: Widget | None) -> bool:
    """Whether the next key may be meant for another widget than this one was handed to.

    A digit typed outside an entry begins one: '12' must not become a 1 there and a 2 elsewhere.
    """
    if not isinstance(event, events.Key) or event.is_forwarded:
        return False
    digit = event.character is not None and event.character.isdigit()
    return event.key in MOVING or (digit and not isinstance(focused, Input))


async def dealt_with(widget: Widget | None) -> None:
    """Return when `widget` and all above it have dealt with the messages they have now."""
    if widget is None:
        return
    with contextlib.suppress(TimeoutError):
        async with asyncio.timeout(PATIENCE_S):
            # Twice the widget itself: the first message makes it send another one to itself.
            for node in (widget, *widget.ancestors_with_self):
                if isinstance(node, Widget) and node.is_running:
                    await _emptied(node)


@runtime_checkable
class Opens(Protocol):
    """A screen on which a key may open something that takes the next key."""

    async def opened(self) -> None:
        """Return when nothing is being opened."""
        ...


async def opened(screen: object) -> None:
    """Return when `screen` has opened what a key before asked for: a key meanwhile would be lost."""
    if isinstance(screen, Opens):
        with contextlib.suppress(TimeoutError):
            async with asyncio.timeout(OPENING_S):
                await screen.opened()


async def _emptied(node: MessagePump) -> None:
    done = asyncio.Event()
    if node.call_later(done.set):
        await done.wait()
