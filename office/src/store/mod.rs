//! The database: one interface, two backends.
//!
//! Calls block, and run on threads that may: the rules of the exchange are then plain code inside one transaction, written once
//! and tested without a runtime, and SQLite needs no thread of its own. The SQL is written once as well, in what SQLite and
//! PostgreSQL both speak: `$1` for a value, whole numbers of 64 bits, texts and bytes and nothing else, `FOR UPDATE` where a row is
//! held to the end of the transaction (SQLite holds everything, so its backend leaves the words out).
//!
//! Promises: what [`Database::change`] did is on disk when it returns, or none of it is; a newer database is left as it is.
//! Start at [`open`].

#[cfg(feature = "postgres")]
mod postgres;
mod sqlite;
mod value;

use std::path::{Path, PathBuf};

use tokio::runtime::Handle;

#[cfg(feature = "postgres")]
pub use postgres::Postgres;
pub use sqlite::{DATABASE, Sqlite};
pub use value::{SqlRow, SqlValue};

use crate::error::OfficeError;

/// What is done inside a transaction. It may be called again if the database asks for that, so it keeps nothing of an
/// earlier call.
pub type Transact<'a> = &'a mut dyn FnMut(&mut dyn Tx) -> Result<(), OfficeError>;

/// A database.
pub trait Database: Send + Sync {
    /// Changes: all of it or nothing; on disk when this returns.
    fn change(&self, work: Transact) -> Result<(), OfficeError>;
    /// Reads: one moment of the database, seen whole.
    fn read(&self, work: Transact) -> Result<(), OfficeError>;
    /// What it is, in a word.
    fn name(&self) -> &'static str;
}

/// A transaction.
pub trait Tx {
    /// The rows that `sql` gives.
    fn rows(&mut self, sql: &str, with: &[SqlValue]) -> Result<Vec<SqlRow>, OfficeError>;
    /// The rows of `sql`, in which `IN (@)` stands for any of `ids`.
    fn among(&mut self, sql: &str, with: &[SqlValue], ids: &[[u8; 32]]) -> Result<Vec<SqlRow>, OfficeError>;
    /// Runs `sql`; how many rows it changed.
    fn run(&mut self, sql: &str, with: &[SqlValue]) -> Result<u64, OfficeError>;
    /// Inserts `rows` into `columns` of `table`; `clash` is what follows, such as `ON CONFLICT DO NOTHING`.
    fn insert(&mut self, table: &str, columns: &[&str], clash: &str, rows: &[Vec<SqlValue>])
    -> Result<(), OfficeError>;
}

/// Changes, and hands back what `work` found out.
pub fn change<T>(
    store: &dyn Database,
    mut work: impl FnMut(&mut dyn Tx) -> Result<T, OfficeError>,
) -> Result<T, OfficeError> {
    let mut found = None;
    store.change(&mut |tx| {
        found = Some(work(tx)?);
        Ok(())
    })?;
    found.ok_or_else(|| OfficeError::broken("a transaction ended without an answer"))
}

/// Reads, and hands back what `work` found out.
pub fn read<T>(
    store: &dyn Database,
    mut work: impl FnMut(&mut dyn Tx) -> Result<T, OfficeError>,
) -> Result<T, OfficeError> {
    let mut found = None;
    store.read(&mut |tx| {
        found = Some(work(tx)?);
        Ok(())
    })?;
    found.ok_or_else(|| OfficeError::broken("a transaction ended without an answer"))
}

/// Why the database cannot be opened. Nothing in it was changed.
#[derive(Debug, thiserror::Error)]
pub enum OpenError {
    /// The file of SQLite.
    #[error("The office's database {path} could not be opened: {why}. Nothing was changed: put a copy of it back.")]
    Sqlite {
        /// The file.
        path: PathBuf,
        /// Why.
        #[source]
        why: rusqlite::Error,
    },
    /// PostgreSQL. Its address may hold a password, so it is not repeated.
    #[cfg(feature = "postgres")]
    #[error("PostgreSQL could not be opened: {0}. Nothing was changed: look at the address given with --database.")]
    Postgres(#[from] sqlx::Error),
    /// This build has none; [`crate::built`] has told it before, at more length.
    #[cfg(not(feature = "postgres"))]
    #[error("This Stillbar was built without PostgreSQL.")]
    NoPostgres,
    /// The address is one of no database that is known here.
    #[error("--database takes postgres://USER@HOST/NAME. Leave it out for SQLite in the data folder.")]
    Address,
    /// A newer version wrote it.
    #[error(
        "The office's database was written by a newer Stillbar (its version is {found}, this one knows {known}). Nothing was changed: \
         update Stillbar and start it again."
    )]
    Newer {
        /// Its version.
        found: i64,
        /// The newest that is known here.
        known: usize,
    },
}

/// Opens the database at `url`, or SQLite in the folder if none is given; brings it to this version's tables.
pub fn open(folder: &Path, url: Option<&str>, handle: &Handle) -> Result<Box<dyn Database>, OpenError> {
    match url {
        None => Ok(Box::new(Sqlite::open(&folder.join(DATABASE))?)),
        Some(url) if is_postgres(url) => postgres(url, handle),
        Some(_) => Err(OpenError::Address),
    }
}

/// Whether `--database` asks for PostgreSQL.
pub fn is_postgres(url: &str) -> bool {
    url.starts_with("postgres://") || url.starts_with("postgresql://")
}

#[cfg(feature = "postgres")]
fn postgres(url: &str, handle: &Handle) -> Result<Box<dyn Database>, OpenError> {
    Ok(Box::new(Postgres::open(url, handle)?))
}

#[cfg(not(feature = "postgres"))]
fn postgres(_: &str, _: &Handle) -> Result<Box<dyn Database>, OpenError> {
    Err(OpenError::NoPostgres)
}

/// Values for a statement, in the order of `$1`, `$2`, ...
#[macro_export]
macro_rules! params {
    ($($value:expr),* $(,)?) => { &[$($crate::store::SqlValue::from($value)),*] };
}
