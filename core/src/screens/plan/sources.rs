//! Other sources, asked for one kind at a time: "none found" is an answer that a named person gives after looking.

use super::super::build::Page;
use super::super::context::{Act, Look};
use super::super::home::{UNKNOWN, options, picked, read_word, spare, volts, word_of};
use super::super::job::next;
use super::super::parts::{EntryKind, Tone};
use crate::app::NotDone;
use crate::job::Job;
use crate::job::known::{SiteKind, SiteSource, ToldBy};
use crate::journal::fact::{Found, SourceKind, SourceRef};
use crate::journal::{EntryId, Fact};
use crate::text::{self, AskPlan, Gone};

/// The first question that is open, and the answers so far.
pub fn view(page: &mut Page, look: &Look, job: &Job) {
    page.caution(
        Tone::Warn,
        "A source that nobody looked for is to be treated as live. Go and look. Drawings and memory are not enough.",
    );
    match (job.unanswered_sources().first(), SourceKind::ALL.into_iter().find(|kind| !job.answered(*kind))) {
        (Some(known), _) => known_source(page, look, known),
        (None, Some(kind)) => question(page, look, kind),
        (None, None) => another(page, look, job),
    }
    if !job.sources.is_empty() || !job.elsewhere.is_empty() {
        page.heading("Answers so far");
    }
    for elsewhere in &job.elsewhere {
        let known = job.known.iter().flat_map(|k| &k.sources).find(|s| s.source == elsewhere.source);
        let what = known.map_or_else(|| "A source of this site".to_owned(), SiteSource::placed);
        page.fact(
            format!("{what} does not reach this work"),
            format!("{} ({})", elsewhere.why, look.by(&elsewhere.stamp)),
        );
    }
    for source in &job.sources {
        let by = look.by(&source.stamp);
        let Some(found) = &source.found else {
            page.fact(
                format!("{}: none found", text::source_kind(source.kind)),
                format!("Looked: {} ({by})", source.looked),
            );
            continue;
        };
        page.fact(
            format!("{}: {}", text::source_kind(source.kind), found.what),
            format!("Comes in at {} ({by})", found.at),
        );
        if !job.points.iter().any(|p| p.cuts == Some(source.stamp.id)) {
            let text = format!("{} needs a point of isolation of its own, under Points of isolation.", found.what);
            page.caution(Tone::Must, text);
        }
    }
}

/// A source that is known at the site beside this job: it reaches this work, or somebody says why not.
fn known_source(page: &mut Page, look: &Look, known: &SiteSource) {
    let (stores, here) = match known.kind {
        SiteKind::Stored(_) => (" (stored energy)", "It stores energy here too"),
        _ => ("", "It is a source here too"),
    };
    page.heading(format!("Known at this site: {}{stores}", known.what));
    page.caution(
        Tone::Must,
        format!("{}, told by {}. Does it reach this work? Go and look.", known.placed(), text::told_by(&known.told_by)),
    );
    if known.kind == SiteKind::Unsaid {
        page.choice("kind", "Kind of source", options(&SourceKind::ALL, text::source_kind), look.draft("kind"));
    }
    if matches!(known.kind, SiteKind::Unsaid | SiteKind::Source(SourceKind::Control)) {
        control(page, look);
    }
    page.main(here, format!("here {}", named(&known.source)));
    page.entry("elsewhere", "Or why it does not reach this work", "What you saw, and where", look.draft("elsewhere"));
    page.button("It does not reach this work", format!("elsewhere {}", named(&known.source)));
}

/// A source's name in an action.
fn named(source: &SourceRef) -> String {
    match source {
        SourceRef::Found(entry) => format!("found {entry}"),
        SourceRef::Drawn(id) => format!("drawn {id}"),
    }
}

fn answer_known(act: &mut Act, job: EntryId, verb: &str, arg: &str) -> Result<Fact, NotDone> {
    let now = act.job(job)?;
    let known = now.unanswered_sources().into_iter().find(|s| named(&s.source) == arg);
    let known = known.ok_or(Gone::Source)?;
    if verb == "elsewhere" {
        let why = act.need("elsewhere", AskPlan::SourceElsewhere)?;
        return Ok(Fact::SourceElsewhere { source: known.source.clone(), why });
    }
    let at = if known.at.is_empty() { "not said".to_owned() } else { known.at.clone() };
    let (found, looked) = (Found { what: known.what.clone(), at }, format!("Known from {}", told_by(&known.told_by)));
    let kind = match known.kind {
        SiteKind::Stored(seconds) => return Ok(Fact::StoredAnswered { found: Some(found), seconds, looked }),
        SiteKind::Source(kind) => kind,
        SiteKind::Unsaid => picked(act, "kind", AskPlan::SourceKind)?,
    };
    let (terminals, millivolts) = if kind == SourceKind::Control { brings(act)? } else { (Vec::new(), None) };
    Ok(Fact::SourceAnswered { kind, found: Some(found), looked, terminals, millivolts })
}

/// Who tells of a source, as an entry keeps it: what is written does not follow the catalogue.
fn told_by(by: &ToldBy) -> &str {
    match by {
        ToldBy::Job(title) => title,
        ToldBy::Network => "the supply network",
    }
}

fn question(page: &mut Page, look: &Look, kind: SourceKind) {
    let word = text::source_kind(kind);
    page.heading(&word);
    page.para(what_counts(kind));
    page.entry("looked", "Where you looked", "Rooms, boards, labels, persons asked", look.draft("looked"));
    page.main(format!("{word}: none found"), format!("none {}", word_of(&kind)));
    page.entry("what", "Or what you found", "As it is labelled", look.draft("what"));
    page.entry("at", "Where it comes in", "Board, terminal or cable", look.draft("at"));
    if kind == SourceKind::Control {
        control(page, look);
    }
    page.button(format!("{word}: found"), format!("found {}", word_of(&kind)));
}

/// All kinds are answered; one more of a kind can still turn up.
fn another(page: &mut Page, look: &Look, job: &Job) {
    page.heading("One more source");
    page.choice("kind", "Kind of source", options(&SourceKind::ALL, text::source_kind), look.draft("kind"));
    page.entry("what", "What you found", "As it is labelled", look.draft("what"));
    page.entry("at", "Where it comes in", "Board, terminal or cable", look.draft("at"));
    control(page, look);
    page.button("Keep one more source", "another");
    next(page, job);
}

/// What a control supply brings to the point of work.
pub(in crate::screens) fn control(page: &mut Page, look: &Look) {
    let hint = "Control supplies only, from the drawing: X3:1, X3:2. They are tested too.";
    page.entry("terminals", "Its terminals at the work, with commas", hint, look.draft("terminals"));
    let hint = "Control supplies only, such as 24";
    page.field("control-volts", "Its voltage in volts", hint, look.draft("control-volts"), EntryKind::Number, 8);
}

fn what_counts(kind: SourceKind) -> &'static str {
    match kind {
        SourceKind::SecondFeeder => "Changeover switches, ties, a feed from another board or another transformer.",
        SourceKind::Generator => "Standby sets, and inlets for a mobile set.",
        SourceKind::Ups => "Central ones and small ones in cabinets and under desks, and their bypass.",
        SourceKind::Pv => "Panels and inverters. Panels give voltage as long as there is light.",
        SourceKind::Battery => "Battery stores, and vehicle chargers that feed back.",
        SourceKind::Control => "Control voltage, heaters, lighting or metering that comes from another board.",
    }
}

/// Keeps an answer.
pub fn act(act: &mut Act, job: EntryId, verb: &str, arg: &str) -> Result<(), NotDone> {
    let asked = || read_word::<SourceKind>(arg).ok_or(UNKNOWN);
    let fact = match verb {
        "none" => {
            let kind = asked()?;
            // Doubt counts as a source: what was typed as found is not dropped for a tap on the other button.
            if !act.given("what").is_empty() || !act.given("at").is_empty() {
                return Err(AskPlan::SourceFoundOrNone.into());
            }
            let looked = act.need("looked", AskPlan::Looked)?;
            Fact::SourceAnswered { kind, found: None, looked, terminals: Vec::new(), millivolts: None }
        }
        "here" | "elsewhere" => answer_known(act, job, verb, arg)?,
        "found" => found(act, asked()?)?,
        "another" => {
            let kind = picked(act, "kind", AskPlan::SourceKind)?;
            found(act, kind)?
        }
        _ => return Err(UNKNOWN.into()),
    };
    act.keep(Some(job), fact).map(drop)
}

/// The terminals that a control supply brings to the point of work, and its voltage.
pub(in crate::screens) fn brings(act: &Act) -> Result<(Vec<String>, Option<u32>), NotDone> {
    let ask = AskPlan::ControlTerminals;
    let terminals = act.need("terminals", ask)?;
    let terminals = terminals.split(',').map(str::trim).filter(|t| !t.is_empty()).map(str::to_owned).collect();
    Ok((terminals, Some(volts(act, "control-volts", AskPlan::ControlVolts)?)))
}

fn found(act: &Act, kind: SourceKind) -> Result<Fact, NotDone> {
    let what = act.need("what", AskPlan::SourceWhat)?;
    let at = act.need("at", AskPlan::SourceAt)?;
    let looked = spare(act, "looked")?;
    let looked = if looked.is_empty() { at.clone() } else { looked };
    let (terminals, millivolts) = if kind == SourceKind::Control { brings(act)? } else { (Vec::new(), None) };
    Ok(Fact::SourceAnswered { kind, found: Some(Found { what, at }), looked, terminals, millivolts })
}
