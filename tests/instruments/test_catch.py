"""The catch: what it comes to, in both systems of units, what it refuses, and as keys are pressed."""

from __future__ import annotations

import pytest

from booth.instruments.catch import delivery_of, delivery_readout
from booth.log.events import CatchMade, Event
from booth.log.session import Session
from booth.log.store import NotKept
from booth.profile.model import Film, Gun, Range
from booth.units import System
from tests.instruments.at_bench import AtBench, at_bench, context_of
from tests.job.make import profile, q

#: 29.5735295625 ml to the US fluid ounce (NIST Handbook 44, Appendix C)
OZ = 29.5735295625


async def fill(desk: AtBench, key: str, text: str) -> None:
    """Type into a row, then go back to what was caught."""
    desk.app.screen.set_focus(desk.instrument.row(key).place)
    await desk.type(text)
    desk.app.screen.set_focus(desk.instrument.row("amount").place)


@pytest.mark.parametrize(("system", "cup"), [(System.US, "20.0 fl oz"), (System.METRIC, "591 ml")])
def test_a_full_cup_at_six_ounces_a_minute_lasts_3_min_20_s(system: System, cup: str) -> None:
    # 20 fl oz / 6 fl oz/min = 3 1/3 min (common practice, no source, for both figures)
    shown = delivery_readout(context_of(system=system), 6 * OZ, "paint", "this catch")
    assert f"a full cup of {cup} lasts 3:20" in shown.lines


def test_a_weight_becomes_a_volume_by_the_density_of_what_was_caught() -> None:
    dense = context_of(profile=profile(film=Film(coats=1, density_g_ml=1.2)))
    caught = {"amount": q(120, "g"), "seconds": q(30, "s")}
    # 120 g / 1.2 g/ml = 100 ml in half a minute
    assert delivery_of(dense, {**caught, "liquid": "paint"}) == pytest.approx(200.0)
    # IAPWS: water of 20 C weighs 998.207 kg/m3; its digits are the tolerance
    water = delivery_of(dense, {**caught, "liquid": "water"})
    assert water == pytest.approx(120 / 0.998207 * 2, rel=1e-6)
    assert delivery_of(context_of(), {**caught, "liquid": "paint"}) is None


def test_against_the_profile() -> None:
    asked = context_of(profile=profile(gun=Gun(delivery_ml_min=Range(170, 240))))
    words = [delivery_readout(asked, each, "paint", "").word for each in (169, 170, 240, 241)]
    assert words == ["TOO LITTLE", "IN RANGE", "IN RANGE", "TOO MUCH"]
    assert delivery_readout(asked, 200, "water", "").word == "WITH WATER"


async def test_a_short_catch_ended_early_counts_the_time_that_passed() -> None:
    async with at_bench("catch") as desk:
        await fill(desk, "seconds", "30 s")
        await desk.press("space")
        await desk.pass_time(3.0 + 20.0)
        await desk.press("space")
        await desk.pilot.pause()
        await desk.type("60 ml")
        await desk.press("enter")
        (kept,) = desk.log
        assert isinstance(kept, CatchMade)
        assert kept.seconds == 20.0 and kept.delivery_ml_min == pytest.approx(180.0)
        assert desk.sound.signals == 1


@pytest.mark.parametrize(
    ("typed", "said"), [("0", "a time above zero"), ("6 psi", "measures a pressure")]
)
async def test_no_time_starts_no_catch(typed: str, said: str) -> None:
    async with at_bench("catch") as desk:
        await fill(desk, "seconds", typed)
        await desk.press("space")
        await desk.pass_time(10.0)
        assert not desk.instrument.busy
        assert said in desk.text.splitlines()[-2] + desk.text.splitlines()[-3]


async def test_where_the_disk_is_full_the_time_caught_in_is_not_forgotten(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    async with at_bench("catch") as desk:
        await fill(desk, "seconds", "30 s")
        await desk.press("space")
        await desk.pass_time(3.0 + 20.0)
        await desk.press("space")
        await desk.pilot.pause()
        await desk.type("60 ml")

        def full(self: Session, event: Event) -> Event:
            raise NotKept("The disk is full: this entry is NOT kept.")

        with monkeypatch.context() as broken:
            broken.setattr(Session, "record", full)
            await desk.press("enter")
            assert "NOT kept" in desk.text and desk.log == []
            await desk.press("enter")
        await desk.pass_time(1.0)
        assert desk.instrument.row("amount").typed == "60 ml"
        await desk.press("enter")
        (kept,) = desk.log
        assert isinstance(kept, CatchMade)
        assert kept.seconds == 20.0 and kept.delivery_ml_min == pytest.approx(180.0)


@pytest.mark.parametrize(
    ("amount", "seconds", "said"),
    [("0", "", "Nothing caught gives no delivery"), ("180", "0", "a time above zero")],
)
async def test_what_comes_to_no_delivery_is_not_kept(amount: str, seconds: str, said: str) -> None:
    async with at_bench("catch") as desk:
        if seconds:
            await fill(desk, "seconds", seconds)
        await desk.type(amount)
        await desk.press("enter")
        assert desk.log == [] and said in desk.text
        assert desk.instrument.row("amount").typed == amount  # it stays, to be corrected
        await desk.press("backspace")
        await desk.type("9")
        await desk.pass_time(1.0)
        assert said not in desk.text
