"""Faults: pick what is seen; its causes come ranked by what this very job measured."""

from __future__ import annotations

from collections.abc import Sequence

from booth.bench.act import Act, Context, Keep, Say, Scroll, SetForm
from booth.bench.instrument import Instrument, word
from booth.forms.form import Field, Rows, Values, same
from booth.forms.key import Key
from booth.job.diagnosis import Diagnosis, answers_to, diagnosis
from booth.log.events import Event, FaultAnswered, FaultSeen
from booth.trade.faults.evidence import Reading
from booth.trade.faults.fault_table import FAULTS, Fault
from booth.trade.faults.questions import QUESTIONS, Question, Reply
from booth.trade.faults.ranked_causes import RankedCause, Standing
from booth.units import Kind, System, show, shown_unit
from booth.words.about import of_the_coat
from booth.words.shown import Lines, Page, PickLine, Picture, Readout, Tone
from booth.words.wait_words import length

#: The lines of the list: the first is no fault.
KEYS = ("", *FAULTS)
#: Rows that an arrow moves what is read by.
READ_ON = 2
ANY_PART = "any part"
#: How the row of an answer begins: each question has its own, so that none takes another's answer.
ANSWER = "answer to "
REPLIES = (("", "not yet"), *same(Reply))
USUAL = {3: "usual", 2: "common", 1: "now and then"}
#: Unit of a figure of the evidence -> kind of quantity, and what makes it that kind's base unit.
KINDS = {
    "kPa": (Kind.PRESSURE, 1.0),
    "ml/min": (Kind.DELIVERY, 1.0),
    "um": (Kind.THICKNESS, 1.0),
    "K": (Kind.TEMPERATURE_DIFFERENCE, 1.0),
    "C": (Kind.TEMPERATURE, 1.0),
    "%": (Kind.PERCENT, 1.0),
    "m/s": (Kind.SPEED, 1.0),
    "mm": (Kind.LENGTH, 1.0),
    "1": (Kind.PERCENT, 100.0),
    "coats": (Kind.COUNT, 1.0),
}
#: Where a limit is from that is neither the profile's nor named with the cause.
OTHER_LIMITS = {
    "unevenness": "a parabola half over half",
    "gun speed": "for the wet film asked for",
    "pot life used": "all of it",
}
#: A coat laid at its time, and a wait that was kept, have no limit to name: their word past it, and
#: what is said within.
BY_THE_CLOCK = {
    "coat laid early by": ("TOO EARLY", "coats laid in their time"),
    "coat laid late by": ("TOO LATE", "coats laid in their time"),
    "induction missed by": ("TOO EARLY", "induction kept"),
}


class Faults(Instrument):
    KIND = "faults"
    NAME = "Faults seen"
    ABOUT = of_the_coat.FAULTS
    KEEPS = (FaultSeen,)

    def fields(self, context: Context, values: Values) -> tuple[Field, ...]:
        """Where the list stands, on which part, whether the causes are being read, and what is asked."""
        asked = diagnosed(context, values).question if reads_causes(context, values) else None
        answer = (
            ()
            if asked is None
            else (Field(ANSWER + asked.key, "Answer", choices=REPLIES, asks=True, optional=True),)
        )
        faults = tuple((key, FAULTS[key].name if key else "none") for key in KEYS)
        parts = (("", ANY_PART), *same(context.job.parts))
        return (
            Field("fault", "Fault", choices=faults, hidden=True),
            Field("part", "Part", choices=parts, hidden=True),
            Field("causes", "Causes", choices=same(("", "open")), hidden=True),
            *answer,
        )

    def readout(self, context: Context, values: Values) -> Readout | None:
        key, part = word(values, "fault"), word(values, "part") or ANY_PART
        if not reads_causes(context, values):
            if not key:
                return Readout("FAULT?", whose=part, in_words=True)
            said = "SEEN" if seen(context, values) else "SEEN?"
            return Readout(FAULTS[key].name, word=said, whose=part, in_words=True)
        found = diagnosed(context, values)
        if found.question is None:
            return strongest(found.causes, context.system)
        about = f"{found.question.key.replace('-', ' ')}?"  # all of it stands beneath
        return Readout(about, word="ANSWER", whose=FAULTS[key].name, in_words=True)

    def picture(self, context: Context, values: Values) -> tuple[Picture, ...]:
        key, part = word(values, "fault"), word(values, "part")
        if reads_causes(context, values):
            return (causes_page(FAULTS[key], part, diagnosed(context, values), context.system),)
        looks = FAULTS[key].looks if key else "Look along the film against a lamp."
        lines = Lines(fault_lines(context.job.faults), KEYS.index(key))
        where = f"seen on  ◂ {part or ANY_PART} ▸"
        return (Page((("quiet", where), ("text", looks))), lines)

    def event(self, context: Context, values: Values) -> Event | str:
        asked = diagnosed(context, values).question if reads_causes(context, values) else None
        if asked is None:
            return "There is nothing to answer."
        return FaultAnswered(
            n=0,
            at=context.now,
            fault=word(values, "fault"),
            part=word(values, "part"),
            question=asked.key,
            answer=word(values, ANSWER + asked.key),
        )

    def last_kept(self, context: Context, values: Values) -> tuple[Event, ...]:
        """What was seen last on the chosen part; while its causes are read, the last answer, else
        this very fault. With a fault go its answers."""
        part = word(values, "part")
        if reads_causes(context, values):
            fault = seen(context, values)[-1]
            return answers_to(context.job, fault)[-1:] or (fault,)
        faults = [each for each in context.job.faults if part in ("", each.part)]
        return tuple(each for one in faults[-1:] for each in (one, *answers_to(context.job, one)))

    def space(self, context: Context, rows: Rows) -> Act:
        if reads_causes(context, rows.values):
            return Act("another fault", (SetForm(rows.form.choosing("causes", "")),))
        if not word(rows.values, "fault"):
            return Act("", (Say("Arrows pick what is seen; Enter goes on."),))
        return take(context, rows)

    def enter(self, context: Context, rows: Rows) -> Act | None:
        stands = word(rows.values, "fault") and not reads_causes(context, rows.values)
        return take(context, rows) if stands else None

    def own(self, context: Context, rows: Rows, key: Key) -> Act | None:
        """Arrows walk the list and choose the part; or scroll what is read, and answer or lead back."""
        values, by = rows.values, -1 if key.name in ("up", "left") else 1
        if key.name not in ("up", "down", "left", "right"):
            return None
        if reads_causes(context, values):
            if key.name in ("up", "down"):
                return Act("read on", (Scroll(by * READ_ON),))
            asks = diagnosed(context, values).question is not None
            return self.space(context, rows) if by < 0 and not asks else None
        if key.name in ("up", "down"):
            return _stand(rows, KEYS.index(word(values, "fault")) + by)
        parts = ("", *context.job.parts)
        part = parts[(parts.index(word(values, "part")) + by) % len(parts)]
        return Act("part", (SetForm(rows.form.choosing("part", part)),))

    def pick(self, context: Context, rows: Rows, index: int) -> Act | None:
        """A line that is clicked is stood on; clicked again, it is seen."""
        if reads_causes(context, rows.values):
            return None
        at = KEYS.index(word(rows.values, "fault"))
        return take(context, rows) if at and at == index else _stand(rows, index)


def reads_causes(context: Context, values: Values) -> bool:
    """Whether the causes of a fault are read: one that is in the log, and not void. Pure."""
    return bool(word(values, "causes") and seen(context, values))


def seen(context: Context, values: Values) -> tuple[FaultSeen, ...]:
    """What was kept of the fault and the part that the list stands on."""
    here = word(values, "fault"), word(values, "part")
    return tuple(each for each in context.job.faults if (each.fault, each.part) == here)


def diagnosed(context: Context, values: Values) -> Diagnosis:
    return diagnosis(context.job, word(values, "fault"), word(values, "part"))


def take(context: Context, rows: Rows) -> Act:
    """Keep that a fault is seen, once for each part, and show its causes."""
    key, part = word(rows.values, "fault"), word(rows.values, "part")
    shown = SetForm(rows.form.choosing("causes", "open"))
    if seen(context, rows.values):
        return Act(f"causes of {FAULTS[key].name}", (shown,))
    event = FaultSeen(n=0, at=context.now, fault=key, part=part)
    return Act(f"seen: {FAULTS[key].name}, {part or ANY_PART}", (Keep(event), shown))


def _stand(rows: Rows, index: int) -> Act | None:
    """On another line of the list; None where there is none."""
    if not 0 <= index < len(KEYS):
        return None
    form = rows.form.choosing("fault", KEYS[index]).choosing("causes", "")
    return Act("fault", (SetForm(form),))


def reading_words(read: Reading, system: System) -> str:
    """A figure against its limit: 'wet film 100 µm, above 60 µm (profile)'."""
    if read.measured is None or read.limit is None:
        return read.name
    measured = _value(read, read.measured, system)
    if read.name in BY_THE_CLOCK:
        within = BY_THE_CLOCK[read.name][1]
        return f"{read.name} {measured}" if read.side == "above" else within
    where = OTHER_LIMITS.get(read.name, read.limit_source)
    return f"{read.name} {measured}, {read.side} {_value(read, read.limit, system)} ({where})"


def _value(read: Reading, value: float, system: System, unit: bool = True) -> str:
    if read.unit == "s":
        if read.name in BY_THE_CLOCK:
            return length(value)
        return show(value, Kind.TIME, system, places=1, unit=unit)
    kind, factor = KINDS[read.unit]
    places = 0 if read.unit == "1" else None
    return show(value * factor, kind, system, places=places, unit=unit)


def strongest(causes: tuple[RankedCause, ...], system: System) -> Readout | None:
    """The figure of this job that speaks for the first cause, as the large one.

    None where none speaks for it: nothing is claimed without one.
    """
    first = causes[0]
    if first.standing is not Standing.SHOWN or not first.figures_for:
        return None
    read = first.figures_for[0]
    label = f"{read.name}: {first.cause.words}"
    if read.measured is None or read.limit is None:
        return Readout("", label=label, tone=Tone.CAUTION, word=read.name.upper(), whose="CAUSE 1")
    if read.name in BY_THE_CLOCK:
        unit, word = "", BY_THE_CLOCK[read.name][0]
    else:
        # A unit keeps its own letters: M is not m.
        word = f"{read.side.upper()} {_value(read, read.limit, system)}"
        unit = "s" if read.unit == "s" else shown_unit(KINDS[read.unit][0], system)
    figure = _value(read, read.measured, system, unit=False)
    return Readout(figure, unit, label=label, tone=Tone.CAUTION, word=word, whose="CAUSE 1")


def fault_lines(seen: Sequence[FaultSeen]) -> tuple[PickLine, ...]:
    """The list: going on first, then every fault with how it looks, or where it was seen."""
    where: dict[str, list[str]] = {}
    for each in seen:
        where.setdefault(each.fault, []).append(each.part or ANY_PART)
    return (
        PickLine("no other fault: go on" if seen else "no fault seen: go on"),
        *(
            PickLine(fault.name, f"√ seen: {', '.join(where[key])}", must=True)
            if key in where
            else PickLine(fault.name, fault.looks)
            for key, fault in FAULTS.items()
        ),
    )


def causes_page(fault: Fault, part: str, found: Diagnosis, system: System) -> Page:
    """What to ask, what to do with the film, and all causes by rank, to read and to scroll."""
    page = [("head", f"{fault.name}, {part or ANY_PART}")]
    if found.question is not None:
        page.append(("now", f"? {found.question.words}"))
        page.append(("quiet", f"{', '.join(Reply)}: ← →, then Enter"))
    if not any(each.figures_for for each in found.causes):
        page.append(("text", "Nothing measured in this job points to a cause."))
    page.append(("text", f"On the film: {fault.film}"))
    for rank, each in enumerate(found.causes, 1):
        page.append(("head", f"{rank}  {each.cause.words}"))
        page += [("text", f"for it: {reading_words(read, system)}") for read in each.figures_for]
        page += [
            ("quiet", f"against it: {reading_words(read, system)}") for read in each.figures_against
        ]
        page += [("text", _answer_words(asked, is_for)) for asked, is_for in each.answers]
        usual = USUAL[each.cause.usual]
        if each.standing is Standing.CLEARED:
            page.append(("quiet", usual))
            continue
        if not each.is_measured and not each.answers:
            usual += f"; nothing measured. {QUESTIONS[each.cause.key].words}"
        page += [("quiet", usual), ("now", f"now: {each.cause.now}")]
        page.append(("text", f"next time: {each.cause.next_time}"))
    return Page(tuple(page))


def _answer_words(asked: Question, is_for: bool) -> str:
    return f"{'for' if is_for else 'against'} it, as answered: {asked.words}"
