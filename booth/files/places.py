"""Where the painter's files live. Nothing is made or read here; whoever writes makes the folder.

By the conventions of the platform; the environment variable ``BOOTH_HOME`` moves everything.
"""

from __future__ import annotations

import os
from pathlib import Path

import msgspec

#: The environment variable that moves everything.
VARIABLE = "BOOTH_HOME"
NAME = "booth"


class Places(msgspec.Struct, frozen=True):
    """The folders and files of one run, found once at the start and handed down.

    jobs_dir: the session logs, one file a job; profiles_dirs: the painter's own first, then the
    bundled ones.
    """

    jobs_dir: Path
    profiles_dirs: tuple[Path, ...]
    own_profiles_dir: Path
    shop_file: Path
    preferences_file: Path
    cache_dir: Path

    @property
    def summaries_file(self) -> Path:
        """What lists say of past jobs, so that not every log is read at every start: may be deleted."""
        return self.cache_dir.with_name("past-jobs.cache")

    @classmethod
    def standard(cls) -> Places:
        """By the conventions of the platform, or under the one variable that moves everything."""
        data, config = home(), home()
        if data is None or config is None:
            # Imported only where it is needed: the start is measured in milliseconds.
            from platformdirs import user_config_path, user_data_path

            data = user_data_path(NAME, appauthor=False)
            config = user_config_path(NAME, appauthor=False)
        own, bundled = config / "profiles", bundled_profiles_dir()
        return cls(
            jobs_dir=data / "jobs",
            profiles_dirs=(own,) if bundled is None else (own, bundled),
            own_profiles_dir=own,
            shop_file=config / "shop.toml",
            preferences_file=config / "preferences.toml",
            cache_dir=data / "sounds",
        )


def home() -> Path | None:
    """Give the folder that ``BOOTH_HOME`` names, absolute; None when it is unset or empty."""
    named = os.environ.get(VARIABLE, "").strip()
    return Path(named).expanduser().absolute() if named else None


def cards_dir(jobs_dir: Path) -> Path:
    """Give the folder for the cards of jobs where the shop names none: among the painter's documents;
    beside the jobs where ``BOOTH_HOME`` moves everything, or there is no such folder."""
    if home() is None:
        from platformdirs import user_documents_path

        documents = user_documents_path()
        if documents.is_dir():
            return documents / NAME
    return jobs_dir.parent / "cards"


def bundled_profiles_dir(package: Path | None = None) -> Path | None:
    """Give the folder of the bundled profiles; None when they are missing.

    In an installed program they lie inside the package, in a source checkout beside it.
    """
    package = package or Path(__file__).resolve().parents[1]
    inside = package / "_profiles"
    if inside.is_dir():
        return inside
    # A folder called profiles beside an installed package could be anybody's.
    beside = package.parent / "profiles"
    is_checkout = (package.parent / "pyproject.toml").is_file()
    return beside if is_checkout and beside.is_dir() else None
