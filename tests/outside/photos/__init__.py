"""Photos of tags as a phone takes them in a plant room, made from a seed: the same seed gives the same picture."""

from dataclasses import dataclass

import cv2
import numpy as np
import segno

# What stands behind the mark, and the values of ISO 7064 MOD 37-2.
ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"
VALUES = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*"
TWELVE_MP = (4032, 3024)
# One foreign code in that many pictures.
FOREIGN_EVERY = 10


@dataclass(frozen=True)
class Photo:
    """One picture and the one text in it."""

    jpeg: bytes
    text: str
    ours: bool
    module: float


def tag_text(rng: np.random.Generator) -> str:
    """STB, twelve characters at random, and the check of ISO 7064 MOD 37-2, worked out here and not by the core.

    Of 37 check characters 32 are for tags: where there is another, the last character gives way to the next.
    """
    # From 36 and folded: what is drawn after the text, and so the picture of a seed, is that of the figures in docs/benchmarks.md.
    drawn = rng.integers(0, 36, 12)
    while True:
        text = "STB" + "".join(ALPHABET[k % len(ALPHABET)] for k in drawn)
        total = 0
        for character in text:
            total = (total + VALUES.index(character)) * 2 % 37
        if (check := VALUES[(38 - total) % 37]) in ALPHABET:
            return text + check
        drawn[-1] += 1


def photo(seed: int, size: tuple[int, int] = TWELVE_MP) -> Photo:
    """A label somewhere on a switchboard: tilted, blurred, dirty, with glare or in poor light, each by chance."""
    rng = np.random.default_rng(seed)
    ours = seed % FOREIGN_EVERY != 0
    text = tag_text(rng) if ours else f"https://example.org/plant/{rng.integers(1 << 40)}"
    code = segno.make(text, error="q" if ours else "m", micro=False, boost_error=False)
    cells = np.array([list(row) for row in code.matrix_iter(border=4)], dtype=np.uint8)
    label = _dirty(rng, np.where(cells > 0, 25, 225).astype(np.uint8).repeat(16, 0).repeat(16, 1))

    width, height = size
    # From a tag at arm's length to one across the room; the smallest have under two pixels a module.
    module = float(np.exp(rng.uniform(np.log(1.8), np.log(16))))
    corners = _tilted(rng, module * len(cells))
    reach = np.abs(corners).max(0) + 20
    middle = [rng.uniform(min(r, s / 2), max(s - r, s / 2)) for r, s in zip(reach, size, strict=True)]

    picture = _switchboard(rng, width, height)
    left, top = (int(max(0, m - r)) for m, r in zip(middle, reach, strict=True))
    right, bottom = (int(min(s, m + r)) for s, m, r in zip(size, middle, reach, strict=True))
    side = label.shape[0]
    source = np.float32([[0, 0], [side, 0], [side, side], [0, side]])
    turn = cv2.getPerspectiveTransform(source, np.float32(corners + middle - [left, top]))
    box = (right - left, bottom - top)
    part = picture[top:bottom, left:right].astype(np.float32)
    # Averaged over areas as a sensor does: drawn at four times the size and shrunk.
    large = np.diag([4.0, 4.0, 1.0]) @ turn
    big = (box[0] * 4, box[1] * 4) if max(box) < 1200 else box
    turn = large if big != box else turn
    drawn = cv2.resize(cv2.warpPerspective(label, turn, big), box, interpolation=cv2.INTER_AREA).astype(np.float32)
    covered = cv2.resize(cv2.warpPerspective(np.full_like(label, 255), turn, big), box, interpolation=cv2.INTER_AREA)
    covered = covered.astype(np.float32) / 255
    part = part * (1 - covered) + drawn * covered
    part = _blurred(rng, _lit(rng, part), module)
    picture[top:bottom, left:right] = np.clip(part, 0, 255).astype(np.uint8)

    light = rng.uniform(0.06, 0.3) if rng.random() < 0.25 else rng.uniform(0.6, 1.0)
    noise = rng.uniform(1, 7)
    tile = rng.normal(0, noise, (504, 504)).astype(np.float32)
    rough = np.tile(tile, (height // 504 + 1, width // 504 + 1))[:height, :width]
    picture = np.clip(picture * np.float32(light) + rough, 0, 255).astype(np.uint8)
    quality = int(rng.integers(35, 93))
    done, jpeg = cv2.imencode(".jpg", picture, [cv2.IMWRITE_JPEG_QUALITY, quality])
    assert done
    return Photo(jpeg.tobytes(), text, ours, module)


def _tilted(rng, side: float) -> np.ndarray:
    """The corners of a square of that side, turned in space and seen from five sides away."""
    square = np.array([[-1, -1, 0], [1, -1, 0], [1, 1, 0], [-1, 1, 0]]) * side / 2
    tilt, about, roll = np.radians(rng.uniform(0, 62)), rng.uniform(0, 2 * np.pi), rng.uniform(0, 2 * np.pi)
    axis = np.array([np.cos(about), np.sin(about), 0])
    space = cv2.Rodrigues(axis * tilt)[0] @ cv2.Rodrigues(np.array([0, 0, roll]))[0]
    seen = square @ space.T
    return seen[:, :2] * (5 * side / (5 * side + seen[:, 2:]))


def _switchboard(rng, width: int, height: int) -> np.ndarray:
    """Doors, devices, ducts and cables in greys."""
    picture = np.full((height, width), rng.integers(90, 200), np.uint8)
    for _ in range(60):
        x, y, w, h = rng.integers(0, width), rng.integers(0, height), rng.integers(20, 900), rng.integers(20, 500)
        cv2.rectangle(picture, (int(x), int(y)), (int(x + w), int(y + h)), int(rng.integers(20, 240)), -1)
    for _ in range(40):
        ends = rng.integers(0, [width, height, width, height])
        start, end = (int(ends[0]), int(ends[1])), (int(ends[2]), int(ends[3]))
        cv2.line(picture, start, end, int(rng.integers(10, 250)), int(rng.integers(1, 24)))
    return picture


def _dirty(rng, label: np.ndarray) -> np.ndarray:
    """Spots and scratches, on half of the labels."""
    if rng.random() < 0.5:
        side = label.shape[0]
        for _ in range(rng.integers(1, 7)):
            x, y = (int(k) for k in rng.integers(0, side, 2))
            cv2.circle(label, (x, y), int(rng.integers(4, 20)), int(rng.integers(20, 230)), -1)
        for _ in range(rng.integers(0, 4)):
            ends = [int(k) for k in rng.integers(0, side, 4)]
            cv2.line(label, (ends[0], ends[1]), (ends[2], ends[3]), int(rng.integers(60, 230)), int(rng.integers(2, 9)))
    return label


def _lit(rng, part: np.ndarray) -> np.ndarray:
    """Glare on a third, a shadow's edge on a third."""
    height, width = part.shape
    down, across = np.mgrid[0:height, 0:width].astype(np.float32)
    if rng.random() < 0.33:
        x, y = rng.uniform(0.2, 0.8) * width, rng.uniform(0.2, 0.8) * height
        reach = rng.uniform(0.1, 0.4) * min(width, height)
        part = part + rng.uniform(60, 180) * np.exp(-((across - x) ** 2 + (down - y) ** 2) / (2 * reach**2))
    if rng.random() < 0.33:
        angle = rng.uniform(0, 2 * np.pi)
        along = np.cos(angle) * (across - width / 2) + np.sin(angle) * (down - height / 2)
        part = part * (1 - rng.uniform(0.3, 0.75) / (1 + np.exp(-along / 4)))
    return part


def _blurred(rng, part: np.ndarray, module: float) -> np.ndarray:
    """Out of focus on a third, moved on another third; measured in modules, so that small tags are not all lost."""
    kind = rng.random()
    if kind < 0.33:
        radius = max(0.5, rng.uniform(0.2, 1.0) * module)
        half = int(np.ceil(radius))
        down, across = np.mgrid[-half : half + 1, -half : half + 1]
        kernel = np.clip(radius + 0.5 - np.hypot(down, across), 0, 1)
    elif kind < 0.66:
        length, angle = rng.uniform(0.4, 1.6) * module, rng.uniform(0, np.pi)
        half = int(np.ceil(length / 2)) + 1
        kernel = np.zeros((2 * half + 1, 2 * half + 1), np.float32)
        for step in np.linspace(-length / 2, length / 2, 60):
            x, y = half + step * np.cos(angle), half + step * np.sin(angle)
            kernel[int(round(y)), int(round(x))] += 1
    else:
        return part
    return cv2.filter2D(part, -1, (kernel / kernel.sum()).astype(np.float32))
