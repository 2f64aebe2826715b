//! How long a plan of 64 conductors and a judgement take: `cargo run --release -p stillbar-core --example prove_speed`.

use std::time::Instant;

use stillbar_core::prove::judge::judge;
use stillbar_core::prove::{Case, Conductor, Role, plan_case};
use stillbar_core::text;

fn main() {
    let case = large();
    timed("plan, 64 conductors, 2016 tests", || assert_eq!(plan_case(&case).tests.len(), 64 * 63 / 2));
    timed("the same with its sentences", || assert_eq!(text::plan(&plan_case(&case)).tests.len(), 64 * 63 / 2));
    for (name, value) in [("volts", "\"volts\":"), ("steps", "\"level\":")] {
        // A star whose neutral is open: every hypothesis has something to fit.
        let volts = [230, 400, 400, 120, 230, 400, 230, 230, 230, 50];
        let names = ["L1", "L2", "L3", "N", "PE"];
        let pairs = (0..5).flat_map(|a| (a + 1..5).map(move |b| (names[a], names[b])));
        let readings: Vec<String> =
            pairs.zip(volts).map(|((a, b), v)| format!("{{\"pair\":[\"{a}\",\"{b}\"],{value}{v}}}")).collect();
        let conductors = names.map(|n| format!("{{\"name\":\"{n}\"}}")).join(",");
        let file = format!("{{\"conductors\":[{conductors}],\"readings\":[{}]}}", readings.join(","));
        let case = Case::from_json(&file).expect("a case of the documented format");
        timed(&format!("judge, 5 conductors, 10 readings in {name}"), || assert!(!judge(&case).diagnoses.is_empty()));
    }
}

/// Fifteen four-wire supplies, a DC link, a control circuit and their protective conductor.
fn large() -> Case {
    let roles = (0..60).map(|i| if i % 4 == 3 { Role::Neutral } else { Role::Line });
    let roles = roles.chain([Role::DcPlus, Role::DcMinus, Role::Control, Role::Protective]);
    let named =
        |(i, role)| Conductor { name: format!("X{i}"), role, supply: Some(format!("S{}", i / 4)), colour: None };
    Case::of(roles.enumerate().map(named).collect())
}

fn timed(what: &str, work: impl Fn()) {
    let mut took: Vec<_> = (0..101)
        .map(|_| {
            let start = Instant::now();
            work();
            start.elapsed()
        })
        .collect();
    took.sort_unstable();
    println!("{what}: median {:.2?}, slowest {:.2?} of {}", took[50], took[100], took.len());
}
