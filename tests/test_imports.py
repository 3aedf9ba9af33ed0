"""The import rule: who may know whom, held statically and in a running interpreter."""

from __future__ import annotations

import ast
import subprocess
import sys
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[1] / "booth"

#: Each layer may import itself and what stands before it. trade and units do not know each other.
MAY_IMPORT: dict[str, set[str]] = {
    "visible": set(),
    "moment": set(),
    "reading": {"moment"},
    "clock": {"moment", "reading"},
    "trade": set(),
    "units": {"visible"},
    "profile": {"trade", "units", "visible"},
    "shop": {"trade", "units", "visible", "profile"},
    "job": {"trade", "units", "visible", "profile", "shop", "moment", "reading"},
    "paths": set(),
    "places": {"paths"},
    "figure": {"trade", "units", "visible"},
}
#: Nothing of these may load the screen, or the unit registry at import.
WITHOUT_SCREEN = ["trade", "units", "profile", "shop", "job", "paths", "places", "clock", "cli"]
#: The only modules that may ask the machine for the time.
ASK_THE_TIME = {"clock.py"}


def modules(layer: str) -> list[Path]:
    single = PACKAGE / f"{layer}.py"
    return [single] if single.exists() else sorted((PACKAGE / layer).rglob("*.py"))


def imported(path: Path) -> set[str]:
    """The layers of booth that a file imports, late imports included."""
    found = set()
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        names: list[str] = []
        if isinstance(node, ast.Import):
            names = [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom) and node.module:
            names = [node.module]
            if node.module == "booth":
                names = [f"booth.{alias.name}" for alias in node.names]
        found |= {name.split(".")[1] for name in names if name.startswith("booth.")}
    return found


@pytest.mark.parametrize("layer", sorted(MAY_IMPORT))
def test_a_layer_imports_only_what_stands_below_it(layer: str) -> None:
    assert modules(layer), f"no module of {layer}"
    for path in modules(layer):
        beyond = imported(path) - MAY_IMPORT[layer] - {layer}
        assert not beyond, f"{path.name} imports {sorted(beyond)}"


def test_widgets_know_no_job_and_no_profile() -> None:
    for path in modules("widgets"):
        beyond = imported(path) & {
            "job",
            "profile",
            "shop",
            "screens",
            "instruments",
            "app",
            "trade",
        }
        assert not beyond, f"{path.name} imports {sorted(beyond)}"


@pytest.mark.parametrize("layer", WITHOUT_SCREEN)
def test_no_screen_and_no_registry_is_loaded_at_run_time(layer: str) -> None:
    """A static look cannot see a late import: a fresh interpreter can."""
    names = [
        "booth." + ".".join(path.relative_to(PACKAGE).with_suffix("").parts)
        for path in modules(layer)
    ]
    names = [name.removesuffix(".__init__") for name in names]
    code = (
        f"import sys\nfor name in {names!r}: __import__(name)\n"
        "print([m for m in ('textual', 'pint', 'numpy', 'rich') if m in sys.modules])"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, timeout=60
    )
    assert done.stdout.strip() == "[]"


def test_only_the_clock_asks_for_the_time() -> None:
    asking = {"now", "monotonic", "perf_counter", "utcnow", "today"}
    for path in PACKAGE.rglob("*.py"):
        if path.name in ASK_THE_TIME and path.parent == PACKAGE:
            continue
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.Import):
                assert "time" not in {alias.name for alias in node.names}, path
            elif isinstance(node, ast.ImportFrom):
                assert node.module != "time", path
            elif isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name):
                asked = node.attr in asking and node.value.id in {"datetime", "date", "time"}
                assert not asked, f"{path}:{node.lineno}"


def test_only_units_knows_pint() -> None:
    for path in PACKAGE.rglob("*.py"):
        if path.parent.name == "units":
            continue
        assert "pint" not in {
            name.split(".")[0]
            for node in ast.walk(ast.parse(path.read_text("utf-8")))
            for name in (
                [alias.name for alias in node.names] if isinstance(node, ast.Import)
                else [node.module or ""] if isinstance(node, ast.ImportFrom) else []
            )
        }, path  # fmt: skip
