//! What the gate refuses.

use super::World;
use super::asked;
use super::blocker::{blocker, charged};
use super::catalogue::say;
use super::company::company_wrong;
use super::lists::{ands, commas};
use super::steps::step;
use super::supply::{network_fault, stays_open, uncut};
use super::words::{self, QUOTED, capital, fault, label, limit, quoted, supply_name, volts, waiting};
use stillbar_rules::job::refusal::{
    AloneRefusal, EarthRefusal, LockRefusal, NetworkRefusal, PlanRefusal, ProofRefusal, Refusal, RestoreRefusal,
    SwitchRefusal, Unsaid, WithdrawRefusal,
};
use stillbar_rules::point::{ForcedLack, Stays};
use stillbar_rules::supply::{MAX_NOTED, Misfit};

/// Why something is refused, in a sentence or two that say what to do instead.
pub fn refusal(why: &Refusal, names: &World) -> String {
    match why {
        Refusal::NobodyActs => say!("nobody-acts"),
        Refusal::NoReason => say!("reason-says-nothing"),
        Refusal::HandedBack => say!("job-handed-back"),
        Refusal::GivenUp => say!("job-given-up"),
        Refusal::Finished => say!("job-finished"),
        Refusal::NotOnJob { person } => say!("not-on-job", person = names.name(*person)),
        Refusal::First { step: first, lack } => {
            let lack = lack.as_ref().map_or_else(String::new, |lack| blocker(lack, names));
            say!("first-step", step = step(first), lack = lack)
        }
        Refusal::NoSuchStep => say!("no-such-step"),
        Refusal::Question(open) => asked::first(open),
        Refusal::NoSuchQuestion => say!("asked-unknown"),
        Refusal::AnswerCountsNot => say!("asked-not-so"),
        Refusal::AnswerUnsaid => say!("asked-words"),
        Refusal::AnswerUnread(quantity) => asked::unread(*quantity),
        Refusal::NoSuchPoint => say!("no-such-point"),
        Refusal::Alone(why) => alone(why),
        Refusal::Plan(why) => plan(why, names),
        Refusal::Withdraw(why) => withdraw(*why),
        Refusal::Earth(why) => earth(why),
        Refusal::Lock(why) => lock(why, names),
        Refusal::Proof(why) => proof(why, names),
        Refusal::Switch(why) => switching(why, names),
        Refusal::Restore(why) => restore(why, names),
        Refusal::Network(why) => network(why, names),
    }
}

fn alone(why: &AloneRefusal) -> String {
    match why {
        AloneRefusal::NoJobOpen => say!("no-job-open"),
        AloneRefusal::NoName => say!("no-name"),
        AloneRefusal::NameAlike { name, other } => say!("name-alike", name = name, other = other),
        AloneRefusal::LimitUnruled => say!("limit-unruled"),
        AloneRefusal::LimitTooHigh(error) => say!("limit-lower", limit = limit(error)),
        AloneRefusal::NotLowVoltage { volts, most } => say!("not-low-voltage", volts = *volts, most = *most),
        AloneRefusal::OwnConductors => say!("own-conductors"),
        AloneRefusal::Company(wrong) => capital(&company_wrong(wrong)),
    }
}

fn earth(why: &EarthRefusal) -> String {
    match why {
        EarthRefusal::Unsaid => say!("earth-unsaid"),
        EarthRefusal::Alike { label, at } => say!("earth-alike", label = label, at = at),
        EarthRefusal::NotProved => say!("earth-not-proved"),
        EarthRefusal::NotIn => say!("earth-not-in"),
        EarthRefusal::LeftIn { label, at } => say!("earth-left-in", label = label, at = at),
    }
}

fn plan(why: &PlanRefusal, names: &World) -> String {
    match why {
        PlanRefusal::ChargeWithLocks => say!("charge-with-locks"),
        PlanRefusal::ChargeLeftWithLocks => say!("charge-left-with-locks"),
        PlanRefusal::LeavesLock { person, place } => {
            say!("leaves-lock", person = names.name(*person), place = label(place))
        }
        PlanRefusal::LeavesCharge { person } => say!("leaves-charge", person = names.name(*person)),
        PlanRefusal::StaysLiveUnsaid => say!("stays-live-unsaid"),
        PlanRefusal::MayNotStayLive { conductor } => say!("may-not-stay-live", conductor = conductor),
        PlanRefusal::ControlDevice => say!("control-device"),
        PlanRefusal::PointAlike { label } => say!("point-alike", label = label),
        PlanRefusal::PointNotOfSite => say!("point-not-of-site"),
        PlanRefusal::NoPoles => say!("point-no-poles"),
        PlanRefusal::OpensProtective { conductor } => say!("point-opens-protective", conductor = conductor),
        PlanRefusal::NoPointForTag => say!("tag-no-point"),
        PlanRefusal::TagHangs { at } => say!("tag-hangs", at = at),
        PlanRefusal::TagsMost { at, most } => say!("tags-most", at = at, most = *most),
        PlanRefusal::TagGoneUnsaid => say!("tag-gone-unsaid"),
        PlanRefusal::TagNotThere { at } => say!("tag-not-there", at = at),
        PlanRefusal::NothingToPass => say!("nothing-to-pass"),
        PlanRefusal::CannotPass => say!("cannot-pass"),
        PlanRefusal::LimitNotInCharge => say!("limit-not-in-charge"),
        PlanRefusal::LimitAboveCompany { limit } => {
            say!("limit-above-company", ac = volts(limit.ac), dc = volts(limit.dc), rule = &*limit.rule)
        }
        PlanRefusal::WaitShort { least } => say!("wait-short", wait = waiting(*least)),
        PlanRefusal::LookedUnsaid => say!("looked-unsaid"),
        PlanRefusal::OnlyControl => say!("only-control"),
        PlanRefusal::NoTerminals => say!("no-terminals"),
        PlanRefusal::TerminalName { name } => say!("terminal-name", name = quoted(name, QUOTED)),
        PlanRefusal::TerminalsMost { most } => say!("terminals-most", most = *most),
        PlanRefusal::ConductorsMost => say!("conductors-most"),
        PlanRefusal::NoControlVoltage => say!("no-control-voltage"),
        PlanRefusal::SourceNotKnown => say!("source-not-known"),
        PlanRefusal::NotTwoPoints => say!("not-two-points"),
        PlanRefusal::NotAside => say!("not-aside"),
    }
}

fn withdraw(why: WithdrawRefusal) -> String {
    match why {
        WithdrawRefusal::Already => say!("withdrawn-already"),
        WithdrawRefusal::NoSuchEntry => say!("withdraw-no-entry"),
        WithdrawRefusal::StandsOut => say!("withdraw-stands-out"),
        WithdrawRefusal::ShowedVoltage => say!("withdraw-voltage"),
        WithdrawRefusal::PointLocked => say!("withdraw-point-locked"),
        WithdrawRefusal::Done => say!("withdraw-done"),
    }
}

/// Why a lock stays on, in a sentence or two.
pub fn stays(why: &Stays, names: &World) -> String {
    match why {
        Stays::Off => say!("lock-off-already"),
        Stays::NotTheirs { owner } => say!("lock-not-theirs", owner = names.name(*owner)),
        Stays::Boxed { owners } => {
            let mut owners: Vec<String> = owners.iter().map(|owner| names.name(*owner)).collect();
            owners.sort();
            say!("lock-boxed", owners = commas(owners))
        }
    }
}

/// What a forced removal lacks, in a sentence.
pub fn forced_lack(lack: ForcedLack) -> String {
    match lack {
        ForcedLack::Authority => say!("forced-no-authority"),
        ForcedLack::NotOnSite => say!("forced-not-on-site"),
        ForcedLack::Sought => say!("forced-not-sought"),
    }
}

fn lock(why: &LockRefusal, names: &World) -> String {
    match why {
        LockRefusal::NoSuchLock => say!("no-such-lock"),
        LockRefusal::Off => say!("lock-off-already"),
        LockRefusal::Stays(why) => stays(why, names),
        LockRefusal::Owed { owner, place } => say!("lock-owed", owner = names.name(*owner), place = label(place)),
        LockRefusal::NotTheirsToCut { owner } => say!("lock-cut-by-owner", owner = names.name(*owner)),
        LockRefusal::NotTheirsToGive { owner } => say!("lock-given-by-owner", owner = names.name(*owner)),
        LockRefusal::KeyInBox => say!("key-in-box"),
        LockRefusal::TheirsAlready => say!("key-theirs-already"),
        LockRefusal::NotOnJobYet => say!("key-not-on-job"),
        LockRefusal::Confirms { person } => say!("has-to-confirm", person = names.name(*person)),
        LockRefusal::OfferGone => say!("offer-gone"),
        LockRefusal::ShiftNotTheirs => say!("shift-not-theirs"),
        LockRefusal::ShiftToNobody => say!("shift-to-nobody"),
        LockRefusal::Gap { person, at } => say!("shift-gap", person = names.name(*person), at = at),
        LockRefusal::AuthorityUnsaid => say!("authority-unsaid"),
        LockRefusal::AuthorityLearns => say!("authority-learns"),
        LockRefusal::AuthorityOwns => say!("authority-owns"),
        LockRefusal::OwnLock => say!("forced-own-lock"),
        LockRefusal::CannotWaitUnsaid => say!("forced-why-unsaid"),
        LockRefusal::NoAuthority => say!("authority-first"),
        LockRefusal::Forced(lack) => forced_lack(*lack),
        LockRefusal::NotForced => say!("not-forced"),
        LockRefusal::BoxHeld { place, owner } => {
            say!("box-held", place = label(place), owner = names.name(*owner))
        }
        LockRefusal::PadlockGone => say!("padlock-gone"),
        LockRefusal::PadlockOther => say!("padlock-other"),
        LockRefusal::PadlockOn { label: on_it, owner, place, job } => {
            say!("padlock-on", label = on_it, owner = names.name(*owner), place = label(place), job = job)
        }
        LockRefusal::OwnerNotOnJob { owner } => say!("owner-not-on-job", owner = names.name(*owner)),
        LockRefusal::NoLabel => say!("lock-no-label"),
        LockRefusal::KeyInNoBox => say!("key-in-no-box"),
        LockRefusal::BoxKeyNotKept => say!("box-key-not-kept"),
        LockRefusal::BoxTakesLocks => say!("box-takes-locks"),
        LockRefusal::NoSuchBox => say!("no-such-box"),
        LockRefusal::NotOpen { at } => say!("lock-on-closed", at = at),
        LockRefusal::TakesLock => say!("point-takes-lock"),
        LockRefusal::TakesNoLock => say!("point-takes-no-lock"),
        LockRefusal::OneOnly => say!("one-lock-only"),
        LockRefusal::NotOnHasp => say!("lock-not-on-hasp"),
    }
}

fn proof(why: &ProofRefusal, names: &World) -> String {
    match why {
        ProofRefusal::NotChecked => say!("instrument-not-checked"),
        ProofRefusal::Faulty { instrument, fault: what } => {
            say!("instrument-faulty", instrument = words::instrument(names, *instrument), fault = fault(*what))
        }
        ProofRefusal::Failed { instrument } => {
            say!("instrument-failed", instrument = words::instrument(names, *instrument))
        }
        ProofRefusal::NotThisShift { instrument } => {
            say!("instrument-not-this-shift", instrument = words::instrument(names, *instrument))
        }
        ProofRefusal::Over => say!("test-over"),
        ProofRefusal::OtherIndicator => say!("other-indicator"),
        ProofRefusal::NotAPair { first, then } => say!("not-a-pair", first = first, then = then),
        ProofRefusal::LiveLineShowsNothing => say!("live-line-shows-nothing"),
        ProofRefusal::NoSuchStored => say!("no-such-stored"),
        ProofRefusal::CauseOfNothing => say!("cause-of-nothing"),
        ProofRefusal::LearnerSigns => say!("learner-signs"),
        ProofRefusal::LearnerBegins => say!("learner-begins"),
        ProofRefusal::AtWork => say!("work-under-way"),
        ProofRefusal::NothingStands => say!("nothing-stands"),
        ProofRefusal::NotAtWork => say!("work-not-under-way"),
        ProofRefusal::FinishedAlready => say!("work-finished-already"),
        ProofRefusal::StopFirst => say!("stop-first"),
        ProofRefusal::StopWorkFirst => say!("work-stop-first"),
        ProofRefusal::NothingOpen => say!("nothing-open"),
        ProofRefusal::Unexplained => say!("not-explained"),
        ProofRefusal::LightsLate { instrument, bound } => {
            let (ac, dc) = (volts(bound.ac_mv), volts(bound.dc_mv));
            say!("instrument-lights-late", instrument = words::instrument(names, *instrument), ac = ac, dc = dc)
        }
        ProofRefusal::OnItself => say!("proved-on-itself"),
        ProofRefusal::NoLiveSource => say!("no-live-source"),
    }
}

fn switching(why: &SwitchRefusal, names: &World) -> String {
    match why {
        SwitchRefusal::Charged(what) => charged(what),
        SwitchRefusal::NoSuchCircuit => say!("no-such-circuit"),
        SwitchRefusal::CircuitOff { label } => say!("circuit-off-already", label = label),
        SwitchRefusal::CircuitNext { label } => say!("circuit-next", label = label),
        SwitchRefusal::CircuitsOn => say!("circuits-on-already"),
        SwitchRefusal::OpenAlready => say!("point-open-already"),
        SwitchRefusal::SignBeforeLock { at } => say!("sign-before-lock", at = at),
        SwitchRefusal::SignUnderLock => say!("sign-under-lock"),
        SwitchRefusal::Locked => say!("point-locked"),
        SwitchRefusal::LockedAside { at, lock, owner } => {
            say!("point-locked-aside", at = at, lock = lock, owner = names.name(*owner))
        }
        SwitchRefusal::CoverBack => say!("cover-back-already"),
        SwitchRefusal::NoSuchCover => say!("no-such-cover"),
        SwitchRefusal::NotAPair { first, then } => say!("not-a-pair-to-read", first = first, then = then),
    }
}

fn restore(why: &RestoreRefusal, names: &World) -> String {
    match why {
        RestoreRefusal::NotOpen { at } => say!("close-not-open", at = at),
        RestoreRefusal::FoundOff { at } => say!("close-found-off", at = at),
        RestoreRefusal::Held { at, lock, owner, job } => {
            say!("point-held", at = at, lock = lock, owner = names.name(*owner), job = job)
        }
        RestoreRefusal::After { at, first } => say!("close-after", at = at, first = commas(first.iter().cloned())),
        RestoreRefusal::Beside { at, own, others } => {
            let others = ands(others.iter().map(supply_name));
            say!("close-beside", at = at, own = supply_name(own), others = others)
        }
        RestoreRefusal::RotationBeforeLate => say!("rotation-before-late"),
        RestoreRefusal::Unguarded => say!("rotation-unguarded"),
        RestoreRefusal::AnswerOfNothing => say!("answer-of-nothing"),
        RestoreRefusal::AnswerUnsaid(what) => match what {
            Unsaid::WasWrong => say!("answer-was-wrong"),
            Unsaid::Mended => say!("answer-mended"),
            Unsaid::LeftOff => say!("answer-left-off"),
            Unsaid::KeptOff => say!("answer-kept-off"),
            Unsaid::Accepts => say!("answer-accepts"),
            Unsaid::AcceptsWhy => say!("answer-accepts-why"),
        },
        RestoreRefusal::MissingAccepted => say!("missing-accepted"),
    }
}

fn network(why: &NetworkRefusal, names: &World) -> String {
    match why {
        NetworkRefusal::NotOfSite => say!("not-of-site"),
        NetworkRefusal::LinkNamed { id } => say!("link-named", id = id),
        NetworkRefusal::NodeNamed { id } => say!("node-named", id = id),
        NetworkRefusal::Misfit(why) => misfit(why),
        NetworkRefusal::NotThere { id } => say!("part-not-there", id = id),
        NetworkRefusal::GoneUnsaid => say!("part-gone-unsaid"),
        NetworkRefusal::Locked { owner, part, job } => {
            say!("part-locked", owner = names.name(*owner), part = part, job = job)
        }
        NetworkRefusal::RulesTooWide { between_proofs, proof_holds } => {
            say!("rules-too-wide", between = *between_proofs, holds = *proof_holds)
        }
        NetworkRefusal::NotInNetwork { id } => say!("not-in-network", id = id),
        NetworkRefusal::NotDrawn => say!("network-not-drawn"),
        NetworkRefusal::PointAlready { link } => say!("point-already", link = link),
        NetworkRefusal::Way { why } => say!("network-way", says = uncut(why)),
        NetworkRefusal::Held { at, lock, owner, job } => {
            say!("point-held", at = at, lock = lock, owner = names.name(*owner), job = job)
        }
        NetworkRefusal::NotYet { at, why } => {
            let says: Vec<String> = why.iter().map(stays_open).collect();
            say!("point-not-yet", at = at, says = says.join(" "))
        }
    }
}

/// Why parts do not fit into a site's network, in a sentence.
pub fn misfit(why: &Misfit) -> String {
    match why {
        Misfit::TooMany => say!("network-too-many", most = MAX_NOTED),
        Misfit::Apart(error) => capital(&network_fault(&error.why)),
    }
}
