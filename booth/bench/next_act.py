"""The law of input, in one place: what a key does, and the word for it.

Space starts and stops the step's clock whatever row is marked; in a row for words it is a space.
Digits go into the marked row. Enter keeps the row and goes to the next, on the last row it keeps the
measurement, then it goes on; nothing that holds something is skipped. Backspace erases; right
after erasing it does nothing; on an untouched form it voids the last entry of this step and part,
names it, and brings it back when pressed again.
"""

from __future__ import annotations

import msgspec

from booth.bench import commands
from booth.bench.act import (
    NO_OFFER,
    NOTHING,
    Act,
    Command,
    Context,
    Effect,
    GoOn,
    Keep,
    Offer,
    OpenStep,
    PickStep,
    Say,
    SetForm,
    refused,
)
from booth.bench.commands import on_bench
from booth.bench.instrument import Instrument
from booth.bench.menus import more_menu, skip_menu
from booth.forms.edit import edit, types
from booth.forms.form import Form, Rows
from booth.forms.key import Key
from booth.job.steps import steps_of
from booth.log.events import Event, Restored, StepDone, Voided
from booth.trade.result import BadInput
from booth.units.sentences import in_units
from booth.words.event_words import words

SPACE = ("space", "pagedown")
THUMB = Key("space", " ")
#: What Space is for, where a space could be typed too.
DEED = Key("pagedown")
#: Characters of an entry's words where the keys stand: a caution has a page of them.
MOST_TOLD = 60


class Situation(msgspec.Struct, frozen=True):
    """What the painter sees: the step with its form; the step picked in the list, if the list has
    the keys; what was voided a moment ago."""

    instrument: Instrument
    context: Context
    rows: Rows
    picked: str = ""
    offer: Offer = NO_OFFER


def next_act(situation: Situation, key: Key) -> Act:
    """Give what a key does now; an act without effects where it does nothing."""
    if situation.picked:
        return _picking(situation, key)
    found = _act(situation, key)
    if found is not None and found.do:
        return found
    command = on_bench(key.name)
    if command is not None and not (key.character and types(situation.rows, key.character)):
        return Act(command.word, (Command(command.id),))
    return found or NOTHING


def stands_for_space(situation: Situation, key: Key, act: Act) -> bool:
    """Whether a key is Space, or an Enter that does what Space does: one window for both."""
    if key.name in SPACE:
        return not act.text
    return key.name == "enter" and bool(act.do) and act.do == next_act(situation, DEED).do


def _act(situation: Situation, key: Key) -> Act | None:
    instrument, context, rows = situation.instrument, situation.context, situation.rows
    if key.name in SPACE:
        return _space(situation, rows, key)
    if key.name == "enter":
        return instrument.enter(context, rows) or _enter(situation, rows)
    if key.name == "backspace":
        return _backspace(situation, rows)
    own = instrument.own(context, rows, key)
    if own is not None:
        return own
    edited = edit(rows, key)
    if edited is not None:
        return Act(edited.word, (SetForm(edited.form),))
    if key.name in ("up", "shift+tab"):
        return Act("steps", (PickStep(context.step.key),))
    if key.name == "right":
        return Act("more", (more_menu(instrument, context, rows),))
    return None


# -- Space -----------------------------------------------------------------------------------


def _space(situation: Situation, rows: Rows, key: Key) -> Act | None:
    marked = rows.marked
    if key.name == "space" and marked is not None and marked.field.is_words:
        return _typed_space(rows)
    instrument = situation.instrument
    own = instrument.space(situation.context, rows)
    if key.name == "space" and types(rows, " "):
        if own is None:
            return _typed_space(rows)
        if instrument.UNIT_FIRST and marked is not None and marked.text[-1:].isdigit():
            return _before_unit(rows, own)
    return own


def _before_unit(rows: Rows, own: Act) -> Act:
    """The space between a bare number and its unit: 'own', which can wait, is the next one."""
    typed = edit(rows, THUMB)
    if typed is None or not own.do:
        return own
    again = f"Now its unit; or Space again: {own.word}." if own.word else ""
    return Act("its unit", (SetForm(typed.form), Say(again)), text=True)


def _typed_space(rows: Rows) -> Act:
    """A space in a text; before its first character it is nothing."""
    typed, begun = edit(rows, THUMB), rows.target is not None and rows.target.text
    return Act("", (SetForm(typed.form),) if typed is not None and begun else (), text=True)


# -- Enter -----------------------------------------------------------------------------------


def _enter(situation: Situation, rows: Rows) -> Act:
    instrument, context = situation.instrument, situation.context
    if not any(row.holds for row in rows.sight):
        why = instrument.busy(context)
        if why:
            return refused(why)
    if not rows.holds:
        return finish(instrument, context)
    return onward(rows) or commit(instrument, context, rows)


def onward(rows: Rows) -> Act | None:
    """On to the next row, or back to the one that still has to be filled; None on the last."""
    marked = rows.marked
    if marked is None:
        return None
    if marked.fault:
        return refused(marked.fault, "what is wrong here")
    following, lacks = rows.after(marked), rows.waiting
    to = following or lacks
    if to is None:
        return None
    missing = "choose with ← →." if to.field.choices else "still to be filled."
    said = () if following else (Say(to.fault or f"{to.field.label}: {missing}", fault=True),)
    return Act(f"on: {to.field.label}", (SetForm(rows.form.marking(to.key)), *said))


def commit(
    instrument: Instrument,
    context: Context,
    rows: Rows,
    word: str = "keep",
    after: Form | None = None,
) -> Act:
    """Keep what the rows hold, and empty them for the next; go on where nothing is kept of them.
    after: the form from then on, where that is not an empty one."""
    try:
        event = instrument.event(context, rows.values)
    except BadInput as fault:
        event = fault.sentence
    if event is None:
        return finish(instrument, context)
    if isinstance(event, str):
        return refused(in_units(event, context.system), word)
    return Act(word, (Keep(event), SetForm(after or rows.emptied())))


def finish(instrument: Instrument, context: Context, *kept: Event) -> Act:
    """The step is done, or passed over with a reason: on to the next. kept: what is kept with it."""
    if context.step.must and not instrument.kept_any(context):
        return Act("skip, say why", (skip_menu(context),))
    return Act("next step", (*(Keep(event) for event in kept), *step_done(context)))


def step_done(context: Context) -> tuple[Effect, ...]:
    """The open step is finished, if it was not before; on to the next."""
    if context.step.key in context.job.done:
        return (GoOn(),)
    return (Keep(StepDone(n=0, at=context.now, step=context.step.key)), GoOn())


# -- Backspace -------------------------------------------------------------------------------


def _backspace(situation: Situation, rows: Rows) -> Act:
    context, offer = situation.context, situation.offer
    edited = edit(rows, Key("backspace"))
    if edited is not None:
        return Act(edited.word, (SetForm(edited.form),))
    if rows.form.erased or rows.holds:
        return NOTHING
    if offer.targets:
        back = tuple(Keep(Restored(n=0, at=context.now, target=n)) for n in offer.targets)
        return Act(f"bring back: {offer.words}", (*back, NO_OFFER, Say(f"Back: {offer.words}.")))
    last = situation.instrument.last_kept(context, rows.values)
    if not last or situation.instrument.frames(context):
        return NOTHING
    told = words(last[0], context.system, context.job)
    told = told if len(told) <= MOST_TOLD else f"{told[: MOST_TOLD - 1].rstrip()}…"
    void = tuple(Keep(Voided(n=0, at=context.now, target=event.n)) for event in reversed(last))
    offered = Offer(tuple(event.n for event in last), told)
    said = Say(f"Voided: {told}. Backspace brings it back.")
    return Act(f"void: {told}", (*void, offered, said))


# -- the list of steps -----------------------------------------------------------------------


def _picking(situation: Situation, key: Key) -> Act:
    """While a step is being picked, arrows walk the list and Enter opens."""
    steps = [step.key for step in steps_of(situation.context.job)]
    at = steps.index(situation.picked) if situation.picked in steps else 0
    if key.name in ("up", "down"):
        to = steps[(at + (1 if key.name == "down" else -1)) % len(steps)]
        return Act("choose", (PickStep(to),))
    if key.name in ("enter", *SPACE):
        if steps[at] == situation.context.step.key:
            return Act("back", (PickStep(),))  # it is open: what stands in its rows stays
        return Act("open this step", (PickStep(), OpenStep(steps[at])))
    if key.name in ("escape", "left", "backspace"):
        return Act("back", (PickStep(),))
    if key.name == "right":
        more = more_menu(situation.instrument, situation.context, situation.rows)
        return Act("more", (PickStep(), more))
    command = on_bench(key.name)
    return Act(command.word, (Command(command.id),)) if command is not None else NOTHING


# -- the key line ------------------------------------------------------------------------------

#: The keys whose words stand in the key line; of a pair of arrows the first that does something.
SHOWN: tuple[tuple[str, tuple[Key, ...]], ...] = (
    ("Space", (THUMB,)),
    ("Enter", (Key("enter"),)),
    ("Bksp", (Key("backspace"),)),
    ("↑↓", (Key("down"), Key("up"))),
    ("←→", (Key("right"), Key("left"))),
)
#: Of an arrow that leads away only the one that does.
ALONE = {"steps": "↑", "more": "→", "unit": "→", "what is assumed": "↓"}


def key_words(situation: Situation) -> tuple[tuple[str, str], ...]:
    """The keys that matter now and what they do: asked of ``next_act``, nothing else."""
    found = []
    for name, keys in SHOWN:
        word = next((act.word for key in keys if (act := next_act(situation, key)).word), "")
        if word:
            found.append((ALONE.get(word, name), word))
    if label := _digits_go_to(situation):
        found.insert(2, ("0-9", label))
    return (*found, *_command_words(situation))


def _digits_go_to(situation: Situation) -> str:
    """The row that a digit goes into; "" where that is the marked one, and begun or alone."""
    rows = situation.rows
    target = rows.target
    if target is None or not next_act(situation, Key("1", "1")).do:
        return ""
    plain = target is rows.marked and (target.text or len(rows.sight) < 2)
    return "" if plain else target.field.label


def _command_words(situation: Situation) -> list[tuple[str, str]]:
    """The commands, each by the first of its keys that is no text now."""
    found = []
    for command in commands.COMMANDS:
        for name in command.keys if command.shown else ():
            letter = name if len(name) == 1 else {"question_mark": "?"}.get(name)
            act = next_act(situation, Key(name, letter))
            if act.do == (Command(command.id),):
                found.append((commands.key_name(name), act.word))
                break
    return found
