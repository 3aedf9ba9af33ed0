"""A test pattern in pictures, figures and words: what it shows, what to turn, its film. Pure."""

from __future__ import annotations

import math

from booth.bench.context import Context
from booth.bench.instrument import number, word
from booth.files.safe_text import visible
from booth.forms.form import Values
from booth.job.measured import overlap_fraction
from booth.job.patterns import (
    SHAPES,
    BadZones,
    Pattern,
    best_overlap,
    even_at,
    section_at,
    tries_alike,
    zones_from,
)
from booth.log.events import PatternRead
from booth.trade.pattern.overlap import MOST_OVERLAP
from booth.trade.pattern.pattern_reading import Seen
from booth.units import Kind, shown_unit, shown_value
from booth.words.lines import Page
from booth.words.pictures import Gallery, Paper, Section
from booth.words.readout import Readout
from booth.words.tone import Tone

#: The film counts as even while it stays this near to its mean: the band of the plot. Where even
#: ends is this project's: common practice gives no figure.
BAND = (0.9, 1.1)
#: Two overlaps closer than this are the same to a hand (common practice, no source).
SAME_OVERLAP = 0.03
#: Passes drawn: the fans that pile up at one place, so many times over.
LEAST_PASSES, FANS_DEEP = 5, 3
SAMPLES, PICTURE = 200, 48
#: Shapes whose cure takes cap or tip off.
OPENS_GUN = {Seen.HEAVY_ONE_END, Seen.CRESCENT, Seen.SPITTING}
BENDS = {Seen.CRESCENT: 0.6}


def pattern_in(values: Values) -> Pattern | None:
    """The pattern that the rows hold: zones before a shape; None where neither is given. Pure."""
    typed, shape = word(values, "zones"), word(values, "shape")
    if typed:
        return Pattern("", zones_from(typed))
    return Pattern(shape) if shape else None


def zones_fault(typed: str) -> str:
    """What is wrong with zones as typed; empty where nothing is. Pure."""
    try:
        zones_from(typed)
    except BadZones as fault:
        return str(fault)
    return ""


def gallery() -> Gallery:
    return Gallery(tuple((paper_of(Pattern(each.key)), each.short) for each in SHAPES))


def paper_of(pattern: Pattern | None) -> Paper:
    """The picture of a pattern. Pure."""
    if pattern is None:
        return Paper()
    if pattern.zones:
        profile = pattern.profile
        assert profile is not None
        words = tuple(f"{zone:g}" for zone in pattern.zones)
        return Paper(_samples(profile), words=words)
    profile = pattern.profile
    films = _samples(profile) if profile is not None else (1.0,)
    return Paper(films, BENDS.get(pattern.seen, 0.0), pattern.seen is Seen.SPITTING)


def _samples(profile: object) -> tuple[float, ...]:
    assert callable(profile)
    return tuple(profile((index + 0.5) / PICTURE - 0.5) for index in range(PICTURE))


def overlap_in(context: Context, values: Values) -> float:
    """The overlap to draw [1]: typed, else the one to reckon with."""
    percent = number(values, "overlap")
    return overlap_fraction(context.job)[0] if percent is None else percent / 100


def section_of(context: Context, values: Values, pattern: Pattern | None) -> Section:
    """The film of some passes over a panel. Pure."""
    overlap = overlap_in(context, values)
    if pattern is None or not 0 <= overlap <= MOST_OVERLAP:
        return Section()
    passes = max(LEAST_PASSES, round(FANS_DEEP / (1 - overlap)))
    samples = section_at(pattern, overlap, passes, SAMPLES)
    if not samples:
        return Section()
    fans = (passes - 1) * (1 - overlap) + 1
    width = number(values, "width")
    scale, unit = fans, "fans"
    if width:
        scale = shown_value(fans * width, Kind.LENGTH, context.system)
        unit = shown_unit(Kind.LENGTH, context.system)
    placed = [(share * scale, film) for share, film in samples]
    # The plot writes both ends: whole figures there.
    placed[0], placed[-1] = (0.0, samples[0][1]), (float(f"{scale:.3g}"), samples[-1][1])
    across = f"{passes} passes, {_percent(overlap)} overlap"
    return Section(tuple(placed), *BAND, across=across, unit=unit)


def paper_readout(context: Context, pattern: Pattern | None) -> Readout:
    """What the paper shows, as a word. Pure."""
    if pattern is None:
        said = "Left and right choose a shape; digits enter zones, as 3567653."
        return Readout("–", label="what does the wet paper show?", lines=(said,))
    good = pattern.seen is Seen.EVEN
    return Readout(
        pattern.words.upper(),
        label="",
        tone=Tone.GOOD if good else Tone.CAUTION,
        word="LEAVE IT" if good else "TURN",
        lines=(pattern.reading.means,),
    )


def film_readout(context: Context, values: Values, pattern: Pattern) -> Readout:
    """How even the film comes out at the overlap of the row, and what would be most even. Pure."""
    overlap = overlap_in(context, values)
    even, best = even_at(pattern, overlap), best_overlap(pattern)
    if even is None or best is None:
        why = (
            f"An overlap goes from 0 to {MOST_OVERLAP * 100:.0f} %."
            if best is not None
            else "This shape has no profile: put the gun right first, or enter zones."
        )
        return Readout("–", label="film", tone=Tone.CAUTION, word="", lines=(why,))
    flat = even.lowest >= BAND[0] and even.highest <= BAND[1]
    half = even_at(pattern, 0.5)
    assert half is not None
    cv = f"CV {even.cv * 100:.1f} %"
    fifty = f"50 % would give {_ratio(half.max_over_min)}"
    if abs(overlap - best.overlap_fraction) <= SAME_OVERLAP or best.evenness.cv >= even.cv:
        lines = [f"{cv}, as even as it gets. {fifty}."]
    else:
        most = f"{_percent(best.overlap_fraction)}, {_ratio(best.evenness.max_over_min)}"
        lines = [f"Most even: {most} (Space takes it). {cv} here."]
        if abs(overlap - 0.5) > SAME_OVERLAP:
            lines.append(f"{fifty}, CV {half.cv * 100:.1f} %.")
    bare = not math.isfinite(even.max_over_min)
    return Readout(
        "bare" if bare else f"{even.max_over_min:.2f}",
        "" if bare else "to 1",
        label=f"thickest to thinnest film at {_percent(overlap)} overlap",
        tone=Tone.GOOD if flat else Tone.CAUTION,
        word="EVEN" if flat else "STRIPES",
        lines=tuple(lines),
    )


def _percent(share: float) -> str:
    return f"{share * 100:.0f} %"


def _ratio(number_: float) -> str:
    return f"{number_:.2f} to 1" if math.isfinite(number_) else "a bare strip"


def turns_page(context: Context, pattern: Pattern) -> Page:
    """What to turn, in order, from the one to do now; before the gun is opened, its caution. Pure.

    What was tried stands last, where a low window may cut it.
    """
    said = pattern.reading
    tries = tries_alike(context.job.patterns, pattern.seen)
    now = min(max(tries - 1, 0), len(said.turns) - 1)
    every = [f"{number_} {turn}" for number_, turn in enumerate(said.turns, 1)]
    caution = ("warning", f"▲ {said.caution}")
    opens = pattern.seen in OPENS_GUN
    return Page(
        (
            *((caution,) if opens else ()),
            ("now", f"→ {every[now]}"),
            *(("text", f"  {turn}") for turn in every[now + 1 :]),
            *(() if opens else (caution,)),
            *(("done", f"√ {turn}") for turn in every[:now]),
        )
    )


def pattern_words(each: PatternRead) -> str:
    """One try in a line. Pure."""
    zones = "".join(f"{zone:g}" for zone in each.zones)
    overlap = f"  overlap {each.overlap.value:.0f} %" if each.overlap else ""
    return f"{visible(each.shape)}{' ' + zones if zones else ''}{overlap}"
