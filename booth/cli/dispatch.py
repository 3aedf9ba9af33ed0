"""Which command the words of the command line mean. Those that need no screen do not load one."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from types import MappingProxyType
from typing import TYPE_CHECKING

import booth
from booth.cli.endings import BAD_INPUT
from booth.files.slug import rehearsal_key, system_key

if TYPE_CHECKING:
    import argparse

#: Set by a shell that wants words completed.
ASKED_BY_SHELL = "_ARGCOMPLETE"
SHELLS = ("bash", "zsh", "fish")
ABOUT = """\
A companion for people who spray coatings.

  booth                         the whole screen: jobs, waits, every step of the job
  booth --profile NAME          straight to a job with this coating
  booth --rehearse NAME         that job with water and cardboard, before the can is opened
  booth figure delivery 6oz 30s one answer, without the screen
"""
ENDS = """\
'booth COMMAND --help' says more of each.
Exit code: 0 done, 1 could not be done, 2 bad input, 3 no honest figure, 70 a fault of booth's own.
"""


def parser(
    completers: Mapping[str, Callable[..., object]] = MappingProxyType({}),
) -> argparse.ArgumentParser:
    """Give the parser of the command line. completers: what completes an argument, by its name."""
    import argparse

    def completed(action: argparse.Action) -> None:
        if action.dest in completers:
            setattr(action, "completer", completers[action.dest])  # noqa: B010 - argcomplete's own way

    whole = argparse.ArgumentParser(
        prog="booth",
        formatter_class=argparse.RawDescriptionHelpFormatter,
        description=ABOUT,
        epilog=ENDS,
    )
    whole.add_argument("--version", action="store_true", help="say which version this is")
    completed(whole.add_argument("--profile", metavar="NAME", help="go straight to this profile"))
    completed(whole.add_argument("--system", metavar="NAME", help="go straight to this system"))
    completed(
        whole.add_argument(
            "--rehearse",
            nargs="?",
            const="",
            metavar="NAME",
            help="rehearse a profile or a system with water; without a name choose one",
        )
    )
    commands = whole.add_subparsers(dest="command", metavar="COMMAND", title="commands")

    figure = commands.add_parser("figure", help="answer one computation of the trade in one line")
    completed(figure.add_argument("rest", nargs=argparse.REMAINDER))

    card = commands.add_parser("sheet", help="the card of a job: to read, to print, as a table")
    completed(
        card.add_argument("job", nargs="?", help="as for 'log'; the last one where none is named")
    )
    forms = ("text", "markdown", "csv", "html")
    card.add_argument("--as", dest="form", choices=forms, help="else as the file's ending says")
    completed(
        card.add_argument(
            "--beside", nargs="+", metavar="JOB", help="other jobs, laid side by side with it"
        )
    )
    card.add_argument("-o", dest="output", metavar="FILE", help="write it there")
    card.add_argument("--units", choices=("us", "metric"), help="else as the job was worked")

    plan = commands.add_parser("plan", help="plan a whole day: every product, every wait")
    completed(plan.add_argument("name", metavar="PROFILE_OR_SYSTEM", help="the name of its file"))
    plan.add_argument("--air", help="air temperature, as 14C")
    plan.add_argument("--humidity", help="relative humidity, as 70%%")
    plan.add_argument("--part-at", help="temperature of the part itself, as 14C")
    plan.add_argument("--air-speed", help="of the air over the film, as 0.5m/s")
    plan.add_argument("--parts", default="", help='names, as "left door, hood"')
    plan.add_argument(
        "--coat", help="what one coat on one part takes, of a rack on one piece, as 4min"
    )
    plan.add_argument("--start", default="00:00", help="time of day at which it begins, as 09:00")
    plan.add_argument("--json", action="store_true", help="as JSON")

    log = commands.add_parser("log", help="list jobs, or show one as text")
    completed(log.add_argument("job", nargs="?", help="a job of the list, or the path of a log"))
    log.add_argument("--metric", action="store_true", help="metric units")
    log.add_argument("--us", action="store_true", help="US units")

    learnt = commands.add_parser("learnt", help="what this shop has learnt from its own jobs")
    learnt.add_argument("subject", nargs="?", help="waits, delivery, water, …; else all of them")
    completed(learnt.add_argument("--profile", metavar="NAME", help="of this coating alone"))
    learnt.add_argument("--as", dest="form", choices=("text", "json"), help="else as text")
    learnt.add_argument("--units", choices=("us", "metric"), help="else metric")

    new = commands.add_parser("new", help="begin a coating profile")
    new.add_argument("name", metavar="NAME", help="what you call it")
    completed(
        new.add_argument(
            "--from", dest="like", metavar="PROFILE", help="copy this one and its notes"
        )
    )

    check = commands.add_parser(
        "check", help="read profiles, systems and the shop file strictly, say what is wrong"
    )
    check.add_argument("files", nargs="*", metavar="FILE")
    check.add_argument("--keys", action="store_true", help="list every key such a file may have")

    words = commands.add_parser("words", help="say what a word of the trade means, or all of them")
    words.add_argument("term", nargs="*", metavar="WORD")

    shell = commands.add_parser("completion", help="print what lets a shell complete words")
    shell.add_argument("shell", choices=SHELLS)
    return whole


def run(given: Sequence[str]) -> int:
    """Run what was asked for; give the exit code."""
    if ASKED_BY_SHELL in os.environ:
        from booth.cli.completion import complete

        complete()
    if given[:1] == ["figure"]:
        from booth.figure import main as figure

        return figure(given[1:])
    if not given:
        return _screen(None)  # the usual start needs no parser
    options = parser().parse_args(given)
    if options.version:
        print(f"booth {booth.__version__}")
        return 0
    if options.command == "check":
        return _check(options)
    if options.command == "log":
        return _log(options)
    if options.command == "sheet":
        from booth.cli.sheet_command import sheet
        from booth.cli.surroundings import places

        here = places()
        return sheet(options, here.jobs_dir, sys.stdout, sys.stderr, here.summaries_file)
    if options.command == "learnt":
        from booth.cli.learnt_command import learnt
        from booth.cli.surroundings import places

        return learnt(options, places().jobs_dir, sys.stdout, sys.stderr)
    if options.command == "new":
        from booth.cli.new_command import new

        return new(options)
    if options.command == "plan":
        from booth.cli.plan_command import plan

        return plan(options)
    if options.command == "words":
        from booth.cli.words_command import words

        return words(" ".join(options.term), sys.stdout, sys.stderr)
    if options.command == "completion":
        from booth.cli.completion import script

        print(script(options.shell), end="")
        return 0
    wanted = system_key(options.system) if options.system else options.profile
    if options.rehearse is not None:
        wanted = rehearsal_key(options.rehearse or wanted or "")
    return _screen(wanted)


def _check(options: argparse.Namespace) -> int:
    from booth.cli.surroundings import places
    from booth.shop.check import check, print_keys

    if options.keys:
        return print_keys(sys.stdout)
    if not options.files:
        print("booth check: name one or more files.", file=sys.stderr)
        return BAD_INPUT
    files = [Path(name) for name in options.files]
    return check(files, sys.stdout, lambda: places().profiles_dirs)


def _log(options: argparse.Namespace) -> int:
    from booth.cli.log_command import list_jobs, show_job
    from booth.cli.surroundings import places
    from booth.units import System

    system = System.METRIC if options.metric else System.US if options.us else None
    here = places()
    folder, kept = here.jobs_dir, here.summaries_file
    if options.job is None:
        return list_jobs(folder, sys.stdout, kept)
    return show_job(options.job, folder, system, sys.stdout, sys.stderr, kept)


def _screen(profile: str | None) -> int:
    from booth.cli.surroundings import mind_terminal

    mind_terminal()
    from booth.cli.screen import run_screen

    return run_screen(profile)
