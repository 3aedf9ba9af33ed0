"""What a rehearsal says to change, by table; and that it approves, counts and rings nothing."""

from __future__ import annotations

import re
from itertools import pairwise

import msgspec
import pytest

from booth.job.amiss import Cause
from booth.job.coating import begin_coat
from booth.job.guard import amiss, standing_before
from booth.job.measured import delivery_ml_min
from booth.job.needle_advice import CatchPair
from booth.job.rehearsal import NOTHING, Finding, Rank, findings
from booth.job.steps import cautions_of, steps_of
from booth.job.waits import alarms, standings, waits
from booth.log import events as ev
from booth.log.fold import Job, fold
from booth.profile.model import Gun as Asked
from booth.profile.model import Range
from booth.profile.rehearsed import WITH_WATER
from booth.shop.model import Compressor, Gun, Shop
from booth.units import System
from tests.job.make import at, opened, q
from tests.profile.test_cautions import ASSURES

ASKED = Asked(
    inlet_kpa=Range(180, 220),
    fan_mm=Range(240, 260),
    distance_mm=Range(150, 200),
    overlap_percent=Range(50, 50),
    delivery_ml_min=Range(180, 220),
    hvlp=True,
)
SHOP = Shop(
    guns=(Gun("grey gun", needle_turns=4, air_l_min=350, inlet_kpa=200, hvlp=True),),
    compressor=Compressor(50, 130, 600, 800),
)


def rehearsed(
    *events: ev.Event, gun: Asked = ASKED, shop: Shop | None = None, real: bool = False
) -> Job:
    """A rehearsal of the trial clear with what was kept in it; real: the same as a real job."""
    own = opened(gun=gun)
    fitted = shop.guns[0].name if shop is not None else ""
    first = msgspec.structs.replace(
        own,
        rehearsal=not real,
        shop=msgspec.to_builtins(shop) if shop is not None else {},
        gun=fitted,
    )
    return fold(
        [first, *(msgspec.structs.replace(event, n=n) for n, event in enumerate(events, 2))]
    )


def water(delivery: float, turns: float | None = 2.0) -> ev.CatchMade:
    given = q(turns, "turns") if turns is not None else None
    amount = q(delivery, "ml")
    return ev.CatchMade(
        n=0,
        at=at(60),
        seconds=60,
        amount=amount,
        delivery_ml_min=delivery,
        liquid="water",
        turns=given,
    )


def passed(seconds: float, length: float = 1.0) -> ev.PassTimed:
    return ev.PassTimed(n=0, at=at(90), length=q(length, "m"), seconds=seconds)


def shape(key: str) -> ev.PatternRead:
    return ev.PatternRead(n=0, at=at(80), shape=key)


def coat(seconds: float, part: str = "door") -> tuple[ev.Event, ...]:
    begun = ev.CoatBegun(n=0, at=at(100), part=part, coat=1)
    return begun, ev.CoatEnded(n=0, at=at(100 + seconds), part=part, coat=1)


FAN = ev.FanSet(n=0, at=at(70), width=q(250, "mm"), distance=q(180, "mm"))
AIR = ev.AirRead(n=0, at=at(50), inlet=q(200, "kPa"))


def said(job: Job, *pairs: CatchPair, system: System = System.METRIC) -> tuple[Finding, ...]:
    return findings(job, system, lambda *_, **__: pairs)


def of(rank: Rank, job: Job, *pairs: CatchPair) -> list[str]:
    return [each.words for each in said(job, *pairs) if each.rank is rank]


# -- what is said ------------------------------------------------------------------------------


def test_of_a_rehearsal_in_which_nothing_was_done_nothing_is_known() -> None:
    (only,) = said(rehearsed())
    assert only.words == NOTHING and not only.is_change


def test_what_was_passed_over_is_named_as_unpractised() -> None:
    (words,) = of(Rank.UNPRACTISED, rehearsed(AIR, water(400), shape("even")))
    assert words == "Not practised: Fan, Pace, Coats and waits. Of that nothing is known."


def test_where_all_of_it_fits_nothing_is_to_be_changed_and_the_coating_is_not_known() -> None:
    # Own passes as long as the pace for it, see below: 2.88 s for 1 m.
    found = said(rehearsed(AIR, water(240), FAN, shape("even"), passed(2.9), *coat(30)))
    assert [each.rank for each in found] == [Rank.NOT_KNOWN] and not found[0].is_change
    assert found[0].words == (
        "Water: 240 ml/min at 2 turns; the profile asks for 180 to 220 ml/min of the coating. What "
        "the coating gives there is not known on this gun: catch it before the first coat."
    )


def test_the_worst_comes_first() -> None:
    low = ev.AirRead(n=0, at=at(50), inlet=q(120, "kPa"))
    narrow = ev.FanSet(n=0, at=at(70), width=q(150, "mm"))
    found = said(rehearsed(low, water(100), narrow, shape("crescent"), passed(9.0)))
    ranks = [each.rank for each in found]
    assert all(one <= other for one, other in pairwise(ranks))
    assert ranks[:4] == [Rank.PATTERN, Rank.INLET, Rank.DELIVERY, Rank.PACE]
    assert Rank.FAN in ranks and ranks[-1] is Rank.UNPRACTISED


@pytest.mark.parametrize(
    ("tries", "deed"),
    [(1, "turn the air cap half a turn"), (2, "if the heavy end turned with the cap")],
)
def test_a_pattern_that_is_the_guns_is_put_right_now_one_thing_after_the_other(
    tries: int, deed: str
) -> None:
    (words,) = of(Rank.PATTERN, rehearsed(*[shape("heavy one end")] * tries))
    assert words.startswith(f"Pattern heavy at one end. It is the gun, not the water: {deed}")


@pytest.mark.parametrize("key", ["heavy middle", "heavy both ends"])
def test_a_balance_of_water_and_air_is_looked_at_again_with_the_coating(key: str) -> None:
    (words,) = of(Rank.BALANCE, rehearsed(shape(key)))
    assert "shoot paper again with the coating; if it stays: " in words


def test_an_inlet_outside_its_range_says_by_how_much() -> None:
    (words,) = of(Rank.INLET, rehearsed(ev.AirRead(n=0, at=at(50), inlet=q(150, "kPa"))))
    # 180 - 150 kPa = 30 kPa = 0.30 bar (NIST SP 811: 1 bar = 100 kPa).
    assert words.startswith("Inlet 1.50 bar, the profile asks for 1.80 to 2.20 bar.")
    assert "Regulator up by 0.30 bar or more" in words


# -- the needle --------------------------------------------------------------------------------


def test_water_that_is_too_little_is_too_little_of_a_coating() -> None:
    (words,) = of(Rank.DELIVERY, rehearsed(water(150)))
    assert words == (
        "Water: 150 ml/min at 2 turns; a coating runs slower than water, and the profile asks for "
        "180 to 220 ml/min of the coating. Needle out, a quarter turn at a time; 2 turns open now."
    )


def test_at_the_end_of_its_travel_the_needle_asks_for_a_larger_tip() -> None:
    (words,) = of(Rank.DELIVERY, rehearsed(water(150, turns=4.0), shop=SHOP))
    assert words.endswith("The needle is fully open: more delivery takes a larger tip.")


@pytest.mark.parametrize("delivery", [180.0, 200.0, 240.0, 900.0])
def test_without_own_catches_of_both_no_figure_of_the_coating_is_given(delivery: float) -> None:
    job = rehearsed(water(delivery))
    assert not of(Rank.DELIVERY, job)
    assert any("not known on this gun" in words for words in of(Rank.NOT_KNOWN, job))


#: Water and paint at one setting: paint runs at half, so 400 of water are 200 of paint.
HALF = (CatchPair(2.0, 400.0, "water"), CatchPair(2.0, 200.0, "paint"))


@pytest.mark.parametrize(
    ("delivery", "likely"), [(300.0, "150 ml/min"), (500.0, "250 ml/min"), (400.0, "")]
)
def test_by_own_catches_of_both_water_stands_for_the_coating(delivery: float, likely: str) -> None:
    found = of(Rank.DELIVERY, rehearsed(water(delivery, turns=1.5)), *HALF)
    assert bool(found) == bool(likely)
    assert not likely or f"about {likely} as coating (estimate " in found[0]
    assert not likely or "Needle: " in found[0]


def test_where_no_delivery_is_asked_for_that_is_said() -> None:
    asked = msgspec.structs.replace(ASKED, delivery_ml_min=None)
    job = rehearsed(water(300), gun=asked)
    assert not of(Rank.DELIVERY, job)
    assert any("names no delivery" in words for words in of(Rank.NOT_KNOWN, job))


# -- the pace ----------------------------------------------------------------------------------

# Conservation of volume, by hand: 200 ml/min of the profile, 65 % of it lands (40 CFR 63 subpart
# practice for HVLP, as the step Pace), a pitch of 250 mm x (1 - 0.5) = 125 mm, 50 um wet (the middle of
# 40 to 60): 200 000 mm3 / 60 s x 0.65 / (0.05 mm x 125 mm) = 347 mm/s, so 1 m takes 2.88 s.
FOR_IT = "about 2.9 s (estimate)"


@pytest.mark.parametrize(("seconds", "word"), [(1.4, "Slower"), (5.8, "Faster"), (2.9, "")])
def test_own_passes_are_held_against_the_pass_for_the_film(seconds: float, word: str) -> None:
    found = of(Rank.PACE, rehearsed(water(500), FAN, *[passed(seconds)] * 3))
    assert bool(found) == bool(word)
    assert not word or found[0].endswith(f" {word}: {FOR_IT} for it.")
    assert not word or found[0].startswith(f"Your pass: 1.00 m in {seconds} s")


def test_water_says_nothing_of_the_pace_of_the_coating() -> None:
    assert delivery_ml_min(rehearsed(water(500))) == (200.0, "from the profile")
    bare = msgspec.structs.replace(ASKED, delivery_ml_min=None)
    job = rehearsed(water(500), FAN, passed(2.0), gun=bare)
    assert delivery_ml_min(job) is None
    assert not of(Rank.PACE, job)
    assert any("it lacks the coating's delivery" in words for words in of(Rank.NOT_KNOWN, job))


def test_a_pace_that_no_hand_holds_asks_for_another_delivery() -> None:
    # Half of the delivery halves the speed: 174 mm/s, below the 200 that a hand holds.
    slow = msgspec.structs.replace(ASKED, delivery_ml_min=Range(100, 100))
    (words,) = of(Rank.PACE, rehearsed(FAN, passed(5.8), gun=slow))
    assert "slower than a hand holds even: more delivery, or a thinner coat." in words


@pytest.mark.parametrize(
    ("times", "uneven"),
    [
        ((2.0, 2.1, 1.9), False),
        (
            (2.0, 2.5, 1.6),
            False,
        ),  # within a tenth and 0.4 s, what the hand at the key may be late by
        ((1.2, 2.8, 2.0), True),
        ((1.2, 2.8), False),  # two passes have no middle
    ],
)
def test_passes_that_differ_are_said_to(times: tuple[float, ...], uneven: bool) -> None:
    found = of(Rank.UNEVEN, rehearsed(*map(passed, times)))
    assert bool(found) == uneven
    assert not uneven or found[0].startswith("Your passes differ: 1.2 to 2.8 s for 1.00 m")


# -- fan and compressor ------------------------------------------------------------------------


def test_a_fan_that_is_too_narrow_is_opened() -> None:
    narrow = ev.FanSet(n=0, at=at(70), width=q(200, "mm"), distance=q(180, "mm"))
    (words,) = of(Rank.FAN, rehearsed(narrow))
    assert words.startswith("Fan 200 mm at 180 mm, 240 to 260 mm asked for. Open the fan valve")


def test_a_compressor_that_falls_behind_says_how_long_and_what_your_coat_took() -> None:
    (words,) = of(Rank.COMPRESSOR, rehearsed(AIR, *coat(200), shop=SHOP))
    assert words.startswith("The compressor falls behind this gun. Spray ")
    assert "Your longest coat took 3 min: pause in it." in words
    assert not of(Rank.COMPRESSOR, rehearsed(AIR, *coat(200))), "what is not known is not said"


OF_METRIC = re.compile(r"\d\W(ml/min|mm|bar|µm|m)\b")
EVERY = (
    ev.AirRead(n=0, at=at(50), inlet=q(120, "kPa")),
    water(100),
    ev.FanSet(n=0, at=at(70), width=q(150, "mm"), distance=q(90, "mm")),
    *(shape("spitting"), shape("heavy middle")),
    *(passed(1.0), passed(4.0), passed(1.2)),
    *coat(600),
)


@pytest.mark.parametrize("system", list(System))
def test_nothing_of_it_assures_and_every_change_has_a_deed(system: System) -> None:
    found = said(rehearsed(*EVERY, shop=SHOP), system=system)
    assert sum(each.is_change for each in found) >= 6
    for each in found:
        assert not ASSURES.search(each.words), each.words
        assert each.words.endswith("."), each.words
        assert system is System.METRIC or not OF_METRIC.search(each.words), each.words


# -- what a rehearsal is not -------------------------------------------------------------------

MIXED = ev.BatchMixed(n=0, at=at(10), batch=1, total=q(300, "ml"))


@pytest.mark.parametrize("later_s", [200.0, 3600.0, 200_000.0])
def test_no_wait_of_water_is_known_counted_or_rung(later_s: float) -> None:
    kept = (MIXED, *coat(30))
    job, real = rehearsed(*kept), rehearsed(*kept, real=True)
    assert waits(real) and not waits(job)
    assert standings(job, at(later_s)) == () == alarms(job, at(later_s))
    assert standing_before(job, "door", at(later_s)) is None
    assert standing_before(real, "door", at(later_s)) is not None


def test_the_guard_looks_at_the_gun_and_never_at_the_coating() -> None:
    low = ev.AirRead(n=0, at=at(50), inlet=q(120, "kPa"))
    job, real = (rehearsed(low, *coat(30), shop=SHOP, real=real) for real in (False, True))
    found, of_real = ({each.cause for each in amiss(each, "door", at(200))} for each in (job, real))
    assert found == {Cause.INLET}
    assert of_real > {Cause.INLET, Cause.NOT_READ, Cause.NOT_TIMED, Cause.WAIT_UNKNOWN}
    begun = begin_coat(job, "door", at(200))
    assert (begun.early_s, begun.late_s, begun.doubtful) == (0.0, 0.0, False)


def test_that_it_is_one_cannot_be_voided() -> None:
    job = rehearsed(AIR, ev.Voided(n=0, at=at(60), target=1), ev.Restored(n=0, at=at(61), target=1))
    assert job.opened.rehearsal and job.opened.title == "Rehearsal: Trial clear"
    assert job.opened.begun_from == "rehearsal:trial-clear"


def test_steps_and_cautions_are_those_that_make_sense_with_water() -> None:
    job, real = rehearsed(), rehearsed(real=True)
    assert {step.kind for step in steps_of(job)} == set(WITH_WATER)
    assert {step.kind for step in steps_of(real)} > set(WITH_WATER)
    assert "isocyanate" in {each.key for each in cautions_of(real)}
    assert "isocyanate" not in {each.key for each in cautions_of(job)}
