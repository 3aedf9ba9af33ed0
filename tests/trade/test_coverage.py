"""Spreading rate against printed tables and examples."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.trade.film import coverage
from booth.trade.film.transfer_efficiency import HVLP_LARGE_PARTS
from booth.trade.result import BadInput, Estimate, Value
from tests.reference import UNITS
from tests.trade.outside import Kind, outside

UM_PER_MIL = 25.4
FT2_GAL = (1 * UNITS.m**2 / UNITS.l).to("ft^2/gallon").magnitude  # of one m2/L


@outside(
    coverage.theoretical_coverage_m2_l,
    kind=Kind.COPIED,
    source="a spreading-rate sheet whose publication cannot be named: 1604 x 0.65 / 5 mil = "
    "208.52 ft2/gal, "
    "125 um 5.2 m2/L",
)
def test_theoretical_coverage_of_the_printed_examples() -> None:
    per_gal = coverage.theoretical_coverage_m2_l(5 * UM_PER_MIL, 0.65) * FT2_GAL
    assert per_gal == pytest.approx(208.52, rel=2e-4)  # the sheet rounds 1604.17 to 1604
    assert coverage.theoretical_coverage_m2_l(125, 0.65) == pytest.approx(5.2, rel=1e-12)


@pytest.mark.parametrize(
    ("solids", "dry_um", "printed"),
    [
        (1.00, 25, 40.0),
        (0.95, 75, 12.7),
        (0.85, 300, 2.8),
        (0.80, 125, 6.4),
        (0.70, 150, 4.7),
        (0.60, 400, 1.5),
        (0.50, 50, 10.0),
        (0.45, 25, 18.0),
    ],
)
def test_theoretical_coverage_of_the_printed_table(
    solids: float, dry_um: float, printed: float
) -> None:
    # The table prints one decimal; 0.05 is half of it, and a little for its own rounding.
    found = coverage.theoretical_coverage_m2_l(dry_um, solids)
    assert found == pytest.approx(printed, abs=0.051)


def test_one_us_gallon_covers_1604_17_ft2_at_1_mil() -> None:
    # 231 in3 / 0.001 in / 144 in2 per ft2
    per_gal = coverage.theoretical_coverage_m2_l(UM_PER_MIL, 1.0) * FT2_GAL
    assert per_gal == pytest.approx(231 / 0.001 / 144, rel=1e-9)


@outside(
    coverage.practical_coverage_m2_l,
    coverage.material_for_area_ml,
    kind=Kind.DATA,
    source="paintcenter.org, October 2003, worked example: 52 % solids, transfer efficiency 30 %, "
    "1.5 mil, "
    "1 gal covers 167 ft2",
)
def test_a_gallon_of_52_percent_at_30_percent_transfer_covers_167_ft2() -> None:
    found = coverage.practical_coverage_m2_l(1.5 * UM_PER_MIL, 0.52, 0.30)
    assert isinstance(found, Value)
    assert found.value * FT2_GAL == pytest.approx(167, abs=0.5)  # printed to a whole foot
    # The other way: 167 ft2 of it needs one gallon.
    area_m2 = (167 * UNITS.ft**2).to("m^2").magnitude
    needed = coverage.material_for_area_ml(area_m2, 1.5 * UM_PER_MIL / 0.52, 1, 0.30)
    assert isinstance(needed, Value)
    gallons = (needed.value * UNITS.ml).to("gallon").magnitude
    assert gallons == pytest.approx(1.0, rel=0.003)  # half a foot in 167


def test_a_band_of_transfer_efficiency_gives_an_estimate_with_the_right_ends() -> None:
    needed = coverage.material_for_area_ml(2.0, 50.0, 2, HVLP_LARGE_PARTS, 0.1, 50.0)
    assert isinstance(needed, Estimate)
    assert needed.low < needed.likely < needed.high
    worst = coverage.material_for_area_ml(2.0, 50.0, 2, HVLP_LARGE_PARTS.low, 0.1, 50.0)
    assert isinstance(worst, Value)
    assert needed.high == pytest.approx(worst.value)
    assert "transfer efficiency" in needed.rule
    goes = coverage.practical_coverage_m2_l(50, 0.5, HVLP_LARGE_PARTS)
    assert isinstance(goes, Estimate)
    assert (goes.low, goes.likely, goes.high) == pytest.approx((6.0, 6.5, 7.0))


@given(
    area=st.floats(0.01, 100),
    wet=st.floats(1, 500),
    coats=st.integers(1, 6),
    te=st.floats(0.05, 1.0),
    loss=st.floats(0, 0.5),
    left=st.floats(0, 500),
)
def test_of_the_material_what_is_not_lost_is_the_film(
    area: float, wet: float, coats: int, te: float, loss: float, left: float
) -> None:
    """Mass balance, forwards: lose, keep back, spray; what lands is area x film."""
    needed = coverage.material_for_area_ml(area, wet, coats, te, loss, left)
    assert isinstance(needed, Value)
    landed_ml = (needed.value * (1 - loss) - left) * te
    film = (landed_ml * UNITS.ml / (area * UNITS.m**2)).to("micrometer").magnitude
    # `left` may be a thousand times the film: its rounding shows in what remains.
    assert film == pytest.approx(wet * coats, rel=1e-6)


@outside(
    coverage.cups_to_fill,
    kind=Kind.THEOREM,
    source="Euclid VII, division with remainder: Python's divmod",
)
@given(st.integers(0, 20000), st.integers(50, 1000))
def test_cups(material: int, cup: int) -> None:
    fills = coverage.cups_to_fill(material, cup)
    whole, rest = divmod(material, cup)
    assert fills.cups == whole + (rest > 0)
    assert fills.last_ml == pytest.approx(rest or (cup if whole else 0))
    assert max(0, fills.cups - 1) * cup + fills.last_ml == pytest.approx(material)


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (lambda: coverage.theoretical_coverage_m2_l(0, 0.5), "dry film must be above 0 um"),
        (lambda: coverage.practical_coverage_m2_l(50, 0.5, 65), "Transfer efficiency must be 1"),
        (lambda: coverage.practical_coverage_m2_l(50, 0.5, 0.5, 1.0), "lost before the gun"),
        (lambda: coverage.material_for_area_ml(1, 50, 0, 0.5), "number of coats must be 1"),
        (lambda: coverage.cups_to_fill(100, 0), "cup must be above 0 ml"),
    ],
)
def test_bad_input_gets_a_sentence(call, says: str) -> None:
    with pytest.raises(BadInput, match=says):
        call()
