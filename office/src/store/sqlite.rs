//! SQLite: one file in the data folder; one writer, readers beside it.

use std::path::{Path, PathBuf};
use std::sync::{Mutex, MutexGuard, PoisonError};
use std::time::{Duration, Instant};

use rusqlite::types::{ToSqlOutput, ValueRef};
use rusqlite::{Connection, ErrorCode, Statement, ToSql, Transaction, TransactionBehavior};

use super::{Database, OpenError, SqlRow, SqlValue, Transact, Tx};
use crate::error::OfficeError;

/// The database's file name in the data folder.
pub const DATABASE: &str = "office.db";

/// What each version adds to the one before.
const SCHEMA: [&str; 4] = [
    include_str!("sqlite-1.sql"),
    include_str!("sqlite-2.sql"),
    include_str!("sqlite-3.sql"),
    include_str!("sqlite-4.sql"),
];
/// Readers that are kept open for the next read.
const READERS: usize = 4;
/// How long to wait for another process.
const BUSY: Duration = Duration::from_secs(10);
const PAUSE: Duration = Duration::from_millis(20);
/// Statements that a connection keeps prepared.
const PREPARED: usize = 128;

/// See the module.
pub struct Sqlite {
    path: PathBuf,
    writer: Mutex<Connection>,
    readers: Mutex<Vec<Connection>>,
}

impl Sqlite {
    /// Opens the file, and makes it if it is not there. A newer one is left as it is.
    pub fn open(path: &Path) -> Result<Sqlite, OpenError> {
        let failed = |why| OpenError::Sqlite { path: path.to_owned(), why };
        let mut db = connect(path).map_err(failed)?;
        // Asked before anything is written, so that a newer database is left byte for byte.
        let version = |db: &Connection| db.pragma_query_value(None, "user_version", |row| row.get::<_, i64>(0));
        let found = version(&db).map_err(failed)?;
        if found > SCHEMA.len() as i64 {
            return Err(OpenError::Newer { found, known: SCHEMA.len() });
        }
        to_wal(&db).map_err(failed)?;
        for (at, step) in SCHEMA.iter().enumerate() {
            // Another process may be bringing it up at the same time: who comes second sees the version inside.
            let tx = db.transaction_with_behavior(TransactionBehavior::Immediate).map_err(failed)?;
            if version(&tx).map_err(failed)? == at as i64 {
                tx.execute_batch(step).map_err(failed)?;
                tx.pragma_update(None, "user_version", at as i64 + 1).map_err(failed)?;
            }
            tx.commit().map_err(failed)?;
        }
        Ok(Sqlite { path: path.to_owned(), writer: Mutex::new(db), readers: Mutex::new(Vec::new()) })
    }
}

/// Changes to a write-ahead log. SQLite asks no busy handler while it does, because two that change at once would wait for each other: so one
/// that finds the other asks again.
fn to_wal(db: &Connection) -> rusqlite::Result<()> {
    let until = Instant::now() + BUSY;
    loop {
        match db.pragma_update(None, "journal_mode", "WAL") {
            Err(e) if e.sqlite_error_code() == Some(ErrorCode::DatabaseBusy) && Instant::now() < until => {
                std::thread::sleep(PAUSE);
            }
            done => return done,
        }
    }
}

fn connect(path: &Path) -> rusqlite::Result<Connection> {
    let db = Connection::open(path)?;
    db.busy_timeout(BUSY)?;
    db.pragma_update(None, "synchronous", "FULL")?;
    db.pragma_update(None, "temp_store", "MEMORY")?;
    db.set_prepared_statement_cache_capacity(PREPARED);
    Ok(db)
}

/// A panic in an earlier transaction rolled it back; the connection itself is sound.
fn hold<T>(lock: &Mutex<T>) -> MutexGuard<'_, T> {
    lock.lock().unwrap_or_else(PoisonError::into_inner)
}

impl Database for Sqlite {
    fn change(&self, work: Transact) -> Result<(), OfficeError> {
        let mut db = hold(&self.writer);
        let tx = db.transaction_with_behavior(TransactionBehavior::Immediate).map_err(fault)?;
        work(&mut SqliteTx(&tx))?;
        tx.commit().map_err(fault)
    }

    fn read(&self, work: Transact) -> Result<(), OfficeError> {
        let spare = hold(&self.readers).pop();
        let mut db = spare.map_or_else(|| connect(&self.path), Ok).map_err(fault)?;
        {
            let tx = db.transaction_with_behavior(TransactionBehavior::Deferred).map_err(fault)?;
            work(&mut SqliteTx(&tx))?;
        }
        let mut readers = hold(&self.readers);
        if readers.len() < READERS {
            readers.push(db);
        }
        Ok(())
    }

    fn name(&self) -> &'static str {
        "SQLite"
    }
}

struct SqliteTx<'a>(&'a Transaction<'a>);

/// What both databases speak, in SQLite's own words.
fn own_words(sql: &str) -> String {
    sql.replace('$', "?").replace(" FOR UPDATE", "")
}

impl Tx for SqliteTx<'_> {
    fn rows(&mut self, sql: &str, with: &[SqlValue]) -> Result<Vec<SqlRow>, OfficeError> {
        let mut query = self.0.prepare_cached(&own_words(sql)).map_err(fault)?;
        all(&mut query, with)
    }

    fn among(&mut self, sql: &str, with: &[SqlValue], ids: &[[u8; 32]]) -> Result<Vec<SqlRow>, OfficeError> {
        let listed = format!("(SELECT unhex(value) FROM json_each(?{}))", with.len() + 1);
        let mut query = self.0.prepare_cached(&own_words(sql).replace("(@)", &listed)).map_err(fault)?;
        let hex: Vec<String> = ids.iter().map(|id| format!("\"{}\"", crate::hex(id))).collect();
        let mut with = with.to_vec();
        with.push(format!("[{}]", hex.join(",")).into());
        all(&mut query, &with)
    }

    fn run(&mut self, sql: &str, with: &[SqlValue]) -> Result<u64, OfficeError> {
        let mut query = self.0.prepare_cached(&own_words(sql)).map_err(fault)?;
        let changed = query.execute(rusqlite::params_from_iter(with)).map_err(fault)?;
        Ok(changed as u64)
    }

    fn insert(
        &mut self,
        table: &str,
        columns: &[&str],
        clash: &str,
        rows: &[Vec<SqlValue>],
    ) -> Result<(), OfficeError> {
        let marks: Vec<String> = (1..=columns.len()).map(|n| format!("?{n}")).collect();
        let sql = format!("INSERT INTO {table} ({}) VALUES ({}) {clash}", columns.join(", "), marks.join(", "));
        let mut query = self.0.prepare_cached(&sql).map_err(fault)?;
        for row in rows {
            query.execute(rusqlite::params_from_iter(row)).map_err(fault)?;
        }
        Ok(())
    }
}

fn all(query: &mut Statement, with: &[SqlValue]) -> Result<Vec<SqlRow>, OfficeError> {
    let columns = query.column_count();
    let mut rows = query.query(rusqlite::params_from_iter(with)).map_err(fault)?;
    let mut out = Vec::new();
    while let Some(row) = rows.next().map_err(fault)? {
        let cells = (0..columns).map(|at| row.get_ref(at).map_err(fault).and_then(value));
        out.push(SqlRow(cells.collect::<Result<_, _>>()?));
    }
    Ok(out)
}

fn value(cell: ValueRef) -> Result<SqlValue, OfficeError> {
    Ok(match cell {
        ValueRef::Null => SqlValue::Bytes(None),
        ValueRef::Integer(n) => SqlValue::Int(Some(n)),
        ValueRef::Text(text) => SqlValue::Text(Some(String::from_utf8_lossy(text).into_owned())),
        ValueRef::Blob(bytes) => SqlValue::Bytes(Some(bytes.to_vec())),
        ValueRef::Real(_) => return Err(OfficeError::broken("the database holds a floating point number")),
    })
}

impl ToSql for SqlValue {
    fn to_sql(&self) -> rusqlite::Result<ToSqlOutput<'_>> {
        Ok(ToSqlOutput::Borrowed(match self {
            SqlValue::Int(Some(n)) => ValueRef::Integer(*n),
            SqlValue::Text(Some(text)) => ValueRef::Text(text.as_bytes()),
            SqlValue::Bytes(Some(bytes)) => ValueRef::Blob(bytes),
            SqlValue::Int(None) | SqlValue::Text(None) | SqlValue::Bytes(None) => ValueRef::Null,
        }))
    }
}

fn fault(error: rusqlite::Error) -> OfficeError {
    match error.sqlite_error_code() {
        Some(
            ErrorCode::DatabaseBusy
            | ErrorCode::DatabaseLocked
            | ErrorCode::DiskFull
            | ErrorCode::ReadOnly
            | ErrorCode::SystemIoFailure
            | ErrorCode::CannotOpen,
        ) => OfficeError::Busy(error.to_string()),
        _ => OfficeError::Broken(error.to_string()),
    }
}
