"""What the pace of the gun rests on in this job, and what follows from it. Pure."""

from __future__ import annotations

import msgspec

from booth.job.measured import delivery_ml_min, fan_mm, known, overlap_fraction, transfer_efficiency
from booth.log.fold import Job
from booth.trade.film.gun_speed import mean_wet_film_um, speed_for_wet_film_mm_s
from booth.trade.film.transfer_efficiency import EfficiencyBand
from booth.trade.result import Estimate, Value

#: What a hand can hold over a panel [mm/s] (common practice, no source).
HAND_MM_S = (200.0, 800.0)


class Basis(msgspec.Struct, frozen=True):
    """Delivery [ml/min], fan [mm], overlap [1], each with where it is from; what lands [1]."""

    delivery_ml_min: float
    delivery_from: str
    fan_mm: float
    fan_from: str
    overlap: float
    overlap_from: str
    lands: EfficiencyBand

    def speed_for(self, wet_um: float) -> Estimate | None:
        """The speed [mm/s] that lays this wet film; None where a figure makes no sense."""
        fan = self.fan_mm, self.overlap, self.lands
        return _estimate(known(speed_for_wet_film_mm_s, wet_um, self.delivery_ml_min, *fan))

    def film_at(self, speed_mm_s: float) -> Estimate | None:
        """The mean wet film [um] at this speed; None where a figure makes no sense."""
        fan = self.fan_mm, self.overlap
        return _estimate(
            known(mean_wet_film_um, self.delivery_ml_min, *fan, speed_mm_s, self.lands)
        )


def _estimate(found: Value | Estimate | None) -> Estimate | None:
    """What lands is always a band, so what follows from it is always an estimate."""
    assert not isinstance(found, Value)
    return found


def basis_of(
    job: Job, delivery: float | None = None, fan: float | None = None
) -> tuple[Basis | None, tuple[str, ...]]:
    """Give what the pace rests on, or what is missing; `delivery`, `fan`: where typed instead."""
    poured = (delivery, "as typed") if delivery is not None else delivery_ml_min(job)
    wide = (fan, "as typed") if fan is not None else fan_mm(job)
    missing = []
    if poured is None or poured[0] <= 0:
        missing.append("the delivery (step Catch)")
    if wide is None or wide[0] <= 0:
        missing.append("the width of the fan (step Fan)")
    if missing or poured is None or wide is None:
        return None, tuple(missing)
    return Basis(*poured, *wide, *overlap_fraction(job), transfer_efficiency(job)), ()
