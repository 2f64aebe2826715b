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
