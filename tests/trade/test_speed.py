"""Film and pace against a simulated panel, pint, and counted strips."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.trade.film import gun_speed
from booth.trade.film.transfer_efficiency import HVLP_LARGE_PARTS, EfficiencyBand
from booth.trade.result import BadInput, Estimate, Value
from tests.reference import UNITS
from tests.trade.outside import Kind, outside

flow = st.floats(20, 900)
fan = st.floats(50, 400)
overlap = st.floats(0, 0.9)
pace = st.floats(50, 1500)
share = st.floats(0.05, 1.0)


@outside(
    gun_speed.mean_wet_film_um,
    kind=Kind.SIMULATION,
    source="conservation of volume: a panel painted droplet by droplet with numpy",
)
def test_the_film_of_a_panel_painted_droplet_by_droplet() -> None:
    """A gun drops a fixed volume at random places of its fan, in passes; the film is weighed."""
    delivery, width, over, pace_mm_s, te = 200.0, 250.0, 0.5, 400.0, 0.65
    rng = np.random.default_rng(20)
    length, passes, per_pass = 1000.0, 9, 40_000
    pitch = width / 2
    drop_mm3 = delivery * 1000 / 60 * te * (length / pace_mm_s) / per_pass
    across = np.concatenate(
        [k * pitch + width * rng.beta(2, 2, per_pass) for k in range(passes)]
    )  # a parabola across the fan
    along = rng.uniform(0, length, across.size)
    # A whole number of pitches well inside, away from all four edges.
    a, b = 3 * pitch, 7 * pitch
    inside = (across > a) & (across < b) & (along > 200) & (along < 800)
    film_um = inside.sum() * drop_mm3 / ((b - a) * 600) * 1000
    ours = gun_speed.mean_wet_film_um(delivery, width, over, pace_mm_s, te)
    assert isinstance(ours, Value)
    # Some 96,000 drops are counted: their number scatters by 0.3 %; four of that.
    assert ours.value == pytest.approx(film_um, rel=0.012)
    assert ours.value == pytest.approx(43.33, abs=0.005)


@outside(
    gun_speed.speed_for_wet_film_mm_s,
    gun_speed.mean_wet_film_um,
    kind=Kind.LIBRARY,
    source="pint: delivery over film x pitch",
)
@given(flow, fan, overlap, pace, share)
def test_film_and_speed_agree_with_pint_and_with_each_other(
    q: float, w: float, o: float, v: float, te: float
) -> None:
    film = gun_speed.mean_wet_film_um(q, w, o, v, te)
    assert isinstance(film, Value)
    expected = q * UNITS.ml / UNITS.min * te / (v * UNITS.mm / UNITS.s * w * (1 - o) * UNITS.mm)
    assert film.value == pytest.approx(expected.to("um").magnitude, rel=1e-9)
    back = gun_speed.speed_for_wet_film_mm_s(film.value, q, w, o, te)
    assert isinstance(back, Value)
    assert back.value == pytest.approx(v, rel=1e-9)


def test_a_band_of_efficiency_makes_an_estimate() -> None:
    film = gun_speed.mean_wet_film_um(200, 250, 0.5, 400, HVLP_LARGE_PARTS)
    assert isinstance(film, Estimate)
    assert (film.low, film.likely, film.high) == pytest.approx((40.0, 130 / 3, 140 / 3))
    pace_band = gun_speed.speed_for_wet_film_mm_s(50, 200, 250, 0.5, HVLP_LARGE_PARTS)
    assert isinstance(pace_band, Estimate)
    assert (pace_band.low, pace_band.likely, pace_band.high) == pytest.approx(
        (320, 346.6666667, 373.3333333)
    )
    assert "South Coast AQMD" in pace_band.rule
    narrow = EfficiencyBand(0.5, 0.5, 0.5, "one reading")
    assert isinstance(gun_speed.mean_wet_film_um(200, 250, 0.5, 400, narrow), Estimate)


@given(flow, fan, overlap, pace, share)
def test_the_film_rises_with_delivery_and_overlap_and_falls_with_speed_and_fan(
    q: float, w: float, o: float, v: float, te: float
) -> None:
    def film(*arguments: float) -> float:
        found = gun_speed.mean_wet_film_um(*arguments)
        assert isinstance(found, Value)
        return found.value

    here = film(q, w, o, v, te)
    assert film(q * 1.1, w, o, v, te) > here
    assert film(q, w, o + 0.05, v, te) > here
    assert film(q, w * 1.1, o, v, te) < here
    assert film(q, w, o, v * 1.1, te) < here


@outside(
    gun_speed.pitch_mm,
    kind=Kind.COPIED,
    source="MIL-HDBK-1110 9.6.8 and US Army TM 1-1500-344-23-2 A-8.3: half over half, so the pitch "
    "is half the fan",
)
def test_half_over_half_is_half_a_fan() -> None:
    assert gun_speed.pitch_mm(250, 0.5) == 125
    assert gun_speed.pitch_mm(250, 0) == 250


@outside(
    gun_speed.pass_time_s,
    gun_speed.speed_of_pass_mm_s,
    kind=Kind.LIBRARY,
    source="pint: length over time",
)
@given(st.floats(10, 5000), pace)
def test_time_and_speed_of_a_pass(length: float, v: float) -> None:
    took = gun_speed.pass_time_s(length, v)
    assert took == pytest.approx(
        (length * UNITS.mm / (v * UNITS.mm / UNITS.s)).to("s").magnitude, rel=1e-9
    )
    assert gun_speed.speed_of_pass_mm_s(length, took) == pytest.approx(v, rel=1e-9)
    assert gun_speed.pass_time_s(4 * 304.8, 304.8) == pytest.approx(4.0)


def _layers(passes: int, width: float, w: float, pitch: float) -> np.ndarray:
    """Number of passes over each of many places, the passes set symmetrically on the panel.

    The places are drawn, so that none lies on the very edge of a strip.
    """
    places = np.random.default_rng(7).uniform(0, width, 400)
    middle = width / 2
    centres = middle + pitch * (np.arange(passes) - (passes - 1) / 2)
    return (np.abs(places[:, None] - centres[None, :]) < w / 2).sum(axis=1)


@outside(
    gun_speed.passes_for_width,
    kind=Kind.SIMULATION,
    source="by enumeration: strips counted over the panel with numpy",
)
@given(st.floats(20, 2000), st.integers(2, 5))
def test_passes_put_every_layer_on_the_whole_width(width: float, n: int) -> None:
    """At an overlap of 1 - 1/n every place has to get n layers."""
    w = 250.0
    passes = gun_speed.passes_for_width(width, w, 1 - 1 / n)
    pitch = w / n
    assert _layers(passes, width, w, pitch).min() >= n
    # One pass less covers (n_passes) pitch - fan, which is narrower than the panel.
    if passes > 1:
        assert passes * pitch - w < width


def test_passes_at_50_percent_start_on_the_edge() -> None:
    assert gun_speed.passes_for_width(500, 250, 0.5) == 5
    assert gun_speed.passes_for_width(501, 250, 0.5) == 6
    assert gun_speed.passes_for_width(1, 250, 0.0) == 1


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (lambda: gun_speed.pitch_mm(0, 0.5), "width of the fan must be above 0 mm"),
        (lambda: gun_speed.pitch_mm(250, 50), "overlap must be below 1; 50 was given"),
        (lambda: gun_speed.mean_wet_film_um(200, 250, 0.5, 0, 0.6), "speed of the gun"),
        (lambda: gun_speed.mean_wet_film_um(200, 250, 0.5, 400, 1.2), "Transfer efficiency"),
        (lambda: gun_speed.speed_for_wet_film_mm_s(0, 200, 250, 0.5, 0.6), "wet film wanted"),
        (lambda: gun_speed.pass_time_s(100, 0), "speed of the gun must be above 0"),
        (lambda: gun_speed.speed_of_pass_mm_s(100, 0), "duration of the pass"),
        (lambda: gun_speed.passes_for_width(0, 250, 0.5), "width of the panel"),
    ],
)
def test_bad_input_gets_a_sentence(call, says: str) -> None:
    with pytest.raises(BadInput, match=says):
        call()
