"""A sensor's file in the real program: read while the bench is up, never by drawing."""

from __future__ import annotations

import os

from booth.clock_reading import Reading
from booth.log.events import WeatherRead
from booth.shop.model import Room, Shop
from tests.manual_clock import ManualClock
from tests.screens.at_app import at_bench

SHOP = Shop(room=Room(readings="room.json"), system="metric")


async def test_air_and_humidity_come_from_the_file_with_its_age_until_it_is_stale() -> None:
    async with at_bench("weather", shop=SHOP) as desk:
        clock = desk.clock
        assert isinstance(clock, ManualClock)
        file = desk.places.shop_file.parent / "room.json"
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text('{"temperature": 14.0, "humidity": 70}')
        reading: Reading = clock.reading()
        os.utime(file, (reading.wall, reading.wall - 120))
        await desk.pass_time(6)
        # It may have been looked for before it was there.
        await desk.until(lambda: (read := desk.app.room.reading) is not None and not read.fault)
        await desk.beat()
        assert "sensor, 2 min" in desk.words and desk.marked == "part"
        await desk.type("59")
        await desk.press("enter")
        (kept,) = desk.kept(WeatherRead)
        assert kept.source == "sensor: air and humidity" and kept.air.value == 14.0
        # The logger has stopped: what it wrote last is not used any more.
        await desk.pass_time(16 * 60)
        await desk.beat()
        assert "Sensor file not used" in desk.words and desk.marked == "air"
        await desk.pilot.resize_terminal(100, 50)
        await desk.settle()
        await desk.beat()
        assert "Sensor file not used: it is 18 min old" in desk.words


async def test_a_file_that_is_not_there_is_said() -> None:
    async with at_bench("weather", shop=SHOP) as desk:
        await desk.pass_time(6)
        await desk.until(lambda: desk.app.room.reading is not None)
        await desk.beat()
        assert "Sensor file not used: room.json: no such file." in desk.words
