"""States in one short word: whoever reads only that is not led the wrong way."""

from __future__ import annotations

from booth.words.afar import SHORT, short_state

#: States that approve, and what they are read as from six metres.
APPROVING = ("IN RANGE", "WITHIN LIMITS", "OVER THE LEAST")


def test_what_approves_is_read_as_nothing_else() -> None:
    for state in APPROVING:
        others = [each for each in SHORT if each != state]
        assert short_state(state) not in {*others, *map(short_state, others)}, state
