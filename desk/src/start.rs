//! Starting: the port, the folder, the core, the server, in this order, each with a clear error.

use std::io::{self, Write};
use std::net::{Ipv4Addr, TcpListener};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::Duration;

use stillbar_core::app::FieldError;
use stillbar_core::{Field, OpenError};
use stillbar_office::start as office;

use crate::calls::{self, SeedError};
use crate::folder::{self, Demo, FolderError, plain};
use crate::guard::{Door, NoKey};
use crate::platform::{DesktopPlatform, NoRandom};
use crate::server;

/// The port that is tried if none is named; it has no meaning elsewhere.
const PORT: u16 = 7462;

/// Where in the demo's folder its office keeps its things.
const OFFICE: &str = "office";

/// How long answers under way may still take after Ctrl-C.
const LAST_ANSWERS: Duration = Duration::from_secs(3);

/// Why the desk or the demo was not started, or ended.
#[derive(Debug, thiserror::Error)]
pub enum StartError {
    /// The port that was named is another program's.
    #[error("Port {0} is taken by another program. Name another with --port, or leave --port out.")]
    PortTaken(u16),
    /// The port that was named cannot be opened.
    #[error("Port {port} could not be opened: {}. Name another with --port.", plain(.why))]
    Port {
        /// The port.
        port: u16,
        /// Why.
        #[source]
        why: io::Error,
    },
    /// None was named, and there is none.
    #[error("No port could be opened: {}.", plain(.0))]
    NoPort(#[source] io::Error),
    /// The data folder cannot be used.
    #[error(transparent)]
    Folder(#[from] FolderError),
    /// There is no such data folder.
    #[error("{0} is not a folder. Name the data folder with --data.")]
    NoFolder(PathBuf),
    /// The data folder has a name that the core cannot be told.
    #[error("The name of the folder {0} is not Unicode. Name another with --data.")]
    NotUnicode(PathBuf),
    /// Where the demo was to be written is something else.
    #[error(
        "{0} holds something other than the demo, so nothing in it was touched. \
         Name an empty folder, or open real work with: stillbar desk --data {0}"
    )]
    NotTheDemo(PathBuf),
    /// The demo's jobs were not written.
    #[error(transparent)]
    Seed(#[from] SeedError),
    /// Nothing can be signed.
    #[error(transparent)]
    NoRandom(#[from] NoRandom),
    /// The core does not open the folder.
    #[error(transparent)]
    Open(#[from] OpenError),
    /// The demo's office was not started.
    #[error(transparent)]
    Office(#[from] office::StartError),
    /// The demo's phone does not join its office.
    #[error(transparent)]
    Join(#[from] FieldError),
    /// Anybody could be let in.
    #[error(transparent)]
    Door(#[from] NoKey),
    /// It began, and cannot answer.
    #[error("The desk could not answer: {}. Start it again.", plain(.0))]
    Answer(#[source] io::Error),
}

/// Opens the jobs of `data` and answers until Ctrl-C.
pub fn desk(data: &Path, port: Option<u16>, browser: bool) -> Result<(), StartError> {
    let listener = listen(port)?;
    folder::make(data)?;
    let field = open(data)?;
    serve(listener, field, browser)
}

/// Opens the demo, written first if it is not there, and answers until Ctrl-C.
pub fn demo(data: Option<PathBuf>, fresh: bool, port: Option<u16>, browser: bool) -> Result<(), StartError> {
    let listener = listen(port)?;
    let data = data.map_or_else(folder::demo_home, Ok)?;
    folder::make(&data)?;
    match folder::demo(&data)? {
        Demo::Other => return Err(StartError::NotTheDemo(data)),
        Demo::Whole if !fresh => {}
        Demo::Empty => write_demo(&data)?,
        Demo::Whole | Demo::Begun => {
            // Another desk may have it open: then its files must stay. Any other trouble goes away with them.
            if let Err(in_use @ StartError::Open(OpenError::InUse { .. })) = open(&data) {
                return Err(in_use);
            }
            folder::empty(&data)?;
            write_demo(&data)?;
        }
    }
    let field = open(&data)?;
    let beside = data.join(OFFICE);
    match office(beside) {
        Ok(office) => {
            field.join(&office.code)?;
            let mut out = std::io::stdout().lock();
            let _ =
                writeln!(out, "The demo's office is at {}/ : sign in as admin with {}", office.url, office.password);
        }
        // The phone works on its own, as it does in a cellar.
        Err(why) => {
            let _ = writeln!(std::io::stderr(), "The demo runs without an office. {why}");
        }
    }
    serve(listener, field, browser)
}

fn office(folder: PathBuf) -> Result<office::Beside, StartError> {
    folder::make(&folder)?;
    Ok(office::beside(folder, "Brook Lane office")?)
}

/// Whether `data` is a folder; a rescue makes none.
pub fn existing(data: &Path) -> Result<(), StartError> {
    if data.is_dir() {
        return Ok(());
    }
    Err(StartError::NoFolder(data.to_owned()))
}

fn write_demo(data: &Path) -> Result<(), StartError> {
    folder::mark(data, false)?;
    calls::seed_demo(data)?;
    Ok(folder::mark(data, true)?)
}

fn open(data: &Path) -> Result<Arc<Field>, StartError> {
    let platform = DesktopPlatform::new(data)?;
    let name = data.to_str().ok_or_else(|| StartError::NotUnicode(data.to_owned()))?;
    Ok(Field::open(name.to_owned(), Arc::new(platform))?)
}

/// Takes the port before anything is opened, so that a taken one leaves no trace.
fn listen(port: Option<u16>) -> Result<TcpListener, StartError> {
    let loopback = |port| TcpListener::bind((Ipv4Addr::LOCALHOST, port));
    let Some(named) = port else {
        return loopback(PORT).or_else(|_| {
            let free = loopback(0).map_err(StartError::NoPort)?;
            let _ = writeln!(std::io::stderr(), "Port {PORT} is taken, so another one is used.");
            Ok(free)
        });
    };
    loopback(named).map_err(|why| match why.kind() {
        io::ErrorKind::AddrInUse => StartError::PortTaken(named),
        _ => StartError::Port { port: named, why },
    })
}

fn serve(listener: TcpListener, field: Arc<Field>, browser: bool) -> Result<(), StartError> {
    // A laptop's link costs nothing.
    field.good_time(true);
    let failed = StartError::Answer;
    let port = listener.local_addr().map_err(failed)?.port();
    let door = Arc::new(Door::new(port)?);
    listener.set_nonblocking(true).map_err(failed)?;
    let runtime = tokio::runtime::Builder::new_multi_thread()
        .worker_threads(2)
        // The core answers one call at a time; more threads would only wait.
        .max_blocking_threads(8)
        .enable_all()
        .build()
        .map_err(failed)?;
    let done = runtime.block_on(async {
        let listener = tokio::net::TcpListener::from_std(listener)?;
        let ready = || {
            let mut out = std::io::stdout().lock();
            let _ = writeln!(out, "Stillbar is at {}", door.address()).and_then(|()| out.flush());
            drop(out);
            let opened = |address: String| open::that_detached(address).is_ok();
            if browser && !door.address_once().is_ok_and(opened) {
                let _ = writeln!(std::io::stderr(), "No browser could be started. Open the address above in one.");
            }
        };
        server::run(listener, server::router(field, door.clone()), LAST_ANSWERS, ready).await
    });
    runtime.shutdown_timeout(LAST_ANSWERS);
    done.map_err(failed)
}
