//! The demo: invented people, an invented site, jobs at different steps, made by playing journeys through the real screens.
//!
//! Nothing is written past the gate, so what the demo shows is what the app does. Start at [`seed`].

use std::sync::Arc;
use std::sync::atomic::{AtomicI64, Ordering};

use crate::app::{Field, Platform, PlatformError};
use crate::journey::{Props, play};

const PEOPLE: &str = include_str!("../../journeys/people.journey");
const PLAN: &str = include_str!("../../journeys/plan.journey");
const ADD_INSTRUMENTS: &str = include_str!("../../journeys/add-instruments.journey");
const CHECK_INSTRUMENTS: &str = include_str!("../../journeys/check-instruments.journey");
const CIRCUITS: &str = include_str!("../../journeys/circuits.journey");
const ISOLATE: &str = include_str!("../../journeys/isolate.journey");
const PROVE: &str = include_str!("../../journeys/prove.journey");
const WORK: &str = include_str!("../../journeys/work.journey");
const RESTORE: &str = include_str!("../../journeys/restore.journey");
const INDICATION: &str = include_str!("../../journeys/indication.journey");

const NETWORK: &str = include_str!("network.journey");

/// The picture that the demo's photos show: drawn for it, a lock and a label.
pub const PHOTO: &[u8] = include_bytes!("lock.png");

/// The tag at the demo's feeder switch Q6. Who has no camera types it.
pub const TAG: &str = "STB7K2M9PX4W6BHE";

const HOUR: i64 = 3_600_000;

/// The device's own clock, set back while the demo's past is made.
struct Past {
    device: Arc<dyn Platform>,
    back: AtomicI64,
}

impl Platform for Past {
    fn running(&self) -> Option<crate::journal::Running> {
        None
    }
    // A demo that is written anew takes the place of another chain: that is answered for while it is written.
    fn load_head(&self) -> Result<Option<Vec<u8>>, PlatformError> {
        self.device.load_head()
    }
    fn store_head(&self, head: Vec<u8>) -> Result<(), PlatformError> {
        self.device.store_head(head)
    }
    fn now_ms(&self) -> i64 {
        self.device.now_ms() - self.back.load(Ordering::Relaxed)
    }
    fn offset_minutes(&self, at_ms: i64) -> i32 {
        self.device.offset_minutes(at_ms)
    }
    fn random(&self, count: u32) -> Vec<u8> {
        self.device.random(count)
    }
    fn load_secret(&self) -> Result<Option<Vec<u8>>, PlatformError> {
        self.device.load_secret()
    }
    fn store_secret(&self, secret: Vec<u8>) -> Result<(), PlatformError> {
        self.device.store_secret(secret)
    }
}

/// Fills the empty `folder` with the demo. The error says which line of which journey failed.
pub fn seed(folder: &str, device: Arc<dyn Platform>) -> Result<(), String> {
    let past = Arc::new(Past { device, back: AtomicI64::new(50 * HOUR) });
    let field = Field::open(folder.to_owned(), past.clone()).map_err(|e| e.to_string())?;
    let wait = |ms: i64| {
        past.back.fetch_sub(ms, Ordering::Relaxed);
    };
    let props = Props { photo: PHOTO, wait: &wait };
    let home = || {
        field.act(None, "go /".into(), vec![]);
    };
    let tell = |name: &str, scripts: &[&str], other: &[(&str, &str)]| -> Result<(), String> {
        home();
        for script in scripts {
            let told = other.iter().fold((*script).to_owned(), |text, (from, to)| text.replace(from, to));
            play(&field, &told, &props).map_err(|why| format!("the demo's {name}: {why}"))?;
        }
        Ok(())
    };

    tell("people", &[PEOPLE], &[])?;
    tell("finished job", &[PLAN, ADD_INSTRUMENTS, CIRCUITS, ISOLATE, PROVE, WORK, RESTORE], &[])?;

    // Sites of their own: what another job finds at a site asks every job there, and ends its proof until it is answered.
    past.back.store(5 * HOUR, Ordering::Relaxed);
    let fan = [
        ("Brook Lane dye works", "Quay Road cold store"),
        ("Replace the outgoing breaker of washer 4", "Change the contactor of extractor fan 2"),
        ("Breaker 4 and its tails", "Contactor K2 and its terminals"),
        ("DB4", "DB6"),
        ("Plant room 2, ground floor", "Roof plant room"),
        ("door of plant room 2", "door of the roof plant room"),
        ("Q4", "Q6"),
        ("bay 4", "bay 6"),
        ("Q9", "Q12"),
        ("F1 washers", "F1 fans"),
        ("Washers 1 to 4", "Extractor fans 1 and 2"),
        ("Washers stopped", "Fans stopped"),
        ("ML 7", "ML 3"),
        ("ML 8", "ML 4"),
    ];
    // Met first in this job, so that a scan has something to tell.
    let tag = format!(
        "tap The job\ntap Isolate Q4 feeder switch\ntap Tag of Q4 feeder switch\nscan Scan the tag here = {TAG}\n\
         tap It hangs at Q4 feeder switch\nphoto Photo of Q4 feeder switch = {TAG}"
    );
    tell("job at work", &[PLAN, CHECK_INSTRUMENTS, CIRCUITS, ISOLATE, &tag, PROVE, "tap Begin work"], &fan)?;

    past.back.store(2 * HOUR, Ordering::Relaxed);
    let trap = [
        ("Brook Lane dye works", "Mill Street workshops"),
        ("Replace the outgoing breaker of washer 4", "Move the socket circuit of bay 3"),
        ("Breaker 4 and its tails", "Way 3 and its neutral"),
        ("DB4", "DB7"),
        ("Plant room 2, ground floor", "Dye store, first floor"),
        ("Door of plant room 2", "Stair door of the dye store"),
        ("Q4", "Q7"),
        ("bay 4", "bay 7"),
        ("Q9", "Q13"),
        ("ML 7", "ML 5"),
        ("ML 8", "ML 6"),
    ];
    tell("job with a trap", &[PLAN, CHECK_INSTRUMENTS, CIRCUITS, ISOLATE, INDICATION], &trap)?;

    past.back.store(HOUR / 2, Ordering::Relaxed);
    // At the site of the first job, whose generator it is asked for.
    let looked = "fill Where you looked = DB5, its drawing";
    let answered = format!(
        "fill Or why it does not reach this work = Followed to its changeover; this board has another way\n\
         tap It does not reach this work\n{looked}"
    );
    let dryer = [
        ("Replace the outgoing breaker of washer 4", "Add a way for the new dryer"),
        ("Breaker 4 and its tails", "One new way"),
        ("DB4", "DB5"),
        ("Plant room 2, ground floor", "Laundry, ground floor"),
        ("Door of plant room 2", "Laundry door"),
        ("Q4", "Q5"),
        ("bay 4", "bay 5"),
        ("Q9", "Q14"),
        (looked, answered.as_str()),
    ];
    tell("planned job", &[PLAN, CHECK_INSTRUMENTS, CIRCUITS], &dryer)?;
    tell("network", &[NETWORK], &[])?;
    home();
    Ok(())
}
