//! What a player who does everything right does once it is proved: from the questions before the work to the hand-back.

use stillbar_core::journal::fact::*;
use stillbar_core::journal::{Entry, EntryId, Fact};

use super::asked::{WORDS, answered};
use super::own::Is;
use super::plan::Desk;

impl Desk<'_> {
    /// `None`: it is handed back, or there is nothing to be done that they know of.
    pub fn later(&self) -> Option<Fact> {
        if self.has(|f| matches!(f, Fact::HandedBack { .. })) {
            return None;
        }
        if self.has(|f| matches!(f, Fact::WorkFinished { .. } | Fact::GivenUp { .. })) {
            return self.restoring();
        }
        let run = self
            .all()
            .filter(|e| matches!(e.body.fact, Fact::IndicatorProved { run: None, works: true, .. }))
            .last()?;
        let all: Vec<&Entry> = self.all().collect();
        let begun = all.iter().position(|e| e.id == run.id)?;
        let asked = self.before_work(&all[begun..]);
        if asked.is_some() {
            return asked;
        }
        let at_work =
            |e: &&&Entry| matches!(e.body.fact, Fact::WorkBegan { .. } | Fact::WorkLeft { .. } | Fact::WorkStopped {});
        match all.iter().rfind(at_work).map(|e| &e.body.fact) {
            Some(Fact::WorkBegan { run: of }) if *of == run.id => {
                Some(Fact::WorkFinished { clear: "Tools counted, nobody in the board".into() })
            }
            _ => Some(Fact::WorkBegan { run: run.id }),
        }
    }

    /// What a question is answered with, unless it is the one that they leave out.
    fn asks(&self, code: &'static str, of: Option<EntryId>) -> Option<Fact> {
        (self.plan.leaves_out != Some(code)).then(|| self.says(code, of))
    }

    /// `since`: from the beginning of the test that stands. Covers came off before it.
    fn before_work(&self, since: &[&Entry]) -> Option<Fact> {
        let said = |code: &str| {
            since.iter().any(|e| matches!(&e.body.fact, Fact::Answered { question, of: None, .. } if question == code))
        };
        let stored = self.has(|f| matches!(f, Fact::StoredAnswered { found: Some(_), .. }));
        let other = self.has(|f| matches!(f, Fact::SourceAnswered { found: Some(_), .. }));
        let coupled =
            self.has(|f| matches!(f, Fact::Answered { question, answer, .. } if question == "coupled" && answer == "gone-under-load"));
        let cover = self.has(|f| matches!(f, Fact::CoverOff { .. }));
        let permit = self.has(|f| matches!(f, Fact::PermitNoted { reference: Some(_), .. }));
        let lines = self.plan.wires().iter().filter(|w| w.is == Is::Line).count();
        for (code, asked) in [
            ("charge-returned", stored),
            ("temporary-earths", stored || other || coupled),
            ("live-beside", cover),
            ("current-transformers", cover && lines == 3),
            ("released-by", permit),
        ] {
            if !asked || said(code) {
                continue;
            }
            // An earth is in before it is said to be, and nobody else is here to sign.
            let fact = match code {
                "released-by" if self.plan.leaves_out != Some(code) => Some(answered(code, "tester", None, "")),
                _ => self.asks(code, None),
            };
            let fitted = matches!(&fact, Some(Fact::Answered { answer, .. }) if answer == "fitted");
            if fitted && !since.iter().any(|e| matches!(e.body.fact, Fact::EarthFitted { .. })) {
                return Some(Fact::EarthFitted {
                    label: format!("E{}", since.len()),
                    at: "Busbar, below the first breaker".into(),
                });
            }
            if fact.is_some() {
                return fact;
            }
        }
        None
    }

    fn restoring(&self) -> Option<Fact> {
        let gone = |fits: &dyn Fn(&Fact) -> bool| self.has(fits);
        for e in self.all() {
            if matches!(e.body.fact, Fact::EarthFitted { .. })
                && !gone(&|f| matches!(f, Fact::EarthRemoved { earth } if *earth == e.id))
            {
                return Some(Fact::EarthRemoved { earth: e.id });
            }
        }
        let covers: Vec<EntryId> =
            self.all().filter(|e| matches!(e.body.fact, Fact::CoverOff { .. })).map(|e| e.id).collect();
        let back = |cover: EntryId| gone(&|f| matches!(f, Fact::CoverBack { cover: c } if *c == cover));
        if let Some(cover) = covers.into_iter().find(|cover| !back(*cover)) {
            let asked = (!self.is_answered("left-inside", None)).then(|| self.asks("left-inside", None)).flatten();
            return Some(asked.unwrap_or(Fact::CoverBack { cover }));
        }
        if !gone(&|f| matches!(f, Fact::Told { about: About::Energising, .. })) {
            return Some(Fact::Told { who: "Shift leader".into(), how: "In person".into(), about: About::Energising });
        }
        for e in self.all().filter(|e| matches!(e.body.fact, Fact::LockFitted { .. })) {
            let off =
                |f: &Fact| matches!(f, Fact::LockRemoved { lock, .. } | Fact::LockForced { lock, .. } if *lock == e.id);
            if !gone(&off) {
                return Some(Fact::LockRemoved { lock: e.id, cut: None });
            }
        }
        for point in self.own_points() {
            if !gone(&|f| matches!(f, Fact::SignRemoved { point: p } if *p == point)) {
                return Some(Fact::SignRemoved { point });
            }
        }
        // The normal supply first; it is the first that was noted.
        for point in self.own_points() {
            if !gone(&|f| matches!(f, Fact::PointClosed { point: p, .. } if *p == point)) {
                let beside = Some("The changeover lets one of them on".into());
                return Some(Fact::PointClosed { point, beside });
            }
        }
        self.hand_back()
    }

    fn hand_back(&self) -> Option<Fact> {
        let shorted = |f: &Fact| matches!(f, Fact::Answered { question, answer, .. } if question == "current-transformers" && answer == "shorted");
        let direct = !self.plan.wires().iter().any(|w| matches!(w.is, Is::Line | Is::Neutral | Is::Control));
        let skipped = |step: &str| self.has(|f| matches!(f, Fact::Deviated { step: s, .. } if s == step));
        let skip =
            |step: &str| Fact::Deviated { step: step.into(), why: "Read by the next shift, who know of it".into() };
        let before = [("polarity-back", direct)];
        let after = [("rcd", true), ("shorts-off", self.has(shorted)), ("counted-back", self.workers().len() > 1)];
        let asked = |all: &[(&'static str, bool)]| {
            let open = all.iter().filter(|(code, asked)| *asked && !self.is_answered(code, None));
            open.filter_map(|(code, _)| self.asks(code, None)).next()
        };
        if let Some(fact) = asked(&before) {
            return Some(fact);
        }
        if !skipped("presence") {
            return Some(skip("presence"));
        }
        if let Some(fact) = asked(&after) {
            return Some(fact);
        }
        for e in self.all() {
            if let Fact::Answered { question, answer, of: Some(of), .. } = &e.body.fact
                && question == "starts-itself"
                && answer == "blocked"
                && !self.is_answered("controls-back", Some(*of))
                && let Some(fact) = self.asks("controls-back", Some(*of))
            {
                return Some(fact);
            }
        }
        Some(Fact::HandedBack { to: "Shift leader".into(), note: String::new(), mark: WORDS.into() })
    }
}
