//! `stillbar supply`: what the core says of a network in files, for a person or a program.

mod args;

use std::fmt::Write;
use std::path::{Path, PathBuf};

use serde::Serialize;
use stillbar_core::supply::files::{self, MAX_BYTES, Read};
use stillbar_core::supply::{self, Check, Network, Position, Proposals, Shown, States, SupplyError};
use stillbar_core::text;
use stillbar_core::text::screens::command as said;

use crate::file::{self, FileError};
pub use args::SupplyCommand;
use args::{CheckArgs, ConvertArgs, DrawArgs, From, Now, ProposeArgs};

/// Why a question to a network has no answer.
#[derive(Debug, thiserror::Error)]
pub enum AskError {
    /// A file cannot be read or written.
    #[error(transparent)]
    File(#[from] FileError),
    /// No network was given.
    #[error("Give a network: a JSON file, or --nodes and --links.")]
    NoNetwork,
    /// What is in the file is none.
    #[error("{name}: {}", text::file_error(.why))]
    Network {
        /// What the file is called.
        name: String,
        /// What is wrong, and where.
        why: Box<files::FileError>,
    },
    /// It cannot be asked of this network.
    #[error("{name}: {option}: {}", text::network_fault(&.why.why))]
    Question {
        /// What the file is called.
        name: String,
        /// What in the command it is about.
        option: &'static str,
        /// Why.
        why: Box<SupplyError>,
    },
    /// A switch that it does not have is said to stand otherwise.
    #[error("{name}: --{}: \"{id}\" is no link of it; name a switch as the network does.", .position.word())]
    NoSwitch {
        /// What the file is called.
        name: String,
        /// How it is said to stand.
        position: Position,
        /// What it was called.
        id: String,
    },
    /// The answer could not be written as JSON.
    #[error(transparent)]
    Json(#[from] serde_json::Error),
}

/// Answers.
pub fn run(asked: &SupplyCommand) -> Result<String, AskError> {
    match asked {
        SupplyCommand::Check(args) => check(args),
        SupplyCommand::Propose(args) => propose(args),
        SupplyCommand::Draw(args) => draw(args),
        SupplyCommand::Convert(args) => convert(args),
    }
}

/// A network and what its files are called.
struct Opened {
    name: String,
    read: Read,
}

impl From {
    fn open(&self) -> Result<Opened, AskError> {
        match (&self.file, &self.nodes, &self.links) {
            (Some(path), ..) => {
                let name = file::name(path);
                let text = file::read_text(path, MAX_BYTES, &name, "a JSON file")?;
                Ok(Opened { read: files::from_json(&text).map_err(|why| no_network(&name, why))?, name })
            }
            (None, Some(nodes), Some(links)) => {
                let names = [file::name(nodes), file::name(links)];
                let text = |path: &Path, name: &str| file::read_text(path, MAX_BYTES, name, "a CSV file");
                let texts = [text(nodes, &names[0])?, text(links, &names[1])?];
                let read = files::from_csv(&texts[0], &texts[1]);
                let read = read.map_err(|why| no_network(&names[usize::from(why.second)], why))?;
                let [name, _] = names;
                Ok(Opened { read, name })
            }
            _ => Err(AskError::NoNetwork),
        }
    }
}

fn no_network(name: &str, why: files::FileError) -> AskError {
    AskError::Network { name: name.to_owned(), why: Box::new(why) }
}

/// The ids in a list parted by commas.
fn ids(list: &str) -> Vec<String> {
    list.split(',').map(str::trim).filter(|id| !id.is_empty()).map(str::to_owned).collect()
}

fn states(now: &Now) -> States {
    let open = ids(&now.open).into_iter().map(|id| (id, Position::Open));
    open.chain(ids(&now.closed).into_iter().map(|id| (id, Position::Closed))).collect()
}

#[derive(Serialize)]
struct CheckAnswer<'a> {
    zone: &'a [String],
    cut: bool,
    answer: String,
    not_shown: Vec<&'a str>,
    why: Vec<String>,
    paths: Vec<&'a [String]>,
    ways: Vec<&'a [String]>,
    says: Vec<String>,
    sources: usize,
    other_sources: String,
    remarks: &'a [String],
}

impl<'a> CheckAnswer<'a> {
    fn of(check: &'a Check, remarks: &'a [String]) -> CheckAnswer<'a> {
        CheckAnswer {
            zone: &check.zone,
            cut: check.cut,
            answer: text::answer(check.answer()),
            not_shown: check.not_shown.iter().map(|d| d.id.as_str()).collect(),
            why: check.not_shown.iter().map(|d| text::doubt(&d.why)).collect(),
            paths: check.paths.iter().map(|p| p.ids.as_slice()).collect(),
            ways: check.paths.iter().map(|p| p.way.as_slice()).collect(),
            says: check.paths.iter().map(text::path).collect(),
            sources: check.sources,
            other_sources: text::other_sources(),
            remarks,
        }
    }
}

fn check(args: &CheckArgs) -> Result<String, AskError> {
    let Opened { name, read } = args.from.open()?;
    let locked = ids(&args.locked);
    let checks: Result<Vec<Check>, AskError> = args
        .zone
        .iter()
        .map(|zone| asked(&name, "--zone", supply::check(&read.network, &ids(zone), &locked)))
        .collect();
    let (checks, noted) = (checks?, remarks_of(&read));
    if args.json {
        let answers: Vec<CheckAnswer> = checks.iter().map(|c| CheckAnswer::of(c, &noted)).collect();
        return Ok(match answers.as_slice() {
            [one] => serde_json::to_string(one)?,
            several => serde_json::to_string(several)?,
        });
    }
    let mut out = String::new();
    for check in &checks {
        told(&mut out, check);
    }
    remarks(&mut out, &noted);
    Ok(out)
}

/// What was taken for something unknown, a sentence each.
fn remarks_of(read: &Read) -> Vec<String> {
    read.remarks.iter().map(text::remark).collect()
}

/// An error of a question, with the file and what in the command it is about.
fn asked<T>(name: &str, option: &'static str, answer: Result<T, SupplyError>) -> Result<T, AskError> {
    answer.map_err(|why| AskError::Question { name: name.to_owned(), option, why: Box::new(why) })
}

fn told(out: &mut String, check: &Check) {
    // Writing to a String cannot fail.
    let _ = writeln!(out, "{}", text::check(check));
    for path in &check.paths {
        let _ = writeln!(out, "  - {}", text::path(path));
    }
    if check.sources > check.paths.len() {
        let _ = writeln!(out, "  - {}", said::more_sources(check.sources));
    }
    if !check.not_shown.is_empty() {
        let _ = writeln!(out, "{}", said::supply_not_shown());
        for doubt in &check.not_shown {
            let _ = writeln!(out, "  - {}", text::doubt(&doubt.why));
        }
    }
    let _ = writeln!(out, "{}\n", text::other_sources());
}

fn remarks(out: &mut String, remarks: &[String]) {
    for remark in remarks {
        let _ = writeln!(out, "{}", said::remark(remark));
    }
}

#[derive(Serialize)]
struct ProposeAnswer<'a> {
    zone: &'a [String],
    proposals: Vec<ProposalAnswer<'a>>,
    complete: bool,
    /// Where nothing cuts the zone: the path that nothing cuts.
    bare: Option<&'a [String]>,
    says: Vec<String>,
    other_sources: String,
    remarks: &'a [String],
}

#[derive(Serialize)]
struct ProposalAnswer<'a> {
    lock: &'a [String],
    loses: &'a [String],
    locks: usize,
    circuits: &'a [String],
    tell: &'a [String],
    why: String,
    cut: bool,
    not_shown: Vec<&'a str>,
}

fn propose(args: &ProposeArgs) -> Result<String, AskError> {
    let Opened { name, read } = args.from.open()?;
    let states = states(&args.now);
    known(&read.network, &name, &states)?;
    let found = asked(&name, "--zone", supply::propose(&read.network, &ids(&args.zone), &states))?;
    let noted = remarks_of(&read);
    if !args.json {
        let mut out = proposals(&found);
        remarks(&mut out, &noted);
        return Ok(out);
    }
    let answer = ProposeAnswer {
        zone: &found.zone,
        proposals: found
            .proposals
            .iter()
            .map(|p| ProposalAnswer {
                lock: &p.lock,
                loses: &p.loses,
                locks: p.locks(),
                circuits: &p.circuits,
                tell: &p.tell,
                why: text::worth(p.why),
                cut: p.check.cut,
                not_shown: p.check.not_shown.iter().map(|d| d.id.as_str()).collect(),
            })
            .collect(),
        complete: found.complete,
        bare: found.bare.as_ref().map(|path| path.ids.as_slice()),
        says: text::proposals(&found),
        other_sources: text::other_sources(),
        remarks: &noted,
    };
    Ok(serde_json::to_string(&answer)?)
}

fn known(network: &Network, name: &str, states: &States) -> Result<(), AskError> {
    match states.iter().find(|(id, _)| network.link(id).is_none()) {
        Some((id, position)) => Err(AskError::NoSwitch { name: name.to_owned(), position: *position, id: id.clone() }),
        None => Ok(()),
    }
}

fn proposals(found: &Proposals) -> String {
    let mut out = String::new();
    for says in text::proposals(found) {
        let _ = writeln!(out, "{says}\n");
    }
    for proposal in found.proposals.iter().filter(|p| !p.lock.is_empty()) {
        let _ = writeln!(out, "{}", said::proposal(text::proposal(proposal), text::worth(proposal.why)));
        for what in &proposal.loses {
            let _ = writeln!(out, "  - {}", said::stops(what));
        }
        for who in &proposal.tell {
            let _ = writeln!(out, "  - {}", said::tell(who));
        }
        let _ = writeln!(out, "  - {}\n", text::check(&proposal.check));
    }
    let _ = writeln!(out, "{}", text::other_sources());
    out
}

fn draw(args: &DrawArgs) -> Result<String, AskError> {
    let Opened { name, read } = args.from.open()?;
    let (zone, locked, states) = (ids(&args.zone), ids(&args.locked), states(&args.now));
    known(&read.network, &name, &states)?;
    let check = match zone.is_empty() {
        true => None,
        false => Some(asked(&name, "--zone", supply::check(&read.network, &zone, &locked))?),
    };
    let states: Vec<(String, Position)> = states.into_iter().collect();
    let shown = Shown { zone: &zone, locked: &locked, states: &states, check: check.as_ref() };
    let (drawing, label) = text::draw(&read.network, &shown);
    file::write(&args.output, stillbar_core::svg::file(&drawing, &label))?;
    let mut out = format!("{}\n", said::drawn(args.output.display().to_string(), label));
    remarks(&mut out, &remarks_of(&read));
    Ok(out)
}

fn convert(args: &ConvertArgs) -> Result<String, AskError> {
    let Opened { read, .. } = args.from.open()?;
    let mut written = Vec::new();
    if args.output.extension().is_some_and(|end| end.eq_ignore_ascii_case("csv")) {
        let (nodes, links) = files::to_csv(&read.network);
        let stem = args.output.with_extension("");
        for (part, text) in [("nodes", nodes), ("links", links)] {
            let path = PathBuf::from(format!("{}-{part}.csv", stem.display()));
            file::write(&path, text)?;
            written.push(path);
        }
    } else {
        file::write(&args.output, files::to_json(&read.network))?;
        written.push(args.output.clone());
    }
    let written = text::commas(written.iter().map(|path| path.display().to_string()));
    let mut out = format!("{}\n", said::written(written));
    remarks(&mut out, &remarks_of(&read));
    Ok(out)
}
