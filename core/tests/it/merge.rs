//! Several phones that hear of each other late, in pieces, or twice: all come to the same, and no doubt makes anything look less live.

use std::collections::BTreeSet;
use std::path::Path;
use std::sync::Arc;
use std::sync::atomic::AtomicUsize;
use std::sync::atomic::Ordering::Relaxed;

use proptest::prelude::*;
use stillbar_core::job::{Ended, Job};
use stillbar_core::journal::{Body, DeviceKey, Entry, EntryId, Fact, Hlc, Seen};
use stillbar_core::parts::{Block, Ink, Shape};
use stillbar_core::record;
use stillbar_core::screens::as_text;
use stillbar_core::store::Store;
use stillbar_core::supply::Position;
use stillbar_core::sync::cases::{CASES, as_markdown};
use stillbar_core::sync::near;
use stillbar_core::sync::rules::{self, TAKE, take};
use stillbar_core::{Errand, Field, Outcome};

use crate::desk::*;

/// A phone that somebody has in hand.
struct Phone {
    folder: tempfile::TempDir,
    device: Arc<Device>,
    field: Option<Arc<Field>>,
}

impl Phone {
    fn new(seed: u64) -> Phone {
        Phone::at(seed, 0)
    }
    /// With a clock that is ahead by so many milliseconds.
    fn at(seed: u64, ahead: i64) -> Phone {
        let folder = tempfile::tempdir().unwrap();
        let device = Device::new(seed);
        device.pass(ahead);
        let field = Some(device.open(folder.path()).unwrap());
        Phone { folder, device, field }
    }
    fn field(&self) -> &Field {
        self.field.as_ref().unwrap()
    }
    fn play(&self, script: &str) {
        self.device.play(self.field(), script);
    }
    /// Everything that `other` has and this does not.
    fn hear(&self, other: &Phone) {
        self.field().take_in(in_chains(other.field().entries().unwrap())).unwrap();
    }
    fn text(&self) -> String {
        as_text(&self.field().screen())
    }
    fn goes(&self, to: &str) {
        self.field().act(None, format!("go {to}"), vec![]);
    }
    fn tables(&mut self) -> String {
        self.field = None;
        let mut store = Store::open(self.folder.path()).unwrap();
        let tables = store.tables().unwrap();
        store.replay().unwrap();
        assert_eq!(store.tables().unwrap(), tables, "the tables follow from the journal");
        drop(store);
        self.field = Some(self.device.open(self.folder.path()).unwrap());
        tables
    }
}

/// As an office hands them on: those of each device in the order of their numbers.
fn in_chains(mut entries: Vec<Entry>) -> Vec<Entry> {
    entries.sort_by_key(|e| (e.body.device, e.body.seq));
    entries
}

/// Two phones that know the same job, with Mara on the one and Tomas on the other.
fn two(scripts: &[&str]) -> (Phone, Phone) {
    let (one, other) = (Phone::new(1), Phone::new(2));
    for script in scripts {
        one.play(script);
    }
    other
        .device
        .now
        .store(one.device.now.load(std::sync::atomic::Ordering::Relaxed), std::sync::atomic::Ordering::Relaxed);
    other.hear(&one);
    other.play("tap Sign on\ntap Tomas Brandt\ntap Replace the outgoing breaker of washer 4");
    (one, other)
}

const JOINED: &str = include_str!("../../journeys/tomas-joins.journey");
const JOB: [&str; 4] = [PEOPLE, PLAN, ISOLATE, JOINED];

fn fit(point: &str, label: &str) -> String {
    format!(
        "tap Isolate {point}\nfill What is written on the lock = {label}\nchoose How it is locked = Padlock on a hasp\ntap Save lock, fitted by \
         Tomas Brandt\n"
    )
}

/// The same on a phone that somebody else may have in hand.
fn fits(phone: usize, point: &str, label: &str) -> String {
    let script = fit(point, label);
    let others = "\ntap Enter a lock that Tomas Brandt fitted\nfill";
    if phone == 2 { script } else { script.replacen("\nfill", others, 1) }
}

/// Both hear of each other and then show the same.
fn meet(one: &mut Phone, other: &mut Phone) -> String {
    one.hear(other);
    other.hear(one);
    let tables = one.tables();
    assert_eq!(tables, other.tables());
    let route = one.field().screen().route;
    let job = route.split("/step").next().unwrap().split("/lock").next().unwrap().to_owned();
    let mut shown = String::new();
    for phone in [&*one, &*other] {
        phone.goes(&format!("{job}/locks"));
        let locks = phone.text();
        phone.goes(&job);
        let text = format!("{locks}\n{}", phone.text());
        let hand = |t: &str| {
            t.lines().filter(|l| !l.contains("In hand:") && !l.contains("my lock")).collect::<Vec<_>>().join("\n")
        };
        let text = hand(&text);
        if !shown.is_empty() && !text.is_empty() {
            assert_eq!(standing(&text), standing(&shown));
        }
        shown = text;
    }
    shown
}

fn standing(text: &str) -> String {
    text.lines().filter(|l| l.starts_with('[')).collect::<Vec<_>>().join("\n")
}

fn locks(tables: &str) -> Vec<&str> {
    tables.lines().filter(|l| l.contains(" | ML ") || l.contains(" | TB ")).collect()
}

/// Whether the lock of this label is on, by the tables.
fn is_on(tables: &str, label: &str) -> bool {
    let row =
        locks(tables).into_iter().find(|l| l.contains(&format!("| {label} |"))).expect("the lock is known").to_owned();
    let cells: Vec<&str> = row.split(" | ").collect();
    cells[7] == "1"
}

#[test]
fn the_page_says_what_the_code_does() {
    let page = Path::new(env!("CARGO_MANIFEST_DIR")).join("../docs/conflicts.md");
    let written = std::fs::read_to_string(&page).unwrap();
    assert!(
        written.contains(&as_markdown()),
        "docs/conflicts.md does not hold these tables; put them there:\n{}",
        as_markdown()
    );
    let names: BTreeSet<&str> = CASES.iter().map(|c| c.name).collect();
    assert_eq!(names.len(), CASES.len());
}

#[test]
fn every_case_of_the_table_comes_out_as_it_says() {
    for (what, met, taken) in TAKE {
        assert_eq!(take(met), taken, "{what}");
    }
    assert_eq!(rules::wait_ms(1, rules::Next::Again), rules::FIRST_WAIT_MS);
    assert!((1..100).all(|n| rules::wait_ms(n, rules::Next::Again) <= rules::LONGEST_WAIT_MS));
    assert!((1..100).all(|n| rules::wait_ms(n, rules::Next::Ask) > 0), "the timer always re-arms");
}

#[test]
fn fitted_while_released() {
    let (mut one, mut other) = two(&JOB);
    one.play("tap The job\ntap Locks and keys\ntap Mara Lind on Q4 feeder switch: ML 7\ntap Take my lock off");
    other.play(&fit("Q4 feeder switch", "TB 1"));
    let shown = meet(&mut one, &mut other);
    let tables = one.tables();
    assert!(!is_on(&tables, "ML 7") && is_on(&tables, "TB 1"), "{shown}");
}

#[test]
fn released_while_handed_over() {
    let offered = "tap The job\ntap Locks and keys\ntap Mara Lind on Q4 feeder switch: ML 7\nchoose To whom = Tomas Brandt\ntap Offer lock and key\n";
    for mara_first in [true, false] {
        let (mut one, mut other) = two(&[PEOPLE, PLAN, ISOLATE, JOINED, offered]);
        let later = if mara_first { &other } else { &one };
        later.device.pass(60_000);
        one.play("tap Take my lock off");
        other.play(
            "tap Locks and keys\ntap Mara Lind on Q4 feeder switch: ML 7\nsign Tomas Brandt signs for lock and key = Tomas Brandt\ntap Tomas \
             Brandt takes lock and key",
        );
        let shown = meet(&mut one, &mut other);
        assert!(is_on(&one.tables(), "ML 7"), "{shown}");
        assert!(shown.contains("Tomas Brandt on Q4 feeder switch: ML 7"), "{shown}");
    }
}

#[test]
fn released_by_two() {
    let (mut one, mut other) = two(&JOB);
    let off = "tap Locks and keys\ntap Mara Lind on Q4 feeder switch: ML 7\ntap Take my lock off";
    one.play(&format!("tap The job\n{off}"));
    other.play(&format!(
        "tap All jobs\ntap Signed on: Tomas Brandt\ntap Mara Lind\ntap Go on without PIN\ntap Replace the outgoing breaker of washer 4\n{off}"
    ));
    let shown = meet(&mut one, &mut other);
    assert!(!is_on(&one.tables(), "ML 7"), "{shown}");
}

/// The clock of the one that ends the proof may be behind or ahead: it ends it in any case.
#[test]
fn proved_while_it_ended() {
    for behind in [-30 * 60_000, 30 * 60_000] {
        let (mut one, mut other) = two(&[PEOPLE, PLAN, ISOLATE]);
        other.device.pass(behind);
        other.play(
            "tap Something changed\nfill What it is = Heater from DB2\nfill Where it comes in = X9\nchoose What kind of source = Control or \
             auxiliary supply\nfill Its terminals at the work, with commas = X9:1, X9:2\nfill Its voltage in volts = 230\ntap Save the source that was found",
        );
        one.play(PROVE);
        one.play("see [Proved dead]\ntap Not asked for\nfill By whose rule = Site rule 4\ntap Save: Not asked for\ntap Nothing within reach\ntap None in there\ntap Whoever tested lets it start\ntap Begin work");
        let shown = meet(&mut one, &mut other);
        assert!(
            shown.contains("[Treat as live] The proof is void. Another source was found: Heater from DB2."),
            "{behind}: {shown}"
        );
    }
}

#[test]
fn lit_while_proved() {
    let cut = PROVE.find("tap Save these readings\nsee Treat as live").unwrap();
    let first = &PROVE[..cut + "tap Save these readings\n".len()];
    let (mut one, mut other) = two(&[PEOPLE, PLAN, ISOLATE, first]);
    one.play(&PROVE[first.len()..]);
    one.play("see [Proved dead]");
    other.device.pass(-20 * 60_000);
    // Whoever sees it: he is not even on the job.
    other.play("tap Next: Test every pair\nchoose An indication seen since = PE – L2\ntap This pair gave an indication\nsee Stop, treat as live");
    let shown = meet(&mut one, &mut other);
    assert!(shown.contains("[Stop, treat as live] Indication: PE – L2 lit"), "{shown}");
}

#[test]
fn handed_back_while_locked() {
    let (mut one, mut other) = two(&[PEOPLE, PLAN, ISOLATE, JOINED, "tap The job"]);
    // Tomas never gets to a lock on the one phone, so he leaves the job there; on his own he fits one.
    one.play(
        "tap People on the job\ntap Tomas Brandt leaves the job\ntap The job\ntap Next: Covers off: treat as live",
    );
    one.play(PROVE);
    one.play(WORK);
    // Two took part: what they had is counted back.
    one.play(&RESTORE.replace("tap Save: Back to automatic\n", "tap Save: Back to automatic\ntap All are back\n"));
    other.play(&fit("Q4 feeder switch", "TB 1"));
    let shown = meet(&mut one, &mut other);
    assert!(is_on(&one.tables(), "TB 1"), "{shown}");
    one.goes("/locks");
    assert!(one.text().contains("Tomas Brandt, lock TB 1, on Q4 feeder switch"), "{}", one.text());
    // And it comes off by its owner, wherever they are.
    other.goes("/locks");
    other.play("tap Tomas Brandt, lock TB 1, on Q4 feeder switch\ntap Take my lock off\nsee Taken off by its owner");
    meet(&mut one, &mut other);
    assert!(!is_on(&one.tables(), "TB 1"));
}

/// Two phones that know the same make the same record, but for who made it; what one lacks is told, and no record is made.
#[test]
fn two_phones_make_the_same_record() {
    let (mut one, mut other) = two(&JOB);
    other.play(&fit("Q4 feeder switch", "TB 1"));
    let title = "Replace the outgoing breaker of washer 4";
    let of = |phone: &Phone| stillbar_core::app::of_folder(phone.folder.path(), &*phone.device, title, false);
    let early = of(&one).unwrap().report().clone();
    meet(&mut one, &mut other);
    let (mine, theirs) = (of(&one).unwrap(), of(&other).unwrap());
    assert_eq!(mine.report(), theirs.report());
    assert_eq!(mine.report().devices.len(), 2);
    assert_ne!(early.head, mine.report().head);
    for made in [&mine, &theirs] {
        assert!(record::verify(&made.json().unwrap()).unwrap().holds);
    }
    // What the one wrote knowing of the other cannot be shown without the other's entries.
    let all = one.field().entries().unwrap();
    let job = all.iter().find(|e| matches!(e.body.fact, Fact::JobOpened { .. })).unwrap().id;
    let (own, shared): (Vec<Entry>, Vec<Entry>) = all.into_iter().partition(|e| e.job() == Some(job));
    let knowing = own.iter().filter(|e| !e.body.seen.is_empty()).count();
    assert!(knowing > 0, "somebody says what they knew");
    let writer = own.iter().find(|e| !e.body.seen.is_empty()).unwrap().body.device;
    let alone: Vec<Entry> = own.into_iter().filter(|e| e.body.device == writer || e.id == job).collect();
    let key = DeviceKey::from_secret(&[5; 32]).unwrap();
    let made = record::make(record::gather(job, &alone, &shared, Default::default()), "", false, &key);
    assert!(made.err().unwrap().to_string().contains("missing"));
}

/// No screen leads there, so the entries are written by hand: both devices know the point; the one opens and closes it, the other opens it.
#[test]
fn opened_while_closed() {
    let (one, _) = two(&JOB);
    let entries = one.field().entries().unwrap();
    let job = entries.iter().find(|e| matches!(e.body.fact, Fact::JobOpened { .. })).unwrap();
    let added = entries
        .iter()
        .find(|e| matches!(&e.body.fact, Fact::PointAdded { label, .. } if label == "Q4 feeder switch"))
        .unwrap();
    let keys = [21, 22].map(|n| DeviceKey::from_secret(&[n; 32]).unwrap());
    let write = |who: usize, seq: u64, clock: i64, seen: Vec<Seen>, fact: Fact| {
        let body = Body {
            device: keys[who].device(),
            seq,
            clock: Hlc(clock, 0),
            prev: EntryId::NONE,
            after: None,
            job: Some(job.id),
            seen,
            fact,
            ..added.body.clone()
        };
        Entry::seal(body, &keys[who], &|_| Vec::new()).unwrap()
    };
    let open = || Fact::PointOpened {
        point: added.id,
        off_load: true,
        seen: "Lamp out".into(),
        found: Position::Closed,
        knowing: vec![],
    };
    let at = added.body.clock.0 + 1000;
    let knows = vec![Seen(added.body.device, added.body.seq, added.id)];
    let mut told = vec![
        job.clone(),
        added.clone(),
        write(0, 1, at, knows.clone(), open()),
        write(0, 2, at + 1, vec![], Fact::PointClosed { point: added.id, beside: None }),
        write(1, 1, at + 2, knows, open()),
    ];
    let fold = |told: &[Entry]| Job::fold(told).unwrap();
    let doubt = fold(&told);
    assert_eq!((&doubt.points[0].opened, doubt.voided.len()), (&None, 3), "added, closed, and in doubt");
    assert!(matches!(doubt.voided[2].why, Ended::OpenedAndClosed { .. }), "{:?}", doubt.voided[2]);
    // Who knows of both opens it anew, and it is open.
    let closed = told[3].id;
    told.push(write(1, 2, at + 3, vec![Seen(keys[0].device(), 2, closed)], open()));
    assert!(fold(&told).points[0].opened.is_some());
}

#[test]
fn withdrawn_while_locked() {
    let (mut one, mut other) = two(&[
        PEOPLE,
        PLAN,
        JOINED,
        "tap The job\ntap Next: Switch off the loads",
        &ISOLATE[..ISOLATE.find("see Isolate Q4").unwrap()],
    ]);
    // Q4 is a mistake, says the one; the other opens it and locks it.
    one.play("tap The job\ntap Time line\ntap Point of isolation Q4 feeder switch\nfill What was wrong with it = The wrong bay\ntap Withdraw this entry");
    other.play(&format!(
        "tap Isolate Q4 feeder switch\ntap Seen live\nfill What was seen live: a lamp, a load, a meter = Lamp\ntap Save: Seen live\nfill What you saw go off = Lamp out\nchoose How you found it = On: I switched it off\ntap Q4 feeder switch is open, off load\n{}",
        fit("Q4 feeder switch", "TB 1").split_once('\n').unwrap().1
    ));
    let shown = meet(&mut one, &mut other);
    assert!(is_on(&one.tables(), "TB 1"), "{shown}");
    assert!(shown.contains("Isolate Q4 feeder switch"), "{shown}");
}

/// An entry of another that has a number twice, or that nobody here wrote, is kept aside and said; the journal stays.
#[test]
fn what_cannot_be_is_kept_aside() {
    let (one, other) = two(&JOB);
    let before = one.field().entries().unwrap();
    // The same device goes on twice, from one state: a copied phone.
    let copy = Phone::at(2, 5_000);
    copy.hear(&one);
    let again = other.field().entries().unwrap().into_iter().filter(|e| !before.contains(e)).collect::<Vec<_>>();
    let done = copy.field().take_in(again).unwrap();
    assert_eq!((done.new, done.aside), (0, 1), "its own first entry, written by another");
    assert_eq!(copy.field().entries().unwrap().len(), before.len() + 1);
    let done = one.field().take_in(other.field().entries().unwrap()).unwrap();
    assert_eq!(done.aside, 0);
    assert_eq!(one.field().take_in(other.field().entries().unwrap()).unwrap().new, 0, "twice is once");
}

fn lock_facts(entries: &[Entry]) -> (BTreeSet<EntryId>, BTreeSet<EntryId>) {
    let fitted = entries.iter().filter(|e| matches!(e.body.fact, Fact::LockFitted { .. })).map(|e| e.id).collect();
    let off = entries.iter().filter_map(|e| match &e.body.fact {
        Fact::LockRemoved { lock, .. } | Fact::LockForced { lock, .. } => Some(*lock),
        _ => None,
    });
    (fitted, off.collect())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 12, failure_persistence: None, ..ProptestConfig::default() })]

    /// Four phones do what they can and hear of each other in any order: all come to the same, and at every moment no lock is off on a
    /// phone that has no release of it.
    #[test]
    fn any_interleaving_of_four_phones_comes_to_the_same(steps in prop::collection::vec((0usize..4, 0usize..8, 0usize..4), 10..40)) {
        let first = Phone::new(11);
        for script in JOB {
            first.play(script);
        }
        let mut phones = vec![first];
        for seed in 12..15 {
            let phone = Phone::new(seed);
            phone.device.now.store(phones[0].device.now.load(std::sync::atomic::Ordering::Relaxed), std::sync::atomic::Ordering::Relaxed);
            phone.hear(&phones[0]);
            phone.play(&format!("tap Sign on\ntap {}\ntap Replace the outgoing breaker of washer 4", ["Mara Lind", "Tomas Brandt", "Joel Aras"][seed as usize - 12]));
            phones.push(phone);
        }
        let job = phones[1].field().screen().route;
        for (n, (who, what, other)) in steps.into_iter().enumerate() {
            let phone = &phones[who];
            phone.device.pass([0, 1_000, -40_000, 300_000][other]);
            phone.goes(&job);
            let script = match what {
                0 => fits(who, "Q4 feeder switch", &format!("TB {n}")),
                1 => fits(who, "Q9 changeover switch", &format!("TB {n}")),
                2 => "tap Locks and keys\ntap ML 7\ntap Take my lock off".into(),
                3 => "tap Locks and keys\ntap ML 7\nchoose To whom = Tomas Brandt\ntap Offer lock and key".into(),
                4 => "tap Locks and keys\ntap ML 7\nsign Tomas Brandt signs for lock and key = T\ntap Tomas Brandt takes lock and key".into(),
                5 => "tap Locks and keys\ntap ML 8\ntap Take my lock off".into(),
                6 => "tap Something changed\nfill What it is = Heater\nfill Where it comes in = X9\nchoose What kind of source = Control or auxiliary supply\nfill Its terminals at the work, with commas = X9:1, X9:2\nfill Its voltage in volts = 230\ntap Save the source that was found".into(),
                _ => { phone.hear(&phones[other]); String::new() }
            };
            // What is refused on the way is refused; the phone goes on.
            let kept = phone.device.try_play(phone.field(), &script).is_ok();
            if !script.is_empty() {
                TRIED.fetch_add(1, Relaxed);
                KEPT.fetch_add(usize::from(kept), Relaxed);
            }
            let entries = phone.field().entries().unwrap();
            let (fitted, released) = lock_facts(&entries);
            phone.goes("/locks");
            let text = phone.text();
            for lock in fitted.difference(&released) {
                let label = entries.iter().find_map(|e| match &e.body.fact {
                    Fact::LockFitted { label, .. } if e.id == *lock => Some(label.clone()),
                    _ => None,
                }).unwrap();
                prop_assert!(text.contains(&format!("lock {label}, on")), "lock {label} has no release here and is not on:\n{text}");
            }
        }
        for _ in 0..2 {
            for i in 0..4 {
                for k in 0..4 {
                    if i != k { phones[i].hear(&phones[k]); }
                }
            }
        }
        let tables: Vec<String> = phones.iter_mut().map(Phone::tables).collect();
        prop_assert!(tables.windows(2).all(|w| w[0] == w[1]));
        let standing: BTreeSet<String> = phones.iter().map(|p| { p.goes(&job); standing(&p.text()) }).collect();
        prop_assert_eq!(standing.len(), 1);
        let (kept, tried) = (KEPT.load(Relaxed), TRIED.load(Relaxed));
        prop_assert!(tried < 100 || kept * 5 > tried, "{kept} of {tried} acts were kept: phones that do nothing show nothing");
    }
}

/// Acts of the four phones, in all cases.
static TRIED: AtomicUsize = AtomicUsize::new(0);
/// Those that were not refused.
static KEPT: AtomicUsize = AtomicUsize::new(0);

/// As a camera sees it: the drawing of a screen, painted at so many pixels a module.
fn seen(field: &Field, pixels: usize) -> Outcome {
    let screen = field.screen();
    let drawing =
        screen.blocks.iter().find_map(|b| if let Block::Drawing { drawing, .. } = b { Some(drawing) } else { None });
    let drawing = drawing.expect("a code is shown");
    let side = drawing.width as usize * pixels;
    let mut luma = vec![90u8; side * side];
    for shape in &drawing.shapes {
        let Shape::Box { x, y, w, h, ink, .. } = shape else { panic!("a code is of boxes") };
        let shade = if *ink == Ink::Light { 255 } else { 0 };
        for row in (*y as usize * pixels)..((y + h) as usize * pixels) {
            luma[row * side + *x as usize * pixels..row * side + (x + w) as usize * pixels].fill(shade);
        }
    }
    Outcome::Frame { width: side as u32, height: side as u32, luma }
}

/// One scans what the other shows, until there is nothing left to scan.
fn scans(one: &Phone, other: &Phone) -> usize {
    one.goes("/near");
    let errands = one.field().act(None, "scan".into(), vec![]);
    let mut waiting =
        errands.into_iter().find_map(|e| if let Errand::ScanTag { token, .. } = e { Some(token) } else { None });
    let mut frames = 0;
    while let Some(token) = waiting {
        frames += 1;
        assert!(frames < 400, "{}", one.text());
        let errands = one.field().deliver(token, seen(other.field(), 6));
        waiting =
            errands.into_iter().find_map(|e| if let Errand::ScanTag { token, .. } = e { Some(token) } else { None });
        // The parts come round by themselves.
        let before = other.field().stirred();
        other.device.pass(2_000);
        assert!(waiting.is_none() || frames == 1 || other.field().stirred() > before);
    }
    frames
}

/// Two electricians in one plant room, and no signal: each sees the other's locks, and both show the same.
#[test]
fn two_phones_pass_locks_by_codes_alone() {
    let (mut one, mut other) = two(&JOB);
    one.play("tap The job\ntap Isolate Q4 feeder switch");
    other.play(&fit("Q4 feeder switch", "TB 1"));
    let stranger = Phone::at(9, 40_000);
    // What this one has goes over first; then the other shows what it lacks.
    one.goes("/near");
    one.play("tap Show my code\nsee Your code. The other phone scans it.");
    assert_eq!(scans(&other, &one), 1);
    assert!(other.text().contains("The other phone lacks 4 entries"), "the lock, and who is named: {}", other.text());
    scans(&one, &other);
    assert!(one.text().contains("Here now, and checked: "), "{}", one.text());
    one.goes("/locks");
    assert!(one.text().contains("Tomas Brandt, lock TB 1, on Q4 feeder switch"), "{}", one.text());
    // Again there is nothing to say.
    one.goes("/near");
    one.play("tap Stop showing\ntap Show my code");
    scans(&other, &one);
    assert!(other.text().contains("The other phone has all that this one has."), "{}", other.text());
    // A phone that knows nothing of the job gets all of it, in many parts.
    stranger.goes("/near");
    stranger.play("tap Show my code");
    scans(&one, &stranger);
    let frames = scans(&stranger, &one);
    assert!(frames > 5, "{frames}");
    stranger.goes("/locks");
    assert!(
        stranger.text().contains("lock ML 7, on Q4 feeder switch") && stranger.text().contains("lock TB 1"),
        "{}",
        stranger.text()
    );
    stranger.goes("/");
    assert!(stranger.text().contains("Replace the outgoing breaker of washer 4"));
    assert_eq!(locks(&one.tables()), locks(&other.tables()));
}

/// Codes that were tampered with, mixed up or cut bring nothing in, and nothing ends.
#[test]
fn parts_that_do_not_belong_together_bring_nothing() {
    let (one, _) = two(&JOB);
    let entries = in_chains(one.field().entries().unwrap());
    let parts = near::show_entries(&entries).unwrap();
    assert!(parts.len() > 5);
    let mut gathered = near::PartsGathered::default();
    for junk in [
        "NEAR1",
        "NEAR1E0000",
        "NEAR1X00000001AB",
        "NEAR1E00009901AB",
        "NEAR1EABCD0000",
        "NEAR1EABCDé001",
        "https://example.org",
    ] {
        assert_eq!(gathered.take(junk), None, "{junk}");
    }
    // In any order, twice, and with a part of another set in between, which begins anew.
    for part in parts.iter().rev().skip(1) {
        assert!(matches!(gathered.take(part), Some(near::PartStep::Parts(..))));
    }
    let other = near::show_entries(&entries[..3]).unwrap();
    let _ = gathered.take(&other[0]);
    let mut whole = None;
    for part in parts.iter().chain(&parts) {
        if let Some(near::PartStep::Whole(_, plain)) = gathered.take(part) {
            whole = Some(plain);
            break;
        }
    }
    let plain = whole.unwrap();
    assert_eq!(near::read_entries(&plain).unwrap(), entries);
    // A bit turned anywhere: no entry of it is believed.
    for at in [0, 1, 5, 300, plain.len() - 1] {
        let mut turned = plain.clone();
        turned[at] ^= 1;
        assert!(near::read_entries(&turned).is_none(), "{at}");
    }
    assert!(near::read_entries(&plain[..plain.len() - 1]).is_none());
    // RFC 9285, section 4.3: the base 45 of the parts is the standard's.
    assert_eq!((base45::encode("Hello!!"), base45::encode("base-45")), ("%69 VD92EX0".into(), "UJCLQE7W581".into()));
}
