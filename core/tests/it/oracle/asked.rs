//! How somebody who does everything right answers what is asked, each at its moment.

use stillbar_core::journal::fact::{About, SourceKind};
use stillbar_core::journal::{Entry, EntryId, Fact};
use stillbar_core::prove::Measured;

use super::chance::Chance;
use super::known::Known;
use super::labels;
use super::plan::Desk;
use super::prove::went_wrong;
use super::questions::{self, Does};

/// What there is to be said, whatever is asked.
pub const WORDS: &str = "Seen and said at the spot";

pub fn answered(question: &str, answer: &str, of: Option<EntryId>, words: &str) -> Fact {
    Fact::Answered {
        question: question.into(),
        answer: answer.into(),
        of,
        point: None,
        words: words.into(),
        who: words.into(),
        read: shown(question, answer),
    }
}

/// What an instrument shows where nothing is there, of each answer that is read with one.
fn shown(question: &str, answer: &str) -> Option<Measured> {
    match (question, answer) {
        ("neutral-current", "none") => Some(Measured::Milliamps(0)),
        ("coupled", "gone-under-load") => Some(Measured::NoIndication),
        ("charge-returned", "gone") => Some(Measured::Millivolts(0)),
        _ => None,
    }
}

impl Desk<'_> {
    /// With one of the answers that go or stand, the same one each time that this is asked on the same job.
    pub fn says(&self, code: &str, of: Option<EntryId>) -> Fact {
        let nth = questions::ALL.iter().position(|q| q.code == code).expect("it is in the table");
        let all: Vec<_> = questions::ALL[nth].answers.iter().filter(|a| a.1 != Does::Stops).collect();
        let chosen = Chance(self.plan.answers + nth as u64).pick(&all).copied().expect("one of them goes");
        answered(code, chosen.0, of, if chosen.2 { WORDS } else { "" })
    }

    pub fn is_answered(&self, code: &str, of: Option<EntryId>) -> bool {
        self.has(|f| matches!(f, Fact::Answered { question, of: o, .. } if question == code && *o == of))
    }

    /// They believe that what was stopped is over.
    fn goes_on_stopped(&self) -> bool {
        self.goes_on && self.has(|f| matches!(f, Fact::Answered { answer, .. } if answer == "it-started"))
    }

    /// Since the last entry that fits, if there is one.
    fn is_answered_since(&self, code: &str, of: Option<EntryId>, fits: impl Fn(&Fact) -> bool) -> bool {
        let all: Vec<&Entry> = self.all().collect();
        let from = all.iter().rposition(|e| fits(&e.body.fact)).unwrap_or(0);
        all[from..]
            .iter()
            .any(|e| matches!(&e.body.fact, Fact::Answered { question, of: o, .. } if question == code && *o == of))
    }

    /// Which line is high or at earth, before anything is opened.
    pub fn line_asked_for(&self) -> Option<Fact> {
        let (code, _) = self.plan.row().marks?;
        (!self.is_answered(code, None)).then(|| answered(code, self.plan.mark, None, WORDS))
    }

    /// Once the people were told.
    pub fn told_each_other(&self) -> Option<Fact> {
        let told = self.has(|f| matches!(f, Fact::Told { about: About::Isolating, .. }));
        let permit = self.has(|f| matches!(f, Fact::PermitNoted { reference: Some(_), .. }));
        let asked = told && permit && !self.is_answered("told-each-other", None);
        asked.then(|| self.says("told-each-other", None))
    }

    /// Once instruments were checked; another one that joins is another answer.
    pub fn instrument_fit(&self) -> Option<Fact> {
        let checked = |e: &&Entry| match e.body.fact {
            Fact::InstrumentChecked { instrument, .. } => Some((e.id, instrument)),
            _ => None,
        };
        let checks: Vec<(EntryId, EntryId)> = self.all().filter_map(|e| checked(&e)).collect();
        let joined = checks.iter().enumerate().rfind(|&(n, c)| !checks[..n].iter().any(|before| before.1 == c.1));
        let joined = joined.map(|(_, c)| c.0)?;
        let all: Vec<&Entry> = self.all().collect();
        let from = all.iter().position(|e| e.id == joined)?;
        let asked = !all[from..]
            .iter()
            .any(|e| matches!(&e.body.fact, Fact::Answered { question, .. } if question == "instrument-fit"));
        asked.then(|| self.says("instrument-fit", None))
    }

    /// Before a point is opened.
    pub fn at_the_point(&self, point: EntryId) -> Option<Fact> {
        let added = self.all().find(|e| e.id == point)?;
        let Fact::PointAdded { cuts, .. } = added.body.fact else { return None };
        let Some(source) = cuts else {
            return (!self.is_answered("right-board", Some(point))).then(|| self.says("right-board", Some(point)));
        };
        let control = self
            .all()
            .any(|e| e.id == source && matches!(e.body.fact, Fact::SourceAnswered { kind: SourceKind::Control, .. }));
        let scope = |f: &Fact| matches!(f, Fact::ScopeChanged { .. });
        let asked = !control && !self.is_answered_since("starts-itself", cuts, scope);
        asked.then(|| self.says("starts-itself", cuts))
    }

    /// With a photo of the point there: the one at the equipment has one label.
    pub fn both_labels(&self, point: EntryId) -> Option<Fact> {
        let normal = |e: &Entry| e.id == point && matches!(e.body.fact, Fact::PointAdded { cuts: None, .. });
        if self.is_answered("labels", Some(point)) || !self.all().any(normal) {
            return None;
        }
        let asked = labels::asked(&Known::new(self.entries, &[]), self.job).iter().any(|p| p.id == point);
        asked.then(|| self.says("labels", Some(point)))
    }

    /// On opening up, where anything was blocked from starting.
    pub fn tried_to_start(&self) -> Option<Fact> {
        let blocked = self.has(|f| {
            matches!(f, Fact::Answered { question, answer, .. } if question == "starts-itself" && answer == "blocked")
        });
        let again = |f: &Fact| matches!(f, Fact::PointOpened { .. } | Fact::ScopeChanged { .. });
        let asked = blocked && !self.goes_on_stopped() && !self.is_answered_since("tried-to-start", None, again);
        asked.then(|| self.says("tried-to-start", None))
    }

    /// On opening up, each where the job calls for it.
    pub fn at_the_open_points(&self) -> Option<Fact> {
        let opened = |f: &Fact| matches!(f, Fact::PointOpened { .. });
        let two = self.has(|f| {
            matches!(
                f,
                Fact::SourceAnswered {
                    kind: SourceKind::Generator | SourceKind::Ups | SourceKind::SecondFeeder,
                    found: Some(_),
                    ..
                }
            )
        });
        if two && !self.is_answered_since("interlocks", None, opened) {
            return Some(self.says("interlocks", None));
        }
        let met = |f: &Fact| {
            let voltage = matches!(f, Fact::ReadingTaken { .. } | Fact::VoltageMet { .. });
            voltage && went_wrong(f)
        };
        let asked = self.has(met) && self.cause().is_none() && !self.is_answered_since("coupled", None, met);
        asked.then(|| self.says("coupled", None))
    }

    /// What stops is answered otherwise once it is so.
    pub fn goes_again(&self) -> Option<Fact> {
        if self.goes_on {
            return None;
        }
        let all: Vec<&Entry> = self.all().collect();
        let key = |e: &Entry| match &e.body.fact {
            Fact::Answered { question, of, .. } => Some((question.clone(), *of)),
            _ => None,
        };
        let stops = |e: &Entry| {
            questions::bars(e).is_some() && questions::ALL.iter().any(|q| Some(q.code.into()) == key(e).map(|k| k.0))
        };
        for (n, stop) in all.iter().enumerate().filter(|(_, e)| stops(e)) {
            let lifted = all[n..].iter().any(|e| key(e) == key(stop) && !stops(e));
            let (code, of) = key(stop)?;
            if !lifted {
                return Some(self.says(&code, of));
            }
        }
        // The order of the journal is not always that in which people heard of each other.
        if self.again && all.iter().any(|e| stops(e)) {
            let known = Known::new(self.entries, &[]);
            let (code, of) = key(questions::standing(&known, self.job).first()?)?;
            return Some(self.says(&code, of));
        }
        None
    }
}
