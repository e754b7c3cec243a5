"""Pieces on cloth: lay plan, lengths to buy, cost."""

from typing import TYPE_CHECKING

from workbench.cloth.cloth_faults import faults_of
from workbench.cloth.money import (
    MoneyError,
    coin_of,
    finer_than_kept,
    read_money,
    say_money,
    say_percent,
    say_price,
    to_coin,
)
from workbench.cloth.money_checks import (
    MOST_DECIMALS,
    MOST_HOURS,
    MOST_IN_PACK,
    MOST_ROWS,
    NAME_MOST,
    PERCENT_MOST,
    SYMBOL_MOST,
    TEXT_MOST,
    Amiss,
    price_problems,
    quoting_problems,
    refuse_bad,
)
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
from workbench.doors import when_asked

if TYPE_CHECKING:
    from workbench.cloth.buy import Buy, to_buy
    from workbench.cloth.cases import Case, Row, compare
    from workbench.cloth.check import check_plan, plan_at
    from workbench.cloth.client_lines import ClientLine, included_usual
    from workbench.cloth.copies import MOST_COPIES, copies_of
    from workbench.cloth.cost_lines import (
        NO_PRICE_WORDS,
        NO_RATE_WORDS,
        NOT_BOUGHT_WORDS,
        ClothBought,
        CostLine,
    )
    from workbench.cloth.fingerprint import digest, is_stale, lie_alike
    from workbench.cloth.hours import hours_of
    from workbench.cloth.keep import kept, plan_of
    from workbench.cloth.plain_way import bottom_left
    from workbench.cloth.plan import Copy, CopyKey, LayError, Plan, laid, turned
    from workbench.cloth.price_file import (
        price_list_bytes,
        price_list_from,
        read_price_list,
        remembered,
        with_remembered,
        write_price_list,
    )
    from workbench.cloth.prices import (
        NO_PRICE,
        bought,
        keys_of,
        name_of,
        price_list,
        row_of,
        rows_for,
        with_prices,
        with_row,
    )
    from workbench.cloth.quote import Quote, quote_of
    from workbench.cloth.room import Room, room_of
    from workbench.cloth.solver import FIRST_SECONDS, Solve
    from workbench.cloth.sums import Sums
    from workbench.cloth.ways import ways_of
else:
    __getattr__ = when_asked(
        __name__,
        {
            "buy": "Buy to_buy",
            "cases": "Case Row compare",
            "check": "check_plan plan_at",
            "client_lines": "ClientLine included_usual",
            "copies": "MOST_COPIES copies_of",
            "cost_lines": "NO_PRICE_WORDS NO_RATE_WORDS NOT_BOUGHT_WORDS ClothBought CostLine",
            "fingerprint": "digest is_stale lie_alike",
            "hours": "hours_of",
            "keep": "kept plan_of",
            "plain_way": "bottom_left",
            "plan": "Copy CopyKey LayError Plan laid turned",
            "price_file": "price_list_bytes price_list_from read_price_list "
            "remembered with_remembered write_price_list",
            "prices": "NO_PRICE bought keys_of name_of price_list row_of rows_for with_prices with_row",
            "quote": "Quote quote_of",
            "room": "Room room_of",
            "solver": "FIRST_SECONDS Solve",
            "sums": "Sums",
            "ways": "ways_of",
        },
    )

__all__ = [
    "FIRST_SECONDS",
    "MOST_COPIES",
    "MOST_DECIMALS",
    "MOST_HOURS",
    "MOST_IN_PACK",
    "MOST_ROWS",
    "NAME_MOST",
    "NOT_BOUGHT_WORDS",
    "NO_PRICE",
    "NO_PRICE_WORDS",
    "NO_RATE_WORDS",
    "PERCENT_MOST",
    "SYMBOL_MOST",
    "TEXT_MOST",
    "Amiss",
    "Buy",
    "BuyStep",
    "Case",
    "ClientLine",
    "Cloth",
    "ClothBought",
    "Copy",
    "CopyKey",
    "CostLine",
    "Currency",
    "HoursRow",
    "KeptPlan",
    "Laid",
    "LayError",
    "MoneyError",
    "Placed",
    "Plan",
    "PriceRow",
    "Quote",
    "Quoting",
    "Room",
    "Row",
    "Run",
    "Solve",
    "Sums",
    "bottom_left",
    "bought",
    "check_plan",
    "coin_of",
    "compare",
    "copies_of",
    "digest",
    "faults_of",
    "finer_than_kept",
    "hours_of",
    "included_usual",
    "is_stale",
    "kept",
    "keys_of",
    "laid",
    "lie_alike",
    "name_of",
    "plan_at",
    "plan_of",
    "price_list",
    "price_list_bytes",
    "price_list_from",
    "price_problems",
    "quote_of",
    "quoting_problems",
    "read_money",
    "read_price_list",
    "refuse_bad",
    "remembered",
    "room_of",
    "row_of",
    "rows_for",
    "say_money",
    "say_percent",
    "say_price",
    "to_buy",
    "to_coin",
    "turned",
    "ways_of",
    "with_prices",
    "with_remembered",
    "with_row",
    "write_price_list",
]
