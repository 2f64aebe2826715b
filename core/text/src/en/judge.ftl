### What the judge finds in readings: why the verdict is what it is, and what may be behind them.

judge-failed-before = The indicator did not work on its proof before the tests: no reading counts. Treat as live.
judge-failed-after = The indicator failed its proof after the tests: no reading since the first proof counts. Treat as live.
judge-reference-failed = The proof of the reference failed: what rests on it is worth nothing.
# $at is a pair or a place; $dc whether it is direct voltage.
judge-read =
    { $dc ->
        [yes] { $at } read { $volts } V DC.
       *[no] { $at } read { $volts } V.
    }
judge-read-limit =
    { $dc ->
        [yes] { $at } read { $volts } V DC; the limit is { $limit } V.
       *[no] { $at } read { $volts } V; the limit is { $limit } V.
    }
judge-lit-to =
    { $dc ->
        [yes] { $at } lit to { $volts } V DC.
       *[no] { $at } lit to { $volts } V.
    }
judge-lit =
    { $dc ->
        [yes] { $at } lit the indicator DC.
       *[no] { $at } lit the indicator.
    }
judge-lit-more = So did { $more } more readings.
judge-all-read = All { $pairs } pairs were read without any indication, and the indicator worked before and after.
# $limits is one limit or two.
judge-all-read-limit = All { $pairs } pairs were read with no indicator lit and no number above { $limits }, and the indicator worked before and after.
judge-limit = { $volts } V { $current }
judge-reference =
    The reference was shown to be earth: { $way ->
        [known-line] a known live line read its full voltage to it
        [second-earth] it was read against a second, independent earth
        [continuity] its path to the main earthing terminal was measured
       *[none] not shown
    }.
judge-low-impedance = A low impedance pulls an interference voltage down only while it touches.

neutral-joined = { $neutral } is opened, and still joined to { $earth }: a second bond, or a neutral borrowed from another circuit.
neutral-joined-tt = { $neutral } is opened, and still joined to { $earth }: a fault between them behind the isolator.
neutral-joined-it = { $neutral } is joined to { $earth } on a supply that is not earthed: a first fault, or not an IT supply.
neutral-not-joined = { $neutral } is not opened, and not joined to { $earth }: one of the two is broken between here and their bond.
neutral-no-continuity = { $neutral } is not opened, and no continuity to { $earth } showed: the indicator shows none, or one of the two is broken between here and their bond.

# What may be behind the readings; $which are conductors.
cause-no-voltage = The readings are what conductors at one potential give.
cause-neutral-drop = { $which } is a few volts from earth, as the current of other circuits makes it where they share it.
cause-not-isolated = { $which } read as if nothing had been opened.
cause-one-line-live = { $which } is live, the other lines are not fed.
cause-two-lines-live = { $which } are live, the third line is not fed or hangs on them through loads.
cause-backfeed = { $which } are at one potential, away from neutral and earth: one line feeds all through loads or windings.
cause-open-neutral = The supply is live and { $which } is away from its star point: it is broken on the supply side, and the loads pull it.
cause-borrowed-neutral = { $which } is live while the lines of this circuit are not fed: a load of another circuit returns through it.
cause-other-source = { $which } read as fed from a source that does not belong to the isolated supply: another phase, or antiphase.
cause-floating-supply = The lines are live on a supply that is not earthed. Readings to earth depend on capacitance and insulation, and say nothing here.
cause-broken-reference = { $which } is not where earth should be: the reference is broken, floats, or is itself live.
cause-induced = { $which } read as dead cores do that lie beside live ones: voltage through capacitance.
# $which is a pair.
cause-misplaced = The reading { $which } does not fit the others: no potentials give all of them.
# $which are pairs and places.
cause-direct-voltage = There is DC at { $which }: stored energy, a battery or another DC source.
cause-unexplained = No cause that is known here gives these readings.
# Behind a cause where many conductors were read.
cause-of-most = (Worked out from the { $count } conductors that read most.)
the-lines = the lines

# What to do about each.
next-no-voltage = Any indication counts as live until the pair is proved dead again.
next-neutral-drop = Treat it as live. Find which circuits share this neutral; it must be opened or their load taken off.
next-not-isolated = Stop. Check that this is the right point of isolation for this equipment and that every pole opened.
next-one-line-live = Stop. Look for a pole that did not open, a welded contact, or a second feed to this line.
next-two-lines-live = Stop. Check every pole of the isolator and every fuse; look for a second feed.
next-backfeed = Stop. Find the feed on the load side (a control circuit, a link, a small source) and isolate it as well.
next-open-neutral = Stop. The lines are live, and the neutral is as dangerous as a line. Isolate at the supply; do not reconnect loads.
next-borrowed-neutral = Stop. Find the circuit that borrows this neutral, isolate it too, and test again.
next-other-source = Stop. Look for a generator, an inverter, a battery supply or a second incomer, and isolate it.
next-floating-supply = Stop. Isolate; go by the line-to-line readings; look for a first earth fault.
next-broken-reference = Stop, and keep off metal parts. Prove the earth against a known source or a second earth, then test again.
next-induced = It counts as live. Read again with a low impedance; it stays so until every pair shows nothing. Isolate the neighbour or earth it.
next-misplaced = Treat as live. Repeat the pairs that are named, saying the terminals aloud; prove the indicator before and after.
next-neutral-earth = Find out why before anything else is done.
next-direct-voltage = Stop. Wait for the label's time, read DC again, and isolate the source if it does not fall.
next-unexplained = Treat as live. Look for a second feed, then prove the indicator and test every pair again.

# The drawing of the potentials, in words.
middle-earth = earth
middle-supply = the supply's middle
# $several: whether $names are more than one conductor.
dot-at-middle =
    { $names } { $several ->
        [yes] are
       *[no] is
    } at { $middle }
dot-off-middle =
    { $names } { $several ->
        [yes] are
       *[no] is
    } { $volts } V from { $middle }
dots = Potentials that fit the readings: { $dots }. Directions are relative only.
