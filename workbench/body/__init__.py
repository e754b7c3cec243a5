"""What is known of the wearer: measurements, how to take them, estimates, limits."""

from workbench.body.body import Body, complete, girths, walks
from workbench.body.cautions import CAUTION_SHORT, CAUTIONS, WEARER_CAUTIONS
from workbench.body.checks import Check, checks_of
from workbench.body.levels import LEAST_GAP_MM, LEVEL_GIRTH, LEVEL_LABEL, LEVELS, LevelName
from workbench.body.limits import LIMIT_TABLE, LimitRow, Limits, UnitKind, limit_problem
from workbench.body.reading import LONGEST_MM, read_length
from workbench.body.table import BY_KEY, MEASUREMENTS, Kind, Measurement, View
from workbench.body.trouble import BodyError
from workbench.body.units import (
    Fraction,
    Length,
    LengthError,
    LengthUnit,
    Unit,
    round_down,
    say_at_most,
    say_closely,
    say_exact,
    say_length,
    say_with_unit,
    shown,
    snap,
    step_mm,
)

__all__ = [
    "BY_KEY",
    "CAUTIONS",
    "CAUTION_SHORT",
    "LEAST_GAP_MM",
    "LEVELS",
    "LEVEL_GIRTH",
    "LEVEL_LABEL",
    "LIMIT_TABLE",
    "LONGEST_MM",
    "MEASUREMENTS",
    "WEARER_CAUTIONS",
    "Body",
    "BodyError",
    "Check",
    "Fraction",
    "Kind",
    "Length",
    "LengthError",
    "LengthUnit",
    "LevelName",
    "LimitRow",
    "Limits",
    "Measurement",
    "Unit",
    "UnitKind",
    "View",
    "checks_of",
    "complete",
    "girths",
    "limit_problem",
    "read_length",
    "round_down",
    "say_at_most",
    "say_closely",
    "say_exact",
    "say_length",
    "say_with_unit",
    "shown",
    "snap",
    "step_mm",
    "walks",
]
