//! How long a plan of 64 conductors takes: `cargo run --release -p stillbar-core --example plan_64`.

use std::time::Instant;

use stillbar_core::prove::{Case, Conductor, Role, plan_case};

fn main() {
    // Fifteen four-wire supplies, a DC link, a control circuit and their protective conductor.
    let roles = (0..60).map(|i| if i % 4 == 3 { Role::Neutral } else { Role::Line });
    let roles = roles.chain([Role::DcPlus, Role::DcMinus, Role::Control, Role::Protective]);
    let conductors = roles.enumerate().map(|(i, role)| Conductor {
        name: format!("X{i}"),
        role,
        supply: Some(format!("S{}", i / 4)),
    });
    let case = Case::of(conductors.collect());
    let mut took: Vec<_> = (0..101)
        .map(|_| {
            let start = Instant::now();
            let plan = plan_case(&case);
            assert_eq!(plan.tests.len(), 64 * 63 / 2);
            start.elapsed()
        })
        .collect();
    took.sort_unstable();
    println!("64 conductors, 2016 tests: median {:?}, slowest {:?} of {}", took[50], took[100], took.len());
}
