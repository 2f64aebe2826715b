//! Scanning: from a frame of the camera or a typed text to what this device knows of a tag.

use super::session::Session;
use crate::evidence;
use crate::job::Job;
use crate::journal::EntryId;
use crate::screens::Route;
use crate::screens::context::TagKnown;
use crate::screens::parts::{Errand, Notice, Outcome, Tone};
use crate::store::{StoreError, TagRow};
use crate::sync::Join;
use crate::sync::near::is_part;
use crate::tag::TagId;
use crate::tag::read::{FoundTag, Luma, frame};
use crate::text::screens::app as said;

/// Most pixels of a frame that is looked at: more than any camera preview has.
const MAX_FRAME: u64 = 4096 * 2304;

impl Session {
    /// Begins to scan: on the screen of a point's tags if `arg` names the point, on the screen of all tags otherwise.
    pub(super) fn want_scan(&mut self, arg: &str) -> Vec<Errand> {
        let route = match (self.route.job(), arg.parse()) {
            (Some(job), Ok(point)) => Route::PointTags(job, point),
            _ if matches!(self.route, Route::Office | Route::Near) => self.route,
            _ => Route::Scan,
        };
        if self.route != route {
            self.go(route);
        }
        let token = self.token();
        self.scanning = Some(token.clone());
        vec![errand(token)]
    }

    /// A frame came, or a photo of a tag, or there is no camera.
    pub(super) fn scanned(&mut self, outcome: Outcome) -> Vec<Errand> {
        match outcome {
            // The person's own choice, as a rule: nothing went wrong that has to be red.
            Outcome::Refused { why } => self.stop_scan(Tone::Warn, said::scan_type_instead(why)),
            Outcome::Photo { bytes, .. } => match evidence::check(&bytes) {
                Ok(photo) => self.found(&photo.codes(), false),
                Err(why) => self.stop_scan(Tone::Forbid, why.to_string()),
            },
            Outcome::Frame { width, height, luma } => {
                let bounded = u64::from(width) * u64::from(height) <= MAX_FRAME;
                match Luma::new(width, height, &luma).ok().filter(|_| bounded) {
                    Some(luma) => self.found(&frame(&luma), true),
                    None => self.stop_scan(Tone::Forbid, said::scan_size()),
                }
            }
        }
    }

    /// What a picture held; a camera `goes_on` until it is one tag.
    fn found(&mut self, found: &FoundTag, goes_on: bool) -> Vec<Errand> {
        let said = match (&found.tags[..], found.other.first()) {
            ([tag], _) => return self.tag_read(*tag),
            ([], None) if goes_on => None,
            ([], None) => {
                return self.stop_scan(Tone::Forbid, said::scan_none());
            }
            ([], Some(text)) if is_part(text) => {
                let on = self.scanning.iter().filter(|_| goes_on).cloned().map(errand).collect();
                return self.near_read(text, on);
            }
            ([], Some(text)) if Join::read(text).is_some() => return self.office_read(text),
            ([], Some(text)) => {
                let shown: String = text.chars().filter(|c| !c.is_control()).take(60).collect();
                Some(said::scan_foreign(shown))
            }
            _ => Some(said::scan_several()),
        };
        if let Some(text) = said {
            self.turn += 1;
            self.notice = Some(Notice { tone: Tone::Warn, text });
        }
        // A shell shows the notice and goes on looking.
        self.scanning.iter().filter(|_| goes_on).cloned().map(errand).collect()
    }

    fn tag_read(&mut self, tag: TagId) -> Vec<Errand> {
        self.scanning = None;
        self.turn += 1;
        self.notice = None;
        self.touch();
        let mut errands = vec![Errand::Buzz];
        match self.route {
            Route::PointTags(..) => errands.extend(self.do_act("found", tag.as_str(), &[])),
            _ => self.go(Route::Tag(tag)),
        }
        errands
    }

    /// The code of an office: shown with what joining it means; nothing is asked of it yet.
    fn office_read(&mut self, code: &str) -> Vec<Errand> {
        self.scanning = None;
        self.turn += 1;
        self.notice = None;
        self.go(Route::Office);
        self.edit("code", code.trim());
        vec![Errand::Buzz]
    }

    fn stop_scan(&mut self, tone: Tone, text: String) -> Vec<Errand> {
        self.scanning = None;
        self.turn += 1;
        self.notice = Some(Notice { tone, text });
        Vec::new()
    }

    pub(crate) fn places_of(&self, tag: TagId) -> Result<Vec<TagRow>, StoreError> {
        self.store.places_of(tag)
    }

    /// What this device knows of a tag. The jobs that are folded are the few that still hold a lock there, and the latest.
    pub(super) fn known(&mut self, tag: TagId) -> TagKnown {
        let places = self.store.places_of(tag).unwrap_or_default();
        let points = self.points_of_tag(&places);
        let locked = |point: EntryId| self.locks.iter().any(|l| l.on && l.point == Some(point));
        let latest = places.first().map(|p| p.job);
        let aside = self.aside_jobs();
        let of_aside = places.iter().map(|p| p.job).filter(|job| aside.contains(job));
        let held = points.iter().filter(|p| locked(p.point)).map(|p| p.job);
        let mut ids: Vec<_> = held.chain(of_aside).chain(latest).collect();
        ids.sort_unstable();
        ids.dedup();
        let jobs: Vec<Job> = ids.into_iter().filter_map(|id| self.look_at(id).ok()).collect();
        TagKnown { places, points, jobs }
    }
}

pub(super) fn errand(token: String) -> Errand {
    Errand::ScanTag { token, hint: said::scan_hint() }
}
