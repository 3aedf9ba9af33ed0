"""One past job in one line, and which of them are asked for. No widget here."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from textual.content import Content

from booth.log.summary import JobSummary
from booth.moment import Moment
from booth.widgets.text import fit, pad, plain
from booth.words.tone import Tone

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
    """The verdict in a word; 'open' for a job that is not closed."""
    return "open" if summary.is_open else summary.verdict or "closed"


def job_line(summary: JobSummary, when: When, width: int) -> Content:
    """Give the line of a job: when, verdict, coating and parts, gun; never wider than `width`."""
    if summary.opened is None:
        said = f"! {plain(summary.path.name)}  {plain(summary.fault)}"
        return Content.assemble((fit(said, width), "bold"))
    word = verdict(summary)
    head = f"{when(summary.opened):<{WHEN_CELLS}}  {SHAPES.get(word, Tone.PLAIN.shape)} "
    rest = f"{summary.profile_name}: {', '.join(summary.parts)}"
    room = max(0, width - len(head) - VERDICT_CELLS - 2)
    more = [summary.gun] if summary.gun else []
    if summary.broken:
        more.append(f"{summary.broken} broken line{'s' if summary.broken != 1 else ''}")
    beside = fit(", ".join(more), room // 2)
    if beside and room > 40:
        rest = pad(rest, room - len(beside) - 2) + "  " + beside
    return Content.assemble(head, (pad(word, VERDICT_CELLS), "bold"), "  ", fit(rest, room))


def matching(summaries: Iterable[JobSummary], asked: str, when: When) -> tuple[JobSummary, ...]:
    """Give the jobs that hold every word asked for, in date, verdict, coating, parts, gun or name."""
    words = asked.casefold().split()
    return tuple(each for each in summaries if _holds(each, words, when)) if words else tuple(
        summaries
    )  # fmt: skip


def _holds(summary: JobSummary, words: list[str], when: When) -> bool:
    opened = when(summary.opened) if summary.opened is not None else ""
    told = (
        opened, verdict(summary), summary.profile_name, *summary.parts, summary.gun, summary.job,
        summary.path.name, summary.fault,
    )  # fmt: skip
    text = " ".join(told).casefold()
    return all(word in text for word in words)
