"""The amount: areas of the parts by their form, and the material, cups and time they take."""

from __future__ import annotations

import math
from typing import ClassVar

from booth.bench.context import Context
from booth.bench.instrument import Instrument, Values, number, quantity, word
from booth.instruments.amount.words import area_words, plan_in, plan_readout, this_area
from booth.job.material import DIMENSIONS, total_area_m2
from booth.log.events import AmountPlanned, AreaAdded, Event
from booth.moment import Moment
from booth.units import Kind, Quantity, show, shown_unit
from booth.widgets.entry import Field, FieldRow, TypedText
from booth.words.readout import Readout
from booth.words.tone import Tone

FORMS = (
    ("rectangle", "flat, square-edged"),
    ("sheet", "sheet or board, edges too"),
    ("circle", "disc"),
    ("cylinder", "round bar, pipe or drum"),
    ("box", "box, six faces"),
    ("area", "area is known"),
)
SIDES = (("1", "one side"), ("2", "both sides"))
ENDS = (("0", "no ends"), ("1", "one end"), ("2", "both ends"))
BASES = (("wet", "wet, each coat"), ("dry", "dry, all coats together"))
LANDS = (("large", "large flat parts"), ("small", "small or open parts"))
ENOUGH = (("ample", "enough in any case"), ("likely", "the likely figure"))
WHOLE = "all"
#: What stays in can and strainer, in cup and gun, and on the test paper (common practice, no
#: source): type your own.
LOST = Quantity(5.0, "%", "")
LEFT = Quantity(30.0, "ml", "")
#: The rows of a form, the choices that go with it, and the rows of the film.
ALL_DIMENSIONS = ("length", "width", "height", "thickness", "diameter", "area")
AREA_ROWS = ("form", *ALL_DIMENSIONS, "sides", "ends", "count", "part")
FILM_ROWS = ("coats", "basis", "film", "lands", "lost", "left", "enough")


class Amount(Instrument):
    """Two pages of rows: the areas, then coats, film and losses."""

    KIND: ClassVar[str] = "amount"
    NAME: ClassVar[str] = "Amount"
    ABOUT: ClassVar[tuple[str, ...]] = (
        "Material = area x wet film x coats / what lands / (1 - lost), and what stays in the gun: 1 "
        "um over 1 m2 is 1 ml (the spreading-rate formula of data sheets). It is ready-to-spray "
        "material, thinner in it. Smooth surfaces: rough or absorbing ones take more.",
        "What lands on the parts is an estimate between two ends; 'enough in any case' mixes for "
        "the lower share. The gauge (step Wet film) replaces the usual band by what you do.",
        "Areas by the forms of geometry; a sheet counts both faces and its four edges. Count backs "
        "and edges that are painted, and what hangs behind them.",
        "A dry film becomes a wet one through the volume solids and the thinner: WFT = DFT x (1 + "
        "thinner) / solids (Organic Finishing Guidebook 2012-13 p. 615).",
        "Lost (can, strainer) and left over (cup, gun, test paper) begin with common figures, no "
        "source: type your own. Cups are filled to what the shop file says, else 20 US fl oz.",
        "Pot life is held against the time at the gun and the waits between the coats, as they are "
        "today; masking a corner or a second part takes longer. The data sheet's pot life wins.",
    )
    KEEPS: ClassVar[tuple[type[Event], ...]] = (AreaAdded, AmountPlanned)
    GO: ClassVar[str] = "film and losses"

    page_of_film: bool = False

    # -- the screen -------------------------------------------------------------------------

    def fields(self, context: Context) -> tuple[Field, ...]:
        film, parts = context.profile.film, context.job.parts
        whole = ((WHOLE, "all of it"),) if len(parts) > 1 else ()
        long, short = Kind.PART_LENGTH, Kind.LENGTH
        dry = self._basis == "dry"
        span = film.dry_total_um if dry else film.wet_um
        return (
            Field("form", "Form", choices=FORMS, default="rectangle"),
            Field("length", "Length", long, optional=True),
            Field("width", "Width", long, optional=True),
            Field("height", "Height", long, optional=True),
            Field("thickness", "Thickness", short, optional=True),
            Field("diameter", "Diameter", short, optional=True),
            Field("area", "Area", Kind.AREA, optional=True),
            Field("sides", "Painted", choices=SIDES, default="1"),
            Field("ends", "Painted", choices=ENDS, default="0"),
            Field("count", "How many", Kind.COUNT, default=Quantity(1.0, "", "")),
            Field("part", "Part", choices=(*whole, *((part, part) for part in parts)),
                  default=WHOLE if whole else parts[0]),
            Field("coats", "Coats", Kind.COUNT, default=Quantity(float(film.coats), "", "")),
            Field("basis", "Film is", choices=BASES,
                  default="wet" if film.wet_um or not film.dry_total_um else "dry"),
            Field("film", "Film", Kind.THICKNESS, optional=True,
                  default=Quantity(span.middle, "um", "") if span else None),
            Field("lands", "Parts are", choices=LANDS, default="large"),
            Field("lost", "Lost", Kind.PERCENT, default=LOST, hint="can, strainer"),
            Field("left", "Left over", Kind.VOLUME, default=LEFT, hint="gun, test paper"),
            Field("enough", "Mix", choices=ENOUGH, default="ample"),
        )  # fmt: skip

    @property
    def _basis(self) -> str:
        if not self.is_mounted or not self.rows:
            film = self.desk.context.profile.film
            return "wet" if film.wet_um or not film.dry_total_um else "dry"
        return self.row("basis").typed

    @property
    def shown_rows(self) -> tuple[FieldRow, ...]:
        """The rows in sight, in their order."""
        return tuple(row for row in self.rows if self._in_sight(row.field.key))

    def _in_sight(self, key: str) -> bool:
        if self.page_of_film:
            return key in FILM_ROWS
        form = self.row("form").typed
        if key == "sides":
            return form in ("rectangle", "circle")
        if key == "ends":
            return form == "cylinder"
        if key == "part":
            return len(self.desk.context.job.parts) > 1
        return key in ("form", "count") or key in DIMENSIONS[form]

    def draw(self, context: Context) -> None:
        if not self.is_mounted or not self.rows:
            return
        for row in self.rows:
            wanted = self._in_sight(row.field.key)
            if row.display != wanted:
                row.display = wanted
        self.set_class(bool(context.job.areas), "-areas")
        super().draw(context)

    def on_mount(self) -> None:
        self.draw(self.desk.context)
        self.focus_first()

    def focus_first(self) -> None:
        """The form comes first on the page of areas; a digit begins its first dimension."""
        self._focus(self.shown_rows[0].place)

    def readout(self, context: Context, values: Values) -> Readout:
        if not self.page_of_film and not self._nothing_typed:
            return area_readout(context, values)
        return plan_readout(context, values)

    def record(self, context: Context) -> tuple[str, ...]:
        lines = [area_words(each, context.system) for each in context.job.areas[-3:]]
        if len(context.job.areas) > 1:
            total = show(total_area_m2(context.job), Kind.AREA, context.system)
            lines.append(f"in all {total} of {len(context.job.areas)} entries")
        return tuple(lines)

    def kept_any(self, context: Context) -> bool:
        return bool(context.job.amounts)

    def keys(self, context: Context) -> tuple[tuple[str, str], ...]:
        page = ("Space", "areas" if self.page_of_film else "film and losses")
        if not self.page_of_film and not self._nothing_typed:
            return (("Enter", "add this area"), ("←→", "form"), page)
        if self._planned(context) is None:
            word_ = "next step" if self.kept_any(context) else "go on"
            return (("Enter", word_), ("0-9", "an area"), page)
        if self.page_of_film:
            return (("Enter", "keep the amount"), page)
        return (("Enter", "keep the amount, next step"), ("0-9", "another area"), page)

    # -- what the painter does --------------------------------------------------------------

    @property
    def _nothing_typed(self) -> bool:
        form = self.row("form").typed
        return all(self.row(key).is_empty for key in DIMENSIONS[form])

    def go(self, at: Moment) -> None:
        """The other page."""
        self.page_of_film = not self.page_of_film
        self.draw(self.desk.context)
        self.focus_first()

    def enter(self, row: FieldRow | None = None) -> None:
        fault = next((each.fault for each in self.shown_rows if each.fault), "")
        if fault:
            self.desk.say(fault, fault=True)
            return
        if not self.page_of_film and not self._nothing_typed:
            for key in DIMENSIONS[self.row("form").typed]:
                if self.row(key).is_empty:
                    self._focus(self.row(key).place)
                    return
            self.commit()
            return
        planned = self._planned(self.desk.context)
        if planned is not None and (self.desk.keep(planned) is None or self.page_of_film):
            return
        self.desk.finish_step()

    def clear(self) -> None:
        """Empty the dimensions for the next area; film and losses stay."""
        for key in (*ALL_DIMENSIONS, "count"):
            self.row(key).clear()
        self.focus_first()

    def move_focus(self, by: int) -> bool:
        places = [row.place for row in self.shown_rows]
        if self.screen.focused not in places:
            return False
        at = places.index(self.screen.focused) + by  # type: ignore[arg-type]
        if not 0 <= at < len(places):
            return False
        self._focus(places[at])
        return True

    def type_digit(self, character: str) -> bool:
        for row in self.shown_rows:
            place = row.place
            if isinstance(place, TypedText) and row.is_empty:
                self._focus(place)
                row.fill(character)
                place.cursor_position = len(place.value)
                return True
        return False

    def event(self, context: Context, values: Values) -> Event | None:
        square_m, fault = this_area(values)
        if square_m is None or square_m <= 0:
            self.desk.say(fault or "An area is above 0.", fault=True)
            return None
        shape, part = word(values, "form"), word(values, "part")
        sizes = {key: given for key in DIMENSIONS[shape] if (given := quantity(values, key))}
        return AreaAdded(
            n=0,
            at=context.now,
            shape=shape,
            dimensions={} if shape == "area" else sizes,
            area=Quantity(square_m, "m2", f"{square_m:.4g} m2"),
            number=count_of(values),
            part="" if part == WHOLE and len(context.job.parts) > 1 else part,
        )

    def _planned(self, context: Context) -> AmountPlanned | None:
        """The plan as an event, where it differs from the one kept last."""
        plan, _ = plan_in(context, self.values())
        if plan is None:
            return None
        area = total_area_m2(context.job)
        if context.job.amounts:
            last = context.job.amounts[-1]
            same = math.isclose(last.amount.value, plan.mix_ml, rel_tol=1e-3)
            if same and math.isclose(last.area.value, area, rel_tol=1e-3):
                return None
        return AmountPlanned(
            n=0,
            at=context.now,
            area=Quantity(area, "m2", f"{area:.4g} m2"),
            amount=Quantity(plan.mix_ml, "ml", f"{plan.mix_ml:.0f} ml"),
        )


def count_of(values: Values) -> int:
    """How many are alike."""
    given = number(values, "count")
    return max(1, round(given)) if given is not None else 1


def area_readout(context: Context, values: Values) -> Readout:
    """The area of the part being typed as the figure. Pure."""
    unit = shown_unit(Kind.AREA, context.system)
    square_m, fault = this_area(values)
    if square_m is None:
        return Readout("–", unit, label="area of this part", lines=(fault,) if fault else ())
    many = count_of(values)
    total = total_area_m2(context.job) + square_m
    return Readout(
        show(square_m, Kind.AREA, context.system, unit=False), unit,
        label="area of this part" if many == 1 else f"area of these {many}",
        tone=Tone.PLAIN,
        lines=(f"Enter adds it: in all {show(total, Kind.AREA, context.system)}.",),
    )  # fmt: skip
