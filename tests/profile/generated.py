"""Profiles made up by hypothesis: any that the reader takes, numbers as a painter types them."""

from __future__ import annotations

from hypothesis import strategies as st

from booth.profile.model import (
    AtTemperature,
    Efflux,
    Film,
    Gun,
    Hazard,
    Limits,
    Mix,
    MixPart,
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


def numbers(low: float, high: float) -> st.SearchStrategy[float]:
    """Numbers of at most five digits within the bounds, as they stand in a file."""
    inside = st.floats(low + (high - low) * 0.001, high - (high - low) * 0.001)
    return inside.map(lambda number: float(f"{number:.5g}"))


def maybe(strategy: st.SearchStrategy) -> st.SearchStrategy:
    return st.none() | strategy


def spans(low: float, high: float, single: bool = True) -> st.SearchStrategy[Range]:
    """Ranges: both ends, either end, and one value where that is allowed."""
    number = numbers(low, high)
    both = st.tuples(number, number).map(lambda ends: Range(min(ends), max(ends)))
    kinds = [both, number.map(lambda n: Range(low=n)), number.map(lambda n: Range(high=n))]
    if single:
        kinds.append(number.map(lambda n: Range(n, n)))
    return st.one_of(kinds)


@st.composite
def rules(draw: st.DrawFn, low_s: float, high_s: float) -> WaitRule:
    """A wait between two times; at whole degrees, so that rounding keeps them apart."""
    degrees = draw(st.sets(st.integers(-20, 60), min_size=1, max_size=4))
    return WaitRule(
        tuple(AtTemperature(float(at), draw(numbers(low_s, high_s))) for at in sorted(degrees))
    )


@st.composite
def mixes(draw: st.DrawFn) -> Mix:
    names = draw(st.lists(texts, max_size=3, unique_by=str.casefold))
    parts = tuple(
        MixPart(name, draw(numbers(0.1, 100)), draw(maybe(numbers(0.5, 5)))) for name in names
    )
    limit = draw(maybe(numbers(10, 300)))
    usual = draw(maybe(numbers(1, 10)))
    thinner = Thinner(
        draw(texts),
        usual,
        limit,
        draw(maybe(numbers(0.1, 1000))),
        draw(maybe(numbers(0.5, 2))),
        draw(maybe(texts)),
    )
    mixed = len(parts) > 1
    return Mix(
        parts=parts,
        by=draw(st.sampled_from(["volume", "weight"])),
        thinner=draw(maybe(st.just(thinner))),
        induction_s=draw(maybe(numbers(1, 6e5))) if mixed else None,
        pot_life=AtTemperature(draw(numbers(-20, 60)), draw(numbers(60, 5e6)))
        if mixed and draw(flags)
        else None,
    )


@st.composite
def films(draw: st.DrawFn) -> Film:
    """A film whose wet, dry and solids are not given together: they would have to agree."""
    together = draw(st.sampled_from(["wet", "dry", "neither"]))
    solids = draw(maybe(numbers(1, 60)))
    return Film(
        coats=draw(st.integers(1, 50)),
        volume_solids_percent=solids,
        wet_um=draw(spans(1, 5000)) if together == "wet" else None,
        dry_total_um=draw(spans(1, 10000)) if together == "dry" else None,
        density_g_ml=draw(maybe(numbers(0.5, 5))),
        solvent_percent=draw(maybe(numbers(1, 39))),
        solvent=draw(maybe(texts)),
    )


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
    overlap_percent=maybe(numbers(0, 95)),
    delivery_ml_min=maybe(spans(5, 6000)),
    hvlp=flags,
    coarse_metallic=flags,
    strainer_um=maybe(numbers(10, 2000)),
)
# Each wait from its own stretch of time, so that none closes before it opens.
waits = st.builds(
    Waits,
    flash_off=maybe(rules(1, 3000)),
    recoat_opens=maybe(rules(1, 3000)),
    recoat_closes=maybe(rules(4000, 3e7)),
    dust_free=maybe(rules(1, 3000)),
    handle=maybe(rules(4000, 3e7)),
)
limits = st.builds(
    Limits,
    air_c=maybe(spans(-40, 100, single=False)),
    part_c=maybe(spans(-40, 250, single=False)),
    humidity_percent=maybe(spans(0, 100, single=False)),
    dew_margin_c=maybe(numbers(0, 30)),
)
effluxes = st.builds(
    Efflux,
    cup=st.sampled_from(sorted(cup.name for cup in CUPS.values())),
    target_s=spans(1, 3600),
    at_c=maybe(numbers(-10, 90)),
)

profiles = st.builds(
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
    efflux=maybe(effluxes),
    gun=guns,
    film=films(),
    waits=waits,
    limits=limits,
    steps=steps,
)
