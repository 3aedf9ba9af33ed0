"""What the system tells the program: leave, and you are in front again."""

from __future__ import annotations

import asyncio
import contextlib
import signal
from typing import Any

from textual.app import App


def mind_signals(app: App[Any]) -> None:
    """A closed terminal or a polite kill leaves the terminal as it was found."""
    loop = asyncio.get_running_loop()
    for name in ("SIGTERM", "SIGHUP", "SIGINT"):
        number = getattr(signal, name, None)
        if number is None:
            continue
        with contextlib.suppress(NotImplementedError, RuntimeError, ValueError):
            loop.add_signal_handler(number, _leave, app, number)


def _leave(app: App[Any], number: int) -> None:
    app.exit(return_code=128 + number)


def mind_resuming(app: App[Any]) -> None:
    """After Ctrl+Z and fg the terminal has forgotten everything."""

    def resumed(_: Any) -> None:
        app.screen.refresh(layout=True, repaint=True)
        for widget in app.screen.walk_children():
            widget.refresh()

    app.app_resume_signal.subscribe(app, resumed)
