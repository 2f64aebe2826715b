//! Messages: the catalogue and the code go together, no rule says a sentence, and no wording decides anything.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use fluent_bundle::{FluentArgs, FluentBundle, FluentResource, FluentValue};
use stillbar_core::Field;
use stillbar_core::parts::{Block, Screen};
use stillbar_core::store::Store;
use stillbar_core::text::Distorted;

use crate::desk::*;

fn source(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("text/src").join(path)
}

/// The files of this folder and of those in it that end so.
fn files(folder: &Path, end: &str) -> Vec<PathBuf> {
    let mut all = Vec::new();
    for entry in fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()) {
        if entry.is_dir() {
            all.extend(files(&entry, end));
        } else if entry.to_string_lossy().ends_with(end) {
            all.push(entry);
        }
    }
    all
}

/// The compiler finds a message that is missing or takes other values. Here: each is there once, is used, and can be said with its values.
#[test]
fn every_message_is_used_and_can_be_said() {
    let code: String = files(&source(""), ".rs").iter().map(|file| fs::read_to_string(file).unwrap()).collect();
    let mut seen = BTreeSet::new();
    for file in files(&source("en"), ".ftl") {
        let name = file.file_name().unwrap().to_string_lossy().into_owned();
        assert!(code.contains(&format!("\"/{name}\"")), "{name} is not in the catalogue");
        let text = fs::read_to_string(&file).unwrap();
        let resource = FluentResource::try_new(text.clone()).unwrap_or_else(|(_, errors)| panic!("{name}: {errors:?}"));
        let mut bundle = FluentBundle::default();
        bundle.add_resource(resource).unwrap_or_else(|errors| panic!("{name}: {errors:?}"));
        let ids = text.lines().filter(|line| line.starts_with(|c: char| c.is_ascii_lowercase()));
        for id in ids.map(|line| line.split(' ').next().unwrap()) {
            assert!(seen.insert(id.to_owned()), "{id} is there twice");
            assert!(
                code.contains(&format!("say!(\"{id}\"")) || code.contains(&format!("\"{id}\",")),
                "nothing says {id}"
            );
            let at = text.find(&format!("{id} =")).unwrap_or_else(|| panic!("{id} has no value"));
            let ends = text[at..].lines().skip(1).take_while(|line| line.starts_with([' ', '}'])).map(|l| l.len() + 1);
            let whole = &text[at..at + text[at..].lines().next().unwrap().len() + ends.sum::<usize>()];
            let names = whole.split('$').skip(1).map(|rest| rest.split([' ', '}']).next().unwrap());
            let args: FluentArgs = names.map(|name| (name.to_owned(), FluentValue::from("x"))).collect();
            let mut errors = Vec::new();
            let pattern = bundle.get_message(id).and_then(|m| m.value()).unwrap_or_else(|| panic!("{id} has no value"));
            bundle.format_pattern(pattern, Some(&args), &mut errors);
            assert!(errors.is_empty(), "{id}: {errors:?}");
        }
    }
    assert!(seen.len() > 200, "{}", seen.len());
}

/// The rules say nothing: no literal in them has two words. What is allowed has its reason beside it.
#[test]
fn no_rule_says_a_sentence() {
    const ALLOWED: [&str; 8] = [
        // Ids of parts to which a file of pandapower's gives none but a number: they are written as they are.
        "bus {number}",
        "{name} {number}",
        "{name} {number} at {bus}",
        "trafo3w {number}",
        "trafo3w {number} {}",
        "{id} at {at}",
        "{id} {column}",
        // Line breaks in JSON.
        "[\\n  {}\\n]",
    ];
    let rooms = ["job", "point", "prove", "site", "supply"].map(|room| source(&format!("../../rules/src/{room}")));
    let mut rules: Vec<PathBuf> = rooms.iter().flat_map(|room| files(room, ".rs")).collect();
    assert!(rules.len() > 80, "{}", rules.len());
    rules.push(source("../../rules/src/world.rs"));
    let found = sentences(&rules, &ALLOWED);
    assert!(found.is_empty(), "say it in the catalogue:\n{}", found.join("\n"));
    assert!(is_said("{at} is open") && is_said("Not open.") && !is_said("prove-before") && !is_said("isolate-{point}"));
}

/// The room of the sentences has them all in the catalogue: its code has no literal of two words either.
#[test]
fn every_sentence_is_in_the_catalogue() {
    const ALLOWED: [&str; 7] = [
        // Said to whoever builds this: a message is missing, or why a lint is off.
        "the catalogue has no message ",
        " that takes just these values",
        "they are those of the test, some of them in words",
        "the message of each is what there is to say of it",
        // How times are written, in figures.
        "%H:%M",
        "%Y-%m-%d %H:%M",
        "%Y-%m-%d %H:%M:%S",
    ];
    let code = files(&source(""), ".rs");
    assert!(code.len() > 20, "{}", code.len());
    let found = sentences(&code, &ALLOWED);
    assert!(found.is_empty(), "say it in the catalogue:\n{}", found.join("\n"));
    let whole: String = code.iter().map(|file| fs::read_to_string(file).unwrap()).collect();
    for allowed in ALLOWED {
        assert!(whole.contains(allowed), "nothing has it any more: {allowed}");
    }
    // It bites.
    let sample = "match why { // not \"one of these\"\n\
                  Why::Open { at } => format!(\"{at} is open\"),\n\
                  Why::Live => live(\"Treat as live\".into()),\n\
                  Why::Locked { at } => say!(\"point-locked\", at = quoted(at, '\"')),";
    assert_eq!(said_in(sample, &[]), [(2, "{at} is open".to_owned()), (3, "Treat as live".to_owned())]);
    assert_eq!(said_in(sample, &["Treat as live"]), [(2, "{at} is open".to_owned())]);
}

/// The screens have theirs in the catalogue too.
#[test]
fn every_screen_has_its_sentences_in_the_catalogue() {
    const ALLOWED: &[&str] = &[
        // Actions, which a shell sends back as they stand.
        "{ANSWER} {action}",
        "{SAY} {action}",
        "{NOTHING} {action}",
        "{AGAIN} {action}\\t{said}",
        "fit {who}",
        "for {person}",
        "sign-off {id}",
        "move {tag}",
        "bind {tag}",
        "speak {choice}",
        "rotation {value}",
        "cover usual",
        "find all",
        "{action} {ONLY}",
        "told {way}",
        "level {first}:{then}",
        "cause found",
        "cause none",
        "reference fails",
        "reference holds",
        "direct {of}",
        "readings all",
        "readings {group}",
        "cover last",
        "before fails",
        "before works",
        "after fails",
        "after works",
        "share-record withheld",
        "plan {i}",
        "{RING} {i}",
        "go {up}",
        "go {route}",
        "hold {id}",
        "again {who}\\t{how}",
        "again {what}\\t{at}",
        "found {entry}",
        "drawn {id}",
        // Written in the journal since its first version: in the place of a label, as a witness, and as where something is.
        "no lock",
        "the office",
        "between {} and {}",
        "through {link}",
        "The supply network of the site",
        "Known from {}",
        "not said",
        "the supply network",
        // The name under which a phone asks to join an office, which people there may change.
        "A phone",
        "Phone of {}",
        // How a screen is laid out in lines.
        "{label}: {value}",
        "[deviation] {d}",
        "{tone:?}: {text}",
        "drawing: {label}",
        "table: {caption}",
        "sign: {label}",
        // Which clocks contradict, as it is noted on the device.
        "office {ahead}",
        "peer {wall} {ahead}",
        "peer {wall} {ahead} {set}",
        // Why a lint is off.
        "a variant's comment explains its fields together",
    ];
    let folder = source("../../src");
    let mut code: Vec<PathBuf> = ["app", "screens"].iter().flat_map(|room| files(&folder.join(room), ".rs")).collect();
    code.push(folder.join("bindings.rs"));
    // It writes drawings, in a language of its own.
    code.retain(|file| *file != folder.join("screens/svg.rs"));
    assert!(code.len() > 60, "{}", code.len());
    let found = sentences(&code, ALLOWED);
    assert!(found.is_empty(), "say it in the catalogue:\n{}", found.join("\n"));
    let whole: String = code.iter().map(|file| fs::read_to_string(file).unwrap()).collect();
    for allowed in ALLOWED {
        assert!(whole.contains(allowed), "nothing has it any more: {allowed}");
    }
}

/// What screens can say is said by one: the function of each message is called where its room's messages are used.
#[test]
fn every_message_of_a_screen_is_said_by_one() {
    let rooms = files(&source("screens"), ".rs");
    let code: Vec<String> = ["core/src", "desk/src", "office/src"]
        .iter()
        .flat_map(|folder| files(&source("../../../").join(folder), ".rs"))
        .map(|file| fs::read_to_string(file).unwrap())
        .collect();
    let mut seen = 0;
    for file in rooms.iter().filter(|file| !file.ends_with("mod.rs")) {
        let room = file.file_stem().unwrap().to_string_lossy().into_owned();
        let there: Vec<&String> = code.iter().filter(|code| code.contains(&format!("screens::{room}"))).collect();
        for line in fs::read_to_string(file).unwrap().lines().filter(|line| line.contains(" => \"")) {
            let name = line.trim().split(['(', ' ']).next().unwrap();
            let calls = |code: &&&String| {
                let after = |at: usize| code[at + name.len() + 2..].chars().next();
                code.match_indices(&format!("::{name}")).any(|(at, _)| after(at).is_some_and(|c| !is_of_name(c)))
            };
            assert!(there.iter().any(|code| calls(&code)), "nothing calls {room}::{name}");
            seen += 1;
        }
    }
    assert!(seen > 100, "{seen}");
}

fn is_of_name(c: char) -> bool {
    c.is_alphanumeric() || c == '_'
}

/// Messages that a life rests on, as they stand in the catalogue: id and text, in order.
fn life_critical() -> Vec<(String, String)> {
    let mut all: Vec<(String, String)> = Vec::new();
    let mut catalogue = files(&source("en"), ".ftl");
    catalogue.sort();
    for file in catalogue {
        let text = fs::read_to_string(&file).unwrap();
        let mut lines = text.lines().peekable();
        while let Some(line) = lines.next() {
            if line != MARK {
                assert!(!line.contains("life-critical"), "{}: the mark stands alone in its line", file.display());
                continue;
            }
            let (id, said) = lines.next().and_then(|line| line.split_once(" =")).expect("the mark stands on a message");
            assert!(id.starts_with(|c: char| c.is_ascii_lowercase()), "{}: {id} is no message", file.display());
            let mut said = said.trim().to_owned();
            while let Some(more) = lines.next_if(|line| line.starts_with([' ', '}'])) {
                said = format!("{said} {}", more.trim());
            }
            all.push((id.to_owned(), said));
        }
    }
    all
}

const MARK: &str = "# life-critical";

/// The page for whoever checks or translates them has all of them, and a caution that somebody could die without is among them.
#[test]
fn what_a_life_rests_on_is_marked_and_listed() {
    let marked = life_critical();
    let mut page = String::from(
        "# Messages that a life rests on\n\nMade from the catalogue by `text::what_a_life_rests_on_is_marked_and_listed` (with `STILLBAR_FREEZE=1` it \
         writes this page). Whoever checks\nor translates the app reads these first and signs for each. **No licensed electrician has checked any of \
         them yet.**\n\n| message | says |\n|---|---|\n",
    );
    for (id, said) in &marked {
        page += &format!("| `{id}` | {} |\n", said.replace('|', "\\|"));
    }
    let path = source("../../../docs/life-critical.md");
    if std::env::var_os("STILLBAR_FREEZE").is_some() {
        fs::write(&path, &page).unwrap();
    }
    assert_eq!(fs::read_to_string(&path).unwrap(), page, "write it anew with STILLBAR_FREEZE=1");
    for id in ["locks-no-clearance", "state-live", "state-proved", "state-stop"] {
        assert!(marked.iter().any(|(marked, _)| marked == id), "{id} is not marked");
    }
}

/// Every literal of two words in these files that is not allowed, with its place.
fn sentences(code: &[PathBuf], allowed: &[&str]) -> Vec<String> {
    let of_file = |file: &PathBuf| {
        let said = said_in(&fs::read_to_string(file).unwrap(), allowed).into_iter();
        said.map(|(line, literal)| format!("{}, line {line}: {literal}", file.display())).collect::<Vec<String>>()
    };
    code.iter().flat_map(of_file).collect()
}

/// The same in the text of a file: the number of the line, and the literal.
fn said_in(code: &str, allowed: &[&str]) -> Vec<(usize, String)> {
    let mut found = Vec::new();
    for (number, line) in code.lines().enumerate() {
        let code = line.split("//").next().unwrap().replace("\\\"", "").replace("'\"'", "");
        // Every second piece between quotation marks stands in a literal.
        let literals = code.split('"').skip(1).step_by(2);
        let said = literals.filter(|literal| !allowed.contains(literal) && is_said(literal));
        found.extend(said.map(|literal| (number + 1, literal.to_owned())));
    }
    found
}

/// Why an act is not done is a value too: neither the app nor a screen makes an error of a sentence.
#[test]
fn no_act_fails_in_a_sentence() {
    let code: Vec<PathBuf> =
        ["app", "screens"].iter().flat_map(|room| files(&source(&format!("../../src/{room}")), ".rs")).collect();
    assert!(code.len() > 60, "{}", code.len());
    let mut found = Vec::new();
    for file in code {
        for (number, line) in fs::read_to_string(&file).unwrap().lines().enumerate() {
            if errors(line).any(|error| error == "String" || error == "&str") {
                found.push(format!("{}, line {}: {line}", file.display(), number + 1));
            }
        }
    }
    assert!(found.is_empty(), "give it a variant of NotDone:\n{}", found.join("\n"));
    let named = "fn f() -> Result<BTreeMap<u8, String>, StoreError>; fn g() -> Result<(), String> {";
    assert!(errors(named).eq(["StoreError", "String"]));
}

/// The error of each `Result` with two types in this line.
fn errors(line: &str) -> impl Iterator<Item = &str> {
    line.split("Result<").skip(1).filter_map(|types| {
        let (mut depth, mut comma) = (0, None);
        for (at, byte) in types.bytes().enumerate() {
            match byte {
                b'<' | b'(' => depth += 1,
                b'>' | b')' if depth > 0 => depth -= 1,
                b'>' => return comma.map(|from: usize| types[from..at].trim()),
                b',' if depth == 0 => comma = Some(at + 1),
                _ => {}
            }
        }
        None
    })
}

fn is_said(literal: &str) -> bool {
    let letter = |word: &&str| word.chars().any(char::is_alphabetic);
    literal.split_whitespace().filter(letter).count() > 1
}

/// A journey as acts: what is filled in and the tap that sends it. What is only looked at is left out.
fn acts(journeys: &[&str]) -> Vec<String> {
    let mut acts = Vec::new();
    let mut act = String::new();
    for line in journeys.concat().lines().filter(|l| !l.is_empty() && !l.starts_with('#')) {
        let verb = line.split(' ').next().unwrap();
        if verb == "see" || verb == "unseen" {
            continue;
        }
        act += line;
        act += "\n";
        if ["tap", "photo", "scan", "wait"].contains(&verb) {
            acts.push(std::mem::take(&mut act));
        }
    }
    acts
}

/// What a screen offers, and how it stands: all of it but what it says.
fn offers(screen: &Screen) -> Vec<String> {
    let mut all = vec![screen.route.clone(), format!("{:?}", screen.standing.as_ref().map(|s| s.tone))];
    all.extend(screen.main.iter().chain(&screen.up).map(|b| b.action.clone()));
    for block in &screen.blocks {
        all.push(match block {
            Block::Button { button, .. } => format!("{:?} {}", button.tone, button.action),
            Block::Step { step, .. } => format!("{} {:?} {}", step.number, step.state, step.action),
            Block::Caution { tone, .. } => format!("{tone:?}"),
            Block::Entry { entry, .. } => entry.field.clone(),
            other => format!("{:?}", std::mem::discriminant(other)),
        });
    }
    all
}

/// The act with every label of this screen as it is called in other words.
fn renamed(act: &str, field: &Field) -> String {
    // What stands between quotation marks, but for those that a text has itself.
    let texts = || format!("{:?}", field.screen()).replace("\\\"", "'");
    let worded = texts();
    // The other words are those of one thread.
    let plainly = std::thread::scope(|other| other.spawn(texts).join().unwrap());
    let labels: Vec<(&str, &str)> = plainly.split('"').zip(worded.split('"')).filter(|(a, b)| a != b).collect();
    // A journey may tap a button by a part of its label. Buttons come after the title, which may say the same in another message.
    let of = |verb: &str, part: &str| {
        let whole = labels.iter().rev().find(|(plain, _)| *plain == part);
        let within = || labels.iter().rev().find(|(plain, _)| verb == "tap" && plain.contains(part));
        whole.or_else(within).map_or(part.to_owned(), |label| label.1.to_owned())
    };
    let line = |line: &str| match line.split_once(' ') {
        Some((verb, rest)) => {
            format!("{verb} {}\n", rest.split(" = ").map(|part| of(verb, part)).collect::<Vec<_>>().join(" = "))
        }
        None => format!("{line}\n"),
    };
    act.lines().map(line).collect()
}

/// With every message of the catalogue in other words a whole job goes the same way, and writes the same.
#[test]
fn no_wording_decides_anything() {
    let played = |distorted: bool| {
        let folder = tempfile::tempdir().unwrap();
        let device = Device::standing(11);
        let field = device.open(folder.path()).unwrap();
        let mut plain = 0;
        for act in acts(&[PEOPLE, PLAN, ISOLATE, PROVE, WORK, RESTORE]) {
            let worded = distorted.then(Distorted::new);
            // What is named by the catalogue is found under its other name.
            if device.try_play(&field, &act).is_err() && device.try_play(&field, &renamed(&act, &field)).is_err() {
                drop(worded);
                plain += 1;
                device.play(&field, &act);
            }
            if distorted {
                let plainly = offers(&field.screen());
                let _worded = Distorted::new();
                assert_eq!(offers(&field.screen()), plainly, "after {act}");
            }
        }
        let said = {
            let _worded = distorted.then(Distorted::new);
            format!("{:?}", field.screen())
        };
        drop(field);
        let store = Store::open(folder.path()).unwrap();
        let entries: Vec<_> = store.all_entries().unwrap().into_iter().map(|e| (e.id, e.bytes)).collect();
        (entries, store.tables().unwrap(), plain, said)
    };
    let (entries, tables, plain, _) = played(false);
    let (worded_entries, worded_tables, worded_plain, said) = played(true);
    assert_eq!((plain, worded_plain), (0, 0));
    assert!(said.contains('‹'), "nothing was worded otherwise: {said}");
    assert_eq!(entries, worded_entries);
    assert_eq!(tables, worded_tables);
}
