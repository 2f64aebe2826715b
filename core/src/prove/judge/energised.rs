//! After the power is back: is it there, is it the voltage it should be, are the lines alike, and in which order do they turn.
//!
//! This judges a supply that is meant to be live; nothing here bears on whether anything is dead.

use serde::{Deserialize, Serialize};

/// Which tolerance of the supply voltage the site works to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Tolerance {
    /// IEC 60038: 10 % either way.
    #[default]
    Iec60038,
    /// United Kingdom, 230 V: +10 %, -6 % (UKSI 1994/3021).
    Uk,
    /// ANSI C84.1 Range A, service voltage: 5 % either way.
    AnsiC841A,
}

/// Which way the lines turn.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Rotation {
    /// L1, L2, L3.
    Clockwise,
    /// L1, L3, L2.
    Anticlockwise,
    /// Nothing that turns is connected.
    NotNeeded,
}

/// How the supply is arranged.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Arrangement {
    /// Three lines about a neutral.
    Star,
    /// A delta with the middle of one side as neutral: the line across from it is the high leg, here the one with this index.
    HighLeg(usize),
    /// A delta with the line of this index at earth, and no neutral.
    CornerGrounded(usize),
}

/// What was read, in volts; `None` where it was not read, or where only presence was seen.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Energised<'a> {
    /// What the lines are called; `L` alone is read to neutral only.
    pub lines: [&'a str; 3],
    /// What they are read to: neutral, mid-point or earth.
    pub other: &'a str,
    /// Each line to `other`.
    pub to_other: [Option<f64>; 3],
    /// First to second, second to third, third to first.
    pub between: [Option<f64>; 3],
    /// Nominal line-to-line voltage.
    pub line_line: f64,
    /// How it is arranged; `None` where the lines' voltages to `other` say nothing, as on an unearthed supply.
    pub arrangement: Option<Arrangement>,
    /// Which tolerance counts.
    pub tolerance: Tolerance,
}

/// Below this share of what is expected a line counts as missing, not as low (common practice, no source).
const MISSING: f64 = 0.2;
/// More unbalance than this is told, in per cent. IEC 61000-2-2 takes 2 % (negative over positive sequence) as the level to be
/// compatible with (from memory).
const UNBALANCE: f64 = 2.0;
/// How far line-to-line and line-to-neutral may part, in proportion, before one of them is doubted (common practice, no source).
const TOGETHER: f64 = 0.05;

impl Tolerance {
    /// All, the usual one first.
    pub const ALL: [Tolerance; 3] = [Tolerance::Iec60038, Tolerance::Uk, Tolerance::AnsiC841A];

    /// In words.
    pub fn word(self) -> &'static str {
        match self {
            Tolerance::Iec60038 => "IEC 60038: 10 % either way",
            Tolerance::Uk => "United Kingdom: +10 %, -6 %",
            Tolerance::AnsiC841A => "ANSI C84.1 Range A: 5 % either way",
        }
    }

    /// Whether it is the one that counts where none was chosen.
    pub fn is_usual(&self) -> bool {
        *self == Tolerance::default()
    }

    /// The least and the greatest voltage that a nominal one allows.
    pub fn band(self, nominal: f64) -> (f64, f64) {
        let (less, more) = match self {
            Tolerance::Iec60038 => (0.10, 0.10),
            Tolerance::Uk => (0.06, 0.10),
            Tolerance::AnsiC841A => (0.05, 0.05),
        };
        (nominal * (1.0 - less), nominal * (1.0 + more))
    }
}

impl Rotation {
    /// All, with what a choice is called in a form, and in words.
    pub const ALL: [(Rotation, &'static str, &'static str); 3] = [
        (Rotation::Clockwise, "clockwise", "Clockwise: L1, L2, L3"),
        (Rotation::Anticlockwise, "anticlockwise", "Anticlockwise: L1, L3, L2"),
        (Rotation::NotNeeded, "not-needed", "Not needed: nothing rotates"),
    ];
}

impl Arrangement {
    /// What the three lines read to neutral, mid-point or earth at this line-to-line voltage.
    pub fn to_other(self, line_line: f64) -> [f64; 3] {
        let root = 3f64.sqrt();
        let mut volts = [line_line / root; 3];
        match self {
            Arrangement::Star => {}
            Arrangement::HighLeg(high) => {
                volts = [line_line / 2.0; 3];
                volts[high % 3] *= root;
            }
            Arrangement::CornerGrounded(corner) => {
                volts = [line_line; 3];
                volts[corner % 3] = 0.0;
            }
        }
        volts
    }
}

/// What does not look as it should, as sentences; none where everything that was read fits.
pub fn energised(read: &Energised) -> Vec<String> {
    let mut why = against(read);
    if !why.is_empty() && read.arrangement == Some(Arrangement::Star) {
        // A delta that somebody took for a star: the voltages are right, the arrangement is not what was written down.
        for at in 0..3 {
            for (arrangement, name) in [
                (Arrangement::HighLeg(at), "a delta with its mid-point earthed; this line is the high leg"),
                (Arrangement::CornerGrounded(at), "a delta with this line earthed"),
            ] {
                // The nominal voltage was given for a star; which delta's it is, the readings between the lines say.
                let all = read.between.iter().flatten();
                let line_line = if all.clone().count() == 3 { all.sum::<f64>() / 3.0 } else { continue };
                let whole = read.to_other.iter().all(Option::is_some);
                if whole && against(&Energised { arrangement: Some(arrangement), line_line, ..*read }).is_empty() {
                    why.push(format!(
                        "{}: these are the voltages of {name}. Make sure which supply this is.",
                        read.lines[at]
                    ));
                }
            }
        }
    }
    why
}

/// The same for the arrangement as it stands.
fn against(read: &Energised) -> Vec<String> {
    let mut why = Vec::new();
    if let Some(expected) = read.arrangement.map(|a| a.to_other(read.line_line)) {
        for ((line, volts), nominal) in read.lines.iter().zip(read.to_other).zip(expected) {
            check(&mut why, &format!("{line} – {}", read.other), volts, nominal, read);
        }
    }
    for (k, volts) in read.between.into_iter().enumerate() {
        check(&mut why, &format!("{} – {}", read.lines[k], read.lines[(k + 1) % 3]), volts, read.line_line, read);
    }
    if why.is_empty() {
        together(&mut why, read);
    }
    if let Some(percent) = unbalance(read.between).filter(|u| *u > UNBALANCE) {
        why.push(format!(
            "The line-to-line voltages are unbalanced by {percent:.1} %. Look for a broken neutral or a lost line."
        ));
    }
    why
}

/// Whether one reading is there and within tolerance.
fn check(why: &mut Vec<String>, what: &str, volts: Option<f64>, nominal: f64, read: &Energised) {
    let Some(volts) = volts else { return };
    let (least, most) = read.tolerance.band(nominal);
    if nominal == 0.0 {
        // The earthed corner: a few volts are the drop along the way.
        if volts > MISSING * read.line_line {
            why.push(format!("{what}: {volts:.1} V, and this line should be at earth."));
        }
    } else if volts < MISSING * nominal {
        why.push(format!("{what}: {volts:.1} V. A line is missing: open again and find out."));
    } else if volts < least || volts > most {
        why.push(format!(
            "{what}: {volts:.1} V, outside {least:.1} to {most:.1} V ({}). Find out why.",
            read.tolerance.word()
        ));
    }
}

/// Line-to-line against line-to-neutral: the square root of three in a star.
fn together(why: &mut Vec<String>, read: &Energised) {
    let Some(expected) = read.arrangement.map(|a| a.to_other(read.line_line)) else { return };
    let (mut between, mut other) = (0.0, 0.0);
    for (line, volts) in read.between.iter().zip(read.to_other) {
        let (Some(line), Some(volts)) = (line, volts) else { return };
        between += line;
        other += volts;
    }
    let wanted = 3.0 * read.line_line / expected.iter().sum::<f64>();
    let ratio = between / other;
    if (ratio / wanted - 1.0).abs() > TOGETHER {
        why.push(format!(
            "Line to line is {ratio:.2} times line to {}, and should be {wanted:.2} times. Read both again.",
            read.other
        ));
    }
}

/// Negative over positive sequence from the three line-to-line magnitudes, in per cent: the true unbalance factor as
/// IEC 61000-4-30 gives it for magnitudes, sqrt((1 - sqrt(3 - 6 b)) / (1 + sqrt(3 - 6 b))) with b = sum of V^4 / (sum of V^2)^2
/// (the formula from memory; a test holds it against symmetrical components). `None` if one is missing.
pub fn unbalance(between: [Option<f64>; 3]) -> Option<f64> {
    let mut volts = [0.0; 3];
    for (to, from) in volts.iter_mut().zip(between) {
        *to = from.filter(|v| v.is_finite() && *v > 0.0)?;
    }
    let square: f64 = volts.iter().map(|v| v * v).sum();
    let b = volts.iter().map(|v| v.powi(4)).sum::<f64>() / (square * square);
    let root = (3.0 - 6.0 * b).max(0.0).sqrt();
    Some(100.0 * ((1.0 - root).max(0.0) / (1.0 + root)).sqrt())
}
