"""How long the compressor takes to fill its receiver, timed at the step Air with Space. Pure."""

from __future__ import annotations

from booth.bench.act import Act, Context, Keep, Say, SetForm, refused
from booth.clock import local_day_hhmm
from booth.forms.form import Rows
from booth.learnt.recovery import rated_s
from booth.log.events import RecoveryTimed, StopwatchDropped, StopwatchStarted
from booth.units import Kind, Quantity
from booth.words.learnt_words import between, figure
from booth.words.shown import Readout, Tone
from booth.words.wait_words import duration

RECOVERY = "recovery"
#: A fill that nobody ended is forgotten then, and none is so short [s] (this program's own choice).
LONGEST_S, SHORTEST_S = 3600.0, 5.0
DROPPED = "The timing that nobody stopped is dropped. Time the next fill."
TOO_SHORT = "No receiver fills in so few seconds: dropped. Space when the compressor starts."
HOW = "Space when the compressor stops. Draw no air meanwhile: trigger released, hose closed."


def time_the_fill(context: Context, rows: Rows) -> Act | None:
    """Start when the compressor starts, stop and keep when it stops."""
    compressor, watch = context.shop.compressor, context.running(RECOVERY)
    if watch is None and compressor is None:
        return None
    if watch is None:
        if rows.fault:
            return refused(rows.fault, "time a fill")
        started = StopwatchStarted(n=0, at=context.now, stopwatch=RECOVERY)
        return Act("compressor starts", (Keep(started), Say(HOW)))
    seconds = round(context.since(watch.started.at), 1)
    if compressor is None or not SHORTEST_S <= seconds <= LONGEST_S:
        dropped = StopwatchDropped(n=0, at=context.now, stopwatch=RECOVERY)
        said = DROPPED if seconds > LONGEST_S else TOO_SHORT
        return Act("drop this timing", (Keep(dropped), Say(said)))
    pressures = compressor.cut_in_kpa, compressor.cut_out_kpa
    cut_in, cut_out = (Quantity(each, "kPa", f"{each:g} kPa") for each in pressures)
    event = RecoveryTimed(
        n=0,
        at=context.now,
        seconds=seconds,
        cut_in=cut_in,
        cut_out=cut_out,
        receiver=Quantity(compressor.receiver_l, "l", f"{compressor.receiver_l:g} l"),
        rated=Quantity(compressor.flow_l_min, "l/min", f"{compressor.flow_l_min:g} l/min"),
    )
    return Act("compressor stops", (Keep(event), SetForm(rows.form)))


def filling(context: Context) -> Readout | None:
    """The clock of a fill; None where none is timed."""
    watch = context.running(RECOVERY)
    if watch is None:
        return None
    seconds = context.since(watch.started.at)
    if seconds > LONGEST_S:
        said = "A fill was begun to be timed long ago and never stopped: Space drops it."
        return Readout("", "", "", Tone.CAUTION, "FORGOTTEN", (said,), whose="COMPRESSOR")
    return Readout(
        duration(seconds),
        label="filling the receiver",
        tone=Tone.RUNNING,
        word="FILLING",
        lines=(HOW,),
        like="00:00",
        whose="COMPRESSOR",
    )


def fill_lines(context: Context) -> tuple[str, ...]:
    """The last fill that was timed, against the rating."""
    timed, compressor = context.job.of(RecoveryTimed), context.shop.compressor
    if not timed:
        return ()
    last = timed[-1]
    took = figure(last.seconds, Kind.TIME, context.system)
    said = f"{local_day_hhmm(last.at, context.now)}  receiver filled in {took}"
    rated = rated_s(compressor) if compressor is not None else None
    if rated is None:
        return (said,)
    return (f"{said}; rated {between(rated.low, rated.high, Kind.TIME, context.system)}",)
