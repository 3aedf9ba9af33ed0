"""What a wait is, and where it stands at a given now. Pure: now is handed in.

A wait is not a counter: it is the difference between a logged moment and now. What is not known
never rings ready.
"""

from __future__ import annotations

import enum
from collections.abc import Sequence

import msgspec

from booth.moment import Basis, Boot, Moment, elapsed, later
from booth.trade.waits.wait_time import Certainty

#: The last fifth of a window is its closing, but no more than half an hour of it.
CLOSING_FRACTION = 0.2
CLOSING_MOST_S = 30 * 60.0


class State(enum.StrEnum):
    """Where a wait stands, the most urgent first."""

    LATE = "late"
    CLOSING = "closing"
    READY = "ready"
    UNKNOWN = "not known"
    WAIT = "wait"


class What(enum.StrEnum):
    """What is waited for."""

    NEXT_COAT = "next coat"
    NEXT_PRODUCT = "next product"
    DUST_FREE = "dust-free"
    TAPE = "can be taped"
    HANDLE = "can be handled"
    BEFORE_BAKE = "can go into the heat"
    SAND = "can be sanded"
    POLISH = "can be polished"
    CURE = "cured"
    INDUCTION = "induction"
    POT_LIFE = "pot life"


#: What is told after the last coat, and what the profile calls its wait.
AFTER = {
    What.DUST_FREE: "dust_free",
    What.TAPE: "tape",
    What.HANDLE: "handle",
    What.BEFORE_BAKE: "before_bake",
    What.SAND: "sand",
    What.POLISH: "polish",
    What.CURE: "cure",
}


class Wait(msgspec.Struct, frozen=True):
    """One wait: what for, since when, when it opens and when it closes [s after start].

    opens_s: 0 where nothing is waited for first, None where that is not known; closes_s: None where
    nothing closes; again_s: when it opens again; abrade_s: from when on only over an abraded
    surface; certainty: of what is counted first; why: what makes it unsure; rule: which rule, or
    the profile; by_touch: a touch that is dry opens it; touched_dry: one did; since_n: the number
    of the entry since which it runs.
    """

    key: str
    what: What
    title: str
    start: Moment
    opens_s: float | None
    closes_s: float | None
    certainty: Certainty
    rule: str
    why: str = ""
    part: str = ""
    coat: int = 0
    product: str = ""
    again_s: float | None = None
    abrade_s: float | None = None
    by_touch: bool = False
    touched_dry: bool = False
    since_n: int = 0

    @property
    def estimate(self) -> bool:
        """Whether a figure of it is anything but the data sheet's own for today."""
        return self.certainty not in (Certainty.KNOWN, Certainty.NOT_KNOWN)

    @property
    def opens_at(self) -> Moment | None:
        return None if self.opens_s is None else later(self.start, self.opens_s)

    @property
    def closes_at(self) -> Moment | None:
        return None if self.closes_s is None else later(self.start, self.closes_s)

    @property
    def closing_from_s(self) -> float | None:
        """When its closing begins [s after start]."""
        if self.closes_s is None:
            return None
        window = max(self.closes_s - (self.opens_s or 0.0), 0.0)
        return self.closes_s - min(window * CLOSING_FRACTION, CLOSING_MOST_S)


class Standing(msgspec.Struct, frozen=True):
    """A wait at a given now. remaining_s: to the next change that matters; past_s: since it was late.

    Where the clock is in doubt, elapsed_s is what has passed at least.
    """

    wait: Wait
    state: State
    elapsed_s: float
    remaining_s: float | None
    past_s: float
    basis: Basis

    @property
    def doubtful(self) -> bool:
        """Whether the clock leaves it in doubt; that it is late can be proven all the same."""
        return self.basis is Basis.DOUBTFUL and self.state is not State.LATE

    @property
    def estimate(self) -> bool:
        """Whether the time that is told is anything but the data sheet's own for today."""
        return self.wait.estimate and not self.doubtful

    @property
    def fraction(self) -> float:
        """How much of the present stretch is over, 0..1."""
        wait = self.wait
        if self.state is State.WAIT:
            return self.elapsed_s / wait.opens_s if wait.opens_s else 1.0
        if self.state is State.UNKNOWN:
            return 0.0
        if wait.closes_s is None or self.state is State.LATE:
            return 1.0
        opened_s = wait.opens_s or 0.0
        return (self.elapsed_s - opened_s) / max(wait.closes_s - opened_s, 1e-9)

    @property
    def abrade(self) -> bool:
        """Whether the surface has to be abraded first by now."""
        abrade_s = self.wait.abrade_s
        return abrade_s is not None and self.elapsed_s >= abrade_s


#: What rings, in words.
RINGING = {
    (What.NEXT_COAT, State.READY): "ready for coat {next}",
    (What.NEXT_COAT, State.CLOSING): "recoat window is closing",
    (What.NEXT_COAT, State.LATE): "recoat window has closed",
    (What.NEXT_PRODUCT, State.READY): "ready for {product}",
    (What.NEXT_PRODUCT, State.CLOSING): "window for {product} is closing",
    (What.NEXT_PRODUCT, State.LATE): "window for {product} has closed",
    **{
        (what, State.READY): str(what)
        for what in (
            *(What.DUST_FREE, What.TAPE, What.HANDLE, What.BEFORE_BAKE),
            *(What.SAND, What.POLISH, What.CURE),
        )
    },
    (What.INDUCTION, State.READY): "induction time is over",
    (What.POT_LIFE, State.CLOSING): "pot life is nearly over",
    (What.POT_LIFE, State.LATE): "pot life is over: do not spray it",
}


class Call(enum.StrEnum):
    """What an alarm calls for, the gravest first."""

    STOP = "stop"
    HURRY = "hurry"
    TOO_LATE = "too late"
    GO_ON = "go on"


class Alarm(msgspec.Struct, frozen=True):
    """Something to be heard until it is acknowledged. since: when it became so."""

    key: str
    standing: Standing
    since: Moment

    @property
    def call(self) -> Call:
        """What it calls for."""
        state = self.standing.state
        if state is State.LATE:
            return Call.STOP if self.standing.wait.what is What.POT_LIFE else Call.TOO_LATE
        return Call.HURRY if state is State.CLOSING else Call.GO_ON

    @property
    def words(self) -> str:
        """What, for which part."""
        wait, state = self.standing.wait, self.standing.state
        product = wait.product or "the next product"
        words = RINGING.get((wait.what, state), f"{wait.what}: {state}")
        return words.format(next=wait.coat + 1, product=product)


def standing(wait: Wait, now: Moment, boots: Sequence[Boot] = ()) -> Standing:
    """Give where `wait` stands at `now`; boots: of the job, which may prove the clock wrong."""
    passed = elapsed(wait.start, now, boots)
    seconds, opens_s, closes_s = passed.seconds, wait.opens_s, wait.closes_s
    if wait.again_s is not None and seconds >= wait.again_s:
        return Standing(wait, State.READY, seconds, None, 0.0, passed.basis)
    if closes_s is not None and seconds >= closes_s:
        return Standing(wait, State.LATE, seconds, None, seconds - closes_s, passed.basis)
    state, ends_s = State.READY, closes_s
    if wait.closing_from_s is not None and seconds >= max(wait.closing_from_s, opens_s or 0.0):
        state = State.CLOSING
    elif opens_s is None:
        state, ends_s = State.UNKNOWN, None
    elif seconds < opens_s:
        state, ends_s = State.WAIT, opens_s
    left_s = None if ends_s is None else ends_s - seconds
    return Standing(wait, state, seconds, left_s, 0.0, passed.basis)
