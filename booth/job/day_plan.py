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
from booth.job.job_schedule import COAT_S
from booth.job.lasting import Lasting
from booth.job.measured import known
from booth.job.schedule import Cause, PartState, Pot, Rules, Schedule, Span, schedule
from booth.log.events import WeatherRead
from booth.profile.model import NextProduct, Profile
from booth.profile.next_product import next_window

#: Parts where none are named.
ONE_PART = ("the part",)
NO_RACKS: Mapping[str, int] = {}


class DayWait(msgspec.Struct, frozen=True):
    """One wait of a product. coat: after which one, 0 for the mix; opens, closes: None where the
    profile does not say."""

    product: str
    coat: int
    what: str
    opens: Lasting | None
    closes: Lasting | None = None


class DayBlock(msgspec.Struct, frozen=True):
    """One stretch of the day [s from its start]; None where a wait before it is not known."""

    part: str
    what: str
    begins_s: float | None
    ends_s: float | None


class DayPlan(msgspec.Struct, frozen=True):
    """waits: of every product; line: what is done, in order; why: all that speaks against it; guessed:
    a coat was taken to last so long [s], which nobody has measured."""

    waits: tuple[DayWait, ...]
    line: tuple[DayBlock, ...]
    why: tuple[str, ...]
    guessed_s: float | None

    @property
    def fits(self) -> bool:
        """Whether nothing speaks against it."""
        return not self.why


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
    waits: list[DayWait] = []
    line: list[DayBlock] = []
    why: list[str] = [] if weather else [f"{lasting.NOT_READ}."]
    states: list[PartState] | None = spray
    gun_free_s = 0.0
    for place, profile in enumerate(products):
        coming = products[place + 1] if place + 1 < len(products) else None
        told = _waits_of(profile, coming, weather)
        waits += told
        why += _weather_why(profile, weather)
        if states is None:
            line += [DayBlock(part, _coats(profile), None, None) for part in parts]
            continue
        plan = _product(profile, weather, states, gun_free_s, line, why)
        ends, gun_free_s = dict(plan.ends), max(plan.last_s, gun_free_s)
        if plan.unknown:
            why.append(f"{profile.name}: a wait between coats is not known.")
            states = None
        elif coming is not None:
            states = _open_for(profile, coming, told, ends, spray, why)
        else:
            line += _after(told, profile, ends)
    guessed = COAT_S if coat_s is None else None
    return DayPlan(tuple(waits), tuple(line), tuple(dict.fromkeys(why)), guessed)


def _waits_of(
    profile: Profile, coming: Profile | None, weather: WeatherRead | None
) -> list[DayWait]:
    def wait(what: str, coat: int, opens: Lasting | None, closes: Lasting | None = None) -> None:
        if opens is not None or closes is not None:
            found.append(DayWait(profile.name, coat, what, opens, closes))

    found: list[DayWait] = []
    wait("induction", 0, lasting.induction(profile, weather))
    wait("pot life", 0, None, lasting.pot_life(profile, weather))
    *before, last = coats_of(profile)
    closes = lasting.recoat_closes(profile, weather)
    for coat in before:
        opens = lasting.after_coat(profile, coat.plan, weather)
        wait(f"coat {coat.number + 1}", coat.number, opens, closes)
    window = next_window(profile, coming) or NextProduct()
    what = f"next product: {coming.name}" if coming else "next product"
    may_go_on = lasting.opens(window.opens, profile, weather)
    if coming is not None and may_go_on is None:
        may_go_on = lasting.not_known("the profile does not say when it opens")
    wait(what, last.number, may_go_on, lasting.closes(window.closes, profile, weather))
    waits = profile.waits
    after = (
        *(("dust-free", waits.dust_free), ("tape", waits.tape), ("handle", waits.handle)),
        *(("before heat", waits.before_bake), ("sand", waits.sand), ("polish", waits.polish)),
        ("cure", waits.cure),
    )
    for what, rule in after:
        wait(what, last.number, lasting.opens(rule, profile, weather))
    return found


def _weather_why(profile: Profile, weather: WeatherRead | None) -> list[str]:
    if weather is None:
        return []
    found = [f"{profile.name}: {each}." for each in lasting.limits_missed(profile, weather)]
    judged = known(lasting.verdict, profile, weather)
    if profile.limits.dew_margin_c is None and judged is not None and judged.margin_c > 0:
        found += [
            f"The part is {each.measured:.1f} K over the dew point, less than {each.low:g} K."
            for each in judged.failed
            if each.name == "dew margin"
        ]
    return found


def _product(
    profile: Profile,
    weather: WeatherRead | None,
    states: list[PartState],
    gun_free_s: float,
    line: list[DayBlock],
    why: list[str],
) -> Schedule:
    """The coats of one product; adds to the line and to what speaks against it."""
    opens_s = min(state.opens_s or 0.0 for state in states)
    stands, life = lasting.induction(profile, weather), lasting.pot_life(profile, weather)
    mixed_s, ready_s, pots = opens_s, opens_s, []
    if stands is not None and stands.seconds is None:
        why.append(f"{profile.name}: how long it has to stand is not known.")
    if profile.mix is not None and profile.mix.parts:
        stand_s = (stands.seconds or 0.0) if stands is not None else 0.0
        # Mixed so that it has stood when the first part is open for it.
        mixed_s = max(
            opens_s - stand_s, 0.0, gun_free_s if gun_free_s <= opens_s - stand_s else 0.0
        )
        ready_s = max(opens_s, mixed_s + stand_s)
        line.append(DayBlock("", f"mix {profile.name}", mixed_s, ready_s))
        if life is not None and life.seconds is not None:
            pots = [Pot(profile.name, mixed_s, mixed_s + life.seconds)]
    coats = coats_of(profile)
    closes = lasting.recoat_closes(profile, weather)
    rules = Rules(
        coats=len(coats),
        waits_s=tuple(lasting.after_coat(profile, coat.plan, weather).seconds for coat in coats),
        closes_s=closes.seconds if closes else None,
        starts_s=max(ready_s, gun_free_s),
    )
    plan = schedule(states, rules, pots)
    for block in plan.blocks:
        if block.span is Span.SPRAY:
            what = f"{profile.name}, {coats[block.coat - 1].name}"
            line.append(DayBlock(block.part, what, block.start_s, block.end_s))
    timed = Counter(block.part for block in plan.blocks if block.span is Span.SPRAY)
    for state in states:
        # Coats that have no time are told as well: they are to be sprayed all the same.
        for coat in coats[timed[state.name] :]:
            line.append(DayBlock(state.name, f"{profile.name}, {coat.name}", None, None))
    for trouble in plan.troubles:
        if trouble.cause is Cause.WINDOW:
            why.append(f"{profile.name}: the window of {trouble.part} closes before its coat.")
        elif trouble.cause is Cause.POT_LIFE:
            why.append(
                f"{profile.name}: its pot life ends before its last coat: mix it in batches."
            )
    return plan


def _open_for(
    profile: Profile,
    coming: Profile,
    told: list[DayWait],
    ends: dict[str, float],
    parts: Sequence[PartState],
    why: list[str],
) -> list[PartState] | None:
    """When each part is open for the coming product; None where that is not known."""
    window = next(each for each in told if each.what == f"next product: {coming.name}")
    if window.opens is None or window.opens.seconds is None:
        why.append(f"When {coming.name} may go onto {profile.name} is not known.")
        return None
    closes_s = window.closes.seconds if window.closes is not None else None
    return [
        msgspec.structs.replace(
            part,
            since_s=ends[part.name],
            opens_s=ends[part.name] + window.opens.seconds,
            closes_s=None
            if closes_s is None
            else ends[part.name] + closes_s - (part.spray_s if part.is_rack else 0.0),
        )
        for part in parts
    ]


def _after(told: list[DayWait], profile: Profile, ends: dict[str, float]) -> list[DayBlock]:
    """When each part can be handled, of the last product."""
    handle = next((each.opens for each in told if each.what == "handle"), None)
    if handle is None:
        return []
    wait_s = handle.seconds
    return [
        DayBlock(part, "can be handled", None if wait_s is None else end + wait_s, None)
        for part, end in ends.items()
    ]


def _coats(profile: Profile) -> str:
    number = len(coats_of(profile))
    return f"{profile.name}, {number} coat{'s' if number != 1 else ''}"
