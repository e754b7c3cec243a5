"""Steps of the work ticked off: what may be kept of them, and the one edit there is.

Figures are own choice: how much a file may hold.
"""

from __future__ import annotations

from dataclasses import replace

from workbench.document.problem import Problems, text_problems, twice
from workbench.document.project import Project
from workbench.document.schema_parts import Schema

MOST_DONE = 5000
KEY_MOST = 120
"""Characters of the key of a step."""


def set_done(project: Project, key: str, on: bool) -> Project:
    """The project with one step ticked off, or no longer; the same one where it was so before."""
    if on == (key in project.done):
        return project
    others = tuple(each for each in project.done if each != key)
    return replace(project, done=(*others, key) if on else others)


def done_problems(done: tuple[str, ...]) -> Problems:
    """Too many ticks, one that stands there twice, or a key that cannot be kept."""
    if len(done) > MOST_DONE:
        yield ("done",), f"names {len(done)} steps; at most {MOST_DONE} are possible"
    for number, key in enumerate(done):
        yield from text_problems(key, KEY_MOST, ("done", number))
    yield from twice(done, "the step", ("done",))


def bound_done(schema: Schema) -> None:
    """The same in the schema of project files."""
    done = schema["properties"]["done"]
    done.update(maxItems=MOST_DONE, uniqueItems=True)
    done["items"]["maxLength"] = KEY_MOST
