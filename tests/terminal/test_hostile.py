"""Text that would steer a terminal or be read as markup, in every place where text can be put."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from booth.log.events import EffluxTimed, JobOpened, NoteMade, StepSkipped
from tests.terminal.driver import BRISK, Terminal
from tests.terminal.painter import (
    begin,
    choose,
    current,
    fast,
    kept_of,
    log_path,
    next_step,
    on_step,
    pass_over,
    short_profile,
    take_up,
    to_the_coats,
    write_profile,
)

pytestmark = pytest.mark.terminal

MARKUP = "[/ x [bold] [DOOR] 50 [m2] [@click=app.quit]y[/]"
#: A title nobody else sets, clear screen, a C1 introducer, a bell.
STEERING = "\x1b]0;SEIZED\x07\x1b[2J\x9b31m\x07"
SEIZED = (b"\x1b]0;SEIZED", b"\x1b[2J\x9b", b"\xc2\x9b31m", b"\x9b31m")
#: Right-to-left override and isolate, a family joined of emoji, wide letters, stacked accents.
ODD = "\u202egnp.exe\u2066 👨\u200d👩\u200d👧 車体塗装 e\u0301\u0301\u0301\u0301\u0301"
UNSEEN = ("\u202e".encode(), "\u2066".encode(), "\u200d".encode())


def nothing_raw(run: Terminal) -> None:
    """None of it reached the terminal as it was."""
    raw = bytes(run.raw)
    for bad in (*SEIZED, *UNSEEN):
        assert bad not in raw, bad
    assert "Traceback" not in raw.decode("utf-8", "replace")
    assert run.screen.title != "SEIZED"


def toml(text: str) -> str:
    """The text as a TOML string, escapes written out."""
    return '"' + "".join(f"\\U{ord(char):08X}" for char in text) + '"'


def test_in_a_profile(home: Path) -> None:
    evil = MARKUP + STEERING + ODD
    text = short_profile(("cautions",), name="PLACE").replace('"PLACE"', toml("Aaa " + evil))
    text = text.replace(
        "demo = true", f"product = {toml(evil)}\nnotes = [{toml(evil)}]\ncautions = [{toml(evil)}]"
    )
    text += (
        f'[[steps]]\nkind = "plain"\nname = {toml("Aside " + evil)}\nhow = [{toml(evil)}]\n'
        '[[steps]]\nkind = "coats"\n'
    )
    write_profile(home, "evil", text)
    with Terminal(home, columns=120, rows=40, rate=BRISK) as run:
        run.until(r"Aaa \[/ x \[bold\] \[DOOR\]")
        run.settle()
        choose(run, "Aaa [/ x")
        run.until("Parts")
        run.press("enter")
        run.until(lambda text: current(text) == "Cautions")
        for _ in range(30):
            if "were read" in run.text:
                break
            run.press("space")
            run.settle()
        next_step(run, lambda: run.press("enter"))
        run.until(r"\[DOOR\] 50 \[m2\]")
        run.press("ctrl+p")
        run.settle()
        run.press("aside")
        run.until(r"By name: aside(.|\n)*Aside")
        run.press("esc")
        run.settle()
        run.press("f4")
        run.settle()
        run.press("esc")
        run.settle()
        run.press("f9")
        run.until("Jobs not closed")
        run.until(r"→ Aaa \[/ x")
        nothing_raw(run)
        assert run.child.isalive()
    with Terminal(home, "log") as run:
        assert run.wait() == 0
        nothing_raw(run)
    for words in (("log", log_path(home).stem), ("sheet", "--as", "markdown"), ("sheet",)):
        with Terminal(home, *words) as run:
            assert run.wait() == 0
            nothing_raw(run)
    with Terminal(home, "log", log_path(home).stem) as run:
        assert run.wait() == 0
        nothing_raw(run)
        assert "caution acknowledged" in run.raw.decode()


def test_in_a_profile_that_cannot_be_read(home: Path) -> None:
    evil = MARKUP + STEERING + ODD
    text = f"{toml(evil)} = {toml(evil)}\nname = 5\nsource = {toml(evil)}\nhazards = [{toml(evil)}]"
    path = write_profile(home, "aaa [bold] \x1b]0;SEIZED\x07", text)
    with Terminal(home) as run:
        run.until(r"! aaa \[bold\]")
        run.settle()
        choose(run, "aaa [bold]")
        run.until("Enter  back")
        run.settle()
        nothing_raw(run)
        run.press("esc")
        run.until(lambda text: "Enter  back" not in text)
    with Terminal(home, "check", str(path)) as run:
        assert run.wait() == 1
        nothing_raw(run)


@pytest.mark.parametrize("typed", [MARKUP, "車体 👨\u200d👩\u200d👧 \u202egnp", "x" * 600])
def test_typed_as_part_note_and_reason(home: Path, typed: str) -> None:
    write_profile(home, "short", short_profile(("cautions", "weather", "coats")))
    part = typed[:38].replace(",", "").strip()
    with Terminal(home, columns=100, rate=BRISK) as run:
        begin(run, "Aaa short job", f"{part}, hood" if len(typed) < 600 else "hood", shown="hood")
        run.press("f2")
        run.until("Note")
        run.settle()
        run.press(typed, "enter")
        run.until("Noted")
        pass_over(run, typed)
        run.press(typed, "enter")
        run.settle(0.3)
        nothing_raw(run)
        assert run.child.isalive()
        run.press("f9", "f9", "f9")  # out of what those letters opened
        run.until("Jobs not closed")
        run.settle()
        nothing_raw(run)
    note = kept_of(home, NoteMade)[0]  # off a row for words, letters are commands: n is another
    (skipped,) = kept_of(home, StepSkipped)
    wanted = re.sub("[\u202e\u200d]", "", typed)
    assert re.sub("‹U\\+[0-9A-F]{4}›", "", note.text) == wanted == _seen(skipped.why)
    (opened,) = kept_of(home, JobOpened)
    assert "hood" in opened.parts


def _seen(text: str) -> str:
    return re.sub("‹U\\+[0-9A-F]{4}›", "", text)


def test_pasted_at_once_into_a_note(home: Path) -> None:
    """Ten thousand characters with steering among them, by a bracketed paste."""
    write_profile(home, "short", short_profile(("cautions", "coats")))
    long = ("wet edge " * 1200)[:10_000]
    with Terminal(home) as run:
        begin(run, "Aaa short job", "hood")
        run.press("f2")
        run.until("Note")
        run.settle()
        # The terminal itself takes an escape out of what is pasted; the C1 bytes it lets through.
        run.press(f"\x1b[200~{MARKUP}\x9b31m\u202e{long}\x1b[201~")
        run.settle(0.3)
        run.press("enter")
        run.until("Noted")
        nothing_raw(run)
        run.press("f4")
        run.settle(0.3)
        nothing_raw(run)
        assert run.child.isalive()
    (note,) = kept_of(home, NoteMade)
    assert note.text.startswith(MARKUP) and "wet edge wet edge" in note.text
    assert "\x9b" not in note.text and "\u202e" not in note.text


#: Bytes that are no UTF-8, half a character, key codes that cannot be.
NO_KEYS = (b"\xe9", b"\xff", b"\x80\xbf", b"\x1b[1114112u", b"\x1b[55296u", b"\x1b[97:1;2;3u")


def test_bytes_and_key_codes_that_cannot_be_end_nothing_and_do_nothing(home: Path) -> None:
    write_profile(home, "short", short_profile(("efflux",)))
    with Terminal(home, rate=BRISK) as run:
        begin(run, "Aaa short job", "hood")
        pass_over(run)
        on_step(run, "Flow cup")
        run.press("space")
        run.until("stop at the first break")
        before = kept_of(home, StepSkipped)
        for each in NO_KEYS:
            run.child.send(each)
            run.linger(0.15)  # past the tenth of a second in which an escape waits for its rest
        assert "stop at the first break" in run.settle(), "the stopwatch runs on"
        run.press("space")
        run.until(r"runs \d")
        assert kept_of(home, StepSkipped) == before and len(kept_of(home, EffluxTimed)) == 1
        run.press("f2")
        run.until("Note")
        run.settle()
        run.child.send(b"T\xfcr, T\xc3")
        run.linger(0.05)
        run.child.send(b"\xbcr\x1b[1114112u")
        run.press("enter")
        run.until("Noted")
        nothing_raw(run)
    (note,) = kept_of(home, NoteMade)
    assert note.text == "T\N{REPLACEMENT CHARACTER}r, Tür"


def test_in_the_log_of_another_hand(home: Path) -> None:
    """A log that was edited by hand or by another program carries raw escapes in its texts."""
    write_profile(home, "short", short_profile(("weather", "coats", "plain")))
    rate = fast(3)
    with Terminal(home, rate=rate) as run:
        begin(run, "Aaa short job", "hood")
        run.press("f10")
        assert run.wait() == 0
    path = log_path(home)
    import json

    first, *rest = path.read_text("utf-8").splitlines()
    opened = json.loads(first)
    opened["parts"] = ["hood " + STEERING + ODD, MARKUP]
    later = {
        "event": "varnish weighed [bold]" + STEERING,
        "n": 2,
        "at": opened["at"],
        "what": STEERING,
    }
    path.write_text("\n".join([json.dumps(opened), json.dumps(later), *rest]) + "\n", "utf-8")
    with Terminal(home, columns=120, rows=40, rate=rate) as run:
        take_up(run)
        run.until("About this job's log")  # what a later program wrote is told
        run.press("enter")
        to_the_coats(run)
        run.press("space")
        run.until("SPRAYING")
        run.press("space")
        run.until("WAIT")
        run.press("f4")
        run.settle(0.3)
        nothing_raw(run)
        assert run.child.isalive()
    assert b"varnish weighed" in path.read_bytes(), "what is not understood is carried through"
