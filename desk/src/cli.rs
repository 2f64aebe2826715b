//! The command line: what a person can type, and the help that teaches it.

use std::io::Write;
use std::path::PathBuf;
use std::process::ExitCode;

use clap::{ArgGroup, Args, CommandFactory, FromArgMatches, Parser, Subcommand, ValueEnum};
use stillbar_core::prove::RuleSet;
use stillbar_core::text;
use stillbar_core::text::terms::Speaking;

use crate::calls::{PlanError, PlanOf};
use crate::error::CommandError;
use crate::words::WordsArgs;
use crate::{calls, company, office, photo, record, start, supply, tag_read, tags};

const ABOUT: &str = "Carries the isolation of low-voltage equipment from plan to hand-back, and keeps a record that holds \
                     what proves each step: readings, photos, names, times. It works without any network: the desk \
                     answers this machine only, in a browser, and only who has the address that it prints.";

const EXAMPLES: &str = "\
Examples:
  stillbar                                  try it on invented jobs; nothing of yours is touched
  stillbar demo --fresh --open              the same from the beginning, opened in the browser
  stillbar desk --data ~/isolations         work, with the record kept in that folder
  stillbar plan --conductors L1,L2,L3,N,PE  the dead tests of these conductors, in order
  stillbar plan board.json                  the same with all that the file says of the board
  stillbar judge board.json                 what the readings in the file prove, and what may be behind them
  stillbar supply check net.json --zone B3 --locked Q1,Q7
                                            whether any source still reaches board B3
  stillbar supply propose net.json --zone B3
                                            which points to lock, and what stops
  stillbar tag new -o tags.pdf              a sheet of QR tags for points of isolation
  stillbar tag read photo.jpg               which tags are in a photo
  stillbar photo check lock.jpg             how good a photo is as evidence, before it is kept
  stillbar company-rules check rules.json   what a company's file of rules asks, before anybody works by it
  stillbar record 3f2a91c0 -o dryer.pdf --data ~/isolations
                                            what was done in a job, with all that proves it
  stillbar verify dryer.pdf                 whether a record holds
  stillbar rescue --data ~/isolations       when `desk` says that the database is damaged

Exit codes:
  0  done
  1  could not be done; the message says why and what to do
  2  the command was not understood, or what was given with it is wrong";

#[derive(Parser)]
#[command(
    name = "stillbar",
    version,
    about = "The record and the second pair of eyes of an electrician who isolates and proves dead",
    long_about = ABOUT,
    after_help = EXAMPLES,
    args_conflicts_with_subcommands = true,
    subcommand_help_heading = "Commands (without one: demo)"
)]
struct Cli {
    #[command(subcommand)]
    command: Option<Command>,
    #[command(flatten)]
    demo: DemoArgs,
}

#[derive(Subcommand)]
enum Command {
    /// Try it on invented jobs at different steps
    ///
    /// The jobs are kept in a folder of their own, so that you find tomorrow what you did today. `--fresh` begins again.
    Demo(DemoArgs),
    /// Work: opens the jobs of one data folder in the browser
    ///
    /// The folder is made if it is not there. One process at a time may have it open. Everything entered is on disk
    /// before the screen moves on, so the desk may be ended at any moment: Ctrl-C, or the power.
    ///
    /// The address that it prints holds a key, made anew at each start. Whoever has that address can do all that you can; nobody else is
    /// let in, other users of this machine neither. The data folder and what is in it are for you alone (0700 and 0600).
    #[command(after_help = "Example:\n  stillbar desk --data ~/isolations --open")]
    Desk(DeskArgs),
    /// Run the office: phones exchange what they recorded, people see it in a browser
    ///
    /// SQLite and a folder hold everything by default. With PostgreSQL any number of processes may answer. Anything but this machine
    /// alone needs TLS. docs/operate.md tells of back-ups, proxies and upgrades.
    #[command(after_help = "\
Examples:
  stillbar office --data ~/office
  stillbar office --data /srv/office --listen 0.0.0.0:443 --tls-cert chain.pem --tls-key key.pem --url https://office.example
  stillbar office --data /srv/office --database postgres://office@db/office --behind-proxy --listen 10.0.0.5:7463")]
    Office(Box<office::OfficeArgs>),
    /// Print the dead tests of a set of conductors, in order
    ///
    /// Each pair comes once, with the fewest moves of the probes; the less dangerous conductor gets its probe first and
    /// loses it last. With a file, the plan also says what each test should show, how to show that the reference is earth,
    /// what has to discharge and where direct voltage is read. The format is in docs/formats.md.
    #[command(after_help = "\
Examples:
  stillbar plan --conductors L,N,PE
  stillbar plan --conductors L1,L2,L3,N,PE --order line-line-first
  stillbar plan --conductors L1,L2,L3,N,PE --json
  stillbar plan board.json --rules us
  printf '{\"conductors\":[{\"name\":\"L\"},{\"name\":\"N\"},{\"name\":\"PE\"}]}' | stillbar plan -

A name that does not tell what the conductor is gets its role after `=`: A1=line, AN=neutral.")]
    Plan(PlanArgs),
    /// Judge the readings of a dead test, and say what may be behind them
    ///
    /// The file is that of `plan` with the readings in it. Whatever the verdict, the exit code is 0: it is the answer, not
    /// an error. The readings and what the plan demands decide it; what is missing is said first, and no explanation turns
    /// a reading into dead.
    #[command(after_help = "Examples:\n  stillbar judge board.json\n  stillbar judge - --json < board.json")]
    Judge {
        /// A JSON file, or - to pipe it in
        #[arg(value_name = "FILE")]
        file: PathBuf,
        #[command(flatten)]
        words: WordsArgs,
        /// Print JSON for a program instead of text for a person
        #[arg(long)]
        json: bool,
    },
    /// Tags: QR labels for points of isolation
    Tag {
        #[command(subcommand)]
        what: TagCommand,
    },
    /// Photos as evidence
    Photo {
        #[command(subcommand)]
        what: PhotoCommand,
    },
    /// Supply networks: which sources reach the work zone, and which points cut it off
    Supply {
        #[command(subcommand)]
        what: supply::SupplyCommand,
    },
    /// Rules of a company: what is always asked, tighter limits, what to wear, points of its own, whom to call
    CompanyRules {
        #[command(subcommand)]
        what: CompanyCommand,
    },
    /// Write the record of a job: PDF with the signed journal in it, JSON, or CSV of readings and time line
    ///
    /// The record is made from the journal alone, with no office and no network, and while the desk is running. What is shared
    /// has no location and no telephone number. Nothing is written where the record would not verify.
    #[command(after_help = "\
Examples:
  stillbar record \"Replace the outgoing breaker of washer 4\" -o washer.pdf
  stillbar record 3f2a91c0 -o washer.json --data ~/isolations
  stillbar record 3f2a91c0 -o readings.csv --data ~/isolations
  stillbar record 3f2a91c0 -o to-share.pdf --data ~/isolations --withhold-names
  stillbar record old.pdf -o new.pdf        the pages anew, from the journal in an old record")]
    Record(record::RecordArgs),
    /// Check a record: chain, signatures, photos, and that it says only what follows from its entries
    ///
    /// Says in plain words what is shown and what is not. Needs no journal, no office and no network. The exit code is 0 if the
    /// record holds, 1 if it does not, 2 if the file cannot be read as a record. docs/formats.md says how to check one with
    /// other tools.
    #[command(after_help = "Examples:\n  stillbar verify washer.pdf\n  stillbar verify - --json < washer.json")]
    Verify {
        /// A record, PDF or JSON, or - to pipe it in
        #[arg(value_name = "FILE")]
        file: PathBuf,
        /// Certificates in PEM of time-stamp authorities that you trust
        #[arg(long, value_name = "FILE")]
        authority: Option<PathBuf>,
        /// Print JSON for a program instead of text for a person
        #[arg(long)]
        json: bool,
    },
    /// Save what can be read from a damaged database
    ///
    /// The damaged file stays beside the new one, photos stay where they are, and what was saved is told. Stop the desk
    /// first.
    #[command(after_help = "Example:\n  stillbar rescue --data ~/isolations")]
    Rescue {
        /// The data folder whose database is damaged
        #[arg(long, value_name = "DIR")]
        data: PathBuf,
        /// Print {"entries":…,"missing":[…],"kept":"…"} instead of sentences
        #[arg(long)]
        json: bool,
    },
}

#[derive(Subcommand)]
enum TagCommand {
    /// Make tags with ids of their own, on a sheet of labels to print
    ///
    /// Stick one beside each point of isolation and scan it there: from then on a scan tells whose lock is on. The ids are printed
    /// in clear beside the symbols, and told here.
    #[command(after_help = "\
Examples:
  stillbar tag new --count 24 --sheet a4-3x8 -o tags.pdf
  stillbar tag new --site \"Hill Laundry\" --point \"Q4 feeder switch\" --point \"Q9 changeover\" -o tags.pdf
  stillbar tag new --points points.txt --sheet letter-2x5 -o tags.pdf --json
  stillbar tag new --signs --count 8 -o signs.pdf")]
    New(tags::NewTags),
    /// Print which tags are in photos
    ///
    /// Codes that are no tags of ours are printed as text; nothing in them is opened. A file that cannot be read gets one
    /// sentence and the exit code 2; the others are still read.
    #[command(after_help = "Examples:\n  stillbar tag read photo.jpg\n  stillbar tag read --json *.jpg")]
    Read {
        /// Photos: JPEG, PNG or WebP
        #[arg(value_name = "PHOTO", required = true)]
        photos: Vec<PathBuf>,
        /// Print [{"file":…,"tags":[…],"other":[…]}] instead of sentences
        #[arg(long)]
        json: bool,
    },
}

#[derive(Subcommand)]
enum PhotoCommand {
    /// Check one photo: sharpness, light, hash, and what is poor about it
    ///
    /// The photo is only read. A poor picture is warned of and the exit code is 0; a file that is no photo, or is damaged,
    /// gets one sentence and 2. JPEG, PNG and WebP, at most 40 MB and 60 million pixels.
    #[command(after_help = "\
Examples:
  stillbar photo check lock.jpg
  stillbar photo check lock.jpg --json
  stillbar photo check lock.jpg --copies to-send/   copies without place and serial number, to hand on")]
    Check {
        /// The photo, or - to pipe it in
        #[arg(value_name = "PHOTO")]
        photo: PathBuf,
        /// Write the copies of 320, 960 and 1600 pixels to this folder
        #[arg(long, value_name = "DIR")]
        copies: Option<PathBuf>,
        /// Print JSON for a program instead of text for a person
        #[arg(long)]
        json: bool,
    },
}

#[derive(Subcommand)]
enum CompanyCommand {
    /// Say what a file of rules holds, or what is wrong with it
    ///
    /// Nothing is kept: a site lead brings the file in at the office, or it is pasted on a phone under Rules. Rules only ask for more, or set
    /// less. A file that cannot hold gets one sentence with the place, and the exit code 2. The format is in docs/company-rules.md.
    #[command(after_help = "\
Examples:
  stillbar company-rules check rules.json
  stillbar company-rules check - --json < rules.json")]
    Check {
        /// A JSON file, or - to pipe it in
        #[arg(value_name = "FILE")]
        file: PathBuf,
        /// Print {"sha256":…,"rules":{…}} instead of lines for a person
        #[arg(long)]
        json: bool,
    },
}

#[derive(Args)]
struct DemoArgs {
    /// Where to keep the demo's jobs [default: your own data folder]
    #[arg(long, value_name = "DIR")]
    data: Option<PathBuf>,
    /// Forget what was done in the demo and begin again
    #[arg(long)]
    fresh: bool,
    #[command(flatten)]
    listen: ListenArgs,
}

#[derive(Args)]
struct DeskArgs {
    /// The data folder
    #[arg(long, value_name = "DIR")]
    data: PathBuf,
    #[command(flatten)]
    listen: ListenArgs,
}

#[derive(Args)]
struct ListenArgs {
    /// The port to answer on; 0 takes any free one [default: 7462, or a free one if that is taken]
    #[arg(long, value_name = "N", allow_negative_numbers = true)]
    port: Option<u16>,
    /// Open it in the browser
    #[arg(long)]
    open: bool,
}

#[derive(Args)]
#[group(skip)]
#[command(group(ArgGroup::new("of").args(["file", "conductors"]).required(true)))]
struct PlanArgs {
    /// A JSON file with the conductors and what is known of them, or - to pipe it in
    #[arg(value_name = "FILE", conflicts_with = "order")]
    file: Option<PathBuf>,
    /// The conductors, parted by commas: L1,L2,L3,N,PE
    #[arg(long, value_name = "LIST")]
    conductors: Option<String>,
    /// Which pairs come first
    #[arg(long, value_enum, default_value_t = OrderArg::LeastDangerousFirst)]
    order: OrderArg,
    #[command(flatten)]
    words: WordsArgs,
    /// Print JSON for a program instead of text for a person
    #[arg(long)]
    json: bool,
}

#[derive(Clone, Copy, ValueEnum)]
#[expect(clippy::enum_variant_names, reason = "the names are the ones that are typed")]
enum OrderArg {
    /// Line to neutral, neutral to PE, line to PE, line to line
    LeastDangerousFirst,
    /// Line to line, then the others
    LineLineFirst,
    /// Everything to PE, then to neutral, then line to line
    EarthFirst,
}

/// The command with all that is below it, as `--help` tells of it: whichever is asked about, it says what comes before the program.
pub fn command() -> clap::Command {
    deferring(Cli::command())
}

fn deferring(command: clap::Command) -> clap::Command {
    let defers = text::defers(None);
    let says = match command.get_after_help() {
        Some(examples) => format!("{examples}\n\n{defers}"),
        None => defers,
    };
    command.after_help(says).mut_subcommands(deferring)
}

/// Runs the command that was typed.
pub fn run() -> ExitCode {
    // clap itself ends with 2 and a usage line for what it cannot understand, and with 0 for --help.
    let cli = Cli::from_arg_matches(&command().get_matches()).unwrap_or_else(|why| why.exit());
    let command = cli.command.unwrap_or(Command::Demo(cli.demo));
    // What went wrong is told in these words as well.
    let _speaking = Speaking::of(command.rules());
    done(command).unwrap_or_else(|why| {
        eprintln!("{why}");
        ExitCode::from(why.code())
    })
}

impl Command {
    /// In whose words it was asked for an answer. A record brings its own.
    fn rules(&self) -> Option<RuleSet> {
        match self {
            Command::Plan(args) => args.words.rules(),
            Command::Judge { words, .. } => words.rules(),
            Command::Supply { what } => what.rules(),
            _ => None,
        }
    }
}

fn done(command: Command) -> Result<ExitCode, CommandError> {
    match command {
        Command::Demo(a) => start::demo(a.data, a.fresh, a.listen.port, a.listen.open)?,
        Command::Desk(a) => start::desk(&a.data, a.listen.port, a.listen.open)?,
        Command::Office(a) => office::run(*a)?,
        Command::Plan(a) => say(plan(&a)?),
        Command::Judge { file, json, .. } => say(calls::judge(&file, json)?),
        Command::Tag { what: TagCommand::Read { photos, json } } => {
            let (text, bad) = tag_read::read(&photos, json);
            say(text);
            if !bad.is_empty() {
                return Err(CommandError::UnreadPhotos(bad));
            }
        }
        Command::Tag { what: TagCommand::New(new) } => say(tags::new(&new)?),
        Command::Photo { what: PhotoCommand::Check { photo: path, copies, json } } => {
            say(photo::check(&path, copies.as_deref(), json)?);
        }
        Command::Supply { what } => say(supply::run(&what)?),
        Command::CompanyRules { what: CompanyCommand::Check { file, json } } => say(company::check(&file, json)?),
        Command::Record(a) => say(record::make(&a)?),
        Command::Verify { file, authority, json } => {
            // What was found out is the answer, also where the answer is no.
            let found = record::verify(&file, authority.as_deref(), json)?;
            say(found.text);
            return Ok(ExitCode::from(found.code));
        }
        Command::Rescue { data, json } => {
            start::existing(&data)?;
            say(calls::rescue(&data, json)?);
        }
    }
    Ok(ExitCode::SUCCESS)
}

fn plan(args: &PlanArgs) -> Result<String, PlanError> {
    let order = args.order.to_possible_value().map(|v| v.get_name().to_owned()).unwrap_or_default();
    let of = match (&args.file, &args.conductors) {
        (Some(file), _) => PlanOf::File(file),
        (None, list) => PlanOf::List(list.as_deref().unwrap_or_default(), &order),
    };
    if args.json { calls::plan(&of) } else { calls::plan_text(&of) }
}

/// Prints to the end of the pipe, if there still is one: `stillbar plan | head -1` is no error.
fn say(text: String) {
    let mut out = std::io::stdout().lock();
    let _ = writeln!(out, "{}", text.trim_end());
}
