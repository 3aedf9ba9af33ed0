"""What a command writes to: streams that are closed, narrow or full end in a sentence, never a traceback."""

from __future__ import annotations

import codecs
import contextlib
import io
import os
import sys


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
