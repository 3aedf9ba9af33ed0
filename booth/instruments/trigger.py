"""Space at the coats: begin one, end one, or ask first. What the guard finds never blocks. Pure."""

from __future__ import annotations

from msgspec.structs import replace

from booth.bench.act import Act, Context, Keep, Say, SetForm
from booth.forms.form import BLANK, Form, Rows
from booth.job.amiss import Amiss, Cause
from booth.job.coating import begin_coat, end_coat
from booth.job.guard import amiss
from booth.log.fold import Job
from booth.words.guard_words import deed, sentence

#: Under this key a form holds what was asked, and when: the next press of the same key does it.
ASKED = "asked"
#: So long an answer is waited for [s]; later it is asked anew.
ANSWER_S = 60.0
AGAIN = "Space again: all the same."


def asking(form: Form, what: str, context: Context) -> Form:
    """The form that has asked `what`."""
    return form.choosing(ASKED, f"{context.now.wall:.3f} {what}")


def was_asked(form: Form, what: str, context: Context) -> bool:
    """Whether `what`, and nothing else, was asked a moment ago."""
    when, _, asked = form.chosen.get(ASKED, "").partition(" ")
    return asked == what and 0.0 <= context.now.wall - float(when) <= ANSWER_S


def answered(form: Form) -> Form:
    """The form in which nothing is asked any more."""
    return replace(form, chosen={key: word for key, word in form.chosen.items() if key != ASKED})


def running_elsewhere(job: Job, part: str) -> str:
    """Another part on which a coat is being sprayed, or ""."""
    return next((each for each in job.parts if each != part and job.running_coat(each)), "")


def press(context: Context, rows: Rows, part: str) -> Act:
    """What Space does: end the coat on the part, else the one on another part, else begin one."""
    job, other = context.job, running_elsewhere(context.job, part)
    running = job.running_coat(part)
    if running is not None:
        ended = end_coat(job, part, context.now)
        return Act(f"end coat {running.number}: {part}", (Keep(ended), SetForm(BLANK)))
    if not other:
        return begin(context, rows, part)
    ended = end_coat(job, other, context.now)
    stay = SetForm(answered(rows.form).choosing("part", part))
    said = Say(f"{other}: coat {ended.coat} ended.")
    return Act(f"end coat {ended.coat} on {other} first", (Keep(ended), stay, said))


def begin(context: Context, rows: Rows, part: str, again: str = AGAIN) -> Act:
    """Begin the next coat on a part; where that would spoil it, ask first. again: how to answer."""
    found = amiss(context.job, part, context.now)
    begun = begin_coat(context.job, part, context.now)
    form = answered(rows.form).choosing("part", part)
    grave = [each for each in found if each.asks]
    beyond = next((each for each in grave if each.cause is Cause.UNPLANNED), None)
    asked = f"coat {begun.coat} {part} {', '.join(each.cause for each in grave)}"
    if grave and not was_asked(rows.form, asked, context):
        said = Say(f"{_told(context, part, grave)} {again}", fault=True)
        word = "a further coat?" if beyond else f"coat {begun.coat}: {part}?"
        return Act(word, (SetForm(asking(form, asked, context)), said))
    of = "" if beyond is None or beyond.asked is None else f" of {beyond.asked.high:g}"
    sure = " all the same" if grave else ""
    kept = ", ".join(each.cause for each in found if each.is_grave or each.asks)
    said = Say(f"{part}: begun, in the log with: {kept}." if kept else "", fault=bool(kept))
    return Act(f"begin coat {begun.coat}{of}{sure}: {part}", (Keep(begun), SetForm(form), said))


def _told(context: Context, part: str, grave: list[Amiss]) -> str:
    """The worst; in a word where its sentence stands beneath the figure already."""
    worst = grave[0]
    if worst.cause in (Cause.WAIT_UNKNOWN, Cause.EARLY, Cause.UNPLANNED):
        return f"{sentence(worst, context.system)} {deed(worst)}"
    return f"{part}: {', '.join(each.cause for each in grave)}."
