"""What a card says of a job, and what it does not. All values are invented."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from booth.card.as_text import as_text
from booth.card.model import Fact
from booth.log import events as ev
from booth.profile.model import Film, Range
from booth.units import System
from tests.card.jobs import card, coated, measured, whole
from tests.job.make import at, mild, opened, profile, q


def fact(facts: tuple[Fact, ...], label: str) -> str:
    (found,) = [each.in_words for each in facts if each.label == label]
    return found


def test_how_it_came_out_stands_before_everything_and_the_log_last() -> None:
    text = as_text(card(whole()))
    order = [
        "usable, 2026-09-22 09:00, looked at again",
        "some dust",
        "good, 2026-09-21 10:13",
        "slower at the edge",
        "runs and sags (hood); dust, seen later",
        "polished (door) 2026-09-22",
        "inlet pressure",
        "door: coat 1 begun",
        "\nLog\n",
        "job opened",
    ]
    places = [text.index(each) for each in order]
    assert places == sorted(places)
    assert len(text[: text.index("\nLog\n")].splitlines()) <= 40, "half a page"


def test_settings_stand_against_what_was_wanted() -> None:
    (block,) = card(whole()).blocks
    assert fact(block.facts, "inlet pressure") == "1.90 bar (wanted 1.80 to 2.10 bar)"
    # 125 ml in 30 s are 250 ml/min; wanted are 170 to 240.
    assert fact(block.facts, "delivery") == (
        "250 ml/min of paint (above the wanted 170 to 240 ml/min)"
    )
    assert fact(block.facts, "efflux time") == "21.5 s in Ford #4 (wanted 20.0 s to 24.0 s)"
    # 30 ml of thinner on 300 ml of coating.
    assert fact(block.facts, "thinner") == "10 % (wanted 10 %)"
    assert fact(block.facts, "cans") == "A12, B7"
    assert fact(block.facts, "batch 1, 08:05") == (
        "clear 200 ml + hardener 100 ml + thinner 30 ml, in all 330 ml"
    )
    us = card(whole(), System.US).blocks[0]
    # 190 kPa / 6.894757 kPa = 27.6 psi (NIST SP 811, app. B).
    assert fact(us.facts, "inlet pressure") == "28 psi (wanted 26 to 30 psi)"


def test_coats_with_their_waits_and_their_film_against_the_wanted() -> None:
    (block,) = card(whole()).blocks
    first, second, third = block.coats[:3]
    assert (first.part, first.coat, first.waited, first.sprayed) == (
        "door",
        "coat 1",
        "",
        "2 min 30 s",
    )
    assert (first.wet, first.wanted) == ("50 to 60 µm", "40 to 60 µm")
    assert (second.waited, second.after) == ("17 min", "coat 1")
    assert third.wet == "" and third.low_um is None, "what was not read has no film"
    assert any("coat 3 not read" in each.text for each in block.film)


def test_nothing_that_was_not_measured_is_said() -> None:
    found = card([opened(), ev.CoatBegun(n=0, at=at(60), part="door", coat=1)])
    (block,) = found.blocks
    assert block.facts == () and block.film == () and block.paper is None and found.line is None
    assert block.missing == (
        *("weather", "efflux time", "inlet pressure", "delivery"),
        *("fan width", "pattern", "pass speed", "wet film"),
    )
    text = as_text(found)
    assert "none yet: this job is not closed" in text and "not ended" in text
    assert "Next time" not in text and "Faults" not in text and "Gun" not in text
    skipped = ev.StepSkipped(n=0, at=at(1), step="weather", why="indoors")
    assert "weather (indoors)" in card([opened(), skipped]).blocks[0].missing


def test_thinner_whose_share_is_not_known_is_said_to_be() -> None:
    added = ev.ThinnerAdded(n=0, at=at(1), amount=q(50, "ml"))
    (block,) = card([opened(), added]).blocks
    assert fact(block.facts, "thinner") == "added 50 ml; its share is not known"


def test_a_delivery_of_water_is_not_held_against_that_of_paint() -> None:
    water = ev.CatchMade(
        n=0, at=at(1), seconds=60, amount=q(300, "ml"), delivery_ml_min=300, liquid="water"
    )
    (block,) = card([opened(), water]).blocks
    assert fact(block.facts, "delivery") == "300 ml/min of water"


def test_a_time_in_another_cup_is_not_held_against_the_profile() -> None:
    timed = ev.EffluxTimed(n=0, at=at(1), cup="zahn-2", seconds=30)
    (block,) = card([opened(), timed]).blocks
    assert fact(block.facts, "efflux time").startswith("30.0 s in Zahn #2")
    assert "wanted" not in fact(block.facts, "efflux time")


def test_a_rack_is_told_with_its_sides() -> None:
    rack = ev.Rack("doors", 24, 2)
    first = replace(opened(("hood", *rack.parts)), racks=(rack,))
    found = card([first, *coated(rack.parts, 1)])
    assert fact(found.head, "Parts") == "hood; 24 doors, both sides"
    assert [each.part for each in found.blocks[0].coats] == [
        "hood",
        "24 doors, side 1",
        "24 doors, side 2",
    ]
    assert found.line is not None
    assert [each.name for each in found.line.rows] == ["24 doors, side 1", "24 doors, side 2"]


def test_each_product_of_a_system_has_its_block_its_own_cans_and_weather() -> None:
    base, clear = profile(key="base", name="Trial base"), profile(key="clear", name="Trial topcoat")
    first = replace(opened(("door",)), later=(base, clear), coating="Trial system")
    found = card(
        [
            first,
            *measured(),
            *coated(("door",), 1),
            ev.ProductBegun(n=0, at=at(20_000), product=2),
            mild(seconds=20_010, air=30.0),
            ev.NoteMade(n=0, at=at(20_020), text="cans: C9"),
            *coated(("door",), 1, 20_100, read=False),
            mild(seconds=30_000, air=5.0),
        ]
    )
    assert [each.title for each in found.blocks] == [
        "1/3 Trial clear",
        "2/3 Trial base",
        "3/3 Trial topcoat",
    ]
    one, two, three = found.blocks
    assert fact(one.facts, "cans") == "A12, B7" and fact(two.facts, "cans") == "C9"
    assert [each.label for each in one.facts if each.label.startswith("weather")] == [
        "weather 08:01"
    ]
    airs = [each.text for each in two.facts if each.label.startswith("weather")]
    assert len(airs) == 1 and airs[0].startswith("air 30.0 °C"), "what it was sprayed in, not after"
    assert two.coats[0].after == "the last coat before it"
    assert three.about == (Fact("not begun", ""),) and three.coats == ()
    assert found.line is not None and len(found.line.gaps) == 1


def test_a_voided_reading_counts_no_more_and_stands_in_the_log_as_voided() -> None:
    air = ev.AirRead(n=0, at=at(1), inlet=q(190, "kPa"))
    found = card([opened(), air, ev.Voided(n=0, at=at(2), target=2)])
    assert found.blocks[0].facts == ()
    assert [each.void for each in found.entries] == [False, True, False]


@pytest.mark.parametrize(
    ("seconds", "gaps"),
    [(600, []), (2 * 3600 - 150, []), (3 * 3600, ["2 h 58 min"]), (86400, ["23 h 58 min"])],
)
def test_a_long_stretch_without_a_coat_is_a_gap_of_the_time_line(
    seconds: float, gaps: list[str]
) -> None:
    events = [*coated(("door",), 1, 0), *coated(("door",), 1, seconds)]
    again = [replace(each, coat=2) if hasattr(each, "coat") else each for each in events[2:]]
    line = card([opened(("door",)), *events[:2], *again]).line
    assert line is not None and [words for _, _, words in line.gaps] == gaps


def test_entries_without_a_job_are_still_told() -> None:
    found = card([ev.NoteMade(n=0, at=at(1), text="alone")])
    assert found.title.startswith("This log holds no job") and len(found.entries) == 1
    assert found.blocks == () and "note: alone" in as_text(found)


def test_what_is_wrong_with_the_log_stands_first() -> None:
    text = as_text(card(whole(), said=("Line 3 of the log is no entry.",)))
    assert text.startswith("! Line 3 of the log is no entry.\n")


def test_a_product_without_film_figures_wants_none() -> None:
    bare = replace(opened(("door",)), profile=profile(film=Film(coats=Range(1, 1))))
    (block,) = card([bare, *coated(("door",), 2)]).blocks
    assert block.coats[0].wanted == "" and block.coats[0].wet_of_wanted == "50 to 60 µm"
