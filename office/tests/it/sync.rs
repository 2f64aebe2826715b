//! Real phones (the core's own) and the real office over a socket, with a link between them that breaks: afterwards all hold the same,
//! and every photo byte for byte.

use std::collections::BTreeSet;
use std::io::{Read, Write};
use std::net::{Shutdown, SocketAddr, TcpListener, TcpStream};
use std::sync::Arc;
use std::sync::atomic::{AtomicI64, Ordering};
use std::thread;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use stillbar_core::screens::as_text;
use stillbar_core::store::Store;
use stillbar_core::{Field, sync};
use stillbar_office::people::AccountRole;
use stillbar_office::records;

use crate::company::{example, form};
use crate::desk::*;
use crate::people::Seat;
use crate::rig::{Rig, each};

/// A link to the office that lets so many bytes through, both ways together, and then breaks everything that is open.
struct Link {
    at: SocketAddr,
    left: Arc<AtomicI64>,
}

impl Link {
    fn to(office: SocketAddr) -> Link {
        let listener = TcpListener::bind("127.0.0.1:0").unwrap();
        let (at, left) = (listener.local_addr().unwrap(), Arc::new(AtomicI64::new(i64::MAX)));
        let budget = left.clone();
        thread::spawn(move || {
            for near in listener.incoming().flatten() {
                let Ok(far) = TcpStream::connect(office) else { continue };
                // Small pieces that wait for each other's receipt would take minutes.
                let _ = (near.set_nodelay(true), far.set_nodelay(true));
                for (from, to) in [(near.try_clone().unwrap(), far.try_clone().unwrap()), (far, near)] {
                    let budget = budget.clone();
                    thread::spawn(move || carry(from, to, &budget));
                }
            }
        });
        Link { at, left }
    }
    fn breaks_after(&self, bytes: i64) {
        self.left.store(bytes, Ordering::SeqCst);
    }
}

fn carry(mut from: TcpStream, mut to: TcpStream, budget: &AtomicI64) {
    let mut piece = [0; 4096];
    while let Ok(count @ 1..) = from.read(&mut piece) {
        let left = budget.fetch_sub(count as i64, Ordering::SeqCst);
        let through = usize::try_from(left.max(0)).unwrap_or(usize::MAX).min(count);
        if to.write_all(&piece[..through]).is_err() || through < count {
            break;
        }
    }
    let _ = (from.shutdown(Shutdown::Both), to.shutdown(Shutdown::Both));
}

/// The office on a socket.
fn served(rig: &Rig) -> SocketAddr {
    let listener = rig.runtime.block_on(tokio::net::TcpListener::bind("127.0.0.1:0")).unwrap();
    let at = listener.local_addr().unwrap();
    let service = rig.router.clone().into_make_service_with_connect_info::<SocketAddr>();
    rig.runtime.spawn(async move { axum::serve(listener, service).await });
    at
}

/// A phone of the core's own.
struct Phone {
    folder: tempfile::TempDir,
    device: Arc<Device>,
    field: Arc<Field>,
}

impl Phone {
    fn new(seed: u64) -> Phone {
        let folder = tempfile::tempdir().unwrap();
        let device = Device::new(seed);
        let field = device.open(folder.path()).unwrap();
        field.good_time(true);
        Phone { folder, device, field }
    }
    fn play(&self, script: &str) {
        self.device.play(&self.field, script);
    }
    fn goes(&self, to: &str) -> String {
        self.field.act(None, format!("go {to}"), vec![]);
        as_text(&self.field.screen())
    }
    /// Scans the office's code and says yes. The thread of the exchange asks the office.
    fn joins(&self, rig: &Rig, link: &Link, sites: &[stillbar_core::journal::EntryId]) {
        self.goes("/office");
        let code = format!("stillbar-enrol:1:http://{}:{}", link.at, rig.code(sites));
        self.play(&format!(
            "scan Scan the office's code = {code}\nsee Office at: http://127.0.0.1\ntap Join this office"
        ));
        self.until(|text| text.contains("Last reached: ") && !text.contains("Last reached: not yet"));
    }
    /// Exchanges until nothing is left to do.
    fn exchanges(&self) {
        for _ in 0..200 {
            match self.field.exchange() {
                Some(Ok(done)) if done == sync::Done::default() => return,
                Some(_) => {}
                None => panic!("there is no office"),
            }
        }
        panic!("never done: {}", self.goes("/office"));
    }
    fn until(&self, seen: impl Fn(&str) -> bool) {
        for _ in 0..200 {
            if seen(&self.goes("/office")) {
                return;
            }
            let _ = self.field.exchange();
        }
        panic!("never: {}", self.goes("/office"));
    }
    fn tables(&mut self) -> String {
        self.field.suspend();
        let tables = Store::open(self.folder.path()).unwrap().tables().unwrap();
        self.field.resume().unwrap();
        tables
    }
    fn photos(&self) -> Vec<(String, Vec<u8>)> {
        let files = std::fs::read_dir(self.folder.path().join("photos")).unwrap().flatten();
        let named = |f: &std::fs::DirEntry| f.file_name().to_string_lossy().into_owned();
        let mut all: Vec<_> = files.map(|f| (named(&f), std::fs::read(f.path()).unwrap())).collect();
        all.sort();
        all
    }
}

const JOB: [&str; 3] = [PEOPLE, PLAN, ISOLATE];

/// Two phones that belong to the office, and know the same job.
fn two(rig: &Rig, link: &Link) -> (Phone, Phone) {
    let (one, other) = (Phone::new(1), Phone::new(2));
    for script in JOB {
        one.play(script);
    }
    one.joins(rig, link, &[]);
    one.exchanges();
    let site = one.field.entries().unwrap().iter().find_map(|e| e.body.site).unwrap();
    other.joins(rig, link, &[site]);
    other.exchanges();
    (one, other)
}

/// A lock that is put on with one phone shows on the other, and comes off only by its owner.
#[test]
fn a_lock_on_one_phone_is_on_the_other() {
    each(|rig| {
        let link = Link::to(served(rig));
        let (mut one, mut other) = two(rig, &link);
        let board = other.goes("/locks");
        assert!(board.contains("Mara Lind, lock ML 7, on Q4 feeder switch"), "{board}");
        assert!(board.contains("Office last reached "), "{board}");
        other.goes("/");
        other.play(
            "tap Sign on\nfill Name = Tomas Brandt\ntap Add this person\ntap Replace the outgoing breaker of washer 4\ntap People on the job\nchoose Person = Tomas \
             Brandt\nchoose Duty = Working on it\ntap Save person and duty\ntap The job\ntap Isolate Q4 feeder switch\nfill What is written on the \
             lock = TB 1\nchoose How it is locked = Padlock on a hasp\ntap Save lock, fitted by Tomas Brandt",
        );
        other.exchanges();
        one.exchanges();
        assert!(one.goes("/locks").contains("Tomas Brandt, lock TB 1, on Q4 feeder switch"));
        // The pictures of the locks of others are here too, small.
        let small =
            |p: &Phone| p.photos().into_iter().filter(|(name, _)| name.ends_with(".320.jpg")).collect::<Vec<_>>();
        assert!(!small(&one).is_empty());
        assert_eq!(small(&one), small(&other));
        assert_eq!(one.tables(), other.tables());
        assert!(one.goes("/office").contains("Entries: All sent."), "{}", one.goes("/office"));
    });
}

/// A PIN that was forgotten is set anew with the office as witness: its one-time code counts when the office itself has taken it.
#[test]
fn the_office_is_witness_for_a_new_pin() {
    each(|rig| {
        let link = Link::to(served(rig));
        let phone = Phone::new(1);
        phone.play(PEOPLE);
        phone.joins(rig, &link, &[]);
        phone.goes("/people");
        phone.play(
            "tap Tomas Brandt\nfill New PIN = 4821\nfill New PIN again = 4821\ntap Set this PIN\ntap Signed on: Tomas Brandt\ntap Mara Lind\ntap Go on \
             without PIN\ntap Signed on: Mara Lind\ntap Tomas Brandt",
        );
        let route = phone.field.screen().route;
        let asks = |url: &str, code: &str| {
            phone.goes(&route);
            phone.play(&format!(
                "fill Code from the office = stillbar-enrol:1:{url}:{code}\ntap Ask the office as witness"
            ));
            phone.goes(&route)
        };
        let (ours, made_up) = (format!("http://{}", link.at), "0123456789abcdef");
        phone.play(&format!(
            "fill Code from the office = stillbar-enrol:1:http://127.0.0.1:1:{made_up}\ntap Ask the office as witness\nsee of another office"
        ));
        asks(&ours, made_up);
        for _ in 0..5 {
            let _ = phone.field.exchange();
            assert!(!phone.goes(&route).contains("The office has agreed"));
        }
        asks(&ours, &rig.code(&[]));
        let agreed = (0..200).any(|_| {
            let _ = phone.field.exchange();
            phone.goes(&route).contains("The office has agreed")
        });
        assert!(agreed, "{}", phone.goes(&route));
        phone.play(
            "fill New PIN = 9090\nfill New PIN again = 9090\ntap Set the new PIN\nsee Signed on: Tomas Brandt\ntap Signed on: Tomas Brandt\nsee witness: the \
             office",
        );
    });
}

/// The link breaks at every thousandth byte of what is said; the phones are closed and opened in between. In the end nothing is missing.
#[test]
fn cut_at_every_thousandth_byte_nothing_is_lost() {
    each(|rig| {
        let link = Link::to(served(rig));
        let (mut one, mut other) = (Phone::new(1), Phone::new(2));
        for script in JOB {
            one.play(script);
        }
        // A copy that got lost is made again, and the original never goes out in its place: it says where it was taken.
        for (name, _) in one.photos().iter().filter(|(name, _)| name.ends_with(".960.jpg")) {
            std::fs::remove_file(one.folder.path().join("photos").join(name)).unwrap();
        }
        one.joins(rig, &link, &[]);
        let site = one.field.entries().unwrap().iter().find_map(|e| e.body.site).unwrap();
        other.joins(rig, &link, &[site]);
        // From now on the thread must not race the breaks: its turns are played by hand.
        one.goes("/");
        one.play("tap Replace the outgoing breaker of washer 4\ntap Next: Covers off: treat as live");
        for script in [PROVE, WORK] {
            one.play(script);
        }
        for cut in 0..120 {
            link.breaks_after(cut * 1000);
            let _ = one.field.exchange();
            let _ = other.field.exchange();
            if cut % 10 == 0 {
                one.field.suspend();
                other.field.suspend();
                one.field.resume().unwrap();
                other.field.resume().unwrap();
            }
        }
        link.breaks_after(i64::MAX);
        one.field.good_time(true);
        one.exchanges();
        other.exchanges();
        assert_eq!(one.tables(), other.tables());
        let text = one.goes("/office");
        assert!(text.contains("Entries: All sent.") && !text.contains("do not match"), "{text}");
        let original = one.photos().into_iter().find(|(name, _)| name.len() == 64).unwrap();
        let there = rig.office.read(|tx| stillbar_office::photos::wanted(tx, device_of(&one))).unwrap();
        assert!(there.is_empty(), "the office still wants {there:?}");
        // The record that the office gives out shows the copies that the entries name, in the size for print.
        let entries = one.field.entries().unwrap();
        let job = entries.iter().filter(|e| e.body.site == Some(site)).find_map(|e| e.body.job).unwrap();
        let record = rig.runtime.block_on(records::record(&rig.office, site, job)).unwrap().json().unwrap();
        let record: serde_json::Value = serde_json::from_slice(&record).unwrap();
        let shown =
            record["photos"].as_array().unwrap().iter().map(|p| STANDARD.decode(p["jpeg"].as_str().unwrap()).unwrap());
        let print = one.photos().into_iter().filter(|(name, _)| name.ends_with(".960.jpg")).map(|(_, bytes)| bytes);
        assert_eq!(shown.collect::<BTreeSet<_>>(), print.collect::<BTreeSet<_>>());
        let kept = walk(&rig.folder.path().join("photos"));
        assert!(kept.contains(&original.1), "the original is at the office byte for byte");
    });
}

fn device_of(phone: &Phone) -> stillbar_core::journal::DeviceId {
    phone.field.entries().unwrap().first().unwrap().body.device
}

fn walk(folder: &std::path::Path) -> Vec<Vec<u8>> {
    let mut all = Vec::new();
    for entry in std::fs::read_dir(folder).unwrap().flatten() {
        if entry.path().is_dir() {
            all.extend(walk(&entry.path()));
        } else {
            all.push(std::fs::read(entry.path()).unwrap());
        }
    }
    all
}

/// An office that takes the call and never answers: the phone goes on as if there were none.
#[test]
fn no_screen_waits_for_the_office() {
    // Nobody accepts here; the system does, and then there is silence.
    let silent = TcpListener::bind("127.0.0.1:0").unwrap();
    let phone = Phone::new(1);
    phone.field.join(&format!("stillbar-enrol:1:http://{}:0123456789abcdef", silent.local_addr().unwrap())).unwrap();
    for script in JOB {
        phone.play(script);
    }
    let text = phone.goes("/office");
    assert!(text.contains("This phone works on its own"), "the answer is still awaited: {text}");
    // The folder is let go of while the thread still waits.
    let Phone { folder, device, field } = phone;
    drop(field);
    assert!(device.open(folder.path()).is_ok());
}

/// A phone of one site never gets anything of another; a withdrawn one gets nothing.
#[test]
fn a_phone_of_one_site_never_sees_another() {
    each(|rig| {
        let link = Link::to(served(rig));
        let (one, other) = (Phone::new(1), Phone::new(3));
        for script in JOB {
            one.play(script);
        }
        one.joins(rig, &link, &[]);
        one.exchanges();
        other.play(&PEOPLE.replace("Mara Lind", "Ruth Adair"));
        other.play(&PLAN.replace("Brook Lane dye works", "Hill Road laundry"));
        other.joins(rig, &link, &[]);
        other.exchanges();
        for (phone, foreign) in [(&one, "Hill Road laundry"), (&other, "Brook Lane dye works")] {
            let entries = format!("{:?}", phone.field.entries().unwrap());
            assert!(!entries.contains(foreign), "{foreign}");
        }
        assert!(!format!("{:?}", one.field.entries().unwrap()).contains("Ruth Adair"));
    });
}

/// Rules that are brought in at the office hold on two phones with their next exchange; a phone that had not heard of them yet says so of the
/// job that it opened, and both show the same.
#[test]
fn rules_of_a_company_reach_two_phones() {
    each(|rig| {
        let link = Link::to(served(rig));
        let (one, other) = (Phone::new(1), Phone::new(2));
        // The office writes here: what is a day ahead of a phone is put aside.
        for phone in [&one, &other] {
            phone.device.now.store(rig.office.now(), Ordering::Relaxed);
        }
        one.play(PEOPLE);
        let mara = one.field.entries().unwrap()[1].id;
        let noted = stillbar_core::journal::Fact::SiteNoted { name: "Brook Lane dye works".into() };
        let site = one.field.keep(mara, None, noted).unwrap();
        one.joins(rig, &link, &[]);
        one.exchanges();
        other.joins(rig, &link, &[site]);
        other.exchanges();
        let lead = Seat::new(rig, AccountRole::Lead, &[site]);
        lead.post(rig, &format!("/sites/{site}/company-rules"), &form(&example())).is(303);
        // The one opens a job before it hears of them, the other behind.
        one.goes("/");
        one.play(PLAN);
        other.until(|_| other.goes("/rules").contains("version 2026-03"));
        one.until(|_| one.goes("/rules").contains("version 2026-03"));
        one.exchanges();
        let page = |phone: &Phone| {
            let entries = phone.field.entries().unwrap();
            let job = entries.iter().find(|e| e.job() == Some(e.id)).unwrap().id;
            phone.goes(&format!("/job/{job}"))
        };
        other.exchanges();
        for text in [page(&one), page(&other)] {
            assert!(text.contains("Company rules: Alder & Finch Electrical, version 2026-03"), "{text}");
            assert!(text.contains("No company rules were known when this job was opened"), "{text}");
            assert!(text.contains("Ring Duty engineer"), "{text}");
        }
        other.goes("/");
        let (opens, _) = PLAN.split_once("see Permit reference").unwrap();
        let opens = opens.replace("washer 4", "washer 5");
        other.play(&format!("tap Sign on\ntap Mara Lind\n{opens}"));
        other.exchanges();
        one.exchanges();
        let job = other.field.entries().unwrap().iter().rfind(|e| e.job() == Some(e.id)).unwrap().id;
        for phone in [&one, &other] {
            let text = phone.goes(&format!("/job/{job}"));
            assert!(text.contains("Company rules: Alder & Finch Electrical, version 2026-03"), "{text}");
        }
    });
}
