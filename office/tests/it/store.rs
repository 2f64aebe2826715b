//! What both databases promise: whole or not at all, a newer one left alone, and numbers that no reader passes.

use std::collections::BTreeSet;
use std::sync::atomic::{AtomicBool, Ordering};

use stillbar_core::journal::EntryId;
use stillbar_office::built::Built;
use stillbar_office::error::OfficeError;
use stillbar_office::params;
use stillbar_office::store::{self, SqlValue};

use crate::phone::entries;
use crate::postgres;
use crate::rig::each;

#[test]
fn a_change_is_kept_whole_or_not_at_all() {
    each(|rig| {
        let put = "INSERT INTO office (name, value) VALUES ($1, $2)";
        let broken: Result<(), OfficeError> = rig.office.change(|tx| {
            tx.run(put, params!["a", "1"])?;
            Err(OfficeError::nothing("on second thoughts"))
        });
        assert!(broken.is_err());
        let failed: Result<u64, OfficeError> = rig.office.change(|tx| {
            tx.run(put, params!["b", "1"])?;
            tx.run(put, params!["b", "2"])
        });
        assert!(matches!(failed, Err(OfficeError::Broken(_))), "{failed:?}");
        let rows =
            rig.office.read(|tx| tx.rows("SELECT name FROM office WHERE name IN ('a', 'b')", &[])).expect("it reads");
        assert!(rows.is_empty(), "{rows:?}");
    });
}

#[test]
fn values_come_back_as_they_went_in() {
    each(|rig| {
        let columns = ["id", "device", "seq", "site", "reason", "came_ms", "body", "sig"];
        let rows: Vec<Vec<SqlValue>> = (0..3u8)
            .map(|n| {
                let site = (n > 0).then_some(EntryId([n; 32]));
                let (text, number) = (format!("Ärger ' \" {n}"), i64::MIN + i64::from(n));
                vec![
                    [n; 32].into(),
                    [9; 32].into(),
                    i64::from(n).into(),
                    site.into(),
                    text.into(),
                    number.into(),
                    vec![0, 255, n].into(),
                    [n; 64].into(),
                ]
            })
            .collect();
        rig.office.change(|tx| tx.insert("aside", &columns, "", &rows)).expect("it takes them");
        let sql = "SELECT id, device, seq, site, reason, came_ms, body, sig FROM aside WHERE id IN (@) ORDER BY seq";
        let ids: Vec<[u8; 32]> = (0..5u8).map(|n| [n; 32]).collect();
        let found = rig.office.read(|tx| tx.among(sql, &[], &ids)).expect("it reads");
        assert_eq!(found.len(), 3);
        for (row, n) in found.iter().zip(0u8..) {
            assert_eq!(row.hash(0), Ok([n; 32]));
            assert_eq!(row.maybe_id(3), Ok((n > 0).then_some(EntryId([n; 32]))));
            assert_eq!(row.text(4), Ok(format!("Ärger ' \" {n}")));
            assert_eq!(row.int(5), Ok(i64::MIN + i64::from(n)));
            assert_eq!(row.bytes(6), Ok(vec![0, 255, n]));
        }
        assert_eq!(rig.office.read(|tx| tx.among(sql, &[], &[])).expect("it reads").len(), 0);
    });
}

#[test]
fn a_newer_database_is_left_as_it_is() {
    let runtime = tokio::runtime::Runtime::new().expect("a runtime");
    let folder = tempfile::tempdir().expect("a folder");
    let url = postgres::database();
    for url in [None, Some(url.as_str())] {
        let open = || store::open(folder.path(), url, runtime.handle());
        let made = open().expect("it opens");
        let newer = if url.is_none() {
            drop(made);
            let db = rusqlite::Connection::open(folder.path().join(store::DATABASE)).expect("it opens");
            db.pragma_update(None, "user_version", 99).expect("set");
            None
        } else {
            store::change(&*made, |tx| tx.run("INSERT INTO office_version VALUES (99)", &[])).expect("set");
            Some(made)
        };
        let before = std::fs::read(folder.path().join(store::DATABASE)).expect("it is there");
        let why = open().err().expect("it is refused").to_string();
        assert!(why.contains("newer") && why.contains("99"), "{why}");
        assert_eq!(std::fs::read(folder.path().join(store::DATABASE)).expect("it is there"), before);
        drop(newer);
    }
    assert!(store::open(folder.path(), Some("mysql://x"), runtime.handle()).is_err());
}

#[test]
fn what_was_left_out_of_a_build_is_told_with_the_way_to_it() {
    let postgres = Some("postgres://office@db/office");
    let s3 = Some("s3://photos");
    let bare = Built { postgres: false, s3: false };
    let why = bare.lacks(postgres, None).expect("it is refused").to_string();
    assert!(why.contains("PostgreSQL") && why.contains("--features postgres,s3"), "{why}");
    let why = bare.lacks(None, s3).expect("it is refused").to_string();
    assert!(why.contains("S3") && why.contains("--features postgres,s3"), "{why}");
    assert_eq!(bare.lacks(None, Some("file:///srv/photos")), None);
    assert_eq!(bare.lacks(None, None), None);
    // An address that is none is told by whoever reads it.
    assert_eq!(bare.lacks(Some("mysql://x"), Some("s4://x")), None);
    // What tests stand on has both, or they would test less than they say.
    assert_eq!(Built::THIS.lacks(postgres, s3), None);
}

#[test]
fn processes_that_start_together_make_the_tables_once() {
    let url = postgres::database();
    let folder = tempfile::tempdir().expect("a folder");
    std::thread::scope(|scope| {
        let start = || {
            let runtime = tokio::runtime::Runtime::new().expect("a runtime");
            for url in [None, Some(url.as_str())] {
                store::open(folder.path(), url, runtime.handle()).map(drop).expect("it opens");
            }
        };
        (0..4).for_each(|_| drop(scope.spawn(start)));
    });
}

/// Phones that send at the same time, and a reader who pulls meanwhile: the reader gets every entry once, in one order.
#[test]
fn a_reader_never_passes_what_is_committed_later() {
    each(|rig| {
        let mut first = rig.phone(1, &[]);
        first.person("Mara Lind");
        let site = first.site("Hill Laundry");
        let job = first.job(site, "A job");
        first.push_all(rig);
        let writers: Vec<_> = (2..6u8)
            .map(|n| {
                let mut phone = rig.phone(n, &[site]);
                phone.person(&format!("Person {n}"));
                for k in 0..30 {
                    phone.told(site, job, &format!("{k}"));
                }
                phone
            })
            .collect();
        let reader = rig.phone(9, &[site]);
        let done = AtomicBool::new(false);
        let got = std::thread::scope(|scope| {
            let sending: Vec<_> = writers
                .iter()
                .map(|phone| {
                    scope.spawn(|| {
                        for part in phone.chain.chunks(3) {
                            let said = phone.push(rig, part);
                            assert!(said.iter().all(|a| a == "accepted"), "{said:?}");
                        }
                    })
                })
                .collect();
            let reading = scope.spawn(|| {
                let (mut got, mut after) = (Vec::new(), String::new());
                loop {
                    let last = done.load(Ordering::SeqCst);
                    let page =
                        reader.ask(rig, "GET", &format!("/entries?after={after}&limit=5"), &[], "").is(200).json();
                    got.extend(entries(&page).into_iter().map(|e| e.id));
                    after = page["next"].as_str().expect("a cursor").to_owned();
                    if last && page["more"] == false {
                        return got;
                    }
                }
            });
            for sender in sending {
                sender.join().expect("it sent");
            }
            done.store(true, Ordering::SeqCst);
            reading.join().expect("it read")
        });
        let sent: BTreeSet<EntryId> =
            writers.iter().flat_map(|p| p.chain.iter()).chain(&first.chain).map(|e| e.id).collect();
        assert_eq!(got.len(), sent.len(), "each once");
        assert_eq!(got.iter().copied().collect::<BTreeSet<_>>(), sent);
        // Whoever pulls later gets the same order.
        let whole: Vec<EntryId> = reader.pull(rig, 500).iter().map(|e| e.id).collect();
        assert_eq!(whole, got);
    });
}
