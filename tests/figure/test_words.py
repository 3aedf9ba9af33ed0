"""How words are read: in any order that can be told, ratios in digits, units beside their number."""

from __future__ import annotations

import shlex

import pytest

from booth.figure.arguments import Argument
from booth.figure.heard import Heard
from booth.figure.options import OPTIONS
from booth.figure.placing import Ambiguous, Placing
from booth.figure.readers import Reader
from booth.trade.result import BadInput
from booth.units import System
from tests.figure.ask import LINES, SUBJECTS, ask, at, run


@pytest.mark.parametrize(
    ("words", "path", "expected"),
    [
        # 600 ml in five parts, by the definition of parts.
        ("mix 600ml 4:1", "pours.0.amount", 480.0),
        ("mix 600ml 4:1", "pours.1.mark", 600.0),
        ("mix 4:1:1 600ml", "pours.2.amount", 100.0),
        ("mix-shares 4:1", "mix_shares.1.by_volume", 0.2),
        ("mix-thinner 25% 4:1", "mix_thinner.2.parts", 1.25),
        ("mix-from second 30ml 4:1", "pours.0.amount", 120.0),
        ("mix 600ml 2,5:1", "pours.0.amount", 600 * 2.5 / 3.5),
        ("mix 600ml 4:1 thinner:1", "pours.2.amount", 100.0),
    ],
)
def test_a_ratio_in_digits_is_a_ratio(words: str, path: str, expected: float) -> None:
    assert at(ask(words)["values"], path) == pytest.approx(expected, rel=1e-12)


@pytest.mark.parametrize(
    "others",
    [
        ("delivery 6oz 30s", "delivery 30s 6oz", "delivery 6 oz 30 s", "delivery 30 s 6 oz"),
        ("viscosity 'Ford #4' 30s", "viscosity 30s 'Ford #4'", "viscosity Ford 4 30s"),
        ("dew-point 72F 60%", "dew-point 60% 72F", "dew-point 60 % 72 F"),
        ("time-to-empty 20oz 6oz/min", "time-to-empty 6oz/min 20oz", "time-to-empty 20 oz 6oz/min"),
        (
            "mix 600ml base:4 hardener:1",
            "mix base:4 600ml hardener:1",
            "mix base:4 hardener:1 600 ml",
        ),
        ("speed 50um 200ml/min 250mm 50%", "speed 250mm 50% 200ml/min 50um"),
        tuple(
            f"turns-for-delivery {words}"
            for words in (
                "160ml/min 1:100ml/min 2:180ml/min",
                "1:100ml/min 160ml/min 2:180ml/min",
            )
        ),
    ],
)
def test_the_order_does_not_matter_where_units_tell(others: tuple[str, ...]) -> None:
    first, *same = (ask(words)["values"] for words in others)
    assert all(each == first for each in same)


def test_what_units_do_not_tell_stands_in_its_order() -> None:
    assert at(ask("mix-top-up 100ml 600ml 4:1")["values"], "pours.0.mark") == 500.0
    there = ask("equivalent 60s 'ISO 4 mm' 'Ford #4'")
    assert ask("equivalent 'ISO 4 mm' 60s 'Ford #4'") == there
    assert ask("equivalent 'Ford #4' 'ISO 4 mm' 60s", code=3)["given"] != there["given"]
    assert ask("flash-off 70F 60F 10min") == ask("flash-off 10min at=70F today=60F")


def test_what_can_be_read_two_ways_is_refused_not_guessed() -> None:
    def slot(name: str, *reads: str) -> Argument:
        def read(text: str, heard: Heard) -> str:
            if text not in reads:
                raise BadInput("no")
            return text

        return Argument(name, name, Reader(read, str, str, lambda value, *_: value), name)

    slots = [slot("one", "a", "b"), slot("two", "a", "c"), slot("three", "b", "c")]
    placed = Placing(slots[:2], System.US).place(["c", "a"])
    assert placed is not None and placed.texts == {"two": ["c"], "one": ["a"]}
    with pytest.raises(Ambiguous, match=r"which word is the one\. Name it, as one=a, or"):
        Placing(slots, System.US).place(["a", "b", "c"])


@pytest.mark.parametrize(
    ("words", "blamed"),
    [
        ("viscosity 30s 'Ford #9'", "cup: "),
        ("viscosity 'Ford #4' 30F", "time: "),
        ("dew-point 60% 72", "missing"),
        ("delivery 30s 6lb/gal", "amount: "),
        ("viscosity 30s", "cup is missing"),
        ("time-to-empty 6oz/min", "volume is missing"),
        ("mix 600ml 4:x", "components: "),
        ("mix 600ml 1:1:1:1:1:1:1", "6 are the most"),
    ],
)
def test_the_word_that_cannot_be_read_is_blamed(words: str, blamed: str) -> None:
    code, out, err = run(shlex.split(words))
    if blamed == "missing":  # a bare number takes what is left
        assert code == 0
        return
    assert (code, out) == (2, "")
    assert blamed in err


@pytest.mark.parametrize("words", LINES)
def test_no_example_is_read_otherwise_than_in_its_order(words: str) -> None:
    given = ask(words, code=run(shlex.split(words))[0])["given"]
    assert given or words == "solvent-names"


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ("pot-life 4", "4 h or 4 min?"),
        ("pot-life 4 at 21C 31C", "4 h or 4 min? A time is typed with its unit: 4h, 4min."),
        ("flash-off 10 70F 60F", "10 h or 10 min?"),
        ("pot-life-left 3:4h 0h:4h", "3 h or 3 min?"),
    ],
)
def test_a_bare_wait_is_refused_with_what_to_type(words: str, says: str) -> None:
    code, out, err = run(shlex.split(words))
    assert (code, out) == (2, "")
    assert says in err


def test_one_solvent_without_a_share_is_all_of_it() -> None:
    assert ask("fresh-air 200ml/min 60% xylene") == ask("fresh-air 200ml/min 60% xylene:100%")
    code, _, err = run(shlex.split("fresh-air 200ml/min 60% xylene toluene"))
    assert code == 2 and "add up to 2" in err


def test_no_argument_has_the_name_of_an_option() -> None:
    names = {f"--{each.name}" for subject in SUBJECTS.values() for each in subject.arguments}
    assert not names & set(OPTIONS)


def test_efflux_and_catch_take_bare_seconds() -> None:
    assert ask("viscosity 'Ford #4' 30") == ask("viscosity 'Ford #4' 30s")


@pytest.mark.parametrize(
    ("words", "shown", "not_shown"),
    [
        ("dew-point 20C 50%", "9.3 °C", "°F"),
        ("dew-point 68F 50%", "48.7 °F", "°C"),
        ("dew-point 68F 50% --units both", "48.7 °F (9.3 °C)", "none"),
        ("dew-point 68F 50% --metric", "9.3 °C", "°F"),
        ("wet-film 1.5mil 42%", "3.57 mil", "µm"),
        ("wet-film 38um 42%", "90.5 µm", "mil"),
        ("mean-wet-film 6oz/min 250mm 50% 0.4m/s", "mil", "none"),  # both, both shown
        ("weather 20C 50% 20C air-low=60F", "°C", "none"),
        ("mix 200g 4:1 parts-by=weight pour=weight", "160 g", "oz"),
        ("mix 10 oz 4:1", "8.00 fl oz", "ml"),
    ],
)
def test_the_answer_is_in_the_units_that_were_typed(words: str, shown: str, not_shown: str) -> None:
    code, out, err = run(shlex.split(words))
    assert (code, err) == (0, "")
    assert shown in out and not_shown not in out
    if "both" in words or words.startswith("mean-wet-film"):
        assert "(" in out.partition("|")[0]


def test_a_share_of_an_inch_and_feet_are_heard_as_us() -> None:
    out = run(shlex.split("rectangle-area '2 ft 6 in' 4ft"))[1]
    assert out.startswith("rectangle area 10.0 ft²")


@pytest.mark.parametrize(
    ("option", "says"),
    [
        (["--units", "furlong"], "us, metric or both"),
        (["--units"], "--units needs a value"),
        (["--profile"], "--profile needs a value"),
    ],
)
def test_an_option_that_cannot_be_read_is_a_sentence(option: list[str], says: str) -> None:
    code, out, err = run(["dew-point", "72F", "60%", *option])
    assert (code, out) == (2, "")
    assert says in err


@pytest.mark.parametrize(
    "name", ["IPA", "ipa", "MEK", "MIBK", "PM acetate", "pgmea", "MPK", "EGBE"]
)
def test_a_solvent_is_found_by_what_the_trade_calls_it(name: str) -> None:
    assert ask(f"solvent {shlex.quote(name)}")["values"]["lel"]["unit"] == "%"
