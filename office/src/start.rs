//! Starting: the port, what this build has, the folder, the database, the key, the photos, in this order, each with a clear error.

use std::io::Write;
use std::net::{IpAddr, Ipv4Addr, SocketAddr};
use std::path::PathBuf;
use std::sync::Arc;

use tokio::runtime::Runtime;

use crate::built::Built;
use crate::key::{KEY, office_key};
use crate::log::{self, LevelFilter, Said};
use crate::office::{Lent, Office, Reached};
use crate::people::{self, NewAccount};
use crate::photos::Blobs;
use crate::web::{router, serve};
use crate::{records, stamp, store};

/// The port that is tried if none is named; it has no meaning elsewhere.
pub const PORT: u16 = 7463;

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

    /// Why this would send passwords and tokens in the clear over a network; `None` if it would not.
    fn in_the_clear(&self) -> Option<String> {
        let outside = !self.listen.ip().is_loopback() && self.tls.is_none() && !self.behind_proxy;
        outside.then(|| {
            format!(
                "Over a network the office speaks TLS only, and {} is not this machine alone. Give --tls-cert and --tls-key, or \
                 --behind-proxy if a proxy in front speaks TLS.",
                self.listen
            )
        })
    }

    fn reached(&self, at: SocketAddr) -> Reached {
        let scheme = if self.tls.is_some() { "https" } else { "http" };
        let url = self.url.clone().unwrap_or_else(|| format!("{scheme}://{at}"));
        let url = url.trim_end_matches('/').to_owned();
        Reached { secure: url.starts_with("https://"), url, proxied: self.behind_proxy }
    }
}

/// A runtime for the office.
pub fn runtime() -> Result<Runtime, String> {
    tokio::runtime::Builder::new_multi_thread()
        // Each waits for the database most of the time, and some for a store of photos; more would only queue for a connection.
        .max_blocking_threads(64)
        .enable_all()
        .build()
        .map_err(|e| format!("The office could not start: {e}."))
}

/// Opens all that the office stands on, and has its events written.
pub fn open(config: &Config, at: SocketAddr, runtime: &Runtime) -> Result<Office, String> {
    log::begin(config.log);
    if let Some(why) = Built::THIS.lacks(config.database.as_deref(), config.objects.as_deref()) {
        return Err(why);
    }
    make(&config.data)?;
    let store = store::open(&config.data, config.database.as_deref(), runtime.handle())?;
    records::taken_up(&*store, env!("CARGO_PKG_VERSION")).map_err(|e| e.detail())?;
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
            tracing::warn!(why = why.detail(), "no time stamp yet");
        }
    }
}

/// Has the day's heads stamped now. What was done, in a sentence.
pub fn stamp_now(config: &Config, authority: &str) -> Result<String, String> {
    let runtime = runtime()?;
    let office = open(config, config.listen, &runtime)?;
    match stamp::take(&office, authority).map_err(|e| e.detail())? {
        Some(day) => Ok(format!("The time stamp of {day} is kept.")),
        None => Ok("There is nothing new to stamp today.".into()),
    }
}

/// Adds a person from the terminal; their one-time password.
pub fn add_person(config: &Config, new: &NewAccount) -> Result<String, String> {
    let runtime = runtime()?;
    let office = open(config, config.listen, &runtime)?;
    people::add(&office, new, "the terminal", "the terminal").map_err(|e| e.told().2)
}

/// Gives somebody a new one-time password from the terminal.
pub fn renew_password(config: &Config, login: &str) -> Result<String, String> {
    let runtime = runtime()?;
    let office = open(config, config.listen, &runtime)?;
    let everybody = office.read(people::all).map_err(|e| e.told().2)?;
    let person = everybody.iter().find(|p| p.login == login);
    let person =
        person.ok_or_else(|| format!("Nobody signs in as {login}. Add them with: stillbar office person add"))?;
    people::renew(&office, &person.id, "the terminal", "the terminal").map_err(|e| e.told().2)
}

/// Makes the data folder if it is not there, for its owner only.
fn make(folder: &std::path::Path) -> Result<(), String> {
    let shown = folder.display();
    if folder.exists() && !folder.is_dir() {
        return Err(format!("{shown} is a file. Name a folder with --data."));
    }
    let mut builder = std::fs::DirBuilder::new();
    builder.recursive(true);
    #[cfg(unix)]
    std::os::unix::fs::DirBuilderExt::mode(&mut builder, 0o700);
    builder.create(folder).map_err(|e| format!("The folder {shown} could not be made: {e}. Name another with --data."))
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
pub fn beside(data: PathBuf, name: &str) -> Result<Beside, String> {
    // Beside something else only what goes wrong is said.
    let log = Said { level: LevelFilter::WARN, ..Said::default() };
    let config = Config { name: name.to_owned(), log, ..Config::of(data) };
    let loopback = |port| std::net::TcpListener::bind((Ipv4Addr::LOCALHOST, port));
    let failed = |e: std::io::Error| format!("The office could not start: {e}.");
    let listener = loopback(PORT).or_else(|_| loopback(0)).map_err(failed)?;
    let at = listener.local_addr().map_err(failed)?;
    listener.set_nonblocking(true).map_err(failed)?;
    let runtime = runtime()?;
    let office = Arc::new(open(&config, at, &runtime)?);
    let told = |fault: crate::error::OfficeError| fault.told().2;
    let password = match people::first(&office).map_err(told)? {
        Some(password) => password,
        None => renew_admin(&office)?,
    };
    let made = office.change(|tx| crate::enrol::make_code(&office, tx, "the start", "", &[])).map_err(told)?;
    let (url, code) = (office.reached.url.clone(), crate::enrol::qr_text(&office, &made));
    std::thread::spawn(move || {
        let _ = runtime.block_on(async {
            let listener = tokio::net::TcpListener::from_std(listener)?;
            serve::serve(listener, None, router(office), || {}).await
        });
    });
    Ok(Beside { url, password, code })
}

fn renew_admin(office: &Office) -> Result<String, String> {
    let everybody = office.read(people::all).map_err(|e| e.told().2)?;
    let admin = everybody
        .iter()
        .find(|p| p.login == "admin")
        .ok_or("The demo's office has no admin. Start it with --fresh.")?;
    people::renew(office, &admin.id, "the start", "the terminal").map_err(|e| e.told().2)
}

/// Answers until Ctrl-C. The error is a sentence.
pub fn run(config: &Config) -> Result<(), String> {
    if let Some(why) = config.in_the_clear() {
        return Err(why);
    }
    let tls = config.tls.as_ref().map(|(cert, key)| serve::tls_config(cert, key)).transpose()?;
    let listener = std::net::TcpListener::bind(config.listen)
        .map_err(|e| format!("{} could not be opened: {e}. Name another address with --listen.", config.listen))?;
    let failed = |e: std::io::Error| format!("The office could not answer: {e}. Start it again.");
    let at = listener.local_addr().map_err(failed)?;
    listener.set_nonblocking(true).map_err(failed)?;
    let runtime = runtime()?;
    let office = Arc::new(open(config, at, &runtime)?);
    if let Some(password) = people::first(&office).map_err(|e| e.told().2)? {
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
