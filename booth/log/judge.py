"""What makes the opening of a job one that cannot be worked with, however well it reads. Pure.

A log can be written by hand, damaged, or of another program: what the screens would stumble over is
told here once, when the log is read, instead of by each of them.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from functools import lru_cache

from booth.files.faults import quoted
from booth.log.changes import MOST_PARTS
from booth.log.events import JobOpened
from booth.profile.read import faults_of
from booth.units import System

MOST_PRODUCTS = 20
SYSTEMS = tuple(system.value for system in System)

#: The faults of a profile by the rules for profile files; many jobs have the same profile.
_of_profile = lru_cache(maxsize=256)(faults_of)


def oddities(opened: JobOpened) -> tuple[str, ...]:
    """Give what is odd, a sentence each without its full stop; nothing where it can be worked with."""
    later = enumerate(opened.later[:MOST_PRODUCTS])
    profiles = [("profile", opened.profile), *((f"later[{at}]", each) for at, each in later)]
    faults = (
        f"{which}.{fault.removesuffix('.')}"
        for which, profile in profiles
        for fault in _of_profile(profile)
    )
    return (*_of_job(opened), *faults)


def _of_job(opened: JobOpened) -> Iterator[str]:
    if not 1 <= len(opened.parts) <= MOST_PARTS:
        yield f"parts has {len(opened.parts)} names; 1 to {MOST_PARTS} are possible"
    if not all(part.strip() for part in opened.parts):
        yield "parts has a blank name"
    if len(set(opened.parts)) < len(opened.parts):
        ((twice, _),) = Counter(opened.parts).most_common(1)
        yield f"parts has the name {quoted(twice)} more than once"
    if len(opened.products) > MOST_PRODUCTS:
        yield f"later has {len(opened.later)} products; up to {MOST_PRODUCTS - 1} are possible"
    if opened.system not in SYSTEMS:
        yield f"system is {quoted(opened.system)}; {' or '.join(SYSTEMS)} is possible"
    if not isinstance(opened.shop.get("guns", ()), list | tuple):
        yield "shop.guns is no list"
