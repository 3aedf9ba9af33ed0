"""Past jobs found by words: every word of a job finds it, all words have to be met."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from booth.log.summary import JobSummary
from booth.moment import Moment
from booth.trade.faults.fault_table import FAULTS
from booth.words.job_search import (
    Searched,
    Wanted,
    about,
    found_in,
    guns_in,
    matching,
    nothing_found,
    products_in,
    searched,
)

OPENED = Moment(1_750_000_000.0, 1.0, "boot")


def when(_: Moment) -> str:
    return "2025-06-15 15:06"


def day(_: Moment) -> str:
    return "Sunday 15 June 2025"


def job(name: str = "a", **fields: object) -> Searched:
    given: dict[str, object] = {
        "job": name,
        "profile_name": "Trial clear",
        "parts": ("left door", "hood"),
        "gun": "Spot gun",
        "opened": OPENED,
        "closed": OPENED,
        "verdict": "usable",
        "first_verdict": "good",
        "products": (("trial-clear", "Trial clear"),),
        "notes": ("cans: lot 4711", "the compressor ran all the time"),
        "faults": ("dust",),
        "said": ("dull at the edge",),
        "next_time": "wet the floor",
    }
    return searched(JobSummary(Path(f"{name}.jsonl"), **(given | fields)), when, day)  # type: ignore[arg-type]


ONE = job()
OTHER = job("b", faults=(), notes=(), next_time="", gun="", products=(("base", "Silver base"),))
EVERY = (ONE, OTHER)


@pytest.mark.parametrize(
    ("asked", "places"),
    [
        ("2025-06", []),
        ("usable", []),
        ("TRIAL door", []),
        ("june", ["day: Sunday 15 June 2025"]),
        ("sunday", ["day: Sunday 15 June 2025"]),
        ("dust", ["fault: dust"]),
        ("hood dust floor", ["fault: dust", "next time: wet the floor"]),
        ("4711", ["note: cans: lot 4711"]),
        ("dull", ["verdict: dull at the edge"]),
        ("spot", ["gun: Spot gun"]),
        ("good", ["was: good"]),
    ],
)
def test_a_job_is_found_and_it_is_said_where(asked: str, places: list[str]) -> None:
    assert ONE in matching(EVERY, Wanted(asked))
    assert [each.in_words for each in found_in(ONE, asked)] == places


def test_all_words_have_to_be_met() -> None:
    assert matching(EVERY, Wanted()) == EVERY
    assert matching(EVERY, Wanted("door dust")) == (ONE,)
    assert matching(EVERY, Wanted("door rust")) == ()


def test_one_product_and_one_gun() -> None:
    assert matching(EVERY, Wanted(product=("base", "Silver base"))) == (OTHER,)
    assert matching(EVERY, Wanted(gun="Spot gun")) == (ONE,)
    assert matching(EVERY, Wanted(gun="")) == (OTHER,), "those that name none"
    assert matching(EVERY, Wanted("dust", gun="")) == ()
    assert products_in(EVERY) == {("trial-clear", "Trial clear"): 1, ("base", "Silver base"): 1}
    assert guns_in(EVERY) == {"Spot gun": 1, "": 1}
    wanted = Wanted("dust", ("base", "Silver base"), "")
    assert wanted.in_words == "product Silver base, gun not named, with dust"


def test_a_product_goes_by_the_name_it_had_last() -> None:
    before = job("old", products=(("base", "Base of old"),))
    assert list(products_in((OTHER, before))) == [("base", "Silver base")]


def test_nothing_found_says_what_each_word_finds_and_what_to_do() -> None:
    said = nothing_found(EVERY, Wanted("dust base"))
    assert said.startswith("No job holds dust and base. Jobs with one of them: dust 1, base 1.")
    assert "Bksp" in said and "Esc" in said
    assert "No job of gun Spot gun holds xyz." in nothing_found(
        EVERY, Wanted("xyz", gun="Spot gun")
    )
    assert "no job of gun Spot gun" in nothing_found((), Wanted(gun="Spot gun"))


def test_a_log_that_cannot_be_read_is_found_by_its_file_and_its_fault() -> None:
    broken = searched(JobSummary(Path("x-1.jsonl"), fault="The file cannot be read."), when, day)
    assert matching((*EVERY, broken), Wanted("cannot x-1")) == (broken,)
    assert found_in(broken, "cannot") == (), "its row says so"


texts = st.text(st.characters(exclude_categories=["Cs", "Cc"]), min_size=1, max_size=30)


@given(
    st.lists(texts, max_size=3), texts, st.lists(st.sampled_from(sorted(FAULTS)), max_size=2), texts
)
def test_every_job_is_found_by_each_of_its_own_words(
    notes: list[str], next_time: str, faults: list[str], part: str
) -> None:
    one = job(notes=tuple(notes), next_time=next_time, faults=tuple(faults), parts=(part,))
    every = [*notes, next_time, part, *(FAULTS[each].name for each in faults), "trial", "june"]
    for text in every:
        for word in text.split():
            assert one in matching((OTHER, one), Wanted(word)), word
            row = word.casefold() in one.row
            assert row or any(
                word.casefold() in place.text.casefold() for place in found_in(one, word)
            ), "it is said where"
    assert one in matching((one,), Wanted(" ".join(" ".join(every).split())))


@given(texts, texts)
def test_more_letters_never_find_more(one: str, more: str) -> None:
    first = set(matching(EVERY, Wanted(one)))
    if not one[-1].isspace():
        assert set(matching(EVERY, Wanted(one + more))) <= first


def test_of_a_long_text_the_words_around_are_told() -> None:
    text = "one two three four five six seven eight"
    assert about(text, "five") == "… two three four five six seven eight"
    assert about("short", "short") == "short"
