"""Holds the catalogue of messages in other languages against the English one: `python tests/support/catalogues.py`.

Each language is a folder beside `en`. A file of it has the ids of the English file in the same order, each message with the same values, the
same cases of a selector that is no number, and the same mark `# life-critical`; it parses as Fluent 1.0 with Mozilla's own parser
(`fluent.syntax`), and is called a draft at its head. No message is left in English unless nothing in it is a word, or `SAME` says why.
What a message means is not seen here: that takes a person of the trade.
"""

import re
import sys
from pathlib import Path

from fluent.syntax import ast, parse
from fluent.syntax.visitor import Visitor

TEXTS = Path(__file__).resolve().parents[2] / "core/text/src"
HEAD = "# A draft that no licensed electrician has checked.\n"
MARK = "life-critical"
PLURALS = {"zero", "one", "two", "few", "many", "other"}

# Units, currents, conductors and words of formats are the same everywhere.
STAYS = re.compile(r"\b(min|s|h|V|A|AC|DC|L[123]|L[+-]|N|PE|PEN|PIN|JSON|null|SHA-256|IEC [\d-]+)(?!\w)")

# Messages that are the same as in English though they have words: in any language, and in one.
SAME = {
    "rules-uk-standards": "names of standards stay",
    "rules-ie-standards": "names of standards stay",
    "rules-us-standards": "names of standards stay",
    "rules-ca-standards": "names of standards stay",
    "rules-au-standards": "names of standards stay",
    "rules-de-law": "names of laws stay",
}
SAME_IN = {
    "de": {
        "source-generator": "the same word",
        "source-pv": "the same abbreviation",
        "sort-pv": "the same abbreviation",
        "people-name": "the same word",
        "person": "the same word",
    },
    "es": {
        "asked-instrument-fit-does-not-fit": "No is the same word",
        "rules-au-name": "the country's name is the same",
        "supply-part-link-cable": "the same word",
    },
}


class Told(Visitor):
    """What of a message has to be the same in every language, and its words."""

    def __init__(self) -> None:
        self.values: set[str] = set()
        self.cases: set[tuple[str, str]] = set()
        self.words = ""

    def visit_VariableReference(self, node: ast.VariableReference) -> None:
        self.values.add(node.id.name)

    def visit_TextElement(self, node: ast.TextElement) -> None:
        self.words += node.value

    def visit_SelectExpression(self, node: ast.SelectExpression) -> None:
        keys = {v.key.name if isinstance(v.key, ast.Identifier) else v.key.value for v in node.variants}
        if not all(key in PLURALS or key.isdigit() for key in keys):
            value = node.selector.id.name if isinstance(node.selector, ast.VariableReference) else ""
            self.cases |= {(value, key) for key in keys}
        self.generic_visit(node)


def told(message: ast.Message) -> Told:
    """Reads one message."""
    seen = Told()
    seen.visit(message)
    return seen


def marked(message: ast.Message) -> bool:
    """Whether a life rests on it."""
    return message.comment is not None and MARK in message.comment.content.split("\n")


def wrong_with(language: Path, english: Path) -> list[str]:
    """What is wrong with one file."""
    ours = language / english.name
    if not ours.exists():
        return [f"{ours} is missing"]
    text = ours.read_text()
    wrong = [] if text.startswith(HEAD) else [f"{ours}: does not begin with {HEAD.strip()!r}"]
    body, model = parse(text).body, parse(english.read_text()).body
    wrong += [f"{ours}: does not parse: {entry.content[:80]!r}" for entry in body if isinstance(entry, ast.Junk)]
    here = [entry for entry in body if isinstance(entry, ast.Message)]
    there = [entry for entry in model if isinstance(entry, ast.Message)]
    if [m.id.name for m in here] != [m.id.name for m in there]:
        apart = sorted({m.id.name for m in here} ^ {m.id.name for m in there})
        return [*wrong, f"{ours}: other ids or another order than in English: {apart}"]
    for mine, theirs in zip(here, there, strict=True):
        name, said, model_said = mine.id.name, told(mine), told(theirs)
        if said.values != model_said.values:
            wrong.append(f"{ours}: {name} has the values {sorted(said.values)}, not {sorted(model_said.values)}")
        if said.cases != model_said.cases:
            wrong.append(f"{ours}: {name} has the cases {sorted(said.cases)}, not {sorted(model_said.cases)}")
        if marked(mine) != marked(theirs):
            wrong.append(f"{ours}: {name} is not marked as in English")
        if mine.value.equals(theirs.value):
            listed = name in SAME or name in SAME_IN.get(language.name, {})
            if re.search(r"[^\W\d_]", STAYS.sub("", said.words)) and not listed:
                wrong.append(f"{ours}: {name} is left in English")
    return wrong


def main() -> int:
    """Prints what is wrong; 1 if anything is."""
    english = sorted((TEXTS / "en").glob("*.ftl"))
    languages = sorted(folder for folder in TEXTS.iterdir() if folder.name != "en" and list(folder.glob("*.ftl")))
    wrong = [line for language in languages for file in english for line in wrong_with(language, file)]
    known = {file.name for file in english}
    wrong += [f"{file} has no counterpart" for at in languages for file in at.glob("*.ftl") if file.name not in known]
    for line in wrong:
        print(line)
    print(f"{len(languages)} languages, {len(english)} files each: {len(wrong)} wrong")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
