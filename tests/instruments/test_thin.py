"""Thinning worked with keys: the amount to add, what was really added, back to the cup and on."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

import msgspec
import pytest

from booth.instruments.thin import advice_on, thin_readout
from booth.job.thin_advice import coating_to_thicken_ml
from booth.log import events as ev
from booth.profile.model import AtTemperature, Efflux, Mix, MixPart, Range, Thinner, WaitRule
from booth.units import Quantity, System
from booth.words.shown import Tone
from tests.instruments.at_bench import AtBench
from tests.job.make import profile, q
from tests.manual_clock import ManualClock

Before = Callable[[ManualClock], Sequence[ev.Event]]
#: 29.57353 ml to the US fluid ounce (NIST SP 811, app. B)
OZ = 29.57353
#: The trial coating with a thinner of 0.8 g/ml.
WEIGHABLE = profile(
    mix=Mix(
        parts=(MixPart("clear", 2, 1.0), MixPart("hardener", 1, 1.05)),
        thinner=Thinner("thinner", Range(10, 10), 15, 0.8, 0.8),
        pot_life=WaitRule((AtTemperature(21.0, 4 * 3600),)),
    )
)


def mixed(clock: ManualClock, *seconds: float, unit: str = "ml") -> list[ev.Event]:
    now = clock.now()
    pours = (ev.Pour("clear", q(400, unit)), ev.Pour("hardener", q(200, unit)))
    batch = ev.BatchMixed(n=0, at=now, batch=1, pours=pours, total=q(600, unit))
    return [batch, *(ev.EffluxTimed(n=0, at=now, cup="ford-4", seconds=s) for s in seconds)]


def after(*seconds: float, unit: str = "ml") -> Before:
    return lambda clock: mixed(clock, *seconds, unit=unit)


def said(bench: AtBench) -> tuple[str, str]:
    return f"{bench.readout.figure} {bench.readout.unit}".strip(), bench.readout.shown_word


def thinned(bench: AtBench) -> list[ev.ThinnerAdded]:
    return [event for event in bench.log if isinstance(event, ev.ThinnerAdded)]


def test_space_says_that_the_figure_was_added_and_enter_leads_back_to_the_cup() -> None:
    b = AtBench("thin", before=after(38.5))
    figure, word = said(b)
    assert word == "ADD, STIR"
    assert b.keys["Space"] == f"added: {figure}"
    b.press("space")
    (event,) = thinned(b)
    assert f"{event.amount.value:.0f} ml" == figure
    assert event.remaining is not None and event.remaining.value == 600
    assert said(b)[1] == "TIME AGAIN"
    assert "thinner in it now" in b.text
    assert b.keys["Enter"] == "time the cup again"
    b.press("enter")
    assert b.bench.step.kind == "efflux"
    # Timed again: two runs on target, and back here all is well.
    for _ in range(2):
        b.press("space")
        b.clock.advance(21.0)
        b.press("space")
    b.press("enter")
    assert said(b) == ("22.0 s", "IN RANGE")
    b.press("enter")
    assert [event.step for event in b.log if isinstance(event, ev.StepDone)] == ["efflux", "thin"]


def test_what_was_really_added_is_typed() -> None:
    b = AtBench("thin", before=after(38.5))
    assert b.marked == "added"
    b.type("25")
    assert b.keys["Enter"] == "added: 25 ml"
    b.press("enter")
    (event,) = thinned(b)
    assert event.amount.value == 25
    # 25 ml in 600 ml of coating.
    assert "4.2 % thinner in it now" in b.text
    left = b.row("left").given
    assert isinstance(left, Quantity) and left.value == 625


def test_less_is_left_than_was_mixed() -> None:
    b = AtBench("thin", before=after(38.5))
    assert [row.key for row in b.rows.assumed] == ["left"]
    whole = float(said(b)[0].split()[0])
    b.press("down")
    assert b.marked == "left"
    b.type("300 ml")
    # Findings of first use, 6: the key line said 'next step' here.
    assert b.keys["Enter"] == "on: Really added"
    b.press("enter")
    assert b.marked == "added"
    assert float(said(b)[0].split()[0]) == pytest.approx(whole / 2, abs=0.6)
    b.press("enter")  # the last row is empty, and the form is not: it is not left
    assert b.bench.step.key == "thin" and "type what was really added" in b.said
    b.press("space")
    assert thinned(b)[0].remaining == q(300, "ml", "300 ml")


def test_without_a_batch_in_the_log_the_mix_is_asked_for_first() -> None:
    def timed(clock: ManualClock) -> Sequence[ev.Event]:
        return [ev.EffluxTimed(n=0, at=clock.now(), cup="ford-4", seconds=38.5)]

    b = AtBench("thin", before=timed)
    assert said(b)[1] == "HOW MUCH MIX?" and b.marked == "left"
    b.fill("added", "20")
    b.press("enter")
    assert b.marked == "left" and thinned(b) == []
    b.type("500")
    b.press("enter", "enter")
    assert [event.amount.value for event in thinned(b)] == [20]


def test_the_space_before_a_unit_adds_nothing() -> None:
    b = AtBench("thin", before=after(38.5), system=System.US)
    b.type("25 ml")
    assert thinned(b) == []
    b.press("space")
    assert thinned(b)[0].amount == q(25, "ml", "25 ml")


def test_a_second_round_rests_on_this_mix() -> None:
    def before(clock: ManualClock) -> Sequence[ev.Event]:
        more = ev.ThinnerAdded(n=0, at=clock.now(), amount=q(30, "ml"), remaining=q(600, "ml"))
        again = ev.EffluxTimed(n=0, at=clock.now(), cup="ford-4", seconds=27.0)
        return [*mixed(clock, 38.5), more, again]

    b = AtBench("thin", before=before)
    assert "by 2 measurements of this mix" in b.text
    assert "5.0 % thinner: 27.0 s" in b.text


def test_backspace_voids_what_was_added_and_brings_it_back() -> None:
    b = AtBench("thin", before=after(38.5))
    figure = said(b)
    b.press("space", "backspace")
    assert said(b) == figure
    assert isinstance(b.log[-1], ev.Voided)
    assert b.said.startswith("Voided: thinner added: ")
    b.press("backspace")
    assert said(b)[1] == "TIME AGAIN" and isinstance(b.log[-1], ev.Restored)


@pytest.mark.parametrize(
    ("seconds", "word"),
    [(22.0, "IN RANGE"), (19.0, "TOO THIN")],
)
def test_words_against_the_target(seconds: float, word: str) -> None:
    b = AtBench("thin", before=after(seconds))
    assert said(b)[1] == word
    assert "Space" not in b.keys
    b.press("space")
    assert thinned(b) == [] and "There is no amount to add" in b.said


def test_outside_what_the_cup_converts_its_own_seconds_count() -> None:
    b = AtBench("thin", before=after(110.0))
    # A fortieth of 600 ml of coating, then the same cup again.
    assert said(b) == ("15.0 ml", "ADD, STIR")
    assert "the same cup again" in b.text and b.keys["Space"] == "added: 15.0 ml"
    b.press("space")
    (kept,) = thinned(b)
    assert kept.amount.value == pytest.approx(15.0)


def test_at_the_limit_it_stops() -> None:
    def before(clock: ManualClock) -> Sequence[ev.Event]:
        # 90 ml in 600 ml of coating are the 15 % of the profile.
        more = ev.ThinnerAdded(n=0, at=clock.now(), amount=q(90, "ml"), remaining=q(600, "ml"))
        again = ev.EffluxTimed(n=0, at=clock.now(), cup="ford-4", seconds=30.0)
        return [*mixed(clock, 60), more, again]

    b = AtBench("thin", before=before)
    assert said(b)[1] == "LIMIT REACHED"
    assert "allows 15 %" in b.text
    # What goes in all the same is kept, and said.
    b.type("10 ml")
    b.press("enter")
    assert "Over the limit of 15 %" in b.said


def test_a_weight_without_a_density_is_refused() -> None:
    b = AtBench("thin", before=after(38.5))
    b.type("20 g")
    b.press("enter")
    assert "measure it by volume" in b.said
    assert thinned(b) == []
    assert b.row("added").text == "20 g"


def test_nothing_is_not_added() -> None:
    b = AtBench("thin", before=after(38.5))
    b.type("0")
    b.press("enter")
    assert b.said == "Nothing was added." and thinned(b) == []


def test_units_switch() -> None:
    b = AtBench("thin", before=after(38.5), system=System.US)
    us = said(b)[0]
    b.system = System.METRIC
    metric = said(b)[0]
    assert us.endswith("fl oz") and metric.endswith("ml")
    # shown to a tenth of an ounce
    assert float(metric.split()[0]) / OZ == pytest.approx(float(us.split()[0]), abs=0.06)


def test_a_small_part_of_an_ounce_is_told_in_millilitres_too() -> None:
    b = AtBench("thin", before=after(38.5), system=System.US)
    b.fill("left", "100 ml")
    millilitres = advice_on(b.now, b.rows.values).step
    assert millilitres is not None and 0 < millilitres.step_ml < OZ
    assert f"that is {millilitres.step_ml:.1f} ml" in b.text


def test_once_weighed_always_in_grams() -> None:
    """Findings on waits and advice, 31: after a scale Thin asked for 0.16 fl oz."""
    by_cup = AtBench("thin", profile=WEIGHABLE, before=after(38.5))
    millilitres = advice_on(by_cup.now, by_cup.rows.values).step
    assert millilitres is not None and said(by_cup)[0].endswith(" ml")
    b = AtBench("thin", profile=WEIGHABLE, before=after(38.5, unit="g"), system=System.US)
    step = advice_on(b.now, b.rows.values).step
    # 400 g at 1.0 g/ml and 200 g at 1.05 g/ml are 590.48 ml instead of 600; the same share of
    # thinner goes into them, and a millilitre of it weighs 0.8 g.
    assert step is not None
    assert step.step_ml == pytest.approx(millilitres.step_ml * 590.476 / 600, rel=1e-5)
    figure, unit = said(b)[0].split()
    assert (float(figure), unit) == (pytest.approx(step.step_ml * 0.8, abs=0.06), "g")
    left = b.row("left").given
    assert isinstance(left, Quantity)
    assert (left.value, left.unit) == (pytest.approx(600), "g")
    # A bare number is grams now, and a volume is one that says so.
    b.type("12")
    b.press("enter")
    assert thinned(b)[0].amount == q(12, "g", "12")
    b.type("4 ml")
    b.press("enter")
    assert thinned(b)[1].amount == q(4, "ml", "4 ml")
    left = b.row("left").given
    # 600 g, 12 g, and 4 ml of 0.8 g/ml
    assert isinstance(left, Quantity) and left.value == pytest.approx(600 + 12 + 3.2)


def test_what_makes_a_weighed_mix_thicker_is_weighed_too() -> None:
    thicker = msgspec.structs.replace(WEIGHABLE, efflux=Efflux("Ford #4", Range(25, 28)))

    def before(clock: ManualClock) -> Sequence[ev.Event]:
        more = ev.ThinnerAdded(n=0, at=clock.now(), amount=q(40, "g"), remaining=q(600, "g"))
        again = ev.EffluxTimed(n=0, at=clock.now(), cup="ford-4", seconds=22.0)
        return [*mixed(clock, 38.5, unit="g"), more, again]

    b = AtBench("thin", profile=thicker, before=before)
    assert said(b)[1] == "TOO THIN"
    # 590.476 ml of the mix and 50 ml of thinner stand there.
    millilitres = coating_to_thicken_ml(b.job, 640.476)
    assert millilitres is not None
    # 600 g in 590.476 ml without thinner; shown to a tenth of a gram.
    found = re.search(r"About ([\d.]+) g by this mix's own line", b.text)
    assert found and float(found[1]) == pytest.approx(millilitres * 600 / 590.476, abs=0.06)


def test_what_is_left_may_be_weighed() -> None:
    b = AtBench("thin", profile=WEIGHABLE, before=after(38.5, unit="g"))
    whole = advice_on(b.now, b.rows.values).step
    b.fill("left", "300")
    half = advice_on(b.now, b.rows.values).step
    assert whole is not None and half is not None
    assert half.step_ml == pytest.approx(whole.step_ml / 2)
    b.press("enter", "space")
    assert thinned(b)[0].remaining == q(300, "g", "300")


def test_solids_and_wet_film_follow_the_thinner() -> None:
    context = AtBench("thin", before=after(22.0)).now
    readout = thin_readout(context, advice_on(context, {"left": q(600, "ml")}), 600.0)
    # No thinner in: 45 % solids as the profile says; 50 um are meant for its usual 10 %, so
    # 50 / 1.10 = 45.5 um leave the same dry film.
    assert "spray 45 µm wet for the same dry film, solids 45.0 %" in readout.lines
    assert readout.tone is Tone.GOOD


def test_without_a_thinner_nothing_is_advised() -> None:
    assert said(AtBench("thin", profile=profile(mix=None), before=after(38)))[1] == "NO THINNER"
