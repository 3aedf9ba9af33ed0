"""Every alarm that can ring has a call, a deed and a sentence."""

from __future__ import annotations

import pytest

from booth.job.wait import RINGING, Alarm, Call, Standing, State, Wait, What
from booth.moment import Basis
from booth.trade.waits.wait_time import Certainty
from booth.words.alarm_words import alarm_face, deed
from tests.job.make import at

CALLS = {State.READY: Call.GO_ON, State.CLOSING: Call.HURRY, State.LATE: Call.TOO_LATE}


def alarm(what: What, state: State, **more: object) -> Alarm:
    wait = Wait("k", what, "left door", at(0), 60.0, 600.0, Certainty.KNOWN, "rule", coat=1, **more)  # type: ignore[arg-type]
    return Alarm("k:x", Standing(wait, state, 60.0, None, 0.0, Basis.CONTINUOUS), at(60))


@pytest.mark.parametrize(("what", "state"), RINGING)
def test_what_can_ring_calls_for_something(what: What, state: State) -> None:
    each = alarm(what, state)
    wanted = Call.STOP if (what, state) == (What.POT_LIFE, State.LATE) else CALLS[state]
    assert each.call is wanted
    shown = alarm_face(each, "its sentence", "1 of 2")
    assert shown.whose == "left door" and shown.deed == deed(each).upper() != ""
    assert (shown.line, shown.place) == ("its sentence", "1 of 2")


def test_the_next_coat_is_named_by_its_number() -> None:
    assert deed(alarm(What.NEXT_COAT, State.READY)) == "COAT 2"


def test_too_late_is_never_told_as_a_coat_to_begin() -> None:
    for what in (What.NEXT_COAT, What.NEXT_PRODUCT):
        assert deed(alarm(what, State.LATE)) == "ABRADE"
        # A coat between the two windows may lift what is under it.
        assert deed(alarm(what, State.LATE, again_s=9000.0)) == "DO NOT COAT"


def test_a_surface_that_has_to_be_abraded_first_is_told_so() -> None:
    assert deed(alarm(What.NEXT_PRODUCT, State.READY, abrade_s=30.0)) == "ABRADE FIRST"
    assert deed(alarm(What.NEXT_PRODUCT, State.READY, abrade_s=3000.0)) == "NEXT PRODUCT"
