//! A phone of the tests: its key, its chain, and the calls of docs/exchange.md. It keeps nothing on disk and knows no rule.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use serde_json::{Value, json};
use stillbar_core::journal::fact::{KeyAt, On};
use stillbar_core::journal::{Body, Clock, DeviceId, DeviceKey, Entry, EntryId, Fact, SignedOn, VERSION};
use stillbar_core::point::{Means, PointKind};
use stillbar_core::prove::judge::energised::Tolerance;
use stillbar_core::prove::{Earthing, Order, System};

use crate::rig::{Answer, NOW, Rig};

/// A phone.
pub struct Phone {
    pub key: DeviceKey,
    pub token: String,
    pub chain: Vec<Entry>,
    clock: Clock,
    /// What its clock reads.
    pub wall: i64,
    /// Who has it in hand.
    pub by: Option<EntryId>,
    /// How it is known that they have the phone.
    pub signed_on: Option<SignedOn>,
}

/// An entry on the wire.
pub fn wire(entry: &Entry) -> Value {
    json!({"body": STANDARD.encode(&entry.bytes), "sig": STANDARD.encode(entry.signature)})
}

/// Entries from the wire; each is checked as a phone does.
pub fn entries(page: &Value) -> Vec<Entry> {
    let read = |e: &Value| {
        let bytes = |name: &str| STANDARD.decode(e[name].as_str().expect("text")).expect("base64");
        Entry::open(bytes("body"), bytes("sig").try_into().expect("64 bytes")).expect("an entry that holds")
    };
    page["entries"].as_array().expect("a list").iter().map(read).collect()
}

impl Phone {
    pub fn new(number: u8) -> Phone {
        Phone::of(DeviceKey::from_secret(&[number; 32]).expect("32 bytes"))
    }

    /// With a key that somebody else has as well.
    pub fn of(key: DeviceKey) -> Phone {
        Phone {
            key,
            token: String::new(),
            chain: Vec::new(),
            clock: Clock::default(),
            wall: NOW,
            by: None,
            signed_on: None,
        }
    }

    pub fn id(&self) -> DeviceId {
        self.key.device()
    }

    /// Asks for a token.
    pub fn enrol(&mut self, rig: &Rig, code: &str) -> Answer {
        let sig = self.key.sign(format!("stillbar-enrol-1:{code}").as_bytes());
        let ask =
            json!({"code": code, "device": self.id().to_string(), "label": "A phone", "sig": STANDARD.encode(sig)});
        let answer = rig.ask("POST", "/enrol", &[("content-type", "application/json")], ask.to_string());
        if answer.status.is_success() {
            self.token = answer.json()["token"].as_str().expect("a token").to_owned();
        }
        answer
    }

    /// Writes an entry at the end of its chain.
    pub fn write(&mut self, site: Option<EntryId>, job: Option<EntryId>, fact: Fact) -> EntryId {
        self.wall += 1000;
        let (seq, prev) = self.chain.last().map_or((0, EntryId::NONE), |e| (e.body.seq, e.id));
        let body = Body {
            version: VERSION,
            device: self.id(),
            seq: seq + 1,
            clock: self.clock.tick(self.wall),
            wall: self.wall,
            zone: 60,
            running: None,
            prev,
            after: None,
            site,
            job,
            by: self.by,
            signed_on: self.signed_on,
            practice: false,
            seen: Vec::new(),
            fact,
        };
        let entry = Entry::seal(body, &self.key, &|count| vec![7; count as usize]).expect("it can be written");
        self.chain.push(entry);
        self.chain[self.chain.len() - 1].id
    }

    /// A person who has the phone in hand from now on.
    pub fn person(&mut self, name: &str) -> EntryId {
        let fact = Fact::PersonNoted {
            name: name.into(),
            qualification: "Electrician".into(),
            telephone: "555 0100".into(),
            corrects: None,
        };
        let id = self.write(None, None, fact);
        self.by = Some(id);
        id
    }

    pub fn site(&mut self, name: &str) -> EntryId {
        self.write(None, None, Fact::SiteNoted { name: name.into() })
    }

    pub fn job(&mut self, site: EntryId, title: &str) -> EntryId {
        let fact = Fact::JobOpened {
            title: title.into(),
            place: "Plant room".into(),
            equipment: "DB1".into(),
            scope: "One breaker".into(),
            system: System::ALL[0],
            earthing: Earthing::ALL[0],
            order: Order::ALL[0],
            nominal_millivolts: 230_000,
            own: Vec::new(),
            rules: None,
            limit: None,
            tolerance: Tolerance::default(),
            company: None,
        };
        self.write(Some(site), None, fact)
    }

    pub fn point(&mut self, site: EntryId, job: EntryId, label: &str) -> EntryId {
        let fact = Fact::PointAdded {
            label: label.into(),
            at: "Bay 4".into(),
            kind: PointKind::ALL[0],
            lockable: true,
            poles: vec!["L1".into()],
            cuts: None,
            switch: None,
            stays_open: false,
            same_as: None,
        };
        self.write(Some(site), Some(job), fact)
    }

    pub fn lock(&mut self, site: EntryId, job: EntryId, point: EntryId, label: &str) -> EntryId {
        let fact = Fact::LockFitted {
            on: On::Point(point),
            owner: self.by.expect("somebody has it in hand"),
            label: label.into(),
            key: KeyAt::Owner,
            means: Means::Padlock,
            through: None,
        };
        self.write(Some(site), Some(job), fact)
    }

    pub fn told(&mut self, site: EntryId, job: EntryId, who: &str) -> EntryId {
        let about = stillbar_core::journal::fact::About::Isolating;
        self.write(Some(site), Some(job), Fact::Told { who: who.into(), how: "Telephone".into(), about })
    }

    pub fn photo(&mut self, site: EntryId, job: EntryId, of: EntryId, bytes: &[u8]) -> String {
        let sha256 = stillbar_core::evidence::sha256(bytes);
        let fact = Fact::PhotoTaken {
            sha256: sha256.clone(),
            length: bytes.len() as u64,
            media: "image/png".into(),
            of,
            note: String::new(),
            tags: Vec::new(),
            doubts: Vec::new(),
            copies: Vec::new(),
        };
        self.write(Some(site), Some(job), fact);
        sha256
    }

    /// Calls with its token.
    pub fn ask(
        &self,
        rig: &Rig,
        method: &str,
        path: &str,
        headers: &[(&str, &str)],
        body: impl Into<Vec<u8>>,
    ) -> Answer {
        let bearer = format!("Bearer {}", self.token);
        let mut all = vec![("authorization", bearer.as_str())];
        all.extend_from_slice(headers);
        rig.ask(method, path, &all, body.into())
    }

    /// Pushes `entries` of the chain of `of`.
    pub fn push_of(&self, rig: &Rig, of: Option<DeviceId>, entries: &[Entry]) -> Answer {
        let path = of.map_or_else(|| "/entries".to_owned(), |of| format!("/entries?of={of}"));
        let body = json!({"entries": entries.iter().map(wire).collect::<Vec<_>>()}).to_string();
        self.ask(rig, "POST", &path, &[("content-type", "application/json")], body)
    }

    /// Pushes `entries` of its own; the answers as `accepted`, `refused gap`, ...
    pub fn push(&self, rig: &Rig, entries: &[Entry]) -> Vec<String> {
        answers(&self.push_of(rig, None, entries).is(200).json())
    }

    /// Pushes all it has; every entry must be taken.
    pub fn push_all(&self, rig: &Rig) {
        for part in self.chain.chunks(500) {
            let said = self.push(rig, part);
            assert!(said.iter().all(|a| a == "accepted" || a == "duplicate"), "{said:?}");
        }
    }

    /// All that its sites have, page by page.
    pub fn pull(&self, rig: &Rig, limit: usize) -> Vec<Entry> {
        let (mut found, mut after) = (Vec::new(), String::new());
        loop {
            let page = self.ask(rig, "GET", &format!("/entries?after={after}&limit={limit}"), &[], "").is(200).json();
            found.extend(entries(&page));
            after = page["next"].as_str().expect("a cursor").to_owned();
            if page["more"] == false {
                return found;
            }
        }
    }
}

/// Answers as text.
pub fn answers(said: &Value) -> Vec<String> {
    let list = said["answers"].as_array().expect("a list");
    let text = |a: &Value| format!("{} {}", a["answer"].as_str().unwrap_or(""), a["reason"].as_str().unwrap_or(""));
    list.iter().map(|a| text(a).trim().to_owned()).collect()
}
