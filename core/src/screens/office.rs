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
use crate::text::times;

/// One line for the row on the first screen.
pub fn in_short(look: &Look) -> Vec<String> {
    let Some((name, _)) = &look.exchange.office else { return vec!["This device works on its own.".into()] };
    let reached = match look.office {
        Some(at) => format!("{name}, last reached {}", times::when(at, look.zone, look.now)),
        None => format!("{name}, not reached yet"),
    };
    let waiting = match look.exchange.unsent {
        0 => "Every entry is there.".into(),
        1 => "1 entry waits to go out.".into(),
        n => format!("{n} entries wait to go out."),
    };
    vec![reached, waiting]
}

/// The screen.
pub fn view(look: &Look) -> Page {
    let mut page = Page::new("Office");
    let state = &look.exchange;
    if let Some(join) = Join::read(&look.draft("code")) {
        asked(&mut page, look, &join);
        return page;
    }
    let Some((name, url)) = &state.office else {
        page.para(
            "This device works on its own: everything is kept here, and others do not see its locks. An office takes in what is recorded \
             and hands on what others recorded at the same sites.",
        );
        put_aside(&mut page, look);
        code(&mut page, look);
        page.main("Scan the office's code", "scan");
        return page;
    };
    if let Some(trouble) = &state.now.trouble {
        page.caution(Tone::Warn, trouble.says());
    }
    page.fact("Office", format!("{name}, {url}"));
    page.fact(
        "Last reached",
        look.office.map_or_else(|| "not yet".to_owned(), |at| times::when(at, look.zone, look.now)),
    );
    if state.now.running {
        page.fact("Now", "An exchange is under way.");
    } else if let Some(next) = state.now.next_ms {
        page.fact(
            "Next try",
            format!("{}, or as soon as there is something new", times::when(next, look.zone, look.now)),
        );
    }
    waiting(&mut page, look);
    differences(&mut page, look);
    page.heading("Another office");
    code(&mut page, look);
    page.toned("Scan the code of another office", "scan", Tone::Quiet);
    page.main("Exchange now", "now");
    page
}

fn waiting(page: &mut Page, look: &Look) {
    let state = &look.exchange;
    page.heading("Not there yet");
    let (unsent, left) = (state.unsent, state.now.photos);
    match unsent {
        0 => page.fact("Entries", "All are there."),
        n => page.fact("Entries", format!("{n}, kept on this device. They go first, in their order.")),
    };
    let what = ["Small pictures", "Larger pictures", "Original photos"];
    for ((size, count), what) in Size::ALL.into_iter().zip(left).zip(what) {
        let why = match (count, goes(size, unsent > 0, state.now.free_link || state.now.originals_now)) {
            (0, _) => "As far as the office asked for them, all are there.".to_owned(),
            (n, Waits::Goes) => format!("{n}, on their way."),
            (n, Waits::ForEntries) => format!("{n}, after the entries."),
            (n, Waits::ForWifi) => format!("{n}, waiting for a link that costs nothing, such as Wi-Fi."),
        };
        page.fact(what, why);
        if count > 0 && size == Size::Original && !(state.now.free_link || state.now.originals_now) {
            page.button("Send the originals over this link", "originals");
        }
    }
    match state.now.missing.len() {
        0 => {}
        n => {
            page.caution(Tone::Warn, format!("{n} photos that the office asks for are not on this device any more."));
        }
    }
}

fn differences(page: &mut Page, look: &Look) {
    let state = &look.exchange;
    if state.aside_there > 0 {
        page.caution(
            Tone::Warn,
            format!(
                "{} entries of this device are kept aside at the office until a person there has looked at them: look at this device's \
                 clock, and ask the office.",
                state.aside_there
            ),
        );
    }
    put_aside(page, look);
    if state.old_key {
        page.caution(
            Tone::Must,
            "The office knows this phone by its old key, and puts aside what it sends now. Scan a new code of the office.",
        );
    }
    if state.now.agreed == Some(false) {
        page.caution(
            Tone::Warn,
            "Office and device do not hold the same, also after fetching everything again. Nothing here was changed. What is shown of \
             others may be incomplete.",
        );
        page.button("Compare again", "compare");
    }
}

/// What came from others and is not in the journal; what is about a job stands on the job too.
fn put_aside(page: &mut Page, look: &Look) {
    let all = &look.exchange.aside_here;
    if all.is_empty() {
        return;
    }
    page.heading("Put aside here");
    page.caution(Tone::Warn, "This is not in the journal. What is about a job is listed there: look at the spot.");
    for aside in all.iter().take(20) {
        page.fact(format!("Entry {} of device {:.8}", aside.seq, aside.device.to_string()), aside.why.clone());
    }
}

fn code(page: &mut Page, look: &Look) {
    let hint = "It begins with stillbar-enrol";
    page.field("code", "Or the code as text", hint, look.draft("code"), EntryKind::Text, 400);
    page.button("Use this code", "use");
}

fn asked(page: &mut Page, look: &Look, join: &Join) {
    page.fact("Office at", join.url.clone());
    page.caution(
        Tone::Must,
        "Everything that was and will be recorded on this device goes to this office, with names and photos. Others at the same sites see it.",
    );
    if join.url.starts_with("http://") {
        page.caution(
            Tone::Warn,
            "This address is not encrypted: anybody on the way can read along. Only for trying out.",
        );
    }
    if look.exchange.now.join.is_some() {
        page.para("Asking the office.");
    }
    if let Some(trouble) = &look.exchange.now.trouble {
        page.caution(Tone::Warn, trouble.says());
    }
    page.main("Join this office", "join");
    page.toned("Do not join", "leave", Tone::Quiet);
}

/// What is done here. The network is the thread's business: an act only says what is wanted.
pub fn act(act: &mut Act, verb: &str) -> Result<(), NotDone> {
    let ask = AskDevice::OfficeCode;
    match verb {
        "now" => act.say = Some("Asked for. This screen changes when there is an answer.".into()),
        "originals" => {
            act.app.exchange.originals_now = true;
            act.say = Some("The originals go out now.".into());
        }
        "compare" => {
            act.app.exchange.agreed = None;
            act.say = Some("Everything is compared again.".into());
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
            act.say = Some("Asking the office.".into());
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
