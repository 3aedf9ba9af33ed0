"""What each step says where the window has room: tries on the scale of its field, charts to scale."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy.optimize import isotonic_regression

from booth.instruments.large.tries import scale_over
from booth.job.mixture import stages
from booth.units import Kind, System
from booth.words.shown import Page, Section, Timeline, Tone
from booth.words.tried import AtLarge, Chart, Tries
from tests.instruments.at_bench import AtBench
from tests.long_day import CATCHES, FANS, PARTS, PASSES, RUNS, WEATHER, clear, long_day


def on(step: str, system: System = System.METRIC) -> AtBench:
    return AtBench(step, profile=clear(), before=long_day, parts=PARTS, system=system)


def large(at: AtBench) -> AtLarge:
    return at.bench.instrument.at_large(at.now, at.rows.values)


def tries(at: AtBench) -> Tries:
    (found,) = (each for each in large(at).beside if isinstance(each, Tries))
    return found


def chart(at: AtBench) -> Chart:
    found = tries(at).chart
    assert found is not None
    return found


def test_nothing_was_tried_is_nothing_to_show() -> None:
    for step in (
        "weather",
        "amount",
        "mix",
        "efflux",
        "thin",
        "air",
        "catch",
        "fan",
        "coats",
        "film",
    ):
        assert large(AtBench(step)).beside == (), step


def test_every_run_of_the_mix_stands_on_the_scale_of_the_field() -> None:
    at = on("efflux")
    found = tries(at)
    assert [each.figure for each in found.tries] == [f"{seconds:.1f}" for _, seconds in RUNS]
    assert found.title == "runs of batch 1, mixed 13:30"
    span = at.now.profile.efflux
    assert span is not None and span.target_s.low is not None and span.target_s.high is not None
    for each, (_, seconds) in zip(found.tries, RUNS, strict=True):
        is_in = span.target_s.low <= seconds <= span.target_s.high
        assert (each.tone is Tone.GOOD) == is_in
        assert each.edge is not None and found.band is not None
        assert (found.band.low <= each.edge <= found.band.high) == is_in  # type: ignore[operator]
    # Mean and spread of the last stage, by numpy.
    last = [seconds for _, seconds in RUNS[-3:]]
    assert found.notes[0] == (
        f"mean of the last 3 {np.mean(last):.1f} s, spread {np.ptp(last):.1f} s"
    )


def test_seconds_over_thinner_with_the_line_through_them() -> None:
    at = on("thin")
    found = chart(at)
    means = [np.mean(s) for s in ([27.8, 28.4], [24.2, 24.6], [21.4, 21.9, 21.6])]
    assert [spot.said for spot in found.spots] == [f"{mean:.1f}" for mean in means]
    # To scale: shares of the chart over what they stand for lie on one straight line, by numpy.
    shares = [stage.fraction for stage in stages(at.job)]
    for ends, values in (
        ([spot.x for spot in found.spots], shares),
        ([spot.y for spot in found.spots], means),
    ):
        slope, start = np.polyfit(values, ends, 1)
        assert slope > 0
        assert np.allclose(np.polyval((slope, start), values), ends, atol=1e-9)
    # Least squares in ln viscosity over the thinner's share (numpy); back to seconds by the formula
    # of ASTM D1200 for Ford No. 4: nu = 3.85 (t - 4.49).
    x = np.array(shares) / (1 + np.array(shares))
    fall, start = np.polyfit(x, np.log(3.85 * (np.array(means) - 4.49)), 1)
    first, last = found.curves[0].points[0], found.curves[0].points[-1]
    slope, begin = np.polyfit(means, [spot.y for spot in found.spots], 1)
    for (_, y), share in ((first, x[0]), (last, x[-1])):
        seconds = math.exp(start + fall * share) / 3.85 + 4.49
        assert y == pytest.approx(np.polyval((slope, begin), seconds), abs=1e-6)
    assert found.low is not None and found.high is not None and found.low < found.high


def test_catches_over_turns_with_the_rising_curve_of_the_coating() -> None:
    at = on("catch")
    found, told = chart(at), tries(at)
    assert [each.figure for each in told.tries] == [
        # Of water nothing is wanted, so that its unit stands with it and not at a band.
        f"{ml:.0f}{' ml/min' if liquid == 'water' else ''}"
        for _, ml, liquid, _ in CATCHES
    ]
    assert [spot.mark for spot in found.spots] == ["○", "■", "■", "■"], "told by shape"
    # Closest rising curve by scipy: 172 and 165 pool to their mean.
    paint = sorted((turns, ml) for _, ml, liquid, turns in CATCHES if liquid == "paint")
    smooth = isotonic_regression([ml for _, ml in paint]).x
    slope, start = np.polyfit([ml for _, ml, _, _ in CATCHES], [spot.y for spot in found.spots], 1)
    assert np.allclose([y for _, y in found.curves[0].points], np.polyval((slope, start), smooth))
    wide, begin = np.polyfit([t for *_, t in CATCHES], [spot.x for spot in found.spots], 1)
    turns = [turns for turns, _ in paint]
    assert np.allclose([x for x, _ in found.curves[0].points], np.polyval((wide, begin), turns))


def test_what_catches_teach_stays_in_sight_beside_them() -> None:
    at = on("catch")
    assert large(at).record and set(large(at).record) <= set(at.record)


def test_readings_of_the_day_as_lines_over_its_hours() -> None:
    at = on("weather")
    found, told = chart(at), tries(at)
    assert [curve.name.rsplit(" ", 1)[0] for curve in found.curves] == ["air", "part", "dew point"]
    assert [spot.mark for spot in found.spots[::3]] == ["○", "■", "▬"]
    x = [spot.x for spot in found.spots[:3]]
    minutes = [-ago for ago, *_ in WEATHER]
    assert np.allclose(np.diff(x) / np.diff(minutes), (x[2] - x[0]) / (minutes[2] - minutes[0]))
    # Dew points by the Magnus formula with Sonntag's constants (1990, from memory): within 0.1 K of
    # those used here, which is less than the last digit of the margin and a rounding.
    for each, (_, air, humidity, part) in zip(told.tries, WEATHER, strict=True):
        gamma = math.log(humidity / 100) + 17.62 * air / (243.12 + air)
        dew = 243.12 * gamma / (17.62 - gamma)
        assert float(each.figure) == pytest.approx(part - dew, abs=0.15)
        assert each.tone is Tone.GOOD


def test_a_pass_is_held_against_the_time_in_which_it_lays_the_film_wanted() -> None:
    at = on("pace")
    found = tries(at)
    assert [each.figure for each in found.tries] == [f"{seconds:.1f}" for _, seconds in PASSES]
    # Conservation of volume: twice the time over the same length is twice the film, so the band of
    # the times has the ratio of the band of the film.
    film = at.now.profile.film.wet_um
    assert film is not None and film.low is not None and film.high is not None
    assert found.band is not None
    low, high = float(found.band.low_words), float(found.band.high_words)
    # Both are rounded to a tenth of a second: half of one at either end.
    assert high / low == pytest.approx(film.high / film.low, abs=0.05 * (1 + high / low) / low)


def test_a_reading_of_the_gauge_is_what_the_teeth_leave_open() -> None:
    found = tries(on("film"))
    assert [each.figure for each in found.tries] == ["50-63", "40-50"]
    for each in found.tries:
        assert each.edge is not None and each.upto is not None and each.edge < each.upto
    assert found.tries[0].edge == found.tries[1].upto, "one tooth, one place"
    assert [each.tone for each in found.tries] == [Tone.PLAIN, Tone.CAUTION]


def test_widths_of_the_fan_and_pressures_on_the_wanted_band() -> None:
    fans = tries(on("fan"))
    assert [each.figure for each in fans.tries] == [f"{width:.0f}" for _, width, _ in FANS]
    assert fans.tries[1].edge < fans.tries[2].edge and "2.75 turns" in fans.tries[2].text  # type: ignore[operator]
    airs = tries(on("air"))
    assert [(each.figure, each.tone) for each in airs.tries] == [
        ("2.30", Tone.CAUTION),
        ("1.98", Tone.GOOD),
    ]


def test_papers_with_what_was_turned_between_them_and_the_film_they_make() -> None:
    at = on("pattern")
    at.fill("zones", "3567653")
    found = tries(at)
    assert ["heavy in the middle" in found.tries[0].text, found.tries[0].figure] == [True, ""]
    assert found.tries[1].figure == "fan 2 to 2.5 turns"
    assert found.tries[2].figure == "fan 2.5 to 2.75 turns"
    assert [each.tone for each in found.tries] == [Tone.CAUTION, Tone.GOOD, Tone.GOOD]
    assert any(isinstance(each, Section) and each.samples for each in large(at).beside)
    at.go_to("overlap")
    assert not any(isinstance(each, Section) for each in large(at).beside), "it is the picture now"


def test_pours_as_bars_to_their_marks() -> None:
    mixed = tries(on("mix"))
    assert [each.edge for each in mixed.tries] == pytest.approx([364 / 600, 546 / 600, 1.0])
    at = AtBench("mix")
    at.fill("amount", "660 ml")
    poured = tries(at)
    assert poured.tries[0].tone is Tone.READY
    assert poured.tries[-1].edge == pytest.approx(1.0)
    at.press("space")
    assert tries(at).tries[0].tone is Tone.GOOD


def test_areas_as_their_shares_of_all() -> None:
    assert [each.edge for each in tries(on("amount")).tries] == [0.25, 0.75]


def test_the_day_is_the_line_that_the_plan_draws() -> None:
    for step in ("coats", "result"):
        at = on(step)
        (line,) = large(at).beside
        assert isinstance(line, Timeline)
        assert [row.name for row in line.rows][:3] == list(PARTS)
        assert line in on("plan").bench.instrument.picture(on("plan").now, {})


def test_all_cautions_stand_beside_the_one_to_read() -> None:
    at = AtBench("cautions")
    (listed,) = large(at).beside
    assert isinstance(listed, Page) and large(at).page
    before = len(listed.paragraphs)
    assert [style for style, _ in listed.paragraphs] == ["now", *["text"] * (before - 1)]
    at.press("space")
    (listed,) = large(at).beside
    assert isinstance(listed, Page)
    assert [style for style, _ in listed.paragraphs][:2] == ["done", "now"]


def test_in_the_other_units_places_are_the_same_and_words_are_not() -> None:
    for step in ("air", "fan", "film", "catch"):
        metric, us = tries(on(step)), tries(on(step, System.US))
        assert [e.edge for e in metric.tries] == pytest.approx([e.edge for e in us.tries])
        assert [e.figure for e in metric.tries] != [e.figure for e in us.tries]


@pytest.mark.parametrize("values", [(5.0,), (0.0, 0.0), (20.0, 28.4), (-5.0, 30.0), (1e6, 2e6)])
def test_a_scale_holds_all_that_is_on_it_with_round_figures_along_it(
    values: tuple[float, ...],
) -> None:
    scale = scale_over(values, None, System.METRIC)
    assert all(0 <= scale.share(value) <= 1 for value in values)
    ticks = scale.ticks()
    assert 2 <= len(ticks) <= 6
    shares = [share for share, _ in ticks]
    assert np.allclose(np.diff(shares), shares[1] - shares[0]) and 0 <= shares[0] < shares[-1] <= 1
    for share, words in ticks:
        assert scale.share(float(words)) == pytest.approx(share, abs=1e-9)


def test_seconds_are_shown_as_they_are_read() -> None:
    assert scale_over((20.0, 30.0), Kind.TIME, System.US) == scale_over(
        (20.0, 30.0), Kind.TIME, System.METRIC
    )
