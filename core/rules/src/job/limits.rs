//! What counts as no indication in a job: the company's limit for figures, and the lowest voltage that an instrument has to indicate.

use super::Job;
use crate::journal::EntryId;
use crate::journal::fact::{LightsFrom, Limit};
use crate::prove::System;
use stillbar_values::RuleSet;

use crate::prove::limit::{Bound, LimitSource, Limits, bound, own_lowest};

/// A company's limit as the rules take it.
pub fn of(limit: &Limit) -> Limits {
    Limits { ac_mv: limit.ac, dc_mv: limit.dc }
}

/// What the normal supply of a job is, by the voltage that it is named by.
pub fn supply(system: System, nominal: u32) -> LimitSource {
    match system {
        System::OnePhase | System::ThreePhaseNeutral | System::Pen | System::SplitPhase => {
            LimitSource::LineNeutral(nominal)
        }
        System::ThreeWire | System::TwoLines | System::SiteTransformerThree | System::CornerGrounded => {
            LimitSource::LineLine(nominal)
        }
        System::SiteTransformer | System::HighLeg => LimitSource::TwoLines(nominal),
        System::DcTwoWire | System::DcThreeWire => LimitSource::Poles(nominal),
        System::Own => own_lowest(nominal),
    }
}

/// What a limit has to be below with these sources, by the rules that a job is done by.
pub fn bound_under(rules: Option<RuleSet>, sources: impl IntoIterator<Item = LimitSource>) -> Bound {
    let found = bound(sources);
    match rules.map(|rules| rules.figures().extra_low) {
        Some((ac, dc)) => Bound { ac_mv: found.ac_mv.min(ac * 1000), dc_mv: found.dc_mv.min(dc * 1000) },
        None => found,
    }
}

impl Job {
    /// What a limit has to be below, and by what an instrument has to indicate.
    pub fn bound(&self) -> Bound {
        let control = self.found().filter(|s| !s.terminals.is_empty()).filter_map(|s| s.millivolts);
        let all = std::iter::once(supply(self.system, self.nominal)).chain(control.map(LimitSource::Control));
        bound_under(self.rule_set, all)
    }

    /// Takes in a limit that `by` set: only the person in charge makes it higher, anybody may make it lower.
    pub(super) fn set_limit(&mut self, limit: Option<&Limit>, by: Option<EntryId>) {
        let in_charge = by.is_some() && by == self.in_charge();
        self.limit = match (in_charge, &self.limit, limit) {
            (true, ..) => limit.cloned(),
            (false, Some(old), Some(new)) => {
                Some(Limit { ac: old.ac.min(new.ac), dc: old.dc.min(new.dc), rule: new.rule.clone() })
            }
            (false, ..) => None,
        };
        let set = self.limit.take();
        self.limit = self.company_all().fold(set, |limit, company| company.tightened(limit));
    }

    /// The limit that counts: the company's where it is below the bound, or else none.
    pub fn limits(&self) -> Limits {
        let limits = self.limit.as_ref().map(of).unwrap_or_default();
        if self.bound().refuses(limits).is_some() { Limits::default() } else { limits }
    }

    /// Whether an instrument with this lowest indication shows anything on this job.
    pub fn lights_in_time(&self, from: Option<&LightsFrom>) -> bool {
        let bound = self.bound();
        from.is_some_and(|from| bound.lit_by(false, from.ac) && from.dc.is_none_or(|dc| bound.lit_by(true, dc)))
    }
}
