//! What a company and its sites set: the limit for figures that count as no indication, and how old a proof may get.
//!
//! The company's limit is set once and stands on every job that is opened after it; in a job only the person in charge changes it, and
//! that ends the proof. What else a company rules is in `company.rs`. Start at [`view`].

use super::build::Page;
use super::company;
use super::context::{Act, Look};
use super::home::{UNKNOWN, volts};
use super::parts::{EntryKind, Errand, Tone};
use crate::app::NotDone;
use crate::job::Job;
use crate::job::known::{BETWEEN_PROOFS, PROOF_HOLDS};
use crate::journal::fact::Limit;
use crate::journal::{EntryId, Fact};
use crate::text::{self, AskDevice, AskFirst};

/// Most sites that can be chosen here.
const MAX_SITES: usize = 40;
/// What a figure other than 0 counts as where no limit is set.
const NO_LIMIT: &str = "No limit is set: figures other than 0 count as an indication.";

/// The limit in a few words, for the first screen.
pub(super) fn in_short(look: &Look) -> String {
    look.world.limit.as_ref().map_or_else(|| "No limit for dead is set.".to_owned(), text::limit_set)
}

/// The company's limit, and what each site sets.
pub fn view(look: &Look) -> Page {
    let mut page = Page::new("Rules of your company and sites");
    let name = signs(look);
    page.heading("Limit for dead");
    page.para(look.world.limit.as_ref().map_or_else(|| NO_LIMIT.to_owned(), text::limit_set));
    page.para(
        "It holds for jobs that are opened from now on. A lamp that lights is an indication, whatever the limit.",
    );
    limit_form(&mut page, look);
    page.main(format!("Save the limit, signed by {name}"), "limit");
    page.button("Ask who is responsible", "ask-limit");

    company::view(&mut page, look, &name);

    page.heading("How old a proof may get");
    page.para(format!(
        "At most {BETWEEN_PROOFS} min between two proofs of the indicator, and {PROOF_HOLDS} min for a proof (our rule, no source). A site \
         may set less."
    ));
    for (site, rules) in &look.site.rules {
        let name = look.world.sites.get(site).map_or("A site", String::as_str);
        page.fact(name, format!("{} min between proofs, {} min for a proof", rules.between_proofs, rules.proof_holds));
    }
    let sites = look.world.sites.iter().take(MAX_SITES).map(|(id, name)| (id.to_string(), name.clone()));
    page.choice("site", "Site", sites.collect(), look.draft("site"));
    let hint = format!("1 to {BETWEEN_PROOFS}");
    page.field("between", "Minutes between two proofs", &hint, look.draft("between"), EntryKind::Number, 3);
    let hint = format!("1 to {PROOF_HOLDS}");
    page.field("holds", "Minutes that a proof holds", &hint, look.draft("holds"), EntryKind::Number, 4);
    page.button(format!("Save for this site, signed by {name}"), "site");
    page
}

fn signs(look: &Look) -> String {
    look.acting.map_or_else(|| "nobody yet".to_owned(), |person| look.name(person))
}

fn limit_form(page: &mut Page, look: &Look) {
    let hint = "Below 50, such as 10";
    page.field("limit-ac", "Limit in volts AC", hint, look.draft("limit-ac"), EntryKind::Number, 8);
    let hint = "Below 120, such as 10";
    page.field("limit-dc", "Limit in volts DC", hint, look.draft("limit-dc"), EntryKind::Number, 8);
    let hint = "As your company calls it, with its date";
    page.entry("limit-rule", "Rule that sets it", hint, look.draft("limit-rule"));
}

fn limit_given(act: &Act) -> Result<Limit, NotDone> {
    Ok(Limit {
        ac: volts(act, "limit-ac", AskDevice::LimitAc)?,
        dc: volts(act, "limit-dc", AskDevice::LimitDc)?,
        rule: act.need("limit-rule", AskDevice::LimitRule)?,
    })
}

/// Keeps what was set here.
pub fn act(act: &mut Act, verb: &str) -> Result<(), NotDone> {
    match verb {
        "limit" => act.keep(None, Fact::LimitRuled { limit: limit_given(act)? }).map(drop),
        "ask-limit" => ask(act),
        "company" => company::act(act),
        "site" => {
            let site = act.need_id("site", AskDevice::Site)?;
            let minutes = |field: &str, most: u32| -> Result<u32, NotDone> {
                let ask = AskFirst::Minutes { most };
                act.need(field, ask.clone())?.parse().map_err(|_| ask.into())
            };
            let (between_proofs, proof_holds) = (minutes("between", BETWEEN_PROOFS)?, minutes("holds", PROOF_HOLDS)?);
            act.keep_at(site, Fact::SiteRuled { between_proofs, proof_holds }).map(drop)
        }
        _ => Err(UNKNOWN.into()),
    }
}

/// At set-up: which limit the job gets, or that there is none and whom to ask.
pub(super) fn at_set_up(page: &mut Page, look: &Look) {
    match &look.world.limit {
        Some(limit) => {
            page.fact("Limit for dead", text::limit_set(limit));
        }
        None => {
            page.para(NO_LIMIT);
            page.button("Ask who is responsible", "ask-limit");
        }
    }
}

/// A text to the person who is responsible, ready to be sent.
pub(super) fn ask(act: &mut Act) -> Result<(), NotDone> {
    let from = act.acting().map(|person| act.world().name(person)).unwrap_or_default();
    let text = format!(
        "We prove dead with a two-pole voltage indicator. Which figure counts as no voltage at our sites? Please name a limit in volts \
         AC (below 50) and one in volts DC (below 120), and the rule that sets them. Until then every figure other than 0 counts as an \
         indication. {from}"
    );
    act.errands.push(Errand::Share { title: "Limit for dead".into(), text: text.trim().to_owned() });
    act.say = Some("The text is ready to send. Nothing is set until somebody sets it under Rules.".into());
    Ok(())
}

/// In a job: the limit, and the form of the person in charge to change it.
pub(super) fn change(page: &mut Page, look: &Look, job: &Job) {
    page.heading("The limit for dead changes");
    page.para(job.limit.as_ref().map_or_else(|| NO_LIMIT.to_owned(), text::limit_set));
    let Some(charge) = job.in_charge() else { return };
    if look.acting != Some(charge) {
        page.para(format!("Only {} changes it, who is in charge of this isolation.", look.name(charge)));
        return;
    }
    let name = look.name(charge);
    page.caution(Tone::Warn, "Changing it ends the proof.");
    limit_form(page, look);
    page.button(format!("Change the limit, signed by {name}"), "limit");
    if job.limit.is_some() {
        page.button(format!("No limit: only 0 counts, signed by {name}"), "no-limit");
    }
}

/// Changes the limit of a job.
pub(super) fn act_change(act: &mut Act, job: EntryId, verb: &str) -> Result<(), NotDone> {
    let limit = if verb == "no-limit" { None } else { Some(limit_given(act)?) };
    act.keep(Some(job), Fact::LimitSet { limit }).map(drop)
}
