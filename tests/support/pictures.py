"""How the pictures in docs/screens are kept: few colours, one pixel a point."""

import io
from pathlib import Path

from PIL import Image

from support.desk import ROOT

SCREENS = ROOT / "docs" / "screens"
# All of docs/screens together: everybody who clones the project carries it.
MOST_BYTES = 3_000_000
# The octree keeps the small patches of colour that mark conductors; what Pillow does by itself turns a blue neutral grey.
COLOURS = 64
# Series of the Android shell that show screens in another look, and so under a name of their own.
LOOKS = {"large", "night", "right-to-left", "side"}


def keep(picture: bytes, name: str, shrunk: int = 1) -> None:
    """Writes a picture into docs/screens under `name`, its sides divided by `shrunk`."""
    image = Image.open(io.BytesIO(picture)).convert("RGB")
    if shrunk > 1:
        image = image.reduce(shrunk)
    path = SCREENS / f"{name}.png"
    path.parent.mkdir(parents=True, exist_ok=True)
    few = image.quantize(COLOURS, method=Image.Quantize.FASTOCTREE, dither=Image.Dither.NONE)
    few.save(path, optimize=True)
    print(path)


def weight() -> int:
    """Bytes of all pictures."""
    return sum(f.stat().st_size for f in SCREENS.rglob("*") if f.is_file())


def stand_ins(folder: Path, wanted: list[str]) -> dict[str, Path]:
    """Which picture of `folder`, SERIES/NAME.png, goes under each wanted name: NAME of a series that looks plain, else NAME-SERIES."""
    series = sorted(f for f in folder.iterdir() if f.is_dir())
    found = {}
    for name in wanted:
        plain = [s / f"{name}.png" for s in series if s.name not in LOOKS]
        marked = [s / f"{name.removesuffix(f'-{s.name}')}.png" for s in series if name.endswith(f"-{s.name}")]
        there = [f for f in plain + marked if f.is_file()]
        if there:
            found[name] = there[0]
    return found
