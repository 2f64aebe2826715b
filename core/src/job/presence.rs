//! The supply after it is back: which pairs are read, and what does not look as it should.

use super::Job;
use crate::prove::judge::energised::{Arrangement, Energised, Rotation, energised};
use crate::prove::{Earthing, Reading, Role, System};

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
        if let [one, two, three] = &lines[..] {
            pairs.extend([own(one, two), own(two, three), own(three, one)]);
        }
        pairs
    }

    fn lines(&self) -> Vec<String> {
        self.conductors().into_iter().filter(|c| c.role == Role::Line).map(|c| c.name).collect()
    }

    /// What lines are read to, if that says anything.
    fn other(&self) -> Option<String> {
        let earthed = !matches!(self.earthing, Earthing::It | Earthing::Unknown);
        let of_role = |role| self.conductors().into_iter().find(|c| c.role == role).map(|c| c.name);
        of_role(Role::Neutral).or_else(|| of_role(Role::Protective).filter(|_| earthed))
    }

    /// What was read does not look as it should: sentences.
    fn presence_odd(&self) -> Vec<String> {
        let lines = self.lines();
        let other = self.other();
        let volts = |first: &str, then: &str| match self.presence_of(first, then)? {
            Reading::Millivolts(mv) => Some(f64::from(mv) / 1e3),
            Reading::None => Some(0.0),
            // Present, and nobody said at how many volts.
            Reading::Lit(_) | Reading::Continuity => None,
        };
        let nominal = f64::from(self.nominal) / 1e3;
        let at = |k: usize| lines.get(k).map_or("", String::as_str);
        let to_other = |k: usize| volts(at(k), other.as_deref()?);
        energised(&Energised {
            lines: [at(0), at(1), at(2)],
            other: other.as_deref().unwrap_or("earth"),
            to_other: [to_other(0), to_other(1), to_other(2)],
            between: [volts(at(0), at(1)), volts(at(1), at(2)), volts(at(2), at(0))],
            line_line: if self.system == System::ThreeWire { nominal } else { nominal * 3f64.sqrt() },
            arrangement: other.is_some().then_some(Arrangement::Star),
            tolerance: self.tolerance,
        })
    }

    pub(super) fn presence_lacks(&self, soft: &mut dyn FnMut(String)) {
        for (first, then) in self.presence_pairs() {
            if self.presence_of(&first, &then).is_none() {
                soft(format!("{first} – {then}: not read."));
            }
        }
        self.presence_odd().into_iter().for_each(&mut *soft);
        match (self.system, self.rotation.as_ref().filter(|(stamp, ..)| self.this_round(stamp))) {
            (System::OnePhase, _) | (_, Some((_, Rotation::Clockwise | Rotation::NotNeeded, ..))) => {}
            (_, Some((_, Rotation::Anticlockwise, ..))) => soft(
                "The rotation is anticlockwise: motors would run backwards. Change the scope of the job, isolate and prove again, and put two lines right."
                    .into(),
            ),
            (_, None) => soft("The rotation is not read.".into()),
        }
    }
}
