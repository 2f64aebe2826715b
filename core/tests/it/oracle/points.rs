//! Points of isolation as things of a site, and the locks that are on.

use std::collections::{BTreeMap, BTreeSet};

use stillbar_core::journal::fact::On;
use stillbar_core::journal::{Entry, EntryId, Fact};
use stillbar_core::tag::TagId;

use super::alike::{alike, says_something};
use super::known::Known;

/// A lock that is on.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OnNow {
    pub fit: EntryId,
    pub owner: EntryId,
    pub label: String,
    pub on: On,
    pub job: Option<EntryId>,
}

struct Point<'a> {
    entry: &'a Entry,
    label: &'a str,
    at: &'a str,
    switches: BTreeSet<&'a str>,
    tags: BTreeSet<TagId>,
    same_as: Option<EntryId>,
}

/// The points that count as one with this one, itself with them.
///
/// "The same tag, the same link of the network, or a like label at a like place" is the same point. "Until somebody at the spot has said that
/// they are two, and by what they are told apart, entries at like points count as one."
pub fn like(known: &Known, point: EntryId) -> BTreeSet<EntryId> {
    let site = known.get(point).and_then(|e| e.body.site);
    let points = points(known, site);
    let parted = |one: EntryId, other: EntryId| {
        known.entries.iter().any(|e| match &e.body.fact {
            Fact::PointsParted { point, other: second, apart } => {
                ((*point, *second) == (one, other) || (*second, *point) == (one, other))
                    && says_something(apart)
                    && !known.is_withdrawn(e.id)
            }
            _ => false,
        })
    };
    let mut found = BTreeSet::from([point]);
    let mut next = vec![point];
    while let Some(one) = next.pop() {
        let Some(here) = points.iter().find(|p| p.entry.id == one) else { continue };
        for other in &points {
            if !found.contains(&other.entry.id) && is_like(here, other) && !parted(one, other.entry.id) {
                found.insert(other.entry.id);
                next.push(other.entry.id);
            }
        }
    }
    found.into_iter().filter(|other| *other == point || !parted(point, *other)).collect()
}

fn is_like(one: &Point, other: &Point) -> bool {
    (alike(one.label, other.label) && alike(one.at, other.at))
        || one.switches.intersection(&other.switches).next().is_some()
        || one.tags.intersection(&other.tags).next().is_some()
        || one.same_as == Some(other.entry.id)
        || other.same_as == Some(one.entry.id)
}

fn points<'a>(known: &Known<'a>, site: Option<EntryId>) -> Vec<Point<'a>> {
    let mut points: Vec<Point> = Vec::new();
    for e in known.at_site(site) {
        if let Fact::PointAdded { label, at, switch, same_as, .. } = &e.body.fact {
            let switches = switch.iter().map(String::as_str).collect();
            points.push(Point { entry: e, label, at, switches, tags: BTreeSet::new(), same_as: *same_as });
        }
    }
    for e in known.at_site(site) {
        match &e.body.fact {
            Fact::PointDrawn { point, switch, .. } => {
                if let Some(p) = points.iter_mut().find(|p| p.entry.id == *point) {
                    p.switches.insert(switch);
                }
            }
            Fact::TagBound { tag, point, .. } if !is_gone(known, e, *tag, *point) => {
                if let Some(p) = points.iter_mut().find(|p| p.entry.id == *point) {
                    p.tags.insert(*tag);
                }
            }
            _ => {}
        }
    }
    points
}

/// The tag was taken down there, or somebody hung it elsewhere and said why.
fn is_gone(known: &Known, bound: &Entry, tag: TagId, point: EntryId) -> bool {
    known.is_withdrawn(bound.id)
        || known.entries.iter().any(|e| match &e.body.fact {
            Fact::TagGone { tag: t, point: p, .. } => (*t, *p) == (tag, point),
            Fact::TagBound { tag: t, point: p, why: Some(_) } => *t == tag && *p != point && e.order() > bound.order(),
            _ => false,
        })
}

/// Which locks are on.
///
/// Only the owner takes a lock off, or a forced removal that was gone through with; a release takes off only the lock that it names, and
/// with it what the same cable or bar goes through. "A lock in" an entry that is kept aside "is shown as on".
pub fn locks_on(known: &Known) -> Vec<OnNow> {
    let mut on = Vec::new();
    let groups = groups(known);
    for fit in &known.entries {
        let Fact::LockFitted { on: place, owner, label, .. } = &fit.body.fact else { continue };
        let one = BTreeSet::from([fit.id]);
        let group = groups.get(&fit.id).unwrap_or(&one);
        let taken = takers(known, fit.id);
        let off = known.entries.iter().any(|x| {
            let lock = match &x.body.fact {
                Fact::LockRemoved { lock, .. } | Fact::LockForced { lock, .. } => *lock,
                _ => return false,
            };
            let names = lock == fit.id || (group.contains(&lock) && knows_across(known, x, fit));
            names
                && !known.is_withdrawn(x.id)
                && may_release(known, x, lock)
                // "Who took it over stood at it and knew of no release."
                && taken.iter().all(|(t, _)| knows_across(known, x, t))
        });
        if !off {
            let owner = taken.last().map_or(*owner, |(_, to)| *to);
            let job = fit.job();
            on.push(OnNow { fit: fit.id, owner: known.person(owner), label: label.clone(), on: *place, job });
        }
    }
    // "Until somebody has looked at the spot."
    let looked = |aside: &Entry| {
        let answers = |e: &&Entry| matches!(e.body.fact, Fact::AsideAnswered { entry, .. } if entry == aside.id);
        known.entries.iter().copied().filter(answers).any(|e| !known.is_withdrawn(e.id))
    };
    for fit in known.aside.iter().filter(|e| !looked(e)) {
        if let Fact::LockFitted { on: place, owner, label, .. } = &fit.body.fact {
            let owner = known.person(*owner);
            on.push(OnNow { fit: fit.id, owner, label: label.clone(), on: *place, job: fit.job() });
        }
    }
    on
}

/// One cable or bar through several: what comes off together.
fn groups(known: &Known) -> BTreeMap<EntryId, BTreeSet<EntryId>> {
    let mut groups: BTreeMap<EntryId, BTreeSet<EntryId>> = BTreeMap::new();
    for e in &known.entries {
        if let Fact::LockFitted { through: Some(other), .. } = e.body.fact {
            let mut all = groups.get(&other).cloned().unwrap_or_else(|| BTreeSet::from([other]));
            all.extend(groups.get(&e.id).cloned().unwrap_or_else(|| BTreeSet::from([e.id])));
            for member in &all {
                groups.insert(*member, all.clone());
            }
        }
    }
    groups
}

/// Who took lock and key over, in the order of the journal.
fn takers<'a>(known: &Known<'a>, fit: EntryId) -> Vec<(&'a Entry, EntryId)> {
    let taken = known.entries.iter().filter_map(|e| match e.body.fact {
        Fact::KeyTaken { offer, .. } => match known.get(offer)?.body.fact {
            Fact::KeyOffered { lock, to } if lock == fit => Some((*e, to)),
            _ => None,
        },
        _ => None,
    });
    taken.collect()
}

fn may_release(known: &Known, release: &Entry, lock: EntryId) -> bool {
    match &release.body.fact {
        Fact::LockForced { .. } => known
            .entries
            .iter()
            .any(|e| matches!(e.body.fact, Fact::ForcedBegun { lock: l, .. } if l == lock) && known.knew(release, e)),
        _ => {
            let Some(Fact::LockFitted { owner, .. }) = known.get(lock).map(|e| &e.body.fact) else { return false };
            let taken = takers(known, lock);
            let owner = taken.iter().rev().find(|(t, _)| known.knew(release, t)).map_or(*owner, |(_, to)| *to);
            release.body.by.is_some_and(|by| known.person(by) == known.person(owner))
        }
    }
}

/// Entries of two jobs say nothing of each other: there the order of the journal is all that there is.
fn knows_across(known: &Known, later: &Entry, earlier: &Entry) -> bool {
    known.knew(later, earlier) || (later.job() != earlier.job() && later.order() > earlier.order())
}

/// "Nobody closes it, and nothing says it is free, while any job has a lock on it."
pub fn may_close(known: &Known, point: EntryId) -> Result<(), String> {
    let like = like(known, point);
    match locks_on(known).into_iter().find(|lock| matches!(lock.on, On::Point(p) if like.contains(&p))) {
        Some(lock) => Err(format!("lock {} is on it, fitted by {}", lock.label, lock.fit.short())),
        None => Ok(()),
    }
}
