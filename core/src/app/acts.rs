//! What a person does: taps, going from screen to screen, and what is typed and not kept yet.

use std::collections::BTreeMap;

use super::NotDone;
use super::near::PART_MS;
use super::pin::Hand;
use super::session::Session;
use super::shoot::WAITING;
use crate::screens::context::Act;
use crate::screens::parts::{Errand, Filled, Notice, Tone};
use crate::screens::{self, Route};
use crate::text::screens::app as said;
use crate::text::{AskDevice, Gone};
use stillbar_values::company::MAX_FILE;

/// Most bytes of one draft; a file of company rules is the longest.
const MAX_DRAFT: usize = MAX_FILE;

impl Session {
    pub(super) fn act(&mut self, turn: Option<u64>, action: &str, input: &[Filled]) -> Vec<Errand> {
        let _speaking = self.speaking();
        // A place is named whole and going there keeps nothing: such a tap means the same on any screen.
        if turn.is_some_and(|turn| turn != self.turn) && !action.starts_with("go ") {
            let text = said::moved_on();
            self.notice = Some(Notice { tone: Tone::Warn, text });
            self.turn += 1;
            return Vec::new();
        }
        self.turn += 1;
        self.notice = None;
        self.touch();
        let (verb, arg) = action.split_once(' ').unwrap_or((action, ""));
        match verb {
            "go" => match arg.parse() {
                Ok(route) => self.go(route),
                Err(()) => self.refuse(Gone::Place),
            },
            "photo" => return self.want_photo(arg),
            "scan" => return self.want_scan(arg),
            "share" => return self.share(),
            _ => {
                let errands = self.do_act(verb, arg, input);
                return self.go_on(errands);
            }
        }
        Vec::new()
    }

    pub(super) fn do_act(&mut self, verb: &str, arg: &str, input: &[Filled]) -> Vec<Errand> {
        let route = self.route;
        let (acting, hand, known) = (self.acting, self.hand(), self.hands.known);
        let mut act = Act { app: self, input, go: None, say: None, alarm: false, errands: Vec::new() };
        let done = screens::act(&route, &mut act, verb, arg);
        let Act { go, say, alarm, errands, .. } = act;
        let tone = if alarm { Tone::Forbid } else { Tone::Plain };
        let first = done.is_ok() && !self.pending.is_empty() && self.asks_pin();
        match done.and_then(|()| {
            if first {
                return Err(AskDevice::WhoFirst.into());
            }
            let kept = !self.pending.is_empty();
            self.commit().map(|()| kept)
        }) {
            Ok(kept) => {
                if let Some(person) = self.acting.filter(|_| self.acting != acting) {
                    // If this alone fails, the next start has the person who had the device before, and says so on the first screen.
                    let _ = self.store.keep_local("acting", &person.to_string());
                    let _ = self.keep_hand(person);
                }
                if kept {
                    // A photo that waits for its reason outlives every other act on its screen.
                    let waiting = if verb == "keep-photo" { String::new() } else { self.draft(WAITING) };
                    let _ = self.store.clear_drafts(&route.to_string(), &hand);
                    self.drafts.clear();
                    if !waiting.is_empty() {
                        self.edit(WAITING, &waiting);
                    }
                    let text = say.unwrap_or_else(said::saved);
                    self.notice = Some(Notice { tone, text });
                } else if let Some(text) = say {
                    self.notice = Some(Notice { tone, text });
                }
                self.tell_touched();
                if let Some(route) = go {
                    self.go(route);
                }
                errands
            }
            Err(why) => {
                // The act is undone whole, and what was typed stays on the screen. Said with the names of before.
                let says = why.says(&self.world);
                self.acting = acting;
                self.hands.known = known;
                let reloaded = self.reload().and_then(|()| self.load_hands());
                self.hands.all.extend(acting.filter(|a| !self.hands.all.contains_key(a)).map(|a| (a, Hand::default())));
                for filled in input {
                    self.edit(&filled.field, &filled.value);
                }
                match reloaded {
                    Ok(()) if first => {
                        self.ask_first(verb, arg, input);
                        self.notice = Some(Notice { tone: Tone::Warn, text: says });
                    }
                    Ok(()) => self.forbid(says),
                    Err(why) => self.refuse(why),
                }
                Vec::new()
            }
        }
    }

    /// Says why something was not done.
    pub(super) fn refuse(&mut self, why: impl Into<NotDone>) {
        let why: NotDone = why.into();
        self.forbid(why.says(&self.world));
    }

    pub(super) fn forbid(&mut self, text: String) {
        self.notice = Some(Notice { tone: Tone::Forbid, text });
    }

    pub(super) fn go(&mut self, route: Route) {
        // An entry that was tapped in the time line is asked about once, not again after a walk through other screens.
        if matches!(self.route, Route::TimeLine(_)) && route != self.route && !self.draft("entry").is_empty() {
            self.edit("entry", "");
        }
        self.route = route;
        self.scanning = None;
        self.hands.then = None;
        // Where the person was is a convenience: a full disk must not stop them from looking around.
        let _ = self.store.keep_local("route", &route.to_string());
        self.load_drafts();
    }

    pub(crate) fn edit(&mut self, field: &str, value: &str) {
        if !draft_fits(&self.drafts, field, value) {
            return;
        }
        self.drafts.insert(field.to_owned(), value.to_owned());
        // In memory it stays on the screen even if the disk is full; that it is not on disk comes out at the next tap.
        let _ = self.store.keep_draft(&self.route.to_string(), &self.hand(), field, value);
    }

    /// The same on another screen. What fails here is only typed again.
    pub(crate) fn prefill(&mut self, route: Route, field: &str, value: &str) {
        let _ = self.store.keep_draft(&route.to_string(), &self.hand(), field, value);
    }

    /// Grows when the screen may have changed without an act: something came in, or the next part of a code is due.
    pub(super) fn stirred_now(&self) -> u64 {
        let parts = match (&self.route, &self.near.shown) {
            (Route::Near, Some((parts, since))) if parts.len() > 1 => {
                u64::try_from((self.now().0 - since) / PART_MS).unwrap_or(0)
            }
            _ => 0,
        };
        self.stirred.wrapping_add(parts)
    }

    /// A name for an errand that cannot be guessed.
    pub(super) fn token(&self) -> String {
        self.platform.random(8).iter().map(|b| format!("{b:02x}")).collect()
    }

    /// What stands in a field of this screen and is not kept yet.
    pub(crate) fn draft(&self, field: &str) -> String {
        self.drafts.get(field).cloned().unwrap_or_default()
    }
}

/// Whether this may stand beside the other drafts of a screen.
pub(super) fn draft_fits(drafts: &BTreeMap<String, String>, field: &str, value: &str) -> bool {
    // A signature is given for one act by one person: it must never stand there for the next.
    // A PIN stands nowhere.
    field != "mark"
        && !field.starts_with("pin")
        && field.len() <= 100
        && value.len() <= MAX_DRAFT
        && (drafts.len() < 100 || drafts.contains_key(field))
}
