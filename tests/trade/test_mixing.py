"""Pour tables, over-pours and blends: by mass balance, and against a general chemical library."""

from __future__ import annotations

import math

import pytest
from chemicals.utils import Vfs_to_zs, ws_to_zs, zs_to_Vfs, zs_to_ws
from hypothesis import given
from hypothesis import strategies as st

from booth.trade.mixing import components, mixed_batch, overpour, pours
from booth.trade.mixing.components import Component, Measure
from booth.trade.mixing.mixed_batch import BatchAge
from booth.trade.result import BadInput
from tests.reference import UNITS
from tests.trade.outside import Kind, outside

VOLUME, WEIGHT = Measure.VOLUME, Measure.WEIGHT
measures = st.sampled_from((VOLUME, WEIGHT))
amount = st.floats(1.0, 1e5)

#: Ethanol, toluene and butyl acetate: molar mass [g/mol], density at 20 C [g/ml], handbook values
#: (recalled). Any values do: what is compared is the arithmetic.
MOLAR = (46.07, 92.14, 116.16)
DENSITY = (0.789, 0.867, 0.882)
MOLAR_VOLUMES = [m / d for m, d in zip(MOLAR, DENSITY, strict=True)]


@st.composite
def mixes(draw: st.DrawFn) -> tuple[Component, ...]:
    count = draw(st.integers(1, 5))
    return tuple(
        Component(f"part {n}", draw(st.floats(0.1, 100)), draw(st.floats(0.6, 2.5)))
        for n in range(count)
    )


def three(first: float, second: float, third: float) -> list[Component]:
    names = ("ethanol", "toluene", "butyl acetate")
    return [
        Component(name, share, density)
        for name, share, density in zip(names, (first, second, third), DENSITY, strict=True)
    ]


@outside(
    components.pour_shares,
    kind=Kind.LIBRARY,
    source="chemicals.utils.Vfs_to_zs and zs_to_ws: by way of moles",
)
@given(st.floats(0.1, 10), st.floats(0.1, 10), st.floats(0.1, 10))
def test_volume_to_weight_is_the_same_by_way_of_moles(a: float, b: float, c: float) -> None:
    whole = a + b + c
    weights = zs_to_ws(Vfs_to_zs([a / whole, b / whole, c / whole], MOLAR_VOLUMES), list(MOLAR))
    assert components.pour_shares(three(a, b, c), VOLUME, WEIGHT) == pytest.approx(
        weights, rel=1e-9
    )


@outside(
    components.pour_shares,
    kind=Kind.LIBRARY,
    source="chemicals.utils.ws_to_zs and zs_to_Vfs: by way of moles",
)
@given(st.floats(0.1, 10), st.floats(0.1, 10), st.floats(0.1, 10))
def test_weight_to_volume_is_the_same_by_way_of_moles(a: float, b: float, c: float) -> None:
    whole = a + b + c
    volumes = zs_to_Vfs(ws_to_zs([a / whole, b / whole, c / whole], list(MOLAR)), MOLAR_VOLUMES)
    assert components.pour_shares(three(a, b, c), WEIGHT, VOLUME) == pytest.approx(
        volumes, rel=1e-9
    )
    by_volume = components.parts_by_volume(three(a, b, c))
    assert components.pour_shares(by_volume, VOLUME, VOLUME) == pytest.approx(volumes, rel=1e-9)


@outside(components.parts_by_volume, kind=Kind.LIBRARY, source="pint: weight over density")
@given(mixes())
def test_parts_by_weight_brought_to_volume(mix: tuple[Component, ...]) -> None:
    found = components.parts_by_volume(mix)
    for each, by_weight in zip(found, mix, strict=True):
        volume = by_weight.parts * UNITS.g / (by_weight.density_g_ml * UNITS.g / UNITS.ml)
        assert each.parts == pytest.approx(volume.to("ml").magnitude, rel=1e-12)
        assert (each.name, each.density_g_ml) == (by_weight.name, by_weight.density_g_ml)


@outside(
    pours.pour_table,
    pours.pour_table_from_component,
    kind=Kind.COPIED,
    source="a table of kit sizes of two-part systems that cannot be named here: half a pint or "
    "five "
    "gallons of A at 1:1, 2:1, 4:1; the amounts it prints are rounded to 0.01",
)
@pytest.mark.parametrize(
    ("ratio", "kit_of", "makes"),
    [(1, 0.5, 1.0), (2, 0.5, 0.75), (4, 0.5, 0.63), (2, 5, 7.5), (4, 5, 6.25)],
)
def test_what_a_kit_makes(ratio: float, kit_of: float, makes: float) -> None:
    kit = [Component("A", ratio), Component("B", 1)]
    table = pours.pour_table_from_component(kit, "A", kit_of, parts_by=VOLUME, measure=VOLUME)
    assert table.total == pytest.approx(makes, abs=0.0051)
    again = pours.pour_table(kit, table.total, parts_by=VOLUME, measure=VOLUME)
    assert again.amounts == pytest.approx((kit_of, kit_of / ratio))


@outside(
    pours.pour_table,
    kind=Kind.LIBRARY,
    source="chemicals.utils.Vfs_to_zs and zs_to_ws: by way of moles",
)
def test_parts_by_volume_on_a_scale() -> None:
    weights = zs_to_ws(Vfs_to_zs([0.5, 0.3, 0.2], MOLAR_VOLUMES), list(MOLAR))
    table = pours.pour_table(three(5, 3, 2), 800.0, parts_by=VOLUME, measure=WEIGHT)
    assert table.amounts == pytest.approx([800 * weight for weight in weights], rel=1e-9)
    marks = (weights[0], weights[0] + weights[1], 1.0)
    assert [pour.mark for pour in table.pours] == pytest.approx([800 * mark for mark in marks])


def test_a_wanted_volume_poured_on_a_scale() -> None:
    mix = [Component("base", 4, 1.25), Component("hardener", 1, 1.0)]
    table = pours.pour_table(mix, 500, parts_by=VOLUME, measure=WEIGHT, wanted_by=VOLUME)
    assert [(pour.amount, pour.mark) for pour in table.pours] == [(500, 500), (100, 600)]
    left = pours.pour_table_from_component(
        mix, "base", 400, parts_by=VOLUME, measure=WEIGHT, amount_by=VOLUME
    )
    assert [pour.mark for pour in left.pours] == pytest.approx([500, 600])


def test_where_no_measure_changes_no_density_is_asked_for() -> None:
    mix = [Component("resin", 100), Component("hardener", 38)]
    table = pours.pour_table(mix, 690, parts_by=WEIGHT, measure=WEIGHT)
    assert table.amounts == pytest.approx((500, 190))
    with pytest.raises(BadInput, match="density of resin is not known"):
        pours.pour_table(mix, 690, parts_by=WEIGHT, measure=VOLUME)


@given(mixes(), amount, measures, measures, measures)
def test_a_table_holds_the_parts_and_makes_what_was_wanted(
    mix: tuple[Component, ...],
    wanted: float,
    parts_by: Measure,
    measure: Measure,
    wanted_by: Measure,
) -> None:
    table = pours.pour_table(mix, wanted, parts_by=parts_by, measure=measure, wanted_by=wanted_by)
    made = [
        each.convert(poured, measure, wanted_by)
        for each, poured in zip(mix, table.amounts, strict=True)
    ]
    assert sum(made) == pytest.approx(wanted, rel=1e-9)
    for each, poured in zip(mix, table.amounts, strict=True):
        given_parts = each.convert(poured, measure, parts_by)
        first = mix[0].convert(table.amounts[0], measure, parts_by)
        assert given_parts / first == pytest.approx(each.parts / mix[0].parts, rel=1e-9)
    marks = [pour.mark for pour in table.pours]
    assert marks == sorted(marks)
    assert table.total == pytest.approx(sum(table.amounts), rel=1e-12)


@given(mixes(), amount, measures, measures)
def test_from_one_component_or_from_the_total_is_the_same_table(
    mix: tuple[Component, ...], wanted: float, parts_by: Measure, measure: Measure
) -> None:
    table = pours.pour_table(mix, wanted, parts_by=parts_by, measure=measure)
    for pour in table.pours:
        again = pours.pour_table_from_component(
            mix, pour.name, pour.amount, parts_by=parts_by, measure=measure
        )
        assert again.amounts == pytest.approx(table.amounts, rel=1e-9)


@outside(
    pours.pour_table_from_stock,
    kind=Kind.DEFINITION,
    source="limiting reagent: scarcest over its share, worked by hand",
)
@pytest.mark.parametrize(
    ("stock", "makes"),
    [
        ({"base": 500.0, "hardener": 100.0}, 500.0),
        ({"base": 300.0, "hardener": 100.0}, 375.0),
        ({"hardener": 100.0}, 500.0),
    ],
)
def test_the_scarcest_component_sets_the_batch(stock: dict[str, float], makes: float) -> None:
    mix = [Component("base", 4), Component("hardener", 1)]
    table = pours.pour_table_from_stock(mix, stock, parts_by=VOLUME, measure=VOLUME)
    assert table.total == pytest.approx(makes)
    assert all(pour.amount <= stock.get(pour.name, math.inf) * (1 + 1e-12) for pour in table.pours)


@outside(
    pours.pour_table_on_top,
    kind=Kind.THEOREM,
    source="mass balance: the rest and what is poured on it are one mix",
)
@given(mixes(), st.floats(0, 1e4), amount)
def test_topping_up_counts_on_from_what_is_left(
    mix: tuple[Component, ...], left: float, more: float
) -> None:
    table = pours.pour_table_on_top(mix, left, left + more, parts_by=VOLUME, measure=WEIGHT)
    assert table.total == pytest.approx(left + more, rel=1e-9)
    assert table.pours[0].mark == pytest.approx(left + table.amounts[0])
    shares = components.pour_shares(mix, VOLUME, WEIGHT)
    for share, poured in zip(shares, table.amounts, strict=True):
        # abs: `left` takes digits from a small addition to a large rest.
        assert poured == pytest.approx(share * more, rel=1e-9, abs=1e-9)


@outside(
    components.with_thinner,
    kind=Kind.LIBRARY,
    source="pint: 1 US pint in 1 US gallon, 1 fl oz in 1 quart",
)
@pytest.mark.parametrize(
    ("thinner", "paint"), [("1 pint", "1 gallon"), ("1 fluid_ounce", "1 quart"), ("1 l", "4 l")]
)
def test_thinner_is_percent_of_the_paint_on_top(thinner: str, paint: str) -> None:
    added, whole = UNITS(thinner).to("ml").magnitude, UNITS(paint).to("ml").magnitude
    mix = components.with_thinner(
        [Component("base", 4), Component("hardener", 1)], "thinner", 100 * added / whole
    )
    table = pours.pour_table(mix, whole + added, parts_by=VOLUME, measure=VOLUME)
    assert table.amounts == pytest.approx((0.8 * whole, 0.2 * whole, added))


@outside(
    overpour.amounts_from_marks,
    kind=Kind.THEOREM,
    source="mass balance: the pours add up to the last mark",
)
@given(st.lists(st.floats(0, 1e4), min_size=1, max_size=6), st.floats(0, 1e4))
def test_marks_and_amounts(amounts: list[float], before: float) -> None:
    marks = [before + sum(amounts[: n + 1]) for n in range(len(amounts))]
    # abs: differences of sums of up to 7e4 hold to its own last digits.
    assert overpour.amounts_from_marks(marks, before) == pytest.approx(amounts, abs=1e-9)


@outside(overpour.after_pouring, kind=Kind.DEFINITION, source="mass balance, worked by hand")
@pytest.mark.parametrize(
    ("poured", "to_add", "total"),
    [
        # 4:1:1, 600 ml planned.
        ([400], [("hardener", 100, 500), ("thinner", 100, 600)], 600),
        ([440], [("hardener", 110, 550), ("thinner", 110, 660)], 660),
        ([400, 125], [("base", 100, 625), ("thinner", 125, 750)], 750),
        ([400, 100, 120], [("base", 80, 700), ("hardener", 20, 720)], 720),
        ([390, 100], [("base", 10, 500), ("thinner", 100, 600)], 600),
        ([400, 100, 100], [], 600),
        ([], [("base", 400, 400), ("hardener", 100, 500), ("thinner", 100, 600)], 600),
    ],
)
def test_after_an_overpour(
    poured: list[float], to_add: list[tuple[str, float, float]], total: float
) -> None:
    mix = [Component("base", 4), Component("hardener", 1), Component("thinner", 1)]
    plan = pours.pour_table(mix, 600, parts_by=VOLUME, measure=VOLUME)
    found = overpour.after_pouring(plan, poured)
    assert [pour.name for pour in found.pours] == [name for name, _, _ in to_add]
    for pour, (_, added, mark) in zip(found.pours, to_add, strict=True):
        assert (pour.amount, pour.mark) == (pytest.approx(added), pytest.approx(mark))
    assert found.total == pytest.approx(total)
    assert found.grew == pytest.approx(total - 600, abs=1e-9)
    assert (found.by is None) is (total == 600)


@outside(
    overpour.after_pouring,
    kind=Kind.THEOREM,
    source="mass balance: nothing is taken out, the parts come right, and the batch grows by the "
    "least",
)
@given(mixes(), amount, st.data(), st.floats(0, 1e4))
def test_an_overpour_is_put_right_exactly_and_by_the_least(
    mix: tuple[Component, ...], wanted: float, data: st.DataObject, before: float
) -> None:
    plan = pours.pour_table_on_top(mix, before, before + wanted, parts_by=VOLUME, measure=WEIGHT)
    done = data.draw(st.integers(0, len(mix)))
    poured = [plan.amounts[n] * data.draw(st.floats(0.0, 3.0)) for n in range(done)]
    found = overpour.after_pouring(plan, poured)
    added = {pour.name: pour.amount for pour in found.pours}
    assert all(each > 0 for each in added.values())
    final = [
        (poured[n] if n < done else 0.0) + added.get(component.name, 0.0)
        for n, component in enumerate(mix)
    ]
    growth = sum(final) / sum(plan.amounts)
    assert growth >= 1.0 - 1e-9
    for got, planned in zip(final, plan.amounts, strict=True):
        assert got == pytest.approx(planned * growth, rel=1e-9)  # the parts are right
    assert found.total == pytest.approx(before + sum(final), rel=1e-9)  # nothing is lost
    # The least: it grew only as far as the component that was poured most over its share.
    most = max((p / a for p, a in zip(poured, plan.amounts, strict=False)), default=1.0)
    assert growth == pytest.approx(max(1.0, most), rel=1e-9)
    if found.by is not None:
        assert found.by not in added
    if found.pours:
        assert found.pours[-1].mark == pytest.approx(found.total, rel=1e-9)
    # Poured as told, nothing is left to do.
    assert overpour.after_pouring(plan, final).pours == ()


@outside(
    mixed_batch.mixed_density_g_ml,
    kind=Kind.LIBRARY,
    source="chemicals.utils: mean molar mass over mean molar volume",
)
@given(st.floats(0.1, 10), st.floats(0.1, 10), st.floats(0.1, 10))
def test_density_of_the_mix(a: float, b: float, c: float) -> None:
    whole = a + b + c
    for given_by, zs in (
        (VOLUME, Vfs_to_zs([a / whole, b / whole, c / whole], MOLAR_VOLUMES)),
        (WEIGHT, ws_to_zs([a / whole, b / whole, c / whole], list(MOLAR))),
    ):
        mass = sum(z * m for z, m in zip(zs, MOLAR, strict=True))
        volume = sum(z * v for z, v in zip(zs, MOLAR_VOLUMES, strict=True))
        found = mixed_batch.mixed_density_g_ml(three(a, b, c), given_by)
        assert found == pytest.approx(mass / volume, rel=1e-9)


def test_alcohol_in_water_shows_the_limit_of_adding_volumes() -> None:
    """50 ml ethanol and 50 ml water make about 96.4 ml (handbook, recalled): 4 % is the worst."""
    mix = [Component("ethanol", 1, 0.7893), Component("water", 1, 0.9982)]
    ideal = mixed_batch.mixed_density_g_ml(mix, VOLUME)
    real = (50 * 0.7893 + 50 * 0.9982) / 96.4
    assert 0.03 < real / ideal - 1 < 0.04


@outside(
    mixed_batch.mixed_volume_ml,
    kind=Kind.LIBRARY,
    source="chemicals.utils.ws_to_zs and molar volumes",
)
@given(st.floats(0.1, 10), st.floats(0.1, 10), st.floats(0.1, 10), amount)
def test_volume_of_what_was_weighed(a: float, b: float, c: float, grams: float) -> None:
    zs = ws_to_zs([a / (a + b + c), b / (a + b + c), c / (a + b + c)], list(MOLAR))
    moles = grams / sum(z * m for z, m in zip(zs, MOLAR, strict=True))
    volume = moles * sum(z * v for z, v in zip(zs, MOLAR_VOLUMES, strict=True))
    table = pours.pour_table(three(a, b, c), grams, parts_by=WEIGHT, measure=WEIGHT)
    assert mixed_batch.mixed_volume_ml(three(a, b, c), table) == pytest.approx(volume, rel=1e-9)
    on_top = pours.pour_table_on_top(
        three(a, b, c), 50.0, 50.0 + grams, parts_by=WEIGHT, measure=WEIGHT
    )
    assert mixed_batch.mixed_volume_ml(three(a, b, c), on_top) == pytest.approx(volume, rel=1e-9)


@outside(
    mixed_batch.pot_life_left_s,
    kind=Kind.DEFINITION,
    source="common practice, no source: the oldest batch rules",
)
@pytest.mark.parametrize(
    ("batches", "left"),
    [
        ([BatchAge(0, 4)], 4),
        ([BatchAge(3, 4), BatchAge(0, 4)], 1),
        ([BatchAge(0, 4), BatchAge(3, 4)], 1),
        ([BatchAge(3, 8), BatchAge(1, 2)], 1),
        ([BatchAge(5, 4), BatchAge(0, 4)], -1),
    ],
)
def test_the_oldest_batch_rules(batches: list[BatchAge], left: float) -> None:
    assert mixed_batch.pot_life_left_s(batches) == left


@given(
    st.lists(st.builds(BatchAge, st.floats(0, 1e5), st.floats(0, 1e5)), min_size=1),
    st.floats(0, 1e5),
)
def test_fresh_material_never_makes_old_material_younger(
    batches: list[BatchAge], pot_life_s: float
) -> None:
    before = mixed_batch.pot_life_left_s(batches)
    assert mixed_batch.pot_life_left_s([*batches, BatchAge(0.0, pot_life_s)]) <= before


TWO = (Component("base", 4), Component("hardener", 1))
PLAN = pours.pour_table(TWO, 500, parts_by=VOLUME, measure=VOLUME)


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (
            lambda: pours.pour_table(TWO, 0, parts_by=VOLUME, measure=VOLUME),
            "must be above 0 ml",
        ),
        (
            lambda: pours.pour_table([], 5, parts_by=VOLUME, measure=VOLUME),
            "at least one component",
        ),
        (
            lambda: pours.pour_table([*TWO, TWO[0]], 5, parts_by=VOLUME, measure=VOLUME),
            "Two components are called base",
        ),
        (
            lambda: pours.pour_table_from_component(
                TWO, "thinner", 5, parts_by=VOLUME, measure=VOLUME
            ),
            "no component called thinner; the mix has base, hardener",
        ),
        (
            lambda: pours.pour_table_from_stock(TWO, {}, parts_by=VOLUME, measure=VOLUME),
            "Say what",
        ),
        (
            lambda: pours.pour_table_on_top(TWO, 500, 400, parts_by=VOLUME, measure=VOLUME),
            "wanted in all must be above 500 ml; 400",
        ),
        (lambda: components.pour_shares([Component("base", 0)], VOLUME, VOLUME), "parts of base"),
        (
            lambda: components.pour_shares([Component("base", 1, -1)], VOLUME, WEIGHT),
            "density of base must be above 0",
        ),
        (lambda: components.with_thinner(TWO, "thinner", 0), "thinner must be above 0 %"),
        (lambda: components.with_thinner(TWO, "base", 5), "Two components are called base"),
        (lambda: components.parts_by_volume(TWO), "density of base is not known"),
        (lambda: overpour.amounts_from_marks([100, 90]), "mark 90 is below the one before it, 100"),
        (lambda: overpour.after_pouring(PLAN, [1, 2, 3]), "3 amounts were given for 2 components"),
        (lambda: overpour.after_pouring(PLAN, [math.nan]), "poured of base must be a finite"),
        (lambda: overpour.after_pouring(PLAN, [-1]), "poured of base must be 0 ml or more"),
        (lambda: mixed_batch.pot_life_left_s([]), "no batch"),
        (
            lambda: mixed_batch.pot_life_left_s([BatchAge(-1, 5)]),
            "age of a batch must be 0 s or more",
        ),
        (lambda: mixed_batch.mixed_density_g_ml(TWO, VOLUME), "density of base is not known"),
    ],
)
def test_bad_input_gets_a_sentence(call, says: str) -> None:  # type: ignore[no-untyped-def]
    with pytest.raises(BadInput, match=says):
        call()
