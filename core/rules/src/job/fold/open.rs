//! A job as the entry that opens it tells it.

use std::collections::BTreeSet;
use std::sync::Arc;

use super::super::{Heard, Job};
use crate::journal::{Entry, Fact};

impl Job {
    pub(super) fn opened(entry: &Entry) -> Option<Job> {
        let Fact::JobOpened {
            title,
            place,
            equipment,
            scope,
            system,
            earthing,
            order,
            nominal_millivolts,
            own,
            rules,
            limit,
            tolerance,
            company,
        } = &entry.body.fact
        else {
            return None;
        };
        Some(Job {
            stamp: entry.stamp(),
            site: entry.body.site,
            practice: entry.body.practice,
            // What of these rules cannot be asked here is another version's: nothing stands proved beside it.
            newer: match company {
                Some(rules) if super::super::company::fits(rules).is_err() => vec![entry.stamp()],
                _ => Vec::new(),
            },
            title: title.clone(),
            place: place.clone(),
            equipment: equipment.clone(),
            scope: scope.clone(),
            system: *system,
            earthing: *earthing,
            order: *order,
            nominal: *nominal_millivolts,
            own: own.clone(),
            rule_set: *rules,
            corrected: Vec::new(),
            stays_live: Vec::new(),
            limit: match company {
                Some(rules) => rules.tightened(limit.clone()),
                None => limit.clone(),
            },
            company: company.as_ref().map(|rules| Arc::new((**rules).clone())),
            company_heard: Vec::new(),
            limit_set: None,
            tolerance: *tolerance,
            zone: Vec::new(),
            zone_named: None,
            differs: Vec::new(),
            permit: None,
            workers: Vec::new(),
            told: Vec::new(),
            barriers: Vec::new(),
            sources: Vec::new(),
            elsewhere: Vec::new(),
            stored: Vec::new(),
            points: Vec::new(),
            boxes: Vec::new(),
            locks: Vec::new(),
            circuits: Vec::new(),
            no_circuits: None,
            instruments: Vec::new(),
            checks: Vec::new(),
            failures: Vec::new(),
            photos: Vec::new(),
            covers: Vec::new(),
            no_covers: None,
            runs: Vec::new(),
            voided: Vec::new(),
            troubles: Vec::new(),
            causes: Vec::new(),
            work: Vec::new(),
            finished: None,
            given_up: None,
            presence: Vec::new(),
            supply_answers: Vec::new(),
            rotation_found: None,
            rotation: None,
            shift: None,
            shift_taken: None,
            handed: None,
            given: Vec::new(),
            earths: Vec::new(),
            neutrals_parted: Vec::new(),
            deviations: Vec::new(),
            scopes: Vec::new(),
            unaware: BTreeSet::new(),
            heard: Heard::default(),
            withdrawn: Vec::new(),
            undone: Vec::new(),
            aside_answered: Vec::new(),
            known: None,
        })
    }
}
