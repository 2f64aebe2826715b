//! The conductors of a job, whether its system lists them or somebody did, and which of them stay live: from docs/systems.md.

use std::collections::BTreeSet;

use stillbar_core::journal::{Entry, Fact};
use stillbar_core::prove::{Conductor, Role, System};

use super::alike::says_something;
use super::chance::Chance;
use super::systems::row;

/// What a conductor is for the page's columns.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Is {
    /// Protective, or protective and neutral in one: never opened.
    Earth,
    Neutral,
    Mid,
    Line,
    Pole,
    Control,
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wire {
    pub name: String,
    pub is: Is,
    /// Beside the normal one.
    pub supply: Option<String>,
}

impl Wire {
    /// "Every other line and pole has to be opened"; "every line, DC pole and control conductor".
    pub fn has_to_open(&self) -> bool {
        matches!(self.is, Is::Line | Is::Pole | Is::Control)
    }

    pub fn is_middle(&self) -> bool {
        matches!(self.is, Is::Neutral | Is::Mid)
    }
}

/// All conductors of a system, the less dangerous first.
pub fn wires(system: System, own: &[Conductor]) -> Vec<Wire> {
    let mut all: Vec<Wire> = match system {
        System::Own => own.iter().map(noted).collect(),
        listed => {
            let row = row(listed);
            let wire = |name: &str, is| Wire { name: name.to_owned(), is, supply: None };
            let line = if row.direct { Is::Pole } else { Is::Line };
            let middle = row.middle.map(|m| wire(m, if row.direct { Is::Mid } else { Is::Neutral }));
            let lines = row.lines.iter().map(|l| wire(l, line));
            std::iter::once(wire(row.reference, Is::Earth)).chain(middle).chain(lines).collect()
        }
    };
    all.sort_by_key(|wire| wire.is);
    all
}

fn noted(conductor: &Conductor) -> Wire {
    let is = match conductor.role {
        Role::Protective | Role::Pen => Is::Earth,
        Role::Neutral => Is::Neutral,
        Role::MidPoint => Is::Mid,
        Role::Line => Is::Line,
        Role::DcPlus | Role::DcMinus => Is::Pole,
        Role::Control => Is::Control,
    };
    Wire { name: conductor.name.clone(), is, supply: conductor.supply.clone() }
}

/// The ranges in which a pair is read: "every pair has a reading, and every test with direct voltage one in that range. Between two poles,
/// or a pole and its mid-point, that alone is enough". `direct`: something of the job brings direct voltage.
pub fn ranges(one: &Wire, other: &Wire, direct: bool) -> &'static [bool] {
    let pole = |wire: &Wire| matches!(wire.is, Is::Pole | Is::Mid);
    let either = [one, other].into_iter().any(|wire| wire.is == Is::Pole);
    match (pole(one) && pole(other), direct || either) {
        (true, _) => &[true],
        (false, true) => &[false, true],
        (false, false) => &[false],
    }
}

/// Which conductors "leave the pairs": those that somebody named "with its place and how it is screened", "only if it is of a set of one's own,
/// of a supply beside the normal one, and no point opens anything of that supply: as soon as a point does, it is in the pairs again".
pub fn live(system: System, wires: &[Wire], valid: &[&Entry]) -> BTreeSet<String> {
    if system != System::Own {
        return BTreeSet::new();
    }
    let opened = |wire: &Wire| {
        valid.iter().any(|e| matches!(&e.body.fact, Fact::PointAdded { poles, .. } if poles.contains(&wire.name)))
    };
    let there = |text: &str| text.chars().any(char::is_alphanumeric);
    let named = valid.iter().filter_map(|e| match &e.body.fact {
        Fact::StaysLive { what, at, screened, conductors } => {
            (there(what) && there(at) && says_something(screened)).then_some(conductors)
        }
        _ => None,
    });
    let named: BTreeSet<&String> = named.flatten().collect();
    let leaves = |wire: &&Wire| {
        let beside = wire.supply.is_some() && !wires.iter().any(|w| w.supply == wire.supply && opened(w));
        beside && wire.is != Is::Earth && named.contains(&wire.name)
    };
    wires.iter().filter(leaves).map(|wire| wire.name.clone()).collect()
}

/// What players list.
pub fn sets() -> [Vec<Conductor>; 4] {
    let list = |all: &[(&str, Role, Option<&str>)]| {
        let conductor = |(name, role, supply): &(&str, Role, Option<&str>)| Conductor {
            name: (*name).into(),
            role: *role,
            supply: supply.map(str::to_owned),
            colour: None,
        };
        all.iter().map(conductor).collect()
    };
    let line = |name| (name, Role::Line, None);
    let (n, pe) = (("N", Role::Neutral, None), ("PE", Role::Protective, None));
    let (plus, minus) = (("S+", Role::DcPlus, Some("String A")), ("S-", Role::DcMinus, Some("String A")));
    let control = |name| (name, Role::Control, Some("Gate of the yard"));
    [
        list(&[line("L1"), line("L2"), line("L3"), n, pe, plus, minus]),
        list(&[line("U"), line("V"), line("W"), pe]),
        list(&[line("L1"), line("L2"), pe, control("K1"), control("K2")]),
        list(&[("A+", Role::DcPlus, None), ("A-", Role::DcMinus, None), ("MP", Role::MidPoint, None), pe]),
    ]
}

/// What of such a set is of another supply.
pub fn beside(own: &[Conductor]) -> Vec<String> {
    own.iter().filter(|c| c.supply.is_some()).map(|c| c.name.clone()).collect()
}

/// One of the sets, and what of it is named as staying live: all of the other supply, or nothing.
pub fn listed(chance: &mut Chance) -> (Vec<Conductor>, Vec<String>) {
    let all = sets();
    let own = all[chance.of(all.len())].clone();
    let live = if chance.one_in(2) { beside(&own) } else { Vec::new() };
    (own, live)
}
