### What commands print for a person at a terminal: plans, judgements, records, networks, tags.

# A dead test. $expect is what is read where the pair is dead.
command-test = { $first } – { $then }   first probe stays on { $first }, second on { $then }. Expect { $expect }.
command-look-out = Look out
command-stored = Stored energy: { $what }
command-reference = Reference: { $conductor }
# In the place of a conductor.
# life-critical
command-reference-missing = missing
command-ways = Show it in one of these ways
# $pairs is a list of command-dc-pair, or command-every-pair.
command-dc = Read direct voltage too: { $pairs }
command-dc-pair = { $first }–{ $then }
command-every-pair = every pair
command-tests = Tests: { $count }, with { $moves } moves of a probe ({ $fewest } at best)
# Behind the number of a test: a pair, and how the probes move.
command-pair-probes = { $first } – { $then }   { $probes }
command-probes-stay = one probe stays on { $held }, move the other to { $other }; lift { $off } first
command-probes = first probe on { $first }, then { $then }; lift { $off } first
# life-critical
command-dead = dead: { $expect }
# life-critical
command-not-dead = not dead: { $expect }
command-notes = Notes

# The verdict on readings.
# life-critical
command-proved-dead = Proved dead
# life-critical
command-treat-as-live = Treat as live
# life-critical
command-incomplete = Incomplete: treat as live
# life-critical
command-void = Void: treat as live
# $cause is the name of a cause in docs/judge.md. How well readings match it is no probability, and is not said.
# life-critical
command-may-be = Readings match: { $cause }. Treat as live.
command-pair = { $first } – { $then }
command-read-again = Read again

# Records.
command-record = { $file }: { $title }. Head { $head }.
command-record-csv = A CSV cannot be verified: keep the PDF or the JSON beside it.
command-record-check = Anyone can check it: stillbar verify { $file }
command-head = Head { $head }
# life-critical
command-holds = The record is genuine: as its devices signed it. It does not say that anything is dead now.
# life-critical
command-does-not-hold = The record does NOT hold.
command-failure = { $what }: { $why }
command-shown = Shown:
command-not-shown = Not shown:

# Networks.
command-more-sources = { $count } sources reach it in all; the paths of the others are not listed.
command-supply-not-shown = Not shown
command-remark = Remark: { $remark }
command-proposal = { $proposal } ({ $worth })
command-stops = stops: { $what }
command-tell = tell: { $who }
# $label says in words what is drawn.
command-drawn = { $file } is written. { $label }
command-written = Written: { $files }.

# Tags in photos.
command-tag = { $file }: tag { $tag }
command-tag-foreign = { $file }: no tag of ours, its text is "{ $text }"
command-tag-none = { $file }: no code was read. Take the photo closer, straight on, without glare.
