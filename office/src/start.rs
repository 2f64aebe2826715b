//! Starting: the port, what this build has, the folder, the database, the key, the photos, in this order, each with a clear error.

use std::io::{self, Write};
use std::net::{IpAddr, Ipv4Addr, SocketAddr};
use std::path::{Path, PathBuf};
use std::sync::Arc;

use tokio::runtime::Runtime;

use crate::built::{Built, Lack};
use crate::error::OfficeError;
use crate::key::{KEY, KeyError, office_key};
use crate::log::{self, LevelFilter, Said};
use crate::office::{Lent, Office, Reached};
use crate::people::{self, NewAccount};
use crate::photos::{Blobs, BlobsError};
use crate::store::OpenError;
use crate::web::serve::TlsError;
use crate::web::{router, serve};
use crate::{records, stamp, store};

/// The port that is tried if none is named; it has no meaning elsewhere.
pub const PORT: u16 = 7463;

/// Why an office was not started, or what was asked of it at its start was not done.
#[derive(Debug, thiserror::Error)]
pub enum StartError {
    /// It would send passwords and tokens in the clear over a network.
    #[error(
        "Over a network the office speaks TLS only, and {0} is not this machine alone. Give --tls-cert and --tls-key, or \
         --behind-proxy if a proxy in front speaks TLS."
    )]
    InTheClear(SocketAddr),
    /// This build cannot use what was asked for.
    #[error(transparent)]
    Lack(#[from] Lack),
    /// TLS cannot be spoken.
    #[error(transparent)]
    Tls(#[from] TlsError),
    /// The address cannot be listened on.
    #[error("{at} could not be opened: {why}. Name another address with --listen.")]
    Listen {
        /// The address.
        at: SocketAddr,
        /// Why.
        #[source]
        why: io::Error,
    },
    /// The data folder is a file.
    #[error("{0} is a file. Name a folder with --data.")]
    File(PathBuf),
    /// The data folder could not be made.
    #[error("The folder {folder} could not be made: {why}. Name another with --data.")]
    Unmade {
        /// The folder.
        folder: PathBuf,
        /// Why.
        #[source]
        why: io::Error,
    },
    /// The database cannot be opened.
    #[error(transparent)]
    Open(#[from] OpenError),
    /// The office has no key.
    #[error(transparent)]
    Key(#[from] KeyError),
    /// Photos cannot be kept.
    #[error(transparent)]
    Blobs(#[from] BlobsError),
    /// The system does not lend what a server needs.
    #[error("The office could not start: {0}.")]
    System(#[source] io::Error),
    /// It began, and cannot answer.
    #[error("The office could not answer: {0}. Start it again.")]
    Answer(#[source] io::Error),
    /// What was asked of the office was not done; told as to any caller.
    #[error("{}", .0.says())]
    Refused(#[source] OfficeError),
    /// The same, told whole to whoever runs the office.
    #[error("{0}")]
    Whole(#[source] OfficeError),
    /// Nobody signs in with that name.
    #[error("Nobody signs in as {0}. Add them with: stillbar office person add")]
    Nobody(String),
    /// The demo's office has no admin.
    #[error("The demo's office has no admin. Start it with --fresh.")]
    NoAdmin,
}

impl From<OfficeError> for StartError {
    fn from(error: OfficeError) -> StartError {
        StartError::Refused(error.noted())
    }
}

/// What was given on the command line.
#[derive(Debug, Clone)]
pub struct Config {
    /// The data folder: the key, and without other places the database and the photos.
    pub data: PathBuf,
    /// Where to listen.
    pub listen: SocketAddr,
    /// PostgreSQL instead of SQLite in the data folder.
    pub database: Option<String>,
    /// Where photos lie instead of in the data folder.
    pub objects: Option<String>,
    /// The office's key instead of the one in the data folder.
    pub key: Option<PathBuf>,
    /// The address that phones and browsers use, if it is not the one that is listened on.
    pub url: Option<String>,
    /// What the office is called.
    pub name: String,
    /// Certificate chain and private key, in PEM.
    pub tls: Option<(PathBuf, PathBuf)>,
    /// A proxy in front speaks TLS and says who is calling.
    pub behind_proxy: bool,
    /// An authority of RFC 3161 that stamps the day's heads.
    pub authority: Option<String>,
    /// What is said on the terminal of its running.
    pub log: Said,
}

impl Config {
    /// The usual one: on loopback, SQLite and photos in `data`.
    pub fn of(data: PathBuf) -> Config {
        Config {
            data,
            listen: SocketAddr::new(IpAddr::V4(Ipv4Addr::LOCALHOST), PORT),
            database: None,
            objects: None,
            key: None,
            url: None,
            name: "Stillbar office".into(),
            tls: None,
            behind_proxy: false,
            authority: None,
            log: Said::default(),
        }
    }

    /// Whether this would send passwords and tokens in the clear over a network.
    fn in_the_clear(&self) -> bool {
        !self.listen.ip().is_loopback() && self.tls.is_none() && !self.behind_proxy
    }

    fn reached(&self, at: SocketAddr) -> Reached {
        let scheme = if self.tls.is_some() { "https" } else { "http" };
        let url = self.url.clone().unwrap_or_else(|| format!("{scheme}://{at}"));
        let url = url.trim_end_matches('/').to_owned();
        Reached { secure: url.starts_with("https://"), url, proxied: self.behind_proxy }
    }
}

/// A runtime for the office.
pub fn runtime() -> Result<Runtime, StartError> {
    tokio::runtime::Builder::new_multi_thread()
        // Each waits for the database most of the time, and some for a store of photos; more would only queue for a connection.
        .max_blocking_threads(64)
        .enable_all()
        .build()
        .map_err(StartError::System)
}

/// Opens all that the office stands on, and has its events written.
pub fn open(config: &Config, at: SocketAddr, runtime: &Runtime) -> Result<Office, StartError> {
    log::begin(config.log);
    if let Some(lack) = Built::THIS.lacks(config.database.as_deref(), config.objects.as_deref()) {
        return Err(lack.into());
    }
    make(&config.data)?;
    let store = store::open(&config.data, config.database.as_deref(), runtime.handle())?;
    records::taken_up(&*store, env!("CARGO_PKG_VERSION")).map_err(StartError::Whole)?;
    let file = config.key.clone().unwrap_or_else(|| config.data.join(KEY));
    let lent = Lent::system();
    let key = office_key(&*store, &file, (lent.now)())?;
    let blobs = match &config.objects {
        Some(url) => runtime.block_on(Blobs::at(url, &format!("{}-{}", (lent.now)(), std::process::id())))?,
        None => Blobs::folder(&config.data.join("photos"))?,
    };
    let (folder, name) = (config.data.clone(), config.name.clone());
    Ok(Office::new(store, blobs, key, folder, name, config.reached(at), lent))
}

/// How often it is looked whether the stamp of the day is due, or one that did not come is asked for again.
const STAMPING: std::time::Duration = std::time::Duration::from_secs(15 * 60);

/// Has the day's heads stamped, for as long as the office runs.
async fn stamping(office: crate::office::Shared, authority: String) {
    let mut turns = tokio::time::interval(STAMPING);
    loop {
        turns.tick().await;
        let authority = authority.clone();
        if let Err(why) = crate::office::call(&office, move |office| stamp::take(office, &authority)).await {
            // Tried again at the next turn; whoever looks after the office sees why in the log.
            tracing::warn!(why = why.to_string(), "no time stamp yet");
        }
    }
}

/// Has the day's heads stamped now. What was done, in a sentence.
pub fn stamp_now(config: &Config, authority: &str) -> Result<String, StartError> {
    let runtime = runtime()?;
    let office = open(config, config.listen, &runtime)?;
    match stamp::take(&office, authority).map_err(StartError::Whole)? {
        Some(day) => Ok(format!("The time stamp of {day} is kept.")),
        None => Ok("There is nothing new to stamp today.".into()),
    }
}

/// Adds a person from the terminal; their one-time password.
pub fn add_person(config: &Config, new: &NewAccount) -> Result<String, StartError> {
    let runtime = runtime()?;
    let office = open(config, config.listen, &runtime)?;
    Ok(people::add(&office, new, "the terminal", "the terminal")?)
}

/// Gives somebody a new one-time password from the terminal.
pub fn renew_password(config: &Config, login: &str) -> Result<String, StartError> {
    let runtime = runtime()?;
    let office = open(config, config.listen, &runtime)?;
    let everybody = office.read(people::all)?;
    let person = everybody.iter().find(|p| p.login == login);
    let person = person.ok_or_else(|| StartError::Nobody(login.to_owned()))?;
    Ok(people::renew(&office, &person.id, "the terminal", "the terminal")?)
}

/// Makes the data folder if it is not there, for its owner only.
fn make(folder: &Path) -> Result<(), StartError> {
    if folder.exists() && !folder.is_dir() {
        return Err(StartError::File(folder.to_owned()));
    }
    let mut builder = std::fs::DirBuilder::new();
    builder.recursive(true);
    #[cfg(unix)]
    std::os::unix::fs::DirBuilderExt::mode(&mut builder, 0o700);
    builder.create(folder).map_err(|why| StartError::Unmade { folder: folder.to_owned(), why })
}

/// An office beside something else in the same process, such as the demo's phone.
pub struct Beside {
    /// Where it answers.
    pub url: String,
    /// What admin signs in with; a new one at each start.
    pub password: String,
    /// What a phone scans to join; for one phone, and for a quarter of an hour.
    pub code: String,
}

/// Starts an office on a thread of its own that ends with the process. On [`PORT`] of loopback, or another if that is taken.
pub fn beside(data: PathBuf, name: &str) -> Result<Beside, StartError> {
    // Beside something else only what goes wrong is said.
    let log = Said { level: LevelFilter::WARN, ..Said::default() };
    let config = Config { name: name.to_owned(), log, ..Config::of(data) };
    let loopback = |port| std::net::TcpListener::bind((Ipv4Addr::LOCALHOST, port));
    let failed = StartError::System;
    let listener = loopback(PORT).or_else(|_| loopback(0)).map_err(failed)?;
    let at = listener.local_addr().map_err(failed)?;
    listener.set_nonblocking(true).map_err(failed)?;
    let runtime = runtime()?;
    let office = Arc::new(open(&config, at, &runtime)?);
    let password = match people::first(&office)? {
        Some(password) => password,
        None => renew_admin(&office)?,
    };
    let made = office.change(|tx| crate::enrol::make_code(&office, tx, "the start", "", &[]))?;
    let (url, code) = (office.reached.url.clone(), crate::enrol::qr_text(&office, &made));
    std::thread::spawn(move || {
        let _ = runtime.block_on(async {
            let listener = tokio::net::TcpListener::from_std(listener)?;
            serve::serve(listener, None, router(office), || {}).await
        });
    });
    Ok(Beside { url, password, code })
}

fn renew_admin(office: &Office) -> Result<String, StartError> {
    let everybody = office.read(people::all)?;
    let admin = everybody.iter().find(|p| p.login == "admin").ok_or(StartError::NoAdmin)?;
    Ok(people::renew(office, &admin.id, "the start", "the terminal")?)
}

/// Answers until Ctrl-C.
pub fn run(config: &Config) -> Result<(), StartError> {
    if config.in_the_clear() {
        return Err(StartError::InTheClear(config.listen));
    }
    let tls = config.tls.as_ref().map(|(cert, key)| serve::tls_config(cert, key)).transpose()?;
    let listener =
        std::net::TcpListener::bind(config.listen).map_err(|why| StartError::Listen { at: config.listen, why })?;
    let failed = StartError::Answer;
    let at = listener.local_addr().map_err(failed)?;
    listener.set_nonblocking(true).map_err(failed)?;
    let runtime = runtime()?;
    let office = Arc::new(open(config, at, &runtime)?);
    if let Some(password) = people::first(&office)? {
        // Shown once, on the terminal of whoever starts it; kept nowhere in the clear.
        let mut out = std::io::stdout().lock();
        let _ = writeln!(out, "Sign in as admin with the one-time password {password}").and_then(|()| out.flush());
    }
    if let Some(authority) = config.authority.clone() {
        runtime.spawn(stamping(office.clone(), authority));
    }
    let done = runtime.block_on(async {
        let listener = tokio::net::TcpListener::from_std(listener)?;
        let ready = || {
            let mut out = std::io::stdout().lock();
            let _ = writeln!(out, "The office is at {}/", office.reached.url).and_then(|()| out.flush());
        };
        serve::serve(listener, tls, router(office.clone()), ready).await
    });
    runtime.shutdown_timeout(std::time::Duration::from_secs(3));
    done.map_err(failed)
}
