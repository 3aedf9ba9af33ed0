"""Subjects: a fault that was seen, its causes ranked by the figures given."""

from __future__ import annotations

from dataclasses import fields

from booth.figure import shapes
from booth.figure.answer import Answer, Item, exact, several
from booth.figure.readers import YES_NO, Choice, Named, Reader
from booth.figure.shapes import Shape
from booth.figure.subject import Argument, Given, Subject, may, need
from booth.trade.faults import evidence, ranked_causes
from booth.trade.faults.evidence import Evidence, Sign
from booth.trade.faults.ranked_causes import RankedCause, Standing

#: Unit at the end of a field's name, and how it is read.
_ENDINGS: tuple[tuple[str, Shape], ...] = (
    ("_ml_min", shapes.DELIVERY),
    ("_kpa", shapes.PRESSURE),
    ("_um", shapes.FILM),
    ("_m_s", shapes.AIR_SPEED),
    ("_mm", shapes.LENGTH),
    ("_percent", shapes.PERCENT),
    ("_fraction", shapes.SHARE),
    ("_used", shapes.SHARE),
    ("_c", shapes.TEMPERATURE),
    ("_s", shapes.TIME),
)
#: Units as a reading names them.
_UNITS: dict[str, Shape] = {
    "s": shapes.SECONDS,
    "kPa": shapes.PRESSURE,
    "ml/min": shapes.DELIVERY,
    "um": shapes.FILM,
    "K": shapes.DIFFERENCE,
    "C": shapes.TEMPERATURE,
    "%": shapes.PERCENT,
    "m/s": shapes.AIR_SPEED,
    "mm": shapes.LENGTH,
    "1": shapes.SHARE,
}


def _of_field(name: str) -> tuple[str, Shape | Reader]:
    if name == "thinner_unmeasured":
        return "thinner-unmeasured", YES_NO
    ending, shape = next((end, shape) for end, shape in _ENDINGS if name.endswith(end))
    if name.startswith("dew_margin"):
        shape = shapes.DIFFERENCE
    plain = name if ending == "_used" else name.removesuffix(ending)
    return plain.replace("_", "-"), shape


def _meaning(name: str) -> str:
    if name.endswith("-low"):
        return "the least that is asked for"
    if name.endswith("-high"):
        return "the most that is asked for"
    if name.endswith("-wanted"):
        return "what was wanted"
    return "measured in the job"


#: Argument name -> field of Evidence.
_FIELDS = {_of_field(field.name)[0]: field.name for field in fields(Evidence)}
_EVIDENCE: tuple[Argument, ...] = tuple(
    may(name, _of_field(field)[1], _meaning(name)) for name, field in _FIELDS.items()
)
_SIGNS = {sign.name.lower().replace("_", "-"): sign for sign in Sign}


def _evidence(given: Given) -> Evidence:
    return Evidence(**{field: given[name] for name, field in _FIELDS.items() if name in given})


def _reading(reading: evidence.Reading, name: str) -> tuple[Item, ...]:
    if reading.measured is None or reading.limit is None:
        return (Item(name, f"{reading.name} ({reading.side})"),)
    shape = _UNITS[reading.unit]
    return (
        Item(f"{name} {reading.name}", reading.measured, shape),
        Item(f"{reading.side} its limit", reading.limit, shape, tight=True),
    )


def _cause(place: int, ranked: RankedCause) -> list[Item]:
    items = [Item(f"{place}.", f"{ranked.cause.words} ({ranked.standing})")]
    for each in ranked.figures_for:
        items += _reading(each, "for it:")
    for each in ranked.figures_against:
        items += _reading(each, "against it:")
    if ranked.standing is Standing.SHOWN:
        items.append(Item("do now:", ranked.cause.now))
    return items


def _fault(given: Given) -> Answer:
    fault = given["fault"]
    items: list[Item] = []
    for place, ranked in enumerate(ranked_causes.rank_causes(fault.key, _evidence(given)), 1):
        items += _cause(place, ranked)
    return several(
        "a cause is claimed only where a figure speaks for it", items, f"the film: {fault.film}"
    )


def _sign(given: Given) -> Answer:
    found = evidence.read_sign(given["sign"], _evidence(given))
    rule = "the figure against its limit"
    if found is None:
        return exact(given["sign"].value, "no figure, or no limit to hold it against", None, rule)
    reading, strength = found
    items = (*_reading(reading, ""), Item("strength of the sign", strength, shapes.SHARE))
    return several(rule, items)


SUBJECTS = (
    Subject(
        "fault",
        "causes of a fault that was seen, ranked by the figures given",
        (
            need(
                "fault",
                Named(
                    ranked_causes.fault_named,
                    ", ".join(fault.name for fault in ranked_causes.FAULTS.values()),
                ),
                "what was seen",
            ),
            *_EVIDENCE,
        ),
        _fault,
        (ranked_causes.rank_causes, ranked_causes.fault_named),
        ("runs wet=90um wet-high=60um efflux=20s efflux-low=18s",),
    ),
    Subject(
        "sign",
        "whether one figure speaks for or against a sign of a fault",
        (need("sign", Choice(_SIGNS), "which one"), *_EVIDENCE),
        _sign,
        (evidence.read_sign,),
        (
            "efflux-high efflux=30s efflux-high=22s",
            "humid",
            "thinner-unmeasured thinner-unmeasured=yes",
        ),
    ),
)
