//! The work under a standing proof, what ends it, and the change of shift.

mod before;

use super::Route;
use super::build::Page;
use super::context::{Act, Look};
use super::give_up::GIVE_UP;
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
use crate::text::{self, AskFirst, AskJob};
pub(super) use before::{act_earth, earths_in};

const ENDS: &str = "This ends the proof.";

/// The work step.
pub fn view(look: &Look, job: &Job) -> Page {
    let mut page = Page::new(text::title(Step::Work, job));
    super::job::lacking(&mut page, look, job, Step::Work);
    if let Some((stamp, clear)) = &job.finished {
        match &job.given_up {
            Some((_, why)) => page.fact("Isolation given up", format!("{why} ({})", look.by(stamp))),
            None => page.fact("Work finished", look.by(stamp)),
        };
        page.fact("Seen clear", clear);
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
            page.main("Begin work", "begin");
        }
        Standing::Proved { .. } => {
            page.caution(Tone::Must, "Something before this step is missing. Put it right before anybody works.");
            super::job::next(&mut page, job);
        }
        ended => {
            let why = match ended {
                Standing::Void { why } => format!(" {}", text::void(&why, look.world)),
                _ => String::new(),
            };
            page.caution(Tone::Forbid, format!("Do not work. No proof stands: treat as live.{why}"));
            super::job::next(&mut page, job);
        }
    }
    before::earths(&mut page, look, job);
    page.button("Something has changed", go(Route::Change(job.id())));
    page.button("Shift change", go(Route::Shift(job.id())));
    page.button("Locks and keys", go(Route::Locks(job.id())));
    page
}

/// The proof ended under the work: everything else waits until that is stopped.
pub(super) fn stop(page: &mut Page) {
    page.caution(Tone::Forbid, "No proof stands any more: treat as live. Get everybody clear now.");
    page.main("Stop work: everybody is clear", "stop");
}

/// What changed since the proof.
pub fn change(look: &Look, job: &Job) -> Page {
    let mut page = Page::new("Something has changed");
    page.caution(
        Tone::Forbid,
        text::in_terms(
            "Stop work first and get everybody clear. From the moment of the change, treat as live until it is proved dead again.",
        ),
    );

    page.heading("Another source was found");
    page.para(format!("{ENDS} A point has to cut the source off before you test again."));
    let kinds = options(&SourceKind::ALL, text::source_kind);
    page.choice("source-kind", "What kind of source", kinds, look.draft("source-kind"));
    page.entry("source-what", "What it is", "Its name on the equipment or the drawing.", look.draft("source-what"));
    page.entry("source-at", "Where it comes in", "", look.draft("source-at"));
    sources::control(&mut page, look);
    page.main("Save the source that was found", "source");

    page.heading("A voltage was met");
    page.para("Anything that showed a voltage, whoever saw it. Stop, get clear, treat as live.");
    page.entry("met-at", "Where it was met", "The conductor, terminal or part", look.draft("met-at"));
    page.field(
        "met-volts",
        "Volts, if it was a figure",
        "May stay empty",
        look.draft("met-volts"),
        EntryKind::Number,
        10,
    );
    page.toned("A voltage was met here", "met", Tone::Forbid);

    page.heading("The scope has changed");
    page.para(format!("{ENDS} What was proved was proved for another scope."));
    let scope = look.draft_or("scope", &job.scope);
    page.field("scope", "What will be worked on now", "", scope, EntryKind::Long, 500);
    page.entry("scope-why", "Why the scope changes", "", look.draft("scope-why"));
    page.button("Save the new scope", "scope");

    page.heading("A neutral is to be parted");
    super::asked::view(&mut page, look, job, None);

    page.heading("A neutral was parted");
    page.para(format!("{ENDS} A parted neutral can be live from another circuit: every pair is tested again."));
    page.entry("neutral", "Which neutral, and where", "", look.draft("neutral"));
    page.button("Save: neutral disconnected", "neutral");

    system::change(&mut page, look, job);
    system::stays_live(&mut page, look, job);

    rules::change(&mut page, look, job);

    page.heading("A point of isolation is missing");
    page.para(format!("{ENDS} The new point is opened, locked and signed before you test again."));
    page.button("Add a point of isolation", go(Route::Step(job.id(), Step::Points)));

    page.heading("A person leaves or joins");
    page.para(format!(
        "Who leaves takes their own lock off first. {ENDS} {}",
        text::in_terms(
            "Who joins fits their own lock at every point before they work. If in doubt, prove dead again before they begin."
        )
    ));
    page.button("People on the job", go(Route::Step(job.id(), Step::People)));

    page.heading("The work is not done now");
    page.para("What was opened can be closed again, from wherever the job stands.");
    page.button(GIVE_UP, go(Route::GiveUp(job.id())));
    page
}

/// The change of shift.
pub fn shift(look: &Look, job: &Job) -> Page {
    let mut page = Page::new("Shift change");
    page.caution(
        Tone::Must,
        "Leave no gap: the incoming person fits their own lock at every point before any lock of the outgoing person comes off.",
    );
    page.caution(
        Tone::Warn,
        "Taking the shift ends the proof. After it the outgoing person takes their own locks off, and the incoming person \
         proves dead again before any work.",
    );
    let mut without: Vec<EntryId> = look.acting.into_iter().collect();
    if let Some((_, from, to, told)) = &job.shift {
        taking(look, job, (*from, *to), told, &mut page);
        without.extend([*from, *to]);
    }
    let again = job.shift.is_some();
    page.heading(if again { "Offer it to somebody else" } else { "Offer the shift" });
    let people = people(look, job, &without);
    let route = go(Route::Step(job.id(), Step::People));
    if people.is_empty() {
        page.para("There is nobody else on this job to offer it to. Add the incoming person to the job first.");
        put(&mut page, "Add a person to the job", route);
        return page;
    }
    page.choice("to", "Who takes the shift", people, look.draft("to"));
    let hint = "State of the work, what is locked, what is still open, who was told.";
    page.field("told", "What you told them", hint, look.draft("told"), EntryKind::Long, 1000);
    put(&mut page, if again { "Offer the shift again" } else { "Offer the shift" }, "offer-shift");
    page.button("Add a person to the job", route);
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
            (act.alarm, act.say) = (true, Some("An indication. Stop, and treat as live.".into()));
            act.go = Some(Route::Step(job, Step::DeadTest));
        }
        "stop" => {
            act.keep(Some(job), Fact::WorkStopped {})?;
            act.say = Some(text::in_terms("Work is stopped. Treat as live until it is proved dead again."));
        }
        "leave" => {
            let why = act.need("why", AskJob::LeftWhy)?;
            act.keep(Some(job), Fact::WorkLeft { why })?;
            act.say = Some(text::in_terms("Saved. The proof has ended: prove dead again when you come back."));
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
            act.say =
                Some("Saved. The proof has ended: treat as live. Add the point that cuts this source off.".into());
            act.go = Some(Route::Step(job, Step::Points));
        }
        "scope" => {
            let scope = act.need("scope", AskJob::ScopeNew)?;
            let why = act.need("scope-why", AskJob::ScopeWhy)?;
            act.keep(Some(job), Fact::ScopeChanged { scope, why })?;
            voided(act, job);
            act.say = Some(
                "Saved. The proof has ended: treat as live. The new scope may have other sources and stored energy: look again.".into(),
            );
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
        page.fact("Indicator", text::instrument(look.world, run.indicator));
        page.fact("Indicator proved before", look.by(&run.before));
        if let Some(after) = run.after() {
            page.fact("Indicator proved after", look.by(&after.stamp));
        }
        let limited = job.limits().ac_mv > 0 || job.limits().dc_mv > 0;
        let none = if limited { "none above the limit for dead" } else { "none gave an indication" };
        page.fact("Pairs tested", format!("{}, {none}", job.plan().len()));
        let read = |t: &&Taken| matches!(t.reading, Reading::Millivolts(1..));
        for taken in run.readings.iter().filter(read) {
            page.fact(format!("{} – {}", taken.first, taken.then), text::reading(taken.reading));
        }
        for trouble in &job.troubles {
            let cause = job.causes.iter().rev().find(|c| c.of.contains(&trouble.stamp.id));
            let cause = cause.map_or_else(
                || "Cause not noted".into(),
                |c| format!("{}: {}", if c.found { "Cause" } else { "Cause not found" }, c.cause),
            );
            let what = match &trouble.kind {
                TroubleKind::Voltage(met) => format!("{} {}", text::met_at(met), text::reading(met.reading)),
                other => text::trouble(other),
            };
            page.fact(format!("Earlier: {what}"), format!("{}. {cause}", look.when(&trouble.stamp)));
        }
        if let Some(limit) = job.limit.as_ref().filter(|_| limited) {
            page.fact("Counted as no indication", text::limit_set(limit));
        }
    }
    for lock in job.locks_on() {
        if let Means::Other(what) = &lock.means {
            let (place, owner) = (text::place(job, lock.on), look.name(lock.owner));
            page.caution(Tone::Warn, format!("{place} is secured for {owner} without a lock: {what}."));
        }
    }
    page.caution(
        Tone::Warn,
        "The proof holds for this place and this scope only. It ends when the work is left or finished, the shift changes, a \
         lock comes off, a point is closed or added, another source is found, a neutral is parted or the scope changes. Your site's rules \
         may ask for more.",
    );
}

fn working(look: &Look, page: &mut Page) {
    page.heading("When the work is finished");
    let hint = &text::in_terms("Counted people and tools, looked into the panel, earths off.");
    let label = &text::in_terms("How you saw that people, tools and earths are clear");
    page.field("clear", label, hint, look.draft("clear"), EntryKind::Long, 500);
    page.main("Work is finished", "finish");

    page.heading("If you leave before that");
    page.para("Leaving ends the proof. Coming back means proving the indicator and testing every pair again.");
    page.entry("why", "Why the work is left", "Break, end of the day, called away.", look.draft("why"));
    page.button("Leave the work", "leave");
}

fn taking(look: &Look, job: &Job, (from, to): (EntryId, EntryId), told: &str, page: &mut Page) {
    let name = look.name(to);
    page.heading(format!("Offered to {name}"));
    page.fact("From", look.name(from));
    page.fact("Told", told);
    let gap = gap(&job.points, to, &job.locks);
    if gap.is_empty() {
        page.caution(Tone::Must, format!("Give the device to {name}. {name} signs below."));
        sign_here(look, page, to, format!("{name} signs for the shift"));
        page.main(format!("{name} takes the shift"), "take-shift");
        return;
    }
    for point in gap {
        page.caution(Tone::Must, format!("{name} has no lock of their own on {}.", point.label));
    }
    page.main(format!("Fit the locks of {name}"), go(Route::Locks(job.id())));
}

fn take_shift(act: &mut Act, job: EntryId) -> Result<(), NotDone> {
    let (offer, from, to, _) = act.job(job)?.shift.ok_or(AskJob::ShiftOffered)?;
    let (from, name) = (act.world().name(from), act.world().name(to));
    let mark = act.signature(&name)?;
    keep_as(act, job, to, Fact::ShiftTaken { offer, mark })?;
    act.say = Some(format!(
        "Kept. {name} answers for the isolation and has this device. Hand it to {from}, who takes their own locks off and leaves the job under People. \
         {}",
        text::in_terms("Then prove dead again.")
    ));
    act.go = Some(Route::Locks(job));
    Ok(())
}

fn voided(act: &mut Act, job: EntryId) {
    act.say = Some(text::in_terms("Saved. The proof has ended: treat as live until it is proved dead again."));
    act.go = Some(Route::Job(job));
}
