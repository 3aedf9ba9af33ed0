"""Everything that can be asked: one table, from which parsing, help and tests go."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from booth.figure import (
    air,
    cups,
    delivery,
    faults,
    film,
    fire,
    material,
    mixing,
    pattern,
    thinning,
    waits,
    weather,
)
from booth.figure.subject import Subject

GROUPS: Mapping[str, tuple[Subject, ...]] = MappingProxyType(
    {
        "Flow cups and viscosity": cups.SUBJECTS,
        "Thinning": thinning.SUBJECTS,
        "Delivery": delivery.SUBJECTS,
        "Film and pace": film.SUBJECTS,
        "Pattern and overlap": pattern.SUBJECTS,
        "Areas and material": material.SUBJECTS,
        "Mixing": mixing.SUBJECTS,
        "Weather": weather.SUBJECTS,
        "Waits": waits.SUBJECTS,
        "Compressed air": air.SUBJECTS,
        "Fire and ventilation": fire.SUBJECTS,
        "Faults": faults.SUBJECTS,
    }
)
SUBJECTS: Mapping[str, Subject] = MappingProxyType(
    {subject.name: subject for group in GROUPS.values() for subject in group}
)
