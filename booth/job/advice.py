"""What to turn: for each reading outside its band the deeds in order, for this gun, cup and mix. Pure.

Nothing is named that the shop file says the gun has not: no turn of the needle beyond its travel, no
tip that the profile does not allow. The orders are common practice, no source; the data sheet wins.
"""

from __future__ import annotations

import msgspec

from booth.job.air_supply import air_supply, verdict
from booth.job.measured import compare, overlap_fraction
from booth.job.needle_advice import fully_open
from booth.job.thin_advice import Finding, advise, off_temperature_k
from booth.log.fold import Job
from booth.profile.model import Range
from booth.shop.model import Compressor, Gun
from booth.units import Kind, System, show

#: Tips this close are the same tip [mm]: half the smallest step that tips are made in.
SAME_TIP_MM = 0.05
#: What a hand changes an overlap by, the least it tells apart, the most it keeps [1] (common practice,
#: no source).
OVERLAP_STEP, SAME_OVERLAP, MOST_OVERLAP = 0.1, 0.03, 0.75
VENT = "Clear the vent of the cup's lid, and look at the strainer."
NOT_AIR = "On a gravity gun more air is not the cure."


class Given(msgspec.Struct, frozen=True):
    """What advice is held against: the job; its gun and compressor where the shop file has them."""

    job: Job
    system: System
    gun: Gun | None = None
    compressor: Compressor | None = None

    def show(self, value: float, kind: Kind, unit: bool = True) -> str:
        return show(value, kind, self.system, unit=unit)

    def span(self, span: Range, kind: Kind) -> str:
        """A range as '1.6 to 1.8 mm', 'at least 20 s', 'up to 24 s'."""
        if span.low is None or span.high is None:
            least = "at least" if span.high is None else "up to"
            return f"{least} {self.show(span.middle, kind)}"
        low, high = self.show(span.low, kind), self.show(span.high, kind)
        return low if low == high else f"{self.show(span.low, kind, unit=False)} to {high}"


def on_catch(
    given: Given,
    delivery_ml_min: float,
    turns: float | None = None,
    inlet_kpa: float | None = None,
    tip_mm: float | None = None,
) -> tuple[str, ...]:
    """Give what to do about a catch of the coating: too little, too much, or beside another inlet."""
    side = compare(delivery_ml_min, given.job.profile.gun.delivery_ml_min)
    found: tuple[str, ...] = ()
    if side == "below":
        found = (*needle_out(given, turns), *_mix(given, "above"), VENT)
        found = (*found, *_tip(given, tip_mm, larger=True), NOT_AIR)
    elif side == "above":
        found = (*needle_in(given, turns), *_mix(given, "below"), *_tip(given, tip_mm, False))
    noted = _noted_inlet(given, inlet_kpa)
    if found:
        return (*found[:1], *noted, *found[1:])
    return (*noted, *((_tip_words(given, tip_mm),) if _tip_side(given, tip_mm) else ()))


def needle_out(given: Given, turns: float | None) -> tuple[str, ...]:
    """More delivery by the needle; nothing where it is fully open."""
    travel = given.gun.needle_turns if given.gun is not None else None
    if fully_open(given.gun, turns):
        return ()
    if turns is None:
        at = "" if travel is None else f", {given.show(travel, Kind.TURNS)}"
        return (f"Needle fully open{at}? If not, out a quarter turn at a time.",)
    now = given.show(turns, Kind.TURNS, unit=travel is None)
    of = "" if travel is None else f" of {given.show(travel, Kind.TURNS)}"
    return (f"Needle out, a quarter turn at a time; {now}{of} open now.",)


def needle_in(given: Given, turns: float | None) -> tuple[str, ...]:
    """Less delivery by the needle."""
    now = "" if turns is None else f"; {given.show(turns, Kind.TURNS)} open now"
    return (f"Needle in, a quarter turn at a time{now}.",)


def _mix(given: Given, side: str) -> tuple[str, ...]:
    """What the cup says of it, where the mix could be why: too thick 'above', too thin 'below'."""
    efflux, advice = given.job.profile.efflux, advise(given.job)
    if efflux is None:
        return ()
    if advice.mean_s is None:
        return ("Time the flow cup: this mix was not timed yet.",)
    if advice.side == side:
        return on_cup(given)
    if efflux.at_c is not None and off_temperature_k(given.job) is None:
        at, cause = given.show(efflux.at_c, Kind.TEMPERATURE), "cold one is thick"
        return (f"Is the mix at {at}? A {cause if side == 'above' else 'warm one is thin'}.",)
    return ()


def _tip_side(given: Given, tip_mm: float | None) -> str:
    """'below' or 'above' where the tip is none that the profile allows; else ''."""
    asked = given.job.profile.gun.tip_mm
    if tip_mm is None or asked is None:
        return ""
    low, high = asked.low, asked.high
    if low is not None and tip_mm < low - SAME_TIP_MM:
        return "below"
    return "above" if high is not None and tip_mm > high + SAME_TIP_MM else ""


def _tip_words(given: Given, tip_mm: float | None) -> str:
    asked = given.job.profile.gun.tip_mm
    assert tip_mm is not None and asked is not None
    allowed, tip = given.span(asked, Kind.TIP), given.show(tip_mm, Kind.TIP)
    return f"The tip is {tip}, the profile asks for {allowed}."


def _tip(given: Given, tip_mm: float | None, larger: bool) -> tuple[str, ...]:
    """The next tip that the profile allows, or that there is none."""
    asked, size = given.job.profile.gun.tip_mm, "larger" if larger else "smaller"
    if asked is None:
        return (f"Then a {size} tip, if the data sheet allows one.",)
    side = _tip_side(given, tip_mm)
    if side == ("below" if larger else "above"):
        return (f"Then a {size} tip. {_tip_words(given, tip_mm)}",)
    end = asked.high if larger else asked.low
    if tip_mm is None or end is None:
        return (f"Then a {size} tip; the profile asks for {given.span(asked, Kind.TIP)}.",)
    if side or abs(tip_mm - end) <= SAME_TIP_MM:
        return (f"No {size} tip: the profile asks for {given.span(asked, Kind.TIP)}.",)
    to = "up" if larger else "down"
    return (f"Then a {size} tip, {to} to {given.show(end, Kind.TIP)}.",)


def _noted_inlet(given: Given, inlet_kpa: float | None) -> tuple[str, ...]:
    asked = given.job.profile.gun.inlet_kpa
    if inlet_kpa is None or asked is None or compare(inlet_kpa, asked) == "in":
        return ()
    noted, wanted = given.show(inlet_kpa, Kind.PRESSURE), given.span(asked, Kind.PRESSURE)
    return (f"Inlet {noted}, the profile asks for {wanted}: set it, then catch again.",)


def on_cup(given: Given) -> tuple[str, ...]:
    """Give what to do about the seconds of the flow cup: the limit first, then the temperature."""
    advice, efflux = advise(given.job), given.job.profile.efflux
    if efflux is None:
        return ()
    again = "stir, and time the cup again."
    match advice.finding:
        case Finding.LIMIT:
            return (
                limit_words(given.job),
                "Check the temperature of the mix and the cup; then ask the data sheet.",
            )
        case Finding.TEMPERATURE:
            at = given.show(efflux.at_c or 0.0, Kind.TEMPERATURE)
            return (f"Bring the mix to {at}, then time the cup again.",)
        case Finding.ADD | Finding.ADD_LITTLE | Finding.NO_AMOUNT:
            return (f"Thin it by 2 to 3 % (step Thin), {again}",)
        case Finding.TOO_THIN:
            return (f"Stir in unthinned mix of the same parts, {again}",)
        case Finding.CANNOT_TELL:
            return (f"Time it in a {efflux.cup}, which the target is for.",)
        case Finding.NO_THINNER if advice.side == "above":
            return ("The profile names no thinner: warm the mix, or ask the data sheet.",)
        case Finding.NO_THINNER if advice.side == "below":
            return ("Let the mix cool, or stir in more of the same that is thicker.",)
    return ()


def limit_words(job: Job) -> str:
    """The limit on thinner, where it is reached; '' where it is not."""
    advice = advise(job)
    if not advice.at_limit or advice.limit_percent is None:
        return ""
    return (
        f"No more thinner: {100 * advice.stage.fraction:.1f} % is in it, the profile allows "
        f"{advice.limit_percent:g} %."
    )


def on_inlet(given: Given, inlet_kpa: float) -> tuple[str, ...]:
    """Give what to do about the pressure at the inlet."""
    asked = given.job.profile.gun.inlet_kpa
    side = compare(inlet_kpa, asked)
    if asked is None or side not in ("below", "above"):
        return ()
    end = asked.low if side == "below" else asked.high
    by = given.show(abs((end or 0.0) - inlet_kpa), Kind.PRESSURE)
    if side == "above":
        return (
            "Is the trigger fully pulled? Released, the gauge shows more.",
            f"Regulator down by {by} or more, trigger pulled.",
        )
    supply = air_supply(given.compressor, given.gun, asked, inlet_kpa)
    short = () if isinstance(supply, str) or supply.hold.keeps_up else verdict(supply, given.system)
    return (
        f"Regulator up by {by} or more, trigger fully pulled.",
        "If it stays low: a longer or thinner hose, small couplings and a wet filter take pressure.",
        *short[:1],
    )


def on_fan(
    given: Given, width_mm: float, distance_mm: float | None = None, turns: float | None = None
) -> tuple[str, ...]:
    """Give what to do about the width of the fan: the distance where that is off, then the valve."""
    gun = given.job.profile.gun
    side, away = compare(width_mm, gun.fan_mm), ""
    if distance_mm is not None:
        away = compare(distance_mm, gun.distance_mm)
    found: list[str] = []
    if away in ("below", "above") and gun.distance_mm is not None:
        asked = given.span(gun.distance_mm, Kind.LENGTH)
        nearer = "Closer" if away == "above" else "Farther away"
        found.append(f"{nearer}: the profile asks for {asked}. Then measure again.")
    travel = given.gun.fan_turns if given.gun is not None else None
    if side == "below" and travel is not None and turns is not None and turns >= travel:
        found.append("The fan valve is fully open: look for dirt in the horn holes of the air cap.")
    elif side == "below":
        at = "" if travel is None else f", fully open at {given.show(travel, Kind.TURNS)}"
        found.append(f"Open the fan valve a little{at}.")
    elif side == "above":
        found.append("Pull the fan valve in until the pattern just fits.")
    return tuple(found)


def on_film(
    given: Given,
    side: str,
    *,
    speed_mm_s: float | None = None,
    was_mm_s: float | None = None,
    turns: float | None = None,
) -> tuple[str, ...]:
    """Give what to do about a wet film too thin ('below') or too thick ('above'), next coat.

    speed_mm_s: the speed that would lay the film asked for, was_mm_s: the one that was timed.
    """
    if side not in ("below", "above"):
        return ()
    thin = side == "below"
    pace = "" if speed_mm_s is None else f", about {given.show(speed_mm_s / 1000, Kind.SPEED)}"
    if speed_mm_s is not None and was_mm_s is not None:
        pace += f" (was {given.show(was_mm_s / 1000, Kind.SPEED)})"
    found = ["Look for runs now."] if not thin else []
    found.append(f"Next coat: {'slower' if thin else 'faster'}{pace}, at the same distance.")
    found += _overlap(given, thin)
    if not thin:
        found.append("Or the needle in a little, and catch again.")
    elif fully_open(given.gun, turns):
        found.append("The needle is fully open: more delivery takes a larger tip.")
    else:
        found.append("Or the needle out a little, and catch again.")
    return tuple(found)


def _overlap(given: Given, more: bool) -> tuple[str, ...]:
    """Another overlap, as far as the profile has room for it."""
    now, asked = overlap_fraction(given.job)[0], given.job.profile.gun.overlap_percent
    wanted = now + (OVERLAP_STEP if more else -OVERLAP_STEP)
    low = asked.low if asked is not None else None
    high = asked.high if asked is not None else None
    wanted = (
        min(wanted, (high or 100 * MOST_OVERLAP) / 100) if more else max(wanted, (low or 0.0) / 100)
    )
    if abs(wanted - now) < SAME_OVERLAP:
        return ()
    return (
        f"Or {'more' if more else 'less'} overlap: {wanted * 100:.0f} % for {now * 100:.0f} %.",
    )
