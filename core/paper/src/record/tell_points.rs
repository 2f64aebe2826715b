//! What a report says of points of isolation, lock boxes and locks.

use serde_json::json;
use stillbar_journal::fact::{KeyAt, On};
use stillbar_journal::{EntryId, Fact};
use stillbar_rules::job::TemporaryEarth;
use stillbar_rules::point::{self, Means, Off};
use stillbar_text as text;

use super::claim::Claim;
use super::report::{ReportEarth, ReportLock, ReportLockBox, ReportPoint};
use super::tell::Teller;

impl Teller<'_> {
    /// Temporary earths, in and off.
    pub(super) fn earths(&self) -> Vec<ReportEarth> {
        let told = |e: &TemporaryEarth| ReportEarth {
            label: e.label.clone(),
            at: e.at.clone(),
            fitted: self.when(&e.stamp),
            off: self.maybe(e.off.as_ref()),
        };
        self.job.earths.iter().map(told).collect()
    }

    /// A point of isolation, with its locks.
    pub(super) fn point(&self, p: &point::Point) -> ReportPoint {
        let source = |id: EntryId| self.job.sources.iter().find(|s| s.stamp.id == id).and_then(|s| s.found.as_ref());
        let tag = |t: &point::PointTag| {
            let gone = t.gone.as_ref().map(|(_, why)| why);
            let says = gone.map_or_else(|| t.tag.spaced(), |why| format!("{}, gone: {why}", t.tag.spaced()));
            Claim::of(json!({ "tag": t.tag, "gone": gone }), says)
        };
        ReportPoint {
            label: p.label.clone(),
            at: p.at.clone(),
            kind: Claim::of(p.kind, text::point_kind(p.kind)),
            poles: p.poles.clone(),
            cuts: p.cuts.map(|id| {
                let says = source(id).map_or("a source", |f| &f.what);
                Claim::of(id.to_string(), says)
            }),
            added: self.when(&p.stamp),
            open: p.opened.is_some(),
            opened: self.latest(|fact| matches!(fact, Fact::PointOpened { point, .. } if *point == p.stamp.id)),
            closed: self.latest(|fact| matches!(fact, Fact::PointClosed { point, .. } if *point == p.stamp.id)),
            sign: self.latest(|fact| matches!(fact, Fact::SignPosted { point } if *point == p.stamp.id)),
            sign_down: self.latest(|fact| matches!(fact, Fact::SignRemoved { point } if *point == p.stamp.id)),
            tags: p.tags.iter().map(tag).collect(),
            locks: self.locks(On::Point(p.stamp.id)),
        }
    }

    fn locks(&self, on: On) -> Vec<ReportLock> {
        let lock = |l: &point::Lock| ReportLock {
            label: l.label.clone(),
            owner: self.reader.name(l.owner),
            means: {
                let says = match (&l.means, text::goes_through(self.job, l)) {
                    (Means::Padlock, None) => "padlock".to_owned(),
                    (Means::Hasp, None) => "padlock on a hasp".to_owned(),
                    (Means::Other(how), _) => format!("no lock: {how}"),
                    (_, Some(places)) => format!("one padlock by a cable or bar, also through {places}"),
                };
                let (others, elsewhere) = self.job.goes_through(l);
                let others: Vec<String> =
                    others.into_iter().map(|(On::Point(id) | On::Box(id))| id.to_string()).collect();
                Claim::of(json!({ "means": l.means, "also": others, "other_jobs": elsewhere }), says)
            },
            key: match l.key {
                KeyAt::Owner => Claim::of("owner", "with the owner"),
                KeyAt::Box(id) => {
                    Claim::of(json!({ "box": id.to_string() }), format!("in {}", text::place(self.job, On::Box(id))))
                }
            },
            fitted: self.when(&l.stamp),
            since: self.when(&l.since),
            off: match &l.off {
                None => None,
                Some(Off::Owner(stamp) | Off::Cut(stamp) | Off::Forced(stamp)) => Some(self.when(stamp)),
            },
            off_how: l.off.as_ref().map(|off| match off {
                Off::Owner(_) => Claim::of("owner", "by its owner"),
                Off::Cut(_) => Claim::of("cut", "cut by its owner, who had no key"),
                Off::Forced(_) => Claim::of("forced", "in the owner's absence"),
            }),
        };
        self.job.locks.iter().filter(|l| l.on == on).map(lock).collect()
    }

    /// Lock boxes, with the locks on them.
    pub(super) fn boxes(&self) -> Vec<ReportLockBox> {
        let placed = |b: &point::LockBox| ReportLockBox {
            label: b.label.clone(),
            at: b.at.clone(),
            when: self.when(&b.stamp),
            locks: self.locks(On::Box(b.stamp.id)),
        };
        self.job.boxes.iter().map(placed).collect()
    }
}
