//! Points of isolation, and lock boxes for their keys.

use super::super::Route;
use super::super::build::Page;
use super::super::context::{Act, Look};
use super::super::home::{UNKNOWN, distinct, go, id, options, picked, word_of};
use super::super::parts::Tone;
use super::super::supply::cut::in_short;
use super::lead;
use crate::app::NotDone;
use crate::job::Job;
use crate::job::steps::Step;
use crate::journal::{EntryId, Fact};
use crate::point::{Point, PointKind};
use crate::supply::{Cut, Position};
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
        let same = alike.map_or_else(String::new, |(_, p)| {
            format!(" This is the point known from {}.", text::job_title(p.title.as_deref()))
        });
        page.fact(point.label.clone(), format!("{}{same}", in_words(job, point)));
    }
    known_here(page, look);
    page.row("Supply network", vec![in_short(look, job)], go(Route::Cut(job.id())));
    if let Some(cut) = look.cut {
        let taken = |id: &String| job.points.iter().any(|p| p.switch.as_ref() == Some(id));
        let links = cut.network.links().iter().filter(|l| l.kind.parts() && !taken(&l.id));
        switches.push((NOT_DRAWN.to_owned(), "It is not drawn there".to_owned()));
        switches.extend(links.take(60).map(|l| (l.id.clone(), l.id.clone())));
    }
    page.caution(
        Tone::Forbid,
        "Stop buttons, interlocks and contactors are not points of isolation. Find the device that parts the conductors.",
    );
    typed(page, look);
    page.entry("label", "Point, as it is labelled", "Such as: Q1 main switch", look.draft("label"));
    page.entry("at", "Where the point is", "Room and board", look.draft("at"));
    page.choice("kind", "What it is", options(&PointKind::ALL, text::point_kind), look.draft("kind"));
    let lockable = [("yes", "It takes a lock"), ("no", "It takes no lock")];
    let lockable = lockable.map(|(value, label)| (value.to_owned(), label.to_owned())).into();
    page.choice("lockable", "Can it be locked open?", lockable, look.draft("lockable"));
    let poles = job.all_conductors().into_iter().map(|c| (c.name.clone(), c.name)).collect();
    page.several("poles", "Conductors that it opens", poles, look.draft("poles"));
    page.para("Mark what it really opens. Whether the neutral must be opened as well, your local rules say.");
    let mut cuts = vec![(SUPPLY.to_owned(), "The normal supply".to_owned())];
    cuts.extend(job.found().filter_map(|source| {
        let found = source.found.as_ref()?;
        Some((
            source.stamp.id.to_string(),
            format!("{}: {}, at {}", text::source_kind(source.kind), found.what, found.at),
        ))
    }));
    // Where there is only one source there is nothing to choose wrongly.
    let only = if cuts.len() == 1 { SUPPLY } else { "" };
    page.choice("cuts", "What it cuts off", cuts, look.draft_or("cuts", only));
    if !switches.is_empty() {
        page.choice("switch", "Which switch of the supply network it is", switches, look.draft("switch"));
    }
    lead(page, job, Step::Points, "Add this point", "point");

    super::super::system::stays_live(page, look, job);

    page.heading("Use a lock box");
    page.para(
        "For several people: the keys of the locks at the points go into the box, and each person locks the box.",
    );
    for lockbox in &job.boxes {
        page.fact(format!("Lock box {}", lockbox.label), format!("{} ({})", lockbox.at, look.by(&lockbox.stamp)));
    }
    page.entry("box-label", "Number or name of the box", "", look.draft("box-label"));
    page.entry("box-at", "Where the box hangs", "", look.draft("box-at"));
    page.button("Add this lock box", "box");
}

/// Points that other jobs at this site know: one tap fills the form.
fn known_here(page: &mut Page, look: &Look) {
    if look.site.points.is_empty() {
        return;
    }
    page.heading("Known at this site");
    for point in &look.site.points {
        let lines = vec![format!("Known from {}. Tap to use it here.", text::job_title(point.title.as_deref()))];
        page.row(format!("{}, {}", point.label, point.at), lines, format!("known {}", point.point));
    }
    page.heading("One more point");
}

/// Says that what stands in the form is a point that is known.
fn typed(page: &mut Page, look: &Look) {
    let Some(known) = &look.site.typed else { return };
    page.caution(
        Tone::Must,
        format!(
            "This is the point known from {}: {}, {}. Every lock on it counts here too.",
            text::job_title(known.title.as_deref()),
            known.label,
            known.at
        ),
    );
    if !look.draft("same-as").is_empty() {
        page.toned("It is another point", "unknown", Tone::Quiet);
    }
}

/// A point in a few sentences: what it is, where, what it opens and cuts off.
pub(in crate::screens) fn in_words(job: &Job, point: &Point) -> String {
    let cuts = match point.cuts {
        None => "the normal supply".to_owned(),
        Some(id) => job
            .found()
            .find(|s| s.stamp.id == id)
            .and_then(|s| s.found.as_ref())
            .map_or_else(|| "a source that is no longer listed".to_owned(), |f| f.what.clone()),
    };
    let lockable = if point.lockable { "Takes a lock" } else { "Takes no lock" };
    let stays = if point.stays_open { " Open in normal service: it stays open." } else { "" };
    format!(
        "{}, {}. Opens {}. Cuts off {cuts}. {lockable}.{stays}",
        text::point_kind(point.kind),
        point.at,
        point.poles.join(", ")
    )
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
                act.say = Some(format!(
                    "Saved. This is the point known from {}: {}, {}. If they are two, say so on its step.",
                    text::job_title(known.title.as_deref()),
                    known.label,
                    known.at
                ));
            }
            return Ok(());
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
    act.say = Some(format!(
        "Known from {}. Check each line at the switch, then add it.",
        text::job_title(known.title.as_deref())
    ));
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
