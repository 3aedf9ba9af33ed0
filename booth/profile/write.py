"""Writes a profile as TOML, each quantity in units that a painter would type."""

from __future__ import annotations

import tomli_w

from booth.profile.keys import PROFILE
from booth.profile.model import Profile
from booth.units import System

HEADER = "# Coating profile. `booth check --keys` tells every key.\n\n"


def write(profile: Profile, system: System = System.US) -> str:
    """Give `profile` as the text of a TOML file; read back, it is the same within rounding.

    Each quantity stands in the unit in which its number is shortest, the units of `system` first:
    what was typed as 6.5 fl oz/min comes out as that, though it is kept in ml/min.
    """
    return HEADER + tomli_w.dumps(PROFILE.table.write(profile, system))
