//! A set of one's own with a string of modules that stays live by day: named, screened, in no pair, and told wherever the proof is. It is
//! back in the pairs as soon as a point opens anything of it.

use std::collections::BTreeSet;

use stillbar_core::journal::Fact;
use stillbar_core::point::PointKind;
use stillbar_core::prove::{EarthWay, System, plan_case};
use stillbar_core::screens::as_text;
use stillbar_core::text::terminals;

use super::story::*;
use crate::desk::*;
use crate::forgotten::Phone;

const LIST: &str = "L1[brown], L2, L3[old grey], N, PE, S+=dc-plus@String A, S-=dc-minus@String A";
const BOARD: [&str; 5] = ["L1", "L2", "L3", "N", "PE"];
const ALL: [&str; 7] = ["L1", "L2", "L3", "N", "PE", "S+", "S-"];
const NAMED: &str = "choose Which of your conductors it is = S+\nchoose Which of your conductors it is = S-\nfill What stays live = String A\n\
                     fill Where it is = Left of the DC isolator, behind cover 3\nfill How it is screened, and who looked = Cover 3 stays on, \
                     seen by Mara and Tomas\ntap This stays live\n";
const STILL_LIVE: &str = "STILL LIVE: String A";

/// The plan of the demo, of this set. 600 V is the highest between any two: the string by day, open circuit.
fn plan() -> String {
    let system = "choose Conductors at the point of work = ";
    let plan = changed(
        until(PLAN, "tap Next: Indicator and proving unit"),
        &format!("{system}Three phase with neutral: L1, L2, L3, N, PE"),
        &format!("{system}Your own set of conductors"),
    );
    let plan = changed(&plan, "Nominal voltage in volts = 230", "Nominal voltage in volts = 600");
    // What is listed is asked once such a set is picked.
    let open = "tap Open this job\n";
    changed(&plan, open, &format!("{open}fill Your conductors, with commas = {LIST}\n{open}"))
}

fn circuits() -> &'static str {
    from(PLAN, "tap Next: Indicator and proving unit")
}

/// Up to the reference, with the string named among the points.
fn opened_up() -> Phone {
    let phone = Phone::begun(&[PEOPLE, &plan(), NAMED, circuits(), ISOLATE]);
    phone.play(until(PROVE, "choose How it was shown"));
    phone
}

fn pairs_of(phone: &Phone) -> BTreeSet<BTreeSet<String>> {
    folded(phone).plan().into_iter().map(|t| BTreeSet::from([t.first, t.then])).collect()
}

fn has(phone: &Phone, conductor: &str) -> bool {
    pairs_of(phone).iter().any(|pair| pair.contains(conductor))
}

/// The whole story: the string is in no pair and on every sheet, and what is read with the supply back is recorded, not judged.
#[test]
fn a_string_that_stays_live() {
    let phone = opened_up();
    // Nobody knows what a line of such a set shows to earth: a known live line shows nothing about it.
    phone.play("unseen PE to a line that is known to be live");
    assert!(!plan_case(&folded(&phone).case()).reference.ways.contains(&EarthWay::KnownLine));
    // Colours are for the eye: what was noted stands beside the name, where the probe goes.
    let (job, plan) = (folded(&phone), folded(&phone).plan());
    let (_, label) = terminals(&job.conductors(), &plan.iter().take(2).collect::<Vec<_>>());
    assert!(label.contains("L1 (brown), L2, L3 (old grey)"), "{label}");
    reference_and_pairs(&phone, &BOARD);
    assert!(phone.proved());
    let says = banner(&phone);
    for part in
        ["Proved dead: L1, L2, L3, N, PE", STILL_LIVE, "Left of the DC isolator, behind cover 3", "Cover 3 stays on"]
    {
        assert!(says.contains(part), "{part}: {says}");
    }
    assert!(page_one(&phone).contains(STILL_LIVE), "{}", page_one(&phone));
    phone.at_job();
    phone.play(&format!("tap Next: Work\nsee {STILL_LIVE}\n{}", until(WORK, "wait 40")));
    phone.play(&format!("see {STILL_LIVE}\n{}\n{}", from(WORK, "wait 40"), until(RESTORE, "read L1 – N")));
    // Of such a set nothing is expected: 230 and 17 V are recorded alike, and nobody is asked.
    let read = presence(&phone, |a, _| if a == "L1" { 17.0 } else { 231.0 });
    assert!(read.iter().all(|(a, b)| !a.starts_with('S') && !b.starts_with('S')), "{read:?}");
    assert_eq!(findings(&phone), Vec::<String>::new());
    phone.play(&format!("{}\nsee [Handed back]", hand_back(true)));
    assert!(page_one(&phone).contains(STILL_LIVE), "{}", page_one(&phone));
    record_holds(&phone, System::Own);
}

/// Control conductors of another supply that stand on the list: a point that opens them opens them, all pairs are read, and the whole story goes
/// on to its hand-back.
#[test]
fn control_conductors_of_the_list_are_proved_dead_like_the_rest() {
    let gate = "L1, L2, L3, N, PE, K1=control@Gate, K2=control@Gate";
    let line = "choose Conductors that it opens = L3\n";
    let plan = changed(&plan(), LIST, gate);
    let closed = Phone::begun(&[PEOPLE, &plan]);
    let lacks = as_text(&closed.field().screen());
    assert!(lacks.contains("K1") && lacks.contains("K2"), "no point opens them: {lacks}");
    let controls = "choose Conductors that it opens = K1\nchoose Conductors that it opens = K2\n";
    let phone = Phone::begun(&[PEOPLE, &plan.replacen(line, &format!("{line}{controls}"), 1), circuits(), ISOLATE]);
    phone.play(until(PROVE, "choose How it was shown"));
    reference_and_pairs(&phone, &["L1", "L2", "L3", "N", "PE", "K1", "K2"]);
    assert!(phone.proved(), "{}", banner(&phone));
    phone.at_job();
    phone.play(&format!("tap Next: Work\n{WORK}{}", until(RESTORE, "read L1 – N")));
    presence(&phone, |_, _| 230.0);
    phone.play(&format!("{}\nsee [Handed back]", hand_back(true)));
    record_holds(&phone, System::Own);
}

/// Without being named, every pair of the seven is read: 21.
#[test]
fn a_string_that_nobody_named_is_proved_dead_like_the_rest() {
    let phone = Phone::begun(&[PEOPLE, &plan()]);
    assert_eq!(pairs_of(&phone).len(), 21);
    let lacks = as_text(&phone.field().screen());
    assert!(lacks.contains("S+") && lacks.contains("S-"), "no point opens them: {lacks}");
    phone.play(NAMED);
    assert_eq!(pairs_of(&phone).len(), 10);
    assert!(!has(&phone, "S+") && !has(&phone, "S-"));
}

/// Named while the proof stands: what was proved was proved without knowing of it.
#[test]
fn naming_ends_the_proof() {
    let phone = opened_up();
    reference_and_pairs(&phone, &BOARD);
    assert!(phone.proved());
    phone.at_job();
    phone.play(
        "tap Something changed\nfill What stays live = Supply side of Q4\nfill Where it is = Top of Q4\nfill How it is screened, and who looked \
         = Its own shroud, seen by Mara\ntap This stays live",
    );
    assert!(!phone.proved());
    phone.at_job();
    phone.play("see [Treat as live] The proof is void. Something stays live: Supply side of Q4\nsee STILL LIVE: Supply side of Q4");
}

/// A point that opens S+ through the same gate as from a screen: the string is in the pairs again, both poles, and the proof is over.
#[test]
fn a_point_that_opens_a_pole_brings_the_string_back() {
    let phone = opened_up();
    reference_and_pairs(&phone, &BOARD);
    assert!(phone.proved());
    let point = |poles: &[&str]| Fact::PointAdded {
        label: "QD isolator of string A".into(),
        at: "Roof".into(),
        kind: PointKind::SwitchDisconnector,
        lockable: true,
        poles: poles.iter().map(|p| (*p).to_owned()).collect(),
        cuts: None,
        switch: None,
        stays_open: false,
        same_as: None,
    };
    tries(&phone, point(&["S+"])).unwrap();
    assert!(!phone.proved(), "{}", banner(&phone));
    assert!(has(&phone, "S+") && has(&phone, "S-"), "{:?}", pairs_of(&phone));
    assert_eq!(pairs_of(&phone).len(), 21);
    // The other pole still lies behind nothing, which is told.
    let lacks = phone.at(&format!("/job/{}/step/points", phone.job()));
    assert!(lacks.contains("S- of the normal supply is opened by no point"), "{lacks}");
}

/// The same from the screen on which points are added: what stays live can be marked there as opened by one.
#[test]
fn a_point_that_opens_a_pole_is_added_on_the_screen() {
    let phone = opened_up();
    reference_and_pairs(&phone, &BOARD);
    phone.at_job();
    phone.play(
        "tap Something changed\ntap Add a point of isolation\nfill Point, as it is labelled = QD isolator of string A\nfill Where the point is = \
         Roof\nchoose What it is = Switch-disconnector\nchoose Can it be locked open? = It takes a lock\nchoose Conductors that it opens = \
         S+\nchoose Conductors that it opens = S-\nchoose What it cuts off = The normal supply\ntap Add this point",
    );
    assert!(!phone.proved(), "{}", as_text(&phone.field().screen()));
    assert!(has(&phone, "S+") && has(&phone, "S-"));
}

/// A point of the string, which opens both its poles.
fn qd(cuts: &str) -> String {
    let what = if cuts.is_empty() { String::new() } else { format!("choose What it cuts off = {cuts}\n") };
    format!(
        "fill Point, as it is labelled = QD isolator\nfill Where the point is = Roof\nchoose What it is = Switch-disconnector\n\
         choose Can it be locked open? = It takes a lock\nchoose Conductors that it opens = S+\nchoose Conductors that it opens = S-\n{what}\
         tap Add this point\n"
    )
}

/// The same steps at the string's isolator as at Q4.
fn opens_qd() -> String {
    let q4 = until(from(ISOLATE, "see Isolate Q4"), "see Isolate Q9");
    changed(q4, "Q4 feeder switch", "QD isolator").replace("ML 7", "ML 9")
}

/// With the isolator of the string opened and locked, all seven are read and proved, and nothing is said to be live.
#[test]
fn a_string_that_is_opened_after_all_is_proved_dead() {
    let none = "choose Looked for and NOT found: tap each = Generator\ntap Save: not found\n";
    let plan = changed(
        &plan(),
        "choose Kind of source = Generator\nfill What you found = Standby generator set\nfill Where it comes in = Changeover switch Q9 in DB1\ntap Save this source\n",
        &format!("fill Where you looked = DB4 and DB1\n{none}"),
    );
    let plan = changed(&plan, "see Standby generator set: found, and no point cuts it off yet.\n", "");
    let plan = changed(
        until(&plan, "fill Point, as it is labelled = Q9"),
        "choose What it cuts off = The normal supply\n",
        "",
    );
    let isolate = format!("{}{}", until(ISOLATE, "see Isolate Q9"), opens_qd());
    let phone = Phone::begun(&[PEOPLE, &plan, &qd(""), circuits(), &isolate]);
    phone.play(&changed(until(PROVE, "choose How it was shown"), "tap Nothing started\ntap None fitted\n", ""));
    reference_and_pairs(&phone, &ALL);
    assert!(phone.proved() && !banner(&phone).contains("STILL LIVE"), "{}", banner(&phone));
}

/// Several supplies in one place: each has its own lines and its own point. The set of the demo, the string found as a source and cut off by
/// its isolator: Q9 opens no pole of the string, and QD no line of the board, and nobody can make them.
#[test]
fn each_supply_has_its_own_point() {
    let found = "choose Kind of source = PV\nfill What you found = String A\nfill Where it comes in = QD on the roof\ntap Save this source\n";
    let plan = changed(
        &plan(),
        "fill Where you looked = Roof and meter room\nchoose Looked for and NOT found: tap each = PV\ntap Save: not found\n",
        found,
    );
    // What cuts another source off is asked about as such, and not for its label.
    let qd_opens = changed(&opens_qd(), "tap Both can be read, and match\n", "");
    let isolate = format!(
        "{}{}",
        ISOLATE,
        changed(
            &qd_opens,
            "tap Seen live\nfill What was seen live: a lamp, a load, a meter = Bay lamp lit, washer displays on\ntap Save: Seen live\n",
            "tap It cannot\nfill How that is known = A string starts nothing\ntap Save: It cannot\n"
        )
        .replace("fill What you saw go off", "fill What shows that it is open")
    );
    let phone = Phone::begun(&[PEOPLE, &plan, &qd("PV: String A, at QD on the roof"), circuits(), &isolate]);
    phone.play(until(PROVE, "choose How it was shown"));
    let lacks = format!("{:?}", folded(&phone).blockers(stillbar_core::job::steps::Step::Points));
    assert_eq!(lacks, "[]");
}

/// Of such a set nobody knows the lowest voltage: an indicator that begins at 24 V, AC or DC, begins no test.
#[test]
fn an_indicator_for_such_a_set_begins_at_12_volts() {
    for range in ["AC", "DC"] {
        let late = changed(
            circuits(),
            &format!("Its lowest indication, {range} = 12 V"),
            &format!("Its lowest indication, {range} = 24 V"),
        );
        let phone = Phone::begun(&[PEOPLE, &plan(), NAMED, &late, ISOLATE]);
        phone.play(until(PROVE, "choose How it was shown"));
        assert!(folded(&phone).run().is_none(), "{range}");
        phone.play("see has to light at 12 V AC and 12 V DC or before");
    }
}

/// Whoever found the string as a source, and says so, may name it as staying live like whoever did not.
#[test]
fn a_string_that_was_found_stays_live() {
    let found = "choose Kind of source = PV\nfill What you found = String A\nfill Where it comes in = Left of the DC isolator\ntap Save this source\n";
    let plan = changed(
        &plan(),
        "fill Where you looked = Roof and meter room\nchoose Looked for and NOT found: tap each = PV\ntap Save: not found\n",
        found,
    );
    let phone = Phone::begun(&[PEOPLE, &plan, NAMED]);
    let lacks = format!("{:?}", folded(&phone).blockers(stillbar_core::job::steps::Step::Points));
    assert_eq!(lacks, "[]");
}
