"""Coats and waits: Space when a coat on a part begins, Space when it ends; every part's wait at once."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial

from msgspec.structs import replace

from booth.bench.act import Act, Choice, Context, OpenStep, SetForm
from booth.bench.instrument import Instrument, word
from booth.forms.form import Field, Form, Rows, Values, same
from booth.forms.key import Key
from booth.instruments.hiding import answers, question
from booth.instruments.large.day import day_at_large
from booth.instruments.learnt_here import of_wait
from booth.instruments.part_rows import (
    coated,
    parts_picture,
    place_of,
    row_wait,
    side_told,
    waited_for,
)
from booth.instruments.touch import TOUCHES, touch, touches
from booth.instruments.trigger import begin, press, running_elsewhere
from booth.job.amiss import Amiss, Cause
from booth.job.coat_plan import coat_named, coats_wanted, next_part, running_part
from booth.job.guard import amiss
from booth.job.lasting import between_coats
from booth.job.racks import other_sides, row_of, rows_of
from booth.job.steps import NEXT_PRODUCT, key_of, next_open
from booth.job.wait import Standing, State, What
from booth.log.events import CoatBegun, CoatEnded, Event, TouchTried
from booth.units.sentences import in_units
from booth.words.about import of_the_coat
from booth.words.guard_words import line, looked_over
from booth.words.profile_words import wait_words
from booth.words.shown import Picture, Readout, Tone
from booth.words.wait_words import (
    TONES,
    clock_words,
    duration,
    edge_of,
    rough,
    rule_words,
    state_word,
    time_words,
    unknown_words,
)

#: So many lines of what is amiss stand beneath the figure.
MOST_LINES = 3


class Coats(Instrument):
    KIND = "coats"
    NAME = "Coats and waits"
    ABOUT = of_the_coat.COATS
    KEEPS = (CoatBegun, CoatEnded, TouchTried)
    at_large = day_at_large

    def fields(self, context: Context, values: Values) -> tuple[Field, ...]:
        """The part is chosen in the table, not in a row."""
        parts, following = same(context.job.parts), next_part(context.job)
        looked_at = (("", "the one that is waited for"), *parts)
        return (
            Field("part", "Part", choices=parts, default=following, hidden=True),
            Field("looked at", "Looked at", choices=looked_at, hidden=True),
        )

    def readout(self, context: Context, values: Values) -> Readout:
        """The part that is looked at; unasked the one that is waited for."""
        part = word(values, "part")
        shown = word(values, "looked at") or waited_for(context, part)
        each = row_wait(context, row_of(context.job, shown))
        if shown == part:
            return part_readout(context, part, each)
        found = part_readout(context, shown, each, guard=False)
        said = guard_lines(context, amiss(context.job, part, context.now))
        return replace(found, lines=(*(f"{part}: {line}" for line in said), *found.lines))

    def picture(self, context: Context, values: Values) -> tuple[Picture, ...]:
        return (parts_picture(context, word(values, "part")),)

    def kept_any(self, context: Context) -> bool:
        job = context.job
        return any(coat.ended for part in job.parts for coat in job.coats_on(part))

    def busy(self, context: Context) -> str:
        running = running_part(context.job)
        return f"{running}: a coat is being sprayed. Space ends it there." if running else ""

    def last_kept(self, context: Context, values: Values) -> tuple[Event, ...]:
        job, part = context.job, word(values, "part")
        for each in reversed(job.live):
            if isinstance(each, CoatBegun | CoatEnded | TouchTried) and each.part == part:
                return (each,)
        return ()

    def space(self, context: Context, rows: Rows) -> Act:
        return press(context, rows, word(rows.values, "part"))

    def own(self, context: Context, rows: Rows, key: Key) -> Act | None:
        if key.name in TOUCHES:
            touched = side_told(context, word(rows.values, "part"))
            return touch(context, rows, touched, TOUCHES[key.name])
        if key.name not in ("up", "down"):
            return None
        at = place_of(context.job, word(rows.values, "part")) + (1 if key.name == "down" else -1)
        return self.pick(context, rows, at)

    def pick(self, context: Context, rows: Rows, index: int) -> Act | None:
        every = rows_of(context.job)
        if not 0 <= index < len(every):
            return None
        part = next_part(context.job, every[index].parts)
        return Act("part", (SetForm(_looking_at(rows, part)),))

    def more(self, context: Context, rows: Rows) -> tuple[Choice, ...]:
        job, part = context.job, word(rows.values, "part")
        film, found = key_of(job, "film"), []
        if film and any(job.coats.values()):
            gauge = Act("", (OpenStep(film),))
            found.append(Choice("Read the wet-film gauge", partial(_taken, act=gauge)))
        other = running_elsewhere(job, part)
        if other and job.running_coat(part) is None:
            beside = partial(
                begin, rows=rows, part=part, again="Choose it again to do it all the same."
            )
            found.append(Choice(f"Begin a coat on {part} while {other} goes on", beside))
        for side in other_sides(job, part):
            turned = Act("part", (SetForm(_looking_at(rows, side)),))
            found.append(Choice(f"Turn to {side}", partial(_taken, act=turned)))
        sides = dict.fromkeys((side_told(context, part), part))
        touched = (each for side in sides for each in touches(context, rows, side))
        return (*answers(context), *found, *touched)


def _taken(_: Context, act: Act) -> Act:
    return act


def _looking_at(rows: Rows, part: str) -> Form:
    """The form in which keys and figure are about a part."""
    return rows.form.choosing("part", part).choosing("looked at", part)


def late_words(each: Standing) -> str:
    """What a window that has closed asks for. Pure."""
    if each.wait.again_s is not None:
        again = rough(each.wait.again_s - each.elapsed_s)
        return f"A coat now may lift what is under it; the window opens again in {again}."
    return "Abrade it first; the data sheet says with what."


def part_readout(context: Context, part: str, each: Standing | None, guard: bool = True) -> Readout:
    """A part's clock as the large figure, and what is amiss before its next coat. Pure.

    guard: False where another part is next, and only the wait is looked at.
    """
    job, running = context.job, context.job.running_coat(part)
    if running is not None:
        time, tone = duration(context.since(running.begun.at)), Tone.RUNNING
        return Readout(time, tone=tone, word="SPRAYING", like="00:00", whose=part)
    number = len(job.coats_on(part)) + 1
    is_coated = number > coats_wanted(job, part)
    found = () if is_coated or not guard else amiss(job, part, context.now)
    if each is not None:
        return _waiting(
            context, part, each, found, coated_words(context) if is_coated else question(job)
        )
    if is_coated:
        lines, (tone, word) = coated_words(context), coated(job)
        return Readout("DONE", tone=tone, word=word, lines=lines, whose=part, edge=1.0)
    tone, word = looked_over(Tone.PLAIN, "", found)
    lines = (*question(job), *rehearsed_wait(context, part), *guard_lines(context, found))
    return Readout(f"COAT {number}", tone=tone, word=word, lines=lines, whose=part)


def coated_words(context: Context) -> tuple[str, ...]:
    """That all coats are on, and where Enter leads when they are on all parts. Pure."""
    job = context.job
    if context.step.kind == NEXT_PRODUCT:
        return ()  # there Enter begins the next product, and the key line says so
    if any(len(job.coats_on(part)) < coats_wanted(job, part) for part in job.parts):
        return (*question(job), "All its coats are on.")
    onto = next_open(job, after=context.step)
    return (*question(job), f"All coats are on. Enter: {onto.name}.")


def rehearsed_wait(context: Context, part: str) -> tuple[str, ...]:
    """In a rehearsal, which has no wait, what the profile says of the one here. Pure."""
    job, laid = context.job, context.job.coats_on(part)
    if not job.opened.rehearsal or not laid:
        return ()
    rule, _ = between_coats(job.profile, coat_named(job, laid[-1].number, part).plan)
    said = wait_words(rule, context.system) or "a wait here that the profile does not tell"
    return (f"In the real job: {said}, longer in the cold. With water go on at once.",)


def guard_lines(context: Context, found: Sequence[Amiss]) -> tuple[str, ...]:
    """The worst of what is amiss; what the wait itself says is not said twice. Pure."""
    others = [each for each in found if each.cause not in (Cause.EARLY, Cause.WAIT_UNKNOWN)]
    return tuple(line(each, context.system) for each in others[:MOST_LINES])


def _waiting(
    context: Context, part: str, each: Standing, found: tuple[Amiss, ...], said: tuple[str, ...]
) -> Readout:
    lines = [rule_words(each.wait, context.system), *of_wait(context, each)]
    if each.wait.why:
        lines.insert(0, in_units(each.wait.why, context.system))
    if each.state is State.LATE and each.wait.what is What.NEXT_PRODUCT:
        lines.insert(0, late_words(each))
    elif each.state is State.UNKNOWN:
        lines.insert(0, unknown_words(each))
    lines.insert(0, clock_words(each))
    word = state_word(each)
    figure = time_words(each) or word
    tone = Tone.CAUTION if each.doubtful else TONES[each.state]
    if each.state is State.READY and not each.doubtful:
        # What matters is that it may go on; the far end of the window can be read beneath.
        tone, word = looked_over(tone, word, found)
        figure = word
        if each.remaining_s is not None:
            lines.insert(0, f"window closes in {time_words(each)}")
    lines = [*said, *guard_lines(context, found), *lines]
    like = "00:00" if len(figure) <= 5 else ""
    said_beside = word if figure != word else ""
    return Readout(
        figure,
        tone=tone,
        word=said_beside,
        lines=tuple(filter(None, lines)),
        like=like,
        whose=each.wait.part or part,
        edge=edge_of(each),
    )
