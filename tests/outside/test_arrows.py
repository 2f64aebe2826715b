"""The crates of the project and the rooms inside each, as a graph whose arrows only point down.

Between crates the compiler allows no circle anyway; what is held here is which crate may stand on which, and that the pure ones name nothing
that touches a file, a thread, a socket, a clock or chance. Between the rooms of one crate (its top modules) the compiler allows everything:
there a circle is only where `CIRCLES` lists it, with a reason, and an entry that is not needed any more has to go. The graph is printed.
The pure crates say nothing either: what they find is a value, and the core's room for text makes the sentence.
"""

import re
import subprocess
import tomllib
from pathlib import Path

import pytest

from support.desk import ROOT

MANIFESTS = {folder: tomllib.loads((ROOT / folder / "Cargo.toml").read_text())
             for folder in tomllib.loads((ROOT / "Cargo.toml").read_text())["workspace"]["members"]}  # fmt: skip
FOLDERS = {told["package"]["name"]: ROOT / folder for folder, told in MANIFESTS.items()}

# From the bottom up: a crate stands only on crates of lines above its own.
LAYERS = [
    {"stillbar-values"},
    {"stillbar-journal", "stillbar-media"},
    {"stillbar-protocol", "stillbar-rules"},
    {"stillbar-store", "stillbar-sync", "stillbar-text"},
    {"stillbar-paper"},
    {"stillbar-core"},
    {"stillbar-office", "stillbar-bridge"},
    {"stillbar-desk"},
]

# Values in, values out: no file, thread, socket, clock or chance of their own. `tests/run wasm` builds them where there is none of it.
PURE = ["stillbar-values", "stillbar-journal", "stillbar-media", "stillbar-protocol", "stillbar-rules"]
WORLDLY = re.compile(r"\bstd::(fs|net|thread|process|env|os)\b|\b(SystemTime|Instant)::now\b|\b(getrandom|rand|rusqlite|ureq|tokio)::")
# These say sentences, and touch as little.
BARE = [*PURE, "stillbar-text", "stillbar-paper"]

# What the pure crates say that is no sentence of ours, and why.
SPOKEN = {
    "core/rules/src/json.rs": "serde_json tells its errors apart by words only: these are two of its own",
}
# One token of Rust that matters here: a comment, a raw or plain literal, or a character, which may be a quotation mark.
TOKEN = re.compile(r"""//[^\n]*|/\*.*?\*/|\bb?r(#*)".*?"\1|b?"(?:\\.|[^"\\])*"|'(?:\\[^']+|[^'\\])'""", re.DOTALL)
# Who reads a literal behind one of these works on the code: a broken promise of ours, a lint's reason, or an error as developers see it.
OURS = re.compile(r"(?:\b(?:expect|unreachable!|assert(?:_eq|_ne)?!|debug_assert(?:_eq|_ne)?!|panic!)\(|#\[error\(|\breason = )")
WORD = re.compile(r"[^\w\s]*[^\W\d_]+(?:[-'’][^\W\d_]+)*[^\w\s]*")

# Rooms that stand in a circle, and why they still do. The list only gets shorter.
CIRCLES = {
    "stillbar-core": {
        frozenset({"app", "screens"}): "the session draws the screen that it is on, and an act on a screen is done in the session",
    },
    "stillbar-rules": {
        frozenset({"job", "site", "supply"}): "a job, what the jobs of its site share, and what the network says to it are told of each other"
    },
    "stillbar-desk": {frozenset({"render", "server"}): "the address of a picture names the size that the server gives it in"},
    "stillbar-office": {frozenset({"office", "photos"}): "an upload is a call of the office, which holds the store of photos"},
}


def named(code: str) -> set[str]:
    """What stands right behind `crate::`, also in a list of braces."""
    words = set(re.findall(r"\bcrate::([a-z]\w*)", code))
    for group in re.findall(r"\bcrate::\{(.*?)\};", code, re.DOTALL):
        while (flat := re.sub(r"\{[^{}]*\}", "", group)) != group:
            group = flat
        words |= {part.strip().split("::")[0] for part in group.split(",")}
    return words


def rooms(folder: Path) -> dict[str, set[str]]:
    """The top modules of a crate, and those that each names by `crate::`, in code and not in comments."""
    graph: dict[str, set[str]] = {}
    for file in sorted((folder / "src").rglob("*.rs")):
        way = file.relative_to(folder / "src").with_suffix("").parts
        code = re.sub(r"//.*", "", file.read_text())
        graph.setdefault(way[0], set()).update(named(code))
    graph.pop("main", None)
    return {room: {other for other in others if other in graph} - {room, "lib"} for room, others in graph.items() if room != "lib"}


def below(graph: dict[str, set[str]], start: str) -> set[str]:
    """Everything that can be reached from `start` by at least one arrow."""
    found, open_ = set(), [start]
    while open_:
        fresh = graph.get(open_.pop(), set()) - found
        found |= fresh
        open_ += fresh
    return found


def circles(graph: dict[str, set[str]]) -> set[frozenset[str]]:
    """The largest sets of nodes of which each reaches every other."""
    reach = {node: below(graph, node) for node in graph}
    return {frozenset({node} | {other for other in reach[node] if node in reach[other]}) for node in graph if node in reach[node]}


def test_a_circle_is_found():
    """A check of the check."""
    assert circles({"a": {"b"}, "b": {"c"}, "c": set()}) == set()
    assert circles({"a": {"b"}, "b": {"c"}, "c": {"b"}, "d": {"a"}}) == {frozenset("bc")}
    assert named("use crate::a::{B, C};\nuse crate::{d, e::{f, g}, h::i};") == {"a", "d", "e", "h"}


def needs(told: dict) -> set[str]:
    """The crates of ours that a manifest names; what only its tests need may point anywhere but at itself."""
    tables = [told, *told.get("target", {}).values()]
    return {name for table in tables for kind in ("dependencies", "build-dependencies") for name in table.get(kind, {}) if name in FOLDERS}


def test_crates_stand_on_what_is_below():
    height = {name: at for at, layer in enumerate(LAYERS) for name in layer}
    assert set(height) == set(FOLDERS), "a new crate gets its line in LAYERS"
    for told in sorted(MANIFESTS.values(), key=lambda told: height[told["package"]["name"]]):
        name = told["package"]["name"]
        print(f"{name} -> {', '.join(sorted(needs(told))) or 'nothing'}")
        wrong = {other for other in needs(told) if height[other] >= height[name]}
        assert not wrong, f"{name} stands on {wrong}, which is not below it"


@pytest.mark.parametrize("name", sorted(FOLDERS))
def test_rooms_stand_in_no_circle(name: str):
    graph = rooms(FOLDERS[name])
    for room, others in sorted(graph.items()):
        print(f"{name}: {room} -> {', '.join(sorted(others)) or 'nothing'}")
    assert circles(graph) == set(CIRCLES.get(name, {})), "break the new circle; one that is gone is taken out of the list"


@pytest.mark.parametrize("name", BARE)
def test_what_touches_nothing_outside_does_not(name: str):
    for file in sorted((FOLDERS[name] / "src").rglob("*.rs")):
        found = WORLDLY.search(re.sub(r"//.*", "", file.read_text()))
        assert not found, f"{file.relative_to(ROOT)}: {found and found[0]}"


def without_tests(code: str) -> str:
    """The code without what stands behind `#[cfg(test)]`: a module of tests ends its file here."""
    return re.split(r"#\[cfg\(test\)\]\s*mod\b", code)[0]


def ours(code: str) -> list[tuple[int, int]]:
    """From where to where an argument or attribute is read by developers only."""
    spans = []
    for found in OURS.finditer(code):
        end = found.end()
        if code[end - 1] != "(":
            spans.append((end, end + 1))
            continue
        at, depth = end, 1
        while depth and at < len(code):
            token = TOKEN.match(code, at)
            depth += 0 if token else {"(": 1, ")": -1}.get(code[at], 0)
            at = token.end() if token else at + 1
        spans.append((end, at))
    return spans


def said(code: str) -> list[tuple[int, str]]:
    """Every literal that says something to a person, with its line: two words with a blank between them."""
    code = without_tests(code)
    spans, found = ours(code), []
    for token in TOKEN.finditer(code):
        text = token[0]
        literal = text[text.index('"') + 1 :] if text.startswith(('"', "b", "r")) else ""
        # What is put in is no word, and an escape is one character.
        plain = re.sub(r"\\(?:u\{\w+\}|\s+|.)", " ", re.sub(r"\{[^{}\s]*\}", "0", literal))
        words = sum(bool(WORD.fullmatch(word)) for word in plain.split())
        if words > 1 and not any(start <= token.start() < end for start, end in spans):
            found.append((code[: token.start()].count("\n") + 1, text))
    return found


def test_a_sentence_is_found():
    """A check of the check."""
    for code in (
        'let a = "Treat as live.";',
        'f("{name} is open")',
        'r#"not "dead" yet"#',
        '("first \\\n   then")',
        "let c = '\"'; g(\"so it is\")",
        'at.error("it is so")',
    ):
        assert [line for line, _ in said(code)] == [1], code
    for code in (
        '// "no word"\n/// "none here"',
        'expect("a case of ours")',
        'assert!(n > 1, "{} of {n}", f("so so"))',
        '#[error("told {0}: to developers")]',
        '#![allow(missing_docs, reason = "a comment tells")]',
        '"kebab-case-name"',
        'format!("{a} {b} V")',
        '"sha256 {},size {}"',
        '#[cfg(test)]\nmod tests { const A: &str = "two words"; }',
    ):
        assert said(code) == [], code


@pytest.mark.parametrize("name", PURE)
def test_the_pure_crates_say_nothing(name: str):
    found = []
    for file in sorted((FOLDERS[name] / "src").rglob("*.rs")):
        way = str(file.relative_to(ROOT))
        if not way.startswith(tuple(SPOKEN)):
            found += [f"{way}:{line}: {text}" for line, text in said(file.read_text())]
    assert not found, "find a value, and say it in core/text/src/:\n" + "\n".join(found)


def test_what_still_speaks_does():
    """Whoever takes the last sentence out of a place takes the place off the list."""
    files = {str(file.relative_to(ROOT)): file for name in PURE for file in (FOLDERS[name] / "src").rglob("*.rs")}
    for place in SPOKEN:
        assert any(said(file.read_text()) for way, file in files.items() if way.startswith(place)), f"{place} says nothing any more"


def test_a_name_of_a_type_means_one_thing():
    """Of the names of types, at most one in twenty stands for two: a reader should not have to ask which one is meant."""
    found: dict[str, set[str]] = {}
    for folder in ["core", "office", "desk", "bridge"]:
        for file in (ROOT / folder).rglob("src/**/*.rs"):
            for kind, name in re.findall(r"^\s*(?:pub(?:\([^)]*\))? )?(struct|enum|trait|type|union) (\w+)", file.read_text(), re.MULTILINE):
                # A trait gives these their names.
                if (kind, name) not in {("type", "Value"), ("type", "Err"), ("type", "Error"), ("type", "Item")}:
                    found.setdefault(name, set()).add(str(file.relative_to(ROOT)))
    twice = {name: sorted(files) for name, files in found.items() if len(files) > 1}
    assert len(found) > 500
    assert len(twice) * 20 < len(found), twice


def test_what_touches_nothing_is_what_is_built_for_the_browser():
    run = (ROOT / "tests/run").read_text()
    (line,) = re.findall(r"cargo check .*--target wasm32-unknown-unknown ((?:.*\\\n)*.*)", run)
    assert re.findall(r"-p (\S+)", line) == BARE
