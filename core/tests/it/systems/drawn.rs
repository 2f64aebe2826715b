//! The drawing in the button of each system: it names every conductor, says of two of them what their circuit shows, and can be read.

use std::collections::BTreeSet;

use stillbar_core::parts::{Block, Drawing, Ink, Opt, Shape};
use stillbar_core::prove::{Case, Earthing, IfLive, RuleSet, Supply, System, parse_conductors, plan_case};
use stillbar_core::screens::as_text;
use stillbar_core::text;

use super::plants::{Site, plants};
use crate::desk::*;

/// Every text with its place and height.
fn texts(drawing: &Drawing) -> Vec<(f32, f32, f32, &str)> {
    let text = |shape: &'_ Shape| match shape {
        Shape::Text { x, y, size, .. } => Some((*x, *y, *size)),
        _ => None,
    };
    let words = drawing.shapes.iter().filter_map(|shape| match shape {
        Shape::Text { text, .. } => Some(text.as_str()),
        _ => None,
    });
    drawing.shapes.iter().filter_map(text).zip(words).map(|((x, y, size), text)| (x, y, size, text)).collect()
}

/// Terminals by name, from the top down: the texts beside the circles of terminals, which are the last that are drawn before the brackets.
fn terminals<'a>(drawing: &'a Drawing, conductors: &[String]) -> Vec<(&'a str, f32)> {
    let named = texts(drawing).into_iter().filter(|(_, _, _, text)| conductors.iter().any(|name| name == text));
    named.map(|(_, y, size, text)| (text, y - size / 3.0)).collect()
}

/// What the drawing says of pairs: each upright bracket to the right of the names, the terminals at its ends, and what is written beside it.
fn said<'a>(drawing: &'a Drawing, conductors: &[String]) -> Vec<(&'a str, &'a str, String)> {
    let terminals = terminals(drawing, conductors);
    let names = texts(drawing).into_iter().filter(|t| conductors.iter().any(|name| name == t.3));
    let right = names.map(|(x, ..)| x).fold(0.0, f32::max);
    let nearest = |y: f32| terminals.iter().min_by(|a, b| (a.1 - y).abs().total_cmp(&(b.1 - y).abs())).unwrap().0;
    let brackets = drawing.shapes.iter().filter_map(|shape| match shape {
        Shape::Line { x1, y1, x2, y2, .. } if x1 == x2 && *x1 > right && y1 != y2 => Some((*y1, *y2)),
        _ => None,
    });
    let beside = |from: f32, to: f32| {
        let middle = (from + to) / 2.0;
        let of_it =
            texts(drawing).into_iter().filter(|(x, y, ..)| *x > right + 20.0 && (y - 5.0 - middle).abs() < 12.0);
        of_it.map(|(.., text)| text).collect::<Vec<_>>().join(" ")
    };
    brackets.map(|(from, to)| (nearest(from), nearest(to), beside(from, to))).collect()
}

/// The figures of "400 V", "120 or 208 V", "0 to 400 V".
fn figures(said: &str) -> Vec<f64> {
    said.split(' ').filter_map(|word| word.parse().ok()).collect()
}

fn drawn(system: System, volts: u32) -> (Supply, Drawing, Vec<String>) {
    let supply = Supply::of(system, volts * 1000);
    let names = supply.conductors().into_iter().map(|c| c.name).collect();
    let drawing = text::source(&supply, Earthing::TnS);
    (supply, drawing, names)
}

/// Every system but one's own, with each voltage that a rule set has for it.
fn all() -> BTreeSet<(usize, u32)> {
    let of = |rules: RuleSet| {
        System::ALL.into_iter().enumerate().filter_map(move |(k, system)| Some((k, rules.usual_volts(system)?)))
    };
    let more = [(System::ThreePhaseNeutral, 277), (System::ThreePhaseNeutral, 347), (System::DcTwoWire, 750)];
    let more = more.map(|(system, volts)| (System::ALL.iter().position(|s| *s == system).unwrap(), volts));
    RuleSet::ALL.into_iter().flat_map(of).chain(more).collect()
}

#[test]
fn every_conductor_is_named_once() {
    let mut systems = BTreeSet::new();
    for (k, volts) in all() {
        systems.insert(k);
        let (_, drawing, names) = drawn(System::ALL[k], volts);
        let shown: Vec<&str> = terminals(&drawing, &names).into_iter().map(|(name, _)| name).collect();
        assert_eq!(shown, names, "{:?}: in the order of the terminals", System::ALL[k]);
        // The words that the person reads below it name the same.
        let label = text::system(System::ALL[k]);
        assert!(label.ends_with(&names.join(", ")), "{label}");
    }
    assert_eq!(systems.len(), System::ALL.len() - 1);
}

/// A figure of the drawing is what the circuit of that system shows, whichever of its sources it is; and what two conductors of the table
/// show to each other stands somewhere in the drawing.
#[test]
fn what_is_said_between_two_is_what_their_circuit_shows() {
    for (k, volts) in all() {
        let system = System::ALL[k];
        let (supply, drawing, names) = drawn(system, volts);
        let said = said(&drawing, &names);
        assert_eq!(said.len(), if system == System::OnePhase { 1 } else { 2 }, "{system:?}: {said:?}");
        for (a, b, word) in &said {
            let shown: Vec<f64> = plants(system, f64::from(volts))
                .iter()
                .map(|plant| plant.live(Site::of(Earthing::TnS)).between(a, b))
                .collect();
            let told = figures(word);
            let near = |one: f64, other: f64| (one - other).abs() <= 0.01 * one.max(other) + 0.1;
            if word.contains(" to ") {
                assert_eq!((told.len(), told[0]), (2, 0.0), "{word}");
                // A pole of a supply with neither at earth stands at half of it.
                assert!(shown.iter().all(|v| *v <= told[1] * 1.01), "{system:?} {a} – {b}: {word}, {shown:?}");
                assert!(shown.iter().any(|v| near(*v, told[1])), "{system:?} {a} – {b}: {word}, {shown:?}");
                assert!(shown.iter().any(|v| *v < 0.5), "{system:?} {a} – {b}: {word}, {shown:?}");
            } else {
                assert!(word.ends_with(" V") && (told.len() == 2) == word.contains(" or "), "{word}");
                let any = |v: &f64| told.iter().any(|t| near(*v, *t));
                assert!(shown.iter().all(any), "{system:?} {a} – {b}: {word}, {shown:?}");
                assert!(told.iter().all(|t| shown.iter().any(|v| near(*v, *t))), "{system:?}: {word}, {shown:?}");
            }
        }
        // The table, by the plan: no voltage between a line and another conductor is missing.
        for test in plan_case(&Case::of_supply(supply, Earthing::TnS)).tests {
            let wanted = match test.expect_not_dead {
                IfLive::About(mv) | IfLive::UpTo(mv) => vec![mv],
                IfLive::Either { phases, middle } => vec![phases, middle],
                IfLive::Middles(_) => continue,
                IfLive::Unsaid => panic!("{system:?} {:?}", test.pair),
            };
            for mv in wanted.into_iter().map(|mv| f64::from(mv) / 1000.0) {
                let there = said.iter().any(|(_, _, word)| figures(word).iter().any(|t| (t - mv).abs() <= 0.005 * mv));
                assert!(there, "{system:?} {:?}: {mv} V is not in {said:?}", test.pair);
            }
        }
    }
}

/// As tables and transformers have them: IEC 60038, ANSI C84.1 and CSA C235 (from memory), BS 7671 411.8 (an excerpt).
#[test]
fn figures_go_by_their_names() {
    for (system, volts, names) in [
        (System::ThreePhaseNeutral, 230, ["400 V", "230 V"]),
        (System::ThreePhaseNeutral, 400, ["690 V", "400 V"]),
        (System::ThreePhaseNeutral, 120, ["208 V", "120 V"]),
        (System::ThreePhaseNeutral, 277, ["480 V", "277 V"]),
        (System::ThreePhaseNeutral, 347, ["600 V", "347 V"]),
        (System::ThreeWire, 400, ["400 V", "0 to 400 V"]),
        (System::Pen, 230, ["400 V", "230 V"]),
        (System::TwoLines, 230, ["230 V", "133 V"]),
        (System::SiteTransformer, 110, ["110 V", "55 V"]),
        (System::SiteTransformerThree, 110, ["110 V", "63.5 V"]),
        (System::SplitPhase, 120, ["240 V", "120 V"]),
        (System::HighLeg, 240, ["240 V", "120 or 208 V"]),
        (System::CornerGrounded, 480, ["480 V", "0 to 480 V"]),
        (System::DcTwoWire, 48, ["48 V", "0 to 48 V"]),
        (System::DcThreeWire, 220, ["220 V", "110 V"]),
    ] {
        let (_, drawing, conductors) = drawn(system, volts);
        let said: Vec<String> = said(&drawing, &conductors).into_iter().map(|(.., word)| word).collect();
        assert_eq!(said, names, "{system:?} {volts} V");
    }
}

/// A line or pole that was shown to be at earth is drawn so, and nothing is left open; where nothing is at earth, nothing is tied to it.
#[test]
fn what_is_known_is_drawn() {
    let open = |drawing: &Drawing| texts(drawing).iter().any(|(.., text)| *text == "?");
    for (system, volts, marked) in
        [(System::CornerGrounded, 480, "L2"), (System::DcTwoWire, 48, "L-"), (System::HighLeg, 240, "L3")]
    {
        let (supply, drawing, names) = drawn(system, volts);
        assert_eq!(open(&drawing), system != System::HighLeg, "{system:?}");
        let known = text::source(&Supply { marked: Some(marked.into()), ..supply }, Earthing::TnS);
        assert!(!open(&known), "{system:?}");
        assert!(said(&known, &names).iter().all(|(.., word)| !word.contains(" or ")), "{system:?}");
    }
    let (supply, ..) = drawn(System::ThreePhaseNeutral, 230);
    let names: Vec<String> = supply.conductors().into_iter().map(|c| c.name).collect();
    let apart = text::source(&supply, Earthing::It);
    assert_eq!(said(&apart, &names)[1].2, "230 V", "line to neutral");
    assert!(!open(&apart) && apart.shapes.len() < text::source(&supply, Earthing::TnS).shapes.len());
}

/// A place in a drawing.
type Spot = (f32, f32);

/// Lines between two places, whichever end is first, of the shapes of a drawing.
fn wires(drawing: &Drawing) -> Vec<(Spot, Spot)> {
    let wire = |shape: &Shape| match shape {
        Shape::Line { x1, y1, x2, y2, .. } => Some(((*x1, *y1), (*x2, *y2))),
        _ => None,
    };
    drawing.shapes.iter().filter_map(wire).collect()
}

/// Where signs of earth stand (IEC 60417-5017): three level lines below each other, each shorter than the one above, and a wire that comes down.
fn signs(drawing: &Drawing) -> Vec<(f32, f32)> {
    let level: Vec<_> = wires(drawing).into_iter().filter(|(a, b)| a.1 == b.1 && (a.0 - b.0).abs() < 20.0).collect();
    let at = |(a, b): &(Spot, Spot)| ((a.0 + b.0) / 2.0, a.1, (a.0 - b.0).abs());
    let below = |top: &(f32, f32, f32)| {
        let under = level.iter().map(at).filter(|l| (l.0 - top.0).abs() < 0.1 && l.1 > top.1 && l.1 < top.1 + 10.0);
        under.filter(|l| l.2 < top.2).count()
    };
    level.iter().map(at).filter(|top| below(top) == 2).map(|(x, y, _)| (x, y - 9.0)).collect()
}

/// All that hangs together by wires with this place, windings and all: corners of wires, and the ends of lines of turns.
fn joined(drawing: &Drawing, from: (f32, f32)) -> Vec<(f32, f32)> {
    let near = |a: (f32, f32), b: (f32, f32)| (a.0 - b.0).abs() < 0.6 && (a.1 - b.1).abs() < 0.6;
    let on = |p: (f32, f32), a: (f32, f32), b: (f32, f32)| {
        let (dx, dy) = (b.0 - a.0, b.1 - a.1);
        let long = dx.hypot(dy);
        if long < 0.1 {
            return near(p, a);
        }
        let along = ((p.0 - a.0) * dx + (p.1 - a.1) * dy) / long;
        let off = ((p.0 - a.0) * dy - (p.1 - a.1) * dx).abs() / long;
        off < 0.6 && (-0.6..=long + 0.6).contains(&along)
    };
    let (mut found, all) = (vec![from], wires(drawing));
    let mut at = 0;
    while let Some(here) = found.get(at).copied() {
        for (a, b) in &all {
            let touches = on(here, *a, *b) || found.iter().any(|f| on(*f, *a, *b));
            if touches {
                for end in [*a, *b] {
                    if !found.iter().any(|f| near(*f, end)) {
                        found.push(end);
                    }
                }
            }
        }
        at += 1;
    }
    found
}

/// Where a winding or a battery touches what hangs together with an earth: the source is at earth there.
fn source_at(drawing: &Drawing, sign: (f32, f32)) -> bool {
    let turns: Vec<(f32, f32, f32)> = drawing
        .shapes
        .iter()
        .filter_map(|shape| match shape {
            Shape::Circle { x, y, r, filled: false, .. } if *x < 66.0 => Some((*x, *y, *r)),
            _ => None,
        })
        .collect();
    let reached = joined(drawing, sign);
    let wound = reached.iter().any(|p| turns.iter().any(|t| (p.0 - t.0).hypot(p.1 - t.1) < t.2 + 1.0));
    // A plate of a battery: a level line in the middle of which a wire ends.
    let plates: Vec<_> =
        wires(drawing).into_iter().filter(|(a, b)| a.1 == b.1 && (9.0..24.0).contains(&(a.0 - b.0).abs())).collect();
    let plate = |p: &(f32, f32)| {
        plates.iter().any(|(a, b)| (p.1 - a.1).abs() < 0.6 && (p.0 - (a.0 + b.0) / 2.0).abs() < 0.6 && p.1 < sign.1)
    };
    wound || reached.iter().any(plate)
}

/// How each system is earthed is drawn, for every arrangement (IEC 60364-1, from memory): in TN source and protective conductor at one earth,
/// in TT at two, in IT the source at none, and where nobody knows nothing is tied, and a question mark says so.
#[test]
fn the_earthing_is_drawn() {
    for (k, volts) in all() {
        let system = System::ALL[k];
        let pen = system == System::Pen;
        // The star point or a corner is at earth: which differs from place to place.
        let either = system == System::ThreeWire;
        // One line is at earth by the name of the system; which, is shown.
        let marked = match system {
            System::CornerGrounded => Some("L2".to_owned()),
            System::DcTwoWire => Some("L-".to_owned()),
            _ => None,
        };
        let supply = Supply { marked, ..Supply::of(system, volts * 1000) };
        for earthing in Earthing::ALL {
            let drawing = text::source(&supply, earthing);
            if let Some(folder) = std::env::var_os("STILLBAR_KEEP_DRAWINGS") {
                let file = std::path::Path::new(&folder).join(format!("{k:02}-{}.svg", earthing.name()));
                std::fs::write(file, stillbar_core::svg::file(&drawing, "")).unwrap();
            }
            let (signs, what) = (signs(&drawing), format!("{system:?} {earthing:?}"));
            let tied = signs.iter().filter(|sign| source_at(&drawing, **sign)).count();
            let asks = texts(&drawing).iter().any(|(.., text)| *text == "?");
            match earthing {
                Earthing::It | Earthing::Unknown => {
                    assert_eq!((signs.len(), tied), (usize::from(!pen), 0), "{what}: {signs:?}");
                    assert_eq!(asks, earthing == Earthing::Unknown, "{what}");
                }
                Earthing::Tt if !pen => {
                    assert_eq!((signs.len(), tied, asks), (2, 1, either), "{what}: {signs:?}");
                }
                _ => assert_eq!((signs.len(), tied, asks), (1, 1, either), "{what}: {signs:?}"),
            }
        }
        // Which line or pole is at earth, and nobody has shown it: tied by a fainter wire, if at all, and asked.
        if matches!(system, System::CornerGrounded | System::DcTwoWire) {
            let unmarked = text::source(&Supply::of(system, volts * 1000), Earthing::TnS);
            assert!(texts(&unmarked).iter().any(|(.., text)| *text == "?"), "{system:?}");
        }
    }
}

/// Nothing outside, no text on another, letters that can be read at about a pixel a unit, and ink that a dark theme turns.
#[test]
fn it_can_be_read() {
    let own = |list: &str| Supply { own: parse_conductors(list).unwrap(), ..Supply::of(System::Own, 0) };
    let long = "L1, L2, L3, L4, L5, N, PE, A12345678901=line";
    let supplies = all().into_iter().map(|(k, volts)| drawn(System::ALL[k], volts).0);
    let more = [Supply::of(System::Own, 0), own("L1, PE"), own(long), own("A12345678901=line, B12345678901=line")];
    for supply in supplies.chain(more) {
        let what = format!("{:?} {:?}", supply.system, supply.own);
        for drawing in Earthing::ALL.map(|earthing| text::source(&supply, earthing)) {
            assert!(drawing.width < 200.0 && drawing.height < 130.0 && drawing.shapes.len() < 120, "{what}");
            let inside = |x: f32, y: f32| {
                assert!((0.0..=drawing.width).contains(&x) && (0.0..=drawing.height).contains(&y), "{what}: {x}, {y}");
            };
            for shape in &drawing.shapes {
                let ink = match shape {
                    Shape::Line { x1, y1, x2, y2, thick, ink } => {
                        inside(x1 - thick / 2.0, y1 - thick / 2.0);
                        inside(x2 + thick / 2.0, y2 + thick / 2.0);
                        ink
                    }
                    Shape::Circle { x, y, r, thick, ink, .. } => {
                        inside(x - r - thick / 2.0, y - r - thick / 2.0);
                        inside(x + r + thick / 2.0, y + r + thick / 2.0);
                        ink
                    }
                    Shape::Box { x, y, w, h, ink, .. } => {
                        inside(*x, *y);
                        inside(x + w, y + h);
                        ink
                    }
                    Shape::Text { ink, .. } => ink,
                };
                assert!(matches!(ink, Ink::Ink | Ink::Quiet), "{what}: {ink:?}");
            }
            // A bold letter is 0.56 to 0.6 of its height wide on the whole.
            let room = |(x, y, size, text): &(f32, f32, f32, &str)| {
                let half = text.chars().count() as f32 * size * 0.29;
                (x - half, y - size * 0.72, x + half, *y)
            };
            let all = texts(&drawing);
            for (i, one) in all.iter().enumerate() {
                let a = room(one);
                inside(a.0, a.1);
                inside(a.2, a.3);
                assert!(one.2 >= 14.0 || supply.system == System::Own && one.2 >= 9.0, "{what}: {one:?}");
                for other in &all[..i] {
                    let b = room(other);
                    assert!(!(a.0 < b.2 && b.0 < a.2 && a.1 < b.3 && b.1 < a.3), "{what}: {one:?} lies on {other:?}");
                }
            }
        }
    }
}

/// On the form every system has its drawing, of the voltage that is usual under the rules; and no other answer has one.
#[test]
fn the_form_shows_each() {
    let (_folder, device, field) = begun(&[PEOPLE, "tap New job"]);
    let choices = |field: &stillbar_core::Field| -> Vec<(String, Vec<Opt>)> {
        let of = |block: Block| match block {
            Block::Choice { choice, .. } => Some((choice.field, choice.options)),
            Block::Pad { id, pad } => Some((id, pad.options)),
            _ => None,
        };
        field.screen().blocks.into_iter().filter_map(of).collect()
    };
    for (name, options) in choices(&field) {
        for option in &options {
            assert_eq!(option.drawing.is_some(), name == "system", "{name}: {}", option.label);
            let json = serde_json::to_value(option).unwrap();
            assert_eq!(json.get("drawing").is_some(), name == "system", "{json}");
        }
    }
    let systems =
        |field: &stillbar_core::Field| choices(field).into_iter().find(|(name, _)| name == "system").unwrap().1;
    assert_eq!(systems(&field).len(), System::ALL.len());
    let shows =
        |option: &Opt| texts(option.drawing.as_ref().unwrap()).iter().map(|t| t.3.to_owned()).collect::<Vec<_>>();
    assert!(shows(&systems(&field)[0]).contains(&"400 V".to_owned()), "{:?}", shows(&systems(&field)[0]));
    // The rules that are picked above come to be known with the next look at the form.
    device.play(&field, "choose Rules of = United States\ntap Open this job");
    let first = &systems(&field)[..2];
    assert_eq!(first.iter().map(|o| o.value.as_str()).collect::<Vec<_>>(), ["split-phase", "three-phase-neutral"]);
    assert!(shows(&first[0]).contains(&"240 V".to_owned()) && shows(&first[1]).contains(&"208 V".to_owned()));
    assert!(as_text(&field.screen()).contains("usual voltages"));
    // The earthing that is picked is drawn.
    let signs_of = |field: &stillbar_core::Field| {
        let of = systems(field).into_iter().find(|o| o.value == "three-phase-neutral").unwrap();
        signs(of.drawing.as_ref().unwrap()).len()
    };
    assert_eq!(signs_of(&field), 1);
    device.play(&field, "choose Earthing arrangement = TT\ntap Open this job");
    assert_eq!(signs_of(&field), 2);
}
