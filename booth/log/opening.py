"""What every event has, and the two that say which product is worked with: the job's opening, the next.

See ``events``, which has all kinds.
"""

from __future__ import annotations

from typing import Any, ClassVar

import msgspec

from booth.files.slug import rehearsal_key, system_key
from booth.log.rack import Rack
from booth.moment import Moment
from booth.profile.model import Profile


class Event(msgspec.Struct, frozen=True, tag_field="event", kw_only=True, omit_defaults=True):
    """What all events share.

    n: number in the log, 1, 2, 3…; at: when it happened (a key press: when it was pressed).
    A subclass is known to the log, to the fold (``Job.of``) and to the reports by being defined.
    """

    #: the stopwatch that is done with when this was kept
    ENDS: ClassVar[str] = ""

    n: int
    at: Moment


class JobOpened(Event, frozen=True, tag="job opened"):
    """A job began: the profile as it was, the parts by name, the painter's equipment as it was.

    system: of units; later: the products that follow on the same parts; coating, coating_key: what
    the coating system that lists them is called, and its file; racks: those whose sides are parts;
    rehearsal: done with water and cardboard, which never counts as a job.
    """

    job: str
    profile: Profile
    parts: tuple[str, ...]
    system: str = "us"
    gun: str = ""
    shop: dict[str, Any] = {}
    version: int = 1
    later: tuple[Profile, ...] = ()
    coating: str = ""
    coating_key: str = ""
    racks: tuple[Rack, ...] = ()
    rehearsal: bool = False

    @property
    def products(self) -> tuple[Profile, ...]:
        """Every product of the job, in their order."""
        return (self.profile, *self.later)

    @property
    def begun_from(self) -> str:
        """The key of what the job was begun from: a profile, or a coating system, or the rehearsal
        of one."""
        key = system_key(self.coating_key) if self.later else self.profile.key
        return rehearsal_key(key) if self.rehearsal else key

    @property
    def title(self) -> str:
        """What is sprayed, in a few words: the coating system, else the product; of a rehearsal that
        it is one."""
        names = " + ".join(each.name for each in self.products)
        name = (self.coating or names) if self.later else self.profile.name
        return f"Rehearsal: {name}" if self.rehearsal else name

    def present(self, product: int) -> str:
        """A product by its number: '2/3 Silver base'; its name alone where there is but one."""
        name = self.products[product - 1].name
        return f"{product}/{len(self.products)} {name}" if self.later else name


class ProductBegun(Event, frozen=True, tag="product begun"):
    """The work with a later product of the job began. product: its number, 2 for the second."""

    product: int
