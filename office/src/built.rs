//! What was left out of this build. The demo's office stands on SQLite and a folder; PostgreSQL and a store that speaks S3 bring libraries
//! that take minutes to build, so they are features of their own, and an office that is told to use one it does not have says how to get it.
//!
//! Promise: nothing on disk is touched before that is said. Start at [`Built::lacks`].

use crate::store;

/// What this build cannot use, with the way to it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum Lack {
    /// `--database postgres://...`
    #[error("{}", without("PostgreSQL", "leave --database out for SQLite in the data folder"))]
    Postgres,
    /// `--objects s3://...`
    #[error("{}", without("S3", "give --objects file:///FOLDER, or leave it out for the data folder"))]
    S3,
}

/// What a build can do besides SQLite and a folder.
#[derive(Debug, Clone, Copy)]
pub struct Built {
    /// `--database postgres://...`
    pub postgres: bool,
    /// `--objects s3://...`
    pub s3: bool,
}

impl Built {
    /// This one.
    pub const THIS: Built = Built { postgres: cfg!(feature = "postgres"), s3: cfg!(feature = "s3") };

    /// What it lacks of what `--database` and `--objects` ask for, the first of it; `None` if it can use both.
    pub fn lacks(self, database: Option<&str>, objects: Option<&str>) -> Option<Lack> {
        if !self.postgres && database.is_some_and(store::is_postgres) {
            return Some(Lack::Postgres);
        }
        if !self.s3 && objects.is_some_and(|url| url.starts_with("s3://")) {
            return Some(Lack::S3);
        }
        None
    }
}

fn without(what: &str, otherwise: &str) -> String {
    format!(
        "This Stillbar was built without {what}, so nothing was started. Build it with it: cargo build --release --features \
         postgres,s3. Or {otherwise}."
    )
}
