//! Points of isolation, and lock boxes for their keys.

use super::super::Route;
use super::super::build::Page;
use super::super::context::{Act, Look};
use super::super::home::{UNKNOWN, distinct, go, id, options, picked, word_of};
use super::super::parts::Tone;
use super::super::supply::cut::in_short;
use super::{ONLY, lead_only};
use crate::app::NotDone;
use crate::job::Job;
use crate::job::SupplyName;
use crate::job::steps::Step;
use crate::journal::{EntryId, Fact};
use crate::point::{Point, PointKind};
use crate::prove::Role;
use crate::supply::{Cut, Position};
use crate::text::screens::job as said_job;
use crate::text::screens::plan as said;
use crate::text::screens::supply as said_supply;
use crate::text::{self, AskPlan, Gone};

/// What stands for the normal supply in the choice of what a point cuts off.
const SUPPLY: &str = "supply";
/// What stands for a point that is not drawn in the site's supply network.
const NOT_DRAWN: &str = "-";

/// The points, and a form for one more.
pub fn view(page: &mut Page, look: &Look, job: &Job) {
    let mut switches = Vec::new();
    for point in &job.points {
        let alike = look.site.alike.iter().find(|(own, _)| *own == point.stamp.id);
        let words = in_words(job, point);
        let words = match alike {
            Some((_, p)) => said::point_same(words, text::job_title(p.title.as_deref())),
            None => words,
        };
        page.fact(point.label.clone(), words);
    }
    known_here(page, look);
    page.row(said_supply::cut_title(), vec![in_short(look, job)], go(Route::Cut(job.id())));
    if let Some(cut) = look.cut {
        let taken = |id: &String| job.points.iter().any(|p| p.switch.as_ref() == Some(id));
        let links = cut.network.links().iter().filter(|l| l.kind.parts() && !taken(&l.id));
        switches.push((NOT_DRAWN.to_owned(), said::point_not_drawn()));
        switches.extend(links.take(60).map(|l| (l.id.clone(), l.id.clone())));
    }
    page.caution(Tone::Forbid, said::points_say());
    typed(page, look);
    page.entry("label", &said::point(), &said::point_hint(), look.draft("label"));
    page.entry("at", &said::point_at(), &said::point_at_hint(), look.draft("at"));
    page.choice("kind", &said::point_kind(), options(&PointKind::ALL, text::point_kind), look.draft("kind"));
    let lockable = [("yes", said::point_takes_lock()), ("no", said::point_takes_none())];
    let lockable = lockable.map(|(value, label)| (value.to_owned(), label)).into();
    page.choice("lockable", &said::point_lockable(), lockable, look.draft("lockable"));
    page.several("poles", &said::point_poles(), poles(job), look.draft("poles"));
    page.para(said::point_poles_say());
    let mut cuts = vec![(SUPPLY.to_owned(), said::point_cuts_supply())];
    cuts.extend(job.found().filter_map(|source| {
        let found = source.found.as_ref()?;
        let label = said::point_cuts_source(text::source_kind(source.kind), &found.what, &found.at);
        Some((source.stamp.id.to_string(), label))
    }));
    // Where there is only one source there is nothing to choose wrongly.
    let only = if cuts.len() == 1 { SUPPLY } else { "" };
    page.choice("cuts", &said::point_cuts(), cuts, look.draft_or("cuts", only));
    if !switches.is_empty() {
        page.choice("switch", &said::point_switch(), switches, look.draft("switch"));
    }
    lead_only(page, job, Step::Points, [said::point_add(), said::point_only()], "point");

    super::super::system::stays_live(page, look, job);

    page.heading(said::lock_box_use());
    page.para(said::lock_box_says());
    for lockbox in &job.boxes {
        page.fact(said::lock_box(&lockbox.label), said_job::noted(&lockbox.at, look.by(&lockbox.stamp)));
    }
    page.entry("box-label", &said::lock_box_label(), "", look.draft("box-label"));
    page.entry("box-at", &said::lock_box_at(), "", look.draft("box-at"));
    page.button(said::lock_box_add(), "box");
}

/// What a point may open: the sets that a switch opens as a rule, each in one answer, all lines and all with their neutral; then each
/// conductor by itself.
fn poles(job: &Job) -> Vec<(String, String)> {
    let all = job.all_conductors();
    let of = |roles: &[Role]| -> Vec<String> {
        all.iter().filter(|c| roles.contains(&c.role)).map(|c| c.name.clone()).collect()
    };
    let (lines, with_neutral) = (of(&[Role::Line]), of(&[Role::Line, Role::Neutral]));
    let sets = [(lines.len() > 1).then(|| lines.clone()), (with_neutral.len() > lines.len()).then_some(with_neutral)];
    let set = |names: Vec<String>| (names.join("\n"), text::commas(names));
    sets.into_iter().flatten().map(set).chain(all.iter().map(|c| (c.name.clone(), c.name.clone()))).collect()
}

/// Points that other jobs at this site know: one tap fills the form.
fn known_here(page: &mut Page, look: &Look) {
    if look.site.points.is_empty() {
        return;
    }
    page.heading(said::points_known());
    for point in &look.site.points {
        let lines = vec![said::point_known_from(text::job_title(point.title.as_deref()))];
        page.row(said::point_known(&point.label, &point.at), lines, format!("known {}", point.point));
    }
    page.heading(said::points_more());
}

/// Says that what stands in the form is a point that is known.
fn typed(page: &mut Page, look: &Look) {
    let Some(known) = &look.site.typed else { return };
    let job = text::job_title(known.title.as_deref());
    page.caution(Tone::Must, said::point_typed(job, &known.label, &known.at));
    if !look.draft("same-as").is_empty() {
        page.toned(said::point_another(), "unknown", Tone::Quiet);
    }
}

/// A point in a few sentences: what it is, where, what it opens and cuts off.
pub(in crate::screens) fn in_words(job: &Job, point: &Point) -> String {
    let cuts = match point.cuts {
        None => SupplyName::Normal,
        Some(id) => job
            .found()
            .find(|s| s.stamp.id == id)
            .and_then(|s| s.found.as_ref())
            .map_or(SupplyName::Unlisted, |f| SupplyName::Source(f.what.clone())),
    };
    said::point_in_words(point, text::supply_name(&cuts))
}

/// Adds a point or a box.
pub fn act(act: &mut Act, job: EntryId, verb: &str, arg: &str) -> Result<(), NotDone> {
    if verb == "stays-live" {
        return super::super::system::act(act, job, verb);
    }
    let now = act.job(job)?;
    let fact = match verb {
        "known" => return fill_in(act, &now, id(arg)?),
        "unknown" => {
            act.note("same-as", "");
            return Ok(());
        }
        "point" => {
            let cut = act.cut(&now).ok();
            let fact = point(act, &now, cut.as_ref())?;
            let added = act.keep(Some(job), fact)?;
            if let Some(known) = act.app.beside_point(job, added).first() {
                let job = text::job_title(known.title.as_deref());
                act.say = Some(said::point_added_known(job, &known.label, &known.at));
            }
            return if arg == ONLY { act.onward(now.id(), Step::Points) } else { Ok(()) };
        }
        "box" => {
            let label = act.need("box-label", AskPlan::Box)?;
            let at = act.need("box-at", AskPlan::BoxAt)?;
            distinct(now.boxes.iter().map(|b| b.label.as_str()), &label)?;
            Fact::BoxPlaced { label, at }
        }
        _ => return Err(UNKNOWN.into()),
    };
    act.keep(Some(job), fact).map(drop)
}

/// Puts a point that another job knows into the form; what it cuts off here, whoever adds it says.
fn fill_in(act: &mut Act, job: &Job, point: EntryId) -> Result<(), NotDone> {
    let ask = Gone::PointKnown;
    let known = act.app.point_known(job, point).ok_or(ask)?;
    let there = act.job(known.job)?;
    let there = there.point(point).ok_or(ask)?;
    let own: Vec<String> = job.all_conductors().into_iter().map(|c| c.name).collect();
    let poles: Vec<&str> = there.poles.iter().filter(|p| own.contains(p)).map(String::as_str).collect();
    act.note("same-as", &point.to_string());
    act.note("label", &known.label);
    act.note("at", &known.at);
    act.note("kind", &word_of(&there.kind));
    act.note("lockable", if there.lockable { "yes" } else { "no" });
    act.note("poles", &poles.join("\n"));
    act.note("switch", there.switch.as_deref().unwrap_or_default());
    act.say = Some(said::point_filled_in(text::job_title(known.title.as_deref())));
    Ok(())
}

fn point(act: &Act, job: &Job, cut: Option<&Cut>) -> Result<Fact, NotDone> {
    let label = act.need("label", AskPlan::Point)?;
    distinct(job.points.iter().map(|p| p.label.as_str()), &label)?;
    let at = act.need("at", AskPlan::PointAt)?;
    let kind = picked(act, "kind", AskPlan::PointKind)?;
    let ask = AskPlan::PointLockable;
    let lockable = match act.need("lockable", ask)?.as_str() {
        "yes" => true,
        "no" => false,
        _ => return Err(ask.into()),
    };
    let marked = act.need("poles", AskPlan::PointPoles)?;
    let poles: Vec<String> =
        job.all_conductors().into_iter().map(|c| c.name).filter(|name| marked.lines().any(|l| l == name)).collect();
    if poles.is_empty() {
        return Err(AskPlan::PointPoles.into());
    }
    let ask = AskPlan::PointCuts;
    let cuts = if act.need("cuts", ask)? == SUPPLY { None } else { Some(act.need_id("cuts", ask)?) };
    let link = match cut {
        None => None,
        Some(cut) => {
            let ask = AskPlan::PointSwitch;
            let switch = act.need("switch", ask)?;
            if switch == NOT_DRAWN { None } else { Some(cut.network.link(&switch).ok_or(ask)?) }
        }
    };
    let stays_open = link.is_some_and(|l| l.normally == Position::Open);
    Ok(Fact::PointAdded {
        label,
        at,
        kind,
        lockable,
        poles,
        cuts,
        switch: link.map(|l| l.id.clone()),
        stays_open,
        same_as: act.draft("same-as").parse().ok(),
    })
}
