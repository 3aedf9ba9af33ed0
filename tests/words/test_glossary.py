"""One word for one thing: no word that the glossary rules out stands where a painter can read it."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from booth.bench.help_page import help_page
from booth.figure.catalogue import subjects
from booth.figure.help import about, everything, shortly
from booth.units import System
from booth.words.glossary import TERMS, found_in, terms_in, terms_like
from tests.law.desks import desk_for, states

ROOT = Path(__file__).parents[2]
#: What no painter reads there: what may be typed, how a picture is drawn, the table itself.
UNSEEN = {"figure/search.py", "units/words.py", "card/drawing.py", "words/terms.py"}
#: What may be typed instead of a key, in the tables of keys.
TYPED = "ALSO_CALLED"
#: A name of the code.
CODE = re.compile(r"[\w.]*[._]\w+")
NEVER = {word: term.word for term in TERMS for word in term.never}


def amiss(text: str) -> list[str]:
    """The forbidden words in a text, each with the word to be used."""
    return [f"{word!r} for {NEVER[word]!r}" for word in found_in(NEVER, text)]


def literals(tree: ast.Module) -> Iterator[tuple[int, str]]:
    """Line and text of every string but docstrings, what may be typed, and names of the code."""
    unseen = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.AnnAssign) and ast.unparse(node.target) == TYPED:
            unseen |= {id(each) for each in ast.walk(node)}
        body = getattr(node, "body", None)
        if isinstance(body, list) and body and isinstance(body[0], ast.Expr):
            unseen.add(id(body[0].value))
    for node in ast.walk(tree):
        if id(node) in unseen:
            continue
        if isinstance(node, ast.JoinedStr):
            yield node.lineno, "".join(map(_fixed, node.values))
        elif isinstance(node, ast.Constant):
            yield node.lineno, _fixed(node)


def _fixed(node: ast.AST) -> str:
    """The words of a string; where a value stands in it, none: words that it parts are no phrase."""
    text = node.value if isinstance(node, ast.Constant) and isinstance(node.value, str) else "\0"
    return "\0" if CODE.fullmatch(text) else text


def test_no_text_of_the_program_has_another_word_for_a_thing() -> None:
    package = ROOT / "booth"
    found = [
        f"{path.relative_to(ROOT)}:{line}: {each}"
        for path in sorted(package.rglob("*.py"))
        if path.relative_to(package).as_posix() not in UNSEEN
        for line, text in literals(ast.parse(path.read_text(encoding="utf-8")))
        for each in amiss(text)
    ]
    assert not found, "\n".join(found)


@pytest.mark.parametrize("wrong", ["the flow rate", "f'{a} flow\\nrate of {b}'", "Reducer: {n}"])
def test_a_wrong_word_is_found(wrong: str) -> None:
    source = f"'''A flow rate.'''\nA = {wrong if wrong[0] == 'f' else repr(wrong)}\n"
    assert [each for _, text in literals(ast.parse(source)) for each in amiss(text)]


def test_nor_has_the_readme_or_a_profile() -> None:
    files = [ROOT / "README.md", *(ROOT / "profiles").rglob("*.toml")]
    found = {path.name: amiss(path.read_text(encoding="utf-8")) for path in files}
    assert len(files) > 10 and not {name: each for name, each in found.items() if each}


def test_nor_has_the_help_of_a_figure() -> None:
    """What a source is called stays as it is called."""
    told = {name: about(subject, System.US) for name, subject in subjects().items()}
    told |= {"--help": shortly(), "the list": everything()}
    found = {name: amiss(text.split("\nSource:")[0]) for name, text in told.items()}
    assert not {name: each for name, each in found.items() if each}


@pytest.mark.parametrize(("kind", "before", "started"), states())
def test_nor_has_a_step_as_it_is_drawn_nor_its_help(kind: str, before: str, started: str) -> None:
    desk = desk_for(kind, before, started)
    page = help_page(desk.bench.instrument, desk.now, desk.rows)
    told = "\n".join((desk.text, *(text for _, text in page.paragraphs)))
    assert told and not amiss(told)


def test_each_word_means_one_thing_in_one_sentence() -> None:
    forms = [form.lower() for term in TERMS for form in (term.word, *term.forms, *term.never)]
    assert sorted(forms) == sorted(set(forms))
    for term in TERMS:
        assert re.fullmatch(r"[A-Z1].*\.", term.says), term.word
        assert not amiss(term.says), term.word
        assert len(term.line) <= 120, term.word
    assert [term.word for term in TERMS] == sorted((term.word for term in TERMS), key=str.lower)


def test_terms_are_found_in_a_text_the_longer_one_first() -> None:
    found = terms_in(["Dry film = wet film x volume\nsolids.", "Its pot lives"])
    assert [each.word for each in found] == ["dry film", "pot life", "volume solids", "wet film"]


@pytest.mark.parametrize(
    ("typed", "word"),
    [("flow rate", "delivery"), ("reducer", "thinner"), ("Dew", "dew margin"), ("rh", "RH")],
)
def test_a_term_is_found_by_another_word_too(typed: str, word: str) -> None:
    assert word in [each.word for each in terms_like(typed)]
    assert terms_like("") == terms_like("no such thing") == ()
