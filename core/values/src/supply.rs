//! What stands between the conductors of a system while it is live: one table for plan, judge, presence check and record.
//!
//! Each conductor of a system stands somewhere about the point that is neutral or earth, in units of the voltage that the system is named
//! by; what a pair shows is how far its two are apart. Figures: IEC 60038 for the star systems, BS 7671 411.8 for 55-0-55 and 63.5/110 V
//! (from an excerpt), ANSI C84.1 for split phase and the deltas (from memory), plane geometry for the rest. Start at [`Supply`].

use crate::conductors::{Conductor, Role};
use crate::system::{Earthing, System};

/// A supply as a job notes it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Supply {
    /// Which system.
    pub system: System,
    /// The voltage that it is named by, in millivolts.
    pub nominal: u32,
    /// The line that stands higher, or the line or pole at earth, where the system has one and somebody has shown which.
    pub marked: Option<String>,
    /// The conductors of [`System::Own`].
    pub own: Vec<Conductor>,
}

/// What a pair shows while it is live, in millivolts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Live {
    /// About so much.
    About(u32),
    /// Anything up to so much, or nothing.
    UpTo(u32),
    /// One of two: nobody has shown which line it is.
    Either(u32, u32),
}

/// Where a conductor stands: its voltage as a phasor, in units of the nominal one.
type Phasor = (f64, f64);

const ROOT_3: f64 = 1.732_050_807_568_877_2;

impl Supply {
    /// A supply of which no line is marked.
    pub fn of(system: System, nominal: u32) -> Supply {
        Supply { system, nominal, marked: None, own: Vec::new() }
    }

    /// Its conductors, in the order of the terminals.
    pub fn conductors(&self) -> Vec<Conductor> {
        let names: &[&str] = match self.system {
            System::OnePhase => &["L", "N", "PE"],
            System::ThreePhaseNeutral | System::HighLeg => &["L1", "L2", "L3", "N", "PE"],
            System::ThreeWire | System::CornerGrounded | System::SiteTransformerThree => &["L1", "L2", "L3", "PE"],
            System::Pen => &["L1", "L2", "L3", "PEN"],
            System::TwoLines | System::SiteTransformer => &["L1", "L2", "PE"],
            System::SplitPhase => &["L1", "L2", "N", "PE"],
            System::DcTwoWire => &["L+", "L-", "PE"],
            System::DcThreeWire => &["L+", "M", "L-", "PE"],
            System::Own => return self.own.clone(),
        };
        names.iter().filter_map(|name| Conductor::named(name)).collect()
    }

    /// Its lines or poles, by name.
    pub fn lines(&self) -> Vec<String> {
        self.conductors().into_iter().filter(|c| c.role.is_line()).map(|c| c.name).collect()
    }

    /// Whether its lines turn: three of alternating voltage.
    pub fn turns(&self) -> bool {
        self.conductors().iter().filter(|c| c.role == Role::Line && c.supply.is_none()).count() == 3
    }

    /// Whether it is direct voltage, all of it: in doubt it is not.
    pub fn is_direct(&self) -> bool {
        let all = self.conductors();
        let pole = |role: Role| matches!(role, Role::DcPlus | Role::DcMinus);
        all.iter().any(|c| pole(c.role))
            && all.iter().all(|c| pole(c.role) || matches!(c.role, Role::MidPoint | Role::Protective))
    }

    /// The greatest voltage between any two of its conductors, in millivolts.
    pub fn most(&self) -> u32 {
        let factor = match self.system {
            System::ThreePhaseNeutral | System::Pen => ROOT_3,
            System::SplitPhase => 2.0,
            _ => 1.0,
        };
        (f64::from(self.nominal) * factor).round() as u32
    }

    /// The line that is at earth by itself, if somebody has shown which it is: it may be a solid link that nothing opens.
    pub fn grounded(&self) -> Option<&str> {
        self.marked.as_deref().filter(|_| self.system == System::CornerGrounded)
    }

    /// Whether a line that is known to be live shows its full voltage to what is earth, and to that alone, as far as the system goes.
    pub fn line_shows_earth(&self) -> bool {
        match self.system {
            System::Own => false,
            System::DcTwoWire | System::CornerGrounded => self.marked.is_some(),
            _ => true,
        }
    }

    /// What a live line shows to earth, in millivolts: the lowest and the highest, where lines differ.
    pub fn to_earth(&self) -> Option<(u32, u32)> {
        if !self.line_shows_earth() {
            return None;
        }
        let far = self.reaches().filter(|far| *far > 0.01);
        let (least, most) = far.fold((f64::MAX, 0.0), |(least, most): (f64, f64), far| (least.min(far), most.max(far)));
        (most > 0.0).then(|| (self.millivolts(least), self.millivolts(most)))
    }

    /// What two of its conductors show to each other while live; `None` where the roles alone tell it, as of the plain systems.
    pub fn between(&self, a: &str, b: &str, earthing: Earthing) -> Option<Live> {
        let plain = matches!(self.system, System::OnePhase | System::ThreePhaseNeutral | System::ThreeWire);
        if plain && earthing == Earthing::Unknown {
            let is = |role: Role, name: &str| Conductor::named(name).is_some_and(|c| c.role == role);
            let to_earth =
                (is(Role::Line, a) && is(Role::Protective, b)) || (is(Role::Line, b) && is(Role::Protective, a));
            // A line alone may be one of three.
            let three = if self.system == System::OnePhase { ROOT_3 } else { 1.0 };
            return to_earth.then(|| Live::UpTo((f64::from(self.most()) * three).round() as u32));
        }
        if plain {
            return None;
        }
        if self.system == System::Own {
            return Some(Live::UpTo(self.nominal));
        }
        let role = |name: &str| Conductor::named(name).map(|c| c.role);
        let (one, other) = (role(a)?, role(b)?);
        if !one.is_line() && !other.is_line() {
            return Some(Live::UpTo(self.millivolts(self.reaches().fold(0.0, f64::max))));
        }
        let both = one.is_line() && other.is_line();
        if !both && (one == Role::Protective || other == Role::Protective) {
            // Nothing ties the lines to earth, or nobody knows what does.
            if matches!(earthing, Earthing::It | Earthing::Unknown) || !self.line_shows_earth() {
                return Some(Live::UpTo(self.most()));
            }
        }
        if self.system == System::HighLeg && self.marked.is_none() && !both {
            return Some(Live::Either(self.millivolts(0.5), self.millivolts(ROOT_3 / 2.0)));
        }
        let apart = |(a, b): (Phasor, Phasor)| (a.0 - b.0).hypot(a.1 - b.1);
        let far = apart((self.spot(a)?, self.spot(b)?));
        // The line at earth shows nothing although it is live.
        Some(if far < 0.01 { Live::UpTo(self.most()) } else { Live::About(self.millivolts(far)) })
    }

    /// How far each line stands from the earthed point.
    fn reaches(&self) -> impl Iterator<Item = f64> {
        self.lines().into_iter().filter_map(|line| self.spot(&line)).map(|(x, y)| x.hypot(y))
    }

    /// Where a conductor stands about the point that is neutral or earth, in units of the nominal voltage: how far two are apart is what they
    /// show to each other. What of an unmarked line nobody has shown is taken as one of the ways it may be. `None`: it is not in the table.
    pub fn spot(&self, name: &str) -> Option<(f64, f64)> {
        let third = |k: usize, size: f64| {
            let angle = -2.0 * std::f64::consts::FRAC_PI_3 * k as f64;
            (size * angle.cos(), size * angle.sin())
        };
        if matches!(name, "N" | "PE" | "PEN" | "M") {
            return Some((0.0, 0.0));
        }
        let line = self.conductors().iter().filter(|c| c.role.is_line()).position(|c| c.name == name)?;
        let marked = self.marked.as_deref();
        let halves = [(0.5, 0.0), (-0.5, 0.0)];
        Some(match self.system {
            System::OnePhase | System::ThreePhaseNeutral | System::Pen => third(line, 1.0),
            System::ThreeWire | System::TwoLines | System::SiteTransformerThree => third(line, 1.0 / ROOT_3),
            System::SplitPhase => (if line == 0 { 1.0 } else { -1.0 }, 0.0),
            System::SiteTransformer | System::DcThreeWire => halves[line],
            System::DcTwoWire => match (marked, line) {
                (Some("L+"), _) => [(0.0, 0.0), (-1.0, 0.0)][line],
                (Some("L-"), _) => [(1.0, 0.0), (0.0, 0.0)][line],
                (_, line) => halves[line],
            },
            System::HighLeg => {
                let high = self.lines().iter().position(|l| Some(l.as_str()) == marked).unwrap_or(1);
                match line {
                    line if line == high => (0.0, ROOT_3 / 2.0),
                    line => halves[usize::from(line > (0..3).find(|k| *k != high).unwrap_or(0))],
                }
            }
            System::CornerGrounded => {
                let corner = self.lines().iter().position(|l| Some(l.as_str()) == marked).unwrap_or(0);
                match (line + 3 - corner) % 3 {
                    0 => (0.0, 0.0),
                    1 => (1.0, 0.0),
                    _ => (0.5, ROOT_3 / 2.0),
                }
            }
            System::Own => return None,
        })
    }

    fn millivolts(&self, units: f64) -> u32 {
        (f64::from(self.nominal) * units).round() as u32
    }
}
