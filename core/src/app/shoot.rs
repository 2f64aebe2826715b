//! Photos: asked for, looked at, kept; or held until the person says why a doubtful one is kept all the same.

use super::NotDone;
use super::session::Session;
use crate::evidence::tag_warnings;
use crate::job::steps::Step;
use crate::journal::fact::PhotoDoubt;
use crate::journal::{EntryId, Fact};
use crate::screens::Route;
use crate::screens::context::Act;
use crate::screens::parts::{Errand, Notice, Outcome, Tone};
use crate::store::photos::{self, KeptPhoto};
use crate::tag::TagId;
use crate::text::screens::app as said;
use crate::text::{self, Gone};

/// The field of a point's screen that holds a photo which waits for a reason.
pub(crate) const WAITING: &str = "photo";

impl Session {
    pub(super) fn want_photo(&mut self, arg: &str) -> Vec<Errand> {
        let (Some(job), Ok(of)) = (self.route.job(), arg.parse()) else {
            self.refuse(Gone::PhotoOfNothing);
            return Vec::new();
        };
        if self.asks_pin() {
            self.ask_first("photo", arg, &[]);
            return Vec::new();
        }
        let token = self.token();
        self.wanted = Some((token.clone(), job, of));
        vec![errand(token)]
    }

    pub(super) fn deliver(&mut self, token: &str, outcome: Outcome) -> Vec<Errand> {
        let _speaking = self.speaking();
        if self.scanning.as_deref() == Some(token) {
            return self.scanned(outcome);
        }
        self.turn += 1;
        self.notice = None;
        self.touch();
        let Some((_, job, of)) = self.wanted.take_if(|(wanted, ..)| wanted == token) else {
            self.refuse(Gone::PhotoUnasked);
            return Vec::new();
        };
        let done = match outcome {
            Outcome::Refused { why } => Err(NotDone::Device(why)),
            Outcome::Frame { .. } => Err(Gone::PhotoNot.into()),
            Outcome::Photo { bytes, .. } => self.keep_photo(job, of, &bytes),
        };
        match done {
            Ok(notice) => {
                let kept = notice.tone != Tone::Forbid;
                self.notice = Some(notice);
                if kept {
                    self.after_photo(job);
                }
            }
            Err(why) => {
                let says = why.says(&self.world);
                match self.reload() {
                    Ok(()) => self.forbid(says),
                    Err(why) => self.refuse(why),
                }
            }
        }
        Vec::new()
    }

    /// The file goes to disk first. A picture that shows another point's tag then waits for a reason; any other is kept at once.
    fn keep_photo(&mut self, job: EntryId, of: EntryId, bytes: &[u8]) -> Result<Notice, NotDone> {
        let mut photo = photos::keep(&self.photos_folder(), bytes)?;
        let doubts = self.tag_doubts(job, of, &photo)?;
        let here = self.job(job)?.point(of).map(|point| point.label.clone()).unwrap_or_default();
        if let Some(wrong) = doubts.iter().find(|d| matches!(d, PhotoDoubt::OtherTag { .. })) {
            self.edit(WAITING, &photo.sha256);
            let text = said::photo_waits(text::photo_doubt(wrong, &here));
            return Ok(Notice { tone: Tone::Forbid, text });
        }
        photo.doubts.extend(doubts);
        self.edit(WAITING, "");
        let tone = if photo.doubts.is_empty() { Tone::Plain } else { Tone::Warn };
        let doubts = photo.doubts.iter().map(|d| text::photo_doubt(d, &here));
        let text = doubts.fold(said::photo_saved(), text::sentences);
        self.keep(Some(job), fact(photo, of, String::new()))?;
        self.commit()?;
        Ok(Notice { tone, text })
    }

    /// What the tags in a photo of a point say against it.
    fn tag_doubts(&mut self, job: EntryId, of: EntryId, photo: &KeptPhoto) -> Result<Vec<PhotoDoubt>, NotDone> {
        let Some(point) = self.job(job)?.point(of).cloned() else { return Ok(Vec::new()) };
        let expected: Vec<TagId> = point.tags_now().map(|t| t.tag).collect();
        let mut names = Vec::new();
        for tag in &photo.tags {
            let place = self.places_of(*tag)?.into_iter().find(|p| p.gone.is_none());
            names.extend(place.map(|place| (*tag, place.label)));
        }
        let name_of = |tag: TagId| names.iter().find(|(t, _)| *t == tag).map(|(_, label)| label.clone());
        Ok(tag_warnings(&photo.tags, &expected, &name_of))
    }

    /// Keeps the photo that waits, with the reason.
    pub(crate) fn keep_waiting(&mut self, job: EntryId, of: EntryId, why: String) -> Result<(), NotDone> {
        let sha256 = self.draft(WAITING);
        let folder = self.photos_folder();
        let bytes = photos::load(&folder, &sha256).ok_or(Gone::PhotoWaiting)?;
        // Looked at again: what was typed in between is no evidence of what is in it.
        let mut photo = photos::keep(&folder, &bytes)?;
        photo.doubts.extend(self.tag_doubts(job, of, &photo)?);
        self.keep(Some(job), fact(photo, of, why)).map(drop)
    }

    /// When the photo was the last thing that a point lacked, the person goes on to what comes next.
    fn after_photo(&mut self, job: EntryId) {
        let Route::Step(_, step @ Step::Isolate(_)) = self.route else { return };
        let mut act = Act { app: self, input: &[], go: None, say: None, alarm: false, errands: Vec::new() };
        let _ = act.onward(job, step);
        if let Some(route) = act.go {
            self.go(route);
        }
    }

    pub(crate) fn photo(&self, sha256: &str) -> Option<Vec<u8>> {
        photos::load(&self.photos_folder(), sha256)
    }
}

pub(super) fn errand(token: String) -> Errand {
    Errand::TakePhoto { token, hint: said::photo_hint() }
}

fn fact(photo: KeptPhoto, of: EntryId, note: String) -> Fact {
    let KeptPhoto { sha256, length, media, tags, doubts, copies } = photo;
    Fact::PhotoTaken { sha256, length, media: media.into(), of, note, tags, doubts, copies }
}
