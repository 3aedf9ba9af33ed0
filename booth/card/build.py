"""A job's events made into a card. Pure: how a moment is written is handed in.

Only what was kept is told: what nobody measured is left out or said to be missing, never filled in.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence

from booth.card.coats import coat_lines, films_in_all, parts_line
from booth.card.facts import facts_of, missing_of
from booth.card.model import Block, Card, Entry, Fact, Judged, TimeLine
from booth.files.safe_text import visible
from booth.job.products import products_of
from booth.job.today import around
from booth.job.verdicts import finished, judgements, next_time, seen_later
from booth.log import events as ev
from booth.log.fold import Job, NoJob, fold
from booth.moment import Moment
from booth.units import Kind, System, show
from booth.words.event_words import teller
from booth.words.last_good_words import fault_name
from booth.words.shown import Paper, Section

When = Callable[[Moment], str]
Kept = ev.Event | ev.UnknownEvent
#: Entries that tell a reader of the card little: they leave the paper first.
MINOR = (
    *(ev.StepDone, ev.LineTicked, ev.CautionAcknowledged, ev.AlarmAcknowledged, ev.Poured),
    *(ev.StopwatchStarted, ev.StopwatchStopped, ev.StopwatchDropped, ev.Voided, ev.Restored),
    *(ev.CoatBegun, ev.CoatEnded, ev.FilmRead),  # which the card tells
)


def card_of(
    events: Iterable[Kept],
    system: System,
    time_of: When,
    date_of: When,
    said: Sequence[str] = (),
    name: str = "",
    pictures: bool = False,
) -> Card:
    """Give the card of a job.

    time_of, date_of: write a moment as local time of day and as local date; said: what is wrong with
    the log; name: what lists call the job; pictures: whether what is drawn is wanted too.
    """
    events = list(events)
    told = tuple(visible(sentence) for sentence in said)
    try:
        job = fold(events)
    except NoJob as fault:
        none = f"This log holds no job: {visible(str(fault))}."
        entries = tuple(_entries(events, None, system, time_of, date_of))
        return Card(none, visible(name), said=told, entries=entries)
    later = seen_later(job)
    return Card(
        title=visible(job.opened.title),
        name=visible(name or job.opened.job),
        demo=any(each.demo for each in job.opened.products),
        said=told,
        judged=tuple(_judged(job, time_of, date_of)),
        is_open=job.closed is None,
        next_time=visible(next_time(job)),
        rehearsal=job.opened.rehearsal,
        to_change=tuple(map(visible, job.closed.to_change)) if job.closed is not None else (),
        faults=_faults([each for each in job.faults if each not in later]),
        later=tuple(f"{each}, seen later" for each in _faults(later)),
        since=tuple(
            f"{visible(each.work)}{f' ({visible(each.part)})' if each.part else ''} {date_of(each.at)}"
            for each in finished(job)
        ),
        head=tuple(_head(job, system, time_of, date_of)),
        blocks=tuple(_blocks(job, system, time_of, date_of, pictures)),
        line=_line(job, system, time_of, date_of) if pictures else None,
        entries=tuple(_entries(events, job, system, time_of, date_of)),
    )


def _judged(job: Job, time_of: When, date_of: When) -> Iterator[Judged]:
    for each in reversed(judgements(job)):
        yield Judged(
            visible(each.verdict),
            f"{date_of(each.at)} {time_of(each.at)}",
            visible(each.words),
            isinstance(each, ev.JudgedAgain),
        )


def _faults(seen: Iterable[ev.FaultSeen]) -> tuple[str, ...]:
    """Each fault once, with the parts on which it was seen: 'runs and sags (hood, door)'."""
    where: dict[str, list[str]] = {}
    for each in seen:
        where.setdefault(each.fault, []).append(visible(each.part))
    found = []
    for key, parts in where.items():
        on = ", ".join(dict.fromkeys(filter(None, parts)))
        found.append(f"{fault_name(key)}{f' ({on})' if on else ''}")
    return tuple(found)


def _head(job: Job, system: System, time_of: When, date_of: When) -> Iterator[Fact]:
    yield Fact("Parts", parts_line(job))
    opened, closed = job.opened.at, job.closed
    yield Fact("Opened", f"{date_of(opened)} {time_of(opened)}")
    if closed is not None:
        yield Fact("Closed", f"{date_of(closed.at)} {time_of(closed.at)}")
    own = around(job)
    if own.gun or own.tip_mm is not None:
        tip = f"tip {show(own.tip_mm, Kind.TIP, system)}" if own.tip_mm is not None else ""
        yield Fact("Gun", ", ".join(filter(None, (visible(own.gun), tip))))


def _blocks(
    job: Job, system: System, time_of: When, date_of: When, pictures: bool
) -> Iterator[Block]:
    """A block for each product that was begun; what was to follow and was not is told as such."""
    begun = products_of(job)
    for at, own in enumerate(begun):
        following = begun[at + 1].begun if at + 1 < len(begun) else None
        until = following.n if following is not None else None
        coats = tuple(coat_lines(own, system, time_of, date_of))
        pattern, paper, section = _pattern(own, system) if pictures else ("", None, None)
        yield Block(
            title=visible(job.opened.present(own.product)),
            demo=own.profile.demo,
            about=tuple(_about(own)),
            facts=facts_of(own, system, time_of, until),
            missing=missing_of(own, any(each.wet for each in coats)),
            coats=coats,
            film=() if job.opened.rehearsal else tuple(films_in_all(own, system)),
            pattern=pattern,
            paper=paper,
            section=section,
        )
    for number in range(len(begun) + 1, len(job.opened.products) + 1):
        profile = job.opened.products[number - 1]
        about = (Fact("not begun", ""),)
        yield Block(visible(job.opened.present(number)), profile.demo, about)


def _about(own: Job) -> Iterator[Fact]:
    profile = own.profile
    if profile.product:
        yield Fact("Product", visible(profile.product))
    yield Fact("From", visible(profile.source))


# What is drawn loads the instruments; a text has no need of them.


def _pattern(job: Job, system: System) -> tuple[str, Paper | None, Section | None]:
    from booth.card.pictures import pattern_drawn

    return pattern_drawn(job, system)


def _line(job: Job, system: System, time_of: When, date_of: When) -> TimeLine | None:
    from booth.card.pictures import time_line

    return time_line(job, system, time_of, date_of)


def _entries(
    events: Sequence[Kept], job: Job | None, system: System, time_of: When, date_of: When
) -> Iterator[Entry]:
    told = teller(system, job)
    for each in events:
        void = job is not None and each.n in job.void
        minor = void or isinstance(each, MINOR)
        yield Entry(each.n, date_of(each.at), time_of(each.at), told(each), void, minor)
