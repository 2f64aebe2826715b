//! What was found out about a record, in plain words: what is shown, and what is not.

use std::collections::BTreeSet;

use super::{FoundParts, Verdict};
use crate::record::report::Report;
use stillbar_journal::{Entry, Fact, WITHHELD};

/// Said where no anchor is.
const UNSTAMPED: &str =
    "When it was: times are those of the devices' clocks, and nobody outside has stamped this record.";

impl FoundParts {
    pub(super) fn verdict(self) -> Verdict {
        let holds = self.failures.is_empty();
        Verdict {
            holds,
            kind: self.kind,
            rules: self.report.as_ref().and_then(Report::rule_set),
            title: self.report.as_ref().map(|r| r.title.clone()).unwrap_or_default(),
            head: self.report.as_ref().map(|r| r.head.clone()).unwrap_or_default(),
            proved: if holds { self.proved() } else { Vec::new() },
            not_proved: self.not_proved(),
            failures: self.failures,
        }
    }

    fn proved(&self) -> Vec<String> {
        let Some(report) = &self.report else { return Vec::new() };
        let mut all = vec![
            format!(
                "{} entries, {} of them of this job, each signed by the device that it names (Ed25519), and none changed since.",
                self.entries.len(),
                report.time_line.len()
            ),
            format!(
                "The job's entries of {} follow one another: none was taken out, put in or put elsewhere between the first and the last of each.",
                devices(report.devices.len())
            ),
            format!(
                "Everything in this {} follows from these entries: it was worked out again and is the same.",
                match self.kind {
                    "pdf" => "PDF, page by page,",
                    _ => "file",
                }
            ),
        ];
        if !self.photos.is_empty() {
            all.push(format!(
                "What is shown of {} is, byte for byte, the copy that a device signed for when the photo was kept.",
                counted(self.photos.len(), "photo")
            ));
        }
        for anchor in self.anchors.iter().flatten().filter(|a| a.trusted) {
            all.push(format!(
                "At {}, {} of these entries were there: so says {}, whom you trust.",
                anchor.at, anchor.covers, anchor.by
            ));
        }
        all.push(format!("The device {:.8} put this together at {}.", self.file.seal.device, self.file.made));
        all
    }

    fn not_proved(&self) -> Vec<String> {
        let mut all = vec![
            "That anything is dead now: treat as live until you have proved it yourself.".to_owned(),
            "That a reading, a photo or a sentence tells the truth, or that the person named had the device in hand."
                .into(),
            "That nothing was recorded after the last entry, on these devices or on others.".into(),
        ];
        match &self.anchors {
            None if !self.file.anchors.is_empty() => all.push(format!(
                "When it was: {} time stamps are with it, which this check does not look at.",
                self.file.anchors.len()
            )),
            None => all.push(UNSTAMPED.into()),
            Some(anchors) if anchors.is_empty() => all.push(UNSTAMPED.into()),
            Some(anchors) => {
                all.push(
                    "When each entry was written: a time stamp says that it was there by then, and no more.".into(),
                );
                for anchor in anchors.iter().filter(|a| !a.trusted) {
                    all.push(format!(
                        "That {} of these entries were there at {}: {} says so, and no certificate that you trust leads there.",
                        anchor.covers, anchor.at, anchor.by
                    ));
                }
            }
        }
        if self.linked.between > 0 {
            all.push(format!(
                "What the {} entries of other work say that these devices wrote in between: they are not part of this record.",
                self.linked.between
            ));
        }
        if self.linked.absent > 0 {
            all.push(format!("{} entries that are named and are not here.", self.linked.absent));
        }
        let withheld = self.entries.iter().filter(|e| hides_name(e)).count();
        if withheld > 0 {
            all.push(format!("Names in {withheld} entries: they are withheld, and who has them can still show them."));
        }
        let named: BTreeSet<&String> = self.report.iter().flat_map(|r| &r.photos).map(|p| &p.sha256).collect();
        if !named.is_empty() {
            all.push(format!(
                "What the originals of {} show: they are named by their hash and are not in this file{}.",
                counted(named.len(), "photo"),
                match named.iter().filter(|sha256| !self.photos.contains_key(**sha256)).count() {
                    0 => String::new(),
                    n => format!("; of {n} no picture is here at all"),
                }
            ));
        }
        all
    }
}

fn counted(count: usize, what: &str) -> String {
    if count == 1 { format!("one {what}") } else { format!("{count} {what}s") }
}

fn devices(count: usize) -> String {
    if count == 1 { "one device".into() } else { format!("each of {count} devices") }
}

/// Whether a name, and not only a telephone number, is taken out.
fn hides_name(entry: &Entry) -> bool {
    match &entry.body.fact {
        Fact::PersonNoted { name: text, .. }
        | Fact::Told { who: text, .. }
        | Fact::HandedBack { to: text, .. }
        | Fact::KeyTaken { mark: text, .. }
        | Fact::ShiftTaken { mark: text, .. }
        | Fact::LockForced { mark: text, .. } => text == WITHHELD,
        _ => false,
    }
}
