"""Answers as JSON keep to their schema, an open standard; a library that is not ours says so."""

from __future__ import annotations

import json
import math
import shlex
from typing import Any

import jsonschema
import pytest

from booth.figure.subject import Subject
from tests.figure.ask import EXAMPLES, LINES, SUBJECTS, ask, numbers, run

SNAKE = r"^[a-z][a-z0-9]*(_[a-z0-9]+)*$"


def schema_of(*subjects: str) -> dict[str, Any]:
    code, out, err = run(["--schema", *subjects])
    assert (code, err) == (0, "")
    found: dict[str, Any] = json.loads(out)
    return found


@pytest.fixture(scope="module")
def whole() -> jsonschema.Draft202012Validator:
    found = schema_of()
    assert found["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    jsonschema.Draft202012Validator.check_schema(found)
    return jsonschema.Draft202012Validator(found)


@pytest.mark.parametrize(("subject", "words"), EXAMPLES, ids=LINES)
def test_every_example_keeps_to_the_schema_of_its_subject(subject: Subject, words: str) -> None:
    schema = schema_of(subject.name)
    jsonschema.Draft202012Validator.check_schema(schema)
    found = ask(words, code=run(shlex.split(words))[0])
    jsonschema.Draft202012Validator(schema).validate(found)


def test_the_schema_of_all_holds_answers_and_refusals(
    whole: jsonschema.Draft202012Validator,
) -> None:
    for words in ("dew-point 72F 60%", "mix 600ml 4:1", "fault runs", "gauge 3mil:-"):
        whole.validate(ask(words))
    whole.validate(ask("viscosity 'Zahn 2' 18s", code=3))
    whole.validate(ask("viscosity 'Zahn 2' 18F", code=2))
    whole.validate(ask("nothing-such", code=2))


def test_the_schema_refuses_what_is_not_an_answer(whole: jsonschema.Draft202012Validator) -> None:
    found = ask("dew-point 72F 60%")
    for spoilt in (
        found | {"values": {"dew_point": 15.0}},
        found | {"values": {"dew_point": {"value": "15", "unit": "degC", "estimate": False}}},
        found | {"values": {"dew_point": {"value": 15.0, "unit": "K", "estimate": False}}},
        found | {"values": {"dew_point": {"value": None, "unit": "degC", "estimate": False}}},
        found | {"values": {}},
        {key: value for key, value in found.items() if key != "rule"},
    ):
        assert not whole.is_valid(spoilt)


@pytest.mark.parametrize("name", SUBJECTS)
def test_keys_are_plain_and_of_one_type(name: str) -> None:
    def walk(schema: Any) -> None:
        if isinstance(schema, dict):
            for key, inside in schema.get("properties", {}).items():
                assert jsonschema.Draft202012Validator({"pattern": SNAKE}).is_valid(key), key
                kinds = inside.get(
                    "type", "string" if "const" in inside or "enum" in inside else ""
                )
                if isinstance(kinds, list):  # a figure that there may not be
                    assert len(kinds) == 2 and kinds[1] == "null", key
                else:
                    assert isinstance(kinds, str) and kinds, key
                walk(inside)
            walk(schema.get("items"))

    values = schema_of(name)["$defs"][name]["oneOf"][0]["properties"]["values"]
    walk(values)


def test_what_is_not_known_is_null_with_its_reason() -> None:
    values = ask("gauge 3mil:-")["values"]
    high = values["film"]["mean"]["high"]
    assert high["value"] is None and "dry tooth" in high["reason"]
    low = values["film"]["mean"]["low"]["value"]
    assert low == pytest.approx(3 * 25.4)
    trigger = ask("longest-trigger 90l 8bar 5bar 200l/min supply=200l/min")["values"]
    assert trigger["longest_trigger"]["value"] is None
    assert "meets the demand" in trigger["longest_trigger"]["reason"]
    assert ask("evenness even 0%")["values"]["max_over_min"]["value"] == 1
    bare = ask("evenness 0,9,0 0%")["values"]["max_over_min"]
    assert bare["value"] is None and bare["reason"]
    assert all(
        each["value"] is None or math.isfinite(each["value"])
        for each in numbers(ask("evenness 0,9,0 0%")["values"])
    )


def test_refusals_are_json_too() -> None:
    found = ask("viscosity 'Ford #4' 30F", code=2)
    assert found["status"] == "bad input"
    assert found["subject"] == "viscosity"
    assert "measures a temperature" in found["error"]
    found = ask("--units furlong dew-point 72F 60%", code=2)
    assert "us, metric or both" in found["error"]
    code, out, err = run(["--schema", "nothing-such"])
    assert (code, out) == (2, "") and "nothing-such" in err
