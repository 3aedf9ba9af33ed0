"""Control limits of single figures, against worked examples, a library and a theorem."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import integrate, stats

from booth.trade.repeatability import individuals
from booth.trade.repeatability.individuals import control_limits
from booth.trade.result import BadInput
from tests.trade.outside import Kind, outside

#: NIST/SEMATECH 6.3.2.2: flow rate of ten batches.
FLOW = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1]
#: The manual of a statistics package, its chart of individual diameters of 30 belts.
BELTS = [
    *(24.05, 23.99, 23.95, 23.93, 23.97, 24.02, 24.06, 24.10, 23.98, 24.03),
    *(23.91, 24.06, 24.06, 23.96, 23.98, 24.06, 24.01, 24.00, 23.93, 23.92),
    *(24.09, 24.11, 24.05, 23.98, 23.98, 24.06, 24.02, 24.06, 23.97, 23.96),
]
FIGURES = st.lists(st.floats(-1e6, 1e6).map(lambda each: round(each, 3)), min_size=5, max_size=60)


@outside(
    control_limits,
    kind=Kind.DATA,
    source="NIST/SEMATECH e-Handbook of Statistical Methods 6.3.2.2, worked example (flow rate of ten "
    "batches): mean 50.81, mean moving range 1.8778, limits 45.8159 and 55.8041",
)
def test_the_ten_batches_of_the_handbook() -> None:
    found = control_limits(FLOW)
    assert found.mean == pytest.approx(50.81, abs=1e-9)
    # As many places as are printed there.
    assert found.moving_range == pytest.approx(1.8778, abs=5e-5)
    assert found.lower == pytest.approx(45.8159, abs=5e-5)
    assert found.upper == pytest.approx(55.8041, abs=5e-5)
    assert found.outside == () and found.provisional, "ten are fewer than twenty"


@outside(
    control_limits,
    kind=Kind.DATA,
    source="the manual of a statistics package, its printed limits for 30 diameters: mean 24.0083, "
    "mean moving range 0.056897, limits 23.8571 and 24.1596",
)
def test_thirty_diameters_of_a_printed_example() -> None:
    found = control_limits(BELTS)
    assert found.mean == pytest.approx(24.0083, abs=5e-5)
    assert found.moving_range == pytest.approx(0.056897, abs=5e-7)
    # It takes d2 exactly, this program the 1.128 of the tables: 0.03 % of a reach of 0.15.
    assert found.lower == pytest.approx(23.8571, abs=1e-4)
    assert found.upper == pytest.approx(24.1596, abs=1e-4)
    assert not found.provisional and found.note == ""


@outside(
    control_limits,
    kind=Kind.LIBRARY,
    source="numpy (diff, abs, mean) and scipy.integrate: expected range of two standard normal figures",
)
@given(FIGURES)
def test_any_figures_as_a_library_reckons_them(figures: list[float]) -> None:
    # What two normal figures are apart by on the average: their difference has variance 2.
    d2, _ = integrate.quad(lambda x: 2 * x * stats.norm.pdf(x, scale=math.sqrt(2)), 0, 20)
    sigma = np.abs(np.diff(figures)).mean() / d2
    found = control_limits(figures)
    assert found.mean == pytest.approx(np.mean(figures), abs=1e-6)
    # The tables round d2 to 1.128: 0.034 % wider.
    assert found.lower is not None and found.upper is not None
    assert found.upper - found.mean == pytest.approx(3 * sigma, rel=4e-4, abs=1e-6)
    assert found.mean - found.lower == pytest.approx(3 * sigma, rel=4e-4, abs=1e-6)
    beyond = [
        place
        for place, each in enumerate(figures, 1)
        if abs(each - np.mean(figures)) > 3 * sigma * (1 + 4e-4) + 1e-6
    ]
    assert set(beyond) <= set(found.outside)


def test_one_far_off_is_named_by_its_place() -> None:
    found = control_limits([*[20.0, 20.4] * 10, 27.0, *[20.0, 20.4] * 5])
    assert found.outside == (21,)


def test_figures_that_are_all_the_same_are_all_inside() -> None:
    found = control_limits([0.1] * 30)
    assert found.outside == () and found.moving_range == 0.0


@pytest.mark.parametrize("count", range(1, individuals.LEAST_FIGURES))
def test_too_few_have_a_mean_and_no_limits_and_say_why(count: int) -> None:
    found = control_limits(FLOW[:count])
    assert found.lower is None and found.upper is None and found.outside == ()
    assert "5 figures or more" in found.note and not found.provisional


def test_from_twenty_on_nothing_is_provisional() -> None:
    assert (
        control_limits(BELTS[:19]).provisional and "19 figures" in control_limits(BELTS[:19]).note
    )
    assert not control_limits(BELTS[:20]).provisional


def test_none_at_all_is_refused() -> None:
    with pytest.raises(BadInput, match="at least one"):
        control_limits([])
