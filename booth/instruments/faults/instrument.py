"""Faults: pick what is seen; its causes come ranked by what this very job measured."""

from __future__ import annotations

from collections.abc import Collection
from typing import ClassVar

from booth.bench.act import Act, Keep, Say, Scroll, SetForm
from booth.bench.context import Context
from booth.bench.instrument import Instrument, word
from booth.forms.field import Field
from booth.forms.form import Rows, Values
from booth.forms.key import Key
from booth.instruments.faults.words import ANY_PART, causes_page, fault_lines, strongest
from booth.job.fault_evidence import evidence_of
from booth.log.events import Event, FaultSeen
from booth.trade.faults.ranked_causes import FAULTS, rank_causes
from booth.words.lines import Page
from booth.words.pictures import Lines, Picture
from booth.words.readout import Readout

#: The lines of the list: the first is no fault.
KEYS = ("", *FAULTS)
#: Rows that an arrow moves what is read by.
READ_ON = 2


class Faults(Instrument):
    """A list of faults; behind each its causes, the strongest one's figure as the large one."""

    KIND: ClassVar[str] = "faults"
    NAME: ClassVar[str] = "Faults seen"
    ABOUT: ClassVar[tuple[str, ...]] = (
        "Pick what is seen, and on which part. Its causes are ranked by what this job measured: a "
        "cause is claimed only where a figure speaks for it, and the figure stands beside it, "
        "against the limit it passed. The large figure is that of the strongest cause.",
        "Figures point, they do not prove. A cause that no figure can speak for (dirt, oil, a wrong "
        "thinner) stays under 'nothing measured for or against', and may be the one.",
        "The figures are those of the time when the last coat on the part was laid; a delivery of "
        "water, a pressure in the hose and a fan that was not measured say nothing. A wet film and "
        "a pace count as out of range only where their whole span is.",
        "Rank: how usual the cause is, times how far its figure is past the limit. It is no "
        "probability (common practice, no source).",
        "Causes: FAA-H-8083-31 ch. 8, TM 43-0139 p. 5-12, TO 1-1-8 table 4-1, and a corrosion "
        "handbook's table of film faults; else common practice, no source. The data sheet wins.",
        "Sanding, cutting and polishing make dust of what was sprayed: mask and eyes, and wet where "
        "the data sheet says so.",
    )
    KEEPS: ClassVar[tuple[type[Event], ...]] = (FaultSeen,)

    def fields(self, context: Context) -> tuple[Field, ...]:
        """Where the list stands, on which part, and whether the causes are being read."""
        faults = tuple((key, FAULTS[key].name if key else "none") for key in KEYS)
        parts = (("", ANY_PART), *((part, part) for part in context.job.parts))
        return (
            Field("fault", "Fault", choices=faults),
            Field("part", "Part", choices=parts),
            Field("causes", "Causes", choices=(("", "closed"), ("open", "open"))),
        )

    def wanted(self, context: Context, values: Values) -> Collection[str] | None:
        return ()

    def readout(self, context: Context, values: Values) -> Readout | None:
        if not reads_causes(context, values):
            return None
        causes = rank_causes(word(values, "fault"), evidence_of(context.job, word(values, "part")))
        return strongest(causes, context.system)

    def picture(self, context: Context, values: Values) -> tuple[Picture, ...]:
        key, part = word(values, "fault"), word(values, "part")
        if reads_causes(context, values):
            causes = rank_causes(key, evidence_of(context.job, part))
            return (causes_page(FAULTS[key], part, causes, context.system),)
        looks = FAULTS[key].looks if key else "Look along the film against a lamp."
        return (
            Page((("quiet", f"seen on  ◂ {part or ANY_PART} ▸"),)),
            Lines(fault_lines(context.job.faults), KEYS.index(key)),
            Page((("text", looks),)),
        )

    def last_kept(self, context: Context, values: Values) -> tuple[Event, ...]:
        """What was seen last on the chosen part; while its causes are read, this very fault."""
        key, part = word(values, "fault"), word(values, "part")
        found = tuple(each for each in context.job.faults if part in ("", each.part))
        if reads_causes(context, values):
            found = tuple(each for each in found if (each.fault, each.part) == (key, part))
        return found[-1:]

    # -- what the painter does --------------------------------------------------------------

    def space(self, context: Context, rows: Rows) -> Act:
        if reads_causes(context, rows.values):
            return _back(rows)
        if not word(rows.values, "fault"):
            return Act("", (Say("Arrows pick what is seen; Enter goes on."),))
        return take(context, rows)

    def enter(self, context: Context, rows: Rows) -> Act | None:
        values = rows.values
        if reads_causes(context, values) or not word(values, "fault"):
            return None
        return take(context, rows)

    def own(self, context: Context, rows: Rows, key: Key) -> Act | None:
        """Arrows walk the list and choose the part, or scroll what is read and lead back."""
        values, by = rows.values, -1 if key.name in ("up", "left") else 1
        if key.name not in ("up", "down", "left", "right"):
            return None
        if reads_causes(context, values):
            if key.name in ("up", "down"):
                return Act("read on", (Scroll(by * READ_ON),))
            return _back(rows) if by < 0 else None
        if key.name in ("up", "down"):
            return _stand(rows, KEYS.index(word(values, "fault")) + by)
        parts = ("", *context.job.parts)
        part = parts[(parts.index(word(values, "part")) + by) % len(parts)]
        return Act("part", (SetForm(rows.form.choosing("part", part)), Say("")))

    def pick(self, context: Context, rows: Rows, index: int) -> Act | None:
        """A line that is clicked is stood on; clicked again, it is seen."""
        if reads_causes(context, rows.values):
            return None
        at = KEYS.index(word(rows.values, "fault"))
        return take(context, rows) if at and at == index else _stand(rows, index)


def reads_causes(context: Context, values: Values) -> bool:
    """Whether the causes of a fault are read: one that is in the log, and not void. Pure."""
    seen = (word(values, "fault"), word(values, "part"))
    known = any((each.fault, each.part) == seen for each in context.job.faults)
    return bool(word(values, "causes")) and known


def take(context: Context, rows: Rows) -> Act:
    """Keep that a fault is seen, once for each part, and show its causes."""
    key, part = word(rows.values, "fault"), word(rows.values, "part")
    shown = (SetForm(rows.form.choosing("causes", "open")), Say(""))
    if any((each.fault, each.part) == (key, part) for each in context.job.faults):
        return Act(f"causes of {FAULTS[key].name}", shown)
    event = FaultSeen(n=0, at=context.now, fault=key, part=part)
    return Act(f"seen: {FAULTS[key].name}, {part or ANY_PART}", (Keep(event), *shown))


def _back(rows: Rows) -> Act:
    return Act("another fault", (SetForm(rows.form.choosing("causes", "")), Say("")))


def _stand(rows: Rows, index: int) -> Act | None:
    """On another line of the list; None where there is none."""
    if not 0 <= index < len(KEYS):
        return None
    form = rows.form.choosing("fault", KEYS[index]).choosing("causes", "")
    return Act("fault", (SetForm(form), Say("")))
