//! Rules of a company: what they say, and what is wrong with a file of them.

use super::asked::asked_of;
use super::case::case;
use super::catalogue::say;
use super::lists::commas;
use super::words::{limit, limit_set};
use stillbar_rules::job::company::{CompanyError, CompanyFault, CompanyFile, CompanyWrong, may_be_always};
use stillbar_rules::prove::fault::Place;
use stillbar_values::CompanyRules;
use stillbar_values::company::{MAX_FILE, OwnStage, PpeMoment};

/// Why a file of rules cannot be used, in a sentence, with the place before it.
pub fn company_error(error: &CompanyError) -> String {
    match error {
        CompanyError::Form(form) => case(form),
        CompanyError::Wrong(wrong) => company_wrong(wrong),
    }
}

/// What in rules cannot hold, likewise.
pub fn company_wrong(wrong: &CompanyWrong) -> String {
    let says = company_fault(&wrong.what);
    match &wrong.place {
        Place::Path(path) => say!("case-placed", place = path, says = says),
        _ => says,
    }
}

fn company_fault(what: &CompanyFault) -> String {
    match what {
        CompanyFault::TooLarge => say!("company-too-large", most = MAX_FILE),
        CompanyFault::Empty => say!("company-empty"),
        CompanyFault::Missing(field) => say!("company-missing", field = *field),
        CompanyFault::Text(most) => say!("company-text", most = *most),
        CompanyFault::TooMany(most) => say!("company-too-many", most = *most),
        CompanyFault::NoQuestion(code) => say!("company-no-question", code = code, known = always()),
        CompanyFault::OfItsOwn(code) => say!("company-of-its-own", code = code, known = always()),
        CompanyFault::Twice(what) => say!("company-twice", what = what),
        CompanyFault::Limit(error) => say!("company-limit", limit = limit(error)),
        CompanyFault::LimitUnruled => say!("company-limit-unruled"),
        CompanyFault::Minutes(most) => say!("company-minutes", most = *most),
        CompanyFault::Code => say!("company-code"),
        CompanyFault::Number => say!("company-number"),
        CompanyFault::VersionTaken(version) => say!("company-version-taken", version = version),
        CompanyFault::HeldAlready => say!("company-held"),
    }
}

fn always() -> String {
    commas(may_be_always().into_iter().map(str::to_owned))
}

/// Whose rules, and which version; `sha256` names the content whatever it is called.
pub fn company_version(rules: &CompanyRules, sha256: &str) -> String {
    let (company, version) = (&*rules.company, &*rules.version);
    say!("company-version", company = company, version = version, short = format!("{sha256:.8}"))
}

/// What to wear, with whose rule it is.
pub fn company_ppe(company: &str, text: &str) -> String {
    say!("company-ppe", company = company, text = text)
}

/// The label of whom to call, and of the button that does.
pub fn ring(who: &str) -> String {
    say!("company-ring", who = who)
}

/// What rules say, a label and a sentence each, in the order of the file.
pub fn company_rules(rules: &CompanyRules) -> Vec<(String, String)> {
    let mut all = Vec::new();
    if !rules.always.is_empty() {
        let asked = rules.always.iter().map(|code| asked_of(code, ""));
        all.push((say!("company-always"), commas(asked)));
    }
    if let Some(limit) = &rules.limit {
        all.push((say!("company-limit-label"), limit_set(limit)));
    }
    if let Some(minutes) = rules.between_proofs {
        all.push((say!("company-between"), say!("company-at-most", minutes = minutes)));
    }
    if let Some(minutes) = rules.proof_holds {
        all.push((say!("company-holds"), say!("company-at-most", minutes = minutes)));
    }
    for ppe in &rules.ppe {
        let label = match ppe.before {
            PpeMoment::Opening => say!("company-before-opening"),
            PpeMoment::DeadTest => say!("company-before-dead-test"),
            PpeMoment::Work => say!("company-before-work"),
            PpeMoment::Restoring => say!("company-before-restoring"),
        };
        all.push((label, ppe.text.clone()));
    }
    for point in &rules.points {
        let stage = match point.stage {
            OwnStage::Isolate => say!("company-point-isolate"),
            OwnStage::Work => say!("company-point-work"),
            OwnStage::Restore => say!("company-point-restore"),
        };
        let skip = if point.skippable { "yes" } else { "no" };
        all.push((stage, say!("company-point", text = &*point.text, skip = skip)));
    }
    all
}

/// What a file holds, in lines for a person.
pub fn company_file(file: &CompanyFile, sha256: &str) -> Vec<(String, String)> {
    let mut all = vec![
        (say!("company-label"), company_version(&file.rules, sha256)),
        (say!("company-sha256"), sha256.to_owned()),
    ];
    all.extend(company_rules(&file.rules));
    all.extend(
        file.call.iter().map(|c| (say!("company-call"), say!("company-called", who = &*c.who, number = &*c.number))),
    );
    all
}
