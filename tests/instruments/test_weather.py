"""Weather: the margin, what misses its limit, and readings that are refused."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from booth.instruments.weather import weather_readout
from booth.log.events import Event, Restored, StepDone, Voided, WeatherRead
from booth.shop.room_readings import RoomReading
from booth.units import System
from booth.words.shown import Tone
from tests.instruments.at_bench import AtBench, context_of, in_mild_weather
from tests.job.make import at, q
from tests.manual_clock import ManualClock


def test_the_margin_is_from_the_parts_own_temperature() -> None:
    # psychrolib: dew point 9.27 C at 20 C and 50 %; its agreement with Magnus is 0.05 C
    shown = weather_readout(q(20, "degC"), q(50, "%"), q(15, "degC"), context_of())
    assert (shown.word, shown.tone) == ("WITHIN LIMITS", Tone.GOOD)
    assert float(shown.figure) == pytest.approx(15 - 9.27, abs=0.1)
    us = weather_readout(q(20, "degC"), q(50, "%"), q(15, "degC"), context_of(system=System.US))
    assert us.unit == "°F"  # a difference: 9/5, and no 32
    assert float(us.figure) == pytest.approx((15 - 9.27) * 9 / 5, abs=0.15)


@pytest.mark.parametrize(("part", "wet"), [(10.0, False), (9.0, True), (5.0, True)])
def test_a_part_below_the_dew_point_is_said_to_be_wet(part: float, wet: bool) -> None:
    shown = weather_readout(q(20, "degC"), q(50, "%"), q(part, "degC"), context_of())
    assert (shown.word, shown.tone) == ("OUTSIDE LIMITS", Tone.CAUTION)
    assert ("water condenses on it" in shown.lines[0]) is wet
    assert any(line.startswith("dew margin") and "at least 3.0 °C" in line for line in shown.lines)


def a_reading(*_: object) -> list[Event]:
    return [WeatherRead(n=0, at=at(0), air=q(20, "degC"), humidity=q(50, "%"), part=q(18, "degC"))]


@pytest.mark.parametrize("typed", ["60 C", "160 F"])
def test_a_reading_out_of_reason_is_not_kept(typed: str) -> None:
    desk = AtBench("weather")
    for text in (typed, "50", "20"):
        desk.type(text)
        desk.press("enter")
    assert desk.log == [] and "50 °C or less" in desk.said
    assert desk.row("air").text == typed  # it stays, to be corrected
    desk.press("up", "up", *["backspace"] * len(typed))
    desk.type("20")
    desk.press("enter", "enter", "enter")
    (kept,) = desk.log
    assert isinstance(kept, WeatherRead) and kept.air.typed == "20"


def test_enter_goes_from_row_to_row_and_keeps_on_the_last() -> None:
    desk = AtBench("weather")
    assert desk.keys["Enter"] == "skip, say why"
    for text, word in (("20", "on: Humidity"), ("50", "on: Part"), ("18", "keep")):
        desk.type(text)
        assert desk.keys["Enter"] == word
        desk.press("enter")
    (kept,) = desk.log
    assert isinstance(kept, WeatherRead)
    assert [each.typed for each in (kept.air, kept.humidity, kept.part)] == ["20", "50", "18"]
    assert desk.keys["Enter"] == "next step" and desk.marked == "air"
    assert "air 20.0 °C, humidity 50 %, part 18.0 °C" in desk.record[-1]
    desk.press("enter")
    assert isinstance(desk.log[-1], StepDone)


def test_enter_on_the_last_row_leads_back_to_what_is_missing() -> None:
    desk = AtBench("weather")
    desk.fill("part", "18")
    assert desk.keys["Enter"] == "on: Air"
    desk.press("enter")
    assert (desk.marked, desk.said) == ("air", "Air: still to be filled.")
    desk.type("warm")
    assert desk.row("air").text == ""  # letters are shortcuts until a figure stands there
    assert desk.log == [] and desk.rest == ()


def test_one_backspace_too_many_voids_nothing() -> None:
    desk = AtBench("weather", before=a_reading)
    desk.type("71")
    desk.press("backspace", "backspace")
    assert desk.row("air").text == "" and "Bksp" not in desk.keys
    desk.press("backspace", "backspace")
    assert len(desk.log) == 1


def test_backspace_on_an_untouched_form_names_what_it_voids_and_brings_it_back() -> None:
    desk = AtBench("weather", before=a_reading)
    told = "weather: air 20.0 °C, humidity 50 %, part 18.0 °C"
    assert desk.keys["Bksp"] == f"void: {told}"
    desk.press("backspace")
    assert isinstance(desk.log[-1], Voided) and desk.job.weather is None
    assert desk.said == f"Voided: {told}. Backspace brings it back."
    assert desk.keys["Bksp"] == f"bring back: {told}"
    desk.press("backspace")
    assert isinstance(desk.log[-1], Restored) and desk.job.weather is not None


def test_a_look_at_the_list_of_steps_does_not_empty_the_rows() -> None:
    desk = AtBench("weather")
    desk.type("21")
    desk.press("up")
    assert desk.bench.picked == "weather" and desk.keys["Enter"] == "back"
    desk.press("enter")
    assert desk.bench.picked == "" and desk.row("air").text == "21"


# -- a sensor ----------------------------------------------------------------------------------


def sensed(age_s: float = 120.0, **changes: object) -> RoomReading:
    """14 C and 70 % as a sensor read them so long ago."""
    return replace(RoomReading(14.0, 70.0, ManualClock().now().wall - age_s), **changes)


def test_air_and_humidity_of_a_sensor_are_assumed_and_the_part_is_asked_for() -> None:
    desk = AtBench("weather", room=sensed())
    assert [row.key for row in desk.rows.sight] == ["part"] and desk.marked == "part"
    assert [row.field.hint for row in desk.rows.assumed] == ["sensor, 2 min ago"] * 2
    assert (
        desk.readout.wanted
        and desk.readout.edge is None
        and "Air and humidity: sensor, 2 min ago." in desk.text
    )
    desk.type("15")
    # psychrolib: dew point 8.62 C at 14 C and 70 %; its agreement with Magnus is 0.05 C
    assert float(desk.readout.figure) == pytest.approx(15 - 8.62, abs=0.1)
    desk.press("enter")
    (kept,) = desk.log
    assert isinstance(kept, WeatherRead)
    assert (kept.air.value, kept.humidity.value, kept.part.typed) == (14.0, 70.0, "15")
    assert kept.source == "sensor: air and humidity"
    assert desk.record[-1].endswith("part 15.0 °C, sensor: air and humidity")


def test_what_is_typed_counts_before_the_sensor() -> None:
    desk = AtBench("weather", room=sensed())
    desk.press("down")
    assert desk.marked == "air"
    for text in ("16", "", "15"):
        desk.type(text)
        desk.press("enter")
    (kept,) = desk.log
    assert isinstance(kept, WeatherRead)
    assert (kept.air.value, kept.humidity.value, kept.source) == (16.0, 70.0, "sensor: humidity")


@pytest.mark.parametrize(
    ("room", "said"),
    [
        (sensed(16 * 60), "Sensor file not used: it is 16 min old. Look at the sensor."),
        (sensed(-3600), "it is dated 1 h ahead of this machine's clock"),
        (
            sensed(fault="room.json: no such file."),
            "Sensor file not used: room.json: no such file.",
        ),
        (sensed(fault="[bold]x"), "Sensor file not used: [bold]x"),
    ],
)
def test_a_stale_or_broken_sensor_is_said_and_never_used(room: RoomReading, said: str) -> None:
    desk = AtBench("weather", room=room)
    assert [row.key for row in desk.rows.sight] == ["air", "humidity", "part"]
    assert said in desk.text
    desk.fill("part", "15")
    desk.press("enter")
    assert desk.log == [] and desk.said == "Air: still to be filled."
    for row, text in (("air", "20"), ("humidity", "50")):
        desk.fill(row, text)
    assert said in desk.text, "beside the figure as well"
    desk.go_to("part")
    desk.press("enter")
    (kept,) = desk.log
    assert isinstance(kept, WeatherRead) and (kept.air.value, kept.source) == (20.0, "")


def test_a_reading_that_grows_old_while_the_part_is_measured_is_asked_for() -> None:
    desk = AtBench("weather", room=sensed())
    desk.type("15")
    desk.pass_time(14 * 60)
    assert desk.keys["Enter"] == "on: Air"
    desk.press("enter")
    assert desk.log == [] and desk.marked == "air"


def test_an_untouched_form_shows_what_was_kept_last_and_is_skipped_with_a_reason() -> None:
    desk = AtBench("weather", before=a_reading, room=sensed())
    assert float(desk.readout.figure) == pytest.approx(18 - 9.27, abs=0.1)
    assert desk.keys["Enter"] == "next step"
    assert AtBench("weather", room=sensed()).keys["Enter"] == "skip, say why"


def test_a_reading_of_more_than_an_hour_is_not_the_one_that_the_step_is_for() -> None:
    """No colour of approval stands on it, and Enter passes over it with a word only."""
    desk = AtBench("weather", before=in_mild_weather)
    assert desk.keys["Enter"] == "next step" and desk.readout.shown_word == "WITHIN LIMITS"
    desk.pass_time(3601)
    assert (desk.readout.shown_word, desk.readout.tone) == ("TAKE AGAIN", Tone.CAUTION)
    assert desk.readout.lines[0] == "Read 1 h ago: take it again."
    assert desk.keys["Enter"] == "skip, say why"
    for text in ("21 C", "50", "21 C"):
        desk.type(text)
        desk.press("enter")
    assert desk.readout.shown_word == "WITHIN LIMITS" and desk.keys["Enter"] == "next step"
