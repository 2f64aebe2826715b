//! The windings and batteries of every system as they are built, and where each is tied to earth: drawn from the published names of the
//! systems, not from the app's table.

use stillbar_core::prove::{Earthing, System};

use super::circuit::{C, Circuit, EARTH};

/// A source, up to the poles of the points that part it from the place of work.
#[derive(Debug, Clone)]
pub struct Plant {
    /// From, to, volts: "from" stands so far above "to".
    windings: Vec<(&'static str, &'static str, C)>,
    /// Which end or middle is tied to earth, where the earthing ties one at all.
    pub earthed: Option<&'static str>,
    /// What leads to the place of work, without PE.
    pub poles: Vec<&'static str>,
    pub direct: bool,
    /// The line that stands higher, or the line or pole at earth.
    pub marked: Option<&'static str>,
}

/// What is true beyond the plant itself.
#[derive(Debug, Clone, Copy)]
pub struct Site {
    pub earthing: Earthing,
    /// One conductor of the source has a fault to earth: the first of an unearthed system, which nobody sees.
    pub fault: Option<&'static str>,
    /// The insulation of each conductor, in ohms.
    pub leak: f64,
}

impl Site {
    pub fn of(earthing: Earthing) -> Site {
        Site { earthing, fault: None, leak: 1e6 }
    }
    /// Whether a point of the source is tied to earth, as far as anybody knows.
    pub fn tied(&self) -> bool {
        !matches!(self.earthing, Earthing::It)
    }
}

/// A star of this line-to-star voltage.
fn star(volts: f64, to: &'static str) -> Vec<(&'static str, &'static str, C)> {
    let lines = ["L1", "L2", "L3"];
    lines.iter().enumerate().map(|(k, line)| (*line, to, C::at(volts, -120.0 * k as f64))).collect()
}

/// A delta of this line-to-line voltage.
fn delta(volts: f64) -> Vec<(&'static str, &'static str, C)> {
    [("L1", "L2", 0.0), ("L2", "L3", -120.0), ("L3", "L1", 120.0)].map(|(a, b, at)| (a, b, C::at(volts, at))).into()
}

const LINES: [&str; 3] = ["L1", "L2", "L3"];

fn plant(windings: Vec<(&'static str, &'static str, C)>, earthed: &'static str, poles: &[&'static str]) -> Plant {
    Plant { windings, earthed: Some(earthed), poles: poles.to_vec(), direct: false, marked: None }
}

/// Every source that may stand behind this system: one, or one for each line that may be the high one or the one at earth.
pub fn plants(system: System, nominal: f64) -> Vec<Plant> {
    let root = 3f64.sqrt();
    let battery = |windings, earthed: Option<&'static str>, poles: &[&'static str]| Plant {
        windings,
        earthed,
        poles: poles.to_vec(),
        direct: true,
        marked: earthed.filter(|e| *e != "M"),
    };
    match system {
        System::OnePhase => vec![plant(vec![("L", "N", C(nominal, 0.0))], "N", &["L", "N"])],
        System::ThreePhaseNeutral => vec![plant(star(nominal, "N"), "N", &["L1", "L2", "L3", "N"])],
        System::Pen => vec![plant(star(nominal, "PEN"), "PEN", &["L1", "L2", "L3", "PEN"])],
        // With its star point at earth, or a delta with a corner there: "line to PE up to nominal".
        System::ThreeWire => {
            let corners = LINES.map(|corner| plant(delta(nominal), corner, &LINES));
            [vec![plant(star(nominal / root, "star"), "star", &LINES)], corners.into()].concat()
        }
        // Two lines of a supply of three without neutral, as in Norway (NEK 400, an excerpt).
        System::TwoLines => vec![plant(star(nominal / root, "star"), "star", &["L1", "L2"])],
        // 55-0-55 (BS 7671 411.8, an excerpt): a winding with its middle at earth.
        System::SiteTransformer => {
            let half = C(nominal / 2.0, 0.0);
            vec![plant(vec![("L1", "middle", half), ("middle", "L2", half)], "middle", &["L1", "L2"])]
        }
        System::SiteTransformerThree => vec![plant(star(nominal / root, "star"), "star", &LINES)],
        System::SplitPhase => {
            let half = C(nominal, 0.0);
            vec![plant(vec![("L1", "N", half), ("N", "L2", half)], "N", &["L1", "L2", "N"])]
        }
        // A delta of whose windings one has its middle brought out: the line across from that winding stands higher.
        System::HighLeg => LINES
            .iter()
            .map(|high| {
                let mut windings = delta(nominal);
                let across = windings.iter().position(|(a, b, _)| a != high && b != high).unwrap();
                let (from, to, volts) = windings.remove(across);
                let half = volts * C(0.5, 0.0);
                windings.extend([(from, "N", half), ("N", to, half)]);
                Plant { marked: Some(high), ..plant(windings, "N", &["L1", "L2", "L3", "N"]) }
            })
            .collect(),
        System::CornerGrounded => {
            LINES.map(|corner| Plant { marked: Some(corner), ..plant(delta(nominal), corner, &LINES) }).into()
        }
        System::DcTwoWire => {
            let of = |earthed| battery(vec![("L+", "L-", C(nominal, 0.0))], earthed, &["L+", "L-"]);
            [Some("L+"), Some("L-"), None].map(of).into()
        }
        System::DcThreeWire => {
            let half = C(nominal / 2.0, 0.0);
            vec![battery(vec![("L+", "M", half), ("M", "L-", half)], Some("M"), &["L+", "M", "L-"])]
        }
        System::Own => unreachable!("its plant is whatever somebody listed"),
    }
}

impl Plant {
    /// The circuit with these poles closed, and everything else of the place of work cut off.
    pub fn circuit(&self, site: Site, closed: &[&str]) -> Circuit {
        let mut circuit = work(self, site);
        self.joins(&mut circuit, "", site, closed, 0.0);
        circuit
    }

    /// Puts this source into a circuit, its own nodes called by `prefix`, turned by so many degrees.
    pub fn joins(&self, circuit: &mut Circuit, prefix: &str, site: Site, closed: &[&str], turned: f64) {
        let own = |node: &str| format!("{prefix}source {node}");
        let turn = if self.direct { C(1.0, 0.0) } else { C::at(1.0, turned) };
        for (from, to, volts) in &self.windings {
            // A tenth of an ohm in the winding: small against every load here.
            circuit.source(&own(from), &own(to), 0.1, *volts * turn);
            circuit.resistance(&own(from), EARTH, site.leak);
            circuit.resistance(&own(to), EARTH, site.leak);
        }
        // An electrode of its own in TT; elsewhere the earth of the installation.
        let electrode = if site.earthing == Earthing::Tt { 5.0 } else { 0.01 };
        if let Some(earthed) = self.earthed.filter(|_| site.tied()) {
            circuit.resistance(&own(earthed), EARTH, electrode);
        }
        if let Some(fault) = site.fault {
            circuit.resistance(&own(fault), EARTH, 10.0);
        }
        for pole in &self.poles {
            // A PEN is never parted.
            if closed.contains(pole) || *pole == "PEN" {
                circuit.resistance(&own(pole), pole, 0.01);
            }
        }
    }

    /// All its poles closed.
    pub fn live(&self, site: Site) -> Circuit {
        self.circuit(site, &self.poles)
    }

    /// The conductors at the place of work.
    pub fn conductors(&self) -> Vec<&'static str> {
        let pe = (!self.poles.contains(&"PEN")).then_some("PE");
        self.poles.iter().copied().chain(pe).collect()
    }

    /// Every pair of them.
    pub fn pairs(&self) -> Vec<(&'static str, &'static str)> {
        let all = self.conductors();
        (0..all.len()).flat_map(|a| all[a + 1..].iter().map(|b| (all[a], *b)).collect::<Vec<_>>()).collect()
    }
}

/// The place of work, cut off: what leads to it, and PE.
pub fn work(plant: &Plant, site: Site) -> Circuit {
    let mut circuit = Circuit::default();
    for pole in &plant.poles {
        circuit.resistance(pole, EARTH, site.leak);
    }
    let electrode = if site.earthing == Earthing::Tt { 20.0 } else { 0.01 };
    circuit.resistance("PE", EARTH, electrode);
    circuit
}
