"""Mix: pour each component up to its mark; what was really poured decides what is poured next."""

from __future__ import annotations

from collections.abc import Collection
from typing import ClassVar, NamedTuple

from booth.bench.act import Act, Keep, Say, SetForm, refused
from booth.bench.context import Context
from booth.bench.instrument import Instrument, local_time, number
from booth.files.safe_text import visible
from booth.forms.field import Field
from booth.forms.form import Form, Rows, Values
from booth.forms.key import Key
from booth.instruments.mix.rows import READING, fields, plan_by_rows, wanted_rows
from booth.instruments.mix.words import (
    batch_line,
    batch_readout,
    empty_readout,
    fault_readout,
    mixed_readout,
    mixed_words,
    pour_readout,
    pour_rows,
)
from booth.job.pouring import (
    BatchPlan,
    Pouring,
    batch_of,
    open_pours,
    pour_event,
    pouring,
    rest_amount,
)
from booth.log.events import BatchMixed, Event, Poured
from booth.trade.result import BadInput
from booth.words.pictures import Picture, Pours
from booth.words.readout import Readout

AMOUNT_FIRST = "Enter the amount first, with its unit if you like."
WHEN_POURED = "Space when it is poured to the mark; or type what it shows."
NOT_POURED = "That is what it showed before this pour. Pour, then read it."


class Meant(NamedTuple):
    """A batch as it is meant, and where it stands."""

    plan: BatchPlan
    state: Pouring


class Mix(Instrument):
    """A pour table; the next mark is the figure."""

    KIND: ClassVar[str] = "mix"
    NAME: ClassVar[str] = "Mix"
    ABOUT: ClassVar[tuple[str, ...]] = (
        "The figure is what the cup or the scale shows when to stop pouring: marks are cumulative, "
        "all that was poured before is in them. A scale is set to zero with the empty cup on it, "
        "once, and not between the pours.",
        "Space: poured to the mark. Poured too much, or not all of it? Type what the cup or scale "
        "really shows, then Enter. Nothing can be taken out, so the batch grows until the parts "
        "are right again: components poured before are added to. Within a hundredth a pour counts "
        "as on its mark (common practice, no source).",
        "Parts are those of the profile, by volume or by weight as its data sheet gives them; "
        "between the two the densities of the components decide (mass is volume times density). "
        "Volumes are taken to add up, which solvents do to about 1 %.",
        "Thinner is a percentage of the volume of the coating, hardener included, on top of it. "
        "More than the profile's limit is refused.",
        "Pot life and induction begin when the last component is in. Poured onto the rest of an "
        "older batch, the older pot life rules all of it: fresh material does not make old "
        "material young. The rest is taken to be of the same parts.",
        "The product's data sheet decides; hardeners and thinners have hazards of their own.",
    )
    KEEPS: ClassVar[tuple[type[Event], ...]] = (BatchMixed, Poured)
    UNIT_FIRST: ClassVar[bool] = True

    def fields(self, context: Context) -> tuple[Field, ...]:
        return fields(context)

    def wanted(self, context: Context, values: Values) -> Collection[str] | None:
        return wanted_rows(context, values)

    def first(self, context: Context, values: Values) -> str:
        """Where the next digit belongs: the reading once it is known what to pour."""
        plan = plan_by_rows(context, values)
        return READING[plan.by] if plan is not None else ""

    def readout(self, context: Context, values: Values) -> Readout:
        try:
            meant = batch_meant(context, values)
        except BadInput as fault:
            return fault_readout(str(fault))
        if meant is None:
            batches = context.job.batches
            return batch_readout(context, batches[-1]) if batches else empty_readout(context)
        if meant.state.next is None:
            return mixed_readout(context, meant.state)
        return pour_readout(context, meant.plan, meant.state)

    def picture(self, context: Context, values: Values) -> tuple[Picture, ...]:
        try:
            meant = batch_meant(context, values)
        except BadInput:
            return ()
        return (Pours(pour_rows(meant.state, context.system)),) if meant is not None else ()

    def record(self, context: Context) -> tuple[str, ...]:
        if open_pours(context.job):
            return ()
        return tuple(
            f"{local_time(batch.at)}  {batch_line(batch, context.system)}"
            for batch in context.job.batches[-3:]
        )

    def busy(self, context: Context) -> str:
        """An Enter too many is no pour, and leaves no batch half poured."""
        return WHEN_POURED if open_pours(context.job) else ""

    def cleared(self, form: Form) -> Form:
        """By volume or by weight stays; how this one batch was meant does not."""
        return Form(chosen={key: each for key, each in form.chosen.items() if key == "by"})

    def last_kept(self, context: Context, values: Values) -> tuple[Event, ...]:
        """The last pour; a batch goes back to being half poured with it."""
        last = context.job.last_of(*self.KEEPS)
        if not isinstance(last, BatchMixed):
            return (last,) if last is not None else ()
        pours = [pour for pour in context.job.pours if pour.batch == last.batch]
        return (*pours[-1:], last)

    def space(self, context: Context, rows: Rows) -> Act:
        """Poured, to the mark or to what was typed; the last pour mixes the batch."""
        wrong = next((row.fault for row in rows.sight if row.fault), "")
        if wrong:
            return refused(wrong)
        try:
            meant = batch_meant(context, rows.values)
            if meant is None:
                first = SetForm(rows.form.marking("amount"))
                return Act("", (first, Say(AMOUNT_FIRST, fault=True)))
            return self._poured(context, rows, *meant)
        except BadInput as fault:
            return refused(str(fault))

    def _poured(self, context: Context, rows: Rows, plan: BatchPlan, state: Pouring) -> Act:
        job, following = context.job, SetForm(self.cleared(rows.form))
        poured, word, keep = open_pours(job), "mixed", []
        if state.next is not None:
            word, amount = f"poured: {visible(state.next.name)}", state.next.amount
            reading = rows.row(READING[plan.by])
            if reading.text.strip():
                amount = rest_amount(state, number(rows.values, reading.key) or 0.0)
            if amount <= 0:
                return refused(NOT_POURED)
            pour = pour_event(job, plan, state.next.name, amount, context.now)
            poured, keep = (*poured, pour), [Keep(pour)]
        if batch_state(context, plan, poured).next is not None:
            return Act(word, (*keep, following))
        batch = batch_of(context.profile, poured, context.now)
        return Act(word, (*keep, Keep(batch), following, Say(mixed_words(batch))))

    def enter(self, context: Context, rows: Rows) -> Act | None:
        """In the row of the reading: poured. A choice that was looked at is no reason to leave."""
        marked = rows.marked
        if marked is None or marked.fault:
            return None
        if marked.key in READING.values():
            if marked.text.strip():
                return self.space(context, rows)
            return refused(WHEN_POURED) if rows.holds else None
        following = rows.after(marked) or rows.row("amount")
        if rows.holds or (marked.key == "amount" and marked.given is None):
            return None
        return Act(f"on: {following.field.label}", (SetForm(rows.form.marking(following.key)),))

    def own(self, context: Context, rows: Rows, key: Key) -> Act | None:
        """A digit that no row takes is not lost without a word."""
        lost = key.character is not None and key.character.isdigit() and rows.target is None
        return refused(AMOUNT_FIRST) if lost else None


def batch_meant(context: Context, values: Values) -> Meant | None:
    """The batch that the rows mean; None where none is. Raises BadInput."""
    plan = plan_by_rows(context, values)
    if plan is None:
        return None
    return Meant(plan, batch_state(context, plan, open_pours(context.job)))


def batch_state(context: Context, plan: BatchPlan, poured: tuple[Poured, ...]) -> Pouring:
    return pouring(context.profile, plan, [(each.name, each.amount.value) for each in poured])
