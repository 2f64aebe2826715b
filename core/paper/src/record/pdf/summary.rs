//! Page one: what, where, who, when, what stood proved, what was passed over, and how to check it.

use super::flow::{BLACK, GREY, PageFlow, PdfColour, RED, ROOM, YELLOW};
use super::pages::{by, shown, shown_at};
use super::text::Face3;
use crate::record::claim::Claim;
use crate::record::file::RecordFile;
use crate::record::report::Report;
use crate::record::tell_proof::SUPPLY_BACK;
use stillbar_media::tag::Symbol;
use stillbar_text::in_terms;
use stillbar_values::Tone;

/// What the symbol begins with; the head follows.
const HEAD: &str = "stillbar-head:1:";
/// Room beside the symbol.
const BESIDE: f32 = ROOM - 40.0;

pub(super) fn summary(flow: &mut PageFlow, file: &RecordFile, report: &Report) {
    let hex: Vec<String> = report.head.as_bytes().chunks(16).map(|c| String::from_utf8_lossy(c).into_owned()).collect();
    let symbol = Symbol::of_text(&format!("{HEAD}{}", report.head));
    flow.symbol(&symbol, &format!("QR symbol with the head of this record: {}", report.head), &hex);
    flow.styled("Record of isolation, proof and hand-back", 3.4, Face3::Plain, GREY, BESIDE);
    flow.title(&report.title, BESIDE);
    flow.gap(3.0);
    let place = match &report.site {
        Some(site) => format!("{}, {site}", report.place),
        None => report.place.clone(),
    };
    let limit = match report.dead_limit_volts.as_str() {
        "0" => "dead means no indication at all".to_owned(),
        volts => format!("dead means no indication, or at most {volts} V"),
    };
    let permit = report.permit.as_ref().map_or("not recorded".to_owned(), |p| match (&p.reference, &p.why_none) {
        (Some(reference), _) => reference.clone(),
        (None, Some(why)) => format!("none: {why}"),
        (None, None) => "none".into(),
    });
    let people: Vec<String> = report
        .people
        .iter()
        .map(|p| {
            let trained = if p.qualification.is_empty() { String::new() } else { format!(" ({})", p.qualification) };
            let left = p.left.as_ref().map_or(String::new(), |left| format!(", until {}", shown(left)));
            format!("{}{trained}: {}{left}", p.name, p.duty)
        })
        .collect();
    let mut facts = vec![
        ("Where", place),
        ("Isolated", report.equipment.clone()),
        ("Worked on", report.scope.clone()),
        ("Supply", format!("{}; {}, {} V; {limit}", report.system, report.earthing, report.nominal_volts)),
        ("Order of tests", report.order.says()),
        ("Supply back", format!("held against {}", report.tolerance)),
        ("Who", if people.is_empty() { "nobody named".into() } else { people.join("; ") }),
        ("When", format!("{} to {}", shown(&report.opened), shown(&report.last))),
        ("Permit", permit),
        ("Local rules", report.rules.says()),
    ];
    let none = "none were known when this job was opened";
    facts.push(("Company rules", report.company.as_ref().map_or(none.to_owned(), Claim::says)));
    flow.facts(&facts, BESIDE);
    flow.gap(4.0);
    // Never green: no page claims a safe condition.
    let colour: PdfColour = match report.state.tone {
        Tone::Plain => BLACK,
        Tone::Forbid => RED,
        _ => YELLOW,
    };
    let as_of = format!("As of the last entry, {}. Whatever came later is not on these pages.", shown(&report.last));
    flow.boxed(colour, &report.state.word, &[report.state.text.says(), as_of]);
    flow.heading(2, "Deviations", 4.0);
    if report.deviations.is_empty() {
        flow.para("None recorded.");
    }
    for deviation in &report.deviations {
        flow.para(deviation);
    }
    flow.gap(2.0);
    flow.heading(2, "What was proved", 4.0);
    proved(flow, report);
    flow.gap(2.0);
    flow.heading(2, "In figures", 4.0);
    let indications = report.readings.iter().filter(|r| r.indicates && *r.kind.code() != SUPPLY_BACK.0).count();
    let locks: usize = report.points.iter().map(|p| p.locks.len()).sum();
    let on = report.points.iter().flat_map(|p| &p.locks).filter(|l| l.off.is_none()).count();
    let points: Vec<&str> = report.points.iter().map(|p| p.label.as_str()).collect();
    flow.facts(
        &[
            ("Points", if points.is_empty() { "none recorded".into() } else { points.join("; ") }),
            ("Locks", format!("{locks}, of which {on} on at the last entry")),
            (
                "Readings",
                format!(
                    "{} {}, {indications} with an indication",
                    report.readings.len(),
                    in_terms("in the dead test and after")
                ),
            ),
            ("Photos", report.photos.len().to_string()),
            ("Entries", format!("{}, by {}", report.time_line.len(), devices(report.devices.len()))),
            ("Times", format!("local time of the devices, {}", offsets(report))),
        ],
        ROOM,
    );
    flow.gap(2.0);
    flow.heading(2, "How to check this record", 4.0);
    flow.para(
        "The signed journal of the job is embedded in this file. The command \"stillbar verify\" works every statement on these pages out \
         of it again; the format is open, so that other programs can do the same. The symbol above holds the head: 64 digits that name this \
         state of the journal. Paper alone proves nothing: compare its head with that of the file.",
    );
    flow.small(&format!(
        "Put together at {} by device {} with {}.",
        shown_at(&file.made),
        file.seal.device,
        file.program
    ));
}

/// The latest run, with the instrument, and what ended it.
fn proved(flow: &mut PageFlow, report: &Report) {
    let Some(run) = report.runs.last() else {
        return flow.para(&in_terms("No dead test was begun. Treat as live."));
    };
    let ended = match (&run.ended, &run.ended_when) {
        (Some(why), Some(when)) => {
            format!("{} ({}). From then on: treat as live.", why.trim_end_matches('.'), by(when))
        }
        _ => String::new(),
    };
    let until = run.after_when.as_ref().map_or("not proved again".to_owned(), |when| format!("again {}", by(when)));
    flow.facts(
        &[
            ("Latest run", run.shows.says()),
            ("With", format!("{}, proved {}, {until}", run.indicator, by(&run.before))),
            ("Ended", ended),
        ],
        ROOM,
    );
}

fn devices(count: usize) -> String {
    if count == 1 { "one device".into() } else { format!("{count} devices") }
}

/// The offsets from UTC that occur.
fn offsets(report: &Report) -> String {
    let mut all: Vec<&str> = report.time_line.iter().filter_map(|l| l.when.at.get(19..)).collect();
    all.sort_unstable();
    all.dedup();
    format!("UTC{}", all.join(", UTC"))
}
