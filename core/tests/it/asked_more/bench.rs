//! A job as the page has it, kept fact by fact through the gate: who does everything right, stage by stage, and what was asked at which.

use std::cell::RefCell;
use std::collections::BTreeSet;

use stillbar_core::job::Job;
use stillbar_core::job::asked::Does;
use stillbar_core::job::steps::Step;
use stillbar_core::journal::fact::*;
use stillbar_core::journal::{Body, Clock, DeviceKey, Entry, EntryId, Fact, Seen, VERSION};
use stillbar_core::prove::{Earthing, Measured, Reading, RuleSet, System};

use crate::desk::*;
use crate::forgotten::Phone;
use crate::holes::by_hand::{MARA, TITLE, TOMAS, shown};

/// What there is to be said, whatever is asked.
pub const WORDS: &str = "Seen and said at the spot";

/// What the job is like.
#[derive(Clone)]
pub struct Case {
    pub system: System,
    pub earthing: Earthing,
    pub volts: u32,
    pub rules: Option<RuleSet>,
    pub permit: bool,
    /// Who takes part beside Mara, who is in charge.
    pub mates: Vec<(&'static str, Duty)>,
    pub others: Vec<SourceKind>,
    /// Whether their points were found closed: they make a supply of their own.
    pub others_on: bool,
    pub stored: bool,
    /// Whether a point opens a neutral or mid-point.
    pub neutral: bool,
    pub cover: bool,
}

impl Case {
    /// One phase, one person, no permit, nothing else found.
    pub fn house_socket() -> Case {
        Case {
            system: System::OnePhase,
            earthing: Earthing::TnCS,
            volts: 230,
            rules: None,
            permit: false,
            mates: Vec::new(),
            others: Vec::new(),
            others_on: false,
            stored: false,
            neutral: false,
            cover: true,
        }
    }

    /// A board of three lines with a second person, a permit, a standby set and a drive.
    pub fn board() -> Case {
        Case {
            system: System::ThreePhaseNeutral,
            permit: true,
            mates: vec![(TOMAS, Duty::Working)],
            others: vec![SourceKind::Generator],
            stored: true,
            ..Case::house_socket()
        }
    }

    pub fn conductors(&self) -> Vec<&'static str> {
        match self.system {
            System::OnePhase => vec!["PE", "N", "L"],
            System::ThreePhaseNeutral => vec!["PE", "N", "L1", "L2", "L3"],
            System::ThreeWire | System::CornerGrounded => vec!["PE", "L1", "L2", "L3"],
            System::SplitPhase => vec!["PE", "N", "L1", "L2"],
            System::DcTwoWire => vec!["PE", "L+", "L-"],
            System::DcThreeWire => vec!["PE", "M", "L+", "L-"],
            other => unreachable!("no case here is of {other:?}"),
        }
    }

    /// What a point opens; that of another source always opens the neutral as well.
    pub fn poles(&self, other: bool) -> Vec<String> {
        let opened = |c: &&&str| c.starts_with('L') || (self.neutral || other) && matches!(**c, "N" | "M");
        self.conductors().iter().filter(opened).map(|c| (*c).to_owned()).collect()
    }

    pub fn is_direct(&self) -> bool {
        matches!(self.system, System::DcTwoWire | System::DcThreeWire)
    }

    pub fn turns(&self) -> bool {
        self.conductors().contains(&"L3")
    }

    /// What is read with the supply back, in volts.
    pub fn back(&self) -> Vec<(&'static str, &'static str, u32)> {
        let v = self.volts;
        let three = |other, to_it, between| {
            let lines = ["L1", "L2", "L3"].map(|line| (line, other, to_it));
            lines.into_iter().chain([("L1", "L2", between), ("L2", "L3", between), ("L3", "L1", between)]).collect()
        };
        match self.system {
            System::OnePhase => vec![("L", "N", v)],
            System::ThreePhaseNeutral => three("N", v, (f64::from(v) * 3f64.sqrt()).round() as u32),
            // Its star point is at earth, where anything is.
            System::ThreeWire if matches!(self.earthing, Earthing::It | Earthing::Unknown) => {
                vec![("L1", "L2", v), ("L2", "L3", v), ("L3", "L1", v)]
            }
            System::ThreeWire => three("PE", (f64::from(v) / 3f64.sqrt()).round() as u32, v),
            System::SplitPhase => vec![("L1", "N", v), ("L2", "N", v), ("L1", "L2", 2 * v)],
            System::DcTwoWire => vec![("L+", "L-", v), ("L+", "PE", v), ("L-", "PE", 0)],
            System::DcThreeWire => vec![("L+", "M", v / 2), ("L-", "M", v / 2), ("L+", "L-", v)],
            other => unreachable!("no case here is of {other:?}"),
        }
    }
}

/// How far a job is.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Stage {
    Opened,
    Planned,
    Isolated,
    Uncovered,
    Proved,
    AtWork,
    Finished,
    /// Points closed, and read.
    Back,
    HandedBack,
}

/// A job on a phone, with everything that was asked in it.
pub struct Bench {
    pub case: Case,
    pub phone: Phone,
    /// Each with its step and how far the job was when it was asked first.
    pub asked: RefCell<BTreeSet<(String, Step)>>,
    /// Questions that nobody answers.
    held: Vec<&'static str>,
    /// Answers that are given instead of the first that goes.
    pub says: Vec<(&'static str, &'static str)>,
    pub run: RefCell<Option<EntryId>>,
}

pub fn answered(question: &str, answer: &str, words: &str) -> Fact {
    answered_of(question, answer, words, None)
}

pub fn answered_of(question: &str, answer: &str, words: &str, of: Option<EntryId>) -> Fact {
    Fact::Answered {
        question: question.into(),
        answer: answer.into(),
        of,
        point: None,
        words: words.into(),
        who: words.into(),
        read: shown(question, answer),
    }
}

/// The same, with what an instrument showed.
pub fn answered_with(question: &str, answer: &str, words: &str, showed: Option<Measured>) -> Fact {
    let Fact::Answered { question, answer, of, point, words, who, .. } = answered(question, answer, words) else {
        unreachable!()
    };
    Fact::Answered { question, answer, of, point, words, who, read: showed }
}

/// Something that happens to a job, and what it is called.
pub type Change = (&'static str, fn(&Bench));

pub fn met() -> Fact {
    Fact::VoltageMet { at: "Screw of the rail".into(), reading: Reading::Millivolts(64_000) }
}

pub fn corrected(system: System, volts: u32) -> Fact {
    corrected_to(system, volts, Earthing::TnS)
}

pub fn corrected_to(system: System, volts: u32, earthing: Earthing) -> Fact {
    let why = "Read again, each line to PE".into();
    Fact::SystemCorrected { system, earthing, nominal_millivolts: volts * 1000, own: Vec::new(), why }
}

impl Bench {
    pub fn new(case: Case, held: &[&'static str], says: &[(&'static str, &'static str)]) -> Bench {
        let phone = Phone::of(Device::new(1));
        let (held, says) = (held.to_vec(), says.to_vec());
        let bench = Bench { case, phone, asked: RefCell::default(), held, says, run: RefCell::default() };
        bench.begin();
        bench
    }

    /// A job that went well up to here, with every question answered by the first answer that goes.
    pub fn at(case: Case, stage: Stage) -> Bench {
        Bench::stopping(case, stage, &[], &[])
    }

    /// The same, with these questions left alone, or answered like this.
    pub fn stopping(case: Case, stage: Stage, held: &[&'static str], says: &[(&'static str, &'static str)]) -> Bench {
        let bench = Bench::new(case, held, says);
        bench.on_to(stage);
        bench
    }

    pub fn on_to(&self, stage: Stage) {
        for (at, does) in [
            (Stage::Planned, Bench::plan as fn(&Bench)),
            (Stage::Isolated, Bench::isolate),
            (Stage::Uncovered, Bench::open_up),
            (Stage::Proved, Bench::prove),
            (Stage::AtWork, Bench::work),
            (Stage::Finished, Bench::finish),
            (Stage::Back, Bench::supply_back),
            (Stage::HandedBack, Bench::hand_back),
        ] {
            if at <= stage && self.stage() < at {
                does(self);
            }
        }
    }

    /// How far the job is, by its entries.
    fn stage(&self) -> Stage {
        let has = |fits: &dyn Fn(&Fact) -> bool| self.phone.entries().iter().any(|e| fits(&e.body.fact));
        if has(&|f| matches!(f, Fact::HandedBack { .. })) {
            Stage::HandedBack
        } else if has(&|f| matches!(f, Fact::PresenceRead { .. })) {
            Stage::Back
        } else if has(&|f| matches!(f, Fact::WorkFinished { .. })) {
            Stage::Finished
        } else if has(&|f| matches!(f, Fact::WorkBegan { .. })) {
            Stage::AtWork
        } else if has(&|f| matches!(f, Fact::IndicatorProved { run: Some(_), .. })) {
            Stage::Proved
        } else if has(&|f| matches!(f, Fact::CoverOff { .. } | Fact::NoCovers { .. })) {
            Stage::Uncovered
        } else if has(&|f| matches!(f, Fact::LockFitted { .. })) {
            Stage::Isolated
        } else if has(&|f| matches!(f, Fact::NoCircuits { .. })) {
            Stage::Planned
        } else {
            Stage::Opened
        }
    }

    pub fn folded(&self) -> Job {
        let id = self.phone.job();
        let of_it: Vec<Entry> = self.phone.entries().into_iter().filter(|e| e.job() == Some(id)).collect();
        Job::fold(&of_it).unwrap()
    }

    /// What is asked at this moment, at any step, and not answered.
    pub fn asks(&self) -> Vec<(Step, String, Option<EntryId>)> {
        let job = self.folded();
        let mut all = Vec::new();
        for step in job.sequence() {
            for (question, of, _) in job.questions(Some(step)) {
                all.push((step, question.code.to_owned(), of.part()));
            }
        }
        let mut asked = self.asked.borrow_mut();
        asked.extend(all.iter().map(|(step, code, _)| (code.clone(), *step)));
        all
    }

    /// Whether it is asked now.
    pub fn is_asked(&self, code: &str) -> bool {
        self.asks().iter().any(|(_, asked, _)| asked == code)
    }

    /// At which step it is asked now.
    pub fn asked_on(&self, code: &str) -> Option<Step> {
        self.asks().into_iter().find(|(_, asked, _)| asked == code).map(|a| a.0)
    }

    pub fn tries_as(&self, who: &str, fact: Fact) -> Result<EntryId, String> {
        self.phone.field().keep(self.phone.person(who), Some(self.phone.job()), fact).map_err(|why| why.to_string())
    }

    pub fn tries(&self, fact: Fact) -> Result<EntryId, String> {
        self.tries_as(MARA, fact)
    }

    pub fn keeps(&self, fact: Fact) -> EntryId {
        let shown = format!("{fact:?}");
        self.tries(fact).unwrap_or_else(|why| panic!("{why}: {shown}"))
    }

    pub fn says(&self, question: &str, answer: &str) -> Result<EntryId, String> {
        self.tries(answered(question, answer, WORDS))
    }

    pub fn says_on(&self, question: &str, answer: &str) -> EntryId {
        self.says(question, answer).unwrap_or_else(|why| panic!("{question} {answer}: {why}"))
    }

    /// Everything that is asked up to this step is answered, but for what is held; whatever is skipped has its own row of tests.
    pub fn answers(&self, last: Step) {
        for _ in 0..40 {
            let asked = self.asks();
            let next = asked.iter().find(|(step, code, _)| *step <= last && !self.held.contains(&code.as_str()));
            let Some((_, code, of)) = next else { return };
            let known = stillbar_core::job::asked::ALL.iter().find(|q| q.code == code).expect("one of them");
            let said = self.says.iter().find(|(question, _)| question == code).map(|(_, answer)| *answer);
            // The poles of a case here stand with L- at earth.
            let said = said.or((code == "earthed-pole").then_some("minus"));
            // An earth is fitted by whoever says so, and a test is signed by whoever does.
            let first = known.answers.iter().find(|a| a.does == Does::Goes && !matches!(a.code, "fitted" | "another"));
            let answer = said.or(first.map(|a| a.code)).expect("one that goes");
            self.keeps(answered_of(code, answer, WORDS, *of));
        }
        panic!("it is asked without an end: {:?}", self.asks());
    }

    /// The word and the sentence at the top, and all that stands beside them.
    pub fn banner(&self) -> String {
        self.phone.field().standing_says(self.phone.job())
    }

    /// What the record says beside what stands proved.
    pub fn page_one(&self) -> String {
        let made = stillbar_core::app::of_folder(self.phone.folder.path(), &*self.phone.device, TITLE, false).unwrap();
        made.report().deviations.iter().map(|d| d.says()).collect::<Vec<_>>().join("\n")
    }

    /// A phone of somebody else that knows all of it.
    pub fn beside(&self, seed: u64) -> Phone {
        let phone = Phone::of(Device::new(seed));
        phone.device.now.store(
            self.phone.device.now.load(std::sync::atomic::Ordering::Relaxed),
            std::sync::atomic::Ordering::Relaxed,
        );
        phone.hear(&self.phone);
        phone
    }

    /// An entry of the job that no gate has seen, by a phone that heard of all that there is here.
    pub fn ungated(&self, seed: u8, who: &str, fact: Fact) {
        let key = DeviceKey::from_secret(&[seed; 32]).expect("32 bytes");
        let entries = self.phone.entries();
        let job = entries.iter().find(|e| e.id == self.phone.job()).expect("the job");
        let mut seen = std::collections::BTreeMap::new();
        for e in entries.iter().filter(|e| e.job() == Some(job.id)) {
            let last = seen.entry(e.body.device).or_insert((0, e.id));
            *last = (*last).max((e.body.seq, e.id));
        }
        let wall = self.phone.device.now.load(std::sync::atomic::Ordering::Relaxed);
        let last = entries.iter().map(|e| e.body.clock).max().unwrap_or_default();
        let body = Body {
            version: VERSION,
            device: key.device(),
            seq: 1,
            clock: Clock::resume(last).tick(wall),
            wall,
            zone: 60,
            running: None,
            prev: EntryId::NONE,
            after: None,
            site: job.body.site,
            job: Some(job.id),
            by: Some(self.phone.person(who)),
            signed_on: None,
            practice: false,
            seen: seen.into_iter().map(|(device, (seq, id))| Seen(device, seq, id)).collect(),
            fact,
        };
        let entry = Entry::seal(body, &key, &|count| vec![seed; count as usize]).unwrap();
        self.phone.field().take_in(vec![entry]).unwrap();
    }
}
