"""What a door hands out when it is asked is what stands behind it, and nothing is read before."""

from __future__ import annotations

import subprocess
import sys
from importlib import import_module
from pathlib import Path
from types import ModuleType

import pytest

from workbench.doors import when_asked

ROOT = Path(__file__).parents[1]
DOORS = (
    "workbench.beads",
    "workbench.cloth",
    "workbench.pieces",
    "workbench.sheets",
    "workbench.document",
    "workbench.book",
    "workbench.ui.form",
)


@pytest.fixture(params=DOORS)
def door(request: pytest.FixtureRequest) -> ModuleType:
    return import_module(request.param)


def test_every_name_of_a_door_is_behind_it(door: ModuleType) -> None:
    for name in door.__all__:
        assert not isinstance(getattr(door, name), ModuleType), name


def test_no_name_is_taken_by_a_file_that_is_spelled_so(door: ModuleType) -> None:
    code = (
        f"import importlib, pkgutil, types, {door.__name__} as door\n"
        "for file in pkgutil.iter_modules(door.__path__):\n"
        f"    importlib.import_module('{door.__name__}.' + file.name)\n"
        "print(*(name for name in door.__all__ if isinstance(getattr(door, name), types.ModuleType)))"
    )
    assert printed(code) == []


def test_a_name_that_is_none_is_refused(door: ModuleType) -> None:
    with pytest.raises(AttributeError, match=f"there is no such_thing in {door.__name__}"):
        door.such_thing  # noqa: B018


def test_a_name_is_looked_up_once() -> None:
    door = import_module("workbench.cloth")
    vars(door).pop("hours_of", None)
    asked = when_asked("workbench.cloth", {"hours": "hours_of"})
    assert asked("hours_of") is vars(door)["hours_of"]


@pytest.mark.parametrize(
    ("opened", "unread"),
    [
        ("workbench.cloth", {"workbench.cloth.solver", "workbench.cloth.plan", "subprocess"}),
        ("workbench.pieces", {"workbench.pieces.result", "workbench.pieces.work", "shapely"}),
        ("workbench.sheets", {"workbench.sheets.pdf", "workbench.sheets.paper", "reportlab"}),
        ("workbench.document", {"workbench.document.clients_csv", "workbench.document.report_data", "csv"}),
    ],
)
def test_a_door_reads_little_when_it_is_opened(opened: str, unread: set[str]) -> None:
    assert not unread & set(printed(f"import sys, {opened}; print(*sys.modules)"))


def test_the_window_opens_without_what_later_places_sheets_and_commands_use() -> None:
    later = {
        *("ezdxf", "PIL", "pydantic", "reportlab", "shapely", "spyrrow", "csv", "subprocess"),
        *("workbench.pieces.result", "workbench.pieces.verify", "workbench.pieces.work"),
        *("workbench.cloth.plan", "workbench.cloth.quote", "workbench.cloth.solver"),
        *("workbench.document.clients_csv", "workbench.document.lays", "workbench.document.report_data"),
        *("workbench.sheets.drawing", "workbench.sheets.paper", "workbench.ui.form.ledger_table"),
        *("workbench.ui.cloth.place", "workbench.ui.pieces.place", "workbench.ui.quote.place"),
    }
    assert not later & set(printed("import sys, workbench.ui.app; print(*sys.modules)"))


def printed(code: str) -> list[str]:
    """The words a fresh Python says."""
    done = subprocess.run(
        [sys.executable, "-c", code], cwd=ROOT, check=True, capture_output=True, text=True, timeout=60
    )
    return done.stdout.split()
