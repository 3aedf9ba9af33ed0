"""The folders and files of one run, found once at the start and handed down."""

from __future__ import annotations

from pathlib import Path

import msgspec

from booth.files import paths


class Places(msgspec.Struct, frozen=True):
    """Where everything is."""

    jobs_dir: Path
    profiles_dirs: tuple[Path, ...]
    own_profiles_dir: Path
    shop_file: Path
    preferences_file: Path
    cache_dir: Path

    @classmethod
    def standard(cls) -> Places:
        """By the conventions of the platform, or under the one variable that moves everything."""
        return cls(
            jobs_dir=paths.jobs_dir(),
            profiles_dirs=paths.profiles_dirs(),
            own_profiles_dir=paths.own_profiles_dir(),
            shop_file=paths.shop_file(),
            preferences_file=paths.config_dir() / "preferences.toml",
            cache_dir=paths.data_dir() / "sounds",
        )
