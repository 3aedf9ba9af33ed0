"""What to turn, in order, for this gun, cup and mix: by table. All values are invented."""

from __future__ import annotations

import msgspec
import pytest

from booth.job.advice import (
    NOT_AIR,
    VENT,
    Given,
    limit_words,
    on_catch,
    on_cup,
    on_fan,
    on_film,
    on_inlet,
)
from booth.job.needle_advice import catch_pairs, turns_words
from booth.log import events as ev
from booth.log.fold import Job, fold
from booth.profile.model import Efflux, Range
from booth.profile.model import Gun as Asked
from booth.shop.model import Compressor, Gun
from booth.units import System
from tests.job.make import at, opened, q
from tests.job.test_thin import added, batch, run

ASKED = Asked(
    tip_mm=Range(1.6, 1.8),
    inlet_kpa=Range(180, 220),
    fan_mm=Range(200, 250),
    distance_mm=Range(150, 200),
    overlap_percent=Range(50, 60),
    delivery_ml_min=Range(170, 240),
)
GUN = Gun("clear gun", tip_mm=1.4, needle_turns=4, fan_turns=3, air_l_min=350, inlet_kpa=200)
SMALL = Compressor(50, 130, 600, 800)
#: A cup at refinish viscosities, below what any conversion carries.
DIN = Efflux("DIN 4 mm", Range(17, 19), 20)


def job(*events: ev.Event, **changes: object) -> Job:
    numbered = [msgspec.structs.replace(event, n=n) for n, event in enumerate(events, 2)]
    return fold([opened(**{"gun": ASKED, "efflux": DIN, **changes}), *numbered])


def given(*events: ev.Event, gun: Gun | None = GUN, **changes: object) -> Given:
    return Given(job(*events, **changes), System.METRIC, gun, SMALL)


THICK = (batch(400, 200, 30), run(22, "din-4", 20.0))
FINE = (batch(400, 200, 30), run(18, "din-4", 20.0))
OUT = "Needle out, a quarter turn at a time; 2 of 4 turns open now."
LARGER = "Then a larger tip. The tip is 1.4 mm, the profile asks for 1.6 to 1.8 mm."
THIN_IT = "Thin it by 2 to 3 % (step Thin), stir, and time the cup again."
TIMED_FIRST = "Time the flow cup: this mix was not timed yet."


@pytest.mark.parametrize(
    ("events", "turns", "tip", "found"),
    [
        # In the order of the trade: needle, mix, vent and strainer, tip; never air.
        (THICK, 2.0, 1.4, (OUT, THIN_IT, VENT, LARGER, NOT_AIR)),
        # At the end of its travel the needle is not named at all.
        (THICK, 4.0, 1.4, (THIN_IT, VENT, LARGER, NOT_AIR)),
        (FINE, 4.0, 1.4, (VENT, LARGER, NOT_AIR)),
        ((), 4.0, 1.4, (TIMED_FIRST, VENT, LARGER, NOT_AIR)),
        # A tip of the profile's largest size: there is no larger one.
        (FINE, 4.0, 1.8, (VENT, "No larger tip: the profile asks for 1.6 to 1.8 mm.", NOT_AIR)),
        (FINE, 4.0, 1.6, (VENT, "Then a larger tip, up to 1.8 mm.", NOT_AIR)),
        # Colder than the target is for: warmth before thinner.
        (
            (batch(400, 200, 30), run(22, "din-4", 15.0)),
            4.0,
            1.8,
            (
                "Bring the mix to 20.0 °C, then time the cup again.",
                VENT,
                "No larger tip: the profile asks for 1.6 to 1.8 mm.",
                NOT_AIR,
            ),
        ),
    ],
)
def test_a_catch_below_its_target(
    events: tuple[ev.Event, ...], turns: float, tip: float, found: tuple[str, ...]
) -> None:
    assert on_catch(given(*events), 120, turns, None, tip) == found


def test_of_a_needle_whose_turns_are_not_known_it_is_asked() -> None:
    first = on_catch(given(*FINE), 120)[0]
    assert first == "Needle fully open, 4 turns? If not, out a quarter turn at a time."
    bare = on_catch(given(*FINE, gun=None), 120, 2.0)[0]
    assert bare == "Needle out, a quarter turn at a time; 2 turns open now."


def test_a_mix_whose_temperature_was_not_taken_is_asked_for_it() -> None:
    told = on_catch(given(batch(400, 200, 30), run(18, "din-4")), 120, 4.0, None, 1.6)
    assert told[0] == "Is the mix at 20.0 °C? A cold one is thick."


def test_a_catch_above_its_target() -> None:
    thin = given(batch(400, 200, 60), run(14, "din-4", 20.0))
    assert on_catch(thin, 300, 2.0, None, 1.8) == (
        "Needle in, a quarter turn at a time; 2 turns open now.",
        "Stir in unthinned mix of the same parts, stir, and time the cup again.",
        "Then a smaller tip, down to 1.6 mm.",
    )


def test_an_inlet_noted_with_the_catch_that_is_none_of_the_profile_s_is_commented() -> None:
    noted = "Inlet 4.00 bar, the profile asks for 1.80 to 2.20 bar: set it, then catch again."
    assert on_catch(given(*FINE), 200, 2.0, 400, 1.6) == (noted,)
    assert on_catch(given(*FINE), 120, 2.0, 400, 1.6)[:2] == (OUT, noted)
    assert on_catch(given(*FINE), 200, 2.0, 200, 1.6) == ()


def test_a_tip_that_the_profile_does_not_ask_for_is_said_even_with_the_right_delivery() -> None:
    said = on_catch(given(*FINE), 200, 2.0, 200, 1.4)
    assert said == ("The tip is 1.4 mm, the profile asks for 1.6 to 1.8 mm.",)


def test_no_turns_are_tried_beyond_the_needle_s_travel() -> None:
    caught = ev.CatchMade(
        n=0, at=at(1), seconds=60, amount=q(120, "ml"), delivery_ml_min=120, turns=q(4, "turns")
    )
    found = job(caught)
    assert "beyond 4 turns" in turns_words(found, catch_pairs(found), System.METRIC)
    assert turns_words(found, catch_pairs(found), System.METRIC, GUN) == ""


@pytest.mark.parametrize(
    ("events", "first"),
    [
        (THICK, THIN_IT),
        (FINE, None),
        (
            (batch(400, 200, 30), run(14, "din-4")),
            "Stir in unthinned mix of the same parts, stir, and time the cup again.",
        ),
        # The limit is 15 %: it comes before the temperature.
        (
            (batch(400, 200, 90), run(22, "din-4", 12.0)),
            "No more thinner: 15.0 % is in it, the profile allows 15 %.",
        ),
        (
            (batch(400, 200, 30), run(22, "din-4", 12.0)),
            "Bring the mix to 20.0 °C, then time the cup again.",
        ),
    ],
)
def test_the_seconds_of_the_cup(events: tuple[ev.Event, ...], first: str | None) -> None:
    assert on_cup(given(*events))[:1] == (() if first is None else (first,))


def test_another_cup_that_cannot_be_compared_is_exchanged() -> None:
    told = on_cup(given(batch(400, 200), run(15, "zahn-2")))
    assert told == ("Time it in a DIN 4 mm, which the target is for.",)


def test_the_limit_is_said_where_it_is_reached() -> None:
    assert limit_words(job(batch(400, 200, 30))) == ""
    assert "15.0 % is in it" in limit_words(job(batch(400, 200, 90)))
    assert "20.0 % is in it" in limit_words(job(batch(400, 200, 90), added(30, 690)))


def test_the_inlet() -> None:
    low = on_inlet(given(), 150)
    assert low[0] == "Regulator up by 0.30 bar or more, trigger fully pulled."
    assert "hose" in low[1] and low[2].startswith("Spray ")
    assert len(on_inlet(Given(job(), System.METRIC, GUN, None), 150)) == 2
    high = on_inlet(given(), 250)
    assert high[0].startswith("Is the trigger fully pulled?")
    assert high[1] == "Regulator down by 0.30 bar or more, trigger pulled."
    assert on_inlet(given(), 200) == ()


@pytest.mark.parametrize(
    ("width", "distance", "turns", "found"),
    [
        (180, None, None, ("Open the fan valve a little, fully open at 3 turns.",)),
        (
            180,
            120,
            3,
            (
                "Farther away: the profile asks for 150 to 200 mm. Then measure again.",
                "The fan valve is fully open: look for dirt in the horn holes of the air cap.",
            ),
        ),
        (300, 170, None, ("Pull the fan valve in until the pattern just fits.",)),
        (220, 300, None, ("Closer: the profile asks for 150 to 200 mm. Then measure again.",)),
        (220, 170, None, ()),
    ],
)
def test_the_fan(
    width: float, distance: float | None, turns: float | None, found: tuple[str, ...]
) -> None:
    assert on_fan(given(), width, distance, turns) == found


def test_a_film_too_thin_in_order_speed_overlap_delivery() -> None:
    assert on_film(given(), "below", speed_mm_s=310, was_mm_s=400, turns=2.0) == (
        "Next coat: slower, about 0.31 m/s (was 0.40 m/s), at the same distance.",
        "Or more overlap: 60 % for 55 %.",
        "Or the needle out a little, and catch again.",
    )
    assert on_film(given(), "below", turns=4.0)[-1] == (
        "The needle is fully open: more delivery takes a larger tip."
    )


def test_a_film_too_thick_looks_for_runs_first() -> None:
    told = on_film(given(gun=GUN), "above")
    assert told[:2] == ("Look for runs now.", "Next coat: faster, at the same distance.")
    assert told[-1] == "Or the needle in a little, and catch again."
    assert on_film(given(), "in") == on_film(given(), "") == ()
