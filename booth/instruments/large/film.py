"""The wet film at large: every reading as what the gauge leaves open, on the wanted band."""

from __future__ import annotations

from booth.bench.act import Context
from booth.bench.instrument import Instrument, word
from booth.clock import local_day_hhmm
from booth.forms.form import Values
from booth.instruments.figures import gauge
from booth.instruments.large.tries import band_of, in_unit
from booth.job.coat_plan import wet_wanted
from booth.job.measured import coat_on, film_of, known
from booth.log.events import FilmRead
from booth.profile.model import Range
from booth.trade.film.wet_gauge import FilmInterval, Verdict, judge_film
from booth.units import Kind, show
from booth.words.shown import Tone
from booth.words.tried import AtLarge, Tries, Try

THICK = Kind.THICKNESS
TONES = {Verdict.IN_RANGE: Tone.GOOD, Verdict.CANNOT_TELL: Tone.PLAIN}


def films_at_large(step: Instrument, context: Context, values: Values) -> AtLarge:
    """Readings of every part and coat; on the scale those of which the same film is wanted."""
    reads = [(each, known(film_of, each)) for each in context.job.films]
    if not reads:
        return AtLarge()
    span = wet_wanted(context.job, coat_on(context.job, word(values, "part")))
    tries = tuple(_try(context, each, film, span) for each, film in reads if film is not None)
    title = in_unit("last wetted tooth to first dry one", THICK, context.system)
    return AtLarge((Tries(title, tries, band_of(context, span, THICK)),))


def _try(context: Context, read: FilmRead, film: FilmInterval, span: Range | None) -> Try:
    system, own = context.system, wet_wanted(context.job, read.coat)
    tone = Tone.PLAIN
    if own is not None:
        tone = TONES.get(judge_film(film, own.low, own.high).verdict, Tone.CAUTION)
    low, high = (show(e, THICK, system, unit=False) for e in (film.low_um, film.high_um))
    figure = f"{low}-{high}"
    edge = upto = None
    if own == span:
        (edge, _), (upto, _) = (
            gauge(system, each, span, THICK) for each in (film.low_um, film.high_um)
        )
    coat = "" if read.coat is None else f", coat {read.coat}"
    return Try(
        f"{local_day_hhmm(read.at, context.now)}  {read.part}{coat}", figure, tone, edge, upto
    )
