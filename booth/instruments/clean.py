"""Cleaning up, line by line, so that nothing is left in the gun on a long day."""

from __future__ import annotations

from typing import ClassVar

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Static

from booth.bench.context import Context
from booth.bench.instrument import Instrument, Values
from booth.log.events import BatchFinished, Event, LineTicked
from booth.moment import Moment
from booth.widgets.entry import FieldRow
from booth.widgets.quiet_line import put
from booth.widgets.text import content
from booth.words.readout import Readout


class Clean(Instrument):
    """A checklist; Space ticks the next line."""

    KIND: ClassVar[str] = "clean"
    NAME: ClassVar[str] = "Clean-up"
    ABOUT: ClassVar[tuple[str, ...]] = (
        "The lines are this step's own, from the profile or the default list (common practice, no "
        "source). Each tick is kept.",
        "Finishing the list also marks the mixed batches as used up, so that their pot life no "
        "longer rings. Rags with drying oils or two-pack residues can heat by themselves: a metal "
        "can with a lid, emptied daily (29 CFR 1910.107(g)(3), paragraph recalled). Waste goes where "
        "local rules say.",
    )
    KEEPS: ClassVar[tuple[type[Event], ...]] = (LineTicked,)
    GO: ClassVar[str] = "tick"

    def compose(self) -> ComposeResult:
        yield Static(content(self.desk.context.step.name), classes="step-name", markup=False)
        with VerticalScroll(classes="checklist", can_focus=False):
            yield Static("", classes="checklist-text", markup=False)

    def _open(self, context: Context) -> list[str]:
        ticked = {each.line for each in context.job.ticked if each.step == context.step.key}
        return [line for line in context.step.how if line not in ticked]

    def draw(self, context: Context) -> None:
        if not self.is_mounted:
            return
        left = self._open(context)
        lines = [
            Content.assemble(
                ("→ " if left and line == left[0] else "  ") if line in left else "√ ",
                (content(line).plain, "bold" if line in left else "dim"),
            )
            for line in context.step.how
        ]
        put(self.query_one(".checklist-text", Static), Content("\n\n").join(lines))

    def readout(self, context: Context, values: Values) -> Readout:
        return Readout("")

    def kept_any(self, context: Context) -> bool:
        return not self._open(context)

    def keys(self, context: Context) -> tuple[tuple[str, str], ...]:
        if self._open(context):
            return (("Space", "tick this line"),)
        return (("Enter", "next step"),)

    def go(self, at: Moment) -> None:
        context = self.desk.context
        left = self._open(context)
        if left:
            self.desk.keep(LineTicked(n=0, at=at, step=context.step.key, line=left[0]))

    def enter(self, row: FieldRow | None = None) -> None:
        context = self.desk.context
        if self._open(context):
            self.go(context.now)
            return
        for batch in context.job.batches:
            if batch.batch not in context.job.finished_batches:
                finished = BatchFinished(n=0, at=context.now, batch=batch.batch)
                if self.desk.keep(finished) is None:
                    return
        self.desk.finish_step()
