"""The keys of a coating profile for the work before and after, in the data sheet's words."""

from __future__ import annotations

from booth.profile.model import Care
from booth.toml.key import Key, Text
from booth.toml.table import Table

PREPARATION: dict[str, Key] = {
    "degrease": Text("what it is degreased with", '"panel wipe, two cloths"', unsaid=None),
    "abrade": Text("which grit it is abraded with", '"P400, wet"', unsaid=None),
    "mask": Text("how it is masked", '"fine-line tape"', unsaid=None),
    "tack_off": Text("how it is tacked off", '"a tack cloth, lightly"', unsaid=None),
}
AFTER: dict[str, Key] = {
    "unmask": Text(
        "when and how it is unmasked", '"while the last coat is still soft"', unsaid=None
    ),
    "finish": Text("how it is sanded or polished", '"P1500 from the next day"', unsaid=None),
}
CARE: dict[str, Key] = {
    "preparation": Table("the work before", keys=PREPARATION, make=Care, unsaid=Care()),
    "after": Table("the work after the last coat", keys=AFTER, make=Care, unsaid=Care()),
}
