"""A table of clients: what is read, and what of it is refused with its line and column."""

from __future__ import annotations

import os
import tracemalloc
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from workbench.body import BY_KEY, read_length
from workbench.document import BadRow, ClientRow, FileTrouble, opened_clients
from workbench.document.fresh_files import free_stem, plain_stem, write_fresh

HEAD = "name,unit,waist_girth,bust_girth\n"


def read(path: Path, content: str | bytes) -> list[ClientRow | BadRow]:
    path.write_bytes(content if isinstance(content, bytes) else content.encode("utf-8"))
    with opened_clients(path) as rows:
        return list(rows)


@pytest.fixture
def table(tmp_path: Path) -> Path:
    return tmp_path / "clients.csv"


def good(row: ClientRow | BadRow) -> ClientRow:
    assert isinstance(row, ClientRow), row
    return row


def faults(row: ClientRow | BadRow) -> list[tuple[str, str]]:
    assert isinstance(row, BadRow), row
    return [(fault.column, fault.sentence) for fault in row.faults]


def test_a_row_is_read_as_it_was_typed(table: Path) -> None:
    rows = read(table, HEAD + 'Ada (invented),in,27 1/2,"36 3/8"""\nEva,CM,68.5,\n')
    ada, eva = (good(row) for row in rows)
    assert (ada.line, ada.name, ada.unit) == (2, "Ada (invented)", "in")
    assert ada.measurements == {
        "waist_girth": read_length("27 1/2", "in"),
        "bust_girth": read_length('36 3/8"', "in"),
    }
    assert (eva.line, eva.unit, list(eva.measurements)) == (3, "cm", ["waist_girth"])
    assert eva.measurements["waist_girth"].mm == 685


@pytest.mark.parametrize("sign", [",", ";", "\t"])
@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
@pytest.mark.parametrize("mark", [b"", b"\xef\xbb\xbf"])
def test_signs_line_ends_and_a_byte_order_mark(table: Path, sign: str, end: str, mark: bytes) -> None:
    lines = [["Name ", "unit", "bust_girth", "waist_girth"], ["Zoë", "cm", "92.1", "70"], ["", "", "", ""]]
    rows = read(table, mark + end.join(sign.join(line) for line in lines).encode())
    (row,) = rows
    assert (good(row).name, good(row).measurements["bust_girth"].mm) == ("Zoë", 921)


def test_decimal_commas_between_semicolons_or_in_quotation_marks(table: Path) -> None:
    for content in ("name;unit;waist_girth;bust_girth\nA;cm;68,5;92,1\n", HEAD + 'A,cm,"68,5","92,1"\n'):
        (row,) = read(table, content)
        assert {key: length.mm for key, length in good(row).measurements.items()} == {
            "waist_girth": 685,
            "bust_girth": 921,
        }


def test_decimal_commas_that_part_a_figure(table: Path) -> None:
    """Never read as other figures: the row has more cells than there are columns."""
    bad, after = read(table, HEAD + "A,cm,68,5,92,1\nB,cm,68,92\n")
    ((column, sentence),) = faults(bad)
    assert (bad.line, column) == (2, "")
    assert sentence.startswith("It has 6 cells where the first line has 4. A decimal comma needs")
    assert good(after).name == "B"


@pytest.mark.parametrize("row", ["A,cm,68", "A", "A,cm,68,92,"])
def test_too_few_or_too_many_cells(table: Path, row: str) -> None:
    assert "where the first line has 4" in faults(read(table, f"{HEAD}{row}\n")[0])[0][1]


@pytest.mark.parametrize(
    ("row", "column", "said"),
    [
        (",cm,68,92", "name", "It is empty."),
        ("A,,68,92", "unit", "It must be in or cm, not “”."),
        ("A,mm,68,92", "unit", "It must be in or cm, not “mm”."),
        ("A,in,abc,36", "waist_girth", "“abc” is not a length"),
        ("A,in,28,-36", "bust_girth", "cannot be negative"),
        ("A,cm,0,92", "waist_girth", "is not between"),
        ("A,cm,999999,92", "waist_girth", "is not between"),
        ("A,in,1/0,36", "waist_girth", "cannot have 0 below its line"),
        (f"{'A' * 81},in,28,36", "name", "It is longer than 80 characters."),
        ("A\x1b[2J,in,28,36", "name", "cannot be printed"),
        ("A\x00,in,28,36", "name", "cannot be printed"),
    ],
)
def test_a_cell_that_cannot_be_used(table: Path, row: str, column: str, said: str) -> None:
    bad, after = read(table, f"{HEAD}{row}\nNext,cm,70,92\n")
    ((where, sentence),) = faults(bad)
    assert (bad.line, where) == (2, column)
    assert said in sentence
    assert (good(after).line, good(after).name) == (3, "Next")


def test_every_bad_cell_of_a_row_is_told(table: Path) -> None:
    (row,) = read(table, HEAD + ",yd,x,y\n")
    assert [column for column, _ in faults(row)] == ["name", "unit", "waist_girth", "bust_girth"]


def test_letters_of_another_encoding_spoil_one_row(table: Path) -> None:
    bad, after = read(table, HEAD.encode() + "Zoë,cm,70,92\n".encode("cp1252") + b"B,cm,70,92\n")
    assert faults(bad) == [("name", "It holds a letter that is no UTF-8; save the table as CSV in UTF-8.")]
    assert good(after).name == "B"


def test_an_open_quotation_mark_spoils_one_row(table: Path) -> None:
    rows = read(table, HEAD + '"A,cm,70,92\nB,cm,70,92\n"C"x,cm,70,92\nD,cm,70,92\n')
    assert [isinstance(row, BadRow) for row in rows] == [True, False, True, False]
    assert faults(rows[0])[0][1].startswith("A quotation mark is out of place")


def test_a_very_long_line_spoils_one_row(table: Path) -> None:
    rows = read(table, HEAD + "A" * 100_000 + ",cm,70,92\nB,cm,70,92\n" + "C" * 50_000)
    assert [(row.line, isinstance(row, BadRow)) for row in rows] == [(2, True), (3, False), (4, True)]


def test_empty_lines_count_and_are_passed_over(table: Path) -> None:
    (row,) = read(table, HEAD + "\n,,,\n  \nA,cm,70,92\n")
    assert row.line == 5


def test_a_column_without_a_name_must_be_empty(table: Path) -> None:
    first, other = read(table, "name,unit,waist_girth,bust_girth,\nA,cm,70,92,\nB,cm,70,92,tall\n")
    assert good(first).name == "A"
    assert faults(other) == [("", "Cell 5 stands in a column without a name.")]


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"", "its first line is empty"),
        (b"\n\n", "its first line is empty"),
        (b"unit,waist_girth,bust_girth\n", "the column “name” is missing."),
        (b"name,waist_girth,bust_girth\n", "the column “unit” is missing."),
        (b"name,unit,bust_girth\n", "the column “waist_girth” is missing."),
        (b"name,unit,waist_girth,hip_girth\n", "the column “bust_girth” is missing."),
        (b"name,unit,waist_girt,bust_girth\n", "line 1, column 3: “waist_girt” is no name, unit"),
        (b"name,unit,waist_girth,bust_girth,Name\n", "line 1 names the column “name” twice."),
        (b"Ada,in,27,36\n", "line 1, column 1: “ada” is no"),
        ("name,unit,waist_girth,bust_girth\n".encode("utf-16"), "line 1 is no text in UTF-8"),
        (b"\x89PNG\r\n\x1a\n\0\0\0", "line 1 is no text in UTF-8"),
        (b'"name,unit\n', "line 1 cannot be read"),
        (b"x" * 100_000, "its first line is too long"),
    ],
)
def test_what_is_no_table_of_clients(table: Path, content: bytes, said: str) -> None:
    with pytest.raises(FileTrouble) as refused:
        read(table, content)
    assert str(refused.value).startswith(f"{table}: {said}")


@pytest.mark.parametrize("key", ["underbust_girth", "upper_chest_girth", "underbust_exhale"])
def test_what_can_stand_in_for_the_bust_is_enough(table: Path, key: str) -> None:
    assert read(table, f"name,unit,waist_girth,{key}\nA,cm,70,80\n")


def test_every_measurement_can_be_a_column(table: Path) -> None:
    figures = {key: row.low_mm for key, row in BY_KEY.items()}
    content = (
        ",".join(["name", "unit", *figures]) + "\nA,cm," + ",".join(f"{mm / 10}" for mm in figures.values())
    )
    (row,) = read(table, content)
    assert {key: length.mm for key, length in good(row).measurements.items()} == pytest.approx(figures)


def test_a_folder_a_pipe_and_nothing_at_all(tmp_path: Path) -> None:
    pipe = tmp_path / "pipe"
    os.mkfifo(pipe)
    said = {
        tmp_path: "is not an ordinary file",
        pipe: "is not an ordinary file",
        tmp_path / "no": "no such file",
    }
    for path, reason in said.items():
        with pytest.raises(FileTrouble, match=reason), opened_clients(path):
            pass


def test_a_long_table_is_never_held_whole(table: Path) -> None:
    with table.open("w") as file:
        file.write(HEAD)
        file.writelines(f"W {number},cm,70.5,92\n" for number in range(100_000))
    with opened_clients(table) as rows:
        next(rows)
        tracemalloc.start()
        count = sum(1 for row, _ in zip(rows, range(20_000), strict=False) if isinstance(row, ClientRow))
        _, peak = tracemalloc.get_traced_memory()
        tracemalloc.stop()
    assert count == 20_000
    assert peak < 300_000, f"{peak} bytes for a table of {table.stat().st_size}"


@given(st.binary(max_size=300))
def test_any_bytes_below_the_first_line_are_rows_or_faults(
    tmp_path_factory: pytest.TempPathFactory, data: bytes
) -> None:
    table = tmp_path_factory.getbasetemp() / "any.csv"
    for row in read(table, HEAD.encode() + data):
        if isinstance(row, BadRow):
            assert row.faults
            assert all(fault.sentence for fault in row.faults)
        else:
            assert row.name
            assert row.name.isprintable()


@pytest.mark.parametrize(
    ("name", "stem"),
    [
        ("Ada", "Ada"),
        ("  Ada   B.  ", "Ada B"),
        ("../../etc/passwd", "etc-passwd"),
        ("..", "client"),
        (".", "client"),
        ("/", "client"),
        (".hidden", "hidden"),
        ("a/b\\c:d*e?f", "a-b-c-d-e-f"),
        ("CON", "client CON"),
        ("nul.txt", "client nul.txt"),
        ("Zoë O’Brien-Li", "Zoë O’Brien-Li"),
        ("नमस्ते", "नमस्ते"),
        ("\x00\x1b[2J", "[2J"),
        ("\u202etxt", "txt"),
        ("", "client"),
    ],
)
def test_names_made_plain(name: str, stem: str) -> None:
    assert plain_stem(name, "client") == stem


@given(st.text(max_size=200))
def test_a_plain_name_stays_in_its_folder_and_can_be_made(
    tmp_path_factory: pytest.TempPathFactory, name: str
) -> None:
    folder = tmp_path_factory.getbasetemp() / "plain"
    folder.mkdir(exist_ok=True)
    path = folder / f"{plain_stem(name, 'client')} 100000.bodice"
    assert path.parent == folder
    assert write_fresh(path, b"whole")
    assert path.read_bytes() == b"whole"
    path.unlink()
    assert list(folder.iterdir()) == []


def test_a_name_that_is_taken_gets_the_next_number(tmp_path: Path) -> None:
    for wanted in ("A", *(f"A {number}" for number in range(2, 20))):
        stem = free_stem(tmp_path, "A", (".x", ".y"))
        assert stem == wanted
        # either ending takes the name for both
        (tmp_path / f"{stem}{'.x' if len(wanted) % 2 else '.y'}").touch()


def test_what_is_there_is_never_written_over(tmp_path: Path) -> None:
    there, link = tmp_path / "there", tmp_path / "link"
    there.write_bytes(b"first")
    link.symlink_to(tmp_path / "nowhere")
    assert not write_fresh(there, b"second")
    assert not write_fresh(link, b"second")
    assert there.read_bytes() == b"first"
    assert free_stem(tmp_path, "link", ("",)) == "link 2"
    assert sorted(path.name for path in tmp_path.iterdir()) == ["link", "there"]


def test_on_a_file_system_without_links(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def no_links(*_: object) -> None:
        raise PermissionError(1, "Operation not permitted")

    monkeypatch.setattr(os, "link", no_links)
    assert write_fresh(tmp_path / "a", b"first")
    assert not write_fresh(tmp_path / "a", b"second")
    assert (tmp_path / "a").read_bytes() == b"first"
    assert len(list(tmp_path.iterdir())) == 1
