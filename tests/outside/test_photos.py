"""`stillbar photo check` against exiftool, Pillow, OpenCV and sha256sum."""

import hashlib
import json
import subprocess
import tarfile
import urllib.request
import zipfile
from pathlib import Path

import cv2
import numpy as np
import piexif
import pytest
from PIL import Image, ImageDraw, ImageFilter, ImageOps

from support.desk import binary, command, refused
from support.peak import peak

# Samples of cameras and of programs, with all eight orientations: the source distributions on PyPI, by their hashes there.
PYPI = "https://files.pythonhosted.org/packages/"
SOURCES = {
    "piexif-1.1.3.zip": (
        "fa/84/a3f25cec7d0922bf60be8000c9739d28d24b6896717f44cc4cfb843b1487/",
        "83cb35c606bf3a1ea1a8f0a25cb42cf17e24353fd82e87ae3884e74a302a5f1b",
    ),
    "pillow-13.0.0.tar.gz": (
        "ce/a4/9cc30690a394a8305e8be4c9036aa16d0dfddadd09079860b582f562496d/",
        "cdcd1ba258178f7356d74170c9a81ba4eab6a5d55748bc402a5a2a6fe6be3510",
    ),
}
PICTURES = (".jpg", ".jpeg", ".png", ".webp")

# Orientation in a text chunk from before PNG had Exif; no camera writes it.
LEGACY = {"exif_imagemagick_orientation.png"}


def check(file: Path, *more: str | Path) -> dict:
    """The answer of the command."""
    done = command("photo", "check", file, "--json", *more)
    assert done.code == 0, done
    return json.loads(done.out)


@pytest.fixture(scope="module")
def samples(tmp_path_factory: pytest.TempPathFactory) -> list[Path]:
    """Every picture in the two source distributions, kept in tests/out so that they are fetched once."""
    kept = Path(__file__).parents[1] / "out" / "samples"
    kept.mkdir(parents=True, exist_ok=True)
    folder = tmp_path_factory.mktemp("samples")
    for name, (place, sha256) in SOURCES.items():
        archive = kept / name
        if not archive.exists():
            with urllib.request.urlopen(PYPI + place + name, timeout=120) as answer:
                content = answer.read()
            assert hashlib.sha256(content).hexdigest() == sha256, name
            archive.write_bytes(content)
        assert hashlib.sha256(archive.read_bytes()).hexdigest() == sha256, f"{archive} is not what it was; remove it"
        if name.endswith(".zip"):
            with zipfile.ZipFile(archive) as content:
                content.extractall(folder)
        else:
            with tarfile.open(archive) as content:
                content.extractall(folder, filter="data")
    found = sorted(p for p in folder.rglob("*") if p.suffix.lower() in PICTURES and "images" in p.parts)
    assert len(found) > 480
    return found


def test_orientation_as_exiftool_reads_it(samples: list[Path]):
    """On every sample that can be read; few cannot, and each of those gets one sentence."""
    listed = subprocess.run(
        ["exiftool", "-json", "-n", "-fast", "-IFD0:Orientation", "-@", "-"],
        input="\n".join(map(str, samples)), capture_output=True, text=True, timeout=120, check=False,
    )  # fmt: skip
    outside = {entry["SourceFile"]: entry.get("Orientation", 1) for entry in json.loads(listed.stdout)}
    seen: dict[int, int] = {}
    refusals = 0
    for sample in samples:
        done = command("photo", "check", sample, "--json")
        if done.code == 2:
            refusals += 1
            assert done.err.count("\n") == 1 and (done.err.endswith(".\n")), done.err
            refused(done, 2, str(sample))
            continue
        ours = json.loads(done.out)["orientation"]
        theirs = outside[str(sample)]
        if sample.name in LEGACY:
            assert (ours, theirs) == (1, 3)
            continue
        assert ours == theirs, sample.name
        seen[ours] = seen.get(ours, 0) + 1
    assert set(seen) == set(range(1, 9)), seen
    assert refusals < 25, f"{refusals} of {len(samples)} samples are refused"


def test_what_is_refused_cannot_be_read_by_pillow_either(samples: list[Path]):
    """A photo that another program shows is not turned away; moving pictures and broken animations aside."""
    wrong = []
    for sample in samples:
        if "apng" in sample.parts or command("photo", "check", sample).code == 0:
            continue
        try:
            with Image.open(sample) as picture:
                picture.load()
                if not getattr(picture, "is_animated", False):
                    wrong.append(sample.name)
        except (OSError, SyntaxError):
            continue
    # Its colour marker is cut off; Pillow guesses the colours.
    assert wrong == ["truncated_app14.jpg"]


def scene(width: int, height: int, seed: int = 1) -> Image.Image:
    """Boxes of many sizes on a slope with a little noise: edges at every scale, and no symmetry."""
    chance = np.random.default_rng(seed)
    y, x = np.mgrid[:height, :width].astype(np.float32)
    slope = 90 + 60 * x / width + 40 * y / height
    noisy = slope[..., None] + chance.normal(0, 3, (height, width, 3)).astype(np.float32)
    picture = Image.fromarray(np.clip(noisy, 0, 255).astype(np.uint8))
    draw = ImageDraw.Draw(picture)
    for _ in range(120):
        left, top = int(chance.integers(0, width)), int(chance.integers(0, height))
        right, bottom = left + int(chance.integers(4, width // 6)), top + int(chance.integers(4, height // 6))
        draw.rectangle([left, top, right, bottom], fill=tuple(int(v) for v in chance.integers(20, 236, 3)))
    return picture


@pytest.mark.parametrize("suffix", ["jpg", "png", "webp"])
def test_all_eight_orientations_upright_as_pillow_turns_them(suffix: str, tmp_path: Path):
    """Pixel by pixel; the copy is a JPEG, so a little is lost. Any other way up is far off."""
    smooth = scene(240, 156).filter(ImageFilter.GaussianBlur(3))
    for orientation in range(1, 9):
        exif = Image.Exif()
        exif[0x0112] = orientation
        file = tmp_path / f"{orientation}.{suffix}"
        smooth.save(file, exif=exif, **({"lossless": True} if suffix == "webp" else {"quality": 98}))
        answer = check(file, "--copies", tmp_path)
        with Image.open(file) as picture:
            theirs = ImageOps.exif_transpose(picture).convert("RGB")
        assert (answer["width"], answer["height"]) == theirs.size
        assert (answer["orientation"], answer["upright"]) == (orientation, orientation == 1)
        with Image.open(tmp_path / f"{answer['sha256']}.1600.jpg") as copy:
            ours = np.asarray(copy.convert("RGB"), dtype=np.int16)
        assert np.abs(ours - np.asarray(theirs, dtype=np.int16)).mean() < 4
        for other in (ImageOps.flip(theirs), ImageOps.mirror(theirs), theirs.transpose(Image.Transpose.ROTATE_180)):
            assert np.abs(ours - np.asarray(other, dtype=np.int16)).mean() > 10


def ranks(values: list[float]) -> np.ndarray:
    """Place of each value among the others."""
    return np.argsort(np.argsort(values)).astype(float)


def opencv(file: Path) -> float:
    """The pipeline of the docs with OpenCV's parts: grey, area means to 1024, Laplacian, variance."""
    grey = cv2.imread(str(file), cv2.IMREAD_GRAYSCALE)
    scale = 1024 / max(grey.shape)
    if scale < 1:
        height, width = (max(1, round(side * scale)) for side in grey.shape)
        grey = cv2.resize(grey, (width, height), interpolation=cv2.INTER_AREA)
    return float(cv2.Laplacian(grey, cv2.CV_64F)[1:-1, 1:-1].var())


def test_sharpness_orders_as_opencv(tmp_path: Path):
    """Four pictures of different sizes, each blurred more and more: the same order as a whole (Spearman) and within each.

    Lossless: what JPEG does to a flat picture would be more than what is left of its edges.
    """
    ours, theirs = [], []
    for seed, size in enumerate([(2048, 1536), (1600, 1200), (1000, 700), (2400, 3200)]):
        picture, series = scene(*size, seed), []
        for step, radius in enumerate([0, 0.5, 1, 2, 4]):
            file = tmp_path / f"{seed}-{step}.png"
            picture.filter(ImageFilter.GaussianBlur(radius * max(size) / 1600)).save(file, compress_level=1)
            series.append(check(file)["sharpness"])
            ours.append(series[-1])
            theirs.append(opencv(file))
        assert series == sorted(series, reverse=True), series
    spearman = float(np.corrcoef(ranks(ours), ranks(theirs))[0, 1])
    assert spearman > 0.995, spearman
    assert all(abs(a - b) < 0.03 * b + 0.3 for a, b in zip(ours, theirs, strict=True)), list(zip(ours, theirs, strict=True))


def test_light_as_numpy_counts_it(tmp_path: Path):
    """Mean, nearly black and nearly white over a lossless picture that is not shrunk."""
    grey = np.random.default_rng(5).integers(0, 256, (300, 400), dtype=np.uint8)
    file = tmp_path / "noise.png"
    Image.fromarray(grey).save(file)
    light = check(file)["exposure"]
    for ours, theirs in [("mean", grey.mean()), ("black", (grey <= 12).mean()), ("white", (grey >= 243).mean())]:
        assert light[ours] == pytest.approx(float(theirs), rel=1e-4)


def test_the_hash_is_that_of_sha256sum_and_the_original_stays(tmp_path: Path):
    """Of the bytes as they came."""
    file = tmp_path / "photo.jpg"
    scene(640, 480).save(file)
    before = file.read_bytes()
    told = subprocess.run(["sha256sum", file], capture_output=True, text=True, check=True).stdout.split()[0]
    assert check(file)["sha256"] == told
    assert file.read_bytes() == before


def test_copies_tell_no_place_and_no_serial_number(tmp_path: Path):
    """exiftool finds them in the original and nothing of the kind in what is shared."""
    exif = piexif.dump(
        {
            "0th": {piexif.ImageIFD.Orientation: 6, piexif.ImageIFD.Make: b"Camera maker", piexif.ImageIFD.Artist: b"A. Person"},
            "Exif": {piexif.ExifIFD.BodySerialNumber: b"SN-0042", piexif.ExifIFD.LensSerialNumber: b"LN-7"},
            "GPS": {
                piexif.GPSIFD.GPSLatitudeRef: b"N",
                piexif.GPSIFD.GPSLatitude: ((51, 1), (30, 1), (0, 1)),
                piexif.GPSIFD.GPSLongitudeRef: b"W",
                piexif.GPSIFD.GPSLongitude: ((0, 1), (7, 1), (0, 1)),
            },
        }
    )
    file = tmp_path / "photo.jpg"
    scene(2000, 1500).save(file, exif=exif, comment=b"SN-0042")
    told = json.loads(subprocess.run(["exiftool", "-json", "-G", file], capture_output=True, check=True).stdout)[0]
    assert {"EXIF:SerialNumber", "EXIF:GPSLatitude", "File:Comment"} <= set(told)
    sha256 = check(file, "--copies", tmp_path)["sha256"]
    for side in (320, 960, 1600):
        copy = tmp_path / f"{sha256}.{side}.jpg"
        left = json.loads(subprocess.run(["exiftool", "-json", "-G", copy], capture_output=True, check=True).stdout)[0]
        groups = {name.partition(":")[0] for name in left}
        assert groups == {"SourceFile", "ExifTool", "File", "JFIF", "Composite"}, left
        assert not [name for name in left if "GPS" in name or "Serial" in name or "Comment" in name]
        assert (left["File:ImageWidth"], left["File:ImageHeight"]) == (round(side * 0.75), side)


def test_a_photo_of_12_mp_takes_less_than_150_mb(tmp_path: Path):
    """In every format, progressive and turned too."""
    picture = scene(4032, 3024)
    exif = Image.Exif()
    exif[0x0112] = 6
    kinds = {
        "turned.jpg": {"quality": 92, "exif": exif},
        "progressive.jpg": {"quality": 92, "progressive": True, "subsampling": 0},
        "photo.png": {"compress_level": 1},
        "photo.webp": {"quality": 85, "method": 0},
        "lossless.webp": {"lossless": True, "quality": 0, "method": 0},
    }
    peaks = {}
    for name, options in kinds.items():
        picture.save(tmp_path / name, **options)
        done = peak(binary(), "photo", "check", tmp_path / name, "--json")
        assert json.loads(done.said)["width"] in (3024, 4032)
        peaks[name] = done.mb
    # All of the picture in colour must have been there at once, or this measures something else.
    assert 36 < min(peaks.values()) and max(peaks.values()) < 150, peaks


def test_bombs_are_refused_in_little_memory(tmp_path: Path):
    """A PNG whose header claims 60,000 x 60,000; the other formats are in core/tests/it/evidence.rs."""
    file = tmp_path / "bomb.png"
    Image.new("1", (8, 8)).save(file)
    bomb = bytearray(file.read_bytes())
    bomb[16:24] = (60_000).to_bytes(4, "big") * 2
    file.write_bytes(bomb)
    done = peak(binary(), "photo", "check", file)
    assert done.code == 2
    assert "60000 x 60000 pixels; at most 60 million are read. Set the camera to a smaller size" in done.said
    assert done.mb < 50, done


@pytest.mark.parametrize(
    ("content", "says"),
    [
        (b"", "The photo is empty. Take it again."),
        (b"%PDF-1.7", "not a JPEG, PNG or WebP picture. Choose a photo."),
        (b"\0\0\0\x18ftypheic\0\0\0\0mif1heic", "format (HEIC) that cannot be kept here. Set the camera to JPEG"),
        (b"\xff\xd8\xff\xe0\0\x10JFIF", "ends too early"),
        (b"\xff" * ((40 << 20) + 1), "more than 40 MB"),
    ],
    ids=range(5),
)
def test_bad_files_get_one_sentence(content: bytes, says: str, tmp_path: Path):
    """With the file's name, what is wrong and what to do."""
    file = tmp_path / "photo.jpg"
    file.write_bytes(content)
    done = command("photo", "check", file, "--json")
    refused(done, 2, f"{file}: ", says)
    assert done.err.count("\n") == 1


@pytest.mark.parametrize(("path", "says"), [("/nowhere.jpg", "is not there"), ("/", "is a folder"), ("/dev/zero", "more than 40 MB")])
def test_what_cannot_be_read(path: str, says: str):
    """No file, a folder, and a file without an end."""
    refused(command("photo", "check", path), 2, path, says)


def test_text_for_a_person_and_a_pipe(tmp_path: Path):
    """The warnings as sentences; the exit code of a poor picture is 0."""
    file = tmp_path / "dark.png"
    Image.new("L", (200, 100), 3).save(file)
    done = command("photo", "check", file)
    assert done.code == 0
    assert "image/png, 200 x 100 pixels, as taken" in done.out
    assert "- This picture seems blurred" in done.out and "- This picture is very dark" in done.out
    piped = command("photo", "check", "-", "--json", piped=file)
    assert json.loads(piped.out) == check(file)
    refused(command("photo", "check", file, "--copies", tmp_path / "none"), 2, "could not be written", "Give a folder")
