"""Pieces on cloth: lay plan, lengths to buy, cost."""

from workbench.cloth.bottom_left import bottom_left
from workbench.cloth.buy import Buy, to_buy
from workbench.cloth.check import check_plan, plan_at
from workbench.cloth.cloth_faults import faults_of
from workbench.cloth.compare import Case, Row, compare
from workbench.cloth.copies import MOST_COPIES, copies_of
from workbench.cloth.digest import digest, is_stale
from workbench.cloth.keep import kept, plan_of
from workbench.cloth.plan import Copy, LayError, Plan, laid
from workbench.cloth.records import (
    BuyStep,
    Cloth,
    Currency,
    HoursRow,
    KeptPlan,
    Laid,
    Placed,
    PriceRow,
    Quoting,
    Run,
)
from workbench.cloth.room import Room, room_of
from workbench.cloth.solver import FIRST_SECONDS, Solve
from workbench.cloth.ways import ways_of

__all__ = [
    "FIRST_SECONDS",
    "MOST_COPIES",
    "Buy",
    "BuyStep",
    "Case",
    "Cloth",
    "Copy",
    "Currency",
    "HoursRow",
    "KeptPlan",
    "Laid",
    "LayError",
    "Placed",
    "Plan",
    "PriceRow",
    "Quoting",
    "Room",
    "Row",
    "Run",
    "Solve",
    "bottom_left",
    "check_plan",
    "compare",
    "copies_of",
    "digest",
    "faults_of",
    "is_stale",
    "kept",
    "laid",
    "plan_at",
    "plan_of",
    "room_of",
    "to_buy",
    "ways_of",
]
