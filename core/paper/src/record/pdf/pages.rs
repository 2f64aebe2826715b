//! What stands on the pages of a record, from the summary to the time line.

use std::collections::BTreeMap;

use krilla::image::Image;

use super::figures::ShownFigure;
use super::flow::{BLACK, BODY, GREY, PageFlow, PagePoint, ROOM, YELLOW};
use super::summary;
use super::text::Face3;
use crate::record::claim::Claim;
use crate::record::file::RecordFile;
use crate::record::report::{Report, ReportLock, ReportPhoto, When};
use crate::record::tell_proof::SUPPLY_BACK;
use stillbar_text::in_terms;

/// Most points of a drawn signature; a shell draws fewer.
const MAX_POINTS: usize = 5_000;

/// Lays everything out. `photos`: JPEG copies by the SHA-256 of their originals.
pub(super) fn lay_out(flow: &mut PageFlow, file: &RecordFile, report: &Report, photos: &BTreeMap<String, Vec<u8>>) {
    summary::summary(flow, file, report);
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

/// "2026-11-02 08:40:00"; the offset is on page one.
pub(super) fn shown_at(at: &str) -> String {
    at.get(..19).map_or_else(|| at.to_owned(), |at| at.replacen('T', " ", 1))
}

pub(super) fn shown(when: &When) -> String {
    shown_at(&when.at)
}

pub(super) fn by(when: &When) -> String {
    match when.named() {
        Some(by) => format!("{}, {by}", shown(when)),
        None => shown(when),
    }
}

fn listed(claims: &[Claim]) -> String {
    claims.iter().map(Claim::says).collect::<Vec<_>>().join("; ")
}

pub(super) fn maybe(when: Option<&When>, otherwise: &str) -> String {
    when.map_or_else(|| otherwise.to_owned(), by)
}

fn points(flow: &mut PageFlow, report: &Report, photos: &BTreeMap<String, Vec<u8>>) {
    flow.new_page();
    flow.section("Points of isolation", 40.0);
    if report.points.is_empty() {
        flow.para("No point of isolation was recorded. Treat as live.");
    }
    let mut shown_photos: Vec<&str> = Vec::new();
    for point in &report.points {
        flow.need(40.0);
        flow.heading(3, &point.label, 3.8);
        let sign = match (&point.sign, &point.sign_down) {
            (Some(up), Some(down)) => format!("hung {}; taken down {}", by(up), by(down)),
            (Some(up), None) => format!("hung {}", by(up)),
            (None, _) => "none recorded".into(),
        };
        let supply = point.cuts.as_ref().map_or("the normal supply".to_owned(), Claim::says);
        flow.facts(
            &[
                ("At", point.at.clone()),
                ("Device", format!("{}; opens {}", point.kind, point.poles.join(", "))),
                ("Cuts off", supply),
                ("Opened", maybe(point.opened.as_ref(), "not recorded")),
                ("Closed", maybe(point.closed.as_ref(), "not recorded")),
                ("At the last entry", if point.open { "open" } else { "not open, or not known" }.into()),
                (&in_terms("Caution sign"), sign),
                ("Tags", listed(&point.tags)),
            ],
            ROOM,
        );
        flow.gap(1.5);
        lock_table(flow, &point.locks);
        let of_point: Vec<&ReportPhoto> = report.photos.iter().filter(|p| p.of == point.added.entry).collect();
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
    let rest: Vec<&ReportPhoto> = report.photos.iter().filter(|p| !shown_photos.contains(&p.sha256.as_str())).collect();
    if !rest.is_empty() {
        flow.heading(3, "Other photos", 3.8);
        pictures(flow, &rest, photos);
    }
}

fn lock_table(flow: &mut PageFlow, locks: &[ReportLock]) {
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
            vec![l.label.clone(), l.owner.clone(), l.means.says(), l.key.says(), by(&l.fitted), off]
        })
        .collect();
    let columns = [("Lock", 18.0), ("Owner", 28.0), ("How", 26.0), ("Key", 26.0), ("On", 36.0), ("Off", 38.0)];
    flow.table(&columns, &rows);
}

fn pictures(flow: &mut PageFlow, of: &[&ReportPhoto], photos: &BTreeMap<String, Vec<u8>>) {
    let mut ready = Vec::new();
    for photo in of {
        let mut caption = vec![format!("{}, {}", photo.shows, by(&photo.when))];
        caption.extend(photo.tags.iter().map(|tag| format!("Tag {tag} was read in it.")));
        caption.extend(photo.doubts.iter().map(Claim::says));
        if !photo.note.is_empty() {
            caption.push(format!("Kept because: {}", photo.note));
        }
        caption.push(format!("Original: {} bytes, SHA-256 {}", photo.length, photo.sha256));
        let picture = photos.get(&photo.sha256);
        let size = picture.and_then(|jpeg| Image::from_jpeg(jpeg.clone().into(), false).ok()).map(|image| image.size());
        match (picture, size) {
            (Some(jpeg), Some(size)) => {
                let says = format!("Photo of {}, {}", photo.shows, by(&photo.when));
                ready.push(ShownFigure { jpeg: jpeg.clone(), size, says, caption });
            }
            _ => {
                flow.para(&format!("Photo of {}, not on this device: {}", photo.shows, caption.join(" ")));
            }
        }
    }
    flow.pictures(&ready);
}

fn looked(flow: &mut PageFlow, report: &Report) {
    flow.section("What was looked for, and who was told", 20.0);
    let all: Vec<Vec<String>> = report
        .sources
        .iter()
        .chain(&report.stored)
        .map(|l| {
            vec![
                l.what.says(),
                l.found.as_ref().map_or_else(|| "none found".into(), Claim::says),
                l.looked.clone(),
                by(&l.when),
            ]
        })
        .collect();
    if all.is_empty() {
        flow.para("Nothing was recorded of other sources or of stored energy.");
    } else {
        flow.table(&[("Looked for", 36.0), ("Found", 50.0), ("Where they looked", 46.0), ("When", 40.0)], &all);
    }
    let told: Vec<Vec<String>> =
        report.told.iter().map(|t| vec![t.who.clone(), t.about.says(), t.how.clone(), by(&t.when)]).collect();
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
    let answers: Vec<Vec<String>> = report.answers.iter().map(|a| vec![a.says.says(), by(&a.when)]).collect();
    if !answers.is_empty() {
        flow.table(&[("Asked and answered", 122.0), ("When", 50.0)], &answers);
    }
    let mut others: Vec<Vec<String>> =
        report.barriers.iter().map(|b| vec![b.says.says(), by(&b.when), String::new()]).collect();
    others.extend(
        report
            .covers
            .iter()
            .map(|c| vec![format!("Cover: {}", c.what), by(&c.off), maybe(c.back.as_ref(), "not back")]),
    );
    let earths: Vec<Vec<String>> = report
        .earths
        .iter()
        .map(|e| vec![format!("{}: {}", e.label, e.at), by(&e.fitted), maybe(e.off.as_ref(), "STILL IN")])
        .collect();
    if !earths.is_empty() {
        let title = in_terms("Temporary earths");
        flow.table(&[(&title, 84.0), ("In", 44.0), ("Off", 44.0)], &earths);
    }
    if !others.is_empty() {
        flow.table(&[("Barriers and covers", 84.0), ("Placed, or off", 44.0), ("Back", 44.0)], &others);
    }
}

fn proofs(flow: &mut PageFlow, report: &Report) {
    flow.section("Instruments and proofs", 20.0);
    let rows: Vec<Vec<String>> = report
        .instruments
        .iter()
        .map(|i| {
            let state = if i.faults.is_empty() { "nothing wrong found".into() } else { listed(&i.faults) };
            vec![i.name.says(), state, i.note.clone(), by(&i.when)]
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
        let with = |says: &Option<Claim>, when: &Option<When>, otherwise: &str| match (says, when) {
            (Some(says), Some(when)) => format!("{} ({})", says.trim_end_matches('.'), by(when)),
            _ => otherwise.to_owned(),
        };
        flow.facts(
            &[
                ("Indicator", run.indicator.says()),
                ("Proved before", format!("on {} ({})", run.on, by(&run.before))),
                ("Reference", with(&run.reference, &run.reference_when, "not proved")),
                ("Proved after", with(&run.after, &run.after_when, "not recorded")),
                ("Shows", run.shows.says()),
                ("Ended", with(&run.ended, &run.ended_when, "")),
            ],
            ROOM,
        );
        flow.gap(1.5);
    }
}

fn readings(flow: &mut PageFlow, report: &Report) {
    flow.section("Readings, in the order in which they were taken", 24.0);
    if report.readings.is_empty() {
        flow.para("None was taken. Treat as live.");
        return;
    }
    let rows: Vec<Vec<String>> = report
        .readings
        .iter()
        .map(|r| {
            let run = r.run.map_or_else(String::new, |run| run.to_string());
            let between = if r.then.is_empty() { r.first.says() } else { format!("{} – {}", r.first, r.then) };
            let mut reading = r.reading.says();
            if r.indicates && *r.kind.code() != SUPPLY_BACK.0 {
                reading.push_str(" – indication: treat as live");
            }
            if let Some(why) = &r.withdrawn {
                reading.push_str(&format!(" – withdrawn: {why}"));
            }
            vec![r.number.to_string(), r.kind.says(), run, between, reading, by(&r.when)]
        })
        .collect();
    let columns = [("No.", 12.0), ("Kind", 28.0), ("Run", 12.0), ("Between", 30.0), ("Reading", 44.0), ("When", 46.0)];
    flow.table(&columns, &rows);
}

fn work(flow: &mut PageFlow, report: &Report) {
    if report.work.is_empty() {
        return;
    }
    flow.section("Work", 16.0);
    let rows: Vec<Vec<String>> = report.work.iter().map(|w| vec![w.says.says(), by(&w.when)]).collect();
    flow.table(&[("What", 122.0), ("When", 50.0)], &rows);
}

fn hand_overs(flow: &mut PageFlow, report: &Report) {
    flow.section("Hand-over and signatures", 46.0);
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
fn strokes(mark: &str) -> Vec<Vec<PagePoint>> {
    let point = |text: &str| {
        let (x, y) = text.split_once(',')?;
        let within = |text: &str, most: u16| text.parse::<u16>().ok().filter(|n| *n <= most).map(f32::from);
        Some((within(x, 1000)?, within(y, 400)?))
    };
    let mut left = MAX_POINTS;
    let lines = mark.split(';').map(|line| {
        let points: Vec<PagePoint> = line.split(' ').filter_map(point).take(left).collect();
        left -= points.len();
        points
    });
    lines.filter(|line| !line.is_empty()).collect()
}

fn cautions(flow: &mut PageFlow, file: &RecordFile, report: &Report) {
    flow.section("Cautions", 20.0);
    for caution in &report.cautions {
        flow.boxed(YELLOW, "", &[caution.says()]);
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

fn time_line(flow: &mut PageFlow, report: &Report) {
    flow.section("Time line", 24.0);
    let rows: Vec<Vec<String>> = report
        .time_line
        .iter()
        .map(|line| {
            let mut says = line.says.says();
            if let Some(why) = &line.withdrawn {
                says.push_str(&format!(" Withdrawn: {why}"));
            }
            if line.clock_in_doubt {
                says.push_str(" The clock was behind: the time is in doubt.");
            }
            let who = line.when.named().unwrap_or_default();
            vec![shown(&line.when), who, says, format!("{} / {}", line.device, line.seq)]
        })
        .collect();
    flow.table(&[("When", 36.0), ("Who", 28.0), ("What", 90.0), ("Entry", 18.0)], &rows);
    flow.styled("End of the record.", BODY, Face3::Plain, GREY, ROOM);
}
