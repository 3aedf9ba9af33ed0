"""What is amiss before a coat, and what to do about it: two short sentences each. Pure."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from booth.job import lasting
from booth.job.amiss import Amiss, Cause, Grave
from booth.job.guard import of_weather
from booth.log.fold import Job
from booth.moment import Moment
from booth.units import Kind, System, show
from booth.words.profile_words import range_words
from booth.words.shown import Tone
from booth.words.wait_words import NO_TOUCH, length


class _Said(NamedTuple):
    """What is said, the kind of its figure, what to do; another deed where the figure is too high."""

    words: str
    kind: Kind | None
    deed: str
    high: str = ""


READ = "then read again."
#: Instead of the deed where a touch test may settle it.
TOUCH_OR: Mapping[Cause, str] = {
    Cause.EARLY: "Wait, or touch where it does not show.",
    Cause.WAIT_UNKNOWN: "Touch it first, where it does not show.",
}
SAID: Mapping[Cause, _Said] = {
    Cause.CONDENSATION: _Said(
        "Water condenses on the part: it is {value} under the dew point.",
        Kind.TEMPERATURE_DIFFERENCE,
        f"Warm the part or dry the air, {READ}",
    ),
    Cause.DEW_MARGIN: _Said(
        "The part is {value} over the dew point; it has to be {asked}.",
        Kind.TEMPERATURE_DIFFERENCE,
        f"Warm the part or dry the air, {READ}",
    ),
    Cause.PART: _Said(
        "The part is at {value}; the product asks for {asked}.",
        Kind.TEMPERATURE,
        f"Warm the part, {READ}",
        f"Let the part cool, {READ}",
    ),
    Cause.AIR: _Said(
        "The air is at {value}; the product asks for {asked}.",
        Kind.TEMPERATURE,
        f"Wait for warmer air, {READ}",
        f"Wait for cooler air, {READ}",
    ),
    Cause.HUMIDITY: _Said(
        "Humidity is {value}; the product asks for {asked}.",
        Kind.PERCENT,
        f"Wait for damper air, {READ}",
        f"Dry or warm the air, {READ}",
    ),
    Cause.POT_LIFE: _Said(
        "{name}: its pot life was over {value} ago.",
        Kind.TIME,
        "Do not spray it: mix a fresh batch.",
    ),
    Cause.INDUCTION: _Said(
        "{name}: it has to stand another {value} before use.",
        Kind.TIME,
        "Let it stand (induction).",
    ),
    Cause.EARLY: _Said("The wait before {name} lasts another {value}.", Kind.TIME, "Wait."),
    Cause.LATE: _Said(
        "The window for {name} closed {value} ago.",
        Kind.TIME,
        "Look in its data sheet first: often it asks for sanding.",
    ),
    Cause.LIFTS: _Said(
        "For another {value}, {name} may lift what is under it.", Kind.TIME, "Wait until then."
    ),
    Cause.UNPLANNED: _Said(
        "All coats are on: this would be coat {value} of {most}.",
        Kind.COUNT,
        "Clean the gun, unless another coat is needed to hide.",
    ),
    Cause.OTHER_COAT: _Said(
        "{name}: coat {value} is still being sprayed.", Kind.COUNT, "End it first: Space."
    ),
    Cause.NOT_READ: _Said(
        "Air, humidity and the part were not read.", None, "Read them at the step Weather."
    ),
    Cause.CLOCK: _Said(
        "The machine's clock is in doubt: no wait can be counted.",
        None,
        "Set the clock right, or press → and say how long ago it was.",
    ),
    Cause.WAIT_UNKNOWN: _Said(
        "It is not known when {name} may go on; {value} since the last one.",
        Kind.TIME,
        NO_TOUCH,
    ),
    Cause.ABRADE: _Said("By now {name} holds on an abraded surface only.", None, "Abrade first."),
    Cause.INDUCTION_UNKNOWN: _Said(
        "{name}: how long it has to stand is not known.",
        None,
        "Read the weather; the data sheet says how long.",
    ),
    Cause.THINNER: _Said(
        "The mix has {value} thinner; the limit is {most}.",
        Kind.PERCENT,
        "Add unthinned mix, or mix a fresh batch.",
    ),
    Cause.CUP: _Said(
        "The cup ran out in {value}; the target is {asked}.",
        Kind.TIME,
        "Too thin: add unthinned mix, time it again.",
        "Too thick: thin it, time it again.",
    ),
    Cause.INLET: _Said(
        "The inlet has {value}; {name} asks for {asked}.",
        Kind.PRESSURE,
        "Turn the air up, trigger pulled.",
        "Turn the air down, trigger pulled.",
    ),
    Cause.DELIVERY: _Said(
        "The catch gave {value}; {name} asks for {asked}.",
        Kind.DELIVERY,
        "Open the needle, catch again.",
        "Close the needle, catch again.",
    ),
    Cause.POT_LIFE_ENDS: _Said(
        "{name}: its pot life is over in {value}.",
        Kind.TIME,
        "Spray until then, or mix a fresh batch.",
    ),
    Cause.OLD: _Said("The weather was read {value} ago.", Kind.TIME, "Read it again."),
    Cause.COMPRESSOR: _Said(
        "The compressor may hold the trigger for {value} only.",
        Kind.TIME,
        "Wait until it is full; pause between the passes.",
    ),
    Cause.TIP: _Said(
        "The tip is {value}; {name} asks for {asked}.",
        Kind.TIP,
        "Change the tip, or catch and look at the pattern.",
    ),
    Cause.FAN: _Said(
        "The fan is {value} wide; {name} asks for {asked}.",
        Kind.LENGTH,
        "Open the fan, shoot paper again.",
        "Close the fan, shoot paper again.",
    ),
    Cause.DISTANCE: _Said(
        "The distance is {value}; {name} asks for {asked}.",
        Kind.LENGTH,
        "Hold the gun further off.",
        "Hold the gun closer.",
    ),
    Cause.TURN: _Said(
        "{name} was sprayed {value} ago and may be wet.",
        Kind.TIME,
        "Turn it only if nothing touches that side.",
    ),
    Cause.NO_BATCH: _Said(
        "No batch in use is noted: no pot life is counted.", None, "Note it at the step Mix."
    ),
    Cause.NOT_TIMED: _Said(
        "The mix as it is now was not timed in a {name}.", None, "Time the cup."
    ),
}
#: The word of the figure while something grave is amiss; a tone of approval never stands there.
WORDS = {Grave.SPOILS: "STOP", Grave.MAY_SPOIL: "CHECK"}
APPROVAL = (Tone.READY, Tone.GOOD, Tone.PLAIN)


def sentence(each: Amiss, system: System) -> str:
    """What is amiss, with its figures in these units."""
    said, asked = SAID[each.cause], each.asked
    if said.kind is None:
        return said.words.format(name=each.name)
    seconds = said.kind is Kind.TIME and asked is None
    # An efflux time stays in seconds, however long it is.
    places = 1 if said.kind is Kind.TIME else None
    value = length(each.value) if seconds else show(each.value, said.kind, system, places=places)
    most = show(asked.high, said.kind, system) if asked is not None and asked.high else ""
    wanted = range_words(asked, said.kind, system)
    return said.words.format(name=each.name, value=value, asked=wanted, most=most)


def deed(each: Amiss) -> str:
    """What to do about it."""
    if each.by_touch:
        return TOUCH_OR[each.cause]
    said, high = SAID[each.cause], each.asked.high if each.asked is not None else None
    return said.high if said.high and high is not None and each.value > high else said.deed


def line(each: Amiss, system: System) -> str:
    """What is amiss and what to do, with the sign of a warning where it is grave."""
    sign = f"{Tone.CAUTION.shape} " if each.is_grave else ""
    return f"{sign}{sentence(each, system)} {deed(each)}"


def weather_pieces(job: Job, now: Moment, system: System) -> tuple[tuple[str, bool], ...]:
    """The weather in a line, piece by piece: what is out of its limits has the sign of a warning."""
    read = job.weather
    if job.opened.rehearsal:
        return ()  # no wait and no limit of the coating is looked at with water
    if read is None:
        return ((f"{Tone.CAUTION.shape}weather not read yet", True),)
    found = {each.cause: each for each in of_weather(job, now)}
    margin_c = lasting.dew_margin(read)
    margin = "?" if margin_c is None else show(margin_c, Kind.TEMPERATURE_DIFFERENCE, system)
    air, part = (show(each.value, Kind.TEMPERATURE, system) for each in (read.air, read.part))
    pieces = [
        (f"air {air}", {Cause.AIR}),
        (f"{read.humidity.value:.0f} % RH", {Cause.HUMIDITY}),
        (f"part {part}", {Cause.PART}),
        (f"dew margin {margin}", {Cause.DEW_MARGIN, Cause.CONDENSATION, Cause.NOT_READ}),
    ]
    if Cause.OLD in found:
        pieces.append((f"{length(found[Cause.OLD].value)} old", {Cause.OLD}))
    marked = ((words, bool(causes & found.keys())) for words, causes in pieces)
    return tuple((f"{Tone.CAUTION.shape}{words}" if out else words, out) for words, out in marked)


def looked_over(tone: Tone, word: str, found: tuple[Amiss, ...]) -> tuple[Tone, str]:
    """Tone and word of a figure for a coat that may begin, after the guard has looked at it."""
    if tone not in APPROVAL or not found or not found[0].is_grave:
        return tone, word
    grave = found[0].grave
    # What would spoil the part does not look like what may be looked into.
    return (Tone.LATE if grave is Grave.SPOILS else Tone.CAUTION), WORDS[grave]
