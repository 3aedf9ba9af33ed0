"""A text is changed where what it says is changed, and nowhere else."""

from __future__ import annotations

import tomllib
from difflib import unified_diff
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from booth.toml.edit import CannotEdit, edited

BY_HAND = """\
# Our shop, written by hand.
units   =  "us"   # we think in psi

[room]   # the garage
exhaust = "1200 cfm"
 volume="3500 ft3" # measured

# --- guns ---

[[gun]]
tip = '1.4 mm'
name = "clear gun"   # the good one
needle_turns = 3.5


# lent to nobody
[[gun]]
name = "primer gun"
tip = "1.8 mm"
# its needle sticks

[[cup]]
cup = "zahn 2"
# the compressor
[compressor]
flow = "11 cfm"
receiver = "60 gal" # nameplate
# end
"""
SAYS: dict[str, Any] = tomllib.loads(BY_HAND)
GUNS = SAYS["gun"]


def changes(after: dict[str, Any], text: str = BY_HAND) -> list[str]:
    """The lines taken out and put in; the result says `after`."""
    result = edited(text, tomllib.loads(text), after)
    assert tomllib.loads(result) == after
    lines = unified_diff(text.splitlines(), result.splitlines(), n=0, lineterm="")
    return [line for line in lines if line[:2] not in ("--", "++", "@@")]


def with_gun(number: int, **values: object) -> list[dict[str, Any]]:
    return [{**gun, **values} if n == number else gun for n, gun in enumerate(GUNS)]


def test_nothing_changed_changes_nothing() -> None:
    assert edited(BY_HAND, SAYS, SAYS) == BY_HAND


def test_a_value_is_one_line_and_keeps_its_comment() -> None:
    assert changes({**SAYS, "gun": with_gun(0, name="spot gun")}) == [
        '-name = "clear gun"   # the good one',
        '+name = "spot gun"   # the good one',
    ]
    assert changes({**SAYS, "units": "metric"}) == [
        '-units   =  "us"   # we think in psi',
        '+units   =  "metric"   # we think in psi',
    ]
    assert changes({**SAYS, "room": {**SAYS["room"], "volume": "90 m3"}}) == [
        '- volume="3500 ft3" # measured',
        '+ volume="90 m3" # measured',
    ]


def test_a_new_key_stands_below_the_others_of_its_table() -> None:
    assert changes({**SAYS, "gun": with_gun(0, hvlp=True)}) == ["+hvlp = true"]
    result = edited(BY_HAND, SAYS, {**SAYS, "gun": with_gun(0, hvlp=True)})
    assert "needle_turns = 3.5\nhvlp = true\n\n\n# lent to nobody\n[[gun]]" in result


def test_a_new_table_stands_with_its_like_or_at_the_end() -> None:
    new = {"name": "new"}
    lines = changes({**SAYS, "gun": [*GUNS, new]})
    assert sorted(lines) == ["+", "+[[gun]]", '+name = "new"']
    result = edited(BY_HAND, SAYS, {**SAYS, "gun": [*GUNS, new]})
    assert '# its needle sticks\n\n[[gun]]\nname = "new"\n\n[[cup]]' in result
    less = {name: value for name, value in SAYS.items() if name != "compressor"}
    text = BY_HAND[: BY_HAND.index("# the compressor")]
    assert edited(text, less, SAYS) == (
        text + '\n[compressor]\nflow = "11 cfm"\nreceiver = "60 gal"\n'
    )


@pytest.mark.parametrize(
    ("after", "gone"),
    [
        ({**SAYS, "gun": GUNS[1:]}, 4),
        ({**SAYS, "gun": GUNS[:1]}, 3),
        ({name: SAYS[name] for name in SAYS if name != "gun"}, 7),
        ({name: SAYS[name] for name in SAYS if name != "room"}, 3),
        ({name: SAYS[name] for name in SAYS if name != "compressor"}, 3),
        ({name: SAYS[name] for name in SAYS if name != "units"}, 1),
    ],
)
def test_what_is_removed_takes_no_line_of_its_own_comments_along(
    after: dict[str, Any], gone: int
) -> None:
    lines = changes(after)
    assert len(lines) == gone and all(line[0] == "-" for line in lines)
    assert not any(line.startswith("-#") for line in lines)


def test_tables_in_one_line_and_dotted_keys() -> None:
    text = 'gun = [{name="a"}, {name = "b"}] # both\nroom.volume = "3 m3" # x\n'
    says = tomllib.loads(text)
    assert changes({**says, "room": {"volume": "4 m3"}}, text)[1] == '+room.volume = "4 m3" # x'
    for guns in (
        [{"name": "a"}],
        [{"name": "b"}],
        [{"name": "c"}, {"name": "b"}],
        [*says["gun"], {"name": "c"}],
    ):
        after = {**says, "gun": guns}
        assert tomllib.loads(edited(text, says, after)) == after
        assert "# both" in edited(text, says, after)


@pytest.mark.parametrize("mark", ["", "\ufeff"])
@pytest.mark.parametrize("ending", ["\n", "\r\n"])
def test_line_ends_and_a_byte_order_mark_stay(mark: str, ending: str) -> None:
    text = mark + BY_HAND.replace("\n", ending)
    after = {**SAYS, "gun": [*with_gun(0, tip="1.3 mm"), {"name": "new"}]}
    result = edited(text, SAYS, after)
    assert result.startswith(f"{mark}# Our shop") and result.count(mark or "#") >= 1
    assert result.count("\n") == result.count(ending)
    assert tomllib.loads(result.removeprefix(mark).replace("\r\n", "\n")) == after


def test_a_last_line_without_its_end_is_ended() -> None:
    after = {"a": {"b": 1}, "c": {"d": 2}}
    assert edited("[a]\nb = 1", {"a": {"b": 1}}, after) == "[a]\nb = 1\n\n[c]\nd = 2\n"


@pytest.mark.parametrize("text", ["a = ", "[", "a = 1\na = 2\n", "\x00"])
def test_what_is_no_toml_cannot_be_edited(text: str) -> None:
    with pytest.raises(CannotEdit):
        edited(text, {}, {"b": 1})


names = st.sampled_from(["name", "tip", "air", "note"])
plain = st.dictionaries(
    names, st.text("ab #\"'\\[]=\n", max_size=5) | st.integers(0, 9), min_size=1
)
files = st.fixed_dictionaries(
    {},
    optional={
        "gun": st.lists(plain, min_size=1, max_size=4),
        "cup": st.lists(plain, min_size=1, max_size=3),
        "room": plain,
        "compressor": plain,
        "units": st.sampled_from(["us", "metric"]),
    },
)


def commented(before: dict[str, Any], dice: Any) -> str:
    """A text that says `before`, with comments and blank lines put in anywhere."""
    lines = edited("# top\n", {}, before).split("\n")
    for number in range(6):
        lines.insert(dice.randrange(len(lines)), dice.choice([f"# comment {number}", "", "  "]))
    return "\n".join(lines)


@given(files, files, st.randoms(use_true_random=False))
@settings(max_examples=60, deadline=None)
def test_any_text_is_changed_to_say_anything_else(
    before: dict[str, Any], after: dict[str, Any], dice: Any
) -> None:
    text = commented(before, dice)
    # A line may have been put into a text of several lines.
    if tomllib.loads(text) == before:
        assert tomllib.loads(edited(text, before, after)) == after


@given(files, files, st.randoms(use_true_random=False))
@settings(max_examples=60, deadline=None)
def test_where_no_table_goes_no_comment_goes(
    before: dict[str, Any], after: dict[str, Any], dice: Any
) -> None:
    after = {**before, **after}
    for name, old in before.items():
        if isinstance(old, list):
            after[name] = [*after[name], *old[len(after[name]) :]]
    text = commented(before, dice)
    if tomllib.loads(text) == before:
        result = edited(text, before, after)
        assert tomllib.loads(result) == after
        kept = [line for line in result.split("\n") if line.startswith("# ")]
        assert kept == [line for line in text.split("\n") if line.startswith("# ")]
