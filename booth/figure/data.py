"""Answers as JSON, and the JSON Schema (draft 2020-12) that they keep to."""

from __future__ import annotations

import functools
import typing
from collections.abc import Mapping, Sequence
from typing import Any

from booth.figure import docs
from booth.figure.answer import Answer, Manner, Told, figures
from booth.figure.forms import Record, values_of
from booth.figure.subject import Subject
from booth.files.safe_text import visible

DRAFT = "https://json-schema.org/draft/2020-12/schema"
ANSWERED, NO_FIGURE, BAD_INPUT = "answered", "no figure", "bad input"

_TEXT = {"type": "string"}
_TEXTS = {"type": "array", "items": _TEXT}
_GIVEN = {
    "type": "object",
    "properties": {
        "name": _TEXT,
        "text": _TEXT,
        "assumed": {"type": "boolean"},
        "from": {"type": "string", "description": "the profile or shop file it was taken from"},
        "how": {"type": "string", "description": "of a range, which part of it; else empty"},
    },
    "required": ["name", "text", "assumed", "from", "how"],
    "additionalProperties": False,
}
#: What stands beside the values, whatever was asked.
_BESIDE: Mapping[str, Any] = {
    "text": {"type": "string", "description": "the answer as it is printed"},
    "estimate": {"type": "boolean"},
    "reason": {"type": "string", "description": "why there is no figure; else empty"},
    "advice": {"type": "string", "description": "what to do where there is no figure; else empty"},
    "given": {"type": "array", "items": _GIVEN},
    "notes": _TEXTS,
    "cautions": _TEXTS,
    "rule": _TEXT,
    "source": _TEXT,
}


@functools.cache
def form_of_values(subject: Subject) -> Record:
    """Give the form of what a subject answers, from the type that its function gives."""
    hint = typing.get_type_hints(subject.function)["return"]
    return values_of(
        hint, subject.functions[0].__name__, subject.key, docs.unit(subject.functions[0])
    )


def answer_as_json(
    subject: Subject, answer: Answer, given: Sequence[Told], manner: Manner
) -> dict[str, Any]:
    """Give an answer as JSON; what is not known is null with a reason, what is infinite too."""
    outside = answer.outside
    return {
        "subject": subject.name,
        "status": ANSWERED if outside is None else NO_FIGURE,
        "values": {} if outside is not None else _values(subject, answer.found),
        "text": visible("; ".join(figures(answer, manner))),
        "estimate": answer.estimate and outside is None,
        "reason": "" if outside is None else outside.reason,
        "advice": "" if outside is None else outside.advice,
        "given": [
            {"name": each.name, "text": visible(each.text), "assumed": each.assumed}
            | {"from": visible(each.source), "how": each.how}
            for each in given
        ],
        "notes": list(answer.notes),
        "cautions": list(answer.cautions),
        "rule": answer.rule,
        "source": subject.source,
    }


def _values(subject: Subject, found: Any) -> dict[str, Any]:
    form = form_of_values(subject)
    if tuple(form.fields.values()) == ("0",):
        return form.plain((found,), "")
    return {} if found is None else form.plain(found, "")


def refusal_as_json(subject: str, sentence: str, subjects: Sequence[str] = ()) -> dict[str, Any]:
    """Give a refusal as JSON. subjects: those that may have been meant."""
    found = {"subject": subject, "status": BAD_INPUT, "error": visible(sentence)}
    return {**found, "subjects": list(subjects)}


def _document(properties: Mapping[str, Any]) -> dict[str, Any]:
    return {
        "type": "object",
        "properties": dict(properties),
        "required": list(properties),
        "additionalProperties": False,
    }


def answer_schema(subject: Subject) -> dict[str, Any]:
    """Give the schema of an answer of one subject."""
    answered, none = (
        _document(
            {"subject": {"const": subject.name}, "status": {"const": status}, "values": values}
        )
        for status, values in (
            (ANSWERED, form_of_values(subject).schema()),
            (NO_FIGURE, {"type": "object", "maxProperties": 0}),
        )
    )
    for each in (answered, none):
        each["properties"] |= _BESIDE
        each["required"] += list(_BESIDE)
    return {"title": subject.name, "description": subject.says, "oneOf": [answered, none]}


def refusal_schema() -> dict[str, Any]:
    """Give the schema of what is answered where the words cannot be read."""
    status = {"status": {"const": BAD_INPUT}, "error": _TEXT, "subjects": _TEXTS}
    return {"title": "bad input", **_document({"subject": _TEXT, **status})}


def schema(subjects: Sequence[Subject]) -> dict[str, Any]:
    """Give the schema of whatever these subjects may answer."""
    branches = [{"$ref": f"#/$defs/{each.name}"} for each in subjects]
    return {
        "$schema": DRAFT,
        "title": "booth figure",
        "anyOf": [*branches, {"$ref": "#/$defs/refusal"}],
        "$defs": {each.name: answer_schema(each) for each in subjects}
        | {"refusal": refusal_schema()},
    }
