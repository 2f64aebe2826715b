//! What people keep without a screen, one fact at a time: through the same gate as from a screen.

use stillbar_core::job::Job;
use stillbar_core::job::asked::{Answer, Does, Question};
use stillbar_core::job::steps::Step;
use stillbar_core::journal::fact::{Duty, EarthProof, Found, InstrumentKind, KeyAt, On, ProvedOn, SourceKind};
use stillbar_core::journal::{Entry, EntryId, Fact};
use stillbar_core::point::{Means, PointKind};
use stillbar_core::prove::judge::energised::Tolerance;
use stillbar_core::prove::{Earthing, Measured, Order, Reading, System, Test};
use stillbar_core::supply::Position;

use crate::desk::*;
use crate::forgotten::Phone;

pub const MINUTE: i64 = 60_000;
pub const HOUR: i64 = 60 * MINUTE;
pub const DAY: i64 = 24 * HOUR;
pub const MARA: &str = "Mara Lind";
pub const TOMAS: &str = "Tomas Brandt";
pub const IDA: &str = "Ida Holm";
pub const JOEL: &str = "Joel Aras";
pub const TITLE: &str = "Replace the outgoing breaker of washer 4";
/// Nothing that another person understands.
pub const JUNK: [&str; 5] = [".", ".....", "-----", "\u{200b}\u{200b}\u{200b}\u{200b}\u{200b}", "12345"];

pub fn until<'a>(script: &'a str, line: &str) -> &'a str {
    &script[..script.find(line).unwrap_or_else(|| panic!("no {line}"))]
}

/// The cover comes off, and nothing more of the proof.
pub fn cover_off() -> &'static str {
    until(PROVE, "tap Next: Prove the indicator")
}

/// A job with its points locked and the covers off.
pub fn opened_up() -> Phone {
    Phone::begun(&[PEOPLE, PLAN, ISOLATE, cover_off()])
}

pub fn find(phone: &Phone, wanted: impl Fn(&Fact) -> bool) -> EntryId {
    phone.field().entries().unwrap().iter().find(|e| wanted(&e.body.fact)).expect("such an entry").id
}

pub fn point(phone: &Phone, name: &str) -> EntryId {
    find(phone, |f| matches!(f, Fact::PointAdded { label, .. } if label == name))
}

pub fn lock(phone: &Phone, name: &str) -> EntryId {
    find(phone, |f| matches!(f, Fact::LockFitted { label, .. } if label == name))
}

fn instrument(phone: &Phone, number: &str) -> EntryId {
    find(phone, |f| matches!(f, Fact::InstrumentNoted { serial, .. } if serial == number))
}

/// The indicator of the plan.
pub fn tester(phone: &Phone) -> EntryId {
    instrument(phone, "40771")
}

pub fn unit(phone: &Phone) -> ProvedOn {
    ProvedOn::ProvingUnit(instrument(phone, "9083"))
}

/// What the gate says to a fact of the job, kept in this person's name.
pub fn tries(phone: &Phone, who: &str, fact: Fact) -> Result<EntryId, String> {
    phone.field().keep(phone.person(who), Some(phone.job()), fact).map_err(|why| why.to_string())
}

pub fn keeps(phone: &Phone, who: &str, fact: Fact) -> EntryId {
    let shown = format!("{fact:?}");
    tries(phone, who, fact).unwrap_or_else(|why| panic!("{why}: {shown}"))
}

/// Junk is refused wherever a reason is asked for; the same fact with words is kept.
pub fn only_with_words(phone: &Phone, who: &str, fact: impl Fn(&str) -> Fact) {
    for junk in JUNK {
        assert!(tries(phone, who, fact(junk)).is_err(), "{junk:?} was kept: {:?}", fact(junk));
    }
    keeps(phone, who, fact("Seen at the board by two"));
}

/// The word and the sentence at the top of the job's screens, and all that stands beside them.
pub fn banner(phone: &Phone) -> String {
    phone.field().standing_says(phone.job())
}

/// What page one of the record says beside what stands proved.
pub fn page_one(phone: &Phone) -> String {
    let made = stillbar_core::app::of_folder(phone.folder.path(), &*phone.device, TITLE, false).unwrap();
    made.report().deviations.iter().map(|d| d.says()).collect::<Vec<_>>().join("\n")
}

/// The pairs that the job asks for now.
pub fn pairs(phone: &Phone) -> Vec<Test> {
    let job = phone.job();
    let entries: Vec<Entry> = phone.field().entries().unwrap().into_iter().filter(|e| e.job() == Some(job)).collect();
    Job::fold(&entries).unwrap().plan()
}

pub fn first_proof(phone: &Phone, works: bool) -> Fact {
    Fact::IndicatorProved { run: None, indicator: tester(phone), on: unit(phone), works }
}

pub fn earth(run: EntryId, holds: bool) -> Fact {
    Fact::ReferenceProved { run, way: EarthProof::MainTerminal, how: "MET in the meter room".into(), holds }
}

/// An answer with which everything goes on; no earth is fitted here.
fn goes(question: &Question) -> &'static str {
    let goes = |a: &&Answer| a.does == Does::Goes && a.code != "fitted";
    question.answers.iter().find(goes).expect("one that goes").code
}

/// What is asked up to this step is answered so that everything goes on.
pub fn answers(phone: &Phone, who: &str, last: Step) {
    let job = phone.job();
    loop {
        let entries: Vec<Entry> =
            phone.field().entries().unwrap().into_iter().filter(|e| e.job() == Some(job)).collect();
        let job = Job::fold(&entries).unwrap();
        let steps = job.sequence().into_iter().filter(|step| *step <= last);
        let Some((question, of, _)) = steps.flat_map(|step| job.questions(Some(step))).next() else { return };
        let (question, answer) = (question.code.to_owned(), goes(question).to_owned());
        let (words, who_told, of) = ("Seen at the board".to_owned(), "Joel Aras".to_owned(), of.part());
        let read = shown(&question, &answer);
        let fact = Fact::Answered { question, answer, of, point: None, words, who: who_told, read };
        if tries(phone, who, fact).is_err() {
            return;
        }
    }
}

/// What an instrument shows where nothing is there, of each answer that is read with one.
pub fn shown(question: &str, answer: &str) -> Option<Measured> {
    match (question, answer) {
        ("neutral-current", "none") => Some(Measured::Milliamps(0)),
        ("coupled", "gone-under-load") => Some(Measured::NoIndication),
        ("charge-returned", "gone") => Some(Measured::Millivolts(0)),
        _ => None,
    }
}

/// A test begins: the indicator responds, and the reference is earth.
pub fn begins(phone: &Phone, who: &str) -> EntryId {
    answers(phone, who, Step::OpenUp);
    let run = keeps(phone, who, first_proof(phone, true));
    keeps(phone, who, earth(run, true));
    run
}

pub fn reads(phone: &Phone, who: &str, run: EntryId, pairs: &[Test], reading: Reading) {
    for Test { first, then, .. } in pairs {
        let (first, then) = (first.clone(), then.clone());
        keeps(phone, who, Fact::ReadingTaken { run, first, then, reading, dc: false });
    }
}

/// One pair lights the lamps.
pub fn lit(run: EntryId, first: &str, then: &str) -> Fact {
    Fact::ReadingTaken { run, first: first.into(), then: then.into(), reading: Reading::Lit(None), dc: false }
}

/// The same indicator is proved again.
pub fn second_proof(phone: &Phone, run: EntryId, works: bool) -> Fact {
    Fact::IndicatorProved { run: Some(run), indicator: tester(phone), on: unit(phone), works }
}

/// Everything that proves dead.
pub fn proves(phone: &Phone, who: &str) -> EntryId {
    let run = begins(phone, who);
    reads(phone, who, run, &pairs(phone), Reading::None);
    keeps(phone, who, second_proof(phone, run, true));
    run
}

pub fn check(instrument: EntryId, tips_sound: bool) -> Fact {
    Fact::InstrumentChecked {
        instrument,
        leads_sound: true,
        tips_sound,
        body_sound: true,
        in_date: true,
        note: if tips_sound { String::new() } else { "A tip is cracked".into() },
        knowing: Vec::new(),
    }
}

pub fn noted(kind: InstrumentKind, name: &str, serial: &str) -> Fact {
    let lights_from = Some(stillbar_core::journal::fact::LightsFrom { ac: 12_000, dc: Some(12_000) });
    Fact::InstrumentNoted { kind, name: name.into(), serial: serial.into(), lights_from }
}

pub fn cause(of: EntryId, found: bool) -> Fact {
    Fact::CauseNoted { of: vec![of], found, cause: "A neutral of bay 3, parted and locked at DB1".into() }
}

pub fn found(kind: SourceKind, what: &str, at: &str, terminals: &[&str]) -> Fact {
    Fact::SourceAnswered {
        kind,
        found: Some(Found { what: what.into(), at: at.into() }),
        looked: at.into(),
        terminals: terminals.iter().map(|t| (*t).to_owned()).collect(),
        millivolts: (!terminals.is_empty()).then_some(230_000),
    }
}

pub fn adds(phone: &Phone, name: &str, poles: &[&str], cuts: Option<EntryId>) -> EntryId {
    let fact = Fact::PointAdded {
        label: name.into(),
        at: format!("DB1, row of {name}"),
        kind: PointKind::SwitchDisconnector,
        lockable: true,
        poles: poles.iter().map(|p| (*p).to_owned()).collect(),
        cuts,
        switch: None,
        stays_open: false,
        same_as: None,
    };
    keeps(phone, MARA, fact)
}

pub fn lock_of(phone: &Phone, who: &str, on: On, label: &str, means: Means) -> Fact {
    let owner = phone.person(who);
    Fact::LockFitted { on, owner, label: label.into(), key: KeyAt::Owner, means, through: None }
}

pub fn opens(point: EntryId) -> Fact {
    let (seen, found) = ("Handle at 0, lamps out".into(), Position::Closed);
    Fact::PointOpened { point, off_load: true, seen, found, knowing: Vec::new() }
}

/// Mara opens, locks and signs a point, as far as she is let: what is refused is refused.
pub fn isolates(phone: &Phone, point: EntryId, label: &str) {
    answers(phone, MARA, Step::OpenUp);
    let _ = tries(phone, MARA, opens(point));
    let _ = tries(phone, MARA, lock_of(phone, MARA, On::Point(point), label, Means::Hasp));
    let _ = tries(phone, MARA, Fact::SignPosted { point });
    let why = "The camera is wet".into();
    let _ = tries(phone, MARA, Fact::Deviated { step: format!("isolate-{point}"), why });
}

/// Tomas, who is on the job, fits his own lock at both points.
pub fn tomas_locks(phone: &Phone) {
    for (place, label) in [("Q4 feeder switch", "TB 1"), ("Q9 changeover switch", "TB 2")] {
        keeps(phone, TOMAS, lock_of(phone, TOMAS, On::Point(point(phone, place)), label, Means::Hasp));
    }
}

pub fn joins(phone: &Phone, who: &str, duty: Duty) {
    keeps(phone, MARA, Fact::WorkerJoined { person: phone.person(who), duty });
}

/// Another job of Mara's, of which nothing but its people is known.
pub fn another_job(phone: &Phone) -> EntryId {
    let mara = phone.person(MARA);
    let opened = Fact::JobOpened {
        title: "Tighten the tails of washer 2".into(),
        place: "Plant room 2".into(),
        equipment: "Distribution board DB4".into(),
        scope: "Breaker 2 and its tails".into(),
        system: System::ThreePhaseNeutral,
        earthing: Earthing::TnCS,
        order: Order::default(),
        nominal_millivolts: 230_000,
        own: Vec::new(),
        rules: None,
        limit: None,
        tolerance: Tolerance::default(),
        company: None,
    };
    let job = phone.field().keep(mara, None, opened).unwrap();
    phone.field().keep(mara, Some(job), Fact::WorkerJoined { person: mara, duty: Duty::InCharge }).unwrap();
    job
}

/// The label of the main button.
pub fn main_button(phone: &Phone) -> String {
    phone.field().screen().main.map(|main| main.label).unwrap_or_default()
}
