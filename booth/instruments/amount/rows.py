"""The rows of the amount: the form of a part with its sizes, or the film and what is lost. Pure."""

from __future__ import annotations

from booth.bench.context import Context
from booth.bench.instrument import word
from booth.files.safe_text import visible
from booth.forms.field import Field
from booth.forms.form import Values
from booth.job.material import DIMENSIONS
from booth.profile.model import Range
from booth.units import Kind, Quantity

AREAS, FILM = "areas", "film"
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
#: What goes with a form besides its sizes.
WITH_FORM = {"rectangle": "sides", "circle": "sides", "cylinder": "ends"}
#: The rows of the page of the film, besides the film itself.
FILM_ROWS = ("coats", "basis", "lands", "lost", "left", "enough")


def fields(context: Context) -> tuple[Field, ...]:
    """Every row there may be; which of them are asked for, `wanted_rows` says."""
    film, parts = context.profile.film, context.job.parts
    names = tuple((part, visible(part)) for part in parts)
    whole = ((WHOLE, "all of it"),) if len(parts) > 1 else ()
    basis = "wet" if film.wet_um or not film.dry_total_um else "dry"
    long, short, one = Kind.PART_LENGTH, Kind.LENGTH, Quantity(1.0, "", "")
    coats = Quantity(float(film.coats), "", "")
    return (
        Field("page", "Page", choices=((AREAS, "areas"), (FILM, "film and losses"))),
        Field("form", "Form", choices=FORMS),
        Field("length", "Length", long),
        Field("width", "Width", long),
        Field("height", "Height", long),
        Field("thickness", "Thickness", short),
        Field("diameter", "Diameter", short),
        Field("area", "Area", Kind.AREA),
        Field("sides", "Painted", choices=SIDES, assumed=True),
        Field("ends", "Painted", choices=ENDS, assumed=True),
        Field("count", "How many", Kind.COUNT, default=one, assumed=True),
        Field("part", "Part", choices=(*whole, *names), assumed=True),
        Field("coats", "Coats", Kind.COUNT, default=coats),
        Field("basis", "Film is", choices=BASES, default=basis, assumed=True),
        _film("wet", "Wet film", film.wet_um),
        _film("dry", "Dry film", film.dry_total_um),
        Field("lands", "Parts are", choices=LANDS),
        Field("lost", "Lost", Kind.PERCENT, default=LOST, hint="can, strainer", assumed=True),
        Field("left", "Left over", Kind.VOLUME, default=LEFT, hint="gun, test paper", assumed=True),
        Field("enough", "Mix", choices=ENOUGH, assumed=True),
    )


def _film(key: str, label: str, span: Range | None) -> Field:
    middle = Quantity(span.middle, "um", "") if span is not None else None
    return Field(key, label, Kind.THICKNESS, optional=True, default=middle)


def wanted_rows(context: Context, values: Values) -> tuple[str, ...]:
    """The rows of the page that is open."""
    if word(values, "page") == FILM:
        return (*FILM_ROWS, word(values, "basis"))
    form = word(values, "form")
    part = ("part",) if len(context.job.parts) > 1 else ()
    return ("form", *DIMENSIONS[form], WITH_FORM.get(form, ""), "count", *part)
