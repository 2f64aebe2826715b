//! Every system, from what docs/systems.md promises: circuits that are solved here say what stands between its conductors, whole stories go
//! through the screens, a wrong choice is corrected, and what is no low voltage is refused.

mod asked;
mod circuit;
mod corrected;
mod countries;
mod drawn;
mod gate;
mod live;
mod nodal;
mod own;
mod plants;
mod stories;
mod story;
mod wrong;

use std::sync::Arc;

use stillbar_core::Field;
use stillbar_core::job::Job;
use stillbar_core::journal::fact::Duty;
use stillbar_core::journal::{Entry, EntryId, Fact};
use stillbar_core::prove::judge::energised::Tolerance;
use stillbar_core::prove::{Conductor, Earthing, Order, System};

use crate::desk::*;

/// A device on which jobs are opened by their facts, for what a job says of its system before anything is done.
pub struct Office {
    _folder: tempfile::TempDir,
    field: Arc<Field>,
    mara: EntryId,
}

impl Office {
    pub fn open() -> Office {
        let (folder, _device, field) = begun(&[PEOPLE]);
        let named = |e: &Entry| matches!(&e.body.fact, Fact::PersonNoted { name, .. } if name == "Mara Lind");
        let mara = field.entries().unwrap().iter().find(|e| named(e)).unwrap().id;
        Office { _folder: folder, field, mara }
    }

    /// Tries to open a job.
    pub fn tries(&self, system: System, volts: f64, earthing: Earthing, own: &[Conductor]) -> Result<EntryId, String> {
        let opened = Fact::JobOpened {
            title: "Replace the outgoing breaker".into(),
            place: "Plant room 2".into(),
            equipment: "Distribution board DB4".into(),
            scope: "One breaker and its tails".into(),
            system,
            earthing,
            order: Order::default(),
            nominal_millivolts: (volts * 1000.0).round() as u32,
            own: own.to_vec(),
            rules: None,
            limit: None,
            tolerance: Tolerance::default(),
            company: None,
        };
        self.field.keep(self.mara, None, opened).map_err(|why| why.to_string())
    }

    /// A job of this system, of which this was answered.
    pub fn job(&self, system: System, volts: f64, earthing: Earthing, answer: Option<(&str, &str)>) -> Job {
        let id = self.tries(system, volts, earthing, &[]).unwrap();
        self.keep(id, Fact::WorkerJoined { person: self.mara, duty: Duty::InCharge }).unwrap();
        if let Some((question, answer)) = answer {
            let (question, answer) = (question.to_owned(), answer.to_owned());
            let (words, who) = ("Each was read at the meter".to_owned(), String::new());
            self.keep(id, Fact::Answered { question, answer, of: None, point: None, words, who, read: None }).unwrap();
        }
        self.folded(id)
    }

    pub fn keep(&self, job: EntryId, fact: Fact) -> Result<EntryId, String> {
        self.field.keep(self.mara, Some(job), fact).map_err(|why| why.to_string())
    }

    pub fn folded(&self, job: EntryId) -> Job {
        let of_it = |e: &Entry| e.job() == Some(job);
        let entries: Vec<Entry> = self.field.entries().unwrap().into_iter().filter(of_it).collect();
        Job::fold(&entries).unwrap()
    }
}
