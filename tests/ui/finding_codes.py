"""Every code that a finding can have, read from the sources: what stands where a finding is made.

A code that is handed in is looked up where its function is called; one put together from
parts becomes a pattern, with a star for each part that is not written there.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import workbench

_MAKERS = {"Finding": 1, "stop": 0}
"""What makes a finding, and which of its arguments is the code."""
_NAMED = {"CARRIED": "carried_", "_STALE": "plan_stale"}


@cache
def codes() -> frozenset[str]:
    """All codes and patterns."""
    trees = {path: ast.parse(path.read_text(encoding="utf-8")) for path in _sources()}
    return frozenset(code for tree in trees.values() for code in _of_module(tree))


def _sources() -> Iterator[Path]:
    yield from sorted(Path(workbench.__file__).parent.rglob("*.py"))


def _of_module(tree: ast.Module) -> Iterator[str]:
    for function in [node for node in ast.walk(tree) if isinstance(node, ast.FunctionDef)]:
        for call in _calls(function):
            place = _MAKERS.get(_name(call))
            argument = _argument(call, place, "code") if place is not None else None
            if argument is not None:
                yield from _said(argument, function, tree)


def _calls(node: ast.AST) -> Iterator[ast.Call]:
    return (each for each in ast.walk(node) if isinstance(each, ast.Call))


def _name(call: ast.Call) -> str:
    return call.func.id if isinstance(call.func, ast.Name) else ""


def _argument(call: ast.Call, place: int, keyword: str) -> ast.expr | None:
    if len(call.args) > place:
        return call.args[place]
    return next((each.value for each in call.keywords if each.arg == keyword), None)


def _said(value: ast.expr, function: ast.FunctionDef, tree: ast.Module) -> Iterator[str]:
    """The codes that an expression can be."""
    if isinstance(value, ast.Constant) and isinstance(value.value, str):
        yield value.value
    elif isinstance(value, ast.IfExp):
        yield from _said(value.body, function, tree)
        yield from _said(value.orelse, function, tree)
    elif isinstance(value, ast.JoinedStr):
        yield "".join(map(_part, value.values))
    elif isinstance(value, ast.Name):
        yield from _named(value.id, function, tree)
    else:
        raise AssertionError(f"A code that cannot be read: {ast.unparse(value)}")


def _part(value: ast.expr) -> str:
    if isinstance(value, ast.Constant):
        return str(value.value)
    inner = value.value if isinstance(value, ast.FormattedValue) else value
    return _NAMED.get(inner.id, "*") if isinstance(inner, ast.Name) else "*"


def _named(name: str, function: ast.FunctionDef, tree: ast.Module) -> Iterator[str]:
    """A constant; a parameter, as its callers hand it in; or what a loop gives it."""
    parameters = [each.arg for each in function.args.args]
    if name in _NAMED:
        yield _NAMED[name]
    elif name in parameters:
        yield from _handed_in(parameters.index(name), name, function, tree)
    else:
        yield from _of_loop(name, function)


def _handed_in(place: int, name: str, called: ast.FunctionDef, tree: ast.Module) -> Iterator[str]:
    if called.name in _MAKERS:
        return  # what is handed in there is looked up at each call of it
    for function in [node for node in ast.walk(tree) if isinstance(node, ast.FunctionDef)]:
        for call in _calls(function):
            argument = _argument(call, place, name) if _name(call) == called.name else None
            if argument is not None:
                yield from _said(argument, function, tree)


def _of_loop(name: str, function: ast.FunctionDef) -> Iterator[str]:
    for loop in [node for node in ast.walk(function) if isinstance(node, ast.For)]:
        names = loop.target.elts if isinstance(loop.target, ast.Tuple) else [loop.target]
        at = next((n for n, each in enumerate(names) if isinstance(each, ast.Name) and each.id == name), None)
        if at is not None and isinstance(loop.iter, ast.Tuple):
            for row in loop.iter.elts:
                assert isinstance(row, ast.Tuple)
                value = row.elts[at]
                assert isinstance(value, ast.Constant)
                yield str(value.value)
            return
    raise AssertionError(f"{function.name}: it cannot be told what {name} is.")
