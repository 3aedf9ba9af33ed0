"""The bench on the screen: the steps at the left, the open step, the clocks that run, the keys.

All that is true stands in ``booth.bench.model``; here it is drawn, and what a press leaves over
(a menu, a question, another screen) is carried out.
"""

from __future__ import annotations

from textual.app import ComposeResult
from textual.containers import Horizontal
from textual.widgets import Static

from booth.bench import commands
from booth.bench.act import Act, Ask, CloseJob, Command, Menu, OpenStep, PickStep, Scroll
from booth.bench.menus import note_menu, skip_menu
from booth.bench.model import Bench, Rest
from booth.forms.key import Key
from booth.job.steps import steps_of
from booth.moment import Moment
from booth.screens.ask import Ask as AskScreen
from booth.screens.base import OwnScreen
from booth.screens.bench_desk import BenchDesk
from booth.screens.bench_drawing import draw_bench
from booth.screens.menu import Menu as MenuScreen
from booth.screens.sheet import Sheet
from booth.units import System
from booth.widgets.clock_strip import ClockStrip
from booth.widgets.form_view import FormView
from booth.widgets.instrument_view import InstrumentView
from booth.widgets.step_list import StepList
from booth.widgets.text import reflow
from booth.words.lines import PickLine

#: What stands at the end of every '?' of the bench.
KEYS_HEAD = "Keys. Where letters are typed the function keys do; Ctrl+P has them all by name.\n"
#: Below this the step list gives its room to the instrument.
NARROW = 72


class BenchScreen(OwnScreen[None]):
    """Leads through one job."""

    HORIZONTAL_BREAKPOINTS = [(0, "-narrow"), (NARROW, "-middle"), (120, "-wide")]
    VERTICAL_BREAKPOINTS = [(0, "-low"), (22, "-tall"), (36, "-high")]

    def __init__(self, desk: BenchDesk) -> None:
        super().__init__()
        self.desk = desk
        self.bench = Bench(desk)

    # -- keys -------------------------------------------------------------------------------

    async def press(self, key: Key, at: Moment) -> None:
        """A key, pressed at `at`."""
        if key.name == "escape":
            here = "" if self.bench.picked else self.bench.step.key
            self.bench.carry_out(Act("", (PickStep(here),)), at)
        else:
            before = self.host.clock.now()
            rest = self.bench.press(key, at)
            self.bench.stood_still(before, self.host.clock.now())
            await self._carry_out(rest)
        if self.is_attached:
            self._after()

    def _after(self) -> None:
        self.draw(self.host.clock.now())
        self.host.mind_alarms()
        if self.frames:
            self.host.tick()  # tenths are running: do not wait for the whole second

    async def _carry_out(self, rest: tuple[Rest, ...]) -> None:
        why = self.desk.taken_refusal()
        if why:
            await self.host.show(Sheet("NOT KEPT", (why,), grave=True))
            return
        for effect in rest:
            match effect:
                case Menu():
                    await self._menu(effect)
                case Ask():
                    await self._ask(effect)
                case Command(id):
                    await self.command(id)
                case Scroll(by):
                    self.query_one(InstrumentView).scroll_page(by)
                case CloseJob():
                    await self.host.leave_job()

    async def _do(self, act: Act) -> None:
        """What was chosen or answered over the bench."""
        await self._carry_out(self.bench.carry_out(act, self.host.clock.now()))
        if self.is_attached:
            self._after()

    async def _menu(self, menu: Menu) -> None:
        async def chosen(index: int | None) -> None:
            if index is not None:
                now = self.host.clock.now()
                await self._do(menu.choices[index].act(self.desk.context(self.bench.step, now)))

        lines = tuple(PickLine(each.words, each.behind, must=True) for each in menu.choices)
        await self.host.show(MenuScreen(menu.title, lines), chosen)

    async def _ask(self, ask: Ask) -> None:
        async def answered(text: str | None) -> None:
            if text is not None:
                now = self.host.clock.now()
                await self._do(ask.act(self.desk.context(self.bench.step, now), text))

        screen = AskScreen(ask.question, ask.why, needed=ask.needed, text=ask.text)
        await self.host.show(screen, answered)

    async def command(self, id: str) -> None:
        """The commands that are about this job; the others are the application's."""
        context = self.desk.context(self.bench.step, self.host.clock.now())
        match id:
            case "note":
                await self._menu(note_menu(self.desk.unkept_note))
            case "skip":
                await self._menu(skip_menu(context))
            case "log":
                from booth.screens.job_log import JobLog

                await self.host.show(JobLog(self.desk))
            case "help":
                await self.host.show(self._help())
            case "hints":
                self.host.remember("hints", self.has_class("-no-hints"))
                self.toggle_class("-no-hints")
            case "save_profile":
                from booth.screens.save_profile import save_profile

                await self._do(save_profile(self.desk))
            case "home":
                await self.host.leave_job()
            case _:
                await self.host.command(id)

    def commands(self) -> tuple[str, ...]:
        return tuple(command.id for command in commands.COMMANDS)

    def _help(self) -> Sheet:
        """How the step is done; what the figure is, its rule, its source, its limits; the keys."""
        how = " ".join(reflow(self.bench.step.how))
        instrument = self.bench.instrument
        keys = KEYS_HEAD + commands.key_table()
        told = (how, *instrument.ABOUT, keys) if how else (*instrument.ABOUT, keys)
        return Sheet(instrument.NAME, told)

    async def open_step(self, key: str) -> None:
        """Open a step by its key."""
        await self._do(Act("", (OpenStep(key),)))

    async def paste(self, text: str) -> None:
        now = self.host.clock.now()
        self.bench.paste(text, now)
        self.draw(now)

    def units_changed(self, before: System) -> None:
        """What was typed keeps its meaning under other units."""
        self.bench.units_changed(before, self.host.system, self.host.clock.now())

    def on_form_view_clicked(self, event: FormView.Clicked) -> None:
        event.stop()
        self.bench.mark(event.key)
        if event.by:
            self.press_soon("right" if event.by > 0 else "left")
        self.draw(self.host.clock.now())

    def on_instrument_view_picked(self, event: InstrumentView.Picked) -> None:
        event.stop()
        self.app.call_next(self._picked, event.index, event.again)

    async def _picked(self, index: int, again: bool) -> None:
        situation = self.bench.situation(self.host.clock.now())
        act = situation.instrument.pick(situation.context, situation.rows, index)
        if act is not None:
            await self._do(act)
        if again:
            await self.press(Key("enter"), self.host.clock.now())

    def on_step_list_chosen(self, event: StepList.Chosen) -> None:
        event.stop()
        key = steps_of(self.desk.job)[event.number - 1].key
        self.app.call_next(self.open_step, key)

    # -- drawing ----------------------------------------------------------------------------

    def compose(self) -> ComposeResult:
        yield Static("", id="status", markup=False)
        with Horizontal(id="middle"):
            yield StepList(id="steps")
            yield InstrumentView()
        yield Static("", id="small", markup=False)
        yield ClockStrip(id="clocks")
        yield Static("", id="say", markup=False)
        yield Static("", id="keys", markup=False)

    def on_mount(self) -> None:
        self.set_class(not self.host.hints, "-no-hints")
        self.draw(self.host.clock.now())

    @property
    def frames(self) -> int:
        situation = self.bench.situation(self.host.clock.now())
        return situation.instrument.frames(situation.context)

    def draw(self, now: Moment) -> None:
        """Draw everything from the job and `now`; called on every press and every tick."""
        if self.is_attached and self.is_mounted:
            draw_bench(self, self.bench, now)

    def on_resize(self) -> None:
        self.draw(self.host.clock.now())
