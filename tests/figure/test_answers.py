"""``booth figure``: every computation reachable, every figure right, no entry a traceback."""

from __future__ import annotations

import importlib
import inspect
import io
import json
import pkgutil
import shlex
import subprocess
import sys
from collections.abc import Iterator
from contextlib import redirect_stdout
from pathlib import Path
from types import CodeType, FrameType, FunctionType
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import booth.trade
from booth.figure import main
from booth.figure.subject import Subject
from tests.figure.ask import EXAMPLES, LINES, SUBJECTS, ask, at, numbers, refuse, run
from tests.figure.cases import CASES, Case
from tests.trade.walk import published

#: Words that no answer may use of a job or its air: a figure permits nothing.
NEVER = (" safe ", "safely", "harmless")


@pytest.mark.parametrize("case", CASES, ids=lambda case: f"{case.words} {case.figure}")
def test_figures_are_those_of_the_outside_world(case: Case) -> None:
    found = at(ask(case.words)["values"], case.figure)
    assert abs(found - case.expected) <= case.within, case.source


@pytest.mark.parametrize("words", LINES)
def test_each_example_is_answered_first_and_why_on_request(words: str) -> None:
    for option in ("--us", "--metric", "--units=both"):
        code, out, err = run([*shlex.split(words), option])
        assert (code, err) == (3 if out.startswith("no figure: ") else 0, "")
        first, *others = out.splitlines()
        assert "rule: " not in out and "source: " not in out
        if words.split()[0] not in ("fault", "pattern", "zones"):  # one cause, one turn a line
            assert all(line.startswith("caution: ") for line in others)
        _, why, _ = run([*shlex.split(words), option, "--why"])
        assert why.splitlines()[0] == first.partition(" | ")[0]
        assert why.splitlines()[-2].startswith("rule: ")
        assert why.splitlines()[-1].partition("source: ")[2].strip()
        assert not any(word in out + why for word in NEVER)
        assert set(others) <= set(why.splitlines())


@pytest.mark.parametrize(("subject", "words"), EXAMPLES, ids=LINES)
def test_json_says_what_the_line_says(subject: Subject, words: str) -> None:
    code, out, _ = run(shlex.split(words))
    found = ask(words, code=code)
    assert found["subject"] == subject.name
    assert found["rule"]
    assert found["source"]
    assert (found["status"] == "no figure") == out.startswith("no figure: ")
    assert found["text"] in out.replace("\n", "; ")
    assert found["estimate"] == ("estimate " in found["text"])
    for figure in numbers(found["values"]):
        assert figure["unit"]
        if "low" in figure:
            assert figure["estimate"]
            assert figure["low"] <= figure["value"] <= figure["high"]
        assert (figure["value"] is None) == bool(figure.get("reason"))
    if any(figure["estimate"] for figure in numbers(found["values"])):
        assert found["estimate"]
    if found["status"] == "no figure":
        assert found["values"] == {}
        assert found["reason"] in out
        assert found["advice"] in out
    assert code == (3 if found["status"] == "no figure" else 0)
    for caution in found["cautions"]:
        assert f"caution: {caution}" in out


@pytest.mark.parametrize("words", LINES)
def test_json_numbers_do_not_depend_on_the_units_shown(words: str) -> None:
    code = run(shlex.split(words))[0]
    us, metric = ask(words, "--us", code=code), ask(words, "--metric", code=code)
    # A bare number takes the shown unit: the examples that have one have it without a unit.
    assert us["values"] == metric["values"]


def public_functions() -> dict[str, FunctionType]:
    found = {}
    for module in pkgutil.walk_packages(booth.trade.__path__, "booth.trade."):
        loaded = importlib.import_module(module.name)
        for name in published(loaded):
            public = getattr(loaded, name)
            if inspect.isfunction(public):
                found[f"{public.__module__}.{public.__qualname__}"] = public
    return found


#: Public functions that no subject answers, with the reason.
NOT_ASKED = {
    "booth.trade.result.require": "it checks a number, and computes nothing",
}


def test_every_public_function_of_the_trade_is_reached_by_an_example() -> None:
    called: set[CodeType] = set()

    def note(frame: FrameType, event: str, _: object) -> None:
        if event == "call":
            called.add(frame.f_code)

    before = sys.getprofile()
    sys.setprofile(note)
    try:
        for words in LINES:
            run(shlex.split(words))
    finally:
        sys.setprofile(before)
    functions = public_functions()
    reached = {name for name, function in functions.items() if function.__code__ in called}
    named = {
        f"{function.__module__}.{function.__qualname__}"
        for subject in SUBJECTS.values()
        for function in subject.functions
    }
    assert set(functions) - reached - set(NOT_ASKED) == set()
    assert set(functions) - named - set(NOT_ASKED) == set()
    assert reached & set(NOT_ASKED) == set(NOT_ASKED) & set(functions)


SPARE = '''"""Spare computations: what a newcomer might add."""

from dataclasses import dataclass

from booth.trade.result import BadInput, Estimate, Outside, Value, require

__all__ = ["Bar", "Spared", "spare_film_um", "spare_stock"]


@dataclass(frozen=True)
class Bar:
    turns: float
    delivery_ml_min: float


@dataclass(frozen=True)
class Spared:
    wet_each_um: float
    least: Value
    likely: Estimate
    bare_fraction: float
    glossy: bool
    seen: None
    caution: str
    rule: str


def spare_film_um(dry_um: float, passes: int, air_c: float = 20.0, glossy: bool = False) -> float:
    """Give the film that a spare coat leaves: ``dry x passes``.

    Args:
        dry_um: dry film of one pass [um], above 0.
        passes: how many there are.
        air_c: air temperature [degC].
        glossy: whether it shines.

    Returns: film [um].
    Range: up to 10 passes.
    Source: invented for a test.

    Example:
        >>> spare_film_um(25.4, 3)
        76.2
    """
    require("The dry film", dry_um, above=0.0, unit="um")
    return dry_um * passes * (2 if glossy else 1)


def spare_stock(bars: list[Bar], least_c: float | None = None) -> Spared | Outside:
    """Say what bars do.

    Args:
        bars: turns and delivery of each.
        least_c: the coldest it may be [degC].

    Returns: Spared.
    Range: any.
    Source: made up; and so is this.

    Example:
        >>> spare_stock([Bar(1.0, 100.0)])
    """
    if least_c is not None:
        return Outside("It is cold.", "Wait.", "none")
    whole = sum(bar.delivery_ml_min for bar in bars)
    return Spared(
        wet_each_um=whole, least=Value(whole, "kW", "sum"),
        likely=Estimate(2.0, 1.0, 3.0, "mm2/s", "a guess"), bare_fraction=0.25, glossy=True,
        seen=None, caution="Mind it.", rule="all bars added",
    )
'''


@pytest.fixture
def spare(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    (tmp_path / "spare.py").write_text(SPARE, "utf-8")
    monkeypatch.setattr(booth.trade, "__path__", [*booth.trade.__path__, str(tmp_path)])
    yield
    sys.modules.pop("booth.trade.spare", None)


@pytest.mark.usefixtures("spare")
def test_a_new_function_of_the_trade_has_its_subject_with_no_further_line() -> None:
    found = ask("spare-film 1mil 3")
    assert found["values"] == {
        "spare_film": {"value": pytest.approx(76.2), "unit": "um", "estimate": False}
    }
    assert found["text"] == "spare film 3.00 mil"
    assert found["rule"] == "dry x passes"
    assert found["source"] == "invented for a test"
    assert [(each["name"], each["text"], each["assumed"]) for each in found["given"]] == [
        ("dry", "1.00 mil", False),
        ("passes", "3", False),
        ("air", "68.0 °F", True),
        ("glossy", "no", True),
    ]
    glossy = ask("spare-film 1mil 3 glossy=yes")["values"]["spare_film"]["value"]
    assert glossy == pytest.approx(152.4)
    assert "must be above 0" in run(["spare-film", "0um", "3"])[2]
    assert "passes is missing" in run(["spare-film", "1mil"])[2]
    about = run(["spare-film", "--help"])[1]
    assert "The film that a spare coat leaves: dry x passes." in about
    assert "dry film of one pass" in about
    assert "Limits: up to 10 passes" in about
    assert "booth figure spare-film 1mil 3" in about
    listed = run([])[1]
    assert "Spare computations:" in listed
    assert "  spare-film " in listed


@pytest.mark.usefixtures("spare")
def test_a_new_type_of_argument_or_result_is_read_and_told_by_its_fields() -> None:
    found = ask("spare-stock 1:100ml/min 2:50ml/min")
    assert found["values"] == {
        "wet_each": {"value": 150.0, "unit": "um", "estimate": False},
        "least": {"value": 150.0, "unit": "kW", "estimate": False},
        "likely": {"value": 2.0, "unit": "mm2/s", "estimate": True, "low": 1.0, "high": 3.0},
        "bare": {"value": 0.25, "unit": "1", "estimate": False},
        "glossy": True,
    }
    assert found["text"].split("; ")[2:] == [
        "likely estimate 2.00 mm²/s, 1.00 mm²/s to 3.00 mm²/s",
        "bare 25 %",
        "glossy yes",
    ]
    assert found["cautions"] == ["Mind it."]
    assert found["rule"] == "all bars added"
    assert ask("spare-stock 1:100ml/min least=5C", code=3)["reason"] == "It is cold."
    assert "TURNS:DELIVERY" in run(["spare-stock", "1"])[2]
    assert "booth figure spare-stock 1:100ml/min" in run(["spare-stock", "--help"])[1]


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ("viscosty 'Ford #4' 30s", "Did you mean viscosity"),
        ("zzz", "'booth figure' lists them"),
        ("viscosity 'Ford #4'", "time is missing"),
        ("viscosity", "cup, time are missing"),
        ("time-to-empty 20oz 6oz/min 5", "'5' is one word too many"),
        ("time-to-empty volume=20oz volume=10oz 6oz/min", "volume was given twice"),
        ("time-to-empty 20oz 6oz/min delivry=3", "Did you mean delivery?"),
        ("time-to-empty 20oz 6oz/min --density", "Known are volume, delivery"),
        ("time-to-empty 20oz --delivery", "--delivery needs a value"),
        ("viscosity 'Ford #4' 30F", "measures a temperature"),
        ("viscosity 'Ford 9' 30s", "Cups of that family"),
        ("viscosity 'Ford #4' 30s correction=9", "must be 2 or less"),
        ("dew-point 72F 0%", "must be above 0"),
        ("dew-point 72F 145%", "must be 100 % or less"),
        ("dew-point 72F nan", "does not begin with a number"),
        ("turns-for-delivery 160ml/min 1", "TURNS:DELIVERY"),
        ("evenness parabel 50%", "There is no fan profile"),
        ("section even 50% points=100000", "are enough"),
        ("delivery 120g 30s", "density=1.2g/ml"),
        ("delivery 4oz 30s density=1.2g/ml", "only needed where"),
        ("mix-top-up 100g 600ml base:4", "poured by weight, so it should be a weight"),
        ("solvent kerosine", "No solvent is called"),
        ("weather 20C 50% 20C air-low=30C air-high=20C", "upside down"),
        ("pattern stripes", "not among the words"),
    ],
)
def test_bad_input_is_a_sentence_on_standard_error_and_exit_code_2(words: str, says: str) -> None:
    code, out, err = run(shlex.split(words))
    assert (code, out) == (2, "")
    assert says in err
    assert err.startswith("booth figure")
    assert err.rstrip().endswith((".", "?"))
    assert err.count("\n") == 1


@pytest.mark.parametrize(
    "words",
    [
        "viscosity --cup 'Ford #4' 30s",
        "viscosity 30s --cup='Ford #4'",
        "viscosity cup='Ford #4' time=30s",
        "viscosity 'Ford #4' --time 30s",
        "--metric viscosity 'Ford #4' 30s",
        "VISCOSITY 'Ford #4' 30s",
    ],
)
def test_arguments_stand_in_place_or_after_their_name(words: str) -> None:
    found = ask(words)["values"]["viscosity"]["value"]
    assert found == pytest.approx(3.85 * (30 - 4.49), rel=1e-12)  # ASTM D1200 11.2


def test_a_word_before_a_value_names_it_whatever_the_order() -> None:
    one = ask("pot-life 4h at 21C 31C")["values"]
    assert one == ask("pot-life at 21C 4h 31C")["values"]
    assert one == ask("pot-life 4h today=31C at=21C")["values"]


def test_what_is_outside_advises_and_a_script_can_tell() -> None:
    code, out, err = run(["viscosity", "Zahn 2", "18s"])
    assert (code, err) == (3, "")
    assert out.startswith("no figure: 18 s is below the 20 s")
    assert "Use Zahn #1" in out


@pytest.mark.parametrize(
    ("words", "says"),
    [
        ("time-to-empty 20oz 0.0000001oz/min", "the most that is taken here"),
        ("thinned 0.00001ml 10% 500ml", "more than 1000 %"),
        ("delivery 6oz 0.0001s", "more than 3380 fl oz/min"),
        ("speed 50um 200ml/min 250mm 99.9999%", "Check the numbers and their units."),
        ("coats-to-dry-film 60um 0.0000001um 50%", "gives coats 1200000000"),
        ("wet-film 1.5mil 0.000001%", "gives wet film"),
        ("vapour 0.86g/ml 0.0000001g/mol", "gives vapour"),
        ("dilution-air 30.4ft3/gal 0.0000001%", "gives dilution air"),
    ],
)
def test_what_no_shop_can_have_is_a_sentence_and_no_figure(words: str, says: str) -> None:
    code, out, err = run(shlex.split(words))
    assert (code, err) == (3, "")
    assert out.startswith("no figure: What was typed gives ")
    assert says in out
    found = ask(words, code=3)
    assert found["status"] == "no figure" and found["values"] == {}


def test_what_is_without_end_says_why() -> None:
    out = run(["evenness", "parabola", "0%"])[1]
    assert out.startswith("thickest over thinnest without end: some of the width gets nothing;")
    out = run(["gauge", "3mil:-"])[1]
    assert "mean film from 3.00 mil up: no dry tooth was read" in out


def test_estimates_say_so_with_their_band() -> None:
    out = run(["mean-wet-film", "200ml/min", "250mm", "50%", "0.4m/s", "--metric"])[1]
    assert out.startswith("mean wet film estimate 43.3 µm, 40.0 µm to 46.7 µm")
    known = run(["mean-wet-film", "200ml/min", "250mm", "50%", "0.4m/s", "efficiency=65%"])[1]
    assert "estimate" not in known.partition("|")[0]
    out = run(["recoat-closes", "48h", "24C", "39C"])[1]
    # 48 h, halved for each 12 F: 10 h 5 min 27 s; a closing is rounded down, never up.
    assert out.startswith("recoat window closes after estimate 10 h; likely estimate 10 h 10 min")
    out = run(["recoat-opens", "1h", "24C", "14C"])[1]
    # An hour, doubled for each 17.5 F down: 2 h 2 min 24 s; an opening is rounded up.
    assert out.startswith("recoat window opens after estimate 2 h 5 min")


def test_cautions_come_with_figures_of_fire_and_air() -> None:
    for words in (
        "fresh-air 200ml/min 60% xylene:100%",
        "dilution-air 30.4 1.4",
        "required-exhaust 100ft2",
    ):
        out = run(shlex.split(words))[1]
        assert "not a permission to breathe" in out


def test_user_text_never_acts_on_the_terminal() -> None:
    evil = "base\x1b[2J\x07\u202e"
    for words in (
        ["mix", "600ml", f"{evil}:4"],
        [evil],
        ["viscosity", evil, "30s"],
        ["time-to-empty", evil],
    ):
        _, out, err = run(words)
        assert not set("\x1b\x07\u202e") & set(out + err)


def test_a_terminal_without_the_signs_of_the_trade_gets_an_answer() -> None:
    raw = io.BytesIO()
    narrow = io.TextIOWrapper(raw, encoding="ascii", errors="strict")
    with redirect_stdout(narrow):
        assert main(["viscosity", "Ford #4", "30s"]) == 0
    narrow.flush()
    assert raw.getvalue().startswith(b"viscosity 98.2 mm2/s")


def test_without_docstrings_no_figure_loses_its_unit_unsaid() -> None:
    code = (
        "from booth.figure import main\n"
        "main(['wet-film', '1.5mil', '42%', '--metric']); main(['solids-after-thinning', '50%', '25%'])"
    )
    done = subprocess.run(
        [sys.executable, "-OO", "-c", code], capture_output=True, text=True, timeout=60, check=True
    )
    film, solids = done.stdout.splitlines()
    assert film.startswith("wet film 90.7 µm")  # 1.5 mil / 0.42
    assert solids.startswith("no figure: Python was told to drop the docstrings")


def test_the_command_answers_without_loading_a_screen() -> None:
    code = (
        "import sys; from booth.cli.command import main\n"
        "done = main(['figure', 'dew-point', '72F', '45%'])\n"
        "print([m for m in ('textual', 'numpy', 'rich') if m in sys.modules]); sys.exit(done)"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, timeout=60, check=False
    )
    assert done.returncode == 0
    answer, loaded = done.stdout.splitlines()
    assert answer.startswith("dew point 49.5 °F")  # 9.7 C by psychrolib
    assert loaded == "[]"


# Words as a hurried hand types them: real values, names, stray words, rubbish.
POOL = [
    *(word for line in LINES for word in shlex.split(line)),
    *(
        f"{each.name}={value}"
        for subject in SUBJECTS.values()
        for each in subject.arguments
        for value in ("0", "-1", "1e9", "50%", "1:2:3", "")
    ),
    *[
        "0",
        "-5C",
        "999999",
        "nan",
        "inf",
        "-",
        ":",
        "::",
        "=",
        "--",
        "--=",
        "at",
        "from",
        "to",
        "1:1",
        "--json",
        "--us",
        "--metric",
        "--units=both",
        "--why",
        "--help",
        "-h",
    ],
    *[
        "½",
        "1/0",
        "hvlp",
        "yes",
        "0ml:0ml",
        "0s:0s",
        "0%:0cSt",
        "1e308",
        "100%",
        "95%",
        "1",
        "1000000",
        "-:-",
    ],
    *("\x00", "١٢ s"),
]


@settings(max_examples=400, deadline=None)
@given(
    st.sampled_from(sorted(SUBJECTS)),
    st.lists(st.one_of(st.sampled_from(POOL), st.text(max_size=12)), max_size=7),
)
def test_no_words_end_in_a_traceback(name: str, words: list[str]) -> None:
    check(*run([name, *words]), "--json" in words)


@settings(max_examples=400, deadline=None)
@given(st.sampled_from(LINES), st.data())
def test_an_example_with_one_word_changed_is_answered_or_refused(line: str, data: Any) -> None:
    words = shlex.split(line)
    if len(words) > 1:
        place = data.draw(st.integers(1, len(words) - 1))
        words[place] = data.draw(st.one_of(st.sampled_from(POOL), st.text(max_size=12)))
    check(*run([*words, "--json"]), "--help" not in words and "-h" not in words)


def check(code: int, out: str, err: str, as_json: bool) -> None:
    assert code in {0, 2, 3}
    assert "Traceback" not in out + err
    if code != 2:  # a refusal says what was typed
        assert "∞" not in out and " nan" not in out
    if as_json and out.startswith("{"):
        assert err == ""
        found = json.loads(out, parse_constant=refuse)
        assert "$schema" in found or (code == 2) == (found["status"] == "bad input")
        return
    assert (code == 2) == bool(err)
    assert (code != 2) == bool(out)
    if code == 2:
        assert err.startswith("booth figure")
        assert err.count("\n") == 1
