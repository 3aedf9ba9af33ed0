"""The bench: steps at the left, the instrument of the current step, the clocks that run, the keys.

It knows no instrument by name. Everything it draws comes from the Job and from now.
"""

from __future__ import annotations

import contextlib

from textual import events
from textual.app import ComposeResult
from textual.containers import Horizontal, Vertical
from textual.widgets import Static
from textual.worker import Worker, WorkerError

from booth.bench.instrument import Instrument
from booth.bench.context import Context
from booth.instruments.registry import instrument_for
from booth.job.steps import Mark, mark, next_open, steps_of
from booth.bench.commands import key_table
from booth.log.events import StepDone
from booth.moment import Moment
from booth.profile.model import Step
from booth.screens import bench_asks
from booth.screens.base import OwnScreen
from booth.screens.bench_desk import BenchDesk
from booth.screens.bindings import bench_bindings
from booth.screens.keyline import key_line, keys_now
from booth.screens.sheet import Sheet
from booth.widgets.clock_strip import ClockStrip
from booth.widgets.entry import TypedText
from booth.widgets.step_list import StepList, StepRow, StepState
from booth.widgets.text import content, reflow
from booth.screens.status_line import status_line
from booth.words.wait_words import faces

#: What stands at the end of every '?' of the bench.
KEYS_HEAD = "Keys. Where letters are typed the function keys do; Ctrl+P has them all by name.\n"
#: Below this the step list gives its room to the instrument.
NARROW = 72
LEAST_WIDTH, LEAST_HEIGHT = 58, 18


class Bench(OwnScreen[None]):
    """Leads through one job."""

    BINDINGS = bench_bindings()
    AUTO_FOCUS = ""
    HORIZONTAL_BREAKPOINTS = [(0, "-narrow"), (NARROW, "-middle"), (120, "-wide")]
    VERTICAL_BREAKPOINTS = [(0, "-low"), (22, "-tall"), (36, "-high")]

    def __init__(self, desk: BenchDesk) -> None:
        super().__init__()
        self.desk = desk
        desk.bench = self
        self.step: Step = next_open(desk.job)
        self.picking = False
        self._picked: Step = self.step
        self._opening: Worker[None] | None = None
        self._clock_count = -1
        self.unkept_note = ""

    # -- drawing -----------------------------------------------------------------------------

    def compose(self) -> ComposeResult:
        yield Static("", id="status", markup=False)
        with Horizontal(id="middle"):
            yield StepList(id="steps")
            yield Vertical(id="pane")
        yield Static("", id="small", markup=False)
        yield ClockStrip(id="clocks")
        yield Static("", id="say", markup=False)
        yield Static("", id="keys", markup=False)

    async def on_mount(self) -> None:
        await self.open_step(self.step)

    @property
    def whole(self) -> bool:
        """Whether the bench is on the screen, not on its way out."""
        return self.is_running and not self._pruning

    @property
    def instrument(self) -> Instrument | None:
        """The instrument that is open; None while one goes and the next comes."""
        return next((each for each in self.query(Instrument) if each.whole), None)

    @property
    def fast(self) -> bool:
        """Whether tenths of a second are running on this screen."""
        instrument = self.instrument
        return instrument is not None and instrument.fast

    async def open_step(self, step: Step) -> None:
        """Put the instrument of `step` in the middle."""
        self.step = step
        self.picking = False
        pane = self.query_one("#pane", Vertical)
        async with self.batch():
            await pane.remove_children()
            await pane.mount(instrument_for(step.kind)(self.desk))
        if not self.whole:
            return  # the bench was left meanwhile
        self.say("")
        self.draw(self.desk.now())

    def draw(self, now: Moment) -> None:
        """Draw everything from the job and `now`; called on every event and every tick."""
        if not self.whole:
            return
        context = self.desk.context_at(now)
        instrument = self.instrument
        if instrument is not None:
            instrument.draw(context)
        running = faces(context.job, now)
        strip = self.query_one(ClockStrip)
        strip.faces = running
        if len(running) != self._clock_count:
            self._clock_count = len(running)
            strip.display = bool(running)
            self.fit_strip()
        self._set("#status", status_line(context, self.size.width))
        self._set("#keys", key_line(self._keys(context), self.size.width))
        self.query_one(StepList).steps = self._step_rows(context)

    def fit_strip(self) -> None:
        """Give the clocks the rows they need, and no more than a third of the window."""
        strip = self.query_one(ClockStrip)
        each = max(1, self.size.width // 40)
        rows = -(-self._clock_count // each) * 2
        strip.styles.height = max(2, min(rows, self.size.height // 4))

    def _set(self, where: str, line: object) -> None:
        shown = self.query_one(where, Static)
        if getattr(shown, "said", None) != line:
            shown.said = line  # type: ignore[attr-defined]
            shown.update(line)  # type: ignore[arg-type]

    def _keys(self, context: Context) -> tuple[tuple[str, str], ...]:
        if self.picking:
            return (("↑↓", "choose"), ("Enter", "open this step"), ("Esc", "back"))
        instrument, focused = self.instrument, self.focused
        return keys_now(
            instrument.keys(context) if instrument is not None else (),
            can_void=instrument is not None and instrument.can_void(context),
            typing=isinstance(focused, TypedText),
            typed=isinstance(focused, TypedText) and bool(focused.value),
        )

    def _step_rows(self, context: Context) -> tuple[StepRow, ...]:
        states = {
            Mark.DONE: StepState.DONE,
            Mark.SKIPPED: StepState.SKIPPED,
            Mark.OPEN: StepState.OPEN,
        }
        here = self._picked if self.picking else self.step
        return tuple(
            StepRow(
                number,
                step.name,
                StepState.CURRENT if step.key == here.key else states[mark(context.job, step)],
            )
            for number, step in enumerate(steps_of(context.job), 1)
        )

    def on_resize(self) -> None:
        small = self.size.width < LEAST_WIDTH or self.size.height < LEAST_HEIGHT
        self.set_class(small, "-small")
        self.query_one("#small", Static).update(
            content(
                f"This window is {self.size.width} x {self.size.height}; the bench needs "
                f"{LEAST_WIDTH} x {LEAST_HEIGHT}. Make it larger; the clocks go on.",
            )
        )
        self._clock_count = -1
        self.draw(self.desk.now())

    def say(self, sentence: str, *, fault: bool = False) -> None:
        """Say something in the line above the keys, until the next thing happens."""
        if not self.whole:
            return
        shown = self.query_one("#say", Static)
        shown.set_class(fault, "-fault")
        shown.update(content(sentence))
        shown.display = bool(sentence)

    # -- what the painter does ----------------------------------------------------------------

    def on_key(self, event: events.Key) -> None:
        """The keys that a glove can find. Space carries the time at which it was pressed."""
        instrument = self.instrument
        if instrument is None:
            return
        if self.picking:
            self._pick(event)
        elif event.key in ("space", "pagedown"):
            event.stop()
            instrument.go(self.desk.clock.at(event.time))
            self.draw(self.desk.now())
            if instrument.fast:
                self.app.tick()  # tenths are running: do not wait for the whole second
        elif event.key in ("up", "down"):
            event.stop()
            if not self._arrow(instrument, -1 if event.key == "up" else 1):
                self._pick_steps(event.key == "up")
            self.draw(self.desk.now())
        elif event.key == "enter":
            event.stop()
            row = next((row for row in instrument.rows if row.place.has_focus), None)
            instrument.enter(row)
            self.draw(self.desk.now())
        elif event.character is not None and event.character.isdigit():
            event.stop()
            instrument.type_digit(event.character)

    @staticmethod
    def _arrow(instrument: Instrument, by: int) -> bool:
        return instrument.move_focus(by)

    def _pick_steps(self, picking: bool) -> None:
        """Into the list of steps, at the open one, or out of it: the open step stays open."""
        self.picking = picking
        self._picked = self.step

    def _pick(self, event: events.Key) -> None:
        """While a step is being picked, arrows walk the list and Enter opens."""
        steps = steps_of(self.desk.job)
        at = [step.key for step in steps].index(self._picked.key)
        if event.key in ("up", "down"):
            self._picked = steps[(at + (1 if event.key == "down" else -1)) % len(steps)]
        elif event.key in ("enter", "right", "space", "pagedown"):
            event.stop()
            self.ask_step(self._picked)
            return
        elif event.key in ("left", "backspace"):
            self.picking = False
        else:
            return  # note, log, jobs, quit work here too
        event.stop()
        self.draw(self.desk.now())

    def ask_step(self, step: Step) -> None:
        """Open a step unless a clock runs in the one that is open."""
        if self.instrument is not None and self.instrument.busy:
            self.say("A clock is running here: stop it with Space first.", fault=True)
            return
        self._opening = self.run_worker(self.open_step(step), exclusive=True)

    async def opened(self) -> None:
        """Return when the step that is being opened, if one is, stands on the screen."""
        if self._opening is not None:
            with contextlib.suppress(WorkerError):  # another step was asked for meanwhile
                await self._opening.wait()

    def on_instrument_edited(self, event: Instrument.Edited) -> None:
        """What the keys do may have changed with what the rows hold."""
        event.stop()
        self.draw(self.desk.now())

    def on_step_list_chosen(self, event: StepList.Chosen) -> None:
        event.stop()
        self.ask_step(steps_of(self.desk.job)[event.number - 1])

    def action_escape(self) -> None:
        """Back: out of picking, or into it."""
        self._pick_steps(not self.picking)
        self.draw(self.desk.now())

    def finish_step(self) -> None:
        """Enter on a step with nothing left to keep: done, or passed over with a word why."""
        instrument = self.instrument
        if instrument is None:
            return
        if self.step.must and not instrument.kept_any(self.desk.context):
            self.action_skip_step()
            return
        if self.desk.keep(StepDone(n=0, at=self.desk.now(), step=self.step.key)) is not None:
            self.go_on()

    def go_on(self) -> None:
        """Open the next open step."""
        self.ask_step(next_open(self.desk.job, after=self.step))

    def action_skip_step(self) -> None:
        """Pass over this step; a caution or a measurement asks for a word why."""
        bench_asks.skip(self)

    def action_note(self) -> None:
        """Write a note, from any step."""
        bench_asks.note(self)

    def action_home(self) -> None:
        """Back to the list of jobs, unless a clock runs here that leaving would lose."""
        if self.instrument is not None and self.instrument.busy:
            self.say("A clock is running here: stop it with Space first.", fault=True)
            return
        self.app.leave_job()

    def action_save_profile(self) -> None:
        """The settings that worked become a new coating profile."""
        from booth.screens.save_profile import save_profile

        save_profile(self.desk)

    def action_show_log(self) -> None:
        """Everything that was kept in this job."""
        from booth.screens.job_log import JobLog

        self.app.push_screen(JobLog(self.desk))

    def action_void_last(self) -> None:
        """Void the last entry of this step."""
        if self.instrument is not None:
            self.instrument.void_last()
            self.draw(self.desk.now())

    def action_go(self) -> None:
        """Start or stop from the palette or by mouse (a key is stamped in on_key)."""
        if self.instrument is not None:
            self.instrument.go(self.desk.now())
            self.draw(self.desk.now())

    def action_help(self) -> None:
        """How the step is done; what the figure is, its rule, its source, its limits; the keys."""
        if self.instrument is not None:
            how = " ".join(reflow(self.step.how))
            told = (how,) if how else ()
            about = (*told, *self.instrument.ABOUT, KEYS_HEAD + key_table())
            self.app.push_screen(Sheet(self.instrument.NAME, about))

    def action_hints(self) -> None:
        """Hide or show how each step is done."""
        self.toggle_class("-no-hints")
        self.desk.remember_hints(not self.has_class("-no-hints"))
