"""Tries against what is wanted, and the scales of a chart. Pure."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from booth.bench.act import Context
from booth.clock import local_day_hhmm
from booth.instruments.figures import against, gauge
from booth.moment import Moment
from booth.profile.model import Range
from booth.units import Kind, System, show, shown_unit, shown_value
from booth.words.shown import Band
from booth.words.tried import Try

#: So much of a scale stays free beyond what is drawn on it, at either end.
PAD = 0.08
#: A scale on which all is one figure is so wide, as a share of it.
ABOUT = 0.2
MOST_TICKS = 5


def one_try(
    context: Context, at: Moment, text: str, value: float, kind: Kind, span: Range | None
) -> Try:
    """A value [base unit] against what is wanted; without that it has no place."""
    edge, _ = gauge(context.system, value, span, kind)
    tone, _ = against(value, span, "", "")
    said = f"{local_day_hhmm(at, context.now)}  {text}".rstrip()
    # The unit stands once, under the scale.
    return Try(said, show(value, kind, context.system, unit=span is None), tone, edge)


def band_of(context: Context, span: Range | None, kind: Kind) -> Band | None:
    return gauge(context.system, None, span, kind, note="")[1]


def spread_note(values: Sequence[float], kind: Kind, system: System, of: str = "") -> str:
    """Mean and spread of several values [base unit]; empty for fewer than two."""
    if len(values) < 2:
        return ""
    mean, spread = (
        show(each, kind, system)
        for each in (math.fsum(values) / len(values), max(values) - min(values))
    )
    return f"mean{of} {mean}, spread {spread}"


class Scale(NamedTuple):
    """One axis of a chart, in the units shown."""

    low: float
    high: float

    def share(self, value: float) -> float:
        return (value - self.low) / (self.high - self.low)

    def ticks(self, digits: int | None = None) -> tuple[tuple[float, str], ...]:
        """Round figures along it."""
        step = _round_step((self.high - self.low) / MOST_TICKS)
        places = max(0, -math.floor(math.log10(step))) if digits is None else digits
        first, last = math.ceil(self.low / step), math.floor(self.high / step)
        every = (number * step for number in range(first, last + 1))
        return tuple((self.share(each), f"{each:.{places}f}") for each in every)


def _round_step(least: float) -> float:
    size = 10.0 ** math.floor(math.log10(least))
    return next(each * size for each in (1, 2, 5, 10) if each * size >= least * 0.999)


def scale_over(values: Iterable[float], kind: Kind | None, system: System) -> Scale:
    """The scale that holds all of these [base unit of `kind`; as they are without one]."""
    shown = [each if kind is None else shown_value(each, kind, system) for each in values]
    low, high = min(shown), max(shown)
    wide = (high - low) or abs(high) * ABOUT or 1.0
    start = low - wide * PAD
    # Nothing that is measured here lies below nothing.
    return Scale(max(start, 0.0) if low >= 0 else start, high + wide * PAD)


def ends(span: Range | None) -> tuple[float, ...]:
    """The ends that a range has."""
    return () if span is None else tuple(e for e in (span.low, span.high) if e is not None)


def band_on(
    span: Range | None, scale: Scale, kind: Kind, system: System
) -> tuple[float | None, float | None]:
    """Where the ends of what is wanted lie on a scale; None where it has none there."""
    low, high = (None, None) if span is None else (span.low, span.high)

    def share(end: float | None) -> float | None:
        return None if end is None else scale.share(shown_value(end, kind, system))

    return share(low), share(high)


def wanted_ticks(
    span: Range | None, scale: Scale, kind: Kind, system: System
) -> tuple[tuple[float, str], ...]:
    """The ends of what is wanted, first, since where words would meet the first ones stay."""
    said = ((shown_value(e, kind, system), show(e, kind, system, unit=False)) for e in ends(span))
    return tuple((scale.share(value), words) for value, words in said)


def in_unit(what: str, kind: Kind, system: System) -> str:
    unit = shown_unit(kind, system)
    return f"{what}, {unit}" if unit else what
