"""One past job in one line, and which of them are asked for. No widget here."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from booth.files.faults import counted
from booth.log.summary import JobSummary
from booth.moment import Moment
from booth.words.shown import PickLine, Tone

When = Callable[[Moment], str]

#: The shape that goes with the word of a verdict.
SHAPES = {
    "good": Tone.GOOD.shape,
    "usable": Tone.CAUTION.shape,
    "redo": Tone.LATE.shape,
    "open": Tone.RUNNING.shape,
}
WHEN_CELLS, VERDICT_CELLS = len("2025-06-15 15:06"), len("usable")


def verdict(summary: JobSummary) -> str:
    return "open" if summary.is_open else summary.verdict or "closed"


def job_line(summary: JobSummary, when: When) -> PickLine:
    """The line of a job: when, verdict, coating and parts; gun and what is broken behind it."""
    if summary.opened is None:
        return PickLine(f"{summary.path.name}  {summary.fault}", mark="!")
    word = verdict(summary)
    head = f"{when(summary.opened):<{WHEN_CELLS}}  {SHAPES.get(word, Tone.PLAIN.shape)} "
    rest = f"{summary.profile_name}: {', '.join(summary.parts)}"
    more = [summary.gun] if summary.gun else []
    if summary.broken:
        more.append(counted(summary.broken, "broken line"))
    if summary.fault:
        more.append("cannot be opened")
    name = f"{head}{word:<{VERDICT_CELLS}}  {rest}  {summary.name}"
    return PickLine(name, ", ".join(more), must=True)


def matching(summaries: Iterable[JobSummary], asked: str, when: When) -> tuple[JobSummary, ...]:
    """Give the jobs that hold every word asked for, in date, verdict, coating, parts, gun or name."""
    words = asked.casefold().split()
    if not words:
        return tuple(summaries)
    return tuple(each for each in summaries if _holds(each, words, when))


def _holds(summary: JobSummary, words: list[str], when: When) -> bool:
    opened = when(summary.opened) if summary.opened is not None else ""
    told = (
        opened,
        verdict(summary),
        summary.profile_name,
        *summary.parts,
        summary.gun,
        summary.name,
        summary.path.name,
        summary.fault,
    )
    text = " ".join(told).casefold()
    return all(word in text for word in words)
