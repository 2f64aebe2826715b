//! Which points are one: those that have something in common, but for pairs that somebody has told apart.

use std::collections::{BTreeMap, BTreeSet};

use super::PointThere;
use crate::TagId;
use crate::journal::EntryId;

/// What two points can have in common.
#[derive(PartialEq, Eq, PartialOrd, Ord)]
enum Common<'a> {
    Tag(TagId),
    Switch(&'a str),
    /// A like label at a like place, each in capitals or in small letters.
    Looks(bool, &'a str, bool, &'a str),
}

/// The groups, worked out once after each change.
#[derive(Debug, Clone, Default)]
pub(super) struct Groups {
    of: Option<(Vec<usize>, BTreeMap<EntryId, usize>)>,
}

impl Groups {
    /// Something changed.
    pub(super) fn forget(&mut self) {
        self.of = None;
    }

    /// The places in `points` of those that are one with this point, itself among them.
    pub(super) fn of(
        &mut self,
        points: &[PointThere],
        parted: &BTreeSet<(EntryId, EntryId)>,
        point: EntryId,
    ) -> Vec<usize> {
        let (roots, places) = self.of.get_or_insert_with(|| {
            let places = points.iter().enumerate().map(|(i, p)| (p.id, i)).collect();
            (join(points, parted, &places), places)
        });
        let Some(root) = places.get(&point).map(|i| roots[*i]) else { return Vec::new() };
        (0..points.len()).filter(|i| roots[*i] == root).collect()
    }
}

/// The root of each point's group.
fn join(points: &[PointThere], parted: &BTreeSet<(EntryId, EntryId)>, places: &BTreeMap<EntryId, usize>) -> Vec<usize> {
    let apart = |a: usize, b: usize| {
        let (a, b) = (points[a].id, points[b].id);
        parted.contains(&(a.min(b), a.max(b)))
    };
    let mut roots: Vec<usize> = (0..points.len()).collect();
    let mut buckets: BTreeMap<(Option<EntryId>, Common), Vec<usize>> = BTreeMap::new();
    for (i, p) in points.iter().enumerate() {
        let tags = p.tags.iter().map(|tag| Common::Tag(*tag));
        let switch = p.switch.iter().map(|s| Common::Switch(s));
        let folds = [(false, false), (false, true), (true, false), (true, true)];
        let looks = folds.map(|(a, b)| Common::Looks(a, &p.looks.0[usize::from(a)], b, &p.looks.1[usize::from(b)]));
        for common in tags.chain(switch).chain(looks) {
            buckets.entry((p.site, common)).or_default().push(i);
        }
    }
    let any_parted = |bucket: &[usize]| {
        bucket.iter().any(|a| parted.iter().any(|(x, y)| *x == points[*a].id || *y == points[*a].id))
    };
    for bucket in buckets.values() {
        if parted.is_empty() || !any_parted(bucket) {
            bucket.windows(2).for_each(|pair| unite(&mut roots, pair[0], pair[1]));
            continue;
        }
        for (k, a) in bucket.iter().enumerate() {
            bucket[k + 1..].iter().filter(|b| !apart(*a, **b)).for_each(|b| unite(&mut roots, *a, *b));
        }
    }
    for (i, p) in points.iter().enumerate() {
        if let Some(known) = p.same_as.and_then(|id| places.get(&id))
            && !apart(i, *known)
        {
            unite(&mut roots, i, *known);
        }
    }
    (0..points.len()).map(|i| root(&mut roots, i)).collect()
}

fn root(roots: &mut [usize], mut i: usize) -> usize {
    while roots[i] != i {
        roots[i] = roots[roots[i]];
        i = roots[i];
    }
    i
}

fn unite(roots: &mut [usize], a: usize, b: usize) {
    let (a, b) = (root(roots, a), root(roots, b));
    roots[a.max(b)] = a.min(b);
}
