//! What goes back on when the supply is restored: only what was found on, the normal supply first, and never two supplies unasked.
//!
//! Promises: a point that was found off stays off; a point that another job's lock holds stays open and holds nobody up; a source that
//! makes a supply of its own goes on beside another only with a reason. Start at [`Job::back`].

use super::{Job, Source};
use crate::journal::fact::SourceKind;
use crate::point::LockRow;
use crate::point::Point;
use crate::supply::Position;

/// What becomes of a point when the supply is restored.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Back<'a> {
    /// It is not open: never opened here, or closed again.
    NotOpen,
    /// It was found off and stays off.
    FoundOff,
    /// A lock of another job holds it.
    Held(&'a LockRow),
    /// What it brings only follows the supply: these points come first, and some of them may be held by others.
    After(Vec<&'a Point>),
    /// It makes a supply beside another one: its own and the others.
    Beside(SupplyName, Vec<SupplyName>),
    /// It goes back on.
    On,
}

/// What a supply is called.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum SupplyName {
    /// The normal supply.
    Normal,
    /// A source, as it was noted.
    Source(String),
    /// A source that is not listed any more.
    Unlisted,
    /// A source of which nobody noted what it is.
    Unnamed,
}

/// A supply of its own.
#[derive(Clone, Copy, PartialEq, Eq)]
enum BroughtSupply<'a> {
    Normal,
    Of(Option<&'a Source>, crate::journal::EntryId),
}

/// Whether a source of this kind makes a supply of its own, so that beside another one nobody knows what the two do to each other.
fn makes_supply(kind: SourceKind) -> bool {
    matches!(kind, SourceKind::SecondFeeder | SourceKind::Generator | SourceKind::Ups)
}

/// Whether it only follows a supply that is there. A battery that can make an island is to be noted as a UPS.
fn follows(kind: SourceKind) -> bool {
    matches!(kind, SourceKind::Pv | SourceKind::Battery)
}

impl Job {
    /// Whether a point is to be put back on: it is open, and it was found on, in this job or in another that it is shared with.
    pub fn goes_back_on(&self, point: &Point) -> bool {
        point.opened.is_some() && self.was_on(point) && self.held_by(point).is_none()
    }

    /// Whether a point was on before anybody isolated it.
    pub fn was_on(&self, point: &Point) -> bool {
        let beside = self.known.as_ref().is_some_and(|k| k.found_on.contains(&point.stamp.id));
        point.found != Some(Position::Open) || beside
    }

    /// A lock of another job that holds this point.
    pub fn held_by(&self, point: &Point) -> Option<&LockRow> {
        let held = self.known.iter().flat_map(|k| &k.held);
        held.into_iter().find(|(at, _)| *at == point.stamp.id).map(|(_, lock)| lock)
    }

    /// What becomes of this point.
    pub fn back<'a>(&'a self, point: &'a Point) -> Back<'a> {
        if point.opened.is_none() {
            return Back::NotOpen;
        }
        if !self.was_on(point) {
            return Back::FoundOff;
        }
        if let Some(lock) = self.held_by(point) {
            return Back::Held(lock);
        }
        let first = self.first_of_all(point);
        if !first.is_empty() {
            return Back::After(first);
        }
        match self.others(point) {
            Some((own, others)) if !others.is_empty() => Back::Beside(own, others),
            _ => Back::On,
        }
    }

    /// What a point brings back.
    pub fn brings(&self, point: &Point) -> SupplyName {
        let named = |s: &Source| s.found.as_ref().map(|f| SupplyName::Source(f.what.clone()));
        match self.supply_of(point) {
            Some(supply) => supply.name(),
            None => self.source_of(point).and_then(named).unwrap_or(SupplyName::Unnamed),
        }
    }

    /// The place of a point in the order of asking: the normal supply, other supplies, what follows them, and at last what would make two
    /// supplies.
    pub fn rank(&self, point: &Point) -> u8 {
        match (self.back(point), self.supply_of(point)) {
            (Back::Beside(..), _) => 4,
            (_, Some(BroughtSupply::Normal)) => 0,
            (_, Some(_)) => 1,
            (_, None) if self.follows(point) => 3,
            (_, None) => 2,
        }
    }

    /// Whether a supply is on or goes back on, so that it can be read. One with a point that stays off does not.
    pub fn supply_comes_back(&self) -> bool {
        self.supplies().into_iter().any(|supply| {
            let mut points = self.points_of(supply).peekable();
            points.peek().is_some() && points.all(|p| p.opened.is_none() || self.goes_back_on(p))
        })
    }

    fn source_of(&self, point: &Point) -> Option<&Source> {
        self.sources.iter().find(|s| Some(s.stamp.id) == point.cuts)
    }

    fn follows(&self, point: &Point) -> bool {
        self.source_of(point).is_some_and(|s| follows(s.kind))
    }

    /// The supply that a point brings; `None` where what it brings makes none. A source that is no longer listed counts as one that does.
    fn supply_of(&self, point: &Point) -> Option<BroughtSupply<'_>> {
        let Some(cuts) = point.cuts else { return Some(BroughtSupply::Normal) };
        match self.source_of(point) {
            Some(source) if !makes_supply(source.kind) => None,
            source => Some(BroughtSupply::Of(source, cuts)),
        }
    }

    /// Every supply that this job knows a point of.
    fn supplies(&self) -> Vec<BroughtSupply<'_>> {
        let mut all: Vec<BroughtSupply> = Vec::new();
        for supply in self.points.iter().filter_map(|p| self.supply_of(p)) {
            if !all.contains(&supply) {
                all.push(supply);
            }
        }
        all
    }

    fn points_of<'a>(&'a self, supply: BroughtSupply<'a>) -> impl Iterator<Item = &'a Point> {
        self.points.iter().filter(move |p| self.supply_of(p) == Some(supply))
    }

    /// What only follows a supply waits for the points that bring it: those of the normal supply that were on; if none was, those of others.
    fn first_of_all<'a>(&'a self, point: &Point) -> Vec<&'a Point> {
        if !self.follows(point) {
            return Vec::new();
        }
        let open = |p: &&Point| p.opened.is_some() && self.was_on(p);
        let supplies = self.supplies().into_iter();
        let (normal, other): (Vec<BroughtSupply>, Vec<BroughtSupply>) =
            supplies.partition(|s| *s == BroughtSupply::Normal);
        let waits = |of: Vec<BroughtSupply<'a>>| -> Vec<&'a Point> {
            of.into_iter().flat_map(|s| self.points_of(s)).filter(open).collect()
        };
        let was_on = |s: &BroughtSupply<'a>| self.points_of(*s).any(|p| p.opened.is_none() || self.was_on(p));
        if normal.iter().any(was_on) { waits(normal) } else { waits(other) }
    }

    /// The supply that this point brings, and those beside which it would: on now, or for a source of its own also those that go back on
    /// later. A supply that no point of this job cuts off was never off.
    fn others(&self, point: &Point) -> Option<(SupplyName, Vec<SupplyName>)> {
        let own = self.supply_of(point)?;
        let on = |p: &Point| p.opened.is_none() || (own != BroughtSupply::Normal && self.was_on(p));
        let mut beside: Vec<SupplyName> = self
            .supplies()
            .into_iter()
            .filter(|other| *other != own && self.points_of(*other).any(on))
            .map(|other| other.name())
            .collect();
        if own != BroughtSupply::Normal && !self.points.iter().any(|p| p.cuts.is_none()) {
            beside.insert(0, BroughtSupply::Normal.name());
        }
        Some((own.name(), beside))
    }
}

impl BroughtSupply<'_> {
    fn name(self) -> SupplyName {
        match self {
            BroughtSupply::Normal => SupplyName::Normal,
            BroughtSupply::Of(source, _) => source
                .and_then(|s| s.found.as_ref())
                .map_or(SupplyName::Unlisted, |f| SupplyName::Source(f.what.clone())),
        }
    }
}
