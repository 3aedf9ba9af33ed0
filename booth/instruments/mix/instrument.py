"""Mix: pour each component up to its mark; what was really poured decides what is poured next."""

from __future__ import annotations

from typing import ClassVar

from textual.app import ComposeResult

from booth.bench.context import Context
from booth.bench.instrument import Instrument, Values, number
from booth.instruments.mix.rows import FRESH, READING, fields, plan_by_rows, wanted_rows
from booth.instruments.mix.words import (
    batch_line,
    batch_readout,
    empty_readout,
    fault_readout,
    mixed_readout,
    pour_readout,
    pour_rows,
)
from booth.job.pouring import Pouring, batch_of, open_pours, pour_event, pouring, rest_amount
from booth.log.events import BatchMixed, Event, Poured, Voided
from booth.log.fold import Job
from booth.moment import Moment, elapsed
from booth.trade.result import BadInput
from booth.widgets.entry import Choice, Field, FieldRow
from booth.widgets.figure_panel import FigurePanel
from booth.widgets.pour_table import PourTable
from booth.words.readout import Readout

#: Two presses closer than this are one press that bounced [s].
BOUNCE_S = 0.7


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
    GO: ClassVar[str] = "poured"

    _poured_at: Moment | None = None

    def compose(self) -> ComposeResult:
        for widget in super().compose():
            yield widget
            if isinstance(widget, FigurePanel):
                yield PourTable()

    # -- rows ---------------------------------------------------------------------------------

    def fields(self, context: Context) -> tuple[Field, ...]:
        return fields(context)

    @property
    def rows(self) -> tuple[FieldRow, ...]:
        """The rows that are asked for now."""
        return tuple(row for row in super().rows if row.display)

    def _show_rows(self, context: Context) -> None:
        wanted = wanted_rows(context, self.values())
        for row in super().rows:
            shown = row.field.key in wanted
            if row.display != shown:
                row.display = shown
                if not shown and row.place.has_focus:
                    self.focus_first()

    # -- what it comes to ---------------------------------------------------------------------

    def state(self, context: Context, values: Values) -> Pouring | None:
        """Where the batch stands; None where none is meant. Raises BadInput."""
        plan = plan_by_rows(context, values)
        if plan is None:
            return None
        poured = [(each.name, each.amount.value) for each in open_pours(context.job)]
        return pouring(context.profile, plan, poured)

    def readout(self, context: Context, values: Values) -> Readout:
        try:
            state = self.state(context, values)
        except BadInput as fault:
            return fault_readout(str(fault))
        plan = plan_by_rows(context, values)
        if state is None or plan is None:
            if context.job.batches:
                return batch_readout(context, context.job.batches[-1], self.desk.local_time)
            return empty_readout(context)
        if state.next is None:
            return mixed_readout(context, state)
        return pour_readout(context, plan, state)

    def record(self, context: Context) -> tuple[str, ...]:
        if open_pours(context.job):
            return ()
        return tuple(
            f"{self.desk.local_time(batch.at)}  {batch_line(batch, context.system)}"
            for batch in context.job.batches[-3:]
        )

    def draw(self, context: Context) -> None:
        if not self.is_mounted:
            return
        # Twice: a row that has just come to be asked for may bring another one.
        self._show_rows(context)
        self._show_rows(context)
        super().draw(context)
        try:
            state = self.state(context, self.values())
        except BadInput:
            state = None
        self.set_class(state is not None, "-planned")
        rows = pour_rows(state, context.system) if state is not None else ()
        self.query_one(PourTable).rows = rows

    # -- what the painter does ------------------------------------------------------------------

    def on_mount(self) -> None:
        super().on_mount()
        # Which rows are asked for is known once they have been drawn.
        self.call_after_refresh(self.focus_first)

    def focus_first(self) -> None:
        """The focus is where the next digit belongs: the reading once it is known what to pour."""
        context = self.desk.context
        plan = plan_by_rows(context, self.values()) if self.is_mounted else None
        for row in self.rows:
            if plan is not None and row.field.key == READING[plan.by]:
                row.place.focus()
                return
        super().focus_first()

    def go(self, at: Moment) -> None:
        """Poured, to the mark or to what was typed."""
        context = self.desk.context
        try:
            state = self.state(context, self.values())
        except BadInput as fault:
            self.desk.say(str(fault), fault=True)
            return
        plan = plan_by_rows(context, self.values())
        if state is None or plan is None:
            self._ask_amount()
            return
        if state.next is None:
            self._mixed(at)
            return
        row = self.row(READING[plan.by])
        if row.fault:
            self.desk.say(row.fault, fault=True)
            return
        amount = state.next.amount
        if not row.is_empty:
            try:
                amount = rest_amount(state, number(self.values(), READING[plan.by]) or 0.0)
            except BadInput as fault:
                self.desk.say(str(fault), fault=True)
                return
            if amount <= 0:
                self.desk.say("That is what it showed before this pour. Pour, then read it.")
                return
        self._pour(pour_event(context.job, plan, state.next.name, amount, at), at)

    def _pour(self, event: Poured, at: Moment) -> None:
        if self._poured_at is not None and elapsed(self._poured_at, at).seconds < BOUNCE_S:
            return
        if self.desk.keep(event) is None:
            return
        self._poured_at = at
        for row in self.rows:
            row.clear()
        if event.batch not in {each.batch for each in self.desk.context.job.batches}:
            state = self.state(self.desk.context, self.values())
            if state is not None and state.next is None:
                self._mixed(at)
        self.draw(self.desk.context)
        self.focus_first()

    def _mixed(self, at: Moment) -> None:
        batch = batch_of(self.desk.context.job, at)
        if self.desk.keep(batch) is None:
            return
        said = f"Batch {batch.batch} is mixed. Stir it well."
        if batch.onto is not None:
            said += f" The pot life of batch {batch.onto}, which is older, rules all of it."
        self.desk.say(said)
        for row in super().rows:
            row.clear()
            if row.field.key == "onto":
                self._offer_batches(row)
        self.draw(self.desk.context)
        self.focus_first()

    def _offer_batches(self, row: FieldRow) -> None:
        """The batches that a next one can go onto are those that stand there now."""
        for field in fields(self.desk.context):
            if field.key == "onto":
                row.field = field
                choice = row.query_one(Choice)
                choice.choices = field.choices
                choice.choose(FRESH)

    def _ask_amount(self) -> None:
        self.row("amount").place.focus()
        self.desk.say("Say first how much: type the amount, with its unit if you like.", fault=True)

    def enter(self, row: FieldRow | None = None) -> None:
        """In the row of the reading: poured. In another one: on to the reading."""
        context = self.desk.context
        plan = plan_by_rows(context, self.values())
        waiting = bool(open_pours(context.job))
        if row is not None and row.fault:
            self.desk.say(row.fault, fault=True)
            return
        if plan is None:
            if self.all_empty or row is None:
                self.desk.finish_step()
            else:
                self._ask_amount()
            return
        reading = READING[plan.by]
        if (row.field.key == reading) if row is not None else waiting:
            if self.row(reading).is_empty:
                # An Enter too many on the way here is no pour.
                self.desk.say("Space when it is poured to the mark; or type what it shows.")
                return
            self.go(context.now)
            return
        if row is None:
            self.desk.finish_step()
            return
        self.row(reading).place.focus()

    def void_last(self) -> None:
        """A batch goes back to being half poured: its last pour is voided with it."""
        job: Job = self.desk.context.job
        last = job.last_of(*self.KEEPS)
        if last is None:
            self.desk.say("Nothing here to void.")
            return
        targets = [last]
        if isinstance(last, BatchMixed):
            targets += [pour for pour in job.pours if pour.batch == last.batch][-1:]
        for target in targets:
            if self.desk.keep(Voided(n=0, at=self.desk.context.now, target=target.n)) is None:
                return
        self.draw(self.desk.context)
        self.focus_first()
        self.desk.say("The last pour is voided. It stays in the log and can be brought back there.")

    def keys(self, context: Context) -> tuple[tuple[str, str], ...]:
        try:
            state = self.state(context, self.values()) if self.is_mounted else None
        except BadInput:
            return (("Enter", "go on"),)
        if state is None:
            if not self.all_empty:
                return (("Enter", "keep"), ("↑↓", "row"), ("←→", "change"))
            done = bool(context.job.batches)
            return (("Enter", "next step" if done else "go on"), ("↑↓", "row"), ("←→", "change"))
        if state.next is None:
            return (("Space", "mixed"),)
        return (
            ("Space", f"poured: {state.next.name}"),
            ("digits", "what it shows"),
            ("Bksp", "back one pour"),
        )
