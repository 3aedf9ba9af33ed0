"""Every test has an empty home of its own and no network."""

from __future__ import annotations

import gc
import socket
import sys
from collections.abc import Iterator
from itertools import count
from pathlib import Path
from typing import Any

import pytest
from hypothesis import settings

# How fast this machine is at the moment is not what a test of any text, size or number asks.
settings.register_profile("any machine", deadline=None)
settings.load_profile("any machine")

#: Variables that say where a program keeps its files, on any platform.
_HOMES = (
    "HOME",
    "USERPROFILE",
    "APPDATA",
    "LOCALAPPDATA",
    "XDG_CONFIG_HOME",
    "XDG_DATA_HOME",
    "XDG_STATE_HOME",
    "XDG_CACHE_HOME",
)


def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Among several workers, first what drives the real program: one waits for it, the others work."""
    if hasattr(config, "workerinput"):
        items.sort(key=lambda each: each.get_closest_marker("terminal") is None)


def pytest_collection_finish(session: pytest.Session) -> None:
    """What was loaded and collected stays to the end: nothing is gained by searching it for garbage."""
    gc.collect()
    gc.freeze()


class NetworkRefused(AssertionError):
    """A test tried to reach the network."""


def _refuse(one: socket.socket, address: Any) -> None:
    if one.family == getattr(socket, "AF_UNIX", None):
        return
    # There socket.socketpair, which asyncio needs, is made of two sockets of the loopback.
    loopback = isinstance(address, tuple) and address[:1] in (("127.0.0.1",), ("::1",))
    if sys.platform == "win32" and loopback:
        return
    raise NetworkRefused(f"No network in tests: {address!r}")


@pytest.fixture(scope="session")
def homes(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    """Give one home after the other: a folder of a test's own each, which would take longer to find."""
    folder = tmp_path_factory.mktemp("homes")
    return (folder / str(number) for number in count())


@pytest.fixture(autouse=True)
def own_home(homes: Iterator[Path], monkeypatch: pytest.MonkeyPatch) -> Path:
    """Give the test an empty home: BOOTH_HOME is its folder ``booth``, which does not exist yet."""
    home = next(homes)
    home.mkdir()
    for name in _HOMES:
        below = home / name.lower() if name.startswith("XDG") else home
        monkeypatch.setenv(name, str(below))
    monkeypatch.setenv("BOOTH_HOME", str(home / "booth"))
    # What a test starts keeps what it compiled, as a start of the program does.
    monkeypatch.delenv("PYTHONDONTWRITEBYTECODE", raising=False)
    return home


@pytest.fixture(scope="session", autouse=True)
def no_network() -> Iterator[None]:
    """Refuse every connection that leaves the machine's own files."""
    connect, connect_ex, sendto = (
        socket.socket.connect,
        socket.socket.connect_ex,
        socket.socket.sendto,
    )

    def guarded_connect(self: socket.socket, address: Any) -> None:
        _refuse(self, address)
        connect(self, address)

    def guarded_connect_ex(self: socket.socket, address: Any) -> int:
        _refuse(self, address)
        return connect_ex(self, address)

    def guarded_sendto(self: socket.socket, *arguments: Any) -> int:
        _refuse(self, arguments[-1])
        return sendto(self, *arguments)

    with pytest.MonkeyPatch.context() as patched:
        patched.setattr(socket.socket, "connect", guarded_connect)
        patched.setattr(socket.socket, "connect_ex", guarded_connect_ex)
        patched.setattr(socket.socket, "sendto", guarded_sendto)
        yield
