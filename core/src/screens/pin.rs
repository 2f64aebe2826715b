//! The PIN of who takes the device, or goes on after a pause, where several people use it.

use super::Route;
use super::build::Page;
use super::context::{Act, Look};
use super::home::{UNKNOWN, go};
use super::locks::put;
use super::parts::{EntryKind, Tone};
use crate::app::NotDone;
use crate::app::pin::DIGITS;
use crate::journal::{EntryId, SignedOn};
use crate::text::AskDevice;
use crate::text::screens::pin as said;

/// Asks for a PIN, or for a first one.
pub fn view(look: &Look, person: EntryId) -> Page {
    let name = look.name(person);
    let mut page = Page::new(said::title(&name));
    let digits = |page: &mut Page, field: &str, label: String, hint: String| {
        page.field(field, &label, &hint, String::new(), EntryKind::Pin, *DIGITS.end() as u32);
    };
    if let Some(then) = &look.hands.then {
        page.para(said::paused());
        page.button(said::later(), go(then.route));
    }
    let chosen = |page: &mut Page| {
        digits(page, "pin-new", said::new(), said::digits_hint(*DIGITS.start(), *DIGITS.end()));
        digits(page, "pin-again", said::new_again(), String::new());
    };
    if look.hands.has_pin(person) {
        digits(&mut page, "pin", said::field(), said::field_hint(&name));
        put(&mut page, said::sign_on(), "pin");
    } else {
        page.para(said::why());
        chosen(&mut page);
        put(&mut page, said::set(), "set");
    }
    page.caution(Tone::Warn, said::without_says(name));
    page.button(said::without(), "without");
    if !look.hands.has_pin(person) {
        return page;
    }
    page.heading(said::forgotten());
    let witnesses: Vec<_> = look.hands.witnesses(person).iter().map(|p| (p.to_string(), look.name(*p))).collect();
    let vouched = look.hands.vouched == Some(person);
    if vouched {
        page.para(said::office_agreed());
        chosen(&mut page);
        page.button(said::set_new(), "anew-office");
        return page;
    }
    if witnesses.is_empty() {
        page.para(said::no_witness());
    } else {
        page.choice("witness", &said::witness(), witnesses, look.draft("witness"));
        digits(&mut page, "pin-witness", said::of_witness(), said::of_witness_hint());
        chosen(&mut page);
        page.button(said::set_witnessed(), "anew");
    }
    if look.exchange.office.is_some() {
        page.entry("office-code", &said::office_code(), &said::office_code_hint(), look.draft("office-code"));
        page.button(said::ask_office(), "office");
        if let Some(trouble) = &look.exchange.now.trouble {
            page.caution(Tone::Warn, trouble.says());
        }
    }
    page
}

/// Does what a button of it says.
pub fn act(act: &mut Act, person: EntryId, verb: &str) -> Result<(), NotDone> {
    match verb {
        "pin" => {
            let pin = act.need("pin", AskDevice::Pin)?;
            act.app.check_pin(person, &pin)?;
            signed_on(act, person, SignedOn::Pin)
        }
        "without" => signed_on(act, person, SignedOn::WithoutPin),
        "set" => {
            let pin = chosen(act)?;
            act.app.set_pin(person, &pin, None)?;
            signed_on(act, person, SignedOn::Pin)
        }
        "anew" => {
            let witness = act.need_id("witness", AskDevice::Witness)?;
            if witness == person {
                return Err(AskDevice::WitnessIsOther.into());
            }
            let theirs = act.need("pin-witness", AskDevice::WitnessPin)?;
            let pin = chosen(act)?;
            act.app.check_pin(witness, &theirs)?;
            let name = act.world().name(witness);
            act.app.set_pin(person, &pin, Some(name))?;
            signed_on(act, person, SignedOn::Pin)
        }
        "anew-office" if act.app.hands.vouched == Some(person) => {
            let pin = chosen(act)?;
            act.app.set_pin(person, &pin, Some("the office".into()))?;
            signed_on(act, person, SignedOn::Pin)
        }
        "office" => {
            let code = act.need("office-code", AskDevice::OfficeAsWitness)?;
            act.app.ask_office(person, &code)?;
            act.note("office-code", "");
            act.say = Some(said::office_asked());
            Ok(())
        }
        _ => Err(UNKNOWN.into()),
    }
}

/// A new PIN, typed twice alike.
fn chosen(act: &Act) -> Result<String, NotDone> {
    let pin = act.need("pin-new", AskDevice::PinNew)?;
    if pin != act.given("pin-again") {
        return Err(AskDevice::PinTwice.into());
    }
    Ok(pin)
}

fn signed_on(act: &mut Act, person: EntryId, how: SignedOn) -> Result<(), NotDone> {
    if !act.app.sign_on(person, how)? {
        act.go = Some(Route::Home);
    }
    act.say = Some(said::signed_on(act.world().name(person)));
    Ok(())
}
