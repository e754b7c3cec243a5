"""What lies on the cloths and what it all costs, as plain data. Lengths in mm, amounts as text."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from typing import Any

from workbench.cloth import ClientLine, Copy, CostLine, Placed, Quote, laid, to_coin
from workbench.document.lays import Lay
from workbench.document.picture import Picture
from workbench.document.project import Project
from workbench.document.records import plain
from workbench.draft import Finding

Data = dict[str, Any]
Say = Callable[[Finding], Data]


def cloth_data(lay: Lay, project: Project, say: Say) -> Data:
    """One cloth: its plan, what it takes, what to buy and what that costs; ready for JSON.

    ``plan`` says whether a plan is kept and still holds: ``current``, ``stale`` or ``none``.
    The figures are those of the plan on show, which is the kept one only while it is current.
    """
    plan, buy = lay.plan, lay.buy
    return {
        "name": lay.cloth.name,
        "layers": list(lay.cloth.layers),
        "width_mm": lay.cloth.width_mm,
        "plan": lay.state,
        "how": plan.how if plan else None,
        "pieces": len(lay.copies),
        "left_over": len(plan.left_over) if plan else len(lay.copies),
        "length_mm": plan.length_mm if plan else None,
        "utilisation": plan.utilisation if plan else None,
        "buy_length_mm": buy.length_mm if buy else None,
        "buy": buy.words if buy else None,
        "at_hand": buy.note if buy else "",
        "cost": _text(to_coin(buy.cost, project.quoting.currency)) if buy and buy.cost is not None else None,
        "findings": [say(finding) for finding in lay.findings],
    }


def lay_data(lay: Lay, project: Project, say: Say) -> Data:
    """As :func:`cloth_data`, with where each piece lies.

    A piece's outline is turned over left to right where it is mirrored, turned anticlockwise
    by ``rotation`` degrees about its own origin, and moved by ``x`` across the cloth from a
    selvedge and ``y`` along it; ``outline_mm`` is where it comes to lie.
    """
    copies = {copy.key: copy for copy in lay.copies}
    placed = lay.plan.placed if lay.plan else ()
    rows = [_placed(own, copies[own.piece, own.copy]) for own in placed if (own.piece, own.copy) in copies]
    return {**cloth_data(lay, project, say), "placements": rows}


def _placed(own: Placed, copy: Copy) -> Data:
    return {
        "piece": own.piece,
        "copy": own.copy,
        "x": own.x,
        "y": own.y,
        "rotation": own.degrees,
        "mirrored": own.mirrored,
        "pinned": own.pinned,
        "on_fold": copy.on_fold,
        "outline_mm": laid(copy, own).tolist(),
    }


def money_data(picture: Picture, say: Say) -> Data:
    """Cloths, quote, and layers that no cloth is bought for; nothing where there is no draft."""
    quote = picture.quote
    return {
        "cloths": [cloth_data(lay, picture.project, say) for lay in picture.lays],
        "cloth_findings": [say(finding) for finding in picture.cloth_findings],
        "quote": _quote(quote, say) if quote is not None else None,
    }


def _quote(quote: Quote, say: Say) -> Data:
    return {
        "currency": plain(quote.currency),
        "inside": [_cost(line) for line in quote.inside],
        "client": [_client(line) for line in quote.client],
        "sums": {name: _text(amount) for name, amount in vars(quote.sums).items()},
        "complete": quote.complete,
        "unpriced": list(quote.unpriced),
        "findings": [say(finding) for finding in quote.findings],
    }


def _cost(line: CostLine) -> Data:
    return {
        "kind": line.kind,
        "key": line.key,
        "name": line.name,
        "words": line.words,
        "amount": _text(line.amount),
    }


def _client(line: ClientLine) -> Data:
    return {"kind": line.kind, "name": line.name, "words": line.words, "amount": _text(line.amount)}


def _text(amount: Decimal | None) -> str | None:
    """Whole coins with all their decimals, so that nothing on the way rounds them."""
    return None if amount is None else f"{amount:f}"
