"""Thinner before or after the induction: as the sheet has it, and never a guess. Invented values."""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from msgspec.structs import replace

from booth.instruments.mix.words import empty_readout
from booth.job.thinner_time import ThinnerTime, thinner_time
from booth.log import events as ev
from booth.profile.model import Efflux, Mix, MixPart, Profile, Range, Thinner
from booth.units import System
from booth.words.profile_words import profile_lines
from booth.words.shown import Tone
from tests.instruments.at_bench import AtBench, context_of, in_mild_weather
from tests.job.make import one_time, profile, q
from tests.manual_clock import ManualClock

BEFORE, AFTER = "before induction", "after induction"
THINNER = Thinner("reducer", Range(10, 10), 20, 0.8, 0.87)


def product(when: str | None, induction_s: float | None = 1200) -> Profile:
    mix = Mix(
        parts=(MixPart("base", 2, 1.2), MixPart("hardener", 1, 1.0)),
        thinner=replace(THINNER, when=when),
        induction=None if induction_s is None else one_time(induction_s),
        pot_life=one_time(4 * 3600),
    )
    return profile(mix=mix, efflux=Efflux("Ford #4", Range(20, 24)))


def mixed(clock: ManualClock) -> Sequence[ev.Event]:
    """Mixed a minute ago: 19 minutes of the induction are left; the cup said 40 s."""
    batch = ev.BatchMixed(
        n=0,
        at=clock.now(),
        batch=1,
        pours=(ev.Pour("base", q(400, "ml")), ev.Pour("hardener", q(200, "ml"))),
        total=q(600, "ml"),
    )
    found = [*in_mild_weather(clock), batch]
    clock.advance(60)
    return [*found, ev.EffluxTimed(n=0, at=clock.now(), cup="ford-4", seconds=40.0)]


@pytest.mark.parametrize(
    ("when", "induction_s", "expected"),
    [
        (BEFORE, 1200, ThinnerTime.BEFORE),
        (AFTER, 1200, ThinnerTime.AFTER),
        (None, 1200, ThinnerTime.UNSAID),
        (None, None, None),
        (AFTER, None, None),
    ],
)
def test_what_the_sheet_says(
    when: str | None, induction_s: float | None, expected: ThinnerTime | None
) -> None:
    assert thinner_time(product(when, induction_s)) is expected
    assert thinner_time(profile(mix=None)) is None


@pytest.mark.parametrize(
    ("when", "says"),
    [
        (BEFORE, "reducer goes in before the induction: now, with the rest."),
        (AFTER, "reducer goes in after the induction: mix without it, then step Thin."),
        (None, "The sheet does not say whether reducer goes in before or after the induction."),
    ],
)
def test_before_mixing(when: str | None, says: str) -> None:
    said = " ".join(empty_readout(context_of(profile=product(when))).lines)
    assert says in said
    assert ("Ask the data sheet" in said) is (when is None)


def test_without_an_induction_nothing_is_said() -> None:
    said = " ".join(empty_readout(context_of(profile=product(None, None))).lines)
    assert "induction" not in said


def test_the_mix_begins_without_it_where_it_goes_in_afterwards() -> None:
    b = AtBench("mix", profile=product(AFTER), before=in_mild_weather)
    b.type("300 ml")
    b.go_to("thinner")
    assert b.row("thinner").field.default == 0 and "step Thin" in b.row("thinner").field.hint
    assert b.readout.tone is Tone.READY
    b.type("10")
    assert b.readout.tone is Tone.CAUTION
    assert "go in after the induction: set its row to 0 %" in b.readout.lines[0]
    b.press(*["backspace"] * 2)
    b.press("space", "space")
    batch = b.log[-1]
    assert isinstance(batch, ev.BatchMixed)
    assert [pour.name for pour in batch.pours] == ["base", "hardener"]
    assert "Thin it then: step Thin." in b.text


def test_before_it_is_poured_with_the_rest() -> None:
    b = AtBench("mix", profile=product(BEFORE), before=in_mild_weather)
    b.type("330 ml")
    assert b.row("thinner").field.default == 10 and "induction" not in b.text
    # Left out, it cannot go in later as the sheet has it.
    b.fill("thinner", "0")
    assert "goes in before the induction: now" in b.text


@pytest.mark.parametrize(
    ("when", "tone", "says"),
    [
        (AFTER, Tone.CAUTION, "goes in after the induction, which lasts another 19 min"),
        (BEFORE, Tone.READY, "The sheet has reducer go in before the induction, which runs"),
        (None, Tone.READY, "does not say whether reducer goes in before or after"),
    ],
)
def test_where_it_is_thinned_while_it_stands(when: str | None, tone: Tone, says: str) -> None:
    b = AtBench("thin", profile=product(when), before=mixed)
    assert says in b.readout.lines[0] and b.readout.tone is tone
    assert (b.readout.shown_word == "NOT YET") is (when == AFTER)
    b.pass_time(1200)
    over = b.readout
    assert over.tone is Tone.READY
    assert (BEFORE in (when or "")) is ("what goes in now has not stood" in b.text)
    assert ("does not say whether" in b.text) is (when is None)


def test_an_induction_of_which_nobody_knows_how_long_it_is() -> None:
    def unread(clock: ManualClock) -> Sequence[ev.Event]:
        return [each for each in mixed(clock) if not isinstance(each, ev.WeatherRead)]

    b = AtBench("thin", profile=product(AFTER), before=unread)
    assert "which lasts a time that is not known" in b.text and b.readout.shown_word == "NOT YET"


@pytest.mark.parametrize(
    ("when", "says"),
    [
        (AFTER, "Induction for another 19 min, then thin: time it again then."),
        (BEFORE, "Induction for another 19 min: time it again then."),
        (None, "does not say whether reducer goes in before or after the induction"),
    ],
)
def test_at_the_cup(when: str | None, says: str) -> None:
    b = AtBench("efflux", profile=product(when), before=mixed)
    assert says in b.text
    b.pass_time(1200)
    assert "nduction" not in b.text


def test_it_stands_among_what_the_profile_says() -> None:
    said = "\n".join(profile_lines(product(AFTER), System.METRIC))
    assert "Thinner: reducer 10 %, up to 20 %, goes in after induction" in said
