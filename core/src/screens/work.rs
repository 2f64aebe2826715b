//! The work under a standing proof, what ends it, and the change of shift.

mod before;

use super::Route;
use super::build::Page;
use super::context::{Act, Look};
use super::home::{UNKNOWN, go, options, picked};
use super::locks::{keep_as, people, put, sign_here};
use super::parts::{EntryKind, Tone};
use super::plan::sources;
use super::{rules, system};
use crate::app::NotDone;
use crate::job::steps::Step;
use crate::job::{Job, Standing, TroubleKind};
use crate::journal::fact::{Found, SourceKind};
use crate::journal::{EntryId, Fact};
use crate::point::{Means, gap};
use crate::prove::{Reading, Taken, parse_volts};
use crate::text::screens::give_up;
use crate::text::screens::job as said_job;
use crate::text::screens::locks as said_locks;
use crate::text::screens::plan as said_plan;
use crate::text::screens::restore as said_restore;
use crate::text::screens::work as said;
use crate::text::{self, AskFirst, AskJob};
pub(super) use before::{act_earth, earths_in};

/// The work step.
pub fn view(look: &Look, job: &Job) -> Page {
    let mut page = Page::new(text::title(Step::Work, job));
    super::job::lacking(&mut page, look, job, Step::Work);
    if let Some((stamp, clear)) = &job.finished {
        match &job.given_up {
            Some((_, why)) => page.fact(said::given_up(), said_job::noted(why, look.by(stamp))),
            None => page.fact(said::finished(), look.by(stamp)),
        };
        page.fact(said::seen_clear(), clear);
        super::job::next(&mut page, job);
        return page;
    }
    let standing = job.standing();
    if let Standing::Proved { .. } = standing {
        before::release(look, job, &mut page);
        proved(look, job, &mut page);
    }
    match standing {
        Standing::Proved { .. } if job.working() => working(look, &mut page),
        _ if job.at_work() => stop(&mut page),
        Standing::Proved { .. } if job.current() == Some(Step::Work) => {
            page.main(said::begin(), "begin");
        }
        Standing::Proved { .. } => {
            page.caution(Tone::Must, said::not_yet());
            super::job::next(&mut page, job);
        }
        ended => {
            let says = match ended {
                Standing::Void { why } => said::do_not_why(text::void(&why, look.world)),
                _ => said::do_not(),
            };
            page.caution(Tone::Forbid, says);
            super::job::next(&mut page, job);
        }
    }
    before::earths(&mut page, look, job);
    page.button(said_job::changed(), go(Route::Change(job.id())));
    page.button(said_job::shift(), go(Route::Shift(job.id())));
    page.button(said_locks::title(), go(Route::Locks(job.id())));
    page
}

/// The proof ended under the work: everything else waits until that is stopped.
pub(super) fn stop(page: &mut Page) {
    page.caution(Tone::Forbid, said::ended());
    page.main(said::stop(), "stop");
}

/// What changed since the proof.
pub fn change(look: &Look, job: &Job) -> Page {
    let mut page = Page::new(said_job::changed());
    page.caution(Tone::Forbid, said::change_stop());

    page.heading(said::source());
    page.para(said::source_ends());
    let kinds = options(&SourceKind::ALL, text::source_kind);
    page.choice("source-kind", &said::source_kind(), kinds, look.draft("source-kind"));
    page.entry("source-what", &said::source_what(), &said::source_what_hint(), look.draft("source-what"));
    page.entry("source-at", &said_plan::comes_in(), "", look.draft("source-at"));
    sources::control(&mut page, look);
    page.main(said::source_save(), "source");

    page.heading(said::met());
    page.para(said::met_says());
    page.entry("met-at", &said::met_at(), &said::met_at_hint(), look.draft("met-at"));
    let (label, hint) = (said::met_volts(), said_plan::may_stay_empty());
    page.field("met-volts", &label, &hint, look.draft("met-volts"), EntryKind::Number, 10);
    page.toned(said::met_save(), "met", Tone::Forbid);

    page.heading(said::scope());
    page.para(said::scope_ends());
    let scope = look.draft_or("scope", &job.scope);
    page.field("scope", &said::scope_now(), "", scope, EntryKind::Long, 500);
    page.entry("scope-why", &said::scope_why(), "", look.draft("scope-why"));
    page.button(said::scope_save(), "scope");

    page.heading(said::neutral_before());
    super::asked::view(&mut page, look, job, None);

    page.heading(said::neutral());
    page.para(said::neutral_ends());
    page.entry("neutral", &said::neutral_which(), "", look.draft("neutral"));
    page.button(said::neutral_save(), "neutral");

    system::change(&mut page, look, job);
    system::stays_live(&mut page, look, job);

    rules::change(&mut page, look, job);

    page.heading(said::point());
    page.para(said::point_ends());
    page.button(said_locks::add_point(), go(Route::Step(job.id(), Step::Points)));

    page.heading(said::person());
    page.para(said::person_leaves());
    page.para(said::person_joins());
    page.button(text::title(Step::People, job), go(Route::Step(job.id(), Step::People)));

    page.heading(said::not_now());
    page.para(said::not_now_says());
    page.button(give_up::title(), go(Route::GiveUp(job.id())));
    page
}

/// The change of shift.
pub fn shift(look: &Look, job: &Job) -> Page {
    let mut page = Page::new(said_job::shift());
    page.caution(Tone::Must, said::shift_no_gap());
    page.caution(Tone::Warn, said::shift_ends());
    let mut without: Vec<EntryId> = look.acting.into_iter().collect();
    if let Some((_, from, to, told)) = &job.shift {
        taking(look, job, (*from, *to), told, &mut page);
        without.extend([*from, *to]);
    }
    let again = job.shift.is_some();
    page.heading(if again { said::shift_to_other() } else { said::shift_offer() });
    let people = people(look, job, &without);
    let route = go(Route::Step(job.id(), Step::People));
    if people.is_empty() {
        page.para(said::shift_nobody());
        put(&mut page, said::shift_add_person(), route);
        return page;
    }
    page.choice("to", &said::shift_to(), people, look.draft("to"));
    page.field("told", &said::shift_told(), &said::shift_told_hint(), look.draft("told"), EntryKind::Long, 1000);
    put(&mut page, if again { said::shift_offer_again() } else { said::shift_offer() }, "offer-shift");
    page.button(said::shift_add_person(), route);
    page
}

/// Does what a button on these screens says.
pub fn act(act: &mut Act, job: EntryId, verb: &str, arg: &str) -> Result<(), NotDone> {
    match verb {
        "earth-in" | "earth-off" => return act_earth(act, job, verb, arg),
        "system" | "stays-live" => return system::act(act, job, verb),
        super::asked::ANSWER | super::asked::AGAIN | super::asked::NOTHING => {
            return super::asked::act(act, job, None, verb, arg);
        }
        super::asked::SAY => return super::asked::say(act, arg),
        "sign-run" => before::release_signed(act, job)?,
        "begin" => {
            let run = act.job(job)?.run().map(|r| r.id()).ok_or(AskJob::ProveFirst)?;
            act.keep(Some(job), Fact::WorkBegan { run })?;
        }
        "finish" => {
            let clear = act.need("clear", AskJob::Clear)?;
            act.keep(Some(job), Fact::WorkFinished { clear })?;
            act.onward(job, Step::Work)?;
        }
        "met" => {
            let at = act.need("met-at", AskJob::MetAt)?;
            let reading = match act.given("met-volts").as_str() {
                "" => Reading::Lit(None),
                volts => Reading::Millivolts(parse_volts(volts).map_err(AskFirst::Volts)?),
            };
            act.keep(Some(job), Fact::VoltageMet { at, reading })?;
            (act.alarm, act.say) = (true, Some(said::indication()));
            act.go = Some(Route::Step(job, Step::DeadTest));
        }
        "stop" => {
            act.keep(Some(job), Fact::WorkStopped {})?;
            act.say = Some(said::stopped());
        }
        "leave" => {
            let why = act.need("why", AskJob::LeftWhy)?;
            act.keep(Some(job), Fact::WorkLeft { why })?;
            act.say = Some(said::left());
        }
        "source" => {
            let kind = picked(act, "source-kind", AskJob::SourceKind)?;
            let what = act.need("source-what", AskJob::SourceWhat)?;
            let at = act.need("source-at", AskJob::SourceAt)?;
            let looked = at.clone();
            let (terminals, millivolts) =
                if kind == SourceKind::Control { sources::brings(act)? } else { (Vec::new(), None) };
            let found = Some(Found { what, at });
            act.keep(Some(job), Fact::SourceAnswered { kind, found, looked, terminals, millivolts })?;
            act.say = Some(said::source_saved());
            act.go = Some(Route::Step(job, Step::Points));
        }
        "scope" => {
            let scope = act.need("scope", AskJob::ScopeNew)?;
            let why = act.need("scope-why", AskJob::ScopeWhy)?;
            act.keep(Some(job), Fact::ScopeChanged { scope, why })?;
            voided(act, job);
            act.say = Some(said::scope_saved());
        }
        "limit" | "no-limit" => {
            rules::act_change(act, job, verb)?;
            voided(act, job);
        }
        "neutral" => {
            let what = act.need("neutral", AskJob::NeutralParted)?;
            act.keep(Some(job), Fact::NeutralParted { what })?;
            voided(act, job);
        }
        "offer-shift" => {
            let to = act.need_id("to", AskJob::ShiftTo)?;
            let told = act.need("told", AskJob::ShiftTold)?;
            act.keep(Some(job), Fact::ShiftOffered { to, told })?;
        }
        "take-shift" => take_shift(act, job)?,
        _ => return Err(UNKNOWN.into()),
    }
    Ok(())
}

/// What is proved, with what, and what ends it.
fn proved(look: &Look, job: &Job, page: &mut Page) {
    if let Some(run) = job.run() {
        page.fact(said::indicator(), text::instrument(look.world, run.indicator));
        page.fact(said::proved_before(), look.by(&run.before));
        if let Some(after) = run.after() {
            page.fact(said::proved_after(), look.by(&after.stamp));
        }
        let limited = job.limits().ac_mv > 0 || job.limits().dc_mv > 0;
        let count = job.plan().len();
        page.fact(said::pairs(), if limited { said::pairs_under_limit(count) } else { said::pairs_none(count) });
        let read = |t: &&Taken| matches!(t.reading, Reading::Millivolts(1..));
        for taken in run.readings.iter().filter(read) {
            page.fact(said_restore::pair(&taken.first, &taken.then), text::reading(taken.reading));
        }
        for trouble in &job.troubles {
            let cause = job.causes.iter().rev().find(|c| c.of.contains(&trouble.stamp.id));
            let (when, earlier) = (
                look.when(&trouble.stamp),
                match &trouble.kind {
                    TroubleKind::Voltage(met) => said::earlier_met(text::met_at(met), text::reading(met.reading)),
                    other => said::earlier(text::trouble(other)),
                },
            );
            page.fact(
                earlier,
                match cause {
                    None => said::cause_none(when),
                    Some(noted) if noted.found => said::cause(when, &noted.cause),
                    Some(noted) => said::cause_not_found(when, &noted.cause),
                },
            );
        }
        if let Some(limit) = job.limit.as_ref().filter(|_| limited) {
            page.fact(said::limit(), text::limit_set(limit));
        }
    }
    for lock in job.locks_on() {
        if let Means::Other(what) = &lock.means {
            let (place, owner) = (text::place(job, lock.on), look.name(lock.owner));
            page.caution(Tone::Warn, said::no_lock(place, owner, what));
        }
    }
    page.caution(Tone::Warn, said::holds());
}

fn working(look: &Look, page: &mut Page) {
    page.heading(said::finish_when());
    page.field("clear", &said::clear(), &said::clear_hint(), look.draft("clear"), EntryKind::Long, 500);
    page.main(said::finish(), "finish");

    page.heading(said::leave_before());
    page.para(said::leave_ends());
    page.entry("why", &said::leave_why(), &said::leave_why_hint(), look.draft("why"));
    page.button(said::leave(), "leave");
}

fn taking(look: &Look, job: &Job, (from, to): (EntryId, EntryId), told: &str, page: &mut Page) {
    let name = look.name(to);
    page.heading(said::taking(&name));
    page.fact(said::taking_from(), look.name(from));
    page.fact(said::taking_told(), told);
    let gap = gap(&job.points, to, &job.locks);
    if gap.is_empty() {
        page.caution(Tone::Must, said::give_phone(&name));
        sign_here(look, page, to, said::taking_signs(&name));
        page.main(said::take(&name), "take-shift");
        return;
    }
    for point in gap {
        page.caution(Tone::Must, said::taking_no_lock(&name, &point.label));
    }
    page.main(said::taking_locks(&name), go(Route::Locks(job.id())));
}

fn take_shift(act: &mut Act, job: EntryId) -> Result<(), NotDone> {
    let (offer, from, to, _) = act.job(job)?.shift.ok_or(AskJob::ShiftOffered)?;
    let (from, name) = (act.world().name(from), act.world().name(to));
    let mark = act.signature(&name)?;
    keep_as(act, job, to, Fact::ShiftTaken { offer, mark })?;
    act.say = Some(said::taken(name, from));
    act.go = Some(Route::Locks(job));
    Ok(())
}

fn voided(act: &mut Act, job: EntryId) {
    act.say = Some(said::voided());
    act.go = Some(Route::Job(job));
}
