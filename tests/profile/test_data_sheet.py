"""The forms in which a data sheet says things, each read, written back, and refused where it cannot be."""

from __future__ import annotations

import pytest

from booth.profile.model import AtTemperature, CoatPlan, NextProduct, Range, WaitRule
from booth.profile.save import write
from booth.units import System
from tests.profile.test_read import FILM, TOP, one, profile

# 70 F is 21.111 C: (70 - 32) / 1.8.
AT_70F = pytest.approx((70 - 32) / 1.8)


def wait(text: str) -> WaitRule:
    found = profile(f"{TOP}{FILM}[waits]\nflash_off = {text}\n").waits.flash_off
    assert found is not None
    return found


WAITS = [
    ('{ time = "10 min", at = "20 C" }', WaitRule((AtTemperature(20.0, 600.0),))),
    ('{ time = "10 to 15 min", at = "20 C" }', WaitRule((AtTemperature(20.0, 600.0, 900.0),))),
    (
        '{ time = "10 to 15 min", at = "20 C", humidity = "50 %" }',
        WaitRule((AtTemperature(20.0, 600.0, 900.0, 50.0),)),
    ),
    ('{ until = "matt all over" }', WaitRule((), "matt all over")),
    (
        '{ time = "10 min", at = "20 C", until = "matt all over" }',
        WaitRule((AtTemperature(20.0, 600.0),), "matt all over"),
    ),
    (
        '{ until = "dry", table = [ { at = "10 C", humidity = 50, time = "20 to 30 min" }, '
        '{ at = "10 C", humidity = 75, time = "1 h" }, { at = "20 C", humidity = 50, time = "10 min" } ] }',
        WaitRule(
            (
                AtTemperature(10.0, 1200.0, 1800.0, 50.0),
                AtTemperature(10.0, 3600.0, None, 75.0),
                AtTemperature(20.0, 600.0, None, 50.0),
            ),
            "dry",
        ),
    ),
]


@pytest.mark.parametrize(("text", "rule"), WAITS, ids=[text for text, _ in WAITS])
def test_a_wait_is_read_and_written_in_each_of_its_forms(text: str, rule: WaitRule) -> None:
    assert wait(text) == rule
    whole = profile(f"{TOP}{FILM}[waits]\nflash_off = {text}\n")
    for system in System:
        assert profile(write(whole, system)).waits == whole.waits


BARE = [
    ("film.coats", "coats = 2", Range(2, 2)),
    ("film.coats", 'coats = "2"', Range(2, 2)),
    ("film.coats", 'coats = "1 to 2"', Range(1, 2)),
    ("film.volume_solids_percent", "coats = 2\nvolume_solids = 42", Range(42, 42)),
    ("film.volume_solids_percent", 'coats = 2\nvolume_solids = "40 to 44 %"', Range(40, 44)),
    ("gun.overlap_percent", "coats = 2\n[gun]\noverlap = 50", Range(50, 50)),
    ("gun.overlap_percent", 'coats = 2\n[gun]\noverlap = "50 to 70 %"', Range(50, 70)),
    ("gun.overlap_percent", 'coats = 2\n[gun]\noverlap = "50 to 70"', Range(50, 70)),
]


@pytest.mark.parametrize(("path", "lines", "span"), BARE)
def test_a_count_or_a_percentage_is_one_figure_or_a_range(
    path: str, lines: str, span: Range
) -> None:
    read = profile(f"{TOP}[film]\n{lines}\n")
    table, name = path.split(".")
    assert getattr(getattr(read, table), name) == span
    assert getattr(getattr(profile(write(read)), table), name) == span


def test_the_whole_of_a_mix() -> None:
    mix = profile(
        TOP
        + FILM
        + '[mix]\ninduction = "15 to 20 min"\n'
        + 'pot_life = { table = [ { at = "10 C", time = "4 h" }, { at = "20 C", time = "2 h" } ] }\n'
        + '[[mix.parts]]\nname = "clear"\nparts = 2\nparts_by_weight = 100\n'
        + '[[mix.parts]]\nname = "hardener"\nparts = 1\nparts_by_weight = 53\n'
        + '[[mix.hardeners]]\nname = "fast"\nfor = "10 to 18 C"\nparts = 0.9\n'
        + 'pot_life = { time = "1 h", at = "20 C" }\n'
        + '[mix.hardeners.waits]\ndust_free = { time = "15 min", at = "70 F" }\n'
        + '[[mix.hardeners]]\nname = "slow"\nfor = "at least 18 C"\n'
        + '[mix.thinner]\nname = "medium"\nusual = "10 to 20 %"\n'
        + '[[mix.thinners]]\nname = "cold weather"\nfor = "at most 15 C"\nusual = 5\n'
    ).mix
    assert mix is not None and mix.thinner is not None
    assert mix.induction == WaitRule((AtTemperature(None, 900.0, 1200.0),))
    assert mix.pot_life is not None and mix.pot_life.is_table
    assert [part.parts_by_weight for part in mix.parts] == [100, 53]
    fast, slow = mix.hardeners
    assert (fast.for_c, fast.parts, slow.for_c) == (Range(10, 18), 0.9, Range(18, None))
    assert fast.waits is not None and fast.waits.dust_free == WaitRule(
        (AtTemperature(AT_70F, 900.0),)
    )
    assert mix.thinner.usual_percent == Range(10, 20) and mix.thinner.start_percent == 10
    assert mix.thinners[0].for_c == Range(None, 15) and mix.thinners[0].most_percent == 5


def test_coats_one_by_one_and_the_next_product() -> None:
    read = profile(
        TOP
        + '[[coats]]\nname = "tack coat"\nwet = "25 to 35 um"\n'
        + '[[coats]]\ntimes = "2 to 4"\nuntil_hidden = true\nwait = { until = "matt" }\n'
        + '[[next_product]]\nname = "clear"\nopens = { time = "15 min", at = "20 C" }\n'
        + 'closes = { time = "6 h", at = "20 C" }\nor_after = { time = "72 h", at = "20 C" }\n'
    )
    assert read.film.coats is None
    assert read.coats == (
        CoatPlan("tack coat", wet_um=Range(25, 35)),
        CoatPlan(times=Range(2, 4), until_hidden=True, wait=WaitRule((), "matt")),
    )
    (found,) = read.next_products
    assert found == NextProduct(
        "clear",
        WaitRule((AtTemperature(20.0, 900.0),)),
        WaitRule((AtTemperature(20.0, 21600.0),)),
        WaitRule((AtTemperature(20.0, 259200.0),)),
    )


W = "[waits]\nflash_off = "
WRONG = [
    (W + '"10 to 15 min"', "waits.flash_off", 'Say at which temperature: { time = "10 to 15 min"'),
    (W + '"until matt"', "waits.flash_off", 'Write { until = "matt" }.'),
    (W + '{ time = "at least 10 min", at = "20 C" }', "waits.flash_off.time", "Say both ends"),
    (W + '{ time = "15 to 10 min", at = "20 C" }', "waits.flash_off.time", "Exchange the two."),
    (W + '{ untill = "matt" }', "waits.flash_off.untill", "Did you mean until?"),
    (W + '{ until = " " }', "waits.flash_off.until", "a text in quotation marks"),
    (W + '{ until = "matt", time = "10 min" }', "waits.flash_off", "a time and the temperature"),
    (
        W + '{ table = [ { at = "10 C", humidity = 70, time = "2 h" }, '
        '{ at = "10 C", humidity = 50, time = "1 h" } ] }',
        "waits.flash_off.table[2].humidity",
        "driest first",
    ),
    (
        W
        + '{ table = [ { at = "10 C", humidity = 70, time = "2 h" }, { at = "20 C", time = "1 h" } ] }',
        "waits.flash_off.table[2]",
        "a humidity in every row, or in none",
    ),
    (
        W + '{ table = [ { at = "10 C", time = "2 h" }, { time = "1 h" } ] }',
        "waits.flash_off.table[2]",
        "a time and the temperature",
    ),
    ("[mix]\ninduction = 15", "mix.induction", "a time and its temperature"),
    ("[[coats]]\ntimes = 1.5\n[coatsx]", "coats[1].times", "a whole number"),
    ('[[coats]]\ntimes = "at least 2"\n[coatsx]', "coats[1].times", "Say both ends"),
    ('[[coats]]\ntimes = "2-4"\n[coatsx]', "coats[1].times", 'Write a range with "to": "2 to 4".'),
    ('[mix.thinner]\nname = "t"\nusual = "10-20 %"', "mix.thinner.usual", '"10 to 20 %"'),
]


@pytest.mark.parametrize(("lines", "key", "more"), WRONG)
def test_what_is_no_such_form_is_told(lines: str, key: str, more: str) -> None:
    # Beside a list of coats no number of them is wanted.
    coats = "[[coats]]" in lines
    fault = one(TOP + ("" if coats else FILM) + lines.replace("\n[coatsx]", "") + "\n")
    assert fault.key == key
    assert more in f"{fault.expected}. {fault.advice}"
