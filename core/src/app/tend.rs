//! What an act leaves for the device to do beside it, and what can wait for a quiet moment.

use super::session::Session;
use crate::screens::as_message;
use crate::screens::parts::{Errand, Tone};
use crate::store::photos;
use crate::text::times;

/// Photos that are looked at in one call, so that a tap meanwhile waits for no more than a second or two.
const AT_ONCE: usize = 2;

impl Session {
    /// Bad news is felt as well as read.
    pub(super) fn felt(&self, mut errands: Vec<Errand>) -> Vec<Errand> {
        let bad = self.notice.as_ref().is_some_and(|n| n.tone == Tone::Forbid);
        if bad && !errands.contains(&Errand::Buzz) {
            errands.push(Errand::Buzz);
        }
        errands
    }

    /// The device's clock, and minutes ahead of UTC.
    pub(super) fn now(&self) -> (i64, i32) {
        let now = self.platform.now_ms();
        (now, self.platform.offset_minutes(now))
    }

    /// The screen's words as a message to another person.
    pub(super) fn share(&mut self) -> Vec<Errand> {
        let screen = self.screen();
        let (now, zone) = self.now();
        vec![Errand::Share { title: screen.title.clone(), text: as_message(&screen, &times::exact(now, zone)) }]
    }

    pub(super) fn tend(&mut self) -> bool {
        let more = photos::mend(&self.photos_folder(), AT_ONCE);
        self.store.tidy();
        more
    }
}
