"""The commands that are the same on every screen; what can be asked for by name."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from typing import TYPE_CHECKING, Any

from booth.bench.commands import COMMANDS, key_lines
from booth.screens.base import Deed, OwnScreen, carry_out
from booth.screens.dialog import Sheet
from booth.widgets import themes

if TYPE_CHECKING:
    from booth.app.app import BoothApp
    from booth.screens.palette import Entry

STEPS, DEEDS = "Steps of this job", "What can be done here"


async def do_command(app: BoothApp, id: str) -> None:
    """Do what a command of the table asks for."""
    match id:
        case "units":
            change_units(app)
        case "theme":
            names = [theme.name for theme in themes.THEMES]
            at = names.index(app.theme) if app.theme in names else 0
            app.theme = names[(at + 1) % len(names)]
            app.remember("theme", app.theme)
        case "alarm":
            app.alarms.rehearse()
        case "palette":
            await show_palette(app)
        case "learnt":
            from booth.screens.learnt import LearntScreen

            await app.show(LearntScreen())
        case "quit":
            app.exit()
        case "help":
            await app.show(Sheet("Keys", ("\n".join(key_lines()),)))


def change_units(app: BoothApp) -> None:
    """US or metric, on every screen at once; what was typed keeps its meaning."""
    before, app.system = app.system, app.system.other
    for screen in app.own_screens:
        screen.units_changed(before)
    app.remember("units", app.system.value)
    app.draw_all()


# -- by name -----------------------------------------------------------------------------------


async def show_palette(app: BoothApp) -> None:
    """Everything that can be asked for now, to choose from."""
    from booth.screens.palette import Palette

    async def chosen(entry: Entry | None) -> None:
        if entry is not None:
            await carry_out(Deed("", entry.do))

    await app.show(Palette(tuple(entries(app.own_screens[-1]))), chosen)


def entries(screen: OwnScreen[Any]) -> Iterator[Entry]:
    """What can be asked for on a screen: the steps of its job, its commands, words of the trade."""
    from booth.screens.bench import BenchScreen
    from booth.screens.palette import WORDS, Entry
    from booth.words.glossary import TERMS

    if isinstance(screen, BenchScreen):
        yield from _steps(screen)
    for command in COMMANDS:
        if command.id in screen.WORK and command.id != "palette":
            behind = f"{command.shown_keys:<12} {command.says}"
            yield Entry(DEEDS, command.word, behind, partial(screen.command, command.id))
    for term in TERMS:
        told = tuple(filter(None, (term.says, term.elsewhere)))
        shown = partial(screen.host.show, Sheet(term.word, told))
        yield Entry(WORDS, term.word, term.says, shown, " ".join((*term.forms, *term.never)))


def _steps(screen: Any) -> Iterator[Entry]:
    """Each step, found by whatever stands behind its '?' too."""
    from booth.job.steps import mark, steps_of
    from booth.screens.bench import STATES
    from booth.screens.palette import Entry

    job, now = screen.desk.job, screen.host.clock.now()
    for number, step in enumerate(steps_of(job), 1):
        about = screen.desk.instrument(step.kind).ABOUT
        also = " ".join((*step.how, *(text for told in about.sections.values() for text in told)))
        shape, _ = STATES[mark(job, step, now)].value
        opens = partial(screen.open_step, step.key)
        yield Entry(STEPS, f"{number:>2} {step.name}", "", opens, also, shape)
