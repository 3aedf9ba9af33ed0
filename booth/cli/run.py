"""Starts the application, and sees to it that whatever happens ends in sentences and a clean terminal."""

from __future__ import annotations

import gc
import sys
import traceback
from pathlib import Path


def run(profile: str | None = None) -> int:
    """Run the full-screen program; give its exit code."""
    gc.disable()  # importing is a tenth faster without
    from booth.app.app import BoothApp
    from booth.clock import BadRate, MachineClock
    from booth.files.places import Places

    gc.enable()
    gc.freeze()
    places = Places.standard()
    try:
        clock = MachineClock()
    except BadRate as fault:
        print(str(fault), file=sys.stderr)
        return 2
    app = BoothApp(clock, places, profile=profile)
    try:
        app.run()
    except Exception as fault:  # while it started or left: there is no screen to say it on
        app.fatal = app.fatal or fault
    if app.fatal is not None:
        path = _write_report(places.preferences_file.parent, app.fatal)
        print(
            "booth met a fault of its own and had to stop.\n"
            "Everything that the screen said was kept is in the job's log; start again to go on.\n"
            f"What happened is written in {path}.",
            file=sys.stderr,
        )
        return 70
    return app.return_code or 0


def _write_report(folder: Path, fault: BaseException) -> Path | str:
    fault = getattr(fault, "error", fault)  # a worker's fault comes wrapped, without its traceback
    path = folder / "fault-report.txt"
    try:
        folder.mkdir(parents=True, exist_ok=True)
        with path.open("a", encoding="utf-8") as file:
            file.write("".join(traceback.format_exception(fault)) + "\n")
    except OSError:
        return "no file: the folder cannot be written"
    return path
