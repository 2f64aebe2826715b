//! The whole-job story of the demo, of another system: the same board and people, the conductors, poles and readings of that system.

use std::collections::BTreeSet;

use stillbar_core::Field;
use stillbar_core::journal::{EntryId, Fact};
use stillbar_core::prove::{Earthing, System};
use stillbar_core::screens::as_text;
use stillbar_core::screens::parts::Block;
use stillbar_core::text;

use super::live::answer_of;
use super::plants::{Plant, Site, plants};
use crate::desk::*;
use crate::forgotten::Phone;

/// A job of this system.
#[derive(Debug, Clone)]
pub struct Story {
    pub system: System,
    pub earthing: Earthing,
    pub volts: f64,
    pub plant: Plant,
    /// What the point of the normal supply opens.
    pub opens: Vec<String>,
    /// Whether it is said which line is high or at earth, or only that nobody knows.
    pub known: bool,
}

/// The whole of a line of a journey, changed; a journey that no longer has it fails here and not further on.
pub fn changed(script: &str, from: &str, to: &str) -> String {
    assert!(script.contains(from), "no {from:?} in the journey");
    script.replace(from, to)
}

/// From the line that begins so, on.
pub fn from<'a>(script: &'a str, line: &str) -> &'a str {
    &script[script.find(line).unwrap_or_else(|| panic!("no {line}"))..]
}

/// Up to the line that begins so.
pub fn until<'a>(script: &'a str, line: &str) -> &'a str {
    &script[..script.find(line).unwrap_or_else(|| panic!("no {line}"))]
}

/// The lines that mark these poles.
fn poles(names: &[impl AsRef<str>]) -> String {
    names.iter().map(|name| format!("choose Conductors that it opens = {}\n", name.as_ref())).collect()
}

impl Story {
    /// Of one of the plants that the system may be.
    pub fn of(system: System, volts: f64, earthing: Earthing, which: usize) -> Story {
        let plant = plants(system, volts).swap_remove(which);
        let apart = matches!(earthing, Earthing::Tt | Earthing::It | Earthing::Unknown);
        let has_to = |pole: &&&str| match **pole {
            "PEN" => false,
            "N" | "M" => apart,
            _ => true,
        };
        let opens = plant.poles.iter().filter(has_to).map(|p| (*p).to_owned()).collect();
        Story { system, earthing, volts, plant, opens, known: true }
    }

    pub fn turns(&self) -> bool {
        !self.plant.direct && self.plant.poles.iter().filter(|p| p.starts_with('L') && p.len() == 2).count() == 3
    }

    pub fn plan(&self) -> String {
        let three = poles(&["L1", "L2", "L3"]);
        let every: Vec<&str> = self.plant.poles.iter().copied().filter(|p| *p != "PEN").collect();
        let label = text::system(self.system);
        let plan = until(PLAN, "tap Next: Indicator and proving unit");
        // The generator's switch first: its poles are the board's with the neutral.
        let plan = changed(plan, &format!("{three}{}", poles(&["N"])), "EVERY\n");
        let plan = changed(&plan, &three, &poles(&self.opens));
        let plan = changed(&plan, "EVERY\n", &poles(&every));
        let plan = changed(&plan, "Three phase with neutral: L1, L2, L3, N, PE", &label);
        let plan = changed(
            &plan,
            "Earthing arrangement = TN-C-S",
            &format!("Earthing arrangement = {}", text::earthing(self.earthing)),
        );
        let plan =
            changed(&plan, "Nominal voltage in volts = 230", &format!("Nominal voltage in volts = {}", self.volts));
        let points = "tap Next: Points of isolation\n";
        changed(&plan, points, &format!("{points}{}", self.answer()))
    }

    /// Instruments, the rotation, circuits.
    pub fn circuits(&self) -> String {
        let all = from(PLAN, "tap Next: Indicator and proving unit");
        let rotation = until(from(all, "see Rotation before isolating"), "fill Circuit, as it is labelled = F1");
        if self.turns() { all.to_owned() } else { changed(all, rotation, "") }
    }

    /// Which line is high or at earth, asked and answered with what was read.
    pub fn answer(&self) -> String {
        let marked = self.plant.marked.filter(|_| self.known);
        let Some((_, code)) = answer_of(self.system, marked) else { return String::new() };
        let code = if self.known { code } else { "not-known" };
        let lines = match self.system {
            System::HighLeg => "L1, L2 and L3 to N",
            System::CornerGrounded => "L1, L2 and L3 to PE",
            _ => "L+ and L- to PE",
        };
        let (button, words) = match code {
            "l1" | "l2" | "l3" => (code.to_uppercase(), format!("What was read, {lines}")),
            "plus" => ("L+".to_owned(), format!("What was read, {lines}")),
            "minus" => ("L-".to_owned(), format!("What was read, {lines}")),
            "none" => ("Neither".to_owned(), "How that is known".to_owned()),
            _ => ("Not known".to_owned(), "Why it could not be read".to_owned()),
        };
        format!("tap {button}\nfill {words} = As the meter of the board shows it, by its drawing\ntap Save: {button}\n")
    }

    /// Plays up to the first reading of the dead test.
    pub fn opened_up(&self) -> Phone {
        let phone = Phone::begun(&[PEOPLE, &self.plan(), &self.circuits(), ISOLATE]);
        phone.play(until(PROVE, "choose How it was shown"));
        phone
    }

    /// Plays up to "Proved dead".
    pub fn proved(&self) -> Phone {
        let phone = self.opened_up();
        reference_and_pairs(&phone, &self.plant.conductors());
        phone
    }

    /// Plays up to the readings with the supply back.
    pub fn supplied(&self) -> Phone {
        let phone = self.proved();
        phone.play(&format!("{}\n{}", self.work(), until(RESTORE, "read L1 – N")));
        phone
    }

    /// The work; current transformers are asked about where there are three lines.
    pub fn work(&self) -> String {
        if self.turns() { WORK.to_owned() } else { changed(WORK, "tap None in there\n", "") }
    }

    /// What the circuit shows with all poles closed, in volts to a tenth.
    pub fn shows(&self, a: &str, b: &str) -> f64 {
        let shown = self.plant.live(Site::of(self.earthing)).between(a, b);
        (shown * 10.0).round() / 10.0
    }
}

/// The reference, every pair that the screens ask for, and the second proof of the indicator. The pairs are those of the conductors.
pub fn reference_and_pairs(phone: &Phone, conductors: &[&str]) {
    reference_and_pairs_in(phone, conductors, &str::to_owned);
}

/// The same in other words of the trade.
pub fn reference_and_pairs_in(phone: &Phone, conductors: &[&str], words: &dyn Fn(&str) -> String) {
    phone.play(&words(
        "choose How it was shown = Low-resistance continuity from PE to the main earthing terminal\n\
         fill Where, or another way = MET in the meter room\ntap Earth proved",
    ));
    let read = dead_test(phone);
    let mut wanted = BTreeSet::new();
    for (k, a) in conductors.iter().enumerate() {
        wanted.extend(conductors[k + 1..].iter().map(|b| BTreeSet::from([(*a).to_owned(), (*b).to_owned()])));
    }
    assert_eq!(read, wanted, "the pairs of the screens");
    phone.play(&words(&format!("unseen [Proved dead]\n{}", from(PROVE, "see Prove the indicator again"))));
}

/// Reads every pair of the screens, group by group, without an indication. Which pairs they were.
pub fn dead_test(phone: &Phone) -> BTreeSet<BTreeSet<String>> {
    let mut read = BTreeSet::new();
    for _ in 0..200 {
        let rows = pad_rows(phone.field());
        if rows.is_empty() {
            return read;
        }
        for row in &rows {
            let pair = row.strip_suffix(" DC").unwrap_or(row);
            let (a, b) = pair.split_once(" – ").unwrap();
            read.insert(BTreeSet::from([a.to_owned(), b.to_owned()]));
        }
        let lines = rows.iter().map(|row| format!("read {row} = Nothing\n")).collect::<String>();
        phone.play(&format!("{lines}tap Save these readings"));
    }
    panic!("the dead test does not end: {}", as_text(&phone.field().screen()));
}

/// The rows that are to be read on this screen.
pub fn pad_rows(field: &Field) -> Vec<String> {
    let screen = field.screen();
    let pads = screen.blocks.iter().filter_map(|b| match b {
        Block::Pad { pad, .. } => Some(pad),
        _ => None,
    });
    pads.flat_map(|pad| pad.rows.iter().map(|row| row.label.clone())).collect()
}

/// Reads what is asked for with the supply back; `shows` says what the instrument shows.
pub fn presence(phone: &Phone, shows: impl Fn(&str, &str) -> f64) -> BTreeSet<(String, String)> {
    let mut lines = String::new();
    let mut read = BTreeSet::new();
    for row in pad_rows(phone.field()) {
        let (a, b) = row.split_once(" – ").unwrap();
        lines += &format!("read {row} = {}\n", shows(a, b));
        let (a, b) = (a.min(b), a.max(b));
        read.insert((a.to_owned(), b.to_owned()));
    }
    phone.play(&format!("{lines}tap Save the readings"));
    read
}

/// What is left once the readings are in.
pub fn hand_back(turns: bool) -> String {
    let rotation = until(from(RESTORE, "choose Which way it turns"), "tap F1 washers is on");
    let rest = from(RESTORE, "tap F1 washers is on");
    if turns { format!("{rotation}{rest}") } else { rest.to_owned() }
}

/// What does not look as it should with the supply back, in words.
pub fn findings(phone: &Phone) -> Vec<String> {
    folded(phone).supply_findings().iter().map(text::supply_finding).collect()
}

/// The job as its entries tell it.
pub fn folded(phone: &Phone) -> stillbar_core::job::Job {
    let id = phone.job();
    let entries: Vec<_> = phone.field().entries().unwrap().into_iter().filter(|e| e.job() == Some(id)).collect();
    stillbar_core::job::Job::fold(&entries).unwrap()
}

/// What the banner says, with all that stands beside it.
pub fn banner(phone: &Phone) -> String {
    phone.field().standing_says(phone.job())
}

/// The record of the job names its system and holds, as a file and as pages.
pub fn record_holds(phone: &Phone, system: System) {
    let title = "Replace the outgoing breaker of washer 4";
    let made = stillbar_core::app::of_folder(phone.folder.path(), &*phone.device, title, false).unwrap();
    // A set of one's own is what was listed.
    let named = if system == System::Own { "L1, L2, L3, N, PE".to_owned() } else { text::system(system) };
    assert!(made.report().system.contains(&named), "{}", &*made.report().system);
    for bytes in [made.json().unwrap(), made.pdf().unwrap()] {
        let verdict = stillbar_core::record::verify(&bytes).unwrap();
        assert!(verdict.holds, "{system:?}: {:?}", verdict.failures);
    }
}

/// The record of the job, as text: all of it, and what page one says beside what stands proved.
pub fn page_one(phone: &Phone) -> String {
    let title = "Replace the outgoing breaker of washer 4";
    let made = stillbar_core::app::of_folder(phone.folder.path(), &*phone.device, title, false).unwrap();
    made.report().deviations.iter().map(|d| d.says()).collect::<Vec<_>>().join("\n")
}

pub fn tries(phone: &Phone, fact: Fact) -> Result<EntryId, String> {
    phone.field().keep(phone.person("Mara Lind"), Some(phone.job()), fact).map_err(|why| why.to_string())
}
