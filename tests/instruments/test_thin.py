"""Thinning worked with keys: the amount to add, what was really added, back to the cup and on."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import pytest

from booth.clock import ManualClock
from booth.instruments.efflux import Efflux
from booth.instruments.thin.instrument import Thin
from booth.instruments.thin.words import thin_readout
from booth.log import events as ev
from booth.units import Quantity, System
from booth.words.tone import Tone
from tests.instruments.at_bench import AtBench, at_bench
from tests.job.make import profile, q

Before = Callable[[ManualClock], Sequence[ev.Event]]


def mixed(clock: ManualClock, *seconds: float) -> list[ev.Event]:
    now = clock.now()
    pours = (ev.Pour("clear", q(400, "ml")), ev.Pour("hardener", q(200, "ml")))
    batch = ev.BatchMixed(n=0, at=now, batch=1, pours=pours, total=q(600, "ml"))
    return [batch, *(ev.EffluxTimed(n=0, at=now, cup="ford-4", seconds=s) for s in seconds)]


def after(*seconds: float) -> Before:
    return lambda clock: mixed(clock, *seconds)


def said(bench: AtBench) -> tuple[str, str]:
    assert isinstance(bench.instrument, Thin)
    context = bench.bench.desk.context
    readout = bench.instrument.readout(context, bench.instrument.values())
    return f"{readout.figure} {readout.unit}".strip(), readout.shown_word


def thinned(bench: AtBench) -> list[ev.ThinnerAdded]:
    return [event for event in bench.log if isinstance(event, ev.ThinnerAdded)]


async def test_space_says_that_the_figure_was_added_and_enter_leads_back_to_the_cup() -> None:
    async with at_bench("thin", before=after(38.5)) as bench:
        figure, word = said(bench)
        assert word == "ADD, STIR"
        await bench.press("space")
        (event,) = thinned(bench)
        assert f"{event.amount.value:.0f} ml" == figure
        assert event.remaining is not None and event.remaining.value == 600
        assert said(bench)[1] == "TIME AGAIN"
        assert "thinner in it now" in bench.text
        await bench.press("enter")
        await bench.pilot.pause()
        assert isinstance(bench.instrument, Efflux)
        # Timed again: three runs on target, and back here all is well.
        for _ in range(2):
            await bench.press("space")
            bench.clock.advance(22.0)
            await bench.press("space")
        await bench.press("enter")
        await bench.pilot.pause()
        assert said(bench) == ("22.0 s", "ON TARGET")
        await bench.press("enter")
        await bench.pilot.pause()
        assert [event.step for event in bench.log if isinstance(event, ev.StepDone)] == [
            "efflux", "thin",
        ]  # fmt: skip


async def test_what_was_really_added_is_typed() -> None:
    async with at_bench("thin", before=after(38.5)) as bench:
        assert bench.focused_row == "added"
        await bench.type("25")
        await bench.press("enter")
        (event,) = thinned(bench)
        assert event.amount.value == 25
        # 25 ml in 600 ml of coating.
        assert "4.2 % thinner in it now" in bench.text
        left = bench.instrument.row("left").field.default
        assert isinstance(left, Quantity) and left.value == 625


async def test_less_is_left_than_was_mixed() -> None:
    async with at_bench("thin", before=after(38.5)) as bench:
        whole = float(said(bench)[0].split()[0])
        await bench.press("down")
        await bench.type("300 ml")
        await bench.press("enter")
        assert bench.focused_row == "added"
        assert float(said(bench)[0].split()[0]) == pytest.approx(whole / 2, abs=0.6)
        await bench.press("space")
        assert thinned(bench)[0].remaining == q(300, "ml", "300 ml")


async def test_a_second_round_rests_on_this_mix() -> None:
    def before(clock: ManualClock) -> Sequence[ev.Event]:
        more = ev.ThinnerAdded(n=0, at=clock.now(), amount=q(30, "ml"), remaining=q(600, "ml"))
        again = ev.EffluxTimed(n=0, at=clock.now(), cup="ford-4", seconds=27.0)
        return [*mixed(clock, 38.5), more, again]

    async with at_bench("thin", before=before) as bench:
        assert "by 2 measurements of this mix" in bench.text
        assert "5.0 % thinner: 27.0 s" in bench.text


async def test_backspace_voids_what_was_added() -> None:
    async with at_bench("thin", before=after(38.5)) as bench:
        figure = said(bench)
        await bench.press("space", "backspace")
        assert said(bench) == figure
        assert isinstance(bench.log[-1], ev.Voided)


@pytest.mark.parametrize(
    ("seconds", "word"),
    [(22.0, "ON TARGET"), (19.0, "TOO THIN"), (110.0, "CANNOT TELL")],
)
async def test_words_against_the_target(seconds: float, word: str) -> None:
    async with at_bench("thin", before=after(seconds)) as bench:
        assert said(bench)[1] == word
        await bench.press("space")
        assert thinned(bench) == []


async def test_outside_the_cup_the_other_cup_is_named() -> None:
    async with at_bench("thin", before=after(110.0)) as bench:
        # ASTM D1200-94(2005) 11.2: a Ford #4 is good from 20 to 100 s.
        assert "100 s" in bench.text and "Ford #5" in bench.text


async def test_at_the_limit_it_stops() -> None:
    def before(clock: ManualClock) -> Sequence[ev.Event]:
        # 90 ml in 600 ml of coating are the 15 % of the profile.
        more = ev.ThinnerAdded(n=0, at=clock.now(), amount=q(90, "ml"), remaining=q(600, "ml"))
        again = ev.EffluxTimed(n=0, at=clock.now(), cup="ford-4", seconds=30.0)
        return [*mixed(clock, 60), more, again]

    async with at_bench("thin", before=before) as bench:
        assert said(bench)[1] == "LIMIT REACHED"
        assert "allows 15 %" in bench.text
        # What goes in all the same is kept, and said.
        await bench.type("10 ml")
        await bench.press("enter")
        assert "Over the limit of 15 %" in bench.text


async def test_a_weight_without_a_density_is_refused() -> None:
    async with at_bench("thin", before=after(38.5)) as bench:
        await bench.type("20 g")
        await bench.press("enter")
        assert "measure it by volume" in bench.text
        assert thinned(bench) == []
        assert bench.instrument.row("added").typed == "20 g"


async def test_units_switch() -> None:
    async with at_bench("thin", before=after(38.5), system=System.US) as bench:
        us = said(bench)[0]
        await bench.press("f3")
        metric = said(bench)[0]
        assert us.endswith("fl oz") and metric.endswith("ml")
        # 1 US fl oz = 29.57353 ml (NIST SP 811, app. B); shown to a tenth of an ounce.
        assert float(metric.split()[0]) / 29.57353 == pytest.approx(float(us.split()[0]), abs=0.06)


async def test_solids_and_wet_film_follow_the_thinner() -> None:
    async with at_bench("thin", before=after(22.0)) as bench:
        context = bench.bench.desk.context
        assert isinstance(bench.instrument, Thin)
        advice = bench.instrument.advice(context, {})
        lines = " ".join(thin_readout(context, advice, 600.0).lines)
        # No thinner in: 45 % solids as the profile says; 50 um are meant for its usual 10 %, so
        # 50 / 1.10 = 45.5 um leave the same dry film.
        assert "solids 45.0 %" in lines and "wet film 45 µm" in lines
        assert thin_readout(context, advice, 600.0).tone is Tone.GOOD


async def test_without_a_thinner_nothing_is_advised() -> None:
    async with at_bench("thin", profile=profile(mix=None), before=after(38)) as bench:
        assert said(bench)[1] == "NO THINNER"


@pytest.mark.parametrize("size", [(80, 24), (100, 30), (200, 50)])
async def test_everything_fits(size: tuple[int, int]) -> None:
    async with at_bench("thin", before=after(38.5, 38.0), size=size) as bench:
        for row in bench.instrument.rows:
            assert row.region.height > 0 and row.region.bottom <= size[1] - 1
        assert bench.instrument.query_one("FigurePanel").size.height >= 6
