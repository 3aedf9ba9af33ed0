"""Thousands of damaged profiles: each is a Profile or a list of faults, never an exception."""

from __future__ import annotations

import random
import tomllib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
import tomli_w
from hypothesis import given, settings
from hypothesis import strategies as st

from booth.files.faults import Fault
from booth.profile.keys import PROFILE
from booth.profile.model import Profile
from booth.profile.read import read_text
from booth.profile.save import write
from tests.profile.alike import read_bytes
from tests.profile.generated import profiles

DEMOS = sorted((Path(__file__).parents[2] / "profiles").glob("*.toml"))
CONTENTS = [path.read_bytes() for path in DEMOS]
VARIANTS = 250


def held(content: bytes) -> Profile | tuple[Fault, ...]:
    """Read, and hold that the answer is one a screen can show."""
    answer = read_bytes(content, "x.toml")
    if isinstance(answer, Profile):
        assert answer.coats or answer.film.coats
        # What was taken can be kept and read again.
        assert isinstance(read_text(write(answer), "x.toml"), Profile)
        return answer
    assert answer
    lines = content.count(b"\n") + 1
    for fault in answer:
        assert fault.line is None or 1 <= fault.line <= lines
        assert fault.found
        assert fault.expected
        # Whatever stood in the file, a fault is one line that acts on no terminal.
        assert str(fault).isprintable()
    return answer


def flip(content: bytes, dice: random.Random) -> bytes:
    damaged = bytearray(content)
    for _ in range(dice.randint(1, 8)):
        damaged[dice.randrange(len(damaged))] ^= 1 << dice.randrange(8)
    return bytes(damaged)


def truncate(content: bytes, dice: random.Random) -> bytes:
    return content[: dice.randrange(len(content))]


def drop(content: bytes, dice: random.Random) -> bytes:
    start = dice.randrange(len(content))
    return content[:start] + content[start + dice.randint(1, 40) :]


def insert(content: bytes, dice: random.Random) -> bytes:
    scraps = [
        b'"',
        b"'",
        b"[",
        b"]",
        b"{",
        b"}",
        b"=",
        b"\n",
        b"#",
        b"\x1b[2J",
        b'"""',
        b"\\",
        b"\r",
        b"\0",
        b"\xff",
        b",",
        b".",
        b"nan",
        b"true",
        b"1e999",
        b"-",
        "\u202e".encode(),
    ]
    start = dice.randrange(len(content))
    return content[:start] + dice.choice(scraps) + content[start:]


def shuffle(content: bytes, dice: random.Random) -> bytes:
    lines = content.split(b"\n")
    for _ in range(dice.randint(1, 10)):
        one, other = dice.randrange(len(lines)), dice.randrange(len(lines))
        lines[one], lines[other] = lines[other], lines[one]
    return b"\n".join(lines)


def repeat(content: bytes, dice: random.Random) -> bytes:
    lines = content.split(b"\n")
    lines.insert(dice.randrange(len(lines)), dice.choice(lines))
    return b"\n".join(lines)


def splice(content: bytes, dice: random.Random) -> bytes:
    other = dice.choice(CONTENTS)
    return content[: dice.randrange(len(content))] + other[dice.randrange(len(other)) :]


DAMAGES = [flip, truncate, drop, insert, shuffle, repeat, splice]


@pytest.mark.parametrize("damage", DAMAGES, ids=lambda damage: damage.__name__)
def test_a_damaged_demo_never_raises(damage: Callable[[bytes, random.Random], bytes]) -> None:
    dice = random.Random(f"booth {damage.__name__}")
    faulty = sum(
        not isinstance(held(damage(dice.choice(CONTENTS), dice)), Profile) for _ in range(VARIANTS)
    )
    # The damage is real: a part of the files is refused (a comment or a text may be hit as well).
    assert faulty > VARIANTS / 10


ODD: list[Any] = [
    True,
    False,
    0,
    1,
    -1,
    10**400,
    0.5,
    -0.0,
    float("nan"),
    float("inf"),
    "",
    " ",
    "\x1b[2J",
    "1",
    "1 h",
    "1 to 2 h",
    "at least",
    "at most 1 %",
    "to",
    " to ",
    "-1 to -2 F",
    "٣ psi",
    "1/0 in",
    "1 2/3 in",
    "½ in",
    "1e400 psi",
    [],
    [[]],
    [{}],
    {},
    {"low": 1},
    {"at": {}},
    {"table": [{}]},
    {"table": "x"},
    ["x", 1],
    [True],
    "x" * 1000,
    tomllib.loads("a = 07:30:00")["a"],
    tomllib.loads("a = 2024-02-29T07:30:00Z")["a"],
]


def places(value: Any, path: str = "") -> list[tuple[Any, Any, str]]:
    """Every place of a parsed file at which a value stands: its container, its key, which key it is."""
    is_table = isinstance(value, dict)
    pairs = list(value.items()) if is_table else list(enumerate(value))
    named = [(key, each, f"{path}.{key}" if is_table else f"{path}[]") for key, each in pairs]
    found = [(value, key, name) for key, _, name in named]
    for _, each, name in named:
        if isinstance(each, (dict, list)):
            found += places(each, name)
    return found


def firsts() -> dict[str, list[int]]:
    """For each demo the places of keys that no demo before it has: together every key, each once."""
    seen: set[str] = set()
    found: dict[str, list[int]] = {}
    for content in CONTENTS:
        text = content.decode()
        for number, (*_, name) in enumerate(places(tomllib.loads(text))):
            if name not in seen:
                found.setdefault(text, []).append(number)
            seen.add(name)
    return found


FIRSTS = firsts()
each_key = pytest.mark.parametrize(
    ("text", "numbers"), FIRSTS.items(), ids=[text.split('"')[1] for text in FIRSTS]
)


def test_together_they_are_every_key() -> None:
    assert sum(map(len, FIRSTS.values())) > len(PROFILE.keys)


@each_key
def test_every_value_swapped_for_every_odd_one(text: str, numbers: list[int]) -> None:
    dice = random.Random(text)
    table = tomllib.loads(text)
    every = places(table)
    for number in numbers:
        container, key, _ = every[number]
        usual = container[key]
        for odd in dice.sample(ODD, 5):
            container[key] = odd
            held(tomli_w.dumps(table).encode())
        container[key] = usual
    assert table == tomllib.loads(text), "one value at a time was another"


@each_key
def test_every_key_taken_away_or_misspelled(text: str, numbers: list[int]) -> None:
    for number in numbers:
        table = tomllib.loads(text)
        container, key, _ = places(table)[number]
        if isinstance(container, dict):
            container[f"{key}x"] = container.pop(key)
            answer = held(tomli_w.dumps(table).encode())
            assert not isinstance(answer, Profile), key
            assert any(fault.key.endswith(f"{key}x") for fault in answer), key
            assert any(f"Did you mean {key}" in fault.advice for fault in answer), key
            del container[f"{key}x"]
        else:
            del container[key]
        held(tomli_w.dumps(table).encode())


@given(st.binary(max_size=400))
@settings(max_examples=200, deadline=None)
def test_any_bytes(content: bytes) -> None:
    held(content)


@given(st.text(max_size=200))
@settings(max_examples=200, deadline=None)
def test_any_text_as_a_value(text: str) -> None:
    for table in ({"film": {"wet": text}}, {"efflux": {"cup": text}}, {text: text}):
        held(tomli_w.dumps(table).encode("utf-8", "replace"))


@given(profiles, st.randoms(use_true_random=False), st.sampled_from(DAMAGES))
@settings(max_examples=100, deadline=None)
def test_any_profile_damaged(
    profile: Profile, dice: random.Random, damage: Callable[[bytes, random.Random], bytes]
) -> None:
    held(damage(write(profile).encode(), dice))
