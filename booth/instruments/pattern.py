"""The test pattern: what the paper shows, what to turn, and what film this overlap makes of it."""

from __future__ import annotations

import math

from booth.bench.act import NOTHING, Act, Context, SetForm, refused
from booth.bench.instrument import Instrument, number, quantity, word
from booth.forms.form import MARKED, Field, Rows, Values, only
from booth.instruments.large.paper import papers_at_large
from booth.job.measured import fan_mm, overlap_fraction
from booth.job.patterns import (
    SHAPES,
    Pattern,
    best_overlap,
    even_at,
    pattern_of,
    section_at,
    tries_alike,
    zones_from,
)
from booth.log.events import Event, PatternRead
from booth.trade.pattern.fan_profile import profile_by_name
from booth.trade.pattern.overlap import MOST_OVERLAP
from booth.trade.pattern.pattern_reading import Seen
from booth.trade.result import BadInput
from booth.units import Kind, shown_unit, shown_value
from booth.words.about import of_the_gun
from booth.words.shown import Gallery, Page, Paper, Picture, Readout, Section, Tone
from booth.words.tried import AtLarge

#: The film counts as even while it stays this near to its mean: the band of the plot. Where even
#: ends is this project's: common practice gives no figure.
BAND = (0.9, 1.1)
#: Two overlaps closer than this are the same to a hand (common practice, no source).
SAME_OVERLAP = 0.03
#: Passes drawn: the fans that pile up at one place, so many times over.
LEAST_PASSES, FANS_DEEP = 5, 3
SAMPLES, PICTURE = 200, 48
#: Shapes whose cure takes cap or tip off.
OPENS_GUN = {Seen.HEAVY_ONE_END, Seen.CRESCENT, Seen.SPITTING, Seen.FLOOD_ONE_END}
BENDS = {Seen.CRESCENT: 0.6}
NOT_READ = ""
CHOICES = ((NOT_READ, "choose what the paper shows"), *((each.key, each.words) for each in SHAPES))
FILM_ROWS = ("overlap", "width")
CHOOSE_FIRST = "Choose what the paper shows first."


class PaperPattern(Instrument):
    KIND = "pattern"
    NAME = "Test pattern"
    ABOUT = of_the_gun.PATTERN
    KEEPS = (PatternRead,)
    RECORDS = 4
    UNSAID = "pattern: "
    FIRST = ("shape",)

    def fields(self, context: Context, values: Values) -> tuple[Field, ...]:
        """One of shape and zones, once it holds something. Zones with a fault give no value."""
        overlap, where = overlap_fraction(context.job)
        width, measured = fan_mm(context.job) or (None, "")
        percent, kind = overlap * 100, Kind.PERCENT
        zones, shape = values.get("zones", "a fault"), word(values, "shape")
        every = (
            Field("shape", "Shape", choices=CHOICES, asks=True, optional=True),
            Field("zones", "or zones", optional=True, hint="as 3567653", digits=zones_fault),
            Field("overlap", "Overlap", kind, default=percent, hint=where, assumed=True),
            Field("width", "Fan", Kind.LENGTH, default=width, hint=measured, assumed=True),
        )
        hidden = "shape" if zones else "zones" if shape else ""
        return only({each.key for each in every} - {hidden}, every)

    def readout(self, context: Context, values: Values) -> Readout:
        pattern = read_now(context, values)
        if pattern is not None and looks_at_film(values):
            return film_readout(context, values, pattern)
        return paper_readout(context, pattern)

    def picture(self, context: Context, values: Values) -> tuple[Picture, ...]:
        pattern = read_now(context, values)
        if pattern is None:
            return (Gallery(tuple((paper_of(Pattern(s.key)), s.short) for s in SHAPES)),)
        if looks_at_film(values):
            return (section_of(context, values, pattern),)
        return (paper_of(pattern), turns_page(context, pattern))

    def at_large(self, context: Context, values: Values) -> AtLarge:
        """The papers; the film beside the paper, where the plot of it is not open anyway."""
        pattern, section = read_now(context, values), None
        if pattern is not None and not looks_at_film(values):
            section = section_of(context, values, pattern)
        return papers_at_large(context, section if section and section.samples else None)

    def space(self, context: Context, rows: Rows) -> Act:
        """Write the most even overlap into its row."""
        fault, pattern = rows.row("zones").fault, read_now(context, rows.values)
        if fault or pattern is None:
            return refused(fault or CHOOSE_FIRST)
        best = best_overlap(pattern)
        if best is None:
            return refused("This shape has no film to work out: put the gun right, or type zones.")
        percent = f"{best.overlap_fraction * 100:.0f} %"
        form = rows.form.typed("overlap", percent)
        if form == rows.form:
            return NOTHING
        return Act(f"most even overlap: {percent}", (SetForm(form),))

    def pick(self, context: Context, rows: Rows, index: int) -> Act | None:
        """A picture of the gallery that is clicked; it stands for zones that were no pattern."""
        if not 0 <= index < len(SHAPES):
            return None
        form = rows.form.typed("zones", "").choosing("shape", SHAPES[index].key).marking("shape")
        return Act("shape", (SetForm(form),))

    def event(self, context: Context, values: Values) -> Event | str:
        pattern, overlap = read_now(context, values), quantity(values, "overlap")
        if pattern is None or overlap is None:
            return CHOOSE_FIRST
        if overlap.value > MOST_OVERLAP * 100:
            most = f"An overlap is below {MOST_OVERLAP * 100:.0f} %"
            return f"{most}: {overlap.value:g} % hardly moves on."
        shape = pattern.seen.value if pattern.zones else pattern.shape
        at, zones, width = context.now, pattern.zones, quantity(values, "width")
        return PatternRead(n=0, at=at, shape=shape, zones=zones, overlap=overlap, width=width)


def read_now(context: Context, values: Values) -> Pattern | None:
    """What the rows say, zones before a shape; where they say nothing, what was kept last. Pure."""
    typed, shape = word(values, "zones"), word(values, "shape")
    if typed or shape:
        return Pattern("", zones_from(typed)) if typed else Pattern(shape)
    kept = context.job.patterns[-1:] if "zones" in values else ()
    return pattern_of(kept[0]) if kept else None


def looks_at_film(values: Values) -> bool:
    return values.get(MARKED) in FILM_ROWS


def zones_fault(typed: str) -> str:
    """What is wrong with zones as typed; empty where nothing is. Pure."""
    try:
        zones_from(typed)
    except BadInput as fault:
        return str(fault)
    return ""


def paper_of(pattern: Pattern) -> Paper:
    profile, spitting = pattern.profile, pattern.seen is Seen.SPITTING
    if pattern.seen is Seen.FLOOD_ONE_END:
        profile = profile_by_name("heavy one end")
    films: tuple[float, ...] = (1.0,)
    if profile is not None:
        films = tuple(profile((index + 0.5) / PICTURE - 0.5) for index in range(PICTURE))
    if pattern.zones:
        return Paper(films, words=tuple(f"{zone:g}" for zone in pattern.zones))
    return Paper(films, BENDS.get(pattern.seen, 0.0), spitting)


def overlap_in(context: Context, values: Values) -> float:
    """The overlap to draw [1]: typed, else the one to reckon with."""
    percent = number(values, "overlap")
    return overlap_fraction(context.job)[0] if percent is None else percent / 100


def section_of(context: Context, values: Values, pattern: Pattern) -> Section:
    overlap = overlap_in(context, values)
    if not 0 <= overlap <= MOST_OVERLAP:
        return Section()
    passes = max(LEAST_PASSES, round(FANS_DEEP / (1 - overlap)))
    samples = section_at(pattern, overlap, passes, SAMPLES)
    if not samples:
        return Section()
    scale, unit = (passes - 1) * (1 - overlap) + 1, "fans"
    if width := number(values, "width"):
        scale = shown_value(scale * width, Kind.LENGTH, context.system)
        unit = shown_unit(Kind.LENGTH, context.system)
    placed = [(share * scale, film) for share, film in samples]
    # The plot writes both ends: whole figures there.
    placed[0], placed[-1] = (0.0, samples[0][1]), (float(f"{scale:.3g}"), samples[-1][1])
    across = f"{passes} passes, {_percent(overlap)} overlap"
    return Section(tuple(placed), *BAND, across=across, unit=unit)


def paper_readout(context: Context, pattern: Pattern | None) -> Readout:
    if pattern is None:
        said = "Left and right choose a shape; digits enter zones, as 3567653."
        return Readout(
            "", "", "what does the wet paper show?", lines=(said,), word="SHAPE?", whose="PAPER"
        )
    good = pattern.seen is Seen.EVEN
    tone, word = (Tone.GOOD, "LEAVE IT") if good else (Tone.CAUTION, "TURN")
    lines = (pattern.reading.means,)
    label = pattern.words
    return Readout(pattern.short, "", label, tone, word, lines, whose="PAPER", in_words=True)


def film_readout(context: Context, values: Values, pattern: Pattern) -> Readout:
    """How even the film comes out at the overlap of the row, and what would be most even. Pure."""
    overlap = overlap_in(context, values)
    even, best = even_at(pattern, overlap), best_overlap(pattern)
    if even is None or best is None:
        why = "This shape has no profile: put the gun right first, or enter zones."
        if best is not None:
            why = f"An overlap goes from 0 to {MOST_OVERLAP * 100:.0f} %."
        return Readout("", "", "film", Tone.CAUTION, "NOT KNOWN", (why,), whose="FILM")
    flat = even.lowest >= BAND[0] and even.highest <= BAND[1]
    half = even_at(pattern, 0.5)
    assert half is not None
    varies = f"varies by {even.cv * 100:.1f} %"
    fifty = f"50 % would give {_ratio(half.max_over_min)}"
    if abs(overlap - best.overlap_fraction) <= SAME_OVERLAP or best.evenness.cv >= even.cv:
        lines = [f"It {varies}, as even as it gets. {fifty}."]
    else:
        most = f"{_percent(best.overlap_fraction)}, {_ratio(best.evenness.max_over_min)}"
        lines = [f"Most even: {most} (Space takes it). Here it {varies}."]
        if abs(overlap - 0.5) > SAME_OVERLAP:
            lines.append(f"{fifty}, varying by {half.cv * 100:.1f} %.")
    bare = not math.isfinite(even.max_over_min)
    figure, unit = ("bare", "") if bare else (f"{even.max_over_min:.2f}", "to 1")
    label = f"thickest to thinnest film at {_percent(overlap)} overlap"
    tone, word = (Tone.GOOD, "EVEN") if flat else (Tone.CAUTION, "STRIPES")
    return Readout(figure, unit, label, tone, word, tuple(lines), whose="FILM")


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
    to_do = [("now", f"→ {every[now]}"), *(("text", f"  {turn}") for turn in every[now + 1 :])]
    to_do.insert(0 if pattern.seen in OPENS_GUN else len(to_do), ("warning", f"▲ {said.caution}"))
    return Page((*to_do, *(("done", f"√ {turn}") for turn in every[:now])))
