//! The systems as docs/systems.md has them: conductors, what has to be opened, what a line shows to the earthed point, and which line is asked
//! for. From the page alone; nothing here is read off the app's table.

use stillbar_core::journal::{Entry, Fact};
use stillbar_core::prove::{Earthing, System};

use super::alike::says_something;
use super::chance::Chance;

/// A row of the page.
pub struct Row {
    pub lines: &'static [&'static str],
    /// Its neutral or mid-point.
    pub middle: Option<&'static str>,
    /// What readings are taken to: the protective conductor, or the PEN.
    pub reference: &'static str,
    /// Direct voltage, all of it.
    pub direct: bool,
    /// The question that marks a line or pole, with what its answers mark, and one that marks none.
    pub marks: Option<Marks>,
    /// The nominal voltages that the page names, or that are usual, in volts.
    usual: &'static [u32],
}

/// A question, and each of its answers with the line or pole that it marks.
type Marks = (&'static str, &'static [(&'static str, Option<&'static str>)]);

const THREE: &[&str] = &["L1", "L2", "L3"];
const TWO: &[&str] = &["L1", "L2"];
const POLES: &[&str] = &["L+", "L-"];
const BY_LINE: &[(&str, Option<&str>)] =
    &[("l1", Some("L1")), ("l2", Some("L2")), ("l3", Some("L3")), ("not-known", None)];
const BY_POLE: &[(&str, Option<&str>)] =
    &[("plus", Some("L+")), ("minus", Some("L-")), ("none", None), ("not-known", None)];

/// The systems that came to the three of old.
pub const NEW: [System; 9] = [
    System::Pen,
    System::TwoLines,
    System::SiteTransformer,
    System::SiteTransformerThree,
    System::SplitPhase,
    System::HighLeg,
    System::CornerGrounded,
    System::DcTwoWire,
    System::DcThreeWire,
];

pub fn row(system: System) -> Row {
    let plain = |lines, middle, usual| Row { lines, middle, reference: "PE", direct: false, marks: None, usual };
    match system {
        System::OnePhase => plain(&["L"], Some("N"), &[230]),
        System::ThreePhaseNeutral => plain(THREE, Some("N"), &[230]),
        System::ThreeWire => plain(THREE, None, &[400]),
        System::Pen => Row { reference: "PEN", ..plain(THREE, None, &[230]) },
        System::TwoLines => plain(TWO, None, &[230]),
        System::SiteTransformer => plain(TWO, None, &[110]),
        System::SiteTransformerThree => plain(THREE, None, &[110]),
        System::SplitPhase => plain(TWO, Some("N"), &[120]),
        System::HighLeg => Row { marks: Some(("high-line", BY_LINE)), ..plain(THREE, Some("N"), &[240]) },
        System::CornerGrounded => {
            Row { marks: Some(("grounded-line", BY_LINE)), ..plain(THREE, None, &[240, 480, 600]) }
        }
        System::DcTwoWire => {
            let marks = Some(("earthed-pole", BY_POLE));
            Row { direct: true, marks, ..plain(POLES, None, &[48, 110, 220, 750]) }
        }
        System::DcThreeWire => Row { direct: true, ..plain(POLES, Some("M"), &[220, 750]) },
        // Its conductors are those that are listed; "the highest between any two".
        System::Own => plain(&[], None, &[230, 400, 600]),
    }
}

impl Row {
    pub fn nominal(&self, chance: &mut Chance) -> u32 {
        chance.pick(self.usual).copied().expect("there is a usual one") * 1000
    }
}

/// "Half of the lowest voltage of a line to the earthed point": that voltage, in millivolts. A line at earth shows nothing, and is none of
/// them. "PE: nominal/√3, nominal/2": by the page's columns.
pub fn least(system: System, nominal: u32, marked: bool) -> u32 {
    let part = match system {
        System::OnePhase | System::ThreePhaseNeutral | System::Pen | System::SplitPhase | System::CornerGrounded => 1.0,
        System::ThreeWire | System::TwoLines | System::SiteTransformerThree => 1.0 / 3f64.sqrt(),
        System::SiteTransformer | System::HighLeg | System::DcThreeWire => 0.5,
        // "`dc`: half (neither pole may be earthed)".
        System::DcTwoWire => [0.5, 1.0][usize::from(marked)],
        // "For a set of one's own, of which nobody knows the lowest, it is 12 V": half of this.
        System::Own => return 24_000,
    };
    (f64::from(nominal) * part) as u32
}

/// "Neutral and mid-point have to be opened in TT and IT, and where the earthing is not known."
pub fn middle_has_to_open(earthing: Earthing) -> bool {
    matches!(earthing, Earthing::Tt | Earthing::It | Earthing::Unknown)
}

/// The line or pole that was answered last, in words, to be the one.
pub fn marked<'a>(system: System, valid: impl Iterator<Item = &'a Entry>) -> Option<&'static str> {
    let (asked, answers) = row(system).marks?;
    let last = valid.filter_map(|e| match &e.body.fact {
        Fact::Answered { question, answer, words, who, .. } if question == asked => {
            let said = says_something(words) || says_something(who);
            answers.iter().find(|(code, _)| code == answer && said)
        }
        _ => None,
    });
    last.last()?.1
}

/// "The earth of the reference is shown by a known live line only where that line has its full voltage to earth and to nothing else: not in
/// IT, not where the earthing is not known, and on a corner-grounded delta or two poles only once the line or pole at earth is known."
pub fn line_shows_earth(system: System, earthing: Earthing, marked: Option<&str>) -> bool {
    let known = !matches!(system, System::CornerGrounded | System::DcTwoWire) || marked.is_some();
    !matches!(earthing, Earthing::It | Earthing::Unknown) && system != System::Own && known
}
