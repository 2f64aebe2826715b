"""`stillbar tag read` on codes that segno made and photos made from a seed, beside zxing-cpp, ZBar and OpenCV."""

import json
from pathlib import Path

import cv2
import numpy as np
import pytest
import segno

from photos import photo, tag_text
from photos.readers import READERS
from support.desk import command

# 4032 x 3024 is for tests/bench/tags.py.
SMALLER = [(2048, 1536), (2560, 1920), (4032, 3024)]
PHOTOS = 60


def read(*files: Path) -> list[dict]:
    """What is printed for these files, in their order."""
    done = command("tag", "read", "--json", *files)
    assert (done.code, done.err) == (0, "")
    return json.loads(done.out)


def drawn(folder: Path, name: str, **made) -> Path:
    """A clean picture of one code."""
    path = folder / f"{name}.png"
    segno.make(micro=False, **made).save(path, scale=6, border=4)
    return path


@pytest.mark.parametrize("error", ["l", "m", "q", "h"])
def test_tags_made_by_segno(error: str, tmp_path: Path):
    """Every level; ours are printed at Q."""
    text = tag_text(np.random.default_rng(5))
    path = drawn(tmp_path, "tag", content=text, error=error)
    assert read(path) == [{"file": str(path), "tags": [text], "other": []}]


@pytest.mark.parametrize("version", [1, 2, 5, 7, 14, 22, 30, 40])
def test_foreign_codes_of_every_size(version: int, tmp_path: Path):
    """From the smallest to the largest symbol."""
    text = f"HTTPS://V{version}.EU"
    path = drawn(tmp_path, "foreign", content=text, version=version, error="l")
    assert read(path) == [{"file": str(path), "tags": [], "other": [text]}]


def test_foreign_texts(tmp_path: Path):
    """Bytes beyond ASCII, digits alone, a line end."""
    for text in ["https://example.org/?q=1&x=ä", "0123456789", "BEGIN:VCARD\nN:Pump\nEND:VCARD"]:
        path = drawn(tmp_path, "foreign", content=text, encoding="utf-8" if not text.isascii() else None)
        assert read(path)[0]["other"] == [text]


@pytest.mark.parametrize("text", ["漏電", "ä", "Ω1", "опасно", "ポンプ3"])
def test_a_short_text_in_utf_8(text: str, tmp_path: Path):
    """Nothing in the symbol says which encoding it is, and so few characters leave a decoder to guess."""
    # Left to itself segno takes the UTF-8 bytes of some texts for Kanji and writes another text.
    path = drawn(tmp_path, "foreign", content=text, encoding="utf-8", mode="byte")
    assert read(path)[0]["other"] == [text]


@pytest.mark.parametrize(("text", "encoding"), [("Schütz", "iso-8859-1"), ("ポンプの電源", "shift_jis")])
def test_a_text_in_another_encoding(text: str, encoding: str, tmp_path: Path):
    """The encodings that the standard had before UTF-8 was common."""
    path = drawn(tmp_path, "foreign", content=text, encoding=encoding)
    assert read(path)[0]["other"] == [text]


def test_a_tag_misread_is_in_neither_list(tmp_path: Path):
    """One character of a tag changed: not a tag, and not a foreign code either."""
    text = tag_text(np.random.default_rng(6))
    wrong = text[:5] + ("A" if text[5] != "A" else "B") + text[6:]
    path = drawn(tmp_path, "wrong", content=wrong, error="q")
    assert read(path) == [{"file": str(path), "tags": [], "other": []}]


def test_several_codes_in_one_picture(tmp_path: Path):
    """Two tags and a foreign code, none hidden by the others."""
    rng = np.random.default_rng(7)
    texts = [tag_text(rng), tag_text(rng), "https://example.org/"]
    pictures = [cv2.imread(str(drawn(tmp_path, f"{k}", content=t, error="q")), 0) for k, t in enumerate(texts)]
    side = max(p.shape[0] for p in pictures)
    pad = [np.pad(p, ((0, side - p.shape[0]), (0, side - p.shape[1])), constant_values=255) for p in pictures]
    path = tmp_path / "all.png"
    cv2.imwrite(str(path), np.hstack(pad))
    [found] = read(path)
    assert (sorted(found["tags"]), found["other"]) == (sorted(texts[:2]), texts[2:])


@pytest.mark.parametrize("change", ["turned", "mirrored", "inverted"])
def test_held_otherwise(change: str, tmp_path: Path):
    """A quarter turn, the picture in a mirror, white on black."""
    text = tag_text(np.random.default_rng(8))
    path = drawn(tmp_path, "tag", content=text, error="q")
    grey = cv2.imread(str(path), 0)
    grey = {"turned": np.rot90(grey), "mirrored": grey[:, ::-1], "inverted": 255 - grey}[change]
    cv2.imwrite(str(path), np.ascontiguousarray(grey))
    assert read(path)[0]["tags"] == [text]


def test_bad_files_do_not_stop_the_others(tmp_path: Path):
    """One sentence for each, exit code 2, and what could be read is printed."""
    text = tag_text(np.random.default_rng(9))
    good = drawn(tmp_path, "good", content=text, error="q")
    cut, words = tmp_path / "cut.png", tmp_path / "words.jpg"
    cut.write_bytes(good.read_bytes()[:200])
    words.write_text("no picture")
    done = command("tag", "read", "--json", cut, good, words, tmp_path, tmp_path / "missing.jpg")
    assert done.code == 2
    assert [found["tags"] for found in json.loads(done.out)] == [[text]]
    told = done.err.splitlines()
    assert [line.split(": ")[0] for line in told] == [str(p) for p in (cut, words, tmp_path, tmp_path / "missing.jpg")]
    assert all(line.endswith(".") and "panicked" not in line for line in told), done.err


def test_text_for_people(tmp_path: Path):
    """A stranger's code cannot steer the terminal."""
    path = drawn(tmp_path, "foreign", content="\x1b[2Jhello")
    done = command("tag", "read", path)
    assert done.code == 0 and "\x1b" not in done.out and "hello" in done.out


def test_as_many_as_the_best_outside_reader(tmp_path: Path):
    """On photos made hard enough that each reader misses some; and never a wrong text."""
    found = {name: 0 for name in ("ours", *READERS)}
    for seed in range(1, PHOTOS + 1):
        taken = photo(seed, SMALLER[seed % len(SMALLER)])
        path = tmp_path / f"{seed}.jpg"
        path.write_bytes(taken.jpeg)
        [said] = read(path)
        assert {*said["tags"], *said["other"]} <= {taken.text}, f"seed {seed}"
        found["ours"] += taken.text in said["tags" if taken.ours else "other"]
        grey = cv2.imdecode(np.frombuffer(taken.jpeg, np.uint8), cv2.IMREAD_GRAYSCALE)
        for name, reader in READERS.items():
            found[name] += taken.text in reader(grey)
    best = max(found[name] for name in READERS)
    assert best < PHOTOS, f"the photos are too easy to tell readers apart: {found}"
    assert found["ours"] >= best, found
