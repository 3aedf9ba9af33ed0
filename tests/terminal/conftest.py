"""Every test of this folder drives the real program."""

from __future__ import annotations

from pathlib import Path

import pytest


@pytest.fixture
def home(own_home: Path) -> Path:
    """An empty home; the program keeps its files below it in ``booth``."""
    return own_home
