//! `--rules`: in whose words of the trade a command answers.

use clap::Args;
use clap::builder::{PossibleValuesParser, TypedValueParser, ValueParser};
use stillbar_core::prove::RuleSet;

/// In whose words.
#[derive(Args, Clone, Copy)]
#[group(skip)]
pub struct WordsArgs {
    /// Answer in the words of the trade under these rules: with `us` a ground and a disconnect. No figure changes
    #[arg(long, value_name = "RULES", ignore_case = true, value_parser = rules())]
    rules: Option<RuleSet>,
}

impl WordsArgs {
    /// The rules, if any were named.
    pub fn rules(&self) -> Option<RuleSet> {
        self.rules
    }
}

fn rules() -> ValueParser {
    let names = PossibleValuesParser::new(RuleSet::ALL.map(RuleSet::name));
    // Told apart without regard to capitals, and given as they were typed.
    let named = |typed: String| RuleSet::ALL.into_iter().find(|rules| rules.name().eq_ignore_ascii_case(&typed));
    ValueParser::from(names.try_map(move |typed| named(typed).ok_or("no rule set")))
}
