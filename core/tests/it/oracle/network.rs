//! What the network of a site shows of a job: by going through it from the work outwards, until something is locked open.

use std::collections::{BTreeMap, BTreeSet};

use stillbar_core::journal::fact::{On, SourceKind, SourceRef};
use stillbar_core::journal::{EntryId, Fact};
use stillbar_core::supply::{Link, Node, NodeKind, SourceSort};

use super::known::{HOUR, Known, Moment};
use super::points::locks_on;

/// "Whatever may bring a voltage back ends the proof": a source "noted at the site where the network does not show it cut off from this work.
/// A network that arrives later asks each job for its zone: a proof ends at once if it shows a source that this job has not answered for,
/// else when nobody has named the zone within the hour."
pub fn allows(known: &Known, job: EntryId, moment: &Moment) -> Result<(), String> {
    let site = known.site_of(job);
    let (mut nodes, mut links): (BTreeMap<&str, &Node>, BTreeMap<&str, &Link>) = Default::default();
    let mut first = None;
    for e in known.at_site(site).filter(|e| e.job().is_none()) {
        match &e.body.fact {
            Fact::NodeNoted { node } => drop(nodes.insert(&node.id, node)),
            Fact::LinkNoted { link } => drop(links.insert(&link.id, link)),
            Fact::PartGone { part, .. } => {
                nodes.remove(part.as_str());
                links.remove(part.as_str());
                continue;
            }
            _ => continue,
        }
        first = first.max(Some((moment.since)(e.id)));
    }
    if nodes.is_empty() && links.is_empty() {
        return Ok(());
    }
    let zones = known.of(job).filter_map(|e| match &e.body.fact {
        Fact::ZoneNoted { zone } if !known.is_withdrawn(e.id) => Some(zone),
        _ => None,
    });
    let Some(zone) = zones.last() else {
        for source in nodes.values().filter(|n| n.kind == NodeKind::Source) {
            if !is_answered(known, job, source) {
                return Err(format!("the network shows {}, and nobody named what is worked on", source.id));
            }
        }
        return match first {
            Some(ms) if ms > HOUR => {
                Err("there is a network for more than an hour, and nobody named what is worked on".into())
            }
            _ => Ok(()),
        };
    };
    let reached = flood(known, site, zone, &links);
    let differs = known.of(job).any(|e| match &e.body.fact {
        Fact::CutDiffers { ways, .. } => !known.is_withdrawn(e.id) && ways.iter().any(|w| reached.contains(w.as_str())),
        _ => false,
    });
    let mut sources = nodes.values().filter(|n| n.kind == NodeKind::Source && reached.contains(n.id.as_str()));
    match sources.find(|source| !differs && !is_elsewhere(known, job, source)) {
        Some(source) => {
            Err(format!("the network shows {}, and nothing locked open between it and the work", source.id))
        }
        None => Ok(()),
    }
}

fn is_elsewhere(known: &Known, job: EntryId, source: &Node) -> bool {
    known.of(job).any(|e| match &e.body.fact {
        Fact::SourceElsewhere { source: SourceRef::Drawn(id), .. } => *id == source.id && !known.is_withdrawn(e.id),
        _ => false,
    })
}

/// The normal supply is what the job isolates anyway; of others, this job found one of the sort, or said that it is elsewhere.
fn is_answered(known: &Known, job: EntryId, source: &Node) -> bool {
    let sort = match source.sort {
        SourceSort::Grid => return true,
        SourceSort::Generator => Some(SourceKind::Generator),
        SourceSort::Ups => Some(SourceKind::Ups),
        SourceSort::Pv => Some(SourceKind::Pv),
        SourceSort::Battery => Some(SourceKind::Battery),
        SourceSort::SecondFeeder => Some(SourceKind::SecondFeeder),
        SourceSort::Control => Some(SourceKind::Control),
        SourceSort::Unsaid => None,
    };
    let found = known.of(job).any(|e| match &e.body.fact {
        Fact::SourceAnswered { kind, found: Some(_), .. } => {
            sort.is_none_or(|s| s == *kind) && !known.is_withdrawn(e.id)
        }
        _ => false,
    });
    found || is_elsewhere(known, job, source)
}

/// All parts that are joined to the work by anything that no lock holds open.
fn flood<'a>(
    known: &Known,
    site: Option<EntryId>,
    zone: &'a [String],
    links: &BTreeMap<&'a str, &'a Link>,
) -> BTreeSet<&'a str> {
    let cut = locked_switches(known, site);
    let mut reached: BTreeSet<&str> = zone.iter().map(String::as_str).collect();
    for part in zone {
        if let Some(link) = links.get(part.as_str()) {
            reached.extend([link.from.as_str(), link.to.as_str()]);
        }
    }
    loop {
        let before = reached.len();
        for (id, link) in links {
            let touches = reached.contains(link.from.as_str()) || reached.contains(link.to.as_str());
            if touches && !(link.lockable && cut.contains(*id)) {
                reached.extend([*id, link.from.as_str(), link.to.as_str()]);
            }
        }
        if reached.len() == before {
            return reached;
        }
    }
}

fn locked_switches(known: &Known, site: Option<EntryId>) -> BTreeSet<String> {
    let locked: BTreeSet<EntryId> =
        locks_on(known).into_iter().filter_map(|l| if let On::Point(p) = l.on { Some(p) } else { None }).collect();
    let switches = known.at_site(site).filter_map(|e| match &e.body.fact {
        Fact::PointAdded { switch: Some(switch), .. } if locked.contains(&e.id) => Some(switch.clone()),
        Fact::PointDrawn { point, switch, .. } if locked.contains(point) => Some(switch.clone()),
        _ => None,
    });
    switches.collect()
}
