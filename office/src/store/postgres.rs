//! PostgreSQL: any number of processes over one database.
//!
//! Rows that decide something (a device's chain, a site's last number) are held `FOR UPDATE` to the end of the transaction. Two
//! that meet in the opposite order are told apart by PostgreSQL itself, and the one that it ends is done again.

use std::str::FromStr;
use std::time::Duration;

use sqlx::postgres::{PgArguments, PgConnectOptions, PgPool, PgPoolOptions, PgRow, Postgres as Pg};
use sqlx::query::Query;
use sqlx::{AssertSqlSafe, Column, Connection, Row as _, Transaction, TypeInfo, ValueRef};
use tokio::runtime::Handle;

use super::{Database, OpenError, SqlRow, SqlValue, Transact, Tx};
use crate::error::OfficeError;

/// What each version adds to the one before.
const SCHEMA: [&str; 4] = [
    include_str!("postgres-1.sql"),
    include_str!("postgres-2.sql"),
    include_str!("postgres-3.sql"),
    include_str!("postgres-4.sql"),
];
/// Connections of one process.
const CONNECTIONS: u32 = 16;
/// How long a caller waits for one of them.
const PATIENCE: Duration = Duration::from_secs(10);
/// How often a transaction is done again that PostgreSQL ended because it met another.
const TRIES: usize = 8;
/// Held while the tables are brought up, so that two processes that start together do not both do it. Any number does.
const UPGRADE: i64 = 0x5354_424F;

/// See the module.
pub struct Postgres {
    pool: PgPool,
    handle: Handle,
}

impl Postgres {
    /// Opens the database, and makes its tables if they are not there. A newer one is left as it is.
    pub fn open(url: &str, handle: &Handle) -> Result<Postgres, OpenError> {
        let options = PgConnectOptions::from_str(url)?.application_name("stillbar-office");
        let pool = PgPoolOptions::new().max_connections(CONNECTIONS).acquire_timeout(PATIENCE);
        let pool = handle.block_on(pool.connect_with(options))?;
        handle.block_on(upgrade(&pool))?;
        Ok(Postgres { pool, handle: handle.clone() })
    }

    fn once(&self, work: Transact, begin: &'static str) -> Result<(), OfficeError> {
        let mut open =
            PostgresTx { tx: self.handle.block_on(self.pool.begin_with(begin)).map_err(fault)?, handle: &self.handle };
        match work(&mut open) {
            Ok(()) => self.handle.block_on(open.tx.commit()).map_err(fault),
            Err(why) => {
                // What cannot be rolled back any more is gone with its connection.
                let _ = self.handle.block_on(open.tx.rollback());
                Err(why)
            }
        }
    }
}

async fn upgrade(pool: &PgPool) -> Result<(), OpenError> {
    let mut db = pool.acquire().await?;
    sqlx::query("SELECT pg_advisory_lock($1)").bind(UPGRADE).execute(&mut *db).await?;
    let done = steps(&mut db).await;
    sqlx::query("SELECT pg_advisory_unlock($1)").bind(UPGRADE).execute(&mut *db).await?;
    done
}

async fn steps(db: &mut sqlx::PgConnection) -> Result<(), OpenError> {
    let there: Option<String> =
        sqlx::query_scalar("SELECT to_regclass('office_version')::text").fetch_one(&mut *db).await?;
    let found: i64 = match there {
        Some(_) => sqlx::query_scalar("SELECT max(version) FROM office_version").fetch_one(&mut *db).await?,
        None => 0,
    };
    if found > SCHEMA.len() as i64 {
        return Err(OpenError::Newer { found, known: SCHEMA.len() });
    }
    for (at, step) in SCHEMA.iter().enumerate().skip(usize::try_from(found).unwrap_or(0)) {
        let mut tx = db.begin().await?;
        sqlx::raw_sql(*step).execute(&mut *tx).await?;
        sqlx::query("INSERT INTO office_version VALUES ($1)").bind(at as i64 + 1).execute(&mut *tx).await?;
        tx.commit().await?;
    }
    Ok(())
}

impl Database for Postgres {
    fn change(&self, work: Transact) -> Result<(), OfficeError> {
        for _ in 1..TRIES {
            match self.once(work, "BEGIN") {
                Err(OfficeError::Again) => {}
                done => return done,
            }
        }
        self.once(work, "BEGIN")
    }

    fn read(&self, work: Transact) -> Result<(), OfficeError> {
        self.once(work, "BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY")
    }

    fn name(&self) -> &'static str {
        "PostgreSQL"
    }
}

struct PostgresTx<'a> {
    tx: Transaction<'static, Pg>,
    handle: &'a Handle,
}

/// The statements are ours; what people type only ever is a value.
fn query<'q>(sql: &str, with: &[SqlValue]) -> Query<'q, Pg, PgArguments> {
    let mut query = sqlx::query(AssertSqlSafe(sql.to_owned()));
    for value in with {
        query = match value {
            SqlValue::Int(n) => query.bind(*n),
            SqlValue::Text(text) => query.bind(text.clone()),
            SqlValue::Bytes(bytes) => query.bind(bytes.clone()),
        };
    }
    query
}

impl Tx for PostgresTx<'_> {
    fn rows(&mut self, sql: &str, with: &[SqlValue]) -> Result<Vec<SqlRow>, OfficeError> {
        let found = self.handle.block_on(query(sql, with).fetch_all(&mut *self.tx)).map_err(fault)?;
        found.iter().map(row).collect()
    }

    fn among(&mut self, sql: &str, with: &[SqlValue], ids: &[[u8; 32]]) -> Result<Vec<SqlRow>, OfficeError> {
        let sql = sql.replace("IN (@)", &format!("= ANY(${})", with.len() + 1));
        let ids: Vec<Vec<u8>> = ids.iter().map(|id| id.to_vec()).collect();
        let found = self.handle.block_on(query(&sql, with).bind(ids).fetch_all(&mut *self.tx)).map_err(fault)?;
        found.iter().map(row).collect()
    }

    fn run(&mut self, sql: &str, with: &[SqlValue]) -> Result<u64, OfficeError> {
        let done = self.handle.block_on(query(sql, with).execute(&mut *self.tx)).map_err(fault)?;
        Ok(done.rows_affected())
    }

    fn insert(
        &mut self,
        table: &str,
        columns: &[&str],
        clash: &str,
        rows: &[Vec<SqlValue>],
    ) -> Result<(), OfficeError> {
        let Some(first) = rows.first() else { return Ok(()) };
        // One array a column: one statement and one way to the database and back, however many rows there are.
        let kinds = first.iter().enumerate().map(|(at, value)| match value {
            SqlValue::Int(_) => format!("${}::bigint[]", at + 1),
            SqlValue::Text(_) => format!("${}::text[]", at + 1),
            SqlValue::Bytes(_) => format!("${}::bytea[]", at + 1),
        });
        let kinds: Vec<String> = kinds.collect();
        let sql =
            format!("INSERT INTO {table} ({}) SELECT * FROM UNNEST({}) {clash}", columns.join(", "), kinds.join(", "));
        let mut query = sqlx::query(AssertSqlSafe(sql));
        for (at, value) in first.iter().enumerate() {
            let column = rows.iter().map(|row| &row[at]);
            query = match value {
                SqlValue::Int(_) => query.bind(column.map(int).collect::<Vec<_>>()),
                SqlValue::Text(_) => query.bind(column.map(text).collect::<Vec<_>>()),
                SqlValue::Bytes(_) => query.bind(column.map(bytes).collect::<Vec<_>>()),
            };
        }
        self.handle.block_on(query.execute(&mut *self.tx)).map_err(fault)?;
        Ok(())
    }
}

fn int(value: &SqlValue) -> Option<i64> {
    if let SqlValue::Int(n) = value { *n } else { None }
}

fn text(value: &SqlValue) -> Option<String> {
    if let SqlValue::Text(text) = value { text.clone() } else { None }
}

fn bytes(value: &SqlValue) -> Option<Vec<u8>> {
    if let SqlValue::Bytes(bytes) = value { bytes.clone() } else { None }
}

fn row(row: &PgRow) -> Result<SqlRow, OfficeError> {
    let cell = |at: usize| -> Result<SqlValue, OfficeError> {
        if row.try_get_raw(at).map_err(fault)?.is_null() {
            return Ok(SqlValue::Bytes(None));
        }
        Ok(match row.column(at).type_info().name() {
            "INT8" => SqlValue::Int(Some(row.try_get(at).map_err(fault)?)),
            "INT4" => SqlValue::Int(Some(row.try_get::<i32, _>(at).map_err(fault)?.into())),
            "BOOL" => SqlValue::Int(Some(row.try_get::<bool, _>(at).map_err(fault)?.into())),
            "TEXT" => SqlValue::Text(Some(row.try_get(at).map_err(fault)?)),
            "BYTEA" => SqlValue::Bytes(Some(row.try_get(at).map_err(fault)?)),
            other => return Err(OfficeError::Broken(format!("a column is {other}, which no table of ours has"))),
        })
    };
    Ok(SqlRow((0..row.columns().len()).map(cell).collect::<Result<_, _>>()?))
}

fn fault(error: sqlx::Error) -> OfficeError {
    match &error {
        sqlx::Error::Database(said) => match said.code().as_deref() {
            // serialization_failure, deadlock_detected (PostgreSQL, appendix A).
            Some("40001" | "40P01") => OfficeError::Again,
            // Class 53: insufficient resources; 57P: the server is going down or starting; 25006: a read-only standby.
            Some(code) if code.starts_with("53") || code.starts_with("57P") || code == "25006" => {
                OfficeError::Busy(error.to_string())
            }
            _ => OfficeError::Broken(error.to_string()),
        },
        sqlx::Error::Io(_) | sqlx::Error::Tls(_) | sqlx::Error::PoolTimedOut | sqlx::Error::PoolClosed => {
            OfficeError::Busy(error.to_string())
        }
        sqlx::Error::Protocol(_) | sqlx::Error::WorkerCrashed => OfficeError::Busy(error.to_string()),
        _ => OfficeError::Broken(error.to_string()),
    }
}
