//! What a plan asks for beside the pairs: that the reference is earth, that charges are gone, that direct voltage is looked for.

use serde::Serialize;

use super::Test;
use super::volts::whole;
use crate::prove::conditions::{discharges, known_line_proves, left_closed};
use crate::prove::limit::Bound;
use crate::prove::{Case, Earthing, Role, Stored, volts};

/// How to show that what the conductors are held against is earth.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ReferenceTest {
    /// The conductor, or `None` where the list has none.
    pub conductor: Option<String>,
    /// Why it has to be shown.
    pub why: String,
    /// What to do: one of these is enough.
    pub ways: Vec<String>,
}

/// Something that has to discharge.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Wait {
    /// What holds the charge.
    pub what: String,
    /// How long to wait before the covers come off, in seconds; `None` where no label said it yet.
    pub wait_seconds: Option<u32>,
    /// Between which conductors of the list its DC voltage is read; `None`: at its own terminals.
    pub read_at: Option<[String; 2]>,
    /// What to do, in order. Only the reading ends it, never the time.
    pub steps: Vec<String>,
}

/// A DC test.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct DcTest {
    /// Why it is needed.
    pub why: Vec<String>,
    /// The pairs that are read in the DC range too.
    pub pairs: Vec<[String; 2]>,
}

pub(super) fn reference(case: &Case) -> ReferenceTest {
    let of = |role| case.conductors.iter().find(|c| c.role == role);
    let conductor = of(Role::Protective).or(of(Role::Pen)).map(|c| c.name.clone());
    let Some(name) = conductor.as_deref() else {
        return ReferenceTest {
            conductor: None,
            why: "No protective or PEN conductor is in the list: every pair can read nothing while all conductors are live to earth.".into(),
            ways: vec!["Put the protective conductor, or an earth that is known to be one, in the list and make the plan again.".into()],
        };
    };
    let mut ways = vec![
        format!("Measure a low resistance from {name} to the main earthing terminal, with a long lead."),
        format!("Measure a low resistance from {name} to metalwork that is bonded elsewhere."),
    ];
    if known_line_proves(case.earthing) {
        ways.insert(0, format!("Read from {name} to a line that is known to be live and is not part of this isolation: the full voltage to earth has to appear."));
    }
    ReferenceTest {
        conductor: Some(name.to_owned()),
        why: format!(
            "All pairs at zero show that the conductors are at one potential, not that it is earth: with {name} broken a live board reads nothing."
        ),
        ways,
    }
}

pub(super) fn waits(case: &Case) -> Vec<Wait> {
    holders(case).into_iter().map(|stored| wait(&stored.what, stored.label_seconds, stored.read_at)).collect()
}

/// What has to discharge: what the case names, or else whatever holds the charge of the equipment that it names.
pub(super) fn holders(case: &Case) -> Vec<Stored> {
    if !case.stored_energy.is_empty() {
        return case.stored_energy.clone();
    }
    let kinds =
        [(case.equipment.drive, "the drive"), (case.equipment.ups, "the UPS"), (case.equipment.pv, "the inverter")];
    let unsaid = |what: &str| Stored {
        what: what.to_owned(),
        label_seconds: None,
        waited_seconds: None,
        read_at: None,
        read: None,
    };
    kinds.into_iter().filter(|(there, _)| *there).map(|(_, what)| unsaid(what)).collect()
}

fn wait(what: &str, seconds: Option<u32>, read_at: Option<[String; 2]>) -> Wait {
    let first = match seconds {
        Some(s) => format!("Wait at least {s} s from switching off, as the label of {what} says."),
        None => format!(
            "Find the discharge time on the label or in the manual of {what}, and wait that long from switching off."
        ),
    };
    let (plus, minus) = match &read_at {
        Some([a, b]) => (a.as_str(), b.as_str()),
        None => ("plus", "minus"),
    };
    let second = format!(
        "Read direct voltage at {what}: {plus} to {minus}, and each of them to PE. The time alone proves nothing."
    );
    let third =
        "If any of it indicates, treat as live: wait on and read again, or discharge as the maker says.".to_owned();
    Wait { what: what.to_owned(), wait_seconds: seconds, read_at, steps: vec![first, second, third] }
}

pub(super) fn dc_test(case: &Case, tests: &[Test]) -> Option<DcTest> {
    let equipment = case.equipment;
    let has_dc = case.conductors.iter().any(|c| matches!(c.role, Role::DcPlus | Role::DcMinus));
    let why: Vec<String> = [
        (equipment.drive, "A drive holds a charge, and can put direct voltage on its supply and its motor."),
        (equipment.ups, "A UPS has a battery behind it."),
        (equipment.pv, "Photovoltaic modules are live while there is light."),
        (!case.stored_energy.is_empty(), "Stored energy is direct voltage."),
        (has_dc, "There are DC conductors."),
    ]
    .into_iter()
    .filter(|(there, _)| *there)
    .map(|(_, why)| why.to_owned())
    .collect();
    let pairs = tests.iter().filter(|t| t.dc).map(|t| t.pair.clone()).collect();
    (!why.is_empty()).then_some(DcTest { why, pairs })
}

pub(super) fn warnings(case: &Case) -> Vec<String> {
    let mut warnings = Vec::new();
    let mut warn = |there: bool, say: String| {
        if there {
            warnings.push(say);
        }
    };
    let no_reference = !case.conductors.iter().any(|c| c.role.is_reference());
    warn(no_reference, "No protective or PEN conductor is in the list: nothing here shows a voltage to earth.".into());

    let closed = left_closed(case);
    let names = |of: &dyn Fn(Role) -> bool| {
        let named = closed.iter().filter(|c| of(c.role)).map(|c| c.name.as_str());
        named.collect::<Vec<_>>().join(", ")
    };
    let lines = names(&|role| role.danger() > 1);
    warn(
        !lines.is_empty(),
        format!("Not opened by the isolator: {lines}. Treat as live until another point of isolation cuts it off."),
    );
    let neutrals = names(&|role| role.danger() < 2);
    let why = match case.earthing {
        Earthing::Tt => "in TT it can stand at some volts",
        Earthing::It => "in IT it is a live conductor",
        _ => "where the earthing is not known it may be live",
    };
    warn(!neutrals.is_empty(), format!("{neutrals} is not opened, and {why}: open it too."));
    let charged: Vec<&str> = case.conductors.iter().filter(|c| discharges(case, c)).map(|c| c.name.as_str()).collect();
    warn(
        !charged.is_empty(),
        format!("No isolator opens {}: treat as live until it has discharged and its DC was read.", charged.join(", ")),
    );
    warn(
        case.earthing == Earthing::It,
        "IT: a first fault stays hidden, and a live line may show nothing to earth.".into(),
    );

    let mut supplies: Vec<&str> = case.conductors.iter().filter_map(|c| c.supply.as_deref()).collect();
    supplies.sort_unstable();
    supplies.dedup();
    warn(
        supplies.len() > 1,
        format!(
            "{} supplies in one enclosure ({}): each needs a point of isolation of its own.",
            supplies.len(),
            supplies.join(", ")
        ),
    );
    let control = case.conductors.iter().find(|c| c.role == Role::Control);
    warn(control.is_some(), "Control circuits are often fed from elsewhere: find what feeds them.".into());
    warn(case.equipment.pv, "Photovoltaic modules cannot be switched off: up to the point that cuts them off, their side stays live in light.".into());
    warn(
        case.equipment.ups,
        "A UPS feeds its outgoing side with its supply off: isolate its output and its bypass too.".into(),
    );
    warn(case.equipment.generator, "A generator can start by itself: lock it off as a source of its own.".into());

    let (lowest, bound) = (case.indicator.lowest(false), Bound::of(case));
    warn(
        !bound.lit_by(false, lowest),
        format!(
            "The indicator shows nothing below {} V: take one whose first step is {} V or less.",
            whole(lowest),
            volts(bound.ac_mv)
        ),
    );
    warnings
}

pub(super) fn notes(case: &Case, over: usize) -> Vec<String> {
    let mut notes = vec![
        "Prove the indicator before the first test and after the last: until then no reading counts.".to_owned(),
        "Danger by role and the order of the pairs are common practice with no source: the site's rule comes first."
            .to_owned(),
    ];
    let both = [Role::Neutral, Role::Protective].iter().all(|role| case.conductors.iter().any(|c| c.role == *role));
    if both {
        notes.push(
            "What N to PE should read is engineering inference: have a reader of BS 7671 or IEC 60364 check it.".into(),
        );
    }
    if case.earthing == Earthing::Unknown {
        notes.push(
            "The earthing arrangement was not given: the expectations to earth are the general ones, and a known live line proves no earth."
                .into(),
        );
    }
    if case.poles_opened.is_none() {
        notes.push(
            "What the isolator opens was not given: whether every line is cut off cannot be told from here.".into(),
        );
    }
    if over > 0 {
        let times = if over == 1 { "once" } else { "times" };
        let count = if over == 1 { String::new() } else { format!("{over} ") };
        notes.push(format!("This own order puts a probe on {count}{times} more than the best order."));
    }
    notes
}
