//! What can be typed after `stillbar supply`.

use std::path::PathBuf;

use clap::{ArgGroup, Args, Subcommand};
use stillbar_core::prove::RuleSet;

use crate::words::WordsArgs;

/// What can be asked of a network.
#[derive(Subcommand)]
pub enum SupplyCommand {
    /// Whether any path from any source reaches the work zone with these points locked open
    ///
    /// A switch stops a path only if it is locked open: ties, changeovers and inlets for mobile sets count as paths though they are open.
    /// Whatever the answer, the exit code is 0. It is about what is in the file: other sources have to be looked for where the work is.
    #[command(after_help = "\
Examples:
  stillbar supply check net.json --zone B3 --locked Q1,Q7
  stillbar supply check net.json --zone B3 --zone B4 --locked Q1 --json
  stillbar supply check --nodes nodes.csv --links links.csv --zone B3,w2")]
    Check(CheckArgs),
    /// Which points could be locked to cut the work zone, and what each choice costs
    ///
    /// Fewest circuits lost first, fewest locks last, and what lies between. A person decides.
    #[command(after_help = "\
Examples:
  stillbar supply propose net.json --zone B3
  stillbar supply propose net.json --zone B3 --open Q4 --json")]
    Propose(ProposeArgs),
    /// Draw the network as a single-line diagram (SVG)
    #[command(after_help = "\
Examples:
  stillbar supply draw net.json -o net.svg
  stillbar supply draw net.json --zone B3 --locked Q1,Q7 -o net.svg")]
    Draw(DrawArgs),
    /// Write the network in another format
    ///
    /// A name that ends in .csv gives two files, NAME-nodes.csv and NAME-links.csv; any other name gives our JSON.
    #[command(after_help = "\
Examples:
  stillbar supply convert --nodes nodes.csv --links links.csv -o net.json
  stillbar supply convert net.json -o net.csv")]
    Convert(ConvertArgs),
}

impl SupplyCommand {
    /// In whose words it was asked for an answer.
    pub fn rules(&self) -> Option<RuleSet> {
        match self {
            SupplyCommand::Check(args) => args.words.rules(),
            SupplyCommand::Propose(args) => args.words.rules(),
            SupplyCommand::Draw(args) => args.words.rules(),
            SupplyCommand::Convert(_) => None,
        }
    }
}

/// Where the network is.
#[derive(Args)]
#[group(skip)]
#[command(group(ArgGroup::new("network").args(["file", "nodes"]).required(true)))]
pub(super) struct From {
    /// A JSON file, ours or pandapower's, or - to pipe it in
    #[arg(value_name = "NET.json")]
    pub(super) file: Option<PathBuf>,
    /// A CSV file of nodes
    #[arg(long, value_name = "FILE", requires = "links")]
    pub(super) nodes: Option<PathBuf>,
    /// The CSV file of links that belongs to it
    #[arg(long, value_name = "FILE", requires = "nodes")]
    pub(super) links: Option<PathBuf>,
}

/// What `check` is asked.
#[derive(Args)]
pub struct CheckArgs {
    #[command(flatten)]
    pub(super) from: From,
    /// The work zone: a board, another node, or a link to be worked on; several, parted by commas, are one zone. Given again, it asks again
    #[arg(long, value_name = "ID", required = true)]
    pub(super) zone: Vec<String>,
    /// The points that are locked open, parted by commas
    #[arg(long, value_name = "LIST", default_value = "")]
    pub(super) locked: String,
    #[command(flatten)]
    pub(super) words: WordsArgs,
    /// Print JSON for a program instead of text for a person
    #[arg(long)]
    pub(super) json: bool,
}

/// What `propose` is asked.
#[derive(Args)]
pub struct ProposeArgs {
    #[command(flatten)]
    pub(super) from: From,
    /// The work zone: a board, another node, or a link to be worked on; several, parted by commas, are one zone
    #[arg(long, value_name = "ID")]
    pub(super) zone: String,
    #[command(flatten)]
    pub(super) now: Now,
    #[command(flatten)]
    pub(super) words: WordsArgs,
    /// Print JSON for a program instead of text for a person
    #[arg(long)]
    pub(super) json: bool,
}

/// What does not stand as it normally does.
#[derive(Args)]
pub(super) struct Now {
    /// Switches that are open now, though normally closed, parted by commas
    #[arg(long, value_name = "LIST", default_value = "")]
    pub(super) open: String,
    /// Switches that are closed now, though normally open, parted by commas
    #[arg(long, value_name = "LIST", default_value = "")]
    pub(super) closed: String,
}

/// What `draw` is asked.
#[derive(Args)]
pub struct DrawArgs {
    #[command(flatten)]
    pub(super) from: From,
    /// The work zone, which gets a frame
    #[arg(long, value_name = "ID", default_value = "")]
    pub(super) zone: String,
    /// The points that are locked open, parted by commas
    #[arg(long, value_name = "LIST", default_value = "")]
    pub(super) locked: String,
    #[command(flatten)]
    pub(super) now: Now,
    #[command(flatten)]
    pub(super) words: WordsArgs,
    /// Where to write the SVG
    #[arg(short, long, value_name = "FILE")]
    pub(super) output: PathBuf,
}

/// What `convert` is asked.
#[derive(Args)]
pub struct ConvertArgs {
    #[command(flatten)]
    pub(super) from: From,
    /// Where to write it
    #[arg(short, long, value_name = "FILE")]
    pub(super) output: PathBuf,
}
