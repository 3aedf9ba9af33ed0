"""The units understood, the words painters write for them, their names in the registry.

A word means what the field makes of it: an ``oz`` is a fluid ounce in a volume or a delivery and a
weight in a weight field. Only names written in this table ever reach the registry.
"""

from __future__ import annotations

import re
from functools import cache

import msgspec

from booth.units.kinds import Dimension as D


class Unit(msgspec.Struct, frozen=True):
    """One unit.

    key: plain name, as in a log; name: as shown; registry: its name there (atoms only);
    over: numerator and denominator (quotients only).
    """

    key: str
    dimension: D
    name: str
    registry: str = ""
    over: tuple[Unit, Unit] | None = None


#: dimension: key = shown name = name in the registry: words beside key and shown name. Conversions run
#: through the first of a dimension; that of a quotient is the quotient of two of these.
_ATOMS = {
    D.VOLUME: """\
ml = ml = milliliter: cc|cm3|cu cm|milliliter|milliliters|millilitre|millilitres
l = l = liter: lt|ltr|liter|liters|litre|litres|dm3
cl = cl = centiliter: centiliter|centiliters|centilitre|centilitres
dl = dl = deciliter: deciliter|deciliters|decilitre|decilitres
fl oz = fl oz = fluid_ounce: oz|ozs|ounce|ounces|floz|oz fl|fl ounce|fl ounces|fluid oz|fluid ounce
|fluid ounces|us fl oz|us oz|us fluid ounce|us fluid ounces
pt = pt = pint: pts|pint|pints|us pt|us pint|us pints
qt = qt = quart: qts|quart|quarts|us qt|us quart|us quarts
gal = gal = gallon: gals|gallon|gallons|us gal|us gallon|us gallons
in3 = in³ = inch ** 3: cu in|cubic in|cubic inch|cubic inches
ft3 = ft³ = foot ** 3: cu ft|cuft|cf|cubic ft|cubic foot|cubic feet
yd3 = yd³ = yard ** 3: cu yd|cubic yard|cubic yards
m3 = m³ = meter ** 3: cu m|cbm|cubic m|cubic meter|cubic meters|cubic metre|cubic metres
""",
    D.MASS: """\
g = g = gram: gm|gms|gram|grams|gramme|grammes
kg = kg = kilogram: kgs|kilo|kilos|kilogram|kilograms
mg = mg = milligram: milligram|milligrams
oz wt = oz wt = ounce: oz|ozs|ounce|ounces|wt oz|oz weight|ounce weight|ounces weight|weight ounce
|weight ounces|oz avdp|avdp oz|oz av
lb = lb = pound: lbs|pound|pounds
""",
    D.TIME: """\
s = s = second: sec|secs|second|seconds
min = min = minute: m|mn|mins|minute|minutes
h = h = hour: hr|hrs|hour|hours
d = d = day: day|days
wk = wk = week: week|weeks|wks
""",
    D.TEMPERATURE: """\
degC = °C = degree_Celsius: c|c°|° c|deg c|celsius|centigrade|degree c|degrees c|degree celsius
|degrees celsius
degF = °F = degree_Fahrenheit: f|f°|° f|deg f|fahrenheit|degree f|degrees f|degree fahrenheit
|degrees fahrenheit
K = K = kelvin: kelvin|kelvins
""",
    D.DIFFERENCE: """\
delta_degC = °C = delta_degree_Celsius: c|degc|° c|c°|deg c|celsius|degree c|degrees c
|degree celsius|degrees celsius|k|kelvin|kelvins
delta_degF = °F = delta_degree_Fahrenheit: f|degf|° f|f°|deg f|fahrenheit|degree f|degrees f
|degree fahrenheit|degrees fahrenheit
""",
    D.PRESSURE: """\
kPa = kPa = kilopascal: kilopascal|kilopascals
Pa = Pa = pascal: pascal|pascals
hPa = hPa = hectopascal: hectopascal
MPa = MPa = megapascal: megapascal|megapascals
bar = bar = bar: bars|barg|bar g|bar(g)
mbar = mbar = millibar: millibar|millibars
psi = psi = pound_force_per_square_inch: psig|psi g|psi(g)|lb/in2|lbs/in2|lbf/in2|lb/sq in|lbs/sq in
|pounds/sq in|pounds/square inch|lb|lbs|pound|pounds|#
kgf/cm2 = kgf/cm² = kilogram_force / centimeter ** 2: kg/cm2|kp/cm2
""",
    D.LENGTH: """\
mm = mm = millimeter: millimeter|millimeters|millimetre|millimetres
um = µm = micrometer: u|micron|microns|micrometer|micrometers|micrometre|micrometres
mil = mil = shop_mil: mils|thou|thous
cm = cm = centimeter: centimeter|centimeters|centimetre|centimetres
m = m = meter: meter|meters|metre|metres
in = in = inch: inch|inches|ins|"
ft = ft = foot: foot|feet|'
yd = yd = yard: yds|yard|yards
""",
    D.AREA: """\
m2 = m² = meter ** 2: sq m|sqm|square m|square meter|square meters|square metre|square metres
mm2 = mm² = millimeter ** 2: sq mm|square mm
cm2 = cm² = centimeter ** 2: sq cm|square cm
in2 = in² = inch ** 2: sq in|sqin|square in|square inch|square inches
ft2 = ft² = foot ** 2: sq ft|sqft|square ft|square foot|square feet|sf
yd2 = yd² = yard ** 2: sq yd|square yard|square yards
""",
    D.KINEMATIC: """\
m2/s = m²/s = meter ** 2 / second:
cSt = cSt = centistokes: centistoke|centistokes
St = St = stokes: stoke|stokes
""",
    D.DYNAMIC: """\
cP = cP = centipoise: cps|centipoise
P = P = poise: poise
mPa s = mPa s = millipascal * second: mpas|mpa.s|mpa*s|mpa·s
Pa s = Pa s = pascal * second: pas|pa.s|pa*s|pa·s
""",
    D.FRACTION: """\
 =  = dimensionless:
% = % = percent: percent|pct
""",
    D.TURN: """\
turns = turns = turn: turn|rev|revs|revolution|revolutions
deg = ° = degree: degree|degrees
""",
    D.NUMBER: """\
 =  = dimensionless: x|coat|coats|part|parts|piece|pieces|pc|pcs
""",
}

#: dimension: those of its numerator and denominator
_QUOTIENTS = {
    D.FLOW: (D.VOLUME, D.TIME),
    D.SPEED: (D.LENGTH, D.TIME),
    D.DENSITY: (D.MASS, D.VOLUME),
    D.KINEMATIC: (D.AREA, D.TIME),
}

#: Short forms of the trade for quotients.
SHORT = {
    D.FLOW: {
        "cfm": "ft3/min",
        "scfm": "ft3/min",
        "lpm": "l/min",
        "slpm": "l/min",
        "gpm": "gal/min",
        "cfh": "ft3/h",
        "ccm": "ml/min",
    },
    D.SPEED: {"fpm": "ft/min", "ips": "in/s", "fps": "ft/s"},
    D.DENSITY: {"ppg": "lb/gal"},
}

#: How a quotient is called where the trade has its own name for it.
_CALLED = {"ft3/min": "cfm"}

#: How a word was taken that may have meant something else.
_NOTES = (
    (D.VOLUME, "oz ozs ounce ounces", "oz taken as US fluid ounce"),
    (D.MASS, "oz ozs ounce ounces", "oz taken as ounce of weight"),
    (D.VOLUME, "pt pts pint pints qt qts quart quarts", "US liquid measure"),
    (D.VOLUME, "gal gals gallon gallons", "US liquid measure"),
    (D.PRESSURE, "lb lbs pound pounds #", "pounds taken as psi"),
    (D.FLOW, "scfm", "taken as cfm of free air, whatever standard conditions were meant"),
    (D.FLOW, "slpm", "taken as l/min of free air, whatever standard conditions were meant"),
)


def tidy(word: str) -> str:
    """Give the one way in which `word` is looked up: no dots, no needless blanks, ``/`` for per."""
    word = word.replace("per cent", "percent").replace("''", '"')
    word = re.sub(r"\bper\b", "/", word).replace("**", "").replace("^", "").replace(".", " ")
    word = " ".join(word.split())
    return re.sub(r" ?([/*·]) ?", r"\1", word).strip()


@cache
def words_of(dimension: D) -> dict[str, Unit]:
    """Give the words of one dimension, made when first asked for: nothing is paid at import."""
    words: dict[str, Unit] = {}
    for line in _ATOMS.get(dimension, "").replace("\n|", "|").splitlines():
        names, _, others = line.partition(":")
        key, name, registry = (part.strip() for part in names.split("="))
        unit = Unit(key, dimension, name, registry)
        for word in (key, name, *others.split("|")):
            # The table is looked up with text that was folded the way an entry is.
            folded = word.lower().replace("²", "2").replace("³", "3").replace("µ", "u")
            words.setdefault(tidy(folded), unit)
    return words


def first_of(dimension: D) -> Unit:
    """Give the unit of `dimension` through which conversions run."""
    return next(iter(words_of(dimension).values()))


def find(word: str, dimension: D) -> Unit | None:
    """Give the unit of `dimension` that `word` (tidied) means, if any."""
    word = SHORT.get(dimension, {}).get(word, word)
    atom = words_of(dimension).get(word)
    if atom is not None or dimension not in _QUOTIENTS:
        return atom
    above, slash, below = word.partition("/")
    numerator = find(above, _QUOTIENTS[dimension][0]) if slash else None
    denominator = find(below, _QUOTIENTS[dimension][1]) if slash else None
    if numerator is None or denominator is None or not above or not below:
        return None
    key = f"{numerator.key}/{denominator.key}"
    name = _CALLED.get(key, f"{numerator.name}/{denominator.name}")
    return Unit(key, dimension, name, over=(numerator, denominator))


def unit_named(key: str, dimension: D) -> Unit:
    """Give the unit that this program itself calls `key`; KeyError when there is none."""
    unit = find(key.lower(), dimension)
    if unit is None:
        raise KeyError(key)
    return unit


def note(word: str, dimension: D) -> str:
    """Give what a painter should know about how `word` was taken; empty when it is plain."""
    for measures, words, told in _NOTES:
        if measures is dimension and word in words.split():
            return told
    if "/" not in word or dimension not in _QUOTIENTS:
        return ""
    above, _, below = word.partition("/")
    numerator, denominator = _QUOTIENTS[dimension]
    return note(above, numerator) or note(below, denominator)


def dimensions_of(word: str) -> tuple[D, ...]:
    """Give every dimension in which `word` is a unit: what an entry may have meant instead."""
    return tuple(d for d in D if word and find(word, d) is not None)
