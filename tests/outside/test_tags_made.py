"""Tags made by `stillbar tag new`, rendered at print size and read by readers that are not ours."""

import json
import subprocess
from pathlib import Path

import cv2
import pytest
import segno
import zxingcpp
from pyzbar import pyzbar
from stdnum.iso7064 import mod_37_2

from support.desk import command, refused

# Left and top margin, pitch across and down, in millimetres, as sheets of labels commonly have them.
GRIDS = {
    "a4-3x8": (0, 0.5, 70, 37),
    "a4-3x7": (7.2, 15.15, 66, 38.1),
    "a4-2x7": (4.65, 15.15, 101.6, 38.1),
    "letter-3x10": (4.76, 12.7, 69.85, 25.4),
    "letter-2x5": (3.97, 12.7, 106.36, 50.8),
}
DPI = 300


def page(pdf: Path):
    """The first page in grey, at DPI, by poppler."""
    subprocess.run(["pdftoppm", "-r", str(DPI), "-gray", "-png", "-singlefile", pdf, pdf.with_suffix("")], check=True, timeout=60)
    return cv2.imread(str(pdf.with_suffix(".png")), cv2.IMREAD_GRAYSCALE)


def made(tmp_path: Path, *arguments: str) -> tuple[list[dict], Path]:
    pdf = tmp_path / "tags.pdf"
    done = command("tag", "new", "-o", pdf, "--json", *arguments)
    assert (done.code, done.err) == (0, "")
    return json.loads(done.out), pdf


@pytest.mark.parametrize("grid", GRIDS)
def test_every_tag_on_a_sheet_is_read_by_all_three(grid: str, tmp_path: Path):
    """zxing-cpp finds each one on the whole page; zbar and OpenCV on its label; none finds anything else."""
    tags, pdf = made(tmp_path, "--sheet", grid, "--site", "Hill Laundry", "--point", "Q4 feeder switch, second door on the left")
    assert len(tags) == 1
    # Without a count, a page full.
    columns, rows = (int(n) for n in grid.split("-")[1].split("x"))
    tags, pdf = made(tmp_path, "--sheet", grid, "--site", "Hill Laundry", "--force")
    wanted = {t["tag"] for t in tags}
    assert len(wanted) == columns * rows
    picture = page(pdf)
    assert {b.text for b in zxingcpp.read_barcodes(picture)} == wanted
    # The other two find few of many codes in a large picture: they are shown one label at a time.
    assert {text for cell in cells(picture, grid) for text in by_zbar(cell)} == wanted
    assert {text for cell in cells(picture, grid) for text in by_opencv(cell)} == wanted


def cells(picture, grid: str):
    """Each label of the page."""
    columns, rows = (int(n) for n in grid.split("-")[1].split("x"))
    left, top, across, down = (length / 25.4 * DPI for length in GRIDS[grid])
    for row in range(rows):
        for column in range(columns):
            x, y = int(left + column * across), int(top + row * down)
            yield picture[y : y + int(down), x : x + int(across)]


def smaller(cell):
    return [cv2.resize(cell, None, fx=f, fy=f, interpolation=cv2.INTER_AREA) for f in (0.5, 1.0, 0.33)]


def by_zbar(cell) -> list[str]:
    return next((texts for c in smaller(cell) if (texts := [x.data.decode() for x in pyzbar.decode(c)])), [])


def by_opencv(cell) -> list[str]:
    return next(([text] for c in smaller(cell) if (text := cv2.QRCodeDetector().detectAndDecode(c)[0])), [])


def test_a_sign_has_its_tag(tmp_path: Path):
    tags, pdf = made(tmp_path, "--signs", "--count", "4", "--point", "Q4 feeder switch")
    assert {b.text for b in zxingcpp.read_barcodes(page(pdf))} == {t["tag"] for t in tags}
    text = subprocess.run(["pdftotext", "-layout", pdf, "-"], capture_output=True, text=True, timeout=30, check=True).stdout
    assert text.count("DO NOT SWITCH ON") == 4 and "Q4 feeder switch" in text


def test_id_check_and_symbol(tmp_path: Path):
    """MOD 37-2 by python-stdnum; nothing that eyes confuse; the id in clear on the page; 21 modules at level Q, as segno needs for the same text."""
    tags, pdf = made(tmp_path, "--count", "200")
    text = subprocess.run(["pdftotext", "-raw", pdf, "-"], capture_output=True, text=True, timeout=30, check=True).stdout
    joined = "".join(text.split())
    for tag in (t["tag"] for t in tags):
        assert mod_37_2.is_valid(tag), tag
        assert not set(tag) & set("ILOU*"), tag
        assert tag in joined
        symbol = segno.make(tag, error="q", micro=False, boost_error=False)
        assert (symbol.version, symbol.error, symbol.mode) == (1, "Q", "alphanumeric")
    assert len({t["tag"] for t in tags}) == 200


def test_bad_requests_write_nothing(tmp_path: Path):
    there = tmp_path / "there.pdf"
    there.write_bytes(b"mine")
    for arguments, said in [
        (["-o", there], "is there already"),
        (["-o", tmp_path / "no" / "x.pdf"], "the folder is not there"),
        (["-o", tmp_path / "x.pdf", "--sheet", "a5"], "There is no grid called"),
        (["-o", tmp_path / "x.pdf", "--count", "0"], "1 to 2400"),
        (["-o", tmp_path / "x.pdf", "--count", "2401"], "1 to 2400"),
        (["-o", tmp_path / "x.pdf", "--count", "1", "--point", "a", "--point", "b"], "2 points do not go on 1 tags"),
        (["-o", tmp_path / "x.pdf", "--point", "漢字"], "The font has no"),
        (["-o", tmp_path / "x.pdf", "--site", "x" * 121], "too long for a label"),
        (["-o", tmp_path / "x.pdf", "--points", tmp_path / "none.txt"], "cannot be read as text"),
        (["-o", tmp_path / "x.pdf", "--points", "/dev/zero"], "has more than 1 MiB"),
    ]:
        done = command("tag", "new", *arguments)
        refused(done, 2, said)
        assert done.err.count("\n") == 1, (arguments, done.err)
    assert there.read_bytes() == b"mine"
    assert list(tmp_path.iterdir()) == [there]
