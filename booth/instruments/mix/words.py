"""What the mix says: figures, lines and rows, from a batch being poured. Pure."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from booth.bench.act import Context
from booth.clock import local_day_hhmm
from booth.files.safe_text import visible
from booth.instruments.figures import figure
from booth.instruments.mix.onto import COUNTS, doubt_word, doubts_of, who_rules
from booth.job import lasting
from booth.job.mix_choice import (
    Choice,
    Option,
    choice_for_today,
    in_use,
    mixed_with,
    options_of,
    todays,
)
from booth.job.mixture import by_weight
from booth.job.mixture import now as mix_now
from booth.job.pouring import BatchPlan, Pouring, open_batches
from booth.job.recipe import components, measures, thinner_of
from booth.job.thinner_time import ThinnerTime, thinner_time
from booth.job.together import poured_together
from booth.job.wait import State, What, standing
from booth.job.waits import waits
from booth.log.events import BatchMixed
from booth.profile.model import Hardener
from booth.trade.mixing.components import Measure
from booth.trade.mixing.pours import Pour
from booth.units import Kind, System, show
from booth.units.sentences import in_units
from booth.words.profile_words import range_words
from booth.words.shown import PourRow, Readout, Tone
from booth.words.thinner_time_words import at_mix
from booth.words.wait_words import TONES, edge_of, rough, rule_words, state_word

KIND = {Measure.VOLUME: Kind.VOLUME, Measure.WEIGHT: Kind.MASS}
LAST_TIME = "By weight, as in the last job."
AFTER_ALL = (
    "The data sheet has the thinner go in after the induction: set its row to 0 %, and thin later."
)


def as_last_time(context: Context) -> bool:
    """Whether the scale is offered because it was used in the last job, and nothing of this one says."""
    job = context.job
    if job.pours or job.batches or by_weight(job):
        return False
    return context.past.weighed_last(job.opened.job) is True


def empty_readout(context: Context) -> Readout:
    """Before it is known how much: what is mixed, and how. Pure."""
    profile = todays(context.profile, context.job.weather)
    mix = profile.mix
    thinner = thinner_of(profile)
    lines = []
    if mix is not None and len(mix.parts) > 1:
        figure = " : ".join(f"{part.parts:g}" for part in mix.parts)
        names = ", ".join(visible(part.name) for part in mix.parts)
        label, word = f"parts by {mix.by}: {names}", "HOW MUCH?"
    else:
        figure, label, word = "STIR", "nothing is mixed into this coating", ""
        lines.append("Stir it to the bottom of the can. Amount: how much to pour out.")
    if thinner is not None:
        usual, limit = thinner.usual_percent, thinner.limit_percent
        given = range_words(usual, Kind.PERCENT, System.METRIC)
        most = f"at most {limit:g} %" if limit is not None else ""
        said = [f"usually {given}" if given else "", most]
        lines.append(f"{visible(thinner.name)}: {', '.join(filter(None, said)) or 'as needed'}")
    lines += filter(None, (at_mix(profile),))
    if as_last_time(context):
        can = Measure.WEIGHT in measures(profile)
        lines.append(LAST_TIME if can else f"{LAST_TIME[:-1]}; without every density by volume.")
    for options in options_of(context.profile):
        choice = _choice(context, options)
        if choice is not None and len(options) > 1:
            lines.append(_choice_words(choice, context))
    pot = lasting.pot_life(profile, context.job.weather)
    if pot is not None and pot.seconds is not None:
        lines.append(f"pot life today {'about ' if pot.estimate else ''}{rough(pot.seconds)}")
    return Readout(figure, label=label, word=word, lines=tuple(lines), whose="MIX")


def _choice(context: Context, options: Sequence[Option]) -> Choice | None:
    weather = context.job.weather
    return choice_for_today(options, weather.air.value if weather is not None else None)


def best_today(context: Context, options: Sequence[Option]) -> str:
    """The name of the one to take today, '' without options."""
    choice = _choice(context, options)
    return choice.option.name if choice is not None else ""


def option_words(option: Option, system: System) -> str:
    """A hardener or thinner with the air it is for."""
    name, air = visible(option.name), range_words(option.for_c, Kind.TEMPERATURE, system)
    return f"{name}, for {air}" if air else name


def _doubts(context: Context, *chosen: str) -> list[str]:
    """What speaks against the hardener and the thinner that were chosen: the air of today."""
    said, weather = [], context.job.weather
    for options, name in zip(options_of(context.profile), chosen, strict=True):
        choice = _choice(context, options)
        taken = next((each for each in options if each.name == name), None)
        if choice is None or taken is None or taken.for_c is None or weather is None:
            continue
        if not taken.for_c.holds(weather.air.value):
            said.append(f"{option_words(taken, context.system)}. {_choice_words(choice, context)}")
    return said


def _choice_words(choice: Choice, context: Context) -> str:
    """What to take in today's air. Pure."""
    option, weather = option_words(choice.option, context.system), context.job.weather
    if weather is None:
        return "The weather was not read: which one suits the air is not known."
    air = show(weather.air.value, Kind.TEMPERATURE, context.system)
    if choice.suits is None:
        return f"air {air}: the profile does not say which one is for it"
    if not choice.suits:
        kind = "hardener" if isinstance(choice.option, Hardener) else "thinner"
        return f"No {kind} is for air of {air}: {option} is nearest. Ask the data sheet."
    return f"air {air}: take {option}"


def pour_readout(context: Context, state: Pouring) -> Readout:
    """The next mark as the figure; all is in, and the batch not yet called mixed. Pure."""
    pour, plan, system = state.next, state.plan, context.system
    kind = KIND[plan.by]
    if pour is None:
        label, said = "everything is in", "Space says that it is mixed: pot life begins."
        shown = figure(context, state.mark, kind, label, Tone.READY, "STIR", (said,), whose="MIX")
        return replace(shown, edge=1.0)
    again = any(each.name == pour.name for each in state.done)
    name, doubts = visible(pour.name), _doubts(context, plan.hardener, plan.thinner)
    mixed = doubts_of(context, plan)
    lines = [*mixed, f"{show(pour.amount, kind, system)} of {name}", *doubts]
    doubts += mixed
    if state.by:
        grew, total = (show(each, kind, system) for each in (state.grew, state.total))
        lines.insert(0, f"Too much {visible(state.by)}: the batch grows by {grew} to {total}.")
    elif again:
        lines.insert(0, f"There is too little {name} in it yet.")
    time = thinner_time(mixed_with(context.profile, plan.hardener, plan.thinner))
    too_soon = time is ThinnerTime.AFTER and plan.thinner_percent > 0
    if too_soon:
        lines.insert(0, AFTER_ALL)
    elif time is ThinnerTime.UNSAID or (time is ThinnerTime.BEFORE and not plan.thinner_percent):
        lines.append(at_mix(mixed_with(context.profile, plan.hardener, plan.thinner)))
    if not state.done:
        if plan.rest is None and plan.by is Measure.WEIGHT:
            as_then = f"{LAST_TIME} " if as_last_time(context) else ""
            lines.append(f"{as_then}The scale is at zero with the cup on it.")
        lines += filter(None, (who_rules(context, plan),))
    tone, word = Tone.CAUTION if doubts or too_soon else Tone.READY, "POUR"
    label = f"pour {name} up to"
    if mixed and not state.done:
        word = doubt_word(context, plan)
    if again:
        tone, word, label = Tone.CAUTION, "ADD", f"pour more {name} up to"
    whole = show(state.total, kind, system, unit=False)
    shown = figure(context, pour.mark, kind, label, tone, word, lines, whole, whose=name)
    if state.total <= 0:
        return shown
    # The field fills as the cup does; a mark where each pour stops.
    marks = [(each.mark / state.total, show(each.mark, kind, system)) for each in state.left]
    return replace(shown, edge=state.mark / state.total, marks=tuple(marks))


def pour_rows(state: Pouring, system: System) -> tuple[PourRow, ...]:
    """The pours done, the one to do, those that come. Pure."""

    def row(pour: Pour, tone: Tone) -> PourRow:
        kind = KIND[state.plan.by]
        amount, mark = (show(each, kind, system) for each in (pour.amount, pour.mark))
        edge = pour.mark / state.total if state.total > 0 else None
        return PourRow(visible(pour.name), amount, mark, tone, edge)

    done = [row(pour, Tone.GOOD) for pour in state.done]
    left = [row(pour, Tone.READY if n == 0 else Tone.PLAIN) for n, pour in enumerate(state.left)]
    return (*done, *left)


def mixed_words(context: Context, batch: BatchMixed, plan: BatchPlan) -> str:
    said = [f"Batch {batch.batch} is mixed. Stir it well.", who_rules(context, plan)]
    if batch.others:
        held = " and ".join(visible(each) for each in batch.others)
        said.append(f"Its rest holds {held}: kept in the log.")
    return " ".join(filter(None, said))


def batch_readout(context: Context, batch: BatchMixed) -> Readout:
    """The batch mixed last: until when it may be sprayed. Pure."""
    job = context.job
    # Waits of finished batches are not among them.
    title = f"batch {batch.batch}"
    mine = {wait.what: wait for wait in waits(job) if wait.title == title}
    pot, induction = mine.get(What.POT_LIFE), mine.get(What.INDUCTION)
    lines = []
    after = thinner_time(in_use(job)) is ThinnerTime.AFTER
    if induction is not None and induction.opens_at is not None:
        thin = " Thin it then: step Thin." if after else ""
        opens = local_day_hhmm(induction.opens_at, context.now)
        lines.append(f"Induction: not to be sprayed before {opens}.{thin}")
    elif induction is not None:
        why = in_units(induction.why, context.system)
        lines.append(f"Induction: how long is not known: {why}.")
    if batch.onto is not None and pot is not None:
        together = reversed(poured_together(job, batch))
        rules = next((each.batch for each in together if each.n == pot.since_n), batch.batch)
        lines.append(f"The pot life of batch {rules} ends first: it rules all of it.")
    if batch.others:
        held = " and ".join(visible(each) for each in batch.others)
        lines.append(f"Its rest holds {held}: {COUNTS}.")
    stage = mix_now(job)
    if stage.known:
        thinner = thinner_of(in_use(job))
        name = visible(thinner.name) if thinner is not None else "thinner"
        lines.append(f"{name}: {100 * stage.fraction:.1f} % of the coating")
    others = [str(each.batch) for each in open_batches(job) if each.batch != batch.batch]
    if others:
        lines.append(f"also in use: batch {', '.join(others)}")
    if pot is None or pot.closes_at is None:
        word = "MIXED" if len(components(context.profile)) > 1 else "STIRRED"
        total = batch.total
        if total is None:
            return Readout("", tone=Tone.GOOD, word=word, whose=title)
        kind = Kind.MASS if total.unit == "g" else Kind.VOLUME
        return figure(context, total.value, kind, "", Tone.GOOD, word, lines, whose=title)
    if pot.estimate:
        lines.append(rule_words(pot, context.system))
    stands = standing(pot, context.now, context.job.boots)
    state = stands.state
    ends = state in (State.CLOSING, State.LATE)
    tone, word = (TONES[state], state_word(stands)) if ends else (Tone.GOOD, "MIXED")
    time = f"{'~' if pot.estimate else ''}{local_day_hhmm(pot.closes_at, context.now)}"
    label, edge = "to be sprayed before", edge_of(stands)
    return Readout(time, "", label, tone, word, tuple(lines), whose=title, edge=edge)
