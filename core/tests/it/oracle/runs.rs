//! Runs of the dead test: which are whole, and which of them stands now.

use stillbar_core::journal::fact::{Duty, EarthProof, Limit, ProvedOn, SourceKind};
use stillbar_core::journal::{Entry, EntryId, Fact};
use stillbar_core::prove::{Reading, System};

use super::ends::{answered, run_of, troubles};
use super::instruments::{can_prove, checked, lights_at_dc};
use super::known::{HOUR, MINUTE, now, tick};
use super::own::{Is, Wire, ranges};
use super::promise::{Ask, Source};
use super::questions;
use super::systems::{least, line_shows_earth};
use super::waits::waited;

/// A run that somebody began with an indicator that worked.
pub struct Run<'a> {
    pub begin: &'a Entry,
    pub indicator: EntryId,
    /// Its proofs of the indicator that were good, the first one with them.
    pub proofs: Vec<&'a Entry>,
}

/// A reading that counts, and the proof of the indicator that came after it.
struct Counted<'a> {
    reading: &'a Entry,
    closed: &'a Entry,
}

/// Some run of the job stands.
pub fn runs_stand(ask: &Ask) -> Result<(), String> {
    let runs = runs(ask);
    let mut why = "nobody proved an indicator".to_owned();
    for run in &runs {
        let earlier: Vec<&Run> = runs.iter().filter(|other| other.begin.id != run.begin.id).collect();
        match stands(ask, run, &earlier) {
            Ok(()) => return Ok(()),
            Err(because) => why = because,
        }
    }
    Err(why)
}

fn runs<'a>(ask: &Ask<'_, 'a>) -> Vec<Run<'a>> {
    let begun = ask.valid().filter_map(|e| match &e.body.fact {
        Fact::IndicatorProved { run: None, indicator, works: true, .. } => Some((e, *indicator)),
        _ => None,
    });
    let all: Vec<(&Entry, EntryId)> = begun.collect();
    let of = |begin: &'a Entry, indicator: EntryId| {
        let proofs = ask.valid().filter(|e| match &e.body.fact {
            // "The same indicator is proved again."
            Fact::IndicatorProved { indicator: i, works: true, on, .. } => {
                run_of(e) == Some(begin.id) && ask.known.same_instrument(*i, indicator) && is_named(ask, *i, on)
            }
            _ => false,
        });
        Run { begin, indicator, proofs: proofs.collect() }
    };
    all.into_iter().map(|(begin, indicator)| of(begin, indicator)).collect()
}

/// "The proving source is named, and is not the indicator itself."
fn is_named(ask: &Ask, indicator: EntryId, on: &ProvedOn) -> bool {
    match on {
        ProvedOn::ProvingUnit(unit) => {
            let kind = ask.known.instrument(*unit).map(|i| i.0);
            kind == Some(stillbar_core::journal::fact::InstrumentKind::ProvingUnit)
                && !ask.known.same_instrument(*unit, indicator)
        }
        ProvedOn::KnownSource(which) => which.chars().any(char::is_alphanumeric),
    }
}

fn stands(ask: &Ask, run: &Run, others: &[&Run]) -> Result<(), String> {
    questions::known_to(ask, run)?;
    can_prove(ask, run)?;
    checked(ask, run)?;
    reference(ask, run)?;
    let counted = whole(ask, run, true)?;
    young(ask, &counted)?;
    signed(ask, run, &counted)?;
    let lit: Vec<EntryId> = troubles(ask).iter().filter_map(|(e, _)| run_of(e)).collect();
    let whole_too = |other: &&&Run| {
        !lit.contains(&other.begin.id) && can_prove(ask, other).is_ok() && whole(ask, other, false).is_ok()
    };
    let earlier: Vec<Run> = others
        .iter()
        .filter(whole_too)
        .map(|r| Run { begin: r.begin, indicator: r.indicator, proofs: r.proofs.clone() })
        .collect();
    answered(ask, run, &earlier)
}

/// Zero on every pair without a proof that the reference is earth proves nothing; "PE to a live line" is none in an IT system.
fn reference(ask: &Ask, run: &Run) -> Result<(), String> {
    let shown = ask.valid().any(|e| match &e.body.fact {
        Fact::ReferenceProved { run: r, way, holds: true, .. } => {
            let shows = *way != EarthProof::LiveLine || line_shows_earth(ask.system, ask.earthing, ask.marked());
            *r == run.begin.id && shows
        }
        _ => false,
    });
    if shown { Ok(()) } else { Err("nobody showed that the reference is earth".into()) }
}

/// Every pair shows nothing, between two good proofs of the indicator, known by the second to have come after the first. `now`: and nothing
/// has ended it since.
fn whole<'a>(ask: &Ask<'_, 'a>, run: &Run<'a>, now: bool) -> Result<Vec<Vec<Counted<'a>>>, String> {
    let mut all = Vec::new();
    let (conductors, direct) = (conductors(ask)?, brings_dc(ask));
    let pairs = conductors.iter().enumerate().flat_map(|(n, one)| conductors[n + 1..].iter().map(move |o| (one, o)));
    for (one, other) in pairs {
        let ranges = ranges(one, other, direct);
        let (one, other) = (&one.name, &other.name);
        for range in ranges {
            let of_pair = |e: &Entry| match &e.body.fact {
                Fact::ReadingTaken { first, then, reading, dc, .. } => {
                    let pair = (first == one && then == other) || (first == other && then == one);
                    // What lights at both and stays dark has shown both; a figure is one range's.
                    let dark = matches!(reading, Reading::None | Reading::Continuity);
                    let shows = dc == range || *range && dark && lights_at_dc(ask, run);
                    pair && shows && is_dead(ask, e, reading, *dc)
                }
                _ => false,
            };
            let what = format!("{one} - {other}{}", if *range { ", direct voltage," } else { "" });
            all.push(counted(ask, run, now, &what, &of_pair)?);
        }
    }
    // Stored energy: after its time, "taken as the shorter for a wait", and then nothing on the instrument.
    for stored in ask.own_sources().iter().filter(|s| s.kind.is_none()) {
        let of_item = |e: &Entry| match &e.body.fact {
            Fact::DischargeRead { of, reading, .. } => {
                *of == stored.entry.id && is_dead(ask, e, reading, true) && waited(ask, e, stored.wait)
            }
            _ => false,
        };
        all.push(counted(ask, run, now, &stored.found.what, &of_item)?);
    }
    // "Equipment that asks for DC counts as one": a UPS, PV or a battery is read at its own terminals.
    let charges = |s: &&Source| matches!(s.kind, Some(SourceKind::Ups | SourceKind::Pv | SourceKind::Battery));
    for source in ask.own_sources().iter().filter(charges) {
        let of_it = |e: &Entry| match &e.body.fact {
            Fact::DischargeRead { of, reading, .. } => *of == source.entry.id && is_dead(ask, e, reading, true),
            _ => false,
        };
        all.push(counted(ask, run, now, &source.found.what, &of_it)?);
    }
    Ok(all)
}

fn counted<'a>(
    ask: &Ask<'_, 'a>,
    run: &Run<'a>,
    now: bool,
    what: &str,
    fits: &dyn Fn(&Entry) -> bool,
) -> Result<Vec<Counted<'a>>, String> {
    let mut why = format!("{what} is not shown dead");
    let mut found = Vec::new();
    for reading in ask.valid().filter(|e| run_of(e) == Some(run.begin.id) && fits(e)) {
        if now && let Some(because) = ended(ask, reading) {
            why = format!("{what} was read without knowing that {because}");
            continue;
        }
        match closed(ask, run, reading) {
            Some(closed) => found.push(Counted { reading, closed }),
            None => why = format!("{what} was not read between two good proofs of the indicator"),
        }
    }
    if found.is_empty() { Err(why) } else { Ok(found) }
}

/// "Between two proofs of the indicator lie at most 60 min (a site may set less); pairs between two good proofs count."
fn closed<'a>(ask: &Ask<'_, 'a>, run: &Run<'a>, reading: &Entry) -> Option<&'a Entry> {
    let before = run.proofs.iter().filter(|q| ask.known.knew(reading, q));
    let before: Vec<&Entry> = before.copied().collect();
    let after = run.proofs.iter().filter(|q| ask.known.knew(q, reading));
    after.copied().find(|end| {
        let most = site_rule(ask, end).0;
        before.iter().any(|q| ask.known.longest(q, tick(end)).is_some_and(|ms| ms <= most))
    })
}

/// Minutes between proofs, and that a proof holds, as milliseconds: ours, or less by the site.
fn site_rule(ask: &Ask, at: &Entry) -> (i64, i64) {
    let rules = ask.known.at_site(ask.site).filter(|e| e.order() <= at.order());
    let last = rules.filter_map(|e| match e.body.fact {
        Fact::SiteRuled { between_proofs, proof_holds } => Some((between_proofs, proof_holds)),
        _ => None,
    });
    let (between, holds) = last.last().unwrap_or((60, 12 * 60));
    (i64::from(between.min(60)) * MINUTE, i64::from(holds.min(12 * 60)) * MINUTE)
}

fn ended(ask: &Ask, reading: &Entry) -> Option<String> {
    if let Some((_, why)) = ask.ends.iter().find(|(e, _)| !ask.known.knew(reading, e)) {
        return Some((*why).to_owned());
    }
    if ask.points.iter().any(|(_, openings)| !openings.iter().any(|o| ask.known.knew(reading, o))) {
        return Some("a point was opened again".into());
    }
    let unknown = ask.foreign.iter().find(|(_, answers)| !answers.iter().any(|a| ask.known.knew(reading, a)));
    unknown.map(|(foreign, _)| format!("{} was found at the site", foreign.found.what))
}

/// "A proof holds for the shift, at most 12 h (a site may set less)". A long test is as old as its end; one pair read anew makes no proof
/// young again.
fn young(ask: &Ask, counted: &[Vec<Counted>]) -> Result<(), String> {
    let (mut first_whole, mut oldest) = (i64::MAX, 0);
    let mut most = i64::MAX;
    for pair in counted {
        let ages: Option<Vec<i64>> = pair.iter().map(|c| ask.known.longest(c.closed, now(&ask.moment))).collect();
        // One whose age nobody can tell is no younger than the others.
        let ages = ages.ok_or("nobody can say how old the proof is: prove again")?;
        first_whole = first_whole.min(ages.iter().copied().max().unwrap_or(i64::MAX));
        oldest = oldest.max(ages.iter().copied().min().unwrap_or(i64::MAX));
        most = most.min(pair.iter().map(|c| site_rule(ask, c.closed).1).max().unwrap_or(0));
    }
    let age = first_whole.min(oldest);
    if age <= most { Ok(()) } else { Err(format!("the proof is {} min old", age / MINUTE)) }
}

/// "A learner's run counts once somebody of the job who is no learner has signed it."
fn signed(ask: &Ask, run: &Run, counted: &[Vec<Counted>]) -> Result<(), String> {
    let mut all: Vec<&Entry> = vec![run.begin];
    all.extend(counted.iter().flatten().flat_map(|c| [c.reading, c.closed]));
    // A pair that somebody else read as well needs no signature for the learner's reading; what only the learner did does.
    let learnt: Vec<&Entry> = all.iter().copied().filter(|e| duty(ask, e) == Some(Duty::Learning)).collect();
    if duty(ask, run.begin) != Some(Duty::Learning)
        && counted.iter().all(|pair| pair.iter().any(|c| !learnt.iter().any(|l| l.id == c.reading.id)))
    {
        return Ok(());
    }
    let signed = ask.valid().any(|e| match &e.body.fact {
        Fact::RunSigned { run: r, .. } => {
            *r == run.begin.id
                && duty(ask, e).is_some_and(|d| d != Duty::Learning)
                && counted.iter().all(|pair| pair.iter().any(|c| ask.known.knew(e, c.reading)))
        }
        _ => false,
    });
    if signed { Ok(()) } else { Err("a learner's run, and nobody who is no learner has signed it".into()) }
}

/// What the person of an entry did in the job, as far as was known there; `None`: they were not on it.
pub fn duty(ask: &Ask, e: &Entry) -> Option<Duty> {
    let by = ask.known.person(e.body.by?);
    let mut duty = None;
    for other in ask.valid().filter(|other| ask.known.knew(e, other)) {
        match other.body.fact {
            Fact::WorkerJoined { person, duty: d } if ask.known.person(person) == by => duty = Some(d),
            Fact::WorkerLeft { person } if ask.known.person(person) == by => duty = None,
            _ => {}
        }
    }
    duty
}

/// What is tested against each other: the conductors at the work, and "a found control supply brings its own terminals into the pairs".
fn conductors(ask: &Ask) -> Result<Vec<Wire>, String> {
    let mut all: Vec<Wire> = ask.tested().cloned().collect();
    for source in ask.own_sources().iter().filter(|s| s.kind == Some(SourceKind::Control)) {
        if source.terminals.is_empty() {
            return Err(format!("the terminals of {} are in no pair", source.found.what));
        }
        let terminals = source.terminals.iter().filter(|t| !all.iter().any(|wire| wire.name == **t));
        let terminals: Vec<Wire> = terminals.map(|t| Wire { name: t.clone(), is: Is::Control, supply: None }).collect();
        all.extend(terminals);
    }
    Ok(all)
}

/// Direct voltage is asked for where a UPS, PV, a battery or stored energy is there, and of a system of direct voltage: there of every pair.
fn brings_dc(ask: &Ask) -> bool {
    let mut own = ask.own_sources().into_iter();
    let poles_alone = ask.system != System::Own && ask.wires.iter().any(|wire| wire.is == Is::Pole);
    poles_alone || own.any(|s| matches!(s.kind, None | Some(SourceKind::Ups | SourceKind::Pv | SourceKind::Battery)))
}

/// And where a pole is in the set.
pub fn asks_for_dc(ask: &Ask) -> bool {
    brings_dc(ask) || ask.tested().any(|wire| wire.is == Is::Pole)
}

/// "Below 50 V AC and 120 V DC, and below half of the lowest voltage above zero that any source of the plan puts between a line or pole and its
/// reference." In millivolts.
pub fn bound(ask: &Ask) -> (u32, u32) {
    let line = least(ask.system, ask.nominal, ask.marked().is_some());
    let controls = ask.own_sources().iter().filter_map(|s| s.millivolts).collect::<Vec<u32>>();
    let half = controls.into_iter().chain([line]).filter(|mv| *mv > 0).min().map_or(u32::MAX, |mv| mv / 2);
    (half.min(50_000), half.min(120_000))
}

/// The limit that somebody who wrote `e` went by: AC, DC.
pub fn in_force(ask: &Ask, e: &Entry) -> (u32, u32) {
    let figures = |limit: &Option<Limit>| limit.as_ref().map_or((0, 0), |l| (l.ac, l.dc));
    let mut limit = match ask.known.get(ask.job).map(|e| &e.body.fact) {
        Some(Fact::JobOpened { limit, .. }) => figures(limit),
        _ => (0, 0),
    };
    for set in ask.valid().filter(|set| ask.known.knew(e, set)) {
        if let Fact::LimitSet { limit: new } = &set.body.fact {
            let new = figures(new);
            // "In a job only the person in charge changes it."
            let in_charge = duty(ask, set) == Some(Duty::InCharge);
            limit = if in_charge { new } else { (limit.0.min(new.0), limit.1.min(new.1)) };
        }
    }
    limit
}

/// "What counts is 'no indication'"; "for figures the company sets limits, AC and DC apart". "Pairs whose nominal is zero count by the same
/// figure."
fn is_dead(ask: &Ask, e: &Entry, reading: &Reading, dc: bool) -> bool {
    let (limit, bound) = (in_force(ask, e), bound(ask));
    let (limit, bound) = if dc { (limit.1, bound.1) } else { (limit.0, bound.0) };
    match reading {
        Reading::None | Reading::Continuity => true,
        Reading::Lit(_) => false,
        Reading::Millivolts(mv) => *mv == 0 || (*mv <= limit && *mv < bound),
    }
}

/// "A check counts for one shift."
pub const SHIFT: i64 = 12 * HOUR;
