"""Starting: what cannot be opened is one line and 2, and nothing opens."""

from __future__ import annotations

from pathlib import Path

import pytest

from workbench.ui import app


def test_no_screen_is_one_line(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    for name in ("QT_QPA_PLATFORM", "DISPLAY", "WAYLAND_DISPLAY"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setattr(app.sys, "platform", "linux")
    assert app.open_window(None) == 2
    lines = capsys.readouterr().err.splitlines()
    assert len(lines) == 1
    assert "screen" in lines[0]


def test_a_missing_library_is_said(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def missing(_path: str) -> None:
        raise OSError("libxcb-shape.so.0: cannot open shared object file")

    monkeypatch.delenv("QT_QPA_PLATFORM", raising=False)
    monkeypatch.delenv("WAYLAND_DISPLAY", raising=False)
    monkeypatch.setenv("DISPLAY", ":99")
    monkeypatch.setattr(app.sys, "platform", "linux")
    monkeypatch.setattr(app.ctypes, "CDLL", missing)
    assert app.open_window(None) == 2
    assert "libxcb-shape.so.0" in capsys.readouterr().err


def test_a_file_that_is_not_there_is_one_line(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    assert app.open_window(tmp_path / "gone.bodice") == 2
    lines = capsys.readouterr().err.splitlines()
    assert len(lines) == 1
    assert "gone.bodice" in lines[0]


def test_the_demos_are_found() -> None:
    assert len(app.demo_files()) >= 3
