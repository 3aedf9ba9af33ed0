"""The bytes of a log, whatever was done to them: nothing raises, nothing whole is lost."""

from __future__ import annotations

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.log import codec
from booth.log import events as ev
from booth.log.parse import parse
from tests.log.logs import any_text, note, opened, some_events

WHOLE = [opened(), note(2), note(3, "[/ x \x1b[2J\u202e\n\"'")]
LINES = [codec.encode(event) for event in WHOLE]


def test_a_whole_log_reads_back_with_nothing_to_say() -> None:
    content = parse(b"".join(LINES))
    assert content.events == WHOLE
    assert (content.broken, content.torn, content.said) == ([], None, [])
    assert content.end == sum(map(len, LINES))


def test_cut_at_every_byte_keeps_every_line_before_and_sets_apart_the_rest() -> None:
    data = b"".join(LINES)
    for length in range(len(data) + 1):
        content = parse(data[:length])
        whole = data[:length].count(b"\n")
        after = data[:length].rpartition(b"\n")[2]
        complete = bool(after) and after + b"\n" in LINES
        assert content.events == WHOLE[: whole + complete]
        assert content.unended == complete
        assert content.torn == (after if after and not complete else None)
        assert bool(content.said) == (content.torn is not None)
        assert content.broken == [] and content.odd == []


@given(st.lists(some_events, max_size=8), st.data())
def test_any_events_cut_anywhere(events: list[ev.Event], data: st.DataObject) -> None:
    events = [msgspec.structs.replace(event, n=n) for n, event in enumerate(events, 1)]
    whole = b"".join(map(codec.encode, events))
    cut = whole[: data.draw(st.integers(0, len(whole)))]
    content = parse(cut)
    assert content.events[: cut.count(b"\n")] == events[: cut.count(b"\n")]
    assert content.events == events[: len(content.events)]
    assert len(content.events) - cut.count(b"\n") in (0, 1)


@given(st.binary(max_size=200), st.integers(0, 3))
def test_any_bytes_between_the_lines_never_raise_nor_hide_a_line(junk: bytes, place: int) -> None:
    lines = [*LINES[:place], junk + b"\n", *LINES[place:]]
    content = parse(b"".join(lines))
    assert [event for event in content.events if event in WHOLE] == WHOLE


@given(st.data())
def test_flipped_bytes_never_raise(data: st.DataObject) -> None:
    damaged = bytearray(b"".join(LINES))
    for _ in range(data.draw(st.integers(1, 6))):
        damaged[data.draw(st.integers(0, len(damaged) - 1))] = data.draw(st.integers(0, 255))
    content = parse(bytes(damaged))
    assert all(isinstance(line, str) for line in content.said)
    assert len(content.events) + len(content.broken) <= damaged.count(b"\n") + 1


@given(
    st.recursive(
        st.none() | st.booleans() | st.integers() | st.floats() | any_text,
        lambda inner: (
            st.lists(inner, max_size=3)
            | st.dictionaries(
                st.sampled_from(["event", "n", "at", "text", "wall"]), inner, max_size=5
            )
        ),
        max_leaves=12,
    )
)
def test_any_json_never_raises(value: object) -> None:
    content = parse(LINES[0] + msgspec.json.encode(value) + b"\n" + LINES[1])
    assert content.events[0] == WHOLE[0] and content.events[-1] == WHOLE[1]
    assert len(content.events) + len(content.broken) in (2, 3)


HEAD = b'{"event":"note","n":2,"at":{"wall":1,"continuous":1,"boot":"b"},"text":'


@pytest.mark.parametrize(
    "line",
    [
        b"[" * 100_000,
        b'{"event":"new","n":2,"at":{"wall":1,"continuous":1,"boot":"b"},"x":' + b"[" * 100_000,
        HEAD + b'"\\ud800"}',
        HEAD + b'"\xff"}',
        HEAD.replace(b'"n":2', b'"n":' + b"9" * 5000) + b'""}',
        HEAD.replace(b'"n":2', b'"n":-1') + b'""}',
        HEAD.replace(b'"n":2', b'"n":true') + b'""}',
        HEAD.replace(b'"wall":1', b'"wall":1e999') + b'""}',
        HEAD + b"NaN}",
        HEAD + b"3}",
        b"null",
        b"\x00\x00\x00",
    ],
    ids=lambda line: repr(line[:12]),
)
def test_hostile_lines_are_told_and_passed_over(line: bytes) -> None:
    content = parse(LINES[0] + line + b"\n" + LINES[2])
    assert content.events == [WHOLE[0], WHOLE[2]]
    assert [number for number, _ in content.broken] == [2]
    assert content.said[0].startswith("Line 2 of the log is no entry and is passed over: ")


def test_nul_bytes_after_a_power_cut() -> None:
    tail = LINES[1][:20] + b"\0" * 4000
    assert parse(LINES[0] + tail).torn == tail
    assert parse(LINES[0] + b"\0" * 4096).torn == b"\0" * 4096
    whole = parse(LINES[0] + LINES[1].rstrip(b"\n") + b"\0" * 100)
    assert (whole.events, whole.torn, whole.unended) == (WHOLE[:2], None, True)
    assert whole.end == len(LINES[0] + LINES[1]) - 1
    # A program that knew nothing of them appended behind them.
    behind = parse(LINES[0] + b"\0" * 100 + LINES[1])
    assert (behind.events, behind.broken) == (WHOLE[:2], [])


def test_what_editors_and_merges_do_is_tolerated_and_told() -> None:
    windows = b"\xef\xbb\xbf" + b"".join(LINES).replace(b"\n", b"\r\n") + b"\r\n\r\n"
    assert parse(windows).events == WHOLE
    assert parse(windows).said == []
    again = parse(LINES[0] + LINES[1] + LINES[1] + LINES[2])
    assert again.events == WHOLE
    assert again.said == ["The same entry stands twice and counts once: line 3."]
    other = parse(b"".join(LINES) + codec.encode(note(3, "another")))
    assert other.events == [*WHOLE, note(3, "another")]
    assert other.said == ["An entry has the number of an earlier one: line 4."]
    turned = parse(LINES[0] + LINES[2] + LINES[1])
    assert turned.events == [WHOLE[0], WHOLE[2], WHOLE[1]]
    assert turned.said == ["Entries are not in the order of their numbers: line 3."]
    twice = parse(LINES[0] + codec.encode(opened(n=2)))
    assert twice.said == ["The job is opened more than once; the first counts: line 2."]


def test_events_of_a_later_version_are_carried_through() -> None:
    line = b'{"event":"lamp set","n":4,"at":{"wall":1,"continuous":2,"boot":"b"},"power":7}'
    event = parse(b"".join(LINES) + line + b"\n").events[-1]
    assert isinstance(event, ev.UnknownEvent)
    assert (event.n, event.event, event.line) == (4, "lamp set", line.decode())


def test_entries_of_a_later_version_are_announced_in_one_sentence() -> None:
    head = b'{"event":"lamp set","n":%d,"at":{"wall":1,"continuous":2,"boot":"b"}}\n'
    content = parse(b"".join(LINES) + b"".join(head % n for n in (4, 5, 6)))
    assert len(content.events) == 6 and content.broken == []
    assert content.said == [
        "Entries of a later version of this program are kept and shown, but not understood: "
        "line 4 and 2 more."
    ]


def test_a_job_of_a_later_version_is_announced() -> None:
    content = parse(codec.encode(opened(version=99)) + LINES[1])
    assert content.fault == "" and len(content.events) == 2
    (said,) = content.said
    assert (
        "begun with a later version" in said
        and f"version 99, this one knows {codec.VERSION}" in said
    )
    # Where so much has changed that it cannot be read at all, that is said as well.
    line = codec.encode(opened(version=99)).replace(b'"parts":["hood","door"]', b'"parts":{"a":1}')
    broken = parse(line + LINES[1])
    assert f"it is of version 99, this program knows {codec.VERSION}" in broken.said[0]
    assert broken.fault == "No line of it opens a job."


def test_an_event_over_two_lines_is_broken_and_so_are_two_in_one() -> None:
    many = [codec.encode(note(n)) for n in range(2, 60)]
    split = LINES[1].replace(b'"at":', b'"at":\n')
    double = codec.encode(note(70))[:-1] + codec.encode(note(71))
    content = parse(LINES[0] + split + double + b"".join(many))
    assert [number for number, _ in content.broken] == [2, 3, 4]
    assert [event.n for event in content.events] == [1, *range(2, 60)]


def test_much_that_is_broken_is_told_in_few_words() -> None:
    content = parse(LINES[0] + b"junk\n" * 500)
    assert len(content.broken) == 500
    assert len(content.said) == 4
    assert content.said[-1] == "497 more lines are no entry either."


@pytest.mark.parametrize("data", [b"", b"\n", b"\n\n\r\n", b"\xef\xbb\xbf", b"\xef\xbb\xbf\n"])
def test_nothing_is_nothing(data: bytes) -> None:
    content = parse(data)
    assert (content.events, content.broken, content.torn) == ([], [], None)
