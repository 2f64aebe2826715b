//! Rules of a company: what holds at each site, a file for phones without an office, and what of them stands on a job.

use super::build::Page;
use super::context::{Act, Look};
use super::home::UNKNOWN;
use super::parts::{EntryKind, Errand, Tone};
use crate::app::NotDone;
use crate::job::Job;
use crate::job::company::CompanyFile;
use crate::job::steps::Step;
use crate::journal::{EntryId, Fact, fingerprint};
use crate::text::{self, AskDevice, AskFirst};
use crate::world::{CompanyHeld, World};
use stillbar_values::company::{MAX_FILE, call_written};

/// Rings somebody of the company's list, by their place in it.
pub(super) const RING: &str = "ring-company";
/// Where a file is pasted, and the site that it is for.
const FILE: &str = "company-file";
const SITE: &str = "company-site";
/// Most sites that are shown or can be chosen here.
const MAX_SITES: usize = 40;

/// On the screen of rules: what holds where, and the field for a file.
pub(super) fn view(page: &mut Page, look: &Look, name: &str) {
    page.heading("Rules of your company");
    if look.world.company.is_empty() {
        page.para("No site has rules of a company here. The office brings them, or paste their file.");
    }
    for (site, held) in look.world.company.iter().take(MAX_SITES) {
        let (rules, place) = (&held.rules, look.world.sites.get(site).map_or("A site", String::as_str));
        let version = text::company_version(rules, &fingerprint(rules));
        page.fact(place, format!("{version} ({})", look.by(&held.stamp)));
        for (label, says) in text::company_rules(rules) {
            page.fact(label, says);
        }
        for called in &held.call {
            page.fact(called.who.clone(), called.number.clone());
        }
    }
    page.para("They hold for jobs that are opened from now on. They only ask for more, or set less.");
    let sites = look.world.sites.iter().take(MAX_SITES).map(|(id, name)| (id.to_string(), name.clone()));
    page.choice(SITE, "Site of the file", sites.collect(), look.draft(SITE));
    let hint = "The whole text of the file that your company gave you";
    page.field(FILE, "File of rules", hint, look.draft(FILE), EntryKind::Long, MAX_FILE as u32);
    page.button(format!("Take this file in, signed by {name}"), "company");
}

/// Keeps a file for a site.
pub(super) fn act(act: &mut Act) -> Result<(), NotDone> {
    let site = act.need_id(SITE, AskDevice::Site)?;
    let typed = act.given(FILE);
    let CompanyFile { rules, call } = CompanyFile::from_json(&typed).map_err(AskFirst::Company)?;
    let says = text::company_version(&rules, &fingerprint(&rules));
    act.keep_at(site, Fact::CompanyRuled { rules: Box::new(rules), call: call_written(&call) })?;
    act.say = Some(format!("{says}. Jobs that are opened here from now on are done by it."));
    Ok(())
}

/// On the page of a job: by which rules it is done, and whether others hold by now.
pub(super) fn of_job(page: &mut Page, look: &Look, job: &Job) {
    let told = job.company.as_ref().map(|rules| text::company_version(rules, &fingerprint(rules)));
    if let Some(told) = &told {
        page.fact("Company rules", told);
    }
    let now = held(look.world, job).map(|held| text::company_version(&held.rules, &fingerprint(&held.rules)));
    if let Some(now) = now.filter(|now| job.handed.is_none() && told.as_ref() != Some(now)) {
        let by = if told.is_some() { "those that it was opened with" } else { "none, as it was opened" };
        page.caution(Tone::Warn, format!("New jobs here are done by {now}. This one goes on by {by}."));
    }
}

/// On a step: what the company wants worn there.
pub(super) fn wear(page: &mut Page, job: &Job, step: Step) {
    if let (Some(company), Some(text)) = (&job.company, job.ppe(step)) {
        page.caution(Tone::Must, text::company_ppe(&company.company, text));
    }
}

/// On the page of a job: a button for each whom the company wants called. The numbers are those that hold now.
pub(super) fn whom_to_call(page: &mut Page, look: &Look, job: &Job) {
    let Some(held) = held(look.world, job).filter(|held| !held.call.is_empty()) else { return };
    page.heading("Whom to call");
    for (i, called) in held.call.iter().enumerate() {
        page.fact(called.who.clone(), called.number.clone());
        page.button(text::ring(&called.who), format!("{RING} {i}"));
    }
}

/// Rings.
pub(super) fn ring(act: &mut Act, job: EntryId, arg: &str) -> Result<(), NotDone> {
    let at: usize = arg.parse().map_err(|_| UNKNOWN)?;
    let job = act.job(job)?;
    let called = held(act.world(), &job).and_then(|held| held.call.get(at)).cloned().ok_or(UNKNOWN)?;
    act.errands.push(Errand::Ring { number: called.number });
    act.say = Some(format!("Ringing {}.", called.who));
    Ok(())
}

fn held<'a>(world: &'a World, job: &Job) -> Option<&'a CompanyHeld> {
    world.company.get(&job.site?)
}
