"""The menus of the bench: why a step is passed over, usual notes, and whatever else can be asked for.

Gloves choose from a list; one's own words stand last.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import cache

from booth.bench import clock_doubt, commands
from booth.bench.act import Act, Ask, Choice, Command, Context, GoOn, Keep, Menu, Say
from booth.bench.instrument import Instrument
from booth.forms.form import Rows
from booth.log.events import NoteMade, StepSkipped

#: Reasons that do for most steps; the log has them as they stand here.
REASONS = ("not needed this time", "done before this job", "nothing here to measure with", "later")
#: What is noted most often (common practice, no source).
NOTES = (
    "dust in the film",
    "run, left to dry",
    "dry spray at an edge",
    "filter or strainer changed",
    "gun cleaned in between",
    "weather is changing",
)
OWN_WORDS = "own words…"


def skip_menu(context: Context) -> Menu:
    """Why the open step is passed over."""

    def skipped(now: Context, why: str) -> Act:
        event = StepSkipped(n=0, at=now.now, step=now.step.key, why=why)
        return Act("skip", (Keep(event), GoOn()))

    return _words_menu(f"Skip '{context.step.name}': why?", REASONS, skipped)


def note_menu(text: str = "") -> Menu:
    """What is noted; `text`: a note that could not be kept, to be kept again."""

    def noted(now: Context, text: str) -> Act:
        return Act("note", (Keep(NoteMade(n=0, at=now.now, text=text)), Say("Noted.")))

    return _words_menu("Note", (text, *NOTES) if text else NOTES, noted)


def _words_menu(title: str, usual: tuple[str, ...], kept: Callable[[Context, str], Act]) -> Menu:
    def of(words: str) -> Choice:
        return Choice(words, lambda now: kept(now, words))

    own = Choice(OWN_WORDS, lambda _: Act("", (Ask(title, kept, needed=True),)))
    return Menu(title, (*map(of, usual), own))


def more_menu(instrument: Instrument, context: Context, rows: Rows) -> Menu:
    """Everything else that can be asked for here, without a letter to be typed."""
    own = (*clock_doubt.answers(context), *instrument.more(context, rows))
    return Menu("What next?", (*own, *_asked_anywhere()))


@cache
def _asked_anywhere() -> tuple[Choice, ...]:
    def of(command: commands.Command) -> Choice:
        return Choice(command.says, lambda _: Act("", (Command(command.id),)), command.shown_keys)

    return tuple(of(command) for command in commands.COMMANDS if command.id not in commands.PAST)
