"""The client book: the projects in a folder of hers, read through an index that can be thrown away."""

from typing import TYPE_CHECKING

from workbench.book.entry import Entry, Found, Mark, Matter
from workbench.book.index import index_file, read_index, throw_away, write_index
from workbench.book.order import Order, found_by, in_order
from workbench.book.shelf import Shelf, keep, look_at, read_waiting
from workbench.book.small_picture import Ring, rings_of
from workbench.doors import when_asked

if TYPE_CHECKING:
    from workbench.book.belongings import Belongings, Kept, belongings_of, of_one_client
    from workbench.book.handing_out import hand_out
    from workbench.book.removing import Removed, remove
else:
    __getattr__ = when_asked(
        __name__,
        {
            "belongings": "Belongings Kept belongings_of of_one_client",
            "handing_out": "hand_out",
            "removing": "Removed remove",
        },
    )

__all__ = [
    "Belongings",
    "Entry",
    "Found",
    "Kept",
    "Mark",
    "Matter",
    "Order",
    "Removed",
    "Ring",
    "Shelf",
    "belongings_of",
    "found_by",
    "hand_out",
    "in_order",
    "index_file",
    "keep",
    "look_at",
    "of_one_client",
    "read_index",
    "read_waiting",
    "remove",
    "rings_of",
    "throw_away",
    "write_index",
]
