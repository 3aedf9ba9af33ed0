"""'?' of every step: the same headings in one order, no authority by name above its sources."""

from __future__ import annotations

import re

import pytest

from booth.instruments.registry import instruments
from booth.words.about.headed import HEADS, SOURCE, WHAT, about
from tests.law.desks import desk_for

KINDS = sorted(instruments())
#: How standards, regulations, agencies and handbooks are designated; a cup's own name is a name.
DESIGNATED = re.compile(
    r"\b(ASTM|IEC|CFR|UFGS|MIL-HDBK|TM \d|TO \d|FAA|NIOSH|OSHA|CDC|WAC|DOE|ORNL|Guidebook)\b|\bISO \d"
    r"|no source|from memory"
)


@pytest.mark.parametrize("kind", KINDS)
def test_every_step_says_what_it_is(kind: str) -> None:
    assert instruments()[kind].ABOUT.of(WHAT), "an empty '?' helps nobody"


@pytest.mark.parametrize("kind", KINDS)
def test_sources_stand_last_and_nowhere_else(kind: str) -> None:
    told = instruments()[kind].ABOUT
    for head in HEADS:
        for paragraph in told.of(head):
            found = DESIGNATED.search(paragraph)
            assert head == SOURCE or not found, f"{kind}, {head}: {found and found[0]}"


def test_headings_are_read_in_their_order_only() -> None:
    read = about("What it is\nOne\nsentence.\n\nAnother.\n\nSource\nNone.")
    assert read.of(WHAT) == ("One sentence.", "Another.") and read.of(SOURCE) == ("None.",)
    for text in ("No heading.", "Source\nNone.", "Source\nNone.\n\nWhat it is\nOne."):
        with pytest.raises(ValueError):
            about(text)


def test_what_a_rule_is_after_is_not_said_under_a_figure() -> None:
    desk = desk_for("coats", "everything", "at rest")
    told = [line for line in desk.readout.lines if "halves for each" in line]
    assert told and not any(DESIGNATED.search(line) for line in told)
