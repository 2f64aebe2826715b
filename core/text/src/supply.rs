//! What the supply network answers: paths, doubts, proposals, the order of restoring, whom a change touches.

use super::catalogue::say;
use super::lists::{commas, listed};
use super::words::{link_kind, quoted, source_sort};
use stillbar_rules::supply::{
    Answer, Caution, Check, Doubtful, LeftJoined, LinkKind, MAX_CONDUCTORS, MAX_ID, MAX_PARTS, Named, NetworkFault,
    Over, OverLock, Path, Position, Proposal, Proposals, SourceSort, StaysOpen, Touched, Uncut, Where, Worth,
};

/// The most links that a sentence names one by one.
const NAMED: usize = 12;
/// The most reasons that are told of a job that a change touches.
const REASONS: usize = 3;

/// What has to be said beside every answer.
pub fn other_sources() -> String {
    say!("other-sources")
}

/// Which of the three answers a check is, in a word or two.
pub fn answer(answer: Answer) -> String {
    match answer {
        Answer::Cut => say!("answer-cut"),
        Answer::NotCut => say!("answer-not-cut"),
        Answer::NotShown => say!("answer-not-shown"),
    }
}

/// The answer to a check, in a sentence.
pub fn check(check: &Check) -> String {
    let zone = zone(&check.zone);
    match check.answer() {
        Answer::Cut => say!("check-cut", zone = zone),
        Answer::NotShown => say!("check-not-shown", zone = zone),
        Answer::NotCut => say!("check-not-cut", zone = zone, sources = check.sources),
    }
}

fn zone(ids: &[String]) -> String {
    commas(ids.iter().cloned())
}

/// The id, with what is written on the part where that is more.
fn named(part: &Named) -> String {
    if part.label.is_empty() || part.label == part.id { part.id.clone() } else { with(&part.id, &part.label) }
}

fn with(id: &str, more: &str) -> String {
    say!("named", id = id, more = more)
}

/// Why nobody knows enough of a part, in a sentence.
pub fn doubt(why: &Doubtful) -> String {
    match why {
        Doubtful::LockUntraced { link } => say!("doubt-lock-untraced", link = named(link)),
        Doubtful::LockPartsNothing { link, kind } => {
            say!("doubt-lock-parts-nothing", link = named(link), kind = link_kind(*kind))
        }
        Doubtful::TakesNoLock { link } => say!("doubt-takes-no-lock", link = named(link)),
        Doubtful::LeavesJoined { link, left } => {
            say!("doubt-leaves-joined", link = named(link), left = left_joined(left))
        }
        Doubtful::LockOnNode { id, kind } => say!("doubt-lock-on-node", id = quoted(id, MAX_ID), kind = kind.name()),
        Doubtful::LockNowhere { id } => say!("doubt-lock-nowhere", id = quoted(id, MAX_ID)),
        Doubtful::NodeUnknown { node } => say!("doubt-node-unknown", node = named(node)),
        Doubtful::NodeUndescribed { node } => say!("doubt-node-undescribed", node = named(node)),
        Doubtful::NodeUntraced { node, what } => say!("doubt-node-untraced", node = named(node), what = what),
        Doubtful::LinkUntraced { link, from, to } => {
            say!("doubt-link-untraced", link = named(link), from = from, to = to)
        }
    }
}

/// What stays joined when a link is open.
pub fn left_joined(left: &LeftJoined) -> String {
    match left {
        LeftJoined::Unnoted => say!("left-unnoted"),
        LeftJoined::Named(names) => say!("left-named", names = commas(names.iter().cloned())),
        LeftJoined::Fewer { opens, of } => say!("left-fewer", opens = *opens, of = *of),
    }
}

/// An uncovered path, in a sentence.
pub fn path(path: &Path) -> String {
    let source = source(path);
    let Some(to) = &path.to else { return say!("path-in-zone", source = source) };
    let to = named(to);
    let over = |links: &[Over]| links.iter().map(on_way).collect::<Vec<String>>();
    match path.over.len() {
        0 => say!("path-bare", source = source, to = to),
        1..=NAMED => say!("path-through", source = source, to = to, over = listed(over(&path.over))),
        n => {
            let first = commas(over(&path.over[..NAMED]));
            say!("path-through-more", source = source, to = to, over = first, more = n - NAMED)
        }
    }
}

fn source(path: &Path) -> String {
    let Named { id, label } = &path.source;
    match path.sort {
        SourceSort::Unsaid => named(&path.source),
        sort if label.is_empty() && id.eq_ignore_ascii_case(&source_sort(sort)) => named(&path.source),
        sort if label.is_empty() => with(id, &source_sort(sort)),
        _ => with(id, label),
    }
}

/// A link on a path, where it normally stands, and what of it matters there.
fn on_way(over: &Over) -> String {
    let link = named(&over.link);
    if !over.kind.switches() {
        return match over.kind {
            LinkKind::Unknown => say!("over-untraced", link = link),
            kind => with(&link, &link_kind(kind)),
        };
    }
    let stands = match over.normally {
        Position::Open => say!("normally-open"),
        Position::Closed => say!("normally-closed"),
    };
    let lock = match (over.lock, over.normally) {
        (OverLock::CountsNot, _) => say!("over-lock-counts-not"),
        (OverLock::TakesNone, _) => say!("over-lock-takes-none"),
        (OverLock::Off, Position::Open) => say!("over-lock-not-open"),
        (OverLock::Off, Position::Closed) => say!("over-lock-not"),
    };
    match over.kind {
        LinkKind::Switch => say!("over-switch", link = link, stands = stands, lock = lock),
        kind => say!("over-kind", link = link, kind = link_kind(kind), stands = stands, lock = lock),
    }
}

/// What keeps a work zone from being cut, in a sentence.
pub fn uncut(why: &Uncut) -> String {
    match why {
        Uncut::Way(way) => path(way),
        Uncut::Doubt(why) => doubt(why),
        Uncut::ZoneGone { zone: ids } => say!("zone-gone", zone = zone(ids)),
    }
}

/// What proposals have to say as a whole, in sentences.
pub fn proposals(found: &Proposals) -> Vec<String> {
    let zone = zone(&found.zone);
    let mut says = Vec::new();
    if let Some(bare) = &found.bare {
        says.push(say!("proposals-bare", zone = &*zone, path = path(bare)));
    } else if found.proposals.iter().any(|p| p.lock.is_empty()) {
        says.push(say!("proposals-no-source", zone = &*zone));
    }
    if !found.not_shown.is_empty() {
        let parts: Vec<String> = found.not_shown.iter().map(|d| doubt(&d.why)).collect();
        says.push(say!("proposals-not-shown", zone = &*zone, parts = parts.join(" ")));
    }
    if !found.complete {
        says.push(say!("proposals-not-all"));
    }
    says
}

/// A proposal, in a sentence.
pub fn proposal(proposal: &Proposal) -> String {
    match proposal.loses.len() {
        0 => say!("proposal-loses-none", links = listed(proposal.lock.clone())),
        lost => say!("proposal", links = listed(proposal.lock.clone()), lost = lost),
    }
}

/// What a proposal is the best in, inside a sentence.
pub fn worth(worth: Worth) -> String {
    match worth {
        Worth::Best => say!("worth-best"),
        Worth::FewestLost => say!("worth-fewest-lost"),
        Worth::FewestLocks => say!("worth-fewest-locks"),
        Worth::Between => say!("worth-between"),
    }
}

/// Why points stay open, in a sentence or two.
pub fn stays_open(why: &StaysOpen) -> String {
    match why {
        StaysOpen::Locked { link, job } => say!("stays-locked", link = link, job = job),
        StaysOpen::Fed { job, already: true, path: way } => say!("stays-fed-already", job = job, path = path(way)),
        StaysOpen::Fed { job, already: false, path: way } => say!("stays-fed", job = job, path = path(way)),
    }
}

/// What to look out for when a link is closed, in a sentence.
pub fn caution(caution: &Caution) -> String {
    match caution {
        Caution::Joins { first, then } => say!("caution-joins", first = first, then = then),
        Caution::NoSupply => say!("caution-no-supply"),
    }
}

/// What a change means to a job, in a sentence or two.
pub fn touched(touched: &Touched) -> String {
    let after = &touched.after;
    let why: Vec<String> = match after.paths.is_empty() {
        false => after.paths.iter().take(REASONS).map(path).collect(),
        true => after.not_shown.iter().take(REASONS).map(|d| doubt(&d.why)).collect(),
    };
    let (job, zone, why) = (&*touched.name, listed(touched.before.zone.clone()), why.join(" "));
    match touched.before.cut {
        true => say!("touched-cut", job = job, zone = zone, why = why),
        false => say!("touched-not-cut", job = job, zone = zone, why = why),
    }
}

/// Why nodes and links are no network, or a question cannot be asked of it; begins with a small letter.
pub fn network_fault(why: &NetworkFault) -> String {
    let id_of = |id: &String| quoted(id, MAX_ID);
    match why {
        NetworkFault::TooLarge { nodes, links } => {
            say!("network-too-large", nodes = *nodes, links = *links, most = MAX_PARTS)
        }
        NetworkFault::InletAlone => say!("network-inlet-alone"),
        NetworkFault::NoZone => say!("network-no-zone"),
        NetworkFault::NotThere { id } => say!("network-not-there", id = id_of(id)),
        NetworkFault::NoLink { id } => say!("network-no-link", id = id_of(id)),
        NetworkFault::NotSwitched { id, kind } => say!("network-not-switched", id = id_of(id), kind = link_kind(*kind)),
        NetworkFault::IdTwice { id, first } => say!("network-id-twice", id = id_of(id), first = part(*first)),
        NetworkFault::EndsAlike { id } => say!("network-ends-alike", id = id_of(id)),
        NetworkFault::ListTooLong { count, most } => say!("list-too-long", count = *count, most = *most),
        NetworkFault::TellEmpty => say!("network-tell-empty"),
        NetworkFault::SortOfNone { kind } => say!("network-sort-of-none", kind = kind.name()),
        NetworkFault::NotLockable { kind } => say!("network-not-lockable", kind = link_kind(*kind)),
        NetworkFault::IdEmpty => say!("network-id-empty"),
        NetworkFault::IdComma { id } => say!("network-id-comma", id = id_of(id)),
        NetworkFault::Unseen => say!("network-unseen"),
        NetworkFault::TooLong { count, most } => say!("network-too-long", count = *count, most = *most),
        NetworkFault::ConductorCount { count } => {
            say!("network-conductor-count", most = MAX_CONDUCTORS, count = *count)
        }
        NetworkFault::ConductorTwice { name } => say!("network-conductor-twice", name = id_of(name)),
    }
}

/// A part by its place in its list, as files write it.
fn part(place: Where) -> String {
    super::files::file_place(&place.into())
}
