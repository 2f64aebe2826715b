//! How old something is, by the clock that deserves it.
//!
//! Within one start of one device its running clock counts, which nobody sets and which goes on while it sleeps. Anywhere else the wall
//! clocks count, taken as the longer age for a proof and the shorter one for a wait; a wall clock that cannot be right makes a proof old.

use crate::journal::{DeviceId, Hlc, Running, Stamp};

/// How far a wall clock may be ahead of another witness, in milliseconds. Our rule, no source.
pub const CLOCK_DOUBT_MS: i64 = 5 * 60_000;

/// A moment by all clocks of a device.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Moment {
    /// The device.
    pub device: DeviceId,
    /// Its running clock, if it has one.
    pub running: Option<Running>,
    /// Its wall clock, in milliseconds since 1970-01-01T00:00Z.
    pub wall: i64,
    /// The journal's clock on it.
    pub clock: Hlc,
    /// Another witness, the office or a phone beside, had another time by more than [`CLOCK_DOUBT_MS`].
    pub doubt: bool,
}

impl Moment {
    /// When an entry was written, by its device's clocks.
    pub fn of(stamp: &Stamp) -> Moment {
        Moment { device: stamp.device, running: stamp.running, wall: stamp.wall, clock: stamp.clock, doubt: false }
    }
}

/// Milliseconds by the running clock, where both moments are within one start of one device.
fn ran(from: &Stamp, to: &Moment) -> Option<i64> {
    let (a, b) = (from.running?, to.running?);
    let same = from.device == to.device && a.start == b.start && b.ms >= a.ms;
    same.then(|| i64::try_from(b.ms - a.ms).unwrap_or(i64::MAX))
}

/// How old a proof is, in milliseconds, taken as the longer; `None` if no clock can be believed: then prove again.
pub fn oldest(from: &Stamp, to: &Moment) -> Option<i64> {
    if let Some(ms) = ran(from, to) {
        return Some(ms);
    }
    let wall = to.wall.saturating_sub(from.wall);
    // Two devices are never quite together; one device does not go back by itself.
    let back = if from.device == to.device { 0 } else { -CLOCK_DOUBT_MS };
    if to.doubt || wall < back {
        return None;
    }
    Some(wall.max(to.clock.0.saturating_sub(from.clock.0)).max(0))
}

/// By how many milliseconds a device's wall clock was set forward between two of its entries, or back if below nothing, as its running
/// clock tells; `None` where that says nothing.
pub fn moved(from: &Stamp, to: &Stamp) -> Option<i64> {
    let (a, b) = (from.running?, to.running?);
    let ms = |running: Running| i64::try_from(running.ms).unwrap_or(i64::MAX);
    let ran = ms(b).saturating_sub(ms(a));
    (from.device == to.device && a.start == b.start).then(|| to.wall.saturating_sub(from.wall).saturating_sub(ran))
}

/// How long ago something was, in milliseconds, taken as the shorter.
pub fn shortest(from: &Stamp, to: &Moment) -> i64 {
    ran(from, to).unwrap_or_else(|| {
        let wall = to.wall.saturating_sub(from.wall);
        if to.doubt { 0 } else { wall.min(to.clock.0.saturating_sub(from.clock.0)).max(0) }
    })
}
