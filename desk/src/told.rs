//! A plan and a judgement as text for a person at a terminal.

use std::fmt::Write;

use stillbar_core::prove::judge::Verdict;
use stillbar_core::text::{ToldJudgement, ToldPlan, ToldTest};

/// The tests, one a line.
pub fn tests(plan: &ToldPlan) -> String {
    let mut out = String::new();
    for (i, test) in plan.tests.iter().enumerate() {
        let ToldTest { first, then, expect, .. } = test;
        // Writing to a String cannot fail.
        let _ = writeln!(
            out,
            "{:>4}. {first} – {then}   first probe on {first}, held; then {then}. Expect {expect}.",
            i + 1
        );
    }
    out
}

/// Everything: what warns, what to do before, the tests with the moves of the probes, and where it all comes from.
pub fn plan(plan: &ToldPlan) -> String {
    let mut out = String::new();
    list(&mut out, "Look out", &plan.warnings);
    for wait in &plan.stored_energy {
        list(&mut out, &format!("Stored energy: {}", wait.what), &wait.steps);
    }
    let name = plan.reference.conductor.as_deref().unwrap_or("missing");
    list(&mut out, &format!("Reference: {name}"), std::slice::from_ref(&plan.reference.why));
    list(&mut out, "  Show it in one of these ways", &plan.reference.ways);
    if let Some(dc) = &plan.dc_test {
        let pairs: Vec<String> = dc.pairs.iter().map(|[a, b]| format!("{a}–{b}")).collect();
        let said = if pairs.len() == plan.tests.len() { "every pair".to_owned() } else { pairs.join(", ") };
        list(&mut out, &format!("Read direct voltage too: {said}"), &dc.why);
    }
    let _ = writeln!(
        out,
        "Tests: {}, with {} moves of a probe ({} at best)",
        plan.tests.len(),
        plan.moves,
        plan.fewest_moves
    );
    for (i, test) in plan.tests.iter().enumerate() {
        let _ = writeln!(out, "{:>4}. {} – {}   {}", i + 1, test.first, test.then, probes(test));
        let _ = writeln!(out, "      dead: {}", test.expect);
        let _ = writeln!(out, "      not dead: {}", test.expect_not_dead);
    }
    out.push('\n');
    list(&mut out, "Notes", &plan.notes);
    out
}

/// The verdict, why, what may be behind it and what to do.
pub fn judgement(judgement: &ToldJudgement) -> String {
    let verdict = match judgement.verdict {
        Verdict::ProvedDead => "Proved dead",
        Verdict::TreatAsLive => "Treat as live",
        Verdict::Incomplete => "Incomplete: treat as live",
        Verdict::Void => "Void: treat as live",
    };
    let mut out = String::new();
    list(&mut out, verdict, &judgement.why);
    for diagnosis in &judgement.diagnoses {
        let title = format!("It may be: {} (fits to {:.0} %)", diagnosis.cause.name(), diagnosis.fit * 100.0);
        list(&mut out, &title, &[diagnosis.explains.clone(), diagnosis.next.clone()]);
    }
    let repeat: Vec<String> = judgement.repeat.iter().map(|[a, b]| format!("{a} – {b}")).collect();
    list(&mut out, "Read again", &repeat);
    out
}

fn probes(test: &ToldTest) -> String {
    let ToldTest { first, then, off_first, .. } = test;
    match &test.held {
        Some(held) => {
            let other = if held == first { then } else { first };
            format!("{held} stays on, the other probe goes to {other}; {off_first} comes off first")
        }
        None => format!("first probe on {first}, then {then}; {off_first} comes off first"),
    }
}

fn list(out: &mut String, title: &str, lines: &[String]) {
    if lines.is_empty() {
        return;
    }
    let _ = writeln!(out, "{title}");
    for line in lines {
        let _ = writeln!(out, "  - {line}");
    }
    out.push('\n');
}
