//! Starting: the port, the folder, the core, the server, in this order, each with a clear error.

use std::io::Write;
use std::net::{Ipv4Addr, TcpListener};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::Duration;

use stillbar_core::{Field, OpenError};
use stillbar_office::start as office;

use crate::folder::{self, Demo};
use crate::guard::Door;
use crate::platform::DesktopPlatform;
use crate::{calls, server};

/// The port that is tried if none is named; it has no meaning elsewhere.
const PORT: u16 = 7462;

/// Where in the demo's folder its office keeps its things.
const OFFICE: &str = "office";

/// How long answers under way may still take after Ctrl-C.
const LAST_ANSWERS: Duration = Duration::from_secs(3);

/// Opens the jobs of `data` and answers until Ctrl-C.
pub fn desk(data: &Path, port: Option<u16>, browser: bool) -> Result<(), String> {
    let listener = listen(port)?;
    folder::make(data)?;
    let field = open(data).map_err(|e| e.to_string())?;
    serve(listener, field, browser)
}

/// Opens the demo, written first if it is not there, and answers until Ctrl-C.
pub fn demo(data: Option<PathBuf>, fresh: bool, port: Option<u16>, browser: bool) -> Result<(), String> {
    let listener = listen(port)?;
    let data = data.map_or_else(folder::demo_home, Ok)?;
    folder::make(&data)?;
    match folder::demo(&data)? {
        Demo::Other => {
            let d = data.display();
            return Err(format!(
                "{d} holds something other than the demo, so nothing in it was touched. \
                 Name an empty folder, or open real work with: stillbar desk --data {d}"
            ));
        }
        Demo::Whole if !fresh => {}
        Demo::Empty => write_demo(&data)?,
        Demo::Whole | Demo::Begun => {
            // Another desk may have it open: then its files must stay. Any other trouble goes away with them.
            if let Err(in_use @ OpenError::InUse { .. }) = open(&data) {
                return Err(in_use.to_string());
            }
            folder::empty(&data)?;
            write_demo(&data)?;
        }
    }
    let field = open(&data).map_err(|e| e.to_string())?;
    let beside = data.join(OFFICE);
    match folder::make(&beside).and_then(|()| office::beside(beside, "Brook Lane office")) {
        Ok(office) => {
            field.join(&office.code).map_err(|why| why.to_string())?;
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

/// Whether `data` is a folder; a rescue makes none.
pub fn existing(data: &Path) -> Result<(), String> {
    if data.is_dir() {
        return Ok(());
    }
    Err(format!("{} is not a folder. Name the data folder with --data.", data.display()))
}

fn write_demo(data: &Path) -> Result<(), String> {
    folder::mark(data, false)?;
    calls::seed_demo(data)?;
    folder::mark(data, true)
}

fn open(data: &Path) -> Result<Arc<Field>, OpenError> {
    let platform = DesktopPlatform::new(data).map_err(|what| OpenError::Other { what })?;
    let name = data.to_str().ok_or_else(|| OpenError::Other {
        what: format!("The name of the folder {} is not Unicode. Name another with --data.", data.display()),
    })?;
    Field::open(name.to_owned(), Arc::new(platform))
}

/// Takes the port before anything is opened, so that a taken one leaves no trace.
fn listen(port: Option<u16>) -> Result<TcpListener, String> {
    let loopback = |port| TcpListener::bind((Ipv4Addr::LOCALHOST, port));
    let Some(named) = port else {
        return loopback(PORT).or_else(|_| {
            let free = loopback(0).map_err(|e| format!("No port could be opened: {}.", folder::plain(&e)))?;
            let _ = writeln!(std::io::stderr(), "Port {PORT} is taken, so another one is used.");
            Ok(free)
        });
    };
    loopback(named).map_err(|e| match e.kind() {
        std::io::ErrorKind::AddrInUse => {
            format!("Port {named} is taken by another program. Name another with --port, or leave --port out.")
        }
        _ => format!("Port {named} could not be opened: {}. Name another with --port.", folder::plain(&e)),
    })
}

fn serve(listener: TcpListener, field: Arc<Field>, browser: bool) -> Result<(), String> {
    // A laptop's link costs nothing.
    field.good_time(true);
    let failed = |e: std::io::Error| format!("The desk could not answer: {}. Start it again.", folder::plain(&e));
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
