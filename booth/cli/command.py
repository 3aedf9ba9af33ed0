"""The commands. Those that need no screen do not load one."""

from __future__ import annotations

import os
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import argparse

USAGE = 2


def parser() -> argparse.ArgumentParser:
    """Give the parser of the command line."""
    import argparse

    whole = argparse.ArgumentParser(
        prog="booth",
        description="A companion for people who spray coatings: times, reckons, keeps the log.",
        epilog="Without a command the program takes the whole terminal.",
    )
    whole.add_argument("--version", action="store_true", help="say which version this is")
    whole.add_argument("--profile", metavar="NAME", help="go straight to this coating profile")
    commands = whole.add_subparsers(dest="command", metavar="COMMAND")

    check = commands.add_parser("check", help="read coating profiles strictly, say what is wrong")
    check.add_argument("files", nargs="*", metavar="FILE")
    check.add_argument("--keys", action="store_true", help="list every key a profile may have")

    log = commands.add_parser("log", help="list jobs, or show one as text")
    log.add_argument("job", nargs="?", help="a job of the list, or the path of a log")
    log.add_argument("--metric", action="store_true", help="metric units")
    log.add_argument("--us", action="store_true", help="US units")

    figure = commands.add_parser("figure", help="answer one computation of the trade in one line")
    figure.add_argument("rest", nargs=argparse.REMAINDER)
    return whole


def main(arguments: Sequence[str] | None = None) -> int:
    """Run a command; give the exit code."""
    given = list(sys.argv[1:] if arguments is None else arguments)
    try:
        if given[:1] == ["figure"]:
            from booth.figure import main as figure

            return figure(given[1:])
        if not given:
            return _screen(None)  # the usual start needs no parser
        options = parser().parse_args(given)
        if options.version:
            print(_version())
            return 0
        if options.command == "check":
            return _check(options)
        if options.command == "log":
            return _log(options)
        return _screen(options.profile)
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 1
    except KeyboardInterrupt:
        return 130


def _version() -> str:
    from importlib.metadata import version

    return f"booth {version('booth')}"


def _check(options: argparse.Namespace) -> int:
    from booth.shop.check import check, print_keys

    if options.keys:
        return print_keys(sys.stdout)
    if not options.files:
        print("booth check: name one or more profile files.", file=sys.stderr)
        return USAGE
    return check([Path(name) for name in options.files], sys.stdout)


def _log(options: argparse.Namespace) -> int:
    from booth.cli.log_command import list_jobs, show_job
    from booth.files.places import Places
    from booth.units import System

    system = System.METRIC if options.metric else System.US if options.us else None
    places = Places.standard()
    if options.job is None:
        return list_jobs(places.jobs_dir, sys.stdout)
    return show_job(options.job, places.jobs_dir, system, sys.stdout, sys.stderr)


def _screen(profile: str | None) -> int:
    if not (sys.stdin.isatty() and sys.stdout.isatty() and sys.stderr.isatty()):
        print(
            "booth needs a terminal to draw in; this is a pipe or a file. "
            "'booth log' and 'booth figure' work without one.",
            file=sys.stderr,
        )
        return USAGE
    from booth.cli.run import run

    return run(profile)


if __name__ == "__main__":
    raise SystemExit(main())
