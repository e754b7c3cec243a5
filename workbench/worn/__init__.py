"""The bodice as worn: panels round a torso of the client's girths, seen from any side; girths by level.

Pure numbers, in millimetres. A torso is a pile of level sections, each a superellipse whose
perimeter is the girth that was measured; what is assumed of it is said in ``torso`` and ``stand``.
One call puts the bodice on it: :func:`worn_of`; another one looks at it: :func:`seen_from`.
"""

from typing import TYPE_CHECKING

from workbench.doors import when_asked
from workbench.worn.torso import LEAST_DEPTH, LEAST_SHORT, MOST_DEPTH, MOST_SHORT, Torso

if TYPE_CHECKING:
    from workbench.worn.profile import Profile, profile_of
    from workbench.worn.seen import (
        BACK,
        FRONT,
        SIDE,
        THREE_QUARTER,
        Eye,
        LineRole,
        Seen,
        SeenLine,
        SeenPanel,
        Sight,
        seen_from,
    )
    from workbench.worn.worn import NOTHING_INSIDE, Inside, Worn, inside_of, worn_of
else:
    __getattr__ = when_asked(
        __name__,
        {
            "profile": "Profile profile_of",
            "seen": "BACK FRONT SIDE THREE_QUARTER Eye LineRole Seen SeenLine SeenPanel Sight seen_from",
            "worn": "NOTHING_INSIDE Inside Worn inside_of worn_of",
        },
    )

__all__ = [
    "BACK",
    "FRONT",
    "LEAST_DEPTH",
    "LEAST_SHORT",
    "MOST_DEPTH",
    "MOST_SHORT",
    "NOTHING_INSIDE",
    "SIDE",
    "THREE_QUARTER",
    "Eye",
    "Inside",
    "LineRole",
    "Profile",
    "Seen",
    "SeenLine",
    "SeenPanel",
    "Sight",
    "Torso",
    "Worn",
    "inside_of",
    "profile_of",
    "seen_from",
    "worn_of",
]
