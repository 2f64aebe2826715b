//! What a player who does everything right does next, from the first switch to the last proof.

use std::collections::BTreeSet;

use stillbar_core::journal::fact::*;
use stillbar_core::journal::{Entry, EntryId, Fact};
use stillbar_core::point::Means;
use stillbar_core::prove::Reading;
use stillbar_core::supply::Position;

use super::own::Is;
use super::plan::{Desk, Next};

impl Desk<'_> {
    pub fn isolated(&self) -> Option<Fact> {
        for point in self.own_points() {
            let last = self.all().filter(|e| match e.body.fact {
                Fact::PointOpened { point: p, .. } | Fact::PointClosed { point: p, .. } => p == point,
                _ => false,
            });
            if !matches!(last.last().map(|e| &e.body.fact), Some(Fact::PointOpened { .. })) {
                if let Some(asked) = self.at_the_point(point) {
                    return Some(asked);
                }
                let (seen, found) = ("Lamp out, blades seen apart".into(), Position::Closed);
                return Some(Fact::PointOpened { point, off_load: true, seen, found, knowing: Vec::new() });
            }
            for owner in self.workers() {
                if !self.is_locked(point, owner) {
                    let label = format!("L{}-{}", owner.short().to_uppercase(), self.locks_so_far());
                    let (on, key, means) = (On::Point(point), KeyAt::Owner, Means::Hasp);
                    return Some(Fact::LockFitted { on, owner, label, key, means, through: None });
                }
            }
            if !self.has(|f| matches!(f, Fact::SignPosted { point: p } if *p == point)) {
                return Some(Fact::SignPosted { point });
            }
            if self.plan.photos {
                if !self.has(|f| matches!(f, Fact::PhotoTaken { of, .. } if *of == point)) {
                    return Some(photo(point));
                }
                if let Some(asked) = self.both_labels(point) {
                    return Some(asked);
                }
                continue;
            }
            let step = format!("isolate-{point}");
            if !self.has(|f| matches!(f, Fact::Deviated { step: s, .. } if *s == step)) {
                return Some(Fact::Deviated { step, why: "No photo: the camera is not allowed here".into() });
            }
        }
        None
    }

    fn locks_so_far(&self) -> usize {
        self.entries.iter().filter(|e| matches!(e.body.fact, Fact::LockFitted { .. })).count()
    }

    fn is_locked(&self, point: EntryId, person: EntryId) -> bool {
        self.all().any(|e| match e.body.fact {
            Fact::LockFitted { on: On::Point(p), owner, .. } if p == point && owner == person => !self
                .has(|f| matches!(f, Fact::LockRemoved { lock, .. } | Fact::LockForced { lock, .. } if *lock == e.id)),
            _ => false,
        })
    }

    /// Covers, after stored energy had its time.
    pub fn opened_up(&self) -> Option<Next> {
        if self.has(|f| matches!(f, Fact::CoverOff { .. } | Fact::NoCovers { .. })) {
            return None;
        }
        let stored = self
            .all()
            .filter_map(|e| {
                if let Fact::StoredAnswered { found: Some(_), seconds, .. } = e.body.fact {
                    Some(seconds)
                } else {
                    None
                }
            })
            .max();
        let opened = self.all().filter(|e| matches!(e.body.fact, Fact::PointOpened { .. })).map(|e| e.body.wall).max();
        if let (Some(seconds), Some(opened)) = (stored, opened)
            && !self.again
            && self.wall - opened < i64::from(seconds) * 1000
        {
            return Some(Next::Wait(i64::from(seconds) * 1000));
        }
        Some(Next::Keep(if self.plan.covers {
            Fact::CoverOff { what: "Front plate".into() }
        } else {
            Fact::NoCovers { why: "It is open".into() }
        }))
    }

    pub fn proving(&self) -> Next {
        if let Some(cause) = self.cause() {
            return Next::Keep(cause);
        }
        let all: Vec<&Entry> = self.all().collect();
        let begun =
            all.iter().rposition(|e| matches!(e.body.fact, Fact::IndicatorProved { run: None, works: true, .. }));
        let indicator = self.instrument(InstrumentKind::Indicator).expect("there is one by now");
        let unit = self.instrument(InstrumentKind::ProvingUnit).expect("there is one by now");
        let proof =
            |run| Next::Keep(Fact::IndicatorProved { run, indicator, on: ProvedOn::ProvingUnit(unit), works: true });
        let Some(begun) = begun.filter(|_| !self.again) else { return proof(None) };
        let (run, since) = (all[begun].id, &all[begun..]);
        let has = |fits: &dyn Fn(&Fact) -> bool| since.iter().any(|e| fits(&e.body.fact));
        if !has(&|f| matches!(f, Fact::ReferenceProved { holds: true, .. })) {
            let how = "Low resistance to the main earthing terminal".into();
            return Next::Keep(Fact::ReferenceProved { run, way: EarthProof::MainTerminal, how, holds: true });
        }
        for stored in self.all().filter(|e| matches!(e.body.fact, Fact::StoredAnswered { found: Some(_), .. })) {
            if !has(&|f| matches!(f, Fact::DischargeRead { of, .. } if *of == stored.id)) {
                return Next::Keep(Fact::DischargeRead { run, of: stored.id, reading: Reading::None });
            }
        }
        for direct in self.all().filter(|e| {
            matches!(
                e.body.fact,
                Fact::SourceAnswered {
                    kind: SourceKind::Pv | SourceKind::Battery | SourceKind::Ups,
                    found: Some(_),
                    ..
                }
            )
        }) {
            if !has(&|f| matches!(f, Fact::DischargeRead { of, .. } if *of == direct.id)) {
                return Next::Keep(Fact::DischargeRead { run, of: direct.id, reading: Reading::None });
            }
        }
        for (first, then, dc) in self.readings() {
            let read = |f: &Fact| match f {
                Fact::ReadingTaken { first: a, then: b, dc: d, .. } => *a == first && *b == then && *d == dc,
                _ => false,
            };
            if !has(&read) {
                let reading = if self.plan.figures { Reading::Millivolts(0) } else { Reading::None };
                return Next::Keep(Fact::ReadingTaken { run, first, then, reading, dc });
            }
        }
        let last = since.last().expect("the run begins with itself");
        if matches!(last.body.fact, Fact::IndicatorProved { run: Some(_), .. }) { Next::Done } else { proof(Some(run)) }
    }

    /// Every pair, the less dangerous conductor first; direct voltage after all else.
    pub fn readings(&self) -> Vec<(String, String, bool)> {
        let wires = self.plan.wires();
        let mut direct = wires.iter().any(|wire| wire.is == Is::Pole);
        let mut all: Vec<String> = wires.into_iter().map(|wire| wire.name).collect();
        for e in self.all() {
            match &e.body.fact {
                Fact::SourceAnswered { found: Some(_), terminals, kind, .. } => {
                    all.extend(terminals.iter().filter(|t| !all.contains(t)).cloned().collect::<Vec<_>>());
                    direct |= matches!(kind, SourceKind::Pv | SourceKind::Battery | SourceKind::Ups);
                }
                Fact::StoredAnswered { found: Some(_), .. } => direct = true,
                _ => {}
            }
        }
        let (mut pairs, mut directs) = (Vec::new(), Vec::new());
        for (n, one) in all.iter().enumerate() {
            for other in &all[n + 1..] {
                pairs.push((one.clone(), other.clone(), false));
                if direct {
                    directs.push((one.clone(), other.clone(), true));
                }
            }
        }
        pairs.extend(directs);
        pairs
    }

    /// Something went wrong, and nobody found out why: the second of two runs is somebody else's.
    pub fn needs_mate(&self) -> bool {
        !self.plan.finds_out && self.has(went_wrong)
    }

    /// Runs that were begun since then.
    pub fn begun_since(&self) -> usize {
        let all: Vec<&Entry> = self.all().collect();
        let wrong = all.iter().rposition(|e| went_wrong(&e.body.fact)).unwrap_or(0);
        all[wrong..]
            .iter()
            .filter(|e| matches!(e.body.fact, Fact::IndicatorProved { run: None, works: true, .. }))
            .count()
    }

    /// What was behind what went wrong.
    pub fn cause(&self) -> Option<Fact> {
        let named: BTreeSet<EntryId> = self
            .all()
            .filter_map(|e| if let Fact::CauseNoted { of, .. } = &e.body.fact { Some(of) } else { None })
            .flatten()
            .copied()
            .collect();
        let of: Vec<EntryId> =
            self.all().filter(|e| went_wrong(&e.body.fact) && !named.contains(&e.id)).map(|e| e.id).collect();
        let (found, cause) = (self.plan.finds_out, "A neighbour's lighting shared the neutral, it seems".into());
        (!of.is_empty()).then_some(Fact::CauseNoted { of, found, cause })
    }
}

/// A photo that shows something.
pub fn photo(of: EntryId) -> Fact {
    Fact::PhotoTaken {
        sha256: "5a".repeat(32),
        length: 20_000,
        media: "image/jpeg".into(),
        of,
        note: String::new(),
        tags: Vec::new(),
        doubts: Vec::new(),
        copies: Vec::new(),
    }
}

pub fn went_wrong(fact: &Fact) -> bool {
    let lit = |r: &Reading| matches!(r, Reading::Lit(_) | Reading::Millivolts(1..));
    match fact {
        Fact::ReadingTaken { reading, .. } | Fact::VoltageMet { reading, .. } | Fact::DischargeRead { reading, .. } => {
            lit(reading)
        }
        Fact::ReferenceProved { holds, .. } => !holds,
        Fact::IndicatorProved { run: Some(_), works, .. } => !works,
        _ => false,
    }
}
