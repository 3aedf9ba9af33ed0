"""Profiles made up by hypothesis: any that the reader takes, numbers as a painter types them."""

from __future__ import annotations

from functools import cache

import msgspec
from hypothesis import strategies as st

from booth.profile.model import (
    AtTemperature,
    CoatPlan,
    Efflux,
    Film,
    Gun,
    Hardener,
    Hazard,
    Limits,
    Mix,
    MixPart,
    NextProduct,
    Profile,
    Range,
    Thinner,
    WaitRule,
    Waits,
)
from booth.profile.step_kinds import MUST, NAMES
from booth.profile.steps import listed_steps
from booth.trade.cups.cup_table import CUPS

# Lone surrogates cannot stand in a UTF-8 file; everything else may, control characters too.
texts = st.text(st.characters(exclude_categories=("Cs",)), min_size=1, max_size=40).filter(
    lambda text: bool(text.strip())
)
flags = st.booleans()


@cache
def numbers(low: float, high: float) -> st.SearchStrategy[float]:
    """Numbers of at most five digits within the bounds, as they stand in a file."""
    inside = st.floats(low + (high - low) * 0.001, high - (high - low) * 0.001)
    return inside.map(lambda number: float(f"{number:.5g}"))


@cache
def maybe(strategy: st.SearchStrategy) -> st.SearchStrategy:
    return st.none() | strategy


@cache
def spans(low: float, high: float, single: bool = True) -> st.SearchStrategy[Range]:
    """Ranges: both ends, either end, and one value where that is allowed."""
    number = numbers(low, high)
    both = st.tuples(number, number).map(lambda ends: Range(min(ends), max(ends)))
    kinds = [both, number.map(lambda n: Range(low=n)), number.map(lambda n: Range(high=n))]
    if single:
        kinds.append(number.map(lambda n: Range(n, n)))
    return st.one_of(kinds)


@cache
def closed(low: float, high: float) -> st.SearchStrategy[Range]:
    """Ranges with both ends."""
    both = st.tuples(numbers(low, high), numbers(low, high))
    return both.map(lambda ends: Range(min(ends), max(ends)))


@cache
def counts(low: int, high: int) -> st.SearchStrategy[Range]:
    both = st.tuples(st.integers(low, high), st.integers(low, high))
    return both.map(lambda ends: Range(min(ends), max(ends)))


@st.composite
def rules(draw: st.DrawFn, low_s: float, high_s: float, bare: bool = False) -> WaitRule:
    """A wait between two times; at whole degrees, so that rounding keeps them apart.

    Of a table each humidity is a column, in which no time gets longer as it gets warmer.
    """
    until = draw(st.just("") | texts)
    if until and draw(flags):
        return WaitRule((), until)
    degrees = sorted(draw(st.sets(st.integers(-20, 60), min_size=1, max_size=3)))
    if len(degrees) == 1:
        at_c = None if bare and draw(flags) else float(degrees[0])
        time = draw(closed(low_s, high_s))
        percent = draw(maybe(numbers(1, 100))) if at_c is not None else None
        return WaitRule((_row(at_c, time, percent),), until)
    percents: list[float | None] = [None]
    if draw(flags):
        percents = [
            float(n) for n in sorted(draw(st.sets(st.integers(10, 90), min_size=1, max_size=3)))
        ]
    rows = []
    for percent in percents:
        times = st.lists(numbers(low_s, high_s), min_size=len(degrees), max_size=len(degrees))
        lows, highs = (sorted(draw(times), reverse=True) for _ in range(2))
        for at, *ends in zip(degrees, lows, highs, strict=True):
            rows.append(_row(float(at), Range(min(ends), max(ends)), percent))
    return WaitRule(tuple(sorted(rows, key=lambda row: (row.at_c, row.at_percent or 0))), until)


def _row(at_c: float | None, time: Range, percent: float | None) -> AtTemperature:
    assert time.low is not None
    return AtTemperature(at_c, time.low, time.high if time.high != time.low else None, percent)


# Each wait from its own stretch of time, so that none closes before it opens.
EARLY, LATER, LAST, EVER = (1, 3000), (4000, 1e6), (2e6, 3e7), (1, 3e7)
WAITS = {
    "flash_off": EARLY,
    "recoat_opens": EARLY,
    "recoat_closes": LATER,
    "dust_free": EARLY,
    "handle": LATER,
    "tape": LATER,
    "sand": EVER,
    "polish": EVER,
    "cure": LAST,
    "before_bake": EVER,
    "bake": EVER,
}
NEXT = {"opens": EARLY, "closes": LATER, "or_after": LAST, "abrade_after": LATER}


@st.composite
def some(draw: st.DrawFn, stretches: dict[str, tuple[float, float]]) -> dict[str, WaitRule]:
    """A few of some waits, by name."""
    names = draw(st.sets(st.sampled_from(sorted(stretches)), max_size=4))
    return {name: draw(rules(*stretches[name])) for name in sorted(names)}


waits = some(WAITS).map(lambda found: Waits(**found))
next_products = st.lists(
    st.builds(lambda name, found: NextProduct(name, **found), st.just("") | texts, some(NEXT)),
    max_size=2,
).map(tuple)


@st.composite
def thinners(draw: st.DrawFn, name: str) -> Thinner:
    return Thinner(
        name,
        draw(maybe(spans(1, 10))),
        draw(maybe(numbers(10, 300))),
        draw(maybe(numbers(0.1, 1000))),
        draw(maybe(numbers(0.5, 2))),
        draw(maybe(texts)),
        draw(maybe(spans(-40, 100, single=False))),
        draw(maybe(st.sampled_from(["before induction", "after induction"]))),
    )


@st.composite
def mixes(draw: st.DrawFn) -> Mix:
    # What is poured goes by its name: no two of them alike.
    names = draw(st.lists(texts, min_size=8, max_size=8, unique_by=str.casefold))
    by, weighed = draw(st.sampled_from(["volume", "weight"])), draw(flags)
    parts = tuple(
        MixPart(
            name,
            draw(numbers(0.1, 100)),
            draw(maybe(numbers(0.5, 5))),
            draw(numbers(0.1, 100)) if weighed and by == "volume" else None,
        )
        for name in names[: draw(st.integers(0, 3))]
    )
    mixed = len(parts) > 1
    hardeners = tuple(
        Hardener(
            name,
            draw(maybe(spans(-40, 100, single=False))),
            draw(maybe(numbers(0.1, 100))),
            draw(maybe(numbers(0.1, 100))),
            draw(maybe(numbers(0.5, 5))),
            draw(maybe(rules(60, 5e6))),
            draw(maybe(waits)),
        )
        for name in names[3 : 3 + draw(st.integers(0, 2))]
    )
    return Mix(
        parts=parts,
        by=by,
        thinner=draw(maybe(thinners(names[5]))),
        induction=draw(maybe(rules(1, 6e5, bare=True))) if mixed else None,
        pot_life=draw(maybe(rules(60, 5e6))) if mixed else None,
        hardeners=hardeners if mixed else (),
        thinners=tuple(draw(thinners(name)) for name in names[6 : 6 + draw(st.integers(0, 2))]),
    )


@st.composite
def films(draw: st.DrawFn, listed: Range | None) -> Film:
    """A film whose wet, dry and solids are not given together: they would have to agree."""
    together = draw(st.sampled_from(["wet", "dry", "neither"]))
    return Film(
        coats=draw(counts(1, 50)) if listed is None else draw(st.none() | st.just(listed)),
        volume_solids_percent=draw(maybe(spans(1, 60))),
        wet_um=draw(spans(1, 5000)) if together == "wet" else None,
        dry_total_um=draw(spans(1, 10000)) if together == "dry" and listed is None else None,
        density_g_ml=draw(maybe(numbers(0.5, 5))),
        solvent_percent=draw(maybe(numbers(1, 39))),
        solvent=draw(maybe(texts)),
    )


@st.composite
def coats(draw: st.DrawFn) -> tuple[CoatPlan, ...]:
    return tuple(
        CoatPlan(
            name=draw(st.just("") | texts),
            times=draw(counts(1, 10)) if hidden or draw(flags) else None,
            until_hidden=hidden,
            wet_um=draw(maybe(spans(1, 5000))),
            inlet_kpa=draw(maybe(spans(5, 1400))),
            distance_mm=draw(maybe(spans(20, 1000))),
            overlap_percent=draw(maybe(spans(1, 95))),
            fan_mm=draw(maybe(spans(10, 1500))),
            wait=draw(maybe(rules(1, 3000))),
        )
        for hidden in draw(st.lists(flags, max_size=2))
    )


def in_all(listed: tuple[CoatPlan, ...]) -> Range | None:
    """How many coats a list comes to; None for no list."""
    times = [coat.times or Range(1, 1) for coat in listed]
    lows, highs = ([getattr(each, end) or 0 for each in times] for end in ("low", "high"))
    return Range(sum(lows), sum(highs)) if listed else None


steps = st.lists(
    st.fixed_dictionaries(
        {"kind": st.sampled_from(sorted(NAMES)), "name": texts},
        optional={"how": st.lists(texts, max_size=3).map(tuple), "must": flags},
    ).map(lambda step: {**step, "must": True} if step["kind"] in MUST & {"cautions"} else step),
    max_size=5,
).map(listed_steps)

guns = st.builds(
    Gun,
    tip_mm=maybe(spans(0.1, 6)),
    inlet_kpa=maybe(spans(5, 1400)),
    distance_mm=maybe(spans(20, 1000)),
    fan_mm=maybe(spans(10, 1500)),
    overlap_percent=maybe(spans(1, 95)),
    delivery_ml_min=maybe(spans(5, 6000)),
    hvlp=flags,
    coarse_metallic=flags,
    strainer_um=maybe(numbers(10, 2000)),
)
limits = st.builds(
    Limits,
    air_c=maybe(spans(-40, 100, single=False)),
    part_c=maybe(spans(-40, 250, single=False)),
    humidity_percent=maybe(spans(0, 100, single=False)),
    dew_margin_c=maybe(numbers(0, 30)),
)


@st.composite
def effluxes(draw: st.DrawFn) -> Efflux:
    """A target not too far out of the range of its cup."""
    cup = draw(st.sampled_from(sorted(CUPS.values(), key=lambda cup: cup.name)))
    target = draw(spans(cup.low_s * 0.6, cup.high_s * 1.8))
    return Efflux(cup.name, target, draw(maybe(numbers(-10, 90))))


plain = st.builds(
    Profile,
    key=st.just("made-up"),
    name=texts,
    product=st.just("") | texts,
    source=texts,
    demo=flags,
    waterborne=flags,
    notes=st.lists(texts, max_size=3).map(tuple),
    hazards=st.sets(st.sampled_from(Hazard)).map(lambda found: tuple(sorted(found))),
    cautions=st.lists(texts, max_size=2).map(tuple),
    mix=maybe(mixes()),
    efflux=maybe(effluxes()),
    gun=guns,
    waits=waits,
    next_products=next_products,
    limits=limits,
    steps=steps,
)


@st.composite
def with_coats(draw: st.DrawFn) -> Profile:
    """A profile with its film, and perhaps the coats that this is laid in."""
    listed = draw(coats())
    film = draw(films(in_all(listed)))
    return msgspec.structs.replace(draw(plain), film=film, coats=listed)


profiles = with_coats()
