//! The order of a dead test.
//!
//! Two orders, as the job says; in both the probe goes on the less dangerous conductor first and comes off it last, and one
//! probe is held while the other goes from conductor to conductor. Common practice, no source: documents differ, so a job
//! says which one its site wants.

use serde::{Deserialize, Serialize};

use super::{Conductor, Role};

/// Which pairs come first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Order {
    /// All line-neutral, neutral-PE, all line-PE, all line-line.
    #[default]
    LeastDangerousFirst,
    /// All line-line, all line-neutral, all line-PE, neutral-PE.
    LineLineFirst,
}

impl Order {
    /// Both, as offered.
    pub const ALL: [Order; 2] = [Order::LeastDangerousFirst, Order::LineLineFirst];

    /// In words.
    pub fn word(self) -> &'static str {
        match self {
            Order::LeastDangerousFirst => "Least dangerous first (line to line at the end)",
            Order::LineLineFirst => "Line to line first",
        }
    }

    /// As written on the command line and in files.
    pub fn name(self) -> &'static str {
        match self {
            Order::LeastDangerousFirst => "least-dangerous-first",
            Order::LineLineFirst => "line-line-first",
        }
    }
}

/// One test: a pair of conductors, and which probe goes where.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Test {
    /// The pair, the first probe's conductor first.
    pub pair: [String; 2],
    /// The first probe goes here, stays held through the group, and comes off last.
    pub first: String,
    /// The second probe goes here, and comes off first.
    pub then: String,
    /// Tests with the same number share the held probe; 1, 2, …
    pub group: usize,
    /// What is expected if the pair is dead.
    pub expect: String,
    /// Why this probe goes first.
    pub why: String,
}

/// Every pair of `conductors` exactly once, in `order`. `n (n - 1) / 2` tests.
pub fn plan(conductors: &[Conductor], order: Order) -> Vec<Test> {
    let mut pairs = Vec::with_capacity(conductors.len() * conductors.len() / 2);
    for (i, a) in conductors.iter().enumerate() {
        for b in &conductors[i + 1..] {
            // The less dangerous first; of two alike, the one that stands first at the terminals.
            pairs.push(if b.role.danger() < a.role.danger() { (b, a) } else { (a, b) });
        }
    }
    let place = |c: &Conductor| conductors.iter().position(|x| x.name == c.name);
    pairs.sort_by_key(|(first, then)| (class(first.role, then.role, order), place(first), place(then)));

    let mut tests: Vec<Test> = Vec::with_capacity(pairs.len());
    for (first, then) in pairs {
        let group = match tests.last() {
            Some(last) if last.first == first.name => last.group,
            Some(last) => last.group + 1,
            None => 1,
        };
        tests.push(Test {
            pair: [first.name.clone(), then.name.clone()],
            first: first.name.clone(),
            then: then.name.clone(),
            group,
            expect: expect(first.role, then.role).into(),
            why: why(first, then),
        });
    }
    tests
}

/// The tests of one group, in order.
pub fn group(tests: &[Test], number: usize) -> Vec<&Test> {
    tests.iter().filter(|t| t.group == number).collect()
}

/// Which class of pairs comes when. A pair that is none of the usual classes goes last, where both conductors are least known.
fn class(first: Role, then: Role, order: Order) -> usize {
    use Role::{Line, Neutral, Pen, Protective};
    let class = match (first, then) {
        (Neutral | Pen, Line) => 0,
        (Protective, Neutral | Pen) => 1,
        (Protective, Line) => 2,
        (Line, Line) => 3,
        _ => 4,
    };
    match order {
        Order::LeastDangerousFirst => class,
        Order::LineLineFirst => [1, 3, 2, 0, 4][class],
    }
}

fn expect(first: Role, then: Role) -> &'static str {
    use Role::{Line, Neutral, Pen, Protective};
    match (first, then) {
        (Protective, Neutral | Pen) | (Protective, Protective) | (Neutral | Pen, Neutral | Pen) => {
            "no indication; continuity if the two are joined at the source or the origin"
        }
        (Protective, Line) => "no indication; continuity points to an earth fault, a filter or a surge arrester",
        (_, Line) => "no indication; continuity if a load or winding joins them",
        _ => "no indication",
    }
}

fn why(first: &Conductor, then: &Conductor) -> String {
    if first.role.danger() < then.role.danger() {
        format!(
            "{} is the less dangerous of the two if one is still live: its probe goes on first and comes off last.",
            first.name
        )
    } else {
        format!("Neither is less dangerous: hold {}, and take the probe off {} first.", first.name, then.name)
    }
}
