//! `stillbar office`: the server that phones exchange with, and who may use it.

use std::io::Write;
use std::net::SocketAddr;
use std::path::PathBuf;

use clap::{Args, Subcommand, ValueEnum};
use stillbar_office::log::{LevelFilter, Said};
use stillbar_office::people::{AccountRole, NewAccount};
use stillbar_office::start::{self, Config, PORT, StartError};

/// Why the office did not do what was typed.
#[derive(Debug, thiserror::Error)]
pub enum OfficeCommandError {
    /// No data folder was named.
    #[error("Name the data folder with --data.")]
    NoData,
    /// It says why itself.
    #[error(transparent)]
    Office(#[from] StartError),
}

/// `stillbar office`.
#[derive(Args)]
#[command(args_conflicts_with_subcommands = true, subcommand_negates_reqs = true)]
pub struct OfficeArgs {
    #[command(subcommand)]
    what: Option<What>,
    #[command(flatten)]
    serve: ServeArgs,
}

#[derive(Subcommand)]
enum What {
    /// Have what is new stamped by a time-stamp authority (RFC 3161) now
    Stamp {
        /// The authority, such as http://stamps.example/tsa
        #[arg(long, value_name = "URL")]
        authority: String,
        #[command(flatten)]
        place: PlaceArgs,
    },
    /// People who may sign in
    Person {
        #[command(subcommand)]
        what: PersonCommand,
    },
}

#[derive(Subcommand)]
enum PersonCommand {
    /// Add a person; the one-time password is printed once
    Add {
        /// What they sign in with
        #[arg(long, value_name = "NAME")]
        login: String,
        /// What they are called
        #[arg(long, value_name = "TEXT")]
        name: String,
        /// What they may do
        #[arg(long, value_enum, default_value_t = RoleArg::Reader)]
        role: RoleArg,
        #[command(flatten)]
        place: PlaceArgs,
    },
    /// Give somebody a new one-time password, printed once
    Password {
        /// What they sign in with
        #[arg(long, value_name = "NAME")]
        login: String,
        #[command(flatten)]
        place: PlaceArgs,
    },
}

#[derive(Clone, Copy, ValueEnum)]
enum RoleArg {
    /// Reads what is on their sites
    Reader,
    /// Plans jobs and prints labels
    Planner,
    /// Enrols and withdraws phones, releases what is aside
    Lead,
    /// Looks after people and sees all sites
    Admin,
}

/// Where an office keeps its things.
#[derive(Args)]
struct PlaceArgs {
    /// The data folder: the office's key, and without other places the database and the photos
    #[arg(long, value_name = "DIR")]
    data: PathBuf,
    /// PostgreSQL instead of SQLite: postgres://USER@HOST/NAME
    #[arg(long, value_name = "URL")]
    database: Option<String>,
    /// The office's key instead of DIR/office.key; processes over one database use the same
    #[arg(long, value_name = "FILE")]
    key: Option<PathBuf>,
}

#[derive(Args)]
struct ServeArgs {
    /// The data folder: the office's key, and without other places the database and the photos
    #[arg(long, value_name = "DIR", required = true)]
    data: Option<PathBuf>,
    /// Where to answer; anything but this machine alone needs TLS or a proxy [default: 127.0.0.1:7463]
    #[arg(long, value_name = "ADDRESS:PORT")]
    listen: Option<SocketAddr>,
    /// PostgreSQL instead of SQLite: postgres://USER@HOST/NAME
    #[arg(long, value_name = "URL")]
    database: Option<String>,
    /// Where photos lie instead of in the data folder: file:///FOLDER, or s3://BUCKET with AWS_ variables
    #[arg(long, value_name = "URL")]
    objects: Option<String>,
    /// The office's key instead of DIR/office.key; processes over one database use the same
    #[arg(long, value_name = "FILE")]
    key: Option<PathBuf>,
    /// The address that phones and browsers use, if it is not the one that is answered on
    #[arg(long, value_name = "URL")]
    url: Option<String>,
    /// What the office is called
    #[arg(long, value_name = "TEXT", default_value = "Stillbar office")]
    name: String,
    /// The certificate chain, in PEM
    #[arg(long, value_name = "FILE", requires = "tls_key")]
    tls_cert: Option<PathBuf>,
    /// Its private key, in PEM
    #[arg(long, value_name = "FILE", requires = "tls_cert")]
    tls_key: Option<PathBuf>,
    /// A proxy in front speaks TLS and says in X-Forwarded-For who is calling
    #[arg(long)]
    behind_proxy: bool,
    /// Have what is new stamped once a day by this time-stamp authority (RFC 3161)
    #[arg(long, value_name = "URL")]
    authority: Option<String>,
    /// What is said on the terminal's error stream: one line a request at info, only what went wrong at warn
    #[arg(long, env = "STILLBAR_LOG", value_enum, default_value_t = Level::Info)]
    log: Level,
    /// How it is written
    #[arg(long, env = "STILLBAR_LOG_FORMAT", value_enum, default_value_t = Form::Plain)]
    log_format: Form,
}

#[derive(Clone, Copy, ValueEnum)]
enum Level {
    Off,
    Error,
    Warn,
    Info,
    Debug,
}

#[derive(Clone, Copy, PartialEq, Eq, ValueEnum)]
enum Form {
    /// Lines for people
    Plain,
    /// A JSON object a line
    Json,
}

impl ServeArgs {
    fn config(self) -> Result<Config, OfficeCommandError> {
        let data = self.data.ok_or(OfficeCommandError::NoData)?;
        let level = match self.log {
            Level::Off => LevelFilter::OFF,
            Level::Error => LevelFilter::ERROR,
            Level::Warn => LevelFilter::WARN,
            Level::Info => LevelFilter::INFO,
            Level::Debug => LevelFilter::DEBUG,
        };
        let usual = Config::of(data);
        Ok(Config {
            listen: self.listen.unwrap_or_else(|| SocketAddr::new(usual.listen.ip(), PORT)),
            database: self.database,
            objects: self.objects,
            key: self.key,
            url: self.url,
            name: self.name,
            tls: self.tls_cert.zip(self.tls_key),
            behind_proxy: self.behind_proxy,
            authority: self.authority,
            log: Said { level, json: self.log_format == Form::Json },
            ..usual
        })
    }
}

impl PlaceArgs {
    fn config(self) -> Config {
        let log = Said { level: LevelFilter::WARN, ..Said::default() };
        Config { database: self.database, key: self.key, log, ..Config::of(self.data) }
    }
}

/// Does what was typed.
pub fn run(args: OfficeArgs) -> Result<(), OfficeCommandError> {
    let (login, password) = match args.what {
        None => return Ok(start::run(&args.serve.config()?)?),
        Some(What::Stamp { authority, place }) => {
            let said = start::stamp_now(&place.config(), &authority)?;
            let _ = writeln!(std::io::stdout(), "{said}");
            return Ok(());
        }
        Some(What::Person { what: PersonCommand::Add { login, name, role, place } }) => {
            let role = match role {
                RoleArg::Reader => AccountRole::Reader,
                RoleArg::Planner => AccountRole::Planner,
                RoleArg::Lead => AccountRole::Lead,
                RoleArg::Admin => AccountRole::Admin,
            };
            let new = NewAccount { login: login.clone(), name, role, sites: Vec::new() };
            (login, start::add_person(&place.config(), &new)?)
        }
        Some(What::Person { what: PersonCommand::Password { login, place } }) => {
            let password = start::renew_password(&place.config(), &login)?;
            (login, password)
        }
    };
    let _ = writeln!(std::io::stdout(), "{login} signs in with the one-time password {password}");
    Ok(())
}
