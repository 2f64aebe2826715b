"""What people read before they run anything: links lead somewhere, pictures are light."""

import re
import subprocess
import tomllib
from pathlib import Path

import pytest
from PIL import Image

from support.desk import ROOT
from support.pictures import COLOURS, MOST_BYTES, SCREENS, stand_ins, weight

PAGES = [ROOT / p for p in subprocess.check_output(["git", "ls-files", "*.md"], cwd=ROOT, text=True, timeout=30).split()]
# [text](target) and ![text](target), not in code.
LINK = re.compile(r"\]\(([^)\s]+)\)")
CODE = re.compile(r"```.*?```|`[^`]*`", re.DOTALL)


def anchors(page: Path) -> set[str]:
    """What each heading can be linked to by: small letters, no marks, hyphens for blanks."""
    prose = re.sub(r"```.*?```", "", page.read_text(), flags=re.DOTALL)
    heads = re.findall(r"^#+ (.+)$", prose, re.MULTILINE)
    return {re.sub(r"[^\w\- ]", "", head.lower()).strip().replace(" ", "-") for head in heads}


@pytest.mark.parametrize("page", PAGES, ids=lambda p: str(p.relative_to(ROOT)))
def test_every_link_and_picture_is_there(page: Path):
    links = LINK.findall(CODE.sub("", page.read_text()))
    for target in (t for t in links if not re.match(r"https?:", t)):
        path, _, part = target.partition("#")
        there = (page.parent / path).resolve() if path else page
        assert there.exists(), f"{target} leads nowhere"
        assert not part or part in anchors(there), f"there is no heading for {target}"


def test_links_are_looked_for():
    """The check above has something to check."""
    found = {t for page in PAGES for t in LINK.findall(CODE.sub("", page.read_text()))}
    assert "docs/screens/jobs.png" in found and any("#" in t for t in found)


def test_pictures_are_light():
    """All in few colours and one pixel a point, and together not more than everybody who clones has to carry."""
    pictures = list(SCREENS.rglob("*.png"))
    assert len(pictures) > 100
    for path in pictures:
        with Image.open(path) as picture:
            assert picture.mode == "P" and len(picture.palette.colors) <= COLOURS, f"{path} was not kept by support/pictures.py"
            assert max(picture.size) <= 844, f"{path} is {picture.size}"
    assert weight() <= MOST_BYTES


def test_which_picture_stands_for_a_name(tmp_path: Path):
    for name in ["day/jobs", "night/jobs", "large/test-every-pair"]:
        (tmp_path / name).parent.mkdir(exist_ok=True)
        (tmp_path / f"{name}.png").touch()
    found = stand_ins(tmp_path, ["jobs", "jobs-night", "test-every-pair", "test-every-pair-large", "jobs-side"])
    assert {k: str(v.relative_to(tmp_path)) for k, v in found.items()} == {
        "jobs": "day/jobs.png",
        "jobs-night": "night/jobs.png",
        "test-every-pair-large": "large/test-every-pair.png",
    }


def test_one_version_everywhere():
    """What the workspace says is what shells, lock files and the change log say."""
    version = tomllib.loads((ROOT / "Cargo.toml").read_text())["workspace"]["package"]["version"]
    for path, pattern in {
        "android/pom.xml": r"<artifactId>android</artifactId>\s*<version>(.*?)<",
        "android/build.gradle.kts": r'versionName = "(.*?)"',
        "ios/App/Stillbar.xcodeproj/project.pbxproj": r"MARKETING_VERSION = (.*?);",
        "Cargo.lock": r'name = "stillbar-\w+"\nversion = "(.*?)"',
        "fuzz/Cargo.lock": r'name = "stillbar-\w+"\nversion = "(.*?)"',
        "tests/bench/peers/Cargo.lock": r'name = "stillbar-\w+"\nversion = "(.*?)"',
    }.items():
        assert set(re.findall(pattern, (ROOT / path).read_text())) == {version}, path
    assert re.search(r"^## \[(\d.*?)\]", (ROOT / "CHANGELOG.md").read_text(), re.MULTILINE)[1] == version
