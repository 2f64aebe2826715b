//! Scanning: from a frame of the camera or a typed text to what this device knows of a tag.

use super::inner::Inner;
use crate::job::Job;
use crate::screens::Route;
use crate::screens::cx::TagKnown;
use crate::screens::parts::{Errand, Notice, Outcome, Tone};
use crate::store::TagRow;
use crate::tag::TagId;
use crate::tag::read::{Found, Luma, frame, still};

/// Most pixels of a frame that is looked at: more than any camera preview has.
const MAX_FRAME: u64 = 4096 * 2304;

impl Inner {
    /// Begins to scan: on the screen of a point's tags if `arg` names the point, on the screen of all tags otherwise.
    pub(super) fn want_scan(&mut self, arg: &str) -> Vec<Errand> {
        let route = match (self.route.job(), arg.parse()) {
            (Some(job), Ok(point)) => Route::PointTags(job, point),
            _ => Route::Scan,
        };
        if self.route != route {
            self.go(route);
        }
        let token = self.token();
        self.scanning = Some(token.clone());
        vec![scan(token)]
    }

    /// A frame came, or a photo of a tag, or there is no camera.
    pub(super) fn scanned(&mut self, outcome: Outcome) -> Vec<Errand> {
        let found = match &outcome {
            Outcome::Refused { why } => return self.stop_scan(format!("{why} Type what is printed beside the tag.")),
            Outcome::Photo { bytes, .. } => match crate::evidence::check(bytes) {
                Ok(photo) => {
                    Luma::new(photo.luma_width, photo.luma_height, &photo.luma).map(|l| still(&l)).unwrap_or_default()
                }
                Err(why) => return self.stop_scan(why.to_string()),
            },
            Outcome::Frame { width, height, luma } => {
                let bounded = u64::from(*width) * u64::from(*height) <= MAX_FRAME;
                match Luma::new(*width, *height, luma).ok().filter(|_| bounded) {
                    Some(luma) => frame(&luma),
                    None => return self.stop_scan("The camera's picture has a size that cannot be read.".into()),
                }
            }
        };
        self.found(&found, matches!(outcome, Outcome::Frame { .. }))
    }

    fn found(&mut self, found: &Found, goes_on: bool) -> Vec<Errand> {
        let Some(tag) = found.tags.first() else {
            let foreign = found.other.first();
            if let Some(text) = foreign {
                let shown: String = text.chars().filter(|c| !c.is_control()).take(60).collect();
                let text = format!("This code is not a Stillbar tag. Nothing was opened. It says: {shown}");
                self.turn += 1;
                self.notice = Some(Notice { tone: Tone::Warn, text });
            } else if !goes_on {
                return self.stop_scan(
                    "No tag was found in this picture. Go closer, or type what is printed beside it.".into(),
                );
            }
            // A shell shows the foreign code's notice and goes on looking.
            return match &self.scanning {
                Some(token) if goes_on => vec![scan(token.clone())],
                _ => Vec::new(),
            };
        };
        if found.tags.len() > 1 {
            let text = "There are several tags in the picture. Go closer to one of them.".into();
            self.turn += 1;
            self.notice = Some(Notice { tone: Tone::Warn, text });
            return match &self.scanning {
                Some(token) if goes_on => vec![scan(token.clone())],
                _ => Vec::new(),
            };
        }
        self.scanning = None;
        self.turn += 1;
        self.notice = None;
        match self.route {
            Route::PointTags(..) => self.do_act("found", tag.as_str(), &[]),
            _ => {
                self.go(Route::Tag(*tag));
                Vec::new()
            }
        }
    }

    fn stop_scan(&mut self, why: String) -> Vec<Errand> {
        self.scanning = None;
        self.turn += 1;
        self.refuse(why);
        Vec::new()
    }

    pub(crate) fn places_of(&self, tag: TagId) -> Result<Vec<TagRow>, String> {
        self.store.places_of(tag).map_err(|e| e.to_string())
    }

    /// What this device knows of a tag. The jobs that are folded are the few that still hold a lock, and the latest.
    pub(super) fn known(&mut self, tag: TagId) -> TagKnown {
        let places = self.store.places_of(tag).unwrap_or_default();
        let latest = places.first().map(|p| p.job);
        let mut ids: Vec<_> = places.iter().filter(|p| p.locked).map(|p| p.job).chain(latest).collect();
        ids.sort_unstable();
        ids.dedup();
        let jobs: Vec<Job> = ids.into_iter().filter_map(|id| self.job(id).ok().cloned()).collect();
        TagKnown { places, jobs }
    }
}

fn scan(token: String) -> Errand {
    Errand::ScanTag { token, hint: "Hold the tag in the middle of the picture.".into() }
}
