//! The help at the terminal.

use clap::Command;
use stillbar_core::text;
use stillbar_desk::cli;

/// Whoever asks for the help of any command reads that local rules and a licensed person come first, once and at its end.
#[test]
fn every_help_says_what_comes_first() {
    fn all(command: Command, seen: &mut Vec<String>) {
        let name = command.get_name().to_owned();
        for help in [command.clone().render_help(), command.clone().render_long_help()] {
            // Lines are broken to the width of the terminal.
            let said = help.to_string().split_whitespace().collect::<Vec<_>>().join(" ");
            assert!(said.ends_with(&text::defers(None)), "{name}: {said}");
            assert_eq!(said.matches(&text::defers(None)).count(), 1, "{name}: {said}");
        }
        seen.push(name);
        command.get_subcommands().cloned().for_each(|below| all(below, seen));
    }
    let mut seen = Vec::new();
    all(cli::command(), &mut seen);
    for name in ["stillbar", "verify", "new", "propose"] {
        assert!(seen.iter().any(|n| n == name), "{seen:?}");
    }
}
