"""The few things that are remembered from one start to the next: units, theme, whether hints are shown."""

from __future__ import annotations

import os
from pathlib import Path

import msgspec

from booth.units import System
from booth.widgets.themes import DARK_BOOTH, THEMES


class Preferences(msgspec.Struct, frozen=True):
    """What the painter last chose; units is empty until they were chosen on a screen."""

    units: str = ""
    theme: str = DARK_BOOTH.name
    hints: bool = True

    @classmethod
    def read(cls, path: Path) -> Preferences:
        """Read them; whatever cannot be read or makes no sense is left at its default."""
        if not path.exists():
            return cls()
        import tomllib

        try:
            found = tomllib.loads(path.read_text("utf-8-sig"))
        except (OSError, ValueError):
            return cls()
        units, theme, hints = found.get("units"), found.get("theme"), found.get("hints")
        return cls(
            units=units if units in {each.value for each in System} else "",
            theme=theme if theme in {each.name for each in THEMES} else DARK_BOOTH.name,
            hints=hints if isinstance(hints, bool) else True,
        )

    def changed(self, key: str, value: str | bool) -> Preferences:
        """Give the same with one of them changed."""
        return msgspec.structs.replace(self, **{key: value})

    def write(self, path: Path) -> None:
        """Write them, whole or not at all."""
        import tomli_w

        path.parent.mkdir(parents=True, exist_ok=True)
        fresh = path.with_suffix(".new")
        fresh.write_text(tomli_w.dumps(msgspec.structs.asdict(self)), "utf-8")
        os.replace(fresh, path)
