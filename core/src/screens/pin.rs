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

/// Asks for a PIN, or for a first one.
pub fn view(look: &Look, person: EntryId) -> Page {
    let name = look.name(person);
    let mut page = Page::new(format!("PIN of {name}"));
    let digits = |page: &mut Page, field: &str, label: &str, hint: &str| {
        page.field(field, label, hint, String::new(), EntryKind::Pin, *DIGITS.end() as u32);
    };
    if let Some(then) = &look.hands.then {
        page.para(
            "Nobody touched this device for 10 minutes, or it was started again. What you did goes on after this.",
        );
        page.button("Back, and do it later", go(then.route));
    }
    let chosen = |page: &mut Page| {
        let hint = format!("{} to {} digits. It stays on this device.", DIGITS.start(), DIGITS.end());
        digits(page, "pin-new", "New PIN", &hint);
        digits(page, "pin-again", "New PIN again", "");
    };
    if look.hands.has_pin(person) {
        digits(&mut page, "pin", "PIN", &format!("{name} types it."));
        put(&mut page, "Sign on", "pin");
    } else {
        page.para("Several people use this device. Set a PIN, so that nobody signs as you.");
        chosen(&mut page);
        put(&mut page, "Set this PIN", "set");
    }
    page.caution(Tone::Warn, format!("Without it, board and record say \"no PIN\" behind what {name} does."));
    page.button("Go on without PIN", "without");
    if !look.hands.has_pin(person) {
        return page;
    }
    page.heading("If it is forgotten");
    let witnesses: Vec<_> = look.hands.witnesses(person).iter().map(|p| (p.to_string(), look.name(*p))).collect();
    let vouched = look.hands.vouched == Some(person);
    if vouched {
        page.para("The office has agreed. Set a new PIN.");
        chosen(&mut page);
        page.button("Set it anew", "anew-office");
        return page;
    }
    if witnesses.is_empty() {
        page.para("Nobody else has a PIN here who could be the witness. Go on without.");
    } else {
        page.choice("witness", "Witness beside you", witnesses, look.draft("witness"));
        digits(&mut page, "pin-witness", "PIN of the witness", "The witness types it.");
        chosen(&mut page);
        page.button("Set it anew with this witness", "anew");
    }
    if look.exchange.office.is_some() {
        page.entry(
            "office-code",
            "Code from the office",
            "One that was made there just now.",
            look.draft("office-code"),
        );
        page.button("Ask the office as witness", "office");
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
            act.say = Some("The office is asked. Its answer comes on this screen.".into());
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
    act.say = Some(format!("{} has this device in hand.", act.world().name(person)));
    Ok(())
}
