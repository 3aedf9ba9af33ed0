"""The faults of a sprayed film and their causes, each with where it is from."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from booth.trade.faults.bond_faults import BOND
from booth.trade.faults.colour_faults import COLOUR
from booth.trade.faults.evidence import Sign
from booth.trade.faults.remedies import REMEDIES
from booth.trade.faults.surface_faults import SURFACE
from booth.trade.text_table import rows


@dataclass(frozen=True, slots=True)
class Cause:
    """One cause of a fault.

    key: of its remedy and its own question; words: a sentence; usual: 3 usual, 2 common, 1 now and
    then; signs: figures that may speak for it, none where nothing measured can; now, next_time: what
    to do; fallback: a published limit for a sign whose limit the profile does not name.
    """

    key: str
    words: str
    usual: int
    signs: tuple[Sign, ...]
    now: str
    next_time: str
    source: str
    fallback: Mapping[Sign, tuple[float, str]]


@dataclass(frozen=True, slots=True)
class Fault:
    """A fault of a sprayed film.

    key, name; looks: how it shows; film: what to do with the film; also: other words of the trade.
    """

    key: str
    name: str
    looks: str
    film: str
    also: tuple[str, ...]
    causes: tuple[Cause, ...]


FAA = "FAA-H-8083-31 ch. 8, common paint troubles"
SOURCES = {
    "FAA": FAA,
    "TM": "TM 43-0139 p. 5-12",
    "CORROSION": "Corrosion Engineering: Principles and Practice, table 14.1",
    "TO": "TO 1-1-8 table 4-1",
    "-": "common practice, no source",
}

#: 5 F of the part over the dew point: MIL-HDBK-1110 9.6.6.
DEW_MARGIN = (5.0 / 1.8, "MIL-HDBK-1110 9.6.6")
#: Limits for signs whose limit the profile does not name. FAA-H-8083-31 ch. 8: blush usually forms
#: above 80 % humidity; below 60 F or above 95 F.
PUBLISHED = {
    "blush": {
        Sign.HUMID: (80.0, FAA),
        Sign.DEW_NEAR: DEW_MARGIN,
        Sign.AIR_COLD: ((60.0 - 32.0) / 1.8, FAA),
        Sign.AIR_HOT: ((95.0 - 32.0) / 1.8, FAA),
    },
    "poor-adhesion": {Sign.DEW_NEAR: DEW_MARGIN},
    "amine-blush": {Sign.DEW_NEAR: DEW_MARGIN},
}


def _cause(fault: str, usual: str, named: str, words: str, sources: str = "-") -> Cause:
    signs = tuple(Sign[name] for name in named.split() if name.isupper())
    key = signs[0].name.lower().replace("_", "-") if signs else named
    remedy = REMEDIES[key]
    source = "; ".join(SOURCES[name] for name in sources.split())
    known = PUBLISHED.get(fault, {})
    fallback = {sign: known[sign] for sign in signs if sign in known}
    return Cause(key, words, int(usual), signs, remedy.now, remedy.next_time, source, fallback)


def _faults() -> Iterator[Fault]:
    """A block of a table is a fault: its key, its name, how it looks, what to do with the film, other
    words for it. Under it its causes: how usual, the signs that may speak for it or else its key,
    what it is, its sources; where there is none, common practice.
    """
    for block in "\n".join((SURFACE, COLOUR, BOND)).strip().split("\n\n"):
        (key, name, looks, film, *others), *causes = rows(block)
        also = tuple(word for cell in others for word in cell.split(", "))
        yield Fault(key, name, looks, film, also, tuple(_cause(key, *cells) for cells in causes))


#: Every fault by its key, in the order in which a list shows them.
FAULTS: Mapping[str, Fault] = MappingProxyType({fault.key: fault for fault in _faults()})
