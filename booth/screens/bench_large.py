"""What the bench draws where the window has room: tries, the log. It moves slowly, so it is seldom drawn."""

from __future__ import annotations

from typing import Any

from booth.bench.next_act import Situation
from booth.clock import local_date, local_hhmm
from booth.job.steps import steps_of
from booth.log.fold import Job, kept_by
from booth.moment import Moment
from booth.screens.base import OwnScreen
from booth.units import System
from booth.widgets.instrument_view import InstrumentView
from booth.widgets.lists import StepList
from booth.widgets.log_tail import LogLine, LogTail
from booth.widgets.room import NONE, Room, room_in
from booth.words.event_words import teller
from booth.words.tried import AtLarge

#: A cell of a day's line is minutes wide: it is looked at again so often [s].
AGAIN_S = 30.0
#: More entries than these never fit under the steps.
MOST_ENTRIES = 30
VOIDED = "× VOIDED "


def slot(now: Moment) -> int:
    """Another number each time that it is to be drawn again though nothing was done."""
    return int(now.wall // AGAIN_S)


def draw_large(screen: OwnScreen[Any], situation: Situation) -> None:
    """Draw what there is room for in this window; nothing of it in a small one."""
    context, instrument, values = situation.context, situation.instrument, situation.rows.values
    view, size = screen.query_one(InstrumentView), screen.size
    room = room_in(*size)
    if room != NONE:
        pictures = instrument.picture(context, values)
        room = room_in(*size, pictures, bool(situation.rows.sight))
    large = instrument.at_large(context, values) if room.beside else AtLarge()
    view.title(instrument.KIND, context.step.how)
    has_figure = room.beside > 0 and instrument.readout(context, values) is not None
    view.room(room, large, has_figure)
    _draw_log(screen, room, context.job, context.system)


def _draw_log(screen: OwnScreen[Any], room: Room, job: Job, system: System) -> None:
    """The log under the steps, which then take no more rows than they are."""
    steps, tail = screen.query_one(StepList), screen.query_one(LogTail)
    tail.display = room.log
    steps.styles.height = len(steps_of(job)) + 1 if room.log else "1fr"
    if room.log:
        tail.shown = kept_by(job, "log under the steps", system, lambda: entries(job, system))


def entries(job: Job, system: System) -> tuple[LogLine, ...]:
    """The last entries in words, the newest last."""
    told = teller(system, job)
    return tuple(
        LogLine(
            local_date(event.at),
            local_hhmm(event.at),
            f"{VOIDED if event.n in job.void else ''}{told(event)}",
            event.n in job.void,
        )
        for event in job.events[-MOST_ENTRIES:]
    )
