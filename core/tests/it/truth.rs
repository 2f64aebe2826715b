//! The judge against what is true at the terminals: boards whose conductors have potentials, read pair by pair with lamps or in figures.
//!
//! What has to come out is written here from what a proof is, with this file's own arithmetic: which voltage is too much, and what must
//! not be missing. It reads nothing of the judge but its verdict.

use proptest::prelude::*;
use serde_json::{Value, json};
use stillbar_core::prove::Case;
use stillbar_core::prove::judge::{Verdict, judge};

/// A conductor and its voltage to earth while nothing is isolated: two parts alternating, one direct.
type Live = (&'static str, &'static str, [f64; 3]);

/// A board, fed.
#[derive(Debug, Clone)]
struct Board {
    conductors: Vec<Live>,
    nominal: Value,
    /// A control circuit may be alternating or direct: its voltage counts for both.
    control: bool,
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum Truth {
    Dead,
    /// One pole stayed closed.
    OneClosed(usize),
    /// Every pole stayed closed.
    Fed,
    /// One conductor is off earth by this share of the voltage that is too much, and a hair more.
    Raised(usize, f64, bool),
    /// The protective conductor is broken, and everything stands at the voltage of the first conductor with it.
    Afloat,
}

/// What is taken away from a whole proof.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Missing {
    Nothing,
    Before,
    After,
    Earth,
    EarthUnsaid,
    /// A known live line where none need be tied to earth.
    KnownLine,
    Pair(usize),
    DirectPair(usize),
    Pole(usize),
    Neutral,
    Wait,
    Charge,
}

#[derive(Debug, Clone)]
struct Scene {
    board: Board,
    truth: Truth,
    missing: Missing,
    /// Where lamps begin, alternating and direct; none: a meter.
    lamps: Option<[f64; 2]>,
    limits: [f64; 2],
    earthing: &'static str,
    drive: bool,
}

fn board(kind: usize, volts: f64) -> Board {
    let star = |size: f64, k: f64| {
        let angle = -2.0 * std::f64::consts::FRAC_PI_3 * k;
        [size * angle.cos(), size * angle.sin(), 0.0]
    };
    let (earth, neutral) = (("PE", "protective", [0.0; 3]), ("N", "neutral", [0.0; 3]));
    let lines =
        |size: f64| [("L1", "line", star(size, 0.0)), ("L2", "line", star(size, 1.0)), ("L3", "line", star(size, 2.0))];
    let (conductors, nominal) = match kind {
        0 => (vec![("L", "line", [volts, 0.0, 0.0]), neutral, earth], json!({ "line_neutral": volts })),
        1 => ([&lines(volts)[..], &[neutral, earth]].concat(), json!({ "line_neutral": volts })),
        2 => ([&lines(volts / 3f64.sqrt())[..], &[earth]].concat(), json!({ "line_line": volts })),
        3 => {
            let half = [("L1", "line", [volts / 2.0, 0.0, 0.0]), ("L2", "line", [-volts / 2.0, 0.0, 0.0]), earth];
            (half.to_vec(), json!({ "line_line": volts }))
        }
        4 => {
            let half =
                [("L+", "dc-plus", [0.0, 0.0, volts / 2.0]), ("L-", "dc-minus", [0.0, 0.0, -volts / 2.0]), earth];
            (half.to_vec(), json!({ "dc": volts }))
        }
        _ => {
            let control = ("K1", "control", [24.0, 0.0, 0.0]);
            (
                vec![("L", "line", [volts, 0.0, 0.0]), control, neutral, earth],
                json!({ "line_neutral": volts, "control": 24 }),
            )
        }
    };
    Board { conductors, nominal, control: kind == 5 }
}

fn size([x, y, direct]: [f64; 3], dc: bool) -> f64 {
    if dc { direct.abs() } else { x.hypot(y) }
}

impl Board {
    /// The voltage that is too much: 50 V AC or 120 V DC, or half of the lowest that a source puts on a conductor.
    fn too_much(&self, dc: bool) -> f64 {
        let own = self.conductors.iter().map(|c| size(c.2, dc));
        let control = self.control.then_some(24.0);
        let lowest = own.chain(control).filter(|v| *v > 1e-9).fold(f64::INFINITY, f64::min);
        f64::min(if dc { 120.0 } else { 50.0 }, lowest / 2.0)
    }

    fn fed(&self) -> Vec<usize> {
        (0..self.conductors.len()).filter(|k| self.conductors[*k].2 != [0.0; 3]).collect()
    }
}

impl Scene {
    /// Each conductor's voltage to true earth.
    fn potentials(&self) -> Vec<[f64; 3]> {
        let live: Vec<[f64; 3]> = self.board.conductors.iter().map(|c| c.2).collect();
        let mut now = vec![[0.0; 3]; live.len()];
        match self.truth {
            Truth::Dead => {}
            Truth::OneClosed(k) => {
                let fed = self.board.fed();
                let k = fed[k % fed.len()];
                now[k] = live[k];
            }
            Truth::Fed => now = live,
            Truth::Raised(k, share, dc) => {
                let volts = share * self.board.too_much(dc) + 0.0004;
                let k = k % (now.len() - 1);
                now[k] = if dc { [0.0, 0.0, volts] } else { [volts, 0.0, 0.0] };
            }
            Truth::Afloat => now.fill(live[0]),
        }
        now
    }

    /// Whether the pairs are read in the DC range as well: a drive, or a pole in the pair.
    fn direct(&self, a: &str, b: &str) -> bool {
        self.drive || a.starts_with("dc-") || b.starts_with("dc-")
    }

    fn reading(&self, volts: f64, dc: bool) -> (String, Value) {
        match self.lamps {
            None => ("volts".into(), json!((volts * 1e4).round() / 1e4)),
            Some(first) => {
                let lit = steps(first[usize::from(dc)]).into_iter().rfind(|s| volts >= *s);
                ("level".into(), lit.map_or(json!("none"), |s| json!(s)))
            }
        }
    }

    /// Whether the poles that are said leave a neutral closed that this earthing does not keep at earth.
    fn neutral_matters(&self) -> bool {
        let there = self.board.conductors.iter().any(|c| c.1 == "neutral");
        there && !self.earthing.starts_with("TN")
    }

    /// Whether what is to be taken away is there at all.
    fn applies(&self) -> bool {
        let kinds: Vec<&str> = self.board.conductors.iter().map(|c| c.1).collect();
        match self.missing {
            Missing::DirectPair(_) => self.drive || kinds.contains(&"dc-plus"),
            Missing::Neutral => self.neutral_matters(),
            Missing::Wait | Missing::Charge => self.drive,
            Missing::KnownLine => matches!(self.earthing, "IT" | "unknown"),
            _ => true,
        }
    }

    /// The file that a person would write, and whether any figure in it is above its limit.
    fn file(&self) -> (Value, bool) {
        let now = self.potentials();
        let all = &self.board.conductors;
        let mut alternating = Vec::new();
        let mut direct = Vec::new();
        for (i, a) in all.iter().enumerate() {
            for (j, b) in all.iter().enumerate().skip(i + 1) {
                let apart: [f64; 3] = std::array::from_fn(|p| now[i][p] - now[j][p]);
                let one = |dc: bool| {
                    let (key, value) = self.reading(size(apart, dc), dc);
                    json!({ "pair": [a.0, b.0], key: value, "dc": dc })
                };
                if !(a.1.starts_with("dc-") && b.1.starts_with("dc-")) {
                    alternating.push(one(false));
                }
                if self.direct(a.1, b.1) {
                    direct.push(one(true));
                }
            }
        }
        match self.missing {
            Missing::Pair(k) => drop(alternating.remove(k % alternating.len())),
            Missing::DirectPair(k) => drop(direct.remove(k % direct.len())),
            _ => {}
        }
        let readings: Vec<Value> = alternating.into_iter().chain(direct).collect();
        let above = readings
            .iter()
            .any(|r| r["volts"].as_f64().is_some_and(|v| v > self.limits[usize::from(r["dc"] == json!(true))]));

        let mut poles: Vec<&str> = self.board.fed().into_iter().map(|k| all[k].0).collect();
        if self.neutral_matters() && self.missing != Missing::Neutral {
            poles.push("N");
        }
        if let Missing::Pole(k) = self.missing {
            poles.remove(k % self.board.fed().len());
        }
        let conductors: Vec<Value> = all.iter().map(|c| json!({ "name": c.0, "role": c.1 })).collect();
        let mut file = json!({
            "conductors": conductors,
            "nominal_volts": self.board.nominal,
            "earthing": self.earthing,
            "poles_opened": poles,
            "dead_limit_volts": self.limits[0],
            "dead_limit_dc_volts": self.limits[1],
            "readings": readings,
            "proved_before": true,
            "proved_after": true,
            "reference_proved": "continuity",
        });
        if let Some([ac, dc]) = self.lamps {
            file["indicator"] = json!({ "levels_volts": steps(ac), "dc_levels_volts": steps(dc) });
        }
        if self.drive {
            file["equipment"] = json!(["drive"]);
            file["stored_energy"] =
                json!([{ "what": "drive U1", "label_seconds": 300, "waited_seconds": 300, "volts": 0 }]);
        }
        let fields = file.as_object_mut().unwrap();
        match self.missing {
            Missing::Before => drop(fields.remove("proved_before")),
            Missing::After => drop(fields.remove("proved_after")),
            Missing::EarthUnsaid => drop(fields.remove("reference_proved")),
            Missing::Earth => drop(fields.insert("reference_proved".into(), json!("no"))),
            Missing::KnownLine => drop(fields.insert("reference_proved".into(), json!("known-line"))),
            Missing::Wait => drop(file["stored_energy"][0].as_object_mut().unwrap().remove("waited_seconds")),
            Missing::Charge => drop(file["stored_energy"][0].as_object_mut().unwrap().remove("volts")),
            _ => {}
        }
        // With the protective conductor adrift nobody can have shown that it is earth.
        if self.truth == Truth::Afloat && file["reference_proved"] == json!("continuity") {
            file["reference_proved"] = json!("no");
        }
        (file, above)
    }
}

/// The steps of lamps that begin at `first`.
fn steps(first: f64) -> Vec<f64> {
    [1.0, 2.0, 4.0, 10.0].map(|times| first * times).to_vec()
}

fn scene() -> impl Strategy<Value = Scene> {
    let boards = (0usize..6, prop::sample::select(vec![24.0, 48.0, 63.0, 110.0, 127.0, 230.0, 400.0, 500.0]));
    let truth = prop_oneof![
        12 => Just(Truth::Dead),
        2 => (0usize..4).prop_map(Truth::OneClosed),
        1 => Just(Truth::Fed),
        5 => (0usize..5, prop::sample::select(vec![0.0, 0.05, 0.3, 0.9, 1.0, 1.5]), any::<bool>()).prop_map(|(k, s, dc)| Truth::Raised(k, s, dc)),
        1 => Just(Truth::Afloat),
    ];
    let one = (0usize..20).prop_flat_map(|k| {
        prop::sample::select(vec![
            Missing::Before,
            Missing::After,
            Missing::Earth,
            Missing::EarthUnsaid,
            Missing::KnownLine,
            Missing::Pair(k),
            Missing::DirectPair(k),
            Missing::Pole(k),
            Missing::Neutral,
            Missing::Wait,
            Missing::Charge,
        ])
    });
    let missing = prop_oneof![2 => Just(Missing::Nothing), 2 => one];
    let begins = prop::sample::select(vec![3.0, 6.0, 12.0, 24.0, 50.0, 120.0, 230.0]);
    let lamps = prop_oneof![1 => Just(None), 2 => [begins.clone(), begins].prop_map(Some)];
    let limit = || {
        prop_oneof![
            3 => Just(0.0),
            3 => prop::sample::select(vec![0.5, 5.0]),
            1 => prop::sample::select(vec![12.0, 27.5, 49.9996, 50.0, 119.9, 120.0]),
        ]
    };
    let earthing = prop::sample::select(vec!["TN-S", "TN-C-S", "TT", "IT", "unknown"]);
    (boards, truth, missing, lamps, [limit(), limit()], earthing, any::<bool>()).prop_map(
        |((kind, volts), truth, missing, lamps, limits, earthing, drive)| Scene {
            board: board(kind, volts),
            truth,
            missing,
            lamps,
            limits,
            earthing,
            drive,
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1500, failure_persistence: None, ..ProptestConfig::default() })]

    /// Never "proved dead" where a conductor is off earth by too much, or anything is missing; always where all is right.
    #[test]
    fn proved_dead_is_true(scene in scene().prop_filter("nothing to take away", Scene::applies)) {
        let (file, above) = scene.file();
        let said = Case::from_json(&file.to_string());
        let too_high = [false, true].into_iter().any(|dc| {
            let limit = scene.limits[usize::from(dc)];
            limit > 0.0 && limit >= scene.board.too_much(dc)
        });
        prop_assert_eq!(said.is_err(), too_high, "{:?}: {}", said.err(), file);
        let Ok(case) = said else { return Ok(()) };
        let verdict = judge(&case).verdict;

        let direct = scene.drive || scene.board.conductors.iter().any(|c| c.1 == "dc-plus");
        let late = scene.lamps.is_some_and(|first| {
            [false, true].into_iter().any(|dc| (!dc || direct) && first[usize::from(dc)] > scene.board.too_much(dc))
        });
        let live = [false, true].into_iter().any(|dc| {
            // Direct voltage that nobody has a reason to look for is beyond any plan.
            (!dc || direct) && scene.potentials().into_iter().any(|p| size(p, dc) >= scene.board.too_much(dc))
        });
        let lacks = scene.missing != Missing::Nothing || scene.truth == Truth::Afloat;
        if live || above || late || lacks {
            prop_assert_ne!(verdict, Verdict::ProvedDead, "live {} above {} late {} lacks {}: {}", live, above, late, lacks, file);
        } else if scene.truth == Truth::Dead {
            prop_assert_eq!(verdict, Verdict::ProvedDead, "{:?}: {}", judge(&case).why, file);
        }
    }
}
