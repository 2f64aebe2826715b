//! What the office answers to one entry: a pure function, and its whole table of cases.
//!
//! The table is printed into docs/conflicts.md; a test holds the file against it.

use std::fmt::Write;

pub use stillbar_protocol::Why;

/// Whether the bytes are an entry.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OfferShape {
    /// Length, encoding and signature hold.
    Entry,
    /// One of them does not.
    Foreign,
}

/// Who wrote it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Writer {
    /// The device whose chain is being sent, and it is enrolled.
    Named,
    /// The device whose chain is being handed on, and it is not enrolled here.
    Stranger,
    /// Another device than the call is about.
    Other,
}

/// Where it stands in its device's chain.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ChainPlace {
    /// The next number, and it names the last entry as the one before.
    Next,
    /// It is here already.
    Here,
    /// It is here already, and kept aside.
    HereAside,
    /// Another entry has its number.
    Fork,
    /// It follows an entry in quarantine.
    OnFork,
    /// Entries before it are missing.
    Gap,
}

/// What the office holds of the device.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DeviceStanding {
    /// Nothing against it.
    Trusted,
    /// An entry of it came from the future, and no person released it yet.
    Held,
    /// It was withdrawn.
    Withdrawn,
}

/// Its time beside the office's clock.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Time {
    /// At most 24 hours ahead.
    Near,
    /// More than 24 hours ahead.
    Ahead,
}

/// Its site.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ground {
    /// It belongs to no site: a person, an instrument, the device.
    None,
    /// It begins a site.
    Begins,
    /// A site of the device.
    Own,
    /// A site that is not the device's, or that is not known here.
    Foreign,
}

/// One case.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Offer {
    /// Whether the bytes are an entry.
    pub shape: OfferShape,
    /// Who wrote it.
    pub writer: Writer,
    /// Where it stands in its device's chain.
    pub place: ChainPlace,
    /// What the office holds of the device.
    pub standing: DeviceStanding,
    /// Its time.
    pub time: Time,
    /// Its site.
    pub ground: Ground,
}

/// A reason for a person at the office.
pub fn say(why: Why) -> &'static str {
    match why {
        Why::NotAnEntry => "Its length, encoding or signature does not hold.",
        Why::NotYours => "It was written by another device than the one that was named.",
        Why::Fork => "Another entry of this device has the same number: the device, or a copy of it, went two ways.",
        Why::Gap => "Entries before it are missing.",
        Why::AfterARefusal => "An entry before it was refused.",
        Why::QuarantineFull => "More entries of this device are in quarantine than are kept.",
        Why::UnknownDevice => "The device that wrote it is not enrolled here.",
        Why::Withdrawn => "It came after its device was withdrawn.",
        Why::Ahead => "Its time is more than 24 hours ahead of the office's clock.",
        Why::Held => "An earlier entry of this device was from the future, and nobody released it yet.",
        Why::Ground => "Its site is not one of this device's.",
        Why::Unknown => "A newer version of the office kept it back, for a reason that this one does not know.",
    }
}

/// The answer to one entry.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Answer {
    /// It is in the chain and in its feeds.
    Accepted,
    /// It was here already.
    Duplicate,
    /// It is not taken. What goes to quarantine is kept all the same.
    Refused(Why),
    /// It is in the chain, and in no feed until a person releases it.
    Aside(Why),
    /// It is aside already, for the reason that was given then.
    StillAside,
}

/// One row of the table: what is `None` may be anything.
#[derive(Debug, Clone, Copy)]
pub struct Rule {
    /// Whether the bytes are an entry.
    pub shape: Option<OfferShape>,
    /// Who wrote it.
    pub writer: Option<Writer>,
    /// Where it stands.
    pub place: Option<ChainPlace>,
    /// What is held of the device.
    pub standing: Option<DeviceStanding>,
    /// Its time.
    pub time: Option<Time>,
    /// Its site.
    pub ground: Option<Ground>,
    /// The answer.
    pub answer: Answer,
}

const ANY: Rule = Rule {
    shape: None,
    writer: None,
    place: None,
    standing: None,
    time: None,
    ground: None,
    answer: Answer::Refused(Why::NotAnEntry),
};

/// The whole table. The first row that fits answers.
pub const RULES: [Rule; 15] = [
    Rule { shape: Some(OfferShape::Foreign), answer: Answer::Refused(Why::NotAnEntry), ..ANY },
    Rule { writer: Some(Writer::Other), answer: Answer::Refused(Why::NotYours), ..ANY },
    Rule { place: Some(ChainPlace::Here), answer: Answer::Duplicate, ..ANY },
    Rule { place: Some(ChainPlace::HereAside), answer: Answer::StillAside, ..ANY },
    Rule { place: Some(ChainPlace::Fork), answer: Answer::Refused(Why::Fork), ..ANY },
    Rule { place: Some(ChainPlace::OnFork), answer: Answer::Refused(Why::Fork), ..ANY },
    Rule { place: Some(ChainPlace::Gap), answer: Answer::Refused(Why::Gap), ..ANY },
    Rule { writer: Some(Writer::Stranger), answer: Answer::Aside(Why::UnknownDevice), ..ANY },
    Rule { standing: Some(DeviceStanding::Withdrawn), answer: Answer::Aside(Why::Withdrawn), ..ANY },
    Rule { time: Some(Time::Ahead), answer: Answer::Aside(Why::Ahead), ..ANY },
    Rule { standing: Some(DeviceStanding::Held), answer: Answer::Aside(Why::Held), ..ANY },
    Rule { ground: Some(Ground::Foreign), answer: Answer::Aside(Why::Ground), ..ANY },
    Rule { ground: Some(Ground::Begins), answer: Answer::Accepted, ..ANY },
    Rule { ground: Some(Ground::Own), answer: Answer::Accepted, ..ANY },
    Rule { ground: Some(Ground::None), answer: Answer::Accepted, ..ANY },
];

impl Rule {
    /// Whether this row is about `case`.
    pub fn fits(&self, case: &Offer) -> bool {
        fn same<T: PartialEq>(rule: &Option<T>, case: &T) -> bool {
            rule.as_ref().is_none_or(|r| r == case)
        }
        same(&self.shape, &case.shape)
            && same(&self.writer, &case.writer)
            && same(&self.place, &case.place)
            && same(&self.standing, &case.standing)
            && same(&self.time, &case.time)
            && same(&self.ground, &case.ground)
    }
}

/// The answer to `case`.
pub fn answer(case: &Offer) -> Answer {
    RULES.iter().find(|r| r.fits(case)).map_or(Answer::Refused(Why::NotAnEntry), |r| r.answer)
}

/// The table for docs/conflicts.md.
pub fn table() -> String {
    let mut out = String::from(
        "| the bytes | written by | place in the chain | the device | its time | its site | answer |\n\
         |---|---|---|---|---|---|---|\n",
    );
    for rule in &RULES {
        let shape = rule.shape.map_or("", |s| match s {
            OfferShape::Entry => "an entry",
            OfferShape::Foreign => "no entry: length, encoding or signature",
        });
        let writer = rule.writer.map_or("", |w| match w {
            Writer::Named => "the device named",
            Writer::Stranger => "a device not enrolled here, handed on",
            Writer::Other => "another device than the call names",
        });
        let place = rule.place.map_or("", |p| match p {
            ChainPlace::Next => "next",
            ChainPlace::Here => "here already",
            ChainPlace::HereAside => "here already, aside",
            ChainPlace::Fork => "another entry has its number",
            ChainPlace::OnFork => "follows one in quarantine",
            ChainPlace::Gap => "entries before it are missing",
        });
        let standing = rule.standing.map_or("", |s| match s {
            DeviceStanding::Trusted => "trusted",
            DeviceStanding::Held => "held back",
            DeviceStanding::Withdrawn => "withdrawn",
        });
        let time = rule.time.map_or("", |t| match t {
            Time::Near => "at most 24 h ahead",
            Time::Ahead => "more than 24 h ahead",
        });
        let ground = rule.ground.map_or("", |g| match g {
            Ground::None => "none",
            Ground::Begins => "it begins one",
            Ground::Own => "the device's",
            Ground::Foreign => "not the device's, or not known",
        });
        let answer = match rule.answer {
            Answer::Accepted => "**accepted**".to_owned(),
            Answer::Duplicate => "**duplicate**".to_owned(),
            Answer::Refused(why) if why == Why::Fork => {
                format!("**refused** `{}`, kept in quarantine", why.word())
            }
            Answer::Refused(why) => format!("**refused** `{}`", why.word()),
            Answer::Aside(why) => format!("**aside** `{}`", why.word()),
            Answer::StillAside => "**aside**, for the reason given then".to_owned(),
        };
        let _ = writeln!(out, "| {shape} | {writer} | {place} | {standing} | {time} | {ground} | {answer} |");
    }
    out
}
