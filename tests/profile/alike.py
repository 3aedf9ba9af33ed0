"""Whether two profiles are the same but for the rounding of their numbers; one read from bytes."""

from __future__ import annotations

import math
from typing import Any

import msgspec

from booth.files.faults import Fault
from booth.files.file_text import text_of_bytes
from booth.profile.keys import PROFILE
from booth.profile.model import Profile
from booth.profile.read import read_text

# Five digits are written, so half a unit of the fifth is lost: 5e-5 of the number. A temperature
# is rounded in the scale it is written in, where 100 F is rounded by 0.005 F.
RELATIVE = 6e-5
ABSOLUTE = 6e-3


def differences(one: Any, other: Any, path: str = "") -> list[str]:
    """Give where two profiles differ by more than rounding; nothing if they are alike."""
    if isinstance(one, msgspec.Struct) and type(one) is type(other):
        return [
            each
            for name in one.__struct_fields__
            for each in differences(getattr(one, name), getattr(other, name), f"{path}.{name}")
        ]
    if isinstance(one, tuple) and isinstance(other, tuple) and len(one) == len(other):
        return [
            each
            for number, (left, right) in enumerate(zip(one, other, strict=True))
            for each in differences(left, right, f"{path}[{number}]")
        ]
    if isinstance(one, float) and isinstance(other, float):
        absolute = ABSOLUTE if path.endswith("_c") or "_c." in path else 0.0
        alike = math.isclose(one, other, rel_tol=RELATIVE, abs_tol=absolute)
        return [] if alike else [f"{path}: {one!r} and {other!r}"]
    return [] if one == other else [f"{path}: {one!r} and {other!r}"]


def read_bytes(content: bytes, name: str) -> Profile | tuple[Fault, ...]:
    """Read a profile from what a file holds, as from the file itself."""
    text = text_of_bytes(content, name, PROFILE.what)
    return (text,) if isinstance(text, Fault) else read_text(text, name)
