"""Where files live, and that tests touch neither the painter's home nor the network."""

from __future__ import annotations

import os
import socket
import subprocess
import sys
import tomllib
from pathlib import Path

import platformdirs
import pytest

from booth.files import places
from booth.files.places import Places, bundled_profiles_dir, home

ROOT = Path(__file__).resolve().parents[2]


def test_one_variable_moves_everything(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv("BOOTH_HOME", str(tmp_path))
    here = Places.standard()
    assert here.jobs_dir == tmp_path / "jobs"
    assert here.shop_file == tmp_path / "shop.toml"
    assert here.preferences_file == tmp_path / "preferences.toml"
    assert here.cache_dir == tmp_path / "sounds"
    assert here.own_profiles_dir == here.profiles_dirs[0] == tmp_path / "profiles"


def test_looking_makes_no_folder(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv("BOOTH_HOME", str(tmp_path / "none"))
    Places.standard()
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("value", ["", "   "])
def test_empty_variable_counts_as_unset(monkeypatch: pytest.MonkeyPatch, value: str) -> None:
    monkeypatch.setenv("BOOTH_HOME", value)
    assert home() is None
    here = Places.standard()
    assert here.jobs_dir.parent == Path(platformdirs.user_data_dir("booth", appauthor=False))
    assert here.shop_file.parent == Path(platformdirs.user_config_dir("booth", appauthor=False))


def test_home_may_be_relative_or_begin_with_a_tilde(
    monkeypatch: pytest.MonkeyPatch, own_home: Path, tmp_path: Path
) -> None:
    monkeypatch.setenv("BOOTH_HOME", "~/shop")
    assert home() == own_home / "shop"
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("BOOTH_HOME", "shop")
    assert home() == tmp_path / "shop"


@pytest.mark.skipif(sys.platform != "linux", reason="the XDG base directories are Linux's")
def test_follows_the_xdg_base_directories(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.delenv("BOOTH_HOME")
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "config"))
    assert Places.standard().jobs_dir == tmp_path / "data" / "booth" / "jobs"
    assert Places.standard().shop_file == tmp_path / "config" / "booth" / "shop.toml"


def test_bundled_profiles_inside_an_installed_package(tmp_path: Path) -> None:
    package = tmp_path / "site" / "booth"
    (package / "_profiles").mkdir(parents=True)
    assert bundled_profiles_dir(package) == package / "_profiles"


def test_bundled_profiles_beside_the_package_in_a_checkout(tmp_path: Path) -> None:
    package = tmp_path / "booth"
    package.mkdir()
    (tmp_path / "profiles").mkdir()
    assert bundled_profiles_dir(package) is None, "nothing says that this is a checkout"
    (tmp_path / "pyproject.toml").touch()
    assert bundled_profiles_dir(package) == tmp_path / "profiles"


def test_missing_bundled_profiles_are_no_error(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    assert bundled_profiles_dir(tmp_path / "booth") is None
    monkeypatch.setattr(places, "bundled_profiles_dir", lambda: None)
    here = Places.standard()
    assert here.profiles_dirs == (here.own_profiles_dir,)


def test_the_wheel_carries_the_profiles_where_they_are_looked_for() -> None:
    build = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    wheel = build["tool"]["hatch"]["build"]["targets"]["wheel"]
    assert wheel["force-include"] == {"profiles": "booth/_profiles"}


def test_places_load_neither_pint_nor_textual_nor_platformdirs() -> None:
    code = (
        "import sys; from booth.files.places import Places; Places.standard();"
        "print([m for m in ('pint', 'textual', 'platformdirs') if m in sys.modules])"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=ROOT
    )
    assert done.stdout.strip() == "[]"


def test_each_test_has_an_empty_home(own_home: Path) -> None:
    assert Path.home() == own_home
    assert list(own_home.iterdir()) == []
    assert os.environ["BOOTH_HOME"].startswith(str(own_home))
    assert Places.standard().jobs_dir == own_home / "booth" / "jobs"


def test_the_network_is_refused() -> None:
    # 192.0.2.0/24 is kept for documentation (RFC 5737): nobody answers there, were it let through.
    with socket.socket() as one:
        one.settimeout(0.01)
        with pytest.raises(AssertionError, match="No network"):
            one.connect(("192.0.2.1", 9))
        with pytest.raises(AssertionError, match="No network"):
            one.connect_ex(("192.0.2.1", 9))
    with (
        socket.socket(type=socket.SOCK_DGRAM) as one,
        pytest.raises(AssertionError, match="No network"),
    ):
        one.sendto(b"", ("192.0.2.1", 9))


@pytest.mark.skipif(not hasattr(socket, "AF_UNIX"), reason="no local sockets here")
def test_local_sockets_work(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    with socket.socket(socket.AF_UNIX) as listening, socket.socket(socket.AF_UNIX) as calling:
        listening.bind("here")
        listening.listen()
        calling.connect("here")
        answering, _ = listening.accept()
        with answering:
            calling.send(b"heard")
            assert answering.recv(5) == b"heard"
