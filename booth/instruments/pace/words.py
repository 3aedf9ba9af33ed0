"""The pace in figures and words: speed, seconds a pass, the film of a timed pass. Pure."""

from __future__ import annotations

from booth.bench.context import Context
from booth.bench.instrument import Values, number
from booth.job.measured import compare, speed_mm_s, steady_passes
from booth.job.pace_basis import HAND_MM_S, Basis, basis_of
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
    """What is still needed for a pace. Pure."""
    _, missing = basis_in(context, values)
    return (
        *missing,
        *(() if number(values, "wet") else ("the wet film wanted",)),
        *(() if number(values, "length") else ("the length of a pass",)),
    )


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
    """The length of a pass."""
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
    """The gun speed as the figure, the seconds of a pass as the word. Pure."""
    basis, _ = basis_in(context, values)
    speed, seconds = speed_in(context, values), pass_s_of(context, values)
    system = context.system
    unit = shown_unit(Kind.SPEED, system)
    if basis is None or speed is None or seconds is None:
        missing = ", ".join(missing_words(context, values))
        return Readout("–", unit, label="gun speed", lines=(f"Still needed: {missing}.",))
    ends = f"{_speed(speed.low, system, False)} to {_speed(speed.high, system)}"
    lines = [f"estimate: {ends}", *basis_lines(context, basis)]
    tone, said = Tone.READY, f"{length_words(context, values)} in {seconds:.1f} s"
    if speed.likely < HAND_MM_S[0]:
        tone = Tone.CAUTION
        lines.insert(0, "Slower than a hand holds even: more delivery, or a thinner coat.")
    elif speed.likely > HAND_MM_S[1]:
        tone = Tone.CAUTION
        lines.insert(0, "Faster than a hand holds even: less delivery, or a wider fan.")
    return Readout(
        _speed(speed.likely, system, False), unit,
        label=f"gun speed for {show(number(values, 'wet') or 0.0, Kind.THICKNESS, system)} wet, "
        "estimate",
        tone=tone, word=said, lines=tuple(lines),
    )  # fmt: skip


def running_readout(context: Context, values: Values) -> Readout:
    """While the bar sweeps: the seconds of a pass. Pure."""
    seconds = pass_s_of(context, values) or 0.0
    speed = speed_in(context, values)
    said = _speed(speed.likely, context.system) if speed else ""
    return Readout(
        f"{seconds:.1f}", "s", label=f"a pass of {length_words(context, values)}, {said}",
        tone=Tone.RUNNING, word="",
    )  # fmt: skip


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
    pace = (
        f"wanted: {length_words(context, values)} in {wanted_s:.1f} s" if wanted_s is not None
        else "no pace to compare with yet"
    )  # fmt: skip
    if speed is None:
        lines = ("Space as the pass begins, Space as it ends.", pace)
        return Readout("0.0", "s", label="your own pass", like="00.0", lines=lines)
    passes = steady_passes(context.job)
    last = passes[-1]
    many = f", mean of {len(passes)}" if len(passes) > 1 else ""
    your = f"{show(last.length.value, Kind.PART_LENGTH, system)} in {last.seconds:.1f} s"
    if basis is None:
        return Readout(
            _speed(speed, system, False), shown_unit(Kind.SPEED, system),
            label=f"your gun speed{many}: {your}",
            lines=(f"For its wet film still needed: {', '.join(missing)}.",),
        )  # fmt: skip
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
    said_lines = [f"estimate {ends}, wanted {range_words(span, Kind.THICKNESS, system) or '?'}"]
    said_lines += [
        f"your speed{many}: {_speed(speed, system)}; {pace}",
        *basis_lines(context, basis),
    ]
    return Readout(
        show(film.likely, Kind.THICKNESS, system, unit=False), unit,
        label=f"wet film of your pass, estimate: {your}",
        tone=tone, word=said, lines=tuple(said_lines),
    )  # fmt: skip


def pass_words(each: PassTimed, system: System) -> str:
    """One timed pass in a line. Pure."""
    length = show(each.length.value, Kind.PART_LENGTH, system)
    speed = (
        _speed(speed_of_pass_mm_s(each.length.value * MM_PER_M, each.seconds), system)
        if each.seconds > 0
        else ""
    )
    return f"{length} in {each.seconds:.1f} s  {speed}"
