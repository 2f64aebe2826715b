//! A job beside its site's network: what is worked on, whether every way to it is cut, which points would cut it, and what a person
//! says of a way that does not count.

use super::super::Route;
use super::super::build::Page;
use super::super::context::{Act, Look};
use super::super::home::{UNKNOWN, go};
use super::super::parts::{EntryKind, Tone};
use crate::app::NotDone;
use crate::job::Job;
use crate::job::steps::Step;
use crate::journal::fact::{Found, SourceKind};
use crate::journal::{EntryId, Fact};
use crate::point::PointKind;
use crate::supply::{
    Check, Conductors, Cut, LinkKind, Network, NodeKind, Path, Position, Proposal, Shown, SourceSort, check, propose,
};
use crate::text::screens::supply as said;
use crate::text::{self, AskSupply, Gone};

/// Proposals that are shown; the first and the last are the two ends.
const SHOWN: usize = 6;

/// One line for the row on the job's screen.
pub fn in_short(look: &Look, job: &Job) -> String {
    match look.cut {
        None => said::cut_not_drawn(),
        Some(_) if job.zone.is_empty() => said::cut_say_zone(),
        Some(cut) => match cut.unanswered(job, &cut.plan).len() {
            0 => said::cut_all(text::commas(job.zone.clone())),
            count => said::cut_some(count, text::commas(job.zone.clone())),
        },
    }
}

/// The screen.
pub fn view(look: &Look, job: &Job) -> Page {
    let mut page = Page::new(said::cut_title());
    let Some(site) = job.site else {
        page.para(said::cut_no_site());
        return page;
    };
    let Some(cut) = look.cut else {
        page.para(said::cut_nothing_drawn());
        page.main(said::cut_draw(), go(Route::Network(site)));
        return page;
    };
    page.caution(Tone::Warn, text::other_sources());
    if !job.zone.is_empty() {
        answer(&mut page, look, job, cut);
    }
    if !job.zone.is_empty() {
        proposals(&mut page, look, job, cut);
        differ_form(&mut page, look, job, cut);
    }
    zone_form(&mut page, look, job, cut);
    page.button(said::cut_whole(), go(Route::Network(site)));
    if page.main.is_none() {
        super::super::job::next(&mut page, job);
    }
    page
}

fn answer(page: &mut Page, look: &Look, job: &Job, cut: &Cut) {
    // Before anything is locked the plan is what there is to judge.
    let isolated = job.points.iter().any(|p| p.opened.is_some());
    let answer = if isolated { &cut.now } else { &cut.plan };
    let locked = if isolated { &cut.locked } else { &cut.planned };
    let Some(check) = answer else {
        page.caution(Tone::Forbid, said::cut_zone_gone(text::commas(job.zone.clone())));
        return;
    };
    let open = cut.unanswered(job, answer);
    let says = text::check(check);
    match (check.cut, open.is_empty(), isolated) {
        (true, _, true) => page.fact(said::cut_now(), says),
        (true, _, false) => page.fact(said::cut_planned(), says),
        (false, true, true) => page.caution(Tone::Warn, said::cut_now_answered(says)),
        (false, true, false) => page.caution(Tone::Warn, said::cut_planned_answered(says)),
        (false, false, true) => page.caution(Tone::Forbid, said::cut_now_says(says)),
        (false, false, false) => page.caution(Tone::Forbid, said::cut_planned_says(says)),
    };
    let states: Vec<_> = cut.standing(job).into_iter().collect();
    let (drawing, words) =
        text::draw(&cut.network, &Shown { zone: &job.zone, locked, states: &states, check: Some(check) });
    page.drawing(words, drawing);
    for (_, why) in open.iter().take(SHOWN) {
        page.caution(Tone::Forbid, text::uncut(why));
    }
    if open.len() > SHOWN {
        page.para(said::cut_more(open.len() - SHOWN));
    }
    for (link, lock) in &cut.shared {
        page.fact(said::cut_shared(link), said::cut_shared_lock(&lock.label, look.name(lock.owner), &lock.job_title));
    }
    for differs in &job.differs {
        page.fact(said::cut_does_not_count(), said::cut_does_not_count_why(&differs.why, look.by(&differs.stamp)));
    }
}

fn zone_form(page: &mut Page, look: &Look, job: &Job, cut: &Cut) {
    page.heading(said::cut_zone());
    let parts = cut.network.nodes().iter().map(|n| (n.id.clone(), n.id.clone()));
    let links = cut.network.links().iter().map(|l| (l.id.clone(), said::cut_link_itself(&l.id)));
    let parts: Vec<_> = parts.chain(links).take(60).collect();
    page.several("zone", &said::cut_zone_parts(), parts, look.draft_or("zone", &job.zone.join("\n")));
    if job.zone.is_empty() {
        page.main(said::cut_save_zone(), "zone");
    } else {
        page.button(said::cut_save_zone(), "zone");
    }
}

fn proposals(page: &mut Page, look: &Look, job: &Job, cut: &Cut) {
    page.heading(said::cut_points());
    let Ok(found) = propose(&cut.network, &job.zone, &cut.standing_before(job)) else { return };
    for says in text::proposals(&found) {
        page.caution(Tone::Warn, says);
    }
    let count = found.proposals.len();
    let ends = |i: &usize| *i + 1 == count || *i + 1 < SHOWN;
    for i in (0..count).filter(ends) {
        let proposal = &found.proposals[i];
        if proposal.lock.is_empty() {
            continue;
        }
        page.fact(said::cut_lock(text::commas(proposal.lock.clone())), proposed(proposal));
        let missing = missing(job, proposal);
        if missing.is_empty() {
            page.para(said::cut_points_here());
        } else {
            let label = said::cut_plan(text::commas(missing));
            let action = format!("plan {i}");
            let planned = job.points.is_empty() || cut.plan.as_ref().is_some_and(|c| !c.cut);
            if planned && page.main.is_none() && i == 0 && look.acting.is_some() {
                page.main(label, action);
            } else {
                page.button(label, action);
            }
        }
    }
    page.para(said::cut_proposals());
}

fn proposed(proposal: &Proposal) -> String {
    let mut says = vec![said::cut_worth(text::capital(&text::worth(proposal.why)))];
    says.push(match proposal.loses.len() {
        0 => said::cut_nothing_lost(),
        _ => said::cut_stops(text::semicolons(proposal.loses.clone())),
    });
    if !proposal.tell.is_empty() {
        says.push(said::cut_tell(text::semicolons(proposal.tell.clone())));
    }
    if !proposal.check.cut {
        says.push(text::check(&proposal.check));
    }
    says.into_iter().reduce(text::sentences).unwrap_or_default()
}

fn missing(job: &Job, proposal: &Proposal) -> Vec<String> {
    let planned = |id: &String| job.points.iter().any(|p| p.switch.as_ref() == Some(id));
    proposal.lock.iter().filter(|id| !planned(id)).cloned().collect()
}

fn differ_form(page: &mut Page, look: &Look, job: &Job, cut: &Cut) {
    let open = cut.unanswered(job, &cut.plan);
    if open.is_empty() {
        return;
    }
    page.heading(said::cut_if_not());
    page.caution(Tone::Warn, said::cut_if_not_says());
    let options = open.iter().take(20).map(|(key, why)| (key.clone(), text::uncut(why))).collect();
    page.several("ways", &said::cut_which(), options, look.draft("ways"));
    page.field("why", &said::cut_why(), &said::cut_why_hint(), look.draft("why"), EntryKind::Long, 400);
    page.button(said::cut_answer(), "differ");
}

/// What is done here.
pub fn act(act: &mut Act, job: EntryId, verb: &str, arg: &str) -> Result<(), NotDone> {
    let now = act.job(job)?;
    match verb {
        "zone" => {
            let marked = act.need("zone", AskSupply::Zone)?;
            let zone = marked.lines().map(str::to_owned).collect();
            act.keep(Some(job), Fact::ZoneNoted { zone })?;
            act.say = Some(said::cut_zone_saved());
            Ok(())
        }
        "differ" => {
            let marked = act.need("ways", AskSupply::Ways)?;
            let why = act.need("why", AskSupply::WaysWhy)?;
            let ways = marked.lines().map(str::to_owned).collect();
            act.keep(Some(job), Fact::CutDiffers { ways, why }).map(drop)
        }
        "plan" => {
            let cut = act.cut(&now)?;
            let found = propose(&cut.network, &now.zone, &cut.standing_before(&now))?;
            let proposal = arg.parse::<usize>().ok().and_then(|i| found.proposals.get(i));
            let proposal = proposal.ok_or(Gone::Proposal)?;
            plan(act, &now, &cut.network, proposal)
        }
        _ => Err(UNKNOWN.into()),
    }
}

/// Plans the points of a proposal that are not in the job yet: at once where it is known what they open, by the form where not.
fn plan(act: &mut Act, job: &Job, network: &Network, proposal: &Proposal) -> Result<(), NotDone> {
    let (mut added, mut asked) = (Vec::new(), None);
    for id in missing(job, proposal) {
        let link = network.link(&id).ok_or(UNKNOWN)?;
        let stays_open = link.normally == Position::Open;
        let label = if link.label.is_empty() { &link.id } else { &link.label };
        // A point that was planned before the switch was drawn.
        if let Some(point) = job.points.iter().find(|p| p.switch.is_none() && p.label == *label) {
            let (point, switch) = (point.stamp.id, link.id.clone());
            act.keep(Some(job.id()), Fact::PointDrawn { point, switch, stays_open })?;
            added.push(link.id.clone());
            continue;
        }
        let here: Vec<String> = job.conductors().into_iter().map(|c| c.name).collect();
        let poles: Vec<String> = match &link.poles {
            Some(Conductors::Names(names)) => names.iter().filter(|n| here.contains(n)).cloned().collect(),
            _ => Vec::new(),
        };
        if poles.is_empty() {
            asked.get_or_insert(id);
            continue;
        }
        let cuts = cuts(act, job, network, proposal, &link.id)?;
        act.keep(
            Some(job.id()),
            Fact::PointAdded {
                label: label.clone(),
                at: if link.place.is_empty() {
                    format!("between {} and {}", link.from, link.to)
                } else {
                    link.place.clone()
                },
                kind: if link.kind == LinkKind::Inlet { PointKind::Plug } else { PointKind::SwitchDisconnector },
                lockable: true,
                poles,
                cuts,
                switch: Some(link.id.clone()),
                stays_open,
                same_as: None,
            },
        )?;
        added.push(link.id.clone());
    }
    let planned = said::cut_planned_points(text::commas(added.clone()));
    act.say = Some(match (&asked, added.is_empty()) {
        (None, _) if proposal.tell.is_empty() => planned,
        (None, _) => text::sentences(planned, said::cut_tell_people(text::semicolons(proposal.tell.clone()))),
        (Some(id), true) => said::cut_poles_unknown(id),
        (Some(id), false) => text::sentences(planned, said::cut_poles_unknown(id)),
    });
    let points = Route::Step(job.id(), Step::Points);
    if let Some(link) = asked.and_then(|id| network.link(&id)) {
        let label = if link.label.is_empty() { &link.id } else { &link.label };
        for (field, value) in [("label", label), ("at", &link.place), ("lockable", &"yes".into()), ("switch", &link.id)]
        {
            act.prefill(points, field, value);
        }
    }
    act.go = Some(points);
    Ok(())
}

/// Which source a point cuts off: of those that reach the zone when only this point is closed, the nearest. A generator's own way into a
/// board is the generator's, also where the grid could come round by other open ways.
fn cuts(
    act: &mut Act,
    job: &Job,
    network: &Network,
    proposal: &Proposal,
    link: &str,
) -> Result<Option<EntryId>, NotDone> {
    let rest: Vec<&String> = proposal.lock.iter().filter(|id| *id != link).collect();
    let Ok(Check { paths, .. }) = check(network, &job.zone, &rest) else { return Ok(None) };
    let from = |path: &Path| network.node(path.ids.first()?).filter(|n| n.kind == NodeKind::Source);
    let nearest = paths.iter().filter(|p| from(p).is_some()).min_by_key(|p| p.ids.len()).and_then(from);
    let Some(source) = nearest.filter(|n| n.sort != SourceSort::Grid && n.sort != SourceSort::Unsaid) else {
        return Ok(None);
    };
    let kind = match source.sort {
        SourceSort::Generator => SourceKind::Generator,
        SourceSort::Ups => SourceKind::Ups,
        SourceSort::Pv => SourceKind::Pv,
        SourceSort::Battery => SourceKind::Battery,
        SourceSort::Control => SourceKind::Control,
        SourceSort::SecondFeeder | SourceSort::Grid | SourceSort::Unsaid => SourceKind::SecondFeeder,
    };
    let what = if source.label.is_empty() { source.id.clone() } else { source.label.clone() };
    let now = act.job(job.id())?;
    if let Some(known) = now.found().find(|s| s.found.as_ref().is_some_and(|f| f.what == what)) {
        return Ok(Some(known.stamp.id));
    }
    // What the network shows is an answer to the question for other sources: found, and to be cut off.
    let at = if source.place.is_empty() { format!("through {link}") } else { source.place.clone() };
    let found = Some(Found { what, at });
    let looked = "The supply network of the site".into();
    let (terminals, millivolts) = (Vec::new(), None);
    act.keep(Some(job.id()), Fact::SourceAnswered { kind, found, looked, terminals, millivolts }).map(Some)
}
