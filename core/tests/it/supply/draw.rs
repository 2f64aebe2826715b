//! The drawing: the same for the same network, nothing outside it, no text over another, and all of it in words.

use stillbar_core::parts::{Drawing, Ink, Shape};
use stillbar_core::supply::draw::{MAX_DRAWN, MAX_DRAWN_LINKS};
use stillbar_core::supply::{Network, NodeKind, Shown, check};
use stillbar_core::text::draw;

use super::{Random, brute, network};

fn drawn(network: &Network, zone: &[&str], locked: &[&str]) -> (Drawing, String) {
    let own = |ids: &[&str]| ids.iter().map(|id| (*id).to_owned()).collect::<Vec<_>>();
    let (zone, locked) = (own(zone), own(locked));
    let check = check(network, &zone, &locked).ok();
    draw(network, &Shown { zone: &zone, locked: &locked, states: &[], check: check.as_ref() })
}

fn texts(drawing: &Drawing) -> Vec<String> {
    let text = |shape: &Shape| match shape {
        Shape::Text { text, .. } => Some(text.clone()),
        _ => None,
    };
    drawing.shapes.iter().filter_map(text).collect()
}

/// The room that a text takes at least: narrower than the drawing itself reckons with.
fn room(shape: &Shape) -> Option<(f32, f32, f32, f32)> {
    match shape {
        Shape::Text { x, y, size, text, .. } => {
            let wide = text.chars().count() as f32 * size * 0.45;
            Some((x - wide / 2.0, y - size * 0.7, x + wide / 2.0, *y))
        }
        _ => None,
    }
}

fn is_sound(drawing: &Drawing, what: &str) {
    let inside = |x: f32, y: f32| {
        assert!((0.0..=drawing.width).contains(&x) && (0.0..=drawing.height).contains(&y), "{what}: {x}, {y}");
    };
    for shape in &drawing.shapes {
        match shape {
            Shape::Line { x1, y1, x2, y2, .. } => {
                inside(*x1, *y1);
                inside(*x2, *y2);
            }
            Shape::Circle { x, y, .. } => inside(*x, *y),
            Shape::Box { x, y, w, h, .. } => {
                inside(*x, *y);
                inside(x + w, y + h);
            }
            Shape::Text { x, y, size, .. } => {
                inside(*x, *y);
                assert!(*size >= 12.0);
            }
        }
    }
    let rooms: Vec<_> = drawing.shapes.iter().filter_map(|s| Some((room(s)?, s))).collect();
    for (i, (a, one)) in rooms.iter().enumerate() {
        for (b, other) in &rooms[..i] {
            let over = a.0 < b.2 && b.0 < a.2 && a.1 < b.3 && b.1 < a.3;
            assert!(!over, "{what}: {one:?} lies on {other:?}");
        }
    }
}

/// On random networks: no text on another, nothing outside, every part in words.
#[test]
fn nothing_lies_on_anything() {
    for seed in 1..=500 {
        let (network, zone) = brute::random(seed);
        let mut r = Random(seed);
        let locked: Vec<&str> = network.links().iter().filter(|_| r.once_in(3)).map(|l| l.id.as_str()).collect();
        let (drawing, words) = drawn(&network, &[&zone], &locked);
        is_sound(&drawing, &format!("network {seed}"));
        for id in network.nodes().iter().map(|n| &n.id).chain(network.links().iter().map(|l| &l.id)) {
            assert!(words.contains(id.as_str()), "network {seed}: {id} is not in words");
        }
        let all = texts(&drawing);
        for node in network.nodes() {
            assert!(all.contains(&node.id), "network {seed}: {} is not drawn", node.id);
        }
        assert_eq!(drawn(&network, &[&zone], &locked).0, drawing, "the same drawing again");
    }
}

const SITE: &str = "
    grid source
    gen source
    B1 board
    B3 board
    C1 load lighting 2
    grid Q1 B1
    gen G1! B3
    B1 Q7 B3
    B3 F1? C1
";

/// Position, lock and uncovered path are words as well as shapes; sources are above what they feed.
#[test]
fn states_are_words() {
    let site = network(SITE);
    let (drawing, words) = drawn(&site, &["B3"], &["Q7"]);
    is_sound(&drawing, "the site");
    let all = texts(&drawing);
    for text in
        ["locked open", "closed", "open", "uncovered", "takes no lock", "work zone", "reaches the zone", "lighting 2"]
    {
        assert!(all.iter().any(|t| t == text), "{text} is not written in {all:?}");
    }
    for text in [
        "gen: source, reaches the zone; to B3 over G1 (a switch, open, on an uncovered path).",
        "B1: board; to B3 over Q7 (a switch, locked open).",
        "B3: board, work zone; to C1 over F1 (a switch, closed, takes no lock).",
        "C1: load, lighting 2.",
    ] {
        assert!(words.contains(text), "{text} is not said in {words}");
    }
    let red =
        drawing.shapes.iter().filter(|s| matches!(s, Shape::Line { ink: Ink::Forbid, thick, .. } if *thick >= 8.0));
    assert!(red.count() > 0);
    let height = |id: &str| {
        drawing.shapes.iter().find_map(|s| match s {
            Shape::Text { text, y, .. } if text == id => Some(*y),
            _ => None,
        })
    };
    let heights: Vec<f32> = ["grid", "B1", "B3", "C1"].into_iter().filter_map(height).collect();
    assert!(heights.len() == 4 && heights.is_sorted(), "{heights:?}");
    // Cut, nothing is uncovered.
    let (drawing, _) = drawn(&site, &["B3"], &["Q7", "G1"]);
    assert!(!texts(&drawing).iter().any(|t| t == "uncovered"));
}

/// What is unknown is marked and said; a text that is too long is whole in the words.
#[test]
fn unknown_parts_and_long_texts() {
    let site = network(
        "grid source\n B3 board\n C1 load the cold room and both of its compressors on the roof of hall 2\n grid Q1 B3\n B3 F1 C1\n B3 -w9- X1\n",
    );
    let (drawing, words) = drawn(&site, &["B3"], &["Q1"]);
    assert!(texts(&drawing).contains(&"not traced".to_owned()));
    assert!(texts(&drawing).iter().any(|t| t.ends_with('…')));
    assert!(words.contains("X1: unknown, not traced."));
    assert!(words.contains("the cold room and both of its compressors on the roof of hall 2"));
}

/// A large network is drawn around the work, and says that it is a part; a heap of links is bounded too.
#[test]
fn large_networks_are_drawn_in_part() {
    let mut lines = String::from("grid source\n");
    for i in 0..3000 {
        lines += &format!("B{i} board\n");
        let on = if i == 0 { "grid".to_owned() } else { format!("B{}", (i - 1) / 3) };
        lines += &format!("{on} Q{i} B{i}\n");
    }
    let site = network(&lines);
    let (drawing, words) = drawn(&site, &["B2999"], &[]);
    is_sound(&drawing, "a tree");
    let boards = texts(&drawing).iter().filter(|t| site.node(t).is_some_and(|n| n.kind == NodeKind::Board)).count();
    assert!(boards <= MAX_DRAWN && boards > MAX_DRAWN / 2);
    assert!(texts(&drawing).contains(&"B2999".to_owned()) && texts(&drawing).contains(&"grid".to_owned()));
    assert!(words.starts_with(&format!("Single-line diagram. {MAX_DRAWN} of 3001 parts are drawn.")));
    let mut lines = String::from("grid source\n B3 board\n");
    for i in 0..2000 {
        lines += &format!("grid Q{i} B3\n");
    }
    let (drawing, _) = drawn(&network(&lines), &["B3"], &["Q1999"]);
    is_sound(&drawing, "parallel links");
    let links = texts(&drawing).iter().filter(|t| t.starts_with('Q')).count();
    assert_eq!(links, MAX_DRAWN_LINKS);
    assert!(texts(&drawing).contains(&"Q1999".to_owned()));
}
