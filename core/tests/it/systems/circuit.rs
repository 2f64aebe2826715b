//! A circuit of windings, batteries and resistances, solved for its node voltages: what an instrument shows at the place of work comes
//! from this and from nothing that the app knows.
//!
//! Complex nodal analysis (Kirchhoff's current law; a source of voltage with its series resistance as a Norton equivalent), solved by
//! Gaussian elimination with the greatest element as pivot. Direct voltage is the case without angles. Node 0 is the earth.

use std::ops::{Add, Div, Mul, Neg, Sub};

/// A complex number: a phasor, or a conductance.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct C(pub f64, pub f64);

impl C {
    /// Of this size, and so many degrees ahead.
    pub fn at(size: f64, degrees: f64) -> C {
        let angle = degrees.to_radians();
        C(size * angle.cos(), size * angle.sin())
    }
    pub fn size(self) -> f64 {
        self.0.hypot(self.1)
    }
}

impl Add for C {
    type Output = C;
    fn add(self, o: C) -> C {
        C(self.0 + o.0, self.1 + o.1)
    }
}

impl Sub for C {
    type Output = C;
    fn sub(self, o: C) -> C {
        C(self.0 - o.0, self.1 - o.1)
    }
}

impl Neg for C {
    type Output = C;
    fn neg(self) -> C {
        C(-self.0, -self.1)
    }
}

impl Mul for C {
    type Output = C;
    fn mul(self, o: C) -> C {
        C(self.0 * o.0 - self.1 * o.1, self.0 * o.1 + self.1 * o.0)
    }
}

impl Div for C {
    type Output = C;
    fn div(self, o: C) -> C {
        let square = o.0 * o.0 + o.1 * o.1;
        C((self.0 * o.0 + self.1 * o.1) / square, (self.1 * o.0 - self.0 * o.1) / square)
    }
}

/// Nodes by name, and what joins them.
#[derive(Debug, Clone, Default)]
pub struct Circuit {
    names: Vec<String>,
    /// From, to, ohms, and how many volts "from" stands above "to" with no current.
    branches: Vec<(usize, usize, f64, C)>,
}

pub const EARTH: &str = "earth";

impl Circuit {
    fn node(&mut self, name: &str) -> usize {
        if name == EARTH {
            return 0;
        }
        let known = self.names.iter().position(|n| n == name);
        1 + known.unwrap_or_else(|| {
            self.names.push(name.to_owned());
            self.names.len() - 1
        })
    }
    pub fn resistance(&mut self, from: &str, to: &str, ohms: f64) {
        self.source(from, to, ohms, C::default());
    }
    /// A winding or a battery: `from` stands `volts` above `to`.
    pub fn source(&mut self, from: &str, to: &str, ohms: f64, volts: C) {
        let (from, to) = (self.node(from), self.node(to));
        self.branches.push((from, to, ohms, volts));
    }
    /// The voltage of the first to the second, both named.
    pub fn between(&self, one: &str, other: &str) -> f64 {
        let of = |name: &str| self.names.iter().position(|n| n == name).unwrap_or_else(|| panic!("no node {name}"));
        let volts = self.solved();
        (volts[of(one)] - volts[of(other)]).size()
    }
    /// What an instrument of so many ohms shows there, if it is put on.
    pub fn read(&self, one: &str, other: &str, instrument: f64) -> f64 {
        let mut with = self.clone();
        with.resistance(one, other, instrument);
        with.between(one, other)
    }
    /// The voltage of every node to earth.
    fn solved(&self) -> Vec<C> {
        let n = self.names.len();
        // The matrix of conductances, with the currents of the sources behind it.
        let mut rows = vec![vec![C::default(); n + 1]; n];
        for (from, to, ohms, volts) in &self.branches {
            let by = C(1.0 / ohms, 0.0);
            for (own, other, current) in [(*from, *to, by * *volts), (*to, *from, -(by * *volts))] {
                if own == 0 {
                    continue;
                }
                let row = &mut rows[own - 1];
                row[own - 1] = row[own - 1] + by;
                row[n] = row[n] + current;
                if other > 0 {
                    row[other - 1] = row[other - 1] - by;
                }
            }
        }
        for k in 0..n {
            let largest = (k..n).max_by(|a, b| rows[*a][k].size().total_cmp(&rows[*b][k].size())).unwrap();
            rows.swap(k, largest);
            assert!(rows[k][k].size() > 1e-12, "no path to earth from {}", self.names[k]);
            let pivot = rows[k].clone();
            for row in &mut rows[k + 1..] {
                let by = row[k] / pivot[k];
                (k..=n).for_each(|at| row[at] = row[at] - by * pivot[at]);
            }
        }
        let mut volts = vec![C::default(); n];
        for k in (0..n).rev() {
            let known = (k + 1..n).fold(rows[k][n], |sum, at| sum - rows[k][at] * volts[at]);
            volts[k] = known / rows[k][k];
        }
        volts
    }
}

/// Two resistances on a battery divide its voltage; three alike in star on three phases keep their middle at nothing (plane geometry).
#[test]
fn the_solver_knows_two_circuits() {
    let mut divider = Circuit::default();
    divider.source("top", EARTH, 1.0, C(12.0, 0.0));
    divider.resistance("top", "middle", 2.0);
    divider.resistance("middle", EARTH, 3.0);
    divider.resistance("ground", EARTH, 1e-6);
    assert!((divider.between("top", "ground") - 10.0).abs() < 1e-5);
    assert!((divider.between("middle", "ground") - 6.0).abs() < 1e-5);
    assert!((divider.read("middle", "ground", 3.0) - 4.0).abs() < 1e-5, "with the load on it");

    let mut star = Circuit::default();
    for (k, line) in ["a", "b", "c"].iter().enumerate() {
        star.source(line, EARTH, 0.1, C::at(230.0, -120.0 * k as f64));
        star.resistance(line, "middle", 50.0);
    }
    star.resistance("ground", EARTH, 1.0);
    assert!(star.between("middle", "ground") < 1e-9);
    // Less a thousandth or two that drops in the windings.
    assert!((star.between("a", "b") - 398.37).abs() < 1.0, "{}", star.between("a", "b"));
}
