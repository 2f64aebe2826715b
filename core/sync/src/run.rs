//! One exchange with the office: hand over what is new here, fetch what others wrote, compare, then photos. The lock on the journal is
//! held for each look into the database and never while the network is waited for.

use std::sync::Mutex;

use super::office::{OfficeClient, PutBegun};
use super::rules::{ExchangeTrouble, Size, Waits, goes};
use crate::holder::{Done, Exchanged, Holder};
use stillbar_journal::DeviceId;
use stillbar_protocol::limits::PIECE_BYTES as PIECE;
use stillbar_protocol::{Answer, Carried, Digest, EXCHANGE, Push, Why, WireEntry};

/// Entries that are handed over at once; fewer after a failure.
const AT_ONCE: u32 = 200;
/// How often the office may ask for an earlier beginning before a person is asked.
const MAX_GAPS: usize = 3;
/// Photos that one exchange sends and fetches, so that entries are looked at again in between.
const MAX_PHOTOS: usize = 40;

type ExchangeOutcome<T> = Result<T, ExchangeTrouble>;

/// Looks into the journal. A panic elsewhere was a bug; what is on disk is whole.
pub fn with<H: Holder, T>(
    stand: &Mutex<H>,
    look: impl FnOnce(&mut H::Journal) -> Result<T, <H::Journal as Exchanged>::Error>,
) -> ExchangeOutcome<T> {
    let mut stand = stand.lock().unwrap_or_else(|poisoned| poisoned.into_inner());
    let done = match stand.open() {
        Ok(session) => look(session),
        Err(why) => return Err(ExchangeTrouble::Away(stand.says(why))),
    };
    done.map_err(|why| ExchangeTrouble::Garbled(format!("on this device: {}", stand.says(why))))
}

/// Exchanges everything that can go now. `failures`: how often it failed just before; pages get smaller.
pub fn exchange<H: Holder>(stand: &Mutex<H>, office: &OfficeClient, failures: u32) -> ExchangeOutcome<Done> {
    let mut done = Done::default();
    let able = office.capabilities()?;
    if able.exchange != EXCHANGE {
        let say = format!(
            "The office speaks version {} of the exchange, this app version {EXCHANGE}. Update the older one.",
            able.exchange
        );
        return Err(ExchangeTrouble::Refused(say));
    }
    let page = (AT_ONCE >> failures.min(5)).clamp(5, able.entries_per_push.max(5));
    with(stand, |i| {
        i.hear_office_clock(able.now_ms);
        Ok(())
    })?;
    // What the office refuses is said at the end: what others wrote is heard all the same.
    let refused = match push(stand, office, page) {
        Ok(pushed) => {
            done.pushed = pushed;
            None
        }
        Err(trouble @ ExchangeTrouble::Refused(_)) => Some(trouble),
        Err(trouble) => return Err(trouble),
    };
    done.pulled = pull(stand, office, page)?;
    let doubted = with(stand, |i| Ok(i.agreed() == Some(false)))?;
    let mut agreed = agrees(stand, &office.digest()?)?;
    if !agreed && !doubted {
        // Pulled again from the beginning: what is here stays, what is missing comes.
        with(stand, |i| i.set_cursor(""))?;
        done.pulled += pull(stand, office, page)?;
        agreed = agrees(stand, &office.digest()?)?;
    }
    with(stand, |i| {
        i.note_agreed(agreed);
        Ok(())
    })?;
    if let Some(trouble) = refused {
        return Err(trouble);
    }
    with(stand, |i| i.note_reached())?;
    (done.photos, done.more) = photos(stand, office, able.photo_bytes)?;
    Ok(done)
}

fn push<H: Holder>(stand: &Mutex<H>, office: &OfficeClient, page: u32) -> ExchangeOutcome<usize> {
    let (chains, known_by) = with(stand, |i| Ok((i.chains(), i.office_device())))?;
    let mut pushed = 0;
    for of in chains {
        match push_chain(stand, office, page, of, known_by) {
            Ok(count) => pushed += count,
            // The end of a key that goes on no more: the office has seen that it has two ends, and nothing is to be sent again.
            Err(ExchangeTrouble::Refused(_)) if with(stand, |i| Ok(i.is_former(of)))? => {
                with(stand, |i| i.note_pushed(of, i.end_of(of), 0))?;
            }
            Err(trouble) => return Err(trouble),
        }
    }
    Ok(pushed)
}

/// Hands over one chain. `known_by`: the device that the office knows this one by; another chain is handed on.
fn push_chain<H: Holder>(
    stand: &Mutex<H>,
    office: &OfficeClient,
    page: u32,
    of: DeviceId,
    known_by: DeviceId,
) -> ExchangeOutcome<usize> {
    let (mut pushed, mut gaps) = (0, 0);
    loop {
        let batch = with(stand, |i| i.to_push(of, page as usize))?;
        let Some(first) = batch.first() else { return Ok(pushed) };
        let first = first.body.seq;
        let push = Push { entries: batch.iter().map(WireEntry::of).collect() };
        let answer = office.push(&push, Some(of).filter(|of| *of != known_by))?;
        let taken = answer.answers.iter().take_while(|a| a.answer.taken()).count();
        let aside = answer.answers.iter().filter(|a| a.answer == Answer::Aside).count();
        pushed += taken;
        let refused = answer.answers.get(taken).map(|a| a.reason.unwrap_or(Why::Unknown));
        let gap = refused == Some(Why::Gap);
        let to = if gap { answer.last.seq } else { first.saturating_sub(1) + taken as u64 };
        with(stand, |i| {
            i.told_of_own(of, answer.last.seq);
            if refused == Some(Why::Fork) {
                i.told_of_fork(of);
            }
            i.note_pushed(of, to, aside)
        })?;
        match refused {
            Some(_) if gap && gaps < MAX_GAPS => gaps += 1,
            Some(why) => {
                let why = match why {
                    Why::Unknown => "the office says why in a way that this app does not know; update it".into(),
                    why => why.word().replace('-', " "),
                };
                return Err(ExchangeTrouble::Refused(format!("Entry {} of this device was not taken: {why}.", to + 1)));
            }
            None if taken == 0 => return Err(ExchangeTrouble::Garbled("no answer for any entry".into())),
            None => {}
        }
    }
}

fn pull<H: Holder>(stand: &Mutex<H>, office: &OfficeClient, page: u32) -> ExchangeOutcome<usize> {
    let mut pulled = 0;
    loop {
        let (after, own) = with(stand, |i| Ok((i.cursor(), i.lacks_own())))?;
        let got = office.pull(&after, page, own)?;
        // Signatures are checked before the journal is held. What is no entry is left out; the comparison afterwards finds it missing.
        let entries: Vec<_> = got.entries.iter().filter_map(WireEntry::open).collect();
        pulled += with(stand, |i| {
            let new = i.take_in_new(entries)?;
            i.note_erased(&got.erased)?;
            i.set_cursor(&got.next)?;
            Ok(new)
        })?;
        if !got.more || got.next == after {
            return Ok(pulled);
        }
    }
}

/// Whether the office holds of every site what is here, and the other way round.
fn agrees<H: Holder>(stand: &Mutex<H>, theirs: &Digest) -> ExchangeOutcome<bool> {
    let ours = with(stand, |i| {
        for sum in theirs.sites.iter().flat_map(|site| &site.devices) {
            i.told_of_own(sum.device, sum.last_seq);
        }
        i.sums()
    })?;
    Ok(theirs.sites.iter().all(|site| {
        let here = |sum: &stillbar_protocol::DeviceSum| ours.iter().any(|(of, own)| *of == site.site && own == sum);
        site.devices.iter().all(here)
    }))
}

fn photos<H: Holder>(stand: &Mutex<H>, office: &OfficeClient, most: u64) -> ExchangeOutcome<(usize, bool)> {
    let wanted = office.wanted()?.wanted;
    let free = with(stand, |i| Ok(i.link_is_free()))?;
    let mut queue: Vec<(Size, &str)> = Vec::new();
    for photo in &wanted {
        queue.extend(Size::ALL.iter().filter(|s| photo.sizes.contains(s)).map(|s| (*s, photo.sha256.as_str())));
    }
    queue.sort();
    let sizes: Vec<Size> = queue.iter().map(|(size, _)| *size).collect();
    with(stand, |i| {
        i.note_photos_left(&sizes);
        Ok(())
    })?;
    let mut sent = 0;
    let mut left = queue.iter().filter(|(size, _)| goes(*size, false, free) == Waits::Goes);
    for (size, sha256) in left.by_ref().take(MAX_PHOTOS) {
        // New entries go before the next photo.
        if with(stand, |i| Ok(i.has_news()))? {
            return Ok((sent, true));
        }
        let name = format!("{sha256}{}", size.suffix());
        let Some(bytes) = with(stand, |i| Ok(i.photo_to_send(&name)))? else {
            with(stand, |i| {
                i.note_photo_missing(sha256);
                Ok(())
            })?;
            continue;
        };
        if bytes.len() as u64 > most {
            continue;
        }
        send(stand, office, sha256, *size, &bytes)?;
        sent += 1;
    }
    let more = left.next().is_some();
    // The pictures of others' locks, small, so that an answer can show them without signal.
    for sha256 in with(stand, |i| i.pictures_lacked(MAX_PHOTOS))? {
        match office.photo(&format!("{sha256}{}", Size::Thumbnail.suffix())) {
            Ok(bytes) => with(stand, |i| i.keep_picture(&sha256, &bytes))?,
            // Not there yet, or erased: asked for again another time.
            Err(ExchangeTrouble::Refused(_)) => {}
            Err(trouble) => return Err(trouble),
        }
    }
    Ok((sent, more))
}

/// Sends one photo from the byte where it broke off.
fn send<H: Holder>(
    stand: &Mutex<H>,
    office: &OfficeClient,
    sha256: &str,
    size: Size,
    bytes: &[u8],
) -> ExchangeOutcome<()> {
    let length = bytes.len() as u64;
    let known = with(stand, |i| Ok(i.upload_place(sha256, size)))?;
    let there = match &known {
        Some(place) => office.there(place)?.map(|at| (place.clone(), at)),
        None => None,
    };
    let (place, mut at) = match there {
        Some(there) => there,
        None => match office.begin(sha256, size, length)? {
            PutBegun::Here => return with(stand, |i| i.keep_upload_place(sha256, size, None)),
            PutBegun::At(place) => {
                with(stand, |i| i.keep_upload_place(sha256, size, Some(&place)))?;
                (place, 0)
            }
        },
    };
    while at < length {
        let from = usize::try_from(at).unwrap_or(usize::MAX).min(bytes.len());
        let piece = &bytes[from..bytes.len().min(from + PIECE)];
        let next = office.add(&place, at, piece)?;
        if next <= at {
            // The office lost it: it begins again next time.
            with(stand, |i| i.keep_upload_place(sha256, size, None))?;
            return Err(ExchangeTrouble::Garbled("an upload that does not go on".into()));
        }
        at = next;
    }
    with(stand, |i| i.keep_upload_place(sha256, size, None))
}
