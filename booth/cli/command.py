"""Where every run begins: whatever happens ends in a sentence and an exit code.

Nothing is imported at the top, so that Ctrl+C while it starts is met here as well.
"""

from __future__ import annotations

import sys

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Sequence


def main(arguments: Sequence[str] | None = None) -> int:
    """Run a command; give the exit code (see ``endings``)."""
    try:
        import gc
        import signal

        if signal.getsignal(signal.SIGINT) is signal.default_int_handler:
            # Ends it at once: an exception can come in the midst of an import, as another one.
            signal.signal(signal.SIGINT, signal.SIG_DFL)
        gc.disable()  # importing is a tenth faster without, and no command lives long
        from booth.cli.dispatch import run
        from booth.cli.endings import ended

        given = list(sys.argv[1:] if arguments is None else arguments)
        return ended(lambda: run(given))
    except KeyboardInterrupt:
        return 130


if __name__ == "__main__":
    raise SystemExit(main())
