//! What people do who do everything right, as far as they know.

use stillbar_core::journal::{Entry, EntryId, Fact};

use super::known::MINUTE;
use super::plan::{Desk, Next};
use super::slipping::Turn;
use super::world::{World, short};

impl World {
    /// What somebody does next who does everything right, and whose name it is in; `None`: nothing, and they believe that it is done.
    pub fn ahead(&mut self, n: usize, nth: usize) -> (Option<Next>, EntryId) {
        self.ahead_of(n, nth, false)
    }

    /// `later`: once it is proved.
    fn ahead_of(&mut self, n: usize, nth: usize, later: bool) -> (Option<Next>, EntryId) {
        let (job, plan) = self.jobs[nth].clone();
        let (me, again) = (self.phones[n].person, self.again.contains(&(n, nth)));
        let mate = *self.people.iter().find(|p| **p != me).expect("there are three");
        let mut entries = self.phones[n].entries.clone();
        entries.extend(self.believed.iter().cloned());
        // Stable: what is only believed stands behind what was true then.
        entries.sort_by_key(Entry::order);
        let goes_on = self.slip.is_some_and(|(job, slip)| job == nth && slip.goes_on_stopped());
        let desk = Desk { plan: &plan, entries: &entries, job, me, mate, wall: self.phones[n].wall(), again, goes_on };
        let next = if later { desk.later().map_or(Next::Done, Next::Keep) } else { desk.next() };
        let turn = desk.needs_mate() && desk.begun_since() % 2 == 1;
        let begins = matches!(next, Next::Keep(Fact::IndicatorProved { run: None, .. }));
        let by = match &next {
            // Everybody takes their own lock off.
            Next::Keep(Fact::LockRemoved { lock, .. }) => desk.owner(*lock).unwrap_or(me),
            _ if begins && turn => mate,
            _ => me,
        };
        let turned = match self.slip {
            Some((job, slip)) if job == nth => slip.turns(&plan, me, mate, next),
            _ => Turn::Right(next),
        };
        match turned {
            Turn::Right(next) => (Some(next), by),
            Turn::Believe(fact) => {
                self.say(format!("not done, and believed to be: {}", short(&fact)));
                let mut entry = self.phones[n].entries.iter().rfind(|e| e.job() == Some(job)).expect("the job").clone();
                (entry.body.fact, entry.body.wall) = (fact, self.phones[n].wall());
                entry.id = format!("{:064x}", self.believed.len() + 1).parse().expect("64 hex digits");
                self.believed.push(entry);
                (None, by)
            }
        }
    }

    /// They do it; `false`: there is nothing left to do.
    pub fn does(&mut self, n: usize, nth: usize, next: Option<Next>, by: EntryId) -> Result<bool, String> {
        match next {
            Some(Next::Keep(fact)) => {
                let begins = matches!(fact, Fact::IndicatorProved { run: None, .. });
                let of_site = matches!(fact, Fact::InstrumentNoted { .. });
                let job = self.jobs[nth].0;
                let kept = self.keep(n, by, if of_site { None } else { Some(job) }, fact);
                if begins && kept.is_ok() {
                    self.again.remove(&(n, nth));
                }
                kept.map(|_| true)
            }
            Some(Next::Wait(ms)) => {
                self.say(format!("{} min pass", ms / MINUTE));
                self.pass(ms);
                Ok(true)
            }
            Some(Next::Done) => Ok(false),
            None => Ok(true),
        }
    }

    pub fn right(&mut self, n: usize, nth: usize) -> Result<bool, String> {
        let (next, by) = self.ahead(n, nth);
        self.does(n, nth, next, by)
    }

    /// What comes once it is proved: the work, and the supply back on.
    pub fn right_after(&mut self, n: usize, nth: usize) -> Result<bool, String> {
        let (next, by) = self.ahead_of(n, nth, true);
        self.does(n, nth, next, by)
    }

    /// The test of a job has to be begun again.
    pub fn begin_again(&mut self, n: usize, nth: usize) {
        self.again.insert((n, nth));
    }

    /// A stretch of ordinary work.
    pub fn work(&mut self, n: usize, nth: usize, most: usize) {
        for _ in 0..most {
            let proved = |world: &World| world.phones[n].field().proved(world.jobs[nth].0);
            match self.right(n, nth) {
                Ok(true) => {}
                Ok(false) if proved(self) => {
                    // Most leave it at that: what stands is what the others are to end.
                    let most = if self.chance.one_in(4) { self.chance.of(40) } else { 0 };
                    let _ = (0..most).take_while(|_| self.right_after(n, nth) == Ok(true)).count();
                    return;
                }
                _ => {
                    self.begin_again(n, nth);
                    return;
                }
            }
        }
    }
}
