"""One press of a key, held against what the key line said of it before.

What is judged is what happened: the log, the step, the form, what was asked and said. The word alone
says what that may be; nothing here knows an instrument.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from booth.bench.act import Act, Ask, CloseJob, Command, GoOn, Keep, Menu, Offer
from booth.bench.next_act import next_act
from booth.forms.form import Rows
from booth.log import events as ev
from booth.log.fold import Job
from booth.units import Quantity
from booth.words.event_words import words
from tests.instruments.at_bench import AtBench, key_of

#: Presses lie so far apart that none is taken for a bounce [s].
APART_S = 1.0
NAMED = {"space": "Space", "enter": "Enter", "backspace": "Bksp"}
ARROWS = ("up", "down", "left", "right")
LEAVES = (ev.StepDone, ev.StepSkipped, ev.JobClosed)


@dataclass(frozen=True)
class Seen:
    """What there was before a key, or after it."""

    entries: int
    step: str
    rows: Rows
    picked: str
    said: tuple[str, bool]
    offer: Offer
    job: Job = field(compare=False)

    @classmethod
    def of(cls, desk: AtBench, rows: Rows | None = None) -> Seen:
        at, entries = desk.bench, len(desk.events)
        rows = rows or desk.rows
        return cls(entries, at.step.key, rows, at.picked, at.said, at.offer, desk.job)

    @property
    def texts(self) -> dict[str, str]:
        return {row.key: row.text for row in self.rows.every if row.text}

    @property
    def chosen(self) -> dict[str, object]:
        return {row.key: row.given for row in self.rows.every if row.field.choices}

    @property
    def marked(self) -> str:
        return self.rows.marked.key if self.rows.marked is not None else ""


@dataclass(frozen=True)
class Press:
    """A key that was pressed: its act, the key line before, what there was before and after.

    shapes: Enter was pressed where the rows only shape the figure, nothing is made of them.
    """

    key: str
    act: Act
    line: dict[str, str]
    before: Seen
    after: Seen
    rest: tuple[object, ...]
    shapes: bool

    @property
    def kept(self) -> tuple[ev.Event | ev.UnknownEvent, ...]:
        return self.after.job.events[self.before.entries :]

    @property
    def left(self) -> bool:
        return self.before.step != self.after.step or CloseJob() in self.rest

    def has_kept(self, *kinds: type[ev.Event]) -> bool:
        return any(isinstance(each, kinds) for each in self.kept)

    def __str__(self) -> str:
        return (
            f"{self.key!r} said {self.act.word!r}; kept {[type(e).__name__ for e in self.kept]}, "
            f"step {self.before.step!r} -> {self.after.step!r}, said {self.after.said[0]!r}, "
            f"texts {self.before.texts} -> {self.after.texts}, "
            f"marked {self.before.marked!r} -> {self.after.marked!r}"
        )


def pressed(desk: AtBench, key: str, line: dict[str, str] | None = None) -> Press:
    """Press a key, a while after the last one. line: the key line then, where it is known."""
    desk.clock.advance(APART_S)
    line = desk.keys if line is None else line
    situation = desk.bench.situation(desk.clock.now())
    act = next_act(situation, key_of(key))
    before = Seen.of(desk, situation.rows)
    values = situation.rows.values
    shapes = key == "enter" and situation.instrument.event(situation.context, values) is None
    desk.press_now(key)
    return Press(key, act, line, before, Seen.of(desk), desk.rest, shapes)


def broken(press: Press) -> list[str]:
    """Every rule of the law that a press breaks, in words."""
    found = []
    for rule in RULES:
        try:
            rule(press)
        except AssertionError:
            found.append(f"{rule.__name__.replace('_', ' ')}: {press}")
    return found


def the_key_line_has_the_word_of_the_act(press: Press) -> None:
    """(a)"""
    name = NAMED.get(press.key)
    if name is not None:
        assert press.line.get(name, "") == press.act.word
    elif press.key in ("down", "right") and press.act.word:
        assert press.act.word in press.line.values()


def without_a_word_nothing_is_kept_left_or_changed(press: Press) -> None:
    """(a) But for text that is typed."""
    if press.act.word:
        return
    assert not press.kept and not press.left
    assert not any(isinstance(each, Menu | Ask | Command) for each in press.rest)
    assert press.before.picked == press.after.picked
    if not press.act.text:
        assert press.before.texts == press.after.texts
        assert press.before.chosen == press.after.chosen


def a_word_stands_for_something(press: Press) -> None:
    """(a) Kept, asked, typed, marked, or said why not."""
    if press.act.word:
        assert press.rest or press.before != press.after or press.after.said[0]


def the_word_is_the_word_of_what_happens(press: Press) -> None:
    """(a) The words that all instruments share mean one thing each."""
    word, before, after, kept = press.act.word, press.before, press.after, press.kept
    same_form = (before.texts, before.chosen) == (after.texts, after.chosen)
    if word == "keep":
        assert (kept and not press.left and not after.rows.holds) or after.said[1]
    elif word.startswith("on: "):
        assert after.rows.marked is not None and not kept and not press.left and same_form
        assert after.rows.marked.field.label == word.removeprefix("on: ")
    elif word == "what is wrong here":
        assert before.rows.marked is not None and not kept and same_form
        assert after.said == (before.rows.marked.fault, True)
    elif word == "skip, say why":
        assert [type(each) for each in press.rest] == [Menu] and not kept
    elif word == "next step":
        assert not kept or press.has_kept(*LEAVES)
        assert press.left or after.said[0]
    elif word == "erase":
        assert not kept and not same_form
        assert sum(map(len, after.texts.values())) <= sum(map(len, before.texts.values()))
    elif word == "more":
        assert any(isinstance(each, Menu) for each in press.rest) and not kept
    elif word == "steps":
        assert after.picked == before.step and not kept
    elif word in ("rows", "what is assumed"):
        assert after.marked != before.marked and not kept and same_form


def a_step_is_left_by_enter_alone(press: Press) -> None:
    """Space, digits and arrows leave none; but from the list of steps, one is opened."""
    if press.before.picked or press.key == "enter":
        return
    assert not press.has_kept(*LEAVES) and not press.left
    if press.key in ARROWS or press.key.isdigit():
        assert not press.kept


def nothing_that_holds_something_is_skipped(press: Press) -> None:
    """(b) With text in any row Enter goes on only with an event made of it."""
    if press.key != "enter" or press.before.picked or press.shapes:
        return
    goes = any(isinstance(each, GoOn | Menu) for each in press.act.do) or press.left
    if press.before.texts and (goes or press.has_kept(*LEAVES)):
        made = {said for event in press.kept for said in said_in(event)}
        assert {text.strip() for text in press.before.texts.values()} <= made


def enter_comes_to_every_row_first(press: Press) -> None:
    """(b) While a row has still to be filled nothing is kept; from a row before the last none leaves."""
    rows = press.before.rows
    if press.key != "enter" or press.before.picked or press.shapes or not rows.holds:
        return
    if rows.waiting is not None:
        assert not press.kept and not press.left
    if rows.marked is not None and rows.after(rows.marked) is not None:
        assert not press.left


def nothing_typed_is_lost(press: Press) -> None:
    """(b) Text goes from the form by erasing it, or together with something that is kept."""
    if press.left or press.act.word == "erase" or press.kept:
        return
    assert press.before.texts.keys() <= press.after.texts.keys()


def said_in(thing: object) -> Iterator[str]:
    """Every text in an event, quantities as they were typed, zones as digits."""
    if isinstance(thing, Quantity):
        yield thing.typed
    elif isinstance(thing, str):
        yield thing
    elif isinstance(thing, dict):
        yield from said_in(tuple(thing.values()))
    elif isinstance(thing, tuple):
        yield "".join(f"{each:g}" for each in thing if isinstance(each, float))
        for each in thing:
            yield from said_in(each)
    elif hasattr(thing, "__struct_fields__"):
        for name in thing.__struct_fields__:
            yield from said_in(getattr(thing, name))


def only_what_the_word_names_is_voided(press: Press) -> None:
    """(c) Backspace alone voids and brings back, on an untouched form; a stopwatch is dropped by name."""
    voided = [each for each in press.kept if isinstance(each, ev.Voided)]
    restored = [each for each in press.kept if isinstance(each, ev.Restored)]
    if voided or restored:
        assert not press.before.rows.holds and not press.before.texts
        assert press.key == "backspace" and len(press.kept) == max(len(voided), len(restored))
        prefix = "void: " if voided else "bring back: "
        assert press.act.word.startswith(prefix)
        told = press.act.word.removeprefix(prefix).rstrip("…")
        targets = {each.target for each in (*voided, *restored)}
        job, system = press.before.job, press.before.rows.system
        meant = [words(each, system, job) for each in job.events if each.n in targets]
        assert told and any(each.startswith(told) for each in meant)
    if press.has_kept(ev.StopwatchDropped):
        assert "stop" in press.act.word or "drop" in press.act.word


def a_digit_lands_where_the_key_line_says(press: Press) -> None:
    """(d) In the marked row, or in the one that the key line names, and nowhere else."""
    if not press.key.isdigit() or press.before.picked:
        return
    before, after, named = press.before.texts, press.after.texts, press.line.get("0-9", "")
    changed = [key for key in {**before, **after} if before.get(key) != after.get(key)]
    assert len(changed) == 1 if named else len(changed) <= 1
    for key in changed:
        row = press.before.rows.row(key)
        cursor = press.before.rows.form.cursor if key == press.before.marked else 0
        at = len(row.text) - cursor
        assert press.after.rows.row(key).text == row.text[:at] + press.key + row.text[at:]
        assert row.field.label == named or key == press.before.marked
        assert press.after.marked == key


def what_cannot_be_kept_changes_nothing(press: Press) -> None:
    """A sentence why not leaves what was typed where it was."""
    if press.after.said[1] and any(isinstance(each, Keep) for each in press.act.do):
        assert press.kept or press.before.texts == press.after.texts


RULES = (
    the_key_line_has_the_word_of_the_act,
    without_a_word_nothing_is_kept_left_or_changed,
    a_word_stands_for_something,
    the_word_is_the_word_of_what_happens,
    a_step_is_left_by_enter_alone,
    nothing_that_holds_something_is_skipped,
    enter_comes_to_every_row_first,
    nothing_typed_is_lost,
    only_what_the_word_names_is_voided,
    a_digit_lands_where_the_key_line_says,
    what_cannot_be_kept_changes_nothing,
)
