"""Reads a program from outside, as a screen reader does, and prints what it found as JSON.

For the system's own Python, which has the binding of AT-SPI; it must have nothing of the project.
"""

from __future__ import annotations

import json
import sys
import time
from typing import Any

import gi  # type: ignore[import-not-found]  # of the system’s Python alone

gi.require_version("Atspi", "2.0")
from gi.repository import Atspi  # type: ignore[import-not-found]  # noqa: E402


def told(thing: Any) -> dict[str, Any]:
    """Name, role, value and actions of one thing, and whose child it is."""
    value: float | None = None
    deeds: list[str] = []
    if "Value" in thing.get_interfaces():
        value = thing.get_current_value()
    if "Action" in thing.get_interfaces():
        deeds = [Atspi.Action.get_action_name(thing, number) for number in range(thing.get_n_actions())]
    return {
        "name": thing.get_name(),
        "role": thing.get_role_name(),
        "description": thing.get_description(),
        "value": value,
        "deeds": deeds,
        "shown": thing.get_state_set().contains(Atspi.StateType.SHOWING),
    }


def walked(thing: Any, found: list[tuple[Any, dict[str, Any]]]) -> list[tuple[Any, dict[str, Any]]]:
    """Everything under a thing."""
    found.append((thing, told(thing)))
    for number in range(thing.get_child_count()):
        child = thing.get_child_at_index(number)
        if child is not None:
            walked(child, found)
    return found


def program(name: str, seconds: float) -> Any:
    """The program of a name, as soon as it has a window."""
    until = time.monotonic() + seconds
    while time.monotonic() < until:
        desktop = Atspi.get_desktop(0)
        for number in range(desktop.get_child_count()):
            there = desktop.get_child_at_index(number)
            if there is not None and there.get_name() == name and there.get_child_count():
                return there
        time.sleep(0.2)
    raise SystemExit(f"no program called {name} came")


def moved(found: list[tuple[Any, dict[str, Any]]]) -> dict[str, float] | None:
    """What becomes of the waist's bar once its value is set from here."""
    for thing, words in found:
        if words["name"].startswith("Waist, finished"):
            wanted = words["value"] - 0.5
            thing.set_current_value(wanted)
            time.sleep(0.5)
            return {"wanted": wanted, "now": thing.get_current_value()}
    return None


Atspi.init()
time.sleep(1.0)
things = walked(program(sys.argv[1], 20), [])
print(json.dumps({"things": [words for _, words in things], "moved": moved(things)}))
