//! A PostgreSQL of the tests' own: in a folder that vanishes, on a socket in it, ended with the test process.

use std::path::PathBuf;
use std::process::{Command, Stdio};
use std::sync::OnceLock;
use std::sync::atomic::{AtomicU32, Ordering};

/// Where Debian keeps the programs of each version; the newest is taken.
const DEBIAN: &str = "/usr/lib/postgresql";

/// The folder of the programs.
fn programs() -> PathBuf {
    let found = std::fs::read_dir(DEBIAN).into_iter().flatten().filter_map(|f| Some(f.ok()?.path().join("bin")));
    let mut found: Vec<PathBuf> = found.filter(|p| p.join("initdb").exists()).collect();
    found.sort();
    found.pop().unwrap_or_else(|| panic!("PostgreSQL is not in {DEBIAN}; tests/run installs it (Debian: postgresql)"))
}

/// Runs as a user who is not root, which PostgreSQL insists on.
fn script(text: &str) -> Command {
    let root = std::fs::metadata("/proc/self").map(|m| std::os::unix::fs::MetadataExt::uid(&m) == 0).unwrap_or(false);
    let mut command = if root { Command::new("setpriv") } else { Command::new("sh") };
    if root {
        command.args(["--reuid=postgres", "--regid=postgres", "--clear-groups", "sh"]);
    }
    command.args(["-c", text]).current_dir("/");
    command
}

/// The folder with the socket of the one server of this process.
fn server() -> &'static str {
    static SERVER: OnceLock<String> = OnceLock::new();
    SERVER.get_or_init(|| {
        let made = script("mktemp -d /tmp/stillbar-pg-XXXXXX").output().expect("a shell runs");
        let folder = String::from_utf8(made.stdout).expect("a path").trim().to_owned();
        assert!(!folder.is_empty(), "no folder for PostgreSQL: {}", String::from_utf8_lossy(&made.stderr));
        let bin = programs().display().to_string();
        // The pipe closes when this process ends, however it ends; then the server goes and its folder with it.
        let text = format!(
            "{bin}/initdb -D {folder}/data -U postgres -A trust -E UTF8 --locale=C >{folder}/log 2>&1 || exit 1
             {bin}/postgres -D {folder}/data -k {folder} -c listen_addresses= -c fsync=off -c max_connections=200 \
                 >>{folder}/log 2>&1 &
             server=$!
             until {bin}/pg_isready -q -h {folder}; do kill -0 $server || exit 1; sleep 0.1; done
             echo ready
             read -r ended
             kill -QUIT $server; wait $server
             rm -rf {folder}"
        );
        let mut child = script(&text).stdin(Stdio::piped()).stdout(Stdio::piped()).spawn().expect("a shell runs");
        let mut line = String::new();
        let out = child.stdout.take().expect("it is piped");
        std::io::BufRead::read_line(&mut std::io::BufReader::new(out), &mut line).expect("it answers");
        let log = || std::fs::read_to_string(format!("{folder}/log")).unwrap_or_default();
        assert_eq!(line, "ready\n", "PostgreSQL did not start:\n{}", log());
        // Its stdin stays open for as long as this process lives.
        std::mem::forget(child);
        folder
    })
}

/// The address of a new, empty database.
pub fn database() -> String {
    static NUMBER: AtomicU32 = AtomicU32::new(0);
    let (folder, bin) = (server(), programs());
    let name = format!("office_{}", NUMBER.fetch_add(1, Ordering::Relaxed));
    let made = Command::new(bin.join("createdb")).args(["-h", folder, "-U", "postgres", &name]).output();
    let made = made.expect("createdb runs");
    assert!(made.status.success(), "{}", String::from_utf8_lossy(&made.stderr));
    format!("postgres://postgres@localhost/{name}?host={folder}")
}
