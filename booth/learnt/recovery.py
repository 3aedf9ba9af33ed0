"""How long the compressor really takes to fill its receiver, as timed with the gun still. Pure."""

from __future__ import annotations

from collections.abc import Sequence

from booth.job.measured import known
from booth.learnt.observation import Observation, of_one_job
from booth.log.events import RecoveryTimed
from booth.log.fold import Job
from booth.shop.model import Compressor
from booth.trade.air.receiver import recovery_s, supply_from_recovery_l_min
from booth.trade.result import Estimate
from booth.units import Kind

TAGS = (b'"recovery timed"',)


def observe(products: Sequence[Job]) -> tuple[Observation, ...]:
    """Give how long one fill took [s], by receiver and pressures; it is the whole job's."""
    timed = products[-1].of(RecoveryTimed) if products else ()
    return of_one_job([_of(each) for each in timed if each.seconds > 0])


def _of(event: RecoveryTimed) -> Observation:
    figures = event.receiver.value, event.cut_in.value, event.cut_out.value
    found = known(supply_from_recovery_l_min, *figures, event.seconds)
    return Observation(
        group=_group(*figures),
        about=((figures[0], Kind.RECEIVER), (figures[1], figures[2], Kind.PRESSURE)),
        low=event.seconds,
        high=event.seconds,
        at=event.at,
        told=() if found is None else ((found.low, found.high, Kind.AIR_FLOW),),
    )


def _group(receiver_l: float, cut_in_kpa: float, cut_out_kpa: float) -> tuple[str, ...]:
    return tuple(f"{each:.0f}" for each in (receiver_l, cut_in_kpa, cut_out_kpa))


def group_of(compressor: Compressor) -> tuple[str, ...]:
    """What belongs to this compressor."""
    return _group(compressor.receiver_l, compressor.cut_in_kpa, compressor.cut_out_kpa)


def rated_s(compressor: Compressor) -> Estimate | None:
    """How long the fill takes by what the shop file says that it delivers [s]."""
    found = known(
        recovery_s,
        compressor.receiver_l,
        compressor.cut_in_kpa,
        compressor.cut_out_kpa,
        compressor.flow_l_min,
    )
    return found if isinstance(found, Estimate) else None
