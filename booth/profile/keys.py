"""Every key of a coating profile, once: what it takes, an example, its kind and bounds.

Reading, judging, writing and the printed list of keys all follow from these tables: a new key is one
line here and one attribute in ``profile.model``, called like the key with the unit of its kind
behind it. Bounds are in the base unit of the kind, wide enough for any shop and narrow enough to
catch a slip of the unit or a misplaced point (common practice, no source). They may be widened and
never narrowed: the profiles that logs hold are judged by them too.
"""

from __future__ import annotations

from booth.profile.model import (
    Efflux,
    Film,
    Gun,
    Hazard,
    Limits,
    Mix,
    MixPart,
    Profile,
    Thinner,
    Waits,
)
from booth.profile.ranges import Span, time_at, wait
from booth.profile.step_kinds import NAMES
from booth.profile.steps import listed_steps
from booth.toml.document import Document
from booth.toml.key import Choice, Cup, Flag, Key, Text
from booth.toml.quantity import Quantity
from booth.toml.table import Many, Table, Tables
from booth.units import Kind as K

__all__ = ["BOUNDS", "PROFILE"]

DAY_S = 86400.0
YEAR_S = 366 * DAY_S
TEN_MIN = '{ time = "10 min", at = "70 F" }'
DAY = '{ time = "24 h", at = "70 F" }'
TABLE = '{ table = [ { at = "15 C", time = "16 h" }, { at = "25 C", time = "8 h" } ] }'

SOLVENT = Text("its main solvent, for the fresh-air figure", '"butyl acetate"', unsaid=None)

PART: dict[str, Key] = {
    "name": Text("the component", '"hardener"'),
    "parts": Quantity("its parts in the ratio", "2", K.RATIO, 0.001, 10000),
    "density": Quantity("its density, to pour it by weight", '"1.05 g/ml"', K.DENSITY, 0.5, 5),
}
THINNER: dict[str, Key] = {
    "name": Text("the thinner", '"medium thinner"'),
    "usual": Quantity("usual thinner, percent by volume of the mix", "10", K.PERCENT, 0, 300),
    "limit": Quantity("most thinner, percent by volume of the mix", "15", K.PERCENT, 0, 300),
    "viscosity": Quantity("its kinematic viscosity", '"0.9 mm2/s"', K.VISCOSITY, 0.1, 1000),
    "density": Quantity("its density", '"0.87 g/ml"', K.DENSITY, 0.5, 2),
    "solvent": SOLVENT,
}
MIX: dict[str, Key] = {
    "by": Choice("whether parts are by volume or by weight", '"volume"', ("volume", "weight")),
    "induction": Quantity("how long it stands before use", '"15 min"', K.TIME, 1, 7 * DAY_S),
    "pot_life": time_at("how long it can be used", '{ time = "4 h", at = "70 F" }', 30, 60 * DAY_S),
    "parts": Tables("the components, in the order of pouring", one=Table(keys=PART, make=MixPart)),
    "thinner": Table("the thinner", keys=THINNER, make=Thinner),
}
EFFLUX: dict[str, Key] = {
    "cup": Cup("the flow cup", '"Ford #4"'),
    # Efflux times are told in seconds, however long they are.
    "target": Span("efflux time ready to spray", '"20 to 24 s"', K.TIME, 1, 3600, unit="s"),
    "at": Quantity("temperature of the liquid", '"25 C"', K.TEMPERATURE, -10, 90),
}
GUN: dict[str, Key] = {
    "tip": Span("fluid tip", '"1.3 to 1.4 mm"', K.TIP, 0.1, 6),
    "inlet_pressure": Span(
        "air at the gun inlet with the trigger pulled",
        '"26 to 30 psi"',
        K.PRESSURE,
        5,
        1400,
        attribute="inlet_kpa",
    ),
    "distance": Span("gun to surface", '"6 to 8 in"', K.LENGTH, 20, 1000),
    "fan": Span("width of the fan at that distance", '"10 to 12 in"', K.LENGTH, 10, 1500),
    "overlap": Quantity("overlap of the passes", "50", K.PERCENT, 0, 95, no_share=True),
    "delivery": Span("fluid delivery", '"8 to 10 fl oz/min"', K.DELIVERY, 5, 6000),
    "hvlp": Flag("high volume, low pressure", "true"),
    "coarse_metallic": Flag("flakes that a cup's own filter holds back", "true"),
    "strainer": Quantity("its opening", '"190 um"', K.THICKNESS, 10, 2000, unit="um"),
}
FILM: dict[str, Key] = {
    "coats": Quantity("number of coats", "2", K.COUNT, 1, 50),
    "volume_solids": Quantity("volume solids of the mix, not thinned", "42", K.PERCENT, 1, 100),
    "wet": Span("wet film of one coat", '"2 to 2.5 mil"', K.THICKNESS, 1, 5000),
    "dry_total": Span("dry film of all coats together", '"2 to 2.4 mil"', K.THICKNESS, 0.5, 10000),
    "density": Quantity("density of the mix, not thinned", '"1.02 g/ml"', K.DENSITY, 0.5, 5),
    "solvent_percent": Quantity("solvent in the mix by volume, no water", "50", K.PERCENT, 0, 100),
    "solvent": SOLVENT,
}
WAITS: dict[str, Key] = {
    "flash_off": wait("flash-off before the next coat", TEN_MIN, 1, YEAR_S),
    "recoat_opens": wait("the recoat window opens", TEN_MIN, 1, YEAR_S),
    "recoat_closes": wait("the recoat window closes", DAY, 1, YEAR_S),
    "dust_free": wait("dust no longer sticks", TEN_MIN, 1, YEAR_S),
    "handle": wait("can be handled", TABLE, 1, YEAR_S),
}
LIMITS: dict[str, Key] = {
    "air": Span("air temperature", '"60 to 90 F"', K.TEMPERATURE, -40, 100, limit=True),
    "part": Span("temperature of the part", '"at least 60 F"', K.TEMPERATURE, -40, 250, limit=True),
    "humidity": Span("relative humidity", '"at most 85 %"', K.PERCENT, 0, 100, limit=True),
    "dew_margin": Quantity("part above dew point", '"3 C"', K.TEMPERATURE_DIFFERENCE, 0, 30),
}
STEP: dict[str, Key] = {
    "kind": Choice("which instrument serves it", '"efflux"', tuple(NAMES)),
    "name": Text("how it is called", '"Time the cup"'),
    "how": Many("how it is done, in short lines", '["Fill it level."]'),
    # Written in any case: what it is where it is missing follows from the kind.
    "must": Flag("passing it over asks for a word why", "true", unsaid=None),
}


def _hazards(words: list[str]) -> tuple[Hazard, ...]:
    return tuple(Hazard(word) for word in words)


HAZARD = Choice(choices=tuple(Hazard))
STEPS = Table(keys=STEP, needs=("kind",))
TOP: dict[str, Key] = {
    "name": Text("what the painter calls it", '"Two-pack clear, medium"'),
    "product": Text("what stands on the can", '"High-build two-pack clear"'),
    "source": Text("where these numbers come from", '"data sheet, issue 4"'),
    "demo": Flag("invented values, for trying the program", "true"),
    "waterborne": Flag("thinned with water", "true"),
    "notes": Many("what else the data sheet says", '["Stir, do not shake."]'),
    "hazards": Many(
        "each brings its cautions", '["flammable"]', one=HAZARD, make=_hazards, once=True
    ),
    "cautions": Many("the data sheet's own warnings, word for word", '["Harms the eyes."]'),
    "mix": Table("how it is mixed and thinned", keys=MIX, make=Mix),
    "efflux": Table("the efflux time to thin to", keys=EFFLUX, make=Efflux),
    "gun": Table("settings of the gun", keys=GUN, make=Gun, unsaid=Gun()),
    "film": Table("what the film is to be", keys=FILM, make=Film),
    "waits": Table("the waits after a coat", keys=WAITS, make=Waits, unsaid=Waits()),
    "limits": Table("the weather it can be sprayed in", keys=LIMITS, make=Limits, unsaid=Limits()),
    "steps": Tables(
        "the steps of the job, instead of the usual ones", one=STEPS, make=listed_steps
    ),
}
#: What data sheets and painters also call these things (no spaces, hyphens, underscores).
ALSO_CALLED: dict[str, str] = {
    "name": "title",
    "source": "origin",
    "waterborne": "water waterbased",
    "cautions": "warnings",
    "hazards": "hazard dangers",
    "mix.parts": "ratio components",
    "mix.pot_life": "potlife",
    "mix.induction": "standing inductiontime sweatin",
    "mix.thinner": "reducer",
    "mix.thinner.usual": "reduction thinning",
    "mix.thinner.limit": "maximum max",
    "efflux.target": "viscosity effluxtime seconds flowtime",
    "efflux.at": "temperature",
    "gun.tip": "nozzle needle fluidtip tipsize",
    "gun.inlet_pressure": "pressure airpressure inlet",
    "gun.fan": "pattern fanwidth",
    "gun.delivery": "flow fluiddelivery",
    "gun.strainer": "filter",
    "gun.coarse_metallic": "metallic",
    "film.volume_solids": "solids vs",
    "film.wet": "wft wetfilm",
    "film.dry_total": "dft dryfilm dry",
    "film.density": "specificgravity",
    "film.solvent_percent": "voc",
    "waits.flash_off": "flash flashoff",
    "waits.recoat_opens": "recoat minimumrecoat recoatmin",
    "waits.recoat_closes": "recoatmax maximumrecoat",
    "waits.dust_free": "dustfree",
    "waits.handle": "handling tackfree",
    "limits.dew_margin": "dewpoint margin",
    "limits.humidity": "rh",
    "limits.air": "temperature ambient",
    "limits.part": "surface substrate",
}

INTRO = """\
Keys of a coating profile (a TOML file). * must be there. All else may be missing, and
missing means that the data sheet does not say.

A quantity is a text with its unit: "28 psi", "2.5 mil", "10 min", or in the units of the other
system: "2 bar", "60 um". A bare number stands only where a count, parts or a percentage is meant.
A range is one of
  "8 to 10 fl oz/min"   "at least 60 F"   "at most 85 %"   "1.4 mm"
  { low = "8 fl oz/min", high = "10 fl oz/min" }
A time that holds at a temperature is
  { time = "10 min", at = "70 F" }
  { table = [ { at = "60 F", time = "2 h" }, { at = "77 F", time = "1 h" } ] }"""

PROFILE = Document("a coating profile", Table(keys=TOP, make=Profile), ALSO_CALLED, INTRO)
#: What a profile can hold, by path: the least and the most, in the base unit of the key's kind.
BOUNDS = {
    path: (key.low, key.high) for path, key in PROFILE.keys.items() if isinstance(key, Quantity)
}
