"""What the bench asks for in words: why a step is passed over, and notes."""

from __future__ import annotations

from typing import TYPE_CHECKING

from booth.log.events import NoteMade, StepSkipped
from booth.screens.ask import Ask

if TYPE_CHECKING:
    from booth.screens.bench import Bench


def skip(bench: Bench) -> None:
    """Pass over the open step; a caution or a measurement asks for a word why."""

    def skipped(why: str | None) -> None:
        if bench.step.must and why is None:
            bench.say("Not skipped.")
            return
        now = bench.desk.now()
        event = StepSkipped(n=0, at=now, step=bench.step.key, why=why or "")
        if bench.desk.keep(event) is not None:
            bench.go_on()

    if bench.step.must:
        question = f"Skip '{bench.step.name}'? A word why:"
        bench.app.push_screen(Ask(question, needed=True), skipped)
    else:
        skipped("")


def note(bench: Bench) -> None:
    """Write a note; one that could not be kept is there to be kept again."""

    def noted(text: str | None) -> None:
        if not text:
            return
        bench.unkept_note = text
        if bench.desk.keep(NoteMade(n=0, at=bench.desk.now(), text=text)) is not None:
            bench.unkept_note = ""
            bench.say("Noted.")

    bench.app.push_screen(Ask("Note", text=bench.unkept_note), noted)
