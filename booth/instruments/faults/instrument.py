"""Faults: pick what is seen; its causes come ranked by what this very job measured."""

from __future__ import annotations

from typing import ClassVar

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Static

from booth.bench.context import Context
from booth.bench.instrument import Instrument, Values
from booth.instruments.faults.words import causes_lines, strongest
from booth.job.fault_evidence import evidence_of
from booth.log.events import Event, FaultSeen
from booth.log.fold import Job
from booth.moment import Moment
from booth.trade.faults.fault_model import Fault
from booth.trade.faults.ranked_causes import FAULTS, rank_causes
from booth.units import System
from booth.widgets.entry import FieldRow
from booth.widgets.figure_panel import FigurePanel
from booth.widgets.pick_list import Line, PickList
from booth.widgets.text import content
from booth.words.readout import Readout

KEYS = tuple(FAULTS)
ANY_PART = "any part"


class Faults(Instrument):
    """A list of faults; behind each its causes, the strongest one's figure as the large one."""

    KIND: ClassVar[str] = "faults"
    NAME: ClassVar[str] = "Faults seen"
    ABOUT: ClassVar[tuple[str, ...]] = (
        "Pick what is seen, and on which part. Its causes are ranked by what this job measured: a "
        "cause is claimed only where a figure speaks for it, and the figure stands beside it, "
        "against the limit it passed. The large figure is that of the strongest cause.",
        "Figures point, they do not prove. A cause that no figure can speak for (dirt, oil, a wrong "
        "thinner) stays under 'no figure for or against', and may be the one.",
        "The figures are those of the time when the last coat on the part was laid; a delivery of "
        "water, a pressure in the hose and a fan that was not measured say nothing. A wet film and "
        "a pace count as out of range only where their whole span is.",
        "Rank: how usual the cause is, times how far its figure is past the limit. It is no "
        "probability (common practice, no source).",
        "Causes: FAA-H-8083-31 ch. 8, TM 43-0139 p. 5-12, TO 1-1-8 table 4-1, and a corrosion "
        "handbook's table of film faults; else common practice, no source. The data sheet wins.",
        "Sanding, cutting and polishing make dust of what was sprayed: mask and eyes, and wet where "
        "the data sheet says so.",
    )
    KEEPS: ClassVar[tuple[type[Event], ...]] = (FaultSeen,)

    BINDINGS = [
        ("left", "part(-1)", "the part before"),
        ("right", "part(1)", "the next part"),
    ]

    part_index: int = 0
    picked: int = 0
    open_fault: str = ""
    _drawn: tuple[Job, System, str, str] | None = None

    def compose(self) -> ComposeResult:
        yield Static(content(self.desk.context.step.name), classes="step-name", markup=False)
        yield Static("", classes="fault-part", markup=False)
        yield PickList()
        yield Static("", classes="fault-looks", markup=False)
        yield FigurePanel()
        yield VerticalScroll(classes="causes", can_focus=False)

    # -- what it holds -------------------------------------------------------------------------

    @property
    def part(self) -> str:
        """The part the fault is seen on; empty for any."""
        return ("", *self.desk.context.job.parts)[self.part_index]

    def lines(self, context: Context) -> tuple[Line, ...]:
        """The list: going on first, then every fault with how it looks, or where it was seen."""
        job = context.job
        first = "no other fault: go on" if job.faults else "no fault seen: go on"
        seen: dict[str, list[str]] = {}
        for each in job.faults:
            seen.setdefault(each.fault, []).append(each.part or ANY_PART)
        return (
            (first, "", False),
            *(
                (fault.name, f"● seen: {', '.join(seen[key])}", True)
                if key in seen
                else (fault.name, fault.looks, False)
                for key, fault in FAULTS.items()
            ),
        )

    @property
    def fault(self) -> Fault | None:
        """The fault that the list stands on."""
        return FAULTS[KEYS[self.picked - 1]] if self.picked else None

    # -- drawing -------------------------------------------------------------------------------

    def draw(self, context: Context) -> None:
        if not self.whole:
            return
        self.set_class(bool(self.open_fault), "-causes")
        self.query_one(PickList).lines = self.lines(context)
        self.query_one(PickList).picked = self.picked
        self.query_one(".fault-part", Static).update(self._part_line())
        looks = self.fault.looks if self.fault else "Look along the film against a lamp."
        self.query_one(".fault-looks", Static).update(content(looks))
        now = (context.job, context.system, self.open_fault, self.part)
        if self.open_fault and not self._same(now):
            self._drawn = now
            self._draw_causes(context)

    def _same(self, now: tuple[Job, System, str, str]) -> bool:
        before = self._drawn
        return before is not None and before[0] is now[0] and before[1:] == now[1:]

    def _draw_causes(self, context: Context) -> None:
        fault = FAULTS[self.open_fault]
        causes = rank_causes(fault.key, evidence_of(context.job, self.part))
        first = strongest(causes, context.system)
        panel = self.query_one(FigurePanel)
        panel.display = first is not None
        if first is not None:
            panel.readout = first
        scroll = self.query_one(".causes", VerticalScroll)
        scroll.remove_children()
        scroll.mount(
            *(
                Static(content(line.text), classes=f"cause -{line.rank}", markup=False)
                for line in causes_lines(fault, causes, context.system)
            )
        )

    def _part_line(self) -> Content:
        words = self.part or ANY_PART
        if self.open_fault:
            name = FAULTS[self.open_fault].name
            return Content.assemble((name, "bold"), ", ", content(words))
        return Content.assemble("seen on  ", ("◂ ", "dim"), content(words), (" ▸", "dim"))

    def readout(self, context: Context, values: Values) -> Readout:
        fault = FAULTS.get(self.open_fault)
        if fault is None:
            return Readout("")
        causes = rank_causes(fault.key, evidence_of(context.job, self.part))
        return strongest(causes, context.system) or Readout("")

    def keys(self, context: Context) -> tuple[tuple[str, str], ...]:
        if self.open_fault:
            return (("Enter", "next step"), ("Space", "another fault"), ("↑↓", "read on"))
        if self.fault is None:
            return (("Enter", "next step"), ("↑↓", "fault"), ("←→", "part"))
        return (("Enter", "this is seen"), ("↑↓", "fault"), ("←→", "part"))

    # -- what the painter does -----------------------------------------------------------------

    def go(self, at: Moment) -> None:
        if self.open_fault:
            self._back()
        elif self.fault is not None:
            self._take(self.fault, at)
        else:
            self.desk.say("Arrows pick what is seen; Enter goes on.")

    def enter(self, row: FieldRow | None = None) -> None:
        if self.open_fault or self.fault is None:
            self.desk.finish_step()
        else:
            self._take(self.fault, self.desk.context.now)

    def _take(self, fault: Fault, at: Moment) -> None:
        """Keep that it is seen, once for each part, and show its causes."""
        job = self.desk.context.job
        known = any((each.fault, each.part) == (fault.key, self.part) for each in job.faults)
        if not known:
            event = FaultSeen(n=0, at=at, fault=fault.key, part=self.part)
            if self.desk.keep(event) is None:
                return
        self.open_fault = fault.key
        self._drawn = None
        self.query_one(".causes", VerticalScroll).scroll_home(animate=False)
        self.draw(self.desk.context)

    def _back(self) -> None:
        self.open_fault = ""
        self.draw(self.desk.context)

    def void_last(self) -> None:
        super().void_last()
        self._back()

    def move_focus(self, by: int) -> bool:
        """Arrows walk the list, or scroll what is to be read."""
        if self.open_fault:
            self.query_one(".causes", VerticalScroll).scroll_relative(y=by * 2, animate=False)
            return True
        if not 0 <= self.picked + by <= len(KEYS):
            return False
        self.picked += by
        self.draw(self.desk.context)
        return True

    def action_part(self, by: int) -> None:
        """The part before, or the next one."""
        if self.open_fault:
            if by < 0:
                self._back()
            return
        self.part_index = (self.part_index + by) % (len(self.desk.context.job.parts) + 1)
        self.draw(self.desk.context)

    def on_pick_list_picked(self, event: PickList.Picked) -> None:
        event.stop()
        self.picked = event.index
        self.draw(self.desk.context)
        if event.again:
            self.enter()
