"""Words completed as a shell asks for them, by the real command; nothing of it is loaded otherwise."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from booth.figure.catalogue import subjects
from tests.shop.made import WHOLE

ROOT = Path(__file__).parents[2]


def booth(*words: str, **more: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "booth", *words],
        cwd=ROOT,
        env={**os.environ, **more},
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
        stdin=subprocess.DEVNULL,
    )


def completed(line: str, tmp_path: Path) -> list[str]:
    """What argcomplete answers on its file descriptor for a line with the cursor at its end."""
    answer = tmp_path / "answer"
    done = booth(
        COMP_LINE=line,
        COMP_POINT=str(len(line)),
        _ARGCOMPLETE="1",
        _ARGCOMPLETE_IFS="\n",
        _ARGCOMPLETE_SUPPRESS_SPACE="1",
        _ARGCOMPLETE_STDOUT_FILENAME=str(answer),
    )
    assert done.returncode == 0, done.stderr
    return answer.read_text("utf-8").split("\n")


@pytest.mark.parametrize(
    ("line", "expected"),
    [
        ("booth fi", ["figure"]),
        ("booth figure dew", ["dew-margin", "dew-point"]),
        ("booth figure viscosity ti", ["time="]),
        ("booth figure mix 200g --prof", ["--profile"]),
        ("booth figure mix 200g --profile two-pack-g", ["two-pack-gloss"]),
        ("booth figure pace --gun cl", [r"clear\ gun"]),
        ("booth figure dew-point --units m", ["metric"]),
        ("booth figure fault fish", ["fisheyes"]),
        ("booth figure solvent tol", ["toluene"]),
        ("booth --profile zinc", ["zinc-primer"]),
        ("booth --reh", ["--rehearse"]),
        ("booth --rehearse zinc", ["zinc-primer"]),
        ("booth --rehearse car-s", ["car-silver"]),
        ("booth plan car-s", ["car-silver"]),
        ("booth completion z", ["zsh"]),
    ],
)
def test_words_are_completed(
    line: str, expected: list[str], own_home: Path, tmp_path: Path
) -> None:
    (own_home / "booth").mkdir()
    (own_home / "booth" / "shop.toml").write_text(WHOLE, "utf-8")
    assert completed(line, tmp_path) == expected


def test_every_subject_is_offered(own_home: Path, tmp_path: Path) -> None:
    assert set(subjects()) <= set(completed("booth figure ", tmp_path))


@pytest.mark.parametrize(
    ("shell", "holds"),
    [("bash", "complete "), ("zsh", "compdef"), ("fish", "complete --command booth")],
)
def test_each_shell_gets_what_it_can_read(shell: str, holds: str, tmp_path: Path) -> None:
    done = booth("completion", shell)
    assert (done.returncode, done.stderr) == (0, "")
    assert holds in done.stdout and "_ARGCOMPLETE" in done.stdout
    if shutil.which(shell):
        script = tmp_path / "script"
        script.write_text(done.stdout, "utf-8")
        subprocess.run([shell, "-n", str(script)], check=True, timeout=30)


def test_another_shell_is_refused() -> None:
    done = booth("completion", "tcsh")
    assert done.returncode == 2 and "bash" in done.stderr


@pytest.mark.parametrize("words", [["--version"], ["figure", "dew-point", "72F", "60%"], ["log"]])
def test_nothing_of_it_is_loaded_otherwise(words: list[str], own_home: Path) -> None:
    code = (
        "import sys\nfrom booth.cli.command import main\n"
        "try: main(sys.argv[1:])\nexcept SystemExit: pass\n"
        "print('argcomplete' in sys.modules, file=sys.stderr)"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, *words],
        cwd=ROOT,
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    assert done.stderr.strip().splitlines()[-1] == "False"
