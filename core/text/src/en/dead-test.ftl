### The plan of a dead test: what is expected of a pair, why its probes go so, and what else has to be shown.

# Begin small: they stand behind "Expected:".
if-dead-perhaps-joined = no indication; continuity if the two are joined at the source or the origin
if-dead-line-to-earth = no indication; continuity points to an earth fault, a filter or a surge arrester
if-dead-other-to-earth = no indication; continuity points to an earth fault, a filter or a pole that is earthed
if-dead-to-line = no indication; continuity if a load or winding joins them
if-dead-to-other = no indication; continuity if a load, a winding or a converter joins them
if-dead-bond-at-source = no indication, at most a few volts; low resistance through the bond at the source, high resistance points to a broken N or PE
if-dead-bond-at-origin = no indication, at most a few volts; very low resistance through the bond at the origin: continuity is normal
if-dead-open-in-tn = no indication, or an induced one; open circuit: continuity points to a borrowed neutral or a second bond
if-dead-unsaid-in-tn = no indication, at most a few volts; continuity where N is not opened, open circuit where it is: find out which
if-dead-closed-in-tt = some volts can stand; tens to hundreds of ohms through the electrodes. N has to be opened in TT: it is not
if-dead-open-in-tt = no indication, or an induced one; open circuit
if-dead-unsaid-in-tt = no indication, or an induced one, where N is opened; N has to be opened in TT: find out whether it is
if-dead-in-it = no indication, or an induced one; high resistance. A first fault can hide

if-live-middles = from a few volts (a shared or borrowed path that carries current) up to { $most } V where one of the two is broken
if-live-middles-line = from a few volts (a shared or borrowed path that carries current) up to the voltage of a line where one of the two is broken
if-live-about = about { $volts } V; anything below that if one of the two is cut off and floats
if-live-up-to = anything up to { $volts } V; none may show although both are live
if-live-either = about { $phases } V between two phases, { $middle } V with a mid-point; anything below that if one is cut off and floats
if-live-unsaid = the voltage of the supply; its nominal voltage was not given

why-less-dangerous = { $first } is the less dangerous of the two if one is still live: its probe goes on first and comes off last.
why-then-stays = Neither is less dangerous: the probe on { $then } stays on, the other goes to { $first }.
why-then-stays-next = Neither is less dangerous: { $first } comes off first, so that { $then } stays for the next test.
why-first-held = Neither is less dangerous: hold { $first }, and take the probe off { $then } first.

reference-why = All pairs at zero show that the conductors are at one potential, not that it is earth: with { $conductor } broken a live board reads nothing.
reference-why-none = No protective or PEN conductor is in the list: every pair can read nothing while all conductors are live to earth.
earth-list = Put the protective conductor, or an earth that is known to be one, in the list and make the plan again.
earth-known-line = Read from { $conductor } to a line that is known to be live and is not part of this isolation: the full voltage to earth has to appear.
earth-main-terminal = Measure a low resistance from { $conductor } to the main earthing terminal, with a long lead.
earth-bonded = Measure a low resistance from { $conductor } to metalwork that is bonded elsewhere.

discharge-wait = Wait at least { $seconds } s from switching off, as the label of { $what } says.
discharge-find-time = Find the discharge time on the label or in the manual of { $what }, and wait that long from switching off.
discharge-read = Read direct voltage at { $what }: { $plus } to { $minus }, and each of them to PE. The time alone proves nothing.
discharge-still = If any of it indicates, treat as live: wait on and read again, or discharge as the maker says.
pole-plus = plus
pole-minus = minus

dc-drive = A drive holds a charge, and can put direct voltage on its supply and its motor.
dc-ups = A UPS has a battery behind it.
dc-pv = Photovoltaic modules are live while there is light.
dc-stored = Stored energy is direct voltage.
dc-conductors = There are DC conductors.

warn-no-reference = No protective or PEN conductor is in the list: nothing here shows a voltage to earth.
# $lines, $neutrals, $conductors: one or more, with commas.
warn-lines-closed = Not opened by the isolator: { $lines }. Treat as live until another point of isolation cuts it off.
warn-neutrals-closed =
    { $neutrals } is not opened, and { $earthing ->
        [TT] in TT it can stand at some volts
        [IT] in IT it is a live conductor
       *[other] where the earthing is not known it may be live
    }: open it too.
warn-charged = No isolator opens { $conductors }: treat as live until it has discharged and its DC was read.
warn-it = IT: a first fault stays hidden, and a live line may show nothing to earth.
warn-supplies = { $count } supplies in one enclosure ({ $supplies }): each needs a point of isolation of its own.
warn-control = Control circuits are often fed from elsewhere: find what feeds them.
warn-pv = Photovoltaic modules cannot be switched off: up to the point that cuts them off, their side stays live in light.
warn-ups = A UPS feeds its outgoing side with its supply off: isolate its output and its bypass too.
warn-generator = A generator can start by itself: lock it off as a source of its own.
warn-lights-late = The indicator shows nothing below { $lowest } V: take one whose first step is { $bound } V or less.

note-prove-indicator = Prove the indicator before the first test and after the last: until then no reading counts.
note-common-practice = Danger by role and the order of the pairs are common practice with no source: the site's rule comes first.
note-neutral-inferred = What N to PE should read is engineering inference: have a reader of BS 7671 or IEC 60364 check it.
note-earthing-unsaid = The earthing arrangement was not given: the expectations to earth are the general ones, and a known live line proves no earth.
note-poles-unsaid = What the isolator opens was not given: whether every line is cut off cannot be told from here.
note-more-moves =
    This own order puts a probe on { $count ->
        [1] once
       *[other] { $count } times
    } more than the best order.

# The drawing of the terminals, in words. $terminals and $stops are lists.
terminals-hold = STAYS
terminals-none = Terminals, no probe on them.
terminals = Terminals { $terminals }. First probe on { $held }, held. The other probe: { $stops }. Take the other probe off first each time; { $held } comes off last.
terminals-stop = { $number } on { $conductor }
