"""A clock in doubt is asked about: the right arrow answers it, at any step, and the log has it."""

from __future__ import annotations

from collections.abc import Sequence

import msgspec

from booth.bench.act import Menu
from booth.bench.clock_doubt import DOUBT
from booth.log.events import AgeTold, BatchMixed, CoatBegun, CoatEnded, Event, NoteMade
from booth.profile.model import Waits
from tests.instruments.at_bench import AtBench
from tests.job.make import mild, one_time, profile
from tests.manual_clock import ManualClock

OPEN_ENDED = profile(waits=Waits(flash_off=one_time(600), handle=one_time(8 * 3600)), mix=None)


def door_coated(clock: ManualClock) -> Sequence[Event]:
    """A coat on the door; a note five minutes later; then the machine came back with its clock an
    hour behind."""
    read = msgspec.structs.replace(mild(), at=clock.now())
    coat = [
        CoatBegun(n=0, at=clock.now(), part="door", coat=1),
        CoatEnded(n=0, at=clock.now(), part="door", coat=1),
    ]
    clock.advance(300)
    note = NoteMade(n=0, at=clock.now(), text="looked at it")
    clock.reboot(off_s=-3600, up_s=20)
    return [read, *coat, note]


def menu_of(b: AtBench) -> list[str]:
    (menu,) = (each for each in b.rest if isinstance(each, Menu))
    return [choice.words for choice in menu.choices]


def in_doubt(**more: object) -> AtBench:
    b = AtBench("coats", profile=OPEN_ENDED, before=door_coated, **more)  # type: ignore[arg-type]
    b.press("up")
    assert b.readout.shown_word == "CHECK CLOCK" and "→ say how long ago" in b.text
    return b


def asked(b: AtBench) -> list[str]:
    b.press("right")
    b.choose(DOUBT)
    return menu_of(b)


def test_space_asks_first() -> None:
    b = in_doubt()
    assert b.keys["Space"] == "coat 2: door?"
    b.press("space")
    assert b.job.running_coat("door") is None and "clock in doubt" in b.said
    b.press("space")
    coat = b.job.running_coat("door")
    assert coat is not None and coat.begun.doubtful


def test_it_is_said_how_long_ago_and_the_wait_runs_on_from_there() -> None:
    b = in_doubt()
    assert asked(b) == [
        "door, coat 1: say how long ago…",
        "door, coat 1: wait anew, 5 min are certain",
    ]
    b.choose("door, coat 1: say how long ago")
    b.answer("4 min")
    assert "at least 5 min have passed for certain" in b.said and b.job.of(AgeTold) == ()
    for words in ("soon", ""):
        asked(b)
        b.choose("door, coat 1: say how long ago")
        b.answer(words)
        assert b.job.of(AgeTold) == ()
    asked(b)
    b.choose("door, coat 1: say how long ago")
    b.answer("8 min")
    assert [each.ago_s for each in b.job.of(AgeTold)] == [480]
    assert b.said == "door, coat 1: 8 min ago, as you said."
    assert (b.readout.figure, b.readout.shown_word) == ("2:00", "WAIT")
    b.press("right")
    assert DOUBT not in menu_of(b)  # nothing is in doubt any more


def test_waiting_anew_counts_what_is_certain_and_is_not_offered_where_something_closes() -> None:
    b = in_doubt()
    asked(b)
    b.choose("door, coat 1: wait anew")
    assert (b.readout.figure, b.readout.shown_word) == ("5:00", "WAIT")
    closing = AtBench("coats", before=door_coated)  # its window closes after a day
    closing.press("up")
    assert not any("wait anew" in words for words in asked(closing))


def test_where_only_a_boot_in_between_was_wrong_the_clock_can_be_called_right() -> None:
    def between(clock: ManualClock) -> Sequence[Event]:
        found = door_coated(clock)
        wrong = NoteMade(n=0, at=clock.now(), text="with the battery dead")
        mixed = BatchMixed(n=0, at=clock.now(), batch=1)
        clock.reboot(off_s=3600 + 240, up_s=20)
        return [*found, wrong, mixed]

    b = AtBench("coats", profile=OPEN_ENDED, before=between)
    b.press("up")
    assert b.readout.shown_word == "CHECK CLOCK"
    assert asked(b)[0] == "door, coat 1: the clock is right, 9 min 40 s ago"
    b.choose("door, coat 1: the clock is right")
    assert b.readout.figure == "0:20" and [e.ago_s for e in b.job.of(AgeTold)] == [580]


def test_it_is_offered_at_every_step() -> None:
    b = AtBench("weather", profile=OPEN_ENDED, before=door_coated)
    assert asked(b)[0].startswith("door, coat 1")
