"""A whole day before it begins: every product on every part, in this weather, on one time line. Pure.

It knows no job: products in their order, the weather, the parts. Where a wait is not known, what
follows has no time, and it is said.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence

import msgspec

from booth.job import lasting
from booth.job.coat_plan import coats_of
from booth.job.day_waits import (
    DayChoice,
    DayWait,
    choices_of,
    mixes_of_day,
    recoat_closes,
    waits_of,
    weather_why,
    window_of,
)
from booth.job.schedule import COAT_S, Block, Cause, PartState, Pot, Rules, Schedule, Span, schedule
from booth.job.together import after_coat, closes_first
from booth.log.events import WeatherRead
from booth.profile.model import Profile

#: Parts where none are named.
ONE_PART = ("the part",)
NO_RACKS: Mapping[str, int] = {}
HANDLED = "can be handled"


class DayBlock(msgspec.Struct, frozen=True):
    """One stretch of the day [s from its start]; None where a wait before it is not known. coat: of the
    product, 0 where it is none."""

    part: str
    what: str
    begins_s: float | None
    ends_s: float | None
    product: str = ""
    coat: int = 0


class DayPlan(msgspec.Struct, frozen=True):
    """waits: of every product; line: what is done, in order; why: all that speaks against it; guessed:
    a coat was taken to last so long [s], which nobody has measured; choices: hardener and thinner; blocks: of the parts, to be drawn."""

    waits: tuple[DayWait, ...]
    line: tuple[DayBlock, ...]
    why: tuple[str, ...]
    guessed_s: float | None
    choices: tuple[DayChoice, ...] = ()
    blocks: tuple[Block, ...] = ()

    @property
    def fits(self) -> bool:
        """Whether nothing speaks against it."""
        return not self.why

    @property
    def coats(self) -> tuple[DayBlock, ...]:
        return tuple(each for each in self.line if each.coat)

    @property
    def last_s(self) -> float | None:
        """When the last coat is on; None where that is not known."""
        ends = [each.ends_s for each in self.coats]
        return None if None in ends else max((end for end in ends if end is not None), default=None)

    @property
    def handle_s(self) -> float | None:
        """When the last part can be handled; None where that is not known."""
        begins = [each.begins_s for each in self.line if each.what == HANDLED]
        return None if None in begins else max((b for b in begins if b is not None), default=None)


def day_plan(
    products: Sequence[Profile],
    weather: WeatherRead | None,
    parts: Sequence[str] = ONE_PART,
    coat_s: float | None = None,
    pieces: Mapping[str, int] = NO_RACKS,
) -> DayPlan:
    """Give the day. coat_s: what a coat on one part takes, of a rack on one piece [s]; None: a guess,
    which is said; pieces: of the parts that are sides of a rack."""
    each_s = COAT_S if coat_s is None else coat_s
    spray = [
        PartState(p, 0, each_s * pieces.get(p, 1), is_rack=pieces.get(p, 1) > 1) for p in parts
    ]
    day = _Day(weather, spray)
    day.why += [] if weather else [f"{lasting.NOT_READ}."]
    day.lay(products, spray, 0.0)
    return day.plan(COAT_S if coat_s is None else None)


def onward(
    below: tuple[Profile, ...],
    coming: Sequence[Profile],
    weather: WeatherRead | None,
    parts: Sequence[PartState],
    ends_s: Mapping[str, float] | None,
    running: Mapping[str, PartState],
) -> DayPlan:
    """Give what follows from now [s] on parts that carry a product, or will.

    below: that product, as each hardener in it has it; parts: with no coat yet; ends_s: when the last
    coat of `below` is on each of them, None where that is not known; running: the parts whose window
    for the coming product runs already, with it.
    """
    day = _Day(weather, parts)
    states = None if ends_s is None else day.open_for(below, coming[0], ends_s, running)
    if ends_s is None:
        day.why.append(f"When {coming[0].name} may begin is not known.")
    day.lay(coming, states, max(0.0, *ends_s.values()) if ends_s else 0.0)
    return day.plan(None)


class _Day:
    """What is gathered while the products are gone through, one after the other."""

    def __init__(self, weather: WeatherRead | None, parts: Sequence[PartState]) -> None:
        self.weather, self.parts = weather, parts
        self.waits: list[DayWait] = []
        self.line: list[DayBlock] = []
        self.why: list[str] = []
        self.choices: list[DayChoice] = []
        self.blocks: list[Block] = []

    def plan(self, guessed_s: float | None) -> DayPlan:
        why = tuple(dict.fromkeys(self.why))
        return DayPlan(
            tuple(self.waits),
            tuple(self.line),
            why,
            guessed_s,
            tuple(self.choices),
            tuple(self.blocks),
        )

    def lay(
        self, products: Sequence[Profile], states: Sequence[PartState] | None, gun_free_s: float
    ) -> None:
        """All coats of these products. states: of the parts, None where it is not known when the first
        of them may begin."""
        for profile, coming in zip(products, (*products[1:], None), strict=True):
            mixes = mixes_of_day(profile, self.weather)
            told = waits_of(mixes, coming, self.weather)
            self.waits += told
            self.choices += choices_of(profile, self.weather)
            self.why += weather_why(profile, self.weather)
            if states is None:
                for part in self.parts:
                    self._coats_without_time(profile, part.name)
                continue
            plan = self._product(mixes, states, gun_free_s)
            ends, gun_free_s = dict(plan.ends), max(plan.last_s, gun_free_s)
            if plan.unknown:
                self.why.append(f"{profile.name}: a wait between coats is not known.")
                states = None
            elif coming is not None:
                states = self.open_for(mixes, coming, ends, {})
            else:
                self.line += _after(told, ends)

    def _coats_without_time(self, profile: Profile, part: str, after: int = 0) -> None:
        """Coats that have no time are told as well: they are to be sprayed all the same."""
        for coat in coats_of(profile)[after:]:
            what = f"{profile.name}, {coat.name}"
            self.line.append(DayBlock(part, what, None, None, profile.name, coat.number))

    def _product(
        self, mixes: tuple[Profile, ...], states: Sequence[PartState], gun_free_s: float
    ) -> Schedule:
        """The coats of one product; adds to the line and to what speaks against it."""
        profile, weather = mixes[0], self.weather
        opens_s = min(state.opens_s or 0.0 for state in states)
        stands = lasting.induction(profile, weather)
        life = closes_first(mixes, lambda mix: lasting.pot_life(mix, weather))
        mixed_s, ready_s, pots = opens_s, opens_s, []
        if stands is not None and stands.seconds is None:
            self.why.append(f"{profile.name}: how long it has to stand is not known.")
        if profile.mix is not None and profile.mix.parts:
            stand_s = (stands.seconds or 0.0) if stands is not None else 0.0
            # Mixed so that it has stood when the first part is open for it.
            mixed_s = max(
                opens_s - stand_s, 0.0, gun_free_s if gun_free_s <= opens_s - stand_s else 0.0
            )
            ready_s = max(opens_s, mixed_s + stand_s)
            with_ = _with_words(choices_of(profile, weather))
            self.line.append(DayBlock("", f"mix {profile.name}{with_}", mixed_s, ready_s))
            if life is not None and life.seconds is not None:
                pots = [Pot(profile.name, mixed_s, mixed_s + life.seconds)]
        coats = coats_of(profile)
        closes = recoat_closes(mixes, weather)
        rules = Rules(
            coats=len(coats),
            waits_s=tuple(after_coat(mixes, coat.plan, weather).seconds for coat in coats),
            closes_s=closes.seconds if closes else None,
            starts_s=max(ready_s, gun_free_s),
        )
        plan = schedule(states, rules, pots)
        sprayed = [block for block in plan.blocks if block.span is Span.SPRAY]
        for block in sprayed:
            what = f"{profile.name}, {coats[block.coat - 1].name}"
            told = DayBlock(block.part, what, block.start_s, block.end_s, profile.name, block.coat)
            self.line.append(told)
        self.blocks += plan.blocks
        begun = {block.part: block.start_s for block in reversed(sprayed)}
        for state in states:
            self.blocks += _before_first(state, begun.get(state.name, state.since_s))
        timed = Counter(block.part for block in sprayed)
        for state in states:
            self._coats_without_time(profile, state.name, timed[state.name])
        for trouble in plan.troubles:
            if trouble.cause is Cause.WINDOW:
                self.why.append(
                    f"{profile.name}: the window of {trouble.part} closes before its coat."
                )
            elif trouble.cause is Cause.POT_LIFE:
                self.why.append(
                    f"{profile.name}: its pot life ends before its last coat: mix it in batches."
                )
        return plan

    def open_for(
        self,
        below: tuple[Profile, ...],
        coming: Profile,
        ends_s: Mapping[str, float],
        running: Mapping[str, PartState],
    ) -> list[PartState] | None:
        """When each part is open for the coming product; None where that is not known."""
        window = window_of(below, coming, self.weather)
        found = []
        for part in self.parts:
            state = running.get(part.name) or _open_after(part, ends_s[part.name], window)
            if state.opens_s is None:
                self.why.append(f"When {coming.name} may go onto {below[0].name} is not known.")
                return None
            found.append(state)
        return found


def _open_after(part: PartState, end_s: float, window: DayWait) -> PartState:
    """A part as the coming product finds it."""
    opens_s = window.opens.seconds if window.opens is not None else None
    closes_s = window.closes.seconds if window.closes is not None else None
    return msgspec.structs.replace(
        part,
        since_s=end_s,
        opens_s=None if opens_s is None else end_s + opens_s,
        closes_s=None
        if closes_s is None
        else end_s + closes_s - (part.spray_s if part.is_rack else 0.0),
    )


def _before_first(state: PartState, start_s: float) -> list[Block]:
    """The wait for the window of the product before, and the time the part stands ready."""
    opens_s = min(max(state.opens_s or 0.0, state.since_s), start_s)
    spans = ((Span.WAIT, state.since_s, opens_s), (Span.READY, opens_s, start_s))
    return [Block(state.name, 0, span, begin, end) for span, begin, end in spans if end > begin]


def _with_words(choices: Sequence[DayChoice]) -> str:
    """As ' with fast hardener, cool thinner', where it is known which suit."""
    names = [each.name for each in choices if each.several and each.suits is not None]
    return f" with {', '.join(names)}" if names else ""


def _after(told: list[DayWait], ends: dict[str, float]) -> list[DayBlock]:
    """When each part can be handled, of the last product."""
    handle = next((each.opens for each in told if each.what == "handle"), None)
    if handle is None:
        return []
    wait_s = handle.seconds
    return [
        DayBlock(part, HANDLED, None if wait_s is None else end + wait_s, None)
        for part, end in ends.items()
    ]
