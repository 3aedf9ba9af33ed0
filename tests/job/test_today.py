"""What the last job taught and what is otherwise today. All values are invented."""

from __future__ import annotations

from pathlib import Path

import pytest

from booth.bench.instrument import around_in, around_now
from booth.job.past import last_lesson, last_settings
from booth.job.past_settings import GoodSettings
from booth.job.today import Around, Differs, around, differs
from booth.log import events as ev
from booth.log.fold import fold
from booth.log.store import read_log
from booth.shop.model import Gun, Shop
from booth.shop.room_readings import STALE_S, RoomReading
from booth.units import System
from booth.words.last_good_words import lesson_line, today_lines
from tests.instruments.at_bench import AtBench
from tests.job.make import START, at, mild, profile, q
from tests.log.logs import PROFILE, caught, closed, moment, opened, timed, write

THEN = Around("red gun", 1.8, 24.0, 40.0)
SHOP = {"guns": [{"name": "A", "tip_mm": 1.3}, {"name": "odd", "tip_mm": "wide"}]}


@pytest.mark.parametrize(
    ("now", "otherwise"),
    [
        (THEN, Differs()),
        (Around(), Differs()),  # nothing known, nothing said
        (Around("", None, 16.0, None), Differs(air_k=-8.0)),
        (Around("red gun", 1.84, 25.9, 49.9), Differs()),  # within a step, a thermometer, a dial
        (Around("blue gun", 1.4, 30.0, 60.0), Differs("red gun", (1.8, 1.4), 6.0, 20.0)),
    ],
)
def test_only_what_is_known_both_times_and_differs(now: Around, otherwise: Differs) -> None:
    assert differs(THEN, now) == otherwise
    assert differs(Around(), now) == Differs(), "of a job of which nothing is known"


@pytest.mark.parametrize(
    ("system", "words"),
    [
        # 8 K are 14.4 degF (NIST SP 811, app. B: 1.8 degF to the kelvin).
        (
            System.US,
            "colder by 14 °F; another gun (then [b]red); another tip (1.4 mm, then 1.8 mm)",
        ),
        (
            System.METRIC,
            "colder by 8 °C; another gun (then [b]red); another tip (1.4 mm, then 1.8 mm)",
        ),
    ],
)
def test_in_the_painters_units(system: System, words: str) -> None:
    good = GoodSettings(START, then=Around("[b]red", 1.8, 24.0, 40.0))
    (line,) = today_lines(good, Around("blue gun", 1.4, 16.0, 45.0), system)
    assert line == f"Otherwise than then: {words}"
    damp = today_lines(good, Around("[b]red", 1.8, 30.0, 80.0), System.METRIC)
    assert damp == ("Otherwise than then: warmer by 6 °C; damper by 40 %",)
    assert today_lines(good, None, system) == today_lines(None, THEN, system) == ()


def job_in(folder: Path, name: str, first: ev.JobOpened, *events: ev.Event) -> Path:
    return write(folder, name, first, *events)


def weather(air: float, seconds: float) -> ev.WeatherRead:
    read = mild(air=air)
    return ev.WeatherRead(
        n=0, at=moment(seconds), air=read.air, humidity=read.humidity, part=read.part
    )


def test_the_weather_is_that_of_the_last_coat(tmp_path: Path) -> None:
    path = job_in(
        tmp_path,
        "20250601-1200-demo-0001",
        opened(gun="A", shop=SHOP),
        weather(18, 10),
        ev.CoatBegun(n=0, at=moment(20), part="hood", coat=1),
        ev.CoatEnded(n=0, at=moment(80), part="hood", coat=1),
        weather(27, 9000),
        closed(),
    )
    found = around(fold(read_log(path).events))
    assert found == Around("A", 1.3, 18.0, 50.0)


@pytest.mark.parametrize(
    ("gun", "events", "tip_mm"),
    [
        ("A", (), 1.3),
        ("A", (caught(200, tip=1.4),), 1.4),
        (
            "A",
            (caught(200, tip=1.4), ev.GunChanged(n=0, at=moment(), gun="A", tip=q(1.6, "mm"))),
            1.6,
        ),
        ("odd", (), None),
        ("unheard of", (), None),
        ("", (), None),
    ],
)
def test_the_tip_as_told_last(
    tmp_path: Path, gun: str, events: tuple[ev.Event, ...], tip_mm: float | None
) -> None:
    path = job_in(tmp_path, "20250601-1200-demo-0001", opened(gun=gun, shop=SHOP), *events)
    found = around(fold(read_log(path).events))
    assert (found.tip_mm, found.air_c, found.humidity_percent) == (tip_mm, None, None)


def test_the_last_lesson_whatever_the_verdict_was(tmp_path: Path) -> None:
    other = ev.FaultSeen(n=0, at=moment(), fault="runs", part="hood")
    write(tmp_path, "20250601-1200-demo-0001", opened(seconds=-9e5, gun="A"), closed(next_time="a"))
    write(
        tmp_path,
        "20250602-1200-demo-0002",
        opened(seconds=-8e5, gun="A"),
        other,
        closed("redo", next_time="slower"),
    )
    write(tmp_path, "20250603-1200-demo-0003", opened(seconds=-7e5, gun="A"), closed("usable"))
    write(tmp_path, "20250604-1200-demo-0004", opened(seconds=-6e5, gun="B"), closed(next_time="b"))
    lesson = last_lesson(tmp_path, PROFILE.key, "A")
    assert lesson is not None
    assert (lesson.next_time, lesson.verdict, lesson.gun) == ("slower", "redo", "A")
    assert lesson_line(lesson, "2025-06-02") == (
        "Next time, said 2025-06-02 (redo; seen: runs and sags): slower"
    )
    other_gun = last_lesson(tmp_path, PROFILE.key, "C")
    assert other_gun is not None and (other_gun.gun, other_gun.next_time) == ("B", "b")
    assert last_lesson(tmp_path, "none", "A") is None and last_lesson(None, PROFILE.key) is None
    assert lesson_line(None, "") == ""


def test_a_later_verdict_may_bring_the_lesson(tmp_path: Path) -> None:
    again = ev.JudgedAgain(n=0, at=moment(9e4), verdict="redo", next_time="wet the floor")
    write(tmp_path, "20250601-1200-demo-0001", opened(gun="A"), closed(), again)
    lesson = last_lesson(tmp_path, PROFILE.key, "A")
    assert lesson is not None and (lesson.verdict, lesson.next_time) == ("redo", "wet the floor")
    still_open = [ev.Voided(n=0, at=moment(9e4), target=2)]
    write(tmp_path, "20250601-1200-demo-0001", opened(gun="A"), closed(next_time="x"), *still_open)
    assert last_lesson(tmp_path, PROFILE.key, "A") is None, "it was opened again"


def test_settings_of_another_gun_where_this_one_has_none(tmp_path: Path) -> None:
    write(tmp_path, "20250601-1200-demo-0001", opened(gun="A"), timed(20), closed())
    found = last_settings(tmp_path, PROFILE.key, "B")
    assert found is not None and found.gun == "A"
    (line,) = today_lines(found, Around("B"), System.METRIC)
    assert line == "Otherwise than then: another gun (then A)"
    own = last_settings(tmp_path, PROFILE.key, "A")
    assert today_lines(own, Around("A"), System.METRIC) == ()


def test_a_sensor_counts_only_while_it_is_fresh() -> None:
    reading = RoomReading(14.0, 70.0, START.wall)
    assert around_in(reading, at(60), "A", 1.4) == Around("A", 1.4, 14.0, 70.0)
    assert around_in(reading, at(STALE_S + 1), "A", 1.4) == Around("A", 1.4)
    assert around_in(None, at(60), "A", None) == Around("A")


def test_a_step_says_what_is_otherwise_and_the_coats_what_to_change(tmp_path: Path) -> None:
    from booth.bench.instrument import starting_point
    from booth.learnt.past_jobs import PastJobs

    key = profile().key
    first = opened(gun="red", profile=profile(), seconds=-9e5)
    write(
        tmp_path,
        "20250601-1200-demo-0001",
        first,
        weather(30, 0),
        timed(21, "ford-4"),
        closed(next_time="slower"),
    )
    good, past = last_settings(tmp_path, key, "blue"), PastJobs(tmp_path)
    shop = Shop(guns=(Gun("blue", tip_mm=1.4),))
    bench = AtBench(
        "efflux", shop=shop, good=good, past=past, before=lambda clock: [weather(21, 0)]
    )
    assert around_now(bench.now) == Around("blue", 1.4, 21.0, 50.0)
    said = starting_point(bench.bench.instrument, bench.now)
    assert said == (
        "last good: 21.0 s in a Ford #4",
        "Otherwise than then: colder by 9 °C; another gun (then red)",
    )
    coats = AtBench("coats", shop=shop, good=good, past=past)
    (line,) = starting_point(coats.bench.instrument, coats.now)
    assert line.endswith("(good): slower")
