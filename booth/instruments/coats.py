"""Coats and waits: Space when a coat on a part begins, Space when it ends; every part's wait at once."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar

from textual.app import ComposeResult
from textual.widgets import Static

from booth.instruments.base import Instrument, Values
from booth.instruments.context import Context
from booth.job.coating import begin_coat, end_coat
from booth.job.steps import steps_of
from booth.job.waits import Standing, State, What, standings
from booth.log.events import CoatBegun, CoatEnded, Event, TouchTried
from booth.moment import Moment, elapsed
from booth.widgets.figure_panel import FigurePanel
from booth.widgets.part_table import PartRow, PartTable
from booth.widgets.text import content, reflow
from booth.words.readout import Readout
from booth.words.tone import Tone
from booth.words.wait_words import TONES, duration, state_word, time_words, what_words


class Coats(Instrument):
    """The parts, one of them chosen; the chosen one's clock is the large figure."""

    KIND: ClassVar[str] = "coats"
    NAME: ClassVar[str] = "Coats and waits"
    ABOUT: ClassVar[tuple[str, ...]] = (
        "Space when the first pass of a coat on the chosen part begins, Space when its last pass "
        "ends. Flash-off starts by itself at the end. Arrows choose the part.",
        "WAIT: flash-off, or the recoat window has not opened. READY: the next coat may go on. "
        "CLOSING: the last fifth of the window, at most half an hour. LATE: the window has closed; "
        "what helps then (often sanding) is in the product's data sheet.",
        "A wait marked ~ is an estimate: the profile gives one time at one temperature, and no "
        "published law scales flash-off. It is stretched in the cold and never shortened in the "
        "warm; a closing window is shortened in the warm and never lengthened in the cold.",
        "The arrow to the right goes to the wet-film gauge while the coat is wet; Enter, with "
        "nothing typed there, comes back.",
        "A touch test always decides. Touch where it does not show: w wet, k tacky, d dry. Dry "
        "opens the wait; wet or tacky puts it off by a quarter.",
    )
    KEEPS: ClassVar[tuple[type[Event], ...]] = (CoatBegun, CoatEnded, TouchTried)

    BINDINGS = [
        ("d", "touch('dry')", "touched dry"),
        ("k", "touch('tacky')", "touched tacky"),
        ("w", "touch('wet')", "touched wet"),
        ("right", "gauge", "the wet-film gauge"),
    ]

    part_index: int = 0

    def compose(self) -> ComposeResult:
        yield Static(content(self.desk.context.step.name), classes="step-name", markup=False)
        yield Static(content(" ".join(reflow(self.desk.context.step.how))), classes="how",
                     markup=False)  # fmt: skip
        yield FigurePanel()
        yield PartTable()

    def on_mount(self) -> None:
        job = self.desk.context.job
        running = [at for at, part in enumerate(job.parts) if job.running_coat(part)]
        if running:
            self.part_index = running[0]
        else:
            self._on_to_next_part()
        super().on_mount()

    @property
    def part(self) -> str:
        """The chosen part."""
        return self.desk.context.job.parts[self.part_index]

    def draw(self, context: Context) -> None:
        if not self.is_mounted:
            return
        by_part: dict[str, Standing] = {}
        for each in standings(context.job, context.now):
            by_part.setdefault(each.wait.part, each)  # the most urgent comes first
        rows = tuple(part_row(context, part, by_part.get(part)) for part in context.job.parts)
        self.set_class(any(context.job.coats.values()), "-kept")
        table = self.query_one(PartTable)
        table.chosen = self.part_index
        table.rows = rows
        self.query_one(FigurePanel).readout = part_readout(
            context, self.part, by_part.get(self.part)
        )

    def readout(self, context: Context, values: Values) -> Readout:
        return part_readout(context, self.part, None)

    def kept_any(self, context: Context) -> bool:
        return any(
            coat.ended is not None
            for part in context.job.parts
            for coat in context.job.coats_on(part)
        )

    @property
    def busy(self) -> bool:
        return False  # a coat is a logged moment: leaving the screen loses nothing

    def keys(self, context: Context) -> tuple[tuple[str, str], ...]:
        running = context.job.running_coat(self.part)
        number = len(context.job.coats_on(self.part)) + 1
        go = f"end coat {running.number}" if running else f"begin coat {number}"
        gauge = (("→", "gauge"),) if self._can_gauge(context) else ()
        return (
            ("Space", f"{go}: {self.part}"),
            ("↑↓", "part"),
            *gauge,
            ("d k w", "touched dry, tacky, wet"),
            ("Enter", "next step"),
        )

    @staticmethod
    def _can_gauge(context: Context) -> bool:
        """Whether there is a wet film, and a step to read it in."""
        job = context.job
        return any(job.coats.values()) and any(step.kind == "film" for step in steps_of(job))

    def action_gauge(self) -> None:
        """Straight to the gauge, while the film is wet; Enter there comes back."""
        if self._can_gauge(self.desk.context):
            self.desk.open_kind("film")

    def move_focus(self, by: int) -> bool:
        """Arrows choose the part."""
        at = self.part_index + by
        if not 0 <= at < len(self.desk.context.job.parts):
            return False
        self.part_index = at
        self.draw(self.desk.context)
        return True

    def on_part_table_chosen(self, event: PartTable.Chosen) -> None:
        event.stop()
        self.part_index = event.index
        self.draw(self.desk.context)

    def go(self, at: Moment) -> None:
        """Begin or end the coat on the chosen part, at the moment of the key press."""
        job, part = self.desk.context.job, self.part
        if job.running_coat(part) is not None:
            if self.desk.keep(end_coat(job, part, at)) is not None:
                self._on_to_next_part()
            return
        begun = begin_coat(job, part, at)
        if self.desk.keep(begun) is None:
            return
        warnings = begun_words(begun, standings(self.desk.context.job, at))
        if warnings:
            self.desk.say(" ".join(warnings), fault=True)

    def _on_to_next_part(self) -> None:
        """After a coat the part that wants the next one is chosen: fewest coats, longest waiting."""
        job = self.desk.context.job
        wanted = job.profile.film.coats
        waiting = [
            (len(coats), coats[-1].begun.n if coats else 0, index)
            for index, coats in enumerate(job.coats_on(part) for part in job.parts)
            if len(coats) < wanted and (not coats or coats[-1].ended is not None)
        ]
        if waiting:
            self.part_index = min(waiting)[2]
            self.draw(self.desk.context)

    def action_touch(self, result: str) -> None:
        """A touch test on the chosen part."""
        context = self.desk.context
        coats = context.job.coats_on(self.part)
        if not coats or coats[-1].ended is None:
            self.desk.say(f"{self.part}: no coat is flashing off.", fault=True)
            return
        event = TouchTried(n=0, at=context.now, part=self.part, result=result)
        if self.desk.keep(event) is not None:
            self.desk.say(f"{self.part}: touched {result}.")


def begun_words(begun: CoatBegun, now: Sequence[Standing]) -> tuple[str, ...]:
    """What speaks against the coat that has just been begun; it is in the log all the same. Pure."""
    said = [
        f"{each.wait.title}: its pot life is over. Do not spray it."
        for each in now
        if each.wait.what is What.POT_LIFE and each.state is State.LATE
    ]
    if begun.early_s > 0:
        said.append(
            f"{begun.part}: {duration(begun.early_s)} before its wait was over. It is in the log; "
            "solvent shut in shows as pop or sags."
        )
    elif begun.late_s > 0:
        said.append(
            f"{begun.part}: the recoat window closed {duration(begun.late_s)} ago. The data sheet "
            "says what that needs (often sanding)."
        )
    return tuple(said)


def part_row(context: Context, part: str, each: Standing | None) -> PartRow:
    """One part as a row of the table. Pure."""
    job = context.job
    coats = job.coats_on(part)
    finished = sum(coat.ended is not None for coat in coats)
    wanted = job.profile.film.coats
    running = job.running_coat(part)
    if running is not None:
        tone, word = Tone.RUNNING, "SPRAYING"
        time = duration(elapsed(running.begun.at, context.now).seconds)
        what = f"coat {running.number}"
    elif each is not None:
        tone, word, time, what = (
            TONES[each.state],
            state_word(each),
            time_words(each),
            what_words(each),
        )
    elif finished >= wanted:
        tone, word, time, what = Tone.GOOD, "COATED", "", "all coats are on"
    else:
        tone, word, time, what = Tone.PLAIN, "", "", f"coat {finished + 1} to do"
    estimate = each is not None and each.wait.estimate and running is None
    return PartRow(part, f"{finished}/{wanted}", tone, word, time, what, estimate)


def part_readout(context: Context, part: str, each: Standing | None) -> Readout:
    """The chosen part's clock as the large figure. Pure."""
    job = context.job
    running = job.running_coat(part)
    if running is not None:
        seconds = elapsed(running.begun.at, context.now).seconds
        return Readout(
            duration(seconds), label=f"{part}: coat {running.number}", tone=Tone.RUNNING,
            word="SPRAYING", like="00:00",
        )  # fmt: skip
    if each is None:
        number = len(job.coats_on(part)) + 1
        over = number > job.profile.film.coats
        return Readout(
            "DONE" if over else f"COAT {number}",
            label=part,
            tone=Tone.GOOD if over else Tone.PLAIN,
            word="" if not over else "all coats are on",
        )
    lines = []
    if each.wait.estimate:
        lines.append(f"~ estimate: {each.wait.rule}")
    elif each.wait.rule:
        lines.append(each.wait.rule)
    if each.state is State.LATE and each.wait.what is What.NEXT_COAT:
        lines.insert(0, "Window closed: the data sheet says what that needs.")
    if each.doubtful:
        lines.insert(0, "The wall clock is before the start of this wait: check the clock.")
    figure = time_words(each) or state_word(each)
    if each.state is State.READY and not each.doubtful:
        # What matters is that it may go on; the far end of the window can be read beneath.
        figure = state_word(each)
        if each.remaining_s is not None:
            lines.insert(0, f"window closes in {time_words(each)}")
    return Readout(
        figure,
        label=f"{part}: {what_words(each)}",
        tone=Tone.CAUTION if each.doubtful else TONES[each.state],
        word=state_word(each) if figure != state_word(each) else "",
        lines=tuple(lines),
        like="00:00" if len(figure) <= 5 else "",
    )
