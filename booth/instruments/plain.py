"""A step with nothing to measure: do it, note what matters, go on."""

from __future__ import annotations

from typing import ClassVar

import msgspec

from booth.bench.act import Context
from booth.bench.instrument import Instrument, word
from booth.forms.form import Field, Values
from booth.log.events import Event, NoteMade
from booth.trade.mixing.strainer import sieve_number
from booth.words.about import of_the_can, of_the_coat
from booth.words.about.headed import About
from booth.words.shown import Readout, Tone


class Plain(Instrument):
    KIND = "plain"
    NAME = "A step to do"
    ABOUT: ClassVar[About] = of_the_coat.PLAIN
    KEEPS = (NoteMade,)

    def fields(self, context: Context, values: Values) -> tuple[Field, ...]:
        return (Field("note", "Note", optional=True),)

    def readout(self, context: Context, values: Values) -> Readout:
        done = context.step.key in context.job.done
        first = context.step.name.strip().upper() or "DO IT"
        if done:
            return Readout("DONE", tone=Tone.GOOD, word="", whose=first)
        return Readout("", word="TO DO", whose=first)

    def event(self, context: Context, values: Values) -> Event | str:
        return NoteMade(n=0, at=context.now, text=word(values, "note"))


class Strain(Plain):
    KIND = "strain"
    NAME = "Strain and fill"
    ABOUT = of_the_can.STRAIN

    def readout(self, context: Context, values: Values) -> Readout:
        """The mesh that the profile names."""
        plain, opening = super().readout(context, values), context.profile.gun.strainer_um
        if opening is None:
            lines = ("The profile names no mesh: the product's data sheet does.",)
            return msgspec.structs.replace(plain, lines=lines)
        number = sieve_number(opening)
        like = f"sieve No. {number} (ASTM E11)" if isinstance(number, int) else number.advice
        word = "DONE" if plain.tone is Tone.GOOD else "TO DO"
        return Readout(f"{opening:g}", "µm", "strainer", plain.tone, word, (like,), whose="STRAIN")
