"""Wet and dry film against printed examples."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.trade.film import film_thickness
from booth.trade.result import BadInput
from tests.trade.outside import Kind, outside

UM_PER_MIL = 25.4
solids = st.floats(0.05, 1.0)
thinner = st.floats(0.0, 1.0)
thickness = st.floats(0.1, 1000.0)


@outside(
    film_thickness.wet_film_um,
    kind=Kind.DATA,
    source="paintcenter.org, October 2003, worked example: 1.5 mil at 42 %",
)
def test_1_5_mil_dry_at_42_percent_solids_is_3_57_mil_wet() -> None:
    assert film_thickness.wet_film_um(1.5 * UM_PER_MIL, 0.42) / UM_PER_MIL == pytest.approx(
        3.57, abs=0.005
    )


@outside(
    film_thickness.dry_film_um,
    kind=Kind.DEFINITION,
    source="Organic Finishing Guidebook 2012-13 p. 615, MIL-HDBK-1110 2.1.5, worked by hand",
)
def test_4_mil_wet_at_50_percent_thinned_a_quarter_is_1_6_mil_dry() -> None:
    assert film_thickness.dry_film_um(4 * UM_PER_MIL, 0.50, 0.25) / UM_PER_MIL == pytest.approx(
        1.60
    )
    assert film_thickness.dry_film_um(3.57 * UM_PER_MIL, 0.42) / UM_PER_MIL == pytest.approx(
        1.5, abs=0.005
    )


@outside(
    film_thickness.film_in_all,
    kind=Kind.DEFINITION,
    source="Organic Finishing Guidebook 2012-13 p. 615 (4 mil wet, 50 %, 4:1: 1.6 mil dry), "
    "each coat of it; the ends of the intervals worked by hand",
)
def test_two_coats_of_the_printed_example_are_twice_its_film() -> None:
    coat = film_thickness.WetCoat(4 * UM_PER_MIL, 5 * UM_PER_MIL, 0.25)
    film = film_thickness.film_in_all([coat, coat], 0.50, 0.50)
    # 4 to 5 mil wet is 1.6 to 2.0 mil dry; twice.
    assert film.low_um / UM_PER_MIL == pytest.approx(3.2)
    assert film.high_um / UM_PER_MIL == pytest.approx(4.0)
    # 40 to 60 % solids, one coat of the two not thinned:
    # 4 x 0.40 / 1.25 + 4 x 0.40 = 2.88 mil; 5 x 0.60 / 1.25 + 5 x 0.60 = 5.4 mil.
    bare = film_thickness.WetCoat(4 * UM_PER_MIL, 5 * UM_PER_MIL)
    film = film_thickness.film_in_all([coat, bare], 0.40, 0.60)
    assert film.low_um / UM_PER_MIL == pytest.approx(2.88)
    assert film.high_um / UM_PER_MIL == pytest.approx(5.4)


wet_coats = st.lists(
    st.builds(
        lambda low, more, s: film_thickness.WetCoat(low, low + more, s),
        *(st.floats(0.0, 500.0), st.floats(0.0, 200.0), thinner),
    ),
    min_size=1,
    max_size=6,
)


@given(wet_coats, solids, st.floats(0.0, 1.0), st.floats(0.0, 1.0), st.floats(0.0, 1.0))
def test_the_film_in_all_holds_every_film_that_the_readings_allow(
    coats: list[film_thickness.WetCoat], solid: float, wider: float, where: float, share: float
) -> None:
    most = solid + (1.0 - solid) * wider
    film = film_thickness.film_in_all(coats, solid, most)
    true = sum(
        film_thickness.dry_film_um(
            each.wet_low_um + where * (each.wet_high_um - each.wet_low_um),
            solid + share * (most - solid),
            each.thinner_fraction,
        )
        for each in coats
    )
    slack = 1e-9 * (1.0 + true)  # rounding of a few sums
    assert film.low_um - slack <= true <= film.high_um + slack


@given(thickness, solids, thinner)
def test_wet_to_dry_and_back(wet: float, vs: float, s: float) -> None:
    dry = film_thickness.dry_film_um(wet, vs, s)
    assert dry <= wet
    assert film_thickness.wet_film_um(dry, vs, s) == pytest.approx(wet, rel=1e-12)


@given(thickness, solids, st.floats(0.01, 1.0))
def test_the_solids_in_a_thinned_film_are_those_of_the_coating_in_it(
    wet: float, vs: float, s: float
) -> None:
    """Mass balance: of a film of the mix, 1/(1 + s) is coating, and only that has solids."""
    coating = wet / (1.0 + s)
    assert film_thickness.dry_film_um(wet, vs, s) == pytest.approx(
        film_thickness.dry_film_um(coating, vs), rel=1e-12
    )


@outside(
    film_thickness.coats_to_dry_film,
    kind=Kind.DEFINITION,
    source="DFT = WFT x VS summed (Organic Finishing Guidebook 2012-13 p. 615), worked by hand",
)
@pytest.mark.parametrize(
    ("dry", "wet_most", "vs", "s", "so_far", "coats", "wet_each"),
    [
        (60, 60, 0.5, 0.0, 0, 2, 60),  # 60 um wet dries to 30: exactly two
        (61, 60, 0.5, 0.0, 0, 3, 61 / 3 / 0.5),
        (4.8 * 25.4, 4 * 25.4, 0.5, 0.25, 0, 3, 4 * 25.4),  # three of the example above
        (60, 60, 0.5, 0.0, 30, 1, 60),
        (60, 60, 0.5, 0.0, 60, 0, 0),
        (60, 60, 0.5, 0.0, 75, 0, 0),
    ],
)
def test_coats(dry, wet_most, vs, s, so_far, coats, wet_each) -> None:  # type: ignore[no-untyped-def]
    plan = film_thickness.coats_to_dry_film(dry, wet_most, vs, s, so_far)
    assert plan.coats == coats
    assert plan.wet_each_um == pytest.approx(wet_each, rel=1e-12)
    assert plan.dry_total_um == pytest.approx(max(dry, so_far))


@given(st.floats(1, 500), st.floats(5, 300), solids, thinner)
def test_no_coat_is_wetter_than_allowed_and_one_less_would_be(
    dry: float, wet_most: float, vs: float, s: float
) -> None:
    plan = film_thickness.coats_to_dry_film(dry, wet_most, vs, s)
    # Twice the relative rounding that the count of coats is allowed, times many coats.
    assert plan.wet_each_um <= wet_most * (1 + 1e-8)
    assert film_thickness.dry_film_um(plan.wet_each_um, vs, s) * plan.coats == pytest.approx(
        dry, rel=1e-9
    )
    if plan.coats > 1:
        assert dry / (plan.coats - 1) > film_thickness.dry_film_um(wet_most, vs, s)


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (
            lambda: film_thickness.dry_film_um(100, 50),
            "Volume solids must be 1 or less; 50 was given",
        ),
        (lambda: film_thickness.dry_film_um(100, 0), "Volume solids must be above 0"),
        (lambda: film_thickness.dry_film_um(-1, 0.5), "wet film must be 0 um or more"),
        (lambda: film_thickness.wet_film_um(10, 0.5, -0.1), "thinner added"),
        (lambda: film_thickness.coats_to_dry_film(50, 0, 0.5), "greatest wet film of a coat"),
    ],
)
def test_bad_input_gets_a_sentence(call, says: str) -> None:
    with pytest.raises(BadInput, match=says):
        call()
