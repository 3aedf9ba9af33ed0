"""The catch: what the gun delivers in a timed window, caught in a cup and measured."""

from __future__ import annotations

import math
from typing import ClassVar

from booth.instruments.base import Instrument, Values, number, quantity, word
from booth.instruments.context import Context
from booth.job.measured import catches, compare
from booth.job.needle_advice import catch_pairs, paint_words, turns_words
from booth.job.past import CatchPair, pairs
from booth.log.events import CatchMade, Event
from booth.moment import Moment, elapsed, later
from booth.trade.delivery import (
    catch_statistics,
    delivery_from_volume,
    delivery_from_weight,
    time_to_empty_s,
)
from booth.trade.water import water_density_kg_m3
from booth.units import Kind, Quantity, System, show, shown_unit
from booth.widgets.entry import Field, FieldRow
from booth.words.profile_words import range_words
from booth.words.readout import Readout
from booth.words.tone import Tone
from booth.words.wait_words import duration

LEAD_IN_S = 3.0
BOUNCE_S = 0.7
USUAL_S = 60.0
#: A gravity cup of 20 US fl oz, where the shop file names no other (common practice, no source).
USUAL_CUP_ML = 20 * 29.5735295625
WATER_C = 20.0
NO_TIME = "A catch needs a time above zero, such as 60 s or 1:30."
#: What a low window shows of the lines of what was kept.
RECORD_ROWS = 4


class Catch(Instrument):
    """Times a catch and works out the delivery."""

    KIND: ClassVar[str] = "catch"
    NAME: ClassVar[str] = "Catch"
    ABOUT: ClassVar[tuple[str, ...]] = (
        "Delivery: the volume caught, divided by the time the trigger was held. A weight becomes a "
        "volume through the density of what was caught: the profile's, or water's.",
        "Air off or turned right down so that nothing is atomised into the measuring cup, unless "
        "your gun's instructions say otherwise; trigger fully pulled all the while. Space again "
        "ends the catch early: the time that really passed is used.",
        "Water runs faster than paint and atomises with less air: a water catch puts the needle in "
        "the right neighbourhood, it is not the paint's delivery. No published rule turns one into "
        "the other (common practice, no source).",
        "Turns to try: the line between the nearest of your own catches of the coating with this gun "
        "and tip, past jobs included (isotonic regression, Ayer et al. 1955); beyond what was caught "
        "only the way to turn is told. Water as coating: the median ratio of your own pairs, caught "
        "with both at one setting. Both are estimates.",
        "Pressure never on skin: the cup is held by something else than a hand.",
    )
    KEEPS: ClassVar[tuple[type[Event], ...]] = (CatchMade,)
    GO: ClassVar[str] = "start"

    _open_at: Moment | None = None  # the trigger is to be pulled at this moment
    _window_s: float = USUAL_S
    _beats: int = 0
    _caught_s: float | None = None
    _past: tuple[CatchPair, ...] | None = None

    def fields(self, context: Context) -> tuple[Field, ...]:
        last = context.job.catches[-1] if context.job.catches else None
        inlet = context.job.airs[-1].inlet if context.job.airs else None
        seconds = Quantity(self._caught_s or (last.seconds if last else USUAL_S), "s", "")
        return (
            Field("amount", "Caught", amount=True),
            Field(
                "liquid", "Liquid", choices=(("water", "water"), ("paint", "the coating")),
                default=last.liquid if last else "water",
            ),
            Field("seconds", "In", Kind.TIME, default=seconds),
            Field("turns", "Needle open", Kind.TURNS, optional=True,
                  default=last.turns if last else None, hint="" if last else "optional"),
            Field("inlet", "Inlet", Kind.PRESSURE, optional=True,
                  default=(last.inlet if last and last.inlet else inlet)),
            Field("tip", "Tip", Kind.TIP, optional=True, default=_tip(context)),
        )  # fmt: skip

    @property
    def fast(self) -> bool:
        return self._open_at is not None

    @property
    def busy(self) -> bool:
        return self._open_at is not None

    def go(self, at: Moment) -> None:
        if self._open_at is None:
            window_s = number(self.values(), "seconds")
            if not window_s:
                self.desk.say(self.row("seconds").fault or NO_TIME, fault=True)
                return
            self._window_s = window_s
            self._open_at = later(at, LEAD_IN_S)
            self._beats = 0
            self._caught_s = None
            self.desk.say("")
            return
        since_press = elapsed(later(self._open_at, -LEAD_IN_S), at).seconds
        if since_press < BOUNCE_S:
            return
        if since_press < LEAD_IN_S:
            self._open_at = None
            self.desk.say("Stopped before the trigger.")
            return
        self._end(since_press - LEAD_IN_S)

    def _end(self, seconds: float) -> None:
        self._open_at = None
        self._caught_s = round(seconds, 2)
        for field in self.fields(self.desk.context):
            if field.key == "seconds":
                self.row("seconds").clear()
                self.row("seconds").offer(field.default)
        self.desk.signal()
        self.focus_first()

    def draw(self, context: Context) -> None:
        if self._open_at is not None:
            since_press = elapsed(later(self._open_at, -LEAD_IN_S), context.now).seconds
            beats = min(int(since_press) + 1, int(LEAD_IN_S) + 1)
            if beats > self._beats and self.is_mounted:
                self._beats = beats
                self.desk.tick_sound()
            if since_press - LEAD_IN_S >= self._window_s:
                self._end(self._window_s)
        super().draw(context)

    def keys(self, context: Context) -> tuple[tuple[str, str], ...]:
        if self._open_at is not None:
            return (("Space", "stop early"),)
        if not self.all_empty:
            return (("Enter", "keep"), ("Space", "start"))
        return (("Space", "start"), ("Enter", self.leaving(context)))

    def readout(self, context: Context, values: Values) -> Readout:
        if self._open_at is not None:
            return self._counting(context)
        delivery = delivery_of(context, values)
        if delivery is not None:
            return delivery_readout(context, delivery, word(values, "liquid"), "this catch")
        if self._caught_s is not None:
            return Readout(
                f"{self._caught_s:.0f}" if self._caught_s >= 10 else f"{self._caught_s:.1f}", "s",
                label="caught in", tone=Tone.PLAIN, word="TYPE WHAT WAS CAUGHT",
            )  # fmt: skip
        if context.job.catches:
            liquid = context.job.catches[-1].liquid
            same = catches(context.job, liquid)
            mean = catch_statistics([each.delivery_ml_min for each in same]).mean_ml_min
            label = "delivery" if len(same) == 1 else f"delivery, mean of {len(same)}"
            return delivery_readout(context, mean, liquid, label)
        return Readout(
            duration(number(values, "seconds") or USUAL_S), label="catch for", like="00:00",
            lines=("Space: 3, 2, 1, then hold the trigger until the window flashes.",),
        )  # fmt: skip

    def _counting(self, context: Context) -> Readout:
        assert self._open_at is not None
        since_press = elapsed(later(self._open_at, -LEAD_IN_S), context.now).seconds
        if since_press < LEAD_IN_S:
            beat = math.ceil(LEAD_IN_S - since_press)
            return Readout(f"{beat}", label="get ready", tone=Tone.CLOSING, word="GET READY")
        left = max(self._window_s - (since_press - LEAD_IN_S), 0.0)
        figure = f"{left:.1f}" if left < 10 else f"{math.ceil(left)}"
        return Readout(
            figure, "s", label="catching", tone=Tone.RUNNING, word="TRIGGER", like="00.0"
        )

    def record(self, context: Context) -> tuple[str, ...]:
        job, system = context.job, context.system
        known = catch_pairs(job, self.past(context))
        learnt = [
            said for words in (paint_words, turns_words) if (said := words(job, known, system))
        ]
        if not job.catches:
            return (*self._start(context), *learnt)
        same = catches(job, job.catches[-1].liquid)
        means = []
        if len(same) > 1:
            stats = catch_statistics([each.delivery_ml_min for each in same])
            spread = show(stats.spread_ml_min, Kind.DELIVERY, system)
            means.append(f"mean {show(stats.mean_ml_min, Kind.DELIVERY, system)}, spread {spread}")
        room = max(1, RECORD_ROWS - len(means) - len(learnt))
        return (*(self._caught(each, system) for each in job.catches[-room:]), *means, *learnt)

    def _caught(self, each: CatchMade, system: System) -> str:
        turns = f"  {each.turns.value:g} turns" if each.turns else ""
        shown = show(each.delivery_ml_min, Kind.DELIVERY, system)
        return f"{self.desk.local_time(each.at)}  {shown}  {each.liquid}{turns}"

    def past(self, context: Context) -> tuple[CatchPair, ...]:
        """Catches of past jobs with this gun and tip, read once while the step is open."""
        if self._past is None:
            opened, tip = context.job.opened, _tip(context)
            self._past = tuple(
                pairs(
                    self.desk.jobs_dir, opened.gun, tip.value if tip else None,
                    opened.profile.key, without=opened.job,
                )
            )  # fmt: skip
        return self._past

    def enter(self, row: FieldRow | None = None) -> None:
        """Only the amount has to be typed: everything else stands as last time."""
        amount = self.row("amount")
        ready = not self.busy and not amount.is_empty and not any(each.fault for each in self.rows)
        if ready and row is not None and row.field.key == "amount":
            self.commit()
            return
        super().enter(row)

    def commit(self) -> None:
        """The time that was caught in stands until what was caught in it is kept."""
        super().commit()
        if self.all_empty:
            self._caught_s = None

    def event(self, context: Context, values: Values) -> Event | None:
        delivery = delivery_of(context, values)
        amount, seconds = quantity(values, "amount"), number(values, "seconds")
        if amount is None or not amount.value or not seconds or delivery is None:
            self.desk.say(why_not(amount, seconds), fault=True)
            return None
        liquid = word(values, "liquid")
        return CatchMade(
            n=0,
            at=context.now,
            seconds=seconds,
            amount=amount,
            delivery_ml_min=delivery,
            liquid=liquid,
            density_g_ml=density_of(context, liquid) if amount.unit == "g" else None,
            turns=quantity(values, "turns"),
            inlet=quantity(values, "inlet"),
            tip=quantity(values, "tip"),
        )


def why_not(amount: Quantity | None, seconds: float | None) -> str:
    """The sentence for rows that come to no delivery. Pure."""
    if not seconds:
        return NO_TIME
    if amount is None or not amount.value:
        return "Nothing caught gives no delivery: type how much was caught, or catch again."
    return (
        "A weight needs the density of the coating, and this profile gives none: measure the "
        "volume instead."
    )


def density_of(context: Context, liquid: str) -> float | None:
    """Density of what is caught [g/ml]: water's, or the profile's; None where it gives none."""
    if liquid == "water":
        return water_density_kg_m3(WATER_C) / 1000
    return context.profile.film.density_g_ml


def delivery_of(context: Context, values: Values) -> float | None:
    """The delivery [ml/min] that the rows come to, if they do."""
    amount, seconds = quantity(values, "amount"), number(values, "seconds")
    if amount is None or not seconds:
        return None
    if amount.unit == "ml":
        return delivery_from_volume(amount.value, seconds)
    density = density_of(context, word(values, "liquid"))
    return None if density is None else delivery_from_weight(amount.value, density, seconds)


def delivery_readout(context: Context, delivery_ml_min: float, liquid: str, label: str) -> Readout:
    """The delivery as the figure, against the profile; how long a full cup lasts. Pure."""
    span = context.profile.gun.delivery_ml_min
    where = compare(delivery_ml_min, span)
    tone, said = {
        "in": (Tone.GOOD, "IN RANGE"),
        "below": (Tone.CAUTION, "TOO LITTLE"),
        "above": (Tone.CAUTION, "TOO MUCH"),
        "": (Tone.PLAIN, ""),
    }[where]
    lines = []
    if span is not None:
        lines.append(f"profile: {range_words(span, Kind.DELIVERY, context.system)}")
    if liquid == "water":
        tone, said = Tone.PLAIN, "WITH WATER"
        lines.append("Water runs faster than paint: near the target, not on it.")
    cup_ml = cup_ml_of(context)
    if delivery_ml_min > 0:
        lasts = duration(round(time_to_empty_s(cup_ml, delivery_ml_min)))
        lines.append(f"a full cup of {show(cup_ml, Kind.VOLUME, context.system)} lasts {lasts}")
    unit = shown_unit(Kind.DELIVERY, context.system)
    return Readout(
        show(delivery_ml_min, Kind.DELIVERY, context.system, unit=False), unit, label=label,
        tone=tone, word=said, lines=tuple(lines),
    )  # fmt: skip


def cup_ml_of(context: Context) -> float:
    """What the gun's cup holds [ml]: from the shop file, else the usual gravity cup."""
    gun = context.shop.gun(context.job.opened.gun)
    return gun.cup_ml if gun is not None and gun.cup_ml else USUAL_CUP_ML


def _tip(context: Context) -> Quantity | None:
    gun = context.shop.gun(context.job.opened.gun)
    if gun is not None and gun.tip_mm:
        return Quantity(gun.tip_mm, "mm", "")
    return None
