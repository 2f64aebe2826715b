//! Words that stand inside sentences.

use super::World;
use super::catalogue::say;
use super::languages::Language;
use super::lists::commas;
use stillbar_journal::EntryId;
use stillbar_journal::fact::{EarthProof, Limit, On, PhotoDoubt, RotationGuard, SourceKind, SupplyAnswer};
use stillbar_rules::job::known::ToldBy;
use stillbar_rules::job::{Fault, Job, ProofState, SupplyName};
use stillbar_rules::point::LockRow;
use stillbar_rules::point::{Lock, PointKind};
use stillbar_rules::prove::judge::energised::{Rotation, Tolerance};
use stillbar_rules::prove::limit::LimitError;
use stillbar_rules::prove::{DrawnVolts, Earthing, Measured, Met, Order, Reading, Supply, System};
use stillbar_rules::supply::{LinkKind, Position, SourceSort};
use stillbar_values::drawing::Drawing;
use stillbar_values::figures::named;

/// What a lock is on.
pub fn place(job: &Job, on: On) -> String {
    label(&job.lock_label(on))
}

/// What stands proved, for a list: in two or three words.
pub fn proof_state(state: ProofState) -> String {
    match state {
        ProofState::Proved => say!("state-proved"),
        ProofState::Stop => say!("state-stop"),
        ProofState::Live => say!("state-live"),
        ProofState::HandedBack => say!("state-handed-back"),
    }
}

/// The same where it is heard of from afar: a proof has an age and such a list has not, so it says when it knew so.
pub fn proof_state_heard(state: ProofState) -> String {
    if state == ProofState::Proved { say!("state-proved-heard") } else { proof_state(state) }
}

/// What the lock of a row is on.
pub fn row_place(row: &LockRow) -> String {
    label(&row.on_what())
}

/// A label, or that it is not known here.
pub(super) fn label(label: &Option<String>) -> String {
    label.clone().unwrap_or_else(|| say!("place-unknown"))
}

/// What else a lock's one cable or bar goes through; `None` if it holds one thing only.
pub fn goes_through(job: &Job, lock: &Lock) -> Option<String> {
    let (others, elsewhere) = job.goes_through(lock);
    let mut places: Vec<String> = others.into_iter().map(|on| place(job, on)).collect();
    places.extend(elsewhere.then(|| say!("place-of-other-job")));
    (!places.is_empty()).then(|| commas(places))
}

/// What a supply is called, inside a sentence.
pub fn supply_name(name: &SupplyName) -> String {
    match name {
        SupplyName::Normal => say!("supply-normal"),
        SupplyName::Source(what) => what.clone(),
        SupplyName::Unlisted => say!("supply-unlisted"),
        SupplyName::Unnamed => say!("supply-unnamed"),
    }
}

/// Which pairs of a dead test come first, as it is offered.
pub fn order(order: Order) -> String {
    match order {
        Order::LeastDangerousFirst => say!("order-least-dangerous-first"),
        Order::LineLineFirst => say!("order-line-line-first"),
        Order::EarthFirst => say!("order-earth-first"),
    }
}

/// What kind of device a point is, in the trade's words.
pub fn point_kind(kind: PointKind) -> String {
    match kind {
        PointKind::SwitchDisconnector => say!("point-switch-disconnector"),
        PointKind::CircuitBreaker => say!("point-circuit-breaker"),
        PointKind::FuseSwitch => say!("point-fuse-switch"),
        PointKind::FuseLinks => say!("point-fuse-links"),
        PointKind::Plug => say!("point-plug"),
        PointKind::ControlDevice => say!("point-control-device"),
    }
}

/// Which conductors a dead test is about.
pub fn system(system: System) -> String {
    match system {
        System::OnePhase => say!("system-one-phase"),
        System::ThreePhaseNeutral => say!("system-three-phase-neutral"),
        System::ThreeWire => say!("system-three-wire"),
        System::Pen => say!("system-pen"),
        System::TwoLines => say!("system-two-lines"),
        System::SiteTransformer => say!("system-site-transformer"),
        System::SiteTransformerThree => say!("system-site-transformer-three"),
        System::SplitPhase => say!("system-split-phase"),
        System::HighLeg => say!("system-high-leg"),
        System::CornerGrounded => say!("system-corner-grounded"),
        System::DcTwoWire => say!("system-dc-two-wire"),
        System::DcThreeWire => say!("system-dc-three-wire"),
        System::Own => say!("system-own"),
    }
}

/// The conductors of a supply; of a set of one's own their names.
pub fn supply(supply: &Supply) -> String {
    let own = commas(supply.own.iter().map(|c| c.name.clone()));
    match supply.system {
        System::Own => own,
        plain => system(plain),
    }
}

/// Which voltage a system is named by, as a hint.
pub fn named_by(system: System) -> String {
    match system {
        System::OnePhase | System::ThreePhaseNeutral | System::SplitPhase => say!("named-by-neutral"),
        System::Pen => say!("named-by-pen"),
        System::ThreeWire | System::TwoLines | System::SiteTransformerThree => say!("named-by-lines"),
        System::HighLeg | System::CornerGrounded => say!("named-by-lines"),
        System::SiteTransformer | System::DcTwoWire | System::DcThreeWire => say!("named-by-poles"),
        System::Own => say!("named-by-highest"),
    }
}

/// Draws a supply that is earthed in this way: its source, its terminals, and what two of them show to each other.
pub fn source(supply: &Supply, earthing: Earthing) -> Drawing {
    stillbar_rules::prove::source(supply, earthing, |live| match live {
        DrawnVolts::About(mv) => vec![drawn_volts(mv)],
        DrawnVolts::UpTo(mv) => vec![say!("drawn-from-nothing"), drawn_volts(mv)],
        DrawnVolts::Either(lower, higher) => vec![say!("drawn-either", lower = drawn(lower)), drawn_volts(higher)],
    })
}

fn drawn_volts(mv: u32) -> String {
    say!("drawn-volts", volts = drawn(mv))
}

/// A figure for a drawing, by the name it goes by: below 100 V to a tenth, for 63.5 V is a name; else whole.
fn drawn(mv: u32) -> String {
    let mv = named(mv);
    let step = if mv < 99_950 { 100 } else { 1000 };
    volts(mv.saturating_add(step / 2) / step * step)
}

/// What is said above the drawings of systems.
pub fn drawings_of_systems() -> String {
    say!("drawings-of-systems")
}

/// What is taken where nobody picks otherwise: what the rules have that the job is done by.
pub fn as_ruled() -> String {
    say!("as-ruled")
}

/// How an installation is earthed: the standard's letters, or that it is not known.
pub fn earthing(earthing: Earthing) -> String {
    match earthing {
        Earthing::Unknown => say!("earthing-unknown"),
        known => known.name().to_owned(),
    }
}

/// What was read, inside a sentence.
pub fn reading(reading: Reading) -> String {
    match reading {
        Reading::None => say!("reading-none"),
        Reading::Continuity => say!("reading-continuity"),
        Reading::Lit(None) => say!("reading-lit"),
        Reading::Lit(Some(volts)) => say!("reading-lit-to", volts = volts),
        Reading::Millivolts(mv) => say!("reading-volts", volts = volts(mv)),
    }
}

/// What was read for an answer, inside a sentence.
pub fn measured(read: Measured) -> String {
    match read {
        Measured::NoIndication => reading(Reading::None),
        Measured::Millivolts(mv) => reading(Reading::Millivolts(mv)),
        Measured::Milliamps(ma) => say!("reading-amps", amps = volts(ma)),
    }
}

/// Which voltages count as right.
pub fn tolerance(tolerance: Tolerance) -> String {
    match tolerance {
        Tolerance::Iec60038 => say!("tolerance-iec"),
        Tolerance::Uk => say!("tolerance-uk"),
        Tolerance::AnsiC841A => say!("tolerance-ansi"),
    }
}

/// Which way the lines turn, in a word.
pub fn rotation(rotation: Rotation) -> String {
    match rotation {
        Rotation::Clockwise => say!("rotation-clockwise"),
        Rotation::Anticlockwise => say!("rotation-anticlockwise"),
        Rotation::NotNeeded => say!("rotation-not-needed"),
    }
}

/// Which way the lines turn, as it is offered.
pub fn rotation_choice(rotation: Rotation) -> String {
    match rotation {
        Rotation::Clockwise => say!("rotation-choice-clockwise"),
        Rotation::Anticlockwise => say!("rotation-choice-anticlockwise"),
        Rotation::NotNeeded => say!("rotation-choice-not-needed"),
    }
}

/// How somebody took care of what turns, in a few words.
pub fn rotation_guard(guard: RotationGuard) -> String {
    match guard {
        RotationGuard::Uncoupled => say!("rotation-guard-uncoupled"),
        RotationGuard::Bumped => say!("rotation-guard-bumped"),
    }
}

/// What became of something that did not look as it should, in a few words.
pub fn supply_answer(answer: SupplyAnswer) -> String {
    match answer {
        SupplyAnswer::Mended => say!("supply-answer-mended"),
        SupplyAnswer::LeftOff => say!("supply-answer-left-off"),
        SupplyAnswer::Accepted => say!("supply-answer-accepted"),
    }
}

/// A kind of source, in the trade's word.
pub fn source_kind(kind: SourceKind) -> String {
    match kind {
        SourceKind::Generator => say!("source-generator"),
        SourceKind::Ups => say!("source-ups"),
        SourceKind::Pv => say!("source-pv"),
        SourceKind::Battery => say!("source-battery"),
        SourceKind::SecondFeeder => say!("source-second-feeder"),
        SourceKind::Control => say!("source-control"),
    }
}

/// A job's title, or that it is one that is not known here.
pub fn job_title(title: Option<&str>) -> String {
    title.map_or_else(|| say!("job-unknown"), str::to_owned)
}

/// An instrument's name and serial number.
pub fn instrument(names: &World, id: EntryId) -> String {
    match names.instruments.get(&id) {
        None => say!("instrument-unknown", id = id.short()),
        Some(known) if known.serial.is_empty() => say!("instrument-without-serial", name = &known.name),
        Some(known) => say!("instrument-named", name = &known.name, serial = &known.serial),
    }
}

/// Who tells of a source.
pub fn told_by(by: &ToldBy) -> String {
    match by {
        ToldBy::Job(title) => title.clone(),
        ToldBy::Network => say!("told-by-network"),
    }
}

/// What is poor about a photo of what is called `here`.
pub fn photo_doubt(doubt: &PhotoDoubt, here: &str) -> String {
    match doubt {
        PhotoDoubt::Blurred => say!("photo-blurred"),
        PhotoDoubt::Dark => say!("photo-dark"),
        PhotoDoubt::Bright => say!("photo-bright"),
        PhotoDoubt::OtherTag { belongs } if belongs == here => say!("photo-tag-of-namesake", here = here),
        PhotoDoubt::OtherTag { belongs } => say!("photo-other-tag", belongs = belongs, here = here),
        PhotoDoubt::UnknownTag { tag } => say!("photo-unknown-tag", tag = tag.spaced(), here = here),
        PhotoDoubt::NoTag => say!("photo-no-tag", here = here),
    }
}

/// What is wrong with an instrument.
pub fn fault(fault: Fault) -> String {
    match fault {
        Fault::Leads => say!("fault-leads"),
        Fault::Tips => say!("fault-tips"),
        Fault::Case => say!("fault-case"),
        Fault::OutOfDate => say!("fault-out-of-date"),
    }
}

/// Where a voltage was met: a pair, or a place.
pub fn met_at(met: &Met) -> String {
    match (&met.pair, &met.at) {
        (Some(of), _) => pair(of),
        (None, Some(at)) => at.clone(),
        (None, None) => say!("direct-voltage"),
    }
}

/// Why a limit for dead is too high; begins with a small letter.
pub fn limit(error: &LimitError) -> String {
    say!("limit-too-high", bound = volts(error.bound_mv), current = current(error.dc))
}

/// A waiting time in seconds; 0 where the label says none.
pub fn waiting(seconds: u32) -> String {
    match seconds {
        0 => say!("wait-by-label"),
        s if s % 60 == 0 => say!("wait-minutes", minutes = s / 60),
        s => say!("wait-seconds", seconds = s),
    }
}

/// With a capital letter in front.
pub fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default()
}

/// How earth was shown, in a sentence.
pub fn earth(way: EarthProof, how: &str) -> String {
    let says = match way {
        EarthProof::LiveLine => say!("shown-earth-live-line"),
        EarthProof::MainTerminal => say!("shown-earth-main-terminal"),
        EarthProof::Bonded => say!("shown-earth-bonded"),
        EarthProof::Other => return how.to_owned(),
    };
    if how.is_empty() { says } else { say!("shown-earth-how", way = says, how = how) }
}

/// A company's limit, in words.
pub fn limit_set(limit: &Limit) -> String {
    say!("limit-set", ac = volts(limit.ac), dc = volts(limit.dc), rule = &*limit.rule)
}

/// A sort of source, inside a sentence.
pub fn source_sort(sort: SourceSort) -> String {
    match sort {
        SourceSort::Grid => say!("sort-grid"),
        SourceSort::SecondFeeder => say!("sort-second-feeder"),
        SourceSort::Generator => say!("sort-generator"),
        SourceSort::Ups => say!("sort-ups"),
        SourceSort::Pv => say!("sort-pv"),
        SourceSort::Battery => say!("sort-battery"),
        SourceSort::Control => say!("sort-control"),
        SourceSort::Unsaid => say!("sort-unsaid"),
    }
}

/// What a link of a network is, inside a sentence.
pub fn link_kind(kind: LinkKind) -> String {
    match kind {
        LinkKind::Switch => say!("link-switch"),
        LinkKind::Cable => say!("link-cable"),
        LinkKind::Changeover => say!("link-changeover"),
        LinkKind::Tie => say!("link-tie"),
        LinkKind::Inverter => say!("link-inverter"),
        LinkKind::Inlet => say!("link-inlet"),
        LinkKind::Transformer => say!("link-transformer"),
        LinkKind::Unknown => say!("link-unknown"),
    }
}

/// Where a link stands, as a person sees it who looks at it.
pub fn seen(position: Position) -> String {
    match position {
        Position::Open => say!("seen-open"),
        Position::Closed => say!("seen-closed"),
    }
}

/// Most characters that are quoted of what somebody typed.
pub(super) const QUOTED: usize = 60;

/// Something as files or the network name it, as far as it fits in a sentence.
pub(super) fn quoted(text: &str, most: usize) -> String {
    let short: String = text.chars().take(most).map(|c| if c.is_control() { '?' } else { c }).collect();
    if text.chars().count() > most { say!("quoted-in-part", text = short) } else { say!("quoted", text = short) }
}

/// A voltage of so many millivolts, as a figure without its unit.
pub fn volts(mv: u32) -> String {
    figure(stillbar_rules::prove::volts(mv))
}

/// A figure with the decimal mark of the language that is spoken. What was written with a point is read with it as well.
pub(super) fn figure(written: String) -> String {
    written.replace('.', Language::now().decimal_mark().encode_utf8(&mut [0; 4]))
}

/// Two conductors.
pub(super) fn pair([first, then]: &[String; 2]) -> String {
    pair_of(first, then)
}

/// Two conductors.
pub(super) fn pair_of(first: &str, then: &str) -> String {
    say!("pair", first = first, then = then)
}

/// AC or DC, as it stands behind a voltage.
pub(super) fn current(dc: bool) -> &'static str {
    if dc { "DC" } else { "AC" }
}

/// Yes or no, as selectors of messages take it.
pub(super) fn yes(is: bool) -> &'static str {
    if is { "yes" } else { "no" }
}
