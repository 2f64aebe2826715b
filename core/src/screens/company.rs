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
use crate::text::screens::ruled as said;
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
    page.heading(said::company_heading());
    if look.world.company.is_empty() {
        page.para(said::company_none());
    }
    for (site, held) in look.world.company.iter().take(MAX_SITES) {
        let (rules, place) = (&held.rules, look.world.sites.get(site).cloned().unwrap_or_else(said::a_site));
        let version = text::company_version(rules, &fingerprint(rules));
        page.fact(place, said::company_version_by(version, look.by(&held.stamp)));
        for (label, says) in text::company_rules(rules) {
            page.fact(label, says);
        }
        for called in &held.call {
            page.fact(called.who.clone(), called.number.clone());
        }
    }
    page.para(said::company_hold());
    let sites = look.world.sites.iter().take(MAX_SITES).map(|(id, name)| (id.to_string(), name.clone()));
    page.choice(SITE, &said::company_site(), sites.collect(), look.draft(SITE));
    page.field(
        FILE,
        &said::company_file_field(),
        &said::company_file_hint(),
        look.draft(FILE),
        EntryKind::Long,
        MAX_FILE as u32,
    );
    page.button(said::company_save(name), "company");
}

/// Keeps a file for a site.
pub(super) fn act(act: &mut Act) -> Result<(), NotDone> {
    let site = act.need_id(SITE, AskDevice::Site)?;
    let typed = act.given(FILE);
    let CompanyFile { rules, call } = CompanyFile::from_json(&typed).map_err(AskFirst::Company)?;
    let says = text::company_version(&rules, &fingerprint(&rules));
    act.keep_at(site, Fact::CompanyRuled { rules: Box::new(rules), call: call_written(&call) })?;
    act.say = Some(said::company_saved(says));
    Ok(())
}

/// On the page of a job: by which rules it is done, and whether others hold by now.
pub(super) fn of_job(page: &mut Page, look: &Look, job: &Job) {
    let told = job.company.as_ref().map(|rules| text::company_version(rules, &fingerprint(rules)));
    if let Some(told) = &told {
        page.fact(said::company_of_job(), told);
    }
    match job.company_heard.first() {
        Some((heard, _)) => page.caution(Tone::Plain, said::company_heard(look.by(heard))),
        None if told.is_none() => page.fact(said::company_of_job(), said::company_none_known()),
        None => page,
    };
    let now = held(look.world, job).map(|held| text::company_version(&held.rules, &fingerprint(&held.rules)));
    if let Some(now) = now.filter(|now| job.handed.is_none() && told.as_ref().is_some_and(|told| told != now)) {
        page.caution(Tone::Warn, said::company_newer(now));
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
    page.heading(said::company_whom_to_call());
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
    act.say = Some(said::company_ringing(called.who));
    Ok(())
}

fn held<'a>(world: &'a World, job: &Job) -> Option<&'a CompanyHeld> {
    world.company.get(&job.site?)
}
