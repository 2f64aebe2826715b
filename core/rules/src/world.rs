//! What all jobs of a device share: people, sites, instruments.

use std::collections::BTreeMap;
use std::sync::Arc;

use stillbar_journal::fact::{InstrumentKind, LightsFrom, Limit};
use stillbar_journal::{DeviceId, Entry, EntryId, Fact, Hlc, Stamp, WITHHELD, fingerprint};
use stillbar_values::company::{WhomToCall, call_read};
use stillbar_values::{CompanyRules, RuleSet};

/// People, sites and instruments by the entry that brought them.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct World {
    /// People.
    pub people: BTreeMap<EntryId, Person>,
    /// Sites by name.
    pub sites: BTreeMap<EntryId, String>,
    /// Instruments.
    pub instruments: BTreeMap<EntryId, Instrument>,
    /// The company's limit for figures that count as no indication, as it was set last.
    pub limit: Option<Limit>,
    /// The rules of the company at each site: of all versions that anybody wrote, the last in the journal's order.
    pub company: BTreeMap<EntryId, CompanyHeld>,
    /// Every version of a company's rules that was heard of, at any site and in any job.
    pub versions: VersionsHeard,
    /// By whose rules the last job was opened.
    pub rule_set: Option<RuleSet>,
    /// By whose rules the last job of each site was opened.
    pub site_rule_sets: BTreeMap<EntryId, RuleSet>,
}

/// The rules of a company that hold at a site.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CompanyHeld {
    /// Since when, and by whom.
    pub stamp: Stamp,
    /// The rules.
    pub rules: Arc<CompanyRules>,
    /// Whom to call.
    pub call: Vec<WhomToCall>,
}

/// The versions of companies' rules that were heard of: whose, what it is called, and the fingerprint of what it says, with the last that
/// told of it. Bounded: those that were told of last stay, in whatever order they come.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct VersionsHeard(BTreeMap<(String, String, String), (Hlc, DeviceId)>);

impl VersionsHeard {
    /// The most that are remembered: a new one each week for ten years. Ours, no source.
    pub const MAX: usize = 512;

    /// Whether this version of this company was heard of with other words.
    pub fn say_otherwise(&self, rules: &CompanyRules) -> bool {
        let own = fingerprint(rules);
        let same =
            |(company, version, _): &&(String, String, String)| (company, version) == (&rules.company, &rules.version);
        self.0.keys().filter(same).any(|(.., says)| *says != own)
    }

    fn hear(&mut self, rules: &CompanyRules, entry: &Entry) {
        let told = self
            .0
            .entry((rules.company.clone(), rules.version.clone(), fingerprint(rules)))
            .or_insert_with(|| entry.order());
        *told = entry.order().max(*told);
        if self.0.len() > Self::MAX {
            let oldest = self.0.iter().min_by_key(|(_, told)| **told).map(|(version, _)| version.clone());
            oldest.map(|version| self.0.remove(&version));
        }
    }
}

/// A person.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Person {
    /// Name.
    pub name: String,
    /// Qualification, as free text.
    pub qualification: String,
    /// Telephone.
    pub telephone: String,
}

/// An instrument.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Instrument {
    /// What it is for.
    pub kind: InstrumentKind,
    /// Its name.
    pub name: String,
    /// Its serial number.
    pub serial: String,
    /// Its lowest indication, where somebody said it.
    pub lights_from: Option<LightsFrom>,
}

impl World {
    /// Takes in an entry; entries about jobs change nothing here.
    pub fn extend(&mut self, entry: &Entry) {
        match &entry.body.fact {
            Fact::SiteNoted { name } => {
                self.sites.insert(entry.id, name.clone());
            }
            Fact::PersonNoted { name, qualification, telephone, corrects } => {
                let (name, qualification, telephone) = (name.clone(), qualification.clone(), telephone.clone());
                self.people.insert(corrects.unwrap_or(entry.id), Person { name, qualification, telephone });
            }
            Fact::InstrumentNoted { kind, name, serial, lights_from } => {
                let (name, serial) = (name.clone(), serial.clone());
                let instrument = Instrument { kind: *kind, name, serial, lights_from: *lights_from };
                self.instruments.insert(entry.id, instrument);
            }
            Fact::JobOpened { rules, company, .. } if !entry.body.practice => {
                if let Some(rules) = rules {
                    self.rule_set = Some(*rules);
                    self.site_rule_sets.extend(entry.body.site.map(|site| (site, *rules)));
                }
                if let Some(company) = company {
                    self.versions.hear(company, entry);
                }
            }
            Fact::LimitRuled { limit } => self.limit = Some(limit.clone()),
            Fact::CompanyRuled { rules, call } if !entry.body.practice => {
                let (Some(site), stamp) = (entry.body.site, entry.stamp()) else { return };
                self.versions.hear(rules, entry);
                let held = CompanyHeld { stamp, rules: Arc::new((**rules).clone()), call: call_read(call) };
                // Two devices may write one each, and entries come in any order: what counts is the same everywhere.
                let order = |stamp: &Stamp| (stamp.clock, stamp.device, stamp.id);
                if self.company.get(&site).is_none_or(|before| order(&before.stamp) < order(&stamp)) {
                    self.company.insert(site, held);
                }
            }
            _ => {}
        }
    }

    /// By whose rules jobs of the site of this name are done: those of its last job, or else of the last job anywhere.
    pub fn rules_at(&self, site: &str) -> Option<RuleSet> {
        self.sites_named(site).find_map(|id| self.site_rule_sets.get(&id)).copied().or(self.rule_set)
    }

    /// The sites of this name, without regard to capitals.
    pub fn sites_named(&self, site: &str) -> impl Iterator<Item = EntryId> {
        let site = site.trim().to_lowercase();
        self.sites.iter().filter(move |(_, name)| name.trim().to_lowercase() == site).map(|(id, _)| *id)
    }

    /// A person's name; by the entry that brought them where the name is not known here or withheld.
    pub fn name(&self, person: EntryId) -> String {
        let named = self.people.get(&person).filter(|p| p.name != WITHHELD);
        named.map_or_else(|| format!("person {}", person.short()), |p| p.name.clone())
    }

    /// A person's telephone; empty if none is kept.
    pub fn telephone(&self, person: EntryId) -> &str {
        self.people.get(&person).map_or("", |p| p.telephone.as_str())
    }
}
