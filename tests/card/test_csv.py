"""The job as a table: the csv module reads it back, and no cell of it is a formula."""

from __future__ import annotations

import csv
import io
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.card.as_csv import COLUMNS, as_csv, harmless
from booth.files.safe_text import visible
from booth.log import events as ev
from booth.units import Quantity, System
from tests.card.jobs import HOSTILE, date_of, numbered, poisoned, time_of, whole
from tests.job.make import at, opened, q
from tests.log.logs import any_text, some_events

#: The columns as scripts know them: none goes, none moves, others may come behind them.
STABLE = "job,row,number,time,local,product,part,coat,kind,what,value,unit,shown,typed,words,voided"
#: What begins a formula in a spreadsheet (OWASP, CSV injection; both widths).
FORMULA = re.compile(r"^[\s]*[=+@\uff1d\uff0b\uff20\t\r-]|^\uff0d")
NUMBER = re.compile(r"-?\d+(\.\d+)?(e[+-]\d+)?")


def table(events: list[ev.Event], system: System = System.METRIC, name: str = "a-1") -> str:
    return as_csv(events, system, time_of, date_of, name)


def rows(text: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(text, newline=""), strict=True))


def test_columns_are_the_ones_that_are_documented() -> None:
    head = table([opened()]).split("\r\n")[0]
    assert head.startswith(STABLE) and head == ",".join(COLUMNS)
    import booth.card.as_csv as module

    for name in COLUMNS:
        assert re.search(rf"\b{name}\b", module.__doc__ or ""), name


def test_a_row_for_every_entry_and_one_for_every_figure() -> None:
    events = numbered(whole())
    found = rows(table(events))
    entries = [row for row in found if row["row"] == "entry"]
    assert [int(row["number"]) for row in entries] == [event.n for event in events]
    (caught,) = [row for row in entries if row["kind"] == "catch made"]
    assert (
        caught["words"].startswith("catch of paint: 125 ml") and caught["product"] == "Trial clear"
    )
    figures = {
        row["what"]: row for row in found if row["row"] == "figure" and row["kind"] == "catch made"
    }
    assert figures["amount"]["value"] == "125" and figures["amount"]["unit"] == "ml"
    assert figures["delivery_ml_min"]["value"] == "250"
    assert figures["tip"]["shown"] == "1.4 mm" and figures["turns"]["shown"] == "2 turns"
    pours = [
        row["what"] for row in found if row["kind"] == "batch mixed" and row["row"] == "figure"
    ]
    assert pours == ["pours clear", "pours hardener", "pours thinner", "total"]
    coat = next(row for row in entries if row["kind"] == "coat begun")
    assert (coat["part"], coat["coat"]) == ("door", "1")
    assert coat["time"] == "2026-09-21T14:28:20Z" and coat["local"] == "2026-09-21 08:15"


def test_what_an_entry_says_nothing_of_is_no_figure() -> None:
    begun = ev.CoatBegun(n=0, at=at(1), part="door", coat=1)
    assert [row["row"] for row in rows(table(numbered([opened(), begun])))] == ["entry", "entry"]
    late = ev.CoatBegun(n=0, at=at(1), part="door", coat=1, late_s=90)
    (figure,) = [r for r in rows(table(numbered([opened(), late]))) if r["row"] == "figure"]
    assert (figure["what"], figure["value"], figure["unit"]) == ("late_s", "90", "s")


def test_shown_figures_follow_the_units_and_base_values_do_not() -> None:
    events = numbered([opened(), ev.AirRead(n=0, at=at(1), inlet=q(190, "kPa"))])
    us, metric = (rows(table(events, system))[-1] for system in (System.US, System.METRIC))
    # 190 kPa / 6.894757 (NIST SP 811, app. B) = 27.6 psi
    assert (us["shown"], metric["shown"]) == ("28 psi", "1.90 bar")
    assert us["value"] == metric["value"] == "190" and us["unit"] == "kPa"


def test_a_voided_entry_is_told_as_such_with_its_figures() -> None:
    air = ev.AirRead(n=0, at=at(1), inlet=q(190, "kPa"))
    found = rows(table(numbered([opened(), air, ev.Voided(n=0, at=at(2), target=2)])))
    assert [(row["number"], row["row"], row["voided"]) for row in found] == [
        ("1", "entry", ""),
        ("2", "entry", "yes"),
        ("2", "figure", "yes"),
        ("3", "entry", ""),
    ]


def is_sound(text: str) -> None:
    """RFC 4180, read strictly; every line as long as the first; no cell a formula."""
    assert text.endswith("\r\n")
    found = list(csv.reader(io.StringIO(text, newline=""), strict=True))
    assert {len(row) for row in found} == {len(COLUMNS)}
    # Unquoted, a bare line feed never stands in it: the texts are one line each.
    assert "\n" not in text.replace("\r\n", "")
    for row in found[1:]:
        for name, cell in zip(COLUMNS, row, strict=True):
            if name in ("value", "shown", "number", "coat"):
                assert not cell or NUMBER.match(cell) or not FORMULA.match(cell), (name, cell)
            else:
                assert not FORMULA.match(cell), (name, cell)


@pytest.mark.parametrize("text", HOSTILE, ids=range(len(HOSTILE)))
def test_hostile_text_in_every_field_is_no_formula_and_breaks_no_row(text: str) -> None:
    events = poisoned(whole(), text)
    told = table(events, System.US, text)
    is_sound(told)
    assert "\x1b" not in told and "\u202e" not in told
    found = rows(told)
    assert len([row for row in found if row["row"] == "entry"]) == len(events)
    wanted = visible(text)
    assert found[0]["job"].removeprefix("'") in (wanted, wanted.removeprefix("'"))


@given(st.lists(some_events, max_size=8), st.sampled_from(System), any_text)
def test_any_events_make_a_sound_table(events: list[ev.Event], system: System, name: str) -> None:
    every = numbered([opened(), *events])
    told = table(every, system, name)
    is_sound(told)
    assert sum(row["row"] == "entry" for row in rows(told)) == len(every)


@given(any_text)
def test_harmless_changes_nothing_but_what_leads_to_a_formula(text: str) -> None:
    found = harmless(text)
    assert found == visible(text) or found == f"'{visible(text)}"
    assert not FORMULA.match(found)


def test_a_negative_figure_stays_a_number() -> None:
    cold = ev.WeatherRead(
        n=0,
        at=at(1),
        air=q(-5, "degC"),
        humidity=q(50, "%"),
        part=Quantity(-6, "degC", "-6 C"),
    )
    air, _, part = [r for r in rows(table(numbered([opened(), cold]))) if r["row"] == "figure"]
    assert float(air["value"]) == -5 and air["shown"] == "-5.0 °C"
    assert part["typed"] == "'-6 C"


def test_a_log_without_an_opening_is_a_table_too() -> None:
    told = table(numbered([ev.NoteMade(n=0, at=at(1), text="alone")]))
    assert [row["words"] for row in rows(told)] == ["note: alone"]
