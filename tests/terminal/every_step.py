"""A painter who uses every step of one job, from the list of profiles to the closed job.

Keys that do something are counted apart from the characters of what is typed, step by step.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager, suppress

from booth.log.events import AlarmAcknowledged
from tests.terminal.driver import ROOT, NotShown, Terminal
from tests.terminal.painter import (
    kept_of,
    next_step,
    on_step,
    read_cautions,
    silence,
    tick_every_line,
)

SPED_UP = 60
PARTS = ("hood", "lid")
COATS = 3

SHOP = """
units = "us"
[[gun]]
name = "clear gun"
tip = "1.4 mm"
cup = "20 fl oz"
air = "10 cfm"
at = "29 psi"
hvlp = true
[[cup]]
cup = "Ford #4"
correction = 1.02
[compressor]
receiver = "60 gal"
flow = "11 cfm"
cut_in = "115 psi"
cut_out = "145 psi"
[room]
volume = "3500 ft3"
exhaust = "1200 cfm"
open_face = "10 sq ft"
"""


class Painter:
    """Presses keys, counting those that do something apart from the characters of what is typed."""

    def __init__(self, run: Terminal) -> None:
        self.run = run
        self.run.silences = True
        self.typed = 0
        self.by_step: Counter[str] = Counter()

    @property
    def alarms(self) -> int:
        """Keys that went to alarms."""
        return self.run.alarm_keys

    @property
    def keys(self) -> int:
        """Keys that do something, alarms left out."""
        return self.run.keys_pressed - self.typed - self.alarms

    def over(self, step: str) -> None:
        """What was pressed since the last step was over belongs to this one."""
        self.by_step[step] += self.keys - self.by_step.total()

    def press(self, *keys: str) -> None:
        self.run.press(*keys)

    def type(self, text: str) -> None:
        self.typed += len(text)
        self.run.press(text)

    def see(self, wanted: str) -> None:
        self.run.until(wanted)

    def press_for(self, key: str, wanted: str) -> None:
        """Press a key and see what it does; once more where an alarm that had just come up took it."""
        for _ in range(4):
            self.silence()  # what is in front would take it, for its own part
            self.press(key)
            with suppress(NotShown):
                self.run.until(wanted, patience_s=3.0)
                return
            self.run.alarm_keys += 1
        raise AssertionError(f"{key} does not lead to {wanted}: {self.run.text}")

    def see_kept(self, wanted: str) -> None:
        """See it in a line of what was kept, with its time of day."""
        self.see(rf"\d\d:\d\d  .*{wanted}")

    def hear(self, alarm: str, number: int) -> None:
        """Wait until it rings, if it did not ring, and was silenced, together with one before."""

        def heard(text: str) -> bool:
            return alarm in text or len(kept_of(self.run.home, AlarmAcknowledged)) >= number

        self.run.until(heard)

    def silence(self) -> None:
        silence(self.run)

    def enter_figure(self, text: str) -> None:
        """Type a figure, see that it was understood, keep it."""
        self.type(text)
        self.see(rf"{re.escape(text)}.*= ")
        self.press("enter")

    @contextmanager
    def step(self, name: str) -> Iterator[None]:
        """Work at the open step, which is this one; Enter then leads to the next."""
        on_step(self.run, name)
        yield
        next_step(self.run, lambda: self.press("enter"))
        self.over(name)


def three_coats() -> str:
    """A bundled profile with three coats and waits that a test can sit out."""
    text = (ROOT / "profiles" / "two-pack-clear.toml").read_text("utf-8")
    for old, new in (
        ('name = "Two-pack clear, 2:1"', 'name = "Aaa three coats"'),
        ("coats = 2", f"coats = {COATS}"),
        ('dry_total = "1.8 to 2.2 mil"', 'dry_total = "2.7 to 3.3 mil"'),
        ('flash_off = { time = "8 min"', 'flash_off = { time = "30 s"'),
        ('recoat_opens = { time = "10 min"', 'recoat_opens = { time = "1 min"'),
        ('pot_life = { time = "3 h"', 'pot_life = { time = "8 h"'),
    ):
        assert text.count(old) == 1, old
        text = text.replace(old, new)
    return text


def whole_job(p: Painter) -> None:
    """From the first screen to the closed job."""
    _open(p)
    _before_mixing(p)
    _mix_and_thin(p)
    _set_the_gun(p)
    _coats_and_films(p)
    _after(p)
    p.see("Coating profiles")
    p.over("Result")


def _open(p: Painter) -> None:
    p.see("→ Aaa three coats")
    p.press("enter")
    p.see("begin the job")
    p.type(", ".join(PARTS))
    p.see("on: Gun")
    p.press("enter")
    p.see("clear gun")
    p.press("enter")
    p.over("to the bench")


def _before_mixing(p: Painter) -> None:
    with p.step("Cautions"):
        read_cautions(p.run)
    with p.step("Prepare"):
        tick_every_line(p.run)
    with p.step("Weather"):
        p.enter_figure("72")
        p.enter_figure("50")
        p.enter_figure("71")
        # Dew point at 72 F and 50 %: 52 F, by the psychrometric chart of ASHRAE (recalled, to 1 F).
        p.see("dew point 52 °F")
        p.see("air 72 °F, humidity 50 %")
    with p.step("Fresh air"):
        p.see("not a permission")
        # 1200 cfm through 10 square feet are 120 ft/min.
        p.see("120 ft/min")
    with p.step("Amount"):
        p.enter_figure("3")
        p.enter_figure("4")
        p.see("keep the amount")
        p.see("12.0 ft²")
        p.see("a cup of 20.0 fl oz holds it")
        p.press("enter")
        p.see("next step")
    with p.step("Plan"):
        p.see("6 coats to go")


def _mix_and_thin(p: Painter) -> None:
    with p.step("Mix"):
        for name in ("clear", "hardener", "medium thinner"):
            p.see(rf"► {name}|{name} .*►")
            p.run.linger(1.0 / SPED_UP)
            p.press("space")
        p.see("to be sprayed before")
    with p.step("Flow cup"):
        for number in (1, 2, 3):
            _time_the_cup(p, 30.0, number)
        p.see("profile: 20.0 s to 23.0 s in a Ford #4")
    on_step(p.run, "Thin")
    p.see("medium thinner: add now")
    p.press("space")
    p.see("time the cup again")
    next_step(p.run, lambda: p.press("enter"))
    p.over("Thin")
    with p.step("Flow cup"):
        _time_the_cup(p, 20.5, 1)
    with p.step("Thin"):
        p.see(r"10\.0 % thinner: ")
        p.see(r"1\d\.\d % thinner: \d")
    with p.step("Strain and fill"):
        p.see("strainer")


def _time_the_cup(p: Painter, seconds: float, number: int) -> None:
    p.press("space")
    p.see("stop at the first break")
    p.run.linger(seconds / SPED_UP)
    p.press("space")
    p.see(r"runs" + r" +\d+\.\d" * number + ".*mean")


def _set_the_gun(p: Painter) -> None:
    with p.step("Air"):
        p.see("26-30|inlet asked for")
        p.enter_figure("28")
        p.see(r"inlet 28 psi")
        p.see("the compressor gives 11.0 cfm|compressor")
    with p.step("Catch"):
        # The gun was just filled with the coating: that is what is caught first.
        _catch(p, "2.25oz")
        p.see_kept(r"9\.0 fl oz")
        p.see("a full cup of 20.0 fl oz lasts 2 min 13 s")
        p.press("down", "down", "right")
        p.see("◂ water ▸")
        _catch(p, "2.4")
        p.see_kept(r"9\.6 fl oz")
    with p.step("Fan"):
        p.enter_figure("11")
        # Half over half: the fan less its half.
        p.see("move over 5.5 in")
        p.press("enter", "enter")
        p.see_kept(r"11\.0 in")
    with p.step("Test pattern"):
        p.press("right")
        p.see("◂ even")
        p.press("enter")
        p.see_kept("even")
    with p.step("Pace"):
        p.see("for a pass of 4.00 ft, 2.4 mil wet")
        p.press("space")
        p.see("stop the bar")
        p.run.linger(3 * 3.6 / SPED_UP)  # three passes; their number is in blocks, read elsewhere
        p.press("space")
        p.see("start the bar")
        p.press("left")
        p.see("◂ your own pass, timed")
        p.press("space")
        p.see("the pass ends")
        p.run.linger(3.6 / SPED_UP)
        p.press("space")
        p.see(r"4\.00 ft in \d")


def _catch(p: Painter, caught: str) -> None:
    p.press("space")
    p.see("caught for")
    p.type(caught)
    p.see(r"= 2")
    p.press("enter")
    p.see("Enter  keep ")
    p.press("enter")


def _coats_and_films(p: Painter) -> None:
    on_step(p.run, "Coats and waits")
    for coat in range(1, COATS + 1):
        for at, part in enumerate(PARTS, 1):
            p.see(rf"begin coat {coat}: {part}")
            if coat > 1:
                p.see(rf"{part} +{coat - 1}/{COATS} .*► READY")
                p.hear(f"{part}: ready for coat {coat} since", len(PARTS) * (coat - 2) + at)
                p.silence()
            p.press_for("space", rf"end coat {coat}: {part}")
            p.run.linger(6.0 / SPED_UP)
            p.press("space")
            p.see(rf"{part} +{coat}/{COATS}")
            if coat == 1:
                p.press("right")
                p.see("→ Read the wet-film gauge")
                p.press("enter")
                on_step(p.run, "Wet film")
                _gauge(p, part, coat)
                p.see("Enter  back to the coats")
                p.press_for("enter", "(begin|end) coat")
    p.see("Enter  next step")
    p.press_for("enter", "Last wetted")
    p.over("Coats and waits")
    with p.step("Wet film"):
        _gauge(p, PARTS[-1], COATS)
        p.press_for("space", rf"◂ {PARTS[0]} ▸")
        _gauge(p, PARTS[0], COATS)


def _gauge(p: Painter, part: str, coat: int) -> None:
    p.see(rf"◂ {part} ▸")
    p.enter_figure("2.0")
    p.press_for("enter", rf"\d\d:\d\d  .*{part},? +coat {coat}\b.* 2\.0")


def _after(p: Painter) -> None:
    with p.step("Clean the gun"):
        tick_every_line(p.run)
    with p.step("After care"):
        tick_every_line(p.run)
    with p.step("Faults seen"):
        p.press("down")
        p.see("→ runs and sags")
        p.press("enter")
        p.see("another fault")
    on_step(p.run, "Result")
    p.see("laid on 2 parts")
    p.press("right")
    p.see("repeat it like this")
    p.press("enter")
    p.type("one run, low left")
    p.press("enter")
    p.type("closer, faster")
    p.see("closer, faster")
    p.press("enter")
