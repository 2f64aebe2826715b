//! Rule sets: what a page of docs says is what the app has, and the figures are those of what was published.

use std::path::Path;

use stillbar_core::prove::judge::energised::Tolerance;
use stillbar_core::prove::{RuleSet, System};
use stillbar_core::text::terms::Speaking;
use stillbar_core::text::{self, in_terms};

const PAGE: &str = "docs/rule-sets.md";

fn page() -> String {
    let mut page = String::from(
        "# Rule sets\n\nMade from the program by `rule_sets::the_page_says_what_the_app_has` (with `STILLBAR_FREEZE=1` it writes this page). A rule set \
         chooses words,\ndefaults and bounds; it never drops a question. **Nobody licensed has checked any of this.** How sure: A read in a copy or an \
         excerpt, B from\nmemory or common practice, C unsure. For \"dead\" no rule set has a figure: none was found in any.\n",
    );
    for rules in RuleSet::ALL {
        let (told, figures) = (text::rule_set(rules), rules.figures());
        let (least, most) = figures.tolerance.band(230.0);
        let nominal = figures.nominal.iter().map(|(system, volts)| format!("{} {volts} V", text::system(*system)));
        page += &format!("\n## {} (`{}`)\n\n| | |\n|---|---|\n", told.name, rules.name());
        for (what, says) in [
            ("Law", told.law),
            ("Standards and guidance", told.standards),
            ("Usual systems", nominal.collect::<Vec<_>>().join("; ")),
            ("Tolerance", format!("{}, at 230 V {least:.1} to {most:.1} V", text::tolerance(figures.tolerance))),
            ("Where it holds", told.measured),
            (
                "Extra-low voltage",
                format!("{} V AC, {} V DC: a limit of touch, not of dead", figures.extra_low.0, figures.extra_low.1),
            ),
            ("Order of tests offered first", format!("{} (custom)", text::order(figures.order))),
            ("Colours, never a role", told.colours),
            ("Instrument", told.instruments),
            ("Lock of somebody absent", told.removal),
            ("Re-test after a break", "after every absence: no rule set was found that names minutes".to_owned()),
            ("Words of the trade", in_words(rules)),
            ("How sure", told.sure),
            ("Sources", told.sources),
        ] {
            page += &format!("| {what} | {says} |\n");
        }
    }
    page
}

/// Some of what is called otherwise under these rules.
fn in_words(rules: RuleSet) -> String {
    let _speaking = Speaking::of(Some(rules));
    ["earth", "isolator", "caution sign", "locked off", "prove dead", "dead test", "RCD"].map(in_terms).join(", ")
}

#[test]
fn the_page_says_what_the_app_has() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("..").join(PAGE);
    if std::env::var_os("STILLBAR_FREEZE").is_some() {
        std::fs::write(&path, page()).unwrap();
    }
    assert_eq!(std::fs::read_to_string(&path).unwrap(), page(), "write {PAGE} anew with STILLBAR_FREEZE=1");
}

/// Published bands: 216.2 to 253.0 V in the UK (IEE Regulations, appendix 2, from an excerpt); 207 to 253 V of IEC 60038 and EN 50160 (from an
/// excerpt); 207 to 253 V in New Zealand since November 2025 (from an announcement); 114 to 126 V of ANSI C84.1 range A (from memory).
#[test]
fn bands_as_published() {
    let band = |rules: RuleSet, nominal: f64| {
        let (least, most) = rules.figures().tolerance.band(nominal);
        ((least * 10.0).round() / 10.0, (most * 10.0).round() / 10.0)
    };
    assert_eq!(band(RuleSet::Uk, 230.0), (216.2, 253.0));
    assert_eq!(band(RuleSet::Au, 400.0), (376.0, 440.0));
    for rules in [RuleSet::Ie, RuleSet::Eu, RuleSet::De, RuleSet::Nz] {
        assert_eq!(band(rules, 230.0), (207.0, 253.0), "{rules:?}");
    }
    assert_eq!(band(RuleSet::Us, 120.0), (114.0, 126.0));
    assert_eq!(RuleSet::Us.figures().tolerance, Tolerance::AnsiC841A);
}

/// Nothing is taken away: every system is offered by every rule set, once; what is usual comes first and has a voltage.
#[test]
fn every_rule_set_offers_every_system() {
    for rules in RuleSet::ALL {
        let offered = rules.systems();
        assert_eq!(offered.len(), System::ALL.len(), "{rules:?}");
        assert!(System::ALL.iter().all(|system| offered.contains(system)), "{rules:?}");
        for (system, _) in rules.figures().nominal {
            assert!(!rules.volts_of(*system).is_empty(), "{rules:?}");
        }
        // No rule set lets a limit come above 50 V AC or 120 V DC.
        let (ac, dc) = rules.figures().extra_low;
        assert!(ac <= 50 && dc <= 120, "{rules:?}");
    }
}
