"""What measurements may say, those of today as those of an earlier day.

Figures are own choice, what is taken for a slip of the key, unless said.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date

from workbench.body import BY_KEY, Length, LengthError, read_length
from workbench.document.problem import Place, Problems, text_problems
from workbench.document.project import TEXT_LENGTHS
from workbench.document.taken import Taken

LEAST_MEASURE = 12.7
"""mm: half an inch; no measurement of a body is shorter, and one of nothing is a slip of the key."""
MOST_EARLIER = 60
"""Earlier days kept: one every month for five years."""
_SAME_MM = 1e-6


def measurement_problems(measurements: Mapping[str, Length], place: Place) -> Problems:
    """Measurements nobody knows, and those whose words say another length than their figure."""
    for key, length in measurements.items():
        yield from _one_problems(key, length, (*place, key))


def date_problems(text: str, place: Place) -> Problems:
    """A date that is none; none at all is as well."""
    if text and not _is_date(text):
        yield place, "must be written as year-month-day, for example 2031-05-20"


def taken_problems(earlier: Sequence[Taken]) -> Problems:
    """What no earlier day can hold, and more of them than are kept."""
    if len(earlier) > MOST_EARLIER:
        yield ("earlier",), f"has {len(earlier)} days; at most {MOST_EARLIER} are kept"
    for number, taken in enumerate(earlier):
        place: Place = ("earlier", number)
        for name in ("date", "measured_by", "worn"):
            yield from text_problems(getattr(taken, name), TEXT_LENGTHS[name], (*place, name))
        yield from date_problems(taken.date, (*place, "date"))
        yield from measurement_problems(taken.measurements, (*place, "measurements"))


def _is_date(text: str) -> bool:
    try:
        return len(text) == 10 and date.fromisoformat(text).isoformat() == text
    except ValueError:
        return False


def _one_problems(key: str, length: Length, place: Place) -> Problems:
    if key not in BY_KEY:
        yield place, "is no measurement known here"
        return
    try:
        said = read_length(length.typed, length.unit, low=LEAST_MEASURE)
    except LengthError as error:
        yield (*place, "typed"), f"cannot be read as a length ({str(error).rstrip('.')})"
        return
    if (said.typed, said.unit) != (length.typed, length.unit):
        yield (*place, "typed"), f"must be a bare figure in {length.unit}"
    if not abs(said.mm - length.mm) <= _SAME_MM:
        yield (*place, "mm"), f"is {length.mm:g}, but “{length.typed}” {length.unit} is {said.mm:g} mm"
