"""Starts the application, and sees to it that whatever happens ends in sentences and a clean terminal."""

from __future__ import annotations

import asyncio
import gc
import signal

from booth.cli.endings import Refused, own_fault
from booth.cli.surroundings import places


def run_screen(profile: str | None = None) -> int:
    """Run the full-screen program; give its exit code."""
    where = places()
    from booth.app.app import BoothApp
    from booth.clock import BadRate, MachineClock

    gc.enable()
    gc.freeze()
    try:
        clock = MachineClock()
    except BadRate as fault:
        raise Refused(str(fault)) from None
    told = Told()
    try:
        app = BoothApp(clock, where, profile=profile)
        try:
            app.run()
        except Exception as fault:  # while it started or left: there is no screen to say it on
            app.fatal = app.fatal or fault
    except (KeyboardInterrupt, asyncio.CancelledError):
        return told.code
    if app.fatal is not None:
        return own_fault(app.fatal)
    # Without a code nobody asked it to leave: it was told before it minded signals itself.
    return told.code if app.return_code is None else app.return_code


class Told:
    """Minds the signals to leave until the application does: between them the terminal is half set up.

    All are made that of Ctrl+C, at which the event loop leaves in good order.
    """

    def __init__(self) -> None:
        self._number = signal.SIGINT
        if signal.getsignal(signal.SIGINT) is signal.SIG_DFL:
            signal.signal(signal.SIGINT, signal.default_int_handler)
        for name in ("SIGTERM", "SIGHUP"):
            number = getattr(signal, name, None)
            if number is not None:
                signal.signal(number, self._leave)

    def _leave(self, number: int, _: object) -> None:
        self._number = signal.Signals(number)
        signal.raise_signal(signal.SIGINT)

    @property
    def code(self) -> int:
        return 128 + self._number
