"""Every key of the shop file, once: what it takes, its kind and bounds, its label on a form.

Reading, judging, writing, the printed list of keys and the forms all follow from these tables: a new
key is one line here and the attribute of ``shop.model`` that holds it; what it says is told beside
its row.
Bounds are wide enough for any shop and narrow enough to catch a slip of the unit (common practice,
no source), but for the correction, whose bounds are those of ``trade.cups``.
"""

from __future__ import annotations

from booth.shop.model import Compressor, Gun, OwnCup, Room, Shop
from booth.toml.document import Document
from booth.toml.key import Choice, Cup, Flag, Key, Text
from booth.toml.quantity import Quantity
from booth.toml.table import Table, Tables
from booth.units import Kind as K
from booth.units import System

GUN: dict[str, Key] = {
    "name": Text("its name in the shop, by which jobs keep it", '"clear gun"', tidy=True),
    "tip": Quantity("its tip", '"1.4 mm"', K.TIP, 0.1, 6),
    "cup": Quantity("what its cup holds", '"20 fl oz"', K.VOLUME, 5, 20000, label="Cup holds"),
    "air": Quantity(
        "free air, trigger pulled", '"10 cfm"', K.AIR_FLOW, 1, 10000, label="Air demand"
    ),
    "at": Quantity(
        "the pressure it needs that air at",
        '"29 psi"',
        K.PRESSURE,
        5,
        1400,
        attribute="inlet_kpa",
        label="at inlet",
    ),
    "needle_turns": Quantity(
        "turns, shut to open", '"3 1/2 turns"', K.TURNS, 0.1, 30, label="Needle"
    ),
    "fan_turns": Quantity("turns, shut to open", '"3 turns"', K.TURNS, 0.1, 30, label="Fan"),
    "hvlp": Flag("high volume, low pressure", "true", label="HVLP"),
}
CUP: dict[str, Key] = {
    "cup": Cup("which cup it is", '"Zahn #2"', keeps="key"),
    "correction": Quantity(
        "true time = time read x this; none is 1", "1.02", K.RATIO, 0.5, 2, unsaid=1.0
    ),
    "note": Text("how the correction was found, or where the cup hangs", '"checked with oil"'),
}
COMPRESSOR: dict[str, Key] = {
    "receiver": Quantity("volume of the receiver", '"60 gal"', K.RECEIVER, 2, 2000),
    "flow": Quantity(
        "free air, not what the pump displaces", '"11 cfm"', K.AIR_FLOW, 1, 50000, label="Delivers"
    ),
    "cut_in": Quantity("cut-in pressure", '"115 psi"', K.PRESSURE, 50, 4000, label="Starts at"),
    "cut_out": Quantity("cut-out pressure", '"145 psi"', K.PRESSURE, 50, 4000, label="Stops at"),
    "duty": Quantity(
        "share of the time it may run", '"60 %"', K.PERCENT, 5, 100, label="Rated duty"
    ),
}
ROOM: dict[str, Key] = {
    "volume": Quantity("the volume of the room", '"3500 ft3"', K.ROOM, 1, 1e5),
    # The model keeps it in m3/min, its kind in m3/h.
    "exhaust": Quantity(
        "what it moves, measured if it can be",
        '"1200 cfm"',
        K.EXHAUST,
        6,
        3e5,
        per=60.0,
        attribute="exhaust_m3_min",
    ),
    "open_face": Quantity("of the booth", '"56 sq ft"', K.AREA, 0.1, 500, attribute="face_m2"),
    "readings": Text(
        "file with a sensor's temperature and humidity", '"room.json"', label="Sensor file"
    ),
}
TOP: dict[str, Key] = {
    "units": Choice("the units preferred", '"us"', tuple(System), unsaid="", attribute="system"),
    "cards": Text("folder into which the cards of jobs are written", '"~/cards"', unsaid=""),
    "gun": Tables("a spray gun, once for each", one=Table(keys=GUN, make=Gun), attribute="guns"),
    "cup": Tables(
        "a flow cup the painter owns, once for each",
        one=Table(keys=CUP, make=OwnCup),
        attribute="cups",
    ),
    "compressor": Table("the compressor", keys=COMPRESSOR, make=Compressor),
    "room": Table("the room in which is sprayed", keys=ROOM, make=Room),
}

#: What painters also call these things (no spaces, hyphens, underscores).
ALSO_CALLED: dict[str, str] = {
    "units": "system",
    "cards": "sheets printfolder",
    "gun": "guns",
    "gun.name": "title",
    "gun.tip": "nozzle tipsize fluidtip",
    "gun.cup": "capacity",
    "gun.air": "airflow demand consumption cfm",
    "gun.at": "inlet inletpressure pressure",
    "gun.needle_turns": "needle",
    "gun.fan_turns": "fan",
    "cup": "cups",
    "cup.cup": "type",
    "cup.correction": "factor",
    "cup.note": "note",
    "compressor.receiver": "tank",
    "compressor.flow": "delivered delivery",
    "compressor.cut_in": "start",
    "compressor.cut_out": "stop",
    "compressor.duty": "dutycycle rating",
    "room.exhaust": "fanflow extraction",
    "room.open_face": "face openface",
    "room.readings": "sensor sensorfile logger",
    "room.volume": "size",
}

INTRO = """\
Keys of the shop file, shop.toml. * must be there where its table is; all else may be
missing. A quantity is a text with its unit. A gun is a table [[gun]], a cup [[cup]]."""

SHOP = Document("a shop file", Table(keys=TOP, make=Shop), ALSO_CALLED, INTRO)
