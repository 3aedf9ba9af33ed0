"""The fan: fully open, pulled in until the pattern just begins to narrow; its width on paper."""

from __future__ import annotations

from booth.bench.act import Context
from booth.bench.instrument import Instrument, quantity
from booth.forms.form import Field, Values
from booth.instruments.figures import against, asked_for, figure, given
from booth.instruments.large.gun import fan_at_large
from booth.job.advice import on_fan
from booth.job.measured import overlap_fraction
from booth.log.events import Event, FanSet
from booth.trade.film.gun_speed import pitch_mm
from booth.trade.result import BadInput
from booth.units import Kind, show
from booth.units.sentences import in_units
from booth.words.about import of_the_gun
from booth.words.profile_words import range_words
from booth.words.shown import Readout, Tone

WHOSE = "FAN"


class Fan(Instrument):
    KIND = "fan"
    NAME = "Fan"
    ABOUT = of_the_gun.FAN
    KEEPS = (FanSet,)
    RECORDS = 3
    UNSAID = "fan set, "
    at_large = fan_at_large

    def fields(self, context: Context, values: Values) -> tuple[Field, ...]:
        kept, kind = context.job.fans[-1].distance if context.job.fans else None, Kind.LENGTH
        return (
            Field("width", "On the paper", kind),
            Field("distance", "Distance", kind, optional=True, default=kept, hint="gun to paper"),
            Field("turns", "Fan open", Kind.TURNS, optional=True, hint="turns, optional"),
        )

    def readout(self, context: Context, values: Values) -> Readout:
        """The width held against the profile; what to aim for before it is known."""
        gun, asked = context.profile.gun, _asked(context)
        last = context.job.fans[-1] if context.job.fans else None
        width = quantity(values, "width") or (last.width if last else None)
        distance = quantity(values, "distance")
        if width is None or width.value <= 0:
            none = "The profile names no width: as wide as the pattern stays full."
            label = "fan asked for, on the paper"
            return asked_for(context, gun.fan_mm, Kind.LENGTH, label, none, asked, WHOSE)
        tone, said = against(width.value, gun.fan_mm, "TOO NARROW", "TOO WIDE")
        at = ""
        if distance is not None:
            at = f" at {show(distance.value, Kind.LENGTH, context.system)}"
            away, where = against(distance.value, gun.distance_mm, "TOO CLOSE", "TOO FAR")
            if away is Tone.CAUTION and tone is not Tone.CAUTION:
                tone, said = away, where
        overlap, where = overlap_fraction(context.job)
        try:
            over = show(pitch_mm(width.value, overlap), Kind.LENGTH, context.system)
            asked.append(f"{overlap * 100:.0f} % overlap ({where}): move over {over} each pass")
        except BadInput as fault:
            asked.append(in_units(fault, context.system))
        turns = quantity(values, "turns") or (last.turns if last else None)
        away_mm = None if distance is None else distance.value
        open_turns = None if turns is None else turns.value
        deeds = on_fan(given(context), width.value, away_mm, open_turns)
        label = f"fan on the paper{at}"
        return figure(
            context,
            width.value,
            Kind.LENGTH,
            label,
            tone,
            said,
            (*deeds, *asked),
            whose=WHOSE,
            span=gun.fan_mm,
        )

    def event(self, context: Context, values: Values) -> Event | str:
        width = quantity(values, "width")
        if width is None or width.value <= 0:
            return "A fan has a width above 0: measure it on the paper."
        turns, distance = quantity(values, "turns"), quantity(values, "distance")
        return FanSet(n=0, at=context.now, width=width, turns=turns, distance=distance)


def _asked(context: Context) -> list[str]:
    gun, system = context.profile.gun, context.system
    said = []
    if gun.fan_mm is not None:
        said.append(range_words(gun.fan_mm, Kind.LENGTH, system))
    if gun.distance_mm is not None:
        said.append(f"at {range_words(gun.distance_mm, Kind.LENGTH, system)}")
    lines = [f"profile: {' '.join(said)}"] if said else []
    if context.gun is not None and context.gun.fan_turns:
        lines.append(f"fully open: {show(context.gun.fan_turns, Kind.TURNS, system)} (shop file)")
    return lines
