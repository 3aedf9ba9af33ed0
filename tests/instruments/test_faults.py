"""Faults: picked with the arrows, kept once, and their causes read against the job's own figures."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from booth.clock import ManualClock
from booth.instruments.faults.words import KINDS, causes_lines, reading_words, strongest
from booth.log.events import (
    AirRead,
    CoatBegun,
    CoatEnded,
    EffluxTimed,
    Event,
    FaultSeen,
    FilmRead,
    StepDone,
    Voided,
)
from booth.trade.faults.evidence import _GAUGES, Evidence, Reading
from booth.trade.faults.fault_model import Fault
from booth.trade.faults.ranked_causes import FAULTS, RankedCause, Standing, rank_causes
from booth.units import System
from booth.widgets.figure_panel import FigurePanel
from booth.widgets.pick_list import PickList, lay_out
from booth.widgets.rows import strings
from booth.words.tone import Tone
from tests.instruments.at_bench import AtBench, at_bench
from tests.job.make import q


def heavy(clock: ManualClock) -> Sequence[Event]:
    """A thin mix laid too heavily on the door, at a good pressure."""
    now = clock.now()
    return (
        EffluxTimed(n=0, at=now, cup="ford-4", seconds=17.0),
        AirRead(n=0, at=now, inlet=q(195, "kPa")),
        CoatBegun(n=0, at=now, part="door", coat=1),
        CoatEnded(n=0, at=now, part="door", coat=1),
        FilmRead(
            n=0, at=now, part="door", last_wetted=q(100, "um"), first_dry=q(125, "um"), coat=1
        ),
    )


def pane(desk: AtBench) -> str:
    """The text of the instrument alone, its lines joined."""
    region = desk.instrument.region
    rows = desk.text.split("\n")[region.y : region.bottom]
    return " ".join(" ".join(row[region.x : region.right] for row in rows).split())


def told(fault: Fault, causes: tuple[RankedCause, ...], system: System) -> str:
    """All lines of the causes as one text."""
    return "\n".join(line.text for line in causes_lines(fault, causes, system))


HEAVY = Evidence(wet_um=100.0, wet_high_um=60.0, efflux_s=17.0, efflux_low_s=20.0)


@pytest.mark.parametrize(
    ("read", "us", "metric"),
    [
        (
            Reading("wet film", 101.6, 50.8, "um", "above"),
            "wet film 4.0 mil, above 2.0 mil (profile)",
            "wet film 102 µm, above 51 µm (profile)",
        ),
        (
            Reading("efflux time", 17.0, 20.0, "s", "below"),
            "efflux time 17.0 s, below 20.0 s (profile)",
            "efflux time 17.0 s, below 20.0 s (profile)",
        ),
        (
            Reading("coat laid early by", 320.0, 0.0, "s", "above"),
            "coat laid early by 5:20",
            "coat laid early by 5:20",
        ),
        (
            Reading("overlap", 0.3, 0.5, "1", "below"),
            "overlap 30 %, below 50 % (profile)",
            "overlap 30 %, below 50 % (profile)",
        ),
        (
            Reading("air", 15.0, 20.0, "C", "below", "a handbook"),
            "air 59 °F, below 68 °F (a handbook)",
            "air 15.0 °C, below 20.0 °C (a handbook)",
        ),
    ],
)
def test_figure_is_told_in_the_units_shown(read: Reading, us: str, metric: str) -> None:
    assert reading_words(read, System.US) == us
    assert reading_words(read, System.METRIC) == metric


def test_every_figure_of_the_evidence_has_a_kind() -> None:
    assert {gauge.unit for gauge in _GAUGES.values()} <= {*KINDS, "s"}


@pytest.mark.parametrize("key", list(FAULTS))
def test_nothing_is_claimed_without_a_figure(key: str) -> None:
    causes = rank_causes(key, Evidence())
    assert strongest(causes, System.US) is None
    text = told(FAULTS[key], causes, System.US)
    assert text.startswith("No figure of this job speaks for a cause.")
    assert FAULTS[key].film in text


def test_strongest_cause_is_the_large_figure_with_its_limit() -> None:
    readout = strongest(rank_causes("runs", HEAVY), System.METRIC)
    assert readout is not None
    assert (readout.figure, readout.unit, readout.tone) == ("100", "µm", Tone.CAUTION)
    assert readout.word == "ABOVE 60 µm"
    assert "Too much was laid" in readout.label


def test_every_cause_is_told_with_its_figure_or_as_open() -> None:
    causes = rank_causes("runs", HEAVY)
    text = told(FAULTS["runs"], causes, System.METRIC)
    for each in causes:
        assert each.cause.words in text
        for read in (*each.figures_for, *each.figures_against):
            assert reading_words(read, System.METRIC) in text
    shown = [each for each in causes if each.standing is Standing.SHOWN]
    assert text.index(shown[0].cause.words) < text.index(shown[1].cause.words)
    assert text.index(shown[1].cause.words) < text.index("No figure for or against")


def test_thinner_that_nobody_measured_is_noted_without_a_number() -> None:
    causes = rank_causes("runs", Evidence(thinner_unmeasured=True))
    readout = strongest(causes, System.US)
    assert readout is not None
    assert (readout.figure, readout.word) == ("?", "THINNER WENT IN UNMEASURED")


def test_list_keeps_the_picked_line_in_sight() -> None:
    lines = tuple((f"line {n}", "behind", n == 3) for n in range(12))
    for picked in range(12):
        drawn = strings(lay_out(lines, picked, 30, 5))
        assert len(drawn) == 5
        assert all(len(row) == 30 for row in drawn)
        assert sum(row.startswith("→ ") for row in drawn) == 1
        assert any(row.startswith(f"→ line {picked} ") for row in drawn)
    assert strings(lay_out(lines, 0, 30, 5))[-1].endswith("↓")
    assert strings(lay_out(lines, 11, 30, 5))[0].endswith("↑")
    assert lay_out(lines, 0, 0, 5) == []


def test_list_is_spread_where_there_is_room() -> None:
    lines = tuple((f"line {n}", "", False) for n in range(4))
    assert [bool(row.strip()) for row in strings(lay_out(lines, 0, 30, 8))] == [True, False] * 4
    assert [bool(row.strip()) for row in strings(lay_out(lines, 0, 30, 7))] == [True] * 4 + [
        False
    ] * 3


def test_what_stands_behind_gives_way_unless_it_must_be_seen() -> None:
    lines = (("dust", "specks", False), ("blush", "seen: door", True))
    narrow, wide = strings(lay_out(lines, 0, 24, 2)), strings(lay_out(lines, 0, 60, 2))
    assert ("specks" in narrow[0], "specks" in wide[0]) == (False, True)
    assert "seen: door" in narrow[1] and "seen: door" in wide[1]


@pytest.mark.parametrize("key", ["enter", "space", "pagedown"])
async def test_fault_that_is_seen_is_kept_and_its_causes_are_shown(key: str) -> None:
    async with at_bench("faults", before=heavy, size=(80, 24)) as desk:
        kept = len(desk.log)
        await desk.press("right", "down", key)
        event = desk.log[-1]
        assert isinstance(event, FaultSeen)
        assert (event.fault, event.part) == ("runs", "door")
        readout = desk.instrument.query_one(FigurePanel).readout
        assert (readout.figure, readout.word) == ("100", "ABOVE 60 µm")
        assert "runs and sags" in pane(desk)
        await desk.press("f3")
        assert desk.instrument.query_one(FigurePanel).readout.word == "ABOVE 2.4 mil"
        await desk.press("space")
        assert "● seen: door" in pane(desk)
        await desk.press(key)
        assert len(desk.log) == kept + 1  # once for each part


async def test_causes_can_be_read_to_their_end() -> None:
    async with at_bench("faults", before=heavy, size=(80, 24)) as desk:
        await desk.press("down", "enter")
        assert "The figures speak against" not in pane(desk)
        for _ in range(40):
            await desk.press("down")
        assert "inlet pressure" in pane(desk) or "speak against" in pane(desk)
        for _ in range(60):
            await desk.press("up")
        assert "1 Too much was laid in one coat." in pane(desk)


async def test_no_fault_goes_on_with_one_key() -> None:
    async with at_bench("faults") as desk:
        assert "no fault seen: go on" in pane(desk)
        await desk.press("enter")
        assert [type(each) for each in desk.log] == [StepDone]
        assert desk.bench.step.key == "result"


async def test_void_takes_the_fault_back() -> None:
    async with at_bench("faults", before=heavy) as desk:
        await desk.press("down", "down", "enter")
        assert desk.bench.desk.job.faults
        await desk.press("backspace")
        assert isinstance(desk.log[-1], Voided)
        assert not desk.bench.desk.job.faults
        assert "no fault seen: go on" in pane(desk)


async def test_up_from_the_first_line_leads_to_the_steps() -> None:
    async with at_bench("faults") as desk:
        await desk.press("down", "up", "up")
        assert desk.bench.picking


@pytest.mark.parametrize(("size", "row"), [((80, 24), 2), ((200, 60), 4), ((200, 60), 5)])
async def test_mouse_picks_and_takes(size: tuple[int, int], row: int) -> None:
    async with at_bench("faults", before=heavy, size=size) as desk:
        await desk.pilot.click(PickList, offset=(6, row))
        await desk.pilot.pause()
        assert desk.instrument.query_one(PickList).picked == 2
        await desk.pilot.click(PickList, offset=(6, row))
        await desk.pilot.pause()
        event = desk.log[-1]
        assert isinstance(event, FaultSeen)
        assert event.fault == list(FAULTS)[1]


async def test_hostile_part_name_is_text() -> None:
    async with at_bench("faults", parts=("[bold]x[/ \x1b[2J",)) as desk:
        await desk.press("right")
        assert "[bold]x[/" in pane(desk)
        await desk.press("down", "enter")
        assert "[bold]x[/" in pane(desk)
