//! A plan and a judgement as text for a person at a terminal.

use std::fmt::Write;

use stillbar_core::prove::judge::Verdict;
use stillbar_core::text::screens::command as said;
use stillbar_core::text::{self, ToldJudgement, ToldPlan, ToldTest};

/// The tests, one a line.
pub fn tests(plan: &ToldPlan) -> String {
    let mut out = String::new();
    for (i, test) in plan.tests.iter().enumerate() {
        let ToldTest { first, then, expect, .. } = test;
        // Writing to a String cannot fail.
        let _ = writeln!(out, "{:>4}. {}", i + 1, said::test(first, then, expect));
    }
    out
}

/// Everything: what warns, what to do before, the tests with the moves of the probes, and where it all comes from.
pub fn plan(plan: &ToldPlan) -> String {
    let mut out = String::new();
    list(&mut out, &said::look_out(), &plan.warnings);
    for wait in &plan.stored_energy {
        list(&mut out, &said::stored(&wait.what), &wait.steps);
    }
    let name = plan.reference.conductor.clone().unwrap_or_else(said::reference_missing);
    list(&mut out, &said::reference(name), std::slice::from_ref(&plan.reference.why));
    list(&mut out, &format!("  {}", said::ways()), &plan.reference.ways);
    if let Some(dc) = &plan.dc_test {
        let pairs = || text::commas(dc.pairs.iter().map(|[a, b]| said::dc_pair(a, b)));
        let pairs = if dc.pairs.len() == plan.tests.len() { said::every_pair() } else { pairs() };
        list(&mut out, &said::dc(pairs), &dc.why);
    }
    let _ = writeln!(out, "{}", said::tests(plan.tests.len(), plan.moves, plan.fewest_moves));
    for (i, test) in plan.tests.iter().enumerate() {
        let _ = writeln!(out, "{:>4}. {}", i + 1, said::pair_probes(&test.first, &test.then, probes(test)));
        let _ = writeln!(out, "      {}", said::dead(&test.expect));
        let _ = writeln!(out, "      {}", said::not_dead(&test.expect_not_dead));
    }
    out.push('\n');
    list(&mut out, &said::notes(), &plan.notes);
    out
}

/// The verdict, why, what may be behind it and what to do.
pub fn judgement(judgement: &ToldJudgement) -> String {
    let verdict = match judgement.verdict {
        Verdict::ProvedDead => said::proved_dead(),
        Verdict::TreatAsLive => said::treat_as_live(),
        Verdict::Incomplete => said::incomplete(),
        Verdict::Void => said::void(),
    };
    let mut out = String::new();
    list(&mut out, &verdict, &judgement.why);
    for diagnosis in &judgement.diagnoses {
        let title = said::may_be(diagnosis.cause.name());
        list(&mut out, &title, &[diagnosis.explains.clone(), diagnosis.next.clone()]);
    }
    let repeat: Vec<String> = judgement.repeat.iter().map(|[a, b]| said::pair(a, b)).collect();
    list(&mut out, &said::read_again(), &repeat);
    out
}

fn probes(test: &ToldTest) -> String {
    let ToldTest { first, then, off_first, .. } = test;
    match &test.held {
        Some(held) => {
            let other = if held == first { then } else { first };
            said::probes_stay(held, other, off_first)
        }
        None => said::probes(first, then, off_first),
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
