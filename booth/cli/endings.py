"""How a run ends: an exit code for each way, and a sentence where it is not the usual one.

0 done, 1 could not be done, 2 bad input, 3 no honest figure (``booth figure``), 70 a fault of the
program itself, 128 and its number for a signal.
"""

from __future__ import annotations

import contextlib
import os
import sys
from collections.abc import Callable
from pathlib import Path

from booth.cli.output import Output
from booth.files.safe_text import shortened

NOT_DONE, BAD_INPUT, OWN_FAULT = 1, 2, 70


class Refused(Exception):
    """What was asked for cannot be done as things are; the message says why and what to do."""

    code = BAD_INPUT


def ended(command: Callable[[], int]) -> int:
    """Run a command to its end; give its exit code, or that of what came in its way."""
    output = Output()
    try:
        code = _code_of(command)
        output.finish()
        return code
    except Refused as why:
        _say(f"booth: {why}")
        return why.code
    except BrokenPipeError:  # a reader that has seen enough is no fault
        output.abandon()
        return NOT_DONE
    except OSError as fault:
        output.abandon()
        _say(f"booth: {_told(fault)}.")
        return NOT_DONE
    except Exception as fault:
        output.abandon()
        return own_fault(fault)


def _code_of(command: Callable[[], int]) -> int:
    try:
        return command()
    except SystemExit as leaving:  # the reader of the command line, after it has said why
        return int(leaving.code or 0)


def _say(sentence: str) -> None:
    with contextlib.suppress(OSError):  # then there is nowhere left to say it
        print(sentence, file=sys.stderr)


def _told(fault: OSError) -> str:
    what = "the output cannot be written"
    if fault.filename is not None:
        what = shortened(os.fsdecode(fault.filename))
    return f"{what}: {fault.strerror or fault}"


def own_fault(fault: BaseException) -> int:
    """Write a report of a fault of the program itself and say so in three sentences."""
    _say(
        "booth met a fault of its own and had to stop.\n"
        "Everything that the screen said was kept is in the job's log; start again to go on.\n"
        f"What happened is written in {_report(fault)}."
    )
    return OWN_FAULT


def _report(fault: BaseException) -> Path | str:
    import traceback

    fault = getattr(fault, "error", fault)  # a worker's fault comes wrapped, without its traceback
    told = "".join(traceback.format_exception(fault)) + "\n"
    try:
        from booth.files.places import Places

        path = Places.standard().preferences_file.with_name("fault-report.txt")
        path.parent.mkdir(parents=True, exist_ok=True)
        with path.open("a", encoding="utf-8", errors="backslashreplace") as file:
            file.write(told)
    except (OSError, RuntimeError):
        return "no file: the folder cannot be written"
    return path
