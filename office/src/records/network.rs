//! The supply network of a site: as its journal tells it, and brought in from a file that was drawn elsewhere.

use stillbar_core::job::Job;
use stillbar_core::journal::EntryId;
use stillbar_core::parts::Drawing;
use stillbar_core::supply::{Drawn, MAX_NOTED, Network, Shown, own_locks};
use stillbar_core::text;

use super::plan::{chain_on, keep, noted, write};
use super::{drawn, entries_of};
use crate::error::OfficeError;
use crate::office::Office;
use crate::people::Account;
use crate::{audit, params};

/// Open jobs whose locks are looked at for one drawing.
const MAX_JOBS: usize = 200;

/// A site's network as it is known here.
pub struct SiteSupply {
    /// What people noted.
    pub drawn: Drawn,
    /// Its drawing, with the locks of open jobs as last heard.
    pub drawing: Drawing,
    /// What the drawing shows, in words.
    pub words: String,
}

/// The network of a site; `None` if nothing is drawn.
pub fn supply(office: &Office, site: EntryId) -> Result<Option<SiteSupply>, OfficeError> {
    office.read(|tx| {
        let mut drawn = drawn(tx, site)?;
        if drawn.is_empty() {
            return Ok(None);
        }
        let mut locked = Vec::new();
        let sql = "SELECT id FROM job WHERE site = $1 AND done = 0 ORDER BY opened_ms DESC LIMIT $2";
        for row in tx.rows(sql, params![site, MAX_JOBS])? {
            if let Some(job) = Job::fold(&entries_of(tx, site, row.id(0)?)?) {
                locked.extend(own_locks(&job));
            }
        }
        let states: Vec<_> = drawn.states().iter().map(|(id, at)| (id.clone(), *at)).collect();
        let shown = Shown { locked: &locked, states: &states, ..Shown::default() };
        let (drawing, words) = text::draw(&drawn.network(), &shown);
        Ok(Some(SiteSupply { drawn, drawing, words }))
    })
}

/// Notes all of `network` that is not known of the site, or known otherwise, in a person's name. How many parts that were.
pub fn take_network(
    office: &Office,
    person: &Account,
    site: EntryId,
    network: &Network,
    origin: &str,
) -> Result<usize, OfficeError> {
    if network.nodes().len() > MAX_NOTED || network.links().len() > MAX_NOTED {
        return Err(OfficeError::unreadable(format!(
            "A site's network takes at most {MAX_NOTED} parts of each kind. Leave out what is far from the work."
        )));
    }
    office.change(|tx| {
        let mut chain = chain_on(office, tx, site)?;
        let drawn = drawn(tx, site)?;
        drawn.fits(network.nodes(), network.links()).map_err(|why| OfficeError::unreadable(text::misfit(&why)))?;
        let facts = drawn.lacks(network);
        if facts.is_empty() {
            return Ok(0);
        }
        let mut entries = Vec::with_capacity(facts.len() + 1);
        let by = noted(office, tx, &mut chain, person, &mut entries)?;
        let parts = facts.len();
        for fact in facts {
            entries.push(write(office, &mut chain, Some(site), None, Some(by), fact)?);
        }
        keep(office, tx, &chain, &entries)?;
        audit::note(tx, office.now(), &person.login, "network brought in", &format!("{parts} parts, {site}"), origin)?;
        Ok(parts)
    })
}
