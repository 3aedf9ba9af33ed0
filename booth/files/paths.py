"""Where the painter's files live. Nothing is made or read here; whoever writes makes the folder.

By the conventions of the platform; the environment variable ``BOOTH_HOME`` moves everything.
"""

from __future__ import annotations

import os
from pathlib import Path

#: The environment variable that moves everything.
VARIABLE = "BOOTH_HOME"

_NAME = "booth"


def home() -> Path | None:
    """Give the folder that ``BOOTH_HOME`` names, absolute; None when it is unset or empty."""
    named = os.environ.get(VARIABLE, "").strip()
    return Path(named).expanduser().absolute() if named else None


def data_dir() -> Path:
    """Give the folder of what the program writes: session logs and what was set aside."""
    moved = home()
    if moved is not None:
        return moved
    # Imported only where it is needed: the start is measured in milliseconds.
    from platformdirs import user_data_path

    return user_data_path(_NAME, appauthor=False)


def config_dir() -> Path:
    """Give the folder of what the painter writes: coating profiles and the shop file."""
    moved = home()
    if moved is not None:
        return moved
    from platformdirs import user_config_path

    return user_config_path(_NAME, appauthor=False)


def jobs_dir() -> Path:
    """Give the folder of the session logs, one file a job."""
    return data_dir() / "jobs"


def set_aside_dir() -> Path:
    """Give the folder of what could not be read and was set aside."""
    return data_dir() / "set-aside"


def shop_file() -> Path:
    """Give the path of the shop file."""
    return config_dir() / "shop.toml"


def own_profiles_dir() -> Path:
    """Give the folder of the painter's own coating profiles."""
    return config_dir() / "profiles"


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
    checkout = (package.parent / "pyproject.toml").is_file()
    return beside if checkout and beside.is_dir() else None


def profiles_dirs() -> tuple[Path, ...]:
    """Give the folders of coating profiles: the painter's own first, then the bundled ones."""
    bundled = bundled_profiles_dir()
    return (own_profiles_dir(),) if bundled is None else (own_profiles_dir(), bundled)
