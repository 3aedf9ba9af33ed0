"""A profile in plain lines: all that it says, the most needed first."""

from __future__ import annotations

from pathlib import Path

import pytest

from booth.profile.library import load_folder
from booth.profile.model import AtTemperature, Profile, WaitRule
from booth.units import System
from booth.words.profile_words import profile_lines, wait_words

BUNDLED = load_folder([Path(__file__).parents[2] / "profiles"]).profiles
BY_KEY = {each.key: each for each in BUNDLED}


def test_a_wait_in_each_of_its_forms() -> None:
    def words(*rows: AtTemperature, until: str = "") -> str:
        return wait_words(WaitRule(rows, until), System.METRIC)

    ten = AtTemperature(20.0, 600.0, 900.0, 50.0)
    assert words(ten) == "10 to 15 min at 20.0 °C and 50 %"
    assert words(AtTemperature(None, 5400.0)) == "1.5 h"
    assert words(until="matt all over") == "until matt all over"
    assert words(ten, AtTemperature(30.0, 300.0, None, 50.0), until="dry") == (
        "10 to 15 min at 20.0 °C and 50 %, 5 min at 30.0 °C and 50 %, until dry"
    )
    assert wait_words(None, System.US) == ""


#: What each of these says, as it stands in its file, beginning with what is mixed.
SAID = {
    "high-solids-clear": [
        "Mix by volume: 3 clear : 1 medium hardener (by weight 100 : 36)",
        "Hardener fast hardener: for 10.0 to 17.0 °C, by weight 35, pot life 45 min at 20.0 °C, "
        "dust-free 15 min at 20.0 °C, handle 3 h at 20.0 °C, polish 6 h at 20.0 °C",
        "Hardener medium hardener: for 16.0 to 25.0 °C",
        "Thinner: slow thinner 5 %, up to 10 %, for at least 25.0 °C",
        "Film: wet each 50 to 60 µm, dry in all 40 to 50 µm, solids 54 to 57 %",
        "Coat: tack coat: wet 25 to 35 µm, distance 180 to 220 mm, "
        "then 3 to 5 min at 20.0 °C, until it strings under a finger",
        "Coat: full coat: overlap 60 to 70 %",
        "Waits at 60.0 °C: bake 30 min",
    ],
    "waterborne-silver-base": [
        "Coat: colour coat: until hidden, 2 to 4 coats, then 5 to 15 min at 20.0 °C and 50 %, until matt all over",
        "Then two-pack clear: opens 20 to 30 min at 20.0 °C and 50 %, until matt all over, "
        "closes 24 h at 20.0 °C",
    ],
    "single-stage-enamel": [
        "Film: 2 coats, wet each 61 to 76 µm, dry in all 46 to 61 µm, solids 43 to 45 %",
        "Then another product: opens 30 min at 21.1 °C, closes 6 h at 21.1 °C, or after 72 h at 21.1 °C",
    ],
}


@pytest.mark.parametrize("key", SAID)
def test_it_is_all_said_and_in_the_order_of_the_work(key: str) -> None:
    lines = profile_lines(BY_KEY[key], System.METRIC)
    places = [lines.index(line) for line in SAID[key]]
    assert places == sorted(places)


@pytest.mark.parametrize("profile", BUNDLED, ids=lambda profile: profile.key)
@pytest.mark.parametrize("system", System)
def test_a_window_of_24_rows_shows_what_is_needed_first(profile: Profile, system: System) -> None:
    lines = profile_lines(profile, system)
    assert all(line == line.strip() and not line.endswith(":") for line in lines)
    needed = [
        n for n, line in enumerate(lines) if line.startswith(("Mix", "Efflux", "Gun", "Film"))
    ]
    assert len(needed) == 4 and max(needed) < 24
