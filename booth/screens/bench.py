"""The bench on the screen: the steps at the left, the open step, the clocks that run, the keys.

True is what ``booth.bench.model`` holds; drawing changes nothing; ``BenchRest`` does the rest.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Any

from textual.app import ComposeResult
from textual.containers import Horizontal, Vertical
from textual.content import Content
from textual.widgets import Static

from booth.bench.act import Act, Context, OpenStep, PickStep
from booth.bench.commands import COMMANDS, PAST
from booth.bench.instrument import starting_point
from booth.bench.model import Bench
from booth.bench.next_act import Situation, key_words
from booth.clock import local_hhmm
from booth.forms.key import Key
from booth.job.steps import Mark, mark, steps_of
from booth.moment import Moment
from booth.screens.base import COVERED, OwnScreen, front_words
from booth.screens.behind_alarm import BehindAlarm
from booth.screens.bench_desk import BenchDesk
from booth.screens.bench_large import draw_large, slot
from booth.screens.bench_rest import BenchRest
from booth.screens.keyline import key_line
from booth.units import System
from booth.widgets.clock_strip import ClockStrip
from booth.widgets.form_view import FormView
from booth.widgets.instrument_view import InstrumentView
from booth.widgets.lists import StepList, StepRow, StepState
from booth.widgets.log_tail import LogTail
from booth.widgets.row_widget import Drawn
from booth.widgets.text import content, fit
from booth.words.guard_words import weather_pieces
from booth.words.shown import Parts, Picture
from booth.words.wait_words import faces

#: By then the first frame of the bench is on the screen [s].
PAINTED_S = 0.3
#: Below this lists keep to themselves what stands beside them.
NARROW = 72
#: From this width on the steps stand beside the figure all the time.
RAIL = 140


class BenchScreen(OwnScreen[None]):
    """Leads through one job."""

    WORK: tuple[str, ...] = tuple(command.id for command in COMMANDS if command.id not in PAST)
    HORIZONTAL_BREAKPOINTS = [(0, "-narrow"), (NARROW, "-middle"), (RAIL, "-wide")]
    VERTICAL_BREAKPOINTS = [(0, "-low"), (28, "-tall"), (36, "-high")]

    def __init__(self, desk: BenchDesk) -> None:
        super().__init__()
        self.desk = desk
        self._seen: tuple[object, ...] = ()
        self._slot = -1
        self.bench = Bench(desk)
        self.rest = BenchRest(self)
        self.behind = BehindAlarm(self)

    async def press(self, key: Key, at: Moment) -> None:
        """A key, pressed at `at`."""
        if key.name == "escape":
            here = "" if self.bench.picked else self.bench.step.key
            self.bench.carry_out(Act("", (PickStep(here),)), at)
        else:
            before = self.host.clock.now()
            rest = self.bench.press(key, at)
            self.bench.stood_still(before, self.host.clock.now())
            await self.rest.carry_out(rest)
        self.look_again()

    def look_again(self) -> None:
        """Something was done: draw it, and let ring what rings now."""
        if not self.is_attached:
            return
        self.draw(self.host.clock.now())
        self.host.alarms.mind()
        if self.frames:
            self.host.tick()  # tenths are running: do not wait for the whole second

    async def command(self, id: str) -> None:
        await self.rest.command(id)

    async def open_step(self, key: str) -> None:
        """Open a step by its key."""
        await self.rest.do(Act("", (OpenStep(key),)))

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

    def on_drawn_picked(self, event: Drawn.Picked) -> None:
        event.stop()
        self.app.call_next(self.rest.pick, event.index, event.again)

    def on_step_list_picked(self, event: StepList.Picked) -> None:
        event.stop()
        key = steps_of(self.desk.job)[event.index].key
        self.app.call_next(self.open_step, key)

    def compose(self) -> ComposeResult:
        yield Static("", id="status", markup=False)
        with Horizontal(id="middle"):
            with Vertical(id="rail"):
                yield StepList(id="steps")
                yield LogTail(id="log")
            yield InstrumentView()
        yield Static("", id="small", markup=False)
        yield ClockStrip(id="clocks")
        yield Static("", id="say", markup=False)
        yield Static("", id="keys", markup=False)

    def on_mount(self) -> None:
        self.set_class(not self.host.preferences.hints, "-no-hints")
        self.draw(self.host.clock.now())
        self.set_timer(PAINTED_S, self.desk.read_past)

    @property
    def frames(self) -> int:
        situation = self.bench.situation(self.host.clock.now())
        return situation.instrument.frames(situation.context)

    def draw(self, now: Moment) -> None:
        """Draw everything from the job and `now`; called on every press and every tick."""
        if not (self.is_attached and self.is_mounted):
            return
        bench, situation = self.bench, self.bench.situation(now)
        frames = situation.instrument.frames(situation.context)  # 0 again where a time ran out
        held = (bench.form, bench.step, bench.offer, bench.picked, bench.said, frames)
        seen: tuple[object, ...] = (self.desk.job, *held, self.host.system, *self.size)
        same = bool(self._seen) and all(a is b for a, b in zip(seen, self._seen, strict=True))
        if not same or slot(now) != self._slot:
            self._slot = slot(now)
            draw_large(self, situation)
        draw_moving(self, situation)
        if not same or frames:
            self._seen = seen
            draw_standing(self, bench, situation)


LEAST_WIDTH, LEAST_HEIGHT = 58, 18
STATES = {each: StepState[each.name] for each in Mark}


def draw_moving(screen: OwnScreen[Any], situation: Situation) -> None:
    """Draw what a second can change."""
    pictures = _draw_instrument(screen.query_one(InstrumentView), situation)
    context = situation.context
    screen.query_one(StepList).shown = _step_rows(situation)
    # Where the parts stand in a list, that has every clock.
    listed = any(isinstance(each, Parts) for each in pictures) and not _is_small(screen)
    screen.query_one(ClockStrip).shown = () if listed else faces(context.job, context.now)
    # A wait that opens and a reading that grows old change what a key does, and what is marked.
    screen.put("#status", status_line(context, screen.size.width))
    screen.put("#keys", key_line(_words(screen, situation), screen.size.width))


def _words(screen: OwnScreen[Any], situation: Situation) -> tuple[tuple[str, str], ...]:
    """The keys with their words: what an alarm leaves of them, and how it is silenced."""
    first, own = front_words(screen, situation.context.now), key_words(situation)
    if screen.has_class(COVERED):
        return first
    return (*own[:1], *first, *own[1:])


def draw_standing(screen: OwnScreen[Any], bench: Bench, situation: Situation) -> None:
    """Draw what only a key, an entry or the window can change."""
    screen.set_class(bool(situation.picked), "-picking")
    screen.say(bench.said[0], fault=bench.said[1])
    _draw_small(screen)


def _draw_instrument(view: InstrumentView, situation: Situation) -> tuple[Picture, ...]:
    """Draw the open step; gives its pictures."""
    context, rows, instrument = situation.context, situation.rows, situation.instrument
    view.title(instrument.KIND, context.step.how)
    view.set_class(instrument.kept_any(context), "-kept")
    view.set_class(bool(instrument.frames(context)), "-running")
    view.figure(instrument.readout(context, rows.values))
    pictures = instrument.picture(context, rows.values)
    view.pictures(pictures)
    view.record(instrument.record(context) or starting_point(instrument, context))
    view.form(rows)
    return pictures


def _step_rows(situation: Situation) -> tuple[StepRow, ...]:
    job, here = situation.context.job, situation.picked or situation.context.step.key
    now = situation.context.now
    return tuple(
        StepRow(
            number,
            step.name,
            StepState.CURRENT if step.key == here else STATES[mark(job, step, now)],
        )
        for number, step in enumerate(steps_of(job), 1)
    )


def _is_small(screen: OwnScreen[Any]) -> bool:
    return screen.size.width < LEAST_WIDTH or screen.size.height < LEAST_HEIGHT


def _draw_small(screen: OwnScreen[Any]) -> None:
    """Where nothing can be read, say what is needed."""
    size, small = screen.size, _is_small(screen)
    screen.set_class(small, "-small")
    if small:
        said = (
            f"This window is {size.width} x {size.height}; the bench needs "
            f"{LEAST_WIDTH} x {LEAST_HEIGHT}. Make it larger; the clocks go on."
        )
        screen.put("#small", content(said))


# -- the line above the bench ------------------------------------------------------------------


#: The step has so much room at least.
LEAST_LEFT = 24
LEAST_PRODUCT = 18
BETWEEN = "  "
OUT, DIM, BOLD = "bold $tone-caution", "$quiet", "bold"
DEMO = "DEMO FIGURES", "DEMO"
REHEARSAL = "REHEARSAL"


def status_line(context: Context, width: int) -> Content:
    """At the left which step of how many; at the right the weather, the product, the time of day.

    Where room is short there stands of the weather what is out of its limits, and the product gives
    way to it. That figures are invented, or all of it is rehearsed, is always said.
    """
    job = context.job
    keys = [each.key for each in steps_of(job)]
    at = keys.index(context.step.key) + 1 if context.step.key in keys else len(keys)
    step = f"{at}/{len(keys)} {context.step.name}"
    pieces = weather_pieces(job, context.now, context.system)
    product, hhmm = job.opened.present(job.product), local_hhmm(context.now)
    marks = bool(job.opened.rehearsal), context.profile.demo
    return _put_together(step, pieces, product, *marks, hhmm, width)


# Most seconds it is the same.
@lru_cache(maxsize=8)
def _put_together(
    step: str,
    pieces: tuple[tuple[str, bool], ...],
    name: str,
    rehearsal: bool,
    demo: bool,
    hhmm: str,
    width: int,
) -> Content:
    room = width - 2
    weather = [(words, OUT if is_out else DIM) for words, is_out in pieces]
    bad = [each for each in weather if each[1] == OUT]
    margin = [each for each in weather if each[0].startswith("dew margin")]
    product = [(name, DIM)]
    time = [*([(REHEARSAL, OUT)] if rehearsal else []), (hhmm, BOLD)]
    long, short = ([(each, DIM)] if demo else [] for each in DEMO)
    least = min(len(step), LEAST_LEFT) + len(BETWEEN)
    tries = (
        [*weather, *product, *long],
        [*(bad or margin), *product, *long],
        [*bad, *product, *long],
        [*bad, *product, *short],
        [*bad, (fit(product[0][0], LEAST_PRODUCT), DIM), *short],
        [*bad, *short],
        [*bad[:1], *short],
    )
    fits = (each for tried in tries if least + _length(each := [*tried, *time]) <= room)
    right = next(fits, [*short, *time])
    left = fit(step, max(room - _length(right) - len(BETWEEN), 1))
    gap = " " * max(1, room - Content(left).cell_length - _length(right))
    joined = [each for piece in right for each in ((BETWEEN, ""), piece)][1:]
    return Content.assemble((left, BOLD), gap, *joined)


def _length(pieces: list[tuple[str, str]]) -> int:
    return Content(BETWEEN.join(words for words, _ in pieces)).cell_length
