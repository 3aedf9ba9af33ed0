"""The pace of the gun: a bar to follow, there and back, and one's own pass timed against it."""

from __future__ import annotations

from typing import ClassVar

from textual.app import ComposeResult
from textual.containers import Vertical
from textual.timer import Timer
from textual.widgets import Static

from booth.bench.context import Context
from booth.bench.instrument import Instrument, Values, number, word
from booth.instruments.pace.words import (
    length_words,
    missing_words,
    pace_readout,
    pass_s_of,
    pass_words,
    running_readout,
    timed_readout,
)
from booth.job.pace_basis import basis_of
from booth.log.events import Event, PassTimed
from booth.moment import Moment, elapsed
from booth.units import Kind, Quantity, System
from booth.widgets.entry import Field, FieldRow
from booth.widgets.figure_panel import FigurePanel
from booth.widgets.pace_bar import PaceBar, sweep
from booth.widgets.text import content, reflow
from booth.words.readout import Readout
from booth.words.tone import Tone

#: Frames of the bar a second: smooth to the eye, and little work.
FRAMES = 20
BOUNCE_S = 0.3
SWEEP, SILENT, TIME = "sweep", "silent", "time"
MODES = (
    (SWEEP, "starts the bar"),
    (SILENT, "starts it, no sound"),
    (TIME, "times your own pass"),
)


class Pace(Instrument):
    """Gun speed for the wanted film; the bar; timed passes."""

    KIND: ClassVar[str] = "pace"
    NAME: ClassVar[str] = "Pace"
    ABOUT: ClassVar[tuple[str, ...]] = (
        "Gun speed = delivery x what lands / (wet film wanted x pitch), pitch = fan x (1 - "
        "overlap): conservation of volume. Delivery, fan and overlap are this job's own where "
        "they were measured; the lines under the figure say from where each is.",
        "What lands on the part (transfer efficiency) varies with gun, part and painter by a factor "
        "of three, so the speed is an estimate with two ends: HVLP on large flat parts 60 to 70 % "
        "(common practice, no source; South Coast AQMD asks 65 %), conventional air 20 to 50 % (25 "
        "% in 40 CFR 60.313). A gauge reading at the step Wet film replaces the band by what you "
        "do: delivery of the coating caught, fan measured, and a pass timed here.",
        "The bar crosses the window in the time of one pass over the length typed: run-out at both "
        "ends counted in, the turn not. A hand holds about 0.2 to 0.8 m/s (40 to 160 ft/min; "
        "common practice, no source): a figure outside asks for another delivery, not another arm.",
        "Your own pass: Space as it begins, Space as it ends. A hand is late by about 0.2 s at "
        "either end, so long passes tell more; passes that agree within a tenth are averaged.",
        "The film is a mean: how even it is, the step Test pattern shows. The gauge decides.",
    )
    KEEPS: ClassVar[tuple[type[Event], ...]] = (PassTimed,)

    _begun: Moment | None = None
    _timing: bool = False
    _passes: int = 1
    _frames: Timer | None = None

    # -- the screen -------------------------------------------------------------------------

    def compose(self) -> ComposeResult:
        context = self.desk.context
        yield Static(content(context.step.name), classes="step-name", markup=False)
        yield Static(content(" ".join(reflow(context.step.how))), classes="how", markup=False)
        yield FigurePanel()
        yield PaceBar()
        yield Static("", classes="record", markup=False)
        with Vertical(classes="fields"):
            self._fields = self.fields(context)
            for field in self._fields:
                yield FieldRow(field, lambda: self._system)

    def fields(self, context: Context) -> tuple[Field, ...]:
        last = context.job.passes[-1].length if context.job.passes else None
        usual = Quantity(1.2192 if context.system is System.US else 1.0, "m", "")
        wet = context.profile.film.wet_um
        rows = [
            Field("mode", "Space", choices=MODES, default=SWEEP),
            Field("length", "Pass length", Kind.PART_LENGTH, default=last or usual),
            Field(
                "wet", "Wet film", Kind.THICKNESS,
                default=Quantity(wet.middle, "um", "") if wet else None,
                hint="of one coat",
            ),
        ]  # fmt: skip
        _, missing = basis_of(context.job)
        if missing:
            rows += [
                Field("delivery", "Delivery", Kind.DELIVERY, optional=True),
                Field("fan", "Fan", Kind.LENGTH, optional=True),
            ]
        return tuple(rows)

    def focus_first(self) -> None:
        self._focus(self.rows[0].place)

    @property
    def mode(self) -> str:
        """What Space does."""
        return word(self.values(), "mode") or SWEEP

    @property
    def fast(self) -> bool:
        return self._timing

    @property
    def busy(self) -> bool:
        return self._begun is not None

    def draw(self, context: Context) -> None:
        if not self.is_mounted or not self.rows:
            return
        super().draw(context)
        self.set_class(self.mode == TIME, "-timing")
        bar = self.query_one(PaceBar)
        seconds = pass_s_of(context, self.values())
        if seconds is not None:
            bar.pass_s = seconds
        self.set_class(seconds is None, "-no-pace")
        self._move_bar(context.now)

    def _move_bar(self, now: Moment) -> None:
        """Put the bar where the gun should be; a tick where it turns."""
        if self._timing or self._begun is None:
            self.query_one(PaceBar).elapsed_s = 0.0
            return
        bar = self.query_one(PaceBar)
        bar.elapsed_s = elapsed(self._begun, now).seconds
        turned = sweep(bar.elapsed_s, bar.pass_s).number
        if turned > self._passes and self.mode == SWEEP:
            self.desk.tick_sound()
        self._passes = turned

    def _frame(self) -> None:
        if self.is_mounted and self._begun is not None and not self._timing:
            self._move_bar(self.desk.context.now)

    def readout(self, context: Context, values: Values) -> Readout:
        if self._begun is not None and self._timing:
            seconds = elapsed(self._begun, context.now).seconds
            return Readout(
                f"{seconds:.1f}", "s", label=f"pass of {length_words(context, values)}",
                tone=Tone.RUNNING, word="SPACE AT ITS END", like="00.0",
            )  # fmt: skip
        if self._begun is not None:
            return running_readout(context, values)
        if self.mode == TIME:
            return timed_readout(context, values)
        return pace_readout(context, values)

    def record(self, context: Context) -> tuple[str, ...]:
        return tuple(
            f"{self.desk.local_time(each.at)}  {pass_words(each, context.system)}"
            for each in context.job.passes[-2:]
        )

    def keys(self, context: Context) -> tuple[tuple[str, str], ...]:
        if self._begun is not None:
            return (("Space", "the pass ends" if self._timing else "stop the bar"),)
        go = "the pass begins" if self.mode == TIME else "start the bar"
        return (("Space", go), ("←→", "bar, or time a pass"), ("Enter", "next step"))

    # -- what the painter does --------------------------------------------------------------

    def go(self, at: Moment) -> None:
        if self._begun is not None:
            self._stop(at)
            return
        faults = [row.fault for row in self.rows if row.fault]
        values = self.values()
        if faults:
            self.desk.say(faults[0], fault=True)
            return
        if self.mode == TIME:
            if not number(values, "length"):
                self.desk.say("A pass has a length: type it first.", fault=True)
                return
            self._timing = True
        elif pass_s_of(self.desk.context, values) is None:
            self.desk.say("No pace yet: " + ", ".join(missing_words(self.desk.context, values)),
                          fault=True)  # fmt: skip
            return
        else:
            self._frames = self._frames or self.set_interval(1 / FRAMES, self._frame)
            self._frames.resume()
        self._begun, self._passes = at, 1
        self.desk.say("")

    def _stop(self, at: Moment) -> None:
        begun = self._begun
        assert begun is not None
        seconds = elapsed(begun, at).seconds
        if self._timing and seconds < BOUNCE_S:
            return
        timing, self._timing, self._begun = self._timing, False, None
        if self._frames is not None:
            self._frames.pause()
        length = self.values().get("length")
        if timing and isinstance(length, Quantity):
            kept = PassTimed(n=0, at=begun, length=_typed(length), seconds=round(seconds, 2))
            self.desk.keep(kept)
        self.remove_class("-running")
        self.focus_first()

    def enter(self, row: FieldRow | None = None) -> None:
        if self.busy:
            self.desk.say("It is running: stop it with Space first.", fault=True)
            return
        fault = next((each.fault for each in self.rows if each.fault), "")
        if fault:
            self.desk.say(fault, fault=True)
            return
        self.desk.finish_step()


def _typed(length: Quantity) -> Quantity:
    """A length that was not typed but offered says so in figures."""
    return length if length.typed else Quantity(length.value, length.unit, f"{length.value:g} m")
