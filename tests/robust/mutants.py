"""Project files with something wrong with them: bytes changed, and entries changed."""

from __future__ import annotations

import json
import sys
from collections.abc import Callable
from random import Random
from typing import Any

Place = tuple[str | int, ...]

_TOKENS = (
    b"NaN", b"-Infinity", b"1e999", b"-0.0", b"1e-320", b"null", b"true", b"[]", b"{}", b'""', b'"\\ud800"',
    b'"\\u0000"', b"9" * 400, b"0x10", b"1_000", b"01", b".5", b"'", b"//", b"\xef\xbb\xbf", b"\x00", b"\xff",
    b"\r\n", b"[" * 2000, b'{"a":' * 50, b"\xed\xa0\x80", b"\xf4\x90\x80\x80", b"\xc0\xaf",
)  # fmt: skip
_FIGURES = (
    0, -1, 1, 2, 1.5, -0.0, 1e-320, 1e-9, 1e9, -1e9, 9999.0, -9999.0, 2**63, 10**19, 0.1 + 0.2,
    sys.float_info.max, 63, 64, 360, 25.4,
)  # fmt: skip
_TEXTS = (
    "", " ", "x" * 81, "x" * 20_000, "\0", "\ud800", "\u202e txet", "a\nb\r\nc", "<b>&amp;</b>",
    "../../etc/passwd", "/dev/zero", "👗", "é" * 200, "%s{0}", "\x1b[2J", "-1", "1e9", "12.50", "NaN",
    "0" * 40, "2031-02-30", "0001-01-01",
)  # fmt: skip
_OTHERS: tuple[Any, ...] = (None, True, False, [], {}, [[]], [None], {"": 0})


# --- bytes -------------------------------------------------------------------------------


def _a_bit(data: bytes, dice: Random) -> bytes:
    at = dice.randrange(len(data))
    return data[:at] + bytes([data[at] ^ 1 << dice.randrange(8)]) + data[at + 1 :]


def _a_byte(data: bytes, dice: Random) -> bytes:
    at = dice.randrange(len(data))
    return data[:at] + dice.randbytes(1) + data[at + 1 :]


def _cut_off(data: bytes, dice: Random) -> bytes:
    return data[: dice.randrange(len(data))]


def _span(data: bytes, dice: Random) -> tuple[int, int]:
    start = dice.randrange(len(data))
    return start, min(start + int(dice.expovariate(1 / 60)) + 1, len(data))


def _taken_out(data: bytes, dice: Random) -> bytes:
    start, end = _span(data, dice)
    return data[:start] + data[end:]


def _said_twice(data: bytes, dice: Random) -> bytes:
    start, end = _span(data, dice)
    at = dice.randrange(len(data))
    return data[:at] + data[start:end] + data[at:]


def _noise(data: bytes, dice: Random) -> bytes:
    start, end = _span(data, dice)
    return data[:start] + dice.randbytes(end - start) + data[end:]


def _a_token(data: bytes, dice: Random) -> bytes:
    """A figure, or what stands anywhere, for something that no file of ours has."""
    at = dice.randrange(len(data))
    end = at
    while end < len(data) and data[end : end + 1] in b"-+.0123456789eE" and dice.random() < 0.97:
        end += 1
    return data[:at] + dice.choice(_TOKENS) + data[end:]


def _a_digit(data: bytes, dice: Random) -> bytes:
    """One digit for another, or a point: most of these files are sound."""
    places = [at for at, byte in enumerate(data) if byte in b"0123456789"]
    at = dice.choice(places or [0])
    return data[:at] + bytes([dice.choice(b"0123456789.-e")]) + data[at + 1 :]


def _in_another_code(data: bytes, dice: Random) -> bytes:
    code = dice.choice(["utf-16", "utf-16-le", "utf-32", "utf-8-sig", "cp1252", "utf-7"])
    return data.decode("utf-8").encode(code, "replace")


def _other_line_ends(data: bytes, dice: Random) -> bytes:
    return data.replace(b"\n", dice.choice([b"\r\n", b"\r", b"", b"\n\n", b"\x0b"]))


_BYTES: tuple[Callable[[bytes, Random], bytes], ...] = (
    _a_bit, _a_byte, _cut_off, _taken_out, _said_twice, _noise, _a_token, _a_digit, _a_digit,
    _in_another_code, _other_line_ends,
)  # fmt: skip


def bytes_changed(data: bytes, dice: Random) -> bytes:
    """The file with one to three things done to its bytes."""
    for change in dice.choices(_BYTES[:-2], k=dice.randint(0, 2)):
        data = change(data, dice) or b" "
    return dice.choice(_BYTES)(data, dice) if _is_text(data) else _a_byte(data, dice)


def _is_text(data: bytes) -> bool:
    try:
        return any(byte in b"0123456789" for byte in data) and bool(data.decode("utf-8"))
    except UnicodeDecodeError:
        return False


# --- entries -----------------------------------------------------------------------------


def places(tree: Any, place: Place = ()) -> list[Place]:
    """The place of every entry, the whole first."""
    inner = tree.items() if isinstance(tree, dict) else enumerate(tree) if isinstance(tree, list) else ()
    found = [place]
    for name, value in inner:
        found += places(value, (*place, name))
    return found


def at(tree: Any, place: Place) -> Any:
    """What stands at a place."""
    for step in place:
        tree = tree[step]
    return tree


def put(tree: Any, place: Place, value: Any) -> Any:
    """The tree with something else at a place."""
    if not place:
        return value
    if isinstance(tree, dict):
        return {**tree, place[0]: put(tree[place[0]], place[1:], value)}
    number = int(place[0])
    return [*tree[:number], put(tree[number], place[1:], value), *tree[number + 1 :]]


def entries_changed(tree: Any, dice: Random) -> Any:
    """The tree with one to three entries of another kind, size or place."""
    for _ in range(dice.choice([1, 1, 1, 2, 3])):
        all_places = places(tree)[1:]
        if not all_places:
            return tree
        place = dice.choice(all_places)
        tree = _changed(tree, place, all_places, dice)
    return tree


def _changed(tree: Any, place: Place, all_places: list[Place], dice: Random) -> Any:
    value, roll = at(tree, place), dice.random()
    if roll < 0.1:
        return _without(tree, place)
    if roll < 0.2:
        return put(tree, place, at(tree, dice.choice(all_places)))
    if roll < 0.27:
        return put(tree, place, dice.choice(_OTHERS))
    return put(tree, place, _likewise(value, tree, dice))


def _without(tree: Any, place: Place) -> Any:
    around = at(tree, place[:-1])
    if isinstance(around, dict):
        kept: Any = {name: value for name, value in around.items() if name != place[-1]}
    else:
        kept = [value for number, value in enumerate(around) if number != place[-1]]
    return put(tree, place[:-1], kept)


def _likewise(value: Any, tree: Any, dice: Random) -> Any:
    """Something else of the same kind: such a file often opens, and has to be drafted."""
    if isinstance(value, bool):
        return not value
    if isinstance(value, int):
        return dice.choice(
            [value + 1, value - 1, -value, value * 7, dice.randrange(20), dice.choice(_FIGURES)]
        )
    if isinstance(value, float):
        scale = dice.choice([-1.0, 0.0, 0.5, 0.98, 1.1, 3.0, 40.0])
        return dice.choice([value * scale, value + dice.uniform(-60, 60), dice.choice(_FIGURES)])
    if isinstance(value, str):
        words = [word for word in (at(tree, p) for p in places(tree)) if isinstance(word, str)]
        return dice.choice([dice.choice(words or _TEXTS), dice.choice(_TEXTS), value[::-1], value * 3])
    if isinstance(value, list):
        long = value * dice.choice([2, 3, 50]) if len(value) < 50 else value[::3]
        return dice.choice([value[::-1], value[1:], value[:1], [], long, dice.sample(value, len(value))])
    if isinstance(value, dict):
        return {**value, dice.choice(["", "extra", "<b>", *value]): dice.choice(_FIGURES)}
    return dice.choice([*_FIGURES, *_TEXTS])


def written(tree: Any, dice: Random) -> bytes:
    """A tree as a file, one entry of it perhaps there twice."""
    text = json.dumps(tree, ensure_ascii=dice.random() < 0.5, indent=dice.choice([None, 2]))
    if dice.random() < 0.02:
        text = text.replace('": ', '": 0, "unit": ', 1)
    return text.encode("utf-8", "surrogatepass")
