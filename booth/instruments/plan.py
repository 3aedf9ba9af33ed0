"""Plan: the whole job as a time line from now; the figure is when the last coat is on."""

from __future__ import annotations

from collections.abc import Callable

from booth.bench.act import Context
from booth.bench.instrument import Instrument, quantity
from booth.clock import local_day_hhmm, local_hhmm
from booth.forms.form import Field, Values
from booth.instruments.plan_words import last_words, onward_words
from booth.job import lasting
from booth.job.air_supply import air_supply, verdict
from booth.job.amiss import Cause as Amiss
from booth.job.amiss import Grave
from booth.job.coat_plan import coat_named, running_part
from booth.job.coat_times import JobTimes, learnt
from booth.job.guard import wait_before
from booth.job.job_schedule import Planned, planned, spray_times
from booth.job.measured import inlet_kpa
from booth.job.plan_line import as_one
from booth.job.pot import pot_words
from booth.job.racks import rows_of
from booth.job.schedule import Block, Cause, Pot, Span, Trouble
from booth.moment import Moment, later
from booth.units import Kind
from booth.words.about import of_the_day
from booth.words.coat_time_words import times_words
from booth.words.guard_words import line as guard_line
from booth.words.shown import LineBlock, LineRow, Picture, Readout, Timeline, Tone
from booth.words.wait_words import length, rough

TONES = {
    Span.SPRAYED: Tone.RUNNING,
    Span.SPRAY: Tone.RUNNING,
    Span.WAIT: Tone.WAIT,
    Span.READY: Tone.READY,
    Span.LATE: Tone.LATE,
}
#: What of the schedule stands over the plan, the worst first.
TROUBLES = {Cause.POT_LIFE: "POT LIFE SHORT", Cause.WINDOW: "WINDOW MISSED"}
BY_GUESS = "It fits if the guess holds: type what a coat takes."
#: Minutes between two ticks, the first that leaves them room.
STEPS_MIN = (5, 10, 15, 30, 60, 120, 240, 480, 1440, 2880, 7200)
CELLS_A_TICK = 9
#: What a window of 80 columns leaves for the line beside the names.
TRACK_CELLS = 68


class Plan(Instrument):
    KIND = "plan"
    NAME = "Plan"
    ABOUT = of_the_day.PLAN

    def fields(self, context: Context, values: Values) -> tuple[Field, ...]:
        times = spray_times(context.job, past=_past(context)).values()
        seconds, sources = {round(each.seconds) for each in times}, {each.source for each in times}
        usual = sum(seconds) / len(seconds) if seconds else 0.0
        hint = sources.pop() if len(sources) == 1 else "on average"
        return (Field("coat", "A coat takes", Kind.TIME, optional=True, default=usual, hint=hint),)

    def readout(self, context: Context, values: Values) -> Readout:
        """When the last coat is on; what speaks against it, and by how much."""
        plan = _plan(context, values)
        schedule, system = plan.schedule, context.system
        lines = [
            guard_line(each, system) for each in plan.why if each.cause is not Amiss.COMPRESSOR
        ]
        lines += [_trouble_words(context, each) for each in schedule.troubles]
        lines += onward_words(context, plan)
        mark = "~" if plan.estimate else ""
        if plan.handle_s is not None and plan.handle_s > 0:
            when = local_day_hhmm(later(context.now, plan.handle_s), context.now)
            lines.append(f"can be handled {mark}{when}")
        lines += _pot_words(context, plan)
        lines += coat_words(context)
        if schedule.remaining:
            lines += [*pot_words(context.job, context.system), *_air_words(context)]
        if plan.estimate and plan.coats_left:
            lines.append("~ is an estimate: waits worked out for today's weather")
        figure = "" if plan.last_s is None else _at(context, plan.last_s)
        tone = Tone.GOOD if plan.fits else Tone.CAUTION
        if plan.fits and plan.guessed and plan.coats_left:
            tone = Tone.PLAIN  # nothing approves that rests on a guess
            lines.insert(0, BY_GUESS)
        label, word = last_words(context, plan), _verdict(plan)
        return Readout(figure, "", label, tone, word, tuple(lines), "00:00", whose="LAST COAT")

    def picture(self, context: Context, values: Values) -> tuple[Picture, ...]:
        plan = _plan(context, values)
        schedule = plan.schedule
        past = min((block.start_s for block in plan.past), default=0.0)
        later_blocks = plan.onward.blocks if plan.onward is not None else ()
        future = max(schedule.last_s, 0.0, *(each.end_s for each in later_blocks))
        # A long past gives way to what is to come, unless nothing is.
        start = max(past, -max(future, 3600.0)) if plan.coats_left else past
        end = future + 0.04 * max(future - start, 600.0)
        ends = dict(schedule.ends)
        ends |= {each.part: each.end_s for each in later_blocks if each.span is Span.SPRAY}
        rows = []
        every = (*plan.past, *schedule.blocks, *later_blocks)
        running = running_part(context.job)
        for row in rows_of(context.job):
            own = [each for each in every if each.part in row.parts]
            last = max((ends[part] for part in row.parts if part in ends), default=None)
            note = "" if last is None else f"last coat {_at(context, last)}"
            told = as_one(own) if len(row.parts) > 1 else own
            blocks = tuple(_line_block(each, each.part == running) for each in told)
            rows.append(LineRow(row.sided, blocks, note))
        rows += [_pot_row(context, plan, pot, end) for pot in plan.pots]
        marks = ticks(context.now, local_hhmm, start, end)
        return (Timeline(tuple(rows), start, end, marks),)

    def event(self, context: Context, values: Values) -> None:
        """Nothing is kept here: the plan is made anew from the job at any moment."""

    def kept_any(self, context: Context) -> bool:
        return True


def _plan(context: Context, values: Values) -> Planned:
    """The plan with the time that was typed; what is offered is each part's own."""
    coat = quantity(values, "coat")
    typed = coat.value if coat is not None and coat.typed else None
    return planned(context.job, context.now, typed, _past(context))


def coat_words(context: Context) -> list[str]:
    """What the minutes for a coat rest on, where it is the time at the trigger."""
    times = learnt(context.job, _past(context))
    sources = {each.source for each in spray_times(context.job, past=_past(context)).values()}
    by_trigger = any("trigger" in source for source in sources)
    return [times_words(times)] if by_trigger else []


def _past(context: Context) -> tuple[JobTimes, ...]:
    return context.past.coat_times(context.job.opened.job)


def _air_words(context: Context) -> tuple[str, ...]:
    """How long the trigger can be held, where the compressor does not carry the gun."""
    asked, read = context.profile.gun.inlet_kpa, inlet_kpa(context.job)
    supply = air_supply(context.shop.compressor, context.gun, asked, read)
    if isinstance(supply, str) or supply.hold.keeps_up:
        return ()
    return verdict(supply, context.system)[:1]


def _verdict(plan: Planned) -> str:
    """In a word whether it fits; else what speaks against it first."""
    causes = {each.cause for each in plan.schedule.troubles}
    if not plan.coats_left:
        return "ALL COATS ARE ON"
    if any(each.grave is Grave.SPOILS for each in plan.why):
        return "OUTSIDE LIMITS"
    if not plan.is_known:
        return "NOT KNOWN"
    said = [word for cause, word in TROUBLES.items() if cause in causes]
    fits = "FITS BY GUESS" if plan.guessed else "IT FITS"
    return said[0] if said else fits if plan.fits else "CHECK"


def _at(context: Context, seconds: float) -> str:
    return local_day_hhmm(later(context.now, seconds), context.now)


def _trouble_words(context: Context, trouble: Trouble) -> str:
    at, by = _at(context, trouble.at_s), length(trouble.by_s)
    if trouble.cause is Cause.POT_LIFE:
        over = "was over" if trouble.at_s <= 0 else "is over"
        return (
            f"Pot life of {trouble.pot} {over} {at}, {by} too early: fresh batch from "
            f"{trouble.part} coat {trouble.coat} on."
        )
    if trouble.cause is Cause.WAIT:
        by = "a touch test decides" if _by_touch(context, trouble) else "its data sheet decides"
        return f"{trouble.part}: it is not known when coat {trouble.coat} may go on; {by}."
    return (
        f"{trouble.part}: its recoat window closes {at}, {by} before coat {trouble.coat} can go "
        "on. The data sheet says what that needs."
    )


def _by_touch(context: Context, trouble: Trouble) -> bool:
    """Whether a touch test may open the wait before that coat."""
    job, part, before = context.job, trouble.part, trouble.coat - 1
    if before == len(job.coats_on(part)):
        wait = wait_before(job, part)
        return wait is not None and wait.by_touch
    plan = coat_named(job, before, part).plan
    return lasting.after_coat(job.profile, plan, job.weather).by_touch


def _pot_words(context: Context, plan: Planned) -> list[str]:
    """How much of the pot life is to spare, where it is enough."""
    if not plan.pots or any(each.cause is Cause.POT_LIFE for each in plan.schedule.troubles):
        return []
    pot = max(plan.pots, key=lambda each: each.end_s)
    spare = pot.end_s - plan.schedule.last_s
    if not plan.schedule.remaining or plan.schedule.unknown or spare < 0:
        return []
    name = "a batch mixed now" if plan.pot_is_planned else pot.name
    return [f"pot life of {name} until {_at(context, pot.end_s)}, {rough(spare)} to spare"]


def _line_block(each: Block, running: bool) -> LineBlock:
    """With the number of its coat; one that is being sprayed carries it where it goes on."""
    done = each.span is Span.SPRAYED
    goes_on = done and running and each.end_s >= 0
    number = str(each.coat) if each.span in (Span.SPRAYED, Span.SPRAY) and not goes_on else ""
    return LineBlock(each.start_s, each.end_s, TONES[each.span], number, done=done)


def _pot_row(context: Context, plan: Planned, pot: Pot, line_end_s: float) -> LineRow:
    # Induction first, where it can only be that of this batch.
    stands = plan.starts_s > 0 and len(plan.pots) == 1
    stood_s = min(max(plan.starts_s, pot.start_s), pot.end_s, line_end_s)
    blocks = [LineBlock(pot.start_s, stood_s, Tone.WAIT)] if stands else []
    begun_s = stood_s if blocks else pot.start_s
    blocks.append(LineBlock(begun_s, min(pot.end_s, line_end_s), Tone.GOOD))
    if pot.end_s < plan.schedule.last_s:
        blocks.append(LineBlock(max(pot.end_s, pot.start_s), plan.schedule.last_s, Tone.LATE))
    note = f"pot life to {_at(context, pot.end_s)}"
    return LineRow("pot life" if plan.pot_is_planned else pot.name, tuple(blocks), note)


def ticks(
    now: Moment,
    told: Callable[[Moment], str],
    start_s: float,
    end_s: float,
    cells: int = TRACK_CELLS,
) -> tuple[tuple[float, str], ...]:
    """Round times of day along the line, as many as have room in so many cells. Pure.

    Without a readable wall clock there are none.
    """
    hours, _, minutes = told(now).partition(":")
    if not (hours.isdigit() and minutes.isdigit()) or end_s <= start_s:
        return ()
    now_min = int(hours) * 60 + int(minutes) + now.wall % 60 / 60
    most = max(cells // CELLS_A_TICK, 2)
    span_min = (end_s - start_s) / 60
    step = next((each for each in STEPS_MIN if span_min / each <= most), STEPS_MIN[-1])
    first = int((now_min + start_s / 60) // step)
    found = []
    for number in range(first, first + most + 3):
        second = (number * step - now_min) * 60
        if start_s <= second <= end_s:
            # A tick falls on a whole minute: half a minute more makes up for rounding.
            found.append((second, told(later(now, second + 0.5))))
    return tuple(found)
