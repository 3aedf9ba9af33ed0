"""A new instrument is four places, as DEVELOPERS.md says: added to a copy, it is worked by keys there.

The gloss of a film is invented as a step for this test; 60 degrees is the geometry that ISO 2813 and
ASTM D523 use for most films (from memory), and nothing is computed from it but a mean.
"""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[1]

TRADE = '''"""The gloss of a film, from several readings."""

from __future__ import annotations

from booth.trade.result import BadInput


def mean_gloss_fraction(first_fraction: float, second_fraction: float) -> float:
    """Mean gloss of two readings.

    Args:
        first_fraction: one reading, as a share of the standard's [1].
        second_fraction: the other [1].

    Returns:
        Their mean, ``(first + second) / 2`` [1].

    Range: readings of 0 to 2.
    Source: arithmetic mean, by definition.

    >>> mean_gloss_fraction(0.8, 0.9)
    0.85
    """
    if not (0 <= first_fraction <= 2 and 0 <= second_fraction <= 2):
        raise BadInput("A gloss lies between 0 and 2.")
    return (first_fraction + second_fraction) / 2
'''

EVENT = '''

class GlossRead(Event, frozen=True, tag="gloss read"):
    """The gloss of the hardened film, as a share of the standard's."""

    gloss: Quantity
'''

INSTRUMENT = '''"""The gloss of the hardened film."""

from __future__ import annotations

from booth.bench.act import Context
from booth.bench.instrument import Instrument, number, quantity
from booth.forms.form import Field
from booth.forms.form import Values
from booth.log.events import Event, GlossRead
from booth.trade.film.gloss import mean_gloss_fraction
from booth.units import Kind
from booth.words.about.headed import about
from booth.words.shown import Readout


class Gloss(Instrument):
    """Two readings and their mean."""

    KIND = "gloss"
    NAME = "Gloss"
    ABOUT = about("What it is\\nRead where the lamp does not shine into the instrument.")
    KEEPS = (GlossRead,)

    def fields(self, context: Context, values: Values) -> tuple[Field, ...]:
        return (Field("first", "First", Kind.RATIO), Field("second", "Second", Kind.RATIO))

    def readout(self, context: Context, values: Values) -> Readout:
        first, second = number(values, "first"), number(values, "second")
        if first is None or second is None:
            return Readout("–", label="gloss")
        return Readout(f"{mean_gloss_fraction(first, second):.2f}", label="gloss, mean of two")

    def event(self, context: Context, values: Values) -> Event | str:
        second = quantity(values, "second")
        assert second is not None
        return GlossRead(n=0, at=context.now, gloss=second)
'''

LINE = ('    "result": "Result",\n', '    "gloss": "Gloss",\n    "result": "Result",\n')

WORKED = """
import asyncio, json, sys
from booth.app.app import BoothApp
from tests.manual_clock import ManualClock
from booth.files.places import Places
from booth.log.events import GlossRead
from tests.instruments.at_bench import AtBench

pure = AtBench("gloss")
pure.type("0.8")
pure.press("enter")
pure.type("0.9")
found = {"figure": pure.readout.figure, "keep": pure.keys["Enter"]}
pure.press("enter")
found["kept"] = [type(event).__name__ for event in pure.log]
found["back"] = pure.keys["Bksp"]
pure.press("backspace")
found["counted"] = len(pure.job.of(GlossRead))


async def on_screen():
    app = BoothApp(ManualClock(), Places.standard(), profile="two-pack-clear")
    async with app.run_test(size=(100, 30)) as pilot:
        await pilot.pause(0.3)
        await pilot.press("enter")
        await pilot.pause(0.2)
        await app.screen.open_step("gloss")
        await pilot.press(*"0.8", "enter", *"0.7", "enter")
        found["log"] = type(app.screen.desk.job.events[-1]).__name__
        await pilot.press("question_mark")
        await pilot.pause()
        found["help"] = " ".join(text for _, text in app.screen.told.paragraphs)


asyncio.run(on_screen())
print(json.dumps(found))
"""


def run(here: Path, *arguments: str) -> str:
    env = {**os.environ, "PYTHONPATH": str(here), "BOOTH_HOME": str(here / "home")}
    done = subprocess.run(
        [sys.executable, *arguments],
        cwd=here,
        env=env,
        capture_output=True,
        check=False,
        text=True,
        timeout=120,
    )
    assert done.returncode == 0, done.stderr[-2000:]
    return done.stdout


def test_a_new_instrument_is_four_places(tmp_path: Path) -> None:
    ignore = shutil.ignore_patterns("__pycache__", "terminal", "pictures", "trade", "kept")
    for name in ("booth", "profiles", "tests"):
        skipped = shutil.ignore_patterns("__pycache__") if name == "booth" else ignore
        shutil.copytree(ROOT / name, tmp_path / name, ignore=skipped)
    shutil.copy(ROOT / "pyproject.toml", tmp_path)

    (tmp_path / "booth/trade/film/gloss.py").write_text(TRADE, "utf-8")
    (tmp_path / "booth/instruments/gloss.py").write_text(INSTRUMENT, "utf-8")
    events = tmp_path / "booth/log/events.py"
    events.write_text(events.read_text("utf-8") + EVENT, "utf-8")
    kinds = tmp_path / "booth/profile/step_kinds.py"
    before = kinds.read_text("utf-8")
    assert LINE[0] in before
    kinds.write_text(before.replace(*LINE), "utf-8")

    found = json.loads(run(tmp_path, "-c", WORKED))
    assert found["figure"] == "0.85" and found["keep"] == "keep"
    assert found["kept"] == ["GlossRead"] and found["counted"] == 0
    assert found["back"].startswith("void: gloss read, gloss 0.9")
    assert found["log"] == "GlossRead"
    assert "Read where the lamp does not shine" in found["help"]

    answer = run(tmp_path, "-m", "booth", "figure", "mean-gloss", "80%", "90%", "--why")
    assert answer.startswith("mean gloss 85") and "arithmetic mean" in answer
