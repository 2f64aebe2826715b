"""Scanning with the live camera: Chromium's fake camera plays a tag that moves, leans and is dim."""

from pathlib import Path

import cv2
import numpy as np
import pytest
import segno
from playwright.sync_api import Playwright
from stdnum.iso7064 import mod_37_2

from support.chromium import launch
from support.desk import Desk
from support.journey import play
from support.phone import Phone

TAG = "STB555555555555" + mod_37_2.calc_check_digit("STB555555555555")
WIDE, HIGH, FRAMES = 1280, 720, 20


def symbol(text: str) -> np.ndarray:
    """The symbol with its quiet zone, a white card about it, 16 pixels a module; made by segno, not by us."""
    rows = segno.make(text, error="q", micro=False, boost_error=False).matrix_iter(scale=16, border=4)
    return np.array([[0 if dark else 255 for dark in row] for row in rows], np.uint8)


def video(path: Path, text: str) -> Path:
    """Frames of a code that drifts and turns over a wall of noise, leaning by up to 30 degrees, in a dim room."""
    rng = np.random.default_rng(5)
    code = symbol(text)
    size = code.shape[0]
    corners = np.float32([[0, 0], [size, 0], [size, size], [0, size]])
    frames = []
    for k in range(FRAMES):
        turn = 0.3 * np.sin(k / 3)
        side, cx, cy = 230 + 4 * k, 500 + 12 * k, 330 + 20 * np.sin(k / 2)
        around = np.array([[-0.5, -0.5], [0.5, -0.5], [0.5, 0.5], [-0.5, 0.5]]) @ [
            [np.cos(turn), np.sin(turn)],
            [-np.sin(turn), np.cos(turn)],
        ]
        # Leaning: the right edge is farther away.
        around[:, 1] *= 1 - 0.35 * (around[:, 0] + 0.5)
        around[:, 0] *= 0.85
        spot = np.float32(around * side + [cx, cy])
        wall = rng.normal(110, 12, (HIGH, WIDE))
        shape = cv2.getPerspectiveTransform(corners, spot)
        drawn = cv2.warpPerspective(code, shape, (WIDE, HIGH), flags=cv2.INTER_AREA)
        inside = cv2.warpPerspective(np.full_like(code, 255), shape, (WIDE, HIGH)) > 127
        picture = np.where(inside, drawn, wall)
        # Dim, blurred by the hand, and noisy.
        picture = cv2.GaussianBlur(picture * 0.25 + 12, (0, 0), 1.2) + rng.normal(0, 3, (HIGH, WIDE))
        frames.append(np.clip(picture, 0, 255).astype(np.uint8))
    grey = np.full((HIGH // 2, WIDE // 2), 128, np.uint8).tobytes()
    with path.open("wb") as out:
        out.write(f"YUV4MPEG2 W{WIDE} H{HIGH} F15:1 Ip A1:1 C420jpeg\n".encode())
        for frame in frames:
            out.write(b"FRAME\n" + frame.tobytes() + grey + grey)
    return path


@pytest.fixture
def camera(playwright: Playwright, tmp_path: Path, request: pytest.FixtureRequest):
    """A phone whose camera plays a film."""
    made = []

    def hold(text: str) -> Phone:
        film = video(tmp_path / "film.y4m", text)
        browser = launch(playwright, "--use-fake-ui-for-media-stream", "--use-fake-device-for-media-stream",
                         f"--use-file-for-fake-video-capture={film}")
        phone = Phone(browser, request.node.name)
        made.extend([phone, browser])
        return phone

    yield hold
    for thing in made:
        thing.close()


def test_scan_to_answer(desk: Desk, camera, picture: Path):
    """A blank tag is scanned at its point and bound; from the first screen one tap on "Scan a tag" tells whose lock it is."""
    phone = camera(TAG)
    phone.open(desk.url)
    play(phone, "people", "plan", "add-instruments", "circuits", "isolate", photo=picture)
    for button in ("The job", "Isolate Q4 feeder switch", "Tag of Q4 feeder switch"):
        phone.tap(button)
    phone.tap("Scan the tag here")
    phone.page.get_by_role("button", name="It hangs at Q4 feeder switch").wait_for()
    phone.tap("It hangs at Q4 feeder switch")
    assert "This is Q4 feeder switch, by its tag" in phone.text()
    phone.tap("The job")
    phone.tap("All jobs")
    phone.tap("Scan a tag")
    phone.page.get_by_role("heading", name="Lock of Mara Lind on Q4 feeder switch").wait_for()
    shown = phone.text()
    for said in ("Key holder", "Since", "Replace the outgoing breaker of washer 4", "01632 960 101", "As known to this phone at"):
        assert said in shown, said
    assert phone.page.locator("dialog").count() == 0, "the camera is off when the tag is found"


def test_a_foreign_code_opens_nothing(desk: Desk, camera, picture: Path):
    """Said on the camera's panel, which goes on looking; the way out is the button."""
    phone = camera("HTTPS://EXAMPLE.ORG/PAY")
    phone.open(desk.url)
    play(phone, "people", photo=picture)
    phone.tap("Scan a tag")
    panel = phone.page.get_by_role("dialog")
    panel.get_by_text("not a Stillbar tag. Nothing was opened").wait_for()
    assert phone.page.url == f"http://127.0.0.1:{desk.port}/"
    panel.get_by_role("button", name="Stop scanning").tap()
    panel.wait_for(state="detached")
    phone.page.get_by_text("Type what is printed beside the tag").wait_for()
