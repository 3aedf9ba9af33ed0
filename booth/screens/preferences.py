"""What is remembered from one start to the next: units, theme, whether hints are shown. Knows no screen."""

from __future__ import annotations

from pathlib import Path

import msgspec

from booth.files.atomic import write_over
from booth.files.faults import Fault
from booth.files.file_text import text_of
from booth.units import System


class Preferences(msgspec.Struct, frozen=True):
    """What the painter last chose; units and theme are empty until they were chosen on a screen."""

    units: str = ""
    theme: str = ""
    hints: bool = True

    @classmethod
    def read(cls, path: Path) -> Preferences:
        """Read them; whatever cannot be read or makes no sense is left at its default. Never raises."""
        text = text_of(path)
        if isinstance(text, Fault):
            return cls()
        import tomllib

        try:
            found = tomllib.loads(text)
        except (ValueError, RecursionError):
            return cls()
        units, theme, hints = found.get("units"), found.get("theme"), found.get("hints")
        return cls(
            units=units if isinstance(units, str) and units in set(System) else "",
            theme=theme if isinstance(theme, str) else "",
            hints=hints if isinstance(hints, bool) else True,
        )

    def changed(self, key: str, value: str | bool) -> Preferences:
        return msgspec.structs.replace(self, **{key: value})

    def write(self, path: Path) -> None:
        """Write them, whole or not at all. Raises OSError."""
        import tomli_w

        write_over(path, tomli_w.dumps(msgspec.structs.asdict(self)).encode())
