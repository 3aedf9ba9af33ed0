"""The test pattern at large: the papers shot, what was changed between them, the film of many passes."""

from __future__ import annotations

from booth.bench.act import Context
from booth.clock import local_day_hhmm
from booth.files.safe_text import visible
from booth.job.patterns import pattern_of
from booth.log.events import AirRead, CatchMade, FanSet
from booth.trade.pattern.pattern_reading import Seen
from booth.units import Kind, Quantity, System, show
from booth.words.shown import Section, Tone
from booth.words.tried import AtLarge, Tries, Try

#: What is turned between two papers: of which entry, which quantity, how it is called and shown.
TURNED = (
    (CatchMade, "turns", "needle", Kind.TURNS),
    (AirRead, "inlet", "inlet", Kind.PRESSURE),
    (AirRead, "fan_turns", "fan", Kind.TURNS),
    (FanSet, "turns", "fan", Kind.TURNS),
    (FanSet, "distance", "distance", Kind.LENGTH),
    (CatchMade, "tip", "tip", Kind.TIP),
)


def papers_at_large(context: Context, section: Section | None) -> AtLarge:
    """Every paper, what it showed, and what was changed since the one before."""
    tries, before = [], 0
    for read in context.job.patterns:
        found = pattern_of(read)
        shape = visible(read.shape) if found is None else found.words
        changed = changes_between(context, before, read.n)
        tone = Tone.PLAIN
        if found is not None:
            tone = Tone.GOOD if found.seen is Seen.EVEN else Tone.CAUTION
        said = f"{local_day_hhmm(read.at, context.now)}  {shape}"
        tries.append(Try(said, changed, tone))
        before = read.n
    told = (Tries("papers, and what was turned before", tuple(tries)),) if tries else ()
    return AtLarge((*told, *((section,) if section is not None else ())))


def changes_between(context: Context, first: int, last: int) -> str:
    """What of the gun was set otherwise between two entries than before them."""
    said: list[str] = []
    job, system = context.job, context.system
    if not first:
        return ""
    for kind, field, name, shown_as in TURNED:
        told = [(e.n, getattr(e, field)) for e in job.of(kind)]
        was = [each for n, each in told if n < first and each is not None]
        now = [each for n, each in told if first < n < last and each is not None]
        if was and now and was[-1].value != now[-1].value:
            said.append(f"{name} {_from_to(was[-1], now[-1], shown_as, system)}")
    return ", ".join(dict.fromkeys(said))


def _from_to(was: Quantity, now: Quantity, kind: Kind, system: System) -> str:
    return f"{show(was.value, kind, system, unit=False)} to {show(now.value, kind, system)}"
