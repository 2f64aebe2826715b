//! What each cause is called in a file, and what is said about it.

use super::causes::Cause;

/// Names, a sentence, and what to do.
pub(super) struct Words {
    pub name: &'static str,
    pub explains: String,
    pub next: String,
}

/// The words for `cause`; `which` are the conductors that it names.
pub(super) fn words(cause: Cause, which: &str) -> Words {
    let (name, explains, next) = match cause {
        Cause::NoVoltage => (
            "no-voltage",
            "The readings are what conductors at one potential give.".to_owned(),
            "Any indication counts as live until the pair is proved dead again.",
        ),
        Cause::NeutralDrop => (
            "neutral-drop",
            format!("{which} is a few volts from earth, as the current of other circuits makes it where they share it."),
            "Treat it as live. Find which circuits share this neutral; it must be opened or their load taken off.",
        ),
        Cause::NotIsolated => (
            "not-isolated",
            format!("{which} read as if nothing had been opened."),
            "Stop. Check that this is the right point of isolation for this equipment and that every pole opened.",
        ),
        Cause::OneLineLive => (
            "one-line-live",
            format!("{which} is live, the other lines are not fed."),
            "Stop. Look for a pole that did not open, a welded contact, or a second feed to this line.",
        ),
        Cause::TwoLinesLive => (
            "two-lines-live",
            format!("{which} are live, the third line is not fed or hangs on them through loads."),
            "Stop. Check every pole of the isolator and every fuse; look for a second feed.",
        ),
        Cause::Backfeed => (
            "single-phase-backfeed",
            format!("{which} are at one potential, away from neutral and earth: one line feeds all through loads or windings."),
            "Stop. Find the feed on the load side (a control circuit, a link, a small source) and isolate it as well.",
        ),
        Cause::OpenNeutral => (
            "open-neutral",
            format!("The supply is live and {which} is away from its star point: it is broken on the supply side, and the loads pull it."),
            "Stop. The lines are live, and the neutral is as dangerous as a line. Isolate at the supply; do not reconnect loads.",
        ),
        Cause::BorrowedNeutral => (
            "borrowed-neutral",
            format!("{which} is live while the lines of this circuit are not fed: a load of another circuit returns through it."),
            "Stop. Find the circuit that borrows this neutral, isolate it too, and test again.",
        ),
        Cause::OtherSource => (
            "another-source",
            format!("{which} read as fed from a source that does not belong to the isolated supply: another phase, or antiphase."),
            "Stop. Look for a generator, an inverter, a battery supply or a second incomer, and isolate it.",
        ),
        Cause::FloatingSupply => (
            "floating-supply",
            "The lines are live on a supply that is not earthed. Readings to earth depend on capacitance and insulation, and say nothing here."
                .to_owned(),
            "Stop. Isolate; go by the line-to-line readings; look for a first earth fault.",
        ),
        Cause::BrokenReference => (
            "broken-reference",
            format!("{which} is not where earth should be: the reference is broken, floats, or is itself live."),
            "Stop, and keep off metal parts. Prove the reference against a known source or a second earth, then test again.",
        ),
        Cause::Induced => (
            "induced-voltage",
            format!("{which} read as dead cores do that lie beside live ones: voltage through capacitance."),
            "It counts as live. Read again with a low impedance; it stays so until every pair shows nothing. Isolate the neighbour or earth it.",
        ),
        Cause::Misplaced => (
            "misread-or-misplaced",
            "One reading does not fit the others: no potentials give all of them.".to_owned(),
            "Treat as live. Repeat the pairs that are named, saying the terminals aloud; prove the indicator before and after.",
        ),
        Cause::NeutralEarth => ("neutral-earth-unexpected", which.to_owned(), "Find out why before anything else is done."),
        Cause::DirectVoltage => (
            "direct-voltage",
            format!("There is DC at {which}: stored energy, a battery or another DC source."),
            "Stop. Wait for the label's time, read DC again, and isolate the source if it does not fall.",
        ),
        Cause::Unexplained => (
            "unexplained",
            "No cause that is known here gives these readings.".to_owned(),
            "Treat as live. Look for a second feed, then prove the indicator and test every pair again.",
        ),
    };
    Words { name, explains, next: next.to_owned() }
}
