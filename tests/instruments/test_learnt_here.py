"""What this shop has learnt, told at the steps; the fill of the receiver, timed. All values are invented."""

from __future__ import annotations

import random
from pathlib import Path

import pytest

from booth.instruments.learnt_here import of_amount
from booth.learnt.past_jobs import PastJobs
from booth.log import events as ev
from booth.shop.model import Compressor, Gun, Shop
from booth.trade.cups.cup_names import cup_named
from booth.units import System
from booth.words.event_words import words
from tests.instruments.at_bench import AtBench
from tests.invented_year import GUNS, PRODUCT, Truth, events_of, write_year
from tests.job.make import at

COMPRESSOR = Compressor(receiver_l=50, flow_l_min=130, cut_in_kpa=600, cut_out_kpa=800)
FORD = cup_named("Ford #4").key
SHOP = Shop(guns=(Gun(GUNS[0], tip_mm=1.4, hvlp=True),), compressor=COMPRESSOR)


@pytest.fixture(scope="module")
def year(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("year")
    write_year(folder, jobs=36)
    return folder


def bench(step: str, year: Path, *kinds: type[ev.Event], shop: Shop = SHOP) -> AtBench:
    """A bench on which these kinds of a job of that shop were kept already."""
    own = events_of(Truth(), random.Random(77), 400)
    return AtBench(
        step,
        profile=PRODUCT,
        shop=shop,
        past=PastJobs(year),
        before=lambda clock: [each for each in own if isinstance(each, kinds)],
    )


def told(b: AtBench) -> str:
    return "\n".join((*b.readout.lines, *b.record))


def test_the_catch_says_what_this_setting_gave_and_on_how_many_catches_it_rests(year: Path) -> None:
    b = bench("catch", year, ev.CatchMade)
    said = told(b)
    assert "ml/min at this setting, 6 catches" in said
    # A mix that runs otherwise today: what was caught then says nothing of it, and that is said.
    b.keep(ev.EffluxTimed(n=0, at=b.now.now, cup=FORD, seconds=60.0))
    assert "none here at this setting and viscosity; 6 jobs at another" in told(b)


def test_a_catch_of_water_says_what_of_it_the_coating_has(year: Path) -> None:
    b = bench("catch", year)
    b.keep(next(e for e in events_of(Truth(), random.Random(1)) if isinstance(e, ev.CatchMade)))
    (line,) = [line for line in b.record if "the water" in line]
    assert line.startswith("coating here: 0.7") and "pairs" in line


def test_turns_to_try_rest_on_so_many_catches(year: Path) -> None:
    b = bench("catch", year)
    (line,) = [line for line in b.record if line.startswith("for 200 ml/min")]
    # Half of the 36 jobs are the grey gun's; the rehearsals, every tenth, fall to the blue one.
    assert line.endswith("; by 18 catches")
    b.keep(ev.EffluxTimed(n=0, at=b.now.now, cup=FORD, seconds=20.0))
    assert any("; by 18 catches, 18 of another viscosity" in line for line in b.record)


def test_what_to_begin_with_is_offered_at_the_step_thin(year: Path) -> None:
    b = bench("thin", year, ev.BatchMixed)
    (line,) = [line for line in b.record if "to begin with" in line]
    assert "thinner reached the target here" in line and "mixes" in line and "%" in line
    # The sheet's own limit and advice stand where they stood.
    assert PastJobs().learnt("thinner", ("trial",)) is None


def test_what_landed_here_stands_beside_the_usual_band(year: Path) -> None:
    b = bench("amount", year, ev.AreaAdded, ev.FanSet)
    b.press("space")
    (line,) = [line for line in b.readout.lines if "by the gauge" in line]
    assert "landed here" in line and "coats" in line
    assert any("lands: HVLP on large flat parts" in line for line in b.readout.lines)
    # The gauge does not know what flies past the edges of small ones: nothing is told of those.
    assert of_amount(b.now, large=True) and not of_amount(b.now, large=False)


def test_the_air_says_how_long_a_fill_took_against_the_rating(year: Path) -> None:
    b = bench("air", year)
    (line,) = [line for line in b.readout.lines if "timed here" in line]
    # 50 l x 200 kPa / 101.325 kPa / 130 l/min = 45.55 s at constant temperature, 1.4 times sooner at
    # the soonest: 32.5 s (Boyle's law and the ratio of specific heats, as the trade has them).
    assert "by its rating 32.5-45.6 s (estimate)" in line.replace(" to ", "-") and "timings" in line


def test_space_times_a_fill_from_start_to_stop(tmp_path: Path) -> None:
    b = bench("air", tmp_path)
    assert b.keys["Space"] == "compressor starts"
    b.press("space")
    assert b.readout.word == "FILLING" and b.keys["Space"] == "drop this timing"
    b.pass_time(60.0)
    assert b.readout.figure.startswith("1:0") and b.keys["Space"] == "compressor stops"
    assert "Space stops it" in b.bench.instrument.busy(b.now)
    b.press("space")
    timed = b.log[-1]
    assert isinstance(timed, ev.RecoveryTimed)
    assert timed.seconds == pytest.approx(61.0, abs=0.11)
    assert (timed.cut_in.value, timed.cut_out.value, timed.receiver.value) == (600, 800, 50)
    assert timed.rated is not None and timed.rated.value == 130
    assert "receiver filled from 6.00 bar to 8.00 bar in 61.0 s" in words(timed, System.METRIC)
    assert any("receiver filled in 61.0 s; rated" in line for line in b.record)
    # Backspace voids it by name, and once more brings it back.
    b.press("backspace")
    assert isinstance(b.log[-1], ev.Voided) and "receiver filled" in b.said
    b.press("backspace")
    assert isinstance(b.log[-1], ev.Restored)


def test_a_bounce_is_no_fill_and_one_that_was_forgotten_neither(tmp_path: Path) -> None:
    b = bench("air", tmp_path)
    b.press("space")
    b.pass_time(1.0)
    b.press("space")
    assert isinstance(b.log[-1], ev.StopwatchDropped) and "so few seconds" in b.said
    b.press("space")
    b.pass_time(2 * 3600.0)
    assert b.readout.word == "FORGOTTEN"
    b.press("space")
    assert isinstance(b.log[-1], ev.StopwatchDropped)
    assert not b.job.of(ev.RecoveryTimed)


def test_without_a_compressor_in_the_shop_file_space_is_a_space(tmp_path: Path) -> None:
    b = bench("air", tmp_path, shop=Shop())
    b.type("28 psi")
    assert b.row("inlet").text == "28 psi" and "Space" not in b.keys
    # With one, the first space after a bare number is the one before its unit.
    own = bench("air", tmp_path)
    own.type("28 psi")
    assert own.row("inlet").text == "28 psi" and not own.log


def test_the_running_fill_outlives_the_program(tmp_path: Path) -> None:
    b = bench("air", tmp_path)
    b.press("space")
    again = AtBench("air", profile=PRODUCT, shop=SHOP, before=lambda clock: b.log)
    assert again.readout.word == "FILLING"
    assert at(0)  # the moment of the log, not of the program
