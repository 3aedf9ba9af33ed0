"""What must hold of every entry and every figure, whatever it is."""

from __future__ import annotations

import math
import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from booth.units import EntryError, Kind, Quantity, System, echo, read, read_amount, show
from booth.units.display import shown, shown_as, shown_value
from booth.units.kinds import Dimension
from booth.units.numbers import LONGEST
from booth.units.words import SHORT, dimensions_of, tidy, words_of

KINDS = st.sampled_from(list(Kind))
SYSTEMS = st.sampled_from(list(System))


def names(dimension: Dimension) -> set[str]:
    """The shown names of the units of a dimension, and the trade's short forms."""
    shown = {unit.name for unit in words_of(dimension).values()}
    return {name for name in shown | set(SHORT.get(dimension, {})) if name}


WORDS = st.sampled_from(sorted({name for kind in Kind for name in names(kind.dimension)}))

#: Text near to what painters type, where a reader is likeliest to stumble.
_PIECES = st.one_of(
    st.text(max_size=4),
    WORDS,
    st.sampled_from([" ", "\u2028", "1,234"]),
    st.sampled_from(
        [
            "1",
            "2",
            "12",
            "0",
            "1/2",
            "½",
            "²",
            ",",
            ".",
            ":",
            "-",
            "+",
            "/",
            "'",
            '"',
            "e9",
            "per",
            "oz",
            "°",
            "%",
            "imp",
            "nan",
            "inf",
            "\x1b[2J",
            "[/x",
            "**",
            "(",
        ]
    ),
)
NEAR = st.lists(_PIECES, max_size=8).map("".join)
ANY = st.one_of(st.text(), NEAR)


@settings(max_examples=1500, deadline=None)
@given(ANY, KINDS, SYSTEMS)
def test_any_text_is_read_or_gets_a_sentence(text: str, kind: Kind, system: System) -> None:
    try:
        quantity = read(text, kind, system)
    except EntryError as fault:
        message = str(fault)
        assert message.isprintable()
        assert message.endswith(".")
        assert len(message) < 300
        return
    assert math.isfinite(quantity.value)
    assert kind.low <= quantity.value <= kind.high
    assert quantity.unit == kind.base
    assert quantity.typed == " ".join(text.split())
    assert quantity.typed.isprintable()
    assert len(quantity.typed) <= LONGEST
    assert echo(quantity, kind, system).isprintable()


@settings(max_examples=500, deadline=None)
@given(ANY, SYSTEMS)
def test_any_text_is_an_amount_or_gets_a_sentence(text: str, system: System) -> None:
    try:
        quantity = read_amount(text, system)
    except EntryError as fault:
        assert str(fault).endswith(".")
        return
    assert quantity.unit in ("ml", "g")
    assert quantity.value >= 0


@settings(max_examples=500, deadline=None)
@given(st.floats(allow_nan=True, allow_infinity=True), KINDS, SYSTEMS, st.text(max_size=20))
def test_any_number_can_be_shown(value: float, kind: Kind, system: System, typed: str) -> None:
    assert show(value, kind, system).isprintable()
    assert echo(Quantity(value, kind.base, typed), kind, system).isprintable()


@st.composite
def figures(draw: st.DrawFn) -> tuple[float, Kind, System]:
    """A value such as a shop could have, with a kind and a system."""
    kind = draw(KINDS)
    about = kind
    value = draw(
        st.floats(about.low, about.high)
        | st.floats(max(about.low, -50), min(about.high, 500))
        | st.floats(max(about.low, 0), min(about.high, 5))
    )
    return (float(round(value)) if kind is Kind.COUNT else value), kind, draw(SYSTEMS)


def _rounding(value: float, kind: Kind, system: System) -> float:
    """Half of the last place that is shown, in the shown unit, and a hair for binary fractions."""
    if kind is Kind.TIME:
        half = 0.05 if value < 60 else 0.5 if value < 172799.5 else 30
    else:
        number = shown_value(value, kind, system)
        half = 0.5 * 10.0 ** -shown(kind, system).places(number)
        half += abs(number) * 1e-11
    return half * 1.000001


@settings(max_examples=1500, deadline=None)
@given(figures())
def test_what_is_shown_is_understood_again(figure: tuple[float, Kind, System]) -> None:
    value, kind, system = figure
    text = show(value, kind, system)
    try:
        back = read(text, kind, system).value
    except EntryError as fault:
        # Only where rounding carried a figure past the bound it lay at.
        at_a_bound = min(abs(value - kind.low), abs(value - kind.high))
        assert re.search(r"below|more than", str(fault))
        assert at_a_bound <= _rounding(value, kind, system) * _slope(kind, system)
        return
    there, here = (shown_value(each, kind, system) for each in (back, value))
    assert there == pytest.approx(here, abs=_rounding(value, kind, system), rel=0)


def _slope(kind: Kind, system: System) -> float:
    """Base units in one shown unit."""
    return 1 / abs(shown_value(1.0, kind, system) - shown_value(0.0, kind, system))


@settings(max_examples=500, deadline=None)
@given(figures())
def test_a_shown_text_shows_as_itself(figure: tuple[float, Kind, System]) -> None:
    """Once rounded, a figure does not creep when it is read and shown again and again."""
    value, kind, system = figure
    text = show(value, kind, system)
    try:
        once = read(text, kind, system)
    except EntryError:
        return
    assert show(once.value, kind, system) == text


@settings(max_examples=500, deadline=None)
@given(
    st.integers(0, 99999), st.integers(0, 999), st.sampled_from([k for k in Kind if k != "count"])
)
def test_decimal_comma_and_point_say_the_same(whole: int, part: int, kind: Kind) -> None:
    unit = shown_as(kind, System.METRIC).name
    point, comma = f"{whole}.{part:04} {unit}", f"{whole},{part:04} {unit}"
    results = []
    for text in (point, comma):
        try:
            results.append(read(text, kind, System.METRIC).value)
        except EntryError as fault:
            results.append(type(fault))
    assert results[0] == results[1]


@given(st.integers(1, 99), st.integers(1, 63), st.sampled_from([2, 4, 8, 16, 32, 64]))
def test_mixed_numbers_are_sums(whole: int, part: int, of: int) -> None:
    # A power of two below: the sum is exact in binary, and so is what is kept of it.
    if part >= of:
        with pytest.raises(EntryError, match="not smaller than one"):
            read(f"{whole} {part}/{of} mm", Kind.LENGTH, System.US)
    else:
        entry = read(f"{whole} {part}/{of} mm", Kind.LENGTH, System.US)
        assert entry.value == pytest.approx(whole + part / of, rel=1e-11)


@given(st.integers(0, 23), st.integers(0, 59), st.integers(0, 59))
def test_the_spellings_of_a_time_agree(hours: int, minutes: int, seconds: int) -> None:
    total = hours * 3600 + minutes * 60 + seconds
    for text in (
        f"{hours}:{minutes:02}:{seconds:02}",
        f"{hours} h {minutes} min {seconds} s",
        f"{hours}h{minutes}m{seconds}s",
        f"{hours * 60 + minutes}:{seconds:02}",
        f"{total}",
        f"{total} sec",
    ):
        assert read(text, Kind.TIME, System.US).value == total


@given(st.floats(0.01, 100), st.floats(0.01, 100), KINDS, SYSTEMS)
def test_more_is_shown_as_no_less(a: float, b: float, kind: Kind, system: System) -> None:
    low, high = sorted((a, b))
    assert shown_value(low, kind, system) <= shown_value(high, kind, system)


def test_every_unit_of_a_kind_is_understood_by_its_shown_name() -> None:
    for kind in Kind:
        for name in names(kind.dimension):
            for system in System:
                word = tidy(name.lower().replace("²", "2").replace("³", "3").replace("µ", "u"))
                assert kind.dimension in dimensions_of(word), name
                try:
                    value = read(f"1 {name}", kind, system).value
                except EntryError as fault:
                    # One of it may be more or less than the kind can be, but it is understood.
                    assert re.search(r"below|more than|whole", str(fault)), (name, fault)
                else:
                    assert math.isfinite(value)
