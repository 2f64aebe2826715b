//! The rules of a company at a site: what holds, what held before, and a file that is brought in.

use std::sync::Arc;

use stillbar_core::company::{CompanyRules, call_written};
use stillbar_core::job::company::{CompanyFile, takes};
use stillbar_core::journal::{EntryId, Fact, Stamp, fingerprint};
use stillbar_core::text;
use stillbar_core::world::{CompanyHeld, World};

use super::plan::{chain_on, keep, noted, write};
use super::{shared, world};
use crate::audit;
use crate::error::OfficeError;
use crate::office::Office;
use crate::people::Account;

/// Most versions that are told, the latest of them.
const MAX_TOLD: usize = 50;

/// What a company ruled for a site, as it is known here.
pub struct SiteCompany {
    /// What holds.
    pub held: Option<CompanyHeld>,
    /// Every version that was written, latest first: when, by whom, what it is called.
    pub versions: Vec<CompanyVersion>,
}

/// One version.
pub struct CompanyVersion {
    /// When.
    pub stamp: Stamp,
    /// By whom.
    pub by: String,
    /// The rules.
    pub rules: Arc<CompanyRules>,
}

/// What a company ruled for a site.
pub fn company(office: &Office, site: EntryId) -> Result<SiteCompany, OfficeError> {
    office.read(|tx| {
        let entries = shared(tx, site)?;
        let mut world = World::default();
        entries.iter().for_each(|entry| world.extend(entry));
        let told = entries.iter().rev().filter(|e| e.body.site == Some(site) && !e.body.practice);
        let versions = told.filter_map(|entry| match &entry.body.fact {
            Fact::CompanyRuled { rules, .. } => Some(CompanyVersion {
                stamp: entry.stamp(),
                by: entry.body.by.map_or_else(|| "nobody named".to_owned(), |person| world.name(person)),
                rules: Arc::new((**rules).clone()),
            }),
            _ => None,
        });
        let versions = versions.take(MAX_TOLD).collect();
        Ok(SiteCompany { held: world.company.remove(&site), versions })
    })
}

/// Writes the rules of a file for a site, in a person's name. They reach its phones as the network does.
pub fn take_company(
    office: &Office,
    person: &Account,
    site: EntryId,
    file: &CompanyFile,
    origin: &str,
) -> Result<(), OfficeError> {
    office.change(|tx| {
        let mut chain = chain_on(office, tx, site)?;
        takes(&world(tx, site)?, site, &file.rules, &file.call)
            .map_err(|wrong| OfficeError::unreadable(text::capital(&text::company_wrong(&wrong))))?;
        let mut entries = Vec::with_capacity(2);
        let by = noted(office, tx, &mut chain, person, &mut entries)?;
        let fact = Fact::CompanyRuled { rules: Box::new(file.rules.clone()), call: call_written(&file.call) };
        entries.push(write(office, &mut chain, Some(site), None, Some(by), fact)?);
        keep(office, tx, &chain, &entries)?;
        let told = format!("{}, {site}", text::company_version(&file.rules, &fingerprint(&file.rules)));
        audit::note(tx, office.now(), &person.login, "company rules brought in", &told, origin)
    })
}
