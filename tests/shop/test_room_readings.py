"""The file of a sensor: every way to write it, what is refused and how that is said, how old it is."""

from __future__ import annotations

import json
import os
import time
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.moment import Moment
from booth.shop.model import Room, Shop
from booth.shop.room_readings import (
    AHEAD_S,
    EVERY_S,
    STALE_S,
    RoomReading,
    RoomReadings,
    read_room,
    reading_of,
)
from booth.units import System
from tests.manual_clock import ManualClock

WRITTEN = 1_750_000_000.0
US, METRIC = System.US, System.METRIC


@pytest.mark.parametrize(
    ("text", "system", "air_c", "humidity"),
    [
        ('{"temperature": 14.2, "humidity": 70}', METRIC, 14.2, 70),
        # 57.56 F is 14.2 C: the definition of the degree Fahrenheit, (F - 32) x 5/9.
        ('{"temperature": 57.56, "humidity": 70}', US, 14.2, 70),
        ('{"temperature_c": 14.2, "humidity": 70}', US, 14.2, 70),
        ('{"temperature_c": 14.2, "humidity": 70}', None, 14.2, 70),
        ('{"temperature_f": 57.56, "humidity": 70}', None, 14.2, 70),
        (
            '{"temperature_f": 57.56, "humidity": 70, "battery": 3.1, "place": "x"}',
            METRIC,
            14.2,
            70,
        ),
        ('\n {"humidity": 70.5,\n "temperature": -3}\n', METRIC, -3.0, 70.5),
        ("14.2 70", METRIC, 14.2, 70),
        ("57.56 70\n", US, 14.2, 70),
        ("14.2C 70%", US, 14.2, 70),
        ("14,2; 70", METRIC, 14.2, 70),
        ("14.2,70", METRIC, 14.2, 70),
        ("14.2\t70.25\r\n", METRIC, 14.2, 70.25),
        ("14.2 °C 70 %", None, 14.2, 70),
        ("-5 90", METRIC, -5.0, 90),
    ],
)
def test_whatever_a_logger_writes(
    text: str, system: System | None, air_c: float, humidity: float
) -> None:
    found = reading_of(text, WRITTEN, system)
    assert found.fault == ""
    assert found.air_c == pytest.approx(air_c, abs=1e-3) and found.humidity_percent == humidity
    assert found.wall == WRITTEN


@pytest.mark.parametrize(
    ("time", "wall"),
    [
        (1_749_999_000, 1_749_999_000.0),
        (1_749_999_000.5, 1_749_999_000.5),
        (1_749_999_000_000, 1_749_999_000.0),  # milliseconds
        # 2025-06-15 15:06:40 UTC, by `date -u -d @1750000000`
        ("2025-06-15T15:06:40Z", 1_750_000_000.0),
        ("2025-06-15 17:06:40+02:00", 1_750_000_000.0),
    ],
)
def test_the_time_in_the_file_counts_before_that_of_the_file(time: object, wall: float) -> None:
    text = json.dumps({"temperature": 14, "humidity": 70, "time": time})
    assert reading_of(text, WRITTEN + 500, METRIC).wall == wall


HOSTILE = [
    "",
    "   \n",
    "warm",
    "14.2",
    "14.2 70 3",
    "{",
    "[]",
    "null",
    "[14.2, 70]",
    '{"temperature": 14.2}',
    '{"humidity": 70}',
    '{"temperature": null, "humidity": 70}',
    '{"temperature": "warm", "humidity": 70}',
    '{"temperature": true, "humidity": 70}',
    '{"temperature": NaN, "humidity": 70}',
    '{"temperature": 1e999, "humidity": 70}',
    '{"temperature": 1e300, "humidity": 70}',
    '{"temperature": 14.2, "humidity": 70, "time": "soon"}',
    '{"temperature": 14.2, "humidity": 70, "time": "9999-12-31T23:59:59"}{',
    '{"temperature": 14.2, "humidity": 70} and more',
    '{"temperature": 14.2, "humidity": 70, "time": 1e300}',
    '{"temperature": 14.2, "humidity": 70, "time": -1}',
    "[" * 50_000,
    '{"temperature": ' + "[" * 50_000,
    "\x1b[2J\x1b]0;title\x07",
]


@pytest.mark.parametrize("text", HOSTILE)
def test_what_is_not_understood_is_said_in_a_sentence_that_does_nothing(text: str) -> None:
    found = reading_of(text, WRITTEN, METRIC)
    assert "not understood" in found.fault and "temperature and humidity" in found.fault
    assert found.fault.isprintable() and len(found.fault) < 250
    assert not found.is_fresh(Moment(WRITTEN, 0.0, "boot"))


@pytest.mark.parametrize(
    "text",
    ["-127 50", "85 50", "14 0", "14 101", "14 -1", '{"temperature_c": 14, "humidity": 1e9}'],
)
def test_what_cannot_be_is_no_reading(text: str) -> None:
    # A sensor that lost its wire reads -127 or 85 C, 0 or 100+ % (common practice, no source).
    assert "look at the sensor" in reading_of(text, WRITTEN, METRIC).fault


def test_a_temperature_without_a_unit_wants_one_where_the_shop_file_names_none() -> None:
    for text in ('{"temperature": 14.2, "humidity": 70}', "14.2 70"):
        assert "temperature_c or temperature_f" in reading_of(text, WRITTEN, None).fault


@given(st.text() | st.binary().map(lambda data: data.decode("latin-1")), st.sampled_from(System))
def test_no_text_raises_or_gives_what_cannot_be(text: str, system: System) -> None:
    found = reading_of(text, WRITTEN, system)
    assert found.fault or (-40 <= found.air_c <= 50 and 0 < found.humidity_percent <= 100)


@given(st.recursive(st.none() | st.booleans() | st.floats() | st.text(), st.lists))
def test_no_value_in_the_object_raises(value: object) -> None:
    for key in ("temperature", "humidity", "time", "temperature_f"):
        text = json.dumps({"temperature": 14.0, "humidity": 70.0, key: value})
        found = reading_of(text, WRITTEN, METRIC)
        assert found.fault or (-40 <= found.air_c <= 50 and 0 < found.humidity_percent <= 100)


@pytest.mark.parametrize(
    ("age_s", "fresh"),
    [
        (0.0, True),
        (STALE_S, True),
        (STALE_S + 0.1, False),
        (-AHEAD_S, True),
        (-AHEAD_S - 0.1, False),
        (float("inf"), False),
        (float("nan"), False),
    ],
)
def test_what_is_old_or_dated_ahead_is_not_used(age_s: float, fresh: bool) -> None:
    read = RoomReading(14.0, 70.0, WRITTEN - age_s)
    assert read.is_fresh(Moment(WRITTEN, 0.0, "boot")) is fresh


def test_what_is_no_file_of_text_is_said(tmp_path: Path) -> None:
    for name, content in (("null", b"\0\0"), ("long", b"1" * 70_000), ("latin", b"14 70 \xb0")):
        (tmp_path / name).write_bytes(content)
        assert read_room(tmp_path / name, METRIC).fault.startswith(f"{name}: ")
    assert "no such file" in read_room(tmp_path / "gone", METRIC).fault
    assert "a folder" in read_room(tmp_path, METRIC).fault
    os.mkfifo(tmp_path / "pipe")  # to open one would wait for ever
    assert "pipe" in read_room(tmp_path / "pipe", METRIC).fault


def looked(readings: RoomReadings, shop: Shop, file: Path, clock: ManualClock) -> None:
    """Look, and wait for the thread."""
    readings.mind(shop, file, clock.now())
    until = time.monotonic() + 20
    while readings._thread is not None and readings._thread.is_alive():
        assert time.monotonic() < until
        time.sleep(0.001)


def test_it_is_read_every_few_seconds_from_where_the_shop_file_lies(tmp_path: Path) -> None:
    clock, readings = ManualClock(), RoomReadings()
    file, shop = tmp_path / "room.txt", Shop(room=Room(readings="room.txt"), system="metric")
    file.write_text("14.2 70")
    os.utime(file, (WRITTEN, WRITTEN - 60))
    looked(readings, shop, tmp_path / "shop.toml", clock)
    assert readings.reading == RoomReading(14.2, 70.0, WRITTEN - 60)
    file.write_text("15 71")
    clock.advance(EVERY_S - 0.1)
    looked(readings, shop, tmp_path / "shop.toml", clock)
    assert readings.reading is not None and readings.reading.air_c == 14.2
    clock.advance(0.1)
    looked(readings, shop, tmp_path / "shop.toml", clock)
    assert readings.reading.air_c == 15.0
    # No longer named: nothing is left of it.
    looked(readings, Shop(), tmp_path / "shop.toml", clock)
    assert readings.reading is None


def test_a_disk_that_hangs_holds_nothing_up_and_starts_one_thread(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    from threading import Event

    from booth.shop import room_readings

    hangs, begun = Event(), []

    def hang(path: Path, system: System | None) -> RoomReading:
        begun.append(path)
        hangs.wait(20)
        return RoomReading(14.0, 70.0, WRITTEN)

    monkeypatch.setattr(room_readings, "read_room", hang)
    clock, readings = ManualClock(), RoomReadings()
    shop = Shop(room=Room(readings="/elsewhere/room.txt"))
    for _ in range(5):
        readings.mind(shop, tmp_path / "shop.toml", clock.now())
        clock.advance(60)
    assert readings.reading is None
    hangs.set()
    looked(readings, Shop(), tmp_path / "shop.toml", clock)
    assert begun == [Path("/elsewhere/room.txt")] and readings.reading is None
