"""The card of a rehearsal: that it is one stands in every form, with what it said to change."""

from __future__ import annotations

import msgspec
import pytest

from booth.card.forms import in_form
from booth.log import events as ev
from booth.units import System
from tests.job.make import at, opened, q

SAID = ("Needle out, a quarter turn at a time.", "Your passes differ.")


def events(closed: bool = True, rehearsal: bool = True) -> list[ev.Event]:
    first = msgspec.structs.replace(opened(), rehearsal=rehearsal)
    kept: list[ev.Event] = [
        ev.AirRead(n=2, at=at(60), inlet=q(200, "kPa")),
        ev.CoatBegun(n=3, at=at(100), part="door", coat=1),
        ev.CoatEnded(n=4, at=at(160), part="door", coat=1),
    ]
    if closed:
        to_change = SAID if rehearsal else ()
        kept.append(ev.JobClosed(n=5, at=at(200), verdict="", to_change=to_change))
    return [first, *kept]


def card(form: str, **which: bool) -> str:
    return in_form(
        form, events(**which), System.METRIC, lambda _: "12:00", lambda _: "today", (), "the name"
    )


@pytest.mark.parametrize("form", ["text", "markdown", "csv", "html"])
def test_every_form_says_that_it_is_a_rehearsal_and_what_to_change(form: str) -> None:
    said = card(form)
    assert "Rehearsal: Trial clear" in said
    for each in SAID:
        assert each in said
    assert "Rehearsal" not in card(form, rehearsal=False)


@pytest.mark.parametrize("form", ["text", "markdown", "html"])
@pytest.mark.parametrize("closed", [True, False])
def test_it_has_no_verdict_and_no_film(form: str, closed: bool) -> None:
    said = card(form, closed=closed)
    assert "no setting of it is one for the coating" in said
    assert "Verdict" not in said and "film in all" not in said
    assert "Verdict" in card(form, closed=closed, rehearsal=False)
