"""Every key of the shop file, once: what it is, what it takes, an example, its bounds.

The reader, the writer, the 'did you mean' and the printed list of keys are all made from this table.
"""

from __future__ import annotations

from collections.abc import Iterator

from booth.profile.keys import Key, Shape
from booth.units import Kind, System

__all__ = ["ALSO_CALLED", "KEYS", "children", "key_of", "keys_text"]

K = Kind
T = Shape

#: Bounds are wide enough for any shop and narrow enough to catch a slip of the unit (common
#: practice, no source), but for the correction, whose bounds are those of ``trade.cups``.
KEYS: tuple[Key, ...] = (
    Key("units", "the units preferred", T.CHOICE, '"us"', choices=tuple(System)),

    Key("gun[]", "a spray gun, once for each", T.TABLES),
    Key("gun[].name", "what it is called in the shop", T.TEXT, '"clear gun"', required=True),
    Key("gun[].tip", "its fluid tip", T.QUANTITY, '"1.4 mm"', K.TIP, 0.1, 6),
    Key("gun[].cup", "what its cup holds", T.QUANTITY, '"20 fl oz"', K.VOLUME, 5, 20000),
    Key("gun[].air", "its demand of free air, trigger pulled", T.QUANTITY, '"10 cfm"',
        K.AIR_FLOW, 1, 10000),
    Key("gun[].at", "the inlet pressure at which it needs that", T.QUANTITY, '"29 psi"',
        K.PRESSURE, 5, 1400),
    Key("gun[].needle_turns", "turns of the needle from shut to fully open", T.QUANTITY,
        '"3 1/2 turns"', K.TURNS, 0.1, 30),
    Key("gun[].fan_turns", "turns of the fan from shut to fully open", T.QUANTITY, '"3 turns"',
        K.TURNS, 0.1, 30),
    Key("gun[].hvlp", "high volume, low pressure", T.FLAG, "true"),

    Key("cup[]", "a flow cup the painter owns, once for each", T.TABLES),
    Key("cup[].cup", "which cup it is", T.CUP, '"Zahn #2"', required=True),
    Key("cup[].correction", "its own factor: true efflux time = time read x correction", T.PARTS,
        "1.02", low=0.5, high=2.0),
    Key("cup[].note", "how the correction was found, or where the cup hangs", T.TEXT,
        '"checked with oil of known viscosity"'),

    Key("compressor", "the compressor", T.TABLE),
    Key("compressor.receiver", "volume of the receiver", T.QUANTITY, '"60 gal"', K.RECEIVER, 2,
        2000, required=True),
    Key("compressor.flow", "free air it delivers, not what its pump displaces", T.QUANTITY,
        '"11 cfm"', K.AIR_FLOW, 1, 50000, required=True),
    Key("compressor.cut_in", "pressure at which it starts", T.QUANTITY, '"115 psi"', K.PRESSURE, 50,
        4000, required=True),
    Key("compressor.cut_out", "pressure at which it stops", T.QUANTITY, '"145 psi"', K.PRESSURE, 50,
        4000, required=True),

    Key("room", "the room in which is sprayed", T.TABLE),
    Key("room.volume", "its volume", T.QUANTITY, '"3500 ft3"', K.ROOM, 1, 1e5),
    Key("room.exhaust", "what the exhaust moves, measured if it can be", T.QUANTITY, '"1200 cfm"',
        K.AIR_FLOW, 100, 5e6),
    Key("room.open_face", "the open face of the booth", T.QUANTITY, '"56 sq ft"', K.AREA, 0.1, 500),
)  # fmt: skip

#: What painters also call these things (folded: no spaces, hyphens, underscores).
ALSO_CALLED: dict[str, str] = {
    "system": "units", "guns": "gun", "cups": "cup", "title": "gun.name",
    "nozzle": "gun.tip", "tipsize": "gun.tip", "fluidtip": "gun.tip", "capacity": "gun.cup",
    "airflow": "gun.air", "demand": "gun.air", "consumption": "gun.air", "cfm": "gun.air",
    "inlet": "gun.at", "inletpressure": "gun.at", "pressure": "gun.at",
    "needle": "gun.needle_turns", "fan": "gun.fan_turns",
    "factor": "cup.correction", "type": "cup.cup",
    "tank": "compressor.receiver", "delivered": "compressor.flow", "delivery": "compressor.flow",
    "start": "compressor.cut_in", "stop": "compressor.cut_out",
    "fanflow": "room.exhaust", "extraction": "room.exhaust", "face": "room.open_face",
    "openface": "room.open_face", "size": "room.volume", "note": "cup.note",
}  # fmt: skip

_BY_PATH = {key.path: key for key in KEYS}
_CHILDREN: dict[str, dict[str, Key]] = {}
for _key in KEYS:
    _CHILDREN.setdefault(_key.table, {})[_key.name] = _key


def children(table: str) -> dict[str, Key]:
    """Give the keys that stand in a table, by name; `table` as in Key.path, empty for the top."""
    return _CHILDREN.get(table, {})


def key_of(path: str) -> Key:
    """Give the key of this path, as in ``gun[].tip``."""
    return _BY_PATH[path]


def keys_text() -> str:
    """Give the reference of the shop file as plain text: each key, what it is, what it takes."""
    return "\n".join(_reference()) + "\n"


def _reference() -> Iterator[str]:
    yield "Keys of the shop file, shop.toml. * must be there where its table is; all else may be"
    yield "missing. A quantity is a text with its unit. A gun is a table [[gun]], a cup [[cup]]."
    for key in KEYS:
        star = "*" if key.required else " "
        if key.shape in (Shape.TABLE, Shape.TABLES):
            header = f"[[{key.path[:-2]}]]" if key.shape is Shape.TABLES else f"[{key.path}]"
            yield ""
            yield f"{star} {header}  {key.says}"
            continue
        choices = f": {', '.join(key.choices)}" if key.choices else ""
        yield f"{star} {key.name} = {key.example}"
        yield f"      {key.says}{choices}"
