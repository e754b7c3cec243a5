"""Numbers in a file of the program, with the words that stand beside them.

What is looked at: names in capitals at the head of a file, defaults of the fields of a class,
and sentences in the docstring of a function, class or file that name a source. What stands in
the middle of a formula has no name, and so no words: :func:`nameless_in` finds it.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from dataclasses import dataclass

from workbench.sources.words import said_elsewhere, said_for_all, statuses_in

_CAPITALS = re.compile(r"_?[A-Z][A-Z0-9_]*(, _?[A-Z][A-Z0-9_]*)*$")
_SENTENCE = re.compile(r"(?<=[.:])\s+(?=[A-Z])|\n\s*\n")
_PLAIN = (0, 1)
"""In a table or as a default of a field, nothing and one are no figure that anybody chose."""
_NO_FIGURE = ("TypeVar", "Path", "getattr", "compile")
"""A number handed to one of these measures nothing."""


@dataclass(frozen=True)
class Number:
    """A name with a number, or a rule where ``value`` is None."""

    name: str
    value: ast.expr | None
    words: str
    """Its own."""
    inherited: str
    """What its class, file or folder says for all that say nothing."""


def numbers_in(source: str, of_folder: str = "") -> list[Number]:
    """Constants, defaults and rules of one file, in the order they stand in it."""
    tree = ast.parse(source)
    for_all = said_for_all(ast.get_docstring(tree) or "") or of_folder
    found = [
        Number(name, value, words, for_all)
        for name, value, words in _assigned(tree.body)
        if _counts(name, value)
    ]
    for kind in (node for node in tree.body if isinstance(node, ast.ClassDef)):
        found += _defaults(kind, for_all)
    return [*found, *_rules(tree)]


def _counts(name: str, value: ast.expr) -> bool:
    if not _CAPITALS.match(name) or not (_figures(value) or _of_others(value)):
        return False
    if isinstance(value, ast.Call) and any(part in ast.unparse(value) for part in _NO_FIGURE):
        return False
    return isinstance(value, ast.Constant) or _of_others(value) or not _plain(value)


def _plain(value: ast.expr) -> bool:
    return all(figure in _PLAIN for figure in _figures(value))


def _of_others(value: ast.expr) -> bool:
    """Whether it is reckoned from, or is, another constant."""
    names = (node.id for node in ast.walk(value) if isinstance(node, ast.Name))
    return isinstance(value, ast.Name | ast.BinOp) and any(_CAPITALS.match(name) for name in names)


def _figures(value: ast.expr) -> list[float]:
    """The numbers that are written in an expression, without those that only count places in a row."""
    inside = (node for node in _walk(value) if isinstance(node, ast.Constant))
    values = (node.value for node in inside)
    return [value for value in values if isinstance(value, int | float) and not isinstance(value, bool)]


def _walk(node: ast.AST) -> Iterator[ast.AST]:
    yield node
    if isinstance(node, ast.Subscript):
        yield from _walk(node.value)
        return
    for child in ast.iter_child_nodes(node):
        yield from _walk(child)


def _assigned(body: list[ast.stmt]) -> Iterator[tuple[str, ast.expr, str]]:
    """Name, value and the words below it."""
    for number, node in enumerate(body):
        if isinstance(node, ast.Assign | ast.AnnAssign) and node.value is not None:
            target = node.targets[0] if isinstance(node, ast.Assign) else node.target
            yield ast.unparse(target).strip("()"), node.value, _words(body, number + 1)


def _words(body: list[ast.stmt], number: int) -> str:
    """The string that stands alone as this statement; empty where there is none."""
    node = body[number] if number < len(body) else None
    text = node.value if isinstance(node, ast.Expr) else None
    return (
        " ".join(text.value.split()) if isinstance(text, ast.Constant) and isinstance(text.value, str) else ""
    )


def _defaults(kind: ast.ClassDef, of_file: str) -> list[Number]:
    said = ast.get_docstring(kind) or ""
    if said_elsewhere(said):
        return []
    for_all = said_for_all(said) or of_file
    return [
        Number(f"{kind.name}.{name}", value, words, for_all)
        for name, value, words in _assigned(kind.body)
        if _of_others(value) or not _plain(value)
    ]


def _rules(tree: ast.Module) -> Iterator[Number]:
    """Sentences that name a source, in the docstrings of the file, its classes and its functions."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Module | ast.ClassDef | ast.FunctionDef):
            name = "" if isinstance(node, ast.Module) else node.name
            for sentence in _sentences(ast.get_docstring(node) or ""):
                of_all = not isinstance(node, ast.FunctionDef) and said_for_all(sentence)
                if statuses_in(sentence) and not of_all:
                    yield Number(name, None, " ".join(sentence.split()), "")


def nameless_in(source: str) -> list[float]:
    """Figures in the middle of functions that measure something.

    No halves and quarters, no right angles, no tens and hundreds, nothing finer than a hundredth,
    and no whole number up to a hundred, which only counts.
    """
    functions = (node for node in ast.walk(ast.parse(source)) if isinstance(node, ast.FunctionDef))
    inside = {node for function in functions for node in ast.walk(function) if isinstance(node, ast.Constant)}
    in_order = sorted(inside, key=lambda node: (node.lineno, node.col_offset))
    return [figure for node in in_order for figure in _figures(node) if not _counts_only(figure)]


def _counts_only(figure: float) -> bool:
    if isinstance(figure, int) and figure <= 100:
        return True
    quarters = figure <= 2 and float(4 * figure).is_integer()
    return quarters or figure <= 0.01 or figure in (10, 100, 1000, 90, 180, 270, 360)


def _sentences(text: str) -> Iterator[str]:
    """Sentences of a text; brackets, which may hold abbreviations, stay together."""
    held = ""
    for part in _SENTENCE.split(text):
        held = f"{held} {part}".strip()
        if held.count("(") <= held.count(")"):
            yield held
            held = ""
    if held:
        yield held
