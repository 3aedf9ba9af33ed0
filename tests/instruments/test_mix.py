"""The mix worked with keys: what it says, where the focus is, what is on disk."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from booth.bench.context import Context
from booth.clock import ManualClock
from booth.instruments.mix.words import empty_readout, pour_readout
from booth.job.pouring import BatchPlan, pouring
from booth.log import events as ev
from booth.log.fold import fold
from booth.profile.model import AtTemperature, Mix, MixPart, Thinner
from booth.profile.steps import DEFAULT_STEPS
from booth.units import System
from booth.widgets.pour_table import PourTable
from booth.words.tone import Tone
from tests.instruments.at_bench import AtBench, at_bench
from tests.job.make import START, opened, profile, q

#: 2 : 1 with 10 % of thinner: of 660 ml 400, 200 and 60.
TWO_TO_ONE = profile(
    mix=Mix(
        parts=(MixPart("clear", 2, 1.0), MixPart("hardener", 1, 1.2)),
        thinner=Thinner("thinner", 10, 15, 0.8, 0.8),
        pot_life=AtTemperature(21.0, 4 * 3600),
    )
)


def figure(bench: AtBench) -> str:
    readout = bench.instrument.readout(bench.bench.desk.context, bench.instrument.values())
    return f"{readout.figure} {readout.unit}".strip()


def word(bench: AtBench) -> str:
    readout = bench.instrument.readout(bench.bench.desk.context, bench.instrument.values())
    return readout.shown_word


def table(bench: AtBench) -> list[tuple[str, str]]:
    return [(row.name, row.mark) for row in bench.instrument.query_one(PourTable).rows]


async def press(bench: AtBench, *keys: str) -> None:
    """Press keys as a person does, with some time between them."""
    for key in keys:
        bench.clock.advance(2.0)
        await bench.press(key)


def kept(bench: AtBench) -> list[ev.Event]:
    return [event for event in bench.log if not isinstance(event, ev.ClockNoticed)]


async def test_three_pours_with_the_space_bar_make_a_batch() -> None:
    async with at_bench("mix", profile=TWO_TO_ONE) as bench:
        assert bench.focused_row == "amount"
        await bench.type("660 ml")
        await press(bench, "enter")
        assert bench.focused_row == "cup"
        assert (figure(bench), word(bench)) == ("400 ml", "CLEAR")
        assert table(bench) == [("clear", "400 ml"), ("hardener", "600 ml"), ("thinner", "660 ml")]
        await press(bench, "space")
        assert (figure(bench), word(bench)) == ("600 ml", "HARDENER")
        assert bench.focused_row == "cup"
        await press(bench, "enter")  # an Enter too many is no pour
        assert (figure(bench), word(bench)) == ("600 ml", "HARDENER")
        await press(bench, "space")
        assert (figure(bench), word(bench)) == ("660 ml", "THINNER")
        await press(bench, "space")
        *pours, batch = kept(bench)
        assert [(pour.name, round(pour.amount.value)) for pour in pours] == [  # type: ignore[attr-defined]
            ("clear", 400), ("hardener", 200), ("thinner", 60),
        ]  # fmt: skip
        assert isinstance(batch, ev.BatchMixed)
        assert (batch.batch, batch.total.value) == (1, pytest.approx(660))  # type: ignore[union-attr]
        assert word(bench) == "MIXED"
        # The pot life runs and is among the clocks.
        assert "4:00:00" in bench.text
        await press(bench, "enter")
        await bench.pilot.pause()
        assert isinstance(kept(bench)[-1], ev.StepDone)


async def test_too_much_is_typed_and_the_rest_grows() -> None:
    async with at_bench("mix", profile=TWO_TO_ONE) as bench:
        await bench.type("660 ml")
        await press(bench, "enter", "space")
        await bench.type("640")  # 240 of hardener instead of 200
        await press(bench, "enter")
        assert (figure(bench), word(bench)) == ("720 ml", "ADD CLEAR")
        assert "Too much hardener" in bench.text
        assert table(bench) == [
            ("clear", "400 ml"), ("hardener", "640 ml"), ("clear", "720 ml"), ("thinner", "792 ml"),
        ]  # fmt: skip
        await press(bench, "space", "space")
        batch = kept(bench)[-1]
        assert isinstance(batch, ev.BatchMixed)
        assert {pour.name: round(pour.amount.value) for pour in batch.pours} == {
            "clear": 480, "hardener": 240, "thinner": 72,
        }  # fmt: skip


async def test_a_reading_below_the_last_is_refused_and_stays_for_correction() -> None:
    async with at_bench("mix", profile=TWO_TO_ONE) as bench:
        await bench.type("660 ml")
        await press(bench, "enter", "space")
        await bench.type("200")
        await press(bench, "enter")
        assert "marks count up" in bench.text
        assert bench.instrument.row("cup").typed == "200"
        assert len(kept(bench)) == 1


async def test_backspace_goes_back_one_pour_even_from_a_mixed_batch() -> None:
    async with at_bench("mix", profile=TWO_TO_ONE) as bench:
        await bench.type("660 ml")
        await press(bench, "enter", "space", "space", "space")
        assert word(bench) == "MIXED"
        await press(bench, "backspace")
        assert (figure(bench), word(bench)) == ("660 ml", "THINNER")
        await press(bench, "backspace")
        assert (figure(bench), word(bench)) == ("600 ml", "HARDENER")
        voids = [event.target for event in kept(bench) if isinstance(event, ev.Voided)]
        assert voids == [5, 4, 3]


async def test_on_the_scale_in_grams_whatever_the_units() -> None:
    async with at_bench("mix", profile=TWO_TO_ONE, system=System.US) as bench:
        await bench.type("660 ml")
        # Up to 'Pour by', to the right, Enter: the scale.
        await press(bench, "down", "down", "right", "enter")
        assert bench.focused_row == "scale"
        assert figure(bench) == "400.0 g"
        await bench.type("405")
        await press(bench, "enter")
        (pour,) = kept(bench)
        assert isinstance(pour, ev.Poured)
        assert (pour.amount.value, pour.amount.unit) == (405, "g")
        # Units switched on the way: the marks of a scale stay grams.
        await press(bench, "f3")
        assert figure(bench) == "648.0 g"


async def test_units_switch_the_marks_at_any_moment() -> None:
    async with at_bench("mix", profile=TWO_TO_ONE) as bench:
        await bench.type("660 ml")
        await press(bench, "enter", "f3")
        # 400 ml / 29.5735 ml per US fl oz (NIST SP 811, app. B).
        assert figure(bench) == f"{400 / 29.5735:.1f} fl oz"


async def test_more_thinner_than_the_limit_is_refused() -> None:
    async with at_bench("mix", profile=TWO_TO_ONE) as bench:
        await bench.type("660 ml")
        await press(bench, "down", "down", "down")
        assert bench.focused_row == "thinner"
        await bench.type("20")
        await press(bench, "enter")
        assert "more than the 15 %" in bench.text
        await press(bench, "space")
        assert kept(bench) == []


async def test_half_poured_comes_back_where_it_was() -> None:
    def before(clock: ManualClock) -> Sequence[ev.Event]:
        return [
            ev.Poured(
                n=0, at=clock.now(), batch=1, name="clear", amount=q(404, "ml"),
                wanted=q(660, "ml"), thinner=q(10, "%"),
            )
        ]  # fmt: skip

    async with at_bench("mix", profile=TWO_TO_ONE, before=before) as bench:
        assert bench.focused_row == "cup"
        assert word(bench) == "HARDENER"
        assert figure(bench) == "606 ml"  # 404 of clear want 202
        await press(bench, "space", "space")
        batch = kept(bench)[-1]
        assert isinstance(batch, ev.BatchMixed) and batch.batch == 1


async def test_the_amount_that_was_planned_is_offered() -> None:
    def before(clock: ManualClock) -> Sequence[ev.Event]:
        return [
            ev.AmountPlanned(n=0, at=clock.now(), area=q(2, "m2"), amount=q(660, "ml"))
        ]  # fmt: skip

    async with at_bench("mix", profile=TWO_TO_ONE, before=before) as bench:
        assert bench.focused_row == "cup"
        assert figure(bench) == "400 ml"
        await press(bench, "space")
        assert isinstance(kept(bench)[-1], ev.Poured)


async def test_a_second_batch_onto_the_rest_of_the_first() -> None:
    async with at_bench("mix", profile=TWO_TO_ONE) as bench:
        await bench.type("660 ml")
        await press(bench, "enter", "space", "space", "space")
        await bench.pass_time(3600)
        await bench.type("600 ml")
        rows = [row.field.key for row in bench.instrument.rows]
        await press(bench, *["down"] * rows.index("onto"), "right")
        assert "the rest of batch 1" in bench.text
        await press(bench, "down")
        assert bench.focused_row == "rest"
        await bench.type("270 ml")
        await press(bench, "enter")
        # 330 ml fresh: 200, 100 and 30, counted on from 270.
        assert figure(bench) == "470 ml"
        assert "batch 1, which is older" in bench.text
        await press(bench, "space", "space", "space")
        batch = kept(bench)[-1]
        assert isinstance(batch, ev.BatchMixed)
        assert (batch.batch, batch.onto) == (2, 1)
        assert batch.total is not None and batch.total.value == pytest.approx(600)
        # The older one rules: of its four hours not quite three are left.
        assert "2:59:" in bench.text and "4:00:00" not in bench.text


async def test_a_press_that_bounces_is_one_pour() -> None:
    async with at_bench("mix", profile=TWO_TO_ONE) as bench:
        await bench.type("660 ml")
        await press(bench, "enter", "space")
        await bench.press("space")  # at the same moment
        assert [type(event) for event in kept(bench)] == [ev.Poured]


async def test_what_is_left_of_the_hardener_sets_the_batch() -> None:
    async with at_bench("mix", profile=TWO_TO_ONE) as bench:
        await bench.type("100 ml")
        await press(bench, "down", "left", "enter")
        assert "all that is left of hardener" in bench.text
        assert figure(bench) == "200 ml"


async def test_nothing_to_mix_says_stir() -> None:
    alone = profile(mix=None)
    async with at_bench("cautions", profile=alone) as bench:
        readout = empty_readout(bench.bench.desk.context)
        assert (readout.figure, readout.word) == ("STIR", "")


async def test_names_are_never_markup() -> None:
    odd = profile(mix=Mix(parts=(MixPart("[red]x[/", 2), MixPart("\x1b[2Jy", 1))))
    async with at_bench("mix", profile=odd) as bench:
        await bench.type("300 ml")
        await press(bench, "enter")
        assert "[red]x[/" in bench.text and "␛[2Jy" in bench.text
        await press(bench, "space", "space")
        assert isinstance(kept(bench)[-1], ev.BatchMixed)


@pytest.mark.parametrize("size", [(80, 24), (100, 30), (200, 50)])
async def test_everything_fits(size: tuple[int, int]) -> None:
    async with at_bench("mix", profile=TWO_TO_ONE, size=size) as bench:
        await bench.type("660 ml")
        await press(bench, "enter", "space")
        await bench.type("640")
        await press(bench, "enter")
        for row in (*bench.instrument.rows, bench.instrument.query_one(PourTable)):
            assert row.region.height > 0
            assert row.region.bottom <= size[1] - 1
        assert bench.instrument.query_one("FigurePanel").size.height >= 6


def test_the_figure_is_the_next_mark() -> None:
    plan = BatchPlan(q(660, "ml"), thinner_percent=10)
    state = pouring(TWO_TO_ONE, plan, [("clear", 400)])
    job = fold([opened(mix=TWO_TO_ONE.mix)])
    context = Context(job, START, System.METRIC, DEFAULT_STEPS[0])
    readout = pour_readout(context, plan, state)
    assert (readout.figure, readout.unit, readout.tone) == ("600", "ml", Tone.READY)
    assert readout.lines[0] == "200 ml of hardener"


@pytest.mark.parametrize(
    ("hours", "said", "tone"),
    [
        (0.1, "MIXED", Tone.GOOD),
        (3.6, "NEARLY OVER", Tone.CLOSING),  # its last half hour
        (4.1, "POT LIFE OVER", Tone.LATE),
    ],
)
async def test_the_batch_says_when_its_pot_life_is_over(
    hours: float, said: str, tone: Tone
) -> None:
    def mixed(clock: ManualClock) -> Sequence[ev.Event]:
        return [ev.BatchMixed(n=0, at=clock.now(), batch=1, total=q(660, "ml"))]

    async with at_bench("mix", profile=TWO_TO_ONE, before=mixed) as bench:
        await bench.pass_time(hours * 3600)
        readout = bench.instrument.readout(bench.bench.desk.context, bench.instrument.values())
        assert (readout.word, readout.tone) == (said, tone)
