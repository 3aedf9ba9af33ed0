"""What a coating profile says, in base units, whatever units the painter wrote it in.

Times [s], temperatures [degC], temperature differences [K], lengths [mm], films [um],
pressures [kPa] gauge, delivery [ml/min], density [g/ml]; percentages as 0..100.
``None`` always means that the profile does not say.
"""

from __future__ import annotations

import enum

import msgspec


class Hazard(enum.StrEnum):
    """Hazards a profile may declare; each brings its cautions (see ``profile.cautions``)."""

    ISOCYANATE = "isocyanate"
    FLAMMABLE = "flammable"
    SOLVENT_VAPOUR = "solvent vapour"
    SENSITISER = "sensitiser"
    CORROSIVE = "corrosive"
    DUST = "dust"
    OVERSPRAY_HEATS = "self-heating rags"


class Range(msgspec.Struct, frozen=True):
    """A range from low to high; either end may be missing (None), not both."""

    low: float | None = None
    high: float | None = None

    @property
    def middle(self) -> float:
        """The middle of the range, or its one end."""
        ends = [end for end in (self.low, self.high) if end is not None]
        return sum(ends) / len(ends)

    def holds(self, number: float) -> bool:
        """Whether `number` lies within the range, ends included."""
        above = self.low is None or number >= self.low
        return above and (self.high is None or number <= self.high)


class AtTemperature(msgspec.Struct, frozen=True):
    """One row of a table: what holds at `at_c` [degC]."""

    at_c: float
    time_s: float


class WaitRule(msgspec.Struct, frozen=True):
    """How long a wait is: one time at a reference temperature, or a table by temperature.

    A table (two rows or more, ascending) comes from the data sheet and wins over any scaling.
    """

    rows: tuple[AtTemperature, ...]

    @property
    def is_table(self) -> bool:
        """Whether the data sheet gives several temperatures."""
        return len(self.rows) > 1


class MixPart(msgspec.Struct, frozen=True):
    """One component of the mix, in the order in which it is poured."""

    name: str
    parts: float
    density_g_ml: float | None = None


class Thinner(msgspec.Struct, frozen=True):
    """Thinner as percent by volume of the mixed coating before thinning."""

    name: str
    usual_percent: float | None = None
    limit_percent: float | None = None
    viscosity_mm2_s: float | None = None
    density_g_ml: float | None = None
    solvent: str | None = None


class Mix(msgspec.Struct, frozen=True):
    """How the coating is mixed. by: 'volume' or 'weight', as the data sheet gives the parts."""

    parts: tuple[MixPart, ...] = ()
    by: str = "volume"
    thinner: Thinner | None = None
    induction_s: float | None = None
    pot_life: AtTemperature | None = None


class Efflux(msgspec.Struct, frozen=True):
    """Target efflux time [s] in a named cup; at_c where the data sheet names a temperature."""

    cup: str
    target_s: Range
    at_c: float | None = None


class Gun(msgspec.Struct, frozen=True):
    """Settings of the gun as the data sheet gives them."""

    tip_mm: Range | None = None
    inlet_kpa: Range | None = None
    distance_mm: Range | None = None
    fan_mm: Range | None = None
    overlap_percent: float | None = None
    delivery_ml_min: Range | None = None
    hvlp: bool = False
    coarse_metallic: bool = False
    strainer_um: float | None = None


class Film(msgspec.Struct, frozen=True):
    """What the film is to be: coats, wet film a coat [um], dry film of the whole [um]."""

    coats: int
    volume_solids_percent: float | None = None
    wet_um: Range | None = None
    dry_total_um: Range | None = None
    density_g_ml: float | None = None
    solvent_percent: float | None = None
    solvent: str | None = None


class Waits(msgspec.Struct, frozen=True):
    """The waits after a coat ended; any may be missing."""

    flash_off: WaitRule | None = None
    recoat_opens: WaitRule | None = None
    recoat_closes: WaitRule | None = None
    dust_free: WaitRule | None = None
    handle: WaitRule | None = None


class Limits(msgspec.Struct, frozen=True):
    """Weather limits of the product; dew_margin_c is a difference [K] of part over dew point."""

    air_c: Range | None = None
    part_c: Range | None = None
    humidity_percent: Range | None = None
    dew_margin_c: float | None = None


class Step(msgspec.Struct, frozen=True):
    """One step of the job.

    kind: which instrument serves it (see ``profile.steps.KINDS``); how: two to five short lines.
    """

    key: str
    kind: str
    name: str
    how: tuple[str, ...] = ()
    must: bool = False


class Profile(msgspec.Struct, frozen=True, kw_only=True):
    """A coating profile as read from its file."""

    key: str
    name: str
    product: str = ""
    source: str
    demo: bool = False
    waterborne: bool = False
    notes: tuple[str, ...] = ()
    hazards: tuple[Hazard, ...] = ()
    cautions: tuple[str, ...] = ()
    mix: Mix | None = None
    efflux: Efflux | None = None
    gun: Gun = Gun()
    film: Film
    waits: Waits = Waits()
    limits: Limits = Limits()
    steps: tuple[Step, ...] = ()
