//! The supply after it is back: which pairs are read, what does not look as it should, and what becomes of that.
//!
//! Promises: a finding stays until a later reading no longer shows it, or somebody answers for the readings that show it now; a missing
//! line or neutral is never accepted. Start at [`Job::supply_findings`].

use super::blocker::FindingAsk;
use super::{Answered, Blocker, Job};
use crate::journal::EntryId;
use crate::journal::fact::SupplyAnswer;
use crate::prove::judge::energised::{Arrangement, Energised, Finding, Rotation, energised};
use crate::prove::{Conductor, Earthing, Reading, Role, System, Taken};

/// Something that was read with the supply back and does not look as it should.
#[derive(Debug, Clone, PartialEq)]
pub struct SupplyFinding {
    /// What it is.
    pub what: SupplyOdd,
    /// The entries of the readings that it rests on, the latest of each pair.
    pub of: Vec<EntryId>,
}

/// What does not look as it should.
#[derive(Debug, Clone, PartialEq)]
pub enum SupplyOdd {
    /// Voltages.
    Voltage(Finding),
    /// The lines turn the other way than before the isolation: before, and now.
    Turned(Rotation, Rotation),
}

impl SupplyFinding {
    /// Whether a line or the neutral is missing: nobody may accept that.
    pub fn is_missing(&self) -> bool {
        matches!(&self.what, SupplyOdd::Voltage(finding) if finding.is_missing())
    }
}

impl Job {
    /// The pairs to read when the supply is back: lines to neutral (to PE where there is none and the supply is earthed), then line
    /// to line.
    pub fn presence_pairs(&self) -> Vec<(String, String)> {
        let lines = self.lines();
        let own = |a: &str, b: &str| (a.to_owned(), b.to_owned());
        let mut pairs: Vec<(String, String)> = Vec::new();
        if let Some(other) = self.other() {
            pairs.extend(lines.iter().map(|line| own(line, &other)));
        }
        match &lines[..] {
            [one, two, three] => pairs.extend([own(one, two), own(two, three), own(three, one)]),
            lines => pairs.extend(lines.windows(2).map(|two| own(&two[0], &two[1]))),
        }
        pairs
    }

    fn lines(&self) -> Vec<String> {
        self.conductors().into_iter().filter(|c| c.role.is_line() && c.supply.is_none()).map(|c| c.name).collect()
    }

    fn neutral(&self) -> Option<String> {
        let middle = |c: &Conductor| matches!(c.role, Role::Neutral | Role::MidPoint | Role::Pen);
        self.conductors().into_iter().find(middle).map(|c| c.name)
    }

    /// What lines are read to, if that says anything.
    fn other(&self) -> Option<String> {
        let earthed = !matches!(self.earthing, Earthing::It | Earthing::Unknown);
        let protective = || self.conductors().into_iter().find(|c| c.role == Role::Protective).map(|c| c.name);
        // Of a set of one's own, and of poles of which none is known to be at earth, nobody knows what they show to it.
        // Of a delta with a line at earth they tell which one it is.
        let earthed = earthed && (self.system == System::CornerGrounded || self.supply().line_shows_earth());
        self.neutral().or_else(|| protective().filter(|_| earthed))
    }

    /// The latest reading of a pair in this round.
    fn read_now(&self, first: &str, then: &str) -> Option<&Taken> {
        let of_pair = |t: &&Taken| t.first == first && t.then == then && self.this_round(&t.stamp);
        self.presence.iter().rev().find(of_pair)
    }

    /// The latest presence reading of a pair.
    pub fn presence_of(&self, first: &str, then: &str) -> Option<Reading> {
        self.read_now(first, then).map(|t| t.reading)
    }

    /// The direction that was read before the isolation; `None` where it was not read, or nothing turned.
    pub fn rotation_before(&self) -> Option<Rotation> {
        let (_, rotation, _) = self.rotation_found.as_ref()?;
        rotation.filter(|r| r.is_direction())
    }

    /// What was read with the supply back and does not look as it should, each with the readings that it rests on.
    pub fn supply_findings(&self) -> Vec<SupplyFinding> {
        let of = |(first, then): &(String, String)| self.read_now(first, then).map(|t| t.stamp.id);
        let voltages = self.voltages_odd().into_iter();
        let mut found: Vec<SupplyFinding> = voltages
            .map(|f| SupplyFinding { of: f.pairs.iter().filter_map(of).collect(), what: SupplyOdd::Voltage(f) })
            .collect();
        let now = self.rotation.as_ref().filter(|(stamp, ..)| self.this_round(stamp));
        if let (Some(before), Some((stamp, now, ..))) = (self.rotation_before(), now)
            && now.is_direction()
            && *now != before
        {
            found.push(SupplyFinding { what: SupplyOdd::Turned(before, *now), of: vec![stamp.id] });
        }
        found
    }

    /// What becomes of a finding: the latest answer that names every reading it rests on now.
    pub fn supply_answer(&self, finding: &SupplyFinding) -> Option<&Answered> {
        let all = |a: &&Answered| finding.of.iter().all(|id| a.of.contains(id)) && self.this_round(&a.stamp);
        self.supply_answers.iter().rev().find(all)
    }

    /// Whether a finding is answered. That it is mended a new reading has to show; nobody accepts a missing line or neutral.
    pub fn is_answered(&self, finding: &SupplyFinding) -> bool {
        match self.supply_answer(finding).map(|a| a.answer) {
            Some(SupplyAnswer::LeftOff) => true,
            Some(SupplyAnswer::Accepted) => !finding.is_missing(),
            Some(SupplyAnswer::Mended) | None => false,
        }
    }

    /// Those that are not answered.
    pub fn unanswered_findings(&self) -> Vec<SupplyFinding> {
        self.supply_findings().into_iter().filter(|f| !self.is_answered(f)).collect()
    }

    /// Between two lines, in volts.
    fn line_line(&self) -> f64 {
        // One line stands in a star of which the others are not here.
        let of_star = if self.system == System::OnePhase { 3f64.sqrt() } else { 1.0 };
        f64::from(self.supply().most()) / 1e3 * of_star
    }

    /// How the lines may stand about what they are read to: one way where it is known, each where a line was not shown; none where nobody knows.
    fn arrangements(&self) -> Vec<Arrangement> {
        let supply = self.supply();
        let marked = supply.lines().iter().position(|line| Some(line) == supply.marked.as_ref());
        let each =
            |of: fn(usize) -> Arrangement| marked.map_or_else(|| (0..3).map(of).collect(), |line| vec![of(line)]);
        match self.system {
            System::OnePhase | System::ThreePhaseNeutral | System::ThreeWire => vec![Arrangement::Star],
            System::Pen | System::TwoLines | System::SiteTransformerThree => vec![Arrangement::Star],
            System::SplitPhase | System::SiteTransformer | System::DcThreeWire => vec![Arrangement::Halves],
            System::HighLeg => each(Arrangement::HighLeg),
            System::CornerGrounded => each(Arrangement::CornerGrounded),
            System::DcTwoWire => marked.map(Arrangement::CornerGrounded).into_iter().collect(),
            System::Own => Vec::new(),
        }
    }

    fn voltages_odd(&self) -> Vec<Finding> {
        let lines = self.lines();
        let other = self.other();
        let volts = |first: &str, then: &str| match self.presence_of(first, then)? {
            Reading::Millivolts(mv) => Some(f64::from(mv) / 1e3),
            Reading::None => Some(0.0),
            // Present, and nobody said at how many volts.
            Reading::Lit(_) | Reading::Continuity => None,
        };
        // Nobody has said what a set of one's own has to show.
        if self.system == System::Own {
            return Vec::new();
        }
        let at = |k: usize| lines.get(k).map_or("", String::as_str);
        let to_other = |k: usize| volts(at(k), other.as_deref()?);
        let read = Energised {
            lines: [at(0), at(1), at(2)],
            other: other.as_deref().unwrap_or("earth"),
            neutral: self.neutral().is_some(),
            to_other: [to_other(0), to_other(1), to_other(2)],
            between: [volts(at(0), at(1)), volts(at(1), at(2)), volts(at(2), at(0))],
            line_line: self.line_line(),
            arrangement: None,
            tolerance: self.tolerance,
        };
        // Where nobody has shown which line it is, it is the one that leaves least to find.
        let ways = if other.is_some() { self.arrangements() } else { Vec::new() };
        let found = ways.into_iter().map(|way| energised(&Energised { arrangement: Some(way), ..read }));
        found.min_by_key(Vec::len).unwrap_or_else(|| energised(&read))
    }

    /// What is found and not answered: no reason passes over it.
    pub(super) fn finding_blockers(&self, blockers: &mut Vec<Blocker>) {
        for finding in self.unanswered_findings() {
            let mended = self.supply_answer(&finding).is_some_and(|a| a.answer == SupplyAnswer::Mended);
            let ask = match (mended, finding.is_missing()) {
                (true, _) => FindingAsk::ReadAgain,
                (_, true) => FindingAsk::MendOrLeaveOff,
                (_, false) => FindingAsk::Answer,
            };
            blockers.push(Blocker::Finding { finding, ask });
        }
    }

    /// What was not read. Where no supply goes back on there is nothing to read.
    pub(super) fn presence_blockers(&self, blockers: &mut Vec<Blocker>) {
        if !self.supply_comes_back() {
            return;
        }
        for (first, then) in self.presence_pairs() {
            if self.presence_of(&first, &then).is_none() {
                blockers.push(Blocker::NotRead { first, then });
            }
        }
        match (self.turns(), self.rotation.as_ref().filter(|(stamp, ..)| self.this_round(stamp))) {
            (false, _) => {}
            (_, None) => blockers.push(Blocker::RotationUnread),
            (_, Some((_, rotation, _, None))) if rotation.is_direction() && self.rotation_before().is_none() => {
                blockers.push(Blocker::RotationUnguarded);
            }
            // What it turned like before is right; where nobody knows, whoever watched answers for it.
            _ => {}
        }
    }
}
