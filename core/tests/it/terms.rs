//! The words of a country's trade: the same catalogue, in whole words, and never in what people typed.

use stillbar_core::app::of_folder;
use stillbar_core::record::verify;
use stillbar_core::text::terms::{Speaking, Terms};
use stillbar_core::text::{self, in_terms};
use stillbar_values::RuleSet;

use crate::desk::*;
use crate::forgotten::Phone;

/// NFPA 70E, NEC article 100 and 29 CFR 1910.147, .333: what is called so there (from memory).
const PAIRS: [(&str, &str); 8] = [
    ("Earth proved", "Ground proved"),
    ("Prove dead first, then fit them below.", "Verify absence of voltage first, then fit them below."),
    ("An earthed point, and no isolator", "A grounded point, and no disconnect"),
    ("Earths off. EARTHING.", "Grounds off. Grounding."),
    ("The caution sign hangs at", "The danger tag hangs at"),
    ("Were the RCDs tested?", "Were the GFCIs tested?"),
    ("earthquake, hearth, unearthly", "earthquake, hearth, unearthly"),
    ("Treat as live until it is proved dead again.", "Treat as live until it is verified de-energized again."),
];

#[test]
fn words_are_exchanged_whole() {
    for (british, american) in PAIRS {
        assert_eq!(in_terms(british), british);
        for rules in [RuleSet::Us, RuleSet::Ca] {
            let _speaking = Speaking::of(Some(rules));
            assert_eq!(in_terms(british), american);
        }
        for rules in [RuleSet::Uk, RuleSet::Ie, RuleSet::Eu, RuleSet::De, RuleSet::Own] {
            let _speaking = Speaking::of(Some(rules));
            assert_eq!(in_terms(british), british);
        }
        for rules in [RuleSet::Au, RuleSet::Nz] {
            let _speaking = Speaking::of(Some(rules));
            assert_eq!(in_terms(british), british.replace("caution sign", "danger tag"));
        }
    }
}

/// Every message of the catalogue is there in both, takes the same values, and the one of North America has no word of the other left.
#[test]
fn the_catalogue_is_whole_in_other_words() {
    let [british, american] = text::catalogues(Terms::American);
    assert_eq!(british.len(), american.len());
    let mut differ = 0;
    for ((id, said), (other, says)) in british.iter().zip(&american) {
        assert_eq!(id, other);
        let values = |text: &str| -> Vec<String> {
            let all = text.match_indices('$');
            all.map(|(at, _)| text[at..].chars().take_while(|c| c.is_alphanumeric() || "$_-".contains(*c)).collect())
                .collect()
        };
        assert_eq!(values(said), values(says), "{id}");
        differ += usize::from(said != says);
        let words = says.to_lowercase();
        let plain = words.split(|c: char| !c.is_alphanumeric() && c != '-' && c != '$');
        let left = ["earth", "earths", "earthed", "earthing", "unearthed", "isolator", "isolators", "rcd", "rcds"];
        for word in plain {
            assert!(!left.contains(&word) || id.starts_with("rules-"), "{id}: {says}");
        }
    }
    assert!(differ > 80, "{differ}");
}

/// A job by US rules speaks so from its first screen to its record; what people typed stays as they typed it.
#[test]
fn a_job_speaks_in_the_words_of_its_rules() {
    let typed = "Earth works, isolator hall";
    // The form speaks in the words of the last job, and there is none yet.
    let plan = american(PLAN)
        .replace("choose Rules of = European Union", "choose Rules of = United States")
        .replace(
            "tap Open this job",
            "choose Order of the dead test = Least dangerous first (line to line at the end)\ntap Open this job",
        )
        .replace("Plant room 2, ground floor", typed);
    let (isolate, prove) = (american(ISOLATE), american(PROVE));
    let phone = Phone::begun(&[PEOPLE, &plan, &isolate, &prove]);
    assert!(phone.proved());
    let screen = phone.at(&format!("/job/{}/step/work", phone.job()));
    assert!(screen.contains("Temporary grounds") && screen.contains("[Absence of voltage verified]"), "{screen}");
    assert!(screen.contains(typed) && !screen.contains("earths"), "{screen}");
    // Nothing that is kept follows the words.
    let kept = format!("{:?}", phone.entries());
    assert!(kept.contains(typed) && !kept.contains("grounding"), "the words are in the journal");
    // Its record is told of in the same words, and says the order of its tests and the tolerance (ANSI C84.1 range A, from memory) in them.
    let made = of_folder(phone.folder.path(), &*phone.device, &phone.job().to_string(), false).unwrap();
    let report = made.report();
    assert_eq!(report.rule_set(), Some(RuleSet::Us));
    assert_eq!(*report.order, *"Least dangerous first (line to line at the end)");
    assert!(
        report.tolerance.starts_with("ANSI C84.1 Range A: 5 % either way; at 230 V that is 218.5 to 241.5 V ("),
        "{}",
        report.tolerance.says()
    );
    let claims: serde_json::Value = serde_json::from_slice(&made.json().unwrap()).unwrap();
    assert!(
        claims["claims"].get("order").is_none() && claims["claims"].get("tolerance").is_none(),
        "claims stay as they were"
    );
    let csv = made.csv().unwrap().replace(typed, "").to_lowercase();
    assert!(!csv.contains("earth") && !csv.contains("isolator"), "{csv}");
    for bytes in [made.pdf().unwrap(), made.json().unwrap()] {
        let verdict = verify(&bytes).unwrap();
        assert!(verdict.holds && verdict.rules == Some(RuleSet::Us), "{:?}", verdict.failures);
    }
    // Beside it, a job by other rules says what it always said.
    let british = Phone::begun(&[PEOPLE, PLAN, ISOLATE, PROVE]);
    let shown = british.at(&format!("/job/{}/step/work", british.job()));
    assert!(shown.contains("Temporary earths") && shown.contains("[Proved dead]"), "{shown}");
}
