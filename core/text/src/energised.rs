//! What does not look as it should with the supply back.

use super::catalogue::say;
use super::words::{figure, pair_of, tolerance};
use stillbar_rules::prove::judge::energised::{Arrangement, Finding, Odd};

/// Something that does not look as it should, in a sentence.
pub fn odd(finding: &Finding) -> String {
    let first = finding.pairs.first();
    let at = first.map(|(line, other)| pair_of(line, other)).unwrap_or_default();
    let other = first.map_or("", |(_, other)| other);
    let tenth = |volts: &f64| figure(format!("{volts:.1}"));
    match &finding.what {
        Odd::LineMissing(volts) => say!("odd-line-missing", at = at, volts = tenth(volts)),
        Odd::NeutralMissing(volts) => say!("odd-neutral-missing", at = at, volts = tenth(volts), other = other),
        Odd::NeutralOff(volts) => say!("odd-neutral-off", volts = tenth(volts), other = other),
        Odd::Outside(volts, [least, most], by) => say!(
            "odd-outside",
            at = at,
            volts = tenth(volts),
            least = tenth(least),
            most = tenth(most),
            tolerance = tolerance(*by)
        ),
        Odd::NotAtEarth(volts) => say!("odd-not-at-earth", at = at, volts = tenth(volts)),
        Odd::AtReference(volts) => say!("odd-at-reference", at = at, volts = tenth(volts)),
        Odd::NotTogether(ratio, wanted) => {
            say!(
                "odd-not-together",
                ratio = figure(format!("{ratio:.2}")),
                wanted = figure(format!("{wanted:.2}")),
                other = other
            )
        }
        Odd::Unbalanced(percent) => say!("odd-unbalanced", percent = tenth(percent)),
        Odd::Delta(line, Arrangement::CornerGrounded(_)) => say!("odd-delta-corner", line = line),
        Odd::Delta(line, Arrangement::HighLeg(_) | Arrangement::Star | Arrangement::Halves) => {
            say!("odd-delta-high-leg", line = line)
        }
    }
}
