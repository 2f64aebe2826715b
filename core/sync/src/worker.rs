//! The thread that talks to the office. It sleeps until it is woken or the next try is due; nothing ends it but the end of the app.

use std::sync::mpsc::{Receiver, RecvTimeoutError, Sender, channel};
use std::sync::{Arc, Mutex, MutexGuard, Weak};
use std::thread;
use std::time::Duration;

use super::office::OfficeClient;
use super::rules::{ExchangeTrouble, LONGEST_WAIT_MS, Next, wait_ms};
use super::run::{exchange, with};
use crate::holder::{Done, Exchanged, Holder};

/// Wakes the thread. When it is dropped, the thread ends.
pub struct Waker(Sender<()>);

impl Waker {
    /// There is something to do, or it is a good time. Never waits.
    pub fn wake(&self) {
        let _ = self.0.send(());
    }
}

/// Starts the thread. It holds nothing that would keep the app's journal open.
pub fn start<H: Holder>(stand: Weak<Mutex<H>>, talking: Arc<Mutex<()>>) -> Waker {
    let (sender, woken) = channel();
    // Without a thread there is no exchange, and everything else goes on.
    let _ = thread::Builder::new().name("exchange".into()).spawn(move || run(&stand, &talking, &woken));
    Waker(sender)
}

/// One at a time talks to the office.
pub fn alone(talking: &Mutex<()>) -> MutexGuard<'_, ()> {
    talking.lock().unwrap_or_else(|poisoned| poisoned.into_inner())
}

fn run<H: Holder>(stand: &Weak<Mutex<H>>, talking: &Mutex<()>, woken: &Receiver<()>) {
    let mut wait = Duration::ZERO;
    loop {
        match woken.recv_timeout(wait) {
            Err(RecvTimeoutError::Disconnected) => return,
            // Many taps in a row are one reason.
            Ok(()) => while woken.try_recv().is_ok() {},
            Err(RecvTimeoutError::Timeout) => {}
        }
        let Some(stand) = stand.upgrade() else { return };
        let _alone = alone(talking);
        wait = Duration::from_millis(turn(&stand));
    }
}

/// One turn: joins if a person asked for it, exchanges if there is an office, and notes what came of it. Returns how long to wait until the
/// next, in milliseconds.
pub fn turn<H: Holder>(stand: &Mutex<H>) -> u64 {
    let Ok(failures) = with(stand, |i| Ok(i.failures())) else { return LONGEST_WAIT_MS };
    let done = match join(stand) {
        Some(Err(trouble)) => Err(trouble),
        _ => match once(stand, failures) {
            None => return LONGEST_WAIT_MS,
            Some(done) => done,
        },
    };
    let wait = match &done {
        Ok(Done { more: true, .. }) => 0,
        Ok(_) => LONGEST_WAIT_MS,
        Err(trouble) => wait_ms(failures + 1, trouble.next()),
    };
    // Put aside meanwhile: what came of it is told by the next exchange.
    let _ = with(stand, |session| {
        session.note_exchange(done, failures, wait);
        Ok(())
    });
    wait
}

/// One exchange with this office, noted like any other.
pub fn over<H: Holder>(stand: &Mutex<H>, office: &OfficeClient) -> Result<Done, ExchangeTrouble> {
    let failures = with(stand, |i| Ok(i.failures()))?;
    let done = exchange(stand, office, failures);
    let wait = done.as_ref().map_or_else(|trouble| wait_ms(failures + 1, trouble.next()), |_| LONGEST_WAIT_MS);
    with(stand, |session| {
        session.note_exchange(done.clone(), failures, wait);
        Ok(())
    })?;
    done
}

/// One exchange with the office, if this device belongs to one.
pub fn once<H: Holder>(stand: &Mutex<H>, failures: u32) -> Option<Result<Done, ExchangeTrouble>> {
    let office = with(stand, |session| {
        let office = session.office();
        session.note_running(office.is_some());
        Ok(office)
    });
    Some(exchange(stand, &office.ok()??, failures))
}

/// Joins the office that a person asked for; `None` if nobody did.
pub fn join<H: Holder>(stand: &Mutex<H>) -> Option<Result<(), ExchangeTrouble>> {
    let asked = with(stand, |session| Ok(session.joining()));
    let (join, ask) = asked.ok()??;
    let answer = OfficeClient::new(&join.url, "").enrol(&ask);
    Some(match answer {
        Ok(enrolled) => with(stand, |session| session.joined(&join.url, &enrolled)),
        Err(trouble) => {
            // What the office refused is not asked again by itself: the code is used up.
            if trouble.next() == Next::Ask {
                let _ = with(stand, |session| {
                    session.stop_joining();
                    Ok(())
                });
            }
            Err(trouble)
        }
    })
}
