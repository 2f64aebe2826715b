"""Time and peak memory of a 12 MP photo, ours beside pyvips and Pillow doing the same work. Prints rows for docs/benchmarks.md.

The work: SHA-256, decode, upright, copies of 1600 and 320 pixels (ours also one of 960) as JPEG without metadata, brightness at 1024 pixels, the
variance of its Laplacian, its mean. `tests/bench/run photos` installs pyvips with a libvips of its own.

The time is the median of eleven runs: of the whole process for ours, without the interpreter's start and imports for the
others. The memory is the peak of the whole process for all.
"""

import statistics
import sys
import tempfile
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from support.desk import binary
from support.peak import peak

RUNS = 11


def pillow(file: str) -> float:
    """The work with Pillow, and numpy for the Laplacian. Seconds."""
    import hashlib
    import io

    import numpy as np
    from PIL import Image, ImageOps

    began = time.monotonic()
    content = Path(file).read_bytes()
    hashlib.sha256(content).hexdigest()
    picture = ImageOps.exif_transpose(Image.open(io.BytesIO(content)))
    grey = picture.convert("L")
    for side in (1600, 320):
        picture.thumbnail((side, side), Image.Resampling.BILINEAR)
        picture.convert("RGB").save(io.BytesIO(), "JPEG", quality=82, exif=b"")
    grey.thumbnail((1024, 1024), Image.Resampling.BOX)
    g = np.asarray(grey, dtype=np.int32)
    edges = g[:-2, 1:-1] + g[2:, 1:-1] + g[1:-1, :-2] + g[1:-1, 2:] - 4 * g[1:-1, 1:-1]
    edges.var(), g.mean()
    return time.monotonic() - began


def vips(file: str) -> float:
    """The work with libvips. Seconds."""
    import hashlib

    import pyvips

    began = time.monotonic()
    content = Path(file).read_bytes()
    hashlib.sha256(content).hexdigest()
    # Shrinking while decoding would be faster still, and would lose the full brightness that tags are read from.
    picture = pyvips.Image.new_from_buffer(content, "").autorot().copy_memory()
    working = picture.thumbnail_image(1600, height=1600)
    working.jpegsave_buffer(Q=82, strip=True)
    working.thumbnail_image(320, height=320).jpegsave_buffer(Q=82, strip=True)
    full = picture.colourspace("b-w").copy_memory()
    grey = full.thumbnail_image(1024, height=1024)
    kernel = pyvips.Image.new_from_array([[0, 1, 0], [1, -4, 1], [0, 1, 0]])
    grey.cast("float").conv(kernel).deviate() ** 2, grey.avg()
    return time.monotonic() - began


def photo(folder: Path) -> Path:
    """A picture with edges and noise, held on its side, of about the size that phones write."""
    import numpy as np
    from PIL import Image, ImageDraw

    chance = np.random.default_rng(1)
    y, x = np.mgrid[:3024, :4032].astype(np.float32)
    slope = (120 + 60 * np.sin(x / 97) + 50 * np.sin(y / 131 + x / 300))[..., None]
    noisy = slope + chance.normal(0, 8, (3024, 4032, 3)).astype(np.float32)
    picture = Image.fromarray(np.clip(noisy, 0, 255).astype(np.uint8))
    draw = ImageDraw.Draw(picture)
    for _ in range(400):
        left, top, width, height = (int(chance.integers(10, n)) for n in (3900, 2900, 300, 200))
        draw.rectangle([left, top, left + width, top + height], fill=tuple(int(v) for v in chance.integers(0, 255, 3)))
    exif = Image.Exif()
    exif[0x0112] = 6
    file = folder / "photo.jpg"
    picture.save(file, quality=92, exif=exif)
    return file


def main() -> None:
    """Each tool in turn, so that a busy moment hits all of them."""
    with tempfile.TemporaryDirectory() as folder:
        file = photo(Path(folder))
        print(f"4032 x 3024 pixels, {file.stat().st_size / 1e6:.1f} MB")
        tools = {"stillbar photo check": [binary(), "photo", "check", file, "--json"]}
        tools |= {name: [sys.executable, __file__, name, file] for name in ("pyvips", "Pillow")}
        times, peaks = {n: [] for n in tools}, {n: [] for n in tools}
        for _ in range(RUNS):
            for name, words in tools.items():
                done = peak(*words)
                assert done.code == 0, done.said
                times[name].append(done.seconds if name.startswith("stillbar") else float(done.said.split()[-1]))
                peaks[name].append(done.mb)
    for name in tools:
        took = times[name]
        print(f"| {name} | median {statistics.median(took) * 1000:.0f} ms, slowest {max(took) * 1000:.0f} ms | {max(peaks[name]):.0f} MB |")


if __name__ == "__main__":
    if len(sys.argv) == 3:
        print({"pyvips": vips, "Pillow": pillow}[sys.argv[1]](sys.argv[2]))
    else:
        main()
