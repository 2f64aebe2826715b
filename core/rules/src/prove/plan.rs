//! The plan of a dead test: which pairs in which order, which probe goes where, what to expect, and what else must be shown.
//!
//! The model. Two probes; a *move* puts one probe on one conductor. Between two tests one probe moves, or both come off and both
//! are put on again. The plan is the best one in this sense, in this order:
//!
//! 1. *No free tip under something worse.* While one probe is on a conductor, the other tip is free only on its way from and to
//!    conductors that are at least as dangerous ([`super::Role::danger`]). Through the indicator a free tip has the potential of the
//!    conductor that the other probe is on. No conductor counts as shown dead here: until the indicator has been proved again, every
//!    reading may still turn out to be worth nothing.
//! 2. *The fewest moves.*
//! 3. *What the site prefers*: an [`Order`], or the site's own order of the pairs.
//!
//! The fewest moves are `n (n - 1) / 2` plus one for each level of danger that has a pair, where a pair belongs to the level of its
//! less dangerous conductor. Fewer cannot be: every test after the first needs a move, and where it needs just one, the probe that
//! stays is on the less dangerous conductor of both pairs (rule 1), so both belong to one level; the first test of every level
//! therefore costs two. `plan/sequence.rs` reaches this number for every list; tests search exhaustively up to five conductors.
//! A site's own order is kept as it is written, within rule 1, and the plan tells how many moves it costs.
//!
//! Start at [`plan_case`].

mod expect;
mod proofs;
mod sequence;
mod volts;

pub use expect::{IfDead, IfLive};
pub use proofs::{DcReason, DcTest, EarthWay, Note, PlanWarning, ReferenceTest, Wait};

use super::{Case, Conductor, Order, Stored};

/// One test: a pair of conductors, and which probe goes where.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Test {
    /// The pair, `first` before `then`.
    pub pair: [String; 2],
    /// Where neither probe is on yet, this conductor gets its probe first, and loses it last.
    pub first: String,
    /// The second probe goes here.
    pub then: String,
    /// Tests with the same number share `first`; 1, 2, …
    pub group: usize,
    /// The conductor whose probe stays on from the test before; `None` where both probes are put on.
    pub held: Option<String>,
    /// How many probes are put on for this test: one or two.
    pub moves: u8,
    /// The conductor whose probe comes off first after this test.
    pub off_first: String,
    /// What is expected if the pair is dead.
    pub expect: IfDead,
    /// What is expected if it is not: a hint what to look for, never a reason to call something else dead.
    pub expect_not_dead: IfLive,
    /// Whether the pair is read in the DC range too.
    pub dc: bool,
    /// Why this probe goes first.
    pub why: WhyFirst,
}

/// Why the probes of a test go on and come off in their order.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WhyFirst {
    /// The first is the less dangerous of the two if one is still live: its probe goes on first and comes off last.
    LessDangerous,
    /// Neither is less dangerous: the probe on the second stays on, the other goes to the first.
    ThenStays,
    /// Neither is less dangerous: the first comes off first, so that the second stays for the next test.
    ThenStaysNext,
    /// Neither is less dangerous: the first is held, and the second loses its probe first.
    FirstHeld,
}

/// A whole plan.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Plan {
    /// Every pair once.
    pub tests: Vec<Test>,
    /// How many times a probe is put on a conductor.
    pub moves: usize,
    /// The fewest moves that any order of these conductors needs.
    pub fewest_moves: usize,
    /// How to show that what the conductors are held against is earth.
    pub reference: ReferenceTest,
    /// What has to discharge, and how that is shown.
    pub stored_energy: Vec<Wait>,
    /// Why and where a DC test is needed, if it is.
    pub dc_test: Option<DcTest>,
    /// What the case itself says is dangerous or missing.
    pub warnings: Vec<PlanWarning>,
    /// Where the expectations come from.
    pub notes: Vec<Note>,
}

/// Every pair of `conductors` exactly once, in `order`. `n (n - 1) / 2` tests.
pub fn plan(conductors: &[Conductor], order: Order) -> Vec<Test> {
    let case = Case { order, ..Case::of(conductors.to_vec()) };
    tests(&case)
}

/// The whole plan of a case.
pub fn plan_case(case: &Case) -> Plan {
    let tests = tests(case);
    let moves = tests.iter().map(|t| usize::from(t.moves)).sum();
    let fewest_moves = fewest_moves(&case.conductors);
    Plan {
        moves,
        fewest_moves,
        reference: proofs::reference(case),
        stored_energy: proofs::waits(case),
        dc_test: proofs::dc_test(case, &tests),
        warnings: proofs::warnings(case),
        notes: proofs::notes(case, moves - fewest_moves),
        tests,
    }
}

/// The fewest moves in which every pair of `conductors` can be tested under rule 1.
pub fn fewest_moves(conductors: &[Conductor]) -> usize {
    let n = conductors.len();
    let mut dangers: Vec<u8> = conductors.iter().map(|c| c.role.danger()).collect();
    dangers.sort_unstable();
    // A level has a pair if anything stands after its first conductor in this list.
    let levels = (0..n).filter(|&i| (i == 0 || dangers[i] != dangers[i - 1]) && i + 1 < n).count();
    n * n.saturating_sub(1) / 2 + levels
}

/// Whether a plan asks for the pair in the DC range too: what [`Test::dc`] says, without the plan.
pub(super) fn asks_for_dc(case: &Case) -> impl Fn(&Conductor, &Conductor) -> bool + '_ {
    let view = expect::View::of(case);
    move |first, then| view.dc(first, then)
}

/// What a pair shows while it is live: what [`Test::expect_not_dead`] says, without the plan. `first`: the less dangerous one.
pub(super) fn if_live(case: &Case, first: &Conductor, then: &Conductor) -> IfLive {
    expect::View::of(case).not_dead(first, then)
}

/// What has to discharge: what the case names, or else whatever holds the charge of the equipment that it names.
pub(super) fn holders(case: &Case) -> Vec<Stored> {
    proofs::holders(case)
}

/// The tests of one group, in order.
pub fn group(tests: &[Test], number: usize) -> Vec<&Test> {
    tests.iter().filter(|t| t.group == number).collect()
}

fn tests(case: &Case) -> Vec<Test> {
    let steps = match &case.own_order {
        Some(own) => sequence::own(&case.conductors, own),
        None => sequence::best(&case.conductors, case.order),
    };
    let view = expect::View::of(case);
    let mut tests: Vec<Test> = Vec::with_capacity(steps.len());
    for (i, step) in steps.iter().enumerate() {
        let (first, then) = (&case.conductors[step.first], &case.conductors[step.then]);
        let group = match tests.last() {
            Some(last) if last.first == first.name => last.group,
            Some(last) => last.group + 1,
            None => 1,
        };
        // What the next test holds stays on; where both come off, the more dangerous conductor loses its probe first.
        let stays = steps.get(i + 1).and_then(|next| next.held);
        let off_first = if stays == Some(step.then) { first } else { then };
        let held = step.held.map(|h| &case.conductors[h]);
        tests.push(Test {
            pair: [first.name.clone(), then.name.clone()],
            first: first.name.clone(),
            then: then.name.clone(),
            group,
            held: held.map(|c| c.name.clone()),
            moves: if held.is_some() { 1 } else { 2 },
            off_first: off_first.name.clone(),
            expect: view.dead(first, then),
            expect_not_dead: view.not_dead(first, then),
            dc: view.dc(first, then),
            why: why(first, then, held, off_first),
        });
    }
    tests
}

fn why(first: &Conductor, then: &Conductor, held: Option<&Conductor>, off_first: &Conductor) -> WhyFirst {
    if first.role.danger() < then.role.danger() {
        return WhyFirst::LessDangerous;
    }
    match held {
        Some(held) if held.name == then.name => WhyFirst::ThenStays,
        _ if off_first.name == first.name => WhyFirst::ThenStaysNext,
        _ => WhyFirst::FirstHeld,
    }
}
