"""What is built besides our own code: where it comes from, under which licence, and no crate twice without a reason. deny.toml says what
may be; it is written for cargo-deny, which takes longer to build than all our tests to run, so its plain rules are checked here.

Licence expressions are read by `packaging` (SPDX specification 3.0, annex B); the list of crates is cargo's own.
"""

import json
import re
import subprocess
import tomllib
from collections import defaultdict

import pytest
from packaging.licenses import canonicalize_license_expression

from support.desk import ROOT

DENY = tomllib.loads((ROOT / "deny.toml").read_text())


@pytest.fixture(scope="module")
def crates() -> list[dict]:
    """Every package that is built for any of the systems, with all features, but not our own."""
    found = {}
    for target in DENY["graph"]["targets"]:
        words = ["cargo", "metadata", "--locked", "--format-version", "1", "--all-features", "--filter-platform", target]
        told = json.loads(subprocess.run(words, cwd=ROOT, check=True, capture_output=True, text=True).stdout)
        used = {node["id"] for node in told["resolve"]["nodes"]} - set(told["workspace_members"])
        found |= {package["id"]: package for package in told["packages"] if package["id"] in used}
    assert len(found) > 200
    return list(found.values())


def allowed(expression: str, may: set[str]) -> bool:
    """Whether somebody who may have only licences of `may` may have what is under `expression`."""
    # Crates of before 2021 part their licences with a slash (the Cargo book, the manifest's `license`).
    spdx = canonicalize_license_expression(re.sub(r"\s*/\s*", " OR ", expression))
    words = {"AND": "and", "OR": "or", "(": "(", ")": ")"}
    tokens = re.findall(r"\(|\)|[^\s()]+(?: WITH \S+)?", spdx)
    return eval(" ".join(words.get(token, str(token in may)) for token in tokens))  # noqa: S307: only these words are left


@pytest.mark.parametrize(
    ("expression", "may"),
    [("MIT", True), ("MIT/GPL-3.0", True), ("GPL-3.0-only", False), ("MIT AND GPL-3.0-only", False), ("(MIT OR GPL-3.0-only) AND Zlib", True),
     ("Apache-2.0 WITH LLVM-exception", False), ("GPL-2.0-only WITH Classpath-exception-2.0 OR MIT", True)],
)  # fmt: skip
def test_expressions_are_understood(expression: str, may: bool):
    """A check of the check."""
    assert allowed(expression, {"MIT", "Apache-2.0", "Zlib"}) == may


def test_licences(crates: list[dict]):
    """Every crate's licence lets whoever has the program go on with it; exceptions are named and needed."""
    may = set(DENY["licenses"]["allow"])
    besides = {exception["crate"]: set(exception["allow"]) for exception in DENY["licenses"]["exceptions"]}
    refused = {c["name"]: c["license"] for c in crates if not (c["license"] and allowed(c["license"], may))}
    wrong = {name: text for name, text in refused.items() if not (text and allowed(text, may | besides.get(name, set())))}
    assert not wrong, "say in deny.toml why this may be, or do without"
    assert not set(besides) - set(refused), "an exception that nothing needs"


def test_sources(crates: list[dict]):
    """All of it is from crates.io."""
    may = {f"registry+{registry}" for registry in DENY["sources"]["allow-registry"]}
    assert {c["source"] for c in crates} == may


def test_no_crate_twice_without_a_reason(crates: list[dict]):
    """Each second version is in the list with its reason, and the list has no other."""
    versions = defaultdict(set)
    for crate in crates:
        major, minor = crate["version"].split(".")[:2]
        versions[crate["name"]].add(f"{major}.{minor}" if major == "0" else major)
    twice = {name: found for name, found in versions.items() if len(found) > 1}
    skipped = [entry["crate"].split("@") for entry in DENY["bans"]["skip"]]
    for name, version in skipped:
        assert version in twice.get(name, set()), f"{name} {version} is not there twice any more: take it out of deny.toml"
        twice[name].remove(version)
    assert not {name: found for name, found in twice.items() if len(found) > 1}
    assert all(entry["reason"] for entry in DENY["bans"]["skip"])


def test_unsafe_is_forbidden():
    """In our own Rust, the bindings included; `forbid` cannot be lifted further down (the rustc book, lint levels)."""
    whole = tomllib.loads((ROOT / "Cargo.toml").read_text())["workspace"]
    assert whole["lints"]["rust"]["unsafe_code"] == "forbid"
    for member in whole["members"]:
        assert tomllib.loads((ROOT / member / "Cargo.toml").read_text())["lints"]["workspace"] is True, member
