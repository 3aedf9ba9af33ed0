"""Hardener and thinner by the air of today: which suits, and the profile as it is with the one that was used."""

from __future__ import annotations

import msgspec
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from booth.job.mix_choice import Choice, choice_for_today, in_use, mixed_with, todays
from booth.log import events as ev
from booth.log.codec import decode, encode
from booth.log.fold import fold
from booth.profile.model import Hardener, Mix, MixPart, Profile, Range, Thinner, Waits
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
