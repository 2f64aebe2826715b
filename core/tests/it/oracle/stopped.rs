//! How a job goes in which an answer stops, and somebody goes on: what [`super::nearly`] does for the slips that are about questions.

use stillbar_core::journal::fact::{Duty, SourceKind};
use stillbar_core::journal::{EntryId, Fact};
use stillbar_core::prove::Measured;

use super::asked::{WORDS, answered};
use super::nearly::{HERE, JOB, THERE, WHOLE, is_of_a_test};
use super::plan::{Next, Plan};
use super::slipping::Turn;
use super::slips::Slip;
use super::world::World;

/// A set that is blocked from starting, so that it is asked whether it was tried.
pub fn prepare(plan: &mut Plan, two: bool) {
    plan.others = vec![Plan::another(SourceKind::Generator)];
    plan.others.extend(two.then(|| Plan::another(SourceKind::SecondFeeder)));
    plan.stored = None;
}

/// A set is said to be blocked, and secondaries to be shorted, where that is asked.
pub fn turns(fact: Fact) -> Turn {
    Turn::Right(Next::Keep(match fact {
        Fact::Answered { question, of, .. } if question == "starts-itself" => answered(&question, "blocked", of, WORDS),
        Fact::Answered { question, of, .. } if question == "current-transformers" => {
            answered(&question, "shorted", of, WORDS)
        }
        fact => fact,
    }))
}

/// The answer that nothing is there, beside a figure that says otherwise.
fn read(question: &str, answer: &str, shown: Measured) -> Fact {
    let mut fact = answered(question, answer, None, WORDS);
    if let Fact::Answered { read, .. } = &mut fact {
        *read = Some(shown);
    }
    fact
}

fn it_started() -> Fact {
    answered("tried-to-start", "it-started", None, "")
}

fn nothing_moved() -> Fact {
    answered("tried-to-start", "nothing-moved", None, "")
}

impl World {
    fn until_asked(&mut self, code: &str) -> Result<(), String> {
        self.until(
            self.who,
            JOB,
            &|next| matches!(next, Next::Keep(Fact::Answered { question, .. }) if question == code),
        )
    }

    fn source(&self, kind: SourceKind) -> Result<EntryId, String> {
        let job = Some(self.jobs[JOB].0);
        let fits = |f: &Fact| matches!(f, Fact::SourceAnswered { kind: k, found: Some(_), .. } if *k == kind);
        let found = self.phones[self.who].entries.iter().find(|e| e.job() == job && fits(&e.body.fact));
        Ok(found.ok_or("no such source")?.id)
    }

    /// A point of the job: the one of the normal supply, or another.
    fn point(&self, normal: bool) -> Result<EntryId, String> {
        let job = Some(self.jobs[JOB].0);
        let fits = |f: &Fact| matches!(f, Fact::PointAdded { cuts, .. } if cuts.is_none() == normal);
        let found = self.phones[self.who].entries.iter().find(|e| e.job() == job && fits(&e.body.fact));
        Ok(found.ok_or("no such point")?.id)
    }

    /// Up to the test, with a stop in it that may be lifted wrongly; from here on nobody answers anything.
    pub fn stopped_before(&mut self, slip: Slip) -> Result<(), String> {
        if !slip.is_of_a_question() {
            return Ok(());
        }
        self.slip = Some((JOB, slip));
        match slip {
            Slip::DoesNotFit => {
                self.until_asked("instrument-fit")?;
                self.here(answered("instrument-fit", "does-not-fit", None, ""))?;
            }
            Slip::NotBlocked => {
                self.until_asked("starts-itself")?;
                let of = Some(self.source(SourceKind::Generator)?);
                self.here(answered("starts-itself", "not-blocked", of, ""))?;
            }
            Slip::StartedAndWentOn => {
                self.until_asked("tried-to-start")?;
                self.here(it_started())?;
            }
            Slip::StartsAgain => {
                self.until(self.who, JOB, &is_of_a_test)?;
                self.here(it_started())?;
            }
            Slip::LiftSaysNothing | Slip::LiftOfAnother | Slip::LiftWithdrawn => {
                self.until(self.who, JOB, &is_of_a_test)?;
                let of = Some(self.source(SourceKind::Generator)?);
                self.here(answered("starts-itself", "not-blocked", of, ""))?;
                let other = if slip == Slip::LiftOfAnother { Some(self.source(SourceKind::SecondFeeder)?) } else { of };
                let words = if slip == Slip::LiftSaysNothing { "." } else { WORDS };
                let lift = self.here(answered("starts-itself", "blocked", other, words))?;
                if slip == Slip::LiftWithdrawn {
                    self.here(Fact::Withdrawn { entry: lift, why: "It was the other set".into() })?;
                }
            }
            // Nobody says what of it that started: that it cannot, or that a point was opened once more, is no answer to that.
            Slip::StartedThenCannot => {
                self.until(self.who, JOB, &is_of_a_test)?;
                let of = Some(self.source(SourceKind::Generator)?);
                self.here(it_started())?;
                self.here(answered("starts-itself", "cannot", of, WORDS))?;
            }
            Slip::StartedThenOpened => {
                self.until(self.who, JOB, &is_of_a_test)?;
                self.here(it_started())?;
                let job = Some(self.jobs[JOB].0);
                let mut opened = self.phones[self.who].entries.iter().filter(|e| e.job() == job);
                let fact = opened.find(|e| matches!(e.body.fact, Fact::PointOpened { .. })).ok_or("no point")?;
                self.here(fact.body.fact.clone())?;
            }
            Slip::LabelsDoNotMatch => {
                self.until_asked("labels")?;
                let of = Some(self.point(true)?);
                self.here(answered("labels", "do-not-match", of, ""))?;
            }
            // In which photo nobody can say; or those of the other point.
            Slip::LabelsInNoPhoto | Slip::LabelsOfAnother => {
                self.until(self.who, JOB, &is_of_a_test)?;
                let of = self.point(true)?;
                self.here(answered("labels", "do-not-match", Some(of), ""))?;
                let other = if slip == Slip::LabelsOfAnother { self.point(false)? } else { of };
                self.here(answered("labels", "in-photo", Some(other), ""))?;
            }
            Slip::UnknownQuestion => {
                self.until(self.who, JOB, &is_of_a_test)?;
                self.here(answered("boots-dry", "dry", None, WORDS))?;
            }
            Slip::UnknownAnswer => {
                self.until(self.who, JOB, &is_of_a_test)?;
                self.here(answered("instrument-fit", "mostly", None, WORDS))?;
            }
            Slip::LiftUnknowing | Slip::TwoStopsOneLift => {
                self.two_asked()?;
                self.there(JOB, it_started())?;
                if slip == Slip::TwoStopsOneLift {
                    self.here(it_started())?;
                }
                self.here(nothing_moved())?;
            }
            Slip::StopUnheard => {
                self.two_asked()?;
                self.until(self.who, JOB, &is_of_a_test)?;
                self.hear(THERE, HERE, WHOLE);
                self.there(JOB, it_started())?;
            }
            _ => {}
        }
        Ok(())
    }

    /// Two are on the job, and both have heard of all up to the question.
    fn two_asked(&mut self) -> Result<(), String> {
        self.until(self.who, JOB, &|next| matches!(next, Next::Keep(Fact::PermitNoted { .. })))?;
        let person = self.phones[THERE].person;
        self.here(Fact::WorkerJoined { person, duty: Duty::Working })?;
        self.until_asked("tried-to-start")?;
        self.hear(THERE, HERE, WHOLE);
        Ok(())
    }

    /// Once it is proved.
    pub fn stopped_after(&mut self, slip: Slip) -> Result<(), String> {
        match slip {
            Slip::StartedAfter => drop(self.here(it_started())?),
            Slip::NotScreened => drop(self.here(answered("live-beside", "not-screened", None, ""))?),
            Slip::LabelsAfter => {
                let of = Some(self.point(true)?);
                self.here(answered("labels", "do-not-match", of, ""))?;
            }
            Slip::CurrentRead => drop(self.here(read("neutral-current", "none", Measured::Milliamps(40)))?),
            Slip::ChargeRead => drop(self.here(read("charge-returned", "gone", Measured::Millivolts(231_000)))?),
            Slip::CurrentAfter => drop(self.here(answered("neutral-current", "current", None, ""))?),
            Slip::StopWithdrawn => {
                let entry = self.here(it_started())?;
                self.here(Fact::Withdrawn { entry, why: "It was the fan next door".into() })?;
            }
            Slip::StopUnheard => self.hear(HERE, THERE, WHOLE),
            // The test is begun anew, knowing of all. That the gate refuses it is as good.
            Slip::LiftUnknowing | Slip::TwoStopsOneLift => {
                self.hear(HERE, THERE, WHOLE);
                self.begin_again(HERE, JOB);
                let _ = self.until(HERE, JOB, &|next| matches!(next, Next::Done));
            }
            _ => {}
        }
        Ok(())
    }
}
