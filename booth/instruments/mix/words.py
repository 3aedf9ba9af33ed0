"""What the mix says: figures, lines and rows, from a batch being poured. Pure."""

from __future__ import annotations

from booth.bench.context import Context
from booth.bench.instrument import local_time
from booth.files.safe_text import visible
from booth.job import scaled_waits
from booth.job.mixture import now as mix_now
from booth.job.pouring import BatchPlan, Pouring, components, open_batches, thinner_of
from booth.job.waits import State, What, standing, waits
from booth.log.events import BatchMixed
from booth.trade.mixing.components import Measure
from booth.trade.mixing.pours import Pour
from booth.units import Kind, System, show, shown_unit
from booth.words.pictures import PourRow
from booth.words.readout import Readout
from booth.words.tone import Tone
from booth.words.wait_words import TONES, rough

KIND = {Measure.VOLUME: Kind.VOLUME, Measure.WEIGHT: Kind.MASS}
LONGEST_WORD = 12


def _shown(amount: float, measure: Measure, system: System) -> str:
    return show(amount, KIND[measure], system)


def empty_readout(context: Context) -> Readout:
    """Before it is known how much: what is mixed, and how. Pure."""
    mix, profile = context.profile.mix, context.profile
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
        lines.append(_thinner_words(context))
    pot = scaled_waits.pot_life(profile, context.job.weather)
    if pot is not None:
        lines.append(f"pot life today {'about ' if pot.estimate else ''}{rough(pot.seconds)}")
    return Readout(figure, label=label, word=word, lines=tuple(lines))


def _thinner_words(context: Context) -> str:
    thinner = thinner_of(context.profile)
    assert thinner is not None
    usual = f"usually {thinner.usual_percent:g} %" if thinner.usual_percent is not None else ""
    most = f"at most {thinner.limit_percent:g} %" if thinner.limit_percent is not None else ""
    return f"{visible(thinner.name)}: " + (
        ", ".join(each for each in (usual, most) if each) or "as needed"
    )


def fault_readout(sentence: str) -> Readout:
    return Readout("–", label="mix", tone=Tone.CAUTION, word="CHECK", lines=(sentence,))


def pour_readout(context: Context, plan: BatchPlan, state: Pouring) -> Readout:
    """The next mark as the figure. Pure."""
    pour = state.next
    assert pour is not None
    system, kind = context.system, KIND[state.measure]
    again = any(each.name == pour.name for each in state.done)
    name = visible(pour.name)
    lines = [f"{_shown(pour.amount, state.measure, system)} of {name}"]
    if state.by:
        grew = _shown(state.grew, state.measure, system)
        total = _shown(state.total, state.measure, system)
        lines.insert(0, f"Too much {visible(state.by)}: the batch grows by {grew} to {total}.")
    elif again:
        lines.insert(0, f"There is too little {name} in it yet.")
    if not state.done:
        if plan.rest is None and state.measure is Measure.WEIGHT:
            lines.append("The scale is at zero with the cup on it.")
        if plan.onto is not None:
            lines.append(f"The pot life of batch {plan.onto}, which is older, will rule all of it.")
    word = f"ADD {name.upper()}" if again else name.upper()
    return Readout(
        show(pour.mark, kind, system, unit=False),
        shown_unit(kind, system),
        label=f"pour {'more ' if again else ''}{name} up to",
        tone=Tone.CAUTION if again else Tone.READY,
        word=f"{word[: LONGEST_WORD - 1]}…" if len(word) > LONGEST_WORD else word,
        lines=tuple(lines),
        like=show(state.total, kind, system, unit=False),
    )


def mixed_readout(context: Context, state: Pouring) -> Readout:
    """All is in, the batch not yet called mixed. Pure."""
    kind = KIND[state.measure]
    return Readout(
        show(state.mark, kind, context.system, unit=False),
        shown_unit(kind, context.system),
        label="everything is in",
        tone=Tone.READY,
        word="STIR",
        lines=("Space says that it is mixed: pot life begins.",),
    )


def pour_rows(state: Pouring, system: System) -> tuple[PourRow, ...]:
    """The pours done, the one to do, those that come. Pure."""

    def row(pour: Pour, tone: Tone) -> PourRow:
        amount, mark = (_shown(each, state.measure, system) for each in (pour.amount, pour.mark))
        return PourRow(visible(pour.name), amount, mark, tone)

    done = [row(pour, Tone.GOOD) for pour in state.done]
    left = [row(pour, Tone.READY if n == 0 else Tone.PLAIN) for n, pour in enumerate(state.left)]
    return (*done, *left)


def mixed_words(batch: BatchMixed) -> str:
    """What is said when a batch has just been mixed. Pure."""
    said = f"Batch {batch.batch} is mixed. Stir it well."
    if batch.onto is not None:
        said += f" The pot life of batch {batch.onto}, which is older, rules all of it."
    return said


def batch_line(batch: BatchMixed, system: System) -> str:
    """A batch in a line. Pure."""
    pours = " + ".join(
        f"{visible(pour.name)} {_shown(pour.amount.value, _measure(pour.amount.unit), system)}"
        for pour in batch.pours
    )
    total = batch.total
    whole = f" = {_shown(total.value, _measure(total.unit), system)}" if total else ""
    onto = f" onto batch {batch.onto}" if batch.onto is not None else ""
    return f"batch {batch.batch}{onto}: {pours}{whole}"


def _measure(unit: str) -> Measure:
    return Measure.WEIGHT if unit == "g" else Measure.VOLUME


def batch_readout(context: Context, batch: BatchMixed) -> Readout:
    """The batch mixed last: until when it may be sprayed. Pure."""
    job = context.job
    mine = {
        wait.what: wait for wait in waits(job) if wait.title == f"batch {batch.batch}"
    }  # waits of finished batches are not among them
    pot, induction = mine.get(What.POT_LIFE), mine.get(What.INDUCTION)
    lines = []
    if induction is not None:
        lines.append(f"Induction: not to be sprayed before {local_time(induction.opens_at)}.")
    if batch.onto is not None:
        lines.append(f"The older batch {batch.onto} rules the pot life of all of it.")
    stage = mix_now(job)
    if stage.known:
        thinner = thinner_of(context.profile)
        name = visible(thinner.name) if thinner is not None else "thinner"
        lines.append(f"{name}: {100 * stage.fraction:.1f} % of the coating")
    others = [str(each.batch) for each in open_batches(job) if each.batch != batch.batch]
    if others:
        lines.append(f"also in use: batch {', '.join(others)}")
    if pot is None or pot.closes_at is None:
        word = "MIXED" if len(components(context.profile)) > 1 else "STIRRED"
        total = batch.total
        if total is None:
            return Readout(f"{batch.batch}", label="batch", tone=Tone.GOOD, word=word)
        kind = KIND[_measure(total.unit)]
        return Readout(
            show(total.value, kind, context.system, unit=False),
            shown_unit(kind, context.system),
            label=f"batch {batch.batch}",
            tone=Tone.GOOD,
            word=word,
            lines=tuple(lines),
        )
    if pot.estimate:
        lines.append(f"~ estimate: {pot.rule}")
    state = standing(pot, context.now, context.job.boots).state
    word = {State.CLOSING: "NEARLY OVER", State.LATE: "POT LIFE OVER"}.get(state, "MIXED")
    return Readout(
        f"{'~' if pot.estimate else ''}{local_time(pot.closes_at)}",
        label=f"batch {batch.batch}: to be sprayed before",
        tone=TONES[state] if word != "MIXED" else Tone.GOOD,
        word=word,
        lines=tuple(lines),
    )
