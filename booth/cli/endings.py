"""How a run ends: an exit code for each way, and a sentence where it is not the usual one.

0 done, 1 could not be done, 2 bad input, 3 no honest figure (``booth figure``), 70 a fault of the
program itself, 128 and its number for a signal.
"""

from __future__ import annotations

import codecs
import contextlib
import io
import os
import sys
from collections.abc import Callable
from pathlib import Path

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


class Output:
    """The standard streams of this run, made fit to be written to."""

    def __init__(self) -> None:
        self._closed = sys.stdout is None
        self._missing = ""
        self._fill()
        if isinstance(sys.stdout, io.TextIOWrapper):
            codecs.register_error("shown as its code", self._escaped)
            sys.stdout.reconfigure(errors="shown as its code")

    def _fill(self) -> None:
        """Put something in the place of streams that are closed, lest a file takes their number."""
        for name, mode in (("stdin", "r"), ("stdout", "w"), ("stderr", "w")):
            if getattr(sys, name) is None:
                setattr(sys, name, open(os.devnull, mode))  # noqa: SIM115 - for all of the run

    def _escaped(self, fault: UnicodeError) -> tuple[str, int]:
        """Show what the encoding of the output lacks as its code."""
        assert isinstance(fault, UnicodeEncodeError)
        self._missing = self._missing or fault.object[fault.start]
        return str(codecs.backslashreplace_errors(fault)[0]), fault.end

    def finish(self) -> None:
        """Bring everything out and say what was not written as it is. Raises OSError."""
        if self._closed:
            raise OSError("it is closed")
        sys.stdout.flush()
        if self._missing:
            print(
                f"booth: the encoding of this output, {sys.stdout.encoding}, has not all the "
                f"characters; {self._missing!a} is one that is written as its code. "
                "With PYTHONIOENCODING=utf-8 in the environment all are written.",
                file=sys.stderr,
            )

    def abandon(self) -> None:
        """Let what could not be written go: otherwise it is tried, and told, once more at the very end."""
        with contextlib.suppress(OSError, ValueError):
            os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
