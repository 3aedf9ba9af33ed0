"""What a rehearsal with water says to change before the real can is opened, the worst first. Pure.

Water is thinner than a coating. What it shows of the gun itself (a blocked horn, the pressure, the hand)
holds for the coating; what it shows of the fluid holds only by the painter's own catches of both, or
where the coating can but give less than water. All else is called not known, with what settles it.
"""

from __future__ import annotations

import enum
from collections.abc import Callable, Iterator, Sequence

import msgspec

from booth.job import measured
from booth.job.advice import Given, needle_in, needle_out, on_fan, on_inlet
from booth.job.air_supply import air_supply, seconds_words, verdict
from booth.job.coat_plan import wet_wanted
from booth.job.guard_gun import shop_of
from booth.job.measured import HAND_MM_S, SAME_PACE, basis_of, compare, known
from booth.job.needle_advice import CatchPair, catch_pairs, turns_words, water_paint_pairs
from booth.job.patterns import pattern_of, tries_alike
from booth.job.products import products_of
from booth.job.steps import steps_of
from booth.job.the_gun import gun_of, tip_mm_of
from booth.log import events as ev
from booth.log.fold import Job
from booth.moment import elapsed
from booth.profile.model import Range
from booth.trade.delivery.water import paint_from_water
from booth.trade.film.gun_speed import pass_time_s
from booth.trade.pattern.pattern_reading import Seen
from booth.trade.result import Estimate
from booth.units import Kind, System

#: Gives the past catches of a gun, its tip and a product: ``PastJobs.pairs``.
PastPairs = Callable[..., Sequence[CatchPair]]
#: Shapes that come from the gun itself, whatever runs through it.
OF_THE_GUN = {Seen.HEAVY_ONE_END, Seen.CRESCENT, Seen.SPITTING, Seen.FLOOD_ONE_END}
#: What a hand at the key is late by at both ends of a pass [s] (common practice, no source), and
#: from how many passes on it is said whether they are alike.
KEY_S, LEAST_PASSES = 0.4, 3
#: A film wanted that is one figure is met within so much of it (as at the step Pace).
ABOUT_IT = 0.1
#: What a rehearsal is for, by the kind of step, and what tells that it was done.
PRACTISED: dict[str, type[ev.Event]] = {
    "air": ev.AirRead,
    "catch": ev.CatchMade,
    "fan": ev.FanSet,
    "pattern": ev.PatternRead,
    "pace": ev.PassTimed,
    "coats": ev.CoatEnded,
}
NOTHING = (
    "Nothing was measured or sprayed in this rehearsal: what to change before the real can is "
    "not known."
)


class Rank(enum.IntEnum):
    """What comes first: what spoils every coat, then what spoils some, then what is open."""

    PATTERN = 1
    INLET = 2
    DELIVERY = 3
    PACE = 4
    FAN = 5
    UNEVEN = 6
    COMPRESSOR = 7
    BALANCE = 8
    NOT_KNOWN = 9
    UNPRACTISED = 10


class Finding(msgspec.Struct, frozen=True):
    """words: what was seen, and the deed."""

    rank: Rank
    words: str

    @property
    def is_change(self) -> bool:
        """Whether something is to be changed; else something is only not known."""
        return self.rank < Rank.NOT_KNOWN


def findings(job: Job, system: System, past: PastPairs) -> tuple[Finding, ...]:
    """Give what a rehearsal says, of every product that was begun in it, the worst first. past: gives
    the past catches."""
    found: list[Finding] = []
    for own in products_of(job):
        name = f"{own.profile.name}: " if job.opened.later else ""
        found += [Finding(each.rank, name + each.words) for each in _of_product(own, system, past)]
    return tuple(sorted(found, key=lambda each: each.rank))


def _of_product(job: Job, system: System, past: PastPairs) -> Iterator[Finding]:
    kinds = {step.kind: step.name for step in steps_of(job) if step.kind in PRACTISED}
    missing = [name for kind, name in kinds.items() if not job.of(PRACTISED[kind])]
    if len(missing) == len(kinds):
        yield Finding(Rank.NOT_KNOWN, NOTHING)
        return
    shop = shop_of(job)
    given = Given(job, system, gun_of(job, shop), shop.compressor)
    pairs = past(job.fitted.gun, tip_mm_of(job, given.gun), job.profile.key, without=job.opened.job)
    for each in (_pattern, _inlet, _fan, _pace, _uneven, _compressor):
        yield from each(given)
    yield from _delivery(given, pairs)
    if missing:
        words = f"Not practised: {', '.join(missing)}. Of that nothing is known."
        yield Finding(Rank.UNPRACTISED, words)


def _pattern(given: Given) -> Iterator[Finding]:
    read = given.job.patterns
    pattern = pattern_of(read[-1]) if read else None
    if pattern is None or pattern.seen is Seen.EVEN:
        return
    said, turns = f"Pattern {pattern.words}.", pattern.reading.turns
    turn = turns[min(tries_alike(read, pattern.seen), len(turns)) - 1]
    if pattern.seen in OF_THE_GUN:
        yield Finding(Rank.PATTERN, f"{said} It is the gun, not the water: {_lower(turn)}")
        return
    again = "Water is thinner than a coating: shoot paper again with the coating"
    yield Finding(Rank.BALANCE, f"{said} {again}; if it stays: {_lower(turn)}")


def _lower(deed: str) -> str:
    return deed[:1].lower() + deed[1:]


def _inlet(given: Given) -> Iterator[Finding]:
    inlet, asked = measured.inlet_kpa(given.job), given.job.profile.gun.inlet_kpa
    deeds = on_inlet(given, inlet) if inlet is not None else ()
    if inlet is not None and asked is not None and deeds:
        read, wanted = given.show(inlet, Kind.PRESSURE), given.span(asked, Kind.PRESSURE)
        deed = deeds[0] if compare(inlet, asked) == "below" else deeds[-1]
        yield Finding(Rank.INLET, f"Inlet {read}, the profile asks for {wanted}. {deed}")


def _delivery(given: Given, past: Sequence[CatchPair]) -> Iterator[Finding]:
    """The needle, by water: as coating where own catches tell, else only where it cannot be enough."""
    job, asked = given.job, given.job.profile.gun.delivery_ml_min
    water = measured.mean_delivery_ml_min(job, "water")
    if water is None or water <= 0:
        return
    turns = measured.last_told(job.catches[-1:], "turns")
    at = f" at {given.show(turns, Kind.TURNS)}" if turns is not None else ""
    caught = f"Water: {given.show(water, Kind.DELIVERY)}{at}"
    if asked is None:
        none = "the profile names no delivery to set the needle by: pattern and film decide."
        yield Finding(Rank.NOT_KNOWN, f"{caught}; {none}")
        return
    wanted = f"the profile asks for {given.span(asked, Kind.DELIVERY)} of the coating"
    pairs = catch_pairs(job, past)
    both = water_paint_pairs(pairs)
    coating = known(paint_from_water, water, both) if both else None
    if isinstance(coating, Estimate):
        side = compare(coating.likely, asked)
        likely, low, high = (
            given.show(each, Kind.DELIVERY) for each in (coating.likely, coating.low, coating.high)
        )
        if side in ("below", "above"):
            stands = f"about {likely} as coating (estimate {low} to {high}, by your own catches)"
            deed = " ".join(_needle(given, side, turns, pairs))
            yield Finding(Rank.DELIVERY, f"{caught}, {stands}; {wanted}. {deed}")
    elif compare(water, asked) == "below":
        less = f"{caught}; a coating runs slower than water, and {wanted}."
        yield Finding(Rank.DELIVERY, f"{less} {' '.join(_needle(given, 'below', turns, pairs))}")
    else:
        how = (
            "What the coating gives there is not known on this gun: catch it before the first coat."
        )
        yield Finding(Rank.NOT_KNOWN, f"{caught}; {wanted}. {how}")


def _needle(
    given: Given, side: str, turns: float | None, pairs: Sequence[CatchPair]
) -> tuple[str, ...]:
    by_own = turns_words(given.job, pairs, given.system, given.gun)
    if by_own:
        return (f"Needle: {by_own}.",)
    if side == "above":
        return needle_in(given, turns)
    deeds = needle_out(given, turns)
    return deeds or ("The needle is fully open: more delivery takes a larger tip.",)


def _fan(given: Given) -> Iterator[Finding]:
    job, fan = given.job, measured.fan_mm(given.job)
    if fan is None or fan[1] != "measured":
        return
    distance = measured.last_told(job.fans, "distance")
    deeds = on_fan(given, fan[0], distance, measured.last_told(job.fans, "turns"))
    if deeds:
        at = "" if distance is None else f" at {given.show(distance, Kind.LENGTH)}"
        asked = job.profile.gun.fan_mm
        wanted = f", {given.span(asked, Kind.LENGTH)} asked for" if asked is not None else ""
        seen = f"Fan {given.show(fan[0], Kind.LENGTH)}{at}{wanted}."
        yield Finding(Rank.FAN, f"{seen} {' '.join(deeds)}")


def _pace(given: Given) -> Iterator[Finding]:
    """Own passes against the pass that lays the film wanted with the delivery wanted."""
    job, speed = given.job, measured.speed_mm_s(given.job)
    if speed is None:
        return
    last = measured.steady_passes(job)[-1]
    length = given.show(last.length.value, Kind.PART_LENGTH)
    yours = f"Your pass: {length} in {pass_time_s(last.length.value * 1000, speed):.1f} s"
    basis, missing = basis_of(job)
    wet = wet_wanted(job, 1)
    film = basis.film_at(speed) if basis is not None else None
    aim = basis.speed_for(wet.middle) if basis is not None and wet is not None else None
    if film is None or aim is None or wet is None:
        lacks = ", ".join((*missing, *(() if wet else ("the wet film wanted",))))
        why = (
            f"Whether that is the pace of the coating is not known; it lacks {lacks or 'a figure'}."
        )
        yield Finding(Rank.NOT_KNOWN, f"{yours}. {why}")
        return
    side = compare(film.likely, _about(wet))
    aimed = f"about {pass_time_s(last.length.value * 1000, aim.likely):.1f} s (estimate)"
    if not HAND_MM_S[0] <= aim.likely <= HAND_MM_S[1]:
        fast = aim.likely > HAND_MM_S[1]
        deed = "less delivery, or a wider fan" if fast else "more delivery, or a thinner coat"
        quick = "faster" if fast else "slower"
        words = f"The film wanted asks for {length} in {aimed}, {quick} than a hand holds even"
        yield Finding(Rank.PACE, f"{words}: {deed}.")
    elif side in ("below", "above"):
        lays, wanted = (
            given.show(film.likely, Kind.THICKNESS),
            given.span(wet, Kind.THICKNESS),
        )
        words = f"{yours} would lay about {lays} wet (estimate), wanted {wanted}."
        deed = "Slower" if side == "below" else "Faster"
        yield Finding(Rank.PACE, f"{words} {deed}: {aimed} for it.")


def _about(wet: Range) -> Range:
    if wet.low is None or wet.low != wet.high:
        return wet
    return Range(wet.low * (1 - ABOUT_IT), wet.low * (1 + ABOUT_IT))


def _uneven(given: Given) -> Iterator[Finding]:
    """Whether the passes differ by more than a tenth, and by more than the hand at the key explains."""
    timed = [each for each in given.job.passes if each.seconds > 0 and each.length.value > 0]
    if len(timed) < LEAST_PASSES:
        return
    speed = sum(each.length.value for each in timed) / sum(each.seconds for each in timed)
    meant = [(each, each.length.value / speed) for each in timed]
    if all(abs(each.seconds - s) <= SAME_PACE * s + KEY_S for each, s in meant):
        return
    length = timed[-1].length.value
    took = sorted(each.seconds * length / each.length.value for each in timed)
    for_it = given.show(length, Kind.PART_LENGTH)
    words = f"Your passes differ: {took[0]:.1f} to {took[-1]:.1f} s for {for_it}, the film as much."
    yield Finding(Rank.UNEVEN, f"{words} Go along with the bar until they agree (step Pace).")


def _compressor(given: Given) -> Iterator[Finding]:
    job = given.job
    inlet, asked = measured.inlet_kpa(job), job.profile.gun.inlet_kpa
    supply = air_supply(given.compressor, given.gun, asked, inlet)
    if isinstance(supply, str) or (supply.hold.keeps_up and supply.reaches):
        return
    words = f"The compressor falls behind this gun. {verdict(supply, given.system)[0]}"
    coats = [coat for laid in job.coats.values() for coat in laid if coat.ended is not None]
    took_s = max(
        (elapsed(coat.begun.at, coat.ended.at).seconds for coat in coats if coat.ended), default=0.0
    )
    if supply.spray_s is not None and took_s > supply.spray_s:
        words += f" Your longest coat took {seconds_words(took_s)}: pause in it."
    yield Finding(Rank.COMPRESSOR, words)
