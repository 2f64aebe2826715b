//! What stands on the pages of a record, from the summary to the time line.

use std::collections::BTreeMap;

use krilla::image::Image;

use super::flow::{BLACK, BODY, Colour, Flow, GREY, Place, RED, ROOM, YELLOW};
use super::text::Face3;
use crate::record::file::File;
use crate::record::report::{Lock, Photo, Report, When};
use crate::tag::Symbol;

/// What the symbol on page one begins with; the head follows.
pub(super) const HEAD: &str = "stillbar-head:1:";
/// Room beside the symbol.
const BESIDE: f32 = ROOM - 40.0;
/// Most points of a drawn signature; a shell draws fewer.
const MOST_POINTS: usize = 5_000;

/// Lays everything out. `photos`: JPEG copies by the SHA-256 of their originals.
pub(super) fn lay_out(flow: &mut Flow, file: &File, report: &Report, photos: &BTreeMap<String, Vec<u8>>) {
    summary(flow, file, report);
    points(flow, report, photos);
    looked(flow, report);
    proofs(flow, report);
    readings(flow, report);
    work(flow, report);
    hand_overs(flow, report);
    cautions(flow, file, report);
    time_line(flow, report);
    let title: String = report.title.chars().take(70).collect();
    flow.feet(&format!("{title} · head {}… · tells what was recorded, not how anything is now", &report.head[..16]));
}

fn summary(flow: &mut Flow, file: &File, report: &Report) {
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
        "0" => "no indication counts as dead".to_owned(),
        volts => format!("at most {volts} V counts as dead"),
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
    flow.facts(
        &[
            ("Where", place),
            ("Isolated", report.equipment.clone()),
            ("Worked on", report.scope.clone()),
            ("Supply", format!("{}; {}, {} V; {limit}", report.system, report.earthing, report.nominal_volts)),
            ("Who", if people.is_empty() { "nobody named".into() } else { people.join("; ") }),
            ("When", format!("{} to {}", shown(&report.opened), shown(&report.last))),
            ("Permit", permit),
        ],
        BESIDE,
    );
    flow.gap(4.0);
    // Never green: no page claims a safe condition.
    let colour: Colour = match report.state.word.as_str() {
        "Proved dead" | "Handed back" => BLACK,
        word if word.starts_with("Stop") => RED,
        _ => YELLOW,
    };
    let as_of = format!("As of the last entry, {}. Whatever came later is not on these pages.", shown(&report.last));
    flow.boxed(colour, &report.state.word, &[report.state.text.clone(), as_of]);
    flow.heading(2, "Deviations", 4.0);
    if report.deviations.is_empty() {
        flow.para("None recorded.");
    }
    for deviation in &report.deviations {
        flow.para(deviation);
    }
    flow.gap(2.0);
    flow.heading(2, "In figures", 4.0);
    let indications = report.readings.iter().filter(|r| r.indicates && r.kind != "supply back").count();
    let on = report.points.iter().flat_map(|p| &p.locks).filter(|l| l.off.is_none()).count();
    flow.facts(
        &[
            ("Points", format!("{}, with {} locks, of which {on} are on", report.points.len(), locks(report))),
            (
                "Readings",
                format!("{} in {} runs, {indications} with an indication", report.readings.len(), report.runs.len()),
            ),
            ("Photos", report.photos.len().to_string()),
            ("Entries", format!("{}, written by {} devices", report.time_line.len(), report.devices.len())),
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

fn locks(report: &Report) -> usize {
    report.points.iter().map(|p| p.locks.len()).sum()
}

/// The offsets from UTC that occur.
fn offsets(report: &Report) -> String {
    let mut all: Vec<&str> = report.time_line.iter().filter_map(|l| l.when.at.get(19..)).collect();
    all.sort_unstable();
    all.dedup();
    format!("UTC{}", all.join(", UTC"))
}

/// "2026-11-02 08:40:00"; the offset is on page one.
fn shown_at(at: &str) -> String {
    at.get(..19).map_or_else(|| at.to_owned(), |at| at.replacen('T', " ", 1))
}

fn shown(when: &When) -> String {
    shown_at(&when.at)
}

fn by(when: &When) -> String {
    match &when.by {
        Some(by) => format!("{}, {by}", shown(when)),
        None => shown(when),
    }
}

fn maybe(when: Option<&When>, otherwise: &str) -> String {
    when.map_or_else(|| otherwise.to_owned(), by)
}

fn points(flow: &mut Flow, report: &Report, photos: &BTreeMap<String, Vec<u8>>) {
    flow.new_page();
    flow.section("Points of isolation");
    if report.points.is_empty() {
        flow.para("No point of isolation was recorded. Treat as live.");
    }
    let mut shown_photos: Vec<&str> = Vec::new();
    for point in &report.points {
        flow.need(40.0);
        flow.heading(3, &point.label, 3.8);
        let supply = point.cuts.as_ref().map_or("the normal supply".to_owned(), Clone::clone);
        flow.facts(
            &[
                ("At", point.at.clone()),
                ("Device", format!("{}; opens {}", point.kind, point.poles.join(", "))),
                ("Cuts off", supply),
                (
                    "Opened",
                    maybe(point.opened.as_ref(), if point.closed.is_some() { "closed again" } else { "not recorded" }),
                ),
                ("Closed", point.closed.as_ref().map(by).unwrap_or_default()),
                ("Caution sign", maybe(point.sign.as_ref(), "not hanging at the last entry")),
                ("Tags", point.tags.join("; ")),
            ],
            ROOM,
        );
        lock_table(flow, &point.locks);
        let of_point: Vec<&Photo> = report.photos.iter().filter(|p| p.of == point.added.entry).collect();
        shown_photos.extend(of_point.iter().map(|p| p.sha256.as_str()));
        pictures(flow, &of_point, photos);
        flow.gap(2.0);
    }
    for lockbox in &report.boxes {
        flow.need(30.0);
        flow.heading(3, &format!("Lock box {}", lockbox.label), 3.8);
        flow.facts(&[("At", lockbox.at.clone()), ("Placed", by(&lockbox.when))], ROOM);
        lock_table(flow, &lockbox.locks);
    }
    let rest: Vec<&Photo> = report.photos.iter().filter(|p| !shown_photos.contains(&p.sha256.as_str())).collect();
    if !rest.is_empty() {
        flow.heading(3, "Other photos", 3.8);
        pictures(flow, &rest, photos);
    }
}

fn lock_table(flow: &mut Flow, locks: &[Lock]) {
    if locks.is_empty() {
        flow.para("No lock was recorded here.");
        return;
    }
    let rows: Vec<Vec<String>> = locks
        .iter()
        .map(|l| {
            let off = match (&l.off, &l.off_how) {
                (Some(off), Some(how)) => format!("{}, {how}", by(off)),
                _ => "on at the last entry".into(),
            };
            vec![l.label.clone(), l.owner.clone(), l.means.clone(), l.key.clone(), by(&l.fitted), off]
        })
        .collect();
    let columns = [("Lock", 18.0), ("Owner", 28.0), ("How", 26.0), ("Key", 26.0), ("On", 36.0), ("Off", 38.0)];
    flow.table(&columns, &rows);
}

fn pictures(flow: &mut Flow, of: &[&Photo], photos: &BTreeMap<String, Vec<u8>>) {
    let mut ready = Vec::new();
    for photo in of {
        let mut caption = vec![by(&photo.when)];
        caption.extend(photo.tags.iter().map(|tag| format!("Tag {tag} was read in it.")));
        caption.extend(photo.doubts.iter().cloned());
        if !photo.note.is_empty() {
            caption.push(format!("Kept because: {}", photo.note));
        }
        caption.push(format!("Original: {} bytes, SHA-256 {}", photo.length, photo.sha256));
        let picture = photos.get(&photo.sha256);
        let size = picture.and_then(|jpeg| Image::from_jpeg(jpeg.clone().into(), false).ok()).map(|image| image.size());
        match (picture, size) {
            (Some(jpeg), Some(size)) => {
                ready.push((jpeg.clone(), size, format!("Photo of {}, {}", photo.shows, by(&photo.when)), caption));
            }
            _ => {
                flow.para(&format!("Photo of {}, not on this device: {}", photo.shows, caption.join(" ")));
            }
        }
    }
    flow.pictures(&ready);
}

fn looked(flow: &mut Flow, report: &Report) {
    flow.section("What was looked for, and who was told");
    let all: Vec<Vec<String>> = report
        .sources
        .iter()
        .chain(&report.stored)
        .map(|l| {
            vec![l.what.clone(), l.found.clone().unwrap_or_else(|| "none found".into()), l.looked.clone(), by(&l.when)]
        })
        .collect();
    if all.is_empty() {
        flow.para("Nothing was recorded of other sources or of stored energy.");
    } else {
        flow.table(&[("Looked for", 36.0), ("Found", 50.0), ("Where they looked", 46.0), ("When", 40.0)], &all);
    }
    let told: Vec<Vec<String>> =
        report.told.iter().map(|t| vec![t.who.clone(), t.about.clone(), t.how.clone(), by(&t.when)]).collect();
    if !told.is_empty() {
        flow.table(&[("Told", 44.0), ("Of what", 44.0), ("How", 44.0), ("When", 40.0)], &told);
    }
    let circuits: Vec<Vec<String>> = report
        .circuits
        .iter()
        .map(|c| {
            let seen = c.seen.clone().unwrap_or_default();
            vec![
                format!("{}: {}", c.label, c.serves),
                maybe(c.off.as_ref(), "not switched off"),
                seen,
                maybe(c.on.as_ref(), ""),
            ]
        })
        .collect();
    if !circuits.is_empty() {
        flow.table(&[("Circuit", 48.0), ("Off", 40.0), ("Seen", 44.0), ("On again", 40.0)], &circuits);
    }
    let mut others: Vec<Vec<String>> =
        report.barriers.iter().map(|b| vec![b.says.clone(), by(&b.when), String::new()]).collect();
    others.extend(
        report
            .covers
            .iter()
            .map(|c| vec![format!("Cover: {}", c.what), by(&c.off), maybe(c.back.as_ref(), "not back")]),
    );
    if !others.is_empty() {
        flow.table(&[("Barriers and covers", 84.0), ("Placed, or off", 44.0), ("Back", 44.0)], &others);
    }
}

fn proofs(flow: &mut Flow, report: &Report) {
    flow.section("Instruments and proofs");
    let rows: Vec<Vec<String>> = report
        .instruments
        .iter()
        .map(|i| {
            let state = if i.faults.is_empty() { "nothing wrong found".into() } else { i.faults.join("; ") };
            vec![i.name.clone(), state, i.note.clone(), by(&i.when)]
        })
        .collect();
    if rows.is_empty() {
        flow.para("No instrument was checked for this job.");
    } else {
        flow.table(&[("Instrument", 62.0), ("Checked before use", 36.0), ("Note", 34.0), ("When", 40.0)], &rows);
    }
    for run in &report.runs {
        flow.need(34.0);
        flow.heading(3, &format!("Run {}", run.number), 3.8);
        let with = |says: &Option<String>, when: &Option<When>, otherwise: &str| match (says, when) {
            (Some(says), Some(when)) => format!("{says} ({})", by(when)),
            _ => otherwise.to_owned(),
        };
        flow.facts(
            &[
                ("Indicator", run.indicator.clone()),
                ("Proved before", format!("on {} ({})", run.on, by(&run.before))),
                ("Reference", with(&run.reference, &run.reference_when, "not proved")),
                ("Proved after", with(&run.after, &run.after_when, "not recorded")),
                ("Shows", run.shows.clone()),
                ("Ended", with(&run.ended, &run.ended_when, "")),
            ],
            ROOM,
        );
        flow.gap(1.5);
    }
}

fn readings(flow: &mut Flow, report: &Report) {
    flow.section("Readings, in the order in which they were taken");
    if report.readings.is_empty() {
        flow.para("None was taken. Treat as live.");
        return;
    }
    let rows: Vec<Vec<String>> = report
        .readings
        .iter()
        .map(|r| {
            let run = r.run.map_or_else(String::new, |run| run.to_string());
            let between = if r.then.is_empty() { r.first.clone() } else { format!("{} – {}", r.first, r.then) };
            let mut reading = r.reading.clone();
            if r.indicates && r.kind != "supply back" {
                reading.push_str(" – indication: treat as live");
            }
            if let Some(why) = &r.withdrawn {
                reading.push_str(&format!(" – withdrawn: {why}"));
            }
            vec![r.number.to_string(), r.kind.clone(), run, between, reading, by(&r.when)]
        })
        .collect();
    let columns = [("No.", 12.0), ("Kind", 28.0), ("Run", 12.0), ("Between", 30.0), ("Reading", 44.0), ("When", 46.0)];
    flow.table(&columns, &rows);
}

fn work(flow: &mut Flow, report: &Report) {
    if report.work.is_empty() {
        return;
    }
    flow.section("Work");
    let rows: Vec<Vec<String>> = report.work.iter().map(|w| vec![w.says.clone(), by(&w.when)]).collect();
    flow.table(&[("What", 122.0), ("When", 50.0)], &rows);
}

fn hand_overs(flow: &mut Flow, report: &Report) {
    flow.section("Hand-over and signatures");
    if report.hand_overs.is_empty() {
        flow.para("Nothing was handed over or handed back.");
    }
    for hand_over in &report.hand_overs {
        flow.need(38.0);
        flow.heading(3, &hand_over.what, 3.8);
        let signed = hand_over.mark.strip_prefix("typed:").map_or_else(String::new, |name| format!(", typed: {name}"));
        flow.facts(
            &[
                ("Signed", format!("{}{signed}", hand_over.signed)),
                ("When", by(&hand_over.when)),
                ("Note", hand_over.note.clone()),
            ],
            ROOM,
        );
        let strokes = strokes(&hand_over.mark);
        if !strokes.is_empty() {
            flow.strokes(&strokes, &format!("Signature of {}", hand_over.signed));
        }
    }
}

/// The lines of a drawn signature, in units of 1000 by 400; whatever is no number is left out.
fn strokes(mark: &str) -> Vec<Vec<Place>> {
    let point = |text: &str| {
        let (x, y) = text.split_once(',')?;
        let within = |text: &str, most: u16| text.parse::<u16>().ok().filter(|n| *n <= most).map(f32::from);
        Some((within(x, 1000)?, within(y, 400)?))
    };
    let mut left = MOST_POINTS;
    let lines = mark.split(';').map(|line| {
        let points: Vec<Place> = line.split(' ').filter_map(point).take(left).collect();
        left -= points.len();
        points
    });
    lines.filter(|line| !line.is_empty()).collect()
}

fn cautions(flow: &mut Flow, file: &File, report: &Report) {
    flow.section("Cautions");
    for caution in &report.cautions {
        flow.boxed(YELLOW, "", std::slice::from_ref(caution));
    }
    flow.need(30.0);
    flow.heading(3, "Devices that wrote the journal", 3.8);
    for device in &report.devices {
        flow.para(&format!(
            "{}: {} entries of this job, the last is number {}.",
            device.number, device.entries, device.last_seq
        ));
        flow.styled(&format!("key {}", device.device), 2.4, Face3::Mono, GREY, ROOM);
        flow.styled(&format!("last {}", device.last), 2.4, Face3::Mono, GREY, ROOM);
    }
    flow.styled(&format!("head {}", report.head), 2.4, Face3::Mono, BLACK, ROOM);
    flow.small(&format!("Record of job {}.", file.job));
}

fn time_line(flow: &mut Flow, report: &Report) {
    flow.section("Time line");
    let rows: Vec<Vec<String>> = report
        .time_line
        .iter()
        .map(|line| {
            let mut says = line.says.clone();
            if let Some(why) = &line.withdrawn {
                says.push_str(&format!(" Withdrawn: {why}"));
            }
            if line.clock_in_doubt {
                says.push_str(" The clock was behind: the time is in doubt.");
            }
            let who = line.when.by.clone().unwrap_or_default();
            vec![shown(&line.when), who, says, format!("{} / {}", line.device, line.seq)]
        })
        .collect();
    flow.table(&[("When", 36.0), ("Who", 28.0), ("What", 90.0), ("Entry", 18.0)], &rows);
    flow.styled("End of the record.", BODY, Face3::Plain, GREY, ROOM);
}
