"""What the catch says: getting ready, catching, what was caught and what to turn. Pure."""

from __future__ import annotations

import math

from booth.bench.act import Context
from booth.instruments.figures import against, figure, given
from booth.job.advice import on_catch
from booth.job.stopwatches import CATCH, Catching
from booth.job.the_gun import cup_held_ml
from booth.trade.delivery.catches import time_to_empty_s
from booth.units import Kind, show
from booth.words.profile_words import range_words
from booth.words.shown import Readout, Tone
from booth.words.wait_words import duration, length, rough

#: From here on it is said how long ago a catch was [s].
LONG_AGO_S = 180.0
#: A gravity cup of 20 US fl oz, where the shop file names no other (common practice, no source).
USUAL_CUP_ML = 20 * 29.5735295625
GRAVITY = "A gravity cup gives less as it empties, and another amount with the air on."


def going_readout(now: Catching, whose: str) -> Readout:
    """The beats of the lead-in, then the seconds left; the field fills as the cup does. Pure."""
    if now.lead_in_s > 0:
        beat = f"{math.ceil(now.lead_in_s)}"
        return Readout(beat, label="get ready", tone=Tone.CLOSING, word="GET READY", whose=whose)
    left = f"{now.left_s:.1f}" if now.left_s < 10 else f"{math.ceil(now.left_s)}"
    whole_s = now.caught_s + now.left_s
    over = now.caught_s / whole_s if whole_s > 0 else None
    tone, word = Tone.RUNNING, "TRIGGER"
    return Readout(left, "s", "catching", tone, word, like="00.0", whose=whose, edge=over)


def empty_readout(seconds: float, whose: str) -> Readout:
    """For how long will be caught, and how. Pure."""
    lines = ("Space: 3, 2, 1, then hold the trigger until the window flashes.", GRAVITY)
    return Readout(
        duration(seconds),
        label="catch for",
        word="CATCH",
        lines=lines,
        like="00:00",
        whose=whose,
        wanted=True,
    )


def caught_readout(context: Context, caught_s: float, whose: str) -> Readout:
    """The time is over: what was caught is still to be typed. Pure."""
    watch = context.running(CATCH)
    over_s = context.since(watch.started.at) if watch else 0.0
    long_ago = over_s > LONG_AGO_S
    label = f"caught {rough(over_s)} ago for" if long_ago else "caught for"
    lines = ("Or Space: catch again.",) if long_ago else ()
    seconds = f"{caught_s:.0f}" if caught_s >= 10 else f"{caught_s:.1f}"
    return Readout(seconds, "s", label, word="HOW MUCH?", lines=lines, whose=whose)


def delivery_readout(
    context: Context,
    delivery_ml_min: float,
    liquid: str,
    label: str,
    turns: float | None = None,
    inlet: float | None = None,
    tip: float | None = None,
) -> Readout:
    """The delivery as the figure, what to turn, how long a full cup lasts. Pure."""
    span, system = context.profile.gun.delivery_ml_min, context.system
    tone, said = against(delivery_ml_min, span, "TOO LITTLE", "TOO MUCH")
    lines: list[str] = []
    if liquid != "water":
        lines += on_catch(given(context), delivery_ml_min, turns, inlet, tip)
    if liquid == "water":
        tone, said = Tone.PLAIN, "WATER"
        lines.append("Water runs faster than paint: near the target, not on it.")
    cup_ml = cup_ml_of(context)
    if delivery_ml_min > 0:
        lasts = length(time_to_empty_s(cup_ml, delivery_ml_min))
        lines.append(f"a full cup of {show(cup_ml, Kind.VOLUME, system)} lasts {lasts}")
    if span is not None:  # the scale has the band too: its line gives way first
        lines.append(f"profile: {range_words(span, Kind.DELIVERY, system)}")
    return figure(
        context,
        delivery_ml_min,
        Kind.DELIVERY,
        label,
        tone,
        said,
        lines,
        whose="CATCH" if liquid == "water" else name_of(liquid),
        span=span if liquid != "water" else None,
    )


def name_of(liquid: str) -> str:
    """What is caught, in a word."""
    return "WATER" if liquid == "water" else "PAINT"


def cup_ml_of(context: Context) -> float:
    """What the gun's cup holds [ml]: from the shop file, else the usual gravity cup."""
    return cup_held_ml(context.job, context.gun, USUAL_CUP_ML)
