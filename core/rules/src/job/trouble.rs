//! What keeps "treat as live" across runs, phones and people: an indication, a failed proof of earth, a failed second proof of an indicator.
//!
//! Promises: none is ever lost, in whichever run and by whichever device it was met, withdrawn or not; each is answered only when its cause
//! is noted *and* whoever began the run that stands knew of both. "Not found" is an answer: then two whole runs stand, the second with
//! another indicator or by another person.

use super::Job;
use crate::journal::{Entry, EntryId, Fact, Stamp};
use crate::prove::limit::Limits;
use crate::prove::{Met, Reading, Run};

/// Something that was met and has to be answered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Trouble {
    /// When and by whom.
    pub stamp: Stamp,
    /// What.
    pub kind: TroubleKind,
}

/// What was met.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum TroubleKind {
    /// A voltage, on a pair or at the work.
    Voltage(Box<Met>),
    /// The protective conductor is not earth.
    NotEarth,
    /// An indicator failed a proof after readings were taken with it: the indicator.
    IndicatorFailed(EntryId),
}

/// What was behind troubles.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cause {
    /// When and by whom.
    pub stamp: Stamp,
    /// The entries that tell of the troubles.
    pub of: Vec<EntryId>,
    /// Whether it was found.
    pub found: bool,
    /// In words.
    pub cause: String,
}

impl Job {
    /// Notes what this entry met. Read for withdrawn entries too: a voltage that was there was there.
    pub(super) fn note_trouble(&mut self, entry: &Entry) {
        let stamp = entry.stamp();
        let met = |at, pair, reading| TroubleKind::Voltage(Box::new(Met { stamp, at, pair, reading }));
        let kind = match &entry.body.fact {
            Fact::ReadingTaken { first, then, reading, dc, .. } if self.indicates(&stamp, *reading, *dc) => {
                let pair = Some([first.clone(), then.clone()]);
                met(None, pair, *reading)
            }
            Fact::VoltageMet { at, reading } => met(Some(at.clone()), None, *reading),
            Fact::DischargeRead { of, reading, .. } if self.indicates(&stamp, *reading, true) => {
                let what = self.direct().into_iter().find(|(id, ..)| id == of).map(|(_, what, _)| what);
                met(what, None, *reading)
            }
            Fact::ReferenceProved { holds: false, .. } => TroubleKind::NotEarth,
            Fact::IndicatorProved { run: Some(_), indicator, works: false, .. } => {
                TroubleKind::IndicatorFailed(*indicator)
            }
            _ => return self.note_failure(entry),
        };
        self.troubles.push(Trouble { stamp, kind });
        self.note_failure(entry);
    }

    /// Notes that an instrument failed.
    fn note_failure(&mut self, entry: &Entry) {
        let failed = match &entry.body.fact {
            Fact::IndicatorProved { indicator, works: false, .. } => *indicator,
            Fact::InstrumentChecked { instrument, leads_sound, tips_sound, body_sound, in_date, .. }
                if !(*leads_sound && *tips_sound && *body_sound && *in_date) =>
            {
                *instrument
            }
            _ => return,
        };
        self.failures.push((failed, entry.stamp()));
    }

    /// Whether a reading that this device took then counts as an indication. A limit that it did not know of does not count for it.
    fn indicates(&self, stamp: &Stamp, reading: Reading, dc: bool) -> bool {
        let limit = self.limit.as_ref().filter(|_| self.knew_limit(stamp));
        reading.indicates(limit.map_or(0, |l| if dc { l.dc } else { l.ac }))
    }

    fn knew_limit(&self, stamp: &Stamp) -> bool {
        self.limit_set.as_ref().is_none_or(|set| self.heard.saw(stamp, set))
    }

    /// The limits by which something counts that was read then. Those that nobody knew of there do not count for it.
    pub(super) fn limits_known(&self, stamp: &Stamp) -> Limits {
        if self.knew_limit(stamp) { self.limits() } else { Limits::default() }
    }

    /// Those whose cause nobody has noted.
    pub fn unexplained(&self) -> impl Iterator<Item = &Trouble> {
        self.troubles.iter().filter(|t| !self.causes.iter().any(|c| c.of.contains(&t.stamp.id)))
    }

    /// Those whose cause was looked for and not found.
    pub fn unfound(&self) -> impl Iterator<Item = (&Trouble, &Cause)> {
        self.troubles.iter().filter_map(|t| {
            // The last word counts: a cause that was found may turn out not to be the cause.
            let last = self.causes.iter().rfind(|c| c.of.contains(&t.stamp.id))?;
            (!last.found).then_some((t, last))
        })
    }

    /// The first trouble that whoever began `run` did not know of, or whose cause they did not know.
    pub(super) fn unknown_to(&self, run: &Run) -> Option<&Trouble> {
        self.troubles.iter().find(|t| !run.knew(&t.stamp) || !self.explained_to(t, run))
    }

    fn explained_to(&self, trouble: &Trouble, run: &Run) -> bool {
        self.causes.iter().any(|c| c.of.contains(&trouble.stamp.id) && run.knew(&c.stamp))
    }

    /// Whether the cause of something is not known, and only one whole run was made since: a second one is asked for, with another
    /// indicator or by another person. `whole`: whether a run is whole on its own.
    pub(super) fn second_run_lacks(&self, whole: &dyn Fn(&Run) -> bool) -> bool {
        self.unfound().any(|(trouble, _)| {
            let good: Vec<&Run> = self
                .runs
                .iter()
                .filter(|r| r.knew(&trouble.stamp) && self.explained_to(trouble, r) && whole(r))
                .collect();
            let apart =
                |a: &Run, b: &Run| !self.is_one_instrument(a.indicator, b.indicator) || a.before.by != b.before.by;
            // Nothing came between the two that ended the first.
            let together = |a: &Run, b: &Run| {
                !self
                    .voided
                    .iter()
                    .any(|v| v.stamp.clock < b.before.clock && (v.stamp.clock > a.before.clock || !a.knew(&v.stamp)))
            };
            !good.iter().enumerate().any(|(i, a)| good[i + 1..].iter().any(|b| apart(a, b) && together(a, b)))
        })
    }
}
