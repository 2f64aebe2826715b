//! What a screen may see ([`Look`]) and what an action may do ([`Act`]).

use std::collections::BTreeMap;

use super::Route;
use super::like::LIKE;
use super::parts::{Errand, Filled};
use crate::app::NotDone;
use crate::job::Job;
use crate::job::known::Rules;
use crate::job::refusal::{NetworkRefusal, Refusal};
use crate::job::steps::Step;
use crate::journal::{EntryId, Fact, Stamp};
use crate::site::KnownPoint;
use crate::store::{LockRow, TagRow};
use crate::supply::{Cut, Drawn, Held};
use crate::tag::TagId;
use crate::text::Reader;
use crate::text::screens::locks as said_locks;
use crate::text::screens::record as said_record;
use crate::text::{AskFirst, AskLock};
use crate::world::World;

/// What this device knows of a tag.
#[derive(Default)]
pub struct TagKnown {
    /// Where it hangs or hung, latest first.
    pub places: Vec<TagRow>,
    /// The points, in any job, that are or may be the one it hangs at.
    pub points: Vec<KnownPoint>,
    /// The jobs of those points that have a lock on there, and the latest one.
    pub jobs: Vec<Job>,
}

/// What other jobs tell of the points on a screen, and what a site has set.
#[derive(Default)]
pub struct SiteKnown {
    /// Points that are known at the site and not in this job, latest first: on the step of the points only.
    pub points: Vec<KnownPoint>,
    /// The known point that the form for a new one is about.
    pub typed: Option<KnownPoint>,
    /// A point of this job, and a point of another job that is or may be the same; latest first.
    pub alike: Vec<(EntryId, KnownPoint)>,
    /// Where else the padlock is on, in other jobs: on the screen of a lock only.
    pub padlock: Vec<LockRow>,
    /// The latest jobs on this device, latest first: of every site on a new job, of its own site on the steps of a job. Their words are
    /// offered again, and nothing of them counts before a person has said it anew.
    pub before: Vec<Job>,
    /// What sites allow: on the screen of rules only.
    pub rules: Vec<(EntryId, Rules)>,
}

/// How the exchange with the office stands.
#[derive(Default)]
pub struct ExchangeKnown {
    /// What the office is called, and where it is.
    pub office: Option<(String, String)>,
    /// Entries of this device that it does not have yet.
    pub unsent: u64,
    /// Entries of this device that are kept aside there.
    pub aside_there: usize,
    /// Entries of others that are kept aside here.
    pub aside_here: Vec<crate::store::AsideRow>,
    /// As much is put aside as this device keeps.
    pub aside_full: bool,
    /// Another phone's clock contradicts this one's, and somebody here may say that this one is right.
    pub clock_may_be_right: bool,
    /// The office knows this device by a key that it had before.
    pub old_key: bool,
    /// What the thread does and did.
    pub now: crate::app::office::Exchange,
}

/// What a screen may see.
pub struct Look<'a> {
    /// People, sites, instruments.
    pub world: &'a World,
    /// The person who has the device in hand.
    pub acting: Option<EntryId>,
    /// How it is known who has the device in hand, and who has a PIN.
    pub hands: &'a crate::app::pin::Hands,
    /// Which language the device speaks, and why.
    pub language: crate::app::language::Chosen,
    /// What was typed and not yet kept on this screen.
    pub drafts: &'a BTreeMap<String, String>,
    /// The device's clock.
    pub now: i64,
    /// Minutes ahead of UTC.
    pub zone: i32,
    /// Locks of all jobs that are on, those among them that entries put aside tell of, and forced removals of which the owner is not told.
    pub locks: &'a [LockRow],
    /// This device has forgotten what it wrote: nothing is signed until it goes on under a new key.
    pub forgot: bool,
    /// What is passed to a phone beside this one.
    pub near: &'a crate::app::near::Near,
    /// How the exchange stands, on the first screen and its own.
    pub exchange: &'a ExchangeKnown,
    /// When the office was last reached, milliseconds since 1970-01-01T00:00Z.
    pub office: Option<i64>,
    /// What is known of the tag, on its screen only.
    pub tag: &'a TagKnown,
    /// The job beside its site's supply network, if one is drawn.
    pub cut: Option<&'a Cut>,
    /// The site's supply network, on its own screens only.
    pub drawn: &'a Drawn,
    /// What other jobs at the site hold locked, where points are closed only.
    pub held: &'a [Held],
    /// What other jobs tell of the points on this screen.
    pub site: &'a SiteKnown,
    /// The entries of the job, on the time line only.
    pub entries: &'a [crate::journal::Entry],
}

impl Look<'_> {
    /// For whom it is told.
    pub fn reader(&self) -> Reader<'_> {
        Reader { world: self.world, now: self.now, zone: self.zone }
    }

    /// A person's name.
    pub fn name(&self, id: EntryId) -> String {
        self.world.name(id)
    }

    /// When, as a person here reads it: "10:42", or with the date if it was another day.
    pub fn when(&self, stamp: &Stamp) -> String {
        self.reader().when(stamp)
    }

    /// "10:42, Mara Lind"; it says where she went on without her PIN.
    pub fn by(&self, stamp: &Stamp) -> String {
        self.reader().by(stamp)
    }

    /// What was typed into `field` and not kept yet.
    pub fn draft(&self, field: &str) -> String {
        self.drafts.get(field).cloned().unwrap_or_default()
    }

    /// What was typed into `field`, or `otherwise`.
    pub fn draft_or(&self, field: &str, otherwise: &str) -> String {
        self.drafts.get(field).cloned().unwrap_or_else(|| otherwise.to_owned())
    }

    /// People as options, but for those in `without`.
    pub fn people(&self, without: &[EntryId]) -> Vec<(String, String)> {
        let rest = self.world.people.iter().filter(|(id, _)| !without.contains(id));
        rest.map(|(id, p)| (id.to_string(), p.name.clone())).collect()
    }
}

/// The text, if it has at most so many bytes.
fn within(most: usize, text: &str, ask: impl Into<AskFirst>) -> Result<String, NotDone> {
    if text.len() > most {
        return Err(AskFirst::Longer { most, ask: Box::new(ask.into()) }.into());
    }
    Ok(text.to_owned())
}

/// Where what was said before is tapped instead of typing it into `field`.
pub fn again(field: &str) -> String {
    format!("{field}-again")
}

/// What an action may do. Everything that is kept goes through [`Act::keep`], and so through the gate.
pub struct Act<'a> {
    pub(crate) app: &'a mut crate::app::Session,
    pub(crate) input: &'a [Filled],
    /// Where to go when the action succeeds; the same screen if nothing is said.
    pub go: Option<Route>,
    /// What to say; that it is saved if nothing is said.
    pub say: Option<String>,
    /// Whether what is said is bad news: read out at once.
    pub alarm: bool,
    /// Errands for the device.
    pub errands: Vec<Errand>,
}

impl Act<'_> {
    /// Keeps a fact of the job (or of the device when no job is open): through the gate, to disk, and then into the job.
    pub fn keep(&mut self, job: Option<EntryId>, fact: Fact) -> Result<EntryId, NotDone> {
        self.app.keep(job, fact)
    }

    /// Keeps a fact about a site's supply network.
    pub fn keep_at(&mut self, site: EntryId, fact: Fact) -> Result<EntryId, NotDone> {
        self.app.keep_at(site, fact)
    }

    /// A site's supply network.
    pub fn drawn(&self, site: EntryId) -> Drawn {
        self.app.drawn(site)
    }

    /// A job beside its site's supply network.
    pub fn cut(&mut self, job: &Job) -> Result<Cut, NotDone> {
        self.app.cut(job).ok_or_else(|| Refusal::Network(NetworkRefusal::NotDrawn).into())
    }

    /// The job as it is now.
    pub fn job(&mut self, id: EntryId) -> Result<Job, NotDone> {
        self.app.look_at(id)
    }

    /// The person who has the device in hand.
    pub fn acting(&self) -> Result<EntryId, NotDone> {
        self.app.acting.ok_or_else(|| Refusal::NobodyActs.into())
    }

    /// People, sites, instruments.
    pub fn world(&self) -> &World {
        &self.app.world
    }

    /// Where a tag hangs or hung, latest first.
    pub fn places_of(&self, tag: TagId) -> Result<Vec<TagRow>, NotDone> {
        Ok(self.app.places_of(tag)?)
    }

    /// Keeps the photo that waits on this screen, with the reason.
    pub fn keep_waiting(&mut self, job: EntryId, of: EntryId, why: String) -> Result<(), NotDone> {
        self.app.keep_waiting(job, of, why)
    }

    /// Keeps what the next view of this screen needs, as if it had been typed.
    pub fn note(&mut self, field: &str, value: &str) {
        self.app.edit(field, value);
    }

    /// What this screen noted with [`Act::note`].
    pub fn draft(&self, field: &str) -> String {
        self.app.draft(field)
    }

    /// Puts what is known already into a field of another screen, as if it had been typed there.
    pub fn prefill(&mut self, route: Route, field: &str, value: &str) {
        self.app.prefill(route, field, value);
    }

    /// What was typed stays on the screen, whatever the act does there.
    pub fn keep_typed(&mut self) {
        for filled in self.input {
            self.app.edit(&filled.field, &filled.value);
        }
    }

    /// Asks something before anything is kept: what was given stays on the screen, and the screen asks it.
    pub fn ask(&mut self, text: String) -> Result<(), NotDone> {
        self.keep_typed();
        self.say = Some(text);
        Ok(())
    }

    /// Rings the owner of a lock.
    pub fn ring(&mut self, owner: EntryId) -> Result<(), NotDone> {
        let number = self.world().telephone(owner).to_owned();
        if number.is_empty() {
            return Err(AskLock::Telephone.into());
        }
        self.errands.push(Errand::Ring { number });
        self.say = Some(said_locks::ringing(self.world().name(owner)));
        Ok(())
    }

    /// Makes the record of a job, and has it handed on.
    pub fn share_record(&mut self, job: EntryId, withhold: bool) -> Result<(), NotDone> {
        let errand = self.app.share_record(job, withhold)?;
        self.errands.push(errand);
        self.say = Some(said_record::made());
        Ok(())
    }

    /// What was given for `field`, trimmed: what was typed, or else what was tapped among what was said before; empty if neither.
    pub fn given(&self, field: &str) -> String {
        let of = |name: &str| self.input.iter().find(|f| f.field == name).map(|f| f.value.trim().to_owned());
        // A new job like an earlier one shows in its short form what is taken over, and asks for it only where it is to be changed.
        let taken_over = || if self.draft(LIKE).is_empty() { None } else { Some(self.draft(field)) };
        let given = of(field).or_else(taken_over).unwrap_or_default();
        if given.is_empty() { of(&again(field)).unwrap_or_default() } else { given }
    }

    /// What was given for `field`; `ask` says what to give if nothing was.
    pub fn need(&self, field: &str, ask: impl Into<AskFirst>) -> Result<String, NotDone> {
        let value = self.given(field);
        if value.is_empty() {
            return Err(ask.into().into());
        }
        if field == "mark" { within(8000, &value, ask) } else { Self::bounded(&value, ask) }
    }

    /// A text that came in an action, within the bound of every other; `ask` says what to give if it is longer.
    pub fn bounded(text: &str, ask: impl Into<AskFirst>) -> Result<String, NotDone> {
        within(2000, text, ask)
    }

    /// The signature of `name`, drawn or typed. Whoever types signs with their own name: what stands behind a comma, such as an office that
    /// they hold, may be left out.
    pub fn signature(&self, name: &str) -> Result<String, NotDone> {
        let mark = self.need("mark", AskFirst::Signs { name: name.to_owned() })?;
        let plain = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ").to_lowercase();
        let alone = name.split_once(',').map_or(name, |(alone, _)| alone);
        match mark.strip_prefix("typed:") {
            Some(typed) if ![name, alone].iter().any(|n| plain(n) == plain(typed)) => {
                Err(AskFirst::SignsAsThemselves { typed: typed.to_owned(), name: name.to_owned() }.into())
            }
            _ => Ok(mark),
        }
    }

    /// An id given for `field`.
    pub fn need_id(&self, field: &str, ask: impl Into<AskFirst>) -> Result<EntryId, NotDone> {
        let ask = ask.into();
        self.need(field, ask.clone())?.parse().map_err(|_| ask.into())
    }

    /// Goes to the step whose turn it is, if `step` is passed; stays otherwise.
    pub fn onward(&mut self, job: EntryId, step: Step) -> Result<(), NotDone> {
        let now = self.app.look_at(job)?;
        let steps = now.steps();
        if steps.iter().any(|s| s.step == step && s.passed()) {
            self.go = Some(match now.current() {
                Some(next) => Route::Step(job, next),
                None => Route::Job(job),
            });
        }
        Ok(())
    }
}
