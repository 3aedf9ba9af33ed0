"""Subjects: the pattern on paper, and the film that overlapping passes make of it."""

from __future__ import annotations

from booth.figure import shapes
from booth.figure.answer import Answer, Item, exact, several
from booth.figure.readers import PROFILE, YES_NO, ZONES, Choice, Whole
from booth.figure.subject import Given, Subject, may, need
from booth.trade.pattern import fan_profile, overlap, pattern_reading
from booth.trade.pattern.overlap import Evenness
from booth.trade.result import BadInput

_PROFILE = need("profile", PROFILE, "profile across the fan")
_OVERLAP = need("overlap", shapes.SHARE, "share of the fan on the pass before")
_TURNED = may("alternating", YES_NO, "the fan is turned on every second pass", default="no")
#: More passes or points than this are a slip of the finger.
MOST = 1000
_SUM = "equal deposits side by side at one pitch, added"
_SEEN = Choice({seen.value.replace(" ", "-"): seen for seen in pattern_reading.Seen})


def _even(found: Evenness) -> tuple[Item, ...]:
    return (
        Item("thickest over thinnest", found.max_over_min, shapes.NUMBER),
        Item("coefficient of variation", found.cv, shapes.SHARE),
        Item("thinnest over mean", found.lowest, shapes.NUMBER),
        Item("thickest over mean", found.highest, shapes.NUMBER),
    )


def _evenness(given: Given) -> Answer:
    found = overlap.evenness(given["profile"], given["overlap"], given["alternating"])
    return several(_SUM, _even(found))


def _best(given: Given) -> Answer:
    found = overlap.most_even_overlap(
        given["profile"], given["low"], given["high"], given["alternating"]
    )
    first = Item("most even overlap", found.overlap_fraction, shapes.SHARE)
    return several("least variation of the film; the least overlap of those equally even",
                   (first, *_even(found.evenness)))  # fmt: skip


def _section(given: Given) -> Answer:
    for name in ("passes", "points"):
        if given[name] > MOST:
            raise BadInput(f"{name}: {MOST} are enough for one line; {given[name]} were asked for.")
    found = overlap.film_section(
        given["profile"],
        given["overlap"],
        given["passes"],
        given["points"],
        given["alternating"],
    )
    items = [Item(f"at {100 * place:.1f} %", film, shapes.NUMBER) for place, film in found]
    return several(_SUM, items, "place in % of the painted width, film over the mean film")


def _steady(given: Given) -> Answer:
    found = overlap.steady_part(given["overlap"], given["passes"])
    rule = "where every place has its full number of passes"
    if found is None:
        return exact("steady part", "none: too few passes", None, rule)
    return several(
        rule,
        (
            Item("steady from", found[0], shapes.SHARE),
            Item("to", found[1], shapes.SHARE, tight=True),
        ),
        "of the painted width",
    )


def _reading(seen: pattern_reading.Seen) -> Answer:
    found = pattern_reading.reading(seen)
    items = [Item("seen", found.seen.value), Item("means", found.means)]
    items += [Item(f"{place}.", turn) for place, turn in enumerate(found.turns, 1)]
    return several(found.source, items, found.caution)


SUBJECTS = (
    Subject(
        "overlap",
        "how even the film of overlapping passes is",
        (_PROFILE, _OVERLAP, _TURNED),
        _evenness,
        (overlap.evenness, fan_profile.profile_by_name, fan_profile.profile_from_zones),
        ("parabola 50%", "2,4,6,4,2 50%"),
    ),
    Subject(
        "best-overlap",
        "the overlap that is most even for a profile",
        (
            _PROFILE,
            may("low", shapes.SHARE, "least overlap to consider", default="25%"),
            may("high", shapes.SHARE, "greatest overlap to consider", default="75%"),
            _TURNED,
        ),
        _best,
        (overlap.most_even_overlap,),
        ("parabola high=55%",),
    ),
    Subject(
        "film-at",
        "the film at a place across the passes, over the mean film",
        (
            _PROFILE,
            _OVERLAP,
            need("place", shapes.FAN_WIDTHS, "from the middle of a pass, in fan widths"),
            _TURNED,
        ),
        lambda given: exact(
            "film over mean film",
            overlap.film_at(
                given["profile"], given["overlap"], given["place"], given["alternating"]
            ),
            shapes.NUMBER,
            _SUM,
        ),
        (overlap.film_at,),
        ("triangle 50% 0.123",),
    ),
    Subject(
        "section",
        "a section through the film of some passes",
        (
            _PROFILE,
            _OVERLAP,
            may("passes", Whole(), "number of passes", default="5"),
            may("points", Whole(), "points of the section", default="15"),
            _TURNED,
        ),
        _section,
        (overlap.film_section,),
        ("even 50% passes=2 points=3",),
    ),
    Subject(
        "steady",
        "the part of the painted width with its full film",
        (_OVERLAP, need("passes", Whole(), "number of passes")),
        _steady,
        (overlap.steady_part,),
        ("50% 4", "75% 1"),
    ),
    Subject(
        "pattern",
        "what a pattern on paper points to, and what to turn",
        (need("seen", _SEEN, "what the paper shows"),),
        lambda given: _reading(given["seen"]),
        (pattern_reading.reading,),
        ("'heavy both ends'",),
    ),
    Subject(
        "zones",
        "the shape a pattern entered in zones comes nearest to, and what to turn",
        (need("zones", ZONES, "how heavy each zone looks, from one edge to the other"),),
        lambda given: _reading(pattern_reading.seen_in_zones(given["zones"])),
        (pattern_reading.seen_in_zones,),
        ("9,4,2,4,9",),
    ),
)
