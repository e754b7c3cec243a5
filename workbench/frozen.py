"""Frozen dataclasses that do not keep the start waiting.

Python's own ``dataclass(frozen=True)`` has six methods of every class compiled, one by one: with all
the records that are read before the window opens that is a seventh of the start. Here only
``__init__`` is compiled; the others are the same few lines for every record. What comes out behaves
alike in ``fields``, ``replace`` and ``asdict``, when two are compared, and when one is to be changed.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import MISSING, Field, FrozenInstanceError, fields
from dataclasses import dataclass as _plain
from operator import attrgetter
from reprlib import recursive_repr
from typing import TYPE_CHECKING, Any, TypeVar

__all__ = ["dataclass"]

T = TypeVar("T")

if TYPE_CHECKING:
    from dataclasses import dataclass
else:

    def dataclass(*, frozen: bool, **wanted: bool) -> Callable[[type[T]], type[T]]:
        """A frozen dataclass of a class; a field may have a default or a factory, and no other wishes.

        ``eq`` and ``repr`` may be refused. ValueError where it is not to be frozen: use Python's own then.
        """
        if not frozen:
            raise ValueError("only what is frozen is made here")
        return lambda cls: _made(cls, **wanted)


def _made(cls: Any, *, eq: bool = True, **wanted: bool) -> Any:
    if cls.__doc__ is None:
        cls.__doc__ = cls.__name__  # or its signature is spelled out for it
    made = _plain(init=False, repr=False, eq=False)(cls)
    own = fields(made)
    methods: dict[str, Any] = {"__init__": _init(made, own), "__setattr__": _keep, "__delattr__": _hold}
    if wanted.get("repr", True):
        methods["__repr__"] = _say
    if eq:
        methods |= _compared([field.name for field in own])
    for name, method in methods.items():
        # Python itself writes that there is no hash where a class says when two of it are equal
        if vars(made).get(name) is None:
            setattr(made, name, method)
    return made


def _init(cls: Any, own: tuple[Field[Any], ...]) -> Any:
    """``__init__`` with a parameter for each field, in their order."""
    known: dict[str, Any] = {"__name__": cls.__module__, "_put": object.__setattr__, "_unset": MISSING}
    given, lines = ["self"], []
    for field in own:
        name, usual = field.name, f"_usual_{field.name}"
        value = name
        if field.default_factory is not MISSING:
            known[usual] = field.default_factory
            given.append(f"{name}=_unset")
            value = f"{usual}() if {name} is _unset else {name}"
        elif field.default is not MISSING:
            known[usual] = field.default
            given.append(f"{name}={usual}")
        else:
            given.append(name)
        lines.append(f"_put(self, {name!r}, {value})")
    if hasattr(cls, "__post_init__"):
        lines.append("self.__post_init__()")
    exec(f"def __init__({', '.join(given)}):\n " + "\n ".join(lines or ["pass"]), known)
    known["__init__"].__qualname__ = f"{cls.__qualname__}.__init__"
    return known["__init__"]


def _compared(names: list[str]) -> dict[str, Any]:
    """Two of one class are equal where all their fields are, and then their hashes are too."""
    values: Any = attrgetter(*names) if len(names) > 1 else lambda one: tuple(getattr(one, n) for n in names)

    def same(self: Any, other: object) -> Any:
        return values(self) == values(other) if other.__class__ is self.__class__ else NotImplemented

    def number(self: Any) -> int:
        return hash(values(self))

    return {"__eq__": same, "__hash__": number}


def _keep(self: Any, name: str, value: object) -> None:
    raise FrozenInstanceError(f"cannot assign to field {name!r}")


def _hold(self: Any, name: str) -> None:
    raise FrozenInstanceError(f"cannot delete field {name!r}")


@recursive_repr()
def _say(self: Any) -> str:
    said = (f"{field.name}={getattr(self, field.name)!r}" for field in fields(self))
    return f"{type(self).__qualname__}({', '.join(said)})"
