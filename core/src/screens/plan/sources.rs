//! Other sources, asked for one kind at a time: "none found" is an answer that a named person gives after looking.

use super::super::again;
use super::super::build::Page;
use super::super::context::{Act, Look};
use super::super::home::{UNKNOWN, options, picked, read_word, spare, volts};
use super::super::job::next;
use super::super::parts::{EntryKind, Tone};
use crate::app::NotDone;
use crate::job::Job;
use crate::job::known::{SiteKind, SiteSource, ToldBy};
use crate::job::steps::Step;
use crate::journal::fact::{Found, SourceKind, SourceRef};
use crate::journal::{EntryId, Fact};
use crate::text::screens::job as said_job;
use crate::text::screens::plan as said;
use crate::text::{self, AskPlan, Gone};

/// The kinds that were looked for and not found, tapped one by one, and what was found; then the answers so far.
pub fn view(page: &mut Page, look: &Look, job: &Job) {
    page.caution(Tone::Warn, said::sources_caution());
    match job.unanswered_sources().first() {
        Some(known) => known_source(page, look, known),
        None => question(page, look, job),
    }
    if !job.sources.is_empty() || !job.elsewhere.is_empty() {
        page.heading(said::answers());
    }
    for elsewhere in &job.elsewhere {
        let known = job.known.iter().flat_map(|k| &k.sources).find(|s| s.source == elsewhere.source);
        let what = known.map_or_else(said::source_of_site, placed);
        page.fact(said::source_elsewhere(what), said_job::noted(&elsewhere.why, look.by(&elsewhere.stamp)));
    }
    for source in &job.sources {
        let by = look.by(&source.stamp);
        let Some(found) = &source.found else {
            page.fact(said::source_none(text::source_kind(source.kind)), said::looked(&source.looked, by));
            continue;
        };
        page.fact(said::source(text::source_kind(source.kind), &found.what), said::source_comes_in(&found.at, by));
        if !job.points.iter().any(|p| p.cuts == Some(source.stamp.id)) {
            page.caution(Tone::Must, said::source_needs_point(&found.what));
        }
    }
}

/// A source that is known at the site beside this job: it reaches this work, or somebody says why not.
fn known_source(page: &mut Page, look: &Look, known: &SiteSource) {
    let (heading, here) = match known.kind {
        SiteKind::Stored(..) => (said::known_stored(&known.what), said::known_stored_here()),
        _ => (said::known_source(&known.what), said::known_source_here()),
    };
    page.heading(heading);
    page.caution(Tone::Must, said::known_says(placed(known), text::told_by(&known.told_by)));
    if known.kind == SiteKind::Unsaid {
        page.choice("kind", &said::kind_of_source(), options(&SourceKind::ALL, text::source_kind), look.draft("kind"));
    }
    if matches!(known.kind, SiteKind::Unsaid | SiteKind::Source(SourceKind::Control)) {
        control(page, look);
    }
    page.main(here, format!("here {}", named(&known.source)));
    page.entry("elsewhere", &said::known_elsewhere(), &said::known_elsewhere_hint(), look.draft("elsewhere"));
    page.button(said::known_elsewhere_save(), format!("elsewhere {}", named(&known.source)));
}

/// What it is and where it comes in: two sources may have one name.
fn placed(source: &SiteSource) -> String {
    if source.at.is_empty() { source.what.clone() } else { said::source_placed(&source.what, &source.at) }
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
        SiteKind::Stored(seconds, kind, label) => {
            return Ok(Fact::StoredAnswered { found: Some(found), seconds, looked, kind, label });
        }
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

/// What stands for stored energy among the kinds: whoever walks round looks for both.
const STORED: &str = "stored";

fn question(page: &mut Page, look: &Look, job: &Job) {
    let open: Vec<SourceKind> = SourceKind::ALL.into_iter().filter(|kind| !job.answered(*kind)).collect();
    let mut kinds = options(&open, text::source_kind);
    if !job.stored_answered() {
        kinds.push((STORED.to_owned(), said::stored_energy()));
    }
    if !kinds.is_empty() {
        page.several("none", &said::looked_for(), kinds, look.draft("none"));
        let hint = said::looked_hint();
        page.entry_again(look, "looked", &said::where_looked(), &hint, again::looked(look));
    }
    if open.is_empty() {
        if !job.stored_answered() {
            page.button(said::save_not_found(), "none");
        }
        next(page, job);
    } else {
        page.main(said::save_not_found(), "none");
    }
    page.heading(said::found_one());
    page.choice("kind", &said::kind_of_source(), options(&SourceKind::ALL, text::source_kind), look.draft("kind"));
    page.entry("what", &said::what_found(), &said::as_labelled(), look.draft("what"));
    page.entry("at", &said::comes_in(), &said::comes_in_hint(), look.draft("at"));
    control(page, look);
    page.button(said::save_source(), "found");
    for kind in open {
        page.fact(text::source_kind(kind), said::what_counts(kind));
    }
}

/// What a control supply brings to the point of work.
pub(in crate::screens) fn control(page: &mut Page, look: &Look) {
    page.entry("terminals", &said::control_terminals(), &said::control_terminals_hint(), look.draft("terminals"));
    let (label, hint) = (said::control_volts(), said::control_volts_hint());
    page.field("control-volts", &label, &hint, look.draft("control-volts"), EntryKind::Number, 8);
}

/// Keeps an answer.
pub fn act(act: &mut Act, job: EntryId, verb: &str, arg: &str) -> Result<(), NotDone> {
    let fact = match verb {
        "none" => {
            none(act, job)?;
            return act.onward(job, Step::Sources);
        }
        "here" | "elsewhere" => answer_known(act, job, verb, arg)?,
        "found" => found(act)?,
        _ => return Err(UNKNOWN.into()),
    };
    act.keep(Some(job), fact).map(drop)
}

/// One answer for each kind that was tapped.
fn none(act: &mut Act, job: EntryId) -> Result<(), NotDone> {
    // Doubt counts as a source: what was typed as found is not dropped for a tap on the other button.
    if !act.given("what").is_empty() || !act.given("at").is_empty() {
        return Err(AskPlan::SourceFoundOrNone.into());
    }
    let kinds = act.need("none", AskPlan::SourceKinds)?;
    let looked = act.need("looked", AskPlan::Looked)?;
    for word in kinds.lines() {
        let looked = looked.clone();
        let fact = if word == STORED {
            super::stored::none(act, job, looked)?
        } else {
            let kind = read_word::<SourceKind>(word).ok_or(UNKNOWN)?;
            Fact::SourceAnswered { kind, found: None, looked, terminals: Vec::new(), millivolts: None }
        };
        act.keep(Some(job), fact)?;
    }
    Ok(())
}

/// The terminals that a control supply brings to the point of work, and its voltage.
pub(in crate::screens) fn brings(act: &Act) -> Result<(Vec<String>, Option<u32>), NotDone> {
    let ask = AskPlan::ControlTerminals;
    let terminals = act.need("terminals", ask)?;
    let terminals = terminals.split(',').map(str::trim).filter(|t| !t.is_empty()).map(str::to_owned).collect();
    Ok((terminals, Some(volts(act, "control-volts", AskPlan::ControlVolts)?)))
}

fn found(act: &Act) -> Result<Fact, NotDone> {
    let kind = picked(act, "kind", AskPlan::SourceKind)?;
    let what = act.need("what", AskPlan::SourceWhat)?;
    let at = act.need("at", AskPlan::SourceAt)?;
    let looked = spare(act, "looked")?;
    let looked = if looked.is_empty() { at.clone() } else { looked };
    let (terminals, millivolts) = if kind == SourceKind::Control { brings(act)? } else { (Vec::new(), None) };
    Ok(Fact::SourceAnswered { kind, found: Some(Found { what, at }), looked, terminals, millivolts })
}
