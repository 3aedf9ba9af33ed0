"""Entries as painters type them, what they become, how it is shown, what is said when not."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from booth.units import (
    EntryError,
    Kind,
    Quantity,
    System,
    amount_kind,
    echo,
    read,
    read_amount,
    show,
    shown_unit,
    system_of,
    understand,
)
from booth.units.display import SHOWN, base_of, shown_as

US, METRIC = System.US, System.METRIC
ROOT = Path(__file__).resolve().parent.parent

#: One US fluid ounce [ml]: 231 cubic inches of 2.54 cm are 128 of them (NIST Handbook 44, App. C).
FL_OZ = 231 * 2.54**3 / 128

ENTRIES = [
    # entry, kind, value in the base unit; factors are exact by definition (Handbook 44, App. C)
    ("6 oz/min", Kind.DELIVERY, 6 * FL_OZ),
    ("6 fl oz/min", Kind.DELIVERY, 6 * FL_OZ),
    ("6 fl. oz. per minute", Kind.DELIVERY, 6 * FL_OZ),
    ("6floz/min", Kind.DELIVERY, 6 * FL_OZ),
    ("6 OZ / MIN", Kind.DELIVERY, 6 * FL_OZ),
    ("6", Kind.DELIVERY, 6 * FL_OZ),
    ("200 cc/min", Kind.DELIVERY, 200),
    ("180 ml/min", Kind.DELIVERY, 180),
    ("12 l/h", Kind.DELIVERY, 200),
    ("6.5 fl oz", Kind.VOLUME, 6.5 * FL_OZ),
    ("180 ml", Kind.VOLUME, 180),
    ("180ml", Kind.VOLUME, 180),
    ("180 ㎖", Kind.VOLUME, 180),
    ("1,5 l", Kind.VOLUME, 1500),
    ("0,998 l", Kind.VOLUME, 998),
    (",5 l", Kind.VOLUME, 500),
    (".5 l", Kind.VOLUME, 500),
    ("1,234.5 ml", Kind.VOLUME, 1234.5),
    ("1.234,5 ml", Kind.VOLUME, 1234.5),
    ("1,234,567 ml", Kind.VOLUME, 1234567),
    ("1.234 l", Kind.VOLUME, 1234),
    ("1234,567 ml", Kind.VOLUME, 1234.567),
    ("2 1/2", Kind.VOLUME, 2.5 * FL_OZ),
    ("2½", Kind.VOLUME, 2.5 * FL_OZ),
    ("2 ½ oz", Kind.VOLUME, 2.5 * FL_OZ),
    ("2-1/2 oz", Kind.VOLUME, 2.5 * FL_OZ),
    ("¾ oz", Kind.VOLUME, 0.75 * FL_OZ),
    ("1 pt", Kind.VOLUME, 16 * FL_OZ),
    ("1 qt", Kind.VOLUME, 32 * FL_OZ),
    ("1 US gallon", Kind.VOLUME, 128 * FL_OZ),
    ("1 gal 2 qt", Kind.VOLUME, 192 * FL_OZ),
    ("8 oz", Kind.MASS, 226.796185),
    ("8 oz wt", Kind.MASS, 226.796185),
    ("1 lb 8 oz", Kind.MASS, 1.5 * 453.59237),
    ("1.2 kg", Kind.MASS, 1200),
    ("21.5 s", Kind.TIME, 21.5),
    ("21,5", Kind.TIME, 21.5),
    ("90", Kind.TIME, 90),
    ("1:30", Kind.TIME, 90),
    ("1:30.5", Kind.TIME, 90.5),
    ("90:00", Kind.TIME, 5400),
    ("1:02:03", Kind.TIME, 3723),
    ("1:30 h", Kind.TIME, 5400),
    ("1:30 min", Kind.TIME, 90),
    ("1 min 30 s", Kind.TIME, 90),
    ("1h30m", Kind.TIME, 5400),
    ("2 hours, 5 minutes", Kind.TIME, 7500),
    ("2 h", Kind.TIME, 7200),
    ("1 1/2 hours", Kind.TIME, 5400),
    ("10 min", Kind.TIME, 600),
    ("3 d", Kind.TIME, 259200),
    ("3 days", Kind.TIME, 259200),
    ("-40", Kind.TEMPERATURE, -40),
    ("−40 °C", Kind.TEMPERATURE, -40),
    ("22 C", Kind.TEMPERATURE, 22),
    ("22°", Kind.TEMPERATURE, -50 / 9),
    ("212 °F", Kind.TEMPERATURE, 100),
    ("212℉", Kind.TEMPERATURE, 100),
    ("212 degrees Fahrenheit", Kind.TEMPERATURE, 100),
    ("273.15 K", Kind.TEMPERATURE, 0),
    ("9 F", Kind.TEMPERATURE_DIFFERENCE, 5),
    ("9", Kind.TEMPERATURE_DIFFERENCE, 5),
    ("5 K", Kind.TEMPERATURE_DIFFERENCE, 5),
    ("-5 °C", Kind.TEMPERATURE_DIFFERENCE, -5),
    ("2 bar", Kind.PRESSURE, 200),
    ("2 barg", Kind.PRESSURE, 200),
    ("0.2 MPa", Kind.PRESSURE, 200),
    ("2.5 mil", Kind.THICKNESS, 63.5),
    ("2.5 mils", Kind.THICKNESS, 63.5),
    ("2.5", Kind.THICKNESS, 63.5),
    ("0.0025 in", Kind.THICKNESS, 63.5),
    ("60 um", Kind.THICKNESS, 60),
    ("60 µm", Kind.THICKNESS, 60),  # micro sign, U+00B5
    ("60 μm", Kind.THICKNESS, 60),  # Greek mu, U+03BC
    ("60 microns", Kind.THICKNESS, 60),
    ("1/2 in", Kind.LENGTH, 12.7),
    ('12"', Kind.LENGTH, 304.8),
    ("12 ″", Kind.LENGTH, 304.8),
    ("12''", Kind.LENGTH, 304.8),
    ("6 in", Kind.LENGTH, 152.4),
    ("1.4", Kind.TIP, 1.4),
    ("8'", Kind.PART_LENGTH, 2.4384),
    ("5' 6\"", Kind.PART_LENGTH, 1.6764),
    ("5’6½”", Kind.PART_LENGTH, 1.6891),
    ("2 ft 3 in", Kind.PART_LENGTH, 0.6858),
    ("80 ft/min", Kind.SPEED, 0.4064),
    ("80 fpm", Kind.SPEED, 0.4064),
    ("400 mm/s", Kind.SPEED, 0.4),
    ("16 in/s", Kind.SPEED, 0.4064),
    ("100 ft2", Kind.AREA, 9.290304),
    ("100 sq. ft.", Kind.AREA, 9.290304),
    ("100 ft^2", Kind.AREA, 9.290304),
    ("3 m²", Kind.AREA, 3),
    ("3 ㎡", Kind.AREA, 3),
    ("1.05 kg/l", Kind.DENSITY, 1.05),
    ("1050 kg/m3", Kind.DENSITY, 1.05),
    ("95 cSt", Kind.VISCOSITY, 95),
    ("95 mm²/s", Kind.VISCOSITY, 95),
    ("50 %", Kind.PERCENT, 50),
    ("50", Kind.PERCENT, 50),
    ("12,5 per cent", Kind.PERCENT, 12.5),
    ("340 lpm", Kind.AIR_FLOW, 340),
    ("1 m³/min", Kind.AIR_FLOW, 1000),
    ("100 m3", Kind.ROOM, 100),
    ("1000 cu ft", Kind.ROOM, 28.316846592),
    ("1 1/4 turns", Kind.TURNS, 1.25),
    ("1¼", Kind.TURNS, 1.25),
    ("1 turn", Kind.TURNS, 1),
    ("3", Kind.COUNT, 3),
    ("3 coats", Kind.COUNT, 3),
    ("4:1", Kind.RATIO, 4),
    ("1:2.5", Kind.RATIO, 0.4),
    ("25 %", Kind.RATIO, 0.25),
]


@pytest.mark.parametrize(("entry", "kind", "expected"), ENTRIES)
def test_entries_as_typed(entry: str, kind: Kind, expected: float) -> None:
    quantity = read(entry, kind, US)
    # An entry is kept to twelve digits; 22° is a difference of numbers near 20.
    assert quantity.value == pytest.approx(expected, rel=1e-11, abs=1e-10)
    assert quantity.unit == kind.base
    assert quantity.typed == entry


def test_a_bare_number_takes_the_shown_unit() -> None:
    assert read("30", Kind.PRESSURE, METRIC).value == pytest.approx(3000)
    # 1 psi = 6.894757 kPa (NIST SP 811, recalled), to seven digits.
    assert read("30", Kind.PRESSURE, US).value == pytest.approx(30 * 6.894757, rel=5e-7)
    assert read("22", Kind.TEMPERATURE, METRIC).value == 22
    assert read("150", Kind.LENGTH, METRIC).value == 150
    assert read("1.4", Kind.TIP, US).value == read("1.4", Kind.TIP, METRIC).value == 1.4


def test_a_value_is_kept_as_a_person_would_write_it() -> None:
    assert repr(read("12 in", Kind.LENGTH, US).value) == "304.8"
    assert repr(read("32 F", Kind.TEMPERATURE, US).value) == "0.0"


@pytest.mark.parametrize(
    ("entry", "kind", "saying"),
    [
        ("", Kind.VOLUME, "empty"),
        ("   ", Kind.VOLUME, "empty"),
        ("6 psi", Kind.DELIVERY, "measures a pressure"),
        ("6 oz", Kind.DELIVERY, "measures a volume"),
        ("6 s", Kind.VOLUME, "measures a time"),
        ("95 cP", Kind.VISCOSITY, "dynamic viscosity"),
        ("6 foo", Kind.DELIVERY, "not a unit known"),
        ("foo", Kind.DELIVERY, "does not begin with a number"),
        ("6 - 8", Kind.DELIVERY, "more than one number"),
        ("6 to 8 psi", Kind.PRESSURE, "more than one number"),
        ("1 234 ml", Kind.VOLUME, "two numbers"),
        ("1,234", Kind.VOLUME, "Write 1.234 for the decimal or 1234 for the thousands"),
        ("12,345 ml", Kind.VOLUME, "two ways"),
        ("1,23,4", Kind.VOLUME, "not a number"),
        ("1.2.3", Kind.VOLUME, "not a number"),
        ("5,", Kind.VOLUME, "not a number"),
        ("1/0", Kind.VOLUME, "divides by zero"),
        ("2 3/2", Kind.VOLUME, "not smaller than one"),
        ("-3 ml", Kind.VOLUME, "below zero"),
        ("-1:30", Kind.TIME, "below zero"),
        ("-300 C", Kind.TEMPERATURE, "below -459.67 °F"),
        ("inf", Kind.VOLUME, "does not begin with a number"),
        ("nan", Kind.VOLUME, "does not begin with a number"),
        ("1e9", Kind.VOLUME, "not a unit known"),
        ("9" * 50, Kind.VOLUME, "more than"),
        ("9" * 70, Kind.VOLUME, "70 characters long"),
        ("60 m", Kind.THICKNESS, "more than 3937 mil"),
        ("400 d", Kind.TIME, "more than 366 d"),
        ("1 imp gal", Kind.VOLUME, "imperial"),
        ("1 UK fl oz", Kind.VOLUME, "imperial"),
        ("28 psia", Kind.PRESSURE, "absolute"),
        ("2 bar(a)", Kind.PRESSURE, "absolute"),
        ("1:5", Kind.TIME, "1:05"),
        ("1:75", Kind.TIME, "below 60"),
        ("1:30 psi", Kind.TIME, "not a time"),
        ("1:02:03 min", Kind.TIME, "not a time"),
        ("5 s 5 s", Kind.TIME, "does not add up"),
        ("30 s 1 min", Kind.TIME, "does not add up"),
        ("1 min 30 psi", Kind.TIME, "measures a pressure"),
        ("72 F 2 C", Kind.TEMPERATURE, "does not add up"),
        ("3.5", Kind.COUNT, "whole number"),
        ("4:0", Kind.RATIO, "not a ratio"),
        ("4:x", Kind.RATIO, "not a ratio"),
        ("5²", Kind.COUNT, "plain digits"),
        ("①", Kind.COUNT, "plain digits"),
        ("٣", Kind.COUNT, "does not begin with a number"),
        ("5\x1b[2J ml", Kind.VOLUME, "cannot be shown (U+001B)"),
        ("5\u202e ml", Kind.VOLUME, "cannot be shown (U+202E)"),
        ("5\x00", Kind.VOLUME, "cannot be shown (U+0000)"),
        ("5\ud800", Kind.VOLUME, "cannot be shown (U+D800)"),
        ("2 ** 99999999", Kind.VOLUME, "two numbers"),
        ("5 meter ** 9 ** 9 ** 9", Kind.LENGTH, "not a unit known"),
        ("5 __import__('os')", Kind.LENGTH, "not a unit known"),
    ],
)
def test_what_is_not_understood_gets_a_sentence(entry: str, kind: Kind, saying: str) -> None:
    with pytest.raises(EntryError) as caught:
        read(entry, kind, US)
    message = str(caught.value)
    assert saying in message
    assert message.endswith(".")
    assert message.isprintable(), "an escape code of the entry must not come back in the sentence"


@pytest.mark.parametrize("entry", [True, 5, 5.0, None, b"5 ml", ["5"]])
def test_only_text_is_an_entry(entry: object) -> None:
    with pytest.raises(EntryError, match="must be text"):
        read(entry, Kind.VOLUME, US)  # type: ignore[arg-type]
    with pytest.raises(EntryError, match="must be text"):
        read_amount(entry, US)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("entry", "value", "unit"),
    [
        ("6", 6 * FL_OZ, "ml"),
        ("6 oz", 6 * FL_OZ, "ml"),
        ("180 ml", 180, "ml"),
        ("200 g", 200, "g"),
        ("1,5 kg", 1500, "g"),
        ("8 oz wt", 226.796185, "g"),
        ("8 oz weight", 226.796185, "g"),
        ("1 lb", 453.59237, "g"),
        ("1 lb 4 oz", 1.25 * 453.59237, "g"),
        ("1 gal 4 oz", 132 * FL_OZ, "ml"),
    ],
)
def test_an_amount_is_a_volume_or_a_weight(entry: str, value: float, unit: str) -> None:
    quantity = read_amount(entry, US)
    assert quantity.value == pytest.approx(value, rel=1e-11)
    assert quantity.unit == unit
    assert amount_kind(quantity) is (Kind.VOLUME if unit == "ml" else Kind.MASS)


@pytest.mark.parametrize(
    ("entry", "saying"),
    [
        ("6 psi", "pressure. Expected a volume or a weight"),
        ("foo", "Expected a volume or a weight"),
        ("6 foo", "not a unit known here. Expected a volume or a weight"),
        ("1 lb 4 s", "Expected a volume or a weight"),
        ("-3 ml", "below zero"),
        ("-3 g", "below zero. Expected a weight"),
        ("", "empty"),
    ],
)
def test_no_amount(entry: str, saying: str) -> None:
    with pytest.raises(EntryError, match=saying):
        read_amount(entry, US)


@pytest.mark.parametrize(
    ("entry", "kind", "us", "metric"),
    [
        (
            "6 oz/min",
            Kind.DELIVERY,
            "6 fl oz/min = 177 ml/min (oz taken as US fluid ounce)",
            "6 fl oz/min = 177 ml/min (oz taken as US fluid ounce)",
        ),
        ("180 ml", Kind.VOLUME, "180 ml = 6.1 fl oz", "180 ml = 6.1 fl oz"),
        ("30 psi", Kind.PRESSURE, "30 psi = 2.07 bar", "30 psi = 2.07 bar"),
        ("207 kPa", Kind.PRESSURE, "207 kPa = 30 psi = 2.07 bar", "207 kPa = 2.07 bar = 30 psi"),
        ("90", Kind.TIME, "90 s = 1:30", "90 s = 1:30"),
        ("1:30", Kind.TIME, "1:30", "1:30"),
        ("72 F", Kind.TEMPERATURE, "72 °F = 22.2 °C", "72 °F = 22.2 °C"),
        ("30", Kind.PRESSURE, "30 psi = 2.07 bar", "30 bar = 435 psi"),
        ("50", Kind.PERCENT, "50 %", "50 %"),
        ("1", Kind.TURNS, "1 turn", "1 turn"),
        ("28 lbs", Kind.PRESSURE, "28 psi = 1.93 bar (pounds taken as psi)", None),
    ],
)
def test_the_echo_says_what_was_understood(
    entry: str, kind: Kind, us: str, metric: str | None
) -> None:
    assert echo(read(entry, kind, US), kind, US) == us
    if metric is not None:
        assert echo(read(entry, kind, METRIC), kind, METRIC) == metric


def test_the_echo_of_an_amount_follows_its_own_unit() -> None:
    weight = read_amount("8 oz wt", US)
    assert echo(weight, Kind.VOLUME, US) == "8 oz wt = 226.8 g"
    volume = read_amount("8 oz", US)
    assert echo(volume, Kind.VOLUME, US) == "8 fl oz = 237 ml (oz taken as US fluid ounce)"


def test_the_echo_never_gives_a_bare_number_another_unit() -> None:
    typed_in_us = read("30", Kind.PRESSURE, US)
    assert echo(typed_in_us, Kind.PRESSURE, METRIC) == "2.07 bar = 30 psi"
    hostile = Quantity(100.0, "ml", "\x1b[2J")
    assert echo(hostile, Kind.VOLUME, METRIC) == "100 ml = 3.4 fl oz"


@pytest.mark.parametrize(
    ("value", "kind", "us", "metric"),
    [
        (6 * FL_OZ, Kind.DELIVERY, "6.0 fl oz/min", "177 ml/min"),
        (180, Kind.VOLUME, "6.1 fl oz", "180 ml"),
        (5, Kind.VOLUME, "0.17 fl oz", "5.0 ml"),
        (226.8, Kind.MASS, "226.8 g", "226.8 g"),
        (200, Kind.PRESSURE, "29 psi", "2.00 bar"),
        (68.94757, Kind.PRESSURE, "10.0 psi", "0.69 bar"),
        (63.5, Kind.THICKNESS, "2.5 mil", "64 µm"),
        (152.4, Kind.LENGTH, "6.0 in", "152 mm"),
        (1.4, Kind.TIP, "1.4 mm", "1.4 mm"),
        (2, Kind.TIP, "2.0 mm", "2.0 mm"),
        (22.22, Kind.TEMPERATURE, "72 °F", "22.2 °C"),
        (-0.01, Kind.TEMPERATURE, "32 °F", "0.0 °C"),
        (3, Kind.TEMPERATURE_DIFFERENCE, "5.4 °F", "3.0 °C"),
        (0.4, Kind.SPEED, "79 ft/min", "0.40 m/s"),
        (9.290304, Kind.AREA, "100.0 ft²", "9.29 m²"),
        (2.4384, Kind.PART_LENGTH, "8.00 ft", "2.44 m"),
        (1.05, Kind.DENSITY, "8.76 lb/gal", "1.050 g/ml"),
        (95.04, Kind.VISCOSITY, "95.0 mm²/s", "95.0 mm²/s"),
        (99.96, Kind.VISCOSITY, "100 mm²/s", "100 mm²/s"),
        (50, Kind.PERCENT, "50 %", "50 %"),
        (12.5, Kind.PERCENT, "12.5 %", "12.5 %"),
        (340, Kind.AIR_FLOW, "12.0 cfm", "340 l/min"),
        (100, Kind.ROOM, "3531 ft³", "100.0 m³"),
        (1.25, Kind.TURNS, "1.25 turns", "1.25 turns"),
        (1, Kind.TURNS, "1 turn", "1 turn"),
        (3, Kind.COUNT, "3", "3"),
        (4, Kind.RATIO, "4", "4"),
    ],
)
def test_figures_as_shown(value: float, kind: Kind, us: str, metric: str) -> None:
    """The numbers are those of the factors checked in test_units_outside, at the shop's places."""
    assert show(value, kind, US) == us
    assert show(value, kind, METRIC) == metric
    assert show(value, kind, US, unit=False) == us.split(" ")[0]


@pytest.mark.parametrize(
    ("seconds", "text"),
    [
        (0, "0.0 s"),
        (21.5, "21.5 s"),
        (59.94, "59.9 s"),
        (59.96, "1:00"),
        (90, "1:30"),
        (3599.6, "1:00:00"),
        (3723, "1:02:03"),
        (86400, "24:00:00"),
        (172799.7, "2 d"),
        (180000, "2 d 2 h"),
        (259199, "3 d"),
        (-90, "-1:30"),
    ],
)
def test_times_as_shown(seconds: float, text: str) -> None:
    assert show(seconds, Kind.TIME, US) == show(seconds, Kind.TIME, METRIC) == text


def test_places_can_be_asked_for_and_keep_a_time_in_seconds() -> None:
    assert show(65.25, Kind.TIME, US, places=1) == "65.2 s"
    assert show(63.5, Kind.THICKNESS, METRIC, places=1) == "63.5 µm"
    assert show(50, Kind.PERCENT, US, places=2) == "50.00 %"


def test_what_is_no_number_is_shown_as_such() -> None:
    for kind in Kind:
        assert show(float("nan"), kind, US) == "–"
        assert show(float("inf"), kind, METRIC) == "∞"
        assert show(float("-inf"), kind, METRIC) == "-∞"


def test_every_kind_is_complete() -> None:
    assert set(SHOWN) == set(Kind)
    for kind in Kind:
        assert kind.label
        assert base_of(kind).dimension is kind.dimension
        for system in System:
            assert shown_as(kind, system).dimension is kind.dimension
            assert shown_unit(kind, system) == shown_as(kind, system).name
            # The examples of the sentences are themselves entries.
            for example in kind.examples:
                assert read(example, kind, system).unit == kind.base
    assert shown_unit(Kind.DELIVERY, US) == "fl oz/min"
    assert shown_unit(Kind.TEMPERATURE, US) == "°F"


def test_a_system_may_be_named_by_its_word() -> None:
    assert show(200, Kind.PRESSURE, System("us")) == "29 psi"
    assert US.other is METRIC
    assert METRIC.other is US


def _fresh(code: str) -> str:
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=ROOT
    )
    return done.stdout.strip()


def test_neither_importing_nor_showing_loads_the_registry() -> None:
    code = """
import sys
from booth.units import Kind, System, echo, read, show, shown_value
for kind in Kind:
    for system in System:
        text = show(3.0, kind, system)
        shown_value(3.0, kind, system)
        echo(read(text, kind, system), kind, system)
for entry, kind in (("2 h", Kind.TIME), ("1 gal", Kind.VOLUME), ("6 in", Kind.LENGTH)):
    read(entry, kind, System.US)
print("pint" in sys.modules, end=" ")
read("1 yd", Kind.LENGTH, System.US)
print("pint" in sys.modules)
"""
    assert _fresh(code) == "False True"


def test_the_registry_is_loaded_once_by_many_threads() -> None:
    code = """
import threading, pint
made = []
class Counting(pint.UnitRegistry):
    def __init__(self, *given, **named):
        made.append(self)
        super().__init__(*given, **named)
pint.UnitRegistry = Counting
from booth.units import Kind, System, read
values, barrier = [], threading.Barrier(8)
def work(number):
    barrier.wait()
    values.append(read("2 qt", Kind.VOLUME, System.US).value)
threads = [threading.Thread(target=work, args=(number,)) for number in range(8)]
for thread in threads: thread.start()
for thread in threads: thread.join()
print(len(made), len(values), set(values))
"""
    # Two quarts are 64 of the 128 fluid ounces of a gallon of 3785.411784 ml (Handbook 44).
    assert _fresh(code) == "1 8 {1892.705892}"


@pytest.mark.parametrize(
    ("entry", "kind", "system"),
    [
        ("6 oz", Kind.VOLUME, US),
        ("1 lb 4 oz", Kind.MASS, US),
        ("180 ml/min", Kind.DELIVERY, METRIC),
        ("12 cfm", Kind.AIR_FLOW, US),
        ("72 F", Kind.TEMPERATURE, US),
        ("22 C", Kind.TEMPERATURE, METRIC),
        ("5 F", Kind.TEMPERATURE_DIFFERENCE, US),
        ("2 ft 6 in", Kind.PART_LENGTH, US),
        ("2 bar", Kind.PRESSURE, METRIC),
        ("30 s", Kind.TIME, None),
        ("200 g", Kind.MASS, None),  # a paint scale reads grams in both
        ("95 cSt", Kind.VISCOSITY, None),
        ("50 %", Kind.PERCENT, None),
        ("1.2 g/ml", Kind.DENSITY, METRIC),
        ("9 lb/gal", Kind.DENSITY, US),
    ],
)
def test_a_unit_is_of_the_system_whose_painters_type_it(
    entry: str, kind: Kind, system: System | None
) -> None:
    unit = understand(entry, kind, US).unit
    assert unit is not None
    assert system_of(unit) == system
