"""What is learnt: each subject once, with what it is called, what its logs hold, and how it is learnt."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import msgspec

from booth.learnt import coats, delivery, pace, recovery, thinning, transfer, waits
from booth.learnt.observation import Learnt, Observation, learnt_of
from booth.log.fold import Job
from booth.units import Kind

Observe = Callable[[Sequence[Job]], tuple[Observation, ...]]


class Subject(msgspec.Struct, frozen=True):
    """key: by which it is asked for; title: above its lines; of: what one reading of it is called;
    unit: the kind of figure, None for a multiple; tags: of which a log has to hold one; observe:
    what one job shows, None where it follows from all catches together."""

    key: str
    title: str
    of: str
    unit: Kind | None
    tags: tuple[bytes, ...]
    observe: Observe | None = None


SUBJECTS = tuple(
    Subject(*row)
    for row in (
        (
            "waits",
            "Waits: times the wait that was counted",
            "wait",
            None,
            waits.TAGS,
            waits.observe,
        ),
        ("delivery", "Delivery by needle turns", "catch", Kind.DELIVERY, delivery.TAGS),
        ("water", "The coating's delivery: times that of water", "pair", None, delivery.TAGS),
        ("lands", "What lands on the part", "coat", Kind.PERCENT, transfer.TAGS, transfer.observe),
        ("coats", "A coat: times its time at the trigger", "coat", None, coats.TAGS, coats.observe),
        (
            *("thinner", "Thinner to the target", "mix", Kind.PERCENT),
            *(thinning.TAGS, thinning.observe),
        ),
        ("pace", "Speed of your gun", "pass", Kind.SPEED, pace.TAGS, pace.observe),
        (
            *("recovery", "Compressor: time to fill its receiver", "timing", Kind.TIME),
            *(recovery.TAGS, recovery.observe),
        ),
    )
)
BY_KEY = {each.key: each for each in SUBJECTS}


def learnt_by_group(subject: Subject, found: Sequence[Observation]) -> tuple[Learnt, ...]:
    """Give what the observations of a subject come to, group by group, in the order of their words."""
    groups: dict[tuple[str, ...], list[Observation]] = {}
    for each in found:
        groups.setdefault(each.group, []).append(each)
    every = (learnt_one(subject, own) for own in groups.values())
    return tuple(sorted((each for each in every if each), key=lambda each: each.group))


def learnt_one(
    subject: Subject, found: Sequence[Observation], cup: str = "", cup_s: float | None = None
) -> Learnt | None:
    """Give what the observations of one group come to. cup, cup_s: the mix of today, where what
    another viscosity gave does not count."""
    alike, other = list(found), list[tuple[Observation, str]]()
    if subject.key == "delivery":
        alike, other = delivery.of_one_viscosity(found, cup, cup_s)
    return learnt_of(subject.key, subject.unit, alike, other)
