"""Poured onto a rest that holds another hardener: the careful end of each wait. All values are invented."""

from __future__ import annotations

import msgspec
import pytest

from booth.job.job_schedule import planned
from booth.job.material import plan_of
from booth.job.schedule import Span
from booth.job.together import OF_SEVERAL, others_in_rest, poured_together
from booth.job.wait import What
from booth.job.waits import WHICH_HARDENER
from booth.log import events as ev
from booth.log.codec import decode, encode
from booth.log.fold import Job, fold
from booth.profile.model import Film, Range
from booth.units import System
from booth.words.event_words import words
from tests.job.make import at, mild, opened, q
from tests.job.test_mix_choice import CLEAR, OWN_WAITS, USUAL, mixed, waits_of

H = 3600.0
#: By the hardener: between coats, next product opens, closes, handling; as USUAL and LAZY have them.
MEDIUM = (600, H, 24 * H, 8 * H)
SLOW = (1200, 2 * H, 12 * H, 16 * H)
#: By hand: the later of both for what opens, the sooner for what closes.
BOTH = (1200, 2 * H, 12 * H, 16 * H)


def told(*batches: ev.Event) -> tuple[float | None, ...]:
    between, last = waits_of(2, *batches)[What.NEXT_COAT], waits_of(1, *batches)
    window = last[What.NEXT_PRODUCT]
    assert between.closes_s == window.closes_s
    return between.opens_s, window.opens_s, window.closes_s, last[What.HANDLE].opens_s


@pytest.mark.parametrize(
    ("batches", "expected"),
    [
        ((mixed(3, "medium"),), MEDIUM),
        ((mixed(3, "slow"),), SLOW),
        ((mixed(3, "slow"), mixed(4, "medium", 30, onto=3)), BOTH),
        ((mixed(3, "medium"), mixed(4, "slow", 30, onto=3)), BOTH),
        # Into a fresh cup: nothing of the other one is in it.
        ((mixed(3, "slow"), mixed(4, "medium", 30)), MEDIUM),
        # What a rest's own rest held is in it as well.
        (
            (mixed(3, "slow"), mixed(4, "medium", 20, onto=3), mixed(5, "medium", 30, onto=4)),
            BOTH,
        ),
    ],
)
def test_the_longer_wait_and_the_window_that_closes_sooner(
    batches: tuple[ev.Event, ...], expected: tuple[float, ...]
) -> None:
    assert told(*batches) == expected


def test_it_is_said_why() -> None:
    found = waits_of(1, mixed(3, "slow"), mixed(4, "medium", 30, onto=3))
    assert OF_SEVERAL in found[What.HANDLE].why
    assert waits_of(1, mixed(3, "slow"), mixed(4, "slow", 30, onto=3))[What.HANDLE].why == ""


def test_a_rest_of_which_nobody_said_what_it_holds_leaves_no_wait_known() -> None:
    found = waits_of(1, mixed(3, ""), mixed(4, "medium", 30, onto=3))
    assert found[What.HANDLE].opens_s is None and found[What.HANDLE].why == WHICH_HARDENER
    # And the window closes as soon as with any of them.
    assert found[What.NEXT_PRODUCT].closes_s == 12 * H


def job(*events: ev.Event, coats: int = 2) -> Job:
    assert CLEAR.mix is not None
    mix = msgspec.structs.replace(CLEAR.mix, hardeners=(OWN_WAITS, *CLEAR.mix.hardeners[::2]))
    film = Film(coats=Range(coats, coats), wet_um=Range(50, 50))
    return fold([opened(("door",), mix=mix, waits=USUAL, film=film), mild(), *events])


def test_the_plan_and_the_amount_reckon_with_it() -> None:
    mix = (mixed(3, "slow"), mixed(4, "medium", 30, onto=3))
    for batches, wait_s, handle_s in ((mix[:1], 1200, 16 * H), (mix, 1200, 16 * H)):
        plan = planned(job(*batches), at(60))
        first, second = (each for each in plan.schedule.blocks if each.span is Span.SPRAY)
        assert second.start_s - first.end_s == wait_s
        assert plan.handle_s == second.end_s + handle_s
    fresh = planned(job(mix[0], mixed(4, "medium", 30)), at(60))
    assert fresh.handle_s == 300 + 600 + 300 + 8 * H
    sized = {"area_m2": 1.0, "wet_um": 50.0, "lost": 0.0, "left_ml": 0.0, "cup_ml": 600.0}
    caught = ev.CatchMade(n=5, at=at(40), seconds=60, amount=q(200, "ml"), delivery_ml_min=200)
    spans = [
        plan_of(job(*batches, caught), coats=2, large=False, ample=True, **sized).span  # type: ignore[arg-type]
        for batches in ((mixed(3, "medium"),), mix)
    ]
    assert spans[0] is not None and spans[1] is not None
    assert spans[1][0] - spans[0][0] == spans[1][1] - spans[0][1] == 600


def test_what_else_the_rest_holds_is_in_the_log() -> None:
    poured = (ev.Pour("clear", q(100, "ml")), ev.Pour("hot", q(10, "ml")))
    first = ev.BatchMixed(n=3, at=at(0), batch=1, hardener="slow", thinned_with="hot", pours=poured)
    made = job(first)
    assert others_in_rest(made, 1, "medium", "usual") == ("slow", "hot")
    # No thinner is poured now, or none was then: nothing to compare.
    assert others_in_rest(made, 1, "slow", "") == ()
    dry = msgspec.structs.replace(first, pours=poured[:1])
    assert others_in_rest(job(dry), 1, "slow", "usual") == ()
    assert others_in_rest(made, None, "medium", "usual") == ()
    second = ev.BatchMixed(
        n=4, at=at(60), batch=2, onto=1, hardener="medium", others=("slow", "hot")
    )
    assert decode(encode(second)) == second and b"others" not in encode(first)
    assert words(second, System.METRIC).endswith("onto batch 1, whose rest holds slow, hot")


def test_a_log_in_which_batches_stand_on_each_other_is_read_to_its_end() -> None:
    odd = fold([opened(), mixed(3, "a", onto=4), mixed(4, "b", onto=3), mixed(5, "c", onto=5)])
    for batch in odd.batches:
        assert batch in poured_together(odd, batch)
        assert len(poured_together(odd, batch)) <= 2
