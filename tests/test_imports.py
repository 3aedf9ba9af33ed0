"""The import rule: one order of packages, each knows only those before it; held statically and at run time."""

from __future__ import annotations

import ast
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[1] / "booth"

#: Who may know whom: each what stands before it, nobody what stands behind.
ORDER = (
    "trade",
    "files",
    "moment",
    "clock_reading",
    "clock",
    "units",
    "toml",
    "profile",
    "shop",
    "log",
    "job",
    "learnt",
    "words",
    "forms",
    "bench",
    "instruments",
    "card",
    "figure",
    "widgets",
    "screens",
    "app",
    "cli",
)
#: The trade knows nobody but itself, nor do these know more than what is named.
ONLY: dict[str, set[str]] = {
    "trade": set(),
    "files": set(),
    "moment": set(),
    "clock_reading": {"moment"},
    "clock": {"moment", "clock_reading"},
    "units": {"files"},
    "figure": {"trade", "files", "units", "profile", "shop"},
}
#: Nothing of these may load the screen, or the unit registry at import.
WITHOUT_SCREEN = ORDER[: ORDER.index("widgets")]
#: The only modules that may ask the machine for the time.
ASK_THE_TIME = {"clock.py"}
STARTERS = {"__init__", "__main__"}


def layers() -> set[str]:
    return {path.stem for path in PACKAGE.iterdir() if path.suffix == ".py" or is_package(path)}


def is_package(path: Path) -> bool:
    return path.is_dir() and any(path.glob("*.py"))


def modules(layer: str) -> list[Path]:
    single = PACKAGE / f"{layer}.py"
    return [single] if single.exists() else sorted((PACKAGE / layer).rglob("*.py"))


def imported(path: Path) -> Iterator[tuple[int, str]]:
    """Line and layer of every import of booth in a file, late ones and those for types included."""
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        names: list[str] = []
        if isinstance(node, ast.Import):
            names = [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom) and node.module:
            names = [node.module]
            if node.module == "booth":
                names = [
                    f"booth.{alias.name}" for alias in node.names if alias.name != "__version__"
                ]
        for name in names:
            if name.startswith("booth."):
                yield node.lineno, name.split(".")[1]


def test_every_package_has_its_place_in_the_order() -> None:
    assert layers() - STARTERS == set(ORDER)


@pytest.mark.parametrize("layer", ORDER)
def test_a_package_imports_only_what_stands_before_it(layer: str) -> None:
    assert modules(layer), f"no module of {layer}"
    allowed = ONLY.get(layer, set(ORDER[: ORDER.index(layer)])) | {layer}
    beyond = [
        f"{path.relative_to(PACKAGE)}:{line} imports {found}"
        for path in modules(layer)
        for line, found in imported(path)
        if found not in allowed
    ]
    assert not beyond, "\n".join(beyond)


def test_no_modules_import_each_other_in_a_circle() -> None:
    """At import, not for types only: a circle makes the order of imports matter."""
    names = {name_of(path): path for path in PACKAGE.rglob("*.py")}
    edges = {name: at_import(path, set(names)) - {name} for name, path in names.items()}
    done: set[str] = set()

    def walk(name: str, way: tuple[str, ...]) -> None:
        assert name not in way, " -> ".join((*way[way.index(name) :], name))
        if name in done:
            return
        for other in sorted(edges[name]):
            walk(other, (*way, name))
        done.add(name)

    for name in sorted(names):
        walk(name, ())


def name_of(path: Path) -> str:
    parts = path.relative_to(PACKAGE.parent).with_suffix("").parts
    return ".".join(parts).removesuffix(".__init__")


def at_import(path: Path, known: set[str]) -> set[str]:
    """The modules of booth that are imported when this one is: not late, not for types only."""
    found: set[str] = set()
    for node in ast.parse(path.read_text("utf-8")).body:
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names} & known
        elif isinstance(node, ast.ImportFrom) and node.module:
            inside = {f"{node.module}.{alias.name}" for alias in node.names} & known
            found |= inside or ({node.module} & known)
    return found


def test_no_screen_and_no_registry_is_loaded_at_run_time() -> None:
    """A static look cannot see a late import: a fresh interpreter can. Layer after layer in one."""
    code = (
        f"import sys\nfor layer, names in {[(x, [*map(name_of, modules(x))]) for x in WITHOUT_SCREEN]!r}:\n"
        " for name in names: __import__(name)\n"
        " print(layer, [m for m in ('textual', 'pint', 'numpy', 'rich') if m in sys.modules])"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True, timeout=60
    )
    assert done.stdout.splitlines() == [f"{layer} []" for layer in WITHOUT_SCREEN]


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
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            names: list[str] = []
            if isinstance(node, ast.Import):
                names = [alias.name for alias in node.names]
            elif isinstance(node, ast.ImportFrom):
                names = [node.module or ""]
            assert "pint" not in {name.split(".")[0] for name in names}, path
