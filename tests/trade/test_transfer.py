"""Transfer efficiency: the published defaults, and the efficiency that a film implies."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.trade.film import transfer_efficiency
from booth.trade.film.gun_speed import mean_wet_film_um
from booth.trade.film.wet_gauge import FilmInterval
from booth.trade.result import BadInput, Estimate, Outside, Value
from tests.reference import UNITS
from tests.trade.outside import Kind, outside


@outside(
    transfer_efficiency.default_band,
    kind=Kind.COPIED,
    source="South Coast AQMD, spray equipment transfer efficiency: 65 %; 40 CFR 60.313: 0.25 for "
    "air atomized spray",
)
def test_the_default_bands_hold_the_published_figures() -> None:
    hvlp = transfer_efficiency.default_band(hvlp=True)
    assert hvlp.likely == 0.65
    assert "South Coast AQMD" in hvlp.source
    conventional = transfer_efficiency.default_band(hvlp=False)
    assert conventional.low <= 0.25 <= conventional.high
    assert "40 CFR 60.313" in conventional.source
    small = transfer_efficiency.default_band(hvlp=True, large_flat_part=False)
    assert (small.low, small.high) == (0.20, 0.50)  # common practice, no source
    assert "common practice, no source" in small.source


@outside(
    transfer_efficiency.transfer_efficiency_from_film,
    kind=Kind.LIBRARY,
    source="pint: film x speed x pitch over delivery, as a pure number",
)
@given(
    low=st.floats(1, 100),
    wider=st.floats(0.1, 50),
    flow=st.floats(300, 900),
    fan=st.floats(100, 350),
    overlap=st.floats(0, 0.75),
    speed=st.floats(100, 900),
)
def test_efficiency_is_what_is_on_the_panel_over_what_left_the_gun(
    low: float, wider: float, flow: float, fan: float, overlap: float, speed: float
) -> None:
    def share(film_um: float) -> float:
        per_time = film_um * UNITS.um * speed * UNITS.mm / UNITS.s * fan * (1 - overlap) * UNITS.mm
        return (per_time / (flow * UNITS.ml / UNITS.min)).to("").magnitude

    found = transfer_efficiency.transfer_efficiency_from_film(
        FilmInterval(low, low + wider), flow, fan, overlap, speed
    )
    if share(low) > 1:
        assert isinstance(found, Outside)
        return
    assert isinstance(found, Estimate)
    assert found.low == pytest.approx(share(low), rel=1e-9)
    assert found.high == pytest.approx(min(1.0, share(low + wider)), rel=1e-9)
    assert found.low <= found.likely <= found.high


@given(te=st.floats(0.05, 1.0), flow=st.floats(50, 900), speed=st.floats(100, 900))
def test_the_film_of_an_efficiency_gives_the_efficiency_back(
    te: float, flow: float, speed: float
) -> None:
    film = mean_wet_film_um(flow, 250, 0.5, speed, te)
    assert isinstance(film, Value)
    exact = FilmInterval(film.value * (1 - 1e-12), film.value)
    back = transfer_efficiency.transfer_efficiency_from_film(exact, flow, 250, 0.5, speed)
    assert isinstance(back, Estimate)
    assert back.likely == pytest.approx(te, rel=1e-9)


def test_what_the_gauge_leaves_open_stays_open() -> None:
    all_wet = transfer_efficiency.transfer_efficiency_from_film(
        FilmInterval(40, math.inf), 200, 250, 0.5, 400
    )
    assert isinstance(all_wet, Estimate)
    assert (all_wet.low, all_wet.high) == (pytest.approx(0.6), 1.0)
    bare = transfer_efficiency.transfer_efficiency_from_film(FilmInterval(0, 0), 200, 250, 0.5, 400)
    assert isinstance(bare, Outside)
    doubled = transfer_efficiency.transfer_efficiency_from_film(
        FilmInterval(80, 100), 200, 250, 0.5, 400
    )
    assert isinstance(doubled, Outside)
    assert "timed pass" in doubled.advice


def test_bands_and_numbers_out_of_range_get_a_sentence() -> None:
    with pytest.raises(BadInput, match="band of transfer efficiency"):
        transfer_efficiency.EfficiencyBand(0.7, 0.6, 0.8, "upside down")
    with pytest.raises(BadInput, match="band of transfer efficiency"):
        transfer_efficiency.EfficiencyBand(0.0, 0.6, 0.8, "nothing lands")
    with pytest.raises(BadInput, match="delivery must be above 0"):
        transfer_efficiency.transfer_efficiency_from_film(FilmInterval(40, 50), 0, 250, 0.5, 400)
