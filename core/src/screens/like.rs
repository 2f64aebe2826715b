//! A new job that is like an earlier one: what stays the same is confirmed together, and everything that a life rests on is asked anew.

use std::collections::BTreeSet;

use super::build::Page;
use super::context::{Act, Look};
use super::home::word_of;
use super::parts::Tone;
use crate::app::NotDone;
use crate::job::Job;
use crate::journal::fact::Duty;
use crate::journal::{EntryId, Fact};
use crate::text;
use crate::text::screens::again::TakenAlong;

/// The job that is the pattern.
pub(super) const LIKE: &str = "like";
/// Whether the whole form is open, with the pattern's values in it.
const WHOLE: &str = "like-whole";
/// What is taken along.
const ALONG: &str = "along";

/// The pattern that was chosen.
fn pattern<'a>(look: &'a Look) -> Option<&'a Job> {
    let chosen: EntryId = look.draft(LIKE).parse().ok()?;
    look.site.before.iter().find(|job| job.id() == chosen)
}

/// Jobs that the new one may be like; or, once one is chosen, what is taken from it. Whether that is the whole form.
pub(super) fn view(page: &mut Page, look: &Look) -> bool {
    let Some(job) = pattern(look) else {
        if !look.site.before.is_empty() {
            page.heading(text::screens::again::like_heading());
        }
        for job in &look.site.before {
            page.row(
                text::screens::again::like(&job.title),
                vec![text::screens::again::where_of(job)],
                format!("like {}", job.id()),
            );
        }
        return false;
    };
    let whole = !look.draft(WHOLE).is_empty();
    page.para(text::screens::again::like_what(&job.title));
    if !whole {
        super::home::what(page, look);
        let site = job.site.and_then(|site| look.world.sites.get(&site));
        page.fact(text::screens::plan::site(), site.cloned().unwrap_or_default());
        page.fact(text::screens::plan::equipment(), text::screens::again::where_of(job));
        page.fact(text::screens::plan::scope_of_work(), job.scope.clone());
        let supply = [text::system(job.system), text::earthing(job.earthing), text::rules_in_short(job.rule_set)];
        page.fact(text::screens::plan::conductors_and_rules(), supply.join(". "));
    }
    let all = along(job, look.acting, |person| look.name(person));
    if !all.is_empty() {
        let chosen: Vec<String> = all.iter().map(|one| one.key.clone()).collect();
        let options = all.into_iter().map(|one| (one.key, one.label)).collect();
        page.several(ALONG, &text::screens::again::taken_along(), options, look.draft_or(ALONG, &chosen.join("\n")));
    }
    if !whole {
        page.button(text::screens::again::like_change(), "like-change");
    }
    page.toned(text::screens::again::like_none(), "like-none", Tone::Quiet);
    !whole
}

struct Along {
    key: String,
    label: String,
    fact: Fact,
}

/// What can be taken along of `job`, in the order in which it is kept.
fn along(job: &Job, acting: Option<EntryId>, name: impl Fn(EntryId) -> String) -> Vec<Along> {
    let mut all = Vec::new();
    let mut take =
        |key: String, what: TakenAlong, fact| all.push(Along { key, label: text::screens::again::taken(what), fact });
    // A permit is of one job; that none is asked for may hold again.
    if let Some((_, Err(why))) = &job.permit {
        let fact = Fact::PermitNoted { reference: None, why_none: Some(why.clone()) };
        take("no-permit".into(), TakenAlong::NoPermit(why), fact);
    }
    let mut people = BTreeSet::new();
    for worker in job.workers.iter().rev() {
        let (person, duty) = (worker.person, worker.duty);
        // What somebody was last counts; and who opens the job is in charge of it.
        if people.insert(person) && Some(person) != acting && duty != Duty::InCharge {
            let what = TakenAlong::Person { name: &name(person), duty: &text::screens::plan::duty(duty) };
            take(format!("person-{person}"), what, Fact::WorkerJoined { person, duty });
        }
    }
    // A point of another source comes with the source, and that is looked for anew.
    for point in job.points.iter().filter(|p| p.cuts.is_none()) {
        let fact = Fact::PointAdded {
            label: point.label.clone(),
            at: point.at.clone(),
            kind: point.kind,
            lockable: point.lockable,
            poles: point.poles.clone(),
            cuts: None,
            switch: point.switch.clone(),
            stays_open: point.stays_open,
            same_as: Some(point.stamp.id),
        };
        take(format!("point-{}", point.stamp.id), TakenAlong::Point { label: &point.label, at: &point.at }, fact);
    }
    for circuit in &job.circuits {
        let (label, serves) = (circuit.label.clone(), circuit.serves.clone());
        let what = TakenAlong::Circuit { label: &circuit.label, serves: &circuit.serves };
        take(format!("circuit-{}", circuit.stamp.id), what, Fact::CircuitListed { label, serves });
    }
    if let Some((_, why)) = &job.no_circuits {
        take("no-circuits".into(), TakenAlong::NoCircuits(why), Fact::NoCircuits { why: why.clone() });
    }
    all
}

/// Takes an earlier job as the pattern, or lets it go.
pub(super) fn act(act: &mut Act, verb: &str, arg: &str) -> Result<(), NotDone> {
    match verb {
        "like" => {
            let job = act.job(super::home::id(arg)?)?;
            let site = job.site.and_then(|site| act.world().sites.get(&site).cloned()).unwrap_or_default();
            for (field, value) in [
                (LIKE, job.id().to_string()),
                ("site", site),
                ("place", job.place.clone()),
                ("equipment", job.equipment.clone()),
                ("scope", job.scope.clone()),
                ("rules", job.rule_set.as_ref().map_or_else(String::new, word_of)),
                ("system", word_of(&job.system)),
                (super::system::OWN, super::system::typed(&job.own)),
                ("earthing", word_of(&job.earthing)),
                ("volts", crate::prove::volts(job.nominal)),
                ("order", word_of(&job.order)),
                ("tolerance", word_of(&job.tolerance)),
            ] {
                act.note(field, &value);
            }
        }
        "like-change" => {
            act.keep_typed();
            act.note(WHOLE, "yes");
        }
        _ => {
            for field in [LIKE, WHOLE, ALONG] {
                act.note(field, "");
            }
        }
    }
    Ok(())
}

/// Keeps what is taken along into the job that was just opened; whether there was a pattern.
pub(super) fn carry(act: &mut Act, opened: EntryId) -> Result<bool, NotDone> {
    let Ok(like) = act.draft(LIKE).parse::<EntryId>() else { return Ok(false) };
    let (before, now) = (act.job(like)?, act.job(opened)?);
    let chosen = act.given(ALONG);
    for one in along(&before, act.app.acting, |_| String::new()) {
        // A point is a thing of its site.
        let here = before.site == now.site || !matches!(one.fact, Fact::PointAdded { .. });
        if here && chosen.lines().any(|key| key == one.key) {
            act.keep(Some(opened), one.fact)?;
        }
    }
    Ok(true)
}
