//! The order of the dead test.

use stillbar_core::prove::{Order, parse_conductors, parse_volts, plan};

fn pairs(list: &str, order: Order) -> String {
    plan(&parse_conductors(list).unwrap(), order).iter().map(|t| format!("{}-{} ", t.first, t.then)).collect()
}

/// All line-neutral, neutral-PE, all line-PE, all line-line; less dangerous first (common practice, no source).
#[test]
fn the_ten_steps() {
    assert_eq!(
        pairs("L1,L2,L3,N,PE", Order::LeastDangerousFirst),
        "N-L1 N-L2 N-L3 PE-N PE-L1 PE-L2 PE-L3 L1-L2 L1-L3 L2-L3 "
    );
    assert_eq!(
        pairs("L1,L2,L3,N,PE", Order::LineLineFirst),
        "L1-L2 L1-L3 L2-L3 N-L1 N-L2 N-L3 PE-L1 PE-L2 PE-L3 PE-N "
    );
    assert_eq!(pairs("L,N,PE", Order::LeastDangerousFirst), "N-L PE-N PE-L ");
    assert_eq!(pairs("L1,L2,L3,PE", Order::LeastDangerousFirst), "PE-L1 PE-L2 PE-L3 L1-L2 L1-L3 L2-L3 ");
}

/// n (n - 1) / 2 pairs, each once: 1, 3, 6, 10, 15, 21, 28, 36 for two to nine conductors (binomial coefficients).
#[test]
fn every_pair_once() {
    let names = ["PE", "N", "L1", "L2", "L3", "L4", "L5", "L6", "L7"];
    for (n, count) in (2..=9).zip([1, 3, 6, 10, 15, 21, 28, 36]) {
        let tests = plan(&parse_conductors(&names[..n].join(",")).unwrap(), Order::LeastDangerousFirst);
        let mut seen: Vec<[String; 2]> = tests.iter().map(|t| t.pair.clone()).collect();
        seen.iter_mut().for_each(|p| p.sort());
        seen.sort();
        seen.dedup();
        assert_eq!((tests.len(), seen.len()), (count, count));
    }
}

#[test]
fn bad_lists_say_what_to_write() {
    for (list, says) in [
        ("L1", "at least two"),
        ("L1,L1,N", "twice"),
        ("L1,brown", "\"brown\" is not a designation"),
        ("A=phase,N", "is not a designation"),
        ("", "at least two"),
    ] {
        let error = parse_conductors(list).unwrap_err().to_string();
        assert!(error.contains(says), "{list}: {error}");
    }
}

#[test]
fn volts_as_people_type_them() {
    for (text, mv) in [("231", 231_000), ("0.4", 400), ("0,4 V", 400), ("230.25", 230_250), ("0", 0)] {
        assert_eq!(parse_volts(text).unwrap(), mv, "{text}");
    }
    for text in ["", "-1", "2001", "1e3", "..", "0x1", "12.3456", "99999999999999999999"] {
        assert!(parse_volts(text).is_err(), "{text}");
    }
}
