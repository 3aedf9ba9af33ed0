"""The list of parts, batches and windows: a row each, and whose clock is the large figure. Pure."""

from __future__ import annotations

from msgspec.structs import replace

from booth.bench.act import Context
from booth.job.amiss import Grave
from booth.job.coat_plan import coats_wanted, next_part, running_part
from booth.job.guard import amiss
from booth.job.racks import URGENT, Row, painted_last, row_of, rows_of
from booth.job.wait import Standing, State, What
from booth.job.waits import standings
from booth.log.fold import Job, kept_by
from booth.words.guard_words import looked_over
from booth.words.shown import PartRow, Parts, Tone
from booth.words.wait_words import (
    duration,
    edge_of,
    row_words,
    short_words,
    state_word,
    time_words,
    tone_of,
)


def by_part(context: Context) -> dict[str, Standing]:
    """The most urgent wait of each part; that for the next product, where the job has one."""
    several = len(context.job.opened.products) > 1

    def most_urgent() -> dict[str, Standing]:
        found = list(reversed(standings(context.job, context.now)))
        if several:
            found.sort(key=lambda each: each.wait.what is What.NEXT_PRODUCT)
        return {each.wait.part: each for each in found}

    # Every row of the list asks for it.
    kept: dict[str, Standing] = kept_by(context.job, "by part", context.now, most_urgent)
    return kept


def place_of(job: Job, part: str) -> int:
    """The place of the row in which a part stands."""
    return next(at for at, row in enumerate(rows_of(job)) if part in row.parts)


def row_wait(context: Context, row: Row) -> Standing | None:
    """The wait of a row: of a rack the side that was painted last, unless a window closes on another."""
    waits, last = by_part(context), painted_last(context.job, row)
    found = [waits[part] for part in row.parts if part in waits]
    urgent = [each for each in found if each.state in URGENT]
    return next(iter(urgent), waits.get(last) or next(iter(found), None))


def side_told(context: Context, part: str) -> str:
    """The part whose wait is told where `part` is chosen: of a rack perhaps another side."""
    each = row_wait(context, row_of(context.job, part))
    return part if each is None else each.wait.part


def waited_for(context: Context, part: str) -> str:
    """The part whose clock is the large figure, where `part` is next: it, if it can be said when it
    may go on, or is being sprayed; else the one whose flash-off is over soonest. Pure."""
    waits = by_part(context)
    if running_part(context.job) or part in waits:
        return running_part(context.job) or part
    between = [each for each in waits.values() if each.wait.what is What.NEXT_COAT]
    held = [each for each in between if each.state in (State.WAIT, State.UNKNOWN)]
    soonest = min(held, key=lambda each: (each.remaining_s is None, each.remaining_s), default=None)
    return part if soonest is None else soonest.wait.part


def parts_picture(context: Context, part: str) -> Parts:
    """Every part with its coats and its wait, then batches and windows; part: the one that keys are
    about."""
    job, every = context.job, rows_of(context.job)
    parts = tuple(_row(context, row, part) for row in every)
    waits = [row_wait(context, row) for row in every]
    others = (each for each in standings(job, context.now) if each not in waits)
    return Parts((*parts, *map(_window_row, others)), place_of(job, part))


def _window_row(each: Standing) -> PartRow:
    """A batch, or a further window of a part."""
    return PartRow(
        name=each.wait.title,
        coats="",
        tone=tone_of(each),
        word=state_word(each),
        time=time_words(each),
        what=row_words(each),
        estimate=each.estimate,
        edge=edge_of(each),
        short=short_words(each),
    )


def _row(context: Context, row: Row, chosen: str) -> PartRow:
    job, each = context.job, row_wait(context, row)
    part = next_part(job, row.parts)
    shown = part_row(context, part, each)
    if chosen in row.parts and not shown.word:
        # Nothing is waited for: what is amiss is said of the part that is next.
        tone, word = looked_over(Tone.PLAIN, "", amiss(job, chosen, context.now))
        shown = replace(shown, tone=tone, word=word)
    if row.rack is None:
        return shown
    done = sum(c.ended is not None for side in row.parts for c in job.coats_on(side))
    wanted = sum(coats_wanted(job, side) for side in row.parts)
    is_waiting = each is not None and job.running_coat(part) is None
    side = row.side(each.wait.part if each is not None and is_waiting else part)
    if side and shown.word != coated(job)[1]:
        short = f"{side}: {shown.short}" if shown.short else ""
        shown = replace(shown, what=f"{side}: {shown.what}", short=short)
    return replace(shown, name=row.title, coats=f"{done}/{wanted}")


def coated(job: Job) -> tuple[Tone, str]:
    """How a part stands all of whose coats are on; one of water approves nothing."""
    return (Tone.PLAIN, "REHEARSED") if job.opened.rehearsal else (Tone.GOOD, "COATED")


def part_row(context: Context, part: str, each: Standing | None) -> PartRow:
    job = context.job
    finished, wanted = sum(c.ended is not None for c in job.coats_on(part)), coats_wanted(job, part)
    coats, running = f"{finished}/{wanted}", job.running_coat(part)
    if running is not None:
        time = duration(context.since(running.begun.at))
        return PartRow(part, coats, Tone.RUNNING, "SPRAYING", time, f"coat {running.number}")
    if each is not None:
        tone, word, time = tone_of(each), state_word(each), time_words(each)
        if tone is Tone.READY and finished < wanted:
            # The row is about the wait: only what spoils the part takes its word away.
            spoils = [e for e in amiss(job, part, context.now) if e.grave is Grave.SPOILS]
            tone, word = looked_over(tone, word, tuple(spoils))
        what, edge = row_words(each), edge_of(each)
        short = short_words(each)
        return PartRow(part, coats, tone, word, time, what, each.estimate, edge, short)
    if finished >= wanted:
        tone, word = coated(job)
        return PartRow(part, coats, tone, word, "", "all coats are on")
    return PartRow(part, coats, Tone.PLAIN, "", "", f"coat {finished + 1} to do")
