"""Every key of a coating profile, once: what it takes, an example, its kind and bounds.

Reading, judging, writing and the printed list of keys all follow from these tables: a new key is one
line here and one attribute in ``profile.model``, called like the key with the unit of its kind
behind it. Bounds are in the base unit of the kind, wide enough for any shop and narrow enough to
catch a slip of the unit or a misplaced point (common practice, no source). They may be widened and
never narrowed: the profiles that logs hold are judged by them too.
"""

from __future__ import annotations

from dataclasses import replace

from booth.profile.care_keys import CARE
from booth.profile.model import (
    CoatPlan,
    Efflux,
    Film,
    Gun,
    Hardener,
    Hazard,
    Limits,
    Mix,
    MixPart,
    NextProduct,
    Profile,
    Thinner,
    Waits,
)
from booth.profile.ranges import Span
from booth.profile.step_kinds import NAMES
from booth.profile.steps import listed_steps
from booth.profile.wait_keys import wait
from booth.toml.document import Document
from booth.toml.key import Choice, Cup, Flag, Key, Text
from booth.toml.quantity import Quantity
from booth.toml.table import Many, Table, Tables
from booth.units import Kind as K

DAY_S = 86400.0
YEAR_S = 366 * DAY_S
TEN_MIN = '{ time = "10 min", at = "70 F" }'
DAY = '{ time = "24 h", at = "70 F" }'
RANGE = '{ time = "10 to 15 min", at = "70 F", humidity = "50 %" }'
MATT = '{ until = "matt all over" }'
BAKE = '{ time = "30 min", at = "140 F" }'
TABLE = '{ table = [ { at = "15 C", time = "16 h" }, { at = "25 C", time = "8 h" } ] }'

SOLVENT = Text("its main solvent, for the fresh-air figure", '"butyl acetate"', unsaid=None)
FOR = Span("the air it is for", '"15 to 25 C"', K.TEMPERATURE, -40, 100, limit=True)
WET = Span("wet film of one coat", '"2 to 2.5 mil"', K.THICKNESS, 1, 5000)
INLET = Span(
    "air at the gun inlet with the trigger pulled",
    '"26 to 30 psi"',
    K.PRESSURE,
    5,
    1400,
    attribute="inlet_kpa",
)
DISTANCE = Span("gun to surface", '"6 to 8 in"', K.LENGTH, 20, 1000)
FAN = Span("width of the fan at that distance", '"10 to 12 in"', K.LENGTH, 10, 1500)
OVERLAP = Span("overlap of the passes", '"50 to 60 %"', K.PERCENT, 0, 95, no_share=True)

WAITS: dict[str, Key] = {
    "flash_off": wait("flash-off before the next coat", RANGE, 1, YEAR_S),
    "recoat_opens": wait("a further coat may go on from then", TABLE, 1, YEAR_S),
    "recoat_closes": wait("a further coat may go on until then", DAY, 1, YEAR_S),
    "dust_free": wait("dust no longer sticks", TEN_MIN, 1, YEAR_S),
    "handle": wait("can be handled", TABLE, 1, YEAR_S),
    "tape": wait("can be taped over", DAY, 1, YEAR_S),
    "sand": wait("can be sanded", DAY, 1, YEAR_S),
    "polish": wait("can be polished", DAY, 1, YEAR_S),
    "cure": wait("has cured", '{ time = "7 d", at = "70 F" }', 1, YEAR_S),
    "before_bake": wait("stands before heat", MATT, 1, YEAR_S),
    "bake": wait("in heat, at the temperature of the part", BAKE, 1, YEAR_S),
}
PARTS = Quantity("its parts in the ratio", "2", K.RATIO, 0.001, 10000)
BY_WEIGHT = Quantity("its parts by weight, beside those by volume", "2.1", K.RATIO, 0.001, 10000)
DENSITY = Quantity("its density, to pour it by weight", '"1.05 g/ml"', K.DENSITY, 0.5, 5)
POT_LIFE = wait("how long it can be used", '{ time = "4 h", at = "70 F" }', 30, 60 * DAY_S)
PART: dict[str, Key] = {
    "name": Text("the component", '"hardener"'),
    "parts": PARTS,
    "parts_by_weight": BY_WEIGHT,
    "density": DENSITY,
}
HARDENER: dict[str, Key] = {
    "name": Text("which hardener", '"slow hardener"'),
    "for": FOR,
    "parts": replace(PARTS, says="its parts, where not those of the last component"),
    "parts_by_weight": BY_WEIGHT,
    "density": DENSITY,
    "pot_life": POT_LIFE,
    "waits": Table("the waits with it that differ", keys=WAITS, make=Waits),
}
THINNER: dict[str, Key] = {
    "name": Text("the thinner", '"medium thinner"'),
    "for": FOR,
    "usual": Span("usual thinner, percent by volume of the mix", '"10 to 15 %"', K.PERCENT, 0, 300),
    "limit": Quantity("most thinner, percent by volume of the mix", "15", K.PERCENT, 0, 300),
    "when": Choice(
        "when it goes in, where the mix has an induction",
        '"after induction"',
        ("before induction", "after induction"),
    ),
    "viscosity": Quantity("its kinematic viscosity", '"0.9 mm2/s"', K.VISCOSITY, 0.1, 1000),
    "density": Quantity("its density", '"0.87 g/ml"', K.DENSITY, 0.5, 2),
    "solvent": SOLVENT,
}
MIX: dict[str, Key] = {
    "by": Choice("whether parts are by volume or by weight", '"volume"', ("volume", "weight")),
    "induction": wait("how long it stands before use", '"15 min"', 1, 7 * DAY_S, bare=True),
    "pot_life": POT_LIFE,
    "parts": Tables("the components, in the order of pouring", one=Table(keys=PART, make=MixPart)),
    "hardeners": Tables(
        "hardeners to choose from for the last component", one=Table(keys=HARDENER, make=Hardener)
    ),
    "thinner": Table("the thinner", keys=THINNER, make=Thinner),
    "thinners": Tables("other thinners, by the air", one=Table(keys=THINNER, make=Thinner)),
}
EFFLUX: dict[str, Key] = {
    "cup": Cup("the flow cup", '"Ford #4"'),
    # Efflux times are told in seconds, however long they are.
    "target": Span("efflux time ready to spray", '"20 to 24 s"', K.TIME, 1, 3600, unit="s"),
    "at": Quantity("temperature of the liquid", '"25 C"', K.TEMPERATURE, -10, 90),
}
GUN: dict[str, Key] = {
    "tip": Span("tip", '"1.3 to 1.4 mm"', K.TIP, 0.1, 6),
    "inlet_pressure": INLET,
    "distance": DISTANCE,
    "fan": FAN,
    "overlap": OVERLAP,
    "delivery": Span("fluid delivery", '"8 to 10 fl oz/min"', K.DELIVERY, 5, 6000),
    "hvlp": Flag("high volume, low pressure", "true"),
    "coarse_metallic": Flag("flakes that a cup's own filter holds back", "true"),
    "strainer": Quantity("its opening", '"190 um"', K.THICKNESS, 10, 2000, unit="um"),
}
FILM: dict[str, Key] = {
    "coats": Span("number of coats", '"2 to 3"', K.COUNT, 1, 50, closed=True),
    "volume_solids": Span(
        "volume solids of the mix, not thinned", '"40 to 44 %"', K.PERCENT, 1, 100
    ),
    "wet": WET,
    "dry_total": Span("dry film of all coats together", '"2 to 2.4 mil"', K.THICKNESS, 0.5, 10000),
    "density": Quantity("density of the mix, not thinned", '"1.02 g/ml"', K.DENSITY, 0.5, 5),
    "solvent_percent": Quantity("solvent in the mix by volume, no water", "50", K.PERCENT, 0, 100),
    "solvent": SOLVENT,
}
COAT: dict[str, Key] = {
    "name": Text("what it is called", '"drop coat"'),
    "times": Span(
        "how often; until hidden: usual and most", '"2 to 4"', K.COUNT, 1, 50, closed=True
    ),
    "until_hidden": Flag("as often as it takes to hide", "true"),
    "wet": WET,
    "inlet_pressure": INLET,
    "distance": DISTANCE,
    "overlap": OVERLAP,
    "fan": FAN,
    "wait": wait("between it and the next one", MATT, 1, YEAR_S),
}
NEXT: dict[str, Key] = {
    "name": Text("which product; any where it is missing", '"two-pack clear"'),
    "opens": wait("it may go on from then", TABLE, 1, YEAR_S),
    "closes": wait("it may go on until then", '{ time = "6 h", at = "70 F" }', 1, YEAR_S),
    "or_after": wait("and again from then", '{ time = "72 h", at = "70 F" }', 1, YEAR_S),
    "abrade_after": wait("from then on over an abraded film only", DAY, 1, YEAR_S),
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
    "film": Table("what the film is to be", keys=FILM, make=Film, unsaid=Film()),
    "coats": Tables(
        "the coats one by one, instead of film.coats", one=Table(keys=COAT, make=CoatPlan)
    ),
    "waits": Table("the waits after a coat", keys=WAITS, make=Waits, unsaid=Waits()),
    "next_product": Tables(
        "when another product may go on",
        one=Table(keys=NEXT, make=NextProduct),
        attribute="next_products",
    ),
    "limits": Table("the weather it can be sprayed in", keys=LIMITS, make=Limits, unsaid=Limits()),
    "steps": Tables(
        "the steps of the job, instead of the usual ones", one=STEPS, make=listed_steps
    ),
    **CARE,
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
    "mix.hardeners": "hardener activator activators catalyst catalysts",
    "mix.parts.parts_by_weight": "byweight weightparts",
    "mix.hardeners.for": "temperature",
    "mix.thinner": "reducer",
    "mix.thinner.when": "time added",
    "mix.thinners": "reducers",
    "mix.thinners.for": "temperature",
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
    "coats.until_hidden": "hiding tohiding untilhiding",
    "coats.wait": "flash flashoff",
    "waits.flash_off": "flash flashoff",
    "waits.recoat_opens": "recoat minimumrecoat recoatmin",
    "waits.recoat_closes": "recoatmax maximumrecoat",
    "waits.dust_free": "dustfree",
    "waits.handle": "handling tackfree",
    "waits.tape": "taping masking",
    "waits.sand": "sanding sandable",
    "waits.polish": "polishing",
    "waits.cure": "curing fullcure throughcure",
    "waits.before_bake": "beforebake beforeheat flashbeforebake",
    "waits.bake": "baking stoving forcedry",
    "next_product": "overcoating overcoat topcoat nextproduct",
    "next_product.opens": "minimum min",
    "next_product.closes": "maximum max",
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
  "8 to 10 fl oz/min"   "at least 60 F"   "at most 85 %"   "1.4 mm"   "1 to 2"   2
  { low = "8 fl oz/min", high = "10 fl oz/min" }
A wait is a time that holds at a temperature (and a humidity), a table of them (coldest first, then
driest first), or goes on until a sign shows; the sign may stand beside a time
  { time = "10 min", at = "70 F" }
  { time = "10 to 15 min", at = "70 F", humidity = "50 %" }
  { table = [ { at = "60 F", time = "2 h" }, { at = "77 F", time = "1 h" } ] }
  { until = "matt all over" }   { time = "10 min", at = "70 F", until = "matt all over" }
Only where the sheet names no temperature for an induction time it is a text: "15 min"."""

PROFILE = Document("a coating profile", Table(keys=TOP, make=Profile), ALSO_CALLED, INTRO)
#: What a profile can hold, by path: the least and the most, in the base unit of the key's kind.
BOUNDS = {
    path: (key.low, key.high) for path, key in PROFILE.keys.items() if isinstance(key, Quantity)
}
