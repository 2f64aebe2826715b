//! Moments as a person reads them.

use jiff::Timestamp;
use jiff::tz::Offset;

use super::catalogue::say;

/// "10:42" on the day of `now`, "24 Nov 10:42" on another day of that year, "2025-11-24 10:42" otherwise.
/// `wall` and `now` in milliseconds since 1970-01-01T00:00Z, `zone` in minutes ahead of UTC.
pub fn when(wall: i64, zone: i32, now: i64) -> String {
    let (Some(at), Some(today)) = (civil(wall, zone), civil(now, zone)) else {
        return say!("time-unreadable");
    };
    if at.date() == today.date() {
        at.strftime("%H:%M").to_string()
    } else if at.year() == today.year() {
        say!("time-of-year", day = at.day(), month = month(at.month()), time = at.strftime("%H:%M").to_string())
    } else {
        at.strftime("%Y-%m-%d %H:%M").to_string()
    }
}

/// "Nov": a month, 1 to 12, in short.
fn month(number: i8) -> String {
    say!("month", number = number)
}

/// "2026-11-25 10:42:07" with seconds, for the time line.
pub fn exact(wall: i64, zone: i32) -> String {
    civil(wall, zone).map_or_else(|| say!("time-exact-unreadable"), |at| at.strftime("%Y-%m-%d %H:%M:%S").to_string())
}

/// How long something is, in the unit that says it: minutes up to two hours, hours up to two days, then days.
pub fn long(ms: i64) -> String {
    match ms / 60_000 {
        minutes if minutes < 120 => say!("long-minutes", minutes = minutes),
        minutes if minutes < 48 * 60 => say!("long-hours", hours = minutes / 60),
        minutes => say!("long-days", days = minutes / (24 * 60)),
    }
}

/// "2026-11-25T10:42:07+01:00" (RFC 3339).
pub fn rfc3339(wall: i64, zone: i32) -> String {
    let sign = if zone < 0 { '-' } else { '+' };
    let (hours, minutes) = (zone.unsigned_abs() / 60, zone.unsigned_abs() % 60);
    civil(wall, zone).map_or_else(
        || say!("time-exact-unreadable"),
        |at| format!("{}{sign}{hours:02}:{minutes:02}", at.strftime("%Y-%m-%dT%H:%M:%S")),
    )
}

fn civil(wall: i64, zone: i32) -> Option<jiff::civil::DateTime> {
    let offset = Offset::from_seconds(zone.checked_mul(60)?).ok()?;
    Some(offset.to_datetime(Timestamp::from_millisecond(wall).ok()?))
}
