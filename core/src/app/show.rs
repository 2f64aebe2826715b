//! What the device shows now: the screen of its place, with what stands proved, what is said, and the way up.

use super::Session;
use crate::job::steps::Step;
use crate::journal::EntryId;
use crate::screens::context::{ExchangeKnown, Look, TagKnown};
use crate::screens::parts::{Button, Notice, Screen, Tone};
use crate::screens::{self, Route};
use crate::store::JobRow;
use crate::text::languages::Spoken;
use crate::text::screens::app as said;
use crate::text::screens::locks as said_locks;
use crate::text::standing;
use crate::text::terms::Speaking;
use crate::text::times;
use crate::text::{self, Gone};

impl Session {
    /// See [`super::Field::standing_says`].
    pub(super) fn standing_says(&mut self, id: EntryId) -> String {
        let before = std::mem::replace(&mut self.route, Route::Job(id));
        let said = self.screen().standing;
        self.route = before;
        said.map_or_else(String::new, |s| {
            s.deviations.into_iter().fold(said::standing(s.word, s.text), text::sentences)
        })
    }

    /// Words of the rules by which the job that is shown is done, or the last one where none is, in the language of this device.
    pub(super) fn speaking(&mut self) -> (Speaking, Spoken) {
        let of_job = self.route.job().and_then(|id| self.job(id).ok().map(|job| job.rule_set));
        (Speaking::of(of_job.unwrap_or(self.world.rule_set)), Spoken::of(self.language.spoken()))
    }

    pub(super) fn screen(&mut self) -> Screen {
        let _speaking = self.speaking();
        let (now, zone) = self.now();
        let mut jobs: Vec<JobRow> = match self.route {
            Route::Home => self.store.jobs().unwrap_or_default(),
            _ => Vec::new(),
        };
        self.hold_against_all(&mut jobs);
        let job = self.route.job().and_then(|id| self.look_at(id).ok());
        let cut = job.as_ref().and_then(|job| self.cut(job));
        let drawn = self.route.site().and_then(|site| self.sites.get(&site).cloned()).unwrap_or_default();
        let held = match (&job, self.route) {
            (Some(job), Route::Step(_, Step::Close)) => self.held(job.site, Some(job.id())).unwrap_or_default(),
            _ => Vec::new(),
        };
        let entries = match (&self.route, &job) {
            (Route::TimeLine(id), Some(_)) => self.store.entries_of(*id).unwrap_or_default(),
            _ => Vec::new(),
        };
        let tag = match self.route {
            Route::Tag(tag) => self.known(tag),
            _ => TagKnown::default(),
        };
        let exchange = match self.route {
            Route::Home | Route::Office | Route::Pin(_) => self.exchange_known(),
            _ => ExchangeKnown::default(),
        };
        let site = self.site_known(job.as_ref());
        let locks = [self.locks.clone(), self.aside_locks()].concat();
        let look = Look {
            world: &self.world,
            acting: self.acting,
            hands: &self.hands,
            language: self.language,
            drafts: &self.drafts,
            now,
            zone,
            locks: &locks,
            forgot: self.forgot,
            near: &self.near,
            exchange: &exchange,
            office: self.store.office_reached(),
            tag: &tag,
            cut: cut.as_ref(),
            drawn: &drawn,
            held: &held,
            site: &site,
            entries: &entries,
        };
        let page = screens::view(&self.route, &look, &jobs, job.as_ref());
        let standing = job.as_ref().map(|job| standing(job, &look.reader()));
        // By this device's own entries: that another's clock is ahead is not for this person to put right.
        let wrote = self.wrote.map_or(0, |stamp| stamp.clock.0);
        let behind = wrote.saturating_sub(now);
        let said = self.notice.clone().or_else(|| {
            // A clock that was turned back by more than a minute: said on every screen until it is right again.
            (behind > 60_000).then(|| Notice {
                tone: Tone::Warn,
                text: said::clock_back(times::exact(now, zone), times::exact(wrote, zone)),
            })
        });
        let said = said.or_else(|| self.clock_says().map(|text| Notice { tone: Tone::Warn, text }));
        let notice = if self.forgot { Some(self.forgotten(said)) } else { said };
        let up = self.route.up().map(|up| Button {
            id: "up".into(),
            label: match up {
                Route::Home => said::up_jobs(),
                Route::Job(_) => said::up_job(),
                Route::Locks(_) => said_locks::title(),
                _ => said::up_back(),
            },
            action: format!("go {up}"),
            tone: Tone::Quiet,
        });
        Screen {
            route: self.route.to_string(),
            turn: self.turn,
            hand: self.hand(),
            language: self.language.spoken().tag().into(),
            mirrored: self.language.spoken().mirrored(),
            title: page.title,
            context: job.map_or_else(String::new, |job| {
                let hand = self.acting.map_or_else(said::nobody, |p| self.world.name(p));
                said::context(hand, &job.title, &job.place)
            }),
            standing,
            notice,
            blocks: page.blocks,
            main: page.main,
            up,
        }
    }

    /// What has to stand on every screen while this device has forgotten what it wrote, behind whatever else is said.
    fn forgotten(&self, said: Option<Notice>) -> Notice {
        let forgot = text::ask_first(&Gone::Memory.into(), &self.world);
        let text = match said {
            Some(Notice { text, .. }) if !text.contains(&forgot) => text::sentences(text, forgot),
            _ => forgot,
        };
        Notice { tone: Tone::Forbid, text }
    }
}
