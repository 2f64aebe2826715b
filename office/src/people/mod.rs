//! People of the office: who they are, what they may do, how they sign in.
//!
//! Promises: a password is kept as argon2id and never written anywhere else; a session ends by itself; what a role may do is decided
//! by the table of routes and by the sites of the person, nowhere else. Start at [`AccountRole`] and [`sign_in`].

mod password;
mod session;

use std::collections::BTreeSet;

use stillbar_core::journal::EntryId;

pub use password::{check_new, hash, verify};
pub use session::{COOKIE, Visitor, sign_in, sign_out, visitor};

use crate::error::OfficeError;
use crate::office::Office;
use crate::store::{SqlRow, Tx};
use crate::{audit, params};

/// What a person may do; each may do all that those before it may.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum AccountRole {
    /// Reads what is on their sites.
    Reader,
    /// Plans jobs and prints labels.
    Planner,
    /// Enrols and withdraws phones, releases what is aside, takes in sites, brings in the rules of the company.
    Lead,
    /// Looks after people and sees all sites.
    Admin,
}

impl AccountRole {
    /// All, least first.
    pub const ALL: [AccountRole; 4] =
        [AccountRole::Reader, AccountRole::Planner, AccountRole::Lead, AccountRole::Admin];

    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            AccountRole::Reader => "reader",
            AccountRole::Planner => "planner",
            AccountRole::Lead => "site lead",
            AccountRole::Admin => "admin",
        }
    }

    /// As kept in the database: 1 to 4.
    pub fn number(self) -> i64 {
        match self {
            AccountRole::Reader => 1,
            AccountRole::Planner => 2,
            AccountRole::Lead => 3,
            AccountRole::Admin => 4,
        }
    }

    /// From the database. What is not known may least.
    pub fn of(number: i64) -> AccountRole {
        AccountRole::ALL.into_iter().find(|r| r.number() == number).unwrap_or(AccountRole::Reader)
    }

    /// From a word.
    pub fn named(word: &str) -> Option<AccountRole> {
        AccountRole::ALL.into_iter().find(|r| r.word() == word)
    }
}

/// A person.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Account {
    /// Id in the database.
    pub id: String,
    /// What they sign in with.
    pub login: String,
    /// What they are called.
    pub name: String,
    /// What they may do.
    pub role: AccountRole,
    /// Whether the password is one that somebody else gave them.
    pub fresh: bool,
    /// Whether they may no longer sign in.
    pub off: bool,
    /// The entry that names them in the journal.
    pub entry: Option<EntryId>,
}

const COLUMNS: &str = "SELECT id, login, name, role, fresh, off, entry FROM person";

fn read(row: &SqlRow) -> Result<Account, OfficeError> {
    Ok(Account {
        id: row.text(0)?,
        login: row.text(1)?,
        name: row.text(2)?,
        role: AccountRole::of(row.int(3)?),
        fresh: row.yes(4)?,
        off: row.yes(5)?,
        entry: row.maybe_id(6)?,
    })
}

/// Everybody, by name.
pub fn all(tx: &mut dyn Tx) -> Result<Vec<Account>, OfficeError> {
    tx.rows(&format!("{COLUMNS} ORDER BY name, id"), &[])?.iter().map(read).collect()
}

/// One person.
pub fn person(tx: &mut dyn Tx, id: &str) -> Result<Account, OfficeError> {
    let rows = tx.rows(&format!("{COLUMNS} WHERE id = $1"), params![id])?;
    rows.first().map(read).transpose()?.ok_or_else(|| OfficeError::nothing("There is no such person."))
}

/// The sites that a person sees: an admin all, others those that they were given and what is the same place.
pub fn sites(tx: &mut dyn Tx, person: &Account) -> Result<BTreeSet<EntryId>, OfficeError> {
    let rows = if person.role == AccountRole::Admin {
        tx.rows("SELECT id FROM site", &[])?
    } else {
        let sql = "SELECT id FROM site WHERE main IN (SELECT site FROM person_site WHERE person = $1)";
        tx.rows(sql, params![person.id.as_str()])?
    };
    rows.iter().map(|row| row.id(0)).collect()
}

/// What a new person is.
#[derive(Debug, Clone)]
pub struct NewAccount {
    /// What they sign in with.
    pub login: String,
    /// What they are called.
    pub name: String,
    /// What they may do.
    pub role: AccountRole,
    /// Their sites.
    pub sites: Vec<EntryId>,
}

/// Adds a person with a one-time password, which is returned and kept nowhere in the clear.
pub fn add(office: &Office, new: &NewAccount, who: &str, origin: &str) -> Result<String, OfficeError> {
    let login = login(&new.login)?;
    let name = new.name.trim();
    if name.is_empty() || name.chars().count() > 80 {
        return Err(OfficeError::unreadable("A person has a name of at most 80 characters."));
    }
    let (id, password) = (office.secret::<12>()?, office.secret::<12>()?);
    let (hashed, now) = (hash(office, &password)?, office.now());
    office.change(|tx| {
        let made = tx.run(
            "INSERT INTO person (id, login, name, password, role, fresh, off, entry, made_ms) \
             VALUES ($1, $2, $3, $4, $5, 1, 0, NULL, $6) ON CONFLICT (login) DO NOTHING",
            params![id.as_str(), login.as_str(), name, hashed.as_str(), new.role.number(), now],
        )?;
        if made == 0 {
            return Err(OfficeError::unreadable(format!(
                "Somebody signs in as {login} already. Give another sign-in name."
            )));
        }
        give_sites(tx, &id, &new.sites)?;
        audit::note(tx, now, who, "person added", &format!("{login}, {}", new.role.word()), origin)
    })?;
    Ok(password)
}

/// The sites of a person, in place of those they had.
pub fn give_sites(tx: &mut dyn Tx, person: &str, sites: &[EntryId]) -> Result<(), OfficeError> {
    tx.run("DELETE FROM person_site WHERE person = $1", params![person])?;
    for site in sites {
        tx.run(
            "INSERT INTO person_site (person, site) SELECT $1, main FROM site WHERE id = $2 ON CONFLICT DO NOTHING",
            params![person, *site],
        )?;
    }
    Ok(())
}

/// A new one-time password; whoever is signed in as this person is signed out.
pub fn renew(office: &Office, id: &str, who: &str, origin: &str) -> Result<String, OfficeError> {
    let password = office.secret::<12>()?;
    let (hashed, now) = (hash(office, &password)?, office.now());
    office.change(|tx| {
        let found = person(tx, id)?;
        tx.run("UPDATE person SET password = $1, fresh = 1 WHERE id = $2", params![hashed.as_str(), id])?;
        tx.run("DELETE FROM session WHERE person = $1", params![id])?;
        audit::note(tx, now, who, "password renewed", &found.login, origin)
    })?;
    Ok(password)
}

fn login(typed: &str) -> Result<String, OfficeError> {
    let login = typed.trim().to_lowercase();
    let plain = |c: char| c.is_alphanumeric() || matches!(c, '.' | '-' | '_' | '@');
    if login.is_empty() || login.chars().count() > 60 || !login.chars().all(plain) {
        return Err(OfficeError::unreadable(
            "A sign-in name has up to 60 letters, digits, points, hyphens, underscores or @.",
        ));
    }
    Ok(login)
}

/// The first start: an admin is made if there is nobody. Returns the one-time password, to be shown once.
pub fn first(office: &Office) -> Result<Option<String>, OfficeError> {
    let nobody = office.read(|tx| Ok(tx.rows("SELECT 1 FROM person LIMIT 1", &[])?.is_empty()))?;
    if !nobody {
        return Ok(None);
    }
    let new = NewAccount { login: "admin".into(), name: "Admin".into(), role: AccountRole::Admin, sites: Vec::new() };
    match add(office, &new, "the first start", "the terminal") {
        Ok(password) => Ok(Some(password)),
        // Another process was a moment earlier, and has shown the password.
        Err(OfficeError::Refused { .. }) => Ok(None),
        Err(other) => Err(other),
    }
}

/// A password that the person chose.
pub fn choose(office: &Office, person: &Account, old: &str, new: &str, origin: &str) -> Result<(), OfficeError> {
    crate::rate::count(office, crate::rate::SIGN_IN_NAME, &person.login)?;
    let kept = office.read(|tx| {
        let rows = tx.rows("SELECT password FROM person WHERE id = $1", params![person.id.as_str()])?;
        rows.first().map(|row| row.text(0)).transpose()
    })?;
    if !verify(old, kept.as_deref()) {
        return Err(OfficeError::unreadable("The password so far is not right. Go back and write it again."));
    }
    if old == new {
        return Err(OfficeError::unreadable("The new password is the old one. Choose another."));
    }
    let (hashed, now) = (hash(office, new)?, office.now());
    office.change(|tx| {
        tx.run(
            "UPDATE person SET password = $1, fresh = 0 WHERE id = $2",
            params![hashed.as_str(), person.id.as_str()],
        )?;
        audit::note(tx, now, &person.login, "password chosen", "", origin)
    })
}
