"""What the shop file says, in base units: pressures [kPa] gauge, flows [l/min] of free air, lengths [mm]."""

from __future__ import annotations

import msgspec


class Gun(msgspec.Struct, frozen=True):
    """One spray gun. cup_ml: what its cup holds; air_l_min: its demand at inlet_kpa; turns: fully open."""

    name: str
    tip_mm: float | None = None
    cup_ml: float | None = None
    air_l_min: float | None = None
    inlet_kpa: float | None = None
    needle_turns: float | None = None
    fan_turns: float | None = None
    hvlp: bool = False


class OwnCup(msgspec.Struct, frozen=True):
    """A flow cup the painter owns. correction: true efflux time = read time x correction."""

    cup: str
    correction: float = 1.0
    note: str = ""


class Compressor(msgspec.Struct, frozen=True):
    """Receiver volume, delivered flow of free air, cut-in and cut-out pressure, rated duty."""

    receiver_l: float
    flow_l_min: float
    cut_in_kpa: float
    cut_out_kpa: float
    duty_percent: float | None = None


class Room(msgspec.Struct, frozen=True):
    """The room: its volume, what the exhaust moves, the open face of the booth; the file in which a
    sensor's readings are."""

    volume_m3: float | None = None
    exhaust_m3_min: float | None = None
    face_m2: float | None = None
    readings: str = ""


class Shop(msgspec.Struct, frozen=True):
    """Everything the painter said about the shop; all of it may be missing. cards: the folder into
    which the cards of jobs are written."""

    guns: tuple[Gun, ...] = ()
    cups: tuple[OwnCup, ...] = ()
    compressor: Compressor | None = None
    room: Room | None = None
    system: str = ""
    cards: str = ""

    def gun(self, name: str) -> Gun | None:
        """The gun of this name, if there is one."""
        return next((gun for gun in self.guns if gun.name == name), None)

    def correction(self, cup: str) -> float:
        """The painter's own correction of this cup; 1 where none is given."""
        return next((own.correction for own in self.cups if own.cup == cup), 1.0)
