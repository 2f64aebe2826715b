### Words and pieces that stand inside other messages.

place-unknown = a point that this device does not know
# What stands proved: in a list, and as the large words of the banner. These are few words, for a screen that is looked at in passing.
# life-critical
state-proved = Proved dead
# In a list that is heard of from afar, which cannot say how old the proof is.
# life-critical
state-proved-heard = Proved dead when last heard
# A voltage was met.
# life-critical
state-stop = Stop, treat as live
# life-critical
state-live = Treat as live
state-handed-back = Handed back
place-of-other-job = a point of another job
job-unknown = another job
instrument-named = { $name }, serial { $serial }
instrument-without-serial = { $name }, serial not given
# $id is the beginning of what the instrument is known by.
instrument-unknown = instrument { $id }
told-by-network = the supply network
direct-voltage = direct voltage
pair = { $first } – { $then }
wait-by-label = as the label says
wait-minutes = { $minutes } min
wait-seconds = { $seconds } s
# Two things of a list; of a longer one, all but the last and the last.
list-comma = { $first }, { $then }
list-and = { $first } and { $then }
# The same where what is listed has commas of its own.
list-semicolon = { $first }; { $then }
# Two sentences, one after the other.
sentences = { $first } { $then }

quoted = "{ $text }"
quoted-in-part = "{ $text }…"
seen-open = seen open
seen-closed = seen closed
# $way is one of the shown-earth- messages.
shown-earth-how = { $way }: { $how }
shown-earth-live-line = PE to a line known to be live shows its full voltage
shown-earth-main-terminal = Continuity from PE to the main earthing terminal
shown-earth-bonded = Continuity from PE to bonded metalwork
limit-set = { $ac } V AC and { $dc } V DC count as no indication, by { $rule }
# One of a list or another.
list-or = { $first } or { $then }

as-ruled = As these rules have it
order-least-dangerous-first = Least dangerous first (line to line at the end)
order-line-line-first = Line to line first
order-earth-first = Earth first (all to the protective conductor, then the others)

point-switch-disconnector = Switch-disconnector
point-circuit-breaker = Circuit-breaker for isolation
point-fuse-switch = Fuse-switch
point-fuse-links = Fuse links withdrawn
point-plug = Plug and socket
point-control-device = Stop button, interlock or contactor

system-one-phase = One phase: L, N, PE
system-three-phase-neutral = Three phase with neutral: L1, L2, L3, N, PE
system-three-wire = Three phase, no neutral: L1, L2, L3, PE
system-pen = Three phase with PEN (TN-C): L1, L2, L3, PEN
system-two-lines = Two lines, no neutral: L1, L2, PE
system-site-transformer = Site transformer 55-0-55: L1, L2, PE
system-site-transformer-three = Site transformer, three lines: L1, L2, L3, PE
system-split-phase = Split phase: L1, L2, N, PE
system-high-leg = Delta with a high leg: L1, L2, L3, N, PE
system-corner-grounded = Delta, one corner at earth: L1, L2, L3, PE
system-dc-two-wire = DC, two poles: L+, L-, PE
system-dc-three-wire = DC with mid-point: L+, M, L-, PE
system-own = Your own set of conductors
named-by-neutral = Line to neutral, such as 230, 120 or 277
named-by-pen = Line to PEN, such as 230
named-by-lines = Line to line, such as 400, 230 or 480
named-by-poles = Pole to pole, such as 110 or 48
named-by-highest = The highest between any two

# In the drawing of a system, between two terminals: at most seven letters a line.
drawn-volts = { $volts } V
# The line above drawn-volts: anything up to it, or one of two.
drawn-from-nothing = 0 to
drawn-either = { $lower } or
# Above these drawings.
drawings-of-systems = The drawings show usual voltages. A question mark stands for what differs from place to place.

earthing-unknown = Not known

reading-none = no indication
reading-continuity = continuity
reading-lit = lit
reading-lit-to = lit to { $volts } V
reading-volts = { $volts } V
reading-amps = { $amps } A

tolerance-iec = IEC 60038: 10 % either way
tolerance-uk = United Kingdom: +10 %, -6 %
tolerance-ansi = ANSI C84.1 Range A: 5 % either way

rotation-clockwise = clockwise
rotation-anticlockwise = anticlockwise
rotation-not-needed = not needed
rotation-choice-clockwise = Clockwise: L1, L2, L3
rotation-choice-anticlockwise = Anticlockwise: L1, L3, L2
rotation-choice-not-needed = Not needed: nothing rotates
rotation-guard-uncoupled = What turns is uncoupled
rotation-guard-bumped = A short bump, watched

supply-answer-mended = Mended, to be read again
supply-answer-left-off = Left off
supply-answer-accepted = Accepted by somebody who was told

source-generator = Generator
source-ups = UPS
source-pv = PV
source-battery = Battery
source-second-feeder = Second feeder or changeover
source-control = Control or auxiliary supply

photo-blurred = This picture seems blurred: look at the label in it, and take it again if you cannot read it.
photo-dark = This picture is very dark: add light and take it again if you can.
photo-bright = This picture is very bright: turn away from the light and take it again if you can.
# $here is what the picture was taken for.
photo-tag-of-namesake = The tag in this picture belongs to another point that is called { $here } too.
photo-other-tag = The tag in this picture belongs to { $belongs }, not { $here }.
photo-unknown-tag = The tag in this picture, { $tag }, belongs to nothing that this device knows, and not to { $here }.
photo-no-tag = No tag can be read in this picture, and { $here } has one.

sort-grid = grid
sort-second-feeder = second feeder
sort-generator = generator
sort-ups = UPS
sort-pv = PV
sort-battery = battery
sort-control = control supply
sort-unsaid = source

link-switch = a switch
link-cable = a cable
link-changeover = a changeover
link-tie = a tie
link-inverter = an islanding inverter
link-inlet = an inlet for a mobile set
link-transformer = a transformer
link-unknown = a link that nobody traced

# What keeps energy after the supply is cut, each with its least wait where no label says one, and where that comes from. On a button.
stored-kind = { $kind }: wait { $wait } ({ $source })
stored-drive = Drive, DC link
stored-power-factor = Power-factor capacitors
stored-capacitors = Other capacitors
stored-ups = UPS
stored-pv-inverter = PV inverter
stored-battery-converter = Battery or vehicle converter
stored-not-known = Not known
stored-wait-practice = common practice
stored-wait-iec-60831 = IEC 60831-1
stored-wait-longest = the longest
