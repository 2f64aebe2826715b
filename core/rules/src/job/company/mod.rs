//! Rules of a company: the file that they come in, what of them can hold, and what they mean in a job.
//!
//! Promises: they only ever ask for more. A limit or a time above ours is refused, no question can be dropped, and none that is firm can be
//! passed over for them. A job is done by the rules that it was opened with, whatever comes later; one that was opened where none were known
//! takes up those that are heard of. Start at [`CompanyFile::from_json`].

mod file;

use std::collections::BTreeSet;
use std::sync::Arc;

use stillbar_values::company::{
    CompanyRules, MAX_ALWAYS, MAX_CALL, MAX_CODE, MAX_COMPANY, MAX_NUMBER, MAX_POINT, MAX_POINTS, MAX_PPE, MAX_RULE,
    MAX_VERSION, MAX_WHO, OwnPoint, PpeMoment, WhomToCall,
};

use super::Job;
use super::asked::{self, InEveryJob, Question};
use super::known::{BETWEEN_PROOFS, PROOF_HOLDS, Rules};
use super::limits;
use super::steps::{Stage, Step};
use crate::journal::fact::Limit;
use crate::journal::{EntryId, Stamp};
use crate::json::quoted;
use crate::names::says_something;
use crate::prove::fault::{CaseError, Place};
use crate::prove::limit::{LimitError, bound};
use crate::prove::{RuleSet, System};
use crate::world::{CompanyHeld, World};

/// What a file of rules holds.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CompanyFile {
    /// The rules.
    pub rules: CompanyRules,
    /// Whom to call.
    pub call: Vec<WhomToCall>,
}

/// Why a file of rules cannot be used.
#[derive(Debug, Clone, PartialEq)]
pub enum CompanyError {
    /// It is not written as such a file is.
    Form(CaseError),
    /// What it says cannot hold.
    Wrong(CompanyWrong),
}

/// What in rules cannot hold, and where.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CompanyWrong {
    /// Where, as a path in the file.
    pub place: Place,
    /// What.
    pub what: CompanyFault,
}

/// What cannot hold.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum CompanyFault {
    /// The file has more bytes than are read.
    TooLarge,
    /// The file is empty.
    Empty,
    /// This field has to be there.
    Missing(&'static str),
    /// A text that says nothing, is longer than so many characters, or has characters that cannot be seen.
    Text(usize),
    /// More items than so many.
    TooMany(usize),
    /// No question of the app's.
    NoQuestion(String),
    /// A question that says nothing where a job does not call for it: it is asked of a point or a source, of one system, or of an act.
    OfItsOwn(String),
    /// There twice.
    Twice(String),
    /// A limit at or above where it could hide a source.
    Limit(LimitError),
    /// A limit without the name of the rule that sets it.
    LimitUnruled,
    /// Minutes that are none, or above the most that the app allows.
    Minutes(u32),
    /// A code has small letters, digits and hyphens.
    Code,
    /// No telephone number.
    Number,
    /// This version was heard of, and says something else.
    VersionTaken(String),
    /// This is what holds at the site.
    HeldAlready,
}

impl From<CaseError> for CompanyError {
    fn from(error: CaseError) -> CompanyError {
        CompanyError::Form(error)
    }
}

impl From<CompanyWrong> for CompanyError {
    fn from(wrong: CompanyWrong) -> CompanyError {
        CompanyError::Wrong(wrong)
    }
}

fn wrong(path: impl Into<String>, what: CompanyFault) -> CompanyWrong {
    let path: String = path.into();
    CompanyWrong { place: if path.is_empty() { Place::Whole } else { Place::Path(path) }, what }
}

/// Whether a text can be shown and says something.
fn shown(path: &str, text: &str, most: usize) -> Result<(), CompanyWrong> {
    // What breaks a line, or turns letters around, would make something else of what stands beside it.
    let hidden = |c: char| {
        c.is_control()
            || matches!(c, '\u{2028}' | '\u{2029}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' | '\u{feff}')
    };
    let fits = text.trim() == text && text.chars().count() <= most && !text.chars().any(hidden);
    if fits && !text.is_empty() { Ok(()) } else { Err(wrong(path, CompanyFault::Text(most))) }
}

fn at_most(path: &str, count: usize, most: usize) -> Result<(), CompanyWrong> {
    if count <= most { Ok(()) } else { Err(wrong(path, CompanyFault::TooMany(most))) }
}

/// Whether rules can hold, wherever they come from: an entry of another program is looked at as a file is.
pub fn fits(rules: &CompanyRules) -> Result<(), CompanyWrong> {
    shown("company", &rules.company, MAX_COMPANY)?;
    shown("version", &rules.version, MAX_VERSION)?;
    at_most("always_asked", rules.always.len(), MAX_ALWAYS)?;
    let mut once = BTreeSet::new();
    for (i, code) in rules.always.iter().enumerate() {
        let no = |what: fn(String) -> CompanyFault| Err(wrong(format!("always_asked[{i}]"), what(quoted(code))));
        match Question::of(code).map(|q| q.in_every_job) {
            None => return no(CompanyFault::NoQuestion),
            Some(InEveryJob::Never) => return no(CompanyFault::OfItsOwn),
            Some(_) if !once.insert(code) => return no(CompanyFault::Twice),
            Some(_) => {}
        }
    }
    if let Some(limit) = &rules.limit {
        shown("dead_limit.rule", &limit.rule, MAX_RULE)?;
        if !says_something(&limit.rule) {
            return Err(wrong("dead_limit.rule", CompanyFault::LimitUnruled));
        }
        if let Some(error) = bound([]).refuses(limits::of(limit)) {
            let path = if error.dc { "dead_limit.dc_volts" } else { "dead_limit.ac_volts" };
            return Err(wrong(path, CompanyFault::Limit(error)));
        }
    }
    for (path, minutes, most) in [
        ("minutes_between_proofs", rules.between_proofs, BETWEEN_PROOFS),
        ("minutes_a_proof_holds", rules.proof_holds, PROOF_HOLDS),
    ] {
        if minutes.is_some_and(|minutes| !(1..=most).contains(&minutes)) {
            return Err(wrong(path, CompanyFault::Minutes(most)));
        }
    }
    for (i, ppe) in rules.ppe.iter().enumerate() {
        let path = format!("ppe.{}", ppe.before.name());
        shown(&path, &ppe.text, MAX_PPE)?;
        if rules.ppe[..i].iter().any(|other| other.before == ppe.before) {
            return Err(wrong("ppe", CompanyFault::Twice(ppe.before.name().into())));
        }
    }
    at_most("points", rules.points.len(), MAX_POINTS)?;
    for (i, point) in rules.points.iter().enumerate() {
        let path = format!("points[{i}].code");
        let plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
        let whole = !point.code.is_empty() && !point.code.starts_with('-') && !point.code.ends_with('-');
        if !whole || point.code.len() > MAX_CODE || !point.code.chars().all(plain) || point.code.contains("--") {
            return Err(wrong(path, CompanyFault::Code));
        }
        if rules.points[..i].iter().any(|other| other.code == point.code) {
            return Err(wrong(path, CompanyFault::Twice(quoted(&point.code))));
        }
        let path = format!("points[{i}].text");
        shown(&path, &point.text, MAX_POINT)?;
        if !says_something(&point.text) {
            return Err(wrong(path, CompanyFault::Text(MAX_POINT)));
        }
    }
    Ok(())
}

/// Whether people can be called so.
pub fn calls_fit(call: &[WhomToCall]) -> Result<(), CompanyWrong> {
    at_most("call", call.len(), MAX_CALL)?;
    for (i, called) in call.iter().enumerate() {
        let path = format!("call[{i}].who");
        shown(&path, &called.who, MAX_WHO)?;
        // Each is a button: two of one name could not be told apart.
        if call[..i].iter().any(|other| other.who == called.who) {
            return Err(wrong(path, CompanyFault::Twice(quoted(&called.who))));
        }
        let number = &called.number;
        let dialled = |c: char| c.is_ascii_digit() || matches!(c, '+' | ' ' | '-' | '(' | ')' | '/' | '*' | '#');
        let digits = number.chars().filter(char::is_ascii_digit).count();
        if digits < 3 || number.trim() != number || number.len() > MAX_NUMBER || !number.chars().all(dialled) {
            return Err(wrong(format!("call[{i}].number"), CompanyFault::Number));
        }
    }
    Ok(())
}

/// Whether a site takes these rules in: one version says one thing, wherever it was heard of, and what holds is not written again.
pub fn takes(world: &World, site: EntryId, rules: &CompanyRules, call: &[WhomToCall]) -> Result<(), CompanyWrong> {
    fits(rules)?;
    calls_fit(call)?;
    let held = world.company.get(&site);
    if held.is_some_and(|held| *held.rules == *rules && held.call == call) {
        return Err(wrong("", CompanyFault::HeldAlready));
    }
    if world.versions.say_otherwise(rules) {
        return Err(wrong("version", CompanyFault::VersionTaken(quoted(&rules.version))));
    }
    Ok(())
}

impl Job {
    /// What the company wants worn at a step, in its words.
    pub fn ppe(&self, step: Step) -> Option<&str> {
        let before = match step {
            Step::Isolate(point) if self.point(point).is_some_and(|p| p.opened.is_none()) => PpeMoment::Opening,
            // From the first cover to the second proof: until then everything behind it counts as live.
            step if step.stage() == Stage::Prove => PpeMoment::DeadTest,
            Step::Work if self.finished.is_none() => PpeMoment::Work,
            Step::CoversBack | Step::Close => PpeMoment::Restoring,
            _ => return None,
        };
        self.company.as_ref()?.ppe(before)
    }

    /// Every version of rules that asks in this job and tightens it: the one that it was opened with, or all that were heard of since.
    pub(super) fn company_all(&self) -> impl Iterator<Item = &CompanyRules> {
        let opened_with = self.company.iter().filter(|_| self.company_heard.is_empty());
        opened_with.chain(self.company_heard.iter().map(|(_, rules)| rules)).map(|rules| &**rules)
    }

    /// The point of a company's own of this code.
    pub(super) fn company_point(&self, code: &str) -> Option<&OwnPoint> {
        self.company_all().find_map(|company| company.point(code))
    }

    /// Whether the company has this question asked in every job.
    pub(super) fn ruled_in(&self, question: &Question) -> bool {
        question.in_every_job == InEveryJob::IfRuled
            && self.company_all().any(|company| company.always.iter().any(|code| code == question.code))
    }

    /// Whether rules that are heard of now are taken up: a job that was opened with some keeps those, and one that is handed back is done.
    pub fn takes_up_company(&self) -> bool {
        (self.company.is_none() || !self.company_heard.is_empty()) && self.handed.is_none()
    }

    /// Whether rules that are heard of now set a lower limit than holds.
    pub(super) fn is_tightened_by(&self, rules: &CompanyRules) -> bool {
        self.takes_up_company() && rules.tightened(self.limit.clone()) != self.limit
    }

    /// Takes up rules that were not known when the job was opened.
    pub(super) fn hear_company(&mut self, stamp: Stamp, rules: &CompanyRules) {
        if !self.takes_up_company() || self.company_heard.iter().any(|(_, heard)| **heard == *rules) {
            return;
        }
        // As in an opening: what cannot be asked here is another version's.
        if fits(rules).is_err() {
            self.newer.push(stamp);
        }
        self.limit = rules.tightened(self.limit.take());
        let rules = Arc::new(rules.clone());
        self.company.get_or_insert_with(|| rules.clone());
        self.company_heard.push((stamp, rules));
    }

    /// The times that hold here: those of the site, and those of the rules that the job was opened with, the shorter of each.
    pub(super) fn with_company(&self, site: Rules) -> Rules {
        if self.company.is_none() {
            return site;
        }
        let less = |own: Option<u32>, most: u32| own.map_or(most, |own| own.min(most));
        let tighter = |most: Rules, company: &CompanyRules| Rules {
            between_proofs: less(company.between_proofs, most.between_proofs),
            proof_holds: less(company.proof_holds, most.proof_holds),
        };
        self.company_all().fold(site, tighter).within()
    }
}

impl CompanyHeld {
    /// The limit of a job that is opened under these rules, where `set` is what this device was told before: the tighter of both, and none
    /// where that could hide the supply, so that only 0 V counts as dead.
    pub fn opens_with(
        &self,
        set: Option<&Limit>,
        rule_set: Option<RuleSet>,
        system: System,
        nominal: u32,
    ) -> Option<Limit> {
        let bound = limits::bound_under(rule_set, [limits::supply(system, nominal)]);
        self.rules.opens_with(set).filter(|limit| bound.refuses(limits::of(limit)).is_none())
    }
}

/// The questions that a company may have asked in every job.
pub fn may_be_always() -> Vec<&'static str> {
    let may = asked::ALL.into_iter().filter(|q| q.in_every_job != InEveryJob::Never);
    may.map(|q| q.code).collect()
}
