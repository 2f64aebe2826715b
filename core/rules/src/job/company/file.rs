//! The file that rules of a company come in: JSON, read whole or refused with the first thing that is wrong and its place.

use serde::Serialize;
use stillbar_values::company::{
    CompanyRules, MAX_ALWAYS, MAX_CALL, MAX_CODE, MAX_COMPANY, MAX_FILE, MAX_NUMBER, MAX_POINT, MAX_POINTS, MAX_PPE,
    MAX_RULE, MAX_VERSION, MAX_WHO, OwnPoint, OwnStage, Ppe, PpeMoment, WhomToCall,
};

use super::{CompanyError, CompanyFault, CompanyFile, calls_fit, fits, wrong};
use crate::job::known::{BETWEEN_PROOFS, PROOF_HOLDS};
use crate::journal::fact::Limit;
use crate::prove::at::{At, Fields};
use crate::prove::fault::Unit;
use crate::prove::node::Node;
use crate::prove::volts;

/// The longest note in a file, in characters: it is for whoever keeps the file, and goes nowhere.
const MAX_NOTE: usize = 1000;

const FIELDS: [&str; 10] = [
    "company",
    "version",
    "always_asked",
    "dead_limit",
    "minutes_between_proofs",
    "minutes_a_proof_holds",
    "ppe",
    "points",
    "call",
    "note",
];

impl CompanyFile {
    /// Reads a file; the first thing that is wrong is told with its place.
    pub fn from_json(text: &str) -> Result<CompanyFile, CompanyError> {
        if text.len() > MAX_FILE {
            return Err(wrong("", CompanyFault::TooLarge).into());
        }
        if text.trim_start_matches('\u{feff}').trim().is_empty() {
            return Err(wrong("", CompanyFault::Empty).into());
        }
        let node = Node::parse(text)?;
        let fields = At::root(&node).fields(&FIELDS)?;
        if let Some(note) = fields.get("note") {
            note.text(MAX_NOTE)?;
        }
        let minutes = |name: &str, most| fields.get(name).map(|at| at.whole(1, most, Unit::Minutes)).transpose();
        let rules = CompanyRules {
            company: text_of(&fields, "", "company", MAX_COMPANY)?,
            version: text_of(&fields, "", "version", MAX_VERSION)?,
            always: list(&fields, "always_asked", MAX_ALWAYS, |at| Ok(at.text(MAX_CODE)?.to_owned()))?,
            limit: fields.get("dead_limit").map(|at| limit(&at)).transpose()?,
            between_proofs: minutes("minutes_between_proofs", BETWEEN_PROOFS)?,
            proof_holds: minutes("minutes_a_proof_holds", PROOF_HOLDS)?,
            ppe: ppe(&fields)?,
            points: list(&fields, "points", MAX_POINTS, point)?,
        };
        let call = list(&fields, "call", MAX_CALL, |at| {
            let (fields, path) = (at.fields(&["who", "number"])?, at.path());
            let who = text_of(&fields, path, "who", MAX_WHO)?;
            Ok(WhomToCall { who, number: text_of(&fields, path, "number", MAX_NUMBER)? })
        })?;
        fits(&rules)?;
        calls_fit(&call)?;
        Ok(CompanyFile { rules, call })
    }

    /// The same as a file, one spelling for one content.
    pub fn to_json(&self) -> String {
        // Texts and whole numbers: they can always be written.
        serde_json::to_string_pretty(&Written::of(self)).unwrap_or_default() + "\n"
    }
}

fn text_of(fields: &Fields, path: &str, name: &'static str, most: usize) -> Result<String, CompanyError> {
    match fields.get(name) {
        Some(at) => Ok(at.text(most)?.to_owned()),
        None => Err(wrong(path, CompanyFault::Missing(name)).into()),
    }
}

fn list<T>(
    fields: &Fields,
    name: &str,
    most: usize,
    item: impl Fn(&At) -> Result<T, CompanyError>,
) -> Result<Vec<T>, CompanyError> {
    let Some(at) = fields.get(name) else { return Ok(Vec::new()) };
    at.items(most)?.iter().map(item).collect()
}

fn limit(at: &At) -> Result<Limit, CompanyError> {
    let (fields, path) = (at.fields(&["ac_volts", "dc_volts", "rule"])?, at.path());
    let volts = |name: &'static str| match fields.get(name) {
        Some(at) => Ok(at.volts_set()?),
        None => Err(CompanyError::from(wrong(path, CompanyFault::Missing(name)))),
    };
    Ok(Limit { ac: volts("ac_volts")?, dc: volts("dc_volts")?, rule: text_of(&fields, path, "rule", MAX_RULE)? })
}

fn ppe(fields: &Fields) -> Result<Vec<Ppe>, CompanyError> {
    let Some(at) = fields.get("ppe") else { return Ok(Vec::new()) };
    let moments = at.fields(&PpeMoment::ALL.map(PpeMoment::name))?;
    let said = PpeMoment::ALL.into_iter().filter_map(|before| Some((before, moments.get(before.name())?)));
    said.map(|(before, at)| Ok(Ppe { before, text: at.text(MAX_PPE)?.to_owned() })).collect()
}

fn point(at: &At) -> Result<OwnPoint, CompanyError> {
    let (fields, path) = (at.fields(&["code", "stage", "text", "may_be_skipped"])?, at.path());
    let Some(stage) = fields.get("stage") else { return Err(wrong(path, CompanyFault::Missing("stage")).into()) };
    Ok(OwnPoint {
        code: text_of(&fields, path, "code", MAX_CODE)?,
        stage: stage.choice(&OwnStage::ALL.map(|stage| (stage.name(), stage)))?,
        text: text_of(&fields, path, "text", MAX_POINT)?,
        skippable: fields.get("may_be_skipped").map(|at| at.flag()).transpose()?.unwrap_or(false),
    })
}

/// A file, field by field in the order in which it is told of.
#[derive(Serialize)]
struct Written<'a> {
    company: &'a str,
    version: &'a str,
    #[serde(skip_serializing_if = "<[String]>::is_empty")]
    always_asked: &'a [String],
    #[serde(skip_serializing_if = "Option::is_none")]
    dead_limit: Option<LimitWritten<'a>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    minutes_between_proofs: Option<u32>,
    #[serde(skip_serializing_if = "Option::is_none")]
    minutes_a_proof_holds: Option<u32>,
    #[serde(skip_serializing_if = "serde_json::Map::is_empty")]
    ppe: serde_json::Map<String, serde_json::Value>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    points: Vec<PointWritten<'a>>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    call: Vec<CallWritten<'a>>,
}

#[derive(Serialize)]
struct LimitWritten<'a> {
    ac_volts: serde_json::Value,
    dc_volts: serde_json::Value,
    rule: &'a str,
}

#[derive(Serialize)]
struct PointWritten<'a> {
    code: &'a str,
    stage: &'static str,
    text: &'a str,
    may_be_skipped: bool,
}

#[derive(Serialize)]
struct CallWritten<'a> {
    who: &'a str,
    number: &'a str,
}

impl Written<'_> {
    fn of(file: &CompanyFile) -> Written<'_> {
        let rules = &file.rules;
        // As figures in volts: what stands there is a number in JSON as well.
        let figure = |mv| serde_json::from_str(&volts(mv)).unwrap_or_default();
        Written {
            company: &rules.company,
            version: &rules.version,
            always_asked: &rules.always,
            dead_limit: rules.limit.as_ref().map(|limit| LimitWritten {
                ac_volts: figure(limit.ac),
                dc_volts: figure(limit.dc),
                rule: &limit.rule,
            }),
            minutes_between_proofs: rules.between_proofs,
            minutes_a_proof_holds: rules.proof_holds,
            ppe: rules.ppe.iter().map(|p| (p.before.name().to_owned(), p.text.as_str().into())).collect(),
            points: rules
                .points
                .iter()
                .map(|p| PointWritten {
                    code: &p.code,
                    stage: p.stage.name(),
                    text: &p.text,
                    may_be_skipped: p.skippable,
                })
                .collect(),
            call: file.call.iter().map(|c| CallWritten { who: &c.who, number: &c.number }).collect(),
        }
    }
}
