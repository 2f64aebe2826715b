//! Commands answer in the words of the rules that are named.

use clap::Parser;
use stillbar_core::prove::RuleSet;
use stillbar_core::text::terms::Speaking;
use stillbar_desk::calls::{self, PlanOf};
use stillbar_desk::supply::{self, SupplyCommand};
use stillbar_desk::words::WordsArgs;

const CASE: &str = r#"{"conductors":[{"name":"L1"},{"name":"L2"},{"name":"N"},{"name":"PE"}],"earthing":"IT"}"#;
const NET: &str = r#"{"nodes":[{"id":"G","kind":"source"},{"id":"B","kind":"board"}],
    "links":[{"id":"Q1","from":"G","to":"B","kind":"switch","lockable":false}]}"#;
/// Words that no answer has by US rules (NFPA 70E and NEC article 100 have ground and disconnect; from memory).
const BRITISH: [&str; 9] =
    ["earth", "earths", "earthed", "unearthed", "earthing", "isolator", "isolators", "dead test", "proved dead"];

#[derive(Parser)]
struct Typed {
    #[command(flatten)]
    words: WordsArgs,
}

#[derive(Parser)]
struct Asked {
    #[command(subcommand)]
    what: SupplyCommand,
}

fn british(said: &str) -> Vec<&'static str> {
    let said = said.to_lowercase();
    let apart = |at: usize, word: &str| {
        let around = [said[..at].chars().next_back(), said[at + word.len()..].chars().next()];
        !around.into_iter().flatten().any(|c| c.is_alphanumeric() || c == '-')
    };
    BRITISH.into_iter().filter(|word| said.match_indices(word).any(|(at, _)| apart(at, word))).collect()
}

#[test]
fn rules_are_named_as_in_files_in_any_letters() {
    for rules in RuleSet::ALL {
        for typed in [rules.name().to_owned(), rules.name().to_uppercase()] {
            let read = Typed::try_parse_from(["x", "--rules", &typed]).expect("it is a rule set");
            assert_eq!(read.words.rules(), Some(rules));
        }
    }
    assert!(Typed::try_parse_from(["x", "--rules", "mars"]).is_err());
    assert_eq!(Typed::try_parse_from(["x"]).expect("none need be named").words.rules(), None);
}

#[test]
fn plan_and_judge_answer_in_the_words_that_were_asked_for() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("case.json");
    std::fs::write(&path, CASE).expect("it can be written");
    let answers = || -> Vec<String> {
        let of = PlanOf::File(&path);
        let plan = [calls::plan_text(&of), calls::plan(&of)].map(|said| said.expect("a plan"));
        let judged = [false, true].map(|json| calls::judge(&path, json).expect("a judgement"));
        plan.into_iter().chain(judged).collect()
    };
    let all = answers();
    assert!(all.iter().all(|said| !british(said).is_empty()), "{all:?}");
    let _speaking = Speaking::of(Some(RuleSet::Us));
    for said in answers() {
        assert!(british(&said).is_empty() && said.to_lowercase().contains("ground"), "{:?}: {said}", british(&said));
    }
}

#[test]
fn a_network_is_told_of_in_the_words_that_were_asked_for() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("net.json");
    std::fs::write(&path, NET).expect("it can be written");
    let file = path.display().to_string();
    let drawn = folder.path().join("net.svg").display().to_string();
    for typed in [
        vec!["check", &file, "--zone", "B", "--locked", "Q1"],
        vec!["propose", &file, "--zone", "B"],
        vec!["draw", &file, "--zone", "B", "-o", &drawn],
    ] {
        let asked = |rules: &[&str]| {
            let line = ["x"].into_iter().chain(typed.iter().copied()).chain(rules.iter().copied());
            Asked::try_parse_from(line).expect("it is understood").what
        };
        assert_eq!(asked(&[]).rules(), None);
        let what = asked(&["--rules", "US"]);
        let _speaking = Speaking::of(what.rules());
        let said = supply::run(&what).expect("an answer");
        assert!(british(&said).is_empty(), "{:?}: {said}", british(&said));
    }
}
