//! A supply that is back, held against published voltages. Sources: IEC 60038 (nominal voltages), UKSI 1994/3021 (230 V, +10 %, -6 %),
//! ANSI C84.1 Range A (service voltage), symmetrical components (Fortescue 1918).

use stillbar_core::prove::judge::energised::{Arrangement, Energised, Odd, Tolerance, energised, unbalance};
use stillbar_core::text;

use crate::desk::*;

fn star(to_other: [f64; 3], between: [f64; 3], line_line: f64, tolerance: Tolerance) -> Energised<'static> {
    Energised {
        lines: ["L1", "L2", "L3"],
        other: "N",
        neutral: true,
        to_other: to_other.map(Some),
        between: between.map(Some),
        line_line,
        arrangement: Some(Arrangement::Star),
        tolerance,
    }
}

/// Line-to-neutral voltages and the square root of three times them, to two decimals, as printed in tables.
#[test]
fn line_to_line_is_root_three_times_line_to_neutral() {
    let table = [
        (120.0, 207.85),
        (127.0, 219.97),
        (230.0, 398.37),
        (240.0, 415.69),
        (277.0, 479.78),
        (347.0, 601.02),
        (400.0, 692.82),
    ];
    for (neutral, line) in table {
        let [one, ..] = Arrangement::Star.to_other(line);
        assert!((one - neutral).abs() < 0.005, "{line} gives {one}");
        assert_eq!(energised(&star([neutral; 3], [line; 3], line, Tolerance::Iec60038)), Vec::new());
    }
    // Both within tolerance, and still they do not belong together.
    let odd = energised(&star([225.0; 3], [425.0; 3], 400.0, Tolerance::Iec60038));
    assert!(odd.len() == 1 && text::odd(&odd[0]).contains("1.89 times") && odd[0].pairs.len() == 6, "{odd:?}");
}

/// IEC 60038 pairs of nominal voltages: each is within the tolerance of the other's square root of three.
#[test]
fn nominal_pairs_of_iec_60038() {
    for (neutral, line) in [(230.0, 400.0), (400.0, 690.0), (120.0, 208.0), (277.0, 480.0), (347.0, 600.0)] {
        let odd = energised(&star([neutral; 3], [line; 3], line, Tolerance::AnsiC841A));
        assert!(odd.is_empty(), "{neutral}/{line}: {odd:?}");
    }
}

#[test]
fn tolerance_bands_as_published() {
    let close = |(a, b): (f64, f64), (c, d): (f64, f64)| (a - c).abs() < 0.051 && (b - d).abs() < 0.051;
    assert!(close(Tolerance::Uk.band(230.0), (216.2, 253.0)));
    assert!(close(Tolerance::Iec60038.band(230.0), (207.0, 253.0)));
    for (nominal, band) in [
        (480.0, (456.0, 504.0)),
        (208.0, (197.6, 218.4)),
        (240.0, (228.0, 252.0)),
        (277.0, (263.1, 290.9)),
        (600.0, (570.0, 630.0)),
    ] {
        assert!(close(Tolerance::AnsiC841A.band(nominal), band), "{nominal}: {:?}", Tolerance::AnsiC841A.band(nominal));
    }
    // Just inside and just outside, at both ends of each.
    for tolerance in Tolerance::ALL {
        let line_line = 400.0;
        let (least, most) = tolerance.band(line_line / 3f64.sqrt());
        for (volts, fits) in [(least + 0.05, true), (least - 0.05, false), (most - 0.05, true), (most + 0.05, false)] {
            let read = star([volts; 3], [volts * 3f64.sqrt(); 3], line_line, tolerance);
            assert_eq!(energised(&read).is_empty(), fits, "{tolerance:?} at {volts}");
        }
    }
}

/// 240 V delta with its mid-point earthed: 207.85 V from the high leg to neutral is normal there, and not on a star.
#[test]
fn deltas_are_told_from_stars() {
    let read = star([120.0, 207.85, 120.0], [240.0; 3], 240.0, Tolerance::AnsiC841A);
    assert!(energised(&Energised { arrangement: Some(Arrangement::HighLeg(1)), ..read }).is_empty());
    let odd = energised(&star([120.0, 207.85, 120.0], [240.0; 3], 207.85, Tolerance::AnsiC841A));
    let last = text::odd(odd.last().unwrap());
    assert!(last.starts_with("L2: these are the voltages of a delta with its mid-point earthed"), "{odd:?}");
    // The voltages between the lines are not those of the star that was noted: it is the delta, and nothing is missing.
    assert!(!odd.iter().any(|f| f.is_missing()), "{odd:?}");
    // A star's lines about a neutral that hangs between two of them read the same: there it is missing.
    let odd = energised(&star([200.0, 346.4, 200.0], [400.0; 3], 400.0, Tolerance::Iec60038));
    assert!(odd.iter().any(|f| f.is_missing()), "{odd:?}");
    // A corner at earth: one line near nothing, the others at the full line-to-line voltage.
    let read = star([2.0, 481.0, 479.0], [480.0; 3], 480.0, Tolerance::AnsiC841A);
    assert!(energised(&Energised { arrangement: Some(Arrangement::CornerGrounded(0)), ..read }).is_empty());
    let odd = energised(&read);
    let last = text::odd(odd.last().unwrap());
    assert!(last.starts_with("L1: these are the voltages of a delta with this line earthed"), "{odd:?}");
}

#[test]
fn missing_and_low_lines_are_told() {
    let odd = energised(&star([231.0, 0.0, 229.0], [230.0, 229.0, 399.0], 400.0, Tolerance::Iec60038));
    let missing: Vec<_> = odd.iter().filter(|f| f.is_missing()).collect();
    assert_eq!(missing.len(), 1, "{odd:?}");
    assert_eq!(missing[0].what, Odd::LineMissing(0.0));
    assert_eq!(missing[0].pairs, [("L2".to_owned(), "N".to_owned())]);
    assert!(text::odd(missing[0]).starts_with("L2 – N: 0.0 V. A line is missing"), "{odd:?}");
    // An open neutral, star of 10, 20 and 40 ohm on 230 V (Millman): the loads see 150.57, 260.80 and 301.14 V.
    let odd = energised(&star([150.57, 260.80, 301.14], [398.37; 3], 398.37, Tolerance::Iec60038));
    assert_eq!(odd.len(), 3, "{odd:?}");
    assert!(odd.iter().any(|f| f.is_missing()), "{odd:?}");
    // Less far off, so that no reading tells it alone: loads of 14, 8 and 7 kW at 230 V without a neutral (Millman).
    let odd = energised(&star([178.58, 254.41, 264.95], [398.37; 3], 398.37, Tolerance::Iec60038));
    let off: Vec<_> = odd.iter().filter(|f| matches!(f.what, Odd::NeutralOff(_))).collect();
    assert!(off.len() == 1 && off[0].is_missing() && off[0].pairs.len() == 6, "{odd:?}");
    // The neutral changed with a line: that line reads nothing, the others what lies between lines.
    let odd = energised(&star([398.0, 399.0, 0.0], [399.0, 399.0, 398.0], 398.37, Tolerance::Iec60038));
    let swapped = odd.iter().filter(|f| matches!(f.what, Odd::NeutralMissing(_)));
    assert_eq!(swapped.count(), 3, "{odd:?}");
    // A line that is only low is no missing one, and without a neutral a line at earth is none either.
    let odd = energised(&star([231.0, 204.0, 230.0], [377.0, 376.0, 399.0], 398.37, Tolerance::Iec60038));
    assert!(!odd.is_empty() && !odd.iter().any(|f| f.is_missing()), "{odd:?}");
    let earth = Energised {
        neutral: false,
        other: "PE",
        ..star([2.0, 398.0, 399.0], [399.0, 398.0, 398.0], 398.37, Tolerance::Iec60038)
    };
    let odd = energised(&earth);
    assert!(odd.iter().any(|f| f.what == Odd::AtReference(2.0)) && !odd.iter().any(|f| f.is_missing()), "{odd:?}");
    // What was not read says nothing.
    let none = Energised { to_other: [None; 3], between: [None; 3], ..star([0.0; 3], [0.0; 3], 400.0, Tolerance::Uk) };
    assert!(energised(&none).is_empty());
}

/// The formula for magnitudes against symmetrical components of made-up phasors.
#[test]
fn unbalance_is_negative_over_positive_sequence() {
    let third = 2.0 * std::f64::consts::FRAC_PI_3;
    for (share, angle) in [(0.0, 0.0), (0.01, 0.4), (0.02, 2.0), (0.05, 4.0), (0.3, 5.5), (0.9, 1.0)] {
        // Line-to-line phasors from a positive sequence of 400 V and a negative one of `share` of it.
        let size = |k: f64| {
            let x = 400.0 * ((-third * k).cos() + share * (third * k + angle).cos());
            let y = 400.0 * ((-third * k).sin() + share * (third * k + angle).sin());
            Some(x.hypot(y))
        };
        let found = unbalance([size(0.0), size(1.0), size(2.0)]).unwrap();
        assert!((found - 100.0 * share).abs() < 1e-4, "{share}: {found}");
    }
    assert_eq!(unbalance([Some(400.0), None, Some(400.0)]), None);
    assert_eq!(unbalance([Some(400.0), Some(0.0), Some(400.0)]), None);
}

/// On the screens: UK tolerance, a line below it, and a delta's voltages on a supply that was noted as a star.
#[test]
fn the_presence_step_says_what_is_off() {
    let (_folder, device, field) = begun(&[PEOPLE, PLAN, ISOLATE, PROVE, WORK]);
    let up_to = RESTORE.split("read L1 – N").next().unwrap();
    device.play(&field, up_to);
    device.play(
        &field,
        "read L1 – N = 231\nread L2 – N = 204\nread L3 – N = 230\nread L1 – L2 = 377\nread L2 – L3 = 376\nread L3 – L1 = 399\n\
         tap Save the readings\nsee L2 – N: 204.0 V, outside 207.0 to 253.0 V (IEC 60038: 10 % either way)\nsee unbalanced by",
    );
}
