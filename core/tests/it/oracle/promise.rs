//! The promises, sentence by sentence: may "proved dead" stand now? Written from what was promised, by a hand that does not look at how the
//! app works it out; it shares no line with it. Where a promise is silent, the plain reading. The app may be more cautious, never less.
//!
//! Start at [`may_stand`]; which locks are on is [`super::points::locks_on`].

use std::collections::BTreeSet;

use stillbar_core::journal::fact::{Found, On, SourceKind, SourceRef};
use stillbar_core::journal::{Entry, EntryId, Fact};
use stillbar_core::prove::{Conductor, Earthing, System};

use super::alike::{alike, says_something};
use super::ends::{self, asides};
use super::known::{Known, Moment};
use super::network;
use super::own::{Is, Wire, live, wires};
use super::points::{like, locks_on};
use super::questions;
use super::runs::runs_stand;
use super::systems::{marked, middle_has_to_open};
use super::waits::wait;

/// A job that is asked about.
pub struct Ask<'k, 'a> {
    pub known: &'k Known<'a>,
    pub job: EntryId,
    pub site: Option<EntryId>,
    pub system: System,
    pub earthing: Earthing,
    pub nominal: u32,
    /// Its conductors, and the names of those that leave the pairs because they stay live.
    pub wires: Vec<Wire>,
    pub live: BTreeSet<String>,
    pub moment: Moment<'k>,
    /// Every way that ended, or would have ended, a proof of this job.
    pub ends: Vec<(&'a Entry, &'static str)>,
    /// The points of this job, and the openings of each that count.
    pub points: Vec<(&'a Entry, Vec<&'a Entry>)>,
    /// What other jobs found at the site, and this one did not find itself; and who here said that it is elsewhere.
    pub foreign: Vec<(Source<'a>, Vec<&'a Entry>)>,
}

/// A source or stored energy that somebody found.
#[derive(Clone, Copy)]
pub struct Source<'a> {
    pub entry: &'a Entry,
    /// `None`: stored energy.
    pub kind: Option<SourceKind>,
    pub found: &'a Found,
    pub terminals: &'a [String],
    pub millivolts: Option<u32>,
    /// How long it is waited for, in milliseconds.
    pub wait: i64,
}

/// Whether "proved dead" may stand for a job on a phone that knows this, and why not.
pub fn may_stand(known: &Known, job: EntryId, moment: &Moment) -> Result<(), String> {
    let opened = known.get(job).ok_or("the job is not known")?;
    let (system, earthing, nominal, own) = system_of(known, job).ok_or("this is no job")?;
    let wires = wires(system, own);
    let (moment, site) = (*moment, opened.body.site);
    let ends = ends::of(known, job);
    let (live, points, foreign) = (BTreeSet::new(), Vec::new(), Vec::new());
    let mut ask = Ask { known, job, site, system, earthing, nominal, wires, live, moment, ends, points, foreign };
    ask.live = live_of(&ask);
    ask.points = ask.all_points();
    ask.foreign = ask.foreign_sources();
    // "Says 'this phone has forgotten what it wrote: treat as live'."
    if moment.forgotten {
        return Err("this phone has forgotten what it wrote".into());
    }
    // "Entries put aside are listed on the job they are about and count as the cautious reading."
    asides(&ask)?;
    questions::allow(&ask)?;
    sources_answered(&ask)?;
    points_hold(&ask)?;
    network::allows(known, job, &moment)?;
    runs_stand(&ask)
}

fn live_of(ask: &Ask) -> BTreeSet<String> {
    live(ask.system, &ask.wires, &ask.valid().collect::<Vec<_>>())
}

/// What the job is about: as it was opened, or as it was corrected last.
pub fn system_of<'a>(known: &Known<'a>, job: EntryId) -> Option<(System, Earthing, u32, &'a [Conductor])> {
    let told = known.of(job).filter(|e| !known.is_withdrawn(e.id)).filter_map(|e| match &e.body.fact {
        Fact::JobOpened { system, earthing, nominal_millivolts, own, .. }
        | Fact::SystemCorrected { system, earthing, nominal_millivolts, own, .. } => {
            Some((*system, *earthing, *nominal_millivolts, own.as_slice()))
        }
        _ => None,
    });
    told.last()
}

impl<'k, 'a> Ask<'k, 'a> {
    pub fn entries(&self) -> impl Iterator<Item = &'a Entry> + '_ {
        self.known.of(self.job)
    }

    /// Those that nobody called a mistake.
    pub fn valid(&self) -> impl Iterator<Item = &'a Entry> + '_ {
        self.entries().filter(|e| !self.known.is_withdrawn(e.id))
    }

    /// What this job found itself.
    pub fn own_sources(&self) -> Vec<Source<'a>> {
        self.valid().filter_map(source).collect()
    }

    fn foreign_sources(&self) -> Vec<(Source<'a>, Vec<&'a Entry>)> {
        let others = self.known.at_site(self.site).filter(|e| e.job() != Some(self.job));
        let foreign =
            others.filter(|e| !self.known.is_withdrawn(e.id)).filter_map(source).filter(|s| !self.found_too(s));
        foreign.map(|s| (s, self.elsewhere(&s))).collect()
    }

    fn elsewhere(&self, source: &Source) -> Vec<&'a Entry> {
        let answers = self.valid().filter(|e| match &e.body.fact {
            // "Reasons say something."
            Fact::SourceElsewhere { source: SourceRef::Found(id), why } => {
                *id == source.entry.id && says_something(why)
            }
            _ => false,
        });
        answers.collect()
    }

    /// This job found the same thing itself.
    fn found_too(&self, foreign: &Source) -> bool {
        self.own_sources().iter().any(|own| {
            own.kind == foreign.kind
                && alike(&own.found.what, &foreign.found.what)
                && alike(&own.found.at, &foreign.found.at)
        })
    }

    fn all_points(&self) -> Vec<(&'a Entry, Vec<&'a Entry>)> {
        let points = self.valid().filter(|e| matches!(e.body.fact, Fact::PointAdded { .. }));
        points.map(|point| (point, self.openings(point))).collect()
    }

    /// Which openings of this point count: in this job, by somebody who knew of every closing of it, in any job.
    fn openings(&self, point: &Entry) -> Vec<&'a Entry> {
        let like = like(self.known, point.id);
        let closed = |e: &&Entry| matches!(e.body.fact, Fact::PointClosed { point, .. } if like.contains(&point));
        let closings: Vec<&Entry> = self.known.entries.iter().copied().filter(closed).collect();
        let opened = self.valid().filter(|e| match &e.body.fact {
            Fact::PointOpened { point, knowing, .. } => {
                like.contains(point) && closings.iter().all(|c| knowing.contains(&c.id) || self.known.knew(e, c))
            }
            _ => false,
        });
        opened.collect()
    }

    /// What is to be proved dead.
    pub fn tested(&self) -> impl Iterator<Item = &Wire> {
        self.wires.iter().filter(|wire| !self.live.contains(&wire.name))
    }

    /// The line or pole that somebody has shown to be the one.
    pub fn marked(&self) -> Option<&'static str> {
        marked(self.system, self.valid())
    }

    /// Somebody of the job passed over a step in their own name.
    pub fn passed_over(&self, step: &str) -> bool {
        self.valid()
            .any(|e| matches!(&e.body.fact, Fact::Deviated { step: s, why } if s.contains(step) && says_something(why)))
    }
}

fn source<'a>(e: &'a Entry) -> Option<Source<'a>> {
    match &e.body.fact {
        Fact::SourceAnswered { kind, found: Some(found), terminals, millivolts, .. } => {
            Some(Source { entry: e, kind: Some(*kind), found, terminals, millivolts: *millivolts, wait: 0 })
        }
        Fact::StoredAnswered { found: Some(found), seconds, kind, label, .. } => {
            let wait = wait(*kind, *label, *seconds);
            Some(Source { entry: e, kind: None, found, terminals: &[], millivolts: None, wait })
        }
        _ => None,
    }
}

/// Other sources and stored energy were looked for, for what is worked on now; what another job found is answered for here.
fn sources_answered(ask: &Ask) -> Result<(), String> {
    let scopes: Vec<&Entry> = ask.entries().filter(|e| matches!(e.body.fact, Fact::ScopeChanged { .. })).collect();
    let fresh = |e: &Entry| scopes.iter().all(|s| ask.known.knew(e, s));
    for kind in SourceKind::ALL {
        let answered = ask.valid().any(|e| match &e.body.fact {
            Fact::SourceAnswered { kind: k, .. } => *k == kind && fresh(e),
            _ => false,
        });
        if !answered {
            return Err(format!("nobody looked for this: {kind:?}"));
        }
    }
    if !ask.valid().any(|e| matches!(e.body.fact, Fact::StoredAnswered { .. }) && fresh(e)) {
        return Err("nobody looked for stored energy".into());
    }
    // "A source, control supply or stored energy found in this job, or noted at the site where the network does not show it cut off."
    match ask.foreign.iter().find(|(_, answers)| answers.is_empty()) {
        Some((source, _)) => Err(format!("{} was found at the site by another job", source.found.what)),
        None => Ok(()),
    }
}

/// Everything that can feed the work is open, locked open, and on every conductor that it has to be.
fn points_hold(ask: &Ask) -> Result<(), String> {
    let on = locks_on(ask.known);
    let mut cut: Vec<(Option<EntryId>, &Vec<String>)> = Vec::new();
    for (point, openings) in &ask.points {
        let Fact::PointAdded { label, lockable, poles, cuts, .. } = &point.body.fact else { continue };
        if openings.is_empty() {
            return Err(format!("{label} is not known to be open"));
        }
        let like = like(ask.known, point.id);
        let is_on = on.iter().any(|l| matches!(l.on, On::Point(p) if like.contains(&p)));
        if *lockable && !is_on {
            return Err(format!("no lock is on {label}"));
        }
        // "A PEN never."
        let earth = |p: &&String| ask.wires.iter().any(|wire| wire.is == Is::Earth && wire.name == **p);
        if poles.iter().any(|p| p == "PEN" || p == "PE" || earth(&p)) {
            return Err(format!("{label} opens the {}", poles.join(", ")));
        }
        cut.push((*cuts, poles));
    }
    let opens =
        |cuts: Option<EntryId>, pole: &str| cut.iter().any(|(c, poles)| *c == cuts && poles.iter().any(|p| p == pole));
    // "A line that was shown to be at earth may be a solid link, and need not be opened; every other line and pole has to be."
    let link = ask.marked().filter(|_| ask.system == System::CornerGrounded);
    let apart = middle_has_to_open(ask.earthing);
    let must = |wire: &&Wire| wire.has_to_open() && link != Some(wire.name.as_str()) || apart && wire.is_middle();
    for wire in ask.tested().filter(must) {
        // What is of another supply is opened by whatever point cuts that.
        let by_any = || wire.supply.is_some() && cut.iter().any(|(_, poles)| poles.contains(&wire.name));
        if !opens(None, &wire.name) && !by_any() {
            return Err(format!("{} is opened by no point", wire.name));
        }
    }
    for source in ask.own_sources() {
        let Some(kind) = source.kind else { continue };
        let normal = || ask.wires.iter().filter(|wire| wire.supply.is_none());
        let lines = normal().filter(|wire| wire.has_to_open()).map(|wire| &wire.name);
        // "A found source's point must open every line or pole of that source,"
        let mut must: Vec<&String> =
            if kind == SourceKind::Control { source.terminals.iter().collect() } else { lines.collect() };
        // "and its neutral where the system asks for it (TT, IT, a neutral not reliably at earth, a source changed over)".
        let asks = apart || matches!(kind, SourceKind::SecondFeeder | SourceKind::Generator);
        let middles = normal().filter(|wire| wire.is_middle() && asks && kind != SourceKind::Control);
        must.extend(middles.map(|wire| &wire.name));
        if let Some(pole) = must.into_iter().find(|pole| !opens(Some(source.entry.id), pole)) {
            return Err(format!("{pole} of {} is opened by no point", source.found.what));
        }
    }
    Ok(())
}
