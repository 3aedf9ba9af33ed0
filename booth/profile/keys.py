"""Every key of a coating profile, once: what it is, what it takes, an example.

The reader, the 'did you mean' and the printed list of keys are all made from this table. A
quantity is a text with its unit, ``"28 psi"``; a bare number stands only where a count, parts or a
percentage is meant. A range is ``"8 to 10 fl oz/min"``, ``"at least 60 F"``, ``"at most 85 %"``,
one value, or ``{ low = "8 fl oz/min", high = "10 fl oz/min" }``. A time that holds at a temperature
is ``{ time = "10 min", at = "70 F" }``; several are
``{ table = [ { at = ..., time = ... }, ... ] }``.
"""

from __future__ import annotations

import enum
from collections.abc import Iterator
from dataclasses import dataclass

from booth.profile.model import Hazard
from booth.profile.step_kinds import KINDS
from booth.units import Kind

__all__ = ["ALSO_CALLED", "KEYS", "Key", "Shape", "children", "keys_text"]


class Shape(enum.StrEnum):
    """What a key takes; the value is how a sentence calls it."""

    TABLE = "a table"
    TABLES = "a list of tables"
    TEXT = "a text in quotation marks"
    WORDS = "a list of texts"
    FLAG = "true or false"
    COUNT = "a whole number"
    PARTS = "a bare number"
    PERCENT = "a percentage"
    QUANTITY = "a quantity with its unit, in quotation marks"
    RANGE = "a range with its unit, in quotation marks"
    LIMITS = "a range with its unit, at least or at most, in quotation marks"
    AT = "a time and the temperature at which it holds"
    WAIT = "a time and its temperature, or a table of them"
    CHOICE = "one of a few words"
    CHOICES = "a list of such words"
    CUP = "the name of a flow cup"


@dataclass(frozen=True, slots=True)
class Key:
    """One key. path: dotted, ``[]`` after a list of tables; says: what it is; example: as typed.

    low, high: bounds in the base unit of `kind`, wide enough for any shop and narrow enough to
    catch a slip of the unit or a misplaced point (common practice, no source).
    """

    path: str
    says: str
    shape: Shape
    example: str = ""
    kind: Kind | None = None
    low: float = 0.0
    high: float = 0.0
    required: bool = False
    choices: tuple[str, ...] = ()

    @property
    def name(self) -> str:
        """The last part of the path."""
        return self.path.removesuffix("[]").rpartition(".")[2]

    @property
    def table(self) -> str:
        """The path of the table it stands in; empty for the top of the file."""
        return self.path.rpartition(".")[0]


DAY_S = 86400.0
YEAR_S = 366 * DAY_S
T = Shape
K = Kind


def _wait(name: str, says: str, example: str) -> Key:
    return Key(f"waits.{name}", says, T.WAIT, example, K.TIME, 1.0, YEAR_S)


KEYS: tuple[Key, ...] = (
    Key("name", "what the painter calls it", T.TEXT, '"Two-pack clear, medium"', required=True),
    Key("product", "what stands on the can", T.TEXT, '"High-build two-pack clear"'),
    Key("source", "where these numbers come from", T.TEXT, '"data sheet, issue 4"', required=True),
    Key("demo", "invented values, for trying the program", T.FLAG, "true"),
    Key("waterborne", "thinned with water", T.FLAG, "true"),
    Key("notes", "what else the data sheet says", T.WORDS, '["Stir, do not shake."]'),
    Key("hazards", "what can hurt: each brings its cautions", T.CHOICES, '["flammable"]',
        choices=tuple(str(each) for each in Hazard)),
    Key("cautions", "the data sheet's own warnings, word for word", T.WORDS, '["Harms the eyes."]'),

    Key("mix", "how it is mixed and thinned", T.TABLE),
    Key("mix.by", "whether parts are by volume or by weight", T.CHOICE, '"volume"',
        choices=("volume", "weight")),
    Key("mix.induction", "how long the mix has to stand before use", T.QUANTITY, '"15 min"',
        K.TIME, 1.0, 7 * DAY_S),
    Key("mix.pot_life", "how long the mix can be used", T.AT,
        '{ time = "4 h", at = "70 F" }', K.TIME, 30.0, 60 * DAY_S),
    Key("mix.parts[]", "the components, in the order in which they are poured", T.TABLES),
    Key("mix.parts[].name", "the component", T.TEXT, '"hardener"', required=True),
    Key("mix.parts[].parts", "its parts in the ratio", T.PARTS, "2", low=0.001, high=10000,
        required=True),
    Key("mix.parts[].density", "its density, to pour volume parts on a scale", T.QUANTITY,
        '"1.05 g/ml"', K.DENSITY, 0.5, 5.0),
    Key("mix.thinner", "the thinner", T.TABLE),
    Key("mix.thinner.name", "the thinner", T.TEXT, '"medium thinner"', required=True),
    Key("mix.thinner.usual", "usual thinner, percent by volume of the mixed coating", T.PERCENT,
        "10", K.PERCENT, 0, 300),
    Key("mix.thinner.limit", "most thinner, percent by volume of the mixed coating", T.PERCENT,
        "15", K.PERCENT, 0, 300),
    Key("mix.thinner.viscosity", "kinematic viscosity of the thinner", T.QUANTITY, '"0.9 mm2/s"',
        K.VISCOSITY, 0.1, 1000),
    Key("mix.thinner.density", "density of the thinner", T.QUANTITY, '"0.87 g/ml"',
        K.DENSITY, 0.5, 2.0),
    Key("mix.thinner.solvent", "its main solvent, for the fresh-air figure", T.TEXT,
        '"butyl acetate"'),

    Key("efflux", "the efflux time to thin to", T.TABLE),
    Key("efflux.cup", "the flow cup", T.CUP, '"Ford #4"', required=True),
    Key("efflux.target", "efflux time ready to spray", T.RANGE, '"20 to 24 s"', K.TIME, 1, 3600,
        required=True),
    Key("efflux.at", "temperature of the liquid at which that holds", T.QUANTITY, '"25 C"',
        K.TEMPERATURE, -10, 90),

    Key("gun", "settings of the gun", T.TABLE),
    Key("gun.tip", "fluid tip", T.RANGE, '"1.3 to 1.4 mm"', K.TIP, 0.1, 6),
    Key("gun.inlet_pressure", "air at the gun inlet with the trigger pulled", T.RANGE,
        '"26 to 30 psi"', K.PRESSURE, 5, 1400),
    Key("gun.distance", "gun to surface", T.RANGE, '"6 to 8 in"', K.LENGTH, 20, 1000),
    Key("gun.fan", "width of the fan at that distance", T.RANGE, '"10 to 12 in"', K.LENGTH, 10,
        1500),
    Key("gun.overlap", "overlap of the passes", T.PERCENT, "50", K.PERCENT, 0, 95),
    Key("gun.delivery", "fluid delivery", T.RANGE, '"8 to 10 fl oz/min"', K.DELIVERY, 5, 6000),
    Key("gun.hvlp", "high volume, low pressure", T.FLAG, "true"),
    Key("gun.coarse_metallic", "flakes that a cup's own filter holds back", T.FLAG, "true"),
    Key("gun.strainer", "opening of the strainer", T.QUANTITY, '"190 um"', K.THICKNESS, 10, 2000),

    Key("film", "what the film is to be", T.TABLE, required=True),
    Key("film.coats", "number of coats", T.COUNT, "2", low=1, high=50, required=True),
    Key("film.volume_solids", "volume solids of the mixed coating before thinning", T.PERCENT, "42",
        K.PERCENT, 1, 100),
    Key("film.wet", "wet film of one coat", T.RANGE, '"2 to 2.5 mil"', K.THICKNESS, 1, 5000),
    Key("film.dry_total", "dry film of all coats together", T.RANGE, '"2 to 2.4 mil"',
        K.THICKNESS, 0.5, 10000),
    Key("film.density", "density of the mixed coating", T.QUANTITY, '"1.02 g/ml"', K.DENSITY, 0.5,
        5.0),
    Key("film.solvent_percent", "solvent in the mixed coating, percent by volume, without water",
        T.PERCENT, "50", K.PERCENT, 0, 100),
    Key("film.solvent", "its main solvent, for the fresh-air figure", T.TEXT, '"butyl acetate"'),

    Key("waits", "the waits after a coat", T.TABLE),
    _wait("flash_off", "flash-off before the next coat", '{ time = "10 min", at = "70 F" }'),
    _wait("recoat_opens", "the recoat window opens", '{ time = "30 min", at = "70 F" }'),
    _wait("recoat_closes", "the recoat window closes", '{ time = "24 h", at = "70 F" }'),
    _wait("dust_free", "dust no longer sticks", '{ time = "20 min", at = "70 F" }'),
    _wait("handle", "can be handled",
          '{ table = [ { at = "15 C", time = "16 h" }, { at = "25 C", time = "8 h" } ] }'),

    Key("limits", "the weather the product can stand while it is sprayed", T.TABLE),
    Key("limits.air", "air temperature", T.LIMITS, '"60 to 90 F"', K.TEMPERATURE, -40, 100),
    Key("limits.part", "temperature of the part", T.LIMITS, '"at least 60 F"', K.TEMPERATURE, -40,
        250),
    Key("limits.humidity", "relative humidity", T.LIMITS, '"at most 85 %"', K.PERCENT, 0, 100),
    Key("limits.dew_margin", "part above dew point, a difference", T.QUANTITY, '"3 C"',
        K.TEMPERATURE_DIFFERENCE, 0, 30),

    Key("steps[]", "the steps of the job, instead of the usual ones", T.TABLES),
    Key("steps[].kind", "which instrument serves it", T.CHOICE, '"efflux"', required=True,
        choices=tuple(KINDS)),
    Key("steps[].name", "how it is called", T.TEXT, '"Time the cup"'),
    Key("steps[].how", "how it is done, in short lines", T.WORDS, '["Fill it level."]'),
    Key("steps[].must", "passing it over asks for a word why", T.FLAG, "true"),
)  # fmt: skip

#: What data sheets and painters also call these things (folded: no spaces, hyphens, underscores).
ALSO_CALLED: dict[str, str] = {
    "title": "name", "origin": "source", "water": "waterborne", "waterbased": "waterborne",
    "warnings": "cautions", "hazard": "hazards", "dangers": "hazards",
    "ratio": "mix.parts", "components": "mix.parts", "potlife": "mix.pot_life",
    "standing": "mix.induction", "inductiontime": "mix.induction", "sweatin": "mix.induction",
    "reducer": "mix.thinner", "reduction": "mix.thinner.usual", "maximum": "mix.thinner.limit",
    "thinning": "mix.thinner.usual", "max": "mix.thinner.limit",
    "viscosity": "efflux.target", "effluxtime": "efflux.target", "seconds": "efflux.target",
    "flowtime": "efflux.target", "temperature": "efflux.at",
    "nozzle": "gun.tip", "needle": "gun.tip", "fluidtip": "gun.tip", "tipsize": "gun.tip",
    "pressure": "gun.inlet_pressure", "airpressure": "gun.inlet_pressure",
    "inlet": "gun.inlet_pressure", "pattern": "gun.fan", "fanwidth": "gun.fan",
    "flow": "gun.delivery", "fluiddelivery": "gun.delivery", "filter": "gun.strainer",
    "metallic": "gun.coarse_metallic",
    "solids": "film.volume_solids", "vs": "film.volume_solids", "wft": "film.wet",
    "wetfilm": "film.wet", "dft": "film.dry_total", "dryfilm": "film.dry_total",
    "dry": "film.dry_total", "specificgravity": "film.density", "voc": "film.solvent_percent",
    "flash": "waits.flash_off", "flashoff": "waits.flash_off", "recoat": "waits.recoat_opens",
    "minimumrecoat": "waits.recoat_opens", "recoatmin": "waits.recoat_opens",
    "recoatmax": "waits.recoat_closes", "maximumrecoat": "waits.recoat_closes",
    "dustfree": "waits.dust_free", "handling": "waits.handle", "tackfree": "waits.handle",
    "dewpoint": "limits.dew_margin", "margin": "limits.dew_margin", "rh": "limits.humidity",
    "surface": "limits.part", "substrate": "limits.part",
}  # fmt: skip

_CHILDREN: dict[str, dict[str, Key]] = {}
for _key in KEYS:
    _CHILDREN.setdefault(_key.table, {})[_key.name] = _key


def children(table: str) -> dict[str, Key]:
    """Give the keys that stand in a table, by name; `table` as in Key.path, empty for the top."""
    return _CHILDREN.get(table, {})


def keys_text() -> str:
    """Give the reference of the format as plain text: each key, what it is, what it takes."""
    return "\n".join(_reference()) + "\n"


def _reference() -> Iterator[str]:
    yield "Keys of a coating profile (a TOML file). * must be there. All else may be missing, and"
    yield "missing means that the data sheet does not say."
    yield ""
    yield 'A quantity is a text with its unit: "28 psi", "2.5 mil", "10 min". A bare number stands'
    yield "only where a count, parts or a percentage is meant. A range is one of"
    yield '  "8 to 10 fl oz/min"   "at least 60 F"   "at most 85 %"   "1.4 mm"'
    yield '  { low = "8 fl oz/min", high = "10 fl oz/min" }'
    yield "A time that holds at a temperature is"
    yield '  { time = "10 min", at = "70 F" }'
    yield '  { table = [ { at = "60 F", time = "2 h" }, { at = "77 F", time = "1 h" } ] }'
    for key in KEYS:
        star = "*" if key.required else " "
        if key.shape in (Shape.TABLE, Shape.TABLES):
            header = f"[[{key.path[:-2]}]]" if key.shape is Shape.TABLES else f"[{key.path}]"
            yield ""
            yield f"{star} {header}  {key.says}"
            continue
        yield f"{star} {key.name} = {key.example}"
        yield f"      {key.says}{_choices(key)}"


def _choices(key: Key) -> str:
    return f": {', '.join(key.choices)}" if key.choices else ""
