"""The cautions of this product, one by one: read, acknowledged, logged."""

from __future__ import annotations

from typing import ClassVar

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Static

from booth.bench.context import Context
from booth.bench.instrument import Instrument, Values
from booth.log.events import CautionAcknowledged, Event
from booth.log.fold import Job
from booth.moment import Moment
from booth.profile.cautions import Caution, cautions_for
from booth.widgets.entry import FieldRow
from booth.widgets.quiet_line import put
from booth.widgets.text import content, reflow
from booth.words.readout import Readout


def first_open(job: Job) -> Caution | None:
    """The first caution that has not been acknowledged in this job."""
    for caution in cautions_for(job.profile):
        if caution.key not in job.cautions:
            return caution
    return None


class Cautions(Instrument):
    """One caution at a time; Space or Enter acknowledges it."""

    KIND: ClassVar[str] = "cautions"
    NAME: ClassVar[str] = "Cautions"
    ABOUT: ClassVar[tuple[str, ...]] = (
        "The usual cautions for this kind of product, from the hazards its profile declares. They "
        "are not all there is: the product's safety data sheet, local codes and licensed practice "
        "come first.",
        "Having read them does not make a job free of danger, and this program never says so.",
    )
    KEEPS: ClassVar[tuple[type[Event], ...]] = (CautionAcknowledged,)
    GO: ClassVar[str] = "understood"

    def compose(self) -> ComposeResult:
        yield Static(content(self.desk.context.step.name), classes="step-name", markup=False)
        yield Static("", classes="caution-count", markup=False)
        with VerticalScroll(classes="caution", can_focus=False):
            yield Static("", classes="caution-title", markup=False)
            yield Static("", classes="caution-text", markup=False)

    def draw(self, context: Context) -> None:
        if not self.is_mounted:
            return
        every = cautions_for(context.profile)
        now = first_open(context.job)
        count = sum(each.key in context.job.cautions for each in every)
        title = self.query_one(".caution-title", Static)
        text = self.query_one(".caution-text", Static)
        if now is None:
            said = f"All {len(every)} were read and are in the log."
            put(title, content(f"▲ {said}"))
            lines = [f"√ {each.title}" for each in every]
        else:
            put(title, content(f"▲ {now.title}"))
            lines = [*reflow(now.lines), "", f"Source: {now.source}"]
        put(text, Content("\n").join([content(line) for line in lines]))
        put(
            self.query_one(".caution-count", Static),
            content(f"{min(count + 1, len(every))} of {len(every)}" if now else ""),
        )

    def readout(self, context: Context, values: Values) -> Readout:
        return Readout("")

    def kept_any(self, context: Context) -> bool:
        return first_open(context.job) is None

    def keys(self, context: Context) -> tuple[tuple[str, str], ...]:
        if first_open(context.job) is None:
            return (("Enter", "next step"),)
        return (("Space", "read and understood"),)

    def go(self, at: Moment) -> None:
        now = first_open(self.desk.context.job)
        if now is not None:
            words = f"{now.title}. {' '.join(reflow(now.lines))}"
            self.desk.keep(CautionAcknowledged(n=0, at=at, caution=now.key, words=words))

    def enter(self, row: FieldRow | None = None) -> None:
        if first_open(self.desk.context.job) is None:
            self.desk.finish_step()
        else:
            self.go(self.desk.context.now)
