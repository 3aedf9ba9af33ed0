"""Hardener and thinner by the air of today: which suits, and the profile as it is with the one that was used."""

from __future__ import annotations

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from booth.job.fault_evidence import evidence_of
from booth.job.job_schedule import planned
from booth.job.material import plan_of
from booth.job.mix_choice import Choice, choice_for_today, in_use, mixed_with, todays
from booth.job.wait import Wait, What
from booth.job.waits import waits
from booth.log import events as ev
from booth.log.codec import decode, encode
from booth.log.fold import fold
from booth.moment import Moment
from booth.profile.model import Film, Hardener, Mix, MixPart, Profile, Range, Thinner, Waits
from tests.job.make import at, mild, one_time, opened, profile, q

FAST = Hardener("fast", Range(10, 17), density_g_ml=1.02, pot_life=one_time(1800))
MEDIUM = Hardener("medium", Range(15, 25))
SLOW = Hardener(
    "slow", Range(25, None), parts=1.2, waits=Waits(handle=one_time(16 * 3600)), pot_life=None
)
THREE = (FAST, SLOW, MEDIUM)
THINNERS = (Thinner("cool", for_c=Range(None, 18)), Thinner("hot", for_c=Range(25, 40)))
CLEAR = profile(
    mix=Mix(
        parts=(MixPart("clear", 2, 1.0, 100), MixPart("medium", 1, 1.05, 52.5)),
        thinner=Thinner("usual", Range(10, 20), for_c=Range(15, 28)),
        pot_life=one_time(4 * 3600),
        hardeners=THREE,
        thinners=THINNERS,
    )
)

# Read off the ranges by hand: 16 lies in two of them, nearer to the middle of fast (13.5) than to
# that of medium (20); 40 has no upper end; 5 is in none, and nearest to fast.
BY_AIR = [
    (5.0, "fast", False),
    (10.0, "fast", True),
    (16.0, "fast", True),
    (17.0, "medium", True),
    (21.0, "medium", True),
    (25.0, "slow", True),
    (40.0, "slow", True),
    (9.9, "fast", False),
]


@pytest.mark.parametrize(("air_c", "name", "suits"), BY_AIR)
def test_the_one_that_is_meant_for_this_air(air_c: float, name: str, suits: bool) -> None:
    choice = choice_for_today(THREE, air_c)
    assert choice is not None
    assert (choice.option.name, choice.suits) == (name, suits)


def test_what_is_not_known_is_not_called_suitable() -> None:
    assert choice_for_today((), 20.0) is None
    # No weather; a sheet that names no air; one of two that names none.
    assert choice_for_today(THREE, None) == Choice(FAST, None)
    plain = Hardener("plain")
    assert choice_for_today((plain,), 20.0) == Choice(plain, None)
    assert choice_for_today((FAST, plain), 30.0) == Choice(plain, None)
    assert choice_for_today((FAST, plain), 12.0) == Choice(FAST, True)


@given(st.floats(-40, 100))
def test_whatever_the_air_nothing_is_said_to_suit_that_does_not(air_c: float) -> None:
    for options in (THREE, (*THINNERS, CLEAR.mix.thinner if CLEAR.mix else None)):
        choice = choice_for_today(options, air_c)  # type: ignore[arg-type]
        assert choice is not None and choice.option.for_c is not None
        assert choice.suits is choice.option.for_c.holds(air_c)
        if not choice.suits:
            assert not any(each.for_c.holds(air_c) for each in options if each and each.for_c)


def test_a_mix_takes_on_what_its_hardener_has_of_its_own() -> None:
    fast, slow = mixed_with(CLEAR, "fast"), mixed_with(CLEAR, "slow")
    assert fast.mix is not None and slow.mix is not None
    # Another density or other parts by volume: the parts by weight of the medium one do not hold.
    assert fast.mix.parts == (MixPart("clear", 2, 1.0, 100), MixPart("fast", 1, 1.02))
    assert slow.mix.parts[-1] == MixPart("slow", 1.2, 1.05)
    assert fast.mix.pot_life == one_time(1800) and slow.mix.pot_life == one_time(4 * 3600)
    assert slow.waits == msgspec.structs.replace(CLEAR.waits, handle=one_time(16 * 3600))
    assert fast.waits == CLEAR.waits
    medium = mixed_with(CLEAR, "medium", "hot")
    assert medium.mix is not None and medium.mix.parts == CLEAR.mix.parts  # type: ignore[union-attr]
    assert medium.mix.thinner == THINNERS[1]


def test_a_profile_without_a_choice_stays_as_it_is() -> None:
    for plain in (profile(), profile(mix=None), profile(mix=Mix())):
        assert mixed_with(plain, "fast", "hot") == plain
        assert todays(plain, mild()) == plain


def test_today_by_the_weather_and_the_batch_once_it_is_mixed() -> None:
    def parts(found: Profile) -> tuple[str, str]:
        assert found.mix is not None and found.mix.thinner is not None
        return found.mix.parts[-1].name, found.mix.thinner.name

    # The one that the mix is given with, until the air is known.
    assert parts(in_use(fold([opened(mix=CLEAR.mix)]))) == ("medium", "usual")
    cold = [opened(mix=CLEAR.mix), mild(2, air=12.0)]
    assert parts(in_use(fold(cold))) == ("fast", "cool")
    batch = ev.BatchMixed(n=3, at=at(60), batch=1, hardener="slow", thinned_with="hot")
    warmer = mild(4, 120, air=20.0)
    assert parts(in_use(fold([*cold, batch, warmer]))) == ("slow", "hot")
    assert parts(in_use(fold([*cold, batch, warmer]), before=3)) == ("medium", "usual")
    # A log that was written before there was a choice says none: the mix is as it was given.
    old = ev.BatchMixed(n=3, at=at(60), batch=1)
    assert parts(in_use(fold([*cold, old]))) == ("medium", "usual")


def test_the_choice_is_in_the_log_where_there_was_one_and_only_there() -> None:
    plain = ev.BatchMixed(n=3, at=at(60), batch=1, total=q(300, "ml"))
    assert b"hardener" not in encode(plain) and b"thinned_with" not in encode(plain)
    chosen = msgspec.structs.replace(plain, hardener="slow")
    assert decode(encode(chosen)) == chosen


@given(st.floats(-10, 45), st.floats(-10, 45))
@settings(max_examples=60)
def test_a_batch_keeps_its_hardener_whatever_the_weather_does(one: float, other: float) -> None:
    batch = ev.BatchMixed(n=3, at=at(60), batch=1, hardener="fast", thinned_with="usual")
    first = in_use(fold([opened(mix=CLEAR.mix), mild(2, air=one), batch]))
    later = in_use(fold([opened(mix=CLEAR.mix), mild(2, air=one), batch, mild(4, 99, air=other)]))
    assert first == later


#: A hardener with waits of its own: everything takes twice as long with it, and it closes sooner.
LAZY = Waits(
    flash_off=one_time(1200),
    recoat_opens=one_time(7200),
    recoat_closes=one_time(12 * 3600),
    handle=one_time(16 * 3600),
)
OWN_WAITS = msgspec.structs.replace(SLOW, waits=LAZY)
USUAL = Waits(
    flash_off=one_time(600),
    recoat_opens=one_time(3600),
    recoat_closes=one_time(24 * 3600),
    handle=one_time(8 * 3600),
)


def waits_of(coats: int, *events: ev.Event) -> dict[What, Wait]:
    """The waits after one coat at 60 to 120 s, after those events, by what is waited for."""
    mix = msgspec.structs.replace(CLEAR.mix, hardeners=(FAST, OWN_WAITS, MEDIUM))
    begin = opened(("door",), mix=mix, waits=USUAL, film=Film(coats=Range(coats, coats)))
    coat = (
        ev.CoatBegun(n=20, at=at(60), part="door", coat=1),
        ev.CoatEnded(n=21, at=at(120), part="door", coat=1),
    )
    every = sorted([begin, mild(), *events, *coat], key=lambda each: each.n)
    return {each.what: each for each in waits(fold(every))}


def mixed(n: int, hardener: str, seconds: float = 0.0, onto: int | None = None) -> ev.BatchMixed:
    return ev.BatchMixed(n=n, at=at(seconds), batch=n, hardener=hardener, onto=onto)


def test_the_waits_of_the_hardener_in_the_gun_count_for_the_coat() -> None:
    for hardener, flash_s, opens_s, closes_h, handle_h in (
        ("medium", 600, 3600, 24, 8),
        ("slow", 1200, 7200, 12, 16),
    ):
        batch = mixed(3, hardener)
        between = waits_of(2, batch)[What.NEXT_COAT]
        assert (between.opens_s, between.closes_s) == (flash_s, closes_h * 3600)
        last = waits_of(1, batch)
        window = last[What.NEXT_PRODUCT]
        assert (window.opens_s, window.closes_s) == (opens_s, closes_h * 3600)
        assert last[What.HANDLE].opens_s == handle_h * 3600


def test_a_batch_that_is_mixed_later_changes_no_wait_that_runs() -> None:
    found = waits_of(1, mixed(3, "slow"), mixed(30, "medium", 300))
    assert found[What.HANDLE].opens_s == 16 * 3600
    # Where no batch was mixed nobody has said that it was the slow one, nor that it was not: 8 h
    # would be half of what the slow one needs.
    unsaid = waits_of(1, mild(4, air=30.0))[What.HANDLE]
    assert unsaid.opens_s is None and "which hardener" in unsaid.why


#: Fast 30 min, the others 4 h. Batch 3 at 0 s, batch 4 onto it after 1 min or after 3 h 50 min.
ONTO = [
    ("fast", "slow", 60.0, at(0), 1800),
    ("slow", "fast", 60.0, at(60), 1800),
    ("slow", "medium", 60.0, at(0), 4 * 3600),
    ("slow", "fast", 13800.0, at(0), 4 * 3600),
]


@pytest.mark.parametrize(("first", "second", "when_s", "start", "closes_s"), ONTO)
def test_of_what_was_poured_together_the_pot_life_that_is_over_first_rules(
    first: str, second: str, when_s: float, start: Moment, closes_s: float
) -> None:
    alone = waits_of(1, mixed(3, first))[What.POT_LIFE]
    assert alone.closes_s == (1800 if first == "fast" else 4 * 3600)
    both = waits_of(1, mixed(3, first), mixed(4, second, when_s, onto=3))[What.POT_LIFE]
    assert (both.start, both.closes_s) == (start, closes_s)


def test_the_evidence_of_a_fault_knows_the_pot_life_of_what_was_sprayed() -> None:
    begin = opened(("door",), mix=CLEAR.mix)
    coat = (
        ev.CoatBegun(n=20, at=at(1800), part="door", coat=1),
        ev.CoatEnded(n=21, at=at(2700), part="door", coat=1),
    )
    for batches, used in (
        ((mixed(3, "fast"),), 1.5),
        ((mixed(3, "slow"),), 2700 / (4 * 3600)),
        ((mixed(3, "slow"), mixed(4, "fast", 900, onto=3)), 1.0),
    ):
        found = evidence_of(fold([begin, mild(), *batches, *coat]))
        assert found.pot_life_used == pytest.approx(used)


def test_what_is_planned_before_it_is_mixed_rests_on_the_hardener_of_today() -> None:
    for air_c, pot_s in ((12.0, 1800.0), (21.0, 4 * 3600.0)):
        job = fold([opened(mix=CLEAR.mix), mild(air=air_c)])
        (pot,) = planned(job, at(0)).pots
        sized = {"area_m2": 1.0, "wet_um": 50.0, "lost": 0.0, "left_ml": 0.0, "cup_ml": 600.0}
        plan = plan_of(job, coats=1, large=False, ample=True, **sized)
        assert plan.pot is not None
        assert plan.pot.seconds == pot.end_s == pot_s
