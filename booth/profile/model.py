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
    """One row of a data sheet: from `time_s` to `to_s`, at a temperature and, where said, a humidity.

    at_c is None where the sheet names no temperature; to_s where it gives one time, not a range.
    """

    at_c: float | None
    time_s: float
    to_s: float | None = None
    at_percent: float | None = None

    @property
    def most_s(self) -> float:
        """The longer end of the time."""
        return self.time_s if self.to_s is None else self.to_s


class WaitRule(msgspec.Struct, frozen=True):
    """How long a wait is: one time, a table by temperature (and humidity), or until a sign shows.

    A table (two rows or more, ascending) comes from the data sheet and wins over any scaling.
    until: the sign that ends it whatever the clock says, as 'matt all over'; rows may be empty then.
    """

    rows: tuple[AtTemperature, ...] = ()
    until: str = ""

    @property
    def is_table(self) -> bool:
        """Whether the data sheet gives several temperatures."""
        return len(self.rows) > 1


class MixPart(msgspec.Struct, frozen=True):
    """One component of the mix, in the order in which it is poured.

    parts: in the measure that the mix is given `by`; parts_by_weight: beside parts by volume.
    """

    name: str
    parts: float
    density_g_ml: float | None = None
    parts_by_weight: float | None = None


class Thinner(msgspec.Struct, frozen=True):
    """Thinner as percent by volume of the mixed coating before thinning; for_c: the air it is for;
    when: 'before induction' or 'after induction', None where the sheet does not say."""

    name: str
    usual_percent: Range | None = None
    limit_percent: float | None = None
    viscosity_mm2_s: float | None = None
    density_g_ml: float | None = None
    solvent: str | None = None
    for_c: Range | None = None
    when: str | None = None

    @property
    def start_percent(self) -> float | None:
        """What to begin with: the lower end of the usual; None where the sheet names no usual."""
        return None if self.usual_percent is None else self.usual_percent.low or 0.0

    @property
    def most_percent(self) -> float | None:
        """All that the sheet allows: the limit, else the upper end of the usual."""
        usual = self.usual_percent or Range()
        return next((p for p in (self.limit_percent, usual.high, usual.low) if p is not None), None)


class Waits(msgspec.Struct, frozen=True):
    """The waits after a coat ended; any may be missing.

    flash_off: between coats of this product, and recoat_opens where it is missing; recoat_opens and
    recoat_closes: the window for a further coat or, where no next product has its own, for any
    product; before_bake: before heat; bake: at the temperature of the part, in the oven.
    """

    flash_off: WaitRule | None = None
    recoat_opens: WaitRule | None = None
    recoat_closes: WaitRule | None = None
    dust_free: WaitRule | None = None
    handle: WaitRule | None = None
    tape: WaitRule | None = None
    sand: WaitRule | None = None
    polish: WaitRule | None = None
    cure: WaitRule | None = None
    before_bake: WaitRule | None = None
    bake: WaitRule | None = None


class NextProduct(msgspec.Struct, frozen=True):
    """When another product may go on, from the end of the last coat.

    name: which, empty for any; opens to closes, and again after `or_after` (between the two it may
    lift); abrade_after: from then on only over an abraded surface.
    """

    name: str = ""
    opens: WaitRule | None = None
    closes: WaitRule | None = None
    or_after: WaitRule | None = None
    abrade_after: WaitRule | None = None


class Hardener(msgspec.Struct, frozen=True):
    """One of several hardeners: what differs from the mix as it is given where this one is used.

    for_c: the air it is for; parts: instead of the hardener's own in the mix.
    """

    name: str
    for_c: Range | None = None
    parts: float | None = None
    parts_by_weight: float | None = None
    density_g_ml: float | None = None
    pot_life: WaitRule | None = None
    waits: Waits | None = None


class Mix(msgspec.Struct, frozen=True):
    """How the coating is mixed. by: 'volume' or 'weight', as the data sheet gives the parts.

    hardeners: the choice for the last of the parts; thinners: others than `thinner`, by temperature.
    """

    parts: tuple[MixPart, ...] = ()
    by: str = "volume"
    thinner: Thinner | None = None
    induction: WaitRule | None = None
    pot_life: WaitRule | None = None
    hardeners: tuple[Hardener, ...] = ()
    thinners: tuple[Thinner, ...] = ()


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
    overlap_percent: Range | None = None
    delivery_ml_min: Range | None = None
    hvlp: bool = False
    coarse_metallic: bool = False
    strainer_um: float | None = None


class Film(msgspec.Struct, frozen=True):
    """What the film is to be: how many coats, wet film a coat [um], dry film of the whole [um].

    coats: None where the profile lists its coats one by one.
    """

    coats: Range | None = None
    volume_solids_percent: Range | None = None
    wet_um: Range | None = None
    dry_total_um: Range | None = None
    density_g_ml: float | None = None
    solvent_percent: float | None = None
    solvent: str | None = None

    @property
    def solids_fraction(self) -> float | None:
        """Volume solids [1]: the middle of what the sheet gives; None where it gives none."""
        solids = self.volume_solids_percent
        return None if solids is None else solids.middle / 100


class CoatPlan(msgspec.Struct, frozen=True):
    """One coat of the list, or several alike; what it does not say is as for the whole product.

    times: how often, 1 where missing; until_hidden: as often as it takes, `times` being the usual
    (low) and the most (high); wait: between this coat and the next.
    """

    name: str = ""
    times: Range | None = None
    until_hidden: bool = False
    wet_um: Range | None = None
    inlet_kpa: Range | None = None
    distance_mm: Range | None = None
    overlap_percent: Range | None = None
    fan_mm: Range | None = None
    wait: WaitRule | None = None


class Limits(msgspec.Struct, frozen=True):
    """Weather limits of the product; dew_margin_c is a difference [K] of part over dew point."""

    air_c: Range | None = None
    part_c: Range | None = None
    humidity_percent: Range | None = None
    dew_margin_c: float | None = None


class Care(msgspec.Struct, frozen=True):
    """What the data sheet says of the work before and after, in its words; a profile has one of each."""

    degrease: str | None = None
    abrade: str | None = None
    mask: str | None = None
    tack_off: str | None = None
    unmask: str | None = None
    finish: str | None = None


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
    film: Film = Film()
    coats: tuple[CoatPlan, ...] = ()
    waits: Waits = Waits()
    next_products: tuple[NextProduct, ...] = ()
    limits: Limits = Limits()
    preparation: Care = Care()
    after: Care = Care()
    steps: tuple[Step, ...] = ()
