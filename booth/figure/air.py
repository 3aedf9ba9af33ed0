"""Subjects: the receiver and the gun, what standard air means, the cap of an HVLP gun."""

from __future__ import annotations

from booth.figure import shapes
from booth.figure.answer import Answer, Item, exact, figure, item_of, several
from booth.figure.readers import Named
from booth.figure.subject import Argument, Given, Subject, may, need
from booth.trade.air import air_base, hvlp, receiver

_RECEIVER = need("receiver", shapes.RECEIVER, "volume of the receiver")
_DEMAND = need("demand", shapes.AIR_FLOW, "free air the gun uses, trigger pulled")
_SUPPLY = need("supply", shapes.AIR_FLOW, "free air the compressor delivers")
_ROOM = may(
    "room", shapes.PRESSURE, "absolute pressure of the room's air, one atmosphere if left out"
)
_FOR_EVER = "as long as you like: the compressor meets the demand"
_BASE = Named(air_base.air_base, ", ".join(base.name for base in air_base.AIR_BASES))


def _gauge(name: str, meaning: str) -> Argument:
    return need(name, shapes.PRESSURE, f"{meaning}, by the gauge")


def _trigger(given: Given) -> Answer:
    found = receiver.longest_trigger_s(
        given["receiver"],
        given["full"],
        given["least"],
        given["demand"],
        **given.some(supply_l_min="supply", air_kpa="room"),
    )
    if found is None:
        return exact("trigger held", _FOR_EVER, None, "supply is not below demand")
    return figure("trigger held", found, shapes.TIME)


def _recovery(given: Given) -> Answer:
    found = receiver.recovery_s(
        given["receiver"],
        given["least"],
        given["full"],
        given["supply"],
        **given.some(demand_l_min="demand", air_kpa="room"),
    )
    return figure("recovers in", found, shapes.TIME)


def _cycle(given: Given) -> Answer:
    found = receiver.trigger_cycle(
        given["receiver"],
        given["full"],
        given["least"],
        given["demand"],
        given["supply"],
        **given.some(air_kpa="room"),
    )
    items = []
    rule = "supply is not below demand"
    if found.spray_s is None:
        items.append(Item("trigger held", _FOR_EVER))
    else:
        items.append(item_of("trigger held", found.spray_s, shapes.TIME))
        rule = found.spray_s.rule
    if found.rest_s is not None:
        items.append(item_of("then rest", found.rest_s, shapes.TIME))
    items.append(Item("trigger in the long run", found.duty, shapes.SHARE))
    return several(rule, items)


def _hvlp(given: Given) -> Answer:
    found = hvlp.hvlp_cap_pressure(given["cap"])
    return several(found.rule, (Item("within HVLP", found.within),), found.words)


SUBJECTS = (
    Subject(
        "trigger",
        "how long the receiver carries the gun",
        (
            _RECEIVER,
            _gauge("full", "pressure at the start"),
            _gauge("least", "pressure that still feeds the gun"),
            _DEMAND,
            may("supply", shapes.AIR_FLOW, "free air the compressor delivers meanwhile"),
            _ROOM,
        ),
        _trigger,
        (receiver.longest_trigger_s,),
        (
            "183.75ft3 100psi 60psi 350cfm supply=250cfm room=14.7psi",
            "20gal 125psi 90psi 10cfm supply=12cfm",
        ),
    ),
    Subject(
        "recovery",
        "how long the compressor needs to fill the receiver again",
        (
            _RECEIVER,
            _gauge("least", "pressure from"),
            _gauge("full", "pressure to"),
            _SUPPLY,
            may("demand", shapes.AIR_FLOW, "free air used meanwhile"),
            _ROOM,
        ),
        _recovery,
        (receiver.recovery_s,),
        ("90l 5bar 8bar 200l/min", "90l 5bar 8bar 200l/min demand=300l/min"),
    ),
    Subject(
        "cycle",
        "the rhythm of spraying and resting that a compressor allows",
        (
            _RECEIVER,
            _gauge("full", "pressure at the start"),
            _gauge("least", "pressure that still feeds the gun"),
            _DEMAND,
            _SUPPLY,
            _ROOM,
        ),
        _cycle,
        (receiver.trigger_cycle,),
        ("90l 8bar 5bar 340l/min 200l/min", "90l 8bar 5bar 200l/min 200l/min"),
    ),
    Subject(
        "duty",
        "the share of the time that the trigger can be held",
        (_DEMAND, _SUPPLY),
        lambda given: exact(
            "trigger in the long run",
            receiver.trigger_duty(given["demand"], given["supply"]),
            shapes.SHARE,
            "supply / demand, at most all of the time",
        ),
        (receiver.trigger_duty,),
        ("400l/min 100l/min",),
    ),
    Subject(
        "stored",
        "the free air a receiver gives up between two pressures",
        (_RECEIVER, _gauge("full", "pressure from"), _gauge("least", "pressure to"), _ROOM),
        lambda given: exact(
            "free air",
            receiver.free_air_stored_l(
                given["receiver"], given["full"], given["least"], **given.some(air_kpa="room")
            ),
            shapes.FREE_AIR,
            "V (P1 - P2) / Pa",
        ),
        (receiver.free_air_stored_l,),
        ("660gal 110psi 100psi room=14.7psi",),
    ),
    Subject(
        "air-base",
        "the same flow of air as another base counts it",
        (
            need("flow", shapes.AIR_FLOW, "as counted"),
            need("from", _BASE, "the base it is counted in"),
            need("to", _BASE, "the base it is wanted in"),
        ),
        lambda given: exact(
            f"flow as {given['to'].name}",
            air_base.convert_flow_l_min(given["flow"], given["from"], given["to"]),
            shapes.AIR_FLOW,
            f"ideal gas; {given['from'].source}; {given['to'].source}",
        ),
        (air_base.convert_flow_l_min, air_base.air_base),
        ("100l/min from 'scf 60 F' to 'scf 14.5 psia'",),
    ),
    Subject(
        "hvlp",
        "whether a pressure at the air cap is one of HVLP",
        (need("cap", shapes.PRESSURE, "dynamic pressure at the air cap, not at the inlet"),),
        _hvlp,
        (hvlp.hvlp_cap_pressure,),
        ("10psi", "29psi"),
    ),
)
