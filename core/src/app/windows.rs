//! Several windows on one device: what is typed in one lands where it was typed and with whom, and each can tell that its screen is old.

use super::NotDone;
use super::acts::draft_fits;
use super::session::Session;
use super::suspend::Stand;
use crate::screens::Route;
use crate::screens::parts::{Block, Screen};
use crate::store::photos;
use crate::text::Gone;

/// What all windows show but for what is typed, and how often that has changed.
#[derive(Default)]
pub(super) struct WindowSeen {
    last: Option<(usize, Screen)>,
    changes: u64,
}

impl WindowSeen {
    /// Compared whole, so that no change can be forgotten here: also one that only time has made.
    pub(super) fn changes(&mut self, stand: &mut Stand) -> u64 {
        let now = stand.untyped();
        if self.last.as_ref() != Some(&now) {
            // After a restart the count goes on from elsewhere: a window of before sees that as a change too.
            self.changes = if self.last.is_some() { self.changes + 1 } else { now.1.turn };
            self.last = Some(now);
        }
        self.changes
    }
}

impl Stand {
    /// The screen as it is without drafts, and how many of its pictures are here: those of others come after their entries.
    fn untyped(&mut self) -> (usize, Screen) {
        let mut screen = match self {
            Stand::Open(session) => {
                let drafts = std::mem::take(&mut session.drafts);
                let screen = session.screen();
                session.drafts = drafts;
                screen
            }
            Stand::Suspended(_) => self.screen(),
        };
        let slots =
            screen.blocks.iter().filter_map(|b| if let Block::Photo { photo, .. } = b { Some(photo) } else { None });
        let taken = slots.flat_map(|slot| &slot.taken);
        let folder = photos::folder(self.folder());
        let pictures = taken.filter(|seen| photos::is_here(&folder, &seen.sha256)).count();
        // What an act says comes with a new turn; the notice of a clock that is wrong has the time in it.
        if let Some(notice) = &mut screen.notice {
            notice.text.clear();
        }
        (pictures, screen)
    }

    /// See [`Field::edit_on`](super::Field::edit_on).
    pub(super) fn edit_on(&mut self, route: &str, hand: &str, field: &str, value: &str) -> Result<(), NotDone> {
        match self {
            Stand::Open(session) => session.edit_on(route, hand, field, value),
            Stand::Suspended(_) => {
                let shown = self.screen();
                if (shown.route.as_str(), shown.hand.as_str()) != (route, hand) {
                    return Err(Gone::Screen.into());
                }
                self.edit(field, value);
                Ok(())
            }
        }
    }
}

impl Session {
    fn edit_on(&mut self, route: &str, hand: &str, field: &str, value: &str) -> Result<(), NotDone> {
        let route: Route = route.parse().map_err(|()| Gone::Screen)?;
        if hand != self.hand() {
            return Err(Gone::Hand.into());
        }
        if route == self.route {
            self.edit(field, value);
            return Ok(());
        }
        if let Some(job) = route.job() {
            self.job(job)?;
        }
        // By the route as the app writes it, so that none has two places.
        let route = route.to_string();
        let there = self.store.drafts(&route, hand)?;
        if draft_fits(&there, field, value) {
            self.store.keep_draft(&route, hand, field, value)?;
        }
        Ok(())
    }
}
