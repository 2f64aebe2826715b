"""Records against what is not ours: veraPDF, poppler, JSON Schema, and a verifier written from docs/formats.md."""

import base64
import csv
import hashlib
import io
import json
import random
import subprocess
import sys
from pathlib import Path

import cv2
import jsonschema_rs
import pytest
import zxingcpp

from support.desk import Desk, command, refused

HERE = Path(__file__).parent
ROOT = HERE.parents[1]
TITLE = "Replace the outgoing breaker of washer 4"
OTHERS = ["Change the contactor of extractor fan 2", "Move the socket circuit of bay 3", "Add a way for the new dryer"]


@pytest.fixture(scope="module")
def demo(tmp_path_factory) -> Path:
    """The demo's data folder, written and closed."""
    folder = tmp_path_factory.mktemp("demo") / "data"
    desk = Desk(folder, "demo").start()
    try:
        desk.stop()
    finally:
        desk.kill()
    return folder


def record(demo: Path, out: Path, *more: str, job: str = TITLE) -> Path:
    done = command("record", job, "-o", out, "--data", demo, *more)
    assert (done.code, done.err) == (0, ""), done
    return out


@pytest.fixture(scope="module")
def files(demo, tmp_path_factory) -> dict[str, Path]:
    """The record of the finished job."""
    folder = tmp_path_factory.mktemp("record")
    made = {kind: record(demo, folder / f"job.{kind}") for kind in ("pdf", "json", "csv")}
    made["withheld"] = record(demo, folder / "withheld.pdf", "--withhold-names")
    return made


def claims(files: dict[str, Path]) -> dict:
    return json.loads(files["json"].read_text("utf-8"))["claims"]


def ours(file: Path) -> int:
    return command("verify", file).code


def theirs(file: Path) -> int:
    """The verdict of the verifier in Python, in a process of its own as anybody would run it."""
    return subprocess.run([sys.executable, HERE / "check_record.py", file], capture_output=True, timeout=60).returncode


def test_both_verifiers_accept_every_record(demo, files, tmp_path):
    for file in (files["pdf"], files["json"], files["withheld"]):
        assert (ours(file), theirs(file)) == (0, 0), file
    for i, job in enumerate(OTHERS):
        for kind in ("pdf", "json"):
            file = record(demo, tmp_path / f"{i}.{kind}", job=job)
            assert (ours(file), theirs(file)) == (0, 0), (job, kind)


def test_both_verifiers_refuse_every_mutant(files, tmp_path):
    """One bit of the JSON, of the journal in the PDF, or of a picture in it."""
    sys.path.insert(0, str(HERE))
    import check_record

    chance = random.Random(5)
    pdf, whole = files["pdf"].read_bytes(), files["json"].read_bytes()
    journal = next(check_record.streams(pdf, b"/EmbeddedFile"))
    picture = base64.b64decode(json.loads(whole)["photos"][0]["jpeg"])
    of = [(journal, pdf.index(journal), 30), (picture, pdf.index(picture), 10)]
    inside = [(whole, 0, len(whole), 60), *((pdf, at, at + len(part), many) for part, at, many in of)]
    for data, start, end, many in inside:
        for _ in range(many):
            at = chance.randrange(start, end)
            mutant = bytearray(data)
            mutant[at] ^= 1 << chance.randrange(8)
            (tmp_path / "mutant").write_bytes(mutant)
            with pytest.raises(Exception):  # noqa: B017 - whatever it says, it does not accept
                assert check_record.check(bytes(mutant))
            assert ours(tmp_path / "mutant") != 0, f"byte {at}"


def test_both_verifiers_refuse_a_forger(files, tmp_path):
    """An entry that is taken out or moved, a photo that is swapped, with the spelling right and the seal as it was."""
    sys.path.insert(0, str(HERE))
    import check_record

    whole = json.loads(files["json"].read_bytes())

    def change(name: str, how) -> None:
        file = json.loads(files["json"].read_bytes())
        how(file)
        mutant = tmp_path / "mutant.json"
        mutant.write_bytes(check_record.spelled(file))
        assert (ours(mutant), theirs(mutant)) == (1, 1), name

    for at in range(0, len(whole["entries"]), 9):
        change(f"entry {at} taken out", lambda f, at=at: f["entries"].pop(at))
    change("an entry twice", lambda f: f["entries"].append(f["entries"][-1]))
    change("another reading", lambda f: f["claims"]["readings"][0].update(reading="continuity"))
    change("another time", lambda f: f["claims"]["time_line"][3]["when"].update(at="2026-01-01T00:00:00+00:00"))
    change("another head", lambda f: f["claims"].update(head="0" * 64))
    change("another maker", lambda f: f["seal"].update(device="0" * 64))
    change("another moment", lambda f: f.update(made="2020-01-01T00:00:00+00:00"))
    change("another photo", lambda f: f["photos"][0].update(jpeg=f["photos"][0]["jpeg"][:-8] + "AAAAAAA="))
    change("a word", lambda f: f["claims"]["state"].update(state="proved"))


def test_the_json_is_as_its_schema_says(demo, files, tmp_path):
    """JSON Schema 2020-12."""
    schema = json.loads((ROOT / "docs" / "schemas" / "record.schema.json").read_text("utf-8"))
    validator = jsonschema_rs.Draft202012Validator(schema)
    for job in [TITLE, *OTHERS]:
        file = json.loads(record(demo, tmp_path / "x.json", "--force", job=job).read_bytes())
        assert [e.message for e in validator.iter_errors(file)] == []
        file["claims"]["readings"].append({})
        assert not validator.is_valid(file)


def test_the_csv_is_rfc_4180(files):
    """Read by Python's reader, and the same as the JSON."""
    raw = files["csv"].read_bytes()
    assert raw.count(b"\n") == raw.count(b"\r\n")
    rows = list(csv.DictReader(io.StringIO(raw.decode("utf-8"), newline="")))
    told = claims(files)
    read = [(r["kind"], r["first"], r["then"], r["reading"], r["at"]) for r in rows if r["table"] == "reading"]
    assert read == [(KINDS[r["kind"]], r["first"], r["then"], words(r["reading"]), r["when"]["at"]) for r in told["readings"]]
    lines = [(r["entry"], r["number"], r["at"]) for r in rows if r["table"] == "time line"]
    assert lines == [(line["when"]["entry"], str(line["number"]), line["when"]["at"]) for line in told["time_line"]]
    assert all(r["says"] for r in rows if r["table"] == "time line")


# How the codes of claims are told on paper, written down once more by hand.
KINDS = {
    "dead-test": "dead test",
    "dead-test-dc": "dead test, direct voltage",
    "direct-voltage": "direct voltage",
    "at-the-work": "at the work",
    "supply-back": "supply back",
}


def words(reading) -> str:
    kind, number = (reading, None) if isinstance(reading, str) else next(iter(reading.items()))
    if kind == "millivolts":
        return f"{number // 1000}.{number % 1000:03}".rstrip("0").rstrip(".") + " V"
    return {"none": "no indication", "continuity": "continuity", "lit": "lit" if number is None else f"lit to {number} V"}[kind]


@pytest.fixture(scope="module")
def validator(tmp_path_factory) -> list[str]:
    """veraPDF from Maven Central, as a command."""
    folder = HERE / "verapdf"
    path = tmp_path_factory.mktemp("verapdf") / "path"
    maven = ["mvn", "-q", "-B", "-f", folder / "pom.xml", "dependency:build-classpath", f"-Dmdep.outputFile={path}"]
    subprocess.run(maven, check=True, timeout=600, stdin=subprocess.DEVNULL)
    return ["java", "-cp", path.read_text(), str(folder / "Check.java")]


def test_verapdf_accepts(demo, files, validator, tmp_path):
    """ISO 19005-3, level A: fonts embedded, tagged, language set, the embedded file related."""
    pdfs = [files["pdf"], files["withheld"], *(record(demo, tmp_path / f"{i}.pdf", job=job) for i, job in enumerate(OTHERS))]
    done = subprocess.run([*validator, *pdfs], capture_output=True, text=True, timeout=300)
    assert done.returncode == 0, done.stdout + done.stderr
    assert [line.split()[:2] for line in done.stdout.splitlines()] == [["3a", "true"]] * len(pdfs)
    # And it can say no: a record whose claim to be PDF/A is taken away.
    broken = tmp_path / "broken.pdf"
    broken.write_bytes(files["pdf"].read_bytes().replace(b"<pdfaid:conformance>A", b"<pdfaid:conformance>X"))
    assert subprocess.run([*validator, broken], capture_output=True, timeout=300).returncode == 1


def text_of(pdf: Path, *options: str) -> str:
    return subprocess.run(["pdftotext", *options, pdf, "-"], check=True, capture_output=True, text=True, timeout=60).stdout


def test_pdftotext_finds_every_reading_and_every_line(files):
    """In the order in which they were taken, as poppler reads the page."""
    told, text = claims(files), text_of(files["pdf"], "-layout")
    lines = [" ".join(line.split()) for line in text.splitlines()]
    at = 0
    for reading in told["readings"]:
        between = f"{reading['first']} – {reading['then']}" if reading["then"] else reading["first"]
        start = f"{reading['number']} {KINDS[reading['kind']]}"
        found = [i for i in range(at, len(lines)) if lines[i].startswith(start) and between in lines[i]]
        assert found, reading
        at = found[0]
        near = " ".join(lines[at : at + 3])
        assert all(word in near for word in words(reading["reading"]).split()), (reading, near)
    flat = " ".join(text_of(files["pdf"]).split())
    assert all(line["when"]["at"][:19].replace("T", " ") in flat for line in told["time_line"])
    assert told["title"] in flat and "Treat as live" in flat.replace("treat", "Treat")
    # In words, by the standard's name: IEC 60038, ANSI C84.1 or that of the United Kingdom.
    assert any(order in flat for order in ("Order of tests Least dangerous first", "Order of tests Line to line first", "Order of tests Earth first")), flat[:2000]
    assert any(f"Supply back held against {of}" in flat for of in ("IEC 60038: 10 % either way", "United Kingdom: +10 %", "ANSI C84.1 Range A")), flat[:2000]
    for word in ("Points of isolation", "Readings, in the order", "Hand-over", "Cautions", "Time line", "Deviations"):
        assert word in flat, word


def test_no_record_says_safe(demo, files, tmp_path):
    for job in [TITLE, *OTHERS]:
        text = text_of(record(demo, tmp_path / "x.pdf", "--force", job=job)).lower().split()
        assert not {"safe", "safely"} & set(text)


def test_the_pictures_on_the_pages_are_those_that_were_signed(files, tmp_path):
    """As poppler takes them out."""
    subprocess.run(["pdfimages", "-j", files["pdf"], tmp_path / "p"], check=True, timeout=60)
    found = {hashlib.sha256(file.read_bytes()).hexdigest() for file in tmp_path.glob("p-*.jpg")}
    shown = {photo["copy"] for photo in json.loads(files["json"].read_bytes())["photos"]}
    assert shown and found == shown
    assert shown <= {copy for photo in claims(files)["photos"] for copy in photo["copies"]}


def test_the_symbol_on_page_one_says_the_head(files, tmp_path):
    """ISO/IEC 18004, read from the page as it prints."""
    subprocess.run(["pdftoppm", "-r", "150", "-png", "-singlefile", files["pdf"], tmp_path / "page"], check=True, timeout=60)
    codes = zxingcpp.read_barcodes(cv2.imread(str(tmp_path / "page.png"), cv2.IMREAD_GRAYSCALE))
    assert [code.text for code in codes] == [f"stillbar-head:1:{claims(files)['head']}"]


def test_fonts_are_embedded_and_the_journal_comes_out(files, tmp_path):
    fonts = subprocess.run(["pdffonts", files["pdf"]], check=True, capture_output=True, text=True, timeout=60).stdout
    rows = [line.split() for line in fonts.splitlines()[2:]]
    assert rows and all("DejaVuSans" in row[0] and row[-5:-2] == ["yes", "yes", "yes"] for row in rows), fonts
    info = subprocess.run(["pdfinfo", files["pdf"]], check=True, capture_output=True, text=True, timeout=60).stdout
    assert "Tagged:          yes" in info and TITLE in info
    subprocess.run(["pdfdetach", "-save", "1", "-o", tmp_path / "journal.json", files["pdf"]], check=True, timeout=60)
    # Without the pictures it is a record by itself.
    assert (ours(tmp_path / "journal.json"), theirs(tmp_path / "journal.json")) == (0, 0)


def test_no_name_and_no_place_in_what_is_shared(files, tmp_path):
    """Names that are withheld are in no text, in no entry, and in no metadata; photos have no Exif."""
    subprocess.run(["pdfdetach", "-save", "1", "-o", tmp_path / "journal.json", files["withheld"]], check=True, timeout=60)
    wire = json.loads((tmp_path / "journal.json").read_bytes())
    sys.path.insert(0, str(HERE))
    import check_record

    read = str([check_record.entry(entry) for entry in wire["entries"]]) + text_of(files["withheld"]) + json.dumps(wire["claims"])
    people = {line["when"]["by"] for line in claims(files)["time_line"]}
    assert people and not any(name in read for name in people)
    subprocess.run(["pdfimages", "-j", files["withheld"], tmp_path / "p"], check=True, timeout=60)
    for jpeg in tmp_path.glob("p-*.jpg"):
        tags = subprocess.run(["exiftool", "-json", "-G", jpeg], check=True, capture_output=True, text=True, timeout=60).stdout
        assert not any(group in tags for group in ("EXIF:", "GPS", "XMP:", "IPTC:", "MakerNotes:"))


def test_a_page_that_was_changed_is_found_and_can_be_made_anew(files, tmp_path):
    """The journal holds, the pages do not: the sentence says so, and how to get pages that do."""
    pdf = files["pdf"].read_bytes()
    at = pdf.index(b"/Producer")
    changed = tmp_path / "changed.pdf"
    changed.write_bytes(pdf[: at + 12] + b"x" + pdf[at + 13 :])
    done = command("verify", changed)
    assert done.code == 1 and "the pages" in done.out and "stillbar record" in done.out
    done = command("record", changed, "-o", tmp_path / "anew.pdf")
    assert done.code == 0, done
    assert (tmp_path / "anew.pdf").read_bytes() == pdf


def test_a_record_is_made_while_the_desk_is_running(desks, tmp_path):
    desk = desks(tmp_path / "data", "demo").start()
    file = record(tmp_path / "data", tmp_path / "job.pdf")
    assert ours(file) == 0
    desk.stop()


def test_what_cannot_be_done_is_told(demo, files, tmp_path):
    refused(command("record", TITLE, "-o", tmp_path / "x.doc", "--data", demo), 2, ".pdf")
    refused(command("record", "Nothing of the kind", "-o", tmp_path / "x.pdf", "--data", demo), 1, TITLE)
    refused(command("record", TITLE, "-o", files["pdf"], "--data", demo), 2, "--force")
    refused(command("record", TITLE, "-o", tmp_path / "x.pdf", "--data", tmp_path / "nowhere"), 1, "--data")
    refused(command("verify", tmp_path / "nothing.pdf"), 2, "not there")
    (tmp_path / "x.pdf").write_bytes(b"%PDF-1.7\n")
    refused(command("verify", tmp_path / "x.pdf"), 2, "no journal in this PDF")
    done = command("verify", files["json"], "--json")
    assert (done.code, json.loads(done.out)["holds"]) == (0, True)
