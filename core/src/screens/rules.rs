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
use crate::text::screens::ruled as said;
use crate::text::{self, AskDevice, AskFirst};

/// Most sites that can be chosen here.
const MAX_SITES: usize = 40;

/// The limit in a few words, for the first screen.
pub(super) fn in_short(look: &Look) -> String {
    look.world.limit.as_ref().map_or_else(said::limit_none_short, text::limit_set)
}

/// The company's limit, and what each site sets.
pub fn view(look: &Look) -> Page {
    let mut page = Page::new(said::title());
    let name = signs(look);
    page.heading(said::limit());
    page.para(look.world.limit.as_ref().map_or_else(said::limit_none, text::limit_set));
    page.para(said::limit_holds());
    limit_form(&mut page, look);
    page.main(said::save_limit(&name), "limit");
    page.button(said::ask(), "ask-limit");

    company::view(&mut page, look, &name);

    page.heading(said::age());
    page.para(said::age_most(BETWEEN_PROOFS, PROOF_HOLDS));
    for (site, rules) in &look.site.rules {
        let name = look.world.sites.get(site).cloned().unwrap_or_else(said::a_site);
        page.fact(name, said::site_set(rules.between_proofs, rules.proof_holds));
    }
    let sites = look.world.sites.iter().take(MAX_SITES).map(|(id, name)| (id.to_string(), name.clone()));
    page.choice("site", &said::site(), sites.collect(), look.draft("site"));
    let hint = said::minutes_hint(BETWEEN_PROOFS);
    page.field("between", &said::between(), &hint, look.draft("between"), EntryKind::Number, 3);
    let hint = said::minutes_hint(PROOF_HOLDS);
    page.field("holds", &said::holds(), &hint, look.draft("holds"), EntryKind::Number, 4);
    page.button(said::save_site(name), "site");
    page
}

fn signs(look: &Look) -> String {
    look.acting.map_or_else(said::nobody, |person| look.name(person))
}

fn limit_form(page: &mut Page, look: &Look) {
    page.field("limit-ac", &said::limit_ac(), &said::limit_ac_hint(), look.draft("limit-ac"), EntryKind::Number, 8);
    page.field("limit-dc", &said::limit_dc(), &said::limit_dc_hint(), look.draft("limit-dc"), EntryKind::Number, 8);
    page.entry("limit-rule", &said::limit_rule(), &said::limit_rule_hint(), look.draft("limit-rule"));
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
            page.fact(said::limit(), text::limit_set(limit));
        }
        None => {
            page.para(said::limit_none());
            page.button(said::ask(), "ask-limit");
        }
    }
}

/// A text to the person who is responsible, ready to be sent.
pub(super) fn ask(act: &mut Act) -> Result<(), NotDone> {
    let from = act.acting().map(|person| act.world().name(person)).unwrap_or_default();
    let text = text::sentences(said::ask_text(), from);
    act.errands.push(Errand::Share { title: said::limit(), text: text.trim().to_owned() });
    act.say = Some(said::asked());
    Ok(())
}

/// In a job: the limit, and the form of the person in charge to change it.
pub(super) fn change(page: &mut Page, look: &Look, job: &Job) {
    page.heading(said::change());
    page.para(job.limit.as_ref().map_or_else(said::limit_none, text::limit_set));
    let Some(charge) = job.in_charge() else { return };
    if look.acting != Some(charge) {
        page.para(said::change_charge(look.name(charge)));
        return;
    }
    let name = look.name(charge);
    page.caution(Tone::Warn, said::change_ends());
    limit_form(page, look);
    page.button(said::change_limit(&name), "limit");
    if job.limit.is_some() {
        page.button(said::no_limit(name), "no-limit");
    }
}

/// Changes the limit of a job.
pub(super) fn act_change(act: &mut Act, job: EntryId, verb: &str) -> Result<(), NotDone> {
    let limit = if verb == "no-limit" { None } else { Some(limit_given(act)?) };
    act.keep(Some(job), Fact::LimitSet { limit }).map(drop)
}
