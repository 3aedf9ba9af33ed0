"""Fresh air: the least that keeps vapour far below its explosive limit, and the face of the booth.

Nothing here is a permission: no figure of this instrument is ever shown as good.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from msgspec.structs import replace

from booth.bench.act import Act, Context, Keep
from booth.bench.instrument import Instrument, number, word
from booth.bench.next_act import step_done
from booth.clock import local_day_hhmm
from booth.forms.form import Field, Rows, Values, same
from booth.instruments.figures import figure
from booth.job.measured import delivery_ml_min, known
from booth.job.vapour import Vapour, known_solvent, percent_known, vapour_of
from booth.log.events import FreshAirChecked
from booth.profile.model import Hazard
from booth.shop.model import Room
from booth.trade.result import BadInput
from booth.trade.ventilation.air_changes import MIXING, air_changes_per_h, time_to_clear_s
from booth.trade.ventilation.booth_face import FACE_M_S, face_velocity, required_exhaust
from booth.trade.ventilation.dilution import minimum_air
from booth.trade.ventilation.solvents import solvent_names
from booth.units import Kind, show
from booth.units.sentences import in_units
from booth.words.about import of_the_day
from booth.words.shown import Page, Picture, Readout, Tone
from booth.words.wait_words import rough

MINUTES_PER_HOUR = 60.0
WHOSE = "FRESH AIR"
NOT_A_PERMISSION = "A minimum against fire, not a permission to breathe."
ISOCYANATE = "Isocyanates: supplied air throughout."


class FreshAir(Instrument):
    KIND = "fresh-air"
    NAME = "Fresh air"
    ABOUT = of_the_day.FRESH_AIR
    KEEPS = (FreshAirChecked,)
    RECORDS = 2
    UNSAID = "fresh air: "
    FIRST = ("solvent",)

    def fields(self, context: Context, values: Values) -> tuple[Field, ...]:
        """Where the shop file tells of the room, its rows stand in the quiet line."""
        film, room, rows = context.profile.film, context.shop.room, []
        if known_solvent(film.solvent) is None and film.solvent_percent != 0:
            choices = (("", "not known"), *same(solvent_names()))
            rows.append(Field("solvent", "Solvent", choices=choices))
        if not percent_known(context.profile):
            hint = "by volume, without water: data sheet"
            rows.append(Field("percent", "Solvent in it", Kind.PERCENT, optional=True, hint=hint))
        if delivery_ml_min(context.job) is None:
            rows.append(Field("delivery", "Delivery", Kind.DELIVERY, hint="what leaves the gun"))
        room = room or Room()
        # What was kept in this job rules: a rating does not mend what a measurement said.
        kept = next(reversed(context.job.of(FreshAirChecked)), None)
        moved, face, by = room.exhaust_m3_min, room.face_m2, "shop file"
        if kept is not None and kept.moved_m3_min is not None:
            moved, by = kept.moved_m3_min, f"as kept {local_day_hhmm(kept.at, context.now)}"
        if kept is not None and kept.face_m2 is not None:
            face = kept.face_m2
        m3_h = None if moved is None else moved * MINUTES_PER_HOUR
        share, across = "for the average over the pauses", "of the booth, or across the room"
        return (
            *rows,
            _asked(
                "exhaust", "Exhaust", Kind.EXHAUST, m3_h, by, "what it moves through its filters"
            ),
            _asked("face", "Open front", Kind.AREA, face, "as known", across),
            _asked("room", "Room", Kind.ROOM, room.volume_m3, "shop file", "its volume"),
            Field("duty", "Share of time spraying", Kind.PERCENT, hint=share, assumed=True),
        )

    def readout(self, context: Context, values: Values) -> Readout:
        """The least air against fire as the figure; never as good."""
        checked = check(context, values)
        if isinstance(checked, str):
            return Readout("", label="fresh air, at least", lines=(checked,), whose=WHOSE)
        tone, said = Tone.PLAIN, "AT LEAST"
        if checked.short:
            tone, said = Tone.CAUTION, "TOO LITTLE AIR"
        elif checked.slow:
            tone, said = Tone.CAUTION, "FRONT TOO SLOW"
        elif checked.moved_m3_h is not None:
            said = "OVER THE LEAST"
            said = said if checked.face_m_s is not None else "FRONT NOT KNOWN"
        lines = tuple(_lines(context, checked))
        label = "fresh air against fire, at least"
        shown = figure(
            context, checked.needed_m3_h, Kind.EXHAUST, label, tone, said, lines, whose=WHOSE
        )
        return replace(shown, edge=_moved_share(checked))

    def picture(self, context: Context, values: Values) -> tuple[Picture, ...]:
        """The caution at all times; then what the figure rests on."""
        checked, told = check(context, values), []
        if isinstance(checked, Checked):
            names = ", ".join(
                f"{each.name} (limit {each.lel_percent:g} %)"
                for each in dict.fromkeys(each for each, _ in checked.vapour.blend)
            )
            share = f"{checked.vapour.volatile * 100:.0f} % of what is sprayed evaporates"
            told = [f"{share}: {names}", *checked.vapour.told]
            known = delivery_ml_min(context.job)
            if known is not None and checked.delivery == known[1]:
                delivery = show(known[0], Kind.DELIVERY, context.system)
                told.append(f"delivery {delivery}, {checked.delivery}")
        more = f" {ISOCYANATE}" if Hazard.ISOCYANATE in context.profile.hazards else ""
        warning = ("warning", f"{NOT_A_PERMISSION}{more}")
        return (Page((warning, *(("quiet", line) for line in told))),)

    def event(self, context: Context, values: Values) -> FreshAirChecked | str:
        checked = check(context, values)
        if isinstance(checked, str):
            return checked
        needed, moved = checked.needed_m3_h / MINUTES_PER_HOUR, checked.moved_m3_h
        moved = None if moved is None else moved / MINUTES_PER_HOUR
        face_m2 = number(values, "face") or None
        return FreshAirChecked(
            n=0, at=context.now, needed_m3_min=needed, moved_m3_min=moved, face_m2=face_m2
        )

    def enter(self, context: Context, rows: Rows) -> Act | None:
        """What profile and shop file say is enough to keep a figure: nothing has to be typed."""
        event = self.event(context, rows.values)
        if rows.holds or isinstance(event, str) or self.kept_any(context):
            return None
        return Act("keep, next step", (Keep(event), *step_done(context)))


def _moved_share(checked: Checked) -> float | None:
    """What is moved as a share of the least against fire, where it is too little. Pure.

    A full field would read as a permission.
    """
    if checked.moved_m3_h is None or not checked.short:
        return None
    return checked.moved_m3_h / checked.needed_m3_h


def _asked(key: str, label: str, kind: Kind, value: float | None, by: str, how: str) -> Field:
    """A row that is asked for until its value is known."""
    is_known = value is not None
    hint = by if is_known else how
    return Field(key, label, kind, default=value, hint=hint, optional=True, assumed=is_known)


@dataclass(frozen=True, slots=True)
class Checked:
    """What comes out: the least against fire and on average over the pauses, what the exhaust moves
    and what the open face asks for [m3/h], the average velocity there [m/s]; None: not known."""

    needed_m3_h: float
    averaged_m3_h: float
    moved_m3_h: float | None
    face_m3_h: float | None
    face_m_s: float | None
    vapour: Vapour
    delivery: str
    room_m3: float | None = None

    @property
    def short(self) -> bool:
        return self.moved_m3_h is not None and self.moved_m3_h < self.needed_m3_h * (1.0 - 1e-9)

    @property
    def slow(self) -> bool:
        """Whether less is moved than the open face asks for."""
        moved, face = self.moved_m3_h, self.face_m3_h
        return moved is not None and face is not None and moved < face * (1.0 - 1e-9)


def check(context: Context, values: Values) -> Checked | str:
    """Work out all that can be; a sentence where the figure against fire cannot. Pure."""
    typed = number(values, "delivery")
    delivery = (typed, "as typed") if typed else delivery_ml_min(context.job)
    vapour = vapour_of(context.job, word(values, "solvent"), number(values, "percent"))
    if vapour is None:
        return (
            "No solvent is named in this product but water: there is no figure against fire. Its data "
            "sheet may name a co-solvent; mist and the thinner still need moving air."
        )
    if delivery is None or delivery[0] <= 0:
        return "What leaves the gun is not known yet: type it, or catch it first."
    moved, face_m2 = number(values, "exhaust"), number(values, "face")
    duty = number(values, "duty")
    share = 1.0 if duty is None else duty / 100
    try:
        air = minimum_air(delivery[0], vapour.volatile, vapour.blend, trigger_share=share)
        face = required_exhaust(face_m2).least.value if face_m2 else None
        velocity = None
        if moved is not None and face_m2:
            velocity = face_velocity(moved, face_m2).average.value
    except BadInput as fault:
        return in_units(fault, context.system)
    least, averaged = air.least.value, air.averaged.value
    room_m3 = number(values, "room") or None
    return Checked(least, averaged, moved, face, velocity, vapour, delivery[1], room_m3)


def _lines(context: Context, checked: Checked) -> Iterator[str]:
    """What the room does about it: few lines, so that none is cut in a small window."""
    system = context.system
    if checked.moved_m3_h is not None:
        yield f"the exhaust moves {show(checked.moved_m3_h, Kind.EXHAUST, system)}"
    if checked.face_m_s is not None:
        average, least = (show(each, Kind.SPEED, system) for each in (checked.face_m_s, FACE_M_S))
        yield f"at the open front {average}, at least {least}"
    elif checked.face_m3_h is not None:
        yield f"for the open front at least {show(checked.face_m3_h, Kind.EXHAUST, system)}"
    if checked.face_m_s is None:
        least = show(FACE_M_S, Kind.SPEED, system)
        yield f"face velocity not known, at least {least}"
    yield from _room_lines(checked)
    if checked.averaged_m3_h < checked.needed_m3_h:
        averaged = show(checked.averaged_m3_h, Kind.EXHAUST, system)
        yield f"over trigger and pauses at least {averaged}"


def _room_lines(checked: Checked) -> Iterator[str]:
    """How often the air of the room changes, and how long it takes to clear after the last drop."""
    if checked.room_m3 is None or not checked.moved_m3_h:
        return
    changes = known(air_changes_per_h, checked.moved_m3_h, checked.room_m3)
    found = [
        known(time_to_clear_s, checked.moved_m3_h, checked.room_m3, 0.01, mixing)
        for mixing in MIXING
    ]
    times = [rough(each) for each in found if isinstance(each, float)]
    if changes is None or len(times) < len(MIXING):
        return
    even, corners = times
    yield (
        f"{changes:.1f} air changes an hour; 99 % of what hangs in it is out after {even} where it "
        f"mixes perfectly, up to {corners} with dead corners (mixing factor 1 to 10)"
    )
