"""The client's quote and the inside sheet: what each says, what no client reads, and that it all fits."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal
from itertools import pairwise

import numpy as np
import pypdfium2  # type: ignore[import-untyped]
import pytest

from tests.sheets.conftest import CutJob, Job
from tests.sheets.readback import collisions, inked_letters, page_sizes, text_of
from tests.sheets.test_first_page import LONG, plain, squeezed
from workbench.body import WEARER_CAUTIONS
from workbench.cloth import (
    ClothBought,
    Currency,
    HoursRow,
    Quote,
    Quoting,
    hours_of,
    price_list,
    quote_of,
    say_money,
)
from workbench.sewing import sewing_order
from workbench.sheets import QUOTE_PAPERS, PrintError, garment_views, print_inside_sheet, print_quote
from workbench.sheets.inside_sheet import NOT_FOR_CLIENT
from workbench.sheets.quote_sheet import PROVISIONAL
from workbench.worn import Torso

D = Decimal
CLOTHS = (
    ClothBought("Ivory satin", 1257.3, D("58.37"), "1⅜ yd"),
    ClothBought("Coutil", 914.4, D("22.19"), "1 yd"),
)
PRICED = Quoting(
    prices=tuple(
        replace(row, price=D(number + 3) / 7 // D("0.01") / 100) for number, row in enumerate(price_list())
    ),
    rate=D("31.40"),
    overhead_percent=D("11.5"),
    margin_percent=D(15),
    tax_percent=D(20),
    deposit_percent=D(40),
    round_to=D(5),
    fitting_dates="2031-03-14 and 2031-03-28",
    ready_by="2031-04-12",
    valid_until="2031-03-31",
)
UNPRICED = replace(PRICED, prices=(), rate=D(0), currency=Currency("€", 2, before=False))


def usual_hours(cut: CutJob) -> tuple[HoursRow, ...]:
    return hours_of(sewing_order(cut.cutting, cut.making))


def quoted(cut: CutJob, quoting: Quoting) -> tuple[Quote, Quoting]:
    full = replace(quoting, hours=usual_hours(cut))
    return quote_of(cut.cutting, CLOTHS, full), full


def client_page(cut: CutJob, quoting: Quoting, paper: str = "A4") -> bytes:
    quote, _ = quoted(cut, quoting)
    return print_quote(quote, cut.job.heading, cut.job.outcome, paper, cut.cutting, Torso())


def inside(cut: CutJob, quoting: Quoting, paper: str = "A4") -> bytes:
    quote, full = quoted(cut, quoting)
    return print_inside_sheet(quote, cut.job.heading, full, paper)


def words(pdf: bytes) -> str:
    return plain(" ".join(text_of(pdf)))


def test_the_client_reads_price_tax_deposit_balance_dates_and_what_is_included(folded: CutJob) -> None:
    quote, _ = quoted(folded, PRICED)
    text = words(client_page(folded, PRICED))
    for amount in (quote.sums.price, quote.sums.before_tax, quote.sums.tax):
        assert say_money(amount, quote.currency) in text
    assert f"Deposit 40 %, before the work begins {say_money(quote.sums.deposit, quote.currency)}" in text
    assert f"Balance when it is handed over {say_money(quote.sums.balance, quote.currency)}" in text
    for said in ("2031-03-14 and 2031-03-28", "Ready by 2031-04-12", "valid until 2031-03-31", "20 %"):
        assert said in text
    for line in quote.client:
        if line.kind == "included":
            assert squeezed(line.name) in squeezed(text)
    assert "Soloist, invented" in text
    assert "Over-bust" in text
    assert "Figures invented for demonstration." in text


def test_the_client_reads_no_cost(folded: CutJob) -> None:
    quote, _ = quoted(folded, PRICED)
    text = words(client_page(folded, PRICED))
    own = {say_money(amount, quote.currency) for amount in _client_amounts(quote)}
    shown = set(re.findall(r"\$[\d,.]*\d", text))
    assert shown == own
    assert not re.search(r"overhead|margin|rounding|an hour|inside sheet", text, re.IGNORECASE)
    assert not any(
        line.name in text for line in quote.inside if line.kind == "hours" and line.name != "Fittings"
    )


def _client_amounts(quote: Quote) -> list[Decimal]:
    sums = quote.sums
    return [sums.price, sums.before_tax, sums.tax, sums.deposit, sums.balance]


@pytest.mark.parametrize("paper", QUOTE_PAPERS)
@pytest.mark.parametrize("quoting", [PRICED, UNPRICED])
def test_the_quote_is_one_page_with_all_cautions(either_cut: CutJob, quoting: Quoting, paper: str) -> None:
    pdf = client_page(either_cut, quoting, paper)
    assert len(page_sizes(pdf)) == 1
    # ISO 216 and ANSI Y14.1
    assert page_sizes(pdf)[0] == pytest.approx(
        {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}[paper], abs=0.01
    )
    text = words(pdf)
    assert all(squeezed(caution) in squeezed(text) for caution in WEARER_CAUTIONS)
    assert not re.search(r"\bsafe", text, re.IGNORECASE)


def test_a_price_with_something_left_out_is_called_provisional(folded: CutJob) -> None:
    assert squeezed(PROVISIONAL) in squeezed(words(client_page(folded, UNPRICED)))
    assert "Provisional" not in words(client_page(folded, PRICED))


def test_the_inside_sheet_has_every_cost_with_how_it_was_worked_out(either_cut: CutJob) -> None:
    quote, _ = quoted(either_cut, PRICED)
    text = words(inside(either_cut, PRICED))
    for line in quote.inside:
        assert line.amount is not None
        assert squeezed(f"{line.name}{line.words}{say_money(line.amount, quote.currency)}") in squeezed(text)
    hours = sum((row.hours for row in usual_hours(either_cut)), D(0))
    assert f"{hours.normalize():f} h" in text


def test_the_printed_lines_add_up_to_the_printed_price(folded: CutJob) -> None:
    document = pypdfium2.PdfDocument(inside(folded, PRICED))
    lines = [line for page in document for line in page.get_textpage().get_text_range().splitlines()]
    document.close()
    read = [re.fullmatch(r"(.+?) \$([\d,]+\.\d\d)\s*", line) for line in lines]
    amounts = [(found[1], D(found[2].replace(",", ""))) for found in read if found]
    together, section = [], D(0)
    for name, amount in amounts:
        if name.endswith("together") and not name.startswith("Costs"):
            assert amount == section, name
            together.append(amount)
            section = D(0)
        else:
            section += amount
    rest = [amount for _, amount in amounts[-9:]]
    costs, overhead, margin, rounding, before, tax, price, deposit, balance = rest
    assert len(together) == 3
    assert sum(together) == costs
    assert costs + overhead + margin + rounding == before
    assert before + tax == price == deposit + balance


def test_every_page_of_the_inside_sheet_says_that_it_is_not_for_the_client(folded: CutJob) -> None:
    many = tuple(
        replace(row, step=f"{row.step}, {number}") for number in range(6) for row in usual_hours(folded)
    )
    full = replace(PRICED, hours=many)
    pdf = print_inside_sheet(quote_of(folded.cutting, CLOTHS, full), folded.job.heading, full)
    texts = [plain(text) for text in text_of(pdf)]
    assert len(texts) > 1
    for number, text in enumerate(texts, 1):
        assert text.count(NOT_FOR_CLIENT) == 2
        assert f"page {number} of {len(texts)}" in text
    assert all(row.step in " ".join(texts) for row in many)


def test_missing_prices_are_said_line_by_line_and_above(folded: CutJob) -> None:
    quote, _ = quoted(folded, UNPRICED)
    text = words(inside(folded, UNPRICED))
    for line in quote.inside:
        if line.amount is None:
            assert squeezed(f"{line.name}{line.words}?") in squeezed(text)
    assert text.count("no price yet") >= len(quote.unpriced) - len(usual_hours(folded))
    assert "price, too low: prices are missing" in text
    assert "as far as there are prices" in text
    for finding in quote.findings:
        assert squeezed(finding.text("in")) in squeezed(text)


def test_the_picture_shows_panels_edge_to_edge_and_as_wide_as_the_cloth(either: Job) -> None:
    """What lies flat from side seam to side seam, front and back, is the cloth round the body."""
    assert either.outcome.draft is not None
    front, back = garment_views(either.outcome)
    at_waist = [_width_at(view.fills, 0.0) for view in (front, back)]
    gap = either.outcome.design.opening_mm
    assert sum(at_waist) - gap == pytest.approx(either.outcome.level("waist").fabric, abs=0.6)
    for view, inner in ((front, 0.0), (back, gap / 2)):
        halves = sorted(view.fills[::2], key=lambda ring: float(ring[:, 0].mean()))
        for height in (-40.0, 0.0, 40.0, 80.0):
            spans = [_span_at(ring, height) for ring in halves]
            assert spans[0][0] == pytest.approx(inner, abs=0.3)
            for (_, right), (left, _) in pairwise(spans):
                assert left == pytest.approx(right, abs=0.3)


def _width_at(rings: tuple[np.ndarray, ...], height: float) -> float:
    spans = [_span_at(ring, height) for ring in rings]
    return max(right for _, right in spans) - min(left for left, _ in spans)


def _span_at(ring: np.ndarray, height: float) -> tuple[float, float]:
    """Where a level line enters and leaves a ring."""
    ends = np.roll(ring, -1, axis=0)
    crosses = (ring[:, 1] - height) * (ends[:, 1] - height) < 0
    part = (height - ring[crosses, 1]) / (ends[crosses, 1] - ring[crosses, 1])
    x = ring[crosses, 0] + part * (ends[crosses, 0] - ring[crosses, 0])
    return float(x.min()), float(x.max())


def test_both_halves_are_drawn_alike(folded: CutJob) -> None:
    for view in garment_views(folded.job.outcome, folded.cutting):
        left, _, right, _ = view.bounds()
        assert left == pytest.approx(-right)
    assert any(stroke.role == "tape" for stroke in view.strokes)
    bones = [bone for bone in folded.cutting.bones if bone.count > 0]
    drawn = [stroke for one in garment_views(folded.job.outcome, folded.cutting) for stroke in one.strokes]
    assert sum(stroke.role == "bone" for stroke in drawn) == 2 * len(bones)


@pytest.mark.parametrize("paper", QUOTE_PAPERS)
def test_the_same_quote_gives_the_same_bytes(folded: CutJob, paper: str) -> None:
    assert client_page(folded, PRICED, paper) == client_page(folded, PRICED, paper)
    assert inside(folded, PRICED, paper) == inside(folded, PRICED, paper)


def test_what_cannot_be_printed_is_refused_in_a_sentence(folded: CutJob) -> None:
    quote, full = quoted(folded, PRICED)
    with pytest.raises(PrintError, match="A4 or Letter, not on “A3”"):
        client_page(folded, PRICED, "A3")
    with pytest.raises(PrintError, match="A4 or Letter, not on “roll”"):
        print_inside_sheet(quote, folded.job.heading, full, "roll")
    stopped = replace(folded.job.outcome, draft=None)
    with pytest.raises(PrintError, match="no design to draw"):
        print_quote(quote, folded.job.heading, stopped)
    with pytest.raises(PrintError, match="does not fit on one page"):
        client_page(folded, replace(PRICED, included="Beads sewn on by hand, one by one\n" * 60))


LARGE = replace(
    PRICED,
    currency=Currency("Thaler", 4),
    rate=D("9999999.25"),
    included="\n".join(
        f"A thing that takes more than one line to say, number {number}" for number in range(16)
    ),
    fitting_dates="every other day " * 12,
)


@pytest.mark.parametrize("paper", QUOTE_PAPERS)
@pytest.mark.parametrize("quoting", [PRICED, UNPRICED, LARGE])
@pytest.mark.parametrize("sheet", [client_page, inside])
def test_no_line_of_text_runs_into_another_or_off_the_page(
    folded: CutJob, sheet: Callable[[CutJob, Quoting, str], bytes], quoting: Quoting, paper: str
) -> None:
    named = replace(folded.job.heading, client=LONG, style=LONG) if quoting is LARGE else folded.job.heading
    job = Job(folded.job.outcome, folded.job.comfort, named)
    document = pypdfium2.PdfDocument(sheet(CutJob(job, folded.cutting, folded.making), quoting, paper))
    for page in document:
        width, height = page.get_size()
        boxes = inked_letters(page)
        assert min(box[0] for box in boxes) > 28
        assert max(box[2] for box in boxes) < width - 28
        assert min(box[1] for box in boxes) > 20
        assert max(box[3] for box in boxes) < height - 20
        assert not collisions(boxes)
    document.close()
