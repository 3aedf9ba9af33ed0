"""Mix: pour each component up to its mark; what was really poured decides what is poured next."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from booth.bench.act import Act, Ask, Choice, Context, Keep, Say, SetForm, refused
from booth.bench.instrument import Instrument, number, quantity, word
from booth.files.safe_text import visible
from booth.forms.form import Field, Form, Rows, Values, only
from booth.forms.key import Key
from booth.instruments.large.mix import pours_at_large
from booth.instruments.mix import words
from booth.instruments.mix.onto import others_of
from booth.job import pouring, recipe
from booth.job.measured import known
from booth.job.mix_choice import Option, hardeners, in_use, mixed_with, thinners
from booth.job.mixture import by_weight
from booth.job.pouring import BatchPlan, Pouring, open_pours
from booth.job.thinner_time import ThinnerTime, thinner_time
from booth.log.events import BatchMixed, Event, NoteMade, Poured
from booth.profile.model import Profile
from booth.trade.mixing.components import Measure
from booth.trade.result import BadInput
from booth.units import Kind, Quantity
from booth.units.sentences import in_units
from booth.words.about import of_the_can
from booth.words.shown import Picture, Pours, Readout, Tone

#: The row in which the reading is typed, by what is poured.
READING = {Measure.VOLUME: "cup", Measure.WEIGHT: "scale"}
FRESH = "fresh"
_WAYS = {Measure.VOLUME: "volume, marks on the cup", Measure.WEIGHT: "weight, on the scale"}
#: How a note of the cans' batch numbers begins.
CANS = "cans: "
AMOUNT_FIRST = "Enter the amount first, with its unit if you like."
WHEN_POURED = "Space when it is poured to the mark; or type what it shows."
NOT_POURED = "That is what it showed before this pour. Pour, then read it."


class Mix(Instrument):
    KIND = "mix"
    NAME = "Mix"
    ABOUT = of_the_can.MIX
    KEEPS = (BatchMixed, Poured)
    RECORDS = 3
    FIRST = tuple(READING.values())  # where the next digit belongs, once a pour is known
    UNIT_FIRST = True
    at_large = pours_at_large

    def fields(self, context: Context, values: Values) -> tuple[Field, ...]:
        """Every row there may be; those that make sense now are in sight.

        How it is poured stands right before the reading: digits typed there are the reading.
        """
        job, profile, pours = context.job, profile_by_rows(context, values), open_pours(context.job)
        names = [each.name for each in recipe.components(profile)]
        left_of = ((name, f"all that is left of {visible(name)}") for name in names)
        of = (("", "ready to spray"), *left_of)
        batches = [each.batch for each in reversed(pouring.open_batches(job))]
        rests = ((str(number), f"the rest of batch {number}") for number in batches)
        onto = ((FRESH, "a fresh cup"), *rests)
        at_zero = "empty: the scale is at zero with the rest on it"
        # The amount that was worked out for the parts is for the first batch.
        planned = job.amounts[-1].amount if job.amounts and not (job.batches or job.pours) else None
        every = (
            Field("amount", "Amount", amount=True, default=planned),
            _choice("hardener", "Hardener", context, hardeners(context.profile)),
            Field("of", "That is", choices=of, assumed=True),
            _choice("with", "Thinned with", context, thinners(context.profile)),
            _percent(profile, pours),
            Field("onto", "Into", choices=onto),
            Field("rest", "Left in the cup", amount=True, optional=True, hint=at_zero),
            _by(context, profile),
            Field("cup", "Cup shows", Kind.VOLUME, optional=True, hint="if not the mark"),
            Field("scale", "Scale shows", Kind.MASS, optional=True, hint="if not the mark"),
        )
        return only(wanted_rows(context, values), every)

    def readout(self, context: Context, values: Values) -> Readout:
        try:
            state = batch_meant(context, values)
        except BadInput as fault:
            said = in_units(fault, context.system)
            return Readout("", "", "", Tone.CAUTION, "CHECK", (said,), whose="MIX")
        if state is not None:
            return words.pour_readout(context, state)
        if context.job.batches:
            return words.batch_readout(context, context.job.batches[-1])
        return words.empty_readout(context)

    def picture(self, context: Context, values: Values) -> tuple[Picture, ...]:
        state = known(batch_meant, context, values)
        return (Pours(words.pour_rows(state, context.system)),) if state is not None else ()

    def record(self, context: Context) -> tuple[str, ...]:
        return () if open_pours(context.job) else super().record(context)

    def busy(self, context: Context) -> str:
        """An Enter too many is no pour, and leaves no batch half poured."""
        return WHEN_POURED if open_pours(context.job) else ""

    def last_kept(self, context: Context, values: Values) -> tuple[Event, ...]:
        """The last pour; a batch goes back to being half poured with it."""
        last = context.job.last_of(*self.KEEPS)
        if not isinstance(last, BatchMixed):
            return (last,) if last is not None else ()
        pours = [pour for pour in context.job.pours if pour.batch == last.batch]
        return (*pours[-1:], last)

    def space(self, context: Context, rows: Rows) -> Act:
        """Poured, to the mark or to what was typed; the last pour mixes the batch."""
        wrong = next((row.fault for row in rows.sight if row.fault), "")
        if wrong:
            return refused(wrong)
        try:
            state = batch_meant(context, rows.values)
            if state is None:
                first = SetForm(rows.form.marking("amount"))
                return Act("", (first, Say(AMOUNT_FIRST, fault=True)))
            return self._poured(context, rows, state)
        except BadInput as fault:
            return refused(in_units(fault, context.system))

    def _poured(self, context: Context, rows: Rows, state: Pouring) -> Act:
        # By volume or by weight stays; how this one batch was meant does not.
        way = {key: each for key, each in rows.form.chosen.items() if key == "by"}
        job, following = context.job, SetForm(Form(chosen=way))
        plan, poured, word, keep = state.plan, open_pours(job), "mixed", []
        if state.next is not None:
            word, amount = f"poured: {visible(state.next.name)}", state.next.amount
            reading = rows.row(READING[plan.by])
            if reading.text.strip():
                amount = pouring.rest_amount(state, number(rows.values, reading.key) or 0.0)
            if amount <= 0:
                return refused(NOT_POURED)
            pour = pouring.pour_event(job, plan, state.next.name, amount, context.now)
            poured, keep = (*poured, pour), [Keep(pour)]
        if batch_state(context, plan, poured).next is not None:
            return Act(word, (*keep, following))
        others = others_of(context, pouring.plan_of(poured))
        batch = pouring.batch_of(context.profile, poured, context.now, others)
        said = Say(words.mixed_words(context, batch, plan))
        return Act(word, (*keep, Keep(batch), following, said))

    def enter(self, context: Context, rows: Rows) -> Act | None:
        """In the row of the reading: poured. A choice that was looked at is no reason to leave."""
        marked = rows.marked
        if marked is None or marked.fault:
            return None
        if marked.key in READING.values():
            if marked.text.strip():
                return self.space(context, rows)
            return refused(WHEN_POURED) if rows.holds else None
        following = rows.after(marked) or rows.row("amount")
        if rows.holds or (marked.key == "amount" and marked.given is None):
            return None
        return Act(f"on: {following.field.label}", (SetForm(rows.form.marking(following.key)),))

    def own(self, context: Context, rows: Rows, key: Key) -> Act | None:
        """A digit that no row takes is not lost without a word."""
        lost = key.character is not None and key.character.isdigit() and rows.target is None
        return refused(AMOUNT_FIRST) if lost else None

    def more(self, context: Context, rows: Rows) -> tuple[Choice, ...]:
        return (Choice("Note the batch numbers of the cans", ask_cans),)


def ask_cans(context: Context) -> Act:
    """Ask for them; what was noted last in this job stands there already."""
    noted = [each.text for each in context.job.notes if each.text.startswith(CANS)]
    before = noted[-1].removeprefix(CANS) if noted else ""
    why = "As they stand on the cans, in the order of pouring."
    return Act("", (Ask("Batch numbers of the cans", note_cans, why, before, needed=True),))


def note_cans(context: Context, numbers: str) -> Act:
    note = NoteMade(n=0, at=context.now, text=f"{CANS}{numbers}")
    return Act("note", (Keep(note), Say(f"Noted: {note.text}.")))


def batch_meant(context: Context, values: Values) -> Pouring | None:
    """The batch that the rows mean; None where none is. Raises BadInput."""
    plan = plan_by_rows(context, values)
    return None if plan is None else batch_state(context, plan, open_pours(context.job))


def batch_state(context: Context, plan: BatchPlan, pours: tuple[Poured, ...]) -> Pouring:
    poured = [(each.name, each.amount.value) for each in pours]
    return pouring.pouring(context.profile, plan, poured)


def wanted_rows(context: Context, values: Values) -> set[str]:
    profile, pours, found = profile_by_rows(context, values), open_pours(context.job), set()
    if not pours:
        batches, onto = pouring.open_batches(context.job), word(values, "onto")
        asked = {
            "amount": True,
            "hardener": bool(hardeners(profile)),
            "with": len(thinners(profile)) > 1,
            "of": len(recipe.components(profile)) > 1,
            "by": len(recipe.measures(profile)) > 1,
            "onto": bool(batches),
            "rest": batches and onto not in ("", FRESH),
        }
        found = {key for key, sensible in asked.items() if sensible}
    thinner, plan = recipe.thinner_of(profile), plan_by_rows(context, values)
    if thinner is not None and not any(pour.name == thinner.name for pour in pours):
        found.add("thinner")
    return found if plan is None else {*found, READING[plan.by]}


def plan_by_rows(context: Context, values: Values) -> BatchPlan | None:
    """How the batch is meant: as it was at the last pour, else by the rows; None without."""
    pours = open_pours(context.job)
    percent, wanted = number(values, "thinner"), quantity(values, "amount")
    if pours:
        plan = pouring.plan_of(pours)
        return plan if percent is None else replace(plan, thinner_percent=percent)
    profile = profile_by_rows(context, values)
    if wanted is None or (percent is None and recipe.thinner_of(profile) is not None):
        return None  # a row that cannot be understood is no plan
    by, onto = word(values, "by"), word(values, "onto")
    older = int(onto) if onto not in ("", FRESH) else None
    return BatchPlan(
        wanted=wanted,
        of=word(values, "of"),
        by=Measure(by) if by else recipe.measures(profile)[0],
        thinner_percent=percent or 0.0,
        onto=older,
        rest=quantity(values, "rest") if older is not None else None,
        hardener=word(values, "hardener"),
        thinner=word(values, "with"),
    )


def profile_by_rows(context: Context, values: Values) -> Profile:
    """The profile with the hardener and the thinner of the pours, else of the rows, else of today."""
    if open_pours(context.job):
        return in_use(context.job)
    profile = context.profile
    hardener = word(values, "hardener") or words.best_today(context, hardeners(profile))
    return mixed_with(
        profile, hardener, word(values, "with") or words.best_today(context, thinners(profile))
    )


def _percent(profile: Profile, pours: Sequence[Poured]) -> Field:
    """The row of the thinner: as at the last pour, else the low end of what is usual; none where the
    data sheet has it go in after the induction."""
    thinner, after = recipe.thinner_of(profile), thinner_time(profile) is ThinnerTime.AFTER
    usual = 0.0 if after else (thinner and thinner.start_percent) or 0.0
    percent: Quantity | float | None = pours[-1].thinner if pours else usual
    limit = thinner.limit_percent if thinner is not None else None
    most = "" if limit is None else f"at most {limit:g} %"
    most = "after the induction: step Thin" if after else most
    return Field("thinner", "Thinner", Kind.PERCENT, default=percent, hint=most, assumed=True)


def _by(context: Context, profile: Profile) -> Field:
    """The row that says how it is poured: the scale first, once it was used."""
    ways = recipe.measures(profile)
    weigh = Measure.WEIGHT in ways and (by_weight(context.job) or words.as_last_time(context))
    choices = tuple((way.value, _WAYS[way]) for way in ways)
    usual = Measure.WEIGHT.value if weigh else None
    return Field("by", "Pour by", choices=choices, default=usual, assumed=True)


def _choice(key: str, label: str, context: Context, options: Sequence[Option]) -> Field:
    """A row that offers hardeners or thinners, today's first of all."""
    choices = tuple((each.name, words.option_words(each, context.system)) for each in options)
    of_today = words.best_today(context, options) or None
    return Field(key, label, choices=choices, default=of_today, assumed=key == "with")
