"""Waits as they are shown: the same words and times on the bench, on the home screen and in alarms."""

from __future__ import annotations

import math
import re
from collections.abc import Callable

from booth.files.safe_text import visible
from booth.job.wait import Standing, State, Wait, What
from booth.job.waits import standings
from booth.log.fold import Job
from booth.moment import Basis, Moment, elapsed, later
from booth.units import System
from booth.units.durations import length as length
from booth.units.durations import rough as rough
from booth.units.durations import spelled as spelled
from booth.units.sentences import in_units
from booth.words.shown import ClockFace, Tone

TONES = {
    State.WAIT: Tone.WAIT,
    State.READY: Tone.READY,
    State.UNKNOWN: Tone.CAUTION,
    State.CLOSING: Tone.CLOSING,
    State.LATE: Tone.LATE,
}


def duration(seconds: float) -> str:
    """Time as m:ss, h:mm:ss, or days and hours, rounded down.

    >>> duration(200), duration(3723), duration(200000)
    ('3:20', '1:02:03', '2 d 07 h')
    """
    whole = max(int(seconds), 0)
    days, rest = divmod(whole, 86400)
    hours, rest = divmod(rest, 3600)
    minutes, secs = divmod(rest, 60)
    if days:
        return f"{days} d {hours:02d} h"
    if hours:
        return f"{hours}:{minutes:02d}:{secs:02d}"
    return f"{minutes}:{secs:02d}"


#: What to do where only the product's maker knows when.
NO_TOUCH = "Touch cannot tell: its data sheet or its maker says when."
NOT_OPENED = "The time that is counted stands: a touch opens nothing here."
TOUCH = "Touch it where it does not show."


def unknown_words(each: Standing) -> str:
    """What is to be known of a wait that is not known, and what to do."""
    return f"Not known. {TOUCH if each.wait.by_touch else NO_TOUCH} The time is since the coat."


def what_words(each: Standing) -> str:
    """What the wait is for, in its present state."""
    wait = each.wait
    if wait.what is What.NEXT_COAT:
        whose, until = f"coat {wait.coat + 1}", "until {} may go on"
    elif wait.what is What.NEXT_PRODUCT:
        whose, until = visible(wait.product) or str(wait.what), "{} window opens"
    else:
        return str(wait.what)
    if each.state is State.WAIT:
        return until.format(whose)
    if each.state is State.UNKNOWN:
        return f"{whose}: {'touch test' if wait.by_touch else 'ask its maker'}"
    if each.state is State.LATE:
        again = "may lift" if wait.again_s is not None else "window closed"
        return f"{whose} {again}"
    if each.abrade:
        return f"{whose}: abrade first"
    return whose if wait.closes_s is None or each.remaining_s is None else f"{whose} window closes"


def row_words(each: Standing) -> str:
    """The same in few words, for a row that has the word WAIT and the time in it."""
    if each.wait.what is What.NEXT_COAT and each.state is State.WAIT:
        return f"for coat {each.wait.coat + 1}"
    return what_words(each)


def short_words(each: Standing) -> str:
    """The same in a word or two, for a narrow row: what opens, what closes and what is to be done stay,
    the product's name goes."""
    wait, coat = each.wait, f"coat {each.wait.coat + 1}"
    if wait.what not in (What.NEXT_COAT, What.NEXT_PRODUCT):
        return str(wait.what).removeprefix("can be ").removeprefix("can go ")
    if each.state is State.UNKNOWN:
        return "touch test" if wait.by_touch else "ask its maker"
    if each.state is State.LATE:
        return "may lift" if wait.again_s is not None else "closed"
    if each.abrade and each.state is not State.WAIT:
        return "abrade first"
    if wait.what is What.NEXT_COAT and (each.state is State.WAIT or wait.closes_s is None):
        return coat
    if each.state is State.WAIT:
        return "opens"
    closes = wait.closes_s is not None and each.remaining_s is not None
    return "closes" if closes else str(wait.what)


def time_words(each: Standing) -> str:
    """The time that matters: left, or past; since the coat where nothing better is known."""
    if each.doubtful:
        return "clock?"
    if each.state is State.UNKNOWN:
        return duration(each.elapsed_s)
    if each.state is State.LATE:
        return f"+{duration(each.past_s)}"
    if each.remaining_s is None:
        return ""
    # Rounded up to the whole second, so that 0:00 means over.
    return duration(math.ceil(each.remaining_s - 1e-6))


#: The publication that a rule is after, in its brackets.
AFTER = re.compile(r" \([^()]*\bUFGS\b[^()]*\)")


def rule_words(wait: Wait, system: System) -> str:
    """The rule of a wait; how sure its figure is comes first where it is not the sheet's own for today.

    The trade begins the rule of an estimate with that word: it is said once. What a rule is after
    stands behind '?'.
    """
    said = f"~ {wait.certainty}: " if wait.estimate else ""
    return said + in_units(AFTER.sub("", wait.rule.removeprefix("estimate: ")), system)


def state_word(each: Standing) -> str:
    """The word of the state; a pot life that runs is in use, not 'ready'."""
    if each.doubtful:
        return "CHECK CLOCK"
    if each.wait.what is What.POT_LIFE:
        return {State.READY: "IN USE", State.CLOSING: "NEARLY OVER", State.LATE: "OVER"}[each.state]
    return each.state.value.upper()


def edge_of(each: Standing) -> float | None:
    """How far its field is filled: a wait fills, what may be used up empties, over is full.

    None where it is not known how far it has come: nothing counts down then.
    """
    if each.doubtful or each.state is State.UNKNOWN:
        return None
    if each.state is State.LATE or each.wait.closes_s is None:
        return min(max(each.fraction, 0.0), 1.0)
    share = min(max(each.fraction, 0.0), 1.0)
    if each.state is State.WAIT:
        return share
    return 1.0 if each.remaining_s is None else 1.0 - share


def clock_words(each: Standing) -> str:
    """What the wait rests on where that is not the clock that never steps; empty where it is."""
    if each.basis is Basis.WALL:
        return "The machine was restarted: this wait rests on its clock."
    if each.basis is Basis.DOUBTFUL:
        return (
            "The machine was restarted, and its clock shows a time before an entry of this job: "
            f"set the clock right, or → say how long ago. At least {length(each.elapsed_s)} has passed."
        )
    return ""


def tone_of(each: Standing) -> Tone:
    """The tone of the state; a pot life that runs asks nothing of anybody yet."""
    if each.doubtful:
        return Tone.CAUTION
    if each.wait.what is What.POT_LIFE and each.state is State.READY:
        return Tone.GOOD
    return TONES[each.state]


def still_words(each: Standing, now: Moment, at: Callable[[Moment, Moment], str]) -> str:
    """Until when, or since when, a wait of a closed job stands as it does. at: writes a moment at now."""
    if each.doubtful:
        return "clock?"
    if each.state is State.UNKNOWN:
        return f"{rough(each.elapsed_s)} since the coat"
    if each.remaining_s is not None:
        about = "~" if each.wait.estimate else ""
        return f"{about}{at(later(now, each.remaining_s), now)}"
    opened_s = each.wait.again_s or each.wait.opens_s or 0.0
    over_s = each.past_s if each.state is State.LATE else each.elapsed_s - opened_s
    return f"since {at(later(now, -over_s), now)}"


def face(each: Standing) -> ClockFace:
    """One wait as a clock of the strip."""
    return ClockFace(
        title=each.wait.title,
        what=what_words(each),
        remaining=time_words(each),
        tone=tone_of(each),
        word=state_word(each),
        edge=edge_of(each),
        estimate=each.estimate,
        short=short_words(each),
    )


def faces(job: Job, now: Moment) -> tuple[ClockFace, ...]:
    """Everything that runs in this job: coats being sprayed first, then the waits, most urgent first."""
    spraying = [
        ClockFace(
            title=part,
            what=f"coat {coat.number} being sprayed",
            remaining=duration(elapsed(coat.begun.at, now).seconds),
            tone=Tone.RUNNING,
            word="SPRAYING",
            short=f"coat {coat.number}",
        )
        for part in job.parts
        if job.closed is None and (coat := job.running_coat(part)) is not None
    ]
    return (*spraying, *(face(each) for each in standings(job, now)))
