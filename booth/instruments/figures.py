"""Figures as instruments read them out: a quantity in the units shown now, against what is asked for."""

from __future__ import annotations

from collections.abc import Sequence

from booth.bench.act import Context
from booth.job.advice import Given
from booth.job.measured import compare
from booth.profile.model import Range
from booth.units import Kind, System, show, shown_unit
from booth.words.shown import Readout, Tone


def figure(
    context: Context,
    value: float,
    kind: Kind,
    label: str,
    tone: Tone = Tone.PLAIN,
    word: str | None = None,
    lines: Sequence[str] = (),
    like: str = "",
) -> Readout:
    """A readout of one quantity [base unit]."""
    number, unit = show(value, kind, context.system, unit=False), shown_unit(kind, context.system)
    return Readout(number, unit, label, tone, word, tuple(lines), like)


def asked_for(
    context: Context, span: Range | None, kind: Kind, label: str, none: str, lines: Sequence[str]
) -> Readout:
    """Nothing is measured yet: the profile's range as the figure, '8.0-10.0'; `none` without one."""
    if span is None:
        return Readout("–", label=label, lines=(none, *lines) if none else tuple(lines))
    ends = [end for end in (span.low, span.high) if end is not None]
    shown = dict.fromkeys(show(end, kind, context.system, unit=False) for end in ends)
    unit = shown_unit(kind, context.system)
    return Readout("-".join(shown), unit, label, lines=tuple(lines))


def against(value: float, span: Range | None, below: str, above: str) -> tuple[Tone, str]:
    """Tone and word of a figure against the profile's range; plain where it gives none."""
    return {
        "below": (Tone.CAUTION, below),
        "in": (Tone.GOOD, "IN RANGE"),
        "above": (Tone.CAUTION, above),
        "": (Tone.PLAIN, ""),
    }[compare(value, span)]


def interval(low: float, high: float, kind: Kind, system: System) -> str:
    """Two ends and the unit once: '4.0 to 5.0 mil'."""
    return f"{show(low, kind, system, unit=False)} to {show(high, kind, system)}"


def counted(number: int, thing: str) -> str:
    return f"{number} {thing}" if number == 1 else f"{number} {thing}s"


def given(context: Context) -> Given:
    """What advice is held against."""
    return Given(context.job, context.system, context.gun, context.shop.compressor)
