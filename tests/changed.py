#!/usr/bin/env python3
"""What a change can break, for `tests/run quick`: three lines on standard output, from the names of the files that changed.

    touched CRATE...   crates with a changed file: their tests are run
    above CRATE...     these and what is built on them: clippy looks at all of it
    checks FILE...     checks in Python that hold the same matter against something outside

Changed is what is not on main: commits since it was left, what is not committed, and files that git does not know yet. A change to what all is
built from (Cargo.toml, Cargo.lock, .cargo) touches every crate. The table of checks is a choice, not a proof: tests/run runs all of them.
"""

import re
import subprocess
import sys
import tomllib
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]

# What is in the way of a file, and the checks of its matter. The slow ones are left to the whole run.
CHECKS = {
    r"^(Cargo\.|deny\.toml|([a-z]+/)+Cargo\.toml)": ["outside/test_dependencies.py"],
    r"(\.rs|Cargo\.toml)$": ["outside/test_arrows.py"],
    r"^core/values/": ["outside/test_plan.py", "outside/test_supply.py", "outside/test_tags_made.py", "outside/test_journal.py"],
    r"^core/protocol/": ["outside/test_office_api.py"],
    r"/prove/": ["outside/test_plan.py", "outside/test_judge.py"],
    r"/supply/": ["outside/test_supply.py"],
    r"/(tag|sheet)/": ["outside/test_tags_made.py"],
    r"/evidence/": ["outside/test_photos.py"],
    r"/record/": ["outside/test_record.py"],
    r"/journal/": ["outside/test_journal.py"],
    r"/store/": ["faults/test_database.py"],
    r"/screens/": ["browser/test_job.py"],
    r"^desk/": ["faults/test_start.py", "browser/test_first_screen.py"],
    r"^office/src/stamp/": ["outside/test_stamps.py"],
    r"^office/": ["outside/test_office_api.py"],
    r"\.md$|^docs/": ["outside/test_documents.py"],
}


def git(*words: str) -> list[str]:
    """The lines that git says."""
    return subprocess.run(["git", *words], cwd=ROOT, check=True, stdout=subprocess.PIPE, text=True).stdout.splitlines()


def changed(main: str) -> set[str]:
    """Files that are not as they are where this branch left `main`."""
    try:
        (left,) = git("merge-base", "HEAD", main)
    except subprocess.CalledProcessError:
        sys.exit(f"git knows no branch {main} that this one left; name one: QUICK_SINCE=BRANCH tests/run quick")
    return {*git("diff", "--name-only", left), *git("ls-files", "--others", "--exclude-standard")}


def crates() -> dict[str, tuple[str, set[str]]]:
    """Every crate of the workspace: its folder, and the folders of those of ours that it is built on."""
    found = {}
    for folder in tomllib.loads((ROOT / "Cargo.toml").read_text())["workspace"]["members"]:
        told = tomllib.loads((ROOT / folder / "Cargo.toml").read_text())
        tables = [told.get(kind, {}) for kind in ("dependencies", "dev-dependencies", "build-dependencies")]
        paths = {need["path"] for table in tables for need in table.values() if isinstance(need, dict) and "path" in need}
        below = {str((ROOT / folder / path).resolve().relative_to(ROOT)) for path in paths}
        found[told["package"]["name"]] = (folder, below - {folder})
    return found


def chosen(files: set[str]) -> dict[str, list[str]]:
    """The three lines."""
    known = crates()
    everything = any(re.match(r"Cargo\.|\.cargo/", file) for file in files)
    touched = {name for name, (folder, _) in known.items() if everything or any(file.startswith(f"{folder}/") for file in files)}
    above = set(touched)
    while more := {name for name, (_, below) in known.items() if below & {known[it][0] for it in above}} - above:
        above |= more
    checks = {f"tests/{check}" for way, some in CHECKS.items() for check in some if any(re.search(way, file) for file in files)}
    checks |= {file for file in files if re.match(r"tests/[a-z]+/test_\w+\.py$", file) and (ROOT / file).exists()}
    return {"touched": sorted(touched), "above": sorted(above), "checks": sorted(checks)}


if __name__ == "__main__":
    for word, names in chosen(changed(sys.argv[1] if len(sys.argv) > 1 else "main")).items():
        print(word, *names)
