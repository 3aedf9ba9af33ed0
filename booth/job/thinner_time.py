"""Whether the thinner goes in before or after the induction, as the data sheet has it. Pure."""

from __future__ import annotations

import enum

from booth.job.recipe import thinner_of
from booth.profile.model import Profile


class ThinnerTime(enum.StrEnum):
    """When it goes in; unsaid: the sheet asks for an induction and does not say."""

    BEFORE = "before induction"
    AFTER = "after induction"
    UNSAID = "not said"


def thinner_time(profile: Profile) -> ThinnerTime | None:
    """Give it for the profile as the mix in use has it; None where nothing is thinned, or stands."""
    thinner, mix = thinner_of(profile), profile.mix
    if thinner is None or mix is None or mix.induction is None:
        return None
    return ThinnerTime(thinner.when) if thinner.when else ThinnerTime.UNSAID
