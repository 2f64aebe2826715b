//! Tags at the points of a job.

use crate::job::Job;
use crate::journal::{Fact, Stamp};
use crate::point::PointTag;

impl Job {
    pub(super) fn tag(&mut self, stamp: Stamp, fact: &Fact) {
        let (Fact::TagBound { tag, point, .. } | Fact::TagGone { tag, point, .. } | Fact::TagRead { tag, point }) =
            fact
        else {
            return;
        };
        let Some(point) = self.points.iter_mut().find(|p| p.stamp.id == *point) else { return };
        let known = point.tags.iter_mut().find(|t| t.tag == *tag && t.gone.is_none());
        match (fact, known) {
            (Fact::TagBound { .. }, None) => {
                point.tags.push(PointTag { tag: *tag, stamp, read: None, gone: None });
            }
            (Fact::TagGone { why, .. }, Some(known)) => known.gone = Some((stamp, why.clone())),
            (Fact::TagRead { .. }, Some(known)) => known.read = Some(stamp),
            _ => {}
        }
    }
}
