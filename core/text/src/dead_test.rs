//! The plan of a dead test: what is expected, why the probes go so, and what else has to be shown.

use serde::Serialize;

use super::catalogue::say;
use super::conditions::holder;
use super::lists::commas;
use stillbar_rules::prove::{
    self, Conductor, DcReason, DcTest, EarthWay, IfDead, IfLive, Note, Plan, PlanWarning, ReferenceTest, Test, Wait,
    WhyFirst, volts,
};
use stillbar_values::drawing::Drawing;

/// A plan as it is told, in the fields of `docs/formats.md`.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ToldPlan {
    /// Every pair once.
    pub tests: Vec<ToldTest>,
    /// How many times a probe is put on a conductor.
    pub moves: usize,
    /// The fewest moves that any order of these conductors needs.
    pub fewest_moves: usize,
    /// How to show that what the conductors are held against is earth.
    pub reference: ToldReference,
    /// What has to discharge, and how that is shown.
    pub stored_energy: Vec<ToldWait>,
    /// Why and where a DC test is needed, if it is.
    pub dc_test: Option<ToldDcTest>,
    /// What the case itself says is dangerous or missing.
    pub warnings: Vec<String>,
    /// Where the expectations come from.
    pub notes: Vec<String>,
}

/// A test as it is told; the fields are those of [`Test`].
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[allow(missing_docs, reason = "they are those of the test, some of them in words")]
pub struct ToldTest {
    pub pair: [String; 2],
    pub first: String,
    pub then: String,
    pub group: usize,
    pub held: Option<String>,
    pub moves: u8,
    pub off_first: String,
    pub expect: String,
    pub expect_not_dead: String,
    pub dc: bool,
    pub why: String,
}

/// How to show that a conductor is earth, as it is told.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ToldReference {
    /// The conductor, or `None` where the list has none.
    pub conductor: Option<String>,
    /// Why it has to be shown.
    pub why: String,
    /// What to do: one of these is enough.
    pub ways: Vec<String>,
}

/// Something that has to discharge, as it is told.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ToldWait {
    /// What holds the charge.
    pub what: String,
    /// How long to wait before the covers come off, in seconds.
    pub wait_seconds: Option<u32>,
    /// Between which conductors of the list its DC voltage is read.
    pub read_at: Option<[String; 2]>,
    /// What to do, in order.
    pub steps: Vec<String>,
}

/// A DC test, as it is told.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ToldDcTest {
    /// Why it is needed.
    pub why: Vec<String>,
    /// The pairs that are read in the DC range too.
    pub pairs: Vec<[String; 2]>,
}

/// A plan in words.
pub fn plan(plan: &Plan) -> ToldPlan {
    ToldPlan {
        tests: plan.tests.iter().map(test).collect(),
        moves: plan.moves,
        fewest_moves: plan.fewest_moves,
        reference: reference(&plan.reference),
        stored_energy: plan.stored_energy.iter().map(wait).collect(),
        dc_test: plan.dc_test.as_ref().map(dc_test),
        warnings: plan.warnings.iter().map(warning).collect(),
        notes: plan.notes.iter().map(note).collect(),
    }
}

fn test(test: &Test) -> ToldTest {
    ToldTest {
        pair: test.pair.clone(),
        first: test.first.clone(),
        then: test.then.clone(),
        group: test.group,
        held: test.held.clone(),
        moves: test.moves,
        off_first: test.off_first.clone(),
        expect: if_dead(test.expect),
        expect_not_dead: if_live(test.expect_not_dead),
        dc: test.dc,
        why: why_first(test),
    }
}

/// What a pair shows if it is dead; begins with a small letter and has no full stop.
pub fn if_dead(expect: IfDead) -> String {
    match expect {
        IfDead::PerhapsJoined => say!("if-dead-perhaps-joined"),
        IfDead::LineToEarth => say!("if-dead-line-to-earth"),
        IfDead::OtherToEarth => say!("if-dead-other-to-earth"),
        IfDead::ToLine => say!("if-dead-to-line"),
        IfDead::ToOther => say!("if-dead-to-other"),
        IfDead::BondAtSource => say!("if-dead-bond-at-source"),
        IfDead::BondAtOrigin => say!("if-dead-bond-at-origin"),
        IfDead::OpenInTn => say!("if-dead-open-in-tn"),
        IfDead::UnsaidInTn => say!("if-dead-unsaid-in-tn"),
        IfDead::ClosedInTt => say!("if-dead-closed-in-tt"),
        IfDead::OpenInTt => say!("if-dead-open-in-tt"),
        IfDead::UnsaidInTt => say!("if-dead-unsaid-in-tt"),
        IfDead::NeutralInIt => say!("if-dead-in-it"),
    }
}

/// What a pair shows if it is not dead; begins with a small letter and has no full stop.
pub fn if_live(expect: IfLive) -> String {
    match expect {
        IfLive::Middles(Some(mv)) => say!("if-live-middles", most = whole(mv)),
        IfLive::Middles(None) => say!("if-live-middles-line"),
        IfLive::About(mv) => say!("if-live-about", volts = whole(mv)),
        IfLive::UpTo(mv) => say!("if-live-up-to", volts = whole(mv)),
        IfLive::Either { phases, middle } => say!("if-live-either", phases = whole(phases), middle = whole(middle)),
        IfLive::Unsaid => say!("if-live-unsaid"),
    }
}

/// Millivolts as whole volts.
fn whole(mv: u32) -> u32 {
    mv.saturating_add(500) / 1000
}

/// Why the probes of a test go on and come off in their order, in a sentence.
fn why_first(test: &Test) -> String {
    let Test { first, then, .. } = test;
    match test.why {
        WhyFirst::LessDangerous => say!("why-less-dangerous", first = first),
        WhyFirst::ThenStays => say!("why-then-stays", first = first, then = then),
        WhyFirst::ThenStaysNext => say!("why-then-stays-next", first = first, then = then),
        WhyFirst::FirstHeld => say!("why-first-held", first = first, then = then),
    }
}

fn reference(test: &ReferenceTest) -> ToldReference {
    let name = test.conductor.as_deref().unwrap_or_default();
    let way = |way: &EarthWay| match way {
        EarthWay::List => say!("earth-list"),
        EarthWay::KnownLine => say!("earth-known-line", conductor = name),
        EarthWay::MainTerminal => say!("earth-main-terminal", conductor = name),
        EarthWay::Bonded => say!("earth-bonded", conductor = name),
    };
    let why = match &test.conductor {
        Some(name) => say!("reference-why", conductor = name),
        None => say!("reference-why-none"),
    };
    ToldReference { conductor: test.conductor.clone(), why, ways: test.ways.iter().map(way).collect() }
}

fn wait(wait: &Wait) -> ToldWait {
    let what = holder(&wait.what);
    let first = match wait.wait_seconds {
        Some(seconds) => say!("discharge-wait", what = &what, seconds = seconds),
        None => say!("discharge-find-time", what = &what),
    };
    let [plus, minus] = wait.read_at.clone().unwrap_or_else(|| [say!("pole-plus"), say!("pole-minus")]);
    let read = say!("discharge-read", what = &what, plus = plus, minus = minus);
    let steps = vec![first, read, say!("discharge-still")];
    ToldWait { what, wait_seconds: wait.wait_seconds, read_at: wait.read_at.clone(), steps }
}

fn dc_test(test: &DcTest) -> ToldDcTest {
    let reason = |reason: &DcReason| match reason {
        DcReason::Drive => say!("dc-drive"),
        DcReason::Ups => say!("dc-ups"),
        DcReason::Pv => say!("dc-pv"),
        DcReason::Stored => say!("dc-stored"),
        DcReason::Conductors => say!("dc-conductors"),
    };
    ToldDcTest { why: test.why.iter().map(reason).collect(), pairs: test.pairs.clone() }
}

/// What a case itself says is dangerous or missing, in a sentence.
fn warning(warning: &PlanWarning) -> String {
    let names = |list: &[String]| commas(list.iter().cloned());
    match warning {
        PlanWarning::NoReference => say!("warn-no-reference"),
        PlanWarning::LinesClosed(lines) => say!("warn-lines-closed", lines = names(lines)),
        PlanWarning::NeutralsClosed(neutrals, earthing) => {
            say!("warn-neutrals-closed", neutrals = names(neutrals), earthing = earthing.name())
        }
        PlanWarning::Charged(conductors) => say!("warn-charged", conductors = names(conductors)),
        PlanWarning::It => say!("warn-it"),
        PlanWarning::Supplies(supplies) => say!("warn-supplies", count = supplies.len(), supplies = names(supplies)),
        PlanWarning::Control => say!("warn-control"),
        PlanWarning::Pv => say!("warn-pv"),
        PlanWarning::Ups => say!("warn-ups"),
        PlanWarning::Generator => say!("warn-generator"),
        PlanWarning::LightsLate { lowest_mv, bound_mv } => {
            say!("warn-lights-late", lowest = whole(*lowest_mv), bound = volts(*bound_mv))
        }
    }
}

/// Where the expectations come from, in a sentence.
fn note(note: &Note) -> String {
    match note {
        Note::ProveIndicator => say!("note-prove-indicator"),
        Note::CommonPractice => say!("note-common-practice"),
        Note::NeutralInferred => say!("note-neutral-inferred"),
        Note::EarthingUnsaid => say!("note-earthing-unsaid"),
        Note::PolesUnsaid => say!("note-poles-unsaid"),
        Note::MoreMoves(count) => say!("note-more-moves", count = *count),
    }
}

/// The drawing of a group of tests at the terminals, and the same in words.
pub fn terminals(conductors: &[Conductor], tests: &[&Test]) -> (Drawing, String) {
    let (drawing, held) = prove::terminals(conductors, tests, &say!("terminals-hold"));
    let Some(held) = held else { return (drawing, say!("terminals-none")) };
    let stop = |(i, conductor)| say!("terminals-stop", number = i + 1, conductor = conductor);
    let stops = commas(held.stops.iter().enumerate().map(stop));
    let terminals = commas(conductors.iter().map(Conductor::with_colour));
    (drawing, say!("terminals", terminals = terminals, held = held.on, stops = stops))
}
