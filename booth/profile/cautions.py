"""The cautions of a job: those its profile's hazards bring, and those that always hold.

They warn and defer to the data sheet, local codes and licensed practice; none of them says that
anything is harmless, and a test holds that.
"""

from __future__ import annotations

import textwrap

from booth.files.safe_text import visible
from booth.profile.caution_words import ALWAYS, BY_HAZARD, WIDEST, Caution
from booth.profile.model import Hazard, Profile


def cautions_for(profile: Profile) -> tuple[Caution, ...]:
    """Give the cautions to go through before a job with `profile`, one by one.

    First what this product brings, then its data sheet's own warnings, then what always holds.
    """
    brought = [BY_HAZARD[hazard] for hazard in Hazard if hazard in profile.hazards]
    own = [
        Caution(
            key=f"of the profile {number}",
            title="The profile's own warning",
            lines=tuple(textwrap.wrap(visible(words), WIDEST)) or ("-",),
            source=profile.source,
        )
        for number, words in enumerate(profile.cautions, start=1)
    ]
    return (*brought, *own, *ALWAYS)
