"""The bench without its screen: which step is open, what its form holds, what a press leads to.

A press is answered by ``next_act``; here its effects are carried out, as far as no other screen is
needed for them. The screen draws what stands here, and opens what is left over.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Protocol

from booth.bench.act import (
    NO_OFFER,
    Act,
    Context,
    Effect,
    GoOn,
    Keep,
    Offer,
    OpenStep,
    PickStep,
    Rest,
    Say,
    SetForm,
)
from booth.bench.instrument import Instrument, rows_at
from booth.bench.next_act import Situation, key_words, next_act, stands_for_space
from booth.forms.edit import other_units, paste
from booth.forms.form import BLANK, Form
from booth.forms.key import Key
from booth.job.steps import next_open, steps_of
from booth.log.events import Event
from booth.log.fold import Job
from booth.moment import Moment, elapsed
from booth.profile.model import Step
from booth.units import System

#: Two presses of Space closer than this are one press of a glove [s].
BOUNCE_S = 0.7
#: Presses closer than this are a key that is held down: not one of them counts [s].
REPEAT_S = 0.15
#: A press made while the program stood still for longer than this was made blindly [s].
STALL_S = 0.25
BLIND = "Pressed while the program stood still: not counted. Look, then press again."
LAST_STEP = "That was the last open step."


class Desk(Protocol):
    """What the bench stands on: the job on disk, and what is around it."""

    @property
    def job(self) -> Job:
        """The job as it stands."""

    def context(self, step: Step, now: Moment) -> Context:
        """The snapshot at a moment."""

    def instrument(self, kind: str) -> Instrument:
        """The instrument that serves a kind of step."""

    def keep(self, event: Event) -> bool:
        """Bring an event onto the disk; False where it could not be (and the screen has said so)."""


@dataclass(slots=True)
class _Presses:
    """When Space was pressed: one window for every use of it, and for an Enter in its place.

    thumb: the key that did it last, "" where another key came after it.
    """

    counted: Moment | None = None
    seen: Moment | None = None
    thumb: str = ""

    def takes(self, key: str, is_space: bool, at: Moment) -> bool:
        """Whether a key is a press of its own, no bounce of Space and none of its repeats.

        Held on, an Enter that stood for Space does not go on to the next step either.
        """
        if key == "space" and not is_space:
            self.seen = at  # it was typed; what repeats it is no press of its own
        if is_space and key == "enter" and not self.thumb:
            self.counted = self.seen = None  # another key lay between
        if (is_space or key == "enter" == self.thumb) and not self._counts(at):
            return False
        self.thumb = key if is_space else ""
        return True

    def _counts(self, at: Moment) -> bool:
        held = self.seen is not None and abs(elapsed(self.seen, at).seconds) < REPEAT_S
        again = self.counted is not None and abs(elapsed(self.counted, at).seconds) < BOUNCE_S
        self.seen, self.counted = at, self.counted if held or again else at
        return not (held or again)


class Bench:
    """One job being worked on. said: the sentence above the keys, and whether it is a fault."""

    def __init__(self, desk: Desk, step: Step | None = None) -> None:
        self.desk = desk
        self.step = step or next_open(desk.job)
        self.form: Form = BLANK
        self.picked = ""
        self.offer: Offer = NO_OFFER
        self.said: tuple[str, bool] = ("", False)
        #: What was typed in other steps and not kept yet, by step: it stands there on coming back.
        self._left: dict[str, Form] = {}
        self._product = desk.job.product
        self._presses = _Presses()
        self._stood_until: Moment | None = None

    @property
    def instrument(self) -> Instrument:
        return self.desk.instrument(self.step.kind)

    def situation(self, now: Moment) -> Situation:
        context = self.desk.context(self.step, now)
        rows = rows_at(self.instrument, context, self.form)
        return Situation(self.instrument, context, rows, self.picked, self.offer)

    def keys(self, now: Moment) -> tuple[tuple[str, str], ...]:
        return key_words(self.situation(now))

    # -- what the painter does --------------------------------------------------------------

    def press(self, key: Key, at: Moment) -> tuple[Rest, ...]:
        """A key, pressed at `at`; gives what is left for the screen to carry out."""
        situation = self.situation(at)
        act = next_act(situation, key)
        is_space = stands_for_space(situation, key, act)
        if not self._presses.takes(key.name, is_space, at) or (is_space and self._is_blind(at)):
            return ()
        offer = self.offer
        rest = self.carry_out(act, at)
        if self.offer is offer and act.do:
            self.offer = NO_OFFER  # whatever else is done, the offer to bring back is over
        return rest

    def _is_blind(self, at: Moment) -> bool:
        """Whether nobody could have seen at `at` what stood there."""
        if self._stood_until is None or elapsed(at, self._stood_until).seconds <= 0:
            return False
        self.said = (BLIND, True)
        return True

    def stood_still(self, before: Moment, after: Moment) -> None:
        """The program could not show what a press did until `after`: presses meanwhile were blind."""
        if elapsed(before, after).seconds > STALL_S:
            self._stood_until = after

    def paste(self, text: str, now: Moment) -> None:
        """A text pasted into the marked row."""
        form = paste(self.situation(now).rows, text)
        if form is not None:
            self.form = form

    def mark(self, key: str) -> None:
        self.form = self.form.marking(key)

    def units_changed(self, before: System, now: System, at: Moment) -> None:
        """What was typed keeps its meaning under other units."""
        for step in (s for s in steps_of(self.desk.job) if s.key in self._left):
            self._left[step.key] = self._other(step, self._left[step.key], before, now, at)
        self.form = self._other(self.step, self.form, before, now, at)

    def _other(self, step: Step, form: Form, before: System, now: System, at: Moment) -> Form:
        rows = rows_at(self.desk.instrument(step.kind), self.desk.context(step, at), form)
        return other_units(form, tuple(row.field for row in rows.every), before, now)

    # -- effects ----------------------------------------------------------------------------

    def carry_out(self, act: Act, now: Moment) -> tuple[Rest, ...]:
        """Carry out the effects in their order, up to the first entry that cannot be kept."""
        rest: list[Rest] = []
        for effect in act.do:
            if isinstance(effect, Rest):
                rest.append(effect)
            elif not self._carried_out(effect):
                break
        return tuple(rest)

    def _carried_out(self, effect: Effect) -> bool:
        match effect:
            case Keep(event):
                if not self.desk.keep(event):
                    return False
                self.said = ("", False)
                self.mind_product()
            case SetForm(form):
                self.form, self.said = form, ("", False)
            case Say(words, fault):
                self.said = (words, fault)
            case Offer():
                self.offer = effect
            case PickStep(key):
                self.picked = key
            case OpenStep(key):
                self._open(next((s for s in steps_of(self.desk.job) if s.key == key), self.step))
            case GoOn():
                before = self.step
                self._open(next_open(self.desk.job, after=before))
                if self.step.key == before.key:
                    self.said = (LAST_STEP, False)
        return True

    def mind_product(self) -> None:
        """To the steps of another product, where it was begun, or voided that it was."""
        if self._product != self.desk.job.product:
            self._product = self.desk.job.product
            self._open(next_open(self.desk.job))
            self._left.clear()  # it was meant for the other product

    def _open(self, step: Step) -> None:
        if self.form.texts:
            self._left[self.step.key] = self.form
        self.step, self.form = step, self._left.pop(step.key, BLANK)
        self.picked, self.offer = "", NO_OFFER
        self.said = ("", False)
