//! The office: joining one, and why each thing is not there yet.

use super::Route;
use super::build::Page;
use super::context::{Act, Look};
use super::home::UNKNOWN;
use super::parts::{EntryKind, Tone};
use crate::app::NotDone;
use crate::sync::Join;
use crate::sync::rules::{Size, Waits, goes};
use crate::text::AskDevice;
use crate::text::screens::office as said;
use crate::text::times;

/// One line for the row on the first screen.
pub fn in_short(look: &Look) -> Vec<String> {
    let Some((name, _)) = &look.exchange.office else { return vec![said::alone()] };
    let reached = match look.office {
        Some(at) => said::reached(name, times::when(at, look.zone, look.now)),
        None => said::not_reached(name),
    };
    let waiting = match look.exchange.unsent {
        0 => said::all_sent(),
        count => said::unsent(count),
    };
    vec![reached, waiting]
}

/// The screen.
pub fn view(look: &Look) -> Page {
    let mut page = Page::new(said::title());
    let state = &look.exchange;
    if let Some(join) = Join::read(&look.draft("code")) {
        asked(&mut page, look, &join);
        return page;
    }
    let Some((name, url)) = &state.office else {
        page.para(said::none());
        put_aside(&mut page, look);
        code(&mut page, look);
        page.main(said::scan(), "scan");
        return page;
    };
    if let Some(trouble) = &state.now.trouble {
        page.caution(Tone::Warn, trouble.says());
    }
    page.fact(said::name(), said::at(name, url));
    page.fact(said::last_reached(), look.office.map_or_else(said::not_yet, |at| times::when(at, look.zone, look.now)));
    if state.now.running {
        page.fact(said::now(), said::running());
    } else if let Some(next) = state.now.next_ms {
        page.fact(said::next_try(), said::next(times::when(next, look.zone, look.now)));
    }
    waiting(&mut page, look);
    differences(&mut page, look);
    page.heading(said::another());
    code(&mut page, look);
    page.toned(said::scan_another(), "scan", Tone::Quiet);
    page.main(said::exchange(), "now");
    page
}

fn waiting(page: &mut Page, look: &Look) {
    let state = &look.exchange;
    page.heading(said::waiting());
    let (unsent, left) = (state.unsent, state.now.photos);
    match unsent {
        0 => page.fact(said::entries(), said::all_sent()),
        count => page.fact(said::entries(), said::entries_unsent(count)),
    };
    let what = [said::pictures_small(), said::pictures_larger(), said::pictures_original()];
    for ((size, count), what) in Size::ALL.into_iter().zip(left).zip(what) {
        let why = match (count, goes(size, unsent > 0, state.now.free_link || state.now.originals_now)) {
            (0, _) => said::pictures_sent(),
            (count, Waits::Goes) => said::pictures_going(count),
            (count, Waits::ForEntries) => said::pictures_after(count),
            (count, Waits::ForWifi) => said::pictures_wifi(count),
        };
        page.fact(what, why);
        if count > 0 && size == Size::Original && !(state.now.free_link || state.now.originals_now) {
            page.button(said::send_originals(), "originals");
        }
    }
    match state.now.missing.len() {
        0 => {}
        count => {
            page.caution(Tone::Warn, said::photos_gone(count));
        }
    }
}

fn differences(page: &mut Page, look: &Look) {
    let state = &look.exchange;
    if state.aside_there > 0 {
        page.caution(Tone::Warn, said::aside_there(state.aside_there));
    }
    put_aside(page, look);
    if state.old_key {
        page.caution(Tone::Must, said::old_key());
    }
    if state.now.agreed == Some(false) {
        page.caution(Tone::Warn, said::differs());
        page.button(said::compare(), "compare");
    }
}

/// What came from others and is not in the journal; what is about a job stands on the job too.
fn put_aside(page: &mut Page, look: &Look) {
    let all = &look.exchange.aside_here;
    if all.is_empty() {
        return;
    }
    page.heading(said::put_aside());
    page.caution(Tone::Warn, said::not_in_journal());
    for aside in all.iter().take(20) {
        page.fact(said::aside(aside.seq, format!("{:.8}", aside.device.to_string())), aside.why.clone());
    }
}

fn code(page: &mut Page, look: &Look) {
    page.field("code", &said::code(), &said::code_hint(), look.draft("code"), EntryKind::Text, 400);
    page.button(said::use_code(), "use");
}

fn asked(page: &mut Page, look: &Look, join: &Join) {
    page.fact(said::address(), join.url.clone());
    page.caution(Tone::Must, said::everything_goes());
    if join.url.starts_with("http://") {
        page.caution(Tone::Warn, said::unencrypted());
    }
    if look.exchange.now.join.is_some() {
        page.para(said::asking());
    }
    if let Some(trouble) = &look.exchange.now.trouble {
        page.caution(Tone::Warn, trouble.says());
    }
    page.main(said::join(), "join");
    page.toned(said::do_not_join(), "leave", Tone::Quiet);
}

/// What is done here. The network is the thread's business: an act only says what is wanted.
pub fn act(act: &mut Act, verb: &str) -> Result<(), NotDone> {
    let ask = AskDevice::OfficeCode;
    match verb {
        "now" => act.say = Some(said::asked()),
        "originals" => {
            act.app.exchange.originals_now = true;
            act.say = Some(said::originals_go());
        }
        "compare" => {
            act.app.exchange.agreed = None;
            act.say = Some(said::compared());
        }
        "use" => {
            Join::read(&act.need("code", ask)?).ok_or(ask)?;
            let code = act.given("code");
            act.note("code", &code);
        }
        "join" => {
            // The draft is the code that was scanned or typed; it stays until the office has answered.
            let join = Join::read(&act.app.drafted("code")).ok_or(ask)?;
            act.app.exchange.trouble = None;
            act.app.exchange.join = Some(join);
            act.say = Some(said::asking());
        }
        "leave" => {
            act.app.exchange.join = None;
            act.note("code", "");
        }
        _ => return Err(UNKNOWN.into()),
    }
    act.go = Some(Route::Office);
    Ok(())
}
