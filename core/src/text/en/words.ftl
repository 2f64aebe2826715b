### Words and pieces that stand inside other messages.

place-unknown = a point that this device does not know
# What stands proved, in a list. A life rests on it.
state-proved = Proved dead
state-proved-heard = Proved dead when last heard
state-stop = Stop, treat as live
state-live = Treat as live
state-handed-back = Handed back
place-of-other-job = a point of another job
told-by-network = the supply network
direct-voltage = direct voltage
pair = { $first } – { $then }
wait-by-label = as the label says
wait-minutes = { $minutes } min
wait-seconds = { $seconds } s
# Two things of a list; of a longer one, all but the last and the last.
list-comma = { $first }, { $then }
list-and = { $first } and { $then }

quoted = "{ $text }"
quoted-in-part = "{ $text }…"
seen-open = seen open
seen-closed = seen closed
# $way is one of the earth- messages.
earth-how = { $way }: { $how }
earth-live-line = PE to a line known to be live shows its full voltage
earth-main-terminal = Continuity from PE to the main earthing terminal
earth-bonded = Continuity from PE to bonded metalwork
limit-set = { $ac } V AC and { $dc } V DC count as no indication, by { $rule }
