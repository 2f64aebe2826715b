//! Languages: each is whole, says on every screen of every story what English says there, and changes nothing that is kept.

use std::collections::BTreeSet;
use std::path::Path;

use serde_json::Value;
use stillbar_core::demo;
use stillbar_core::journey::{Props, stories, story};
use stillbar_core::parts::{Block, Errand, Screen};
use stillbar_core::record::verify;
use stillbar_core::text::catalogue_in;
use stillbar_core::text::languages::{ALL, Language, OFFERED};

use crate::desk::*;
use crate::retold::retell;

fn journeys() -> std::path::PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("journeys")
}

/// Every message is there in every language, in the same order, and with the same values.
#[test]
fn every_language_has_every_message() {
    let values = |text: &str| -> BTreeSet<String> {
        let name = |rest: &str| rest.chars().take_while(|c| c.is_alphanumeric() || "_-".contains(*c)).collect();
        text.split('$').skip(1).map(name).collect()
    };
    let english = catalogue_in(Language::English);
    assert!(english.len() > 1500, "{}", english.len());
    for language in ALL {
        let other = catalogue_in(language);
        let (ours, theirs): (Vec<&String>, Vec<&String>) =
            (english.iter().map(|(id, _)| id).collect(), other.iter().map(|(id, _)| id).collect());
        let missing: Vec<_> = ours.iter().filter(|id| !theirs.contains(id)).collect();
        assert!(missing.is_empty(), "{language:?} lacks {missing:?}");
        assert_eq!(ours, theirs, "{language:?}");
        for ((id, said), (_, says)) in english.iter().zip(&other) {
            assert_eq!(values(said), values(says), "{language:?} {id}");
        }
    }
}

#[test]
fn a_language_is_picked_by_what_the_device_asks_for() {
    let of = |tags: &[&str]| Language::of_tags(tags.iter().copied());
    assert_eq!(of(&["de-AT"]), Language::German);
    assert_eq!(of(&["fr-FR", "es-419", "de"]), Language::Spanish);
    assert_eq!(of(&["es_MX"]), Language::Spanish);
    assert_eq!(of(&["en-GB", "de"]), Language::English);
    assert_eq!(of(&["en-XA"]), Language::Lengthened);
    assert_eq!(of(&["ar-XB"]), Language::Mirrored);
    // No Arabic is there, and mirrored English is nobody's.
    assert_eq!(of(&["ar-EG"]), Language::English);
    assert_eq!(of(&["", "--", "\u{0}"]), Language::English);
    assert_eq!(of(&[]), Language::English);
    assert!(OFFERED.iter().all(|language| language.draft() != (*language == Language::English)));
}

/// The one that is picked in the app goes before the device's, outlives a restart, and can be given back.
#[test]
fn a_person_picks_a_language() {
    let (folder, device, field) = begun(&[]);
    let title = |field: &stillbar_core::Field| field.screen().title;
    let english = title(&field);
    field.speak(vec!["es-ES".into()]);
    let spanish = title(&field);
    assert_ne!(english, spanish);
    assert_eq!(field.screen().language, "es");
    field.act(None, "go /language".into(), vec![]);
    field.act(None, "speak de".into(), vec![]);
    let german = title(&field);
    assert!(german != english && german != spanish, "{german}");
    assert_eq!(field.screen().route, "/");
    drop(field);
    let field = device.open(folder.path()).unwrap();
    field.speak(vec!["es-ES".into()]);
    assert_eq!(title(&field), german);
    // A draft says so on the first screen.
    assert!(serde_json::to_string(&field.screen()).unwrap().contains("Elektrofachkraft"));
    field.act(None, "go /language".into(), vec![]);
    field.act(None, "speak as-device".into(), vec![]);
    assert_eq!(title(&field), spanish);
    field.act(None, "go /language".into(), vec![]);
    field.act(None, "speak tlh".into(), vec![]);
    assert_eq!(field.screen().route, "/language");
}

/// Every story in every language: the same screens in other words, and the same journal, byte for byte.
#[test]
fn every_story_is_told_in_every_language() {
    let mut unsaid = BTreeSet::new();
    for name in stories(&journeys()).unwrap() {
        let script = story(&journeys(), &name).unwrap();
        for language in ALL.into_iter().filter(|language| *language != Language::English) {
            let mut typed = words(&script);
            typed.extend(words(&demo_words()));
            told(&name, &script, language, &mut |here, there| {
                if language == Language::Lengthened {
                    let (here, there) = (serde_json::to_value(here).unwrap(), serde_json::to_value(there).unwrap());
                    same(&here, &there, "", &typed, &mut unsaid);
                }
            });
        }
    }
    let listed: Vec<&String> = unsaid.iter().collect();
    assert!(listed.is_empty(), "not of the catalogue, on some screen:\n{listed:#?}");
}

/// Tells a story in a language, and holds both journals against each other.
fn told(name: &str, script: &str, language: Language, seen: &mut dyn FnMut(&Screen, &Screen)) -> String {
    let folders = [tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap()];
    let devices = [Device::standing(1), Device::standing(1)];
    let fields = [devices[0].open(folders[0].path()).unwrap(), devices[1].open(folders[1].path()).unwrap()];
    fields[1].speak(vec![language.tag().into()]);
    let waits = [&|ms| devices[0].pass(ms), &|ms| devices[1].pass(ms)] as [&dyn Fn(i64); 2];
    let props = waits.map(|wait| Props { photo: demo::PHOTO, wait });
    let again = retell([&fields[0], &fields[1]], script, [&props[0], &props[1]], &without_caution, seen)
        .unwrap_or_else(|why| panic!("{name} in {language:?}: {why}"));
    assert_eq!(fields[0].entries().unwrap(), fields[1].entries().unwrap(), "{name} in {language:?}");
    again
}

/// The screen without what stands above the first one where the language is a draft.
fn without_caution(mut screen: Screen) -> Screen {
    if screen.route == "/" && Language::of_tag(&screen.language).is_some_and(Language::draft) {
        screen.blocks.remove(0);
        // And below the row of the language.
        for block in &mut screen.blocks {
            if let Block::Step { step, .. } = block
                && step.action == "go /language"
            {
                step.lines.clear();
            }
        }
    }
    screen
}

/// The words of at least three letters in a text.
fn words(text: &str) -> BTreeSet<String> {
    let words = text.split(|c: char| !c.is_alphabetic()).filter(|word| word.len() >= 3);
    words.map(str::to_lowercase).collect()
}

/// What stands in both languages though it is not of this person's typing: names of formats and units.
fn demo_words() -> String {
    "Stillbar PDF JSON CSV English Deutsch Español".into()
}

/// Collects the texts that are the same on both screens and have words that nobody typed.
fn same(here: &Value, there: &Value, key: &str, typed: &BTreeSet<String>, unsaid: &mut BTreeSet<String>) {
    const NAMES: [&str; 16] = [
        "id",
        "action",
        "field",
        "value",
        "tone",
        "state",
        "kind",
        "chosen",
        "sha256",
        "media_type",
        "language",
        "hand",
        "route",
        "block",
        "drawing",
        "mirrored",
    ];
    match (here, there) {
        (Value::Object(here), Value::Object(there)) => {
            for (key, value) in here.iter().filter(|(key, _)| !NAMES.contains(&key.as_str())) {
                same(value, there.get(key).unwrap_or(&Value::Null), key, typed, unsaid);
            }
        }
        (Value::Array(here), Value::Array(there)) => {
            assert_eq!(here.len(), there.len(), "{key}: {here:?} {there:?}");
            here.iter().zip(there).for_each(|(here, there)| same(here, there, key, typed, unsaid));
        }
        (Value::String(here), Value::String(there)) => {
            let foreign = words(here).iter().any(|word| !typed.contains(word));
            if here == there && foreign && here.contains(' ') {
                unsaid.insert(here.clone());
            }
        }
        _ => {}
    }
}

/// A tap on an old screen, and a draft that comes too late, are answered in the language that is spoken, too.
#[test]
fn what_is_refused_is_refused_in_the_language_spoken() {
    let (_folder, _device, field) = begun(&[PEOPLE]);
    let refused = |language: &str| {
        field.speak(vec![language.into()]);
        field.act(Some(field.screen().turn.wrapping_sub(1)), "person".into(), vec![]);
        let late = field.edit_on("/elsewhere", "", "name", "Ida").unwrap_err().to_string();
        (field.screen().notice.unwrap().text, late)
    };
    let (english, german) = (refused("en"), refused("de"));
    assert_ne!(english.0, german.0);
    assert_ne!(english.1, german.1);
}

/// A record that is made while the phone speaks German holds for who verifies it in English.
#[test]
fn a_record_holds_whatever_the_phone_speaks() {
    let (_folder, _device, field) =
        begun(&[PEOPLE, PLAN, ISOLATE, PROVE, WORK, RESTORE, include_str!("../../journeys/record.journey")]);
    field.speak(vec!["de".into()]);
    for withheld in ["", " withheld"] {
        let errands = field.act(None, format!("share-record{withheld}"), vec![]);
        let [Errand::ShareFile { name, .. }] = &errands[..] else { panic!("{errands:?}") };
        let verdict = verify(&field.shared(name).unwrap()).unwrap();
        assert!(verdict.holds, "{:#?}", verdict.failures);
    }
}

/// The whole job as a person taps it in each language: the other shells play it from these files. STILLBAR_FREEZE=1 writes them anew.
#[test]
fn the_whole_job_is_written_down_in_every_language() {
    let script = story(&journeys(), "whole-job").unwrap();
    for language in ALL.into_iter().filter(|language| *language != Language::English) {
        let again = told("whole-job", &script, language, &mut |_, _| {});
        let file = journeys().join("in").join(format!("{}.journey", language.tag()));
        if std::env::var_os("STILLBAR_FREEZE").is_some() {
            std::fs::create_dir_all(file.parent().unwrap()).unwrap();
            std::fs::write(&file, &again).unwrap();
        }
        let kept = std::fs::read_to_string(&file).unwrap_or_default();
        assert!(kept == again, "{} is not what the app says now: write it with STILLBAR_FREEZE=1", file.display());
    }
}
