//! After the power is back: is it there, is it the voltage it should be, are the lines alike, and in which order do they turn.
//!
//! This judges a supply that is meant to be live; nothing here bears on whether anything is dead.

pub use stillbar_values::{Rotation, Tolerance};

/// How the supply is arranged.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Arrangement {
    /// Three lines about a neutral.
    Star,
    /// A delta with the middle of one side as neutral: the line across from it is the high leg, here the one with this index.
    HighLeg(usize),
    /// Two lines or poles with the middle between them at earth or as neutral.
    Halves,
    /// A delta, or two poles, with the line of this index at earth, and no neutral.
    CornerGrounded(usize),
}

/// What was read, in volts; `None` where it was not read, or where only presence was seen.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Energised<'a> {
    /// What the lines are called; `L` alone is read to neutral only.
    pub lines: [&'a str; 3],
    /// What they are read to: neutral, mid-point or earth.
    pub other: &'a str,
    /// Whether that is a neutral, which feeds loads: one that is missing, or changed with a line, destroys what hangs on it.
    pub neutral: bool,
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

/// Something that does not look as it should.
#[derive(Debug, Clone, PartialEq)]
pub struct Finding {
    /// What it is.
    pub what: Odd,
    /// The pairs whose readings it rests on, as they were given.
    pub pairs: Vec<(String, String)>,
}

/// What can be wrong with a supply that is back.
#[derive(Debug, Clone, PartialEq)]
pub enum Odd {
    /// So many volts: next to nothing where a line should be.
    LineMissing(f64),
    /// So many volts, and the line is there or is not meant to reach so much: the neutral is missing, or changed with a line.
    NeutralMissing(f64),
    /// The neutral stands so many volts off the middle of the lines: it is missing.
    NeutralOff(f64),
    /// So many volts, outside these bounds.
    Outside(f64, [f64; 2], Tolerance),
    /// So many volts on a line that stands at earth by itself.
    NotAtEarth(f64),
    /// All voltages between the lines are there, and this line reads so many volts to what is no neutral.
    AtReference(f64),
    /// Line to line is so many times line to the other, and should be so many times.
    NotTogether(f64, f64),
    /// The lines are unbalanced by so many per cent.
    Unbalanced(f64),
    /// These are the voltages of a delta, with something about the line of this name.
    Delta(String, Arrangement),
}

/// Below this share of what is expected a line counts as missing, not as low; and a neutral that stands further than this share of the
/// voltage to it from the middle of the lines counts as missing (common practice, no source).
const MISSING: f64 = 0.2;
/// More unbalance than this is told, in per cent. IEC 61000-2-2 takes 2 % (negative over positive sequence) as the level to be
/// compatible with (from memory).
const UNBALANCE: f64 = 2.0;
/// How far line-to-line and line-to-neutral may part, in proportion, before one of them is doubted (common practice, no source).
const TOGETHER: f64 = 0.05;

impl Arrangement {
    /// What the three lines read to neutral, mid-point or earth at this line-to-line voltage.
    pub fn to_other(self, line_line: f64) -> [f64; 3] {
        let root = 3f64.sqrt();
        let mut volts = [line_line / root; 3];
        match self {
            Arrangement::Star => {}
            Arrangement::Halves => volts = [line_line / 2.0; 3],
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

impl Finding {
    /// Whether a line or the neutral is missing: nobody may accept that.
    pub fn is_missing(&self) -> bool {
        matches!(self.what, Odd::LineMissing(_) | Odd::NeutralMissing(_) | Odd::NeutralOff(_))
    }
}

impl Energised<'_> {
    /// The pair of a line and the other.
    fn to(&self, line: usize) -> (String, String) {
        (self.lines[line].to_owned(), self.other.to_owned())
    }

    /// The pair of a line and the next one.
    fn line_pair(&self, line: usize) -> (String, String) {
        (self.lines[line].to_owned(), self.lines[(line + 1) % 3].to_owned())
    }

    /// Every pair that was read.
    fn pairs(&self) -> Vec<(String, String)> {
        let other = (0..3).filter(|k| self.to_other[*k].is_some()).map(|k| self.to(k));
        other.chain((0..3).filter(|k| self.between[*k].is_some()).map(|k| self.line_pair(k))).collect()
    }
}

/// What does not look as it should; nothing where everything that was read fits.
pub fn energised(read: &Energised) -> Vec<Finding> {
    let mut found = against(read);
    if found.is_empty() || read.arrangement != Some(Arrangement::Star) {
        return found;
    }
    // A delta that somebody took for a star: the voltages are right, the arrangement is not what was written down. The nominal voltage
    // was given for a star; which delta's it is, the readings between the lines say.
    let all: Vec<f64> = read.between.iter().flatten().copied().collect();
    if all.len() < 3 || read.to_other.iter().any(Option::is_none) {
        return found;
    }
    let line_line = all.iter().sum::<f64>() / 3.0;
    let (_, most) = read.tolerance.band(read.line_line);
    for at in 0..3 {
        for arrangement in [Arrangement::HighLeg(at), Arrangement::CornerGrounded(at)] {
            if against(&Energised { arrangement: Some(arrangement), line_line, ..*read }).is_empty() {
                // Between lines that read what the star was noted for, a lost neutral gives the same voltages: that stays said.
                if line_line > most {
                    found.retain(|f| !f.is_missing());
                }
                found.push(Finding { what: Odd::Delta(read.lines[at].to_owned(), arrangement), pairs: read.pairs() });
            }
        }
    }
    found
}

/// The same for the arrangement as it stands.
fn against(read: &Energised) -> Vec<Finding> {
    let mut found = Vec::new();
    if let Some(expected) = read.arrangement.map(|a| a.to_other(read.line_line)) {
        for (k, nominal) in expected.into_iter().enumerate() {
            let what = read.to_other[k].and_then(|volts| check(volts, nominal, read));
            let what = what.map(|what| match read.arrangement {
                Some(Arrangement::Star) => star(what, k, nominal, read),
                Some(Arrangement::Halves) => halves(what, nominal, read),
                _ => what,
            });
            found.extend(what.map(|what| Finding { what, pairs: vec![read.to(k)] }));
        }
    }
    for (k, volts) in read.between.into_iter().enumerate() {
        let what = volts.and_then(|volts| check(volts, read.line_line, read));
        found.extend(what.map(|what| Finding { what, pairs: vec![read.line_pair(k)] }));
    }
    if found.is_empty() {
        found.extend(together(read));
    }
    // Where a line is missing, or a neutral was found on its own reading, nothing more is learned.
    if !found.iter().any(Finding::is_missing) {
        found.extend(displaced(read));
    }
    if let Some(percent) = unbalance(read.between).filter(|u| *u > UNBALANCE) {
        let pairs = (0..3).map(|k| read.line_pair(k)).collect();
        found.push(Finding { what: Odd::Unbalanced(percent), pairs });
    }
    found
}

/// What is wrong with one reading, if anything is.
fn check(volts: f64, nominal: f64, read: &Energised) -> Option<Odd> {
    let (least, most) = read.tolerance.band(nominal);
    if nominal == 0.0 {
        // The earthed corner: a few volts are the drop along the way.
        return (volts > MISSING * read.line_line).then_some(Odd::NotAtEarth(volts));
    }
    if volts < MISSING * nominal {
        return Some(Odd::LineMissing(volts));
    }
    (volts < least || volts > most).then_some(Odd::Outside(volts, [least, most], read.tolerance))
}

/// In a star the voltages between the lines tell whether the line is at fault or what it is read to.
fn star(what: Odd, line: usize, nominal: f64, read: &Energised) -> Odd {
    let there = [read.between[line], read.between[(line + 2) % 3]];
    let there = there.iter().all(|v| v.is_some_and(|v| v > (1.0 - MISSING) * read.line_line));
    match what {
        Odd::LineMissing(volts) if there && read.neutral => Odd::NeutralMissing(volts),
        Odd::LineMissing(volts) if there => Odd::AtReference(volts),
        Odd::Outside(volts, ..) if read.neutral && volts > nominal * (1.0 + MISSING) => Odd::NeutralMissing(volts),
        what => what,
    }
}

/// Of two lines with their middle as neutral the voltage between them tells the same.
fn halves(what: Odd, nominal: f64, read: &Energised) -> Odd {
    let there = read.between[0].is_some_and(|v| v > (1.0 - MISSING) * read.line_line);
    match what {
        Odd::LineMissing(volts) if there && read.neutral => Odd::NeutralMissing(volts),
        Odd::LineMissing(volts) if there => Odd::AtReference(volts),
        Odd::Outside(volts, ..) if read.neutral && (volts - nominal).abs() > nominal * MISSING => {
            Odd::NeutralMissing(volts)
        }
        what => what,
    }
}

/// A neutral that stands away from the middle of the lines. Of a star's lines, by the three voltages to a point and the three between
/// them, that point lies sqrt(mean of the squares to it - mean of the squares between / 3) from their middle (Leibniz). Where not all
/// between were read, lines that differ among each other tell of it.
fn displaced(read: &Energised) -> Option<Finding> {
    if !read.neutral || read.arrangement != Some(Arrangement::Star) {
        return None;
    }
    let [Some(one), Some(two), Some(three)] = read.to_other else { return None };
    let to = [one, two, three];
    let nominal = read.line_line / 3f64.sqrt();
    let off = if let [Some(a), Some(b), Some(c)] = read.between {
        let (to, between) = (to.map(|v| v * v).iter().sum::<f64>() / 3.0, (a * a + b * b + c * c) / 9.0);
        (to - between).max(0.0).sqrt()
    } else {
        to.iter().fold(f64::MIN, |a, b| a.max(*b)) - to.iter().fold(f64::MAX, |a, b| a.min(*b))
    };
    let pairs = read.pairs();
    (off > MISSING * nominal).then_some(Finding { what: Odd::NeutralOff(off), pairs })
}

/// Line-to-line against line-to-neutral: the square root of three in a star.
fn together(read: &Energised) -> Option<Finding> {
    let expected = read.arrangement.map(|a| a.to_other(read.line_line))?;
    let (mut between, mut other) = (0.0, 0.0);
    for (line, volts) in read.between.iter().zip(read.to_other) {
        between += (*line)?;
        other += volts?;
    }
    let wanted = 3.0 * read.line_line / expected.iter().sum::<f64>();
    let ratio = between / other;
    let apart = (ratio / wanted - 1.0).abs() > TOGETHER;
    apart.then(|| Finding { what: Odd::NotTogether(ratio, wanted), pairs: read.pairs() })
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
