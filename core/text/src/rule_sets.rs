//! Rule sets as they are told: law and standard to defer to, and what they ask for.

use super::catalogue::say;
use stillbar_values::RuleSet;

/// What is said of a rule set.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ToldRules {
    /// Whose rules.
    pub name: String,
    /// The law.
    pub law: String,
    /// Standards and guidance.
    pub standards: String,
    /// Where the tolerance of the supply holds.
    pub measured: String,
    /// Colours of conductors: a note, from which no role is ever taken.
    pub colours: String,
    /// What an instrument has to be.
    pub instruments: String,
    /// How the lock of somebody absent comes off.
    pub removal: String,
    /// How sure all this is.
    pub sure: String,
    /// Where each figure comes from, or that it has no source.
    pub sources: String,
}

/// What is said of these rules.
pub fn rule_set(rules: RuleSet) -> ToldRules {
    match rules {
        RuleSet::Uk => ToldRules {
            name: say!("rules-uk-name"),
            law: say!("rules-uk-law"),
            standards: say!("rules-uk-standards"),
            measured: say!("rules-uk-measured"),
            colours: say!("rules-uk-colours"),
            instruments: say!("rules-uk-instruments"),
            removal: say!("rules-uk-removal"),
            sure: say!("rules-uk-sure"),
            sources: say!("rules-uk-sources"),
        },
        RuleSet::Ie => ToldRules {
            name: say!("rules-ie-name"),
            law: say!("rules-ie-law"),
            standards: say!("rules-ie-standards"),
            measured: say!("rules-ie-measured"),
            colours: say!("rules-ie-colours"),
            instruments: say!("rules-ie-instruments"),
            removal: say!("rules-ie-removal"),
            sure: say!("rules-ie-sure"),
            sources: say!("rules-ie-sources"),
        },
        RuleSet::Eu => ToldRules {
            name: say!("rules-eu-name"),
            law: say!("rules-eu-law"),
            standards: say!("rules-eu-standards"),
            measured: say!("rules-eu-measured"),
            colours: say!("rules-eu-colours"),
            instruments: say!("rules-eu-instruments"),
            removal: say!("rules-eu-removal"),
            sure: say!("rules-eu-sure"),
            sources: say!("rules-eu-sources"),
        },
        RuleSet::De => ToldRules {
            name: say!("rules-de-name"),
            law: say!("rules-de-law"),
            standards: say!("rules-de-standards"),
            measured: say!("rules-de-measured"),
            colours: say!("rules-de-colours"),
            instruments: say!("rules-de-instruments"),
            removal: say!("rules-de-removal"),
            sure: say!("rules-de-sure"),
            sources: say!("rules-de-sources"),
        },
        RuleSet::Us => ToldRules {
            name: say!("rules-us-name"),
            law: say!("rules-us-law"),
            standards: say!("rules-us-standards"),
            measured: say!("rules-us-measured"),
            colours: say!("rules-us-colours"),
            instruments: say!("rules-us-instruments"),
            removal: say!("rules-us-removal"),
            sure: say!("rules-us-sure"),
            sources: say!("rules-us-sources"),
        },
        RuleSet::Ca => ToldRules {
            name: say!("rules-ca-name"),
            law: say!("rules-ca-law"),
            standards: say!("rules-ca-standards"),
            measured: say!("rules-ca-measured"),
            colours: say!("rules-ca-colours"),
            instruments: say!("rules-ca-instruments"),
            removal: say!("rules-ca-removal"),
            sure: say!("rules-ca-sure"),
            sources: say!("rules-ca-sources"),
        },
        RuleSet::Au => ToldRules {
            name: say!("rules-au-name"),
            law: say!("rules-au-law"),
            standards: say!("rules-au-standards"),
            measured: say!("rules-au-measured"),
            colours: say!("rules-au-colours"),
            instruments: say!("rules-au-instruments"),
            removal: say!("rules-au-removal"),
            sure: say!("rules-au-sure"),
            sources: say!("rules-au-sources"),
        },
        RuleSet::Nz => ToldRules {
            name: say!("rules-nz-name"),
            law: say!("rules-nz-law"),
            standards: say!("rules-nz-standards"),
            measured: say!("rules-nz-measured"),
            colours: say!("rules-nz-colours"),
            instruments: say!("rules-nz-instruments"),
            removal: say!("rules-nz-removal"),
            sure: say!("rules-nz-sure"),
            sources: say!("rules-nz-sources"),
        },
        RuleSet::Own => ToldRules {
            name: say!("rules-own-name"),
            law: say!("rules-own-law"),
            standards: say!("rules-own-standards"),
            measured: say!("rules-own-measured"),
            colours: say!("rules-own-colours"),
            instruments: say!("rules-own-instruments"),
            removal: say!("rules-own-removal"),
            sure: say!("rules-own-sure"),
            sources: say!("rules-own-sources"),
        },
    }
}

/// By whose rules a job is done, on its page: the law and the standards stand where the rules are picked and on the record.
pub fn rules_in_short(rules: Option<RuleSet>) -> String {
    match rules {
        Some(rules) => say!("rules-in-short", name = rule_set(rules).name),
        None => say!("rules-defer-none"),
    }
}

/// What comes before anything that the app says.
pub fn defers(rules: Option<RuleSet>) -> String {
    match rules {
        Some(rules) => {
            let ToldRules { law, standards, .. } = rule_set(rules);
            say!("rules-defer", law = law, standards = standards)
        }
        None => say!("rules-defer-none"),
    }
}
