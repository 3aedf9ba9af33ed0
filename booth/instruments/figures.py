"""Figures as instruments read them out: a quantity in the units shown now, against what is asked for."""

from __future__ import annotations

from collections.abc import Sequence

from booth.bench.act import Context
from booth.job.advice import Given
from booth.job.measured import compare
from booth.profile.model import Range
from booth.units import Kind, System, show, shown_unit
from booth.words.shown import Band, Readout, Tone

#: Where the wanted band lies on its scale, as shares of the field; the end of one that is open.
BAND_FROM, BAND_TO = 0.36, 0.56
OPEN_FROM, OPEN_TO = 0.4, 0.7
#: A band of one figure is taken to be so wide, as a share of it.
ABOUT = 0.1
#: What is measured never fills the field and never leaves it empty: its edge stays in sight.
LEAST_EDGE = 0.02


def figure(
    context: Context,
    value: float,
    kind: Kind,
    label: str,
    tone: Tone = Tone.PLAIN,
    word: str | None = None,
    lines: Sequence[str] = (),
    like: str = "",
    whose: str = "",
    span: Range | None = None,
) -> Readout:
    """A readout of one quantity [base unit]; span: what is wanted of it."""
    number, unit = show(value, kind, context.system, unit=False), shown_unit(kind, context.system)
    edge, band = gauge(context.system, value, span, kind)
    return Readout(
        number, unit, label, tone, word, tuple(lines), like, whose=whose, edge=edge, band=band
    )


def gauge(
    system: System, value: float | None, span: Range | None, kind: Kind, note: str = "wanted"
) -> tuple[float | None, Band | None]:
    """The edge of a measured value on the scale of what is wanted, and the band; None without it."""
    if span is None:
        return None, None
    start, end, low, high = _scale(span)
    edge = None
    if value is not None:
        share = (value - start) / (end - start)
        edge = min(max(share, LEAST_EDGE), 1 - LEAST_EDGE)
    first, last = (
        "" if each is None else show(each, kind, system, unit=False)
        for each in (span.low, span.high)
    )
    said = f"{shown_unit(kind, system)}  {note}".strip()
    return edge, Band(low, high, "" if first == last else first, last, said)


def _scale(span: Range) -> tuple[float, float, float | None, float | None]:
    """The ends of the scale, and where on it the band begins and ends."""
    low, high = span.low, span.high
    if low is not None and high is not None:
        wide = (high - low) or abs(high) * ABOUT or 1.0
        first, last = (low, high) if high > low else (low - wide / 2, low + wide / 2)
        whole = wide / (BAND_TO - BAND_FROM)
        start = first - BAND_FROM * whole
        start = max(start, 0.0) if first > 0 else start
        return start, start + whole, (first - start) / whole, (last - start) / whole
    if low is not None:
        return low - (abs(low) or 1.0), low + 1.5 * (abs(low) or 1.0), OPEN_FROM, None
    assert high is not None
    far = abs(high) or 1.0
    return high - far, high - far + far / OPEN_TO, None, OPEN_TO


def asked_for(
    context: Context,
    span: Range | None,
    kind: Kind,
    label: str,
    none: str,
    lines: Sequence[str],
    whose: str = "",
    word: str = "MEASURE",
) -> Readout:
    """Nothing is measured yet: the profile's range as the figure, '8.0-10.0'; `none` without one.

    word: what to do first.
    """
    if span is None:
        lines = (none, *lines) if none else tuple(lines)
        return Readout("", label=label, lines=lines, whose=whose, word=word)
    ends = [end for end in (span.low, span.high) if end is not None]
    shown = dict.fromkeys(show(end, kind, context.system, unit=False) for end in ends)
    unit, (_, band) = shown_unit(kind, context.system), gauge(context.system, None, span, kind)
    return Readout(
        "-".join(shown),
        unit,
        label,
        word=word,
        lines=tuple(lines),
        whose=whose,
        band=band,
        wanted=True,
    )


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


def given(context: Context) -> Given:
    """What advice is held against."""
    return Given(context.job, context.system, context.gun, context.shop.compressor)
