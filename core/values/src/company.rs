//! Rules of a company: what it asks beside what the app asks, and never instead of it. As they stand in a file, in an entry and in a job;
//! docs/company-rules.md tells of the file.
//!
//! They hold no telephone number and no name: a job carries them whole, and its record goes to others. Whom to call stands beside them.

use serde::{Deserialize, Serialize};

/// Most bytes of a file of rules.
pub const MAX_FILE: usize = 16 * 1024;
/// Most characters of the company's name.
pub const MAX_COMPANY: usize = 80;
/// Most characters of what the company calls the version.
pub const MAX_VERSION: usize = 40;
/// Most characters of the name of a rule.
pub const MAX_RULE: usize = 120;
/// Most questions that are asked in every job.
pub const MAX_ALWAYS: usize = 16;
/// Most characters of what to wear.
pub const MAX_PPE: usize = 300;
/// Most points of a company's own checklist, all stages together.
pub const MAX_POINTS: usize = 24;
/// Most characters of the code of a point.
pub const MAX_CODE: usize = 40;
/// Most characters of a point as it is asked.
pub const MAX_POINT: usize = 160;
/// Most people or places to call.
pub const MAX_CALL: usize = 8;
/// Most characters of who is called, and of a number.
pub const MAX_WHO: usize = 80;
/// Most characters of a telephone number.
pub const MAX_NUMBER: usize = 40;

/// A limit for figures that count as no indication, alternating and direct apart.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Limit {
    /// The greatest figure in the range for alternating voltage, in millivolts.
    pub ac: u32,
    /// The same for direct voltage.
    pub dc: u32,
    /// The name of the company's rule.
    pub rule: String,
}

/// What a company rules for its jobs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct CompanyRules {
    /// Whose rules.
    pub company: String,
    /// What the company calls this version.
    pub version: String,
    /// Codes of questions that are asked in every job.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub always: Vec<String>,
    /// Up to which figures a reading counts as dead; none: the file says nothing of it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub limit: Option<Limit>,
    /// Most minutes between two proofs of the indicator.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub between_proofs: Option<u32>,
    /// Most minutes that a proof holds.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub proof_holds: Option<u32>,
    /// What to wear.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub ppe: Vec<Ppe>,
    /// The points of the company's own checklist, in their order.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub points: Vec<OwnPoint>,
}

/// What to wear before something is done.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Ppe {
    /// Before what.
    pub before: PpeMoment,
    /// What, in the company's words.
    pub text: String,
}

/// Before what something is worn.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum PpeMoment {
    /// A point of isolation is opened.
    Opening,
    /// Covers come off and dead is proved.
    DeadTest,
    /// The work begins.
    Work,
    /// Covers go back and points are closed.
    Restoring,
}

/// A point of a company's own checklist.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct OwnPoint {
    /// Its name in entries and tables.
    pub code: String,
    /// When it is asked.
    pub stage: OwnStage,
    /// What is asked, in the company's words.
    pub text: String,
    /// Whether somebody may say why it does not apply.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub skippable: bool,
}

/// When a point of a company's own is asked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum OwnStage {
    /// Before the first point of isolation is opened.
    Isolate,
    /// Before the work begins.
    Work,
    /// Before the supply comes back.
    Restore,
}

/// Whom a company has called, and where.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WhomToCall {
    /// Who: a function, or a name.
    pub who: String,
    /// The telephone number.
    pub number: String,
}

impl PpeMoment {
    /// All, in the order of a job.
    pub const ALL: [PpeMoment; 4] = [PpeMoment::Opening, PpeMoment::DeadTest, PpeMoment::Work, PpeMoment::Restoring];

    /// Its name in files.
    pub fn name(self) -> &'static str {
        match self {
            PpeMoment::Opening => "before_opening",
            PpeMoment::DeadTest => "before_dead_test",
            PpeMoment::Work => "before_work",
            PpeMoment::Restoring => "before_restoring",
        }
    }
}

impl OwnStage {
    /// All, in the order of a job.
    pub const ALL: [OwnStage; 3] = [OwnStage::Isolate, OwnStage::Work, OwnStage::Restore];

    /// Its name in files.
    pub fn name(self) -> &'static str {
        match self {
            OwnStage::Isolate => "isolate",
            OwnStage::Work => "work",
            OwnStage::Restore => "restore",
        }
    }
}

impl CompanyRules {
    /// What to wear before something, if the company says it.
    pub fn ppe(&self, before: PpeMoment) -> Option<&str> {
        self.ppe.iter().find(|p| p.before == before).map(|p| p.text.as_str())
    }

    /// The point of its own of this code.
    pub fn point(&self, code: &str) -> Option<&OwnPoint> {
        self.points.iter().find(|p| p.code == code)
    }

    /// A limit, made as tight as the company's where that is tighter. No limit is 0 V, and stays: nothing is tighter.
    ///
    /// ```
    /// use stillbar_values::company::{CompanyRules, Limit};
    /// let limit = |ac, dc| Limit { ac, dc, rule: "WI 12".into() };
    /// let rules = CompanyRules {
    ///     company: "Alder & Finch".into(),
    ///     version: "3".into(),
    ///     always: vec![],
    ///     limit: Some(limit(5_000, 10_000)),
    ///     between_proofs: None,
    ///     proof_holds: None,
    ///     ppe: vec![],
    ///     points: vec![],
    /// };
    /// assert_eq!(rules.tightened(Some(limit(9_000, 2_000))).map(|l| (l.ac, l.dc)), Some((5_000, 2_000)));
    /// assert_eq!(rules.tightened(None), None);
    /// ```
    pub fn tightened(&self, limit: Option<Limit>) -> Option<Limit> {
        match (limit, &self.limit) {
            (Some(set), Some(own)) if set.ac <= own.ac && set.dc <= own.dc => Some(set),
            (Some(set), Some(own)) => {
                Some(Limit { ac: set.ac.min(own.ac), dc: set.dc.min(own.dc), rule: own.rule.clone() })
            }
            (set, _) => set,
        }
    }

    /// The limit of a job that is opened under these rules, where `set` is what this device was told before: the tighter of both.
    pub fn opens_with(&self, set: Option<&Limit>) -> Option<Limit> {
        self.tightened(set.cloned().or_else(|| self.limit.clone()))
    }
}

/// Whom to call as one text, as an entry keeps it beside what is signed: a line each, who and number parted by a tab.
pub fn call_written(call: &[WhomToCall]) -> String {
    call.iter().map(|c| format!("{}\t{}", c.who, c.number)).collect::<Vec<_>>().join("\n")
}

/// Reads what [`call_written`] wrote; what was withheld, or is none, calls nobody.
pub fn call_read(text: &str) -> Vec<WhomToCall> {
    let lines = text.lines().filter_map(|line| line.split_once('\t')).take(MAX_CALL);
    lines.map(|(who, number)| WhomToCall { who: who.to_owned(), number: number.to_owned() }).collect()
}
