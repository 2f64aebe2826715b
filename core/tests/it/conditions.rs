//! What a plan demands, one thing at a time: taken away alone from a whole proof, it leaves "incomplete", said first. And the figures.

use serde_json::{Value, json};
use stillbar_core::prove::conditions::{Unmet, unmet};
use stillbar_core::prove::judge::neutral::{Oddity, unexpected};
use stillbar_core::prove::judge::{Cause, Judgement, Reason, Verdict, judge};
use stillbar_core::prove::limit::{Bound, LimitSource, Limits, bound, lights_in_time};
use stillbar_core::prove::{Case, Given, GivenValue, Holder, Impedance, parse_volts};
use stillbar_core::text;

/// All pairs of these conductors without an indication, all proofs, TN-S.
fn whole(names: &[&str], more: Value) -> Value {
    let mut readings = Vec::new();
    for (i, a) in names.iter().enumerate() {
        readings.extend(names[i + 1..].iter().map(|b| json!({ "pair": [a, b], "level": "none" })));
    }
    let conductors: Vec<Value> = names.iter().map(|n| json!({ "name": n })).collect();
    let mut file = json!({
        "conductors": conductors,
        "earthing": "TN-S",
        "readings": readings,
        "proved_before": true,
        "proved_after": true,
        "reference_proved": "continuity",
    });
    for (key, value) in more.as_object().unwrap() {
        file[key] = value.clone();
    }
    file
}

const FIVE: [&str; 5] = ["L1", "L2", "L3", "N", "PE"];

fn read(file: &Value) -> Result<Case, String> {
    Case::from_json(&file.to_string()).map_err(|e| text::case(&e))
}

fn judged(file: &Value) -> Judgement {
    judge(&read(file).unwrap_or_else(|e| panic!("{e}: {file}")))
}

/// The one thing that is missing, and that the verdict says so first.
fn lacks(file: &Value) -> Unmet {
    let case = read(file).unwrap_or_else(|e| panic!("{e}: {file}"));
    let [missing] = &unmet(&case)[..] else { panic!("{:?}: {file}", unmet(&case)) };
    let said = judge(&case);
    assert_eq!((said.verdict, said.why), (Verdict::Incomplete, vec![Reason::Unmet(missing.clone())]), "{file}");
    missing.clone()
}

fn proved(file: &Value) {
    let said = judged(file);
    assert_eq!(said.verdict, Verdict::ProvedDead, "{:?}: {file}", said.why);
}

/// A board at 110 V whose lamps begin at 120 V shows nothing on any pair while all of it is live.
#[test]
fn lamps_that_begin_too_late_prove_nothing() {
    let late = |begins: f64, volts: f64| {
        let lamps = json!({ "levels_volts": [begins, 690] });
        whole(&FIVE, json!({ "nominal_volts": { "line_neutral": volts }, "indicator": lamps }))
    };
    let found = lacks(&late(120.0, 110.0));
    assert_eq!(found, Unmet::LightsLate { dc: false, lowest_mv: 120_000, bound_mv: 50_000, said: true });
    // 50 V begins in time at 110 V, and not at 63 V, of which half is 31.5 V.
    proved(&late(50.0, 110.0));
    assert!(matches!(lacks(&late(50.0, 63.0)), Unmet::LightsLate { bound_mv: 31_500, .. }));
    proved(&late(31.5, 63.0));
    // Figures begin at nothing, whatever the lamps do.
    let mut figures = late(120.0, 110.0);
    for reading in figures["readings"].as_array_mut().unwrap() {
        *reading = json!({ "pair": reading["pair"], "volts": 0 });
    }
    proved(&figures);
}

/// A drive asks for direct voltage on every pair, and one pair of ten is not every pair.
#[test]
fn direct_voltage_is_asked_for_on_every_pair() {
    let charge = json!([{ "what": "drive U1", "level": "none" }]);
    let mut file = whole(&FIVE, json!({ "equipment": ["drive"], "stored_energy": charge }));
    let pairs: Vec<Value> = file["readings"].as_array().unwrap().iter().map(|r| r["pair"].clone()).collect();
    let mut missing = pairs.len();
    for pair in &pairs {
        let case = read(&file).unwrap();
        let not_read = unmet(&case).into_iter().filter(|u| matches!(u, Unmet::PairNotRead { dc: true, .. })).count();
        assert_eq!((not_read, judge(&case).verdict), (missing, Verdict::Incomplete));
        file["readings"].as_array_mut().unwrap().push(json!({ "pair": pair, "level": "none", "dc": true }));
        missing -= 1;
    }
    proved(&file);
    // Where the lamps begin for direct voltage is not said: 120 V at the latest (EN 61243-3), which is too late for 48 V.
    file["nominal_volts"] = json!({ "dc": 48 });
    assert!(matches!(lacks(&file), Unmet::LightsLate { dc: true, lowest_mv: 120_000, bound_mv: 12_000, said: false }));
    file["indicator"] = json!({ "dc_levels_volts": [12, 50] });
    proved(&file);
    // One that is known to show no direct voltage has no step for it.
    let mut case = read(&file).unwrap();
    case.indicator.dc_levels_mv = Some(Vec::new());
    assert!(matches!(unmet(&case)[..], [Unmet::LightsLate { dc: true, said: true, .. }]));
    assert!(text::reasons(&judge(&case).why)[0].starts_with("The indicator does not show DC; here it has to by 12 V."));
    // A pole to earth is read both ways, a pole to the other only in the DC range.
    let poles = json!([
        { "pair": ["L+", "L-"], "volts": 0, "dc": true },
        { "pair": ["L+", "PE"], "volts": 0, "dc": true },
        { "pair": ["L-", "PE"], "volts": 0, "dc": true },
        { "pair": ["L+", "PE"], "volts": 0 },
    ]);
    let found = lacks(&whole(&["L+", "L-", "PE"], json!({ "readings": poles })));
    assert_eq!(found, Unmet::PairNotRead { pair: ["L-".into(), "PE".into()], dc: false });
}

/// One open pole of three does not open a board; the neutral is opened where it is not reliably at earth; a PEN never.
#[test]
fn what_the_points_leave_closed_is_told() {
    let of = |earthing: &str, poles: &[&str]| whole(&FIVE, json!({ "earthing": earthing, "poles_opened": poles }));
    let case = read(&of("TN-S", &["L2"])).unwrap();
    assert_eq!(unmet(&case), [Unmet::LineClosed("L1".into()), Unmet::LineClosed("L3".into())]);
    assert_eq!(judge(&case).verdict, Verdict::Incomplete);
    assert_eq!(unmet(&read(&of("TN-S", &[])).unwrap()).len(), 3);
    let lines = ["L1", "L2", "L3"];
    for (earthing, asked) in [("TN-S", false), ("TN-C-S", false), ("TT", true), ("IT", true), ("unknown", true)] {
        match asked {
            true => assert!(matches!(lacks(&of(earthing, &lines)), Unmet::NeutralClosed { .. }), "{earthing}"),
            false => proved(&of(earthing, &lines)),
        }
        proved(&of(earthing, &["L1", "L2", "L3", "N"]));
    }
    let pen = ["L1", "L2", "L3", "PEN"];
    proved(&whole(&pen, json!({ "earthing": "TN-C", "poles_opened": lines })));
    proved(&whole(&pen, json!({ "earthing": "unknown", "poles_opened": lines })));
    // Not said is not closed: the file does not know the points.
    proved(&whole(&FIVE, json!({})));
    // A control circuit is fed as well.
    let mut control = whole(&["L", "N", "PE", "K1"], json!({}));
    control["conductors"][3]["role"] = json!("control");
    control["poles_opened"] = json!(["L"]);
    assert_eq!(lacks(&control), Unmet::LineClosed("K1".into()));
}

#[test]
fn earth_has_to_be_proved_and_not_by_any_live_line() {
    for (proof, earthing, stands) in [
        ("known-line", "TN-S", true),
        ("known-line", "TT", true),
        ("known-line", "IT", false),
        ("known-line", "unknown", false),
        ("second-earth", "IT", true),
        ("continuity", "unknown", true),
    ] {
        let file = whole(&FIVE, json!({ "reference_proved": proof, "earthing": earthing }));
        match stands {
            true => proved(&file),
            false => assert!(matches!(lacks(&file), Unmet::KnownLine { .. })),
        }
    }
    assert_eq!(lacks(&whole(&FIVE, json!({ "reference_proved": "no" }))), Unmet::EarthNotProved);
    let mut unsaid = whole(&FIVE, json!({}));
    unsaid.as_object_mut().unwrap().remove("reference_proved");
    assert_eq!(lacks(&unsaid), Unmet::EarthNotProved);
    assert_eq!(lacks(&whole(&FIVE[..4], json!({}))), Unmet::NoEarth);
    assert_eq!(lacks(&whole(&FIVE, json!({ "proved_after": null })).take_out("proved_after")), Unmet::IndicatorAfter);
    assert_eq!(
        lacks(&whole(&FIVE, json!({ "proved_before": null })).take_out("proved_before")),
        Unmet::IndicatorBefore
    );
}

trait TakeOut {
    fn take_out(self, field: &str) -> Value;
}

impl TakeOut for Value {
    fn take_out(mut self, field: &str) -> Value {
        self.as_object_mut().unwrap().remove(field);
        self
    }
}

/// The label's time is waited, and the charge is read, each by itself.
#[test]
fn stored_energy_is_waited_for_and_read() {
    let names = ["L1", "PE", "L+", "L-"];
    let of = |stored: Value| {
        let mut file = whole(&names, json!({ "stored_energy": [stored], "poles_opened": ["L1"] }));
        let both = |r: &Value| [r.clone(), json!({ "pair": r["pair"], "level": "none", "dc": true })];
        file["readings"] = file["readings"].as_array().unwrap().iter().flat_map(both).collect();
        file
    };
    // The link's terminals have no point that opens them: waiting and reading show them dead.
    let whole = json!({ "what": "drive U1", "label_seconds": 300, "waited_seconds": 300, "read_at": ["L+", "L-"] });
    proved(&of(whole.clone()));
    let waited = |seconds: Value| {
        let mut stored = whole.clone();
        stored["waited_seconds"] = seconds;
        of(stored)
    };
    let what = Holder::Named("drive U1".into());
    let not_waited = |waited_seconds| Unmet::NotWaited { what: what.clone(), label_seconds: 300, waited_seconds };
    assert_eq!(lacks(&waited(json!(299))), not_waited(Some(299)));
    let unsaid = of(whole.clone().take_out("waited_seconds"));
    assert_eq!(lacks(&unsaid), not_waited(None));
    // Read at its own terminals, which are not in the list; then the poles in the list belong to something else, and are closed.
    let own = json!({ "what": "drive U1", "volts": 0 });
    assert_eq!(unmet(&read(&of(own)).unwrap()), [Unmet::LineClosed("L+".into()), Unmet::LineClosed("L-".into())]);
    let mut own = of(json!({ "what": "drive U1" }));
    own["poles_opened"] = json!(["L1", "L+", "L-"]);
    assert_eq!(lacks(&own), Unmet::ChargeNotRead { what: what.clone(), at: None });
    own["stored_energy"][0]["volts"] = json!(0.0004);
    let said = judged(&own);
    assert_eq!((said.verdict, &*text::reasons(&said.why)[0]), (Verdict::TreatAsLive, "drive U1 read 0.001 V DC."));
    own["stored_energy"][0]["volts"] = json!(0);
    proved(&own);
    // Behind modules or a battery a pole is fed, and has to be opened.
    let mut fed = of(whole);
    fed["equipment"] = json!(["pv"]);
    assert_eq!(unmet(&read(&fed).unwrap()).len(), 2);
    // Equipment that nobody listed as stored energy was not read either.
    let mut unlisted = own.clone().take_out("stored_energy");
    unlisted["equipment"] = json!(["drive"]);
    assert_eq!(lacks(&unlisted), Unmet::ChargeNotRead { what: Holder::Drive, at: None });
}

/// An indication is said before what is missing, a failed indicator before both.
#[test]
fn the_order_of_verdicts() {
    let mut file = whole(&FIVE, json!({ "reference_proved": "no" }));
    file["readings"][0] = json!({ "pair": ["L1", "L2"], "level": 230 });
    assert_eq!(judged(&file).verdict, Verdict::TreatAsLive);
    file["proved_after"] = json!(false);
    assert_eq!(judged(&file).verdict, Verdict::Void);
}

/// AC and DC have a limit each, and each has a bound that the error names.
#[test]
fn limits_are_apart_and_bounded() {
    let of = |more: Value| read(&whole(&FIVE, more)).map(|case| case.limits());
    assert_eq!(
        of(json!({ "dead_limit_volts": 3, "dead_limit_dc_volts": 7 })),
        Ok(Limits { ac_mv: 3_000, dc_mv: 7_000 })
    );
    for (more, says) in [
        (json!({ "dead_limit_volts": 50 }), "below 50 V AC here"),
        (json!({ "dead_limit_dc_volts": 120 }), "below 120 V DC here"),
        (json!({ "dead_limit_volts": 24, "nominal_volts": { "line_neutral": 48 } }), "below 24 V AC here"),
        (
            json!({ "dead_limit_volts": 12, "nominal_volts": { "control": 24, "line_neutral": 230 } }),
            "below 12 V AC here",
        ),
        (json!({ "dead_limit_dc_volts": 12, "nominal_volts": { "control": 24 } }), "below 12 V DC here"),
        (json!({ "dead_limit_dc_volts": 12, "nominal_volts": { "dc": 48 } }), "below 12 V DC here"),
    ] {
        let said = of(more.clone()).unwrap_err();
        assert!(said.contains(says), "{said}");
    }
    assert!(of(json!({ "dead_limit_volts": 49.9996 })).is_ok());
    // The figure of one kind is not held against the limit of the other.
    for (dc, limit, verdict) in [
        (false, "dead_limit_volts", Verdict::ProvedDead),
        (false, "dead_limit_dc_volts", Verdict::TreatAsLive),
        (true, "dead_limit_dc_volts", Verdict::ProvedDead),
        (true, "dead_limit_volts", Verdict::TreatAsLive),
    ] {
        let mut file = whole(&FIVE, json!({}));
        file[limit] = json!(5);
        file["readings"].as_array_mut().unwrap().push(json!({ "pair": ["L1", "PE"], "volts": 5, "dc": dc }));
        assert_eq!(judged(&file).verdict, verdict, "{limit}, dc {dc}");
    }
    // A case that did not come from a file is held to the bound too.
    let mut case = read(&whole(&FIVE, json!({}))).unwrap();
    case.dead_limit_mv = 50_000;
    assert!(matches!(unmet(&case)[..], [Unmet::LimitTooHigh(_)]));
}

#[test]
fn the_bound_follows_from_the_lowest_source() {
    let of = |sources: &[LimitSource]| bound(sources.iter().copied());
    for (sources, ac_mv, dc_mv) in [
        (&[][..], 50_000, 120_000),
        (&[LimitSource::LineNeutral(230_000)], 50_000, 120_000),
        // 240 V delta: 138.56 V to earth on IT and with a star point; 127/220 V; 48 V; 24 V control beside 400 V.
        (&[LimitSource::LineLine(240_000)], 50_000, 120_000),
        (&[LimitSource::LineLine(110_000)], 31_754, 120_000),
        (&[LimitSource::TwoLines(110_000)], 27_500, 120_000),
        (&[LimitSource::LineNeutral(48_000)], 24_000, 120_000),
        (&[LimitSource::LineNeutral(230_000), LimitSource::Control(24_000)], 12_000, 12_000),
        (&[LimitSource::Poles(48_000)], 50_000, 12_000),
        (&[LimitSource::Poles(565_000)], 50_000, 120_000),
        (&[LimitSource::LineNeutral(0), LimitSource::Poles(0), LimitSource::Control(0)], 50_000, 120_000),
    ] {
        assert_eq!(of(sources), Bound { ac_mv, dc_mv }, "{sources:?}");
    }
    let board = of(&[LimitSource::LineNeutral(230_000)]);
    assert!(lights_in_time(50_000, 120_000, board));
    assert!(!lights_in_time(50_001, 120_000, board) && !lights_in_time(50_000, 120_001, board));
}

/// "A reading is never rounded to dead": what is finer than a millivolt is one millivolt, in files and as it is typed.
#[test]
fn no_reading_is_rounded_to_dead() {
    let with = |volts: Value, limit: f64| {
        let mut file = whole(&FIVE, json!({ "dead_limit_volts": limit }));
        file["readings"][0] = json!({ "pair": ["L1", "L2"], "volts": volts });
        judged(&file).verdict
    };
    for (volts, limit, verdict) in [
        (json!(0.0), 0.0, Verdict::ProvedDead),
        (json!(0.0004), 0.0, Verdict::TreatAsLive),
        (json!(1e-12), 0.0, Verdict::TreatAsLive),
        (json!(0.07), 0.07, Verdict::ProvedDead),
        (json!(0.0701), 0.07, Verdict::TreatAsLive),
        (json!(49.9996), 49.9995, Verdict::TreatAsLive),
        (json!(49.999), 49.999, Verdict::ProvedDead),
        (json!(49.9990001), 49.999, Verdict::TreatAsLive),
    ] {
        assert_eq!(with(volts.clone(), limit), verdict, "{volts} under {limit}");
    }
    // A lamp that is lit is an indication at any step; a step's end is not taken for the voltage.
    for level in [json!("lit"), json!(12), json!(24)] {
        let mut file = whole(&FIVE, json!({ "dead_limit_volts": 49 }));
        file["readings"][0] = json!({ "pair": ["L1", "L2"], "level": level });
        assert_eq!(judged(&file).verdict, Verdict::TreatAsLive);
    }
    // No reading is refused for its height, and one that cannot be saved says so.
    assert_eq!(with(json!(20_000), 0.0), Verdict::TreatAsLive);
    let mut file = whole(&FIVE, json!({}));
    file["readings"][0] = json!({ "pair": ["L1", "L2"], "volts": 1e12 });
    assert!(read(&file).unwrap_err().contains("more than 4294967 V, the most that can be saved"));
    let of = |value| Given { pair: ["A".into(), "B".into()], value, impedance: Impedance::Unknown, dc: false };
    assert!(read(&whole(&FIVE, json!({}))).unwrap().indicates(&of(GivenValue::Volts(1))));
}

#[test]
fn volts_as_people_type_them() {
    for (text, mv) in [
        ("231", 231_000),
        ("0.4", 400),
        ("0,4 V", 400),
        ("230.25", 230_250),
        ("0", 0),
        ("0,0", 0),
        ("0.0000", 0),
        ("0.0004", 1),
        ("49.9996", 50_000),
        ("49,99900", 49_999),
        ("12.3450", 12_345),
        ("12.34501", 12_346),
        ("0.00000000000000000000001", 1),
        ("2001", 2_001_000),
        ("20000", 20_000_000),
        ("000231", 231_000),
        ("4294967", 4_294_967_000),
        ("1234,5", 1_234_500),
    ] {
        assert_eq!(parse_volts(text), Ok(mv), "{text}");
    }
    for (text, says) in [
        ("1,000", "\"1,000\": 1 V, or 1000 V? Write 1 or 1000"),
        ("1.000", "\"1.000\": 1 V, or 1000 V? Write 1 or 1000"),
        ("1.000 V", "\"1.000 V\": 1 V, or 1000 V? Write 1 or 1000"),
        ("12.345", "\"12.345\": 12.345 V, or 12345 V? Write 12.3450 or 12345"),
        ("0.400", "\"0.400\": 0.4 V, or 400 V? Write 0.4 or 400"),
        ("0,000", "\"0,000\": write 0, without three digits after the mark"),
        ("1.000,5", "\"1.000,5\": write one mark for the decimals and nothing between thousands, such as 1000.5"),
        ("1,000,000", "write one mark for the decimals"),
        ("1 000", "write one mark for the decimals"),
        ("1'000.5", "write one mark for the decimals"),
        ("4294968", "\"4294968\" is more than 4294967 V"),
        ("4294967.2959", "more than 4294967 V"),
        ("99999999999999999999", "more than 4294967 V"),
        ("", "is not a voltage"),
        ("-1", "is not a voltage"),
        ("1e3", "is not a voltage"),
        ("..", "is not a voltage"),
        ("1..", "is not a voltage"),
        (".5", "is not a voltage"),
        ("0x1", "is not a voltage"),
        ("٣", "is not a voltage"),
        ("400 mV", "is not a voltage"),
    ] {
        let said = parse_volts(text).unwrap_err().to_string();
        assert!(said.contains(says), "{text}: {said}");
    }
}

/// A neutral that stays connected and shows no continuity to earth is remarked, and nothing is dead or live by it.
#[test]
fn a_neutral_that_is_not_joined_to_earth_is_remarked() {
    let lines = json!(["L1", "L2", "L3"]);
    let mut file = whole(&FIVE, json!({ "poles_opened": lines, "earthing": "TN-C-S" }));
    let odd = |file: &Value| unexpected(&read(file).unwrap()).into_iter().map(|u| u.what).collect::<Vec<_>>();
    assert_eq!(odd(&file), [Oddity::NoContinuity]);
    let said = judged(&file);
    assert_eq!((said.verdict, said.diagnoses[0].cause), (Verdict::ProvedDead, Cause::NeutralEarth));
    // An indicator that showed continuity elsewhere would have shown it here.
    file["readings"][0] = json!({ "pair": ["L1", "L2"], "level": "continuity" });
    assert_eq!(odd(&file), [Oddity::NotJoined]);
    file["readings"][9] = json!({ "pair": ["N", "PE"], "level": "continuity" });
    assert_eq!(odd(&file), []);
}
