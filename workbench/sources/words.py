"""The few phrases by which a number says where it comes from."""

from __future__ import annotations

import re
from typing import Literal, get_args

Status = Literal["read", "abstract", "memory", "derived", "practice", "own choice"]
STATUSES: tuple[Status, ...] = get_args(Status)

MEANING: dict[Status, str] = {
    "read": "the source’s own text or data was read",
    "abstract": "only the abstract of the source was read",
    "memory": "recalled from a published source, not read again",
    "derived": "arithmetic on what is named",
    "practice": "common practice in the trade, no source",
    "own choice": "chosen for this program: how exact, how large, how much, where on the page",
}

_SAYS: dict[Status, re.Pattern[str]] = {
    "read": re.compile(r"[,:;] read(?=[),.;:]|$)|\(read[),;:]"),
    "abstract": re.compile(r"\babstracts?\b"),
    "memory": re.compile(r"\bfrom memory\b"),
    "derived": re.compile(r"\bderived\b"),
    "practice": re.compile(r"\bcommon practice\b"),
    "own choice": re.compile(r"\bown choice\b"),
}
_FOR_ALL = re.compile(
    r"\bare\s+((?:own choice|common practice|from memory|derived)[^.;]*?)(?:,? unless said)?(?:[.;]|$)"
)


def statuses_in(text: str) -> tuple[Status, ...]:
    """Every status that the words claim, the best founded first; none where they claim none."""
    flat = " ".join(text.lower().split())
    return tuple(status for status in STATUSES if _SAYS[status].search(flat))


def said_for_all(text: str) -> str:
    """What a docstring says for all figures below it that say nothing themselves; empty where it does not.

    The form is *Figures are own choice, layout of the page, unless said.*
    """
    found = _FOR_ALL.search(" ".join(text.split()))
    return found.group(1) if found else ""


def said_elsewhere(text: str) -> bool:
    """Whether a docstring says that a table gives the source of each figure."""
    return "has its source in" in " ".join(text.split())
