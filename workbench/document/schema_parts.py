"""Finding one's way in a schema, and the parts of it that are not as they come."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from workbench.document.records import AMOUNT

Schema = dict[str, Any]


def groups(schema: Any) -> Iterator[Schema]:
    """Every group of keywords in a schema, the outer before the inner."""
    if isinstance(schema, dict):
        yield schema
        for inner in schema.values():
            yield from groups(inner)
    elif isinstance(schema, list):
        for inner in schema:
            yield from groups(inner)


def numbers(schema: Any) -> list[Schema]:
    """The groups that say that something is a number."""
    return [group for group in groups(schema) if group.get("type") == "number"]


def amounts_as_text(schema: Schema) -> None:
    """Let every amount be text alone; as it comes, a schema has it as a number too."""
    for group in list(groups(schema)):
        if {kind.get("type") for kind in group.get("anyOf", ())} == {"number", "string"}:
            del group["anyOf"]
            group.update(type="string", pattern=f"^{AMOUNT.pattern}$")
