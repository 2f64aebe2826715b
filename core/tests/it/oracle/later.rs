//! What has to be answered before the work, a cover back and the hand-back, from the table of docs/questions.md: "before what", and until when an
//! answer counts.

use std::collections::BTreeSet;

use stillbar_core::journal::fact::SourceKind;
use stillbar_core::journal::{Entry, EntryId, Fact};

use super::known::Known;
use super::own::{Is, wires};
use super::promise::system_of;
use super::questions::{Does, answer, stopped};

/// The entries of a job on a phone, where its next deed is done.
struct Job<'k, 'a> {
    known: &'k Known<'a>,
    id: EntryId,
}

/// Why this may not be done yet.
pub fn may_go_on(known: &Known, id: EntryId, fact: &Fact) -> Result<(), String> {
    let job = Job { known, id };
    match fact {
        Fact::WorkBegan { run } => job.work(*run),
        // Before the work is over nobody is asked what is left inside.
        Fact::CoverBack { .. } if job.is_over() => {
            job.needs("left-inside", None, &|f| matches!(f, Fact::CoverOff { .. }))
        }
        Fact::HandedBack { .. } => job.hand_back(),
        _ => Ok(()),
    }
}

fn scope(fact: &Fact) -> bool {
    matches!(fact, Fact::ScopeChanged { .. })
}

impl<'a> Job<'_, 'a> {
    fn valid(&self) -> impl Iterator<Item = &'a Entry> + '_ {
        self.known.of(self.id).filter(|e| !self.known.is_withdrawn(e.id))
    }

    fn has(&self, fits: &dyn Fn(&Fact) -> bool) -> bool {
        self.valid().any(|e| fits(&e.body.fact))
    }

    fn is_over(&self) -> bool {
        self.known.of(self.id).any(|e| matches!(e.body.fact, Fact::WorkFinished { .. }))
    }

    /// Answers that go or stand and have not lapsed.
    fn holding(
        &self,
        code: &str,
        of: Option<EntryId>,
        lapses: &dyn Fn(&Fact) -> bool,
    ) -> Vec<(&'a Entry, &'static str)> {
        let after = |e: &Entry| {
            self.known
                .of(self.id)
                .filter(|l| lapses(&l.body.fact))
                .all(|l| self.known.knew(e, l) || e.order() > l.order())
        };
        let all = self.valid().filter_map(answer).filter(|a| a.question.code == code && a.of == of);
        let all = all.filter(|a| a.said && a.does != Does::Stops && after(a.entry));
        all.map(|a| (a.entry, a.code)).collect()
    }

    fn needs(&self, code: &str, of: Option<EntryId>, lapses: &dyn Fn(&Fact) -> bool) -> Result<(), String> {
        if stopped(self.known, self.id, code) {
            return Err(format!("{code} is answered so that it stops"));
        }
        match self.holding(code, of, lapses).is_empty() {
            true => Err(format!("nobody answered {code}")),
            false => Ok(()),
        }
    }

    /// The last answer that was given, whether it lapsed or not.
    fn last(&self, code: &str, of: Option<EntryId>) -> Option<&'static str> {
        self.holding(code, of, &|_| false).last().map(|a| a.1)
    }

    fn has_three_lines(&self) -> bool {
        let told = system_of(self.known, self.id);
        told.is_some_and(|(system, _, _, own)| wires(system, own).iter().filter(|w| w.is == Is::Line).count() == 3)
    }

    /// The row of each question of *Work*.
    fn work(&self, run: EntryId) -> Result<(), String> {
        let cover = |f: &Fact| matches!(f, Fact::CoverOff { .. });
        let covers = |f: &Fact| cover(f) || scope(f);
        let tested = |f: &Fact| scope(f) || matches!(f, Fact::IndicatorProved { run: None, works: true, .. });
        if self.has(&cover) {
            self.needs("live-beside", None, &covers)?;
            if self.has_three_lines() {
                self.needs("current-transformers", None, &covers)?;
            }
        }
        let stored = self.has(&|f| matches!(f, Fact::StoredAnswered { found: Some(_), .. }));
        if stored {
            self.needs("charge-returned", None, &tested)?;
        }
        let other = self
            .has(&|f| matches!(f, Fact::SourceAnswered { found: Some(_), kind, .. } if *kind != SourceKind::Control));
        if stored || other || self.last("coupled", None) == Some("gone-under-load") {
            self.needs("temporary-earths", None, &scope)?;
            let holding = self.holding("temporary-earths", None, &scope);
            if holding.iter().all(|a| a.1 == "fitted") && !self.has_earth() {
                return Err("an earth is said to be in, and none is".into());
            }
        }
        if self.has(&|f| matches!(f, Fact::PermitNoted { reference: Some(_), .. })) {
            self.needs("released-by", None, &tested)?;
            let holding = self.holding("released-by", None, &tested);
            if holding.iter().all(|a| a.1 == "another") && !self.another_signed(run) {
                return Err("another is said to let the work start, and none signed".into());
            }
        }
        Ok(())
    }

    /// "`fitted`, while one is in."
    fn has_earth(&self) -> bool {
        let off = |id: EntryId| self.has(&|f| matches!(f, Fact::EarthRemoved { earth } if *earth == id));
        self.valid().any(|e| matches!(e.body.fact, Fact::EarthFitted { .. }) && !off(e.id))
    }

    /// "`another`, once somebody who did not begin the test signed it."
    fn another_signed(&self, run: EntryId) -> bool {
        let began = self.known.get(run).and_then(|e| e.body.by).map(|by| self.known.person(by));
        let signs = |e: &Entry| matches!(e.body.fact, Fact::RunSigned { run: r, .. } if r == run);
        self.valid().filter(|e| signs(e)).any(|e| e.body.by.map(|by| self.known.person(by)) != began)
    }

    /// The row of each question of *Hand back*, and the one of *Presence*.
    fn hand_back(&self) -> Result<(), String> {
        let back = |f: &Fact| scope(f) || matches!(f, Fact::PointClosed { .. });
        self.needs("rcd", None, &back)?;
        let told = system_of(self.known, self.id);
        let direct = told.is_some_and(|(system, _, _, own)| {
            let all = wires(system, own);
            all.iter().all(|w| !matches!(w.is, Is::Line | Is::Control | Is::Neutral))
                && all.iter().any(|w| w.is == Is::Pole)
        });
        if direct {
            self.needs("polarity-back", None, &back)?;
        }
        if self.last("current-transformers", None) == Some("shorted") {
            self.needs("shorts-off", None, &back)?;
        }
        let found = |e: &&Entry| matches!(e.body.fact, Fact::SourceAnswered { found: Some(_), .. });
        let sources: BTreeSet<EntryId> = self.valid().filter(found).map(|e| e.id).collect();
        for source in sources.into_iter().filter(|s| self.last("starts-itself", Some(*s)) == Some("blocked")) {
            self.needs("controls-back", Some(source), &back)?;
        }
        // What is left inside stops all that is behind it.
        match stopped(self.known, self.id, "left-inside") {
            true => Err("something is left inside".into()),
            false => Ok(()),
        }
    }
}
