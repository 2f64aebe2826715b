//! From entries to a report: one fold, and the same sentences as on the screens.

use std::collections::BTreeMap;
use std::sync::Arc;

use serde_json::json;
use sha2::{Digest, Sha256};

use super::claim::Claim;
use super::report::*;
use super::{tell_proof, tell_state};
use stillbar_journal::fact::{About, Duty};
use stillbar_journal::{DeviceId, Entry, EntryId, Fact, Stamp, WITHHELD, fingerprint};
use stillbar_rules::job::age::Moment;
use stillbar_rules::job::asked::GivenAnswer;
use stillbar_rules::job::{Job, Known};
use stillbar_rules::prove::volts;
use stillbar_rules::supply::Drawn;
use stillbar_rules::world::World;
use stillbar_text as text;
use stillbar_text::times::rfc3339;
use stillbar_text::{Reader, standing};

/// What whoever reads a record has to know, whatever is in it.
const CAUTIONS: [(&str, &str); 4] = [
    (
        "as-recorded",
        "This tells what was done and read, when, by whom and with what. It does not tell how anything is now: treat as live until you have \
     proved it yourself.",
    ),
    (
        "what-ends-a-proof",
        "A proof ends when a lock comes off, when a source, point, scope or shift changes, or when the work is left.",
    ),
    (
        "what-signatures-show",
        "Signatures and chain show which device wrote each entry, in which order, and that nothing was changed or taken out between. They do \
     not show that a reading or a photo tells the truth, and they name devices, not people.",
    ),
    ("whose-clocks", "Times are those of the devices' own clocks. Local rules and licensed practice come first."),
];

/// What `entries` tell of `job`: its own entries and those that they name. `None` if none of them opens it.
pub(super) fn report(job: EntryId, entries: &[Entry]) -> Option<Report> {
    let mut sorted: Vec<Entry> = entries.to_vec();
    sorted.sort_by_key(|e| (e.order(), e.id));
    sorted.dedup_by_key(|e| e.id);
    let (own, shared): (Vec<Entry>, Vec<Entry>) = sorted.into_iter().partition(|e| e.job() == Some(job));
    let mut folded = Job::fold(&own)?;
    if folded.id() != job {
        return None;
    }
    let (mut world, mut drawn) = (World::default(), Drawn::default());
    for entry in &shared {
        world.extend(entry);
        if entry.body.site.is_some() && entry.body.site == folded.site {
            drawn.extend(entry);
        }
    }
    folded.known = Some(Arc::new(of_entries(&folded, &world, &mut drawn)));
    let _speaking = by_rules(folded.rule_set);
    // As if looked at from another year: whatever names a time then names the date.
    let reader = Reader { world: &world, now: 0, zone: 0 };
    Some(Teller { job: &folded, reader: &reader, own: &own }.all())
}

/// What a record holds its job against: as at its last entry, and what the entries in it say of instruments and of the network that the job
/// rests on. What other jobs did to the same points is not in it.
fn of_entries(job: &Job, world: &World, drawn: &mut Drawn) -> Known {
    let mut known = Known::at(Moment::of(job.heard.latest().unwrap_or(&job.stamp)));
    known.know_instruments(world);
    known.know_network(job, drawn);
    known
}

/// What a report is made of.
pub(super) struct Teller<'a> {
    pub(super) job: &'a Job,
    pub(super) reader: &'a Reader<'a>,
    pub(super) own: &'a [Entry],
}

impl Teller<'_> {
    fn all(&self) -> Report {
        let job = self.job;
        let standing = standing(job, self.reader);
        let (state, with) = tell_state::state(job);
        // Code and sentence of the same list, one each.
        let codes = job.said_beside().iter().map(tell_state::beside).collect::<Vec<_>>();
        let beside = codes.into_iter().zip(standing.deviations).map(|(code, says)| Claim::of(code, says)).collect();
        let ends = |entry: Option<&Entry>| self.when(&entry.map_or(job.stamp, Entry::stamp));
        let (devices, head) = self.devices();
        Report {
            job: job.id().to_string(),
            title: job.title.clone(),
            place: job.place.clone(),
            site: job.site.and_then(|site| self.reader.world.sites.get(&site).cloned()),
            equipment: job.equipment.clone(),
            scope: job.scope.clone(),
            system: Claim::of(job.system, text::supply(&job.supply())),
            earthing: Claim::of(job.earthing, text::earthing(job.earthing)),
            order: Claim::of(job.order, text::order(job.order)),
            tolerance: self.tolerance(),
            rules: Claim::of(job.rule_set, text::defers(job.rule_set)),
            company: self.company(),
            nominal_volts: volts(job.nominal),
            dead_limit_volts: volts(job.limits().ac_mv),
            opened: ends(self.own.first()),
            last: ends(self.own.last()),
            state: ReportState {
                tone: standing.tone,
                word: Claim::of(state, standing.word),
                text: Claim::of(with, standing.text),
            },
            deviations: beside,
            cautions: self.cautions(),
            permit: job.permit.as_ref().map(|(stamp, permit)| Permit {
                reference: permit.as_ref().ok().cloned(),
                why_none: permit.as_ref().err().cloned(),
                when: self.when(stamp),
            }),
            people: self.people(),
            told: self.told(),
            barriers: job
                .barriers
                .iter()
                .map(|(stamp, what, at)| ReportSeen {
                    says: Claim::of(json!({ "what": what, "at": at }), format!("{what} at {at}")),
                    when: self.when(stamp),
                })
                .collect(),
            sources: self.sources(),
            stored: self.stored(),
            circuits: self.circuits(),
            answers: self.answers(),
            points: job.points.iter().map(|p| self.point(p)).collect(),
            boxes: self.boxes(),
            instruments: self.instruments(),
            earths: self.earths(),
            covers: self.covers(),
            runs: tell_proof::runs(self),
            readings: tell_proof::readings(self),
            work: tell_proof::work(self),
            hand_overs: self.hand_overs(),
            photos: self.photos(),
            time_line: self.time_line(&devices),
            devices: devices.into_values().collect(),
            head,
        }
    }

    /// The rules of the company that the job was done by. `heard`: the entry that brought them, where none were known when it was opened.
    fn company(&self) -> Option<Claim> {
        let rules = self.job.company.as_ref()?;
        let sha256 = fingerprint(rules);
        let mut code = json!({ "name": rules.company, "version": rules.version, "sha256": sha256 });
        let mut says = text::company_version(rules, &sha256);
        if let Some((heard, _)) = self.job.company_heard.first() {
            code["heard"] = json!(heard.id.to_string());
            let when = self.when(heard);
            says = format!(
                "none were known when this job was opened; since {}: {says}",
                when.at.get(..19).unwrap_or(&when.at).replacen('T', " ", 1)
            );
        }
        Some(Claim::of(code, says))
    }

    /// The band at the voltage that the system is named by, by whose standard, and where it is meant to hold.
    fn tolerance(&self) -> Claim {
        let job = self.job;
        let (least, most) = job.tolerance.band(f64::from(job.nominal) / 1000.0);
        let band = format!(
            "{}; at {} V that is {least:.1} to {most:.1} V",
            text::tolerance(job.tolerance),
            volts(job.nominal)
        );
        // Where the figures hold is that of the rules whose figures they are.
        let meant = job.rule_set.filter(|rules| rules.figures().tolerance == job.tolerance);
        let says = meant.map_or_else(|| band.clone(), |rules| format!("{band} ({})", text::rule_set(rules).measured));
        Claim::of(job.tolerance, says)
    }

    pub(super) fn when(&self, stamp: &Stamp) -> When {
        let by = stamp.by.map(|person| self.reader.name(person));
        let (at, no_pin) = (rfc3339(stamp.wall, stamp.zone), by.is_some() && stamp.no_pin());
        When { at, by, no_pin, entry: stamp.id.to_string() }
    }

    /// An entry by its kind, and its sentence.
    pub(super) fn said(&self, entry: &Entry) -> Claim {
        Claim::of(entry.body.fact.kind(), text::said(self.job, entry, self.reader.world))
    }

    /// An instrument by its entry, with its name and serial number.
    pub(super) fn instrument(&self, id: EntryId) -> Claim {
        let known = self.reader.world.instruments.get(&id);
        let (name, serial) = (known.map(|i| &i.name), known.map(|i| &i.serial));
        let code = json!({ "entry": id.to_string(), "name": name, "serial": serial });
        Claim::of(code, text::instrument(self.reader.world, id))
    }

    pub(super) fn maybe(&self, stamp: Option<&Stamp>) -> Option<When> {
        stamp.map(|stamp| self.when(stamp))
    }

    /// The last entry of this kind that was not withdrawn.
    pub(super) fn latest(&self, of: impl Fn(&Fact) -> bool) -> Option<When> {
        let found = self.own.iter().rev().find(|e| of(&e.body.fact) && self.withdrawn(e.id).is_none());
        found.map(|entry| self.when(&entry.stamp()))
    }

    pub(super) fn withdrawn(&self, id: EntryId) -> Option<String> {
        self.job.withdrawn.iter().find(|(_, entry, _)| *entry == id).map(|(_, _, why)| why.clone())
    }

    fn cautions(&self) -> Vec<Claim> {
        let mut all: Vec<Claim> = CAUTIONS.map(|(code, says)| Claim::of(code, says)).to_vec();
        let behind = self.own.iter().filter(|e| doubtful(e)).count();
        if behind > 0 {
            all.push(Claim::of(
                json!({ "clock-behind": behind }),
                format!(
                    "{behind} entries were written while a device's clock was behind: their times are in doubt, their order is not."
                ),
            ));
        }
        if self.reader.world.people.values().any(|p| p.name == WITHHELD) {
            all.push(Claim::of(
                "names-withheld",
                "Names are withheld here. The signatures cover them all the same, and who has them can show it.",
            ));
        }
        if self.job.handed.is_none() {
            all.push(Claim::of(
                "not-handed-back",
                "The job was not handed back when this was written. Ask on site what has changed since.",
            ));
        }
        all
    }

    fn people(&self) -> Vec<ReportPerson> {
        let world = self.reader.world;
        let person = |worker: &stillbar_rules::job::Worker| ReportPerson {
            person: worker.person.to_string(),
            name: world.name(worker.person),
            qualification: world.people.get(&worker.person).map(|p| p.qualification.clone()).unwrap_or_default(),
            duty: Claim::of(
                worker.duty,
                match worker.duty {
                    Duty::InCharge => "answers for the isolation",
                    Duty::Working => "works",
                    Duty::Learning => "learns under supervision",
                },
            ),
            joined: self.when(&worker.joined),
            left: self.maybe(worker.left.as_ref()),
        };
        self.job.workers.iter().map(person).collect()
    }

    fn told(&self) -> Vec<ReportTold> {
        let told = |told: &stillbar_rules::job::Told| ReportTold {
            who: told.who.clone(),
            how: told.how.clone(),
            about: Claim::of(
                told.about,
                match told.about {
                    About::Isolating => "that the supply goes off",
                    About::Energising => "that the supply comes back",
                },
            ),
            when: self.when(&told.stamp),
        };
        self.job.told.iter().map(told).collect()
    }

    fn sources(&self) -> Vec<Looked> {
        let looked = |s: &stillbar_rules::job::Source| Looked {
            what: Claim::of(s.kind, text::source_kind(s.kind)),
            found: s
                .found
                .as_ref()
                .map(|f| Claim::of(json!({ "what": f.what, "at": f.at }), format!("{} at {}", f.what, f.at))),
            looked: s.looked.clone(),
            when: self.when(&s.stamp),
        };
        self.job.sources.iter().map(looked).collect()
    }

    fn stored(&self) -> Vec<Looked> {
        let looked = |s: &stillbar_rules::job::Stored| Looked {
            what: Claim::of("stored-energy", "Stored energy"),
            found: s.found.as_ref().map(|f| {
                let mut code = json!({ "what": f.what, "at": f.at, "seconds": s.seconds });
                let mut says = format!("{} at {}, wait {}", f.what, f.at, text::waiting(s.seconds));
                if let Some(kind) = s.kind {
                    code["kind"] = json!(kind);
                }
                if let Some(label) = s.label {
                    code["label-seconds"] = json!(label);
                    says += &format!(" (its label: {})", text::waiting(label));
                }
                Claim::of(code, says)
            }),
            looked: s.looked.clone(),
            when: self.when(&s.stamp),
        };
        self.job.stored.iter().map(looked).collect()
    }

    fn circuits(&self) -> Vec<ReportCircuit> {
        let circuit = |c: &stillbar_rules::job::Circuit| ReportCircuit {
            label: c.label.clone(),
            serves: c.serves.clone(),
            off: self.maybe(c.off.as_ref().map(|(stamp, _)| stamp)),
            seen: c.off.as_ref().map(|(_, seen)| seen.clone()),
            on: self.maybe(c.on.as_ref()),
        };
        self.job.circuits.iter().map(circuit).collect()
    }

    fn answers(&self) -> Vec<ReportSeen> {
        let given = |g: &GivenAnswer| {
            let of = self.job.called(&g.of).unwrap_or_default();
            let part = g.of.part().map(|id| id.to_string());
            let mut code =
                json!({ "question": g.question, "answer": g.answer, "of": part, "who": g.who, "words": g.words });
            if let Some(read) = g.read {
                code["read"] = json!(read);
            }
            // In the words of the company: what was asked stands nowhere else in the claims.
            if let Some(point) = g.of.own() {
                code["point"] = json!({ "code": point, "text": of });
            }
            ReportSeen { says: Claim::of(code, text::given(g, &of)), when: self.when(&g.stamp) }
        };
        self.job.given.iter().map(given).collect()
    }

    fn instruments(&self) -> Vec<ReportInstrument> {
        let checked = |c: &stillbar_rules::job::Checked| ReportInstrument {
            name: self.instrument(c.instrument),
            faults: c.faults.iter().map(|fault| Claim::of(fault, text::fault(*fault))).collect(),
            note: c.note.clone(),
            when: self.when(&c.stamp),
        };
        self.job.instruments.iter().map(checked).collect()
    }

    fn covers(&self) -> Vec<Cover> {
        let cover = |(off, what, back): &(Stamp, String, Option<Stamp>)| Cover {
            what: what.clone(),
            off: self.when(off),
            back: self.maybe(back.as_ref()),
        };
        self.job.covers.iter().map(cover).collect()
    }

    fn hand_overs(&self) -> Vec<HandOver> {
        let mut all = Vec::new();
        for entry in self.own.iter().filter(|e| self.withdrawn(e.id).is_none()) {
            let by = Claim::named(entry.body.by.map(|person| self.reader.name(person)), "nobody named");
            let (says, signed, note, mark) = match &entry.body.fact {
                Fact::KeyTaken { mark, .. } => ("Lock and key taken over".to_owned(), by, String::new(), mark),
                Fact::ShiftTaken { mark, .. } => ("Shift taken over".into(), by, String::new(), mark),
                Fact::LockForced { lock, mark } => {
                    let at = self.job.lock(*lock).map(|l| text::place(self.job, l.on)).unwrap_or_default();
                    (format!("Lock taken off {at} in its owner's absence"), by, String::new(), mark)
                }
                Fact::HandedBack { to, note, mark } => {
                    ("Installation handed back".into(), Claim::named(Some(to.clone()), ""), note.clone(), mark)
                }
                _ => continue,
            };
            let what = Claim::of(entry.body.fact.kind(), says);
            all.push(HandOver { what, signed, note, mark: mark.clone(), when: self.when(&entry.stamp()) });
        }
        all
    }

    fn photos(&self) -> Vec<ReportPhoto> {
        let job = self.job;
        let shows = |id: EntryId| {
            let point = job.point(id).map(|p| p.label.clone());
            point.or_else(|| job.boxes.iter().find(|b| b.stamp.id == id).map(|b| b.label.clone()))
        };
        let photo = |p: &stillbar_rules::job::Photo| ReportPhoto {
            sha256: p.sha256.clone(),
            length: p.length,
            copies: p.copies.clone(),
            of: p.of.to_string(),
            shows: Claim::named(shows(p.of), "something that was withdrawn"),
            note: p.note.clone(),
            doubts: p
                .doubts
                .iter()
                .map(|d| Claim::of(d, text::photo_doubt(d, &shows(p.of).unwrap_or_default())))
                .collect(),
            tags: p.tags.iter().map(|t| t.spaced()).collect(),
            when: self.when(&p.stamp),
        };
        job.photos.iter().map(photo).collect()
    }

    fn time_line(&self, devices: &BTreeMap<DeviceId, Device>) -> Vec<Line> {
        let line = |(i, entry): (usize, &Entry)| Line {
            number: i + 1,
            device: devices.get(&entry.body.device).map_or(0, |d| d.number),
            seq: entry.body.seq,
            says: self.said(entry),
            withdrawn: self.withdrawn(entry.id),
            clock_in_doubt: doubtful(entry),
            when: self.when(&entry.stamp()),
        };
        self.own.iter().enumerate().map(line).collect()
    }

    /// The devices, and what names this state of the job: SHA-256 over key, number and id of each one's last entry, in the order of the keys.
    fn devices(&self) -> (BTreeMap<DeviceId, Device>, String) {
        let mut devices: BTreeMap<DeviceId, Device> = BTreeMap::new();
        let mut last: BTreeMap<DeviceId, &Entry> = BTreeMap::new();
        for entry in self.own {
            let number = devices.len() + 1;
            let device = devices.entry(entry.body.device).or_insert_with(|| Device {
                number,
                device: entry.body.device.to_string(),
                entries: 0,
                last_seq: 0,
                last: String::new(),
            });
            device.entries += 1;
            if entry.body.seq >= device.last_seq {
                (device.last_seq, device.last) = (entry.body.seq, entry.id.to_string());
                last.insert(entry.body.device, entry);
            }
        }
        let mut head = Sha256::new();
        for (device, entry) in &last {
            head.update(device.0);
            head.update(entry.body.seq.to_be_bytes());
            head.update(entry.id.0);
        }
        (devices, EntryId(head.finalize().into()).to_string())
    }
}

fn doubtful(entry: &Entry) -> bool {
    entry.body.clock.0.saturating_sub(entry.body.wall) > 60_000
}
