"""What a painter answers where the machine's clock is in doubt: how long ago something was. Pure.

An answer is an entry of the log: from then on the waits that it begins are counted from it.
"""

from __future__ import annotations

from functools import partial

import msgspec

from booth.bench.act import Act, Ask, Choice, Context, Keep, Menu, Say, refused
from booth.files.safe_text import visible
from booth.job.wait import Standing, standing
from booth.job.waits import waits
from booth.log.changes import AgeTold
from booth.units import EntryError, Kind, read
from booth.words.wait_words import length

DOUBT = "The clock is in doubt: say how long ago"
WHY = "Until it is known how long ago that was, nothing of it can be counted."
#: Clocks are read one after the other: so much less than what is certain is no contradiction [s].
SLACK_S = 1.0


class Doubted(msgspec.Struct, frozen=True):
    """An entry whose age is in doubt. n: its number; what: how it is called; certain_s: so long ago at
    least; shown_s: by the clock as it is, None where that cannot be; closes: a window may have closed."""

    n: int
    what: str
    certain_s: float
    shown_s: float | None
    closes: bool


def doubted(context: Context) -> tuple[Doubted, ...]:
    """Every entry whose age is in doubt now, in the order of the waits."""
    job, now = context.job, context.now
    found: dict[int, list[Standing]] = {}
    for wait in waits(job):
        each = standing(wait, now, job.boots)
        if each.doubtful:
            found.setdefault(wait.since_n, []).append(each)
    return tuple(_doubted(context, own) for own in found.values())


def _doubted(context: Context, own: list[Standing]) -> Doubted:
    first = own[0]
    wait, certain_s = first.wait, first.elapsed_s
    shown_s = context.now.wall - wait.start.wall
    what = f"{visible(wait.part)}, coat {wait.coat}" if wait.part else wait.title
    is_possible = shown_s >= certain_s - SLACK_S and shown_s <= Kind.TIME.high
    closes = any(each.wait.closes_s is not None for each in own)
    return Doubted(
        wait.since_n, what, certain_s, max(shown_s, 0.0) if is_possible else None, closes
    )


def answers(context: Context) -> tuple[Choice, ...]:
    """The line of a menu that leads to the answers; nothing while no clock is in doubt."""
    if not doubted(context):
        return ()
    return (Choice(DOUBT, lambda now: Act("", (Menu(DOUBT, _choices(now)),))),)


def _choices(context: Context) -> tuple[Choice, ...]:
    found = doubted(context)
    every: list[Choice] = []
    possible = [each for each in found if each.shown_s is not None]
    if len(possible) > 1:
        every.append(Choice("The clock is right: all as it says below", _all_right))
    for each in found:
        if each.shown_s is not None:
            words = f"{each.what}: the clock is right, {length(each.shown_s)} ago"
            every.append(Choice(words, partial(_told, each=each, ago_s=each.shown_s)))
        every.append(Choice(f"{each.what}: say how long ago…", partial(_asked, each=each)))
        if not each.closes:
            # What opens may be counted anew: it only gets longer. What closes may not.
            words = f"{each.what}: wait anew, {length(each.certain_s)} are certain"
            every.append(Choice(words, partial(_told, each=each, ago_s=each.certain_s)))
    return tuple(every)


def _all_right(context: Context) -> Act:
    kept = tuple(
        Keep(AgeTold(n=0, at=context.now, target=each.n, ago_s=each.shown_s))
        for each in doubted(context)
        if each.shown_s is not None
    )
    return Act("the clock is right", (*kept, Say("Counted from the clock as it is.")))


def _told(context: Context, each: Doubted, ago_s: float) -> Act:
    told = AgeTold(n=0, at=context.now, target=each.n, ago_s=ago_s)
    return Act("so long ago", (Keep(told), Say(f"{each.what}: {length(ago_s)} ago, as you said.")))


def _asked(_: Context, each: Doubted) -> Act:
    question = f"{each.what}: how long ago was that? (as 45 min)"
    return Act("", (Ask(question, partial(_read, each=each), WHY, needed=True),))


def _read(context: Context, text: str, each: Doubted) -> Act:
    try:
        ago_s = read(text, Kind.TIME, context.system).value
    except EntryError as fault:
        return refused(str(fault))
    now = {found.n: found for found in doubted(context)}.get(each.n, each)
    if ago_s < now.certain_s - SLACK_S:
        return refused(f"{each.what}: at least {length(now.certain_s)} have passed for certain.")
    return _told(context, each, ago_s)
