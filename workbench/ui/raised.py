"""Errors that reach Qt whole, so that her work is rescued instead of the program gone.

Up to Python 3.11 an error that the interpreter itself has raised, say a division by nothing, is
only put together when somebody looks at it. PySide6 (6.10.3 to 6.11.3 were tried) takes it for
whole where a method that Qt calls raises one, and the program is gone without a word. To catch it
once and let it go on is enough.
"""

from __future__ import annotations

import sys
from collections.abc import Callable
from functools import update_wrapper
from types import FunctionType
from typing import Any

from PySide6.QtCore import QObject

Method = Callable[..., Any]


def raise_whole() -> None:
    """From now on, see to it in every class that goes on from one of Qt's. To be called before they are read.

    Nothing is done where Python has no need of it.
    """
    if sys.version_info < (3, 12):
        ours: Any = QObject.__mro__[-2]  # what every class of PySide goes on from
        ours.__init_subclass__ = classmethod(_see_to)


def _see_to(cls: type, /, **_: object) -> None:
    """Wrap each method of the class that Qt may call in place of its own."""
    for name, method in list(vars(cls).items()):
        if type(method) is FunctionType and not name.startswith("_") and _is_of_qt(name, cls):
            setattr(cls, name, update_wrapper(_whole(method), method))


def _is_of_qt(name: str, cls: type) -> bool:
    return any(name in vars(base) for base in cls.__mro__[1:] if base.__module__.startswith("PySide6"))


def _whole(method: FunctionType) -> Method:
    """The method with its errors put together; signals count the parameters, so it has as many."""
    if method.__defaults__ or method.__kwdefaults__:
        return _of_any(method)
    made: dict[int, Callable[[Method], Method]] = {1: _of_none, 2: _of_one, 3: _of_two, 4: _of_three}
    return made.get(method.__code__.co_argcount, _of_any)(method)


def _of_none(method: Method) -> Method:
    def whole(self: Any) -> Any:
        try:
            return method(self)
        except Exception:
            raise

    return whole


def _of_one(method: Method) -> Method:
    def whole(self: Any, one: Any) -> Any:
        try:
            return method(self, one)
        except Exception:
            raise

    return whole


def _of_two(method: Method) -> Method:
    def whole(self: Any, one: Any, two: Any) -> Any:
        try:
            return method(self, one, two)
        except Exception:
            raise

    return whole


def _of_three(method: Method) -> Method:
    def whole(self: Any, one: Any, two: Any, three: Any) -> Any:
        try:
            return method(self, one, two, three)
        except Exception:
            raise

    return whole


def _of_any(method: Method) -> Method:
    def whole(*given: Any, **named: Any) -> Any:
        try:
            return method(*given, **named)
        except Exception:
            raise

    return whole
