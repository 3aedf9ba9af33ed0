"""The day at large: what was laid, what waits and what is to come, as the step Plan draws it."""

from __future__ import annotations

from booth.bench.act import Context
from booth.bench.instrument import Instrument
from booth.forms.form import Values
from booth.instruments.plan import Plan
from booth.words.shown import Timeline
from booth.words.tried import AtLarge


def day_at_large(step: Instrument, context: Context, values: Values) -> AtLarge:
    """The time line, once a coat was begun; of a rehearsal none, since no wait of it is known."""
    if context.job.opened.rehearsal or not any(context.job.coats.values()):
        return AtLarge()
    told = Plan().picture(context, {})
    return AtLarge(tuple(each for each in told if isinstance(each, Timeline)))
