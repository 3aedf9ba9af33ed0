"""The pace in figures and words: speed, seconds a pass, the film of a timed pass. Pure."""

from __future__ import annotations

import math

from booth.bench.context import Context
from booth.bench.instrument import number
from booth.forms.form import Values
from booth.job.measured import compare, speed_mm_s, steady_passes
from booth.job.pace_basis import HAND_MM_S, Basis, basis_of
from booth.job.stopwatches import Sweeping
from booth.log.events import PassTimed
from booth.profile.model import Range
from booth.trade.film.gun_speed import pass_time_s, speed_of_pass_mm_s
from booth.trade.result import Estimate
from booth.units import Kind, System, show, shown_unit
from booth.words.profile_words import range_words
from booth.words.readout import Readout
from booth.words.tone import Tone

MM_PER_M = 1000.0
#: A film wanted is met within so much of it, where the profile gives no range.
ABOUT_IT = 0.1


def basis_in(context: Context, values: Values) -> tuple[Basis | None, tuple[str, ...]]:
    """What the pace rests on: the job's figures, and what the rows hold where it has none. Pure."""
    return basis_of(context.job, number(values, "delivery"), number(values, "fan"))


def missing_words(context: Context, values: Values) -> tuple[str, ...]:
    """What is still needed for a pace where there is none. Pure."""
    _, missing = basis_in(context, values)
    found = [*missing]
    if not number(values, "wet"):
        found.append("the wet film wanted")
    if not number(values, "length"):
        found.append("the length of a pass")
    return tuple(found) or ("a delivery, a fan and an overlap that make sense together",)


def speed_in(context: Context, values: Values) -> Estimate | None:
    """The gun speed [mm/s] for the wet film of the row. Pure."""
    basis, _ = basis_in(context, values)
    wet = number(values, "wet")
    return basis.speed_for(wet) if basis is not None and wet else None


def pass_s_of(context: Context, values: Values) -> float | None:
    """The seconds of one pass at the likely speed. Pure."""
    speed, length = speed_in(context, values), number(values, "length")
    if speed is None or not length:
        return None
    return pass_time_s(length * MM_PER_M, speed.likely)


def length_words(context: Context, values: Values) -> str:
    return show(number(values, "length") or 0.0, Kind.PART_LENGTH, context.system)


def _speed(mm_s: float, system: System, unit: bool = True) -> str:
    return show(mm_s / MM_PER_M, Kind.SPEED, system, unit=unit)


def basis_lines(context: Context, basis: Basis) -> tuple[str, ...]:
    """From where each figure is. Pure."""
    system = context.system
    lands = basis.lands
    return (
        f"{show(basis.delivery_ml_min, Kind.DELIVERY, system)} {basis.delivery_from}, "
        f"fan {show(basis.fan_mm, Kind.LENGTH, system)} {basis.fan_from}, "
        f"overlap {basis.overlap * 100:.0f} % {basis.overlap_from}",
        f"lands {lands.low * 100:.0f} to {lands.high * 100:.0f} %: {lands.source.split(': ')[0]}",
    )


def pace_readout(context: Context, values: Values) -> Readout:
    """The seconds of a pass as the figure; the gun speed beneath. Pure."""
    basis, _ = basis_in(context, values)
    speed, seconds = speed_in(context, values), pass_s_of(context, values)
    system = context.system
    if basis is None or speed is None or seconds is None:
        missing = ", ".join(missing_words(context, values))
        return Readout("–", "s", label="time of a pass", lines=(f"Still needed: {missing}.",))
    ends = f"{_speed(speed.low, system, False)} to {_speed(speed.high, system)}"
    lines = (
        f"gun speed {_speed(speed.likely, system)}, estimate: {ends}",
        *basis_lines(context, basis),
    )
    tone, said, advice = _by_hand(speed.likely)
    wet = show(number(values, "wet") or 0.0, Kind.THICKNESS, system)
    return Readout(
        f"{seconds:.1f}",
        "s",
        label=f"for a pass of {length_words(context, values)}, {wet} wet, estimate",
        tone=tone,
        word=said or length_words(context, values),
        lines=(*advice, *lines),
    )


def _by_hand(speed_mm_s: float) -> tuple[Tone, str, tuple[str, ...]]:
    """Whether a hand holds this speed; else what to change."""
    if speed_mm_s < HAND_MM_S[0]:
        advice = "Slower than a hand holds even: more delivery, or a thinner coat."
        return Tone.CAUTION, "TOO SLOW FOR A HAND", (advice,)
    if speed_mm_s > HAND_MM_S[1]:
        advice = "Faster than a hand holds even: less delivery, or a wider fan."
        return Tone.CAUTION, "TOO FAST FOR A HAND", (advice,)
    return Tone.READY, "", ()


def sweeping_readout(context: Context, values: Values, bar: Sweeping) -> Readout:
    """While the bar sweeps: which pass it is on. Pure."""
    seconds, speed = pass_s_of(context, values), speed_in(context, values)
    label = f"pass, {bar.pass_s:.1f} s each"
    if speed is not None and seconds is not None and math.isclose(seconds, bar.pass_s):
        label += f", {length_words(context, values)} at {_speed(speed.likely, context.system)}"
    said = "TURN" if bar.turned else ""
    return Readout(f"{bar.number}", label=label, tone=Tone.RUNNING, word=said, like="00")


def passing_readout(context: Context, values: Values, seconds: float) -> Readout:
    """While one's own pass is timed. Pure."""
    return Readout(
        f"{seconds:.1f}",
        "s",
        label=f"pass of {length_words(context, values)}",
        tone=Tone.RUNNING,
        word="SPACE AT ITS END",
        like="00.0",
    )


def wanted_film(context: Context, values: Values) -> Range | None:
    """The wet film wanted [um]: the profile's range, or about what was typed. Pure."""
    span, wet = context.profile.film.wet_um, number(values, "wet")
    if wet is None or (span is not None and abs(wet - span.middle) < 1e-6):
        return span
    return Range(wet * (1 - ABOUT_IT), wet * (1 + ABOUT_IT))


def timed_readout(context: Context, values: Values) -> Readout:
    """The wet film that the passes timed last would give, held against the one wanted. Pure."""
    system, unit = context.system, shown_unit(Kind.THICKNESS, context.system)
    speed = speed_mm_s(context.job)
    basis, missing = basis_in(context, values)
    wanted_s = pass_s_of(context, values)
    pace = "no pace to compare with yet"
    if wanted_s is not None:
        pace = f"wanted: {length_words(context, values)} in {wanted_s:.1f} s"
    if speed is None:
        lines = ("Space as the pass begins, Space as it ends.", pace)
        return Readout("0.0", "s", label="your own pass", like="00.0", lines=lines)
    passes = steady_passes(context.job)
    last = passes[-1]
    many = f", mean of {len(passes)}" if len(passes) > 1 else ""
    your = f"{show(last.length.value, Kind.PART_LENGTH, system)} in {last.seconds:.1f} s"
    if basis is None:
        return Readout(
            _speed(speed, system, False),
            shown_unit(Kind.SPEED, system),
            label=f"your gun speed{many}: {your}",
            lines=(f"For its wet film still needed: {', '.join(missing)}.",),
        )
    film = basis.film_at(speed)
    if film is None:
        return Readout("–", unit, label=f"your pass: {your}")
    span = wanted_film(context, values)
    tone, said = {
        "in": (Tone.GOOD, "IN RANGE"),
        "below": (Tone.CAUTION, "TOO FAST"),
        "above": (Tone.CAUTION, "TOO SLOW"),
        "": (Tone.PLAIN, ""),
    }[compare(film.likely, span)]
    ends = f"{show(film.low, Kind.THICKNESS, system, unit=False)} to "
    ends += show(film.high, Kind.THICKNESS, system)
    return Readout(
        show(film.likely, Kind.THICKNESS, system, unit=False),
        unit,
        label=f"wet film of your pass, estimate: {your}",
        tone=tone,
        word=said,
        lines=(
            f"estimate {ends}, wanted {range_words(span, Kind.THICKNESS, system) or '?'}",
            f"your speed{many}: {_speed(speed, system)}; {pace}",
            *basis_lines(context, basis),
        ),
    )


def pass_words(each: PassTimed, system: System) -> str:
    """One timed pass in a line. Pure."""
    length = show(each.length.value, Kind.PART_LENGTH, system)
    speed = (
        _speed(speed_of_pass_mm_s(each.length.value * MM_PER_M, each.seconds), system)
        if each.seconds > 0
        else ""
    )
    return f"{length} in {each.seconds:.1f} s  {speed}"
