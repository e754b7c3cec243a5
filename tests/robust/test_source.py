"""What the program’s own code never does, read in its source, and what it never loads."""

from __future__ import annotations

import ast
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[2] / "workbench"
FILES = sorted(PACKAGE.rglob("*.py"))
_RUNS_TEXT = {"eval", "exec", "compile", "__import__"}
_LOADS_OBJECTS = {"pickle", "cPickle", "dill", "shelve", "marshal", "yaml", "joblib", "copyreg"}
_SPEAKS = {
    "socket", "ssl", "http", "urllib", "ftplib", "smtplib", "poplib", "imaplib", "telnetlib", "xmlrpc",
    "socketserver", "asyncio", "requests", "httpx", "aiohttp", "webbrowser", "multiprocessing",
    "PySide6.QtNetwork", "PySide6.QtWebSockets", "PySide6.QtWebEngineCore", "PySide6.QtDBus",
}  # fmt: skip
_MAY_RUN_TEXT = {"frozen.py"}
"""It compiles the fields of the program’s own records, as Python’s own dataclasses do."""
_READS_XML = {"xml", "lxml", "defusedxml"}
_STARTS = {"system", "popen", "startfile", "spawnl", "spawnv", "execv", "execvp", "fork"}
_MAY_START = {"cloth/worker.py", "document/keeping/started.py"}
"""The search for a shorter plan, and when a program was started where no file of the system says so."""


def _imported(tree: ast.AST) -> Iterator[str]:
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (name.name for name in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module:
            yield node.module
            yield from (f"{node.module}.{name.name}" for name in node.names)


def _called(tree: ast.AST) -> Iterator[tuple[str, ast.Call]]:
    """Every call, by the last part of what is called."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Call):
            name = node.func
            yield (name.id if isinstance(name, ast.Name) else getattr(name, "attr", "")), node


def _bare(node: ast.Call) -> bool:
    return isinstance(node.func, ast.Name)


def faults(source: str, place: str) -> list[str]:
    """What a source does that the program’s own never does, one line each."""
    tree = ast.parse(source)
    found = []
    for name in _imported(tree):
        parts = name.split(".")
        heads = {".".join(parts[:end]) for end in range(1, len(parts) + 1)}
        if heads & (_LOADS_OBJECTS | _SPEAKS | _READS_XML):
            found.append(f"{place}: imports {name}")
        if "subprocess" in heads and place not in _MAY_START:
            found.append(f"{place}: imports {name}")
    for name, call in _called(tree):
        runs_text = name in _RUNS_TEXT and _bare(call) and place not in _MAY_RUN_TEXT
        if runs_text or name in _STARTS:
            found.append(f"{place}:{call.lineno}: calls {name}")
        if any(word.arg == "shell" for word in call.keywords):
            found.append(f"{place}:{call.lineno}: asks for a shell")
        if name == "mktemp":
            found.append(f"{place}:{call.lineno}: makes a name that another program can take first")
        if name == "setOpenExternalLinks":
            found.append(f"{place}:{call.lineno}: follows links")
    return found


def test_nothing_runs_text_loads_objects_or_speaks() -> None:
    assert len(FILES) > 300
    found = [
        fault
        for path in FILES
        for fault in faults(path.read_text("utf-8"), path.relative_to(PACKAGE).as_posix())
    ]
    assert found == []


@pytest.mark.parametrize(
    "source",
    [
        "eval('1')", "exec(text)", "import pickle", "from marshal import loads", "import yaml",
        "import socket",
        "from urllib.request import urlopen", "import os\nos.system('x')", "run(x, shell=True)",
        "from PySide6.QtNetwork import QTcpSocket", "import subprocess", "from xml.etree import ElementTree",
        "from PySide6 import QtNetwork", "label.setOpenExternalLinks(True)", "compile(x, '', 'exec')",
    ],
)  # fmt: skip
def test_it_would_be_seen(source: str) -> None:
    assert faults(source, "ui/new.py")


def test_the_programs_that_may_be_started_are_its_own() -> None:
    """This very Python, and ``ps`` with a fixed question; neither through a shell."""
    for place in _MAY_START:
        commands = [
            node
            for name, node in _called(ast.parse((PACKAGE / place).read_text("utf-8")))
            if name in ("Popen", "run")
        ]
        assert len(commands) == 1, place


def test_the_window_loads_no_library_that_speaks() -> None:
    """Qt’s own network library is not even in the program, whatever a module of it may load besides."""
    text = (
        "import sys\nfrom workbench.ui import window\n"
        "maps = open('/proc/self/maps').read() if sys.platform == 'linux' else ''\n"
        "print('Network' in maps, *sorted(m for m in sys.modules if m in "
        "('socket', 'ssl', 'http.client', 'urllib.request')))"
    )
    done = subprocess.run([sys.executable, "-c", text], capture_output=True, text=True, check=True)
    assert done.stdout.split() == ["False"]
