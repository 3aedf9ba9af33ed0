"""The mesh of a strainer against a reference library's table of sieves, and a series of numbers."""

from __future__ import annotations

import pytest
from fluids.particle_size_distribution import ASTM_E11_sieves

from booth.trade.mixing import strainer
from booth.trade.result import Outside
from tests.trade.outside import Kind, outside
from tests.trade.said import plain


@outside(
    strainer.sieve_number,
    kind=Kind.LIBRARY,
    source="fluids.particle_size_distribution.ASTM_E11_sieves",
)
@pytest.mark.parametrize(
    "sieve", [each for each in ASTM_E11_sieves.values() if 45e-6 <= each.opening <= 1e-3]
)
def test_every_sieve_by_its_opening(sieve: object) -> None:
    opening_um = round(sieve.opening * 1e6)  # type: ignore[attr-defined]
    number = int(sieve.old_designation.removeprefix("No. "))  # type: ignore[attr-defined]
    assert strainer.sieve_number(opening_um) == number


# ISO 3, series R40/3 (the openings of ISO 565): 10^(3n/40).
def test_openings_are_preferred_numbers() -> None:
    series = [10 ** (3 - 3 * n / 40) for n in range(len(strainer.SIEVES))]
    # Preferred numbers are rounded, by up to 1.3 % (ISO 3), and a sieve once more, to a micrometre.
    for opening, exact in zip(strainer.SIEVES, series, strict=True):
        assert opening == pytest.approx(exact, rel=0.013 + 0.5 / opening)


@pytest.mark.parametrize("opening_um", [190.0, 280.0, 125.0 + 3.0])
def test_a_paint_strainer_has_no_sieve_s_number(opening_um: float) -> None:
    found = strainer.sieve_number(opening_um)
    assert isinstance(found, Outside) and f"{opening_um:g} um" in plain(found.reason)
