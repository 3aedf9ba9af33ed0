"""The flow cup: Space starts, Space stops; runs, mean, spread; viscosity where the cup's range allows."""

from __future__ import annotations

from booth.bench.act import Act, Context, Keep, Say, SetForm, refused
from booth.bench.instrument import Instrument, quantity, word
from booth.forms.form import Field, Rows, Values
from booth.instruments.figures import against, asked_for, gauge, given
from booth.instruments.large.cup import runs_at_large
from booth.job.advice import on_cup
from booth.job.amiss import Cause
from booth.job.guard import of_induction
from booth.job.measured import efflux_runs, known, mean_efflux_s
from booth.job.mix_choice import in_use
from booth.log.events import EffluxTimed, Event, StopwatchDropped, StopwatchStarted
from booth.trade.cups.cup_names import cup_named
from booth.trade.cups.cup_runs import run_statistics
from booth.trade.cups.cup_table import CUPS, Cup
from booth.trade.cups.efflux_time import equivalent_efflux, viscosity_from_efflux
from booth.trade.result import Outside, Value
from booth.units import Kind, show
from booth.units.sentences import in_units
from booth.words.about import of_the_can
from booth.words.profile_words import range_words
from booth.words.shown import Band, Readout, Tone
from booth.words.thinner_time_words import at_cup
from booth.words.wait_words import length

#: No cup runs for so long: the run was forgotten, or the program was gone meanwhile [s].
LONGEST_S = 600.0
CUP = "cup"
DROPPED = "The run that nobody stopped is dropped. Time it again."


class Efflux(Instrument):
    KIND = "efflux"
    NAME = "Flow cup"
    ABOUT = of_the_can.FLOW_CUP
    KEEPS = (EffluxTimed,)
    FIRST = ("cup",)
    at_large = runs_at_large

    def fields(self, context: Context, values: Values) -> tuple[Field, ...]:
        at = context.job.runs[-1].liquid_temperature if context.job.runs else None
        hint = "" if at else "optional"
        return (
            Field("cup", "Cup", choices=cup_choices(context), default=cup_in_use(context)),
            Field("liquid", "Liquid at", Kind.TEMPERATURE, optional=True, default=at, hint=hint),
        )

    def frames(self, context: Context) -> int:
        return 10 if context.running(CUP) is not None else 0

    def space(self, context: Context, rows: Rows) -> Act:
        """Start, or stop and keep the run; the cup is the one it was started with."""
        watch = context.running(CUP)
        if watch is None:
            if rows.fault:
                return refused(rows.fault, "start")
            cup = word(rows.values, "cup")
            started = StopwatchStarted(n=0, at=context.now, stopwatch=CUP, what=cup)
            return Act("start", (Keep(started),))
        seconds = context.since(watch.started.at)
        if seconds > LONGEST_S:
            dropped = StopwatchDropped(n=0, at=context.now, stopwatch=CUP)
            return Act("drop this run", (Keep(dropped), Say(DROPPED)))
        cup = watch.started.what
        event = EffluxTimed(
            n=0,
            at=context.now,
            cup=cup,
            seconds=round(seconds, 2),
            liquid_temperature=quantity(rows.values, "liquid"),
            correction=context.shop.correction(cup),
        )
        return Act("stop at the first break", (Keep(event), SetForm(rows.emptied())))

    def event(self, context: Context, values: Values) -> Event | str:
        return "The temperature goes with a run: Space starts one."

    def readout(self, context: Context, values: Values) -> Readout:
        watch = context.running(CUP)
        if watch is not None:
            seconds, cup = context.since(watch.started.at), CUPS.get(watch.started.what)
            name, lines = (cup.name, (cup.stop_rule,)) if cup else (watch.started.what, ())
            if seconds > LONGEST_S:
                said = f"A run was started {length(seconds)} ago and never stopped: Space drops it."
                return Readout("", "", "", Tone.CAUTION, "FORGOTTEN", (said,), whose=name)
            edge, band = _gauge(context, watch.started.what, seconds)
            return Readout(
                f"{seconds:.1f}",
                "s",
                "",
                Tone.RUNNING,
                lines=lines,
                like="00.0",
                whose=name,
                edge=edge,
                band=band,
            )
        key = word(values, "cup")
        cup = CUPS[key] if key in CUPS else CUPS[cup_in_use(context)]
        mean, runs = mean_efflux_s(context.job), efflux_runs(context.job)
        if mean is None or runs[-1].cup != cup.key:
            told = (*while_it_stands(context), cup.start_rule)
            _, band = _gauge(context, cup.key, None)
            if band is None:
                return Readout("0.0", "s", like="00.0", word="TIME IT", lines=told, whose=cup.name)
            efflux = context.profile.efflux
            asked = None if efflux is None else efflux.target_s
            return asked_for(
                context, asked, Kind.TIME, "", "", told, whose=cup.name, word="TIME IT"
            )
        return efflux_readout(context, cup, mean)

    def record(self, context: Context) -> tuple[str, ...]:
        runs = efflux_runs(context.job)
        if not runs:
            return ()
        # The mean is the one that the figure tells, the cup's own correction applied.
        corrected = any(run.correction != 1.0 for run in runs)
        as_read, mean_is = (" as read", " corrected") if corrected else ("", "")
        times = [run.seconds * run.correction for run in runs]
        stats = run_statistics(times, CUPS.get(runs[-1].cup))
        each = "  ".join(f"{run.seconds:.1f}" for run in runs[-8:])
        spread = f", spread {stats.spread_s:.1f} s" if len(runs) > 1 else ""
        said = f"runs {each}{as_read}   mean {stats.mean_s:.1f} s{mean_is}{spread}"
        return (said, f"SUSPECT: {stats.criterion}") if stats.suspect else (said,)


def cup_choices(context: Context) -> tuple[tuple[str, str], ...]:
    """Every cup, those that the painter owns and the profile's own first."""
    own = [known(cup_named, each.cup) for each in context.shop.cups]
    first = (CUPS[cup_in_use(context)], *filter(None, own))
    order = {cup.key: cup for cup in (*first, *CUPS.values())}.values()
    return tuple((cup.key, f"{cup.name}  {cup.low_s:g}-{cup.high_s:g} s") for cup in order)


def cup_in_use(context: Context) -> str:
    """The cup timed last, else the profile's, else the first there is."""
    if context.job.runs and context.job.runs[-1].cup in CUPS:
        return context.job.runs[-1].cup
    efflux = context.profile.efflux
    cup = known(cup_named, efflux.cup) if efflux is not None else None
    return cup.key if cup is not None else next(iter(CUPS))


def efflux_readout(context: Context, cup: Cup, mean_s: float) -> Readout:
    """The mean as the figure, compared with the profile's target; viscosity or why not. Pure."""
    viscosity = viscosity_from_efflux(cup, mean_s)
    tone, state, lines = _compared(context, cup, mean_s, viscosity)
    lines = [*while_it_stands(context), *on_cup(given(context)), *lines]
    if isinstance(viscosity, Outside):
        # The seconds of the target's own cup count without any conversion.
        said = viscosity.reason if state else f"{viscosity.reason} {viscosity.advice}"
        lines.append(in_units(said, context.system))
        if not state:
            tone, state = Tone.CAUTION, "OUTSIDE THE CUP"
    elif isinstance(viscosity, Value):
        shown = show(viscosity.value, Kind.VISCOSITY, context.system)
        standard = cup.standard.partition(" (")[0]  # with its edition behind '?'
        lines.append(f"{shown} at {liquid_words(context)}, {standard}")
    if cup.doubt:
        lines.append(cup.doubt)
    factors = sorted({run.correction for run in efflux_runs(context.job)} - {1.0})
    said = ", ".join(f"{factor:g}" for factor in factors)
    lines += [f"the runs times this cup's own correction, {said}"] if factors else []
    edge, band = _gauge(context, cup.key, mean_s)
    label = "mean of the runs" if len(efflux_runs(context.job)) > 1 else ""
    return Readout(
        f"{mean_s:.1f}",
        "s",
        label,
        tone,
        state,
        tuple(lines),
        like="00.0",
        whose=cup.name,
        edge=edge,
        band=band,
    )


def _gauge(context: Context, cup: str, seconds: float | None) -> tuple[float | None, Band | None]:
    """Seconds on the scale of the profile's target; of another cup than its own there is none."""
    efflux = context.profile.efflux
    if efflux is None or known(cup_named, efflux.cup) is not CUPS.get(cup):
        return None, None
    return gauge(context.system, seconds, efflux.target_s, Kind.TIME, "the data sheet's band")


def while_it_stands(context: Context) -> tuple[str, ...]:
    """That the mix still stands: it may run out otherwise when its induction is over. Pure."""
    stands = (each for each in of_induction(context.job, context.now))
    left = [each.value for each in stands if each.cause is Cause.INDUCTION]
    if not left:
        return ()
    return (at_cup(in_use(context.job), length(max(left))),)


def liquid_words(context: Context) -> str:
    """The temperature at which the runs were timed, which is that of the viscosity; as typed."""
    told = [run.liquid_temperature for run in efflux_runs(context.job)]
    if not told or told[-1] is None:
        return "the liquid's own temperature"
    return show(told[-1].value, Kind.TEMPERATURE, context.system)


def _compared(
    context: Context, cup: Cup, mean_s: float, viscosity: Value | Outside
) -> tuple[Tone, str, list[str]]:
    """Tone, word and lines against the profile's target, through equivalent seconds where its cup
    is another one."""
    efflux = context.profile.efflux
    lines: list[str] = []
    if efflux is None:
        return Tone.PLAIN, "", []
    target_cup = cup_named(efflux.cup)
    if target_cup.key != cup.key:
        same = equivalent_efflux(mean_s, cup, target_cup)
        if not isinstance(same, Value):
            # Outside the cup's range the viscosity says why.
            why = f": {in_units(same.reason, context.system)}"
            why = "." if isinstance(viscosity, Outside) else why
            return Tone.PLAIN, "", [f"Not comparable with the profile's {target_cup.name}{why}"]
        mean_s = same.value
        lines.append(f"equals {mean_s:.1f} s in a {target_cup.name} (equivalent seconds)")
    target = range_words(efflux.target_s, Kind.TIME, context.system)
    lines.append(f"profile: {target} in a {target_cup.name}")
    return *against(mean_s, efflux.target_s, "TOO THIN", "TOO THICK"), lines
